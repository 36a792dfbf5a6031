//! English: fault modes and places.

use crate::trace::{Manner, Mode, Place};

pub(crate) fn name(mode: Mode) -> &'static str {
    match mode {
        Mode::MachineFault => "One machine's own fault",
        Mode::ConditionsBeyondDesign => "Day beyond the tower's size",
        Mode::TowerAirSide => "Tower short of air",
        Mode::WaterFlowLow => "Condenser water flow low",
        Mode::ControlPowerLost => "Fill control without power",
        Mode::SensorFalseFull => "Level probe says full when it isn't",
        Mode::RelayContactOpen => "Fill relay contact open",
        Mode::CoilOpen => "Fill valve coil open",
        Mode::ValveStuck => "Fill valve stuck shut",
        Mode::HandValveShut => "Makeup hand valve shut",
        Mode::StrainerBlocked => "Makeup strainer blocked",
        Mode::MainsLow => "Supply pressure low",
        Mode::BleedOrLeak => "Basin losing water",
    }
}

pub(crate) fn line(mode: Mode) -> &'static str {
    match mode {
        Mode::MachineFault => {
            "Fouled condenser, regulating valve, air or overcharge: only this machine runs high."
        }
        Mode::ConditionsBeyondDesign => {
            "Wet bulb or load is past what the tower was picked for; nothing need be broken."
        }
        Mode::TowerAirSide => "Fan, belt, drive or fill: the water gets too little air.",
        Mode::WaterFlowLow => "Common pump, its strainer or trapped air: the loop gets too little.",
        Mode::ControlPowerLost => "No supply at the level control, so it never calls for water.",
        Mode::SensorFalseFull => {
            "Film, foam or damp bridges the probe: the control takes a low basin for full."
        }
        Mode::RelayContactOpen => "The control calls, but its contact passes nothing to the valve.",
        Mode::CoilOpen => "Voltage reaches the coil and the coil does not pull.",
        Mode::ValveStuck => "The coil pulls and the valve body stays shut.",
        Mode::HandValveShut => "A valve in the makeup line was left shut or partly shut.",
        Mode::StrainerBlocked => "Dirt in the makeup strainer chokes the flow.",
        Mode::MainsLow => "Too little pressure from the street or the building to fill.",
        Mode::BleedOrLeak => "Bleed, drain, overflow or a leak takes more than makeup brings.",
    }
}

pub(crate) fn manner(manner: Manner) -> &'static str {
    match manner {
        Manner::Steady => "there all the time",
        Manner::Intermittent => "comes and goes",
    }
}

pub(crate) fn place(place: Place) -> &'static str {
    match place {
        Place::Roof => "Roof, at the tower",
        Place::MachineRoom => "Machine room",
        Place::Basement => "Pump room",
        Place::Mains => "Water entry",
    }
}
