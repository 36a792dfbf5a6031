//! The face's sentences that carry numbers or names, in Spanish.

use uom::si::ratio::ratio;

use super::app::phrase;
use super::{refill, trace_modes};
use crate::physics::water::{Evaporation, EvaporationMethod, EvaporationWarning};
use crate::quantity::{System, Value, show};
use crate::record::{ACCEPTED, Figures, Fouling, Way};
use crate::refill::Verdict;
use crate::trace::{Branch, Suspect};
use crate::words::Phrase;

pub(in crate::words) fn kept_at(clock: &str) -> String {
    format!("Guardado {clock}")
}

pub(in crate::words) fn machines(n: usize) -> String {
    format!("{n} equipo{}", if n == 1 { "" } else { "s" })
}

pub(in crate::words) fn last_time(days: i64) -> String {
    match days {
        0 => "La última vez, hoy".to_owned(),
        1 => "La última vez, ayer".to_owned(),
        n => format!("La última vez, hace {n} días"),
    }
}

pub(in crate::words) fn about_days(days: f64) -> String {
    match days {
        d if d < 21.0 => format!("cerca de {d:.0} días"),
        d if d < 120.0 => format!("cerca de {:.0} semanas", d / 7.0),
        d => format!("cerca de {:.0} meses", d / 30.44),
    }
}

pub(in crate::words) fn cleaning_interval(f: &Fouling) -> String {
    let (short, _, long) = f.clean_after_days;
    let (low, middle, high) = f.per_year;
    format!(
        "Limpie la sonda tras este tiempo y la probabilidad de que se ensucie antes es de {:.0}%. \
         {} ensuciada{} en {:.1} años vigilados: {middle:.1} al año, con 90% entre {low:.1} y \
         {high:.1}; el intervalo queda entonces entre {} y {}.",
        100.0 * ACCEPTED,
        f.fouls,
        if f.fouls == 1 { "" } else { "s" },
        f.years,
        about_days(short),
        about_days(long),
    )
}

pub(in crate::words) fn machine_numbered(n: usize) -> String {
    format!("Equipo {n}")
}

pub(in crate::words) fn reports_can_go(n: usize) -> String {
    match n {
        1 => "Hay señal. Un informe puede salir.".to_owned(),
        n => format!("Hay señal. Pueden salir {n} informes."),
    }
}

pub(in crate::words) fn unreadable(n: usize) -> String {
    format!(
        "{n} entradas en este teléfono las escribió una versión más nueva. Están guardadas, y se \
         verán otra vez al actualizar."
    )
}

pub(in crate::words) fn quoted(text: &str) -> String {
    format!("“{text}”")
}

pub(in crate::words) fn continue_with(station: Phrase) -> String {
    format!("Seguir: {}", phrase(station))
}

pub(in crate::words) fn found_summary(readings: usize, out: usize) -> String {
    if (readings, out) == (0, 0) {
        return "Lecturas antes de tocar nada".to_owned();
    }
    let s = if readings == 1 { "" } else { "s" };
    format!("{readings} lectura{s}, {} fuera por alta", machines(out))
}

pub(in crate::words) fn numbers_summary(figures: &Figures, system: System) -> String {
    match (&figures.approach, &figures.range) {
        (Ok(approach), Ok(range)) => format!(
            "Aproximación {}, rango {}",
            show(Value::temperature_difference(*approach), system),
            show(Value::temperature_difference(*range), system)
        ),
        _ => "Lo que dicen las lecturas".to_owned(),
    }
}

pub(in crate::words) fn suspect_summary(branch: Branch, part: f64, first: &Suspect) -> String {
    format!(
        "{}, {}. Ahí lo más probable: {}, {}. Aún sin comprobar",
        trace_modes::branch(branch),
        percent(part),
        trace_modes::name(first.mode),
        percent(first.probability)
    )
}

pub(in crate::words) fn percent(p: f64) -> String {
    match p {
        p if p < 0.01 => "menos\u{a0}de\u{a0}1%".to_owned(),
        p if p > 0.99 => "más\u{a0}de\u{a0}99%".to_owned(),
        p => format!("{:.0}%", 100.0 * p),
    }
}

pub(in crate::words) fn leaving_summary(done: usize, all: usize) -> String {
    format!("Ronda de salida {done} de {all}")
}

pub(in crate::words) fn report_made_at(clock: &str) -> String {
    format!("Hecho {clock}")
}

pub(in crate::words) fn report_waits(date: &str, clock: &str) -> String {
    format!("Hecho {date} {clock}. Espera que se mande.")
}

pub(in crate::words) fn handed_over(way: Way, clock: &str) -> String {
    match way {
        Way::Shared => format!("Entregado al menú de compartir {clock}. ¿Se recibió?"),
        Way::Mailed => format!("Borrador de correo abierto {clock}. ¿Se mandó?"),
        Way::MailFile => {
            format!("Guardado como archivo de correo {clock}. ¿Se mandó desde ahí?")
        }
        Way::Saved => format!("Guardado en este teléfono {clock}. Esta app no lo mandó."),
    }
}

pub(in crate::words) fn minutes_at(minutes: f64, walk: f64, place: &str) -> String {
    match walk >= 0.5 {
        true => format!("{place} · {minutes:.0}\u{a0}min, {walk:.0}\u{a0}min\u{a0}a\u{a0}pie"),
        false => format!("{place} · {minutes:.0}\u{a0}min"),
    }
}

pub(in crate::words) fn expected_today(approach: &str) -> String {
    format!("Esta torre, como de diseño, daría hoy {approach}.")
}

pub(in crate::words) fn at_design_load(amount: &str) -> String {
    format!("A carga de diseño: {amount}.")
}

pub(in crate::words) fn evaporation_note(evaporation: &Evaporation, rule: &str) -> String {
    let how = match evaporation.method() {
        EvaporationMethod::Poppe => "Por balance de calor y masa por el relleno.",
        EvaporationMethod::Balance => "Por balance de masa.",
        EvaporationMethod::FieldRule => {
            return "Por la regla de campo: no se leyó el aire exterior.".to_owned();
        }
    };
    match evaporation.warning() {
        None => format!("{how} La regla de campo dice {rule}."),
        Some(EvaporationWarning::RuleParts(part)) => {
            let percent = 100.0 * part.get::<ratio>();
            let side = if percent > 0.0 { "de más" } else { "de menos" };
            let percent = percent.abs();
            format!("{how} La regla de campo dice {rule}, {percent:.0}% {side} hoy.")
        }
    }
}

pub(in crate::words) fn over_leaving_water(difference: &str) -> String {
    format!("{difference} sobre el agua que sale.")
}

pub(in crate::words) fn from_cut_out(margin: &str, below: bool) -> String {
    match below {
        true => format!("{margin} por debajo del corte de la placa."),
        false => format!("{margin} por encima del corte de la placa."),
    }
}

/// `share`: of what was seen, how much comes and goes.
pub(in crate::words) fn manner_split(share: f64) -> &'static str {
    match share {
        share if share > 0.75 => "Va y viene, por lo que se vio",
        share if share < 0.25 => "Constante, por lo que se vio",
        _ => "Constante, o va y viene: aún no se distingue",
    }
}

pub(in crate::words) fn left_out_reading() -> &'static str {
    "fuera del ajuste"
}

pub(in crate::words) fn chart_summary(verdict: Verdict, readings: usize) -> String {
    let s = if readings == 1 { "" } else { "s" };
    format!(
        "{readings} lectura{s} de nivel, veredicto: {}",
        refill::verdict(verdict)
    )
}

pub(in crate::words) fn losses_while_testing(losses: &str) -> String {
    format!("Se toma como perdido mientras llena: {losses}, por los equipos anotados como andando.")
}

pub(in crate::words) fn minutes_if_drain_shut(time: &str) -> String {
    format!("Sin el drenaje, las pérdidas solas tardan {time}.")
}

pub(in crate::words) fn clock_moved(moved: &str, back: bool) -> String {
    let way = if back { "atrasó" } else { "adelantó" };
    format!("El reloj del teléfono se {way} {moved} durante esta prueba. El de la prueba no.")
}
