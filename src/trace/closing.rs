//! Closing a trace: the cause, its proof, and what was not proven.

use serde::{Deserialize, Serialize};

use super::answer::Answer;
use super::belief::Suspect;
use super::check::Check;
use super::cure::cure;
use super::evidence::Evidence;
use super::mode::{Manner, Mode};
use super::observed::Reading;
use super::sheet;
use super::tracer::Tracer;
use super::weight::Source;

/// Something a closed trace leaves open.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unproven {
    /// A check that would confirm the cause was not done.
    NotConfirmed(Check),
    /// The repair was not proven by a refill test.
    NoRefill,
    /// The machines were not seen at their usual head since the last repair.
    NotRestarted,
    /// A fault that comes and goes was not seen acting since.
    ComesAndGoes,
    /// Another suspect that no check at hand tells from the cause.
    Alike(Mode, f64),
    /// Another suspect, with its probability, was not cleared.
    Rival(Mode, f64),
    /// Evidence, by its index, that the cause does not explain.
    Contradicted(usize),
}

/// A trace as it can be closed now with a cause.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Closing {
    /// The cause.
    pub cause: Suspect,
    /// Evidence that speaks for it, loudest first.
    pub proof: Vec<Source>,
    /// What was not proven.
    pub unproven: Vec<Unproven>,
}

/// A cause this probable, and seen by its own proof, is proven.
pub(crate) const PROVEN: f64 = 0.98;

impl Tracer {
    /// The cause that is proven: at 98 % or more, and a check that confirms it
    /// spoke for it.
    pub fn proven(&self) -> Option<Mode> {
        let belief = self.belief();
        let first = belief.suspects.first()?;
        self.is_proven(Some(first), first.mode)
            .then_some(first.mode)
    }

    pub(crate) fn is_proven(&self, first: Option<&Suspect>, mode: Mode) -> bool {
        first.is_some_and(|s| s.mode == mode && s.probability >= PROVEN) && self.confirmed(mode)
    }

    /// Whether a check that confirms this mode spoke for it.
    pub(crate) fn confirmed(&self, mode: Mode) -> bool {
        let evidence = &self.case.evidence;
        evidence.iter().any(|e| confirms(mode, e.check, e.answer))
    }

    /// What closing the trace with this cause would say; `None` when the
    /// plant cannot have it.
    pub fn closing(&self, mode: Mode) -> Option<Closing> {
        let belief = self.belief();
        let cause = *belief.of(mode)?;
        let weights = self.why(mode);
        let proof = weights
            .iter()
            .filter(|w| w.log10_odds > 0.3)
            .map(|w| w.source)
            .collect();
        let cure = cure(mode);
        let done = |check: &Check| {
            self.case
                .evidence
                .iter()
                .any(|e| e.check == *check && e.check.column(e.answer).is_some())
                || Reading::ALL.iter().any(|r| {
                    r.check() == *check && self.case.observed.soft(*r, &self.plant).is_some()
                })
        };
        let mut unproven = Vec::new();
        if !cure.confirm.iter().any(done) {
            unproven.extend(cure.confirm.first().map(|c| Unproven::NotConfirmed(*c)));
        }
        // Of a repair only what was seen after it counts.
        let repaired = self.case.corrections.iter().filter(|c| c.mode == mode);
        let after = repaired.map(|c| c.after).max().unwrap_or(0);
        let tested = self.case.evidence.get(after..).unwrap_or_default();
        let said = |of: &[Evidence], answer| of.iter().any(|e| e.answer == answer);
        if cure.refill && !said(tested, Answer::Refilled) {
            unproven.push(Unproven::NoRefill);
        }
        if self.checks.contains(&Check::Restart) && !said(self.since(), Answer::HeadsUsual) {
            unproven.push(Unproven::NotRestarted);
        }
        if cause.manner() == Manner::Intermittent {
            unproven.push(Unproven::ComesAndGoes);
        }
        let alike = match self.case.corrections.is_empty() {
            true => self.advise(mode.place()).one_of,
            false => Vec::new(),
        };
        let rivals = belief
            .suspects
            .iter()
            .filter(|s| s.mode != mode && s.probability > 0.05);
        for s in rivals {
            let open = match alike.contains(&mode) && alike.contains(&s.mode) {
                true => Unproven::Alike(s.mode, s.probability),
                false => Unproven::Rival(s.mode, s.probability),
            };
            unproven.push(open);
        }
        unproven.extend(
            belief
                .contradictions
                .iter()
                .map(|i| Unproven::Contradicted(*i)),
        );
        Some(Closing {
            cause,
            proof,
            unproven,
        })
    }
}

/// Whether this answer of a check that confirms the mode speaks for it.
pub(crate) fn confirms(mode: Mode, check: Check, answer: Answer) -> bool {
    let (true, Some(column), Some(sheet)) = (
        cure(mode).confirm.contains(&check),
        check.column(answer),
        sheet::of(check),
    ) else {
        return false;
    };
    let chance = |effect: usize| {
        let rows = [false, true].map(|low| sheet.rows_over(low).get(effect).copied());
        rows.iter().flatten().map(|r| r[column]).sum::<u16>()
    };
    chance(usize::from(sheet.effect(mode).0)) > chance(0)
}
