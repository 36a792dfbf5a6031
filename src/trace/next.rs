//! What to check next, as told: the advice, its reasons, and what each check
//! costs now. How it is chosen is in [`super::desk`] and [`super::ahead`].

use serde::{Deserialize, Serialize};

use super::answer::Answer;
use super::check::{Access, Check};
use super::closing::PROVEN;
use super::desk::Desk;
use super::evidence::{Case, Evidence, Stage};
use super::mode::{Mode, Place};
use super::observed::Observed;
use super::plant::Plant;
use super::tracer::Tracer;
use super::world::Moments;

/// Why a check is suggested.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "reason", rename_all = "kebab-case")]
pub enum Reason {
    /// It tells the two likeliest causes apart.
    SplitsTop2 {
        /// The likeliest.
        a: Mode,
        /// The next.
        b: Mode,
    },
    /// It would confirm the likeliest cause, or rule it out.
    ConfirmsTop {
        /// The likeliest.
        mode: Mode,
    },
    /// It proves a cause: nearly certain, or all that is left to do.
    ProvesIt {
        /// That cause.
        mode: Mode,
    },
    /// It can be seen only before anything is touched.
    BeforeTouching,
    /// What it said fits nothing else, or all hangs on it: take it again.
    TakeAgain,
    /// It takes little time where you stand.
    CheapHere,
    /// It tells enough to be worth the walk.
    WorthTheWalk {
        /// Where to.
        to: Place,
    },
}

/// A suggested check.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Suggestion {
    /// The check.
    pub check: Check,
    /// Minutes it takes there, opening what is not open yet included.
    pub minutes: f64,
    /// Minutes to walk there.
    pub walk_minutes: f64,
    /// Bits of doubt about the leading cause it is expected to remove.
    pub gain_bits: f64,
    /// Why this one.
    pub why: Reason,
}

/// What to do next.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Advice {
    /// The best check, or, when none is worth its minutes, the proof of a
    /// suspect more likely than not; after a repair, the refill test that
    /// proves it, or what looks for a fault that is left. `None` when nothing
    /// is left to do.
    pub best: Option<Suggestion>,
    /// Other checks, best first, at most four.
    pub runners_up: Vec<Suggestion>,
    /// A cause at 90 % or more; then `best` proves it, or is `None` once it
    /// is proved.
    pub settled: Option<Mode>,
    /// What to put right now: settled with nothing left to prove it by but a
    /// refill, or the first of [`Advice::one_of`].
    pub ripe: Option<Mode>,
    /// Where nothing more is worth asking and nothing is settled: the likeliest
    /// cause and those that no check at hand tells from it, likeliest first.
    pub one_of: Vec<Mode>,
    /// Whether the complaint was seen to be gone after the last repair, what
    /// was put right is proven as far as it can be, and nothing else is likely.
    pub closes: bool,
}

/// When a cause counts as found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Goal {
    /// Its probability, 0 to 1.
    pub sure: f64,
    /// Whether a check that confirms it must have spoken for it.
    pub shown: bool,
    /// How often a check may be done in one visit, between corrections.
    pub takes: usize,
}

impl Goal {
    /// A proven cause: see [`Tracer::proven`].
    pub const PROVEN: Goal = Goal {
        sure: PROVEN,
        shown: true,
        takes: 3,
    };
}

/// The check to do next from where the mechanic stands; see
/// [`Tracer::advise`].
pub fn advise(plant: &Plant, observed: &Observed, evidence: &[Evidence], at: Place) -> Advice {
    let case = Case {
        observed: *observed,
        evidence: evidence.to_vec(),
        ..Case::default()
    };
    Tracer::new(plant, &case).advise(at)
}

impl Tracer {
    /// The check after which the fewest minutes are expected to a proven
    /// cause, from where the mechanic stands. Goes on until a cause is proven
    /// ([`Tracer::proven`]) or nothing is worth its minutes. A check that was
    /// answered is suggested again only where a second reading is worth it, at
    /// most twice; one whose number was read, or answered with
    /// [`Answer::CouldNot`], never. So it ends.
    pub fn advise(&self, at: Place) -> Advice {
        self.advise_to(at, Goal::PROVEN)
    }

    /// The same towards another end.
    pub fn advise_to(&self, at: Place, goal: Goal) -> Advice {
        Desk::new(self, at, goal).advice()
    }

    /// Probability that any fault is still there.
    pub fn left(&self) -> f64 {
        let mut moments = Moments::default();
        let stage = match self.case.corrections.is_empty() {
            true => self.stage(Check::LevelNow),
            false => Stage::Corrected,
        };
        let left = moments.of(self, stage).all.iter();
        let left = left.filter(|w| w.there().next().is_some());
        left.map(|w| w.p).sum()
    }

    /// What each check that makes sense now would promise, in the order of
    /// the list; [`Tracer::advise`] chooses among these.
    pub fn promises(&self, at: Place) -> Vec<Suggestion> {
        Desk::new(self, at, Goal::PROVEN).promises()
    }

    /// Chance of each answer of a check done now, over all that is believed.
    pub fn chances(&self, check: Check) -> [f64; 3] {
        let mut sum = [0.0; 3];
        let mut moments = Moments::default();
        let worlds = moments.of(self, self.stage(check));
        for (world, chance) in worlds.all.iter().zip(worlds.answers(self, check)) {
            for (s, c) in sum.iter_mut().zip(chance) {
                *s += world.p * c;
            }
        }
        sum
    }

    /// Minutes `check` takes once there, opening what is not open yet.
    pub fn minutes(&self, check: Check) -> f64 {
        let access = check.access();
        let open = access == Access::Open || self.is_open(access);
        check.minutes() + if open { 0.0 } else { access.minutes() }
    }

    /// Whether this has been opened.
    pub(crate) fn is_open(&self, access: Access) -> bool {
        let did = |e: &Evidence| e.check.access() == access && e.answer != Answer::CouldNot;
        self.case.evidence.iter().any(did)
    }

    /// The stage of a check done now.
    pub fn stage(&self, check: Check) -> Stage {
        if self.case.corrections.is_empty() {
            check.stage_after(&self.case.evidence)
        } else {
            Stage::Corrected
        }
    }

    /// The checks not done yet whose number was not read either.
    pub(crate) fn open_checks(&self) -> Vec<Check> {
        self.checks
            .iter()
            .copied()
            .filter(|c| self.unasked(*c))
            .collect()
    }

    /// The checks that were answered, and may be done again.
    pub(crate) fn answered_checks(&self, takes: usize) -> Vec<Check> {
        let again = |c: &Check| !self.unasked(*c) && self.room(*c, takes) > 0;
        self.checks.iter().copied().filter(again).collect()
    }

    /// How often a check may still be done before the next correction, of so
    /// many times in all. What can't be done now is not asked for again, nor
    /// what was read as a number.
    pub(crate) fn room(&self, check: Check, takes: usize) -> usize {
        if !self.checks.contains(&check) {
            return 0;
        }
        let takes = if check.may_differ() { takes } else { 1 };
        if self.unasked(check) {
            return takes;
        }
        let done = self.since().iter().filter(|e| e.check == check);
        let could = done.clone().all(|e| e.answer != Answer::CouldNot);
        match done.count() {
            0 => 0,
            done if could => takes.saturating_sub(done),
            _ => 0,
        }
    }

    /// What was answered since the last correction: after one a check may be
    /// done as if for the first time.
    pub(crate) fn since(&self) -> &[Evidence] {
        let after = self.case.corrections.iter().map(|c| c.after);
        let last = after.max().unwrap_or(0);
        self.case.evidence.get(last..).unwrap_or_default()
    }

    pub(crate) fn unasked(&self, check: Check) -> bool {
        let heard = match check.is_past() {
            true => &self.case.evidence,
            false => self.since(),
        };
        let asked = heard.iter().any(|e| e.check == check);
        let read =
            self.case.corrections.is_empty() && self.case.observed.outranks(check, &self.plant);
        !asked && !read
    }
}
