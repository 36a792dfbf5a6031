//! The tower today: approach, range, what it carries, and what water it
//! should make in today's air.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::volume_rate::cubic_meter_per_second;

use super::Ask;
use super::air::{pressure, wet_bulb};
use super::given::{Fault, Given, Lines, both};
use super::plot::{Axis, Curve, Name, Picture, Plot};
use crate::physics::basis::Figure;
use crate::physics::tower::{Characteristic, Duty, off_design_ratio};
use crate::physics::{heat, tower};
use crate::quantity::{
    Kind, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Value,
};

pub(super) const ASKS: &[Ask] = &[
    Ask::HotWater,
    Ask::ColdWater,
    Ask::DryBulb,
    Ask::Humidity,
    Ask::WetBulb,
    Ask::Flow,
    Ask::DesignFlow,
    Ask::DesignHot,
    Ask::DesignCold,
    Ask::DesignWetBulb,
    Ask::AirPart,
    Ask::WaterAirRatio,
    Ask::Altitude,
];

/// Hot and cold water in that order.
fn waters(given: &Given) -> Result<(ThermodynamicTemperature, ThermodynamicTemperature), Fault> {
    let (hot, cold) = both(
        given.temperature(Ask::HotWater),
        given.temperature(Ask::ColdWater),
    )?;
    if hot > cold {
        Ok((hot, cold))
    } else {
        Err(Fault::Order(Ask::HotWater, Ask::ColdWater))
    }
}

/// The tower as designed, at today's pressure.
fn design(given: &Given, p: Pressure) -> Result<Characteristic, Fault> {
    let ((entering, leaving), wet_bulb) = both(
        both(
            given.temperature(Ask::DesignHot),
            given.temperature(Ask::DesignCold),
        ),
        given.temperature(Ask::DesignWetBulb),
    )?;
    let duty = Duty {
        entering,
        leaving,
        wet_bulb,
        water_air_ratio: Ratio::new::<ratio>(given.number(Ask::WaterAirRatio)?),
        pressure: p,
    };
    Ok(Characteristic::from_design(&duty)?)
}

/// L/G today: flow over design flow, air as a part of design.
fn ratio_today(given: &Given) -> Result<Ratio, Fault> {
    let design = Ratio::new::<ratio>(given.number(Ask::WaterAirRatio)?);
    let air = given.part(Ask::AirPart)?;
    let water = match (given.flow(Ask::Flow), given.flow(Ask::DesignFlow)) {
        (Ok(now), Ok(full)) => {
            now.get::<cubic_meter_per_second>() / full.get::<cubic_meter_per_second>()
        }
        _ => 1.0,
    };
    Ok(off_design_ratio(design, Ratio::new::<ratio>(water), air)?)
}

pub(super) fn solve(given: &Given, out: &mut Lines) {
    let p = pressure(given);
    let wet = p.clone().and_then(|p| wet_bulb(given, p));
    let waters = waters(given);
    let range = waters.clone().map(|(hot, cold)| tower::range(hot, cold));
    let cold = given.temperature(Ask::ColdWater);
    out.say(
        Figure::Approach,
        both(cold, wet.clone())
            .map(|(cold, wet)| Value::temperature_difference(tower::approach(cold, wet))),
    );
    out.say(
        Figure::Range,
        range.clone().map(Value::temperature_difference),
    );
    let expected = both(both(p.clone(), wet.clone()), range.clone()).and_then(|((p, wet), r)| {
        let tower = design(given, p)?;
        Ok((tower, wet, r, ratio_today(given)?, p))
    });
    let leaving = expected
        .clone()
        .and_then(|(tower, wet, r, l_over_g, p)| Ok(tower.leaving_water(wet, r, l_over_g, p)?));
    out.say(
        Figure::LeavingWater,
        leaving.clone().map(Value::temperature),
    );
    out.say(
        Figure::OverExpected,
        both(waters.clone(), leaving).map(|((_, cold), expected)| {
            Value::temperature_difference(tower::approach(cold, expected))
        }),
    );
    out.say(
        Figure::HeatRejected,
        both(given.flow(Ask::Flow), range.clone())
            .and_then(|(flow, range)| Ok(Value::heat(heat::heat_rejected(flow, range)?))),
    );
    out.say(
        Figure::TowerTons,
        both(given.flow(Ask::Flow), range).and_then(|(flow, range)| {
            let tons = heat::tower_tons(heat::heat_rejected(flow, range)?)?;
            Ok(Value::number(tons.get::<ratio>()))
        }),
    );
    out.say(
        Figure::Effectiveness,
        both(waters.clone(), wet.clone())
            .and_then(|((hot, cold), wet)| Ok(Value::ratio(tower::effectiveness(hot, cold, wet)?))),
    );
    out.say(
        Figure::MerkelNumber,
        both(both(waters.clone(), wet), p).and_then(|(((entering, leaving), wet_bulb), p)| {
            let duty = Duty {
                entering,
                leaving,
                wet_bulb,
                water_air_ratio: ratio_today(given)?,
                pressure: p,
            };
            Ok(Value::number(duty.merkel_number()?.get::<ratio>()))
        }),
    );
    out.picture = expected.ok().map(|(tower, wet, range, l_over_g, p)| {
        let today = waters.ok().map(|(_, cold)| (wet, cold));
        Picture::Plot(curve(tower, range, l_over_g, p, wet, today))
    });
}

/// Leaving water over wet bulb at today's range and half of it, and today.
fn curve(
    tower: Characteristic,
    range: TemperatureInterval,
    l_over_g: Ratio,
    p: Pressure,
    wet: ThermodynamicTemperature,
    today: Option<(ThermodynamicTemperature, ThermodynamicTemperature)>,
) -> Plot {
    let wet = wet.get::<kelvin>();
    let point = today.map(|(w, c)| (w.get::<kelvin>(), c.get::<kelvin>()));
    let x = Axis {
        kind: Kind::Temperature,
        name: Name::Figure(Figure::WetBulb),
        low: (wet - 12.0).max(253.15),
        high: (wet + 6.0).min(318.15),
    };
    let at = |part: f64| {
        let range = TemperatureInterval::new::<kelvin_interval>(
            (part * range.get::<kelvin_interval>()).max(0.1),
        );
        move |k: f64| {
            let wet = ThermodynamicTemperature::new::<kelvin>(k);
            let leaving = tower.leaving_water(wet, range, l_over_g, p).ok()?;
            Some(leaving.get::<kelvin>())
        }
    };
    let half = Curve::over(x, 12, false, at(0.5));
    let full = Curve::over(x, 12, true, at(1.0));
    let heights = || {
        let drawn = half.points.iter().chain(&full.points);
        drawn.map(|p| p.1).chain(point.map(|p| p.1))
    };
    let y = Axis {
        kind: Kind::Temperature,
        name: Name::Ask(Ask::ColdWater),
        low: heights().fold(f64::INFINITY, f64::min) - 1.0,
        high: heights().fold(f64::NEG_INFINITY, f64::max) + 1.0,
    };
    Plot {
        x,
        y,
        curves: vec![half, full],
        point,
    }
}
