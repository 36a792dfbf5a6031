//! English.

pub mod quantity;
