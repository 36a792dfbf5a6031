//! The basin in section, beside the report's title.

use uom::si::length::meter;

use super::Composer;
use crate::quantity::{Length, Value};
use crate::record::{What, When};
use crate::report::chart::{Level, LevelMark, MarkKind, Waterline};
use crate::words::ReportPhrase as P;

/// Height of the overflow lip in the basin's figure.
const LIP: f64 = 0.94;

impl Composer<'_> {
    /// Nothing while the basin's depth is not known.
    pub(super) fn waterline(&self) -> Option<Waterline> {
        use crate::words::Phrase as F;
        let tower = &self.site.tower;
        let depth = tower.basin?.depth.get::<meter>();
        // The lip stands a little under the top of the figure, so that water
        // over it can be drawn.
        let height = |below: Length| LIP * (1.0 - below.get::<meter>() / depth);
        let amount = |below: Length| self.amount(Value::level(below));
        let mark = |kind, below: Option<Length>, name| {
            let below = below?;
            Some(LevelMark {
                kind,
                height: height(below),
                label: self.words.phrase(name).to_owned(),
                value: amount(below),
            })
        };
        let level = |when, label| {
            let below = self
                .visit
                .reading(when, What::BasinLevel)?
                .value
                .as_level()?;
            Some(Level {
                height: height(below),
                label: self.say(label),
                value: amount(below),
            })
        };
        let found = level(When::AsFound, P::Found);
        let left = level(When::AsLeft, P::Left);
        let summary = match &found {
            Some(found) => format!("{}: {}", self.words.phrase(F::BasinLevelNow), found.value),
            None => self.words.phrase(F::BasinLevelUnknown).to_owned(),
        };
        let marks = [
            mark(MarkKind::Overflow, Some(Length::default()), F::MarkOverflow),
            mark(MarkKind::High, tower.stop_level, F::MarkStop),
            mark(MarkKind::Low, tower.call_level, F::MarkCall),
            mark(MarkKind::PumpInlet, tower.inlet_level, F::MarkInlet),
        ];
        Some(Waterline {
            summary,
            marks: marks.into_iter().flatten().collect(),
            found,
            left,
        })
    }
}
