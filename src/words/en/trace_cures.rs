//! English: how to correct, how to prove, which parts.

use crate::trace::{Mode, Part};

pub(crate) fn cure(mode: Mode) -> &'static str {
    match mode {
        Mode::MachineFault => {
            "Work on this machine: clean the condenser, set or replace the regulating valve, \
             check charge and air."
        }
        Mode::ConditionsBeyondDesign => {
            "Shed what load you can and tell the owner what the tower can carry on such a day."
        }
        Mode::TowerAirSide => {
            "Lock out the fan. Correct belt, drive, direction or motor; clean the fill."
        }
        Mode::WaterFlowLow => "Clean the pump strainer, vent the air, check valves and rotation.",
        Mode::ControlPowerLost => {
            "Find why the supply went before replacing the fuse or transformer."
        }
        Mode::SensorFalseFull => {
            "Clean or replace rods and holder, dry the cap, turn the sensitivity down, and deal \
             with the foam or film."
        }
        Mode::RelayContactOpen => "Replace the relay. Check what its contact has been switching.",
        Mode::CoilOpen => "Replace the coil with the same voltage. Never power it off its stem.",
        Mode::ValveStuck => {
            "Isolate and drain. Clean the pilot hole, fit diaphragm and seat, or replace the valve."
        }
        Mode::HandValveShut => "Open it fully, find out who shut it and why, and tag it.",
        Mode::StrainerBlocked => "Isolate, clean or replace the screen, flush, and note the dirt.",
        Mode::MainsLow => {
            "Check the reducing valve and backflow preventer, then the building, then the utility."
        }
        Mode::BleedOrLeak => "Shut or repair what runs: bleed valve, drain, float, seal or pipe.",
    }
}

pub(crate) fn proof(mode: Mode) -> &'static str {
    match mode {
        Mode::MachineFault => {
            "Head follows the leaving water again as on its neighbors, for half an hour on load."
        }
        Mode::ConditionsBeyondDesign => {
            "Approach is right for today's wet bulb, and head falls when load comes off."
        }
        Mode::TowerAirSide => "Approach comes back to what it should be today, on full load.",
        Mode::WaterFlowLow => "Gauges steady and the range back to its usual.",
        Mode::ControlPowerLost => "Voltage holds with the fill running, through two refills.",
        Mode::SensorFalseFull => {
            "Dry holder above 1 megohm. Two refills hands off, and one more with the pump running."
        }
        Mode::RelayContactOpen => {
            "Full voltage at the coil on each call, and two refills hands off."
        }
        Mode::CoilOpen => "The coil pulls on each call, and two refills hands off.",
        Mode::ValveStuck => "Opens on each call, shuts tight after, through two refills.",
        Mode::HandValveShut => "Full flow on a call, and a refill in its usual time.",
        Mode::StrainerBlocked => "A refill in its usual time; check the screen again soon.",
        Mode::MainsLow => "Pressure holds while it fills, and a refill in its usual time.",
        Mode::BleedOrLeak => "Level holds with the fill shut, less what evaporates.",
    }
}

pub(crate) fn part(part: Part) -> &'static str {
    match part {
        Part::RegulatingValve => "Water regulating valve",
        Part::FanBelt => "Fan belt",
        Part::FanMotor => "Fan motor",
        Part::PumpStrainerGasket => "Pump strainer gasket",
        Part::AirVent => "Air vent",
        Part::ControlFuse => "Control fuse",
        Part::ControlTransformer => "Control transformer",
        Part::Electrodes => "Electrode rods",
        Part::ElectrodeHolder => "Electrode holder",
        Part::LevelRelay => "Level relay",
        Part::ValveCoil => "Valve coil",
        Part::ValveKit => "Diaphragm and seat kit",
        Part::FillValve => "Fill valve",
        Part::HandValve => "Hand valve",
        Part::StrainerScreen => "Strainer screen",
        Part::ReducingValve => "Pressure reducing valve",
        Part::BleedValve => "Bleed valve",
        Part::PipeAndFittings => "Pipe and fittings",
    }
}
