//! English: fault modes, parts of the plant, places.

use crate::trace::{Branch, Group, Manner, Mode, Place};

pub(crate) fn name(mode: Mode) -> &'static str {
    use Mode as M;
    match mode {
        M::CondenserFouled => "Condenser fouled",
        M::RegulatingValve => "Regulating valve not opening",
        M::NonCondensables => "Air in the condenser",
        M::Overcharge => "Too much refrigerant",
        M::PressureControl => "Pressure control trips early",
        M::BranchStrainer => "Machine's strainer blocked",
        M::BranchValve => "Machine's hand valve shut",
        M::MachineOverload => "Machine overloaded",
        M::ConditionsBeyondDesign => "Day beyond the tower's size",
        M::PumpStopped => "Condenser pump stopped",
        M::PumpBackwards => "Condenser pump backwards",
        M::PumpWorn => "Condenser pump worn",
        M::PumpStrainer => "Pump strainer blocked",
        M::AirBound => "Air in the loop",
        M::LoopValve => "Loop valve throttled",
        M::SuctionScreen => "Basin outlet screen choked",
        M::FanStopped => "Tower fan stopped",
        M::FanBackwards => "Tower fan backwards",
        M::BeltOff => "Fan belt slipping or off",
        M::FanControl => "Fan held slow by its control",
        M::FillFouled => "Fill scaled or fouled",
        M::AirInlet => "Air inlet blocked",
        M::Recirculation => "Tower breathing its own air",
        M::NozzlesBlocked => "Spray nozzles blocked",
        M::CellUneven => "One cell short of water",
        M::TowerBypass => "Tower bypass passing",
        M::ProbeFilm => "Film on the probe",
        M::ProbeFoam => "Foam on the probe",
        M::ProbeCableShort => "Probe cable shorted",
        M::HolderMoisture => "Moisture in the probe cap",
        M::ControllerStuckFull => "Level control stuck at full",
        M::StillWell => "Still well plugged",
        M::FloatJammedUp => "Float jammed up",
        M::TransmitterHigh => "Level transmitter reads high",
        M::CallSetLow => "Call level set too low",
        M::ReferenceLost => "Reference electrode lost",
        M::FloatSunk => "Float waterlogged",
        M::SupplyLost => "Control supply off",
        M::FuseBlown => "Control fuse blown",
        M::TransformerFailed => "Control transformer failed",
        M::DisconnectOff => "Control disconnect off",
        M::ControllerDead => "Level control dead",
        M::RelayContactOpen => "Fill relay contact burnt open",
        M::RelayContactWelded => "Fill relay contact welded",
        M::WiringHighResistance => "Bad joint to the fill valve",
        M::WiringOpen => "Wire to the fill valve broken",
        M::CoilOpen => "Fill valve coil open",
        M::CoilWeak => "Fill valve coil weak",
        M::ValveStuck => "Fill valve stuck shut",
        M::PilotBlocked => "Fill valve pilot blocked",
        M::DiaphragmTorn => "Fill valve diaphragm torn",
        M::ValveBackwards => "Fill valve installed backwards",
        M::LowDifferential => "Too little pressure to lift the valve",
        M::ValvePassing => "Fill valve passing",
        M::HandValveShut => "Makeup hand valve shut",
        M::StrainerBlocked => "Makeup strainer blocked",
        M::BackflowStuck => "Backflow preventer stuck",
        M::ReducingValve => "Reducing valve low",
        M::MainsLow => "Supply pressure low",
        M::LineFrozen => "Makeup line frozen",
        M::BleedStuckOpen => "Bleed stuck open",
        M::BleedOverset => "Bleed running too long",
        M::BasinLeak => "Basin or pipe leaking",
        M::OverflowLow => "Overflow set too low",
        M::DrainAjar => "Basin drain ajar",
        M::DrainsBack => "Loop drains back to the sump",
        M::MachineFault => "One machine's own fault",
        M::TowerAirSide => "Tower short of air",
        M::WaterFlowLow => "Condenser water flow low",
        M::ControlPowerLost => "Fill control without power",
        M::SensorFalseFull => "Level sensor says full when it isn't",
        M::BleedOrLeak => "Basin losing water",
    }
}

pub(crate) fn line(mode: Mode) -> &'static str {
    use Mode as M;
    match mode {
        M::CondenserFouled => "Head stands far over the leaving water, more so on load.",
        M::RegulatingValve => "This machine gets little water and its range is wide.",
        M::NonCondensables => "Head stays over what the water's temperature gives, even standing.",
        M::Overcharge => "High head with much subcooling, worst since someone added gas.",
        M::PressureControl => "It trips at a head that is not high.",
        M::BranchStrainer => "Wide range on this machine, usual on its neighbors.",
        M::BranchValve => "Left shut or throttled: wide range on this machine alone.",
        M::MachineOverload => {
            "Warm product or a door left open: everything reads high, nothing is broken."
        }
        M::ConditionsBeyondDesign => {
            "Wet bulb or load is past what the tower was picked for; nothing need be broken."
        }
        M::PumpStopped => "No flow at all; trips follow each other within a minute.",
        M::PumpBackwards => "Runs, sounds right, gives little. Look for recent wiring.",
        M::PumpWorn => "Low pressure and low current, getting worse over months.",
        M::PumpStrainer => "Low suction after the strainer, wide range on every machine.",
        M::AirBound => "Gauges swing, the pump is noisy, flow comes and goes.",
        M::LoopValve => "A common valve was left half shut: high pressure before it, little flow.",
        M::SuctionScreen => "Basin full, yet the pump starves: leaves or scale at the outlet.",
        M::FanStopped => "Usual range, water far over the wet bulb.",
        M::FanBackwards => "Fan turns and little air comes; look for recent wiring.",
        M::BeltOff => "Motor turns, fan slow or still; rubber dust at the sheaves.",
        M::FanControl => "Thermostat or drive tells the fan too little.",
        M::FillFouled => "Slowly worse over a season; scale or slime in the fill.",
        M::AirInlet => "Leaves, bags or scale on louvers and eliminators.",
        M::Recirculation => "Discharge air comes back in; a new wall, wind, or a neighbor.",
        M::NozzlesBlocked => "Dry streaks in the fill, some nozzles spray, some don't.",
        M::CellUneven => "One cell runs over, another runs thin.",
        M::TowerBypass => "Hot water goes past the tower into the basin.",
        M::ProbeFilm => {
            "Slime or scale bridges the rods: full over a low basin, gone when wiped or dry."
        }
        M::ProbeFoam => "Foam lifts to the rods: full while the pump runs, right when it stands.",
        M::ProbeCableShort => "Cable or terminals short: full whatever the water does.",
        M::HolderMoisture => "Water in the cap bridges the terminals, worst after rain or a wash.",
        M::ControllerStuckFull => "It says full even with a dry probe or an open resistor.",
        M::StillWell => "Water in the still well no longer follows the basin.",
        M::FloatJammedUp => "Weed, scale or a bent arm holds the float up.",
        M::TransmitterHigh => "Drift, mud or a blocked vent: more on the display than on the tape.",
        M::CallSetLow => "It calls, but below where the pump starts to draw air.",
        M::ReferenceLost => "It never sees water, so it fills for ever and runs over.",
        M::FloatSunk => "A heavy float never rises: it fills for ever and runs over.",
        M::SupplyLost => "Breaker or building supply is off; nothing lights.",
        M::FuseBlown => "Supply in, nothing out; ask what blew it.",
        M::TransformerFailed => "Voltage in, little or nothing out.",
        M::DisconnectOff => "Someone switched it off and left.",
        M::ControllerDead => "Power is there; lamps and output do nothing.",
        M::RelayContactOpen => "It calls and clicks, but the contact passes nothing.",
        M::RelayContactWelded => "The contact never lets go.",
        M::WiringHighResistance => {
            "A green or loose joint: voltage sags as soon as the coil pulls."
        }
        M::WiringOpen => "Voltage at the output, none at the coil.",
        M::CoilOpen => "Right voltage at the coil, no current, no pull.",
        M::CoilWeak => "Right voltage, weak pull: shorted turns or the wrong coil.",
        M::ValveStuck => "Coil pulls, body stays shut; a tap may free it.",
        M::PilotBlocked => "Coil pulls, valve hums, little or no flow.",
        M::DiaphragmTorn => "Coil pulls, flow weak or none, may not shut either.",
        M::ValveBackwards => "The arrow points the wrong way; look for recent work.",
        M::LowDifferential => "Opens at night, not when the building draws water.",
        M::ValvePassing => "Dirt under the seat: water runs with no call and goes over.",
        M::HandValveShut => "A valve in the makeup line was left shut or partly shut.",
        M::StrainerBlocked => "Fills slowly or not at all; worst at peak load.",
        M::BackflowStuck => "Pressure before it, little behind; relief port may drip.",
        M::ReducingValve => "Street pressure right, pressure behind the reducer low.",
        M::MainsLow => "Too little pressure from the street or the building to fill.",
        M::LineFrozen => "Outdoor pipe is iced; no flow at all until it thaws.",
        M::BleedStuckOpen => "Bleed runs with nothing calling; conductivity low.",
        M::BleedOverset => "Bleed runs as told, but far too long; conductivity low.",
        M::BasinLeak => "Level falls with fill and bleed shut.",
        M::OverflowLow => "Water goes over before the fill stops.",
        M::DrainAjar => "The drain was not quite shut; a trickle below.",
        M::DrainsBack => "Each stop sends the loop over the overflow; each start finds it short.",
        M::MachineFault => "Only this machine runs high; which part was not narrowed down.",
        M::TowerAirSide => "Fan, belt, drive or fill: the water gets too little air.",
        M::WaterFlowLow => "Pump, strainer or air: the loop gets too little.",
        M::ControlPowerLost => "No supply at the level control, so it never calls for water.",
        M::SensorFalseFull => "The control takes a low basin for full; why was not narrowed down.",
        M::BleedOrLeak => "Bleed, drain, overflow or a leak takes more than makeup brings.",
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

pub(crate) fn group(group: Group) -> &'static str {
    match group {
        Group::Machine => "One machine",
        Group::Conditions => "Weather and load",
        Group::CondenserWater => "Condenser water",
        Group::TowerAir => "Tower air",
        Group::TowerWater => "Tower water",
        Group::Sensing => "Level sensing",
        Group::FillPower => "Fill control power",
        Group::FillValve => "Fill valve",
        Group::MakeupLine => "Makeup line",
        Group::WaterLoss => "Water leaving",
    }
}

pub(crate) fn branch(branch: Branch) -> &'static str {
    match branch {
        Branch::Machine => "One machine",
        Branch::Conditions => "Weather and load",
        Branch::CondenserWater => "Condenser water",
        Branch::Tower => "Tower",
        Branch::MakeupChain => "Makeup chain",
        Branch::WaterLoss => "Water leaving",
    }
}
