//! A fixed tower off its design point: KaV/L = C (L/G)^-n.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;

use super::kernel::Cooling;
use super::{Duty, water_air, wet_bulb_celsius};
use crate::physics::air::{atmosphere, temperature};
use crate::physics::error::{Error, NoSolution, Quantity, within};
use crate::physics::root::{bisect, halley};
use crate::quantity::{Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature};

/// What a tower's fill can do at any ratio of water to air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Characteristic {
    /// C: the Merkel number at L/G = 1.
    constant: f64,
    /// n: how fast it falls as L/G rises.
    exponent: f64,
}

impl Characteristic {
    /// The usual exponent for fills, 0.6 (spread 0.35 to 1.1; from memory of
    /// the ASHRAE cooling tower chapter).
    pub const USUAL_EXPONENT: f64 = 0.6;

    /// The tower that just does `design`, with the usual exponent.
    ///
    /// # Errors
    /// As [`Duty::merkel_number`].
    pub fn from_design(design: &Duty) -> Result<Self, Error> {
        Self::with_exponent(design, Self::USUAL_EXPONENT)
    }

    /// The tower that just does `design`, with exponent `n`, 0.2 to 1.2.
    ///
    /// # Errors
    /// As [`Duty::merkel_number`]; [`Error::OutOfRange`] for the exponent.
    pub fn with_exponent(design: &Duty, n: f64) -> Result<Self, Error> {
        let exponent = within(Quantity::CharacteristicExponent, n, 0.2, 1.2)?;
        let merkel = design.merkel_number()?.get::<ratio>();
        let l_over_g = water_air(design.water_air_ratio)?;
        Ok(Self {
            constant: merkel * l_over_g.powf(exponent),
            exponent,
        })
    }

    /// C, the Merkel number at L/G = 1.
    pub fn constant(&self) -> f64 {
        self.constant
    }

    /// n, the exponent.
    pub fn exponent(&self) -> f64 {
        self.exponent
    }

    /// Merkel number the fill offers at this L/G.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when L/G is outside 0.05 to 20, or the Merkel
    /// number outside 0.001 to 1000.
    pub fn merkel_number(&self, water_air_ratio: Ratio) -> Result<Ratio, Error> {
        let merkel = self.constant * water_air(water_air_ratio)?.powf(-self.exponent);
        Ok(Ratio::new::<ratio>(within(
            Quantity::MerkelNumber,
            merkel,
            1e-3,
            1e3,
        )?))
    }

    /// Leaving water this tower makes at a wet bulb, range and L/G.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the wet bulb is outside -20 to 45 C, the
    /// range outside 0.1 to 50 K, L/G outside 0.05 to 20 or the pressure
    /// outside 50 to 110 kPa; [`NoSolution::Freezing`] when the water would
    /// leave below 0 C; [`NoSolution::BeyondTower`] when it would enter above
    /// 60 C.
    pub fn leaving_water(
        &self,
        wet_bulb: ThermodynamicTemperature,
        range: TemperatureInterval,
        water_air_ratio: Ratio,
        pressure: Pressure,
    ) -> Result<ThermodynamicTemperature, Error> {
        let wet = wet_bulb_celsius(wet_bulb)?;
        let range = within(Quantity::Range, range.get::<kelvin_interval>(), 0.1, 50.0)?;
        let offered = self.merkel_number(water_air_ratio)?.get::<ratio>();
        let l_over_g = water_air(water_air_ratio)?;
        let pressure = atmosphere(pressure)?;
        let base = Cooling::new(wet, range, wet, l_over_g, pressure);
        // One over the Merkel number is nearly straight in the leaving water.
        let spare = |leaving: f64| {
            let duty = Cooling { leaving, ..base };
            if duty.pinched() {
                return [f64::NEG_INFINITY, 0.0, 0.0];
            }
            let asked = duty.chebyshev();
            let slope = duty.chebyshev_fall() / (asked * asked);
            [1.0 / asked - 1.0 / offered, slope, 0.0]
        };
        let (coldest, warmest) = (wet.max(0.0), 60.0 - range);
        if warmest <= coldest || spare(warmest)[0] < 0.0 {
            return Err(Error::NoSolution(NoSolution::BeyondTower));
        }
        if spare(coldest)[0] >= 0.0 {
            return Err(Error::NoSolution(NoSolution::Freezing));
        }
        let start = (wet + 5.0).clamp(coldest, warmest);
        Ok(temperature(halley(coldest, warmest, start, spare)))
    }
}

/// A tower with wet bulb, L/G and pressure held: leaving water by entering
/// water.
#[derive(Clone, Copy)]
pub(in crate::physics) struct Cooled {
    offered: f64,
    wet_bulb: f64,
    water_air_ratio: f64,
    pressure: f64,
}

impl Cooled {
    /// Leaving water, C, for entering water above the wet bulb, to 60 C; never
    /// below freezing.
    pub fn leaving(&self, hot: f64) -> f64 {
        let base = Cooling::new(hot, 0.0, self.wet_bulb, self.water_air_ratio, self.pressure);
        let spare = |leaving: f64| {
            let duty = Cooling {
                leaving,
                range: hot - leaving,
                ..base
            };
            if duty.pinched() {
                f64::NEG_INFINITY
            } else {
                self.offered - duty.chebyshev()
            }
        };
        bisect(self.wet_bulb.max(0.0), hot, spare)
    }
}

impl Characteristic {
    /// This tower as [`Cooled`].
    ///
    /// # Errors
    /// [`Error::OutOfRange`] as [`Characteristic::leaving_water`].
    pub(in crate::physics) fn cooled(
        &self,
        wet_bulb: ThermodynamicTemperature,
        water_air_ratio: Ratio,
        pressure: Pressure,
    ) -> Result<Cooled, Error> {
        Ok(Cooled {
            offered: self.merkel_number(water_air_ratio)?.get::<ratio>(),
            wet_bulb: wet_bulb_celsius(wet_bulb)?,
            water_air_ratio: water_air(water_air_ratio)?,
            pressure: atmosphere(pressure)?,
        })
    }
}

/// L/G after water and air flow have each changed to a fraction of design.
///
/// # Errors
/// [`Error::OutOfRange`] when a fraction is outside 0.05 to 2, or either L/G
/// outside 0.05 to 20.
pub fn off_design_ratio(design: Ratio, water: Ratio, air: Ratio) -> Result<Ratio, Error> {
    let fraction = |f: Ratio| within(Quantity::FlowFraction, f.get::<ratio>(), 0.05, 2.0);
    let changed = Ratio::new::<ratio>(water_air(design)? * fraction(water)? / fraction(air)?);
    water_air(changed)?;
    Ok(changed)
}
