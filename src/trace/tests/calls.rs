//! Calls as they happen. The stories are ours; the right culprit in each is
//! common practice, no source.

use uom::si::length::inch;
use uom::si::temperature_interval::degree_fahrenheit;

use super::super::*;
use super::said;
use crate::quantity::{Length, TemperatureInterval};
use Answer as A;
use Check as K;
use Stage::{AsFound, Testing};

fn f(v: f64) -> Option<TemperatureInterval> {
    Some(TemperatureInterval::new::<degree_fahrenheit>(v))
}

/// Basin far below the call level by tape, control satisfied as found, and
/// everything works while it is tested.
fn works_under_test() -> Vec<Evidence> {
    vec![
        said(K::CallAsFound, A::Satisfied, AsFound),
        said(K::ControlVoltage, A::VoltageGood, Testing),
        said(K::HandValves, A::AllOpen, Testing),
        said(K::ProbeDried, A::Calls, Testing),
        said(K::CoilPull, A::Pulls, Testing),
        said(K::ForceValve, A::FullFlow, Testing),
    ]
}

fn dry() -> Observed {
    Observed {
        machines_out: Some(3),
        basin_below_overflow: Some(Length::new::<inch>(14.5)),
        call_level: Some(Length::new::<inch>(6.0)),
        ..Observed::default()
    }
}

/// That the sensing says full over a low basin: any of its modes.
fn false_full(belief: &Belief) -> f64 {
    let sensing = belief.groups.iter().find(|(g, _)| *g == Group::Sensing);
    sensing.map_or(0.0, |(_, p)| *p)
}

#[test]
fn dry_on_arrival_yet_all_works_is_a_probe_that_reads_full_now_and_then() {
    let belief = infer(&Plant::default(), &dry(), &works_under_test());
    assert!(false_full(&belief) > 0.85, "{:?}", &belief.suspects[..5]);
    let first = belief.suspects[0];
    assert!(
        matches!(first.mode, Mode::ProbeFilm | Mode::ProbeFoam),
        "{first:?}"
    );
    assert_eq!(first.manner(), Manner::Intermittent);
    assert!(belief.nothing < 1e-6, "a dry basin is never nothing");
    assert!(belief.contradictions.is_empty());
}

/// A high approach beside it is a second suspicion; a tape that reads eight
/// inches under the call mark is not explained away.
#[test]
fn a_second_fault_does_not_explain_the_dry_basin_away() {
    let observed = Observed {
        range: f(6.0),
        design_range: f(10.0),
        approach: f(22.0),
        predicted_approach: f(5.2),
        ..dry()
    };
    let belief = infer(&Plant::default(), &observed, &works_under_test());
    assert!(false_full(&belief) > 0.85, "{:?}", &belief.suspects[..5]);
    assert_eq!(belief.groups[1].0, Group::TowerAir, "{:?}", belief.groups);
}

#[test]
fn film_and_foam_are_told_apart_by_a_look() {
    let with = |check, answer| {
        let mut all = works_under_test();
        all.push(said(check, answer, Testing));
        let belief = infer(&Plant::default(), &dry(), &all);
        let of = |m| belief.of(m).map_or(0.0, |s| s.probability);
        (of(Mode::ProbeFilm), of(Mode::ProbeFoam))
    };
    let (film, foam) = with(K::FoamLook, A::Foam);
    assert!(foam > film, "{film} {foam}");
    let (film, foam) = with(K::ProbeFilm, A::HolderFilmed);
    assert!(film > foam, "{film} {foam}");
}

#[test]
fn one_machine_out_on_a_sound_loop_is_the_machine() {
    let belief = infer(
        &Plant::default(),
        &Observed::default(),
        &[
            said(K::MachinesOut, A::OneMachine, AsFound),
            said(K::BasinOnArrival, A::BasinNormal, AsFound),
            said(K::ApproachToday, A::ApproachUsual, AsFound),
        ],
    );
    assert_eq!(belief.suspects[0].mode.group(), Group::Machine);
}

/// What was corrected is no longer suspected as much; the rest stays.
#[test]
fn a_correction_lowers_what_was_corrected() {
    let evidence = works_under_test();
    let case = |corrections| Case {
        observed: dry(),
        evidence: evidence.clone(),
        corrections,
    };
    let before = Tracer::new(&Plant::default(), &case(vec![])).belief();
    let cleaned = Correction {
        mode: Mode::ProbeFilm,
        after: evidence.len(),
    };
    let after = Tracer::new(&Plant::default(), &case(vec![cleaned])).belief();
    let of = |b: &Belief| b.of(Mode::ProbeFilm).map_or(0.0, |s| s.probability);
    assert!(
        of(&after) < 0.5 * of(&before),
        "{} {}",
        of(&before),
        of(&after)
    );
    let was = after.of(Mode::ProbeFilm).map_or(0.0, |s| s.was);
    assert!(
        (was - of(&before)).abs() < 1e-9,
        "it was there all the same"
    );
}
