//! English.

pub(super) mod refill;
pub(super) mod refill_findings;
