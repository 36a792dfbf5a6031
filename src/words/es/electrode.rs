//! Spanish: the electrode level sensor.

use crate::physics::electrode::{Bridge, Condition, Fill, Water};

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

pub(in crate::words) fn water(water: Water) -> &'static str {
    match water {
        Water::Measured(_) => "Conductividad medida hoy",
        Water::Cycled => "Sin medir: agua de torre tomada como 1,500 µS/cm",
        Water::Mains => "Sin medir: agua de la red tomada como 300 µS/cm",
    }
}

pub(in crate::words) fn fill(fill: Fill) -> &'static str {
    match fill {
        Fill::On => "Pide agua",
        Fill::Hold => "Se queda como estaba",
        Fill::Off => "Satisfecho",
    }
}

pub(in crate::words) fn bridge(bridge: Bridge) -> &'static str {
    match bridge {
        Bridge::LowToReference => "Película del electrodo bajo a la referencia",
        Bridge::HighToReference => "Película del electrodo alto a la referencia",
        Bridge::HighToLow => "Película del electrodo alto al bajo",
    }
}
