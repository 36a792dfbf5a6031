//! Why: which evidence speaks for and against a suspect, and how loudly.

use serde::{Deserialize, Serialize};

use super::engine::Engine;
use super::evidence::Evidence;
use super::mode::Mode;
use super::observed::{Observed, Reading};
use super::plant::Plant;
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

/// Weight of every piece of evidence for `mode`, loudest first: the odds with
/// everything over the odds with that piece left out. Evidence that tells
/// nothing (could not, repeated, outranked by a number) is not listed.
pub fn why(plant: &Plant, observed: &Observed, evidence: &[Evidence], mode: Mode) -> Vec<Weight> {
    let engine = Engine::new(plant, observed, evidence);
    let with = log10_odds(engine.marginal(&engine.post, mode));
    let mut weights: Vec<Weight> = engine
        .spoken
        .iter()
        .map(|spoken| {
            let left_out = engine.without(spoken);
            let without = log10_odds(engine.marginal(&left_out, mode));
            Weight {
                source: spoken.source,
                log10_odds: with - without,
            }
        })
        .collect();
    sort_by(&mut weights, |a, b| {
        b.log10_odds.abs().total_cmp(&a.log10_odds.abs())
    });
    weights
}

/// Odds on a base-10 logarithm, held within twelve orders either way.
fn log10_odds(p: f64) -> f64 {
    let p = p.clamp(1e-12, 1.0 - 1e-12);
    (p / (1.0 - p)).log10()
}
