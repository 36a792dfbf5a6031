//! The water balance: what leaves the tower and what must come back.

use uom::si::ratio::ratio;

use super::Ask;
use super::air::{pressure, wet_bulb};
use super::given::{Fault, Given, Lines, both};
use crate::physics::basis::Figure;
use crate::physics::tower;
use crate::physics::water::{self, EnteringAir, Evaporation, WaterBalance};
use crate::quantity::{Ratio, Value};

pub(super) const ASKS: &[Ask] = &[
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
];

fn evaporation(given: &Given) -> Result<Evaporation, Fault> {
    let (flow, (hot, cold)) = both(
        given.flow(Ask::Flow),
        both(
            given.temperature(Ask::HotWater),
            given.temperature(Ask::ColdWater),
        ),
    )?;
    if hot <= cold {
        return Err(Fault::Order(Ask::HotWater, Ask::ColdWater));
    }
    let air = || {
        let p = pressure(given)?;
        Ok::<_, Fault>(EnteringAir {
            dry_bulb: given.temperature(Ask::DryBulb)?,
            wet_bulb: wet_bulb(given, p)?,
            water_air_ratio: Ratio::new::<ratio>(given.number(Ask::WaterAirRatio)?),
            pressure: p,
        })
    };
    let air = match air() {
        Ok(air) => Some(air),
        // Without the air the field rule still answers.
        Err(Fault::Missing(_)) => None,
        Err(fault) => return Err(fault),
    };
    Ok(water::evaporation(
        flow,
        tower::range(hot, cold),
        air.as_ref(),
    )?)
}

fn cycles(given: &Given) -> Result<Ratio, Fault> {
    let (basin, makeup) = both(
        given.conductivity(Ask::BasinConductivity),
        given.conductivity(Ask::MakeupConductivity),
    )?;
    Ok(water::cycles(basin, makeup)?)
}

pub(super) fn solve(given: &Given, out: &mut Lines) {
    let evaporated = evaporation(given);
    let cycles = cycles(given);
    let balance = both(evaporated.clone(), cycles.clone()).and_then(|(e, cycles)| {
        let (flow, drift) = (given.flow(Ask::Flow)?, given.part(Ask::DriftPart)?);
        Ok(water::balance(e.rate(), flow, drift, cycles)?)
    });
    let mut say = |figure, get: fn(WaterBalance) -> Value| {
        out.say(figure, balance.clone().map(get));
    };
    say(Figure::Makeup, |b| Value::flow(b.makeup));
    say(Figure::Blowdown, |b| Value::flow(b.blowdown));
    say(Figure::Drift, |b| Value::flow(b.drift));
    out.say(
        Figure::Evaporation,
        evaporated.clone().and_then(|e| {
            let by_balance = e.by_balance.map(Value::flow);
            by_balance.ok_or(Fault::Missing(vec![Ask::DryBulb, Ask::Humidity]))
        }),
    );
    out.say(
        Figure::EvaporationRule,
        evaporated.map(|e| Value::flow(e.by_rule)),
    );
    out.say(
        Figure::Cycles,
        cycles.map(|c| Value::number(c.get::<ratio>())),
    );
}
