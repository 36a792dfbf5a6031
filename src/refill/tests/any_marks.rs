//! What holds for any marks at all, and the figure.

use MarkKind as K;
use proptest::prelude::*;

use crate::refill::sim::{Noise, Run, m, marks, setup};
use crate::refill::*;

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
