//! Words of the water's chemistry, in Spanish.

use crate::physics::chemistry::Band;
use crate::physics::chemistry::cycles::Cause;
use crate::physics::chemistry::guideline::Item;

pub(in crate::words) fn band(band: Band) -> &'static str {
    match band {
        Band::Scaling => "Tiende a incrustar",
        Band::Balanced => "Equilibrada",
        Band::Corrosive => "Tiende a corroer",
    }
}

pub(in crate::words) fn item(item: Item) -> &'static str {
    match item {
        Item::Ph => "pH",
        Item::Langelier => "Índice de Langelier",
        Item::Alkalinity => "Alcalinidad como CaCO3",
        Item::Calcium => "Calcio como CaCO3",
        Item::Chloride => "Cloruro",
        Item::Conductivity => "Conductividad",
    }
}

pub(in crate::words) fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::BlockedBleed => {
            "Purga cerrada o tapada. Vea su colador, su solenoide y el ajuste del controlador."
        }
        Cause::ShutMakeup => {
            "No llega reposición y la pileta se concentra al bajar. Vea el nivel y la válvula de \
             llenado."
        }
        Cause::FoamFromOverCycling => {
            "El agua con demasiados ciclos hace espuma, y la espuma en la sonda se lee como lleno. \
             Busque espuma; pregunte al tratador de agua antes de dosificar nada."
        }
        Cause::Overflow => "El agua se va por el borde. Vea el rebosadero y dónde para el llenado.",
        Cause::Leak => "Una fuga en pileta, tubos o un serpentín. Busque piso mojado y manchas.",
        Cause::BypassLeftOpen => {
            "Quedó abierto un bypass de llenado o una manguera. Siga cada línea que entra a la \
             pileta."
        }
        Cause::BleedHangsOpen => {
            "La purga se queda abierta. Oiga en su válvula cuando nadie la pida."
        }
    }
}
