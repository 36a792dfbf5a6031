//! Calls as they happen, told to the model from outside. The stories are
//! ours; the right culprit in each is common practice, no source.

use uom::si::length::inch;
use uom::si::temperature_interval::degree_fahrenheit;

use super::super::*;
use super::said as ev;
use crate::quantity::{Length, TemperatureInterval};
use Answer as A;
use Check as K;
use Stage::{AsFound, Corrected, Testing};

fn f(v: f64) -> Option<TemperatureInterval> {
    Some(TemperatureInterval::new::<degree_fahrenheit>(v))
}

fn think(observed: Observed, evidence: &[Evidence]) -> Tracer {
    let case = Case {
        observed,
        evidence: evidence.to_vec(),
        ..Case::default()
    };
    Tracer::new(&Plant::default(), &case)
}

/// Probability of any of these.
fn any(belief: &Belief, modes: &[Mode]) -> f64 {
    modes
        .iter()
        .filter_map(|m| belief.of(*m))
        .map(|s| s.probability)
        .sum()
}

/// Everything works while it is tested.
fn works() -> Vec<Evidence> {
    vec![
        ev(K::ControlVoltage, A::VoltageGood, Testing),
        ev(K::ProbeDried, A::Calls, Testing),
        ev(K::CallAsFound, A::Calls, Testing),
        ev(K::CoilVoltage, A::VoltageGood, Testing),
        ev(K::CoilPull, A::Pulls, Testing),
        ev(K::FlowOnCall, A::FullFlow, Testing),
        ev(K::ForceValve, A::FullFlow, Testing),
        ev(K::HandValves, A::AllOpen, Testing),
        ev(K::StrainerBlowOff, A::StrainerClean, Testing),
        ev(K::MainsPressure, A::MainsGood, Testing),
        ev(K::WaterLoss, A::NoLoss, Testing),
        ev(K::LevelNow, A::BasinComingUp, Testing),
    ]
}

/// The ways the sensing lies and then lets go.
const LETS_GO: [Mode; 5] = [
    Mode::ProbeFilm,
    Mode::ProbeFoam,
    Mode::HolderMoisture,
    Mode::ProbeCableShort,
    Mode::ControllerStuckFull,
];

#[test]
fn dry_on_arrival_yet_all_works_under_test_is_an_intermittent_false_full() {
    let mut all = vec![
        ev(K::MachinesOut, A::ThreeOrMore, AsFound),
        ev(K::BasinOnArrival, A::BasinLow, AsFound),
    ];
    all.extend(works());
    let belief = think(Observed::default(), &all).belief();
    let first = belief.suspects[0];
    assert_eq!(first.mode, Mode::ProbeFilm, "{:?}", &belief.suspects[..6]);
    assert_eq!(first.manner(), Manner::Intermittent);
    assert!(first.intermittent > 3.0 * first.steady, "{first:?}");
    assert!(any(&belief, &LETS_GO) > 0.5, "{:?}", &belief.suspects[..6]);
    assert_eq!(belief.nothing, 0.0, "a dry basin is never nothing");
    assert_eq!(belief.contradictions, [] as [usize; 0]);
    assert_eq!(belief.groups[0].0, Group::Sensing);
    assert_eq!(belief.heading().unwrap().0, Branch::MakeupChain);

    // Foam seen, or a wet cap, or a film across the holder tell them apart.
    for (check, answer, mode) in [
        (K::FoamLook, A::Foam, Mode::ProbeFoam),
        (K::HolderCap, A::CapWet, Mode::HolderMoisture),
        (K::ProbeFilm, A::HolderFilmed, Mode::ProbeFilm),
    ] {
        let mut more = all.clone();
        more.push(ev(check, answer, Testing));
        let belief = think(Observed::default(), &more).belief();
        assert_eq!(belief.suspects[0].mode, mode, "{:?}", &belief.suspects[..6]);
    }
}

/// Readings of a basin far below its call level, a control that says full,
/// and hot water: the tape is not to be argued away by the tower.
#[test]
fn a_tape_far_below_the_call_is_not_a_misreading() {
    let seen = Observed {
        machines_out: Some(3),
        range: f(6.0),
        design_range: f(10.0),
        approach: f(22.0),
        predicted_approach: f(6.0),
        basin_below_overflow: Some(Length::new::<inch>(14.5)),
        call_level: Some(Length::new::<inch>(6.0)),
        ..Observed::default()
    };
    let mut all = vec![ev(K::CallAsFound, A::Satisfied, AsFound)];
    all.extend(works());
    let belief = think(seen, &all).belief();
    let sensing = belief
        .groups
        .iter()
        .find(|g| g.0 == Group::Sensing)
        .unwrap()
        .1;
    assert!(sensing > 0.97, "{sensing} {:?}", &belief.suspects[..8]);
    let first = belief.suspects[0];
    assert_eq!(
        (first.mode, first.manner()),
        (Mode::ProbeFilm, Manner::Intermittent)
    );
    let tower = belief
        .branches
        .iter()
        .find(|b| b.0 == Branch::Tower)
        .unwrap()
        .1;
    // A second, separate suspicion: water that warms under a dry tower and a
    // tower short of air look much alike.
    assert_eq!(belief.branches[1].0, Branch::Tower, "{:?}", belief.branches);
    assert!((0.08..0.9).contains(&tower), "{tower}");
}

#[test]
fn one_machine_out_on_a_sound_loop_is_the_machine() {
    let all = [
        ev(K::MachinesOut, A::OneMachine, AsFound),
        ev(K::BasinOnArrival, A::BasinNormal, AsFound),
        ev(K::ApproachToday, A::ApproachUsual, AsFound),
    ];
    let belief = think(Observed::default(), &all).belief();
    assert_eq!(belief.branches[0].0, Branch::Machine);
    assert!(belief.branches[0].1 > 0.8, "{:?}", belief.branches);
}

#[test]
fn high_approach_with_a_full_basin_and_usual_range_is_the_tower() {
    let numbers = Observed {
        machines_out: Some(3),
        range: f(10.4),
        design_range: f(10.0),
        approach: f(14.0),
        predicted_approach: f(7.0),
        ..Observed::default()
    };
    let full = [ev(K::BasinOnArrival, A::BasinNormal, AsFound)];
    let belief = think(numbers, &full).belief();
    assert_eq!(belief.branches[0].0, Branch::Tower);
    assert!(belief.branches[0].1 > 0.8, "{:?}", belief.branches);
}

#[test]
fn wide_range_and_low_approach_over_a_full_basin_is_water_flow() {
    let numbers = |level: f64| Observed {
        machines_out: Some(3),
        range: f(20.0),
        design_range: f(10.0),
        approach: f(5.0),
        predicted_approach: f(7.0),
        basin_below_overflow: Some(Length::new::<inch>(level)),
        call_level: Some(Length::new::<inch>(4.0)),
        ..Observed::default()
    };
    let belief = think(numbers(1.0), &[]).belief();
    assert_eq!(belief.branches[0].0, Branch::CondenserWater);
    assert!(belief.branches[0].1 > 0.8, "{:?}", belief.branches);
    // Over a low basin the same range is the makeup, not the pump.
    let belief = think(numbers(10.0), &[]).belief();
    assert_eq!(
        belief.branches[0].0,
        Branch::MakeupChain,
        "{:?}",
        belief.branches
    );
}

/// After the probe was cleaned the belief is about what remains.
#[test]
fn a_correction_persists_and_a_relapse_points_elsewhere() {
    let mut all = vec![
        ev(K::MachinesOut, A::ThreeOrMore, AsFound),
        ev(K::BasinOnArrival, A::BasinLow, AsFound),
        ev(K::CallAsFound, A::Satisfied, AsFound),
        ev(K::ProbeFilm, A::HolderFilmed, Testing),
    ];
    let cleaned = Correction {
        mode: Mode::ProbeFilm,
        after: all.len(),
    };
    let now = |evidence: &[Evidence]| {
        let case = Case {
            evidence: evidence.to_vec(),
            corrections: vec![cleaned],
            ..Case::default()
        };
        Tracer::new(&Plant::default(), &case).belief()
    };
    let before = think(Observed::default(), &all).belief();
    let after = now(&all);
    let film = |b: &Belief| *b.of(Mode::ProbeFilm).unwrap();
    assert!((film(&before).probability - film(&after).was).abs() < 0.02);
    assert!(film(&after).probability < 0.12, "{:?}", film(&after));
    all.push(ev(K::RefillTest, A::Refilled, Corrected));
    let proven = now(&all);
    assert!(film(&proven).probability < film(&after).probability);
    // It lies again: the cleaning did not take, or it was something else.
    all.pop();
    all.push(ev(K::RefillTest, A::DidNotRefill, Corrected));
    let again = now(&all);
    let other: f64 = again
        .suspects
        .iter()
        .filter(|s| s.mode != Mode::ProbeFilm)
        .map(|s| s.probability)
        .sum();
    assert!(
        film(&again).probability + other > 0.9,
        "{:?}",
        &again.suspects[..6]
    );
    assert!(film(&again).probability > 3.0 * film(&after).probability);
}

/// Evidence in order, with what was put right after how many pieces of it.
fn repaired(all: &[Evidence], corrections: &[(Mode, usize)]) -> Tracer {
    let correction = |(mode, after): &(Mode, usize)| Correction {
        mode: *mode,
        after: *after,
    };
    let case = Case {
        evidence: all.to_vec(),
        corrections: corrections.iter().map(correction).collect(),
        ..Case::default()
    };
    Tracer::new(&Plant::default(), &case)
}

fn coil_open() -> Vec<Evidence> {
    vec![
        ev(K::MachinesOut, A::ThreeOrMore, AsFound),
        ev(K::BasinOnArrival, A::BasinLow, AsFound),
        ev(K::CallAsFound, A::Calls, AsFound),
        ev(K::CoilVoltage, A::VoltageGood, AsFound),
        ev(K::CoilPull, A::NoPull, AsFound),
        ev(K::CoilResistance, A::CoilReadsOpen, Testing),
    ]
}

/// A second fault keeps the heads up: the trace waits for the machines.
#[test]
fn a_trace_closes_only_when_the_complaint_was_seen_to_be_gone() {
    let mut all = coil_open();
    let coil = [(Mode::CoilOpen, all.len())];
    let best = |t: &Tracer| t.advise(Place::Basement).best.map(|s| s.check);
    let closes = |t: &Tracer| t.advise(Place::Basement).closes;
    let put_right = repaired(&all, &coil);
    assert_eq!(best(&put_right), Some(K::RefillTest));
    all.push(ev(K::RefillTest, A::Refilled, Corrected));
    let filled = repaired(&all, &coil);
    assert_eq!(best(&filled), Some(K::Restart));
    assert!(!closes(&filled));
    all.push(ev(K::Restart, A::HeadsUsual, Corrected));
    assert!(closes(&repaired(&all, &coil)));

    // The heads stay up: the search goes on, and what is found must be seen
    // to be gone too, by a start after it.
    all.pop();
    all.push(ev(K::Restart, A::HeadsHigh, Corrected));
    let on = repaired(&all, &coil);
    assert!(!closes(&on) && best(&on).is_some());
    all.push(ev(K::FanRuns, A::FanSlow, Corrected));
    all.push(ev(K::BeltLook, A::NotRight, Corrected));
    let both = [coil[0], (Mode::BeltOff, all.len())];
    assert_eq!(
        repaired(&all, &coil).belief().suspects[0].mode,
        Mode::BeltOff
    );
    let mended = repaired(&all, &both);
    assert!(!closes(&mended));
    assert_eq!(best(&mended), Some(K::Restart));
    all.push(ev(K::Restart, A::HeadsUsual, Corrected));
    assert!(closes(&repaired(&all, &both)));
}

/// A test that went well is not forgotten when something else is put right,
/// and what is put right again may take this time.
#[test]
fn what_a_repair_left_is_remembered_and_a_repair_done_again_counts_anew() {
    let left = |t: &Tracer, mode| t.belief().of(mode).expect("a suspect").probability;
    let mut all = coil_open();
    let coil = (Mode::CoilOpen, all.len());
    let before = left(&repaired(&all, &[coil]), Mode::CoilOpen);
    all.push(ev(K::RefillTest, A::Refilled, Corrected));
    let belt = (Mode::BeltOff, all.len());
    let after = left(&repaired(&all, &[coil, belt]), Mode::CoilOpen);
    assert!(after < before / 10.0, "{before} {after}");

    all.pop();
    all.push(ev(K::RefillTest, A::DidNotRefill, Corrected));
    all.push(ev(K::CoilResistance, A::CoilReadsOpen, Corrected));
    let stays = left(&repaired(&all, &[coil]), Mode::CoilOpen);
    assert!(stays > 0.9, "{stays}");
    let again = (Mode::CoilOpen, all.len());
    let anew = left(&repaired(&all, &[coil, again]), Mode::CoilOpen);
    assert!(anew < 0.2, "{anew}");
}

/// Where no check is left to tell two causes apart they are one answer.
#[test]
fn causes_that_nothing_at_hand_tells_apart_are_named_together() {
    let plant = Plant::default();
    let evidence = [
        ev(K::BasinOnArrival, A::BasinLow, AsFound),
        ev(K::Substitution, A::IgnoresResistor, Testing),
    ];
    let modes = [
        Mode::ControllerDead,
        Mode::ControllerStuckFull,
        Mode::BeltOff,
    ];
    let checks = [K::BasinOnArrival, K::Substitution, K::BeltLook];
    let could_not = |check| Evidence::said(check, A::CouldNot, Testing);
    let mut case = Case::of(&evidence);
    case.evidence.push(could_not(K::Substitution));
    case.evidence.push(could_not(K::BeltLook));
    let tracer = Tracer::over(&plant, &case, &modes, &checks);
    let advice = tracer.advise(Place::Basement);
    assert_eq!(advice.best, None);
    assert_eq!(advice.one_of.len(), 2, "{:?}", tracer.belief().suspects);
    assert_eq!(advice.ripe, Some(advice.one_of[0]));
    let closing = tracer.closing(advice.one_of[0]).expect("a cause");
    let other = closing.unproven.iter().find_map(|u| match u {
        Unproven::Alike(mode, _) => Some(*mode),
        _ => None,
    });
    assert_eq!(other, Some(advice.one_of[1]));
}

#[test]
fn answers_that_cannot_both_be_true_are_flagged() {
    let all = [
        ev(K::MachinesOut, A::ThreeOrMore, AsFound),
        ev(K::BasinOnArrival, A::BasinLow, AsFound),
        ev(K::HandValves, A::FoundShut, AsFound),
        ev(K::ForceValve, A::FullFlow, AsFound),
    ];
    let belief = think(Observed::default(), &all).belief();
    let shouted = [2, 3].iter().any(|i| belief.contradictions.contains(i));
    assert!(shouted, "{:?}", belief.contradictions);
}

#[test]
fn nothing_wrong_is_possible_only_while_no_symptom_stands() {
    let calm = [ev(K::BasinOnArrival, A::BasinNormal, AsFound)];
    assert!(think(Observed::default(), &calm).belief().nothing > 0.0);
    let out = Observed {
        machines_out: Some(2),
        ..Observed::default()
    };
    assert_eq!(think(out, &calm).belief().nothing, 0.0);
}

#[test]
fn as_found_looks_come_before_anything_is_touched() {
    let evidence = [ev(K::MachinesOut, A::ThreeOrMore, AsFound)];
    let advice = think(Observed::default(), &evidence).advise(Place::MachineRoom);
    let offered = advice.best.iter().chain(&advice.runners_up);
    assert!(offered.clone().count() > 0);
    for s in offered {
        assert!(!s.check.disturbs(), "{s:?}");
    }
}

#[test]
fn a_proven_case_closes_with_its_proof_and_what_is_open() {
    let all = [
        ev(K::MachinesOut, A::ThreeOrMore, AsFound),
        ev(K::BasinOnArrival, A::BasinLow, AsFound),
        ev(K::CallAsFound, A::Calls, AsFound),
        ev(K::CoilVoltage, A::VoltageGood, AsFound),
        ev(K::CoilPull, A::NoPull, AsFound),
        ev(K::CoilResistance, A::CoilReadsOpen, Testing),
    ];
    let tracer = think(Observed::default(), &all);
    let closing = tracer.closing(Mode::CoilOpen).unwrap();
    assert!(closing.cause.probability > 0.95, "{:?}", closing.cause);
    assert!(closing.proof.contains(&Source::Evidence(5)));
    assert!(closing.unproven.contains(&Unproven::NoRefill));
    assert!(closing.unproven.contains(&Unproven::NotRestarted));
    assert!(
        !closing
            .unproven
            .iter()
            .any(|u| matches!(u, Unproven::NotConfirmed(_)))
    );
    assert_eq!(tracer.advise(Place::Basement).settled, Some(Mode::CoilOpen));
    assert!(
        tracer
            .turn(Mode::CoilOpen)
            .is_none_or(|t| t.probability < 0.5)
    );
}

/// A float valve has no coil, a single packaged unit no neighbors.
#[test]
fn the_plant_decides_which_faults_and_checks_there_are() {
    let float = Plant {
        level_control: LevelControl::FloatValve,
        ..Plant::default()
    };
    let modes = float.modes();
    assert!(!modes.contains(&Mode::CoilOpen) && modes.contains(&Mode::FloatJammedUp));
    assert!(!K::CoilVoltage.exists(&float) && !K::FoamLook.exists(&float));
    assert!(K::FloatByHand.exists(&float) && !K::FloatByHand.exists(&Plant::default()));
    let open = Plant {
        fill_valve: FillValve::NormallyOpen,
        ..Plant::default()
    };
    assert!(!open.can_have(Mode::CoilOpen));
    assert_eq!(open.lowers(Mode::RelayContactWelded), Lowers::Surely);
    let single = Plant {
        machines: 1,
        ..Plant::default()
    };
    assert!(!K::MachinesOut.exists(&single));
}
