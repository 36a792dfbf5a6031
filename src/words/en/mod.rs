//! English.

pub mod quantity;
pub(super) mod physics;
