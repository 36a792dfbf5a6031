//! English: the electrode level sensor.

use crate::physics::electrode::{Bridge, Condition, Fill, Water};

pub(in crate::words) fn condition(condition: Condition) -> &'static str {
    match condition {
        Condition::Dry => "Out of the water, clean",
        Condition::Film => "Out of the water, wet film on it",
        Condition::Foam => "Out of the water, in foam",
        Condition::Touching => "Tip just touching",
        Condition::Water => "In the water, clean",
        Condition::Scaled => "In the water, scaled",
    }
}

pub(in crate::words) fn water(water: Water) -> &'static str {
    match water {
        Water::Measured(_) => "Conductivity measured today",
        Water::Cycled => "Not measured: tower water taken as 1,500 µS/cm",
        Water::Mains => "Not measured: mains water taken as 300 µS/cm",
    }
}

pub(in crate::words) fn fill(fill: Fill) -> &'static str {
    match fill {
        Fill::On => "Calls for water",
        Fill::Hold => "Stays as it was",
        Fill::Off => "Satisfied",
    }
}

pub(in crate::words) fn bridge(bridge: Bridge) -> &'static str {
    match bridge {
        Bridge::LowToReference => "Film from the low electrode to the reference",
        Bridge::HighToReference => "Film from the high electrode to the reference",
        Bridge::HighToLow => "Film from the high electrode to the low one",
    }
}
