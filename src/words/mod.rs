//! Every phrase a person reads, one folder per language.
//!
//! Lower rooms speak in enums; this room turns them into sentences by
//! exhaustive `match`, so a phrase missing from a language is a compile
//! error. `report` and `app` hold a [`Words`] and ask it.

mod app;
mod chemistry;
mod circuit;
pub mod en;
mod phrase;
mod physics;
mod quantity;
mod refill;
mod report;
mod trace;
mod trace_face;
mod working;

pub use en::app::Phrase;
pub use en::report::Phrase as ReportPhrase;
pub use refill::Format;

/// A language the product speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tongue {
    /// English as spoken by US mechanics.
    #[default]
    English,
}

/// The speaker: holds the language, answers with phrases. Each topic adds its
/// own `impl Words` block in a file beside this one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Words(pub Tongue);
