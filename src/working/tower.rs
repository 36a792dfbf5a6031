//! The tower today: approach, range, what it carries, and what water it
//! should make in today's air.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;

use super::air::{pressure, wet_bulb};
use super::given::{Fault, Given};
use super::plot::{Axis, Curve, Name, Picture, Plot};
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, TowerFigure};
use crate::physics::tower::{
    Carried, DesignedTower, Duty, Readings, Shortfall, Today, WetBulbs, off_design_ratio,
};
use crate::physics::{heat, tower};
use crate::quantity::{Kind, Power, Ratio, TemperatureInterval, ThermodynamicTemperature, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "tower",
    asks: &[
        Ask::HotWater,
        Ask::ColdWater,
        Ask::DryBulb,
        Ask::Humidity,
        Ask::WetBulb,
        Ask::InletWetBulb,
        Ask::Flow,
        Ask::DesignFlow,
        Ask::DesignHot,
        Ask::DesignCold,
        Ask::DesignWetBulb,
        Ask::AirPart,
        Ask::WaterAirRatio,
        Ask::Altitude,
    ],
    rows: &[
        (Figure::Approach, |g| {
            let (cold, wet) = (g.temperature(Ask::ColdWater)?, wet_bulb(g)?);
            Ok(Value::temperature_difference(tower::approach(cold, wet)))
        }),
        (Figure::Range, |g| {
            Ok(Value::temperature_difference(range(g)?))
        }),
        (Figure::LeavingWater, |g| {
            Ok(Value::temperature(expected(g)?))
        }),
        (Figure::OverExpected, |g| {
            let over = tower::approach(g.temperature(Ask::ColdWater)?, expected(g)?);
            Ok(Value::temperature_difference(over))
        }),
        (Figure::Tower(TowerFigure::Delivered), |g| {
            Ok(Value::ratio(shortfall(g)?.part()?))
        }),
        (Figure::HeatRejected, |g| Ok(Value::heat(heat(g)?))),
        (Figure::TowerTons, |g| {
            Ok(Value::number(heat::tower_tons(heat(g)?)?.get::<ratio>()))
        }),
        (Figure::Effectiveness, |g| {
            let (hot, cold) = waters(g)?;
            Ok(Value::ratio(tower::effectiveness(hot, cold, wet_bulb(g)?)?))
        }),
        (Figure::MerkelNumber, |g| {
            let (entering, leaving) = waters(g)?;
            let duty = Duty {
                entering,
                leaving,
                wet_bulb: wet_bulb(g)?,
                water_air_ratio: ratio_today(g)?,
                pressure: pressure(g)?,
            };
            Ok(Value::number(duty.merkel_number()?.get::<ratio>()))
        }),
    ],
    draw: |g| curve(g).map(Picture::Plot),
    says: |g| shapes(g).unwrap_or_default(),
    cautions: |_| vec![Say::Roof],
    ..Sheet::PLAIN
};

/// Hot and cold water, in that order.
pub(super) fn waters(
    given: &Given,
) -> Result<(ThermodynamicTemperature, ThermodynamicTemperature), Fault> {
    given.need(&[Ask::HotWater, Ask::ColdWater])?;
    let hot = given.temperature(Ask::HotWater)?;
    let cold = given.temperature(Ask::ColdWater)?;
    if hot > cold {
        Ok((hot, cold))
    } else {
        Err(Fault::Order(Ask::HotWater, Ask::ColdWater))
    }
}

/// Range of today's waters.
pub(super) fn range(given: &Given) -> Result<TemperatureInterval, Fault> {
    waters(given).map(|(hot, cold)| tower::range(hot, cold))
}

fn heat(given: &Given) -> Result<Power, Fault> {
    given.need(&[Ask::Flow, Ask::HotWater, Ask::ColdWater])?;
    Ok(heat::heat_rejected(given.flow(Ask::Flow)?, range(given)?)?)
}

/// Water flow today as a part of design, when both flows are known.
fn water_part(given: &Given) -> Option<Ratio> {
    let (now, full) = (
        given.flow(Ask::Flow).ok()?,
        given.flow(Ask::DesignFlow).ok()?,
    );
    Some(now / full)
}

fn ratio_today(given: &Given) -> Result<Ratio, Fault> {
    let design = Ratio::new::<ratio>(given.number(Ask::WaterAirRatio)?);
    let water = water_part(given).unwrap_or(Ratio::new::<ratio>(1.0));
    Ok(off_design_ratio(design, water, given.part(Ask::AirPart)?)?)
}

/// The tower as designed, at today's pressure.
pub(super) fn designed(given: &Given) -> Result<DesignedTower, Fault> {
    Ok(DesignedTower::new(&Duty {
        entering: given.temperature(Ask::DesignHot)?,
        leaving: given.temperature(Ask::DesignCold)?,
        wet_bulb: given.temperature(Ask::DesignWetBulb)?,
        water_air_ratio: Ratio::new::<ratio>(given.number(Ask::WaterAirRatio)?),
        pressure: pressure(given)?,
    })?)
}

/// What is asked of it today.
fn today(given: &Given) -> Result<Today, Fault> {
    Ok(Today {
        carried: Carried::Range(range(given)?),
        wet_bulb: wet_bulb(given)?,
        water: water_part(given).unwrap_or(Ratio::new::<ratio>(1.0)),
        air: given.part(Ask::AirPart)?,
        pressure: pressure(given)?,
    })
}

fn expected(given: &Given) -> Result<ThermodynamicTemperature, Fault> {
    let today = today(given)?;
    Ok(designed(given)?.predict(&today)?.leaving)
}

fn shortfall(given: &Given) -> Result<Shortfall, Fault> {
    given.need(&[Ask::HotWater, Ask::ColdWater])?;
    let away = wet_bulb(given)?;
    let readings = Readings {
        entering: given.temperature(Ask::HotWater)?,
        leaving: given.temperature(Ask::ColdWater)?,
        wet_bulbs: match given.temperature(Ask::InletWetBulb) {
            Ok(inlet) => WetBulbs::Both { away, inlet },
            Err(_) => WetBulbs::Away(away),
        },
        water: water_part(given),
        heat: None,
        pressure: pressure(given)?,
        thermometer: Readings::usual_thermometer(),
    };
    Ok(designed(given)?.shortfall(&readings)?)
}

/// Which shape of trouble fits, the likeliest first, and what would settle it.
fn shapes(given: &Given) -> Result<Vec<Saying>, Fault> {
    let found = shortfall(given)?;
    let mut all: Vec<Saying> = found
        .fits
        .iter()
        .filter(|fit| fit.weight >= 0.02)
        .enumerate()
        .map(|(n, fit)| Saying {
            tone: if n == 0 { Tone::Fits } else { Tone::Plain },
            say: Say::Shape(fit.shape),
            value: Some(Value::ratio(Ratio::new::<ratio>(fit.weight))),
        })
        .collect();
    all.extend(
        found
            .settle
            .map(|settle| Saying::of(Tone::Finding, Say::Settle(settle))),
    );
    Ok(all)
}

/// Leaving water over wet bulb at today's range and half of it, and today.
fn curve(given: &Given) -> Option<Plot> {
    let (tower, today, range) = (
        designed(given).ok()?,
        today(given).ok()?,
        range(given).ok()?,
    );
    let wet = today.wet_bulb.get::<kelvin>();
    let point = given.si(Ask::ColdWater).map(|cold| (wet, cold));
    let x = Axis {
        kind: Kind::Temperature,
        name: Name::Figure(Figure::WetBulb),
        low: (wet - 12.0).max(253.15),
        high: (wet + 6.0).min(318.15),
    };
    let curves: Vec<Curve> = [0.5, 1.0]
        .map(|part| {
            let kelvins = (part * range.get::<kelvin_interval>()).max(0.1);
            Curve::over(x, 12, part == 1.0, &|k| {
                let there = Today {
                    wet_bulb: ThermodynamicTemperature::new::<kelvin>(k),
                    carried: Carried::Range(TemperatureInterval::new::<kelvin_interval>(kelvins)),
                    ..today
                };
                Some(tower.predict(&there).ok()?.leaving.get::<kelvin>())
            })
        })
        .into();
    let y = Axis::around(
        Kind::Temperature,
        Name::Ask(Ask::ColdWater),
        &curves,
        point,
        1.0,
    );
    Some(Plot {
        x,
        y,
        curves,
        point,
    })
}
