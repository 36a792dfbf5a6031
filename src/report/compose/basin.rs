//! The basin in section, beside the report's title.

use uom::si::length::meter;

use super::Composer;
use crate::quantity::{Length, Value};
use crate::record::{What, When};
use crate::report::chart::{Level, LevelMark, MarkKind, Waterline};

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
        let mark = |kind, below: Option<Length>| {
            Some(LevelMark {
                kind,
                height: height(below?),
            })
        };
        let read = |when| {
            let reading = self.visit.reading(when, What::BasinLevel)?;
            reading.value.as_level()
        };
        let level = |below| Level {
            height: height(below),
        };
        let (found, left) = (read(When::AsFound), read(When::AsLeft));
        let summary = match found {
            Some(found) => format!(
                "{}: {}",
                self.words.phrase(F::BasinLevelNow),
                self.amount(Value::level(found))
            ),
            None => self.words.phrase(F::BasinLevelUnknown).to_owned(),
        };
        let marks = [
            mark(MarkKind::Overflow, Some(Length::default())),
            mark(MarkKind::High, tower.stop_level),
            mark(MarkKind::Low, tower.call_level),
            mark(MarkKind::PumpInlet, tower.inlet_level),
        ];
        Some(Waterline {
            summary,
            marks: marks.into_iter().flatten().collect(),
            found: found.map(level),
            left: left.map(level),
        })
    }
}
