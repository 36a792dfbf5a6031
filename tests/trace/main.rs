//! Written calls against the trace: the true cause ends first, or the check
//! that the advice asks for next brings it there.

mod outside;
mod table;

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

/// Calls that fit together flag nothing: each reading is what the true cause
/// shows. Of two faults at once the second may well be called a misreading
/// until it is seen again.
#[test]
fn a_coherent_call_is_not_called_contradictory() {
    let mut wrong = Vec::new();
    for call in calls().into_iter().filter(|c| c.truth.len() == 1) {
        let belief = Tracer::new(&call.plant, &Case::of(&call.evidence)).belief();
        for i in &belief.contradictions {
            let first: Vec<_> = belief
                .suspects
                .iter()
                .take(3)
                .map(|s| (s.mode, s.probability))
                .collect();
            wrong.push(format!("{}: {:?} {first:?}", call.told, call.evidence[*i]));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// One reading turned into its opposite, over evidence that settles the cause:
/// it is pointed at, and the advice can ask for it again.
#[test]
fn a_reading_that_fits_nothing_else_is_pointed_at() {
    let said = |c: Check, a: Answer, s| Evidence::said(c, a, s);
    let (found, testing) = (Stage::AsFound, Stage::Testing);
    // A shut hand valve never comes and goes: full flow past it is a misreading.
    let mut evidence = vec![
        said(Check::MachinesOut, Answer::ThreeOrMore, found),
        said(Check::BasinOnArrival, Answer::BasinLow, found),
        said(Check::CallAsFound, Answer::Calls, found),
        said(Check::CoilPull, Answer::Pulls, found),
        said(Check::FlowOnCall, Answer::NoFlow, found),
        said(Check::HandValves, Answer::FoundShut, found),
        said(Check::PressureAtValve, Answer::MainsLow, found),
    ];
    let odd = evidence.len();
    evidence.push(said(Check::ForceValve, Answer::FullFlow, testing));
    let belief = Tracer::new(&Plant::default(), &Case::of(&evidence)).belief();
    assert_eq!(belief.contradictions, [odd], "{:?}", &belief.suspects[..3]);
    assert_eq!(belief.suspects[0].mode, Mode::HandValveShut);
    // Taken again it says what the rest says, and both are weighed: neither is
    // averaged away, and the cause stands firmer.
    let before = belief.suspects[0].probability;
    evidence.push(said(Check::ForceValve, Answer::NoFlow, testing));
    let belief = Tracer::new(&Plant::default(), &Case::of(&evidence)).belief();
    assert!(belief.contradictions.contains(&odd));
    assert!(belief.suspects[0].probability > before);
}
