//! English.

pub mod quantity;
pub(super) mod physics;
pub(super) mod refill;
pub(super) mod refill_findings;
