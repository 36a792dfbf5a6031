//! What is left to do once a cause is near: the checks that prove it, what no
//! check tells apart, and what a repair has still to show.

use super::answer::Answer;
use super::belief::Suspect;
use super::check::Check;
use super::cure::cure;
use super::desk::{Desk, LIKELY};
use super::mode::Mode;
use super::next::{Reason, Suggestion};
use super::world::World;

/// A suspect less probable than this is not named beside one it is like.
const EQUAL: f64 = 0.1;

impl Desk<'_> {
    pub(super) fn proven(&self, mode: Mode) -> bool {
        self.tracer.is_proven(self.belief.suspects.first(), mode)
    }

    /// When nothing more is worth asking, and so no check at hand tells these
    /// apart: the likeliest suspect and those that would stand for it, if one
    /// of them is likely.
    pub(super) fn one_of(&self) -> Vec<Mode> {
        let suspects = &self.belief.suspects;
        let Some(top) = suspects.first() else {
            return Vec::new();
        };
        let alike = suspects.iter().filter(|s| {
            s.mode == top.mode
                || s.probability >= EQUAL && self.both(top.mode, s.mode) < s.probability / 2.0
        });
        let alike: Vec<&Suspect> = alike.collect();
        match alike.iter().map(|s| s.probability).sum::<f64>() >= LIKELY {
            true => alike.iter().map(|s| s.mode).collect(),
            false => Vec::new(),
        }
    }

    /// Probability that both are there.
    fn both(&self, a: Mode, b: Mode) -> f64 {
        let modes = &self.tracer.lattice.modes;
        let worlds = self.moments.0.first().into_iter().flat_map(|w| &w.all);
        let has = |world: &World, mode| world.there().any(|m| modes[m] == mode);
        let both = worlds.filter(|w| has(w, a) && has(w, b));
        both.map(|w| w.p).sum()
    }

    /// Whether this was answered since the last correction.
    pub(super) fn said_since(&self, answer: Answer) -> bool {
        let since = self.tracer.since();
        since.iter().any(|e| e.answer == answer)
    }

    /// Whether the complaint was seen to stand after the last correction.
    pub(super) fn in_vain(&self) -> bool {
        use Answer as A;
        let all = [A::RefilledSlowly, A::DidNotRefill, A::HeadsHigh];
        all.into_iter().any(|a| self.said_since(a))
    }

    /// The machines run up again, where that has still to show that the
    /// complaint is gone.
    pub(super) fn restart(&self, mode: Mode) -> Option<Suggestion> {
        let check = Check::Restart;
        let wanted = self.tracer.unasked(check) && self.tracer.checks.contains(&check);
        wanted.then(|| Suggestion {
            why: Reason::ProvesIt { mode },
            ..self.promise(check).suggestion
        })
    }

    /// What was put right and is not proven by a refill since, though a
    /// refill would prove it.
    pub(super) fn unproven(&self) -> Option<Mode> {
        let case = &self.tracer.case;
        let filled = case
            .evidence
            .iter()
            .rposition(|e| e.answer == Answer::Refilled);
        let open = case
            .corrections
            .iter()
            .rev()
            .find(|c| cure(c.mode).refill && filled.is_none_or(|at| at < c.after));
        open.map(|c| c.mode)
    }

    /// The refill test, where it has still to prove that this is all.
    pub(super) fn refill(&self, mode: Mode) -> Option<Suggestion> {
        let check = Check::RefillTest;
        let wanted = cure(mode).refill && self.tracer.unasked(check);
        (wanted && self.tracer.checks.contains(&check)).then(|| Suggestion {
            why: Reason::ProvesIt { mode },
            ..self.promise(check).suggestion
        })
    }

    /// The next unasked check that confirms any suspect this probable.
    pub(super) fn proof(&self, probable: f64) -> Option<Suggestion> {
        let here = |c: &Check| self.tracer.checks.contains(c) && self.tracer.unasked(*c);
        for s in &self.belief.suspects {
            let mut confirm = cure(s.mode).confirm.iter().copied();
            let next = confirm.find(|c| here(c) && self.sensible(*c, true));
            if let Some(check) = next.filter(|_| s.probability >= probable) {
                let mode = s.mode;
                let why = match probable < LIKELY {
                    true => Reason::ConfirmsTop { mode },
                    false => Reason::ProvesIt { mode },
                };
                return Some(Suggestion {
                    why,
                    ..self.promise(check).suggestion
                });
            }
        }
        None
    }
}
