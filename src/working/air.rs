//! Moist air from dry bulb and humidity, or dry and wet bulb.

use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

use super::Ask;
use super::given::{Fault, Given, Lines, both};
use super::plot::{Axis, Curve, Name, Picture, Plot};
use crate::physics::air;
use crate::physics::basis::Figure;
use crate::quantity::{Kind, Pressure, Ratio, ThermodynamicTemperature, Value};

pub(super) const ASKS: &[Ask] = &[Ask::DryBulb, Ask::Humidity, Ask::WetBulb, Ask::Altitude];

/// Local pressure by altitude.
pub(super) fn pressure(given: &Given) -> Result<Pressure, Fault> {
    Ok(air::standard_pressure(given.length(Ask::Altitude)?)?)
}

/// Humidity: from the wet bulb where one was measured, else as given.
fn humidity(given: &Given, p: Pressure) -> Result<Ratio, Fault> {
    let dry = given.temperature(Ask::DryBulb);
    if let Ok(wet) = given.temperature(Ask::WetBulb) {
        return Ok(air::relative_humidity(dry?, wet, p)?);
    }
    given.humidity(Ask::Humidity)
}

/// Wet bulb: measured, or from dry bulb and humidity.
pub(super) fn wet_bulb(given: &Given, p: Pressure) -> Result<ThermodynamicTemperature, Fault> {
    if let Ok(wet) = given.temperature(Ask::WetBulb) {
        return Ok(wet);
    }
    let (dry, rh) = both(
        given.temperature(Ask::DryBulb),
        given.humidity(Ask::Humidity),
    )?;
    Ok(air::wet_bulb(dry, rh, p)?)
}

pub(super) fn solve(given: &Given, out: &mut Lines) {
    let p = pressure(given);
    let state = p.clone().and_then(|p| {
        let (dry, rh) = both(given.temperature(Ask::DryBulb), humidity(given, p))?;
        Ok((dry, rh, p))
    });
    type State = (ThermodynamicTemperature, Ratio, Pressure);
    let mut say = |figure, f: fn(State) -> Result<Value, Fault>| {
        out.say(figure, state.clone().and_then(f));
    };
    say(Figure::WetBulb, |(t, rh, p)| {
        Ok(Value::temperature(air::wet_bulb(t, rh, p)?))
    });
    say(Figure::RelativeHumidity, |(_, rh, _)| {
        Ok(Value::humidity(rh))
    });
    say(Figure::DewPoint, |(t, rh, _)| {
        Ok(Value::temperature(air::dew_point(t, rh)?))
    });
    say(Figure::HumidityRatio, |(t, rh, p)| {
        Ok(Value::humidity_ratio(air::humidity_ratio(t, rh, p)?))
    });
    say(Figure::Enthalpy, |(t, rh, p)| {
        Ok(Value::enthalpy(air::enthalpy(t, rh, p)?))
    });
    say(Figure::AirDensity, |(t, rh, p)| {
        Ok(Value::density(air::dry_air_density(t, rh, p)?))
    });
    out.say(
        Figure::AtmosphericPressure,
        p.clone().map(Value::absolute_pressure),
    );
    let today = state.as_ref().ok().and_then(|&(t, rh, p)| {
        let w = air::humidity_ratio(t, rh, p).ok()?.get::<ratio>();
        Some((t.get::<kelvin>(), w))
    });
    out.picture = p.ok().map(|p| Picture::Plot(chart(p, today)));
}

/// The psychrometric chart at this pressure: saturation, 20 to 80 % lines,
/// and the wet-bulb line through today's state.
fn chart(p: Pressure, today: Option<(f64, f64)>) -> Plot {
    let (low, high) = match today {
        Some((t, _)) if t < 273.15 + 5.0 => (253.15, 293.15),
        _ => (273.15, 318.15),
    };
    let x = Axis {
        kind: Kind::Temperature,
        name: Name::Ask(Ask::DryBulb),
        low,
        high,
    };
    let top = if low < 273.0 { 0.015 } else { 0.030 };
    let y = Axis {
        kind: Kind::HumidityRatio,
        name: Name::Figure(Figure::HumidityRatio),
        low: 0.0,
        high: top,
    };
    let at = |rh: f64| {
        move |k: f64| {
            let t = ThermodynamicTemperature::new::<kelvin>(k);
            let w = air::humidity_ratio(t, Ratio::new::<ratio>(rh), p).ok()?;
            Some(w.get::<ratio>()).filter(|w| *w <= top)
        }
    };
    let mut curves: Vec<Curve> = [0.2, 0.4, 0.6, 0.8]
        .map(|rh| Curve::over(x, 30, false, at(rh)))
        .into();
    curves.push(Curve::over(x, 45, true, at(1.0)));
    if let Some((t, w)) = today {
        curves.extend(wet_bulb_line(p, t, w));
    }
    Plot {
        x,
        y,
        curves,
        point: today,
    }
}

/// From today's state up the wet-bulb line to saturation.
fn wet_bulb_line(p: Pressure, t: f64, w: f64) -> Option<Curve> {
    let dry = ThermodynamicTemperature::new::<kelvin>(t);
    let part = |rh: f64| Ratio::new::<ratio>(rh);
    let saturated = air::saturated_humidity_ratio(dry, p).ok()?.get::<ratio>();
    let vapour = |w: f64| w / (0.621_945 + w);
    let wet = air::wet_bulb(dry, part(vapour(w) / vapour(saturated)), p).ok()?;
    let top = air::saturated_humidity_ratio(wet, p).ok()?.get::<ratio>();
    Some(Curve {
        points: vec![(wet.get::<kelvin>(), top), (t, w)],
        strong: false,
    })
}
