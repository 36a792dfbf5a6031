//! How far a tower falls short of its design today, and what that looks like.
//!
//! Method: KaV/L the readings ask for over the KaV/L the characteristic offers
//! at the same L/G; leaving water over what the tower of the design point would
//! make; and each shape of trouble held against the readings ([`super::Shape`]).
//! Thermometers good to 0.5 K leave a wide margin on a small approach: the
//! weights say how much. One thing wrong at a time is assumed, and water and air
//! spread evenly.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;

use super::shape::{Fit, Seen, Shape};
use super::{Carried, DesignedTower, Duty, Today, approach, range, wet_bulb_celsius};
use crate::physics::air::{atmosphere, celsius};
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature};

/// Where the wet bulb was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WetBulbs {
    /// Away from the tower: the wet bulb of the day.
    Away(ThermodynamicTemperature),
    /// At the air inlet only: recirculation, if any, is in it already.
    AtInlet(ThermodynamicTemperature),
    /// Both.
    Both {
        /// Away from the tower.
        away: ThermodynamicTemperature,
        /// At the air inlet.
        inlet: ThermodynamicTemperature,
    },
}

/// What was read on the tower today.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Readings {
    /// Water entering the tower (hot), 0 to 60 C.
    pub entering: ThermodynamicTemperature,
    /// Water leaving the tower (cold), 0 to 60 C.
    pub leaving: ThermodynamicTemperature,
    /// Wet bulb, -20 to 45 C.
    pub wet_bulbs: WetBulbs,
    /// Metered water flow as a part of design, 0.05 to 2.
    pub water: Option<Ratio>,
    /// Heat as a part of design, 0.05 to 3, when known otherwise than from
    /// flow and range.
    pub heat: Option<Ratio>,
    /// Local atmospheric pressure, 50 to 110 kPa.
    pub pressure: Pressure,
    /// Standard uncertainty of each thermometer, 0.05 to 5 K;
    /// [`Readings::usual_thermometer`] when nobody knows.
    pub thermometer: TemperatureInterval,
}

impl Readings {
    /// 0.5 K: a clamp-on or pocket thermometer, not calibrated lately (common
    /// practice, no source).
    pub fn usual_thermometer() -> TemperatureInterval {
        TemperatureInterval::new::<kelvin_interval>(0.5)
    }
}

/// How the water flow reckoned with is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FlowKnown {
    /// Metered.
    Metered,
    /// From the known heat and the range.
    FromHeat,
    /// Taken as the design flow.
    Assumed,
}

/// What the fits amount to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// This shape has three times the weight of the next.
    One(Shape),
    /// These two cannot be told apart by the readings; the likelier first.
    Either(Shape, Shape),
}

/// The reading that would tell two shapes apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Settle {
    /// Meter the water.
    WaterFlow,
    /// Find the heat from the machines.
    Heat,
    /// Read the wet bulb at the air inlet and away from the tower.
    InletWetBulb,
    /// Check the thermometers against each other and read again.
    Thermometers,
}

/// A tower held against its design.
#[derive(Clone, Debug, PartialEq)]
pub struct Shortfall {
    /// KaV/L the fill offers at today's L/G.
    pub offered: Ratio,
    /// KaV/L the readings show, design air taken; an error where no tower can
    /// show them.
    pub delivered: Result<Ratio, Error>,
    /// Leaving water the tower of the design point would make at today's wet
    /// bulb, range and flow.
    pub expected: Result<ThermodynamicTemperature, Error>,
    /// Leaving water as read over [`Shortfall::expected`]; negative when colder.
    pub over_expected: Result<TemperatureInterval, Error>,
    /// Water flow reckoned with, as a part of design.
    pub water: Ratio,
    /// How that is known.
    pub flow: FlowKnown,
    /// Every shape the readings can show, the likeliest first; weights add up
    /// to 1.
    pub fits: Vec<Fit>,
    /// What they amount to.
    pub verdict: Verdict,
    /// What would settle it, when two shapes stand or none does.
    pub settle: Option<Settle>,
}

impl Shortfall {
    /// KaV/L delivered as a part of KaV/L offered.
    ///
    /// # Errors
    /// That of [`Shortfall::delivered`].
    pub fn part(&self) -> Result<Ratio, Error> {
        Ok(self.delivered? / self.offered)
    }
}

impl DesignedTower {
    /// Holds today's `readings` against the design point.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a reading is outside the range it states, or
    /// L/G at today's flow outside 0.05 to 20. Readings in range that no tower
    /// can show are not an error: they come back as a contradiction.
    pub fn shortfall(&self, readings: &Readings) -> Result<Shortfall, Error> {
        let part = |quantity, value: Option<Ratio>, most| {
            let value = value.map(|r| within(quantity, r.get::<ratio>(), 0.05, most));
            value.transpose()
        };
        let (day, breathed) = match readings.wet_bulbs {
            WetBulbs::Away(t) | WetBulbs::AtInlet(t) => (t, t),
            WetBulbs::Both { away, inlet } => (away, inlet),
        };
        let inlet = wet_bulb_celsius(breathed)?;
        let seen = Seen {
            tower: self,
            entering: celsius(Quantity::EnteringWater, readings.entering, 0.0, 60.0)?,
            leaving: celsius(Quantity::LeavingWater, readings.leaving, 0.0, 60.0)?,
            wet_bulb: wet_bulb_celsius(day)?,
            inlet: matches!(readings.wet_bulbs, WetBulbs::Both { .. }).then_some(inlet),
            only_inlet: matches!(readings.wet_bulbs, WetBulbs::AtInlet(_)),
            water: part(Quantity::FlowFraction, readings.water, 2.0)?,
            heat: part(Quantity::LoadFraction, readings.heat, 3.0)?,
            pressure: readings.pressure,
            thermometer: within(
                Quantity::ThermometerError,
                readings.thermometer.get::<kelvin_interval>(),
                0.05,
                5.0,
            )?,
        };
        atmosphere(readings.pressure)?;
        let (water, flow) = self.flow_today(&seen);
        let today = Today {
            wet_bulb: day,
            carried: Carried::Range(range(readings.entering, readings.leaving)),
            water: Ratio::new::<ratio>(water),
            air: Ratio::new::<ratio>(1.0),
            pressure: readings.pressure,
        };
        let l_over_g = self.design().water_air_ratio * today.water;
        let duty = Duty {
            entering: readings.entering,
            leaving: readings.leaving,
            wet_bulb: breathed,
            water_air_ratio: l_over_g,
            pressure: readings.pressure,
        };
        let expected = self.predict(&today).map(|p| p.leaving);
        let fits = seen.fits();
        let verdict = verdict(&fits);
        Ok(Shortfall {
            offered: self.characteristic().merkel_number(l_over_g)?,
            delivered: duty.merkel_number(),
            over_expected: expected.map(|t| approach(readings.leaving, t)),
            expected,
            water: today.water,
            flow,
            settle: settle(verdict, &seen),
            verdict,
            fits,
        })
    }

    fn flow_today(&self, seen: &Seen) -> (f64, FlowKnown) {
        let span = seen.entering - seen.leaving;
        match (seen.water, seen.heat) {
            (Some(water), _) => (water, FlowKnown::Metered),
            (None, Some(heat)) if span >= 0.1 => {
                let design = self.design_range().get::<kelvin_interval>();
                ((heat * design / span).clamp(0.05, 2.0), FlowKnown::FromHeat)
            }
            _ => (1.0, FlowKnown::Assumed),
        }
    }
}

fn verdict(fits: &[Fit]) -> Verdict {
    let (first, second) = (&fits[0], &fits[1]);
    if first.weight >= 3.0 * second.weight {
        Verdict::One(first.shape)
    } else {
        Verdict::Either(first.shape, second.shape)
    }
}

/// What would settle it: the missing reading that tells the two apart.
fn settle(verdict: Verdict, seen: &Seen) -> Option<Settle> {
    let (a, b) = match verdict {
        Verdict::One(Shape::Contradiction) => return Some(Settle::Thermometers),
        Verdict::One(_) => return None,
        Verdict::Either(a, b) => (a, b),
    };
    let has = |shape| a == shape || b == shape;
    Some(if has(Shape::Contradiction) {
        Settle::Thermometers
    } else if has(Shape::LowWater) && seen.water.is_none() {
        Settle::WaterFlow
    } else if has(Shape::Recirculation) && seen.inlet.is_none() {
        Settle::InletWetBulb
    } else if has(Shape::BeyondDesign) && seen.heat.is_none() {
        Settle::Heat
    } else {
        Settle::Thermometers
    })
}
