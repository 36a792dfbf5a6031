//! `./dev bench trace [N]`: calls drawn from the trace's model, walked by its
//! planner and by others, and the best there is on a small plant. Seeds are
//! fixed: the same tables every time.

mod chance;
mod planner;
mod reduced;
mod same;
mod scene;
mod tally;

use coldsump::trace::{Case, Evidence, Flat, Mode, Place, Plant, Tracer};

use chance::Chance;
use planner::Planner;
use scene::{Scene, perturbed};
use tally::{Tally, Walk};

/// A walk is given up after this many checks.
const MOST: usize = 70;
/// Perturbed models, each with its own part of the calls.
const PERTURBED: u64 = 10;

/// Walks a call to a proven cause, or until the planner has nothing left.
fn walk(plant: &Plant, scene: &mut Scene, planner: Planner) -> Walk {
    let mut evidence: Vec<Evidence> = Vec::new();
    let (mut at, mut minutes) = (Place::MachineRoom, 0.0);
    loop {
        let tracer = Tracer::new(plant, &Case::of(&evidence));
        let proven = tracer.proven();
        let next = match proven {
            None if evidence.len() < MOST => planner.next(&tracer, at),
            _ => None,
        };
        let Some(check) = next else {
            return Walk {
                minutes,
                checks: evidence.len(),
                named: tracer.belief().suspects.first().map(|s| s.mode),
                proven: proven.is_some(),
            };
        };
        minutes += tracer.minutes(check) + at.walk_minutes(check.place());
        at = check.place();
        let stage = tracer.stage(check);
        evidence.push(Evidence::said(check, scene.answer(check, stage), stage));
    }
}

/// How an ended walk compares with what is truly wrong.
fn right(flat: &Flat, scene: &Scene, walk: &Walk) -> bool {
    let is = |m: Mode| scene.truth.iter().any(|(at, _)| flat.modes[*at].mode == m);
    walk.named.is_some_and(is)
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let plant = Plant::default();
    match words.first().map(String::as_str) {
        Some("same") => return same::sets(&words[1]),
        Some("pace") => return same::pace(&plant),
        _ => {}
    }
    let n: u64 = words.first().and_then(|a| a.parse().ok()).unwrap_or(200);
    let flat = Flat::of(&plant);
    let off: Vec<Flat> = (0..PERTURBED)
        .map(|s| perturbed(&flat, &mut Chance(s)))
        .collect();
    println!(
        "Full plant: {} modes, {} checks.",
        flat.modes.len(),
        flat.checks.len()
    );
    println!("Minutes end when a cause is proven or nothing is left worth asking; +- is one");
    println!("standard error. Right: the cause named at the end is truly there.\n");
    println!("{}", Tally::HEAD);
    for (model, faults, planners, share) in [
        ("as believed", 1, &Planner::ALL[..], 1),
        ("as believed", 2, &Planner::ALL[..2], 2),
        ("off by two", 1, &Planner::ALL[..2], 1),
        ("off by two", 2, &Planner::ALL[..1], 2),
    ] {
        for planner in planners {
            let (mut all, mut steady, mut comes) = <(Tally, Tally, Tally)>::default();
            // The simple planners take long; half the calls tell enough.
            let calls = if *planner == Planner::Ours { n } else { n / 2 } / share;
            for seed in 0..calls {
                let of = match model {
                    "off by two" => &off[(seed % PERTURBED) as usize],
                    _ => &flat,
                };
                let mut scene = Scene::draw(of, faults, Chance((seed << 8) + faults as u64));
                let walked = walk(&plant, &mut scene, *planner);
                let right = right(of, &scene, &walked);
                all.add(&walked, right);
                if scene.truth.iter().any(|t| t.1) {
                    comes.add(&walked, right);
                } else {
                    steady.add(&walked, right);
                }
            }
            let name = planner.name();
            println!("{}", all.line(model, faults, name));
            if *planner == Planner::Ours {
                println!("{}", steady.line(model, faults, "  steady ones"));
                println!(
                    "{}",
                    comes.line(model, faults, "  with one that comes and goes")
                );
            }
        }
    }
    println!();
    reduced::compare(&plant);
    println!();
    same::pace(&plant);
}
