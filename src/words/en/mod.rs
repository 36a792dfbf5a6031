//! English.

pub(super) mod physics;
