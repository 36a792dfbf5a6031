//! English.

pub mod quantity;
pub(super) mod refill;
pub(super) mod refill_findings;
