//! English: checks.

use crate::trace::Check;

pub(crate) fn title(check: Check) -> &'static str {
    match check {
        Check::MachinesOut => "How many machines are out",
        Check::BasinOnArrival => "Basin as found",
        Check::CallAsFound => "What the level control shows",
        Check::LevelNow => "Basin level now",
        Check::EnteringWater => "Water to the machines",
        Check::RangeWidth => "Range",
        Check::ApproachToday => "Approach",
        Check::FanAndAir => "Fan and air",
        Check::PumpPressure => "Pump gauges",
        Check::MachineOwn => "The tripped machine itself",
        Check::WeatherAndLoad => "Weather and load",
        Check::ControlVoltage => "Voltage at the level control",
        Check::ProbeDried => "Lift, wipe and dry the probe",
        Check::Substitution => "Resistor in place of the probe",
        Check::CoilVoltage => "Voltage at the coil",
        Check::CoilPull => "Does the coil pull",
        Check::FlowOnCall => "Flow while it calls",
        Check::ForceValve => "Open the fill by hand",
        Check::HandValves => "Hand valves",
        Check::StrainerBlowOff => "Blow off the strainer",
        Check::MainsPressure => "Supply pressure",
        Check::ProbeFilm => "Resistance across the dry holder",
        Check::FoamLook => "Foam on the basin",
        Check::WaterLoss => "Water going out",
        Check::RefillTest => "Refill test",
    }
}

pub(crate) fn how(check: Check) -> &'static str {
    match check {
        Check::MachinesOut => "Count the machines out on high head. Don't reset yet.",
        Check::BasinOnArrival => {
            "Measure from the overflow lip down to the water before anyone lets water in."
        }
        Check::CallAsFound => {
            "Read the lamp or the relay as it stands: calling, satisfied or dark. Touch nothing."
        }
        Check::LevelNow => "Measure from the overflow lip again, and once more a minute later.",
        Check::EnteringWater => "Read the water entering the machines and compare with its usual.",
        Check::RangeWidth => "Read water off the machines less water to them, machines running.",
        Check::ApproachToday => {
            "Read water off the tower and the wet bulb at the air inlet, out of the sun."
        }
        Check::FanAndAir => {
            "Fan running the right way at speed, belt tight, air drawn through a clean fill."
        }
        Check::PumpPressure => "Watch both pump gauges for a minute: steady, swinging or low.",
        Check::MachineOwn => {
            "On this machine: water in and out, regulating valve, head against water leaving."
        }
        Check::WeatherAndLoad => {
            "Compare today's wet bulb and the machines running with the tower's nameplate."
        }
        Check::ControlVoltage => {
            "Prove the meter, then read across the control's supply. Load it or use low impedance."
        }
        Check::ProbeDried => {
            "Lift the probe clear, wipe and dry rods and holder, then look for a call."
        }
        Check::Substitution => {
            "Supply off, probe wires off. Fit 1 kohm for wet, open for dry; watch the output."
        }
        Check::CoilVoltage => "With the control calling, read across the coil under load.",
        Check::CoilPull => {
            "With the control calling, feel for pull with a steel blade at the nut; listen for hum."
        }
        Check::FlowOnCall => "With the control calling, listen at the valve and watch the outlet.",
        Check::ForceValve => "Use the manual stem or the bypass. Compare with the usual full flow.",
        Check::HandValves => "Follow the line from the entry to the basin. Turn each one to see.",
        Check::StrainerBlowOff => "Open the blow-off to a bucket and look at what comes out.",
        Check::MainsPressure => "Read the gauge with the fill running, then with it shut.",
        Check::ProbeFilm => {
            "Supply off, probe out and dry, wires off: read probe to probe, then swap the leads."
        }
        Check::FoamLook => "Look at the water by the probe with the pump running.",
        Check::WaterLoss => "Look at bleed, drain, overflow, pump seal and the pipes below.",
        Check::RefillTest => {
            "Draw the level below the call mark, then time it back to the stop mark, hands off."
        }
    }
}

pub(crate) fn healthy(check: Check) -> &'static str {
    match check {
        Check::MachinesOut => "No machine out; one alone points at that machine.",
        Check::BasinOnArrival => "Water between the call mark and the overflow.",
        Check::CallAsFound => "Calling over a low basin, satisfied over a full one.",
        Check::LevelNow => "At its working level, or rising while it fills.",
        Check::EnteringWater => "Within a few degrees of its usual in this weather.",
        Check::RangeWidth => "Near the design range, less at part load.",
        Check::ApproachToday => "Near what a clean tower shows at this wet bulb and load.",
        Check::FanAndAir => "Full speed, right way round, air felt across the whole face.",
        Check::PumpPressure => "Both needles still, where they usually stand.",
        Check::MachineOwn => "Head follows the leaving water as on its neighbors.",
        Check::WeatherAndLoad => "At or below the nameplate wet bulb and load.",
        Check::ControlVoltage => "Nominal, no lower than 15 percent under.",
        Check::ProbeDried => "A dry probe calls for water within seconds.",
        Check::Substitution => "Output off with the resistor in, on with it out.",
        Check::CoilVoltage => "Nominal, no lower than 15 percent under, at the coil itself.",
        Check::CoilPull => "The blade is held, a faint hum, the coil warms.",
        Check::FlowOnCall => "Full flow within seconds of the call.",
        Check::ForceValve => "Full flow at once.",
        Check::HandValves => "Every one open, handles in line with the pipe.",
        Check::StrainerBlowOff => "A strong clean jet after the first dirt.",
        Check::MainsPressure => "Near its usual, and not falling away while it fills.",
        Check::ProbeFilm => "Above 1 megohm. Below 100 kohm is film or damp.",
        Check::FoamLook => "Clear water around the probe.",
        Check::WaterLoss => "Bleed only when called for, and nothing else running.",
        Check::RefillTest => "Calls at the mark, fills in its usual time, stops by itself.",
    }
}
