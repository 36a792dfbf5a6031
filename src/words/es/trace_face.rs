//! Spanish: stages and weights on the trace's screens.

use crate::trace::Stage;

pub(in crate::words) fn stage_line(stage: Stage) -> &'static str {
    match stage {
        Stage::AsFound => "Nadie ha tocado nada todavía.",
        Stage::WaterLetIn => "Se metió agua, por bypass o manguera; no se tocó nada más.",
        Stage::Testing => {
            "Se levantó una sonda, se movió una válvula, se cortó la energía: hubo manos en ello."
        }
        Stage::Corrected => "Algo se corrigió; de aquí en adelante se trata de lo que queda.",
    }
}

/// Odds changed by a power of ten, as times.
pub(in crate::words) fn weighs(log10_odds: f64) -> String {
    let times = 10f64.powf(log10_odds.abs());
    let times = match times {
        t if t > 100.0 => "más de 100".to_owned(),
        t if t < 1.95 => format!("{t:.1}"),
        t => format!("{t:.0}"),
    };
    let side = if log10_odds > 0.0 {
        "más probable"
    } else {
        "menos probable"
    };
    format!("{times} veces {side}")
}

pub(in crate::words) fn counts_as(stage: &str) -> String {
    format!("Cuenta como: {stage}")
}

pub(in crate::words) fn turn(check: &str, answer: &str, percent: &str) -> String {
    format!("{check}: {answer} la llevaría a {percent}.")
}

pub(in crate::words) fn odd(said: &str) -> String {
    format!("{said}. No cuadra con nada más: tómela otra vez.")
}

pub(in crate::words) fn contradicted(said: &str) -> String {
    format!("No cuadra: {said}.")
}

/// Causes that nothing at hand tells apart, likeliest first.
pub(in crate::words) fn one_of(names: &str) -> String {
    format!(
        "Una de estas, y aquí no queda revisión que las distinga: {names}. Corrija la más probable y vea; si la queja sigue, tome la siguiente."
    )
}

/// The likeliest cause, not proven.
pub(in crate::words) fn likeliest(name: &str, percent: &str) -> String {
    format!(
        "Sin comprobar, y no queda revisión que diga más. La más probable: {name}, {percent}. Corríjala y vea."
    )
}

/// Causes as one answer.
pub(in crate::words) fn either(names: &str) -> String {
    format!("Una de: {names}")
}

pub(in crate::words) fn work(names: &str) -> String {
    format!("Corregido: {names}.")
}

pub(in crate::words) fn not_taken(done: &str, percent: &str) -> String {
    format!("{done} Probabilidad de que no haya quedado: {percent}.")
}

pub(in crate::words) fn remains(done: &str, mode: &str, percent: &str) -> String {
    format!("{done} De lo que queda, lo más probable: {mode}, {percent}.")
}

pub(in crate::words) fn repair(place: &str, minutes: f64) -> String {
    format!("{place} · cerca de {minutes:.0} min con las refacciones a la mano")
}

pub(in crate::words) fn clamp_at(meter: &str, point: &str) -> String {
    format!("{meter}: alrededor del cable de {point}")
}

pub(in crate::words) fn place_count(place: &str, done: usize, all: usize) -> String {
    format!("{place} · {done} de {all} hechas")
}

pub(in crate::words) fn drawing(suspects: &str, cleared: &str) -> String {
    format!("La planta. Bajo sospecha: {suspects}. Descartado: {cleared}.")
}
