//! The fit against SciPy, on the figures of `tests/reference/refill_fit.py`.

use coldsump::physics::basin::{Basin, Plan};
use coldsump::quantity::{Length, VolumeRate};
use coldsump::refill::{Mark, MarkKind, Setup, judge};
use uom::si::length::meter;
use uom::si::volume_rate::cubic_meter_per_second;

fn m(v: f64) -> Length {
    Length::new::<meter>(v)
}

/// One set: readings, which are left out, slope, half interval, middle level.
#[derive(Default)]
struct Set {
    readings: Vec<(f64, f64)>,
    left_out: Vec<f64>,
    figures: [f64; 3],
}

fn sets() -> Vec<Set> {
    let mut sets: Vec<Set> = Vec::new();
    for line in include_str!("../reference/refill_fit.csv").lines().skip(1) {
        let n: Vec<f64> = line.split(',').map(|c| c.parse().unwrap()).collect();
        if n[0] as usize == sets.len() {
            sets.push(Set::default());
        }
        let set = sets.last_mut().unwrap();
        set.readings.push((n[1], n[2]));
        if n[3] == 1.0 {
            set.left_out.push(n[1]);
        }
        set.figures = [n[4], n[5], n[6]];
    }
    sets
}

#[test]
fn slope_interval_and_slips_are_those_of_scipy() {
    // 5 m2 of upright walls: a flow is five times a slope.
    let area = 5.0;
    let setup = Setup {
        basin: Basin {
            plan: Plan::Rectangular {
                length: m(2.5),
                width: m(2.0),
            },
            depth: m(0.5),
        },
        makeup_need: VolumeRate::default(),
        design_need: None,
        loss_while_testing: VolumeRate::default(),
        call_level: None,
        stop_level: None,
        low_limit: None,
        valve: None,
        earlier: None,
        valve_cv: None,
        mains: None,
        drain: None,
        earlier_drain: None,
    };
    let mut slips = 0;
    let sets = sets();
    assert_eq!(sets.len(), 24);
    for (n, set) in sets.iter().enumerate() {
        let mut marks = vec![Mark::new(-1.0, MarkKind::WaterSeen)];
        marks.extend(set.readings.iter().map(|(t, l)| Mark::level(*t, m(*l))));
        marks.push(Mark::new(1000.0, MarkKind::Stopped));
        let fit = judge(&setup, &marks).fill_net.unwrap();
        let flow = |v: VolumeRate| v.get::<cubic_meter_per_second>();
        let half = flow(fit.flow.high - fit.flow.value);
        let mid = 0.5 * (fit.from_level + fit.to_level).get::<meter>();
        assert_eq!(fit.left_out, set.left_out, "set {n}");
        slips += fit.left_out.len();
        // Student's t here is an expansion, good to 0.001 of about 2.2.
        for (ours, theirs, near) in [
            (flow(fit.flow.value), -area * set.figures[0], 1e-8),
            (half, area * set.figures[1], 1e-3),
            (mid, set.figures[2], 1e-8),
        ] {
            assert!(
                (ours / theirs - 1.0).abs() < near,
                "set {n}: {ours} {theirs}"
            );
        }
    }
    assert!(slips >= 5, "{slips} slips: the sets test nothing");
}
