//! The tower today: approach, range, what it carries, and what water it
//! should make in today's air.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::volume_rate::cubic_meter_per_second;

use super::air::{pressure, wet_bulb};
use super::given::{Fault, Given};
use super::plot::{Axis, Curve, Name, Picture, Plot};
use super::{Ask, Sheet};
use crate::physics::basis::Figure;
use crate::physics::tower::{Characteristic, Duty, off_design_ratio};
use crate::physics::{heat, tower};
use crate::quantity::{
    Kind, Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Value,
};

pub(super) const SHEET: Sheet = Sheet {
    slug: "tower",
    asks: &[
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
            Ok(Value::temperature(Today::of(g)?.leaving()?))
        }),
        (Figure::OverExpected, |g| {
            let expected = Today::of(g)?.leaving()?;
            let over = tower::approach(g.temperature(Ask::ColdWater)?, expected);
            Ok(Value::temperature_difference(over))
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
    draw: |g| Some(Picture::Plot(curve(&Today::of(g).ok()?, g))),
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

/// L/G today: flow over design flow, air as a part of design.
fn ratio_today(given: &Given) -> Result<Ratio, Fault> {
    let design = Ratio::new::<ratio>(given.number(Ask::WaterAirRatio)?);
    let water = match (given.flow(Ask::Flow), given.flow(Ask::DesignFlow)) {
        (Ok(now), Ok(full)) => {
            now.get::<cubic_meter_per_second>() / full.get::<cubic_meter_per_second>()
        }
        _ => 1.0,
    };
    let air = given.part(Ask::AirPart)?;
    Ok(off_design_ratio(design, Ratio::new::<ratio>(water), air)?)
}

/// The tower as designed, and what is asked of it today.
struct Today {
    tower: Characteristic,
    wet_bulb: ThermodynamicTemperature,
    range: TemperatureInterval,
    water_air_ratio: Ratio,
    pressure: Pressure,
}

impl Today {
    fn of(given: &Given) -> Result<Self, Fault> {
        let pressure = pressure(given)?;
        let design = Duty {
            entering: given.temperature(Ask::DesignHot)?,
            leaving: given.temperature(Ask::DesignCold)?,
            wet_bulb: given.temperature(Ask::DesignWetBulb)?,
            water_air_ratio: Ratio::new::<ratio>(given.number(Ask::WaterAirRatio)?),
            pressure,
        };
        Ok(Self {
            range: range(given)?,
            wet_bulb: wet_bulb(given)?,
            tower: Characteristic::from_design(&design)?,
            water_air_ratio: ratio_today(given)?,
            pressure,
        })
    }

    fn leaving(&self) -> Result<ThermodynamicTemperature, Fault> {
        self.leaving_at(self.wet_bulb, self.range)
    }

    fn leaving_at(
        &self,
        wet_bulb: ThermodynamicTemperature,
        range: TemperatureInterval,
    ) -> Result<ThermodynamicTemperature, Fault> {
        Ok(self
            .tower
            .leaving_water(wet_bulb, range, self.water_air_ratio, self.pressure)?)
    }
}

/// Leaving water over wet bulb at today's range and half of it, and today.
fn curve(today: &Today, given: &Given) -> Plot {
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
            let kelvins = (part * today.range.get::<kelvin_interval>()).max(0.1);
            let range = TemperatureInterval::new::<kelvin_interval>(kelvins);
            Curve::over(x, 12, part == 1.0, &|k| {
                let wet = ThermodynamicTemperature::new::<kelvin>(k);
                Some(today.leaving_at(wet, range).ok()?.get::<kelvin>())
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
    Plot {
        x,
        y,
        curves,
        point,
    }
}
