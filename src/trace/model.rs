//! The plant model: what each check reads in each state of the world.
//!
//! The makeup chain runs supply - level sensor - relay contact - coil - valve
//! body - hand valves - strainer - street; a break anywhere empties the
//! basin, a low basin starves the pump, and a starved or airless tower drives
//! head pressure up. Directions of the readings (low flow: wide range, normal
//! or low leaving water; air side: usual range, high approach) follow from
//! the tower's Merkel balance; the chances themselves are judgement: common
//! practice, no source.

use super::evidence::{Check, Stage};
use super::mode::Mode;
use super::model_fill::{control_chances, water_chances};
use super::plant::Plant;

/// Chance that an answer surprises for reasons outside the model: misread,
/// miswritten, mistaken.
pub(crate) const SLIP: f64 = 0.01;

/// Chance a machine trips by itself on the day another does. Common practice,
/// no source.
pub(crate) const TRIP_PER_DAY: f64 = 0.004;

/// One state of the world at one stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct World {
    /// Modes that are there at all, as bits.
    pub present: u64,
    /// Those acting at this stage.
    pub active: u64,
    /// Whether the basin stood low on arrival.
    pub low: bool,
    /// As found, or while testing.
    pub stage: Stage,
}

impl World {
    /// Whether this mode acts now.
    pub fn has(&self, mode: Mode) -> bool {
        self.active & mode.bit() != 0
    }

    /// Whether any of these acts now.
    pub fn any(&self, modes: &[Mode]) -> bool {
        modes.iter().any(|m| self.has(*m))
    }

    /// Whether anything that empties the basin acts now.
    pub fn draining(&self) -> bool {
        Mode::ALL.iter().any(|m| m.lowers_basin() && self.has(*m))
    }

    /// Chance that the basin stands low at this stage: as found it is what it
    /// was; while testing, water may have been let in.
    pub fn low_now(&self) -> f64 {
        match (self.low, self.stage) {
            (true, Stage::AsFound) => 1.0,
            (false, Stage::AsFound) => 0.0,
            (false, Stage::Testing) => 0.02,
            (true, Stage::Testing) if self.draining() => 0.6,
            (true, Stage::Testing) => 0.25,
        }
    }
}

/// Chance that `n` of `machines` (capped at three) are out, column 0 for one
/// machine. A cause common to the machines takes any number alike; machines
/// failing each by itself pile up as powers of [`TRIP_PER_DAY`].
pub(crate) fn machines_out(world: &World, machines: u8) -> [f64; 4] {
    let kinds = usize::from(machines.clamp(1, 3));
    let mut chance = [0.0; 4];
    let common = world.present & !Mode::MachineFault.bit() != 0;
    for (i, c) in chance.iter_mut().enumerate().take(kinds) {
        *c = if common {
            1.0 / kinds as f64
        } else {
            TRIP_PER_DAY.powi(i as i32)
        };
    }
    let total: f64 = chance.iter().sum();
    chance.map(|c| c / total)
}

/// Two answers: this chance for the first.
pub(crate) fn two(first: f64) -> [f64; 4] {
    [first, 1.0 - first, 0.0, 0.0]
}

/// Three answers.
pub(crate) fn three(a: f64, b: f64, c: f64) -> [f64; 4] {
    [a, b, c, 0.0]
}

/// `p` parts of `a` with the rest of `b`.
pub(crate) fn blend(p: f64, a: [f64; 4], b: [f64; 4]) -> [f64; 4] {
    std::array::from_fn(|i| p * a[i] + (1.0 - p) * b[i])
}

/// Chance of each answer of `check`, in the order of [`Check::answers`], in
/// this world. Adds to one; columns past the last answer are 0.
pub(crate) fn chances(check: Check, world: &World, plant: &Plant) -> [f64; 4] {
    match check {
        Check::MachinesOut => machines_out(world, plant.machines),
        Check::MachineOwn => two(if world.has(Mode::MachineFault) {
            0.85
        } else {
            0.06
        }),
        Check::WeatherAndLoad => two(if world.has(Mode::ConditionsBeyondDesign) {
            0.92
        } else {
            0.10
        }),
        Check::BasinOnArrival => two(if world.low { 1.0 - SLIP } else { SLIP }),
        Check::EnteringWater
        | Check::RangeWidth
        | Check::ApproachToday
        | Check::FanAndAir
        | Check::PumpPressure => loop_chances(check, world),
        Check::LevelNow
        | Check::CallAsFound
        | Check::ControlVoltage
        | Check::ProbeDried
        | Check::Substitution
        | Check::CoilVoltage
        | Check::CoilPull
        | Check::FlowOnCall
        | Check::ProbeFilm
        | Check::FoamLook => control_chances(check, world),
        Check::ForceValve
        | Check::HandValves
        | Check::StrainerBlowOff
        | Check::MainsPressure
        | Check::WaterLoss
        | Check::RefillTest => water_chances(check, world),
    }
}

/// Checks on the tower and the condenser water loop.
fn loop_chances(check: Check, world: &World) -> [f64; 4] {
    let starved = world.has(Mode::WaterFlowLow);
    let airless = world.has(Mode::TowerAirSide);
    let beyond = world.has(Mode::ConditionsBeyondDesign);
    let low = world.low_now();
    match check {
        Check::EnteringWater => {
            let full = if airless || beyond {
                two(0.90)
            } else if starved {
                two(0.15)
            } else {
                two(0.07)
            };
            blend(
                low,
                if airless || beyond {
                    two(0.92)
                } else {
                    two(0.30)
                },
                full,
            )
        }
        Check::RangeWidth => {
            let full = if starved {
                two(0.85)
            } else if beyond {
                two(0.30)
            } else {
                two(0.06)
            };
            blend(low, two(0.80), full)
        }
        Check::ApproachToday => {
            let full = if airless {
                three(0.88, 0.10, 0.02)
            } else if beyond {
                three(0.25, 0.70, 0.05)
            } else if starved {
                three(0.07, 0.48, 0.45)
            } else {
                three(0.05, 0.88, 0.07)
            };
            blend(
                low,
                if airless {
                    three(0.6, 0.3, 0.1)
                } else {
                    three(0.10, 0.50, 0.40)
                },
                full,
            )
        }
        Check::FanAndAir => two(if airless { 0.10 } else { 0.96 }),
        _ => {
            let full = if starved {
                three(0.12, 0.38, 0.50)
            } else {
                three(0.93, 0.04, 0.03)
            };
            blend(low, three(0.20, 0.60, 0.20), full)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chances_add_to_one_and_leave_no_answer_impossible() {
        let plant = Plant::default();
        for check in Check::ALL {
            for bits in 0..1u64 << Mode::ALL.len() {
                for (low, stage) in [(false, Stage::AsFound), (true, Stage::Testing)] {
                    let world = World {
                        present: bits,
                        active: bits,
                        low,
                        stage,
                    };
                    let c = chances(check, &world, &plant);
                    assert!(
                        (c.iter().sum::<f64>() - 1.0).abs() < 1e-9,
                        "{check:?} {c:?}"
                    );
                    let n = check.answers().len();
                    assert!(c[..n].iter().all(|p| *p > 0.0), "{check:?} {c:?}");
                    assert!(c[n..].iter().all(|p| *p == 0.0), "{check:?} {c:?}");
                }
            }
        }
    }

    #[test]
    fn two_machines_on_a_loop_cannot_be_three_out() {
        let world = World {
            present: 0,
            active: 0,
            low: false,
            stage: Stage::AsFound,
        };
        assert_eq!(machines_out(&world, 2)[2], 0.0);
        assert_eq!(machines_out(&world, 1), [1.0, 0.0, 0.0, 0.0]);
    }
}
