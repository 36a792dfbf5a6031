//! One cycle of the test: the times that matter and the readings between them.

use super::mark::{ExpectedMark, Mark, MarkKind};

/// The ordered marks of one draw-down and refill.
#[derive(Clone, Debug)]
pub(super) struct Cycle {
    pub marks: Vec<Mark>,
}

/// Cuts ordered marks into cycles: a drain opened, a call or running water
/// after a shut-off begins the next one. Never empty.
pub(super) fn cycles(ordered: &[Mark]) -> Vec<Cycle> {
    let mut all = vec![Cycle { marks: Vec::new() }];
    for mark in ordered {
        let begins = matches!(
            mark.kind,
            MarkKind::DrawdownBegan | MarkKind::CallSeen | MarkKind::WaterSeen
        );
        if begins
            && all
                .last()
                .is_some_and(|c| c.time(ExpectedMark::ShutOff).is_some())
        {
            all.push(Cycle { marks: Vec::new() });
        }
        if let Some(last) = all.last_mut() {
            last.marks.push(*mark);
        }
    }
    all
}

impl Cycle {
    /// The cycle without the readings of these times.
    pub fn without(&self, slips: &[f64]) -> Self {
        let kept = |m: &&Mark| m.level_m().is_none() || !slips.contains(&m.at_s);
        Self {
            marks: self.marks.iter().filter(kept).copied().collect(),
        }
    }

    /// Time of the first mark of this name.
    pub fn time(&self, name: ExpectedMark) -> Option<f64> {
        self.marks
            .iter()
            .find(|m| m.kind.name() == name)
            .map(|m| m.at_s)
    }

    /// Time of the last mark.
    pub fn end(&self) -> Option<f64> {
        self.marks.last().map(|m| m.at_s)
    }

    /// Whether nobody watched at some time within these bounds.
    pub fn interrupted(&self, from: f64, to: f64) -> bool {
        self.marks
            .iter()
            .any(|m| m.kind == MarkKind::Interrupted && m.at_s >= from && m.at_s <= to)
    }

    /// Readings (seconds, metres below the lip) within these bounds.
    pub fn readings(&self, from: f64, to: f64) -> Vec<(f64, f64)> {
        self.marks
            .iter()
            .filter(|m| m.at_s >= from && m.at_s <= to)
            .filter_map(|m| m.level_m().map(|level| (m.at_s, level)))
            .collect()
    }

    /// Whether the drain stood open at this time as far as the marks tell.
    pub fn drain_open_at(&self, at_s: f64) -> bool {
        self.marks
            .iter()
            .filter(|m| m.at_s <= at_s)
            .fold(false, |open, m| match m.kind {
                MarkKind::DrawdownBegan => true,
                MarkKind::DrawdownEnded => false,
                _ => open,
            })
    }

    /// The stretch in which only the fill and the running losses move the
    /// level: from water seen (and drain closed) to shut-off, end of test, or
    /// the drain opened again. The flag says the drain was never noted closed.
    pub fn fill_window(&self) -> Option<(f64, f64, bool)> {
        let water = self.time(ExpectedMark::WaterSeen)?;
        let closed = self
            .marks
            .iter()
            .find(|m| m.kind == MarkKind::DrawdownEnded && m.at_s >= water)
            .map(|m| m.at_s);
        let open = self.drain_open_at(water);
        let from = if open { closed.unwrap_or(water) } else { water };
        let ends = |m: &&Mark| match m.kind {
            MarkKind::ShutOff | MarkKind::Stopped => m.at_s >= from,
            MarkKind::DrawdownBegan => m.at_s > from,
            _ => false,
        };
        let to = self
            .marks
            .iter()
            .find(ends)
            .map(|m| m.at_s)
            .or(self.end())?;
        Some((from, to, open && closed.is_none()))
    }

    /// The stretch in which the level falls for certain: from the drain opened
    /// (or the first mark) to drain closed, water seen, or the last mark.
    pub fn draw_window(&self) -> Option<(f64, f64)> {
        let from = self.time(ExpectedMark::DrawdownBegan)?;
        let ends = |m: &&Mark| {
            matches!(
                m.kind,
                MarkKind::DrawdownEnded | MarkKind::WaterSeen | MarkKind::Stopped
            ) && m.at_s >= from
        };
        let to = self
            .marks
            .iter()
            .find(ends)
            .map(|m| m.at_s)
            .or(self.end())?;
        Some((from, to))
    }

    /// Deepest level read before water ran, in metres below the lip.
    pub fn lowest_m(&self) -> Option<f64> {
        let to = self.time(ExpectedMark::WaterSeen).unwrap_or(f64::INFINITY);
        self.readings(f64::NEG_INFINITY, to)
            .into_iter()
            .map(|r| r.1)
            .reduce(f64::max)
    }
}
