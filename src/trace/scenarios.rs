//! Calls as they happen, told to the model from outside. The stories are
//! ours; the right culprit in each is common practice, no source.

use uom::si::electric_potential::volt;
use uom::si::length::meter;
use uom::si::temperature_interval::degree_fahrenheit;

use super::*;
use crate::quantity::{ElectricPotential, Length, TemperatureInterval};
use Answer as A;
use Check as K;
use Stage::{AsFound, Testing};

fn ev(check: Check, answer: Answer, stage: Stage) -> Evidence {
    assert!(
        check.answers().contains(&answer),
        "{check:?} cannot say {answer:?}"
    );
    Evidence {
        check,
        answer,
        stage,
    }
}

fn f(v: f64) -> Option<TemperatureInterval> {
    Some(TemperatureInterval::new::<degree_fahrenheit>(v))
}

fn believe(evidence: &[Evidence]) -> Belief {
    infer(&Plant::default(), &Observed::default(), evidence)
}

fn top(belief: &Belief) -> Suspect {
    belief.suspects[0]
}

/// Three out, basin dry, and everything works while tested.
fn dry_but_works() -> Vec<Evidence> {
    vec![
        ev(K::MachinesOut, A::ThreeOrMore, AsFound),
        ev(K::BasinOnArrival, A::BasinLow, AsFound),
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

#[test]
fn dry_on_arrival_yet_all_works_under_test_is_an_intermittent_false_full() {
    let belief = believe(&dry_but_works());
    let first = top(&belief);
    assert_eq!(first.mode, Mode::SensorFalseFull, "{belief:?}");
    assert_eq!(first.manner(), Manner::Intermittent);
    let second = belief.suspects[1].probability;
    assert!(first.probability > 3.0 * second, "{first:?} {second}");
    assert!(first.intermittent > 3.0 * first.steady, "{first:?}");
    assert_eq!(belief.nothing, 0.0, "a dry basin is never nothing");
    assert!(
        belief.contradictions.is_empty(),
        "{:?}",
        belief.contradictions
    );
    let want = Fault {
        mode: Mode::SensorFalseFull,
        manner: Manner::Intermittent,
    };
    assert_eq!(belief.best.0.faults, [Some(want), None]);
}

#[test]
fn a_lamp_that_said_full_over_the_dry_basin_settles_it() {
    let mut all = dry_but_works();
    all.push(ev(K::CallAsFound, A::Satisfied, AsFound));
    let advice = advise(&Plant::default(), &Observed::default(), &all, Place::Roof);
    assert_eq!(advice.settled, Some(Mode::SensorFalseFull));
    let best = advice.best.expect("it still wants proving");
    assert_eq!(best.check, K::ProbeFilm);
    assert_eq!(
        best.why,
        Reason::ProvesIt {
            mode: Mode::SensorFalseFull
        }
    );
    let weights = why(
        &Plant::default(),
        &Observed::default(),
        &all,
        Mode::SensorFalseFull,
    );
    assert_eq!(weights[0].source, Source::Evidence(all.len() - 1));
    assert!(
        weights[0].speaks_for() && weights[0].strength() == Strength::Strong,
        "{weights:?}"
    );
}

#[test]
fn one_machine_out_on_a_sound_loop_is_the_machine() {
    let belief = believe(&[
        ev(K::MachinesOut, A::OneMachine, AsFound),
        ev(K::BasinOnArrival, A::BasinNormal, AsFound),
        ev(K::ApproachToday, A::ApproachUsual, AsFound),
    ]);
    assert_eq!(top(&belief).mode, Mode::MachineFault);
    assert!(top(&belief).probability > 0.85, "{:?}", top(&belief));
}

#[test]
fn high_approach_with_a_full_basin_and_usual_range_is_the_air_side() {
    let words = believe(&[
        ev(K::MachinesOut, A::ThreeOrMore, AsFound),
        ev(K::BasinOnArrival, A::BasinNormal, AsFound),
        ev(K::ApproachToday, A::ApproachHigh, AsFound),
        ev(K::RangeWidth, A::RangeUsual, AsFound),
    ]);
    assert_eq!(top(&words).mode, Mode::TowerAirSide, "{words:?}");
    assert!(top(&words).probability > 0.8);
    let numbers = Observed {
        machines_out: Some(3),
        range: f(10.4),
        design_range: f(10.0),
        approach: f(14.0),
        predicted_approach: f(7.0),
        ..Observed::default()
    };
    let full = [ev(K::BasinOnArrival, A::BasinNormal, AsFound)];
    let read = infer(&Plant::default(), &numbers, &full);
    assert_eq!(top(&read).mode, Mode::TowerAirSide, "{read:?}");
    assert!(top(&read).probability > 0.8, "{read:?}");
}

#[test]
fn wide_range_and_low_approach_over_a_full_basin_is_water_flow() {
    let numbers = Observed {
        machines_out: Some(3),
        range: f(20.0),
        design_range: f(10.0),
        approach: f(5.0),
        predicted_approach: f(7.0),
        basin_below_overflow: Some(Length::new::<meter>(0.02)),
        call_level: Some(Length::new::<meter>(0.10)),
        ..Observed::default()
    };
    let belief = infer(&Plant::default(), &numbers, &[]);
    assert_eq!(top(&belief).mode, Mode::WaterFlowLow, "{belief:?}");
    assert!(top(&belief).probability > 0.8, "{belief:?}");
}

#[test]
fn the_same_range_over_a_low_basin_is_the_makeup_not_the_pump() {
    let numbers = Observed {
        machines_out: Some(3),
        range: f(20.0),
        design_range: f(10.0),
        basin_below_overflow: Some(Length::new::<meter>(0.25)),
        call_level: Some(Length::new::<meter>(0.10)),
        ..Observed::default()
    };
    let belief = infer(&Plant::default(), &numbers, &[]);
    assert_eq!(top(&belief).mode, Mode::SensorFalseFull, "{belief:?}");
    let of = |m| {
        belief
            .suspects
            .iter()
            .find(|s| s.mode == m)
            .expect("listed")
            .probability
    };
    assert!(of(Mode::WaterFlowLow) < 0.08, "{belief:?}");
}

/// Basin dry with several out, then what each story adds.
fn dry(more: &[Evidence]) -> Belief {
    let mut all = vec![
        ev(K::MachinesOut, A::ThreeOrMore, AsFound),
        ev(K::BasinOnArrival, A::BasinLow, AsFound),
    ];
    all.extend_from_slice(more);
    believe(&all)
}

#[test]
fn each_link_of_the_makeup_chain_is_named_by_its_own_readings() {
    let calls = ev(K::CallAsFound, A::Calls, AsFound);
    let volts = ev(K::CoilVoltage, A::VoltageGood, AsFound);
    let pulls = ev(K::CoilPull, A::Pulls, AsFound);
    let stories: [(Mode, Vec<Evidence>); 8] = [
        (
            Mode::CoilOpen,
            vec![calls, volts, ev(K::CoilPull, A::NoPull, AsFound)],
        ),
        (
            Mode::HandValveShut,
            vec![
                calls,
                ev(K::ForceValve, A::NoFlow, Testing),
                ev(K::HandValves, A::FoundShut, AsFound),
            ],
        ),
        (
            Mode::ControlPowerLost,
            vec![
                ev(K::CallAsFound, A::Dark, AsFound),
                ev(K::ControlVoltage, A::NoVoltage, AsFound),
            ],
        ),
        (
            Mode::RelayContactOpen,
            vec![
                calls,
                ev(K::ControlVoltage, A::VoltageGood, AsFound),
                ev(K::CoilVoltage, A::NoVoltage, AsFound),
                ev(K::Substitution, A::IgnoresResistor, Testing),
            ],
        ),
        (
            Mode::StrainerBlocked,
            vec![
                calls,
                volts,
                pulls,
                ev(K::ForceValve, A::NoFlow, Testing),
                ev(K::StrainerBlowOff, A::StrainerBlocked, Testing),
            ],
        ),
        (
            Mode::MainsLow,
            vec![
                calls,
                ev(K::ForceValve, A::WeakFlow, Testing),
                ev(K::MainsPressure, A::MainsLow, Testing),
            ],
        ),
        (
            Mode::ValveStuck,
            vec![
                calls,
                volts,
                pulls,
                ev(K::FlowOnCall, A::NoFlow, AsFound),
                ev(K::ForceValve, A::FullFlow, Testing),
                ev(K::HandValves, A::AllOpen, AsFound),
                ev(K::StrainerBlowOff, A::StrainerClean, Testing),
                ev(K::WaterLoss, A::NoLoss, AsFound),
            ],
        ),
        (
            Mode::BleedOrLeak,
            vec![
                calls,
                volts,
                ev(K::ForceValve, A::FullFlow, Testing),
                ev(K::WaterLoss, A::LosingWater, AsFound),
            ],
        ),
    ];
    for (mode, more) in stories {
        let belief = dry(&more);
        assert_eq!(top(&belief).mode, mode, "{belief:?}");
        assert!(top(&belief).probability > 0.7, "{mode:?}: {belief:?}");
        assert!(
            belief.contradictions.is_empty(),
            "{mode:?}: {:?}",
            belief.contradictions
        );
    }
}

#[test]
fn two_faults_at_once_are_both_named() {
    let belief = dry(&[
        ev(K::CallAsFound, A::Calls, AsFound),
        ev(K::CoilVoltage, A::VoltageGood, AsFound),
        ev(K::CoilPull, A::NoPull, AsFound),
        ev(K::ForceValve, A::NoFlow, Testing),
        ev(K::HandValves, A::FoundShut, AsFound),
    ]);
    let mut two = [belief.suspects[0], belief.suspects[1]];
    two.sort_by_key(|s| s.mode);
    assert_eq!(two.map(|s| s.mode), [Mode::CoilOpen, Mode::HandValveShut]);
    assert!(two.iter().all(|s| s.probability > 0.4), "{belief:?}");
}

#[test]
fn answers_that_cannot_both_be_true_are_flagged() {
    let belief = dry(&[
        ev(K::HandValves, A::FoundShut, AsFound),
        ev(K::ForceValve, A::FullFlow, AsFound),
    ]);
    assert_eq!(belief.contradictions, [2], "{belief:?}");
}

#[test]
fn a_dead_control_is_found_by_the_number_too() {
    let numbers = Observed {
        control_voltage: Some(ElectricPotential::new::<volt>(0.3)),
        ..Observed::default()
    };
    let low = [ev(K::BasinOnArrival, A::BasinLow, AsFound)];
    let belief = infer(&Plant::default(), &numbers, &low);
    assert_eq!(top(&belief).mode, Mode::ControlPowerLost);
    assert!(top(&belief).probability > 0.8, "{belief:?}");
}

#[test]
fn nothing_wrong_is_possible_only_while_no_symptom_stands() {
    let calm = [ev(K::BasinOnArrival, A::BasinNormal, AsFound)];
    assert!(believe(&calm).nothing > 0.0);
    assert_eq!(
        believe(&[ev(K::MachinesOut, A::OneMachine, AsFound)]).nothing,
        0.0
    );
    let out = Observed {
        machines_out: Some(2),
        ..Observed::default()
    };
    assert_eq!(infer(&Plant::default(), &out, &calm).nothing, 0.0);
}

#[test]
fn as_found_looks_come_before_anything_is_touched() {
    let evidence = [ev(K::MachinesOut, A::ThreeOrMore, AsFound)];
    let (plant, observed) = (Plant::default(), Observed::default());
    let advice = advise(&plant, &observed, &evidence, Place::MachineRoom);
    let offered = advice.best.iter().chain(&advice.runners_up);
    assert!(offered.clone().count() > 0);
    for s in offered {
        assert!(!s.check.disturbs(), "{s:?}");
    }
}

/// An intermittent cause can be out of reach of further looking; then the
/// advice turns from searching to proving.
#[test]
fn when_looking_is_used_up_a_likely_cause_is_put_to_the_proof() {
    let mut all = dry_but_works();
    all.push(ev(K::FoamLook, A::NoFoam, Testing));
    for check in Check::ALL {
        let asked = all.iter().any(|e| e.check == check);
        if !asked && ![K::ProbeFilm, K::RefillTest].contains(&check) {
            all.push(Evidence {
                check,
                answer: A::CouldNot,
                stage: Testing,
            });
        }
    }
    let advice = advise(&Plant::default(), &Observed::default(), &all, Place::Roof);
    assert_eq!(advice.settled, None);
    let best = advice.best.expect("something is left");
    assert_eq!(best.check, K::ProbeFilm);
    all.push(ev(K::ProbeFilm, A::HolderFilmed, Testing));
    let advice = advise(&Plant::default(), &Observed::default(), &all, Place::Roof);
    let best = advice.best.expect("the refill is left");
    assert_eq!(best.check, K::RefillTest);
    assert_eq!(
        best.why,
        Reason::ProvesIt {
            mode: Mode::SensorFalseFull
        }
    );
    all.push(ev(K::RefillTest, A::Refilled, Testing));
    assert_eq!(
        advise(&Plant::default(), &Observed::default(), &all, Place::Roof).best,
        None
    );
}

/// The as-found look tells little by itself here, but nothing may be opened
/// before it was had: it must be asked for, not wait for ever.
#[test]
fn a_look_that_opens_the_way_to_a_better_check_is_asked_for() {
    let mut all = vec![
        ev(K::MachinesOut, A::TwoMachines, AsFound),
        ev(K::CallAsFound, A::Calls, AsFound),
        ev(K::CoilPull, A::Pulls, AsFound),
        ev(K::FlowOnCall, A::NoFlow, AsFound),
        ev(K::HandValves, A::AllOpen, AsFound),
        ev(K::MainsPressure, A::MainsGood, AsFound),
        ev(K::CoilVoltage, A::VoltageGood, AsFound),
        ev(K::FanAndAir, A::AirGood, AsFound),
        ev(K::WaterLoss, A::NoLoss, AsFound),
    ];
    let ask = |all: &[Evidence]| {
        advise(&Plant::default(), &Observed::default(), all, Place::Roof)
            .best
            .expect("more to ask")
    };
    let look = ask(&all);
    assert_eq!(
        (look.check, look.why),
        (K::BasinOnArrival, Reason::BeforeTouching)
    );
    all.push(ev(K::BasinOnArrival, A::BasinLow, AsFound));
    assert!([K::StrainerBlowOff, K::ForceValve].contains(&ask(&all).check));
}
