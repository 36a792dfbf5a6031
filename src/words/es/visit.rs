//! A visit's readings and leaving round in Spanish.

use super::physics_refused;
use crate::quantity::System;
use crate::record::{Fact, Lack, LeavingItem, Need, What};

pub(in crate::words) fn reading_name(what: What) -> &'static str {
    match what {
        What::HeadPressure => "Presión de alta",
        What::EnteringWater => "Agua que entra a los equipos",
        What::LeavingWater => "Agua que sale de los equipos",
        What::DryBulb => "Bulbo seco exterior",
        What::Humidity => "Humedad exterior",
        What::WetBulb => "Bulbo húmedo exterior, si se midió",
        What::BasinLevel => "Nivel de la pileta bajo el rebosadero",
        What::LoopVolume => "Agua en el circuito",
        What::ControlVoltage => "Voltaje en el control de nivel",
        What::WaterFlow => "Caudal de condensación, si hay medidor",
        What::Conductivity => "Conductividad del agua de la pileta",
    }
}

pub(in crate::words) fn reading_hint(what: What) -> &'static str {
    match what {
        What::HeadPressure => {
            "Ojos y guantes: el refrigerante líquido quema, la descarga está caliente."
        }
        What::EnteringWater => "La que baja de la torre, en los equipos.",
        What::LeavingWater => "La que sube a la torre.",
        What::DryBulb => "A la sombra, lejos de la descarga de la torre.",
        What::Humidity => "Junto con el bulbo seco, en el mismo lugar.",
        What::WetBulb => "Vale más que bulbo seco y humedad cuando están los dos.",
        What::BasinLevel => {
            "Cinta desde el borde del rebosadero hasta el agua. Ventilador bloqueado, cuidado con la \
             orilla y el piso mojado; no ponga la cara en el rocío."
        }
        What::ControlVoltage => {
            "Partes energizadas: solo personal calificado, medidor de la categoría debida, probado \
             antes en un punto energizado conocido."
        }
        What::WaterFlow => "Déjelo vacío para usar el caudal de diseño.",
        What::LoopVolume => "Si queda vacío: la pileta y tres minutos de caudal de diseño.",
        What::Conductivity => {
            "Una muestra sacada o la pantalla del controlador. Guantes y ojos: agua tratada."
        }
    }
}

/// What is missing of a site, in the middle of a sentence.
pub(in crate::words) fn site_fact(fact: Fact) -> &'static str {
    match fact {
        Fact::DesignFlow => "el caudal de agua de diseño",
        Fact::DesignIn => "el agua de diseño que entra a la torre",
        Fact::DesignOut => "el agua de diseño que sale de la torre",
        Fact::DesignWetBulb => "el bulbo húmedo de diseño",
        Fact::Basin => "la forma y profundidad de la pileta",
        Fact::InletLevel => "dónde toma aire la bomba",
        Fact::Refrigerant => "el refrigerante del equipo",
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
                            .trim_end_matches(", si se midió")
                            .to_ascii_lowercase(),
                    ),
                    Need::Fact(fact) => facts.push(site_fact(*fact).to_owned()),
                }
            }
            let mut parts = Vec::new();
            if !readings.is_empty() {
                parts.push(readings.join(" y "));
            }
            if !facts.is_empty() {
                parts.push(format!("del sitio, {}", facts.join(" y ")));
            }
            format!("Falta {}", parts.join("; y, "))
        }
        Lack::Physics(error) => physics_refused::error(error, system),
        Lack::NoRange => {
            "El agua que sale no está más caliente que la que entra: no se está rechazando calor."
                .to_owned()
        }
    }
}

pub(in crate::words) fn leaving_item(item: LeavingItem) -> &'static str {
    match item {
        LeavingItem::BypassShut => "El bypass de llenado está cerrado",
        LeavingItem::BypassTagged => "El bypass de llenado tiene etiqueta de cómo queda",
        LeavingItem::HandValves => "Las válvulas manuales quedan como se encontraron",
        LeavingItem::DrainShut => "El drenaje de la pileta está cerrado",
        LeavingItem::ProbeBack => "La sonda está en su lugar, la tapa seca y apretada",
        LeavingItem::CoversOn => "Tapas y guardas están puestas",
        LeavingItem::LockoutOff => "Nuestros bloqueos están retirados",
        LeavingItem::MachinesRunning => "Los equipos están restablecidos y trabajando",
        LeavingItem::AlarmsRestored => "Las alarmas están otra vez en servicio",
        LeavingItem::TreatmentTold => "Se avisó del vaciado a tratamiento de agua",
        LeavingItem::CustomerTold => "Se avisó al cliente",
    }
}
