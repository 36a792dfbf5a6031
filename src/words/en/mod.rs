//! English.

pub mod app;
pub(super) mod physics;
pub(super) mod quantity;
pub(super) mod refill;
pub(super) mod refill_findings;
pub mod report;
pub(super) mod visit;
