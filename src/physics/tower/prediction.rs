//! What a tower does today: leaving and entering water from its design point,
//! today's wet bulb and heat, and the water and air it gets.
//!
//! Method: [`Characteristic`], with L/G moved by the water and air fractions.
//! At constant heat the range goes as one over the water flow. A fan of fixed
//! speed moves a fixed volume, so its mass flow also falls some 1 % per 3 K of
//! warmer air; that is left out. Checked against scipy in
//! `tests/reference/tower_prediction.py`.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;

use super::{Characteristic, Duty, approach, off_design_ratio, range};
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature};

/// The heat the tower is asked to reject.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Carried {
    /// This range, whatever the water flow, 0.1 to 50 K.
    Range(TemperatureInterval),
    /// This part of the design heat, 0.01 to 3: the range follows the flow.
    Heat(Ratio),
}

/// A tower known by its design point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DesignedTower {
    design: Duty,
    characteristic: Characteristic,
}

/// What it works under today.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Today {
    /// Wet bulb of the entering air, -20 to 45 C.
    pub wet_bulb: ThermodynamicTemperature,
    /// The heat it is asked to reject.
    pub carried: Carried,
    /// Water flow as a part of design, 0.05 to 2.
    pub water: Ratio,
    /// Air flow as a part of design, 0.05 to 2.
    pub air: Ratio,
    /// Local atmospheric pressure, 50 to 110 kPa.
    pub pressure: Pressure,
}

/// What it does then.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prediction {
    /// Water leaving the tower (cold).
    pub leaving: ThermodynamicTemperature,
    /// Water entering the tower (hot).
    pub entering: ThermodynamicTemperature,
    /// Entering less leaving water.
    pub range: TemperatureInterval,
    /// Leaving water less wet bulb.
    pub approach: TemperatureInterval,
    /// L/G.
    pub water_air_ratio: Ratio,
    /// KaV/L the fill offers at that L/G.
    pub merkel_number: Ratio,
}

impl DesignedTower {
    /// The tower that just does `design`, with the usual exponent.
    ///
    /// # Errors
    /// As [`Duty::merkel_number`].
    pub fn new(design: &Duty) -> Result<Self, Error> {
        Self::with_exponent(design, Characteristic::USUAL_EXPONENT)
    }

    /// The tower that just does `design`, with exponent `n`, 0.2 to 1.2.
    ///
    /// # Errors
    /// As [`Characteristic::with_exponent`].
    pub fn with_exponent(design: &Duty, n: f64) -> Result<Self, Error> {
        Ok(Self {
            design: *design,
            characteristic: Characteristic::with_exponent(design, n)?,
        })
    }

    /// The design point.
    pub fn design(&self) -> &Duty {
        &self.design
    }

    /// What the fill can do.
    pub fn characteristic(&self) -> &Characteristic {
        &self.characteristic
    }

    /// The range of the design point.
    pub fn design_range(&self) -> TemperatureInterval {
        range(self.design.entering, self.design.leaving)
    }

    /// What the tower does `today`.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, or
    /// the range or L/G that follow outside those of
    /// [`Characteristic::leaving_water`]; its other errors too.
    pub fn predict(&self, today: &Today) -> Result<Prediction, Error> {
        let l_over_g = off_design_ratio(self.design.water_air_ratio, today.water, today.air)?;
        let range = match today.carried {
            Carried::Range(range) => range,
            Carried::Heat(heat) => {
                let heat = within(Quantity::LoadFraction, heat.get::<ratio>(), 0.01, 3.0)?;
                let design = self.design_range().get::<kelvin_interval>();
                let kelvin = design * heat / today.water.get::<ratio>();
                TemperatureInterval::new::<kelvin_interval>(kelvin)
            }
        };
        let leaving =
            self.characteristic
                .leaving_water(today.wet_bulb, range, l_over_g, today.pressure)?;
        Ok(Prediction {
            leaving,
            entering: leaving + range,
            range,
            approach: approach(leaving, today.wet_bulb),
            water_air_ratio: l_over_g,
            merkel_number: self.characteristic.merkel_number(l_over_g)?,
        })
    }
}
