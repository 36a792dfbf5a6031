//! The face's phrases: names here, sentences in each language's file.

/// Defines [`Phrase`] and its English in one table, so that a phrase without
/// English can't exist; other languages match on the enum exhaustively.
macro_rules! phrases {
    ($($name:ident: $english:literal;)*) => {
        /// A fixed phrase of the face.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[allow(missing_docs)] // the English beside each name says what it is
        pub enum Phrase { $($name,)* }

        impl Phrase {
            /// Every phrase.
            pub const ALL: &[Phrase] = &[$(Phrase::$name,)*];
        }

        /// The phrase in English.
        pub fn phrase(phrase: Phrase) -> &'static str {
            match phrase { $(Phrase::$name => $english,)* }
        }
    };
}
pub(super) use phrases;

/// The phrases of another language: a table over the same names, whose `match`
/// does not compile while one is missing.
macro_rules! spoken {
    ($of:ident; $($name:ident: $said:literal;)*) => {
        /// The phrase in this language.
        pub fn phrase(phrase: $of) -> &'static str {
            match phrase { $($of::$name => $said,)* }
        }
    };
}
pub(super) use spoken;

/// The same function of each language's folder, by the speaker's language. To
/// add a language: its folder, its name in `Tongue`, and a line here.
macro_rules! tongue {
    ($speaker:expr, $module:ident::$said:ident($($given:expr),*)) => {
        match $speaker.0 {
            $crate::words::Tongue::English => $crate::words::en::$module::$said($($given),*),
            $crate::words::Tongue::Spanish => $crate::words::es::$module::$said($($given),*),
        }
    };
}
pub(super) use tongue;
