//! Spanish: the electrode level sensor.

use crate::physics::electrode::Condition;

pub(in crate::words) fn condition(condition: Condition) -> &'static str {
    match condition {
        Condition::Dry => "Fuera del agua, limpio",
        Condition::Film => "Fuera del agua, con película mojada",
        Condition::Foam => "Fuera del agua, en espuma",
        Condition::Touching => "La punta apenas toca",
        Condition::Water => "En el agua, limpio",
        Condition::Scaled => "En el agua, con sarro",
    }
}
