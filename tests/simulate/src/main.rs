//! `./dev bench trace [N [SEED]]`: calls drawn from the trace's model, walked by
//! its planner and by others, and the best there is on small plants. The same
//! seed gives the same tables every time.

mod chance;
mod planner;
mod reduced;
mod same;
mod scene;
mod tally;
mod walk;

use coldsump::trace::{Flat, Plant};

use chance::Chance;
use planner::Planner;
use scene::{Scene, perturbed};
use tally::{Tally, Through};
use walk::{right, through, walk};

/// Perturbed models, each with its own part of the calls.
const PERTURBED: u64 = 10;

/// `through FAULTS N SEED [tell]`: only the walks that go on until they close.
fn through_only(plant: &Plant, words: &[String]) {
    let number = |at: usize, or: u64| words.get(at).and_then(|a| a.parse().ok()).unwrap_or(or);
    let (faults, n, from) = (number(1, 2) as usize, number(2, 100), number(3, 0));
    let flat = Flat::of(plant);
    let mut all = Through::default();
    for call in 0..n {
        let seed = Chance((((from << 32) + call) << 8) + faults as u64);
        let ended = through(plant, &flat, Scene::draw(&flat, faults, seed));
        if words.get(4).is_some_and(|w| w == "each") {
            println!(
                "{call} {} {} {}",
                ended.first,
                ended.minutes,
                u8::from(ended.named)
            );
        } else if words.len() > 4 && !ended.named {
            println!("{}\n", ended.told);
        }
        all.add(ended);
    }
    println!("{}\n{}", Through::HEAD, all.line("as believed", faults));
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let plant = Plant::default();
    match words.first().map(String::as_str) {
        Some("same") => return same::sets(&words[1]),
        Some("pace") => return same::pace(&plant),
        Some("paths") => return same::paths(&plant),
        Some("through") => return through_only(&plant, &words),
        Some("small") => return reduced::compare(&plant, words.len() < 2),
        _ => {}
    }
    let ours = words.first().is_some_and(|w| w == "ours");
    let words = &words[usize::from(ours)..];
    let number = |at: usize, or: u64| words.get(at).and_then(|a| a.parse().ok()).unwrap_or(or);
    let (n, from) = (number(0, 200), number(1, 0));
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
    println!("standard error. Right: the cause named first at the end is truly there. Among those");
    println!(
        "named: so is one of those that the trace names together, no check telling them apart.\n"
    );
    println!("{}", Tally::HEAD);
    let mut wrong = Vec::new();
    for (model, faults, planners, share) in [
        ("as believed", 1, &Planner::ALL[..], 1),
        ("as believed", 2, &Planner::ALL[..2], 2),
        ("off by two", 1, &Planner::ALL[..2], 1),
        ("off by two", 2, &Planner::ALL[..1], 2),
    ] {
        for planner in planners.iter().filter(|p| !ours || **p == Planner::Ours) {
            let (mut all, mut steady, mut comes) = <(Tally, Tally, Tally)>::default();
            // The simple planners take long; half the calls tell enough.
            let calls = if *planner == Planner::Ours { n } else { n / 2 } / share;
            for call in 0..calls {
                let seed = (from << 32) + call;
                let of = match model {
                    "off by two" => &off[(call % PERTURBED) as usize],
                    _ => &flat,
                };
                let mut scene = Scene::draw(of, faults, Chance((seed << 8) + faults as u64));
                let walked = walk(&plant, &mut scene, *planner);
                let right = right(of, &scene, &walked);
                if ours && !right.0 && faults == 1 {
                    wrong.push(walk::told(of, &scene, &walked));
                }
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
    println!("\nWalked on after the first repair, until the trace closes:\n");
    println!("{}", Through::HEAD);
    for (model, faults) in [
        ("as believed", 1),
        ("off by two", 1),
        ("as believed", 2),
        ("off by two", 2),
    ] {
        let mut all = Through::default();
        for call in 0..n / faults as u64 {
            let of = match model {
                "off by two" => &off[(call % PERTURBED) as usize],
                _ => &flat,
            };
            let seed = Chance((((from << 32) + call) << 8) + faults as u64);
            all.add(through(&plant, of, Scene::draw(of, faults, seed)));
        }
        println!("{}", all.line(model, faults));
    }
    println!();
    if ours {
        wrong.iter().for_each(|w| println!("{w}"));
        return;
    }
    reduced::compare(&plant, true);
    println!();
    same::pace(&plant);
}
