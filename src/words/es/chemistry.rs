//! Words of the water's chemistry, in Spanish.

use crate::physics::chemistry::cycles::{Against, Cause, Size};
use crate::physics::chemistry::guideline::{Basis, Finding, Item};
use crate::physics::chemistry::{Band, SkinBasis};
use crate::quantity::{Kind, System, Value, show};

pub(in crate::words) fn band(band: Band) -> &'static str {
    match band {
        Band::Scaling => "Tiende a incrustar",
        Band::Balanced => "Equilibrada",
        Band::Corrosive => "Tiende a corroer",
    }
}

pub(in crate::words) fn skin(basis: SkinBasis) -> &'static str {
    match basis {
        SkinBasis::Condensing => {
            "Tomado a la temperatura de condensación, casi la pared más caliente que toca el agua."
        }
        SkinBasis::LeavingWater => {
            "Tomado con el agua que sale del condensador. La pared está más caliente: incrusta antes \
             de lo que esto dice. Lea la presión de alta para afinarlo."
        }
    }
}

pub(in crate::words) fn item(item: Item) -> &'static str {
    match item {
        Item::Ph => "pH",
        Item::Temperature => "Temperatura del agua",
        Item::Langelier => "Índice de Langelier",
        Item::Alkalinity => "Alcalinidad como CaCO3",
        Item::Calcium => "Calcio como CaCO3",
        Item::Silica => "Sílice",
        Item::Iron => "Hierro",
        Item::Manganese => "Manganeso",
        Item::Chloride => "Cloruro",
        Item::Sulfate => "Sulfato",
        Item::Nitrate => "Nitrato",
        Item::DissolvedSolids => "Sólidos disueltos",
        Item::Conductivity => "Conductividad",
        Item::FreeChlorine => "Cloro libre",
    }
}

pub(in crate::words) fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::MakersSheet => "Hoja de un fabricante de torres galvanizadas.",
        Basis::Galvanizers => "Una asociación de galvanizadores, contra el óxido blanco.",
        Basis::Memory => "De memoria, sin fuente.",
    }
}

pub(in crate::words) fn finding(finding: &Finding, system: System) -> String {
    let said = |si: f64| {
        let kind = finding.item.kind();
        let shown = show(Value { kind, si }, system);
        // "pH 8.6 pH" says it twice.
        match kind {
            Kind::Ph => shown.number,
            _ => shown.to_string(),
        }
    };
    let side = if finding.above {
        "por encima de"
    } else {
        "por debajo de"
    };
    format!(
        "{} {} está {side} {}. {} Mandan los límites de su tratador de agua.",
        item(finding.item),
        said(finding.value),
        said(finding.limit),
        basis(finding.basis)
    )
}

pub(in crate::words) fn against(against: Against) -> &'static str {
    match against {
        Against::SetPoint => "contra el punto de ajuste",
        Against::LastVisit => "contra la última visita",
    }
}

pub(in crate::words) fn size(size: Size) -> &'static str {
    match size {
        Size::None => "Sin cambio mayor que lo que difieren dos medidores",
        Size::Slight => "Un cambio leve",
        Size::Marked => "Un cambio marcado",
        Size::Large => "Un cambio grande",
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
