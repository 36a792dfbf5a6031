//! The open cooling tower: approach and range, Merkel number, off-design duty.
//!
//! Method: Merkel (1925) as used in acceptance testing, KaV/L = integral of
//! cp dT / (hs(T) - ha(T)) from leaving to entering water, with
//! ha = hs(wet bulb) + L/G cp (T - leaving); by the four-point Chebyshev rule
//! (0.1, 0.4, 0.6, 0.9 of the range) and, to check it, by adaptive Simpson
//! integration. Tower characteristic KaV/L = C (L/G)^-n, n about 0.6 (0.35 to
//! 1.1 by fill; from memory of the ASHRAE cooling tower chapter).
//!
//! Valid range: water 0 to 60 C, wet bulb -20 to 45 C, L/G 0.05 to 20.
//! Checked against a published worked example (KaV/L 1.6677, within 0.5 %), and
//! against integration with CoolProp 8.0.0 (within 0.3 %). Merkel neglects the
//! water evaporated: Poppe's method ([`Duty::poppe`]) gives about 7 % more for the
//! same duty, so a constant fitted here is used here only. Even distribution of
//! water and air is assumed.

mod characteristic;
mod kernel;
mod poppe;
mod poppe_kernel;
mod prediction;
mod shape;
mod shortfall;

use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::mass_rate::kilogram_per_second;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::volume_rate::cubic_meter_per_second;

use super::air::{atmosphere, celsius};
use super::error::{Error, NoSolution, Quantity, within};
use crate::quantity::{
    MassDensity, MassRate, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature,
    VolumeRate,
};
pub(super) use characteristic::Cooled;
pub use characteristic::{Characteristic, off_design_ratio};
use kernel::Cooling;
pub use poppe::{LeavingAir, Poppe};
pub use prediction::{Carried, DesignedTower, Prediction, Today};
pub use shape::{Fit, Parameter, Shape};
pub use shortfall::{FlowKnown, Readings, Settle, Shortfall, Verdict, WetBulbs};

/// What a tower does: water cooled from one temperature to another by air of
/// a wet bulb, at a ratio of water to air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duty {
    /// Water entering the tower (hot), 0 to 60 C.
    pub entering: ThermodynamicTemperature,
    /// Water leaving the tower (cold), 0 to 60 C, at least 0.1 K below entering.
    pub leaving: ThermodynamicTemperature,
    /// Wet bulb of the entering air, -20 to 45 C.
    pub wet_bulb: ThermodynamicTemperature,
    /// L/G: water mass flow over dry-air mass flow, 0.05 to 20.
    pub water_air_ratio: Ratio,
    /// Local atmospheric pressure, 50 to 110 kPa.
    pub pressure: Pressure,
}

fn wet_bulb_celsius(wet_bulb: ThermodynamicTemperature) -> Result<f64, Error> {
    celsius(Quantity::WetBulb, wet_bulb, -20.0, 45.0)
}

/// Checked L/G.
pub(super) fn water_air(l_over_g: Ratio) -> Result<f64, Error> {
    within(Quantity::WaterAirRatio, l_over_g.get::<ratio>(), 0.05, 20.0)
}

impl Duty {
    /// The duty as the kernel takes it, if in range.
    fn in_range(&self) -> Result<Cooling, Error> {
        let entering = celsius(Quantity::EnteringWater, self.entering, 0.0, 60.0)?;
        let leaving = celsius(Quantity::LeavingWater, self.leaving, 0.0, 60.0)?;
        Ok(Cooling::new(
            leaving,
            within(Quantity::Range, entering - leaving, 0.1, 60.0)?,
            wet_bulb_celsius(self.wet_bulb)?,
            water_air(self.water_air_ratio)?,
            atmosphere(self.pressure)?,
        ))
    }

    /// The same, if not pinched either.
    fn cooling(&self) -> Result<Cooling, Error> {
        let cooling = self.in_range()?;
        if cooling.pinched() {
            return Err(Error::NoSolution(NoSolution::Pinch));
        }
        Ok(cooling)
    }

    /// Merkel number KaV/L by the four-point Chebyshev rule: how much fill the
    /// duty asks for.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states;
    /// [`NoSolution::Pinch`] when the air would become as warm as the water
    /// somewhere in the fill, as when the leaving water is at or below the wet
    /// bulb or L/G is too high.
    pub fn merkel_number(&self) -> Result<Ratio, Error> {
        Ok(Ratio::new::<ratio>(self.cooling()?.chebyshev()))
    }

    /// Merkel number by adaptive integration. Differs from the four-point rule
    /// by less than 0.3 % unless the duty is close to a pinch.
    ///
    /// # Errors
    /// As [`Duty::merkel_number`].
    pub fn merkel_number_integrated(&self) -> Result<Ratio, Error> {
        Ok(Ratio::new::<ratio>(self.cooling()?.integral()))
    }
}

/// Leaving water less wet bulb. A plain difference: negative readings are
/// returned as they are, because they show a bad thermometer.
pub fn approach(
    leaving: ThermodynamicTemperature,
    wet_bulb: ThermodynamicTemperature,
) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin_interval>(leaving.get::<kelvin>() - wet_bulb.get::<kelvin>())
}

/// Entering less leaving water. A plain difference, negative when reversed.
pub fn range(
    entering: ThermodynamicTemperature,
    leaving: ThermodynamicTemperature,
) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin_interval>(entering.get::<kelvin>() - leaving.get::<kelvin>())
}

/// Tower effectiveness: range over range plus approach, that is over entering
/// water less wet bulb (US DOE building energy reference).
///
/// # Errors
/// [`Error::OutOfRange`] when the entering water is outside 0 to 60 C, the wet
/// bulb outside -20 to 45 C or less than 0.1 K below the entering water, or
/// the leaving water outside wet bulb to entering water.
pub fn effectiveness(
    entering: ThermodynamicTemperature,
    leaving: ThermodynamicTemperature,
    wet_bulb: ThermodynamicTemperature,
) -> Result<Ratio, Error> {
    let hot = celsius(Quantity::EnteringWater, entering, 0.0, 60.0)?;
    let wet = wet_bulb_celsius(wet_bulb)?;
    celsius(Quantity::WetBulb, wet_bulb, -20.0, hot - 0.1)?;
    let cold = celsius(Quantity::LeavingWater, leaving, wet, hot)?;
    Ok(Ratio::new::<ratio>((hot - cold) / (hot - wet)))
}

/// L/G from a water mass flow and the fan's volume flow, with the density of
/// dry air where the fan moves it ([`super::air::dry_air_density`]).
///
/// # Errors
/// [`Error::OutOfRange`] when the water flow is outside 0 to 10,000 kg/s, the
/// air flow outside 0.01 to 10,000 m3/s, the density outside 0.3 to 2 kg/m3,
/// or the ratio outside 0.05 to 20.
pub fn water_air_ratio(
    water: MassRate,
    air: VolumeRate,
    dry_air: MassDensity,
) -> Result<Ratio, Error> {
    let water = within(
        Quantity::WaterMassFlow,
        water.get::<kilogram_per_second>(),
        0.0,
        10_000.0,
    )?;
    let air = within(
        Quantity::AirFlow,
        air.get::<cubic_meter_per_second>(),
        0.01,
        10_000.0,
    )?;
    let density = within(
        Quantity::AirDensity,
        dry_air.get::<kilogram_per_cubic_meter>(),
        0.3,
        2.0,
    )?;
    let l_over_g = Ratio::new::<ratio>(water / (air * density));
    water_air(l_over_g)?;
    Ok(l_over_g)
}
