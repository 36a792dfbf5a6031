//! Hypotheses: sets of up to two faults, each steady or intermittent, and the
//! hidden states each one can be in on the day.

use serde::{Deserialize, Serialize};

use super::mode::{Manner, Mode};

/// A fault mode with its manner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Fault {
    /// What is wrong.
    pub mode: Mode,
    /// Whether always.
    pub manner: Manner,
}

/// What is supposed to be wrong: nothing, one fault, or two at once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Hypothesis {
    /// The faults; two different modes when both are there.
    pub faults: [Option<Fault>; 2],
}

/// Two unrelated common faults on one call, against the product of their
/// shares: neglect keeps company. Common practice, no source.
const PAIR: f64 = 0.2;
/// The same for a machine's own fault beside a common one, whose share is of
/// calls that have no other cause. Common practice, no source.
const PAIR_MACHINE: f64 = 0.05;
/// Prior of nothing wrong any more, when the symptoms allow it. Common
/// practice, no source.
const NOTHING: f64 = 0.03;
/// Chance an intermittent fault still acts when the mechanic arrives.
const ACTS_AS_FOUND: f64 = 0.7;
/// Chance an intermittent fault acts while things are tested: it reads
/// healthy four times in five. Common practice, no source.
const ACTS_TESTING: f64 = 0.2;

/// Posterior probability that `n` machines which tripped together share one
/// cause, dimensionless: `per_unit` is the chance a day that one machine
/// trips by itself, `shared` that the common loop fails. Both in 0 to 1; a
/// result with both at 0 is NaN. Bayes' rule, exact.
pub fn common_cause(n: u8, per_unit: f64, shared: f64) -> f64 {
    shared / (shared + per_unit.powi(i32::from(n)))
}

/// A set of modes regarded as present; hypotheses that differ only in manner
/// share one.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Class {
    /// The modes present.
    pub modes: [Option<Mode>; 2],
}

impl Class {
    /// Bits of the modes whose position is set in `subset` (bit 0 the first,
    /// bit 1 the second).
    pub fn bits(&self, subset: u8) -> u64 {
        let bit = |i: usize| match self.modes[i] {
            Some(mode) if subset >> i & 1 == 1 => mode.bit(),
            _ => 0,
        };
        bit(0) | bit(1)
    }
}

/// One hidden state: which modes are there, which of them act as found and
/// while testing, and whether the basin stood low. Given the state, answers
/// are independent.
#[derive(Clone, Copy, Debug)]
pub(crate) struct State {
    /// Index of the class.
    pub class: u16,
    /// Positions in the class that are intermittent.
    pub intermittent: u8,
    /// Positions acting as found.
    pub as_found: u8,
    /// Positions acting while testing.
    pub testing: u8,
    /// Whether the basin stood low on arrival.
    pub low: bool,
    /// Prior probability, not normalised.
    pub prior: f64,
}

/// All classes and states.
pub(crate) struct Space {
    pub classes: Vec<Class>,
    pub states: Vec<State>,
}

impl Space {
    /// Every hypothesis of up to two faults; nothing wrong at all only when
    /// `nothing_allowed`.
    pub fn new(nothing_allowed: bool) -> Self {
        let mut space = Self {
            classes: Vec::new(),
            states: Vec::new(),
        };
        if nothing_allowed {
            space.add([None, None], NOTHING);
        }
        for (i, a) in Mode::ALL.into_iter().enumerate() {
            space.add([Some(a), None], a.prior());
            for b in &Mode::ALL[i + 1..] {
                space.add([Some(a), Some(*b)], pair_prior(a, *b));
            }
        }
        space
    }

    fn add(&mut self, modes: [Option<Mode>; 2], prior: f64) {
        let class = self.classes.len() as u16;
        self.classes.push(Class { modes });
        let full = modes
            .iter()
            .enumerate()
            .fold(0u8, |s, (i, m)| s | (u8::from(m.is_some()) << i));
        for intermittent in subsets(full) {
            let manner: f64 = modes
                .iter()
                .enumerate()
                .filter_map(|(i, m)| m.map(|m| (i, m.intermittent_share())))
                .map(|(i, share)| {
                    if intermittent >> i & 1 == 1 {
                        share
                    } else {
                        1.0 - share
                    }
                })
                .product();
            if manner == 0.0 {
                continue;
            }
            let low_chance = low_chance(modes, intermittent);
            let steady = full & !intermittent;
            for acts in subsets(intermittent) {
                for tested in subsets(intermittent) {
                    let p = prior
                        * manner
                        * acting(intermittent, acts, ACTS_AS_FOUND)
                        * acting(intermittent, tested, ACTS_TESTING);
                    for (low, chance) in [(true, low_chance), (false, 1.0 - low_chance)] {
                        self.states.push(State {
                            class,
                            intermittent,
                            as_found: steady | acts,
                            testing: steady | tested,
                            low,
                            prior: p * chance,
                        });
                    }
                }
            }
        }
    }

    /// The hypothesis a state belongs to.
    pub fn hypothesis(&self, state: &State) -> Hypothesis {
        let modes = self.classes[usize::from(state.class)].modes;
        Hypothesis {
            faults: std::array::from_fn(|i| {
                modes[i].map(|mode| Fault {
                    mode,
                    manner: manner(state.intermittent, i),
                })
            }),
        }
    }
}

/// Prior of two modes at once, against single priors that add to one.
fn pair_prior(a: Mode, b: Mode) -> f64 {
    let own = a == Mode::MachineFault || b == Mode::MachineFault;
    let together = if own { PAIR_MACHINE } else { PAIR };
    together * a.prior() * b.prior()
}

/// Manner of the fault at position `i`.
pub(crate) fn manner(intermittent: u8, i: usize) -> Manner {
    if intermittent >> i & 1 == 1 {
        Manner::Intermittent
    } else {
        Manner::Steady
    }
}

/// Every subset of a two-bit set.
fn subsets(of: u8) -> impl Iterator<Item = u8> {
    (0..4u8).filter(move |s| s & !of == 0)
}

/// Chance that exactly `acts` of the `intermittent` positions act.
fn acting(intermittent: u8, acts: u8, each: f64) -> f64 {
    let yes = acts.count_ones() as i32;
    let no = intermittent.count_ones() as i32 - yes;
    each.powi(yes) * (1.0 - each).powi(no)
}

/// Chance the basin stood low on arrival. An intermittent fault may have let
/// it refill. Common practice, no source.
fn low_chance(modes: [Option<Mode>; 2], intermittent: u8) -> f64 {
    let stays_full: f64 = modes
        .iter()
        .enumerate()
        .filter_map(|(i, m)| {
            m.filter(|m| m.lowers_basin())
                .map(|_| manner(intermittent, i))
        })
        .map(|manner| match manner {
            Manner::Steady => 0.03,
            Manner::Intermittent => 0.15,
        })
        .product();
    1.0 - 0.98 * stays_full
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trace::model::{TRIP_PER_DAY, World, machines_out};
    use crate::trace::{Check, Stage};

    /// Bayes' rule with rates 0.004 and 0.002 a day, computed by hand.
    #[test]
    fn several_machines_out_together_share_a_cause() {
        for (n, want, tol) in [(1, 1.0 / 3.0, 1e-9), (2, 0.992, 1e-4), (3, 0.99997, 2e-6)] {
            let got = common_cause(n, 0.004, 0.002);
            assert!((got - want).abs() < tol, "{n}: {got}");
        }
    }

    /// The model's own counting gives the same odds as [`common_cause`].
    #[test]
    fn the_model_weighs_machines_out_as_common_cause_does() {
        let world = |present| World {
            present,
            active: present,
            low: false,
            stage: Stage::AsFound,
        };
        let own = machines_out(&world(Mode::MachineFault.bit()), 6);
        let shared = machines_out(&world(Mode::TowerAirSide.bit()), 6);
        let machine = Mode::MachineFault.prior();
        for n in 1..=Check::MachinesOut.answers().len() {
            let common = (1.0 - machine) * shared[n - 1];
            let got = common / (common + machine * own[n - 1]);
            let want = common_cause(n as u8, TRIP_PER_DAY, 0.002);
            assert!((got - want).abs() < 1e-3, "{n}: {got} {want}");
        }
    }

    #[test]
    fn state_priors_add_to_the_hypotheses_priors() {
        let space = Space::new(true);
        let total: f64 = space.states.iter().map(|s| s.prior).sum();
        let mut want = NOTHING + 1.0;
        for (i, a) in Mode::ALL.iter().enumerate() {
            want += Mode::ALL[i + 1..]
                .iter()
                .map(|b| pair_prior(*a, *b))
                .sum::<f64>();
        }
        assert!((total - want).abs() < 1e-12, "{total} {want}");
        for s in &space.states {
            assert_eq!(
                s.as_found | s.intermittent,
                s.testing | s.intermittent,
                "steady acts"
            );
        }
    }
}
