//! A loop in trouble: when a machine trips, and how to start them again.

use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;

use super::given::{Fault, Given};
use super::say::Say;
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, LoopHeatFigure};
use crate::physics::heat;
use crate::physics::loop_heat::{
    Condenser, Recovery, Rejection, Restart, RestartPlan, Restarting, time_without_flow,
};
use crate::quantity::{SpecificHeatCapacity, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "trip",
    asks: &[
        Ask::Fluid,
        Ask::CutOut,
        Ask::NormalApproach,
        Ask::NormalRange,
        Ask::Heat,
        Ask::LoopVolume,
        Ask::LoopNow,
        Ask::MachineHeat,
        Ask::CondenserWater,
        Ask::CondenserMetal,
        Ask::Altitude,
    ],
    rows: &[
        (Figure::LoopHeat(LoopHeatFigure::TripWater), |g| {
            Ok(Value::temperature(
                condenser(g)?.trip_entering(super::air::pressure(g)?)?,
            ))
        }),
        (Figure::LoopHeat(LoopHeatFigure::TimeToTrip), |g| {
            g.need(&[Ask::CutOut, Ask::Heat, Ask::LoopVolume, Ask::LoopNow])?;
            Ok(Value::duration(condenser(g)?.time_to_trip(
                g.heat(Ask::Heat)?,
                g.volume(Ask::LoopVolume)?,
                g.temperature(Ask::LoopNow)?,
                super::air::pressure(g)?,
            )?))
        }),
        (Figure::LoopHeat(LoopHeatFigure::NoFlow), |g| {
            g.need(&[Ask::CutOut, Ask::MachineHeat, Ask::LoopNow])?;
            let trips = condenser(g)?.trip_entering(super::air::pressure(g)?)?;
            let rise = crate::physics::tower::range(trips, g.temperature(Ask::LoopNow)?);
            Ok(Value::duration(time_without_flow(
                g.heat(Ask::MachineHeat)?,
                g.mass(Ask::CondenserWater)?,
                g.mass(Ask::CondenserMetal)?,
                // Copper and steel.
                SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(420.0),
                rise,
            )?))
        }),
        (Figure::LoopHeat(LoopHeatFigure::FlowFromHeat), |g| {
            g.need(&[Ask::Heat])?;
            let (heat, range) = (g.heat(Ask::Heat)?, g.difference(Ask::NormalRange)?);
            Ok(Value::flow(heat::flow_for(heat, range)?))
        }),
    ],
    ..Sheet::PLAIN
};

pub(super) const RESTART: Sheet = Sheet {
    slug: "restart",
    asks: &[
        Ask::LoopNow,
        Ask::AnyWetBulb,
        Ask::Flow,
        Ask::LoopVolume,
        Ask::MachineHeat,
        Ask::Machines,
        Ask::TripWater,
        Ask::TowerEffectiveness,
        Ask::KeepBelow,
    ],
    rows: &[
        (Figure::RestartWait, |g| Ok(Value::duration(plan(g)?.wait))),
        (Figure::LoopHeat(LoopHeatFigure::RestartSpacing), |g| {
            Ok(Value::duration(plan(g)?.spacing))
        }),
        (Figure::RestartHottest, |g| {
            Ok(Value::temperature(plan(g)?.hottest))
        }),
        (Figure::LoopHeat(LoopHeatFigure::Recovery), |g| {
            g.need(RESTART.asks)?;
            let all = g.heat(Ask::MachineHeat)? * g.number(Ask::Machines)?.round();
            let recovery = Recovery {
                water: g.volume(Ask::LoopVolume)?,
                flow: g.flow(Ask::Flow)?,
                heat: all,
                wet_bulb: g.temperature(Ask::AnyWetBulb)?,
                tower: Rejection::Effectiveness(g.part(Ask::TowerEffectiveness)?),
            };
            Ok(Value::temperature(recovery.settles()?))
        }),
    ],
    cautions: |_| vec![Say::Starting],
    ..Sheet::PLAIN
};

/// A condenser at its usual range and approach, and its cut-out.
pub(super) fn condenser(given: &Given) -> Result<Condenser, Fault> {
    given.need(&[Ask::CutOut])?;
    Ok(Condenser {
        refrigerant: super::refrigerant::fluid(given),
        cut_out: given.gauge(Ask::CutOut)?,
        approach: given.difference(Ask::NormalApproach)?,
        range: given.difference(Ask::NormalRange)?,
    })
}

/// All machines alike.
fn plan(given: &Given) -> Result<RestartPlan, Fault> {
    given.need(RESTART.asks)?;
    let restart = Restart {
        water: given.volume(Ask::LoopVolume)?,
        flow: given.flow(Ask::Flow)?,
        wet_bulb: given.temperature(Ask::AnyWetBulb)?,
        effectiveness: given.part(Ask::TowerEffectiveness)?,
        entering: given.temperature(Ask::LoopNow)?,
        margin: given.difference(Ask::KeepBelow)?,
    };
    let one = Restarting {
        heat: given.heat(Ask::MachineHeat)?,
        trip: given.temperature(Ask::TripWater)?,
    };
    let count = given.number(Ask::Machines)?.round() as usize;
    Ok(restart.plan(&vec![one; count])?)
}
