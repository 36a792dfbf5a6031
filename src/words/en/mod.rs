//! English.
