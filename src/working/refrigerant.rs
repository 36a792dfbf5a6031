//! Head pressure: what temperature it condenses at, and how far the cut-out is.

use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;

use super::Ask;
use super::air::pressure;
use super::given::{Fault, Given, Lines, both};
use super::plot::{Axis, Curve, Name, Picture, Plot};
use crate::physics::basis::Figure;
use crate::physics::refrigerant::{Condensing, Refrigerant};
use crate::quantity::{
    GaugePressure, Kind, Pressure, TemperatureInterval, ThermodynamicTemperature, Value,
};

pub(super) const ASKS: &[Ask] = &[
    Ask::Fluid,
    Ask::Head,
    Ask::CondenserLeaving,
    Ask::CutOut,
    Ask::Altitude,
];

fn between(warm: ThermodynamicTemperature, cold: ThermodynamicTemperature) -> Value {
    Value::temperature_difference(TemperatureInterval::new::<kelvin_interval>(
        warm.get::<kelvin>() - cold.get::<kelvin>(),
    ))
}

pub(super) fn solve(given: &Given, out: &mut Lines) {
    let fluid = Refrigerant::ALL[given.chosen(Ask::Fluid).min(Refrigerant::ALL.len() - 1)];
    let p = pressure(given);
    let at = |gauge: Result<GaugePressure, Fault>| -> Result<Condensing, Fault> {
        let (gauge, p) = both(gauge, p.clone())?;
        Ok(fluid.condensing(gauge, p)?)
    };
    let head = at(given.gauge(Ask::Head));
    let trip = at(given.gauge(Ask::CutOut));
    out.say(
        Figure::CondensingTemperature,
        head.clone().map(|c| Value::temperature(c.mean)),
    );
    out.say(
        Figure::OverLeavingWater,
        both(head.clone(), given.temperature(Ask::CondenserLeaving))
            .map(|(c, water)| between(c.mean, water)),
    );
    out.say(
        Figure::BelowCutOut,
        both(given.gauge(Ask::Head), given.gauge(Ask::CutOut)).map(|(head, cut)| {
            Value::gauge_pressure(GaugePressure::from_pascals(cut.pascals() - head.pascals()))
        }),
    );
    out.say(
        Figure::TripsAt,
        trip.clone().map(|c| Value::temperature(c.mean)),
    );
    out.say(
        Figure::WarmerToTrip,
        both(head.clone(), trip).map(|(now, trip)| between(trip.mean, now.mean)),
    );
    out.say(
        Figure::BubblePoint,
        head.clone().map(|c| Value::temperature(c.bubble)),
    );
    out.say(
        Figure::DewPointOfRefrigerant,
        head.clone().map(|c| Value::temperature(c.dew)),
    );
    let today = head.ok().zip(given.gauge(Ask::Head).ok());
    out.picture = p.ok().map(|p| {
        let point = today.map(|(c, gauge)| (c.mean.get::<kelvin>(), gauge.pascals()));
        Picture::Plot(saturation(fluid, p, point))
    });
}

/// Gauge pressure over condensing temperature: bubble and dew lines.
fn saturation(fluid: Refrigerant, p: Pressure, point: Option<(f64, f64)>) -> Plot {
    let x = Axis {
        kind: Kind::Temperature,
        name: Name::Figure(Figure::CondensingTemperature),
        low: 288.15,
        high: 338.15,
    };
    let gauge = |line: fn(Refrigerant, ThermodynamicTemperature) -> Option<Pressure>| {
        move |k: f64| {
            let absolute = line(fluid, ThermodynamicTemperature::new::<kelvin>(k))?;
            Some(GaugePressure::from_absolute(absolute, p).pascals())
        }
    };
    let dew = Curve::over(x, 25, true, gauge(|f, t| f.dew_pressure(t).ok()));
    let bubble = Curve::over(x, 25, true, gauge(|f, t| f.bubble_pressure(t).ok()));
    let ends = |f: fn(f64, f64) -> f64, start: f64| {
        let all = dew.points.iter().chain(&bubble.points).map(|p| p.1);
        all.chain(point.map(|p| p.1)).fold(start, f)
    };
    let y = Axis {
        kind: Kind::GaugePressure,
        name: Name::Ask(Ask::Head),
        low: ends(f64::min, 0.0),
        high: ends(f64::max, 1e5),
    };
    Plot {
        x,
        y,
        curves: vec![dew, bubble],
        point,
    }
}
