//! The loop's recovery after the fix, and what was known of drain and valve.

use super::Composer;
use crate::quantity::Value;
use crate::record::{LoopPoint, Test, What, outlook};
use crate::refill::Outcome;
use crate::report::doc::{Block, Column, Table, Text};
use crate::report::recovery_chart;
use crate::words::{Phrase as F, ReportPhrase as P};

/// Most readings in the table.
const ROWS: usize = 16;

impl Composer<'_> {
    /// What was typed of valve, mains and drain, and how the drawdown went.
    pub(super) fn drain_and_valve(&self, test: &Test, outcome: &Outcome) -> String {
        let of = |name, value: Option<String>| Some((name, value?));
        let setup = &test.setup;
        let drain = outcome.drawdown.as_ref().ok().map(|fit| {
            let [value, low, high] =
                [fit.flow.value, fit.flow.low, fit.flow.high].map(|f| self.amount(Value::flow(f)));
            format!("{value} ({low} – {high})")
        });
        let given = [
            of(
                F::DrainToCall,
                outcome
                    .delays
                    .draw_to_call
                    .ok()
                    .map(|s| self.words.span(&s)),
            ),
            of(F::DrainFlow, drain),
            of(
                F::DrainBore,
                setup.drain.map(|d| self.amount(Value::level(d))),
            ),
            of(F::ValveCv, setup.valve_cv.map(|cv| format!("{cv}"))),
            of(
                F::MainsPressure,
                setup.mains.map(|p| self.amount(Value::gauge_pressure(p))),
            ),
        ];
        let said: Vec<String> = given
            .into_iter()
            .flatten()
            .map(|(name, value)| format!("{}: {value}", self.words.phrase(name)))
            .collect();
        said.join(" · ")
    }

    /// Readings of the loop against what was to be expected, and their figures.
    pub(super) fn recovery(&self) -> Vec<Block> {
        let points = &self.visit.recovery;
        let (Some(first), Some(last)) = (points.first(), points.last()) else {
            return Vec::new();
        };
        let shown = (1.25 * last.at.seconds_since(&first.at)).max(3600.0);
        let outlook = outlook(self.site, self.visit, shown).ok();
        let step = points.len().div_ceil(ROWS).max(1);
        let row = |p: &LoopPoint| {
            let bounds = outlook.as_ref().and_then(|o| o.bounds(p));
            let foreseen = bounds.map(|b| self.words.foreseen(p, b, self.system));
            let (name, value) = (self.reading_of(p.what, p.machine), self.amount(p.value));
            vec![
                Text::from(p.at.clock()),
                format!("{name}: {value}").into(),
                Text::from(foreseen.unwrap_or("–".into())),
            ]
        };
        let table = Block::Table(Table {
            caption: String::new(),
            columns: vec![
                Column::left(self.say(P::Time), 0.7),
                Column::left(self.say(P::Reading), 2.6),
                Column::left(self.say(P::Expected), 2.2),
            ],
            rows: points.iter().step_by(step).map(row).collect(),
        });
        let mut blocks = vec![Block::Heading {
            level: 2,
            text: self.words.phrase(F::RecoveryTitle).to_owned(),
        }];
        let Some(outlook) = &outlook else {
            blocks.push(table);
            return blocks;
        };
        let settles = self.amount(Value::temperature(outlook.settles));
        blocks.push(Block::Paragraph(self.words.settles_at(&settles).into()));
        for what in [What::EnteringWater, What::HeadPressure] {
            let chart = recovery_chart(self.visit, outlook, what, self.system, self.words);
            blocks.extend(chart.map(Block::Figure));
            if what == What::HeadPressure && points.iter().any(|p| p.what == what) {
                let machine = self.site.machines.iter();
                let mut machine = machine.filter(|m| Some(m.id) == outlook.headed);
                let name = machine.next().map_or("", |m| m.name.as_str());
                let said = self.words.head_foreseen(name);
                blocks.push(Block::Fine(vec![said.into()]));
            }
        }
        blocks.push(table);
        blocks
    }
}
