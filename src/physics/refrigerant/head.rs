//! Head pressure and the condenser water behind it: what to expect.
//!
//! Condensing temperature is the mean of bubble and dew temperature, as
//! everywhere here. The approach of a condenser (condensing over leaving water)
//! is its own: take it from a day it was known clean.

use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;

use super::Refrigerant;
use crate::physics::air::atmosphere;
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{GaugePressure, Pressure, TemperatureInterval, ThermodynamicTemperature};

fn leaving_kelvin(water: ThermodynamicTemperature) -> Result<f64, Error> {
    within(
        Quantity::CondenserLeavingWater,
        water.get::<kelvin>(),
        273.15,
        373.15,
    )
}

/// An approach, -10 to 40 K: below zero only by two thermometers that disagree.
fn approach_kelvin(approach: TemperatureInterval) -> Result<f64, Error> {
    within(
        Quantity::CondenserApproach,
        approach.get::<kelvin_interval>(),
        -10.0,
        40.0,
    )
}

/// The head a gauge should read with this water leaving the condenser and a
/// normal `approach`.
///
/// # Errors
/// [`Error::OutOfRange`] when the water is outside 0 to 100 C, the approach
/// outside -10 to 40 K, the atmosphere outside 50 to 110 kPa, or the two
/// together beyond [`Refrigerant::condensing_pressure`].
pub fn expected(
    refrigerant: Refrigerant,
    leaving_water: ThermodynamicTemperature,
    approach: TemperatureInterval,
    atmospheric: Pressure,
) -> Result<GaugePressure, Error> {
    atmosphere(atmospheric)?;
    let condensing = leaving_kelvin(leaving_water)? + approach_kelvin(approach)?;
    let p = refrigerant.condensing_pressure(at(condensing))?;
    Ok(GaugePressure::from_absolute(p, atmospheric))
}

fn at(kelvins: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(kelvins)
}
