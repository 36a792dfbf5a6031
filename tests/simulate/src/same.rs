//! How long the belief takes over the evidence sets that pgmpy also answers,
//! and the next check over whole calls.

use std::fs::read_to_string;
use std::hint::black_box;
use std::time::Instant;

use coldsump::trace::{
    Case, Check, Correction, Evidence, Flat, LevelControl, Mode, Place, Plant, Stage, Tracer,
};
use serde::Deserialize;

use crate::chance::Chance;
use crate::scene::Scene;

#[derive(Deserialize)]
struct Written {
    cases: Vec<Asked>,
}

#[derive(Deserialize)]
struct Asked {
    plant: usize,
    modes: Vec<Mode>,
    evidence: Vec<Said>,
    corrections: Vec<Correction>,
}

#[derive(Deserialize)]
struct Said {
    check: Check,
    answer: usize,
    stage: usize,
}

/// The plants of tests/trace/outside.rs.
const CONTROLS: [LevelControl; 3] = [
    LevelControl::ElectrodeRelay,
    LevelControl::FloatSwitch,
    LevelControl::Transmitter,
];

/// Least seconds of some turns.
fn least<T>(turns: usize, mut once: impl FnMut() -> T) -> f64 {
    let each = (0..turns).map(|_| {
        let begun = Instant::now();
        black_box(once());
        begun.elapsed().as_secs_f64()
    });
    each.fold(f64::INFINITY, f64::min)
}

/// Prints the median milliseconds of one evidence set.
pub fn sets(file: &str) {
    let text = read_to_string(file).expect("the cases");
    let written: Written = serde_json::from_str(&text).expect("cases as written");
    let each = written.cases.iter().map(|asked| {
        let plant = Plant {
            level_control: CONTROLS[asked.plant],
            ..Plant::default()
        };
        let said =
            |s: &Said| Evidence::said(s.check, s.check.answers()[s.answer], Stage::ALL[s.stage]);
        let case = Case {
            evidence: asked.evidence.iter().map(said).collect(),
            corrections: asked.corrections.clone(),
            ..Case::default()
        };
        let checks: Vec<Check> = Check::ALL
            .into_iter()
            .filter(|c| c.exists(&plant))
            .collect();
        1e3 * least(9, || {
            Tracer::over(&plant, &case, &asked.modes, &checks).belief()
        })
    });
    let mut times: Vec<f64> = each.collect();
    times.sort_by(f64::total_cmp);
    println!("{}", times[times.len() / 2]);
}

/// Twelve calls walked by the planner, 25 answers of each at most: what is looked at
/// before each step, and each answer.
fn twelve(
    plant: &Plant,
    mut before: impl FnMut(&Case, &Tracer, Place),
    mut said: impl FnMut(usize, &Evidence),
) {
    let flat = Flat::of(plant);
    for call in 0..12 {
        let mut scene = Scene::draw(&flat, 1, Chance(99 + call as u64));
        let mut evidence: Vec<Evidence> = Vec::new();
        let mut at = Place::MachineRoom;
        while evidence.len() < 25 {
            let case = Case::of(&evidence);
            let tracer = Tracer::new(plant, &case);
            before(&case, &tracer, at);
            let Some(next) = tracer.advise(at).best else {
                break;
            };
            at = next.check.place();
            let stage = tracer.stage(next.check);
            let answer = scene.answer(next.check, stage);
            evidence.push(Evidence::said(next.check, answer, stage));
            said(call, &evidence[evidence.len() - 1]);
        }
    }
}

/// Prints how long the whole plant takes, from an answer to what follows.
pub fn pace(plant: &Plant) {
    let (mut sum, mut most, mut steps) = ([0.0; 4], [0.0_f64; 4], 0);
    let time = |case: &Case, tracer: &Tracer, at: Place| {
        let first = tracer.belief().suspects[0].mode;
        let times = [
            least(5, || Tracer::new(plant, case)),
            least(5, || tracer.belief()),
            least(5, || tracer.advise(at)),
            least(3, || tracer.why(first)),
        ];
        for (i, took) in times.into_iter().enumerate() {
            sum[i] += took;
            most[i] = most[i].max(took);
        }
        steps += 1;
    };
    twelve(plant, time, |_, _| {});
    println!("From an answer to the next check, full plant, {steps} steps of 12 calls, native:");
    for (i, what) in ["posterior", "belief", "next check", "why"]
        .iter()
        .enumerate()
    {
        let mean = 1e3 * sum[i] / f64::from(steps);
        println!("  {what}: {mean:.2} ms, at most {:.2}", 1e3 * most[i]);
    }
}

/// Prints twelve calls as they are walked, for `./dev bench pace` to keep: a line an
/// answer, an empty line between two calls.
pub fn paths(plant: &Plant) {
    let word = |name: String| name.trim_matches('"').to_owned();
    let mut last = 0;
    let print = |call: usize, said: &Evidence| {
        if call != last {
            println!();
        }
        last = call;
        let named = [
            serde_json::to_string(&said.check),
            serde_json::to_string(&said.answer),
            serde_json::to_string(&said.stage),
        ];
        println!("{}", named.map(|n| word(n.expect("a name"))).join(" "));
    };
    twelve(plant, |_, _, _| {}, print);
}
