//! From a visit to its report: what is said, in what order, in whose words.

use std::collections::BTreeSet;

use super::chart::{Level, LevelMark, MarkKind, Waterline};
use super::doc::{
    Block, Callout, Column, Doc, Fact, Footer, KeyFigure, PageSize, Table, Text, Tone,
};
use super::refill_chart::refill_chart;
use crate::quantity::{Length, System, Value, show};
use crate::record::{
    Figures, LeavingItem, LeavingState, MachineState, Site, Slot, Test, Visit, What, When,
    observed, plant,
};
use crate::refill::{Outcome, Verdict, judge};
use crate::trace::{self, Stage};
use crate::words::{ReportPhrase as P, Words};
use uom::si::length::meter;

/// Height of the overflow lip in the basin's figure.
const LIP: f64 = 0.94;

/// Composes the report of a visit.
pub fn compose(site: &Site, visit: &Visit, system: System, words: Words) -> Doc {
    let author = Composer {
        site,
        visit,
        system,
        words,
    };
    author.doc()
}

struct Composer<'a> {
    site: &'a Site,
    visit: &'a Visit,
    system: System,
    words: Words,
}

impl Composer<'_> {
    fn say(&self, phrase: P) -> String {
        self.words.report_phrase(phrase).to_owned()
    }

    fn amount(&self, value: Value) -> String {
        show(value, self.system).to_string()
    }

    fn doc(&self) -> Doc {
        let title = format!("{}: {}", self.say(P::Title), self.site.name);
        let last = self
            .visit
            .tests
            .last()
            .map(|t| (t, judge(&t.setup, &t.timed())));
        let figures = Figures::of(self.site, self.visit);
        let mut blocks = vec![self.finding(last.as_ref().map(|(_, o)| o))];
        blocks.push(Block::KeyFigures(
            self.key_figures(&figures, last.as_ref().map(|(_, o)| o)),
        ));
        blocks.extend(self.cause());
        blocks.extend(self.refill(last.as_ref()));
        blocks.extend(self.readings());
        blocks.extend(self.numbers(&figures));
        blocks.extend(self.trace());
        blocks.extend(self.leaving());
        blocks.extend(self.notes());
        blocks.extend(self.cautions());
        let fact = |label, value: String| Fact {
            label: self.say(label),
            value,
        };
        Doc {
            language: "en".into(),
            subject: format!("{} · {}", self.say(P::Title), self.say(P::Subject)),
            author: "Coldsump".into(),
            facts: [
                fact(
                    P::Date,
                    format!("{} {}", self.visit.opened.date(), self.visit.opened.clock()),
                ),
                fact(P::Place, self.site.place.clone()),
                fact(P::Complaint, self.visit.complaint.clone()),
                fact(P::MachinesOut, self.machines_out()),
            ]
            .into_iter()
            .filter(|fact| !fact.value.is_empty())
            .collect(),
            mark: Some(self.waterline()),
            blocks,
            page: if self.system == System::Us {
                PageSize::Letter
            } else {
                PageSize::A4
            },
            footer: Footer {
                title,
                page: self.say(P::Page),
                of: self.say(P::Of),
            },
            title: self.site.name.clone(),
        }
    }

    fn machines_out(&self) -> String {
        let out = |m: &&crate::record::Machine| {
            self.visit.machines.get(&(When::AsFound, m.id)) == Some(&MachineState::HighHead)
        };
        let names: Vec<&str> = self
            .site
            .machines
            .iter()
            .filter(out)
            .map(|m| m.name.as_str())
            .collect();
        if names.is_empty() {
            self.say(P::NotAnswered)
        } else {
            names.join(", ")
        }
    }

    /// The first thing the customer reads.
    fn finding(&self, outcome: Option<&Outcome>) -> Block {
        let failed = outcome.is_some_and(|o| o.verdict == Verdict::Fail);
        let Some(cause) = &self.visit.cause else {
            let (tone, word, more) = match failed {
                true => (Tone::ActNow, P::ActWord, self.say(P::RefillFailed)),
                false => (Tone::NotProven, P::NotProvenWord, String::new()),
            };
            return Block::Callout(Callout {
                tone,
                word: self.say(word),
                text: format!("{} {more}", self.say(P::NoCause)).trim().into(),
            });
        };
        let passed =
            outcome.is_some_and(|o| matches!(o.verdict, Verdict::Pass | Verdict::PassWithWatch));
        let (tone, word, rest) = match (passed, outcome) {
            (true, _) => (Tone::Proven, P::ProvenWord, P::RefillProves),
            (_, Some(_)) if failed => (Tone::ActNow, P::ActWord, P::RefillFailed),
            (_, Some(_)) => (Tone::NotProven, P::NotProvenWord, P::RefillDoesNot),
            (_, None) => (Tone::NotProven, P::NotProvenWord, P::RefillNone),
        };
        let name = format!(
            "{} ({}). ",
            self.words.trace_mode(cause.mode),
            self.words.trace_manner(cause.manner)
        );
        let text = Text::default().bold(name).plain(self.say(rest));
        Block::Callout(Callout {
            tone,
            word: self.say(word),
            text,
        })
    }

    fn key_figures(&self, figures: &Figures, outcome: Option<&Outcome>) -> Vec<KeyFigure> {
        let figure = |label, value: Value, note: String| {
            let shown = show(value, self.system);
            KeyFigure {
                label: self.say(label),
                number: shown.number,
                unit: shown.unit.to_owned(),
                note,
            }
        };
        let mut row = Vec::new();
        if let Ok(t) = figures.approach {
            row.push(figure(
                P::Approach,
                Value::temperature_difference(t),
                self.say(P::Found),
            ));
        }
        if let Ok(t) = figures.range {
            row.push(figure(
                P::Range,
                Value::temperature_difference(t),
                self.say(P::Found),
            ));
        }
        if let Some(Ok(fill)) = outcome.map(|o| o.fill_gross) {
            let span = format!(
                "{}: {} – {}",
                self.say(P::Interval),
                self.amount(Value::flow(fill.low)),
                self.amount(Value::flow(fill.high))
            );
            row.push(figure(P::FillFlow, Value::flow(fill.value), span));
        }
        if let Some(test) = self.visit.tests.last() {
            row.push(figure(
                P::Needed,
                Value::flow(test.setup.makeup_need),
                String::new(),
            ));
        }
        row
    }

    fn heading(&self, phrase: P) -> Block {
        Block::Heading {
            level: 2,
            text: self.say(phrase),
        }
    }

    fn cause(&self) -> Vec<Block> {
        let Some(cause) = &self.visit.cause else {
            return vec![];
        };
        let line = self.words.trace_mode_line(cause.mode);
        let mut blocks = vec![self.heading(P::CauseHeading), Block::Paragraph(line.into())];
        for (label, text) in [(P::HowWeKnow, &cause.proof), (P::WorkDone, &cause.work)] {
            if !text.is_empty() {
                let label = format!("{}. ", self.say(label));
                blocks.push(Block::Paragraph(
                    Text::default().bold(label).plain(text.clone()),
                ));
            }
        }
        blocks
    }

    fn refill(&self, last: Option<&(&Test, Outcome)>) -> Vec<Block> {
        let mut blocks = vec![self.heading(P::RefillHeading)];
        let Some((test, outcome)) = last else {
            blocks.push(Block::Paragraph(self.say(P::RefillNotRun).into()));
            return blocks;
        };
        let begun = format!(" ({} {})", test.begun.date(), test.begun.clock());
        let verdict = Text::default()
            .bold(self.words.refill_verdict(outcome.verdict))
            .plain(begun);
        blocks.push(Block::Paragraph(verdict));
        let reasons = outcome
            .findings
            .iter()
            .map(|f| self.words.finding(f, self.system).into())
            .collect();
        blocks.push(Block::List {
            numbered: false,
            items: reasons,
        });
        blocks.push(Block::Figure(refill_chart(
            test,
            outcome,
            self.system,
            self.words,
        )));
        if test.clock_jump_s().is_some() {
            blocks.push(Block::Callout(Callout {
                tone: Tone::Note,
                word: self.say(P::NoteWord),
                text: self.say(P::ClockMoved).into(),
            }));
        }
        blocks
    }

    /// Readings as found and as left, side by side; as left only when there
    /// are any.
    fn readings(&self) -> Vec<Block> {
        let places: BTreeSet<_> = self
            .visit
            .readings
            .keys()
            .map(|slot| (slot.what, slot.machine))
            .collect();
        let left = self.visit.readings.keys().any(|s| s.when == When::AsLeft);
        let cell = |when, what, machine| {
            let slot = Slot {
                when,
                what,
                machine,
            };
            let reading = self.visit.readings.get(&slot);
            reading.map_or("–".to_owned(), |r| self.amount(r.value))
        };
        let row = |(what, machine): (What, Option<_>)| {
            let name = self.words.reading_name(what);
            let owner = self.site.machines.iter().find(|m| Some(m.id) == machine);
            let name = owner.map_or(name.to_owned(), |m| format!("{name}, {}", m.name));
            let mut cells: Vec<Text> = vec![name.into(), cell(When::AsFound, what, machine).into()];
            if left {
                cells.push(cell(When::AsLeft, what, machine).into());
            }
            cells
        };
        let rows = places.into_iter().map(row).collect();
        let mut columns = vec![
            Column::left(self.say(P::Reading), 3.0),
            Column::right(self.say(P::Found), 1.2),
        ];
        if left {
            columns.push(Column::right(self.say(P::Left), 1.2));
        }
        self.table(P::ReadingsHeading, rows, columns)
    }

    fn numbers(&self, figures: &Figures) -> Vec<Block> {
        use crate::words::Phrase as F;
        let f = figures.clone();
        let rows = [
            (F::WetBulb, f.wet_bulb.map(Value::temperature)),
            (F::Approach, f.approach.map(Value::temperature_difference)),
            (F::Range, f.range.map(Value::temperature_difference)),
            (F::Heat, f.heat.map(Value::heat)),
            (F::Evaporation, f.evaporation.map(|e| Value::flow(e.rate()))),
            (F::Makeup, f.water.map(|w| Value::flow(w.makeup))),
            (F::ToDry, f.to_dry.map(Value::duration)),
        ]
        .into_iter()
        .filter_map(|(name, value)| {
            let value = value.ok()?;
            Some(vec![
                self.words.phrase(name).into(),
                self.amount(value).into(),
            ])
        })
        .collect();
        self.table(
            P::NumbersHeading,
            rows,
            [
                Column::left(self.say(P::Item), 3.0),
                Column::right(self.say(P::Found), 1.2),
            ],
        )
    }

    fn trace(&self) -> Vec<Block> {
        let rows = self
            .visit
            .answers
            .iter()
            .map(|a| {
                let stage = match a.evidence.stage {
                    Stage::AsFound => P::StageFound,
                    Stage::Testing => P::StageTesting,
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

    fn leaving(&self) -> Vec<Block> {
        let state = |item| match self.visit.leaving.get(&item) {
            Some(LeavingState::So) => self.words.leaving_state(LeavingState::So).into(),
            Some(other) => Text::default().bold(self.words.leaving_state(*other)),
            None => Text::default().bold(self.say(P::NotAnswered)),
        };
        // Two items to a row, down the left half first.
        let half = LeavingItem::ALL.len().div_ceil(2);
        let (first, second) = LeavingItem::ALL.split_at(half);
        let rows = (0..half)
            .map(|n| {
                let pair = [first.get(n), second.get(n)].into_iter().flatten();
                pair.flat_map(|item| [self.words.leaving_item(*item).into(), state(*item)])
                    .collect()
            })
            .collect();
        let item = || Column::left(self.say(P::Item), 3.0);
        let state = || Column::left(self.say(P::State), 1.0);
        self.table(P::LeavingHeading, rows, [item(), state(), item(), state()])
    }

    fn notes(&self) -> Vec<Block> {
        if self.visit.notes.is_empty() {
            return vec![];
        }
        let items = self
            .visit
            .notes
            .iter()
            .map(|(_, at, text)| Text::from(format!("{} {text}", at.clock())))
            .collect();
        vec![
            self.heading(P::NotesHeading),
            Block::List {
                numbered: false,
                items,
            },
        ]
    }

    fn cautions(&self) -> Vec<Block> {
        let water = match self.visit.tests.is_empty() {
            true => P::CautionWater,
            false => P::CautionLegionella,
        };
        let items = [
            water,
            P::CautionElectrical,
            P::CautionRoof,
            P::CautionLimits,
        ]
        .map(|p| Text::from(self.say(p)))
        .to_vec();
        vec![
            self.heading(P::CautionHeading),
            Block::List {
                numbered: false,
                items,
            },
        ]
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

    fn waterline(&self) -> Waterline {
        use crate::words::Phrase as F;
        let tower = &self.site.tower;
        let depth = tower.basin.depth.get::<meter>();
        // The lip stands a little under the top of the figure, so that water
        // over it can be drawn.
        let height = |below: Length| LIP * (1.0 - below.get::<meter>() / depth);
        let amount = |below: Length| self.amount(Value::level(below));
        let mark = |kind, below, name| LevelMark {
            kind,
            height: height(below),
            label: self.words.phrase(name).to_owned(),
            value: amount(below),
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
        Waterline {
            summary,
            marks: vec![
                mark(MarkKind::Overflow, Length::default(), F::MarkOverflow),
                mark(MarkKind::High, tower.stop_level, F::MarkStop),
                mark(MarkKind::Low, tower.call_level, F::MarkCall),
                mark(MarkKind::PumpInlet, tower.inlet_level, F::MarkInlet),
            ],
            found,
            left,
        }
    }
}
