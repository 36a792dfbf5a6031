//! The posterior against pgmpy's exact inference. The cases are made here from
//! a seed and written down with the flat models; `./dev reference trace` lets
//! pgmpy answer them; the answers are committed and compared in every run.

use std::fmt::Write as _;

use coldsump::trace::{
    Answer, Case, Check, Correction, Evidence, Flat, LevelControl, Mode, Plant, Stage, Tracer,
};
use serde::Serialize;

const FOLDER: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/trace");
const CASES: usize = 240;
const MODES: usize = 5;

/// The plants, by the level control that makes them differ most.
const CONTROLS: [LevelControl; 3] = [
    LevelControl::ElectrodeRelay,
    LevelControl::FloatSwitch,
    LevelControl::Transmitter,
];

#[derive(Serialize)]
struct Written {
    plants: Vec<Flat>,
    cases: Vec<Asked>,
}

/// One evidence set over a few modes of a plant.
#[derive(Serialize)]
struct Asked {
    plant: usize,
    modes: Vec<Mode>,
    /// Whether nothing wrong is possible at all.
    nothing: bool,
    evidence: Vec<Said>,
    corrections: Vec<Correction>,
}

#[derive(Serialize)]
struct Said {
    check: Check,
    /// Place of the answer among the check's.
    answer: usize,
    stage: usize,
}

/// A number below `n` from a small generator, the same on every machine.
fn draw(seed: &mut u64, n: usize) -> usize {
    *seed = seed
        .wrapping_mul(6_364_136_223_846_793_005)
        .wrapping_add(1_442_695_040_888_963_407);
    (*seed >> 33) as usize % n
}

fn plant(at: usize) -> Plant {
    Plant {
        level_control: CONTROLS[at],
        ..Plant::default()
    }
}

fn asked(at: usize, seed: &mut u64) -> (Asked, Case) {
    let plant = plant(at);
    let all = plant.modes();
    let mut modes = Vec::new();
    while modes.len() < MODES {
        let mode = all[draw(seed, all.len())];
        if !modes.contains(&mode) {
            modes.push(mode);
        }
    }
    let speaks = |c: &Check| c.exists(&plant) && modes.iter().any(|m| c.speaks_of(*m));
    let checks: Vec<Check> = Check::ALL.into_iter().filter(speaks).collect();
    let mut case = Case::default();
    let mut stage = Stage::AsFound;
    for _ in 0..2 + draw(seed, 5) {
        stage = stage.max(Stage::ALL[draw(seed, 3)]);
        // One in five is taken again.
        let check = match case.evidence.last() {
            Some(e) if draw(seed, 5) == 0 => e.check,
            _ => checks[draw(seed, checks.len())],
        };
        let answer = check.answers()[draw(seed, check.answers().len())];
        case.evidence.push(Evidence::said(check, answer, stage));
    }
    if draw(seed, 3) == 0 {
        let after = draw(seed, case.evidence.len());
        let mode = modes[draw(seed, MODES)];
        case.corrections.push(Correction { mode, after });
    }
    let nothing = case.evidence.iter().all(|e| match e.check {
        Check::MachinesOut => false,
        Check::BasinOnArrival => e.answer != Answer::BasinLow,
        _ => true,
    });
    let said = |e: &Evidence| Said {
        check: e.check,
        answer: e
            .check
            .answers()
            .iter()
            .position(|a| *a == e.answer)
            .expect("an answer"),
        stage: e.stage as usize,
    };
    let asked = Asked {
        plant: at,
        modes,
        nothing,
        evidence: case.evidence.iter().map(said).collect(),
        corrections: case.corrections.clone(),
    };
    (asked, case)
}

fn cases() -> Vec<(Asked, Case)> {
    let mut seed = 20_260_901;
    (0..CASES)
        .map(|i| asked(i % CONTROLS.len(), &mut seed))
        .collect()
}

/// Mode and probability that it was there, as ours has it.
fn ours(asked: &Asked, case: &Case) -> Vec<f64> {
    let plant = plant(asked.plant);
    let checks: Vec<Check> = Check::ALL
        .into_iter()
        .filter(|c| c.exists(&plant))
        .collect();
    let belief = Tracer::over(&plant, case, &asked.modes, &checks).belief();
    asked
        .modes
        .iter()
        .map(|m| belief.of(*m).expect("a suspect").was)
        .collect()
}

#[test]
fn the_posterior_is_what_pgmpy_infers() {
    let (asked, known): (Vec<Asked>, Vec<Case>) = cases().into_iter().unzip();
    let written = Written {
        plants: (0..CONTROLS.len()).map(|at| Flat::of(&plant(at))).collect(),
        cases: asked,
    };
    let text = serde_json::to_string(&written).expect("the cases as text") + "\n";
    let file = format!("{FOLDER}/cases.json");
    if std::env::var_os("COLDSUMP_WRITE").is_some() {
        std::fs::write(&file, &text).expect("cases.json is written");
        return;
    }
    let kept = std::fs::read_to_string(&file).expect("cases.json");
    assert!(
        kept == text,
        "the model changed: ./dev reference trace --write"
    );
    let figures = std::fs::read_to_string(format!("{FOLDER}/posterior.csv")).expect("its figures");
    let mut lines = figures.lines().skip(1);
    let (mut worst, mut told) = (0.0_f64, String::new());
    for (i, (asked, case)) in written.cases.iter().zip(&known).enumerate() {
        for (mode, got) in asked.modes.iter().zip(ours(asked, case)) {
            let line = lines.next().expect("a figure for every mode");
            let mut fields = line.split(',');
            assert_eq!(fields.next(), Some(i.to_string().as_str()), "{line}");
            let name = serde_json::to_string(mode).expect("its name");
            assert_eq!(fields.next(), Some(name.trim_matches('"')), "{line}");
            let want: f64 = fields.next().and_then(|p| p.parse().ok()).expect(line);
            let off = (got - want).abs();
            if off > 1e-9 {
                writeln!(told, "case {i}, {mode:?}: ours {got}, pgmpy {want}").expect("text");
            }
            worst = worst.max(off);
        }
    }
    assert_eq!(lines.next(), None);
    assert!(told.is_empty(), "{told}");
    println!("{CASES} evidence sets, {worst:e} apart at most");
}
