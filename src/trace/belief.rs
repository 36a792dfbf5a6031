//! Belief: the exact posterior, told as suspects.

use serde::{Deserialize, Serialize};

use super::engine::Engine;
use super::evidence::Evidence;
use super::hypothesis::{Hypothesis, manner};
use super::mode::{Manner, Mode};
use super::observed::Observed;
use super::plant::Plant;
use super::weight::Source;
use crate::quantity::sort_by;

/// An answer counts as contradicted when, after hearing everything, the
/// explanations that hold most of the belief give it less than this.
const CONTRADICTED: f64 = 0.02;

/// One mode under suspicion.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Suspect {
    /// The mode.
    pub mode: Mode,
    /// Probability that it is there, alone or with another, 0 to 1.
    pub probability: f64,
    /// The part of [`Suspect::probability`] in which it is steady.
    pub steady: f64,
    /// The part of [`Suspect::probability`] in which it comes and goes.
    pub intermittent: f64,
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
    /// Every mode, likeliest first. Probabilities are marginals: two faults
    /// can be there at once, so they can add to more than one.
    pub suspects: Vec<Suspect>,
    /// Probability that nothing is wrong any more; 0 when the symptoms leave
    /// no room for it.
    pub nothing: f64,
    /// The likeliest whole explanation and its probability.
    pub best: (Hypothesis, f64),
    /// Indices of the evidence that the explanations holding at least half of
    /// the belief would show less than one time in fifty: look again there.
    pub contradictions: Vec<usize>,
    /// Doubt left about which modes are there, in bits; 0 is certainty.
    pub entropy: f64,
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
    if logs.iter().all(|l| *l == f64::NEG_INFINITY) {
        let total: f64 = prior.iter().sum();
        return prior.iter().map(|p| p / total).collect();
    }
    softmax(&logs)
}

/// Probabilities in proportion to the exponentials of `logs`.
pub(crate) fn softmax(logs: &[f64]) -> Vec<f64> {
    let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mut p: Vec<f64> = logs.iter().map(|l| (l - top).exp()).collect();
    let total: f64 = p.iter().sum();
    for x in &mut p {
        *x /= total;
    }
    p
}

/// Entropy in bits of exclusive probabilities.
pub(crate) fn entropy_bits(p: &[f64]) -> f64 {
    p.iter()
        .filter(|p| **p > 0.0)
        .map(|p| -p * p.log2())
        .sum::<f64>()
        .max(0.0)
}

/// The exact posterior over every set of up to two faults, given what was
/// read and answered. The order of `evidence` does not matter; a repeated
/// answer of the same check at the same stage counts once; a number in
/// `observed` outranks the words for the same thing as found.
pub fn infer(plant: &Plant, observed: &Observed, evidence: &[Evidence]) -> Belief {
    Engine::new(plant, observed, evidence).belief()
}

impl Engine {
    /// The belief as suspects.
    pub fn belief(&self) -> Belief {
        let mut suspects: Vec<Suspect> = Mode::ALL
            .iter()
            .map(|m| Suspect {
                mode: *m,
                probability: 0.0,
                steady: 0.0,
                intermittent: 0.0,
            })
            .collect();
        let mut nothing = 0.0;
        let mut whole: Vec<(Hypothesis, f64)> = Vec::new();
        for (s, p) in self.space.states.iter().zip(&self.post) {
            let class = &self.space.classes[usize::from(s.class)];
            for (i, mode) in class.modes.iter().enumerate() {
                let Some(mode) = mode else { continue };
                let suspect = &mut suspects[*mode as usize];
                match manner(s.intermittent, i) {
                    Manner::Steady => suspect.steady += p,
                    Manner::Intermittent => suspect.intermittent += p,
                }
            }
            if class.bits(3) == 0 {
                nothing += p;
            }
            let hypothesis = self.space.hypothesis(s);
            match whole.last_mut() {
                Some((h, total)) if *h == hypothesis => *total += p,
                _ => whole.push((hypothesis, *p)),
            }
        }
        for s in &mut suspects {
            s.steady = s.steady.min(1.0);
            s.probability = (s.steady + s.intermittent).min(1.0);
        }
        sort_by(&mut suspects, |a, b| {
            b.probability.total_cmp(&a.probability)
        });
        let best = whole
            .into_iter()
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .unwrap_or((
                Hypothesis {
                    faults: [None, None],
                },
                1.0,
            ));
        Belief {
            suspects,
            nothing,
            best,
            contradictions: self.contradictions(),
            entropy: entropy_bits(&self.class_mass(&self.post)),
        }
    }

    fn contradictions(&self) -> Vec<usize> {
        let mut found = Vec::new();
        for spoken in &self.spoken {
            if let Source::Evidence(i) = spoken.source {
                let told = self.post.iter().zip(&spoken.log);
                let against: f64 = told
                    .filter(|(_, l)| **l < CONTRADICTED.ln())
                    .map(|(p, _)| p)
                    .sum();
                if against >= 0.5 {
                    found.push(i);
                }
            }
        }
        found
    }
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
        let cases: [Case; 7] = [
            (
                &[&no(CALL)],
                &[
                    (0, 0.7263),
                    (1, 0.0059),
                    (2, 0.2421),
                    (3, 0.0049),
                    (4, 0.0059),
                    (5, 0.0059),
                    (6, 0.0049),
                    (7, 0.0040),
                ],
            ),
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
            (
                &[&CALL, &VOLTS],
                &[
                    (4, 0.2301),
                    (5, 0.2301),
                    (6, 0.1917),
                    (3, 0.1898),
                    (7, 0.1534),
                    (1, 0.0046),
                ],
            ),
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
