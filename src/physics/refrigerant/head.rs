//! Head pressure and the condenser water behind it: what to expect, and how far
//! to the high-pressure cut-out.
//!
//! Condensing temperature is the mean of bubble and dew temperature, as
//! everywhere here. The approach of a condenser (condensing over leaving water)
//! is its own: take it from a day it was known clean. With heat and water flow
//! unchanged, range and approach stay, and condensing rises kelvin for kelvin
//! with the entering water (common practice, no source); a compressor adds heat
//! as head rises, so the machine trips 1 or 2 K of water sooner.
//!
//! The cut-out is the one on the machine's own nameplate or label. None is
//! assumed: published rules of thumb for it disagree by a fifth.

use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;

use super::Refrigerant;
use crate::physics::air::atmosphere;
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{GaugePressure, Pressure, TemperatureInterval, ThermodynamicTemperature};

/// How far a machine stands from its high-pressure cut-out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Cut-out less head, a difference of two gauge readings; negative above it.
    pub pressure: Pressure,
    /// Condensing temperature at which it trips.
    pub trips_at: ThermodynamicTemperature,
    /// How much warmer it may condense; negative above the cut-out. The water
    /// entering may be as much warmer, heat and flow unchanged.
    pub warmer: TemperatureInterval,
}

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

/// Condensing temperature over the water leaving the condenser, K.
///
/// # Errors
/// [`Error::OutOfRange`] when the water is outside 0 to 100 C, or as
/// [`Refrigerant::condensing`].
pub fn condenser_approach(
    refrigerant: Refrigerant,
    head: GaugePressure,
    leaving_water: ThermodynamicTemperature,
    atmospheric: Pressure,
) -> Result<TemperatureInterval, Error> {
    let mean = refrigerant.condensing(head, atmospheric)?.mean;
    let approach = mean.get::<kelvin>() - leaving_kelvin(leaving_water)?;
    Ok(TemperatureInterval::new::<kelvin_interval>(approach))
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

/// How far the head is from the cut-out, both as gauges read here.
///
/// # Errors
/// As [`Refrigerant::condensing`], for the head and for the cut-out.
pub fn room(
    refrigerant: Refrigerant,
    head: GaugePressure,
    cut_out: GaugePressure,
    atmospheric: Pressure,
) -> Result<Room, Error> {
    let now = refrigerant.condensing(head, atmospheric)?.mean;
    let trips_at = refrigerant.condensing(cut_out, atmospheric)?.mean;
    Ok(Room {
        pressure: Pressure::new::<pascal>(cut_out.pascals() - head.pascals()),
        trips_at,
        warmer: TemperatureInterval::new::<kelvin_interval>(
            trips_at.get::<kelvin>() - now.get::<kelvin>(),
        ),
    })
}

/// Water leaving the condenser at which it trips, the approach staying as it is.
///
/// # Errors
/// [`Error::OutOfRange`] when the approach is outside -10 to 40 K, or as
/// [`Refrigerant::condensing`] for the cut-out.
pub fn leaving_water_at_trip(
    refrigerant: Refrigerant,
    cut_out: GaugePressure,
    approach: TemperatureInterval,
    atmospheric: Pressure,
) -> Result<ThermodynamicTemperature, Error> {
    let approach = approach_kelvin(approach)?;
    let trips_at = refrigerant.condensing(cut_out, atmospheric)?.mean;
    Ok(at(trips_at.get::<kelvin>() - approach))
}

/// Water entering the condenser at which it trips, approach and range staying
/// as they are.
///
/// # Errors
/// [`Error::OutOfRange`] when the range is outside 0 to 60 K, or as
/// [`leaving_water_at_trip`].
pub fn entering_water_at_trip(
    refrigerant: Refrigerant,
    cut_out: GaugePressure,
    approach: TemperatureInterval,
    range: TemperatureInterval,
    atmospheric: Pressure,
) -> Result<ThermodynamicTemperature, Error> {
    let range = crate::physics::heat::range_kelvin(range)?;
    let leaving = leaving_water_at_trip(refrigerant, cut_out, approach, atmospheric)?;
    Ok(at(leaving.get::<kelvin>() - range))
}

fn at(kelvins: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(kelvins)
}
