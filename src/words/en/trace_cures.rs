//! English: how to correct, how to prove, which parts.

use crate::trace::{Mode, Part};

pub(crate) fn cure(mode: Mode) -> &'static str {
    use Mode as M;
    match mode {
        M::CondenserFouled => "Brush or descale the tubes; ask why the water scaled.",
        M::RegulatingValve => "Flush it, set it to the head wanted, or replace it.",
        M::NonCondensables => "Purge or recover, evacuate, weigh in the charge. Certified work.",
        M::Overcharge => "Recover down to the nameplate charge. Certified work.",
        M::PressureControl => "Check its setting against the nameplate; replace it if it drifts.",
        M::BranchStrainer | M::StrainerBlocked => {
            "Isolate, clean or replace the screen, flush, and note the dirt."
        }
        M::BranchValve | M::HandValveShut | M::LoopValve => {
            "Open it fully, find out who shut it and why, and tag it."
        }
        M::MachineOverload => "Shed the load, and tell the owner what the machine can carry.",
        M::ConditionsBeyondDesign => {
            "Shed what load you can and tell the owner what the tower can carry on such a day."
        }
        M::PumpStopped => "Lock out. Find why it tripped before it is started again.",
        M::PumpBackwards | M::FanBackwards => "Lock out. Swap two phases; note who wired it last.",
        M::PumpWorn => "Lock out. Coupling, impeller or wear ring; or the whole pump.",
        M::PumpStrainer => "Isolate and clean it; look at what the tower sends down.",
        M::AirBound => "Vent the high points and find where air gets in.",
        M::SuctionScreen => "Pump off. Clear screen and equalizer from outside the basin.",
        M::FanStopped => "Lock out. Motor, overload, starter or drive: find why it stopped.",
        M::BeltOff => "Lock out. Align the sheaves and fit a matched set of belts.",
        M::FanControl => "Correct the setting or sensor; check the drive's limits.",
        M::FillFouled => "Plan a cleaning with the water treater, or new fill.",
        M::AirInlet => "Fan off. Clear louvers and eliminators.",
        M::Recirculation => "Clear what sends the air back, or raise the discharge.",
        M::NozzlesBlocked => "Pump and fan off. Clean or replace the nozzles.",
        M::CellUneven => "Balance the cells with their valves; clear the equalizer.",
        M::TowerBypass => "Free or repair the bypass valve and its actuator.",
        M::ProbeFilm => {
            "Clean or replace rods and holder, turn the sensitivity down, deal with the slime."
        }
        M::ProbeFoam => {
            "Deal with the foam through the water treater; shield the probe; sensitivity down."
        }
        M::ProbeCableShort => "Replace cable or terminals, and seal the entry.",
        M::HolderMoisture => "Dry the cap, renew its seal, and point the entry down.",
        M::ControllerStuckFull | M::ControllerDead => {
            "Replace the level control; set its sensitivity."
        }
        M::StillWell => "Blow it through and clean it; screen its foot.",
        M::FloatJammedUp => "Clear or straighten it; give it room.",
        M::TransmitterHigh => "Clean, vent and re-range it against the tape; or replace it.",
        M::CallSetLow => "Set the call level above the pump inlet, with room to spare.",
        M::ReferenceLost => "Restore rod and wire; in a plastic basin give it a rod of its own.",
        M::FloatSunk => "Replace the float.",
        M::SupplyLost | M::ControlPowerLost => "Find why the supply went before restoring it.",
        M::FuseBlown => "Find the short first; then the same fuse, no larger.",
        M::TransformerFailed => "Check what it feeds for a short; replace it with the same rating.",
        M::DisconnectOff => "Find out who opened it and why; close it only when that is done.",
        M::RelayContactOpen | M::RelayContactWelded => {
            "Replace the relay. Check what its contact has been switching."
        }
        M::WiringHighResistance => "Remake the joints; check the drop again under load.",
        M::WiringOpen => "Find the break and replace the run; protect it from what broke it.",
        M::CoilOpen | M::CoilWeak => {
            "Replace the coil with the same voltage. Never power it off its stem."
        }
        M::ValveStuck => "Isolate and drain. Clean it, fit diaphragm and seat, or replace it.",
        M::PilotBlocked => "Isolate and drain. Clean the pilot hole; clean the strainer too.",
        M::DiaphragmTorn => "Isolate and drain. Fit the diaphragm kit.",
        M::ValveBackwards => "Isolate and drain. Turn it round.",
        M::LowDifferential => "Raise the pressure, or fit a valve that needs none to open.",
        M::ValvePassing => "Isolate and drain. Clean or replace the seat.",
        M::BackflowStuck => "Service it, by a certified tester where the code asks for one.",
        M::ReducingValve => "Set it, clean it, or replace it.",
        M::MainsLow => "Ask the building, then the utility. Fill by hand meanwhile.",
        M::LineFrozen => "Thaw it slowly, no flame; trace and insulate it.",
        M::BleedStuckOpen => "Clean or replace the bleed valve.",
        M::BleedOverset => "Correct the setting with the water treater; clean its probe.",
        M::BasinLeak => "Repair it; in the meantime keep it filled and watched.",
        M::OverflowLow => "Set the overflow above the stop level.",
        M::DrainAjar => "Shut it and plug or lock it.",
        M::DrainsBack => "Repair the check valve, or lower the stop level.",
        M::MachineFault => "Work on this machine: condenser, regulating valve, charge and air.",
        M::TowerAirSide => {
            "Lock out the fan. Correct belt, drive, direction or motor; clean the fill."
        }
        M::WaterFlowLow => "Clean the pump strainer, vent the air, check valves and rotation.",
        M::SensorFalseFull => "Clean, dry or replace what senses the level; check its control.",
        M::BleedOrLeak => "Shut or repair what runs: bleed valve, drain, float, seal or pipe.",
    }
}

pub(crate) fn proof(mode: Mode) -> &'static str {
    use Mode as M;
    match mode {
        M::ProbeFilm | M::ProbeFoam | M::HolderMoisture | M::SensorFalseFull => {
            "Two refills hands off, and one more with the pump running."
        }
        M::ReferenceLost | M::FloatSunk | M::RelayContactWelded | M::ValvePassing => {
            "The fill stops by itself at its mark, twice."
        }
        M::ConditionsBeyondDesign | M::MachineOverload => {
            "Head falls when load comes off, and nothing else reads wrong."
        }
        _ => match mode.group().branch() {
            crate::trace::Branch::Machine => {
                "Head follows the leaving water as on its neighbors, half an hour on load."
            }
            crate::trace::Branch::Conditions | crate::trace::Branch::Tower => {
                "Approach comes back to what it should be today, on full load."
            }
            crate::trace::Branch::CondenserWater => {
                "Gauges steady and the range back to its usual."
            }
            crate::trace::Branch::MakeupChain => {
                "Full flow on each call, and two refills hands off."
            }
            crate::trace::Branch::WaterLoss => {
                "Level holds with the fill shut, less what evaporates."
            }
        },
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
        Part::PressureControl => "High-pressure control",
        Part::CondenserGaskets => "Condenser gaskets",
        Part::PumpParts => "Pump seal or coupling",
        Part::MotorControl => "Contactor, overload or drive",
        Part::SprayNozzles => "Spray nozzles",
        Part::FillOrLouvers => "Fill or louvers",
        Part::LevelController => "Level control",
        Part::CableAndTerminals => "Cable and terminals",
        Part::Float => "Float",
        Part::Transmitter => "Level transmitter",
        Part::HolderCap => "Holder cap and seal",
        Part::Antifoam => "Antifoam, by the water treater",
        Part::BackflowKit => "Backflow preventer kit",
        Part::HeatTape => "Heat tape and insulation",
        Part::CheckValve => "Check valve",
    }
}
