//! Why: which evidence speaks for and against a suspect, how loudly, and
//! what would change the mind.

use serde::{Deserialize, Serialize};

use super::answer::Answer;
use super::check::Check;
use super::evidence::{Case, Evidence};
use super::lattice::Lattice;
use super::mass::Mass;
use super::mode::Mode;
use super::observed::{Observed, Reading};
use super::plant::Plant;
use super::tracer::Tracer;
use super::world::Moments;
use crate::quantity::sort_by;

/// Where a weight comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    /// An answered check, by its index in the evidence.
    Evidence(usize),
    /// A number read.
    Reading(Reading),
}

/// How loudly evidence speaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Strength {
    /// Changes the odds less than 1.25 times.
    Silent,
    /// Changes the odds at least 1.25 times.
    Slight,
    /// Changes the odds at least 2 times.
    Some,
    /// Changes the odds at least 10 times.
    Strong,
}

/// One piece of evidence against or for a suspect.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Weight {
    /// Which evidence.
    pub source: Source,
    /// Base-10 logarithm by which it changes the suspect's odds, given all
    /// the rest: above 0 for, below 0 against. Two pieces that say the same
    /// thing share the credit, so each reads lower than it would alone.
    pub log10_odds: f64,
}

/// An answer that would change the mind about a suspect.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Turn {
    /// The check.
    pub check: Check,
    /// The answer that would do it.
    pub answer: Answer,
    /// About what the suspect's probability would become.
    pub probability: f64,
}

impl Weight {
    /// How loud, for or against.
    pub fn strength(&self) -> Strength {
        let loud = self.log10_odds.abs();
        if loud >= 1.0 {
            Strength::Strong
        } else if loud >= 2f64.log10() {
            Strength::Some
        } else if loud >= 1.25f64.log10() {
            Strength::Slight
        } else {
            Strength::Silent
        }
    }

    /// Whether it speaks for the suspect.
    pub fn speaks_for(&self) -> bool {
        self.log10_odds > 0.0
    }
}

impl Tracer {
    /// Weight of every piece of evidence for each of these suspects, loudest
    /// first: the odds with everything over the odds with that piece left
    /// out. Evidence that tells nothing (could not, outranked by a number) is
    /// not listed. One pass over the hypotheses for each piece of
    /// evidence, so ask for all the suspects of interest at once.
    pub fn why(&self, suspects: &[Mode]) -> Vec<Vec<Weight>> {
        let mut weights = vec![Vec::new(); suspects.len()];
        let with = odds(&self.lattice, &self.mass, suspects);
        for (piece, heard) in self.ear.heard.iter().enumerate() {
            let lattice = Lattice::new(&self.plant, &self.modes, &self.ear, Some(piece));
            let mass = Mass::over(&lattice, self.nothing);
            let without = odds(&lattice, &mass, suspects);
            for (list, (with, without)) in weights.iter_mut().zip(with.iter().zip(without)) {
                list.push(Weight {
                    source: heard.source,
                    log10_odds: with - without,
                });
            }
        }
        for list in &mut weights {
            sort_by(list, |a, b| {
                b.log10_odds.abs().total_cmp(&a.log10_odds.abs())
            });
        }
        weights
    }

    /// What would change the mind most about a suspect, of the checks not
    /// done yet: the answer after which it would be least likely. `None` when
    /// no answer that can be expected at least once in a hundred calls halves
    /// it.
    pub fn turn(&self, suspect: Mode) -> Option<Turn> {
        let mut best = None::<Turn>;
        let mut moments = Moments::default();
        let place = self.lattice.modes.iter().position(|m| *m == suspect)?;
        for check in self.open_checks() {
            let worlds = moments.of(self, self.stage(check));
            let (mut there, mut all) = ([0.0; 3], [0.0; 3]);
            let mut now = 0.0;
            for (world, chance) in worlds.all.iter().zip(worlds.answers(self, check)) {
                let here = world.there().any(|m| m == place);
                let share = f64::from(u8::from(here)) * world.p;
                now += share;
                for (column, c) in chance.iter().enumerate() {
                    all[column] += world.p * c;
                    there[column] += share * c;
                }
            }
            for (column, answer) in check.answers().iter().enumerate() {
                if all[column] < 0.01 {
                    continue;
                }
                let then = there[column] / all[column];
                if then < 0.5 * now && best.is_none_or(|b| then < b.probability) {
                    best = Some(Turn {
                        check,
                        answer: *answer,
                        probability: then,
                    });
                }
            }
        }
        best
    }
}

/// Weight of every piece of evidence for `mode`; see [`Tracer::why`].
pub fn why(plant: &Plant, observed: &Observed, evidence: &[Evidence], mode: Mode) -> Vec<Weight> {
    let case = Case {
        observed: *observed,
        evidence: evidence.to_vec(),
        ..Case::default()
    };
    Tracer::new(plant, &case)
        .why(&[mode])
        .pop()
        .unwrap_or_default()
}

/// Odds on a base-10 logarithm, held within twelve orders either way.
fn odds(lattice: &Lattice, mass: &Mass, suspects: &[Mode]) -> Vec<f64> {
    let each = |mode: &Mode| {
        let at = lattice.modes.iter().position(|m| m == mode);
        let p: f64 = at.map_or(0.0, |i| mass.modes[i].iter().sum());
        let p = p.clamp(1e-12, 1.0 - 1e-12);
        (p / (1.0 - p)).log10()
    };
    suspects.iter().map(each).collect()
}
