//! Refrigerant saturation: pressure from temperature and back.
//!
//! Method: five-parameter fits to CoolProp 8.0.0, an open property library;
//! each line's worst error stands beside it in `fits.rs` (0.058 % at most).
//! Blends have two lines: bubble and dew. The condensing temperature at a
//! pressure is the mean of the two saturation temperatures.
//!
//! Valid range: 0 C to the end of each fit, 68 to 70 C, never beyond: R-410A,
//! R-404A and R-507A are within 3 K of critical there. Checked against CoolProp
//! at every kelvin (within 0.1 % and 0.03 K) and, for R-410A, a published service chart
//! (within 0.6 %). The other blends, R-448A, R-449A, R-454B and R-513A above
//! all, are not verified against a second library.

mod fits;
pub mod head;

use serde::{Deserialize, Serialize};
use uom::si::pressure::{kilopascal, pascal};
use uom::si::thermodynamic_temperature::kelvin;

use super::air::{atmosphere, celsius};
use super::error::{Error, Quantity, within};
use super::root::{bisect, halley};
use crate::quantity::{GaugePressure, Pressure, ThermodynamicTemperature};
use fits::Fit;

/// A refrigerant found in water-cooled machines. Serialised as the designation
/// of ASHRAE 34.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[allow(missing_docs, reason = "each variant is its own ASHRAE 34 designation")]
pub enum Refrigerant {
    #[serde(rename = "R-22")]
    R22,
    #[serde(rename = "R-123")]
    R123,
    #[serde(rename = "R-134a")]
    R134a,
    #[serde(rename = "R-32")]
    R32,
    #[serde(rename = "R-404A")]
    R404A,
    #[serde(rename = "R-407C")]
    R407C,
    #[serde(rename = "R-410A")]
    R410A,
    #[serde(rename = "R-448A")]
    R448A,
    #[serde(rename = "R-449A")]
    R449A,
    #[serde(rename = "R-454B")]
    R454B,
    #[serde(rename = "R-507A")]
    R507A,
    #[serde(rename = "R-513A")]
    R513A,
    #[serde(rename = "R-1234ze(E)")]
    R1234zeE,
    #[serde(rename = "R-1233zd(E)")]
    R1233zdE,
}

/// Saturation temperatures at one pressure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Condensing {
    /// Where the last vapour turns liquid: take subcooling from here.
    pub bubble: ThermodynamicTemperature,
    /// Where vapour starts to condense: take superheat from here.
    pub dew: ThermodynamicTemperature,
    /// The mean of the two, called the condensing temperature.
    pub mean: ThermodynamicTemperature,
}

fn pressure_on(line: &Fit, t: ThermodynamicTemperature) -> Result<Pressure, Error> {
    let c = celsius(Quantity::SaturationTemperature, t, line.low, line.high)?;
    Ok(Pressure::new::<kilopascal>(
        line.ln_kilopascals(c + 273.15).exp(),
    ))
}

/// Newton's method on ln p.
fn temperature_on(line: &Fit, p: Pressure) -> Result<ThermodynamicTemperature, Error> {
    /// Rounding allowed at either end of the fit, as a part of the pressure.
    const SLACK: f64 = 1e-12;
    let (low, high) = (line.low + 273.15, line.high + 273.15);
    let end = |t: f64| line.ln_kilopascals(t).exp() * 1000.0;
    let pa = within(
        Quantity::SaturationPressure,
        p.get::<pascal>(),
        end(low) * (1.0 - SLACK),
        end(high) * (1.0 + SLACK),
    )?;
    let target = (pa / 1000.0).ln();
    let t = halley(low, high, 0.5 * (low + high), |t| {
        [line.ln_kilopascals(t) - target, line.slope(t), 0.0]
    });
    Ok(ThermodynamicTemperature::new::<kelvin>(t))
}

impl Refrigerant {
    /// Every refrigerant known here, in the order a list shows them.
    pub const ALL: [Refrigerant; 14] = [
        Refrigerant::R22,
        Refrigerant::R32,
        Refrigerant::R123,
        Refrigerant::R134a,
        Refrigerant::R404A,
        Refrigerant::R407C,
        Refrigerant::R410A,
        Refrigerant::R448A,
        Refrigerant::R449A,
        Refrigerant::R454B,
        Refrigerant::R507A,
        Refrigerant::R513A,
        Refrigerant::R1233zdE,
        Refrigerant::R1234zeE,
    ];

    /// The designation of ASHRAE 34, as on a nameplate: `R-407C`.
    pub fn designation(self) -> &'static str {
        match self {
            Refrigerant::R22 => "R-22",
            Refrigerant::R123 => "R-123",
            Refrigerant::R134a => "R-134a",
            Refrigerant::R32 => "R-32",
            Refrigerant::R404A => "R-404A",
            Refrigerant::R407C => "R-407C",
            Refrigerant::R410A => "R-410A",
            Refrigerant::R448A => "R-448A",
            Refrigerant::R449A => "R-449A",
            Refrigerant::R454B => "R-454B",
            Refrigerant::R507A => "R-507A",
            Refrigerant::R513A => "R-513A",
            Refrigerant::R1234zeE => "R-1234ze(E)",
            Refrigerant::R1233zdE => "R-1233zd(E)",
        }
    }

    /// Absolute pressure at which liquid of this temperature begins to boil.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] outside the fit: below 0 C or above 68 to 70 C,
    /// by refrigerant.
    pub fn bubble_pressure(self, t: ThermodynamicTemperature) -> Result<Pressure, Error> {
        pressure_on(fits::lines(self).0, t)
    }

    /// Absolute pressure at which vapour of this temperature begins to condense.
    ///
    /// # Errors
    /// As [`Refrigerant::bubble_pressure`].
    pub fn dew_pressure(self, t: ThermodynamicTemperature) -> Result<Pressure, Error> {
        pressure_on(fits::lines(self).1, t)
    }

    /// Temperature at which liquid begins to boil at this absolute pressure.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the pressure is not on the fitted part of
    /// the line; the bounds say which pressures are.
    pub fn bubble_temperature(self, p: Pressure) -> Result<ThermodynamicTemperature, Error> {
        temperature_on(fits::lines(self).0, p)
    }

    /// Temperature at which vapour begins to condense at this absolute pressure.
    ///
    /// # Errors
    /// As [`Refrigerant::bubble_temperature`].
    pub fn dew_temperature(self, p: Pressure) -> Result<ThermodynamicTemperature, Error> {
        temperature_on(fits::lines(self).1, p)
    }

    /// Absolute pressures on the fitted part of both lines, Pa.
    fn pressures(self) -> (f64, f64) {
        let (bubble, dew) = fits::lines(self);
        let at = |line: &Fit, c: f64| 1000.0 * line.ln_kilopascals(c + 273.15).exp();
        (
            at(bubble, bubble.low).max(at(dew, dew.low)),
            at(bubble, bubble.high).min(at(dew, dew.high)),
        )
    }

    /// Absolute pressure at which the mean of bubble and dew temperature is `t`:
    /// the inverse of [`Condensing::mean`].
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the pressure would not be on the fitted part
    /// of both lines: `t` below 0 to 4 C or above 67 to 70 C, by refrigerant;
    /// the bounds say which.
    pub fn condensing_pressure(self, t: ThermodynamicTemperature) -> Result<Pressure, Error> {
        let (low, high) = self.pressures();
        let mean = |pa: f64| -> Result<f64, Error> {
            let p = Pressure::new::<pascal>(pa);
            let (bubble, dew) = (self.bubble_temperature(p)?, self.dew_temperature(p)?);
            Ok(0.5 * (bubble.get::<kelvin>() + dew.get::<kelvin>()))
        };
        let t = within(
            Quantity::SaturationTemperature,
            t.get::<kelvin>(),
            mean(low)? - 1e-9,
            mean(high)? + 1e-9,
        )?;
        // Inside the ends every pressure has both temperatures.
        let pa = bisect(low, high, |pa| mean(pa).map_or(0.0, |mean| mean - t));
        Ok(Pressure::new::<pascal>(pa))
    }

    /// Condensing temperatures from a head-pressure gauge and the local
    /// atmosphere.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the atmosphere is outside 50 to 110 kPa, or
    /// the absolute pressure not on the fitted part of both lines.
    pub fn condensing(
        self,
        head: GaugePressure,
        atmospheric: Pressure,
    ) -> Result<Condensing, Error> {
        atmosphere(atmospheric)?;
        let p = head.absolute(atmospheric);
        let (bubble, dew) = (self.bubble_temperature(p)?, self.dew_temperature(p)?);
        let mean = 0.5 * (bubble.get::<kelvin>() + dew.get::<kelvin>());
        Ok(Condensing {
            bubble,
            dew,
            mean: ThermodynamicTemperature::new::<kelvin>(mean),
        })
    }
}
