//! English: stages and weights on the trace's screens.

use crate::trace::Stage;

pub(in crate::words) fn stage_line(stage: Stage) -> &'static str {
    match stage {
        Stage::AsFound => "Nobody has touched anything yet.",
        Stage::WaterLetIn => "Water was let in, by bypass or hose; nothing else was touched.",
        Stage::Testing => "A probe lifted, a valve worked, power cycled: hands were on it.",
        Stage::Corrected => "Something was put right; from here on it is about what remains.",
    }
}

/// Odds changed by a power of ten, as times.
pub(in crate::words) fn weighs(log10_odds: f64) -> String {
    let times = 10f64.powf(log10_odds.abs());
    let times = match times {
        t if t > 100.0 => "over 100".to_owned(),
        t if t < 1.95 => format!("{t:.1}"),
        t => format!("{t:.0}"),
    };
    let side = if log10_odds > 0.0 {
        "likelier"
    } else {
        "less likely"
    };
    format!("{times} times {side}")
}

pub(in crate::words) fn counts_as(stage: &str) -> String {
    format!("Counts as: {stage}")
}

pub(in crate::words) fn turn(check: &str, answer: &str, percent: &str) -> String {
    format!("{check}: {answer} would bring it to {percent}.")
}

pub(in crate::words) fn odd(said: &str) -> String {
    format!("{said}. It fits nothing else: take it again.")
}

pub(in crate::words) fn contradicted(said: &str) -> String {
    format!("Doesn't fit: {said}.")
}

/// Several causes that nothing at hand tells apart, the likeliest first.
pub(in crate::words) fn one_of(names: &str) -> String {
    format!(
        "One of these, and no check left here tells them apart: {names}. Put the likeliest right and see; if the complaint stays, take the next."
    )
}

/// A likeliest cause that is not proven.
pub(in crate::words) fn likeliest(name: &str, percent: &str) -> String {
    format!(
        "Not proven, and no check left would tell more. Likeliest: {name}, {percent}. Put it right and see."
    )
}

/// Causes as one answer.
pub(in crate::words) fn either(names: &str) -> String {
    format!("One of: {names}")
}

pub(in crate::words) fn work(names: &str) -> String {
    format!("Put right: {names}.")
}

pub(in crate::words) fn not_taken(done: &str, percent: &str) -> String {
    format!("{done} Chance that it did not take: {percent}.")
}

pub(in crate::words) fn remains(done: &str, mode: &str, percent: &str) -> String {
    format!("{done} Likeliest of what remains: {mode}, {percent}.")
}

pub(in crate::words) fn repair(place: &str, minutes: f64) -> String {
    format!("{place} · about {minutes:.0} min with the parts on hand")
}

pub(in crate::words) fn clamp_at(meter: &str, point: &str) -> String {
    format!("{meter}: round the wire from {point}")
}

pub(in crate::words) fn place_count(place: &str, done: usize, all: usize) -> String {
    format!("{place} · {done} of {all} done")
}

pub(in crate::words) fn drawing(suspects: &str, cleared: &str) -> String {
    format!("The plant. Under suspicion: {suspects}. Cleared: {cleared}.")
}
