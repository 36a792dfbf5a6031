//! A condenser with less water than it is used to: where its head goes.

use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;

use super::air::pressure;
use super::given::{Fault, Given};
use super::refrigerant::fluid;
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, HeadFigure, LoopHeatFigure};
use crate::physics::loop_heat::{CondenserDesign, ReducedFlow};
use crate::quantity::{GaugePressure, Pressure, TemperatureInterval, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "low-flow",
    asks: &[
        Ask::Fluid,
        Ask::CondenserEntering,
        Ask::WaterPart,
        Ask::NormalApproach,
        Ask::NormalRange,
        Ask::WaterSide,
        Ask::CutOut,
        Ask::Altitude,
    ],
    rows: &[
        (Figure::Head(HeadFigure::AtFlow), |g| {
            Ok(Value::gauge_pressure(head(g)?))
        }),
        (Figure::LoopHeat(LoopHeatFigure::ReducedFlow), |g| {
            Ok(Value::temperature(condenser(g)?.condensing))
        }),
        (Figure::Range, |g| {
            let water = g.temperature(Ask::CondenserEntering)?;
            let range = condenser(g)?.leaving.get::<kelvin>() - water.get::<kelvin>();
            Ok(Value::temperature_difference(TemperatureInterval::new::<
                kelvin_interval,
            >(range)))
        }),
        (Figure::OverLeavingWater, |g| {
            Ok(Value::temperature_difference(condenser(g)?.approach()))
        }),
        (Figure::BelowCutOut, |g| {
            g.need(&[Ask::CondenserEntering, Ask::CutOut])?;
            let room = g.gauge(Ask::CutOut)?.pascals() - head(g)?.pascals();
            Ok(Value::pressure_difference(Pressure::new::<pascal>(room)))
        }),
    ],
    says: |g| {
        let trips = head(g).and_then(|h| Ok(h.pascals() >= g.gauge(Ask::CutOut)?.pascals()));
        match trips {
            Ok(true) => vec![Saying::of(Tone::Finding, Say::TripsAtThatFlow)],
            _ => Vec::new(),
        }
    },
    cautions: |_| vec![Say::Refrigerant],
    ..Sheet::PLAIN
};

fn condenser(given: &Given) -> Result<ReducedFlow, Fault> {
    given.need(&[Ask::CondenserEntering])?;
    let design = CondenserDesign {
        range: given.difference(Ask::NormalRange)?,
        approach: given.difference(Ask::NormalApproach)?,
        water_side: given.part(Ask::WaterSide)?,
    };
    let water = given.temperature(Ask::CondenserEntering)?;
    Ok(design.at(water, given.part(Ask::WaterPart)?)?)
}

fn head(given: &Given) -> Result<GaugePressure, Fault> {
    Ok(condenser(given)?.head(fluid(given), pressure(given)?)?)
}
