//! Readings, numbers, the trace and the leaving round as the report shows them.

use std::collections::BTreeSet;

use super::Composer;
use crate::quantity::Value;
use crate::record::{
    Figures, LeavingItem, LeavingState, MachineId, MachineState, Slot, What, When, observed, plant,
};
use crate::report::doc::{Block, Column, Table, Text};
use crate::trace::{self, Stage};
use crate::words::ReportPhrase as P;

impl Composer<'_> {
    /// What a reading is of.
    pub(super) fn reading_of(&self, what: What, machine: Option<MachineId>) -> String {
        let name = self.words.reading_name(what);
        let owner = self.site.machines.iter().find(|m| Some(m.id) == machine);
        owner.map_or(name.to_owned(), |m| format!("{name}, {}", m.name))
    }

    fn reading(&self, when: When, what: What, machine: Option<MachineId>) -> Option<String> {
        let slot = Slot {
            when,
            what,
            machine,
        };
        let reading = self.visit.readings.get(&slot)?;
        Some(self.amount(reading.value))
    }

    /// A table with a column as found, and one as left if anything is in it.
    fn found_and_left(
        &self,
        heading: P,
        head: P,
        rows: Vec<(String, Option<String>, Option<String>)>,
    ) -> Vec<Block> {
        let left = rows.iter().any(|(.., left)| left.is_some());
        let mut columns = vec![
            Column::left(self.say(head), 2.4),
            Column::right(self.say(P::Found), 1.5),
        ];
        if left {
            columns.push(Column::right(self.say(P::Left), 1.5));
        }
        let cell = |text: Option<String>| Text::from(text.unwrap_or("–".into()));
        let row = |(name, found, was_left): (String, _, _)| {
            let mut cells = vec![name.into(), cell(found)];
            if left {
                cells.push(cell(was_left));
            }
            cells
        };
        let rows = rows.into_iter().map(row).collect();
        self.table(heading, rows, columns)
    }

    /// Each machine's state and head pressure.
    pub(super) fn machine_rows(&self) -> Vec<Block> {
        let cell = |when, id| {
            let state = self.visit.machines.get(&(when, id));
            let state = state.map(|s| self.words.machine_state(*s).to_owned());
            let head = self.reading(when, What::HeadPressure, Some(id));
            let parts: Vec<String> = state.into_iter().chain(head).collect();
            (!parts.is_empty()).then(|| parts.join(" · "))
        };
        let rows = self.site.machines.iter().filter_map(|m| {
            let (found, left) = (cell(When::AsFound, m.id), cell(When::AsLeft, m.id));
            let name = match m.refrigerant {
                Some(fluid) => format!("{}, {}", m.name, fluid.designation()),
                None => m.name.clone(),
            };
            (found.is_some() || left.is_some()).then_some((name, found, left))
        });
        self.found_and_left(P::MachinesHeading, P::MachineHead, rows.collect())
    }

    /// Readings and what they come to, as found and as left.
    pub(super) fn readings(&self, found: &Figures, left: &Figures) -> Vec<Block> {
        use crate::words::Phrase as F;
        let places: BTreeSet<_> = self
            .visit
            .readings
            .keys()
            .filter(|slot| slot.what != What::HeadPressure)
            .map(|slot| (slot.what, slot.machine))
            .collect();
        let mut rows = Vec::new();
        for (what, machine) in places {
            rows.push((
                self.reading_of(what, machine),
                self.reading(When::AsFound, what, machine),
                self.reading(When::AsLeft, what, machine),
            ));
        }
        let numbers = |f: &Figures| {
            let f = f.clone();
            [
                (F::WetBulb, f.wet_bulb.map(Value::temperature)),
                (F::Approach, f.approach.map(Value::temperature_difference)),
                (F::Range, f.range.map(Value::temperature_difference)),
                (F::Heat, f.heat.map(Value::heat)),
                (F::Evaporation, f.evaporation.map(|e| Value::flow(e.rate()))),
                (F::Makeup, f.water.map(|w| Value::flow(w.makeup))),
                (F::ToDry, f.to_dry.map(Value::duration)),
            ]
            .map(|(name, value)| (name, value.ok().map(|v| self.amount(v))))
        };
        for ((name, found), (_, left)) in numbers(found).into_iter().zip(numbers(left)) {
            if found.is_some() || left.is_some() {
                rows.push((self.words.phrase(name).to_owned(), found, left));
            }
        }
        self.found_and_left(P::ReadingsHeading, P::Reading, rows)
    }

    pub(super) fn trace(&self) -> Vec<Block> {
        let rows = self
            .visit
            .answers
            .iter()
            .map(|a| {
                let stage = match a.evidence.stage {
                    Stage::AsFound => P::StageFound,
                    Stage::WaterLetIn => P::StageWaterLetIn,
                    Stage::Testing => P::StageTesting,
                    Stage::Corrected => P::StageCorrected,
                };
                vec![
                    self.words.trace_check(a.evidence.check).into(),
                    self.words.trace_answer(a.evidence.answer).into(),
                    self.say(stage).into(),
                    a.at.clock().into(),
                ]
            })
            .collect();
        let mut blocks = self.table(
            P::TraceHeading,
            rows,
            [
                Column::left(self.say(P::Check), 2.4),
                Column::left(self.say(P::Answer), 2.4),
                Column::left(self.say(P::Stage), 1.2),
                Column::right(self.say(P::Time), 0.7),
            ],
        );
        // Odds are for the search; a named cause stands on its proof.
        if !blocks.is_empty() && self.visit.cause.is_none() {
            let belief = trace::infer(
                &plant(self.site),
                &observed(self.site, self.visit),
                &self.visit.evidence(),
            );
            let top: Vec<String> = belief
                .suspects
                .iter()
                .take(3)
                .map(|s| {
                    format!(
                        "{} {}",
                        self.words.trace_mode(s.mode),
                        self.words.percent(s.probability)
                    )
                })
                .collect();
            let label = format!("{}: ", self.say(P::SuspectsLeft));
            blocks.push(Block::Paragraph(
                Text::default().bold(label).plain(top.join("; ")),
            ));
        }
        blocks
    }

    pub(super) fn leaving(&self) -> Vec<Block> {
        let line = |state: Option<LeavingState>| {
            let items: Vec<&str> = LeavingItem::ALL
                .into_iter()
                .filter(|item| self.visit.leaving.get(item).copied() == state)
                .map(|item| self.words.leaving_item(item))
                .collect();
            let name = match state {
                Some(state) => self.words.leaving_state(state).to_owned(),
                None => self.say(P::NotAnswered),
            };
            (!items.is_empty()).then(|| {
                Text::default()
                    .bold(format!("{name}: "))
                    .plain(items.join("; "))
            })
        };
        // What still wants doing comes first.
        let items = [
            Some(LeavingState::NotSo),
            None,
            Some(LeavingState::So),
            Some(LeavingState::NoneHere),
        ];
        vec![
            self.heading(P::LeavingHeading),
            Block::List {
                numbered: false,
                items: items
                    .into_iter()
                    .filter_map(line)
                    .chain(self.machines_left())
                    .collect(),
            },
        ]
    }

    /// Machines that do not run as left, by name; nothing when all do.
    fn machines_left(&self) -> Option<Text> {
        use crate::words::Phrase as F;
        let states = [
            (MachineState::HighHead, F::MachineHighHead),
            (MachineState::Stopped, F::MachineStopped),
        ];
        let group = |(state, name)| {
            let named: Vec<&str> = (self.site.machines.iter())
                .filter(|m| self.visit.machines.get(&(When::AsLeft, m.id)) == Some(&state))
                .map(|m| m.name.as_str())
                .collect();
            let name = self.words.phrase(name);
            (!named.is_empty()).then(|| format!("{name}: {}", named.join(", ")))
        };
        let groups: Vec<String> = states.into_iter().filter_map(group).collect();
        let label = format!("{}: ", self.words.phrase(F::MachinesAsLeft));
        (!groups.is_empty()).then(|| Text::default().bold(label).plain(groups.join("; ")))
    }

    /// A heading and a table; nothing at all when there are no rows.
    fn table(
        &self,
        heading: P,
        rows: Vec<Vec<Text>>,
        columns: impl Into<Vec<Column>>,
    ) -> Vec<Block> {
        if rows.is_empty() {
            return vec![];
        }
        let table = Table {
            caption: String::new(),
            columns: columns.into(),
            rows,
        };
        vec![self.heading(heading), Block::Table(table)]
    }
}
