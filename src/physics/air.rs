//! Moist air: what a thermometer and a hygrometer say about the air a tower breathes.
//!
//! Method: ASHRAE Handbook Fundamentals (2017) chapter 1, perfect-gas relations
//! with Hyland & Wexler (1983) saturation pressure, over ice below 0 C, and the
//! enhancement factor of Buck (1981, J. Appl. Meteorol. 20:1527), without which
//! the enthalpy of saturated air is about 0.5 % low in its vapour part.
//! Relative humidity is the ratio of vapour pressures at the same dry bulb;
//! below freezing it is taken over ice, as ASHRAE does, not over water as
//! weather reports do.
//!
//! Valid range: dry bulb -20 to 60 C, pressure 50 to 110 kPa (about -500 to
//! 5500 m). Checked against the ASHRAE tables and example 1. Against PsychroLib
//! 2.5.0 and CoolProp 8.0.0 on grids over that range: wet bulb within 0.043 and
//! 0.029 K, where ice or water on the wick is not in question ([`wet_bulb`]);
//! humidity ratio within 0.16 % of CoolProp; saturated enthalpy within 0.1 % of
//! CoolProp from 20 to 40 C. The tests are in `tests/physics`.

pub(super) mod kernel;

use uom::si::available_energy::kilojoule_per_kilogram;
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

use super::error::{Error, NoSolution, Quantity, within};
use super::root::bisect;
use crate::quantity::{
    AvailableEnergy, Length, MassDensity, Pressure, Ratio, ThermodynamicTemperature,
};

const ZERO_C: f64 = 273.15;

/// Celsius, after checking the kelvin value against bounds given in Celsius.
/// Rounding at the ice point is taken off, so that 32 F is 0 C and not ice.
pub(super) fn celsius(
    quantity: Quantity,
    t: ThermodynamicTemperature,
    low: f64,
    high: f64,
) -> Result<f64, Error> {
    let c = within(quantity, t.get::<kelvin>(), low + ZERO_C, high + ZERO_C)? - ZERO_C;
    Ok(if c.abs() < 1e-9 { 0.0 } else { c })
}

/// A temperature from Celsius.
pub(super) fn temperature(celsius: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(celsius + ZERO_C)
}

/// Pascals, after checking that this is an atmosphere people work in.
pub(super) fn atmosphere(pressure: Pressure) -> Result<f64, Error> {
    within(
        Quantity::AtmosphericPressure,
        pressure.get::<pascal>(),
        50_000.0,
        110_000.0,
    )
}

fn dry_bulb_celsius(dry_bulb: ThermodynamicTemperature) -> Result<f64, Error> {
    celsius(Quantity::DryBulb, dry_bulb, -20.0, 60.0)
}

/// Checked dry bulb (C), relative humidity and pressure (Pa).
fn checked(
    dry_bulb: ThermodynamicTemperature,
    humidity: Ratio,
    pressure: Pressure,
) -> Result<(f64, f64, f64), Error> {
    let dry = dry_bulb_celsius(dry_bulb)?;
    let humidity = within(
        Quantity::RelativeHumidity,
        humidity.get::<ratio>(),
        0.0,
        1.0,
    )?;
    Ok((dry, humidity, atmosphere(pressure)?))
}

/// Checked dry bulb (C), vapour pressure (Pa) and pressure (Pa).
fn state(
    dry_bulb: ThermodynamicTemperature,
    humidity: Ratio,
    pressure: Pressure,
) -> Result<(f64, f64, f64), Error> {
    let (dry, humidity, pressure) = checked(dry_bulb, humidity, pressure)?;
    let vapour = humidity * kernel::saturated_vapour(dry, pressure);
    Ok((dry, vapour, pressure))
}

/// Atmospheric pressure at an altitude in the standard atmosphere, absolute.
/// Altitude -500 to 5000 m. ASHRAE Fundamentals ch. 1, eq. 3. Weather moves
/// the true pressure by 3 % either way.
///
/// # Errors
/// [`Error::OutOfRange`] when the altitude is outside -500 to 5000 m.
pub fn standard_pressure(altitude: Length) -> Result<Pressure, Error> {
    let z = within(Quantity::Altitude, altitude.get::<meter>(), -500.0, 5000.0)?;
    Ok(Pressure::new::<pascal>(
        101_325.0 * (1.0 - 2.25577e-5 * z).powf(5.2559),
    ))
}

/// Saturation pressure of pure water, absolute: over ice below 0 C, over
/// liquid from 0 C. Valid -100 to 200 C (Hyland & Wexler 1983).
///
/// # Errors
/// [`Error::OutOfRange`] when the temperature is outside -100 to 200 C.
pub fn saturation_pressure(t: ThermodynamicTemperature) -> Result<Pressure, Error> {
    let t = celsius(Quantity::AirTemperature, t, -100.0, 200.0)?;
    Ok(Pressure::new::<pascal>(kernel::saturation_pressure(t)))
}

/// The enhancement factor of saturated moist air (Buck 1981), about 1.0047 at
/// sea level. Valid for -40 to 90 C and 50 to 110 kPa; Buck gives it to 50 C,
/// above that it is an extrapolation good to about 0.5 %.
///
/// # Errors
/// [`Error::OutOfRange`] outside those ranges.
pub fn enhancement_factor(t: ThermodynamicTemperature, pressure: Pressure) -> Result<Ratio, Error> {
    let t = celsius(Quantity::AirTemperature, t, -40.0, 90.0)?;
    Ok(Ratio::new::<ratio>(kernel::enhancement(
        t,
        atmosphere(pressure)?,
    )))
}

/// Checked temperature (C) and pressure (Pa) at which air can be saturated.
fn saturated_state(t: ThermodynamicTemperature, pressure: Pressure) -> Result<(f64, f64), Error> {
    let t = celsius(Quantity::AirTemperature, t, -40.0, 90.0)?;
    let pressure = atmosphere(pressure)?;
    if kernel::saturated_vapour(t, pressure) >= 0.95 * pressure {
        return Err(Error::NoSolution(NoSolution::Boiling));
    }
    Ok((t, pressure))
}

/// Humidity ratio of saturated air, kg water per kg dry air. Valid -40 to 90 C.
///
/// # Errors
/// [`Error::OutOfRange`] outside -40 to 90 C or 50 to 110 kPa;
/// [`NoSolution::Boiling`] when vapour would be 95 % of the pressure or more.
pub fn saturated_humidity_ratio(
    t: ThermodynamicTemperature,
    pressure: Pressure,
) -> Result<Ratio, Error> {
    let (t, pressure) = saturated_state(t, pressure)?;
    Ok(Ratio::new::<ratio>(kernel::saturated_ratio(t, pressure)))
}

/// Enthalpy of saturated air per kg of dry air, above dry air and liquid water
/// at 0 C. Valid -40 to 90 C; within 0.1 % of CoolProp from 20 to 40 C.
///
/// # Errors
/// As [`saturated_humidity_ratio`].
pub fn saturated_enthalpy(
    t: ThermodynamicTemperature,
    pressure: Pressure,
) -> Result<AvailableEnergy, Error> {
    let (t, pressure) = saturated_state(t, pressure)?;
    Ok(AvailableEnergy::new::<kilojoule_per_kilogram>(
        kernel::saturated_enthalpy(t, pressure),
    ))
}

/// Humidity ratio, kg water per kg dry air, from dry bulb and relative humidity.
///
/// # Errors
/// [`Error::OutOfRange`] when the dry bulb is outside -20 to 60 C, the
/// humidity outside 0 to 1, or the pressure outside 50 to 110 kPa.
pub fn humidity_ratio(
    dry_bulb: ThermodynamicTemperature,
    humidity: Ratio,
    pressure: Pressure,
) -> Result<Ratio, Error> {
    let (_, vapour, pressure) = state(dry_bulb, humidity, pressure)?;
    Ok(Ratio::new::<ratio>(kernel::ratio_at_vapour(
        vapour, pressure,
    )))
}

/// Enthalpy of moist air per kg of dry air, above dry air and liquid water at 0 C.
///
/// # Errors
/// As [`humidity_ratio`].
pub fn enthalpy(
    dry_bulb: ThermodynamicTemperature,
    humidity: Ratio,
    pressure: Pressure,
) -> Result<AvailableEnergy, Error> {
    let (dry, vapour, pressure) = state(dry_bulb, humidity, pressure)?;
    let w = kernel::ratio_at_vapour(vapour, pressure);
    Ok(AvailableEnergy::new::<kilojoule_per_kilogram>(
        kernel::enthalpy(dry, w),
    ))
}

/// Mass of dry air in a volume of moist air, for turning a fan's volume flow
/// into the air flow of L/G.
///
/// # Errors
/// As [`humidity_ratio`].
pub fn dry_air_density(
    dry_bulb: ThermodynamicTemperature,
    humidity: Ratio,
    pressure: Pressure,
) -> Result<MassDensity, Error> {
    let (dry, vapour, pressure) = state(dry_bulb, humidity, pressure)?;
    let w = kernel::ratio_at_vapour(vapour, pressure);
    Ok(MassDensity::new::<kilogram_per_cubic_meter>(
        kernel::dry_air_density(dry, w, pressure),
    ))
}

/// Dew point (frost point below 0 C) from dry bulb and relative humidity.
///
/// # Errors
/// As [`humidity_ratio`]; [`NoSolution::TooDry`] when it lies below -60 C.
pub fn dew_point(
    dry_bulb: ThermodynamicTemperature,
    humidity: Ratio,
) -> Result<ThermodynamicTemperature, Error> {
    let dry = dry_bulb_celsius(dry_bulb)?;
    let humidity = within(
        Quantity::RelativeHumidity,
        humidity.get::<ratio>(),
        0.0,
        1.0,
    )?;
    let vapour = humidity * kernel::saturation_pressure(dry);
    if vapour < kernel::saturation_pressure(-60.0) {
        return Err(Error::NoSolution(NoSolution::TooDry));
    }
    Ok(temperature(bisect(-60.0, dry, |t| {
        kernel::saturation_pressure(t) - vapour
    })))
}

/// Wet bulb (thermodynamic) from dry bulb and relative humidity at the local
/// pressure. Within 0.05 K of PsychroLib and CoolProp.
///
/// Near freezing two answers fit the same air: ice on the wick, or water a
/// little warmer. Wherever ice gives an answer below 0 C it is returned, so
/// that in dry air results between 0 C and 0.4 C at sea level (1 C at 5 km) do
/// not occur. CoolProp and PsychroLib return one or the other by how their
/// solvers run; CoolProp mostly the ice.
///
/// # Errors
/// As [`humidity_ratio`].
pub fn wet_bulb(
    dry_bulb: ThermodynamicTemperature,
    humidity: Ratio,
    pressure: Pressure,
) -> Result<ThermodynamicTemperature, Error> {
    let (dry, humidity, pressure) = checked(dry_bulb, humidity, pressure)?;
    Ok(temperature(kernel::wet_bulb(dry, humidity, pressure)))
}

/// Relative humidity from dry and wet bulb at the local pressure. A wet bulb
/// below 0 C is read as ice on the wick, one from 0 C up as water; just above
/// 0 C [`wet_bulb`] of the humidity that comes out is the colder one with ice.
///
/// # Errors
/// [`Error::OutOfRange`] when the dry bulb is outside -20 to 60 C, the
/// pressure outside 50 to 110 kPa, or the wet bulb above the dry bulb or below
/// that of perfectly dry air; the bounds given are those two temperatures.
pub fn relative_humidity(
    dry_bulb: ThermodynamicTemperature,
    wet_bulb: ThermodynamicTemperature,
    pressure: Pressure,
) -> Result<Ratio, Error> {
    /// Rounding allowed at either end, K.
    const SLACK: f64 = 1e-6;
    let dry = dry_bulb_celsius(dry_bulb)?;
    let pressure = atmosphere(pressure)?;
    let driest = kernel::wet_bulb(dry, 0.0, pressure);
    let wet = celsius(Quantity::WetBulb, wet_bulb, driest - SLACK, dry + SLACK)?.min(dry);
    let w = kernel::ratio_from_bulbs(dry, wet, pressure).max(0.0);
    let vapour = kernel::vapour_at_ratio(w, pressure);
    let humidity = vapour / kernel::saturated_vapour(dry, pressure);
    Ok(Ratio::new::<ratio>(humidity.clamp(0.0, 1.0)))
}
