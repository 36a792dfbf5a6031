//! `./dev bench trace`: calls drawn from the trace's model, walked by its
//! planner and by others. Seeds are fixed: the same table every time.

mod chance;
mod planner;
mod scene;

use coldsump::trace::{Answer, Case, Check, Evidence, Flat, Mode, Place, Plant, Tracer};

use chance::Chance;
use planner::Planner;
use scene::{Scene, perturbed};

/// A walk is given up after this many checks.
const MOST: usize = 70;

/// How a walk ended.
struct Walk {
    minutes: f64,
    checks: usize,
    named: Option<Mode>,
    proven: bool,
}

fn walk(plant: &Plant, scene: &mut Scene, planner: Planner, tell: bool) -> Walk {
    let mut evidence: Vec<Evidence> = Vec::new();
    let mut at = Place::MachineRoom;
    let mut minutes = 0.0;
    loop {
        let tracer = Tracer::new(plant, &Case::of(&evidence));
        let proven = tracer.proven();
        let next = match proven {
            None if evidence.len() < MOST => planner.next(&tracer, at),
            _ => None,
        };
        let Some(check) = next else {
            let named = tracer.belief().suspects.first().map(|s| s.mode);
            return Walk { minutes, checks: evidence.len(), named, proven: proven.is_some() };
        };
        minutes += tracer.minutes(check) + at.walk_minutes(check.place());
        at = check.place();
        let stage = tracer.stage(check);
        let answer: Answer = scene.answer(check, stage);
        if tell {
            let b = tracer.belief();
            eprintln!("   {check:?} {answer:?} {stage:?}  (first was {:?} {:.3})", b.suspects[0].mode, b.suspects[0].probability);
        }
        evidence.push(Evidence::said(check, answer, stage));
        let _ = Check::ALL;
    }
}

#[derive(Default)]
struct Tally {
    minutes: Vec<f64>,
    right: usize,
    proven: usize,
    checks: usize,
}

impl Tally {
    fn add(&mut self, walk: &Walk, right: bool) {
        self.minutes.push(walk.minutes);
        self.right += usize::from(right);
        self.proven += usize::from(walk.proven);
        self.checks += walk.checks;
    }

    fn line(&self) -> String {
        let n = self.minutes.len() as f64;
        let mean = self.minutes.iter().sum::<f64>() / n;
        let spread = self.minutes.iter().map(|m| (m - mean).powi(2)).sum::<f64>() / (n - 1.0);
        let p = self.right as f64 / n;
        format!(
            "| {n} | {mean:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} |",
            (spread / n).sqrt(),
            100.0 * p,
            100.0 * (p * (1.0 - p) / n).sqrt(),
            100.0 * self.proven as f64 / n,
            self.checks as f64 / n,
        )
    }
}

/// Every check asked, those that disturb nothing first, and `times` each.
fn everything(plant: &Plant, scene: &mut Scene, times: usize) -> Mode {
    let mut evidence: Vec<Evidence> = Vec::new();
    for touch in [false, true] {
        for _ in 0..times {
            for check in Check::ALL.into_iter().filter(|c| c.exists(plant) && c.disturbs() == touch && *c != Check::RefillTest) {
                let stage = check.stage_after(&evidence);
                evidence.push(Evidence::said(check, scene.answer(check, stage), stage));
            }
        }
    }
    Tracer::new(plant, &Case::of(&evidence)).belief().suspects[0].mode
}

fn bound(plant: &Plant, flat: &Flat, n: u64, times: usize) {
    let mut wrong = std::collections::BTreeMap::<String, usize>::new();
    let mut by = [[0usize; 2]; 2];
    for seed in 0..n {
        let mut scene = Scene::draw(flat, 1, Chance(0x5eed ^ (seed << 16) ^ 1));
        let (m, comes) = scene.truth[0];
        let truth = flat.modes[m].mode;
        let got = everything(plant, &mut scene, times);
        by[usize::from(comes)][usize::from(got == truth)] += 1;
        if got != truth {
            *wrong.entry(format!("{truth:?}{} -> {got:?}", if comes { "~" } else { "" })).or_default() += 1;
        }
    }
    println!("all checks x{times}: steady {:?} comes {:?}", by[0], by[1]);
    for (w, n) in &wrong { println!("      {w} x{n}"); }
}

fn least<T>(mut f: impl FnMut() -> T) -> (T, f64) {
    let mut best = (f(), f64::INFINITY);
    for _ in 0..7 {
        let a = std::time::Instant::now();
        let t = f();
        let took = a.elapsed().as_secs_f64();
        if took < best.1 { best = (t, took); }
    }
    best
}

fn pace(plant: &Plant, flat: &Flat) {
    let (mut sum, mut most, mut steps) = ([0.0; 4], [0.0f64; 4], 0);
    for seed in 0..12 {
        let mut scene = Scene::draw(flat, 1, Chance(99 + seed));
        let mut evidence: Vec<Evidence> = Vec::new();
        let mut at = Place::MachineRoom;
        for _ in 0..16 {
            let case = Case::of(&evidence);
            let (t, a) = least(|| Tracer::new(plant, &case));
            let (bel, b) = least(|| t.belief());
            let (adv, c) = least(|| t.advise(at));
            let (_, d) = least(|| t.why(&[bel.suspects[0].mode]));
            for (i, x) in [a, b, c, d].into_iter().enumerate() {
                sum[i] += x;
                most[i] = most[i].max(x);
            }
            steps += 1;
            let Some(s) = adv.best else { break };
            at = s.check.place();
            let stage = t.stage(s.check);
            evidence.push(Evidence::said(s.check, scene.answer(s.check, stage), stage));
        }
    }
    for (i, name) in ["new", "belief", "advise", "why"].iter().enumerate() {
        println!("{name}: mean {:.3} ms, most {:.3}", 1e3 * sum[i] / steps as f64, 1e3 * most[i]);
    }
}

fn main() {
    let plant = Plant::default();
    let args: Vec<String> = std::env::args().collect();
    let n: u64 = args.get(1).and_then(|a| a.parse().ok()).unwrap_or(100);
    let only_ours = args.iter().any(|a| a == "ours");
    let flat = Flat::of(&plant);
    if args.iter().any(|a| a == "pace") {
        return pace(&plant, &flat);
    }
    if args.iter().any(|a| a == "bound") {
        bound(&plant, &flat, n, 1);
        bound(&plant, &flat, n, 2);
        return;
    }
    let off = perturbed(&flat, &mut Chance(7));
    println!("| model | faults | planner | n | minutes | +- | right % | +- | proven % | checks |");
    for (name, flat) in [("as believed", &flat), ("off by two", &off)] {
        for faults in [1, 2] {
            for planner in Planner::ALL {
                if only_ours && planner != Planner::Ours { continue; }
                let mut all = Tally::default();
                let mut wrong = std::collections::BTreeMap::<String, usize>::new();
                let (mut steady, mut comes) = (Tally::default(), Tally::default());
                for seed in 0..n {
                    let draw = Chance(0x5eed ^ (seed << 16) ^ (faults as u64));
                    let mut scene = Scene::draw(flat, faults, draw.clone());
                    let truth: Vec<Mode> = scene.truth.iter().map(|(m, _)| flat.modes[*m].mode).collect();
                    let w = walk(&plant, &mut scene, planner, false);
                    let right = w.named.is_some_and(|m| truth.contains(&m));
                    all.add(&w, right);
                    if scene.truth[0].1 { comes.add(&w, right) } else { steady.add(&w, right) }
                    if !right {
                        let t = format!("{:?}{} -> {:?}{}", truth, if scene.truth[0].1 {"~"} else {""}, w.named.unwrap(), if w.proven {"!"} else {""});
                        *wrong.entry(t).or_default() += 1;
                        if args.iter().any(|a| a == "tell") && faults == 1 && name == "as believed" {
                            eprintln!("{truth:?} {:?} low {}", scene.truth, scene.low);
                            let mut again = Scene::draw(flat, faults, draw);
                            walk(&plant, &mut again, planner, true);
                        }
                    }
                }
                println!("| {name} | {faults} | {} {}", planner.name(), all.line());
                if faults == 1 && planner == Planner::Ours {
                    println!("    steady {}\n    comes and goes {}", steady.line(), comes.line());
                    for (w, n) in &wrong { println!("      {w} x{n}"); }
                }
            }
        }
    }
}
