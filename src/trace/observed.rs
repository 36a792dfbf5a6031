//! Readings as found: numbers that speak softly, each around what the physics
//! predicts.

use serde::{Deserialize, Serialize};
use uom::si::electric_potential::volt;
use uom::si::length::meter as metre;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::kelvin as absolute_kelvin;

use super::check::Check;
use super::hypothesis::TRIP_PER_DAY;
use super::meter;
use super::plant::Plant;
use crate::quantity::{
    ElectricPotential, GaugePressure, Length, TemperatureInterval, ThermodynamicTemperature, Value,
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

/// Chance that a tape on the basin is read wrong altogether: from the wrong
/// lip, in the wrong column. A tape is hard to misread by inches.
const TAPE_SLIP: f64 = 5e-4;

/// Mean and spread per effect over a full basin and over a low one.
type Bells = [&'static [(f64, f64)]; 2];

/// ln(range / design) for the effects of the range check. At half the flow
/// the range doubles; with machines out it narrows.
const RANGE: Bells = [
    &[(-0.10, 0.25), (0.15, 0.25), (0.65, 0.30)],
    &[(0.25, 0.45), (0.25, 0.45), (0.65, 0.35)],
];

/// Approach over today's prediction, K, for the effects of the approach
/// check. By the tower's Merkel balance a healthy tower keeps to the
/// prediction, half the flow brings it about 1 K closer, three quarters of
/// the air 1.4 K away, half of it 4 K, a third 7 K. Over a low basin the pump
/// draws air, little goes over the tower, and the water stands and warms: the
/// number is then a weak witness either way.
const APPROACH: Bells = [
    &[(0.0, 1.0), (-0.8, 1.2), (0.6, 1.3), (5.0, 3.0)],
    &[(1.0, 3.5), (0.5, 3.5), (1.5, 3.5), (6.0, 4.0)],
];

impl Reading {
    /// Every reading.
    pub const ALL: [Reading; 7] = [
        Reading::MachinesOut,
        Reading::Entering,
        Reading::Range,
        Reading::Approach,
        Reading::BasinLevel,
        Reading::PumpInlet,
        Reading::ControlVoltage,
    ];

    /// The as-found check this number answers better than words do.
    pub fn check(self) -> Check {
        match self {
            Reading::MachinesOut => Check::MachinesOut,
            Reading::Entering => Check::EnteringWater,
            Reading::Range => Check::RangeWidth,
            Reading::Approach => Check::ApproachToday,
            Reading::BasinLevel => Check::BasinOnArrival,
            Reading::PumpInlet => Check::PumpPressure,
            Reading::ControlVoltage => Check::ControlVoltage,
        }
    }
}

/// What a reading amounts to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Soft {
    /// Weight of each answer of its check.
    Weights([f64; 3]),
    /// Weight of "low" and of "not low" themselves: no slip of the check.
    Level(f64),
    /// Likelihood per effect without and with a common cause.
    Own(f64, f64),
    /// A number and the bells it is held against.
    Bells(f64, Bells),
}

impl Soft {
    /// Likelihood for an effect over a full or a low basin, up to a factor;
    /// `None` for what speaks through the answers of its check.
    pub fn likelihood(&self, effect: usize, low: bool) -> Option<f64> {
        match *self {
            Soft::Weights(_) => None,
            Soft::Level(weight) => Some(if low { weight } else { 1.0 - weight }),
            Soft::Own(own, common) => Some(if effect == 0 { own } else { common }),
            Soft::Bells(x, bells) => {
                let bells = bells[usize::from(low)];
                let (mean, spread) = bells.get(effect).or(bells.last()).copied()?;
                let z = (x - mean) / spread;
                // Divided by the spread so that effects of different spread
                // compare.
                Some((1.0 - OUTLIER) * (-0.5 * z * z).exp() / spread + OUTLIER)
            }
        }
    }
}

fn logistic(x: f64) -> f64 {
    1.0 / (1.0 + (-x).exp())
}

fn ratio_log(value: f64, usual: f64) -> Option<f64> {
    (value > 0.0 && usual > 0.0)
        .then(|| (value / usual).ln())
        .filter(|x| x.is_finite())
}

impl Observed {
    /// What this reading amounts to, `None` when it tells nothing.
    pub(crate) fn soft(&self, reading: Reading, plant: &Plant) -> Option<Soft> {
        let two = |p: f64| p.is_finite().then_some(Soft::Weights([p, 1.0 - p, 0.0]));
        match reading {
            Reading::MachinesOut => {
                let total = self.machines_total.unwrap_or(plant.machines).max(1);
                let out = self.machines_out?.min(total);
                (out > 0).then(|| {
                    let own = TRIP_PER_DAY.powi(i32::from(out) - 1);
                    Soft::Own(own, 1.0 / f64::from(total.min(3)))
                })
            }
            // Water to the machines is water off the tower: where the
            // approach is known the same number must not be heard twice.
            Reading::Entering if self.soft(Reading::Approach, plant).is_some() => None,
            Reading::Entering => {
                let excess = self.entering?.get::<absolute_kelvin>()
                    - self.entering_usual?.get::<absolute_kelvin>();
                two(logistic((excess - 2.5) / 0.8))
            }
            Reading::Range => {
                let x = ratio_log(
                    self.range?.get::<kelvin>(),
                    self.design_range?.get::<kelvin>(),
                );
                x.map(|x| Soft::Bells(x, RANGE))
            }
            Reading::Approach => {
                let x = self.approach?.get::<kelvin>() - self.predicted_approach?.get::<kelvin>();
                x.is_finite().then_some(Soft::Bells(x, APPROACH))
            }
            Reading::BasinLevel => {
                // A tape on moving water is good to about 15 mm.
                let below = self.basin_below_overflow? - self.call_level?;
                let low = logistic(below.get::<metre>() / 0.015);
                let low = TAPE_SLIP + (1.0 - 2.0 * TAPE_SLIP) * low;
                low.is_finite().then_some(Soft::Level(low))
            }
            Reading::PumpInlet => {
                let usual = self.pump_inlet_usual.map_or(0.0, GaugePressure::pascals);
                let margin = if self.pump_inlet_usual.is_some() {
                    8e3
                } else {
                    0.0
                };
                let under = usual - margin - self.pump_inlet?.pascals();
                let low = logistic(under / 3_000.0);
                let weights = [1.0 - low, low / 2.0, low / 2.0];
                low.is_finite().then_some(Soft::Weights(weights))
            }
            Reading::ControlVoltage => {
                let mut plant = *plant;
                plant.control_voltage = self.nominal_voltage.unwrap_or(plant.control_voltage);
                if plant.control_voltage.get::<volt>() <= 0.0 {
                    return None;
                }
                let value = Value::voltage(self.control_voltage?);
                meter::weights(Check::ControlVoltage, value, &plant).map(Soft::Weights)
            }
        }
    }

    /// Whether a number here answers this check better than words do.
    pub(crate) fn outranks(&self, check: Check, plant: &Plant) -> bool {
        let told = |r: Reading| self.soft(r, plant).is_some();
        if check == Check::EnteringWater && told(Reading::Approach) {
            return true;
        }
        Reading::ALL.iter().any(|r| r.check() == check && told(*r))
    }

    /// Whether the basin was read low (true) or not low; `None` when the
    /// level was not read.
    pub(crate) fn read_low(&self, plant: &Plant) -> Option<bool> {
        match self.soft(Reading::BasinLevel, plant) {
            Some(Soft::Level(weight)) => Some(weight > 0.5),
            _ => None,
        }
    }

    /// Whether the symptoms leave room for nothing being wrong any more:
    /// no machine is known to be out and the basin is not known to be low.
    pub(crate) fn allows_nothing(&self, plant: &Plant) -> bool {
        let out = self.machines_out.is_some_and(|n| n > 0);
        !out && self.read_low(plant) != Some(true)
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
        assert_eq!(
            seen.soft(Reading::Range, &plant),
            Some(Soft::Bells(0.0, RANGE))
        );
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
        let mark = Some(Length::new::<metre>(0.1));
        let seen = Observed {
            basin_below_overflow: mark,
            call_level: mark,
            ..Default::default()
        };
        let soft = seen.soft(Reading::BasinLevel, &Plant::default());
        assert_eq!(soft, Some(Soft::Level(0.5)));
        assert!(seen.outranks(Check::BasinOnArrival, &Plant::default()));
        assert!(!seen.outranks(Check::LevelNow, &Plant::default()));
    }

    /// The bells follow the tower's own balance: at three quarters, half and
    /// a third of the air the leaving water rises 1.4, 3.9 and 6.7 K.
    #[test]
    fn the_approach_bells_cover_what_the_tower_does_without_air() {
        let bell = |x: f64, effect| Soft::Bells(x, APPROACH).likelihood(effect, false).unwrap();
        for rise in [3.9, 6.7] {
            assert!(bell(rise, 3) > 5.0 * bell(rise, 0), "{rise}");
        }
        assert!(bell(0.0, 0) > 5.0 * bell(0.0, 3));
        assert!(
            bell(1.4, 0) < 4.0 * bell(1.4, 3),
            "a slipping belt is not cleared by it"
        );
    }
}
