//! The face's phrases: names here, sentences in each language's file.

/// Defines [`Phrase`] and its English in one table, so that a phrase without
/// English can't exist; other languages match on the enum exhaustively.
macro_rules! phrases {
    ($($name:ident: $english:literal;)*) => {
        /// A fixed phrase of the face.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[allow(missing_docs)] // the English beside each name says what it is
        pub enum Phrase { $($name,)* }

        /// The phrase in English.
        pub fn phrase(phrase: Phrase) -> &'static str {
            match phrase { $(Phrase::$name => $english,)* }
        }
    };
}
pub(super) use phrases;
