//! English: the electrode level sensor.

use crate::physics::electrode::Condition;

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
