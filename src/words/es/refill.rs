//! The refill test, in Spanish: buttons, phases, cautions.

use std::cmp::Ordering;

use crate::record::Why;
use crate::refill::{
    Caution, DrainBasis, DrawBasis, ExpectedMark, Limit, Missing, NextReading, Phase, Verdict,
};
use crate::words::Words;

pub(in crate::words) fn mark(mark: ExpectedMark) -> &'static str {
    match mark {
        ExpectedMark::DrawdownBegan => "Drenaje abierto",
        ExpectedMark::CallSeen => "Pide agua",
        ExpectedMark::DrawdownEnded => "Drenaje cerrado",
        ExpectedMark::WaterSeen => "Corre el agua",
        ExpectedMark::Level => "Leer el nivel",
        ExpectedMark::ShutOff => "Paró el llenado",
        ExpectedMark::Interrupted => "Me ausenté",
        ExpectedMark::Stopped => "Terminar la prueba",
    }
}

/// The mark in a list or on a figure.
pub(in crate::words) fn mark_short(mark: ExpectedMark) -> &'static str {
    match mark {
        ExpectedMark::DrawdownBegan => "dren. abierto",
        ExpectedMark::CallSeen => "pide",
        ExpectedMark::DrawdownEnded => "dren. cerrado",
        ExpectedMark::WaterSeen => "agua",
        ExpectedMark::Level => "nivel",
        ExpectedMark::ShutOff => "paro",
        ExpectedMark::Interrupted => "ausente",
        ExpectedMark::Stopped => "fin",
    }
}

pub(in crate::words) fn phase(phase: Phase, drain_open: bool) -> &'static str {
    match (phase, drain_open) {
        (Phase::NotBegun, _) => "Lea el nivel. Luego abra el drenaje y toque de inmediato.",
        (Phase::DrawingDown, _) => {
            "Vigile el control de nivel. Lea el nivel mientras baja. Toque cuando pida agua."
        }
        (Phase::WaitingForCall, _) => {
            "El drenaje está cerrado. Lea el nivel. Toque cuando el control pida agua."
        }
        (Phase::WaitingForWater, true) => {
            "Ya pide. Cierre el drenaje. Oiga en el llenado y toque cuando corra el agua."
        }
        (Phase::WaitingForWater, false) => {
            "Ya pide. Oiga en el llenado y toque cuando corra el agua."
        }
        (Phase::Filling, true) => "Corre el agua. Cierre el drenaje y toque.",
        (Phase::Filling, false) => {
            "Corre el agua. Lea el nivel cada pocos minutos. Toque cuando el llenado pare solo."
        }
        (Phase::FillStopped, true) => "El llenado paró. Cierre el drenaje y toque.",
        (Phase::FillStopped, false) => {
            "El llenado paró. Lea el nivel dos veces ahora, y dos más cuando haya pasado tanto tiempo \
             como tardó el llenado: debe sostenerse."
        }
        (Phase::Stopped, true) => "Prueba terminada. ¿Está cerrado el drenaje?",
        (Phase::Stopped, false) => "Prueba terminada.",
    }
}

pub(in crate::words) fn gap(why: Why, from: &str, to: &str, words: Words) -> String {
    match why {
        Why::Away => format!("De {from} a {to}: el teléfono estuvo bloqueado o aparte."),
        Why::Restarted => format!("De {from} a {to}: la app se cargó otra vez."),
        Why::ClockMoved(by) => {
            let way = if by < 0.0 { "atrasó" } else { "adelantó" };
            let by = words.test_clock(by.abs());
            format!("{to}: el reloj del teléfono se {way} {by}; el de la prueba no.")
        }
        Why::NotKnown => format!(
            "{to}: el reloj se atrasó con la app cerrada. No se sabe cuánto duró: empiece la prueba \
             otra vez."
        ),
    }
}

pub(in crate::words) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Pass => "Pasó",
        Verdict::PassWithWatch => "Pasó, pero vigílelo",
        Verdict::Fail => "Falló",
        Verdict::NotProven => "Sin comprobar",
    }
}

pub(in crate::words) fn missing(missing: Missing) -> &'static str {
    match missing {
        Missing::NoBasin => "No se conoce el tamaño de la pileta.",
        Missing::NoDrawdown => "No se anotó la apertura del drenaje.",
        Missing::NoCallSeen => "No se anotó cuándo pidió agua.",
        Missing::NoWaterSeen => "No se anotó cuándo corrió el agua.",
        Missing::NoShutOff => "No se anotó cuándo paró el llenado.",
        Missing::NeedTwoLevels => "Hacen falta dos lecturas de nivel, bajo el rebosadero.",
        Missing::NeedLongerApart => "Las lecturas están muy juntas en el tiempo.",
        Missing::NeedLevelNear => "Ninguna lectura de nivel está bastante cerca en el tiempo.",
        Missing::OutOfOrder => "Las marcas no están en orden para este tiempo.",
        Missing::NotWatched => "Nadie estaba mirando a esa hora.",
    }
}

pub(in crate::words) fn next(next: NextReading) -> &'static str {
    match next {
        NextReading::Begin => "Lea el nivel, luego abra el drenaje.",
        NextReading::DrawFarther => "Baje la pileta más allá del nivel de llamada y lea el nivel.",
        NextReading::WaitForWater => "Espere tres minutos desde que pide agua.",
        NextReading::NoteWater => "Anote cuándo corrió el agua en el llenado.",
        NextReading::NoteDrainClosed => "Anote cuándo se cerró el drenaje.",
        NextReading::LevelNow => "Lea el nivel ahora.",
        NextReading::LevelLater => "Lea el nivel otra vez en unos minutos.",
        NextReading::WaitForShutOff => "Espere a que el llenado pare solo.",
        NextReading::LevelAtShutOff => "Lea el nivel ahora que paró el llenado.",
        NextReading::LevelAfterShutOff => {
            "Lea el nivel dos veces cuando haya pasado desde el paro tanto tiempo como tardó el \
             llenado: debe sostenerse."
        }
        NextReading::BasinSize => "Mida la pileta: largo, ancho, profundidad bajo el rebosadero.",
        NextReading::MakeupNeed => "Calcule cuánta reposición necesita la planta hoy.",
        NextReading::RunAgain => "Haga la prueba una vez más.",
    }
}

pub(in crate::words) fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::PumpInlet => {
            "Todos los equipos de este circuito se quedan sin agua si la pileta baja más que la \
             succión de la bomba. Avise primero al sitio y vigile el nivel."
        }
        Caution::Aerosol => {
            "El agua de torre puede llevar Legionella. No se ponga en la brisa ni la salpicadura; use \
             lo que pida el plan de agua del sitio."
        }
        Caution::Discharge => {
            "El agua tratada no puede irse por cualquier drenaje. Pida antes permiso al sitio."
        }
        Caution::Lockout => {
            "Bloquee y etiquete ventilador y bomba antes de meter la mano en la pileta. Nadie entra \
             sin las reglas de espacio confinado del sitio."
        }
        Caution::LivePower => {
            "Cableado de control energizado y agua: abra tableros solo con licencia, según el código \
             local."
        }
        Caution::Footing => {
            "Azotea y escalera mojadas. Use la protección contra caídas que el sitio pide."
        }
    }
}

pub(in crate::words) fn limit(limit: Limit) -> &'static str {
    match limit {
        Limit::Overflow => "Rebosadero",
        Limit::Stop => "Nivel de paro",
        Limit::Call => "Nivel de llamada",
        Limit::LowLimit => "Límite de succión",
    }
}

pub(in crate::words) fn basis(basis: DrawBasis) -> &'static str {
    match basis {
        DrawBasis::PastCallLevel => "Una pulgada bajo el nivel de llamada.",
        DrawBasis::LowLimitFirst => {
            "Pare aquí: el límite de succión llega antes de que el control pida con seguridad."
        }
        DrawBasis::LowLimit => {
            "No se conoce el nivel de llamada: hasta el límite de succión, no más."
        }
        DrawBasis::HalfDepth => {
            "No se conoce el nivel de llamada: la mitad de la profundidad. Vea antes dónde está la \
             succión de la bomba."
        }
    }
}

pub(in crate::words) fn taken_back(mark: &str) -> String {
    format!("Quitada: {mark}")
}

pub(in crate::words) fn mark_moved(clock: &str, step: &str) -> String {
    format!("tocada {clock}, movida {step}")
}

pub(in crate::words) fn typed(typed: &str) -> String {
    format!("escrito {typed}")
}

pub(in crate::words) fn wall_mark(shows: f64) -> String {
    format!("marca {shows:.1}")
}

pub(in crate::words) fn fill_takes(least: &str, most: &str) -> String {
    format!("De {least} a {most} para el llenado.")
}

pub(in crate::words) fn draw_takes(least: &str, most: &str, basis: DrainBasis) -> String {
    match basis {
        DrainBasis::Earlier => format!("{least} a {most}, como en la prueba anterior aquí."),
        DrainBasis::Bore => {
            format!("{least} a {most} por un drenaje de este diámetro, abierto del todo.")
        }
        DrainBasis::Usual => format!(
            "{least} a {most}: no se conoce el drenaje, se toma de 1 a 2\u{a0}in. Escriba abajo su diámetro."
        ),
    }
}

pub(in crate::words) fn watch_after(share: &str) -> String {
    format!(
        "Después del paro: dos lecturas en seguida y dos más tras {share} veces lo que tardó el \
         llenado. Así se ve una válvula que deja pasar un décimo de él."
    )
}

pub(in crate::words) fn fill_at_most(most: &str) -> String {
    format!("Un llenado de hasta {most} aún cubre lo que hace falta y un cuarto más.")
}

pub(in crate::words) fn minutes_to_limit(left: &str) -> String {
    format!("Succión de la bomba. Si no llega agua, las pérdidas tardan {left} en llegar ahí.")
}

pub(in crate::words) fn start_in(time: &str) -> String {
    format!("en {time}")
}

pub(in crate::words) fn start_now() -> &'static str {
    "ahora"
}

pub(in crate::words) fn machine_started(machine: &str) -> String {
    format!("{machine} arrancado")
}

pub(in crate::words) fn settles_at(temperature: &str) -> String {
    format!(
        "Con los equipos anotados como andando se asienta cerca de {temperature}. Línea: lo esperado, \
         dentro del 30% de lo que falta."
    )
}

pub(in crate::words) fn older_marks(count: usize) -> String {
    format!("{count} anteriores")
}

pub(in crate::words) fn head_foreseen(machine: &str) -> String {
    format!(
        "Alta de {machine}. Línea: la de un condensador sano con el agua esperada, más o menos 5\u{a0}°F \
         (3\u{a0}K) de aproximación. Muy por encima: sarro, aire adentro o poca agua."
    )
}

pub(in crate::words) fn foreseen(low: &str, high: &str, side: Ordering) -> String {
    match side {
        Ordering::Less => format!("menos de lo esperado, {low} a {high}"),
        Ordering::Equal => format!("se esperaba {low} a {high}"),
        Ordering::Greater => format!("más de lo esperado, {low} a {high}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_buttons_say_the_same() {
        use ExpectedMark::*;
        let all = [
            DrawdownBegan,
            CallSeen,
            DrawdownEnded,
            WaterSeen,
            Level,
            ShutOff,
            Interrupted,
            Stopped,
        ];
        let labels: std::collections::BTreeSet<_> = all.into_iter().map(mark).collect();
        assert_eq!(labels.len(), all.len());
        assert!(
            labels.iter().all(|l| l.chars().count() <= 20),
            "a button is read at arm's length"
        );
    }
}
