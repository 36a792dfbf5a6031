//! A refill test as logged, and its clock.
//!
//! Every entry carries the phone's wall clock and the page's own steady clock.
//! Within one run of the page the steady clock is believed, except across a
//! sleep, in which it stands still on some phones; between two runs there is
//! only the wall clock. Summer time changes neither.

use super::id::{EntryId, TestId};
use super::moment::Moment;
use crate::refill::{ExpectedMark, Mark, MarkKind, Setup};

/// The clocks may drift apart this far, in seconds.
const DRIFT_S: f64 = 2.0;
/// Farthest a mark may be moved, in seconds.
pub const MOST_MOVED_S: f64 = 300.0;
/// A gap shorter than this is not worth showing, in seconds.
const GAP_S: f64 = 5.0;

/// A mark of a refill test, with its place in the log.
#[derive(Clone, Debug, PartialEq)]
pub struct LoggedMark {
    /// The entry that says so.
    pub entry: EntryId,
    /// When it was tapped.
    pub at: Moment,
    /// When it was tapped, on the test's clock.
    pub tapped_s: f64,
    /// By how much the tester moved it, negative to earlier, and the entry
    /// that says so.
    pub moved: Option<(f64, EntryId)>,
    /// What was seen.
    pub kind: MarkKind,
    /// A level as it was typed in the basin's own scale.
    pub typed: Option<String>,
}

impl LoggedMark {
    /// When it was, on the test's clock.
    pub fn at_s(&self) -> f64 {
        self.tapped_s + self.moved.map_or(0.0, |m| m.0)
    }
}

/// Why nothing was written for a while.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Why {
    /// The phone was locked or the page out of sight.
    Away,
    /// The page was loaded again: a reload, a killed browser, a dead battery.
    Restarted,
    /// The phone's clock was moved by so many seconds; the test's clock was not.
    ClockMoved(f64),
    /// The clock went backwards while the page was not there: how long that was
    /// is not known.
    NotKnown,
}

/// A stretch in which the phone did not watch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// From, on the test's clock.
    pub from_s: f64,
    /// To.
    pub to_s: f64,
    /// Why.
    pub why: Why,
}

/// A refill test as logged.
#[derive(Debug, PartialEq)]
pub struct Test {
    /// Its name.
    pub id: TestId,
    /// When it was begun: zero of the test's clock.
    pub begun: Moment,
    /// Basin, need and limits.
    pub setup: Setup,
    /// Its marks, by time of writing.
    pub marks: Vec<LoggedMark>,
    /// When the phone did not watch, or its clock was moved.
    pub gaps: Vec<Gap>,
    /// The mark taken back last, when nothing was marked since: what it was,
    /// and the entry that took it back.
    pub undone: Option<(MarkKind, EntryId)>,
    /// How many answers and corrections stood when it was ended.
    pub(super) ended: Option<(usize, usize)>,
    /// The newest moment and its place on the test's clock.
    last: (Moment, f64),
}

/// Room for so many and some more: lists that are made anew at each mark, each
/// one longer than the last, would else leave holes in memory that none fits.
fn roomy<T>(count: usize) -> Vec<T> {
    Vec::with_capacity(count.next_power_of_two())
}

impl Clone for Test {
    fn clone(&self) -> Self {
        let mut marks = roomy(self.marks.len());
        marks.extend_from_slice(&self.marks);
        Self {
            marks,
            gaps: self.gaps.clone(),
            ..*self
        }
    }
}

impl Test {
    pub(super) fn begin(id: TestId, begun: Moment, setup: Setup) -> Self {
        Self {
            id,
            begun,
            setup,
            marks: Vec::new(),
            gaps: Vec::new(),
            undone: None,
            ended: None,
            last: (begun, 0.0),
        }
    }

    /// Seconds from the newest moment known to this one, and what is odd.
    fn step(&self, to: &Moment, slept: bool) -> (f64, Option<Why>) {
        let wall = to.seconds_since(&self.last.0);
        match to.clock_jump_since(&self.last.0) {
            Some(jump) if jump.abs() <= DRIFT_S => (wall, slept.then_some(Why::Away)),
            Some(jump) if jump > 0.0 && slept => (wall, Some(Why::Away)),
            Some(jump) => (wall - jump, Some(Why::ClockMoved(jump))),
            None if wall < 0.0 => (0.0, Some(Why::NotKnown)),
            None => (wall, Some(Why::Restarted)),
        }
    }

    fn advance(&mut self, to: &Moment, slept: bool) -> f64 {
        let from_s = self.last.1;
        let (step, why) = self.step(to, slept);
        let to_s = from_s + step.max(0.0);
        if let Some(why) = why {
            let moved = matches!(why, Why::ClockMoved(_) | Why::NotKnown);
            if moved || step >= GAP_S {
                self.gaps.push(Gap { from_s, to_s, why });
            }
        }
        self.last = (*to, to_s);
        to_s
    }

    pub(super) fn mark(
        &mut self,
        entry: EntryId,
        at: Moment,
        kind: MarkKind,
        typed: Option<String>,
    ) {
        let tapped_s = self.advance(&at, false);
        self.marks.push(LoggedMark {
            entry,
            at,
            tapped_s,
            moved: None,
            kind,
            typed,
        });
    }

    /// The page watches again, after it did so last at `last`.
    pub(super) fn resume(&mut self, last: &Moment, at: &Moment, slept: bool) {
        // A later mark knows better than an old note of being there.
        if last.seconds_since(&self.last.0) > 0.0 && last.run == self.last.0.run {
            self.advance(last, false);
        }
        self.advance(at, slept);
    }

    pub(super) fn move_mark(&mut self, mark: EntryId, by_s: f64, entry: EntryId) {
        if by_s.is_finite()
            && by_s.abs() <= MOST_MOVED_S
            && let Some(mark) = self.marks.iter_mut().find(|m| m.entry == mark)
        {
            mark.moved = (by_s != 0.0).then_some((by_s, entry));
        }
    }

    /// What the test's clock shows now.
    pub fn clock_s(&self, now: &Moment) -> f64 {
        self.last.1 + self.step(now, false).0.max(0.0)
    }

    /// The marks on the test's own clock: seconds since it was begun. Where the
    /// time that passed is not known, nobody watched.
    pub fn timed(&self) -> Vec<Mark> {
        let unknown = self.gaps.iter().filter(|g| g.why == Why::NotKnown);
        let mut marks = roomy(self.marks.len());
        marks.extend(self.marks.iter().map(|m| Mark::new(m.at_s(), m.kind)));
        marks.extend(unknown.map(|g| Mark::new(g.to_s, MarkKind::Interrupted)));
        marks
    }

    /// The largest shift of the phone's wall clock seen during the test.
    pub fn clock_jump_s(&self) -> Option<f64> {
        self.gaps
            .iter()
            .filter_map(|g| match g.why {
                Why::ClockMoved(by) => Some(by),
                Why::NotKnown => Some(0.0),
                _ => None,
            })
            .max_by(|a, b| a.abs().total_cmp(&b.abs()))
    }

    /// Whether the tester ended it.
    pub fn is_ended(&self) -> bool {
        let ends = |m: &LoggedMark| m.kind.name() == ExpectedMark::Stopped;
        self.marks.iter().any(ends)
    }
}
