//! A mechanic who follows the advice ends at the true cause. What each check
//! shows is told here and not by the model (common practice, no source).

use super::super::*;
use super::said;
use Answer as A;
use Check as K;

/// What a check shows on a plant with nothing wrong but a low basin.
fn otherwise(check: Check) -> Answer {
    match check {
        K::MachineOwn => A::MachineHealthy,
        K::WeatherAndLoad => A::WithinDesign,
        K::ApproachToday => A::ApproachUsual,
        K::LevelNow => A::BasinLow,
        K::RefillTest => A::DidNotRefill,
        other => other.answers()[0],
    }
}

/// What differs under each of these faults, steady.
fn shown(truth: Mode) -> &'static [(Check, Answer)] {
    match truth {
        Mode::CoilOpen => &[
            (K::CoilPull, A::NoPull),
            (K::CoilCurrent, A::NoCurrent),
            (K::CoilResistance, A::CoilReadsOpen),
            (K::FlowOnCall, A::NoFlow),
        ],
        Mode::HandValveShut => &[
            (K::HandValves, A::FoundShut),
            (K::FlowOnCall, A::NoFlow),
            (K::ForceValve, A::NoFlow),
            (K::PressureAtValve, A::MainsLow),
        ],
        Mode::StrainerBlocked => &[
            (K::StrainerBlowOff, A::StrainerBlocked),
            (K::FlowOnCall, A::WeakFlow),
            (K::ForceValve, A::WeakFlow),
            (K::PressureAtValve, A::MainsLow),
        ],
        Mode::FuseBlown => &[
            (K::FuseCheck, A::FuseBlown),
            (K::ControlVoltage, A::NoVoltage),
            (K::CallAsFound, A::Dark),
            (K::CoilVoltage, A::NoVoltage),
            (K::OutputVoltage, A::NoVoltage),
            (K::CoilPull, A::NoPull),
            (K::CoilCurrent, A::NoCurrent),
            (K::FlowOnCall, A::NoFlow),
            (K::Substitution, A::IgnoresResistor),
            (K::ProbeDried, A::NoCall),
            (K::WiresOffHolder, A::NoCall),
            (K::ContactDrop, A::ContactOpen),
        ],
        other => panic!("no story for {other:?}"),
    }
}

#[test]
fn following_the_advice_ends_at_the_true_cause() {
    let plant = Plant::default();
    for truth in [
        Mode::CoilOpen,
        Mode::HandValveShut,
        Mode::StrainerBlocked,
        Mode::FuseBlown,
    ] {
        let mut evidence = vec![
            said(K::MachinesOut, A::ThreeOrMore, Stage::AsFound),
            said(K::BasinOnArrival, A::BasinLow, Stage::AsFound),
        ];
        let mut at = Place::MachineRoom;
        let mut minutes = 0.0;
        let settled = loop {
            let tracer = Tracer::new(&plant, &Case::of(&evidence));
            let advice = tracer.advise(at);
            let next = match (advice.settled, advice.best) {
                (None, Some(next)) if evidence.len() < 25 => next,
                (settled, _) => break settled,
            };
            at = next.check.place();
            minutes += next.minutes + next.walk_minutes;
            let special = shown(truth).iter().find(|(check, _)| *check == next.check);
            let answer = special.map_or_else(|| otherwise(next.check), |(_, answer)| *answer);
            let stage = next.check.stage_after(&evidence);
            evidence.push(said(next.check, answer, stage));
        };
        assert_eq!(settled, Some(truth), "{evidence:?}");
        assert!(minutes < 90.0, "{truth:?} took {minutes} min: {evidence:?}");
    }
}
