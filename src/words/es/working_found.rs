//! What workings find, in Spanish: figures, sayings, what is missing.

use crate::physics::basis::Figure;
use crate::physics::chemistry::Index;
use crate::physics::piping::ServoOpening;
use crate::quantity::System;
use crate::working::{Fault, Say};

use super::working::ask;
use super::{physics_chemistry, physics_circuit, physics_electrode, physics_head};

/// What is said, and a line more about it.
pub(in crate::words) fn say(say: Say) -> (&'static str, &'static str) {
    use super::circuit;
    match say {
        Say::Caution(caution) => (circuit::caution(caution), ""),
        Say::Meaning(meaning) => (circuit::meaning(meaning), ""),
        Say::Wrong(fault) => (circuit::fault(fault), circuit::fault_line(fault)),
        Say::LoadIt => (
            "Léalo otra vez con baja impedancia, mismas puntas: eso separa lo que queda.",
            "",
        ),
        Say::Electrode(condition, wet, fooled) => (
            super::electrode::condition(condition),
            match (wet, fooled) {
                (true, true) => "Lee mojado: engaña al relevador, y no llena.",
                (false, true) => "Lee seco: engaña al relevador, y llena de más.",
                (true, false) => "Lee mojado, como debe.",
                (false, false) => "Lee seco, como debe.",
            },
        ),
        Say::Shape(shape) => (
            super::physics_tower::shape(shape),
            super::physics_tower::shape_line(shape),
        ),
        Say::Settle(settle) => (super::physics_tower::settle(settle), ""),
        Say::RuleParts(part) if part > 0.0 => {
            ("La regla de campo lee de más en este aire, por", "")
        }
        Say::RuleParts(_) => ("La regla de campo lee de menos en este aire, por", ""),
        Say::Treatment => (
            "Químicos y biocidas son del tratador de agua: lentes y guantes, y avísele antes de \
             dosificar o drenar nada.",
            "",
        ),
        Say::Band(index, band) => (
            super::chemistry::band(band),
            match index {
                Index::Langelier => "Según el índice de Langelier.",
                Index::Ryznar => "Según el índice de Ryznar.",
                Index::Puckorius => "Según el índice de Puckorius.",
            },
        ),
        Say::Refrigerant => (
            "Ojos y guantes: el refrigerante líquido quema, la descarga está caliente. Solo técnico \
             certificado, según la ley local.",
            "",
        ),
        Say::Roof => (
            "Orilla de azotea y piso mojado: protección contra caídas como pide el sitio. Ventilador \
             bloqueado y etiquetado antes de meter la mano; no se ponga en la brisa, puede llevar \
             Legionella.",
            "",
        ),
        Say::Drawdown => (
            "Primero bloquee y etiquete ventilador y bomba. Una pileta puede ser espacio confinado. \
             El agua tratada no puede irse por cualquier drenaje: pida permiso, y avise al tratador \
             de agua.",
            "",
        ),
        Say::Limit(item, true) => (
            super::chemistry::item(item),
            "Por encima de este límite de un fabricante de torres galvanizadas. Mandan los de su tratador.",
        ),
        Say::Limit(item, false) => (
            super::chemistry::item(item),
            "Por debajo de este límite de un fabricante de torres galvanizadas. Mandan los de su tratador.",
        ),
        Say::Cycles(cause) => (super::chemistry::cause(cause), ""),
        Say::Servo(opening) => (
            match opening {
                ServoOpening::StaysShut => {
                    "Muy poca presión para una válvula servoasistida: se queda cerrada."
                }
                ServoOpening::Doubtful => {
                    "Una válvula servoasistida puede no abrir del todo con esta presión."
                }
                ServoOpening::Opens => "Presión suficiente para que abra una servoasistida.",
            },
            "",
        ),
        Say::Choked => (
            "La válvula se ahoga: menos presión después de ella no trae más.",
            "Hace ruido, y gasta el asiento.",
        ),
        Say::InletDrawsAir => (
            "Muy poca agua sobre la succión: la bomba puede tomar aire.",
            "",
        ),
        Say::InletHolds => ("Bastante agua sobre la succión con este caudal.", ""),
        Say::TripsAtThatFlow => ("Pasa del corte: se dispara con tan poca agua.", ""),
        Say::Starting => (
            "Antes de arrancar: nadie junto a ventilador, bomba o equipo, guardas puestas, cada bloqueo \
             y etiqueta retirado por quien lo puso. Restablezca un corte una sola vez; si se dispara \
             otra vez, busque la causa.",
            "",
        ),
        Say::OverflowHolds => (
            "El rebosadero sostiene este caudal por debajo de la orilla.",
            "",
        ),
        Say::OverflowFails => (
            "El rebosadero no puede con este caudal: la pileta se derrama.",
            "",
        ),
        Say::SafeFrom => ("Un ajuste que aguanta: desde", ""),
        Say::SafeTo => ("hasta", ""),
    }
}

/// The name of a figure, as it stands over its number.
pub(in crate::words) fn figure(figure: Figure) -> &'static str {
    match figure {
        Figure::AtmosphericPressure => "Presión atmosférica",
        Figure::WetBulb => "Bulbo húmedo",
        Figure::RelativeHumidity => "Humedad relativa",
        Figure::Approach => "Aproximación",
        Figure::Range => "Rango",
        Figure::Effectiveness => "Efectividad",
        Figure::MerkelNumber => "KaV/L",
        Figure::LeavingWater => "Agua que sale de la torre, esperada",
        Figure::HeatRejected => "Calor rechazado",
        Figure::TowerTons => "Toneladas de torre",
        Figure::Evaporation => "Evaporación",
        Figure::EvaporationRule => "Evaporación por la regla de campo",
        Figure::Drift => "Arrastre",
        Figure::Blowdown => "Purga",
        Figure::Makeup => "Reposición necesaria",
        Figure::Cycles => "Ciclos de concentración",
        Figure::MinutesToDry => "Hasta que la pileta quede seca",
        Figure::WarmUp => "Cada minuto se calienta",
        Figure::CondensingTemperature => "Temperatura de condensación",
        Figure::DewPoint => "Punto de rocío",
        Figure::HumidityRatio => "Relación de humedad",
        Figure::Enthalpy => "Entalpía",
        Figure::AirDensity => "Densidad del aire seco",
        Figure::EnteringWater => "Agua que entra a la torre, esperada",
        Figure::OverExpected => "Más caliente de lo esperado por",
        Figure::BasinVolume => "Agua que hay ahora",
        Figure::BasinWhenFull => "Llena hasta el rebosadero",
        Figure::MinutesToLevel => "Hasta ese nivel",
        Figure::MinutesToReach => "Hasta esa temperatura",
        Figure::OverLeavingWater => "Sobre el agua que sale",
        Figure::BelowCutOut => "Margen hasta el corte",
        Figure::TripsAt => "Se dispara al condensar a",
        Figure::WarmerToTrip => "Margen en temperatura",
        Figure::BubblePoint => "Punto de burbuja",
        Figure::PipeDrop => "Se pierde en tubo y conexiones",
        Figure::StrainerDrop => "Se pierde en el colador",
        Figure::OverflowCapacity => "Lleva con el agua en la orilla",
        Figure::WaterPerDay => "Agua en un día",
        Figure::RestartWait => "Espera antes del primero",
        Figure::RestartHottest => "Agua de entrada más caliente",
        Figure::DewPointOfRefrigerant => "Punto de rocío del refrigerante",
        Figure::Circuit(figure) => physics_circuit::name(figure),
        Figure::Chemistry(figure) => physics_chemistry::name(figure),
        Figure::Head(figure) => physics_head::name(figure),
        Figure::Electrode(figure) => physics_electrode::name(figure),
        Figure::Tower(figure) => super::physics_tower::name(figure),
        Figure::Piping(figure) => super::physics_piping::name(figure),
        Figure::LoopHeat(figure) => super::physics_loop_heat::name(figure),
    }
}

pub(in crate::words) fn fault(fault: &Fault, system: System) -> String {
    match fault {
        Fault::Missing(asks) => {
            let names: Vec<_> = asks.iter().map(ask).collect();
            format!("Falta: {}.", names.join("; "))
        }
        Fault::Physics(error) => super::physics_refused::error(error, system),
        Fault::NoSafeSetting => "Ningún ajuste aguanta: primero limpie los electrodos.".to_owned(),
        Fault::Order(above, below) => {
            format!("{} debe ser más que {}.", ask(*above), ask(*below))
        }
    }
}
