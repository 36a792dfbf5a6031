//! Belief: the exact posterior, told as suspects.

use serde::{Deserialize, Serialize};

use super::evidence::{Case, Evidence};
use super::hypothesis::Hypothesis;
use super::mode::{Branch, Group, Manner, Mode};
use super::observed::Observed;
use super::plant::Plant;
use super::tracer::Tracer;

/// One mode under suspicion.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Suspect {
    /// The mode.
    pub mode: Mode,
    /// Probability that it is there now, alone or with others, 0 to 1.
    pub probability: f64,
    /// The part of [`Suspect::probability`] in which it is steady.
    pub steady: f64,
    /// The part of [`Suspect::probability`] in which it comes and goes.
    pub intermittent: f64,
    /// Probability that it was there on arrival; more than
    /// [`Suspect::probability`] once it was corrected.
    pub was: f64,
}

impl Suspect {
    /// The likelier manner.
    pub fn manner(&self) -> Manner {
        if self.intermittent > self.steady {
            Manner::Intermittent
        } else {
            Manner::Steady
        }
    }
}

/// What is believed after the evidence.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Belief {
    /// Every mode of the plant, likeliest first. Probabilities are marginals:
    /// several faults can be there at once, so they can add to more than one.
    pub suspects: Vec<Suspect>,
    /// Per part of the plant, that any of its modes was there, likeliest
    /// first.
    pub groups: Vec<(Group, f64)>,
    /// The same for whole branches: "makeup chain 97 %".
    pub branches: Vec<(Branch, f64)>,
    /// Probability that nothing is wrong any more; 0 when the symptoms leave
    /// no room for it.
    pub nothing: f64,
    /// The likeliest whole explanation and its probability.
    pub best: (Hypothesis, f64),
    /// Indices of the evidence that most of the belief would hardly show:
    /// look again there.
    pub contradictions: Vec<usize>,
}

impl Belief {
    /// The suspect of this mode.
    pub fn of(&self, mode: Mode) -> Option<&Suspect> {
        self.suspects.iter().find(|s| s.mode == mode)
    }

    /// The likeliest branch, its probability, and its likeliest suspect; a
    /// heading such as "makeup chain 97 %: probe film 62 %".
    pub fn heading(&self) -> Option<(Branch, f64, Suspect)> {
        let (branch, p) = self.branches.first().copied()?;
        let first = self
            .suspects
            .iter()
            .find(|s| s.mode.group().branch() == branch)?;
        Some((branch, p, *first))
    }
}

/// Posterior of exclusive causes from their prior and, per piece of evidence,
/// the likelihood under each cause. Bayes' rule in log space; neither prior
/// nor likelihoods need adding to one. A likelihood that is missing or NaN
/// tells nothing. Where every cause is impossible the prior is returned; an
/// empty prior gives an empty result.
pub fn posterior(prior: &[f64], likelihoods: &[&[f64]]) -> Vec<f64> {
    let log = |i: usize| {
        let told = likelihoods
            .iter()
            .filter_map(|l| l.get(i))
            .filter(|l| !l.is_nan());
        prior[i].max(0.0).ln() + told.map(|l| l.max(0.0).ln()).sum::<f64>()
    };
    let logs: Vec<f64> = (0..prior.len()).map(log).collect();
    let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mut p: Vec<f64> = if top == f64::NEG_INFINITY {
        prior.to_vec()
    } else {
        logs.iter().map(|l| (l - top).exp()).collect()
    };
    let total: f64 = p.iter().sum();
    p.iter_mut().for_each(|x| *x /= total);
    p
}

/// Entropy in bits of exclusive probabilities.
pub(crate) fn entropy_bits(p: &[f64]) -> f64 {
    let each = p.iter().filter(|p| **p > 0.0).map(|p| -p * p.log2());
    each.sum::<f64>().max(0.0)
}

/// The exact posterior over every set of up to three faults, given what was
/// read and answered. A check answered again at the same stage counts for less
/// where it repeats itself; a number in `observed` outranks the words for the
/// same thing as found. For more than the belief, keep a [`Tracer`].
pub fn infer(plant: &Plant, observed: &Observed, evidence: &[Evidence]) -> Belief {
    let case = Case {
        observed: *observed,
        evidence: evidence.to_vec(),
        ..Case::default()
    };
    Tracer::new(plant, &case).belief()
}

#[cfg(test)]
mod tests {
    use super::*;

    const PRIOR: [f64; 8] = [0.30, 0.08, 0.10, 0.10, 0.12, 0.12, 0.10, 0.08];
    const CALL: [f64; 8] = [0.02, 0.97, 0.02, 0.98, 0.98, 0.98, 0.98, 0.98];
    const VOLTS: [f64; 8] = [0.02, 0.03, 0.01, 0.97, 0.98, 0.98, 0.98, 0.98];
    const PULL: [f64; 8] = [0.02, 0.03, 0.01, 0.02, 0.95, 0.97, 0.97, 0.97];
    const FORCE: [f64; 8] = [0.97, 0.97, 0.20, 0.05, 0.05, 0.10, 0.02, 0.15];

    /// Likelihoods heard, and the posterior of some causes by index.
    type Case<'a> = (&'a [&'a [f64]], &'a [(usize, f64)]);

    fn no(yes: [f64; 8]) -> [f64; 8] {
        yes.map(|p| 1.0 - p)
    }

    /// Source: pgmpy 1.1.2, exact inference on the same eight-cause network
    /// (probe, relay, power, coil, valve, strainer, isolator, mains).
    #[test]
    fn the_kernel_agrees_with_an_independent_exact_inference() {
        let first: &[(usize, f64)] = &[
            (0, 0.7263),
            (1, 0.0059),
            (2, 0.2421),
            (3, 0.0049),
            (4, 0.0059),
            (5, 0.0059),
            (6, 0.0049),
            (7, 0.0040),
        ];
        let valve: &[(usize, f64)] = &[
            (4, 0.2301),
            (5, 0.2301),
            (6, 0.1917),
            (3, 0.1898),
            (7, 0.1534),
            (1, 0.0046),
        ];
        let cases: [Case; 7] = [
            (&[&no(CALL)], first),
            (
                &[&no(CALL), &no(VOLTS)],
                &[(0, 0.7432), (2, 0.2502), (1, 0.0060)],
            ),
            (
                &[&no(CALL), &no(VOLTS), &FORCE],
                &[(0, 0.9280), (2, 0.0644), (1, 0.0075)],
            ),
            (
                &[&CALL, &no(VOLTS)],
                &[(1, 0.7982), (0, 0.0624), (3, 0.0312)],
            ),
            (&[&CALL, &VOLTS], valve),
            (&[&CALL, &VOLTS, &no(PULL)], &[(3, 0.8472)]),
            (
                &[&CALL, &VOLTS, &PULL],
                &[(5, 0.2860), (4, 0.2801), (6, 0.2383), (7, 0.1906)],
            ),
        ];
        for (evidence, want) in cases {
            let got = posterior(&PRIOR, evidence);
            for (cause, p) in want {
                assert!(
                    (got[*cause] - p).abs() < 1e-4,
                    "{cause}: {} {p}",
                    got[*cause]
                );
            }
        }
    }

    #[test]
    fn the_kernel_survives_the_impossible_and_the_unsaid() {
        assert_eq!(posterior(&[0.25, 0.75], &[&[0.0, 0.0]]), [0.25, 0.75]);
        assert_eq!(
            posterior(&[1.0, 3.0], &[&[f64::NAN, f64::NAN]]),
            [0.25, 0.75]
        );
        assert_eq!(posterior(&[1.0, 3.0], &[&[]]), [0.25, 0.75]);
        assert_eq!(posterior(&[], &[]), Vec::<f64>::new());
        let tiny = [1e-300; 2];
        let p = posterior(&[0.5, 0.5], &[&tiny, &tiny, &[1e-300, 2e-300]]);
        assert!((p[1] - 2.0 / 3.0).abs() < 1e-12);
    }
}
