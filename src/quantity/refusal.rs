//! Why a typed reading was not taken. Data only; `words` makes sentences.

use super::{Bounds, Kind, Unit};

/// Why a typed reading was not taken.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// Nothing was typed.
    Empty,
    /// No number could be read.
    NotANumber {
        /// The text at which reading stopped, at most 24 characters.
        near: String,
    },
    /// A number with something behind it that is no unit we know.
    UnknownUnit {
        /// The text taken for a unit, at most 24 characters.
        unit: String,
    },
    /// A known unit that cannot express the kind asked for.
    WrongUnit {
        /// The unit typed.
        unit: Unit,
        /// The kind asked for.
        wanted: Kind,
    },
    /// The smaller part of a feet-and-inches or hours-and-minutes reading
    /// reaches a whole one of the larger unit.
    PartTooLarge {
        /// The number of the smaller unit.
        number: f64,
        /// The smaller unit.
        unit: Unit,
        /// The number it must stay below.
        limit: f64,
    },
    /// A temperature below absolute zero.
    BelowAbsoluteZero {
        /// The temperature in kelvins.
        si: f64,
    },
    /// The value lies outside the bounds.
    OutOfRange {
        /// The value in the SI form of its kind.
        si: f64,
        /// The bounds it broke.
        bounds: Bounds,
    },
    /// A comma before exactly three digits, and both readings are plausible.
    Ambiguous {
        /// SI value when the comma groups thousands.
        first: f64,
        /// SI value when the comma marks decimals.
        second: f64,
        /// The unit both were read in.
        unit: Unit,
    },
}
