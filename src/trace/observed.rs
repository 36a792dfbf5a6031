//! Readings: numbers that speak softly, each around what the model predicts.

use serde::{Deserialize, Serialize};
use uom::si::electric_potential::volt;
use uom::si::length::meter;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::kelvin as absolute_kelvin;

use super::evidence::{Check, Stage};
use super::mode::Mode;
use super::model::{TRIP_PER_DAY, World, chances};
use super::plant::Plant;
use crate::quantity::{
    ElectricPotential, GaugePressure, Length, TemperatureInterval, ThermodynamicTemperature,
};

/// What was read with an instrument, as found. Everything is optional; a pair
/// that is only half there, or a number that is not finite, tells nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", default)]
pub struct Observed {
    /// Machines out on head pressure; 0 tells nothing.
    pub machines_out: Option<u8>,
    /// Machines that were running today, when not the plant's number.
    pub machines_total: Option<u8>,
    /// Head pressure of a machine on the loop.
    pub head: Option<GaugePressure>,
    /// The same machine's usual head pressure at such a load.
    pub head_usual: Option<GaugePressure>,
    /// Water temperature entering the machines.
    pub entering: Option<ThermodynamicTemperature>,
    /// What it usually is in such weather.
    pub entering_usual: Option<ThermodynamicTemperature>,
    /// Range: water off the machines less water to them.
    pub range: Option<TemperatureInterval>,
    /// The range the loop was laid out for.
    pub design_range: Option<TemperatureInterval>,
    /// Approach: water off the tower less the wet bulb.
    pub approach: Option<TemperatureInterval>,
    /// The approach a healthy tower would show today.
    pub predicted_approach: Option<TemperatureInterval>,
    /// Basin level below the overflow lip, as found.
    pub basin_below_overflow: Option<Length>,
    /// The level at which the control should call, below the overflow lip.
    pub call_level: Option<Length>,
    /// Pressure at the pump inlet.
    pub pump_inlet: Option<GaugePressure>,
    /// Pressure at the pump inlet with the basin full.
    pub pump_inlet_usual: Option<GaugePressure>,
    /// Voltage at the level control.
    pub control_voltage: Option<ElectricPotential>,
    /// Its nominal voltage, when not the plant's.
    pub nominal_voltage: Option<ElectricPotential>,
}

/// One of the readings in [`Observed`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reading {
    /// Number of machines out.
    MachinesOut,
    /// Head pressure.
    Head,
    /// Entering water temperature.
    Entering,
    /// Range.
    Range,
    /// Approach.
    Approach,
    /// Basin level.
    BasinLevel,
    /// Pump inlet pressure.
    PumpInlet,
    /// Control voltage.
    ControlVoltage,
}

/// A small constant chance of a reading from anywhere: wrong unit, wrong
/// gauge, wrong tap. Keeps one bad number from deciding alone.
const OUTLIER: f64 = 0.02;

impl Reading {
    /// Every reading.
    pub const ALL: [Reading; 8] = [
        Reading::MachinesOut,
        Reading::Head,
        Reading::Entering,
        Reading::Range,
        Reading::Approach,
        Reading::BasinLevel,
        Reading::PumpInlet,
        Reading::ControlVoltage,
    ];

    /// The as-found check this number answers better than words do.
    pub fn check(self) -> Option<Check> {
        match self {
            Reading::MachinesOut => Some(Check::MachinesOut),
            Reading::Head => None,
            Reading::Entering => Some(Check::EnteringWater),
            Reading::Range => Some(Check::RangeWidth),
            Reading::Approach => Some(Check::ApproachToday),
            Reading::BasinLevel => Some(Check::BasinOnArrival),
            Reading::PumpInlet => Some(Check::PumpPressure),
            Reading::ControlVoltage => Some(Check::ControlVoltage),
        }
    }
}

/// What a reading amounts to: the number the model compares.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Soft {
    /// Machines out, of how many.
    MachinesOut(u8, u8),
    /// ln(head / usual).
    HeadLog(f64),
    /// ln(range / design).
    RangeLog(f64),
    /// Approach above today's prediction, K.
    ApproachExcess(f64),
    /// Weight of each answer of a check, from a logistic of the number.
    Answer(Check, [f64; 3]),
}

fn logistic(x: f64) -> f64 {
    1.0 / (1.0 + (-x).exp())
}

/// A Gaussian around `mean`, peak 1, over a floor of [`OUTLIER`].
fn around(x: f64, mean: f64, spread: f64) -> f64 {
    let z = (x - mean) / spread;
    // Divided by the spread so that hypotheses of different spread compare.
    (1.0 - OUTLIER) * (-0.5 * z * z).exp() / spread + OUTLIER
}

fn ratio_log(value: f64, usual: f64) -> Option<f64> {
    (value > 0.0 && usual > 0.0)
        .then(|| (value / usual).ln())
        .filter(|x| x.is_finite())
}

impl Observed {
    /// The reading reduced to what the model compares; `None` when it is not
    /// there or tells nothing.
    pub(crate) fn soft(&self, reading: Reading, plant: &Plant) -> Option<Soft> {
        let soft = match reading {
            Reading::MachinesOut => {
                let total = self.machines_total.unwrap_or(plant.machines).max(1);
                let out = self.machines_out.filter(|n| *n > 0)?.min(total);
                Soft::MachinesOut(out, total)
            }
            Reading::Head => {
                let usual = self.head_usual?.pascals();
                Soft::HeadLog(ratio_log(self.head?.pascals(), usual)?)
            }
            Reading::Range => {
                let design = self.design_range?.get::<kelvin>();
                Soft::RangeLog(ratio_log(self.range?.get::<kelvin>(), design)?)
            }
            Reading::Approach => Soft::ApproachExcess(
                self.approach?.get::<kelvin>() - self.predicted_approach?.get::<kelvin>(),
            ),
            Reading::Entering => {
                let excess = self.entering?.get::<absolute_kelvin>()
                    - self.entering_usual?.get::<absolute_kelvin>();
                let hot = logistic((excess - 2.5) / 0.8);
                Soft::Answer(Check::EnteringWater, [hot, 1.0 - hot, 0.0])
            }
            Reading::BasinLevel => {
                // A tape on moving water is good to about 15 mm.
                let below = self.basin_below_overflow? - self.call_level?;
                let low = logistic(below.get::<meter>() / 0.015);
                Soft::Answer(Check::BasinOnArrival, [low, 1.0 - low, 0.0])
            }
            Reading::PumpInlet => {
                let usual = self.pump_inlet_usual.map_or(0.0, GaugePressure::pascals);
                let margin = if self.pump_inlet_usual.is_some() {
                    8_000.0
                } else {
                    0.0
                };
                let under = usual - margin - self.pump_inlet?.pascals();
                let low = logistic(under / 3_000.0);
                Soft::Answer(Check::PumpPressure, [1.0 - low, low / 2.0, low / 2.0])
            }
            Reading::ControlVoltage => {
                let nominal = self.nominal_voltage.unwrap_or(plant.control_voltage);
                let nominal = nominal.get::<volt>();
                if nominal <= 0.0 {
                    return None;
                }
                // Minus 15 % is the usual limit of a coil or control (common
                // practice, no source); a quarter may be a ghost voltage.
                let v = self.control_voltage?.get::<volt>() / nominal;
                let good = logistic((v - 0.85) / 0.02);
                let some = logistic((v - 0.25) / 0.04);
                Soft::Answer(
                    Check::ControlVoltage,
                    [good, (some - good).max(0.0), 1.0 - some],
                )
            }
        };
        soft.is_sound().then_some(soft)
    }

    /// Whether a number here answers this check better than words do.
    pub(crate) fn outranks(&self, check: Check, plant: &Plant) -> bool {
        Reading::ALL
            .iter()
            .any(|r| r.check() == Some(check) && self.soft(*r, plant).is_some())
    }

    /// Whether the symptoms leave room for nothing being wrong any more:
    /// no machine is known to be out and the basin is not known to be low.
    pub(crate) fn allows_nothing(&self, plant: &Plant) -> bool {
        let out = self.machines_out.is_some_and(|n| n > 0);
        let low = match self.soft(Reading::BasinLevel, plant) {
            Some(Soft::Answer(_, weight)) => weight[0] > 0.5,
            _ => false,
        };
        !out && !low
    }
}

impl Soft {
    fn is_sound(&self) -> bool {
        match self {
            Soft::MachinesOut(..) => true,
            Soft::HeadLog(x) | Soft::RangeLog(x) | Soft::ApproachExcess(x) => x.is_finite(),
            Soft::Answer(_, w) => w.iter().all(|p| p.is_finite()),
        }
    }

    /// Likelihood of the reading in this world, up to a constant factor.
    /// Spreads are judgement: common practice, no source. The shifts follow
    /// the tower's Merkel balance: at half the flow the range doubles and the
    /// tower runs about 1 K closer; at half the air the approach grows by
    /// about 4 K.
    pub(crate) fn likelihood(&self, world: &World, plant: &Plant) -> f64 {
        let low = world.low && world.stage == Stage::AsFound;
        let starved = low || world.has(Mode::WaterFlowLow);
        let airless = world.has(Mode::TowerAirSide);
        let beyond = world.has(Mode::ConditionsBeyondDesign);
        match *self {
            Soft::MachinesOut(out, total) => {
                let own = world.present & !Mode::MachineFault.bit() == 0;
                if own {
                    TRIP_PER_DAY.powi(i32::from(out) - 1)
                } else {
                    1.0 / f64::from(total.min(3))
                }
            }
            Soft::HeadLog(x) => {
                let (mean, spread) = if world.active == 0 && !low {
                    (0.0, 0.07)
                } else {
                    (0.25, 0.18)
                };
                around(x, mean, spread)
            }
            Soft::RangeLog(x) => {
                let (mean, spread) = if starved {
                    (0.65, 0.30)
                } else if beyond {
                    (0.15, 0.20)
                } else {
                    (-0.05, 0.20)
                };
                around(x, mean, spread)
            }
            Soft::ApproachExcess(x) => {
                let (mean, spread) = if airless {
                    (4.0, 1.8)
                } else if starved {
                    (-1.0, 1.2)
                } else {
                    (0.0, 1.0)
                };
                around(x, mean, spread)
            }
            Soft::Answer(check, weight) => {
                let c = chances(check, world, plant);
                weight
                    .iter()
                    .zip(c)
                    .map(|(w, p)| w * p)
                    .sum::<f64>()
                    .max(1e-12)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_a_pair_or_a_broken_number_tells_nothing() {
        let plant = Plant::default();
        let k = TemperatureInterval::new::<kelvin>;
        let mut seen = Observed {
            range: Some(k(5.0)),
            ..Observed::default()
        };
        assert_eq!(seen.soft(Reading::Range, &plant), None);
        for design in [0.0, -3.0, f64::NAN, f64::INFINITY] {
            seen.design_range = Some(k(design));
            assert_eq!(seen.soft(Reading::Range, &plant), None, "{design}");
        }
        seen.design_range = Some(k(5.0));
        assert_eq!(seen.soft(Reading::Range, &plant), Some(Soft::RangeLog(0.0)));
    }

    #[test]
    fn readings_survive_storage_and_absent_ones_stay_absent() {
        let seen = Observed {
            machines_out: Some(3),
            range: Some(TemperatureInterval::new::<kelvin>(5.5)),
            ..Observed::default()
        };
        let text = serde_json::to_string(&seen).unwrap();
        assert!(text.contains("\"machines-out\":3"), "{text}");
        assert_eq!(serde_json::from_str::<Observed>(&text).unwrap(), seen);
        assert_eq!(
            serde_json::from_str::<Observed>("{}").unwrap(),
            Observed::default()
        );
    }

    #[test]
    fn a_level_at_the_call_mark_says_neither() {
        let mark = Some(Length::new::<meter>(0.1));
        let seen = Observed {
            basin_below_overflow: mark,
            call_level: mark,
            ..Default::default()
        };
        let soft = seen.soft(Reading::BasinLevel, &Plant::default());
        assert_eq!(
            soft,
            Some(Soft::Answer(Check::BasinOnArrival, [0.5, 0.5, 0.0]))
        );
        assert!(seen.outranks(Check::BasinOnArrival, &Plant::default()));
        assert!(!seen.outranks(Check::LevelNow, &Plant::default()));
    }
}
