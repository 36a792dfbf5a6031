//! Head pressure: what temperature it condenses at, and how far the cut-out is.

use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;

use super::air::pressure;
use super::given::{Fault, Given};
use super::plot::{Axis, Curve, Name, Picture, Plot};
use super::say::Say;
use super::trip::condenser;
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, HeadFigure, LoopHeatFigure};
use crate::physics::refrigerant::{Condensing, Refrigerant, head};
use crate::quantity::{
    GaugePressure, Kind, Pressure, TemperatureInterval, ThermodynamicTemperature, Value,
};

pub(super) const SHEET: Sheet = Sheet {
    slug: "head",
    asks: &[
        Ask::Fluid,
        Ask::Head,
        Ask::CondenserLeaving,
        Ask::CutOut,
        Ask::NormalApproach,
        Ask::NormalRange,
        Ask::Altitude,
    ],
    rows: &[
        (Figure::CondensingTemperature, |g| {
            Ok(Value::temperature(at(g, Ask::Head)?.mean))
        }),
        (Figure::OverLeavingWater, |g| {
            g.need(&[Ask::Head, Ask::CondenserLeaving])?;
            let water = g.temperature(Ask::CondenserLeaving)?;
            Ok(between(at(g, Ask::Head)?.mean, water))
        }),
        (Figure::Head(HeadFigure::Expected), |g| {
            g.need(&[Ask::CondenserLeaving])?;
            Ok(Value::gauge_pressure(head::expected(
                fluid(g),
                g.temperature(Ask::CondenserLeaving)?,
                g.difference(Ask::NormalApproach)?,
                pressure(g)?,
            )?))
        }),
        (Figure::BelowCutOut, |g| {
            g.need(&[Ask::Head, Ask::CutOut])?;
            let room = g.gauge(Ask::CutOut)?.pascals() - g.gauge(Ask::Head)?.pascals();
            Ok(Value::pressure_difference(Pressure::new::<pascal>(room)))
        }),
        (Figure::TripsAt, |g| {
            Ok(Value::temperature(at(g, Ask::CutOut)?.mean))
        }),
        (Figure::WarmerToTrip, |g| {
            g.need(&[Ask::Head, Ask::CutOut])?;
            Ok(between(at(g, Ask::CutOut)?.mean, at(g, Ask::Head)?.mean))
        }),
        (Figure::LoopHeat(LoopHeatFigure::TripWater), |g| {
            Ok(Value::temperature(
                condenser(g)?.trip_entering(pressure(g)?)?,
            ))
        }),
        (Figure::BubblePoint, |g| {
            Ok(Value::temperature(at(g, Ask::Head)?.bubble))
        }),
        (Figure::DewPointOfRefrigerant, |g| {
            Ok(Value::temperature(at(g, Ask::Head)?.dew))
        }),
    ],
    draw: |g| saturation(g).map(Picture::Plot),
    cautions: |_| vec![Say::Refrigerant],
    ..Sheet::PLAIN
};

fn between(warm: ThermodynamicTemperature, cold: ThermodynamicTemperature) -> Value {
    Value::temperature_difference(TemperatureInterval::new::<kelvin_interval>(
        warm.get::<kelvin>() - cold.get::<kelvin>(),
    ))
}

pub(super) fn fluid(given: &Given) -> Refrigerant {
    let last = Refrigerant::ALL.len() - 1;
    Refrigerant::ALL[given.chosen(Ask::Fluid).min(last)]
}

fn at(given: &Given, gauge: Ask) -> Result<Condensing, Fault> {
    given.need(&[gauge, Ask::Altitude])?;
    Ok(fluid(given).condensing(given.gauge(gauge)?, pressure(given)?)?)
}

/// Gauge pressure over condensing temperature: dew and bubble lines.
fn saturation(given: &Given) -> Option<Plot> {
    let (fluid, p) = (fluid(given), pressure(given).ok()?);
    let head = at(given, Ask::Head).ok();
    let point = head.zip(given.si(Ask::Head));
    let point = point.map(|(c, gauge)| (c.mean.get::<kelvin>(), gauge));
    let x = Axis {
        kind: Kind::Temperature,
        name: Name::Figure(Figure::CondensingTemperature),
        low: point.map_or(288.15, |(t, _)| t.min(288.15)),
        high: point.map_or(338.15, |(t, _)| t.max(338.15)),
    };
    let curves: Vec<Curve> = [false, true]
        .map(|dew| {
            Curve::over(x, 25, true, &|k| {
                let t = ThermodynamicTemperature::new::<kelvin>(k);
                let absolute = match dew {
                    true => fluid.dew_pressure(t),
                    false => fluid.bubble_pressure(t),
                };
                Some(GaugePressure::from_absolute(absolute.ok()?, p).pascals())
            })
        })
        .into();
    let y = Axis::around(
        Kind::GaugePressure,
        Name::Ask(Ask::Head),
        &curves,
        point,
        1e4,
    );
    Some(Plot {
        x,
        y,
        curves,
        point,
    })
}
