//! The belief over hidden states, exact, in log space.

use super::evidence::{Check, Evidence, Stage};
use super::hypothesis::{Space, State};
use super::mode::Mode;
use super::model::{World, chances};
use super::observed::{Observed, Reading};
use super::plant::Plant;
use super::weight::Source;
use super::{Answer, belief};

/// Chance that an intermittent fault changes its mind for one check.
/// Common practice, no source.
const FLICKER: f64 = 0.07;

/// No answer is less likely than this under any state, so that no evidence,
/// however absurd, leaves every hypothesis dead.
const IMPOSSIBLE: f64 = 1e-12;

/// One source of evidence with the logarithm of its likelihood per state.
pub(crate) struct Spoken {
    pub source: Source,
    pub log: Vec<f64>,
}

/// The belief engine for one plant and one set of evidence.
pub(crate) struct Engine {
    pub plant: Plant,
    pub space: Space,
    pub spoken: Vec<Spoken>,
    /// Logarithm of prior times all likelihoods, per state.
    pub log: Vec<f64>,
    /// Posterior per state.
    pub post: Vec<f64>,
}

/// Worlds per class: four subsets of acting modes, basin low or not.
const WORLDS: usize = 8;

fn world_index(class: u16, acting: u8, low: bool) -> usize {
    usize::from(class) * WORLDS + usize::from(acting) * 2 + usize::from(low)
}

impl Engine {
    pub fn new(plant: &Plant, observed: &Observed, evidence: &[Evidence]) -> Self {
        let nothing = observed.allows_nothing(plant) && evidence.iter().all(allows_nothing);
        let space = Space::new(nothing);
        let mut engine = Self {
            plant: *plant,
            log: space.states.iter().map(|s| s.prior.ln()).collect(),
            post: Vec::new(),
            spoken: Vec::new(),
            space,
        };
        for reading in Reading::ALL {
            if let Some(soft) = observed.soft(reading, plant) {
                engine.hear(Source::Reading(reading), Stage::AsFound, |w| {
                    soft.likelihood(w, plant)
                });
            }
        }
        for (i, e) in evidence.iter().enumerate() {
            let Some(column) = e.check.column(e.answer) else {
                continue;
            };
            let repeated = evidence[..i].contains(e);
            let outranked = e.stage == Stage::AsFound && observed.outranks(e.check, plant);
            if !repeated && !outranked {
                engine.hear(Source::Evidence(i), e.stage, |w| {
                    chances(e.check, w, plant)[column]
                });
            }
        }
        engine.post = belief::softmax(&engine.log);
        engine
    }

    fn hear(&mut self, source: Source, stage: Stage, likelihood: impl Fn(&World) -> f64) {
        let table = self.table(stage, likelihood);
        let heard = |s: &State| steadied(s, stage, |w| table[w]).max(IMPOSSIBLE).ln();
        let log: Vec<f64> = self.space.states.iter().map(heard).collect();
        for (total, l) in self.log.iter_mut().zip(&log) {
            *total += l;
        }
        self.spoken.push(Spoken { source, log });
    }

    /// A value for every world of every class.
    fn table<T>(&self, stage: Stage, value: impl Fn(&World) -> T) -> Vec<T> {
        let mut table = Vec::with_capacity(self.space.classes.len() * WORLDS);
        for class in &self.space.classes {
            for acting in 0..4u8 {
                for low in [false, true] {
                    let (present, active) = (class.bits(3), class.bits(acting));
                    table.push(value(&World {
                        present,
                        active,
                        low,
                        stage,
                    }));
                }
            }
        }
        table
    }

    /// Posterior of the states with one source left out.
    pub fn without(&self, spoken: &Spoken) -> Vec<f64> {
        let log: Vec<f64> = self
            .log
            .iter()
            .zip(&spoken.log)
            .map(|(t, l)| t - l)
            .collect();
        belief::softmax(&log)
    }

    /// Probability mass of each class under `post`.
    pub fn class_mass(&self, post: &[f64]) -> Vec<f64> {
        let mut mass = vec![0.0; self.space.classes.len()];
        for (s, p) in self.space.states.iter().zip(post) {
            mass[usize::from(s.class)] += p;
        }
        mass
    }

    /// Probability under `post` that `mode` is there.
    pub fn marginal(&self, post: &[f64], mode: Mode) -> f64 {
        self.space
            .states
            .iter()
            .zip(post)
            .filter(|(s, _)| self.space.classes[usize::from(s.class)].bits(3) & mode.bit() != 0)
            .map(|(_, p)| p)
            .sum()
    }

    /// Probability mass of each world at this stage.
    pub fn world_mass(&self, stage: Stage) -> Vec<f64> {
        let mut mass = vec![0.0; self.space.classes.len() * WORLDS];
        for (s, p) in self.space.states.iter().zip(&self.post) {
            steadied_each(s, stage, |w, share| mass[w] += p * share);
        }
        mass
    }

    /// Joint probability of class and answer for `check` done at a stage
    /// whose worlds weigh `world_mass`.
    pub fn joint(&self, check: Check, stage: Stage, world_mass: &[f64]) -> Vec<[f64; 4]> {
        let mut joint = vec![[0.0; 4]; self.space.classes.len()];
        for (c, (class, row)) in self.space.classes.iter().zip(joint.iter_mut()).enumerate() {
            for acting in 0..4u8 {
                for low in [false, true] {
                    let mass = world_mass[world_index(c as u16, acting, low)];
                    if mass <= 0.0 {
                        continue;
                    }
                    let (present, active) = (class.bits(3), class.bits(acting));
                    let world = World {
                        present,
                        active,
                        low,
                        stage,
                    };
                    let chance = chances(check, &world, &self.plant);
                    for (r, p) in row.iter_mut().zip(chance) {
                        *r += mass * p;
                    }
                }
            }
        }
        joint
    }
}

/// Calls `each` with the worlds this state can show at this stage and their
/// shares: the one it is in, and for intermittent faults the opposite one.
fn steadied_each(state: &State, stage: Stage, mut each: impl FnMut(usize, f64)) {
    let acting = match stage {
        Stage::AsFound => state.as_found,
        Stage::Testing => state.testing,
    };
    let here = world_index(state.class, acting, state.low);
    if state.intermittent == 0 {
        each(here, 1.0);
    } else {
        each(here, 1.0 - FLICKER);
        each(
            world_index(state.class, acting ^ state.intermittent, state.low),
            FLICKER,
        );
    }
}

/// The mean of `value` over the worlds of [`steadied_each`].
fn steadied(state: &State, stage: Stage, value: impl Fn(usize) -> f64) -> f64 {
    let mut mean = 0.0;
    steadied_each(state, stage, |w, share| mean += share * value(w));
    mean
}

/// Whether this answer leaves room for nothing being wrong any more.
fn allows_nothing(e: &Evidence) -> bool {
    match e.check {
        Check::MachinesOut => e.answer == Answer::CouldNot,
        Check::BasinOnArrival => e.answer != Answer::BasinLow,
        _ => true,
    }
}
