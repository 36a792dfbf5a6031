//! A visit as folded from its entries. Pure: the same set of entries gives
//! the same visit in whatever order and however often they arrive.

use super::body::{Body, LeavingItem, LeavingState, MachineState, Way, What, When};
use super::entry::{About, Entry};
use super::id::{EntryId, FileId, MachineId, SiteId, TestId, VisitId};
use super::moment::Moment;
use super::paperwork::Paperwork;
use super::recovery::LoopPoint;
use super::standing::withdrawn;
use super::table::Table;
use super::test::Test;
use crate::quantity::{Length, Unit, Value};
use crate::refill::{Finding, MarkKind, Phase, Verdict, judge, phase};
use crate::trace::{Answer, Check, Correction, Evidence, Manner, Mode, Stage};

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
    /// What else was found and put right.
    pub also: Vec<Mode>,
}

impl Cause {
    /// The cause and what else was found.
    pub fn modes(&self) -> Vec<Mode> {
        let mut modes = vec![self.mode];
        modes.extend(&self.also);
        modes
    }
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
    /// SHA-256 of its bytes in hexadecimal; empty in the first entries.
    pub sha256: String,
    /// What it corrects in the issue before it.
    pub corrects: String,
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
    /// Checks answered, in order of time. A check taken again stands beside
    /// the first time: both were seen. A slip is taken back.
    pub answers: Vec<Answered>,
    /// What was put right during the trace, in order of time.
    pub corrections: Vec<Correction>,
    /// The entry that says so, and when, of each of [`Visit::corrections`].
    pub corrected: Vec<(EntryId, Moment)>,
    /// Refill tests in order of time.
    pub tests: Vec<Test>,
    /// The loop on its way back, in order of time.
    pub recovery: Vec<LoopPoint>,
    /// Machines seen running as left, in order of time.
    pub started: Vec<(Moment, MachineId)>,
    /// The cause as last named.
    pub cause: Option<Cause>,
    /// The leaving round.
    pub leaving: Table<LeavingItem, LeavingState>,
    /// Notes in order of time.
    pub notes: Vec<(EntryId, Moment, String)>,
    /// Work, parts, time, advice, photos, signature.
    pub paper: Paperwork,
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
                corrected: Vec::new(),
                tests: Vec::new(),
                recovery: Vec::new(),
                started: Vec::new(),
                cause: None,
                leaving: Table::new(),
                notes: Vec::new(),
                paper: Paperwork::default(),
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
        for entry in standing() {
            if let Body::Withdrawn { entry: of } = &entry.body
                && let Some(Body::Marked { test, mark, .. }) = mine.get(of).map(|e| &e.body)
                && let Some(test) = visit.test(*test)
                && test.marks.last().is_none_or(|m| m.entry < entry.id)
            {
                test.undone = Some((*mark, entry.id));
            }
        }
        Some(visit)
    }

    fn begin(&mut self, entry: &Entry) {
        self.paper.begin(entry);
        match &entry.body {
            Body::TestBegun { test, setup } => {
                self.tests.push(Test::begin(*test, entry.at, *setup));
            }
            Body::ReportMade {
                file,
                name,
                bytes,
                sha256,
                corrects,
            } => self.reports.push(MadeReport {
                file: *file,
                name: name.clone(),
                bytes: *bytes,
                sha256: sha256.clone(),
                corrects: corrects.clone(),
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
                if (*when, *state) == (When::AsLeft, MachineState::Running) {
                    self.started.push((at, *machine));
                }
            }
            Body::CheckAnswered {
                check,
                answer,
                stage,
                value,
            } => {
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
            Body::Corrected { mode } => {
                self.corrections.push(Correction {
                    mode: *mode,
                    after: self.answers.len(),
                });
                self.corrected.push((entry.id, at));
            }
            Body::Marked { test, mark, typed } => {
                let stood = (self.answers.len(), self.corrections.len());
                if let Some(test) = self.test(*test) {
                    if *mark == MarkKind::Stopped {
                        test.ended = Some(stood);
                    }
                    test.mark(entry.id, at, *mark, typed.clone());
                }
            }
            Body::LoopRead {
                what,
                machine,
                value,
                typed,
            } => self.recovery.push(LoopPoint {
                entry: entry.id,
                at,
                what: *what,
                machine: *machine,
                value: *value,
                typed: typed.clone(),
            }),
            Body::MarkMoved { test, mark, by_s } => {
                if let Some(test) = self.test(*test) {
                    test.move_mark(*mark, *by_s, entry.id);
                }
            }
            Body::TestResumed { test, last, slept } => {
                if let Some(test) = self.test(*test) {
                    test.resume(last, &at, *slept);
                }
            }
            Body::CauseNamed {
                mode,
                manner,
                proof,
                work,
                also,
            } => {
                self.cause = Some(Cause {
                    mode: *mode,
                    manner: *manner,
                    proof: proof.clone(),
                    work: work.clone(),
                    also: also.clone(),
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
            | Body::PhotoTaken { .. }
            | Body::Withdrawn { .. } => {}
            Body::LineWritten { .. } | Body::PhotoDrawn { .. } | Body::Signed { .. } => {
                self.paper.take(entry)
            }
        }
    }

    fn test(&mut self, id: TestId) -> Option<&mut Test> {
        self.tests.iter_mut().find(|t| t.id == id)
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
        // By the order of writing: the phone's clock may have been moved.
        let read = [When::AsFound, When::AsLeft]
            .into_iter()
            .filter_map(|when| {
                let reading = self.reading(when, What::BasinLevel)?;
                Some((*reading.entries.last()?, reading.value.as_level()?))
            });
        let marked = self
            .tests
            .iter()
            .flat_map(|t| &t.marks)
            .filter_map(|m| match m.kind {
                MarkKind::Level { below_overflow } => Some((m.entry, below_overflow)),
                _ => None,
            });
        read.chain(marked)
            .max_by_key(|(entry, _)| *entry)
            .map(|(_, level)| level)
    }

    /// The evidence of the trace, in order of time, with what the refill tests
    /// measured.
    pub fn evidence(&self) -> Vec<Evidence> {
        self.told().0
    }

    /// The same, and the corrections in their places among it. A test says what
    /// the same check answered by hand would say; such an answer at the same
    /// stage stands before it.
    pub fn told(&self) -> (Vec<Evidence>, Vec<Correction>) {
        let mut evidence: Vec<Evidence> = self.answers.iter().map(|a| a.evidence).collect();
        let mut more = 0;
        for test in &self.tests {
            let Some((answers, corrected)) = test.ended else {
                continue;
            };
            // What was corrected since is not what was tested.
            if self.corrections.len() > corrected {
                continue;
            }
            let stage = match corrected {
                0 => Stage::Testing,
                _ => Stage::Corrected,
            };
            for (check, answer) in measured(test) {
                let same = |e: &Evidence| (e.check, e.stage) == (check, stage);
                if self.by_hand(same) {
                    continue;
                }
                let said = Evidence {
                    check,
                    answer,
                    stage,
                    value: None,
                };
                match evidence.iter_mut().find(|e| same(e)) {
                    Some(earlier) => *earlier = said,
                    None => {
                        evidence.insert((answers + more).min(evidence.len()), said);
                        more += 1;
                    }
                }
            }
        }
        (evidence, self.corrections.clone())
    }

    fn by_hand(&self, same: impl Fn(&Evidence) -> bool) -> bool {
        self.answers.iter().any(|a| same(&a.evidence))
    }
}

/// What a test says to the trace: its verdict, and whether the fill shut.
fn measured(test: &Test) -> Vec<(Check, Answer)> {
    let outcome = judge(&test.setup, &test.timed());
    let found = |f: fn(&Finding) -> bool| outcome.findings.iter().any(f);
    let none = |f: &Finding| {
        matches!(
            f,
            Finding::NeverCalled { .. }
                | Finding::CalledNoWater { .. }
                | Finding::StoppedShort { .. }
        )
    };
    let slow = |f: &Finding| matches!(f, Finding::FillBelowNeed(_) | Finding::FillBelowDesign(_));
    let on = |f: &Finding| {
        matches!(
            f,
            Finding::NoShutOff { .. } | Finding::AfterDrip { .. } | Finding::ValvePasses { .. }
        )
    };
    let mut said = Vec::new();
    match outcome.verdict {
        Verdict::Pass | Verdict::PassWithWatch => said.push(Answer::Refilled),
        Verdict::Fail if found(none) => said.push(Answer::DidNotRefill),
        Verdict::Fail if found(slow) => said.push(Answer::RefilledSlowly),
        _ => {}
    }
    if found(on) {
        said.push(Answer::RunsOn);
    } else if found(|f| matches!(f, Finding::Held { told: true, .. })) {
        said.push(Answer::FillShuts);
    }
    let check = |answer: &Answer| match answer {
        Answer::RunsOn | Answer::FillShuts => Check::FillStops,
        _ => Check::RefillTest,
    };
    said.into_iter().map(|a| (check(&a), a)).collect()
}
