//! From a visit to its report: what is said, in what order, in whose words.

mod basin;
mod customer;
mod papers;
mod recovery;
mod tables;

use super::doc::{Block, Callout, Doc, Fact, Footer, PageSize, Text, Tone};
use super::refill_chart::refill_chart;
use crate::quantity::{System, Value, show};
use crate::record::{Figures, MachineState, Site, Test, Visit, When};
use crate::refill::{Outcome, Verdict, judge};
use crate::words::{ReportPhrase as P, Words};

/// Composes the report of a visit: the next issue of it. `corrects` says what
/// it puts right in the issue before.
pub fn compose(site: &Site, visit: &Visit, system: System, words: Words, corrects: &str) -> Doc {
    let made = visit.reports.last();
    let before = made.map(|r| (format!("{} {}", r.at.date(), r.at.clock()), corrects));
    let before = before.as_ref().map(|(made, why)| (made.as_str(), *why));
    let author = Composer {
        site,
        visit,
        system,
        words,
        issue: words.issue(visit.reports.len() + 1, before),
    };
    author.doc()
}

struct Composer<'a> {
    site: &'a Site,
    visit: &'a Visit,
    system: System,
    words: Words,
    issue: String,
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
        let outcome = last.as_ref().map(|(_, o)| o);
        let found = Figures::of(self.site, self.visit);
        let left = Figures::at(self.site, self.visit, When::AsLeft);
        // The customer's page.
        let mut blocks = vec![self.finding(outcome)];
        blocks.push(Block::KeyFigures(self.key_figures(&found, &left, outcome)));
        blocks.extend(self.cause());
        blocks.extend(self.advice());
        blocks.extend(self.cost(&found, outcome));
        // The evidence.
        blocks.push(Block::PageBreak);
        blocks.push(Block::Heading {
            level: 1,
            text: self.say(P::EvidenceHeading),
        });
        blocks.extend(self.refill(last.as_ref()));
        blocks.extend(self.recovery());
        blocks.extend(self.machine_rows());
        blocks.extend(self.readings(&found, &left));
        blocks.extend(self.trace());
        blocks.extend(self.leaving());
        blocks.extend(self.notes());
        blocks.extend(self.time());
        blocks.extend(self.photos());
        blocks.extend(self.cautions());
        blocks.extend(self.signature());
        let fact = |label, value: String| Fact {
            label: self.say(label),
            value,
        };
        Doc {
            language: self.words.0.tag().into(),
            subject: format!("{} · {}", self.say(P::Title), self.say(P::Subject)),
            author: self.mechanic(),
            facts: [
                fact(
                    P::Date,
                    format!("{} {}", self.visit.opened.date(), self.visit.opened.clock()),
                ),
                fact(P::Place, self.site.place.clone()),
                fact(P::Complaint, self.visit.complaint.clone()),
                fact(P::MachinesOut, self.machines_out()),
                fact(P::Mechanic, self.mechanic()),
                fact(P::Issue, self.issue.clone()),
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

    /// Who did it, on one line.
    fn mechanic(&self) -> String {
        let card = &self.visit.paper.card;
        let parts = [&card.name, &card.firm, &card.licence, &card.phone];
        let parts: Vec<&str> = parts
            .into_iter()
            .map(|p| p.as_str())
            .filter(|p| !p.is_empty())
            .collect();
        parts.join(" · ")
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
        match self.machines(When::AsFound, MachineState::HighHead) {
            None => self.say(P::NotAnswered),
            Some((0, all)) => self.words.count_of(0, all),
            Some(_) => names.join(", "),
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
        let name = match cause.also.is_empty() {
            true => name,
            false => format!("{name}{}. ", self.words.trace_named(&cause.also)),
        };
        let text = Text::default().bold(name).plain(self.say(rest));
        Block::Callout(Callout {
            tone,
            word: self.say(word),
            text,
        })
    }

    fn heading(&self, phrase: P) -> Block {
        Block::Heading {
            level: 2,
            text: self.say(phrase),
        }
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
        let given = self.drain_and_valve(test, outcome);
        if !given.is_empty() {
            blocks.push(Block::Fine(vec![given.into()]));
        }
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
        let said = [
            water,
            P::CautionElectrical,
            P::CautionRoof,
            P::CautionLimits,
        ];
        let said = said.map(|p| Text::from(self.say(p)));
        vec![self.heading(P::CautionHeading), Block::Fine(said.to_vec())]
    }
}
