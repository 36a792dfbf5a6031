//! Written calls walked from their first readings: the advice is followed,
//! checks answer as the call says, or else as its true cause mostly would, and
//! the walk must end at the cause, proven, in reasonable time.

use coldsump::trace::{Answer, Case, Check, Evidence, Flat, Place, Stage, Tracer};

use crate::{Call, calls};

/// What is told when the mechanic arrives, of the call's own readings.
const TOLD: usize = 2;

/// The answer a check mostly has under what is truly wrong, acting.
fn mostly(call: &Call, flat: &Flat, check: Check) -> Answer {
    let row = flat
        .checks
        .iter()
        .find(|c| c.check == check)
        .expect("a check of the plant");
    let acting = |m| {
        let place = flat.modes.iter().position(|f| f.mode == m);
        place.map_or(0, |at| row.effects[at].0)
    };
    let effect = call.truth.iter().map(|m| acting(*m)).max().unwrap_or(0);
    let low = call.evidence.iter().any(|e| e.answer == Answer::BasinLow);
    let chances = if low { &row.low } else { &row.full }[usize::from(effect)];
    let best = (0..row.answers).max_by(|a, b| chances[*a].total_cmp(&chances[*b]));
    check.answers()[best.unwrap_or(0)]
}

fn answer(call: &Call, flat: &Flat, check: Check, stage: Stage) -> Answer {
    // What comes and goes says one thing as found and another when tested.
    let told = call.evidence.iter().filter(|e| e.check == check);
    let told = told.min_by_key(|e| e.stage != stage);
    let then = call.then.get(&check).copied();
    told.map(|e| e.answer)
        .or(then)
        .unwrap_or_else(|| mostly(call, flat, check))
}

/// Minutes, checks, and what went wrong.
fn walk(call: &Call) -> (f64, usize, Option<String>) {
    let flat = Flat::of(&call.plant);
    let told = call.evidence.iter().take(TOLD);
    let told = told.filter(|e| e.stage == Stage::AsFound);
    let mut evidence: Vec<Evidence> = told.copied().collect();
    let begun = evidence.len();
    let (mut at, mut took) = (Place::MachineRoom, 0.0);
    let end = loop {
        let tracer = Tracer::new(&call.plant, &Case::of(&evidence));
        let advice = tracer.advise(at);
        if advice.settled.is_some()
            && let Some(mode) = tracer.proven()
        {
            break Some(mode);
        }
        let next = advice.best.filter(|s| s.check != Check::RefillTest);
        let Some(next) = next.filter(|_| evidence.len() < 60) else {
            break tracer.belief().suspects.first().map(|s| s.mode);
        };
        took += next.minutes + next.walk_minutes;
        at = next.check.place();
        let stage = tracer.stage(next.check);
        let answer = answer(call, &flat, next.check, stage);
        evidence.push(Evidence::said(next.check, answer, stage));
    };
    let right = end.is_some_and(|m| call.truth.contains(&m)) && took <= 240.0;
    let wrong = (!right).then(|| format!("{}: {end:?} after {took} min", call.told));
    (took, evidence.len() - begun, wrong)
}

#[test]
fn calls_are_walked_to_their_cause() {
    // All of them take long unoptimized: every third, and all where asked for.
    let step = if std::env::var_os("COLDSUMP_ALL").is_some() {
        1
    } else {
        3
    };
    let calls: Vec<Call> = calls().into_iter().step_by(step).collect();
    let ends: Vec<(f64, usize, Option<String>)> = std::thread::scope(|scope| {
        let parts = calls.chunks(calls.len().div_ceil(4));
        let works = parts.map(|part| scope.spawn(|| part.iter().map(walk).collect::<Vec<_>>()));
        let works: Vec<_> = works.collect();
        works
            .into_iter()
            .flat_map(|w| w.join().expect("a walk"))
            .collect()
    });
    let n = ends.len() as f64;
    let minutes = ends.iter().map(|e| e.0).sum::<f64>() / n;
    let checks = ends.iter().map(|e| e.1).sum::<usize>() as f64 / n;
    println!("{n} calls, {minutes:.0} min and {checks:.1} checks each");
    let wrong: Vec<&String> = ends.iter().filter_map(|e| e.2.as_ref()).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(minutes < 60.0, "{minutes}");
}
