//! Moist air from dry bulb and humidity, or dry and wet bulb.

use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

use super::given::{Answered, Fault, Given};
use super::plot::{Axis, Curve, Name, Picture, Plot};
use super::{Ask, Sheet};
use crate::physics::air;
use crate::physics::basis::Figure;
use crate::quantity::{Kind, Pressure, Ratio, ThermodynamicTemperature, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "air",
    asks: &[Ask::DryBulb, Ask::Humidity, Ask::WetBulb, Ask::Altitude],
    rows: &[
        (Figure::WetBulb, |g| {
            state(g, &|t, rh, p| {
                Ok(Value::temperature(air::wet_bulb(t, rh, p)?))
            })
        }),
        (Figure::RelativeHumidity, |g| {
            state(g, &|_, rh, _| Ok(Value::humidity(rh)))
        }),
        (Figure::DewPoint, |g| {
            state(g, &|t, rh, _| {
                Ok(Value::temperature(air::dew_point(t, rh)?))
            })
        }),
        (Figure::HumidityRatio, |g| {
            state(g, &|t, rh, p| {
                Ok(Value::humidity_ratio(air::humidity_ratio(t, rh, p)?))
            })
        }),
        (Figure::Enthalpy, |g| {
            state(g, &|t, rh, p| Ok(Value::enthalpy(air::enthalpy(t, rh, p)?)))
        }),
        (Figure::AirDensity, |g| {
            state(g, &|t, rh, p| {
                Ok(Value::density(air::dry_air_density(t, rh, p)?))
            })
        }),
        (Figure::AtmosphericPressure, |g| {
            Ok(Value::absolute_pressure(pressure(g)?))
        }),
    ],
    draw: |g| Some(Picture::Plot(chart(pressure(g).ok()?, today(g)))),
    ..Sheet::PLAIN
};

type Of<'a> = &'a dyn Fn(ThermodynamicTemperature, Ratio, Pressure) -> Answered;

/// What `of` makes of dry bulb, humidity and pressure. Humidity comes from the
/// wet bulb where one was measured.
fn state(given: &Given, of: Of) -> Answered {
    if given.has(Ask::WetBulb) {
        given.need(&[Ask::DryBulb, Ask::Altitude])?;
    } else {
        given.need(&[Ask::DryBulb, Ask::Humidity, Ask::Altitude])?;
    }
    let (dry, p) = (given.temperature(Ask::DryBulb)?, pressure(given)?);
    let rh = match given.temperature(Ask::WetBulb) {
        Ok(wet) => air::relative_humidity(dry, wet, p)?,
        Err(_) => given.humidity(Ask::Humidity)?,
    };
    of(dry, rh, p)
}

/// Local pressure by altitude.
pub(super) fn pressure(given: &Given) -> Result<Pressure, Fault> {
    Ok(air::standard_pressure(given.length(Ask::Altitude)?)?)
}

/// Wet bulb: measured, or from dry bulb and humidity.
pub(super) fn wet_bulb(given: &Given) -> Result<ThermodynamicTemperature, Fault> {
    if given.has(Ask::WetBulb) {
        return given.temperature(Ask::WetBulb);
    }
    given.need(&[Ask::DryBulb, Ask::Humidity, Ask::Altitude])?;
    let (dry, rh) = (
        given.temperature(Ask::DryBulb)?,
        given.humidity(Ask::Humidity)?,
    );
    Ok(air::wet_bulb(dry, rh, pressure(given)?)?)
}

/// Dry bulb in kelvins and humidity ratio, when known.
fn today(given: &Given) -> Option<(f64, f64)> {
    let w = state(given, &|t, rh, p| {
        Ok(Value::humidity_ratio(air::humidity_ratio(t, rh, p)?))
    });
    Some((given.si(Ask::DryBulb)?, w.ok()?.si))
}

/// The psychrometric chart at this pressure: saturation, 20 to 80 % lines,
/// and the wet-bulb line through today's state.
fn chart(p: Pressure, today: Option<(f64, f64)>) -> Plot {
    let cold = today.is_some_and(|(t, _)| t < 278.0);
    let (low, high, top) = match cold {
        true => (253.15, 293.15, 0.015),
        false => (273.15, 318.15, 0.030),
    };
    let x = Axis {
        kind: Kind::Temperature,
        name: Name::Ask(Ask::DryBulb),
        low,
        high: today.map_or(high, |(t, _)| high.max(t + 1.0)),
    };
    let y = Axis {
        kind: Kind::HumidityRatio,
        name: Name::Figure(Figure::HumidityRatio),
        low: 0.0,
        high: today.map_or(top, |(_, w)| top.max(w + 0.002)),
    };
    let mut curves: Vec<Curve> = [0.2, 0.4, 0.6, 0.8, 1.0]
        .map(|rh| {
            Curve::over(x, 40, rh == 1.0, &|k| {
                let t = ThermodynamicTemperature::new::<kelvin>(k);
                let w = air::humidity_ratio(t, Ratio::new::<ratio>(rh), p).ok()?;
                Some(w.get::<ratio>()).filter(|w| *w <= y.high)
            })
        })
        .into();
    curves.extend(today.and_then(|(t, w)| wet_bulb_line(p, t, w)));
    Plot {
        x,
        y,
        curves,
        point: today,
    }
}

/// From saturation down the wet-bulb line to today's state.
fn wet_bulb_line(p: Pressure, t: f64, w: f64) -> Option<Curve> {
    let dry = ThermodynamicTemperature::new::<kelvin>(t);
    let saturated = air::saturated_humidity_ratio(dry, p).ok()?.get::<ratio>();
    let vapour = |w: f64| w / (0.621_945 + w);
    let humidity = Ratio::new::<ratio>(vapour(w) / vapour(saturated));
    let wet = air::wet_bulb(dry, humidity, p).ok()?;
    let top = air::saturated_humidity_ratio(wet, p).ok()?.get::<ratio>();
    Some(Curve {
        points: vec![(wet.get::<kelvin>(), top), (t, w)],
        strong: false,
    })
}
