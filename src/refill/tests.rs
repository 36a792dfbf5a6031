//! The room as a whole, on simulated basins.

use proptest::prelude::*;
use uom::si::ratio::ratio;
use uom::si::volume_rate::liter_per_second;

use super::sim::{Noise, Run, lps, m, marks, setup};
use super::*;
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
    assert_eq!(outcome.delays.call_to_water_s, Ok(4.0));
    let differential = outcome.differential.unwrap();
    assert!(differential.low < m(0.16) && m(0.16) < differential.high);
    assert!(has(&outcome, |f| *f == Finding::OneCycleOnly));
    assert_eq!(outcome.next, Some(NextReading::RunAgain));
}

#[test]
fn the_interval_covers_the_true_flow_about_as_often_as_it_says() {
    let mut noise = Noise(20_240);
    let (mut inside, mut runs) = (0, 0);
    let mut widest: f64 = 0.0;
    for i in 0..600 {
        let run = Run {
            valve: 0.4 + 1.6 * noise.uniform(),
            loss: 0.1,
            readings: 3 + i % 10,
            ripple: 0.0018,
            ..Run::default()
        };
        let setup = Setup {
            loss_while_testing: lps(run.loss),
            ..setup()
        };
        let net = judge(&setup, &marks(&run, &mut noise))
            .fill_net
            .unwrap()
            .flow;
        let truth = lps(run.valve - run.loss);
        runs += 1;
        inside += usize::from(net.low <= truth && truth <= net.high);
        widest = widest.max(((net.high - net.low) / truth).get::<ratio>());
    }
    let share = inside as f64 / runs as f64;
    assert!((0.90..=0.99).contains(&share), "covered {share}");
    assert!(
        widest < 0.6,
        "an interval that says nothing covers everything: {widest}"
    );
}

#[test]
fn one_slip_of_the_tape_is_left_out_and_the_flow_stands() {
    let mut noise = Noise(7);
    let (mut inside, mut found) = (0, 0);
    for i in 0..300 {
        // Off by 2 in up or down, at any place.
        let off = if i % 2 == 0 { 0.0508 } else { -0.0508 };
        let run = Run {
            readings: 8,
            slip: Some((i % 8, off)),
            ..Run::default()
        };
        let outcome = judge(&setup(), &marks(&run, &mut noise));
        let fit = outcome.fill_net.unwrap();
        found += usize::from(fit.left_out.len() == 1);
        inside += usize::from(fit.flow.low <= lps(1.8) && lps(1.8) <= fit.flow.high);
    }
    assert!(found >= 285, "found {found} of 300");
    assert!(inside >= 270, "covered {inside} of 300");
}

#[test]
fn a_valve_below_the_need_never_passes() {
    let mut noise = Noise(3);
    let mut failed = 0;
    for i in 0..300 {
        let setup = Setup {
            makeup_need: lps(1.0),
            ..setup()
        };
        let run = Run {
            valve: 0.8,
            readings: 2 + i % 8,
            ripple: 0.002,
            ..Run::default()
        };
        let verdict = judge(&setup, &marks(&run, &mut noise)).verdict;
        assert!(
            !matches!(verdict, Verdict::Pass | Verdict::PassWithWatch),
            "run {i}"
        );
        failed += usize::from(verdict == Verdict::Fail);
    }
    assert!(
        failed > 200,
        "clearly short, yet failed only {failed} of 300"
    );
}

#[test]
fn losses_are_added_back_and_their_doubt_kept() {
    let setup = Setup {
        loss_while_testing: lps(0.4),
        ..setup()
    };
    let run = Run {
        valve: 1.2,
        loss: 0.4,
        ..Run::default()
    };
    let outcome = judge(&setup, &marks(&run, &mut Noise(9)));
    let (net, gross) = (outcome.fill_net.unwrap().flow, outcome.fill_gross.unwrap());
    let difference = (gross.value - net.value).get::<liter_per_second>();
    assert!((difference - 0.4).abs() < 1e-12);
    assert!(gross.low < lps(1.2) && lps(1.2) < gross.high);
    assert!(gross.high - gross.low > net.high - net.low);
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

/// `begun`, then a call at 5.1 min and water at 5.2 min.
fn filling() -> Vec<Mark> {
    let mut all = begun();
    all.extend([at(5.1, K::CallSeen), at(5.2, K::WaterSeen)]);
    all
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
    // Rising water nobody noted is not "no water".
    let marks = [
        at(5.1, K::CallSeen),
        read(6.0, 0.25),
        read(8.0, 0.20),
        read(10.0, 0.15),
    ];
    let rose = with(begun(), &marks);
    assert_eq!(rose.verdict, Verdict::NotProven);
    assert!(has(&rose, |f| *f == Finding::WaterNotNoted));
    assert_eq!(rose.next, Some(NextReading::NoteWater));
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
            drip: 0.3,
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
    assert!(flow.low < lps(0.3) && lps(0.3) < flow.high);
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
        low_limit: Some(m(0.26)),
        ..setup()
    };
    let outcome = judge(&off, &all);
    assert_eq!(outcome.verdict, Verdict::PassWithWatch);
    assert!(has(&outcome, |f| matches!(f, Finding::CallLevelOff { .. })));
    assert!(has(&outcome, |f| matches!(f, Finding::StopLevelOff { .. })));
    assert!(has(&outcome, |f| *f
        == Finding::LowLimitReached { lowest: m(0.27) }));
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
fn the_figure_holds_every_point_and_limit() {
    let run = Run {
        slip: Some((3, 0.06)),
        ..Run::default()
    };
    let all = marks(&run, &mut Noise(1));
    let outcome = judge(&setup(), &all);
    let figure = figure(&setup(), &all, &outcome, TickUnit::Inches);
    let inside = |level: f64| figure.y_top_m <= level && level <= figure.y_bottom_m;
    assert!(
        figure
            .points
            .iter()
            .all(|p| inside(p.level_m) && p.t_s <= figure.x_max_s)
    );
    assert_eq!(figure.points.iter().filter(|p| p.left_out).count(), 1);
    assert_eq!((figure.lines.len(), figure.limits.len()), (3, 4));
    assert!(figure.y_ticks.iter().all(|t| inside(t.at)) && figure.y_ticks.len() >= 4);
    assert_eq!(figure.marks.len(), 6);
}

fn any_mark() -> impl Strategy<Value = Mark> {
    let wild = any::<f64>().prop_filter("finite", |v| v.is_finite());
    let level = prop_oneof![-0.1..0.5f64, wild.clone()];
    let kind = prop_oneof![
        4 => level.prop_map(|l| K::Level { below_overflow: m(l) }),
        1 => Just(K::DrawdownBegan),
        1 => Just(K::DrawdownEnded),
        1 => Just(K::CallSeen),
        1 => Just(K::WaterSeen),
        1 => Just(K::ShutOff),
        1 => Just(K::Stopped),
        1 => Just(K::Interrupted),
    ];
    let time = prop_oneof![8 => -100.0..2000.0f64, 2 => (0..20i32).prop_map(|t| f64::from(t) * 60.0), 1 => wild];
    (time, kind).prop_map(|(at_s, kind)| Mark { at_s, kind })
}

fn all_finite(text: &str) -> bool {
    !text.contains("NaN") && !text.contains("inf")
}

proptest! {
    #[test]
    fn any_marks_in_any_order_give_the_same_sound_outcome(
        all in prop::collection::vec(any_mark(), 0..24),
        seed in any::<u64>(),
    ) {
        let outcome = judge(&setup(), &all);
        let mut noise = Noise(seed);
        let mut shuffled: Vec<(f64, Mark)> = all.iter().map(|m| (noise.uniform(), *m)).collect();
        shuffled.sort_by(|a, b| a.0.total_cmp(&b.0));
        let shuffled: Vec<Mark> = shuffled.into_iter().map(|s| s.1).collect();
        prop_assert_eq!(&judge(&setup(), &shuffled), &outcome);
        prop_assert_eq!(expected(&shuffled), expected(&all));
        prop_assert_eq!(allowed(&shuffled), allowed(&all));
        prop_assert!(!outcome.findings.is_empty());
        prop_assert!(all_finite(&format!("{outcome:?}")), "{:?}", outcome);
        let drawn = figure(&setup(), &all, &outcome, TickUnit::Inches);
        prop_assert!(drawn.x_max_s > drawn.x_min_s && drawn.y_bottom_m > drawn.y_top_m);
        prop_assert!(all_finite(&format!("{drawn:?}")), "{:?}", drawn);
        for estimate in [&outcome.fill_gross].into_iter().flatten() {
            prop_assert!(estimate.low <= estimate.value && estimate.value <= estimate.high);
        }
        if outcome.verdict == Verdict::Pass {
            let proofs = outcome.findings.iter().filter(|f| f.weight() == Weight::Proof).count();
            prop_assert!(proofs == 4);
        }
        if outcome.verdict == Verdict::Fail {
            prop_assert!(outcome.findings[0].weight() == Weight::Fail);
        }
    }
}
