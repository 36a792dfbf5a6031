//! Written calls against the trace: the true cause ends first, or the check
//! that the advice asks for next brings it there.

mod outside;

use std::collections::HashMap;

use coldsump::trace::{
    Answer, Case, Check, Evidence, LevelControl, Mode, Place, Plant, Stage, Tracer,
};
use serde::de::DeserializeOwned;

struct Call {
    told: String,
    from: String,
    truth: Vec<Mode>,
    plant: Plant,
    evidence: Vec<Evidence>,
    then: HashMap<Check, Answer>,
}

fn named<T: DeserializeOwned>(word: &str) -> T {
    let text = format!("\"{word}\"");
    serde_json::from_str(&text).unwrap_or_else(|_| panic!("unknown word {word}"))
}

fn read(paragraph: &str) -> Option<Call> {
    let mut call = Call {
        told: String::new(),
        from: String::new(),
        truth: Vec::new(),
        plant: Plant::default(),
        evidence: Vec::new(),
        then: HashMap::new(),
    };
    let lines = paragraph
        .lines()
        .filter(|l| !l.starts_with('#') && !l.is_empty());
    for line in lines {
        let (word, rest) = line.split_once(' ').expect(line);
        match word {
            "call" => call.told = rest.into(),
            "from" => call.from = rest.into(),
            "truth" => call.truth = rest.split(' ').map(named).collect(),
            "plant" => call.plant.level_control = named::<LevelControl>(rest),
            "then" => {
                let (check, answer) = rest.split_once(' ').expect(line);
                call.then.insert(named(check), named(answer));
            }
            _ => {
                let (stage, line) = match word {
                    "w" => (Stage::WaterLetIn, rest),
                    "t" => (Stage::Testing, rest),
                    _ => (Stage::AsFound, line),
                };
                let (check, answer) = line.split_once(' ').expect(line);
                let (check, answer): (Check, Answer) = (named(check), named(answer));
                assert!(check.answers().contains(&answer), "{line}");
                assert!(check.exists(&call.plant), "{line}");
                call.evidence.push(Evidence::said(check, answer, stage));
            }
        }
    }
    (!call.told.is_empty()).then_some(call)
}

fn calls() -> Vec<Call> {
    include_str!("calls.txt")
        .split("\n\n")
        .filter_map(read)
        .collect()
}

/// Whether all that is truly wrong stands before anything else.
fn ends(call: &Call, evidence: &[Evidence]) -> bool {
    let belief = Tracer::new(&call.plant, &Case::of(evidence)).belief();
    let first: Vec<Mode> = belief
        .suspects
        .iter()
        .take(call.truth.len())
        .map(|s| s.mode)
        .collect();
    call.truth.iter().all(|t| first.contains(t))
}

#[test]
fn the_true_cause_ends_first_or_the_next_check_brings_it_there() {
    let calls = calls();
    assert!(calls.len() >= 40, "{}", calls.len());
    let (mut at_once, mut wrong) = (0, Vec::new());
    for call in &calls {
        assert!(!call.from.is_empty(), "{}: where from?", call.told);
        let tracer = Tracer::new(&call.plant, &Case::of(&call.evidence));
        if ends(call, &call.evidence) {
            at_once += 1;
            continue;
        }
        let next = tracer.advise(Place::Roof).best.map(|s| s.check);
        let told = next.and_then(|c| Some((c, *call.then.get(&c)?)));
        let then = told.map(|(check, answer)| {
            let mut more = call.evidence.clone();
            more.push(Evidence::said(check, answer, Stage::Testing));
            ends(call, &more)
        });
        if then != Some(true) {
            let first = tracer.belief().suspects[0];
            wrong.push(format!("{}\n   {first:?}, next {next:?}", call.told));
        }
    }
    println!("{at_once} of {} at once", calls.len());
    assert!(
        wrong.is_empty(),
        "{} wrong:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}
