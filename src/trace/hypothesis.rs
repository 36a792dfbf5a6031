//! Hypotheses: sets of up to three faults, each steady or intermittent, and
//! how likely they are before anything is seen.

use serde::{Deserialize, Serialize};

use super::evidence::Stage;
use super::mode::{Lowers, Manner, Mode};

/// A fault mode with its manner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Fault {
    /// What is wrong.
    pub mode: Mode,
    /// Whether always.
    pub manner: Manner,
}

/// What is supposed to be wrong: nothing, or up to three faults at once.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Hypothesis {
    /// The faults; different modes, the present ones first.
    pub faults: [Option<Fault>; 3],
}

/// Two unrelated common faults on one call, against the product of their
/// shares: neglect keeps company. A third counts once more. Common practice,
/// no source.
pub(crate) const COMPANY: f64 = 0.2;
/// The same for each machine's own fault among them, whose share is of calls
/// that have no other cause. Common practice, no source.
pub(crate) const COMPANY_OWN: f64 = 0.05;
/// Prior of nothing wrong any more, when the symptoms allow it. Common
/// practice, no source.
pub(crate) const NOTHING: f64 = 0.03;

/// Chance that an intermittent fault changes its mind for one check. Common
/// practice, no source.
pub(crate) const FLICKER: f64 = 0.05;

/// Chance that a correction did not take. Common practice, no source.
pub(crate) const RESIDUE: f64 = 0.08;

/// Chance a machine trips by itself on the day another does. Common practice,
/// no source.
pub(crate) const TRIP_PER_DAY: f64 = 0.004;

/// Posterior probability that `n` machines which tripped together share one
/// cause, dimensionless: `per_unit` is the chance a day that one machine
/// trips by itself, `shared` that the common loop fails. Both in 0 to 1; a
/// result with both at 0 is NaN. Bayes' rule, exact.
pub fn common_cause(n: u8, per_unit: f64, shared: f64) -> f64 {
    shared / (shared + per_unit.powi(i32::from(n)))
}

/// Factor on the product of the shares of `faults` modes of which `own` are a
/// machine's own.
pub(crate) fn company(faults: usize, own: usize) -> f64 {
    match faults {
        0 | 1 => 1.0,
        _ => {
            COMPANY_OWN.powi(own.min(faults - 1) as i32)
                * COMPANY.powi((faults - 1 - own.min(faults - 1)) as i32)
        }
    }
}

/// Chance that an intermittent fault acts at a stage: it brought the call
/// about, and it reads healthy four times in five while tested. Common
/// practice, no source.
pub(crate) fn acts(stage: Stage) -> f64 {
    match stage {
        Stage::AsFound => 0.7,
        Stage::WaterLetIn => 0.35,
        Stage::Testing | Stage::Corrected => 0.2,
    }
}

/// Chance that the basin kept its level although this fault is there. An
/// intermittent one may have let it refill. Common practice, no source.
pub(crate) fn stays_full(lowers: Lowers, manner: Manner) -> f64 {
    match (lowers, manner) {
        (Lowers::No, _) => 1.0,
        (Lowers::Sometimes, Manner::Steady) => 0.45,
        (Lowers::Sometimes, Manner::Intermittent) => 0.6,
        (Lowers::Surely, Manner::Steady) => 0.03,
        (Lowers::Surely, Manner::Intermittent) => 0.15,
    }
}

/// Chance that the basin kept its level with no fault to empty it. Common
/// practice, no source.
pub(crate) const STAYS_FULL: f64 = 0.98;

/// Chance that the basin stands low at a stage, given whether it stood low on
/// arrival and whether anything acts that empties it: water may have been let
/// in since. Common practice, no source.
pub(crate) fn low_now(stage: Stage, low: bool, draining: bool) -> f64 {
    match (stage, low, draining) {
        (Stage::AsFound, low, _) => f64::from(u8::from(low)),
        (Stage::WaterLetIn, true, true) => 0.15,
        (Stage::WaterLetIn, true, false) => 0.05,
        (Stage::Testing, true, true) => 0.6,
        (Stage::Testing, true, false) => 0.25,
        (Stage::Corrected, true, true) => 0.4,
        (Stage::Corrected, true, false) => 0.05,
        (Stage::Corrected, false, true) => 0.2,
        (_, false, _) => 0.02,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Bayes' rule with rates 0.004 and 0.002 a day, computed by hand.
    #[test]
    fn several_machines_out_together_share_a_cause() {
        for (n, want, tol) in [(1, 1.0 / 3.0, 1e-9), (2, 0.992, 1e-4), (3, 0.99997, 2e-6)] {
            let got = common_cause(n, 0.004, 0.002);
            assert!((got - want).abs() < tol, "{n}: {got}");
        }
    }

    #[test]
    fn company_is_counted_per_fault_beyond_the_first() {
        assert_eq!(company(1, 1), 1.0);
        assert!((company(2, 0) - 0.2).abs() < 1e-15);
        assert!((company(2, 1) - 0.05).abs() < 1e-15);
        assert!((company(3, 0) - 0.04).abs() < 1e-15);
        assert!((company(3, 1) - 0.01).abs() < 1e-15);
        assert!((company(3, 3) - 0.0025).abs() < 1e-15);
    }
}
