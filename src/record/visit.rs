//! A visit as folded from its entries. Pure: the same set of entries gives
//! the same visit in whatever order and however often they arrive.

use super::body::{Body, LeavingItem, LeavingState, MachineState, Way, What, When};
use super::entry::{About, Entry};
use super::id::{EntryId, FileId, MachineId, SiteId, TestId, VisitId};
use super::moment::Moment;
use super::standing::withdrawn;
use super::table::Table;
use crate::quantity::{Length, Unit, Value};
use crate::refill::{Mark, MarkKind, Phase, Setup, phase};
use crate::trace::{Check, Correction, Evidence, Manner, Mode, Stage};

/// A reading that stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The entries that say so: the last one counts, the ones before it were
    /// corrected. Clearing a reading takes all of them back.
    pub entries: Vec<EntryId>,
    /// When.
    pub at: Moment,
    /// Value in SI.
    pub value: Value,
    /// As typed.
    pub typed: String,
    /// In this unit.
    pub unit: Unit,
}

/// Where a reading belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Slot {
    /// As found or as left.
    pub when: When,
    /// Of what.
    pub what: What,
    /// On which machine.
    pub machine: Option<MachineId>,
}

/// A check's standing answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Answered {
    /// The entry that says so.
    pub entry: EntryId,
    /// When.
    pub at: Moment,
    /// Check, answer and stage.
    pub evidence: Evidence,
}

/// A mark of a refill test, with its place in the log.
#[derive(Clone, Debug, PartialEq)]
pub struct LoggedMark {
    /// The entry that says so.
    pub entry: EntryId,
    /// When.
    pub at: Moment,
    /// What was seen.
    pub kind: MarkKind,
}

/// A refill test as logged.
#[derive(Clone, Debug, PartialEq)]
pub struct Test {
    /// Its name.
    pub id: TestId,
    /// When it was begun: zero of the test's clock.
    pub begun: Moment,
    /// Basin, need and limits.
    pub setup: Setup,
    /// Its marks, by time of writing.
    pub marks: Vec<LoggedMark>,
}

impl Test {
    /// The marks on the test's own clock: seconds since it was begun.
    pub fn timed(&self) -> Vec<Mark> {
        self.marks
            .iter()
            .map(|m| Mark {
                at_s: m.at.seconds_since(&self.begun),
                kind: m.kind,
            })
            .collect()
    }

    /// The largest shift of the phone's wall clock seen between neighbouring
    /// marks of one run of the page, in seconds, when it is over two seconds.
    pub fn clock_jump_s(&self) -> Option<f64> {
        let moments: Vec<&Moment> = std::iter::once(&self.begun)
            .chain(self.marks.iter().map(|m| &m.at))
            .collect();
        moments
            .windows(2)
            .filter_map(|w| w[1].clock_jump_since(w[0]))
            .filter(|jump| jump.abs() > 2.0)
            .max_by(|a, b| a.abs().total_cmp(&b.abs()))
    }
}

/// The cause as named.
#[derive(Clone, Debug, PartialEq)]
pub struct Cause {
    /// Which fault.
    pub mode: Mode,
    /// Steady or intermittent.
    pub manner: Manner,
    /// How we know.
    pub proof: String,
    /// What was done.
    pub work: String,
}

/// A report that was made.
#[derive(Clone, Debug, PartialEq)]
pub struct MadeReport {
    /// The kept file.
    pub file: FileId,
    /// Its name.
    pub name: String,
    /// Its size.
    pub bytes: u32,
    /// When it was made.
    pub at: Moment,
    /// By what means it was handed over, and when.
    pub handed: Vec<(Way, Moment)>,
    /// When the person said that it has arrived.
    pub confirmed: Option<Moment>,
}

/// A visit, folded.
#[derive(Clone, Debug, PartialEq)]
pub struct Visit {
    /// Its name.
    pub id: VisitId,
    /// Where.
    pub site: SiteId,
    /// When it was opened.
    pub opened: Moment,
    /// What the customer said.
    pub complaint: String,
    /// Readings that stand.
    pub readings: Table<Slot, Reading>,
    /// Machines' states that stand.
    pub machines: Table<(When, MachineId), MachineState>,
    /// Checks answered, latest answer each, in order of time.
    pub answers: Vec<Answered>,
    /// What was put right during the trace, in order of time.
    pub corrections: Vec<Correction>,
    /// Refill tests in order of time.
    pub tests: Vec<Test>,
    /// The cause as last named.
    pub cause: Option<Cause>,
    /// The leaving round.
    pub leaving: Table<LeavingItem, LeavingState>,
    /// Notes in order of time.
    pub notes: Vec<(EntryId, Moment, String)>,
    /// Reports in order of time.
    pub reports: Vec<MadeReport>,
    /// When it was closed.
    pub closed: Option<Moment>,
}

impl Visit {
    /// Folds a visit from entries; those about other things are passed over.
    /// `None` when no entry opens it.
    pub fn fold<'a>(id: VisitId, entries: impl IntoIterator<Item = &'a Entry>) -> Option<Self> {
        let mut mine: Table<EntryId, &Entry> = Table::new();
        for entry in entries {
            if entry.about == About::Visit(id) {
                mine.insert(entry.id, entry);
            }
        }
        let withdrawn = withdrawn(&mine);
        let standing = || {
            mine.values()
                .copied()
                .filter(|e| !withdrawn.contains_key(&e.id))
        };
        let mut visit = standing().find_map(|e| match &e.body {
            Body::VisitOpened { site, complaint } => Some(Visit {
                id,
                site: *site,
                opened: e.at,
                complaint: complaint.clone(),
                readings: Table::new(),
                machines: Table::new(),
                answers: Vec::new(),
                corrections: Vec::new(),
                tests: Vec::new(),
                cause: None,
                leaving: Table::new(),
                notes: Vec::new(),
                reports: Vec::new(),
                closed: None,
            }),
            _ => None,
        })?;
        // Beginnings first, so that a mark or a hand-over never comes before
        // the test or report it belongs to, whatever the phones' clocks said.
        for entry in standing() {
            visit.begin(entry);
        }
        for entry in standing() {
            visit.take(entry);
        }
        Some(visit)
    }

    fn begin(&mut self, entry: &Entry) {
        match &entry.body {
            Body::TestBegun { test, setup } => self.tests.push(Test {
                id: *test,
                begun: entry.at,
                setup: *setup,
                marks: Vec::new(),
            }),
            Body::ReportMade { file, name, bytes } => self.reports.push(MadeReport {
                file: *file,
                name: name.clone(),
                bytes: *bytes,
                at: entry.at,
                handed: Vec::new(),
                confirmed: None,
            }),
            _ => {}
        }
    }

    fn take(&mut self, entry: &Entry) {
        let at = entry.at;
        match &entry.body {
            Body::ReadingTaken {
                what,
                machine,
                when,
                value,
                typed,
                unit,
            } => {
                let slot = Slot {
                    when: *when,
                    what: *what,
                    machine: *machine,
                };
                let mut entries = self.readings.remove(&slot).map_or(vec![], |r| r.entries);
                entries.push(entry.id);
                let reading = Reading {
                    entries,
                    at,
                    value: *value,
                    typed: typed.clone(),
                    unit: *unit,
                };
                self.readings.insert(slot, reading);
            }
            Body::MachineSeen {
                machine,
                when,
                state,
            } => {
                self.machines.insert((*when, *machine), *state);
            }
            Body::CheckAnswered {
                check,
                answer,
                stage,
                value,
                again,
            } => {
                if !again {
                    self.take_back_answer(*check, *stage);
                }
                let evidence = Evidence {
                    check: *check,
                    answer: *answer,
                    stage: *stage,
                    value: *value,
                };
                self.answers.push(Answered {
                    entry: entry.id,
                    at,
                    evidence,
                });
            }
            Body::Corrected { mode } => self.corrections.push(Correction {
                mode: *mode,
                after: self.answers.len(),
            }),
            Body::Marked { test, mark } => {
                if let Some(test) = self.tests.iter_mut().find(|t| t.id == *test) {
                    test.marks.push(LoggedMark {
                        entry: entry.id,
                        at,
                        kind: *mark,
                    });
                }
            }
            Body::CauseNamed {
                mode,
                manner,
                proof,
                work,
            } => {
                self.cause = Some(Cause {
                    mode: *mode,
                    manner: *manner,
                    proof: proof.clone(),
                    work: work.clone(),
                });
            }
            Body::LeavingAnswered { item, state } => {
                self.leaving.insert(*item, *state);
            }
            Body::NoteWritten { text } => self.notes.push((entry.id, at, text.clone())),
            Body::ReportHandedOver { file, way } => {
                if let Some(report) = self.reports.iter_mut().find(|r| r.file == *file) {
                    report.handed.push((*way, at));
                }
            }
            Body::ReportConfirmed { file } => {
                if let Some(report) = self.reports.iter_mut().find(|r| r.file == *file) {
                    report.confirmed = Some(at);
                }
            }
            Body::VisitClosed => self.closed = Some(at),
            Body::SiteDescribed { .. }
            | Body::VisitOpened { .. }
            | Body::TestBegun { .. }
            | Body::ReportMade { .. }
            | Body::Withdrawn { .. } => {}
        }
    }

    /// The standing reading of something that is not a machine's.
    pub fn reading(&self, when: When, what: What) -> Option<&Reading> {
        self.readings.get(&Slot {
            when,
            what,
            machine: None,
        })
    }

    /// Whether anything was read or answered yet.
    pub fn has_begun(&self) -> bool {
        !(self.readings.is_empty() && self.machines.is_empty() && self.answers.is_empty())
    }

    /// The refill test that is begun and not ended.
    pub fn running_test(&self) -> Option<&Test> {
        self.tests
            .last()
            .filter(|t| phase(&t.timed()) != Phase::Stopped)
    }

    /// The last known basin level below the lip: the newest of readings and
    /// refill marks.
    pub fn last_level(&self) -> Option<Length> {
        let read = [When::AsFound, When::AsLeft]
            .into_iter()
            .filter_map(|when| {
                let reading = self.reading(when, What::BasinLevel)?;
                Some((reading.at.ms, reading.value.as_level()?))
            });
        let marked = self
            .tests
            .iter()
            .flat_map(|t| &t.marks)
            .filter_map(|m| match m.kind {
                MarkKind::Level { below_overflow } => Some((m.at.ms, below_overflow)),
                _ => None,
            });
        read.chain(marked)
            .max_by_key(|(ms, _)| *ms)
            .map(|(_, level)| level)
    }

    /// A later answer of the same check at the same stage takes the place of
    /// the last one before, unless it was taken again; corrections keep their place among the rest.
    fn take_back_answer(&mut self, check: Check, stage: Stage) {
        let same = |a: &Answered| (a.evidence.check, a.evidence.stage) == (check, stage);
        if let Some(i) = self.answers.iter().rposition(same) {
            self.answers.remove(i);
            for correction in self.corrections.iter_mut().filter(|c| c.after > i) {
                correction.after -= 1;
            }
        }
    }

    /// The evidence of the trace, in order of time.
    pub fn evidence(&self) -> Vec<Evidence> {
        self.answers.iter().map(|a| a.evidence).collect()
    }
}
