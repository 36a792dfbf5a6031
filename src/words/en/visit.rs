//! A visit's readings and leaving round in English.

use super::physics_refused;
use crate::quantity::System;
use crate::record::{Lack, LeavingItem, What};

pub(in crate::words) fn reading_name(what: What) -> &'static str {
    match what {
        What::HeadPressure => "Head pressure",
        What::EnteringWater => "Water entering the machines",
        What::LeavingWater => "Water leaving the machines",
        What::DryBulb => "Outdoor dry bulb",
        What::Humidity => "Outdoor humidity",
        What::WetBulb => "Outdoor wet bulb, if measured",
        What::BasinLevel => "Basin level below the overflow",
        What::ControlVoltage => "Voltage at the level control",
        What::WaterFlow => "Condenser water flow, if metered",
    }
}

pub(in crate::words) fn reading_hint(what: What) -> &'static str {
    match what {
        What::HeadPressure => "Eyes and gloves: liquid refrigerant burns, discharge lines are hot.",
        What::EnteringWater => "Off the tower, at the machines.",
        What::LeavingWater => "On its way up to the tower.",
        What::DryBulb => "In the shade, out of the tower's discharge.",
        What::Humidity => "With the dry bulb, same place.",
        What::WetBulb => "Beats dry bulb and humidity when both are there.",
        What::BasinLevel => {
            "Tape from the overflow lip down to the water. Fan locked out, mind the edge and the \
             wet deck; keep your face out of the spray."
        }
        What::ControlVoltage => {
            "Live parts: qualified people only, rated meter, proven on a known live point first."
        }
        What::WaterFlow => "Leave empty to use the design flow.",
    }
}

pub(in crate::words) fn lack(lack: &Lack, system: System) -> String {
    match lack {
        Lack::Needs(readings) => {
            let names: Vec<String> = readings
                .iter()
                .map(|what| {
                    reading_name(*what)
                        .trim_end_matches(", if measured")
                        .to_ascii_lowercase()
                })
                .collect();
            format!("Needs {}", names.join(" and "))
        }
        Lack::Physics(error) => physics_refused::error(error, system),
        Lack::NoRange => {
            "The water leaving reads no warmer than the water entering: no heat is being rejected."
                .to_owned()
        }
    }
}

pub(in crate::words) fn leaving_item(item: LeavingItem) -> &'static str {
    match item {
        LeavingItem::BypassShut => "Fill bypass is shut, or tagged if it stays open",
        LeavingItem::HandValves => "Hand valves stand as found",
        LeavingItem::DrainShut => "Basin drain is shut",
        LeavingItem::ProbeBack => "Probe is back, its cap dry and tight",
        LeavingItem::CoversOn => "Covers and guards are on",
        LeavingItem::LockoutOff => "Our lockouts are off",
        LeavingItem::MachinesRunning => "Machines are reset and running",
        LeavingItem::TreatmentTold => "Water treatment has been told of the drawdown",
        LeavingItem::CustomerTold => "Customer has been told",
    }
}
