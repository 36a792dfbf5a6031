//! The verdict for each shape a test can take.

use uom::si::volume_rate::liter_per_second;

use crate::refill::sim::{Noise, Run, lps, m, marks, setup};
use crate::refill::*;
use MarkKind as K;

fn at(minutes: f64, kind: MarkKind) -> Mark {
    Mark::new(minutes * 60.0, kind)
}

fn read(minutes: f64, metres: f64) -> Mark {
    Mark::level(minutes * 60.0, m(metres))
}

fn has(outcome: &Outcome, test: impl Fn(&Finding) -> bool) -> bool {
    outcome.findings.iter().any(test)
}

#[test]
fn a_working_chain_passes_with_its_figures() {
    let outcome = judge(&setup(), &marks(&Run::default(), &mut Noise(1)));
    assert_eq!(outcome.verdict, Verdict::Pass, "{:#?}", outcome.findings);
    let gross = outcome.fill_gross.unwrap();
    assert!(gross.low < lps(1.8) && lps(1.8) < gross.high);
    assert!((gross.value.get::<liter_per_second>() - 1.8).abs() < 0.1);
    let drawdown = outcome.drawdown.as_ref().unwrap().flow;
    assert!(drawdown.low < lps(3.0) && lps(3.0) < drawdown.high);
    assert_eq!(outcome.delays.call_to_water.unwrap().value_s, 4.0);
    let differential = outcome.differential.unwrap();
    assert!(differential.low < m(0.16) && m(0.16) < differential.high);
    assert!(has(&outcome, |f| *f == Finding::OneCycleOnly));
    assert_eq!(outcome.next, Some(NextReading::RunAgain));
}

/// Drawn down past the call level, drain shut, call and water as told.
fn begun() -> Vec<Mark> {
    vec![
        at(0.0, K::DrawdownBegan),
        read(0.1, 0.10),
        read(3.0, 0.20),
        read(5.0, 0.27),
        at(5.1, K::DrawdownEnded),
    ]
}

/// Drawn down to 0.25 m, call and drain shut at 5.1 min, water at 5.2 min.
fn filling() -> Vec<Mark> {
    vec![
        at(0.0, K::DrawdownBegan),
        read(0.1, 0.10),
        read(3.0, 0.19),
        read(5.0, 0.25),
        at(5.1, K::DrawdownEnded),
        at(5.1, K::CallSeen),
        at(5.2, K::WaterSeen),
    ]
}

fn with(mut all: Vec<Mark>, more: &[Mark]) -> Outcome {
    all.extend_from_slice(more);
    judge(&setup(), &all)
}

#[test]
fn nothing_done_is_not_proven_and_says_begin() {
    let outcome = judge(&setup(), &[]);
    assert_eq!(outcome.verdict, Verdict::NotProven);
    assert_eq!(outcome.findings, [Finding::NothingYet]);
    assert_eq!(outcome.next, Some(NextReading::Begin));
}

#[test]
fn no_call_fails_once_the_level_has_been_down_for_a_minute() {
    let early = with(begun(), &[at(5.5, K::Stopped)]);
    assert_eq!(early.verdict, Verdict::NotProven);
    let late = with(begun(), &[at(9.0, K::Stopped)]);
    assert_eq!(late.verdict, Verdict::Fail);
    assert!(has(&late, |f| *f == Finding::NeverCalled { lowest: m(0.27) }));
    let away = with(begun(), &[at(6.0, K::Interrupted), at(9.0, K::Stopped)]);
    assert_eq!(away.verdict, Verdict::NotProven);
    let shallow = judge(
        &setup(),
        &[at(0.0, K::DrawdownBegan), read(1.0, 0.2), read(9.0, 0.24)],
    );
    assert_eq!(shallow.verdict, Verdict::NotProven);
    assert_eq!(shallow.next, Some(NextReading::DrawFarther));
}

#[test]
fn a_call_without_water_fails_after_three_minutes() {
    let called = with(begun(), &[at(5.1, K::CallSeen), at(6.0, K::Stopped)]);
    assert_eq!(called.verdict, Verdict::NotProven);
    let waited = with(begun(), &[at(5.1, K::CallSeen), at(9.0, K::Stopped)]);
    assert_eq!(waited.verdict, Verdict::Fail);
    assert!(has(&waited, |f| matches!(f, Finding::CalledNoWater { .. })));
    // Rising water nobody noted is not "no water": the readings show it.
    let marks = [
        at(5.1, K::CallSeen),
        read(6.0, 0.25),
        read(8.0, 0.20),
        read(10.0, 0.15),
    ];
    let rose = with(begun(), &marks);
    assert_eq!(rose.verdict, Verdict::NotProven);
    assert!(has(&rose, |f| *f == Finding::WaterByReadings));
    assert!(rose.fill_gross.is_ok());
    assert_eq!(rose.next, Some(NextReading::WaitForShutOff));
}

#[test]
fn a_fill_that_runs_on_fails() {
    let on = [
        read(6.0, 0.25),
        read(8.0, 0.15),
        read(10.0, 0.05),
        at(11.0, K::Stopped),
    ];
    let outcome = with(filling(), &on);
    assert_eq!(outcome.verdict, Verdict::Fail);
    assert!(has(&outcome, |f| *f == Finding::NoShutOff { level: m(0.05) }));
    let over = [
        read(6.0, 0.25),
        read(8.0, 0.12),
        read(10.0, 0.0),
        at(11.0, K::ShutOff),
    ];
    let outcome = with(filling(), &over);
    assert_eq!(outcome.verdict, Verdict::Fail);
    assert!(has(&outcome, |f| matches!(f, Finding::PastOverflow { .. })));
}

#[test]
fn a_test_ended_early_proves_nothing() {
    let some = [read(6.0, 0.25), read(8.0, 0.20), at(8.5, K::Stopped)];
    let outcome = with(filling(), &some);
    assert_eq!(outcome.verdict, Verdict::NotProven);
    assert!(has(&outcome, |f| *f == Finding::ShutOffNotSeen));
    let none = with(filling(), &[at(9.0, K::ShutOff)]);
    assert!(has(&none, |f| *f
        == Finding::FillNotMeasured(Missing::NeedTwoLevels)));
    assert_eq!(none.verdict, Verdict::NotProven);
}

/// A good fill from `filling` to 0.10 m, shut off at ten minutes.
const GOOD_FILL: [(f64, f64); 4] = [(6.0, 0.24), (7.0, 0.205), (8.0, 0.17), (9.0, 0.135)];

fn good_fill() -> Vec<Mark> {
    let mut more: Vec<Mark> = GOOD_FILL.iter().map(|&(t, l)| read(t, l)).collect();
    more.push(at(10.0, K::ShutOff));
    more
}

#[test]
fn water_without_the_call_noted_is_at_best_a_watch() {
    let mut all = begun();
    all.push(at(5.2, K::WaterSeen));
    let outcome = with(all, &good_fill());
    assert_eq!(
        outcome.verdict,
        Verdict::PassWithWatch,
        "{:#?}",
        outcome.findings
    );
    assert!(has(&outcome, |f| *f == Finding::CallNotNoted));
    let start = [at(-1.0, K::WaterSeen)];
    let outcome = with(begun(), &start);
    assert!(has(&outcome, |f| *f == Finding::WaterFromTheStart));
    assert_eq!(outcome.verdict, Verdict::NotProven);
}

#[test]
fn drip_and_sag_are_told_from_a_tight_valve() {
    let drip = marks(
        &Run {
            drip: 0.12,
            ..Run::default()
        },
        &mut Noise(4),
    );
    let outcome = judge(&setup(), &drip);
    assert_eq!(outcome.verdict, Verdict::PassWithWatch);
    let Some(Finding::AfterDrip { flow }) = outcome
        .findings
        .iter()
        .find(|f| matches!(f, Finding::AfterDrip { .. }))
    else {
        panic!("no drip in {:#?}", outcome.findings)
    };
    assert!(flow.low < lps(0.12) && lps(0.12) < flow.high);
    // A tight one says what is ruled out; two readings of ten seconds rule out
    // nothing, and then another reading is asked for.
    let tight = marks(&Run::default(), &mut Noise(4));
    let held = |o: &Outcome| {
        let find = |f: &Finding| match f {
            Finding::Held { most, told } => Some((*most, *told)),
            _ => None,
        };
        o.findings.iter().find_map(find).unwrap()
    };
    let (most, told) = held(&judge(&setup(), &tight));
    assert!(told && most > lps(0.0) && most <= lps(0.19), "{most:?}");
    let stop = tight.iter().find(|m| m.kind == K::ShutOff).unwrap().at_s;
    let mut hasty: Vec<Mark> = tight.iter().copied().filter(|m| m.at_s <= stop).collect();
    hasty.push(Mark::level(stop + 5.0, m(0.1)));
    hasty.push(Mark::level(stop + 45.0, m(0.1)));
    let outcome = judge(&setup(), &hasty);
    assert!(!held(&outcome).1);
    assert_eq!(outcome.next, Some(NextReading::LevelAfterShutOff));
    // More than the plant uses: it will run over.
    let passing = marks(
        &Run {
            drip: 0.4,
            ..Run::default()
        },
        &mut Noise(4),
    );
    let outcome = judge(&setup(), &passing);
    assert_eq!(outcome.verdict, Verdict::Fail);
    assert!(has(&outcome, |f| matches!(f, Finding::ValvePasses { .. })));
    let sag = marks(
        &Run {
            drip: -0.3,
            ..Run::default()
        },
        &mut Noise(4),
    );
    assert!(has(&judge(&setup(), &sag), |f| matches!(
        f,
        Finding::Sag { .. }
    )));
}

#[test]
fn a_stop_far_short_of_the_stop_level_fails() {
    // 4 in under the stop level set, all else right: told "full" too early.
    let setup = Setup {
        stop_level: Some(m(0.10 - 0.1016)),
        call_level: Some(m(0.25)),
        ..setup()
    };
    let mut all = filling();
    all.extend(good_fill());
    all.push(read(10.5, 0.10));
    let outcome = judge(&setup, &all);
    assert_eq!(outcome.verdict, Verdict::Fail, "{:?}", outcome.findings);
    assert!(has(&outcome, |f| matches!(f, Finding::StoppedShort { .. })));
}

#[test]
fn a_call_far_below_its_level_fails_unless_the_basin_was_found_there() {
    let setup = Setup {
        call_level: Some(m(0.15)),
        ..setup()
    };
    let mut all = filling();
    all.extend(good_fill());
    let late = |o: &Outcome| has(o, |f| matches!(f, Finding::CalledLate { .. }));
    assert!(late(&judge(&setup, &all)));
    // Found low: the first reading is below the call level already.
    all.retain(|mark| mark.at_s > 200.0 || mark.kind == K::DrawdownBegan);
    assert!(!late(&judge(&setup, &all)));
}

#[test]
fn a_fill_that_comes_back_on_by_itself_is_chatter() {
    let mut all = filling();
    all.extend(good_fill());
    for minutes in [10.3, 10.8] {
        all.push(at(minutes, K::WaterSeen));
        all.push(at(minutes + 0.2, K::ShutOff));
    }
    let outcome = judge(&setup(), &all);
    assert!(has(&outcome, |f| matches!(
        f,
        Finding::Chatter { times: 2, .. }
    )));
    assert_ne!(outcome.verdict, Verdict::Pass);
}

#[test]
fn a_fill_below_the_valve_or_the_earlier_test_is_watched() {
    let mut all = filling();
    all.extend(good_fill());
    let gross = judge(&setup(), &all).fill_gross.unwrap();
    let range = |share: f64| {
        Some(FlowRange {
            low: gross.value * share,
            high: gross.value * (share + 0.2),
        })
    };
    let judged = |valve, earlier| {
        judge(
            &Setup {
                valve,
                earlier,
                ..setup()
            },
            &all,
        )
    };
    let sound = judged(range(0.9), range(0.9));
    assert_eq!(sound.verdict, Verdict::Pass);
    assert!(has(&sound, |f| matches!(f, Finding::FillAsEarlier { .. })));
    let slow = judged(range(1.5), range(1.5));
    assert_eq!(slow.verdict, Verdict::PassWithWatch);
    assert!(has(&slow, |f| matches!(f, Finding::FillBelowValve { .. })));
    assert!(has(&slow, |f| matches!(
        f,
        Finding::FillBelowEarlier { .. }
    )));
}

#[test]
fn an_open_drain_can_pass_but_never_fails_the_fill() {
    let mut all = filling();
    all.retain(|m| m.kind != K::DrawdownEnded);
    let outcome = with(all.clone(), &good_fill());
    assert!(has(&outcome, |f| *f == Finding::DrainNotClosed));
    assert_eq!(outcome.verdict, Verdict::Pass, "{:#?}", outcome.findings);
    all.extend(good_fill());
    let thirsty = Setup {
        makeup_need: lps(9.0),
        ..setup()
    };
    let outcome = judge(&thirsty, &all);
    assert_eq!(outcome.verdict, Verdict::NotProven);
    assert_eq!(outcome.next, Some(NextReading::NoteDrainClosed));
}

#[test]
fn a_fill_near_the_need_is_marginal_or_uncertain() {
    let mut all = filling();
    all.extend(good_fill());
    let gross = judge(&setup(), &all).fill_gross.unwrap();
    let verdict = |need| {
        judge(
            &Setup {
                makeup_need: need,
                ..setup()
            },
            &all,
        )
        .verdict
    };
    assert_eq!(verdict(gross.low / 1.3), Verdict::Pass);
    assert_eq!(verdict(gross.low / 1.1), Verdict::PassWithWatch);
    assert_eq!(verdict(gross.value), Verdict::NotProven);
    assert_eq!(verdict(gross.high * 1.01), Verdict::Fail);
    assert_eq!(verdict(lps(0.0)), Verdict::NotProven);
}

#[test]
fn levels_set_elsewhere_and_the_pump_inlet_are_watched() {
    let mut all = filling();
    all.extend(good_fill());
    let off = Setup {
        call_level: Some(m(0.20)),
        stop_level: Some(m(0.05)),
        low_limit: Some(m(0.245)),
        ..setup()
    };
    let outcome = judge(&off, &all);
    assert_eq!(outcome.verdict, Verdict::PassWithWatch);
    assert!(has(&outcome, |f| matches!(f, Finding::CallLevelOff { .. })));
    assert!(has(&outcome, |f| matches!(f, Finding::StopLevelOff { .. })));
    assert!(has(&outcome, |f| *f
        == Finding::LowLimitReached { lowest: m(0.25) }));
}

#[test]
fn two_cycles_count_and_one_failure_among_them_decides() {
    let later = |marks: &[Mark], by: f64| -> Vec<Mark> {
        marks
            .iter()
            .map(|m| Mark::new(m.at_s + by, m.kind))
            .collect()
    };
    let mut one = filling();
    one.extend(good_fill());
    let mut two = one.clone();
    two.extend(later(&one, 1200.0));
    let outcome = judge(&setup(), &two);
    assert_eq!(outcome.verdict, Verdict::Pass);
    assert!(has(&outcome, |f| *f == Finding::Cycles { run: 2, passed: 2 }));
    let mut dead = begun();
    dead.push(at(9.0, K::Stopped));
    one.extend(later(&dead, 1200.0));
    let outcome = judge(&setup(), &one);
    assert_eq!(outcome.verdict, Verdict::Fail, "the second call never came");
}

#[test]
fn a_stop_at_the_lip_is_not_shown_to_be_below_it() {
    let high = [
        read(6.0, 0.20),
        read(7.0, 0.15),
        read(8.0, 0.10),
        read(9.0, 0.05),
        at(9.95, K::ShutOff),
        read(10.0, 0.003),
    ];
    let outcome = with(filling(), &high);
    assert!(has(&outcome, |f| *f == Finding::FreeboardNotShown));
    assert_eq!(outcome.verdict, Verdict::NotProven);
    assert_eq!(outcome.next, Some(NextReading::LevelAtShutOff));
}

#[test]
fn readings_under_an_open_drain_do_not_count_as_filling() {
    let mut all = filling();
    all.retain(|m| m.kind != K::DrawdownEnded);
    // Drain open until 7 min: the level stands still though water runs.
    all.extend([read(5.5, 0.25), read(6.0, 0.25), read(6.5, 0.25)]);
    all.push(at(7.0, K::DrawdownEnded));
    all.extend([read(7.5, 0.24), read(8.5, 0.205), read(9.5, 0.17)]);
    let fit = judge(&setup(), &all).fill_net.unwrap();
    assert_eq!((fit.used, fit.from_s), (3, 450.0));
    // 6 m2 rising 35 mm a minute: 3.5 L/s.
    assert!((fit.flow.value.get::<liter_per_second>() - 3.5).abs() < 1e-9);
}

#[test]
fn a_call_with_water_already_coming_is_watched() {
    let mut all = filling();
    all.retain(|m| !matches!(m.kind, K::WaterSeen | K::Level { .. }));
    all.insert(1, at(2.0, K::WaterSeen));
    let outcome = with(all, &good_fill());
    assert!(has(
        &outcome,
        |f| matches!(f, Finding::WaterBeforeCall { lead_s } if *lead_s > 180.0)
    ));
    assert_eq!(outcome.delays.call_to_water, Err(Missing::OutOfOrder));
}
