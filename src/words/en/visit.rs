//! A visit's readings and leaving round in English.

use super::physics_refused;
use crate::quantity::System;
use crate::record::{Fact, Lack, LeavingItem, Need, What};

pub(in crate::words) fn reading_name(what: What) -> &'static str {
    match what {
        What::HeadPressure => "Head pressure",
        What::EnteringWater => "Water entering the machines",
        What::LeavingWater => "Water leaving the machines",
        What::DryBulb => "Outdoor dry bulb",
        What::Humidity => "Outdoor humidity",
        What::WetBulb => "Outdoor wet bulb, if measured",
        What::BasinLevel => "Basin level below the overflow",
        What::LoopVolume => "Water in the loop",
        What::ControlVoltage => "Voltage at the level control",
        What::WaterFlow => "Condenser water flow, if metered",
        What::Conductivity => "Conductivity of the basin water",
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
        What::LoopVolume => "Left empty: the basin and three minutes of design flow.",
        What::Conductivity => {
            "A dipped sample or the controller's display. Gloves and eyes: treated water."
        }
    }
}

/// What is missing of a site, in the middle of a sentence.
pub(in crate::words) fn site_fact(fact: Fact) -> &'static str {
    match fact {
        Fact::DesignFlow => "the water flow at design",
        Fact::DesignIn => "the design water onto the tower",
        Fact::DesignOut => "the design water off the tower",
        Fact::DesignWetBulb => "the design wet bulb",
        Fact::Basin => "the basin's shape and depth",
        Fact::InletLevel => "where the pump inlet draws air",
        Fact::Refrigerant => "the machine's refrigerant",
    }
}

pub(in crate::words) fn lack(lack: &Lack, system: System) -> String {
    match lack {
        Lack::Needs(needs) => {
            let mut readings = Vec::new();
            let mut facts = Vec::new();
            for need in needs {
                match need {
                    Need::Reading(what) => readings.push(
                        reading_name(*what)
                            .trim_end_matches(", if measured")
                            .to_ascii_lowercase(),
                    ),
                    Need::Fact(fact) => facts.push(site_fact(*fact).to_owned()),
                }
            }
            let mut parts = Vec::new();
            if !readings.is_empty() {
                parts.push(readings.join(" and "));
            }
            if !facts.is_empty() {
                parts.push(format!("of the site, {}", facts.join(" and ")));
            }
            format!("Needs {}", parts.join("; and, "))
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
        LeavingItem::BypassShut => "Fill bypass is shut",
        LeavingItem::BypassTagged => "Fill bypass is tagged with how it stands",
        LeavingItem::HandValves => "Hand valves stand as found",
        LeavingItem::DrainShut => "Basin drain is shut",
        LeavingItem::ProbeBack => "Probe is back, its cap dry and tight",
        LeavingItem::CoversOn => "Covers and guards are on",
        LeavingItem::LockoutOff => "Our lockouts are off",
        LeavingItem::MachinesRunning => "Machines are reset and running",
        LeavingItem::AlarmsRestored => "Alarms are back in service",
        LeavingItem::TreatmentTold => "Water treatment has been told of the drawdown",
        LeavingItem::CustomerTold => "Customer has been told",
    }
}
