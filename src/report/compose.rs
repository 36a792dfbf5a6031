//! From a visit to its report: what is said, in what order, in whose words.

mod basin;
mod tables;

use super::doc::{Block, Callout, Doc, Fact, Footer, KeyFigure, PageSize, Text, Tone};
use super::refill_chart::refill_chart;
use crate::quantity::{System, Value, show};
use crate::record::{Figures, MachineState, Site, Test, Visit, When};
use crate::refill::{Outcome, Verdict, judge};
use crate::words::{ReportPhrase as P, Words};

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
            mark: self.waterline(),
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
        let watch = outcome.is_some_and(|o| o.verdict == Verdict::PassWithWatch);
        let (tone, word, rest) = match (passed, outcome) {
            // The test proves the makeup chain; it says nothing of a fan.
            (true, _) if !cause.mode.lowers_basin() => {
                (Tone::NotProven, P::NotProvenWord, P::RefillOther)
            }
            (true, _) if watch => (Tone::Proven, P::ProvenWord, P::RefillProvesWatch),
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
}
