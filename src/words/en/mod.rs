//! English.

pub(crate) mod trace_checks;
pub(crate) mod trace_cures;
pub(crate) mod trace_modes;
pub(crate) mod trace_reasons;
