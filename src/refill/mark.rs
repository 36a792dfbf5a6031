//! Marks: what the tester saw, and when.

use std::cmp::Ordering;

use serde::{Deserialize, Serialize};
use uom::si::length::meter;

use crate::quantity::{Length, sort_by};

/// Latest time a mark may carry, in seconds: about thirty years. A mark
/// beyond it is a broken clock and is left out.
const LATEST_S: f64 = 1e9;
/// Deepest level a mark may carry, in metres. Beyond it is a typing slip.
const DEEPEST_M: f64 = 1e3;

/// What the tester saw.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", rename_all_fields = "kebab-case")]
pub enum MarkKind {
    /// The drain was opened: the level starts to fall.
    DrawdownBegan,
    /// The level control calls for water: relay, lamp or click.
    CallSeen,
    /// Water is running at the fill, seen or heard.
    WaterSeen,
    /// The level was read.
    Level {
        /// Depth of the surface below the overflow lip, positive downward.
        below_overflow: Length,
    },
    /// The fill stopped by itself.
    ShutOff,
    /// The drain was closed.
    DrawdownEnded,
    /// The tester ended the test.
    Stopped,
    /// Nobody watched for a while; the delay across this mark proves nothing.
    Interrupted,
}

/// A mark by name, without what it carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ExpectedMark {
    /// The drain was opened.
    DrawdownBegan,
    /// The control calls for water.
    CallSeen,
    /// The drain was closed.
    DrawdownEnded,
    /// Water is running at the fill.
    WaterSeen,
    /// A level reading.
    Level,
    /// The fill stopped by itself.
    ShutOff,
    /// Nobody watched for a while.
    Interrupted,
    /// The tester ended the test.
    Stopped,
}

impl MarkKind {
    /// This mark's name, without what it carries.
    pub fn name(self) -> ExpectedMark {
        match self {
            Self::DrawdownBegan => ExpectedMark::DrawdownBegan,
            Self::CallSeen => ExpectedMark::CallSeen,
            Self::WaterSeen => ExpectedMark::WaterSeen,
            Self::Level { .. } => ExpectedMark::Level,
            Self::ShutOff => ExpectedMark::ShutOff,
            Self::DrawdownEnded => ExpectedMark::DrawdownEnded,
            Self::Stopped => ExpectedMark::Stopped,
            Self::Interrupted => ExpectedMark::Interrupted,
        }
    }
}

/// One mark on the test's clock.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Mark {
    /// Seconds on the test's clock. Any finite value within 1e9 s; the zero is
    /// the caller's choice, only differences count.
    pub at_s: f64,
    /// What was seen.
    pub kind: MarkKind,
}

impl Mark {
    /// A mark.
    pub fn new(at_s: f64, kind: MarkKind) -> Self {
        Self { at_s, kind }
    }

    /// A level reading, `below_overflow` under the lip, positive downward.
    pub fn level(at_s: f64, below_overflow: Length) -> Self {
        Self {
            at_s,
            kind: MarkKind::Level { below_overflow },
        }
    }

    /// The level read, in metres below the lip, if this mark is a reading.
    pub(super) fn level_m(&self) -> Option<f64> {
        match self.kind {
            MarkKind::Level { below_overflow } => Some(below_overflow.get::<meter>()),
            _ => None,
        }
    }

    fn usable(&self) -> bool {
        let level_ok = self
            .level_m()
            .is_none_or(|m| m.is_finite() && m.abs() <= DEEPEST_M);
        self.at_s.is_finite() && self.at_s.abs() <= LATEST_S && level_ok
    }

    fn order(&self, other: &Self) -> Ordering {
        let level = |m: &Self| m.level_m().unwrap_or(0.0) + 0.0;
        (self.at_s + 0.0)
            .total_cmp(&(other.at_s + 0.0))
            .then_with(|| self.kind.name().cmp(&other.kind.name()))
            .then_with(|| level(self).total_cmp(&level(other)))
    }
}

/// The usable marks in the order of time. Marks at the same second follow the
/// natural order of the test, so the order of arrival never matters.
pub(super) fn in_order(marks: &[Mark]) -> Vec<Mark> {
    let mut sorted: Vec<Mark> = marks.iter().copied().filter(Mark::usable).collect();
    sort_by(&mut sorted, Mark::order);
    sorted
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_keep_their_names_on_disk() {
        let mark = Mark::level(12.5, Length::new::<meter>(0.25));
        let text = serde_json::to_string(&mark).unwrap();
        assert_eq!(
            text,
            r#"{"at-s":12.5,"kind":{"level":{"below-overflow":0.25}}}"#
        );
        assert_eq!(serde_json::from_str::<Mark>(&text).unwrap(), mark);
        let call = serde_json::to_string(&Mark::new(0.0, MarkKind::CallSeen)).unwrap();
        assert_eq!(call, r#"{"at-s":0.0,"kind":"call-seen"}"#);
    }

    #[test]
    fn a_broken_clock_or_level_is_left_out() {
        let marks = [
            Mark::new(f64::NAN, MarkKind::CallSeen),
            Mark::new(1e12, MarkKind::CallSeen),
            Mark::level(3.0, Length::new::<meter>(f64::INFINITY)),
            Mark::new(2.0, MarkKind::WaterSeen),
            Mark::new(1.0, MarkKind::CallSeen),
        ];
        let names: Vec<_> = in_order(&marks).iter().map(|m| m.kind.name()).collect();
        assert_eq!(names, [ExpectedMark::CallSeen, ExpectedMark::WaterSeen]);
    }
}
