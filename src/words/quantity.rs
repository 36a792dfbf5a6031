//! Sentences about typed readings.

use super::{Words, tongue};
use crate::quantity::{Kind, Refusal, System};

impl Words {
    /// Why a typed reading was not taken and what to do about it, numbers in
    /// the units of `system`.
    pub fn refusal(self, refusal: &Refusal, kind: Kind, system: System) -> String {
        tongue!(self, quantity::refusal(refusal, kind, system))
    }
}
