//! What the tower would do at another wet bulb, heat, water and air.

use super::given::{Answered, Given};
use super::tower::designed;
use super::{Ask, Sheet};
use crate::physics::basis::Figure;
use crate::physics::tower::{Carried, Prediction, Today};
use crate::quantity::Value;

pub(super) const SHEET: Sheet = Sheet {
    slug: "tower-if",
    asks: &[
        Ask::AnyWetBulb,
        Ask::HeatPart,
        Ask::WaterPart,
        Ask::AirPart,
        Ask::DesignHot,
        Ask::DesignCold,
        Ask::DesignWetBulb,
        Ask::WaterAirRatio,
        Ask::Altitude,
    ],
    rows: &[
        (Figure::LeavingWater, |g| {
            then(g, |p| Value::temperature(p.leaving))
        }),
        (Figure::EnteringWater, |g| {
            then(g, |p| Value::temperature(p.entering))
        }),
        (Figure::Range, |g| {
            then(g, |p| Value::temperature_difference(p.range))
        }),
        (Figure::Approach, |g| {
            then(g, |p| Value::temperature_difference(p.approach))
        }),
    ],
    ..Sheet::PLAIN
};

fn then(given: &Given, get: fn(Prediction) -> Value) -> Answered {
    given.need(&[Ask::AnyWetBulb])?;
    let today = Today {
        wet_bulb: given.temperature(Ask::AnyWetBulb)?,
        carried: Carried::Heat(given.part(Ask::HeatPart)?),
        water: given.part(Ask::WaterPart)?,
        air: given.part(Ask::AirPart)?,
        pressure: super::air::pressure(given)?,
    };
    Ok(get(designed(given)?.predict(&today)?))
}
