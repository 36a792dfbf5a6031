//! The drawdown through the drain: how long it takes, and what a drain of this
//! size should pass.
//!
//! Torricelli with a discharge coefficient, as [`crate::physics::drain`]: the
//! outlet counted at the lowest floor. The coefficient of a clean sharp hole is 0.6
//! and of a short tube 0.8 (from memory, as books of hydraulics have them);
//! grating, valve and bends take it down to some 0.5 (common practice, no
//! source). A pipe that falls away below the floor can draw faster than this
//! while it runs full; a valve half open, slower.

use uom::si::length::{inch, meter};
use uom::si::ratio::ratio;
use uom::si::volume::cubic_meter;
use uom::si::volume_rate::cubic_meter_per_second;

use super::setup::{FlowRange, Setup};
use crate::physics::drain::Outlet;
use crate::quantity::{Length, Ratio, VolumeRate};

/// Least and most of the discharge coefficient of a basin's drain.
const COEFFICIENT: [f64; 2] = [0.5, 0.8];
/// Drains that basins of this size mostly have, in inches. Common practice, no
/// source.
const USUAL_BORE_IN: [f64; 2] = [1.0, 2.0];
/// Slices of level; the time is good to 0.1 % with so many.
const SLICES: u32 = 24;

/// What the time of the drawdown rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrainBasis {
    /// What left the basin in the site's earlier test.
    Earlier,
    /// The bore of the drain.
    Bore,
    /// Nothing is known of the drain: one of 1 to 2 in.
    Usual,
}

/// How long the drawdown takes, in minutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawTime {
    /// At least.
    pub least: f64,
    /// At most.
    pub most: f64,
    /// Why.
    pub basis: DrainBasis,
}

fn outlet(bore: Length, coefficient: f64) -> Outlet {
    Outlet::Hole {
        bore,
        coefficient: Ratio::new::<ratio>(coefficient),
    }
}

/// What a drain of this bore passes with the water at `level`, in m3/s: least
/// and most. `None` where the bore is off (1 mm to 2 m) or the basin is dry there.
pub fn drain_flow(setup: &Setup, bore: Length, level: Length) -> Option<FlowRange> {
    let height = setup.basin.depth - level;
    let at = |c: f64| outlet(bore, c).flow(height).ok();
    Some(FlowRange {
        low: at(COEFFICIENT[0])?,
        high: at(COEFFICIENT[1])?,
    })
}

/// Minutes from one level to a deeper one, drain open and losses running.
fn minutes(setup: &Setup, drain: &Outlet, from: Length, to: Length) -> Option<f64> {
    let loss = setup.loss_while_testing.get::<cubic_meter_per_second>();
    let slice = (to - from) / f64::from(SLICES);
    let mut seconds = 0.0;
    for n in 0..SLICES {
        let top = from + slice * f64::from(n);
        let held = |l: Length| setup.basin.volume(l).get::<cubic_meter>();
        let height = setup.basin.depth - (top + slice / 2.0);
        let out = drain.flow(height).ok()?.get::<cubic_meter_per_second>();
        seconds += (held(top) - held(top + slice)) / (out + loss.max(0.0));
    }
    Some(seconds / 60.0).filter(|m| m.is_finite())
}

/// How long the basin takes from one level to a deeper one.
pub(super) fn draw_time(setup: &Setup, from: Length, to: Length) -> Option<DrawTime> {
    if (to - from).get::<meter>() <= 0.0 {
        return None;
    }
    if let Some(flow) = setup.earlier_drain {
        let spent = setup.basin.volume(from) - setup.basin.volume(to);
        let take = |flow: VolumeRate| {
            let flow = flow.get::<cubic_meter_per_second>();
            (flow > 0.0).then(|| spent.get::<cubic_meter>() / flow / 60.0)
        };
        if let (Some(least), Some(most)) = (take(flow.high), take(flow.low)) {
            let basis = DrainBasis::Earlier;
            return Some(DrawTime { least, most, basis });
        }
    }
    let usual = USUAL_BORE_IN.map(Length::new::<inch>);
    let ([thin, wide], basis) = match setup.drain {
        Some(bore) => ([bore, bore], DrainBasis::Bore),
        None => (usual, DrainBasis::Usual),
    };
    Some(DrawTime {
        least: minutes(setup, &outlet(wide, COEFFICIENT[1]), from, to)?,
        most: minutes(setup, &outlet(thin, COEFFICIENT[0]), from, to)?,
        basis,
    })
}

#[cfg(test)]
mod tests {
    use uom::si::time::minute;

    use super::*;
    use crate::physics::drain::time_to_level;
    use crate::refill::sim::{lps, m, setup};
    use crate::refill::{Finding, Mark, MarkKind, judge, plan};

    #[test]
    fn the_drawdown_takes_as_long_as_the_exact_integral() {
        // `time_to_level` is checked against SciPy's solver in tests/physics.
        let setup = Setup {
            drain: Some(Length::new::<inch>(1.5)),
            ..setup()
        };
        let time = draw_time(&setup, m(0.10), m(0.28)).unwrap();
        let exact = |c: f64| {
            let hole = outlet(setup.drain.unwrap(), c);
            let time = time_to_level(&setup.basin, &hole, lps(0.0), m(0.10), m(0.28));
            time.unwrap().get::<minute>()
        };
        assert!((time.least / exact(0.8) - 1.0).abs() < 1e-3, "{time:?}");
        assert!((time.most / exact(0.5) - 1.0).abs() < 1e-3);
        assert_eq!(time.basis, DrainBasis::Bore);
        // 6 m2 falling 0.18 m through 11.4 cm2 under 0.2 m: 1.08 m3 at some
        // 1.1 to 1.8 L/s.
        assert!(time.least > 9.0 && time.most < 18.0);
    }

    #[test]
    fn a_drawdown_that_slows_is_timed_by_its_mean_flow() {
        // Torricelli by hand: sqrt(h) falls evenly, here from 0.30 m to 0.14 m over
        // the floor of 6 m2 in 600 s: 0.96 m3, 1.6 L/s on the mean.
        let roots = [0.30f64.sqrt(), 0.14f64.sqrt()];
        let mut marks = vec![Mark::new(0.0, MarkKind::DrawdownBegan)];
        for n in 0..=6 {
            let part = f64::from(n) / 6.0;
            let height = (roots[0] + (roots[1] - roots[0]) * part).powi(2);
            marks.push(Mark::level(600.0 * part, m(0.40 - height)));
        }
        marks.push(Mark::new(601.0, MarkKind::CallSeen));
        marks.push(Mark::new(602.0, MarkKind::DrawdownEnded));
        let wide = Setup {
            drain: Some(Length::new::<inch>(3.0)),
            ..setup()
        };
        let outcome = judge(&wide, &marks);
        let flow = outcome.drawdown.unwrap().flow;
        let lps = |v: VolumeRate| 1e3 * v.get::<cubic_meter_per_second>();
        assert!((lps(flow.value) / 1.6 - 1.0).abs() < 0.01, "{flow:?}");
        assert!(lps(flow.low) < 1.6 && lps(flow.high) > 1.6);
        let took = outcome.delays.draw_to_call.unwrap();
        assert!((took.value_s - 601.0).abs() < 1e-9 && took.high_s > 602.0);
        // A 3 in drain gives 3.8 L/s at least there: something is in the way.
        let slow = |f: &Finding| matches!(f, Finding::DrawnSlowly { .. });
        assert!(outcome.findings.iter().any(slow));
        let thin = Setup {
            drain: Some(Length::new::<inch>(1.5)),
            ..setup()
        };
        assert!(!judge(&thin, &marks).findings.iter().any(slow));
    }

    #[test]
    fn losses_shorten_it_and_an_unknown_drain_widens_it() {
        let known = Setup {
            drain: Some(Length::new::<inch>(1.5)),
            ..setup()
        };
        let losing = Setup {
            loss_while_testing: lps(0.5),
            ..known
        };
        let of = |s: &Setup| plan(s).unwrap().draw.unwrap();
        assert!(of(&losing).most < of(&known).most);
        let blind = of(&setup());
        assert_eq!(blind.basis, DrainBasis::Usual);
        assert!(blind.least < of(&known).least && blind.most > of(&known).most);
    }

    #[test]
    fn an_earlier_test_tells_it_best() {
        let setup = Setup {
            drain: Some(Length::new::<inch>(1.5)),
            earlier_drain: Some(FlowRange {
                low: lps(1.0),
                high: lps(2.0),
            }),
            ..setup()
        };
        // 6 m2 x 0.12 m = 0.72 m3: 12 min at 1 L/s, 6 min at 2 L/s.
        let time = draw_time(&setup, m(0.10), m(0.22)).unwrap();
        assert!((time.least - 6.0).abs() < 1e-9 && (time.most - 12.0).abs() < 1e-9);
        assert_eq!(time.basis, DrainBasis::Earlier);
        assert_eq!(draw_time(&setup, m(0.22), m(0.22)), None);
    }
}
