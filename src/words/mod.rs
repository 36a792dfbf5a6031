//! Every phrase a person reads, one folder per language.
//!
//! Lower rooms speak in enums; this room turns them into sentences by
//! exhaustive `match`, so a phrase missing from a language is a compile
//! error. `report` and `app` hold a [`Words`] and ask it.

mod app;
mod circuit;
pub mod en;
mod es;
mod phrase;
mod physics;
mod quantity;
mod refill;
mod report;
mod trace;
mod trace_face;
mod working;

#[cfg(test)]
mod tests;

pub use en::app::Phrase;
pub use en::report::Phrase as ReportPhrase;
pub use refill::Format;

use phrase::tongue;

/// A language the product speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tongue {
    /// English as spoken by US mechanics.
    #[default]
    English,
    /// Spanish as spoken by mechanics in Mexico and the United States.
    Spanish,
}

impl Tongue {
    /// Every language.
    pub const ALL: [Tongue; 2] = [Tongue::English, Tongue::Spanish];

    /// Its BCP 47 tag.
    pub fn tag(self) -> &'static str {
        match self {
            Tongue::English => "en",
            Tongue::Spanish => "es",
        }
    }

    /// Its name for itself.
    pub fn name(self) -> &'static str {
        match self {
            Tongue::English => "English",
            Tongue::Spanish => "Español",
        }
    }

    /// The language of a BCP 47 tag such as "es-MX", if it is spoken here.
    pub fn of_tag(tag: &str) -> Option<Tongue> {
        let main = tag.split(['-', '_']).next()?;
        Self::ALL
            .into_iter()
            .find(|t| t.tag().eq_ignore_ascii_case(main))
    }
}

/// The speaker: holds the language, answers with phrases. Each topic adds its
/// own `impl Words` block in a file beside this one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Words(pub Tongue);
