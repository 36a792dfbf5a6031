//! What a visit already knows of the things a working asks for.

use uom::si::ratio::ratio;

use super::body::{What, When};
use super::recovery::loop_water;
use super::site::Site;
use super::visit::{Slot, Visit};
use crate::physics::basin::Plan;
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{Unit, Value};
use crate::working::Ask;

/// An input that a visit knows, as it was typed where it was typed.
#[derive(Clone, Debug, PartialEq)]
pub enum KnownInput {
    /// A reading as found, as typed, and the unit of a bare number.
    Typed(String, Unit),
    /// A value of the site.
    Value(Value),
    /// The place in a choice.
    Place(usize),
}

/// What this visit knows of an input; for what differs by machine, of the
/// first machine whose head pressure was read, else the first.
pub fn known_input(site: &Site, visit: &Visit, ask: Ask) -> Option<KnownInput> {
    let head = |machine| {
        visit.readings.get(&Slot {
            when: When::AsFound,
            what: What::HeadPressure,
            machine: Some(machine),
        })
    };
    let machine = site
        .machines
        .iter()
        .find(|m| head(m.id).is_some())
        .or(site.machines.first());
    let reading = |what| {
        let reading = visit.reading(When::AsFound, what)?;
        Some(KnownInput::Typed(reading.typed.clone(), reading.unit))
    };
    let tower = &site.tower;
    let value = |value| Some(KnownInput::Value(value));
    match ask {
        Ask::DryBulb => reading(What::DryBulb),
        Ask::Humidity => reading(What::Humidity),
        Ask::WetBulb => reading(What::WetBulb),
        Ask::HotWater | Ask::CondenserLeaving => reading(What::LeavingWater),
        Ask::ColdWater | Ask::LoopNow | Ask::CondenserEntering => reading(What::EnteringWater),
        Ask::Flow => reading(What::WaterFlow).or_else(|| value(Value::flow(tower.design_flow?))),
        Ask::LevelNow => reading(What::BasinLevel),
        Ask::BasinConductivity | Ask::ProbeWater => reading(What::Conductivity),
        Ask::ControlVoltage => value(Value::voltage(site.control_voltage?)),
        Ask::WaterAirRatio => value(Value::number(tower.water_air_ratio.get::<ratio>())),
        Ask::SetCycles => value(Value::number(tower.cycles)),
        Ask::Altitude => value(Value::length(site.altitude?)),
        Ask::DesignFlow => value(Value::flow(tower.design_flow?)),
        Ask::DesignHot => value(Value::temperature(tower.design_in?)),
        Ask::DesignCold => value(Value::temperature(tower.design_out?)),
        Ask::DesignWetBulb => value(Value::temperature(tower.design_wet_bulb?)),
        // Of the shapes a site may have, the working offers three.
        Ask::BasinShape => match tower.basin?.plan {
            Plan::Rectangular { .. } => Some(KnownInput::Place(0)),
            Plan::Round { .. } => Some(KnownInput::Place(1)),
            Plan::SlopedFloor { .. } => Some(KnownInput::Place(2)),
            _ => None,
        },
        Ask::BasinLength => match tower.basin?.plan {
            Plan::Rectangular { length, .. } | Plan::SlopedFloor { length, .. } => {
                value(Value::length(length))
            }
            Plan::Round { diameter } => value(Value::length(diameter)),
            _ => None,
        },
        Ask::BasinWidth => match tower.basin?.plan {
            Plan::Rectangular { width, .. } | Plan::SlopedFloor { width, .. } => {
                value(Value::length(width))
            }
            _ => None,
        },
        Ask::FloorFall => match tower.basin?.plan {
            Plan::SlopedFloor { fall, .. } => value(Value::level(fall)),
            _ => None,
        },
        Ask::BasinDepth => value(Value::level(tower.basin?.depth)),
        Ask::LevelThen | Ask::InletDepth => value(Value::level(tower.inlet_level?)),
        Ask::LoopVolume => value(Value::volume(loop_water(site, visit)?)),
        Ask::Fluid => {
            let fluid = machine?.refrigerant?;
            let place = Refrigerant::ALL.into_iter().position(|r| r == fluid)?;
            Some(KnownInput::Place(place))
        }
        Ask::MachineHeat => value(Value::heat(machine?.rejects?)),
        Ask::Machines => value(Value::number(site.machines.len() as f64)),
        Ask::CutOut => value(Value::gauge_pressure(machine?.cut_out?)),
        Ask::Head => {
            let reading = head(machine?.id)?;
            Some(KnownInput::Typed(reading.typed.clone(), reading.unit))
        }
        _ => None,
    }
}
