//! Which checks make sense now, by what was seen and done so far.

use super::answer::Answer;
use super::check::Check;
use super::desk::Desk;
use super::evidence::Stage;

impl Desk<'_> {
    /// Whether water is called for, as far as was seen; a plant without a
    /// call needs none.
    pub fn called(&self) -> bool {
        let case = &self.tracer.case;
        let seen = case.evidence.iter().any(|e| opens_call(e.check, e.answer));
        seen || !self.tracer.plant.electric_fill()
    }

    pub(super) fn said(&self, check: Check, answer: Answer) -> bool {
        self.tracer
            .case
            .evidence
            .iter()
            .any(|e| e.check == check && e.answer == answer)
    }

    /// Whether what can be seen only before hands are on it was looked at.
    pub fn looked(&self) -> bool {
        if !self.tracer.case.corrections.is_empty() {
            return true;
        }
        let waits = |c: Check| self.tracer.checks.contains(&c) && self.tracer.unasked(c);
        !waits(Check::BasinOnArrival) && (!waits(Check::CallAsFound) || self.basin_normal())
    }

    /// Whether the check makes sense now, supposing the as-found looks were
    /// or were not had.
    pub fn sensible(&self, check: Check, looked: bool) -> bool {
        match check {
            // It tells of what was put right since.
            _ if check.is_past() && self.tells_of_repaired(check) => false,
            Check::BasinOnArrival => self.tracer.stage(Check::LevelNow) == Stage::AsFound,
            Check::LevelNow => !self.tracer.unasked(Check::BasinOnArrival),
            Check::RefillTest => {
                let top = self.belief.suspects.first();
                looked && !self.basin_normal() && top.is_some_and(|s| s.probability >= 0.5)
            }
            Check::Restart => !self.tracer.case.corrections.is_empty(),
            _ if let Some(recorder) = check.record() => {
                let mut since = self.tracer.since().iter();
                since.any(|e| e.check == recorder && e.answer != Answer::CouldNot)
            }
            _ if check.needs_call() => self.called(),
            _ if check.disturbs() => looked,
            _ => true,
        }
    }

    pub(super) fn tells_of_repaired(&self, check: Check) -> bool {
        let repaired = &self.tracer.case.corrections;
        repaired.iter().any(|c| check.speaks_of(c.mode))
    }

    pub(super) fn basin_normal(&self) -> bool {
        match self.tracer.case.observed.read_low(&self.tracer.plant) {
            Some(low) => !low,
            None => self.said(Check::BasinOnArrival, Answer::BasinNormal),
        }
    }
}

/// Whether this answer shows that water is called for.
pub(crate) fn opens_call(check: Check, answer: Answer) -> bool {
    use Check as K;
    match answer {
        Answer::Calls => matches!(check, K::CallAsFound | K::ProbeDried | K::WiresOffHolder),
        Answer::FollowsResistor => check == K::Substitution,
        Answer::RefilledSlowly => check == K::RefillTest,
        _ => false,
    }
}
