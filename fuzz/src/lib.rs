//! What must hold for any input that comes from outside: typed text, backups,
//! what goes out as mail and as PDF. The fuzz targets call these, and so does
//! `tests/hostile.rs`, which runs the corpus and some thousand changes of it
//! with every other test.

pub mod entries;
pub mod mail;
pub mod mutate;
pub mod pdf;
pub mod reader;
pub mod story;
pub mod typed;

/// A part of the input as text; what is no UTF-8 becomes U+FFFD.
fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}
