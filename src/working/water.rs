//! The water balance: what leaves the tower and what must come back.

use uom::si::ratio::ratio;

use super::air::{pressure, wet_bulb};
use super::given::{Answered, Fault, Given};
use super::say::{Say, Saying, Tone};
use super::tower::waters;
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, TowerFigure};
use crate::physics::water::{self, EnteringAir, Evaporation, EvaporationWarning, WaterBalance};
use crate::quantity::{Ratio, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "water",
    asks: &[
        Ask::Flow,
        Ask::HotWater,
        Ask::ColdWater,
        Ask::DryBulb,
        Ask::Humidity,
        Ask::WetBulb,
        Ask::BasinConductivity,
        Ask::MakeupConductivity,
        Ask::DriftPart,
        Ask::WaterAirRatio,
        Ask::Altitude,
    ],
    rows: &[
        (Figure::Makeup, |g| balance(g, |b| Value::flow(b.makeup))),
        (Figure::Blowdown, |g| {
            balance(g, |b| Value::flow(b.blowdown))
        }),
        (Figure::Drift, |g| balance(g, |b| Value::flow(b.drift))),
        (Figure::Evaporation, |g| {
            needs(g)?;
            let air = air(g)?;
            Ok(Value::flow(evaporated(g, Some(&air))?.rate()))
        }),
        (Figure::Tower(TowerFigure::EvaporationBalance), |g| {
            needs(g)?;
            let balanced = evaporated(g, Some(&air(g)?))?.by_balance;
            Ok(Value::flow(balanced.ok_or(Fault::missing(Ask::DryBulb))?))
        }),
        (Figure::EvaporationRule, |g| {
            needs(g)?;
            Ok(Value::flow(evaporated(g, None)?.by_rule))
        }),
        (Figure::Cycles, |g| {
            Ok(Value::number(cycles(g)?.get::<ratio>()))
        }),
    ],
    says: |g| {
        let warned = || evaporated(g, Some(&air(g).ok()?)).ok()?.warning();
        warned()
            .map(|EvaporationWarning::RuleParts(part)| Saying {
                tone: Tone::Finding,
                say: Say::RuleParts(part.get::<ratio>()),
                value: Some(Value::ratio(part)),
            })
            .into_iter()
            .collect()
    },
    ..Sheet::PLAIN
};

fn needs(given: &Given) -> Result<(), Fault> {
    given.need(&[Ask::Flow, Ask::HotWater, Ask::ColdWater])
}

fn air(given: &Given) -> Result<EnteringAir, Fault> {
    Ok(EnteringAir {
        wet_bulb: wet_bulb(given)?,
        dry_bulb: given.temperature(Ask::DryBulb)?,
        water_air_ratio: Ratio::new::<ratio>(given.number(Ask::WaterAirRatio)?),
        pressure: pressure(given)?,
    })
}

fn evaporated(given: &Given, air: Option<&EnteringAir>) -> Result<Evaporation, Fault> {
    let (hot, cold) = waters(given)?;
    let flow = given.flow(Ask::Flow)?;
    Ok(water::evaporation_between(flow, hot, cold, air)?)
}

pub(super) fn cycles(given: &Given) -> Result<Ratio, Fault> {
    given.need(&[Ask::BasinConductivity, Ask::MakeupConductivity])?;
    Ok(water::cycles(
        given.conductivity(Ask::BasinConductivity)?,
        given.conductivity(Ask::MakeupConductivity)?,
    )?)
}

fn balance(given: &Given, get: fn(WaterBalance) -> Value) -> Answered {
    given.need(&[
        Ask::Flow,
        Ask::HotWater,
        Ask::ColdWater,
        Ask::BasinConductivity,
        Ask::MakeupConductivity,
    ])?;
    Ok(get(water::balance(
        // Without the air the field rule still answers.
        evaporated(given, air(given).ok().as_ref())?.rate(),
        given.flow(Ask::Flow)?,
        given.part(Ask::DriftPart)?,
        cycles(given)?,
    )?))
}
