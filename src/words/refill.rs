//! Phrases of the refill test.

use super::{Tongue, Words, en};
use crate::quantity::{Length, VolumeRate};
use crate::refill::{
    Caution, DrawBasis, ExpectedMark, Finding, Limit, Missing, NextReading, Phase, Verdict,
};

/// How numbers are shown: the caller brings the person's units.
#[derive(Clone, Copy)]
pub struct Format<'a> {
    /// A flow with its unit, such as "12.4 gpm".
    pub flow: &'a dyn Fn(VolumeRate) -> String,
    /// A height with its unit, such as "9 1/4 in".
    pub level: &'a dyn Fn(Length) -> String,
    /// A time given in minutes, with its unit, such as "3.5 min".
    pub minutes: &'a dyn Fn(f64) -> String,
}

impl Words {
    /// What the button of a mark says.
    pub fn refill_mark(self, mark: ExpectedMark) -> &'static str {
        match self.0 {
            Tongue::English => en::refill::mark(mark),
        }
    }

    /// What to do now. `drain_open` is
    /// [`drain_open`](crate::refill::drain_open()) of the same marks.
    pub fn refill_phase(self, phase: Phase, drain_open: bool) -> &'static str {
        match self.0 {
            Tongue::English => en::refill::phase(phase, drain_open),
        }
    }

    /// The verdict in a word or two.
    pub fn refill_verdict(self, verdict: Verdict) -> &'static str {
        match self.0 {
            Tongue::English => en::refill::verdict(verdict),
        }
    }

    /// A finding as a sentence, numbers in the person's units.
    pub fn refill_finding(self, finding: &Finding, format: &Format<'_>) -> String {
        match self.0 {
            Tongue::English => en::refill_findings::finding(finding, format),
        }
    }

    /// Why a figure cannot be given.
    pub fn refill_missing(self, missing: Missing) -> &'static str {
        match self.0 {
            Tongue::English => en::refill::missing(missing),
        }
    }

    /// What would help most next.
    pub fn refill_next(self, next: NextReading) -> &'static str {
        match self.0 {
            Tongue::English => en::refill::next(next),
        }
    }

    /// A caution before the drain is opened.
    pub fn refill_caution(self, caution: Caution) -> &'static str {
        match self.0 {
            Tongue::English => en::refill::caution(caution),
        }
    }

    /// The name of a level across the figure.
    pub fn refill_limit(self, limit: Limit) -> &'static str {
        match self.0 {
            Tongue::English => en::refill::limit(limit),
        }
    }

    /// Why the plan draws down to the level it names.
    pub fn refill_basis(self, basis: DrawBasis) -> &'static str {
        match self.0 {
            Tongue::English => en::refill::basis(basis),
        }
    }
}
