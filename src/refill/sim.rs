//! A basin that behaves as told, for the tests: known flows, a tape read to
//! the quarter inch, ripple, and one slip if asked for.

use uom::si::length::{inch, meter};
use uom::si::volume_rate::liter_per_second;

use super::{Mark, MarkKind, Setup};
use crate::physics::basin::{Basin, Plan};
use crate::quantity::{Length, VolumeRate};

/// SplitMix64 (Steele, Lea & Flood 2014): deterministic noise for the tests.
pub struct Noise(pub u64);

impl Noise {
    /// Uniform in 0..1.
    pub fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Normal with mean zero and spread one (twelve uniforms).
    pub fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.uniform()).sum::<f64>() - 6.0
    }
}

pub fn m(v: f64) -> Length {
    Length::new::<meter>(v)
}

pub fn lps(v: f64) -> VolumeRate {
    VolumeRate::new::<liter_per_second>(v)
}

/// 6 m2, 0.4 m deep, calls at 0.25 m, stops at 0.10 m, needs 0.15 L/s.
pub fn setup() -> Setup {
    Setup {
        basin: Basin {
            plan: Plan::Rectangular {
                length: m(3.0),
                width: m(2.0),
            },
            depth: m(0.4),
        },
        makeup_need: lps(0.15),
        design_need: None,
        loss_while_testing: lps(0.0),
        call_level: Some(m(0.25)),
        stop_level: Some(m(0.10)),
        low_limit: Some(m(0.35)),
        valve: None,
        earlier: None,
        valve_cv: None,
        mains: None,
        drain: None,
        earlier_drain: None,
    }
}

/// What happens in the simulated test.
pub struct Run {
    /// Flow through the valve, L/s.
    pub valve: f64,
    /// Losses while filling, L/s.
    pub loss: f64,
    /// Level readings while filling.
    pub readings: usize,
    /// Spread of the ripple, metres.
    pub ripple: f64,
    /// A reading (by its number) that is off by this many metres.
    pub slip: Option<(usize, f64)>,
    /// Flow through the closed valve afterwards, L/s.
    pub drip: f64,
    /// Metres by which all levels lie deeper, so that they miss the tape's marks.
    pub deeper: f64,
}

impl Default for Run {
    fn default() -> Self {
        Self {
            valve: 1.8,
            loss: 0.0,
            readings: 8,
            ripple: 0.001,
            slip: None,
            drip: 0.0,
            deeper: 0.0023,
        }
    }
}

/// A whole test with a working control: drawn down at 3 L/s from 0.10 m to
/// 0.26 m, call, water after 4 s, filled from 0.26 m to 0.10 m, shut off,
/// watched for ten minutes.
pub fn marks(run: &Run, noise: &mut Noise) -> Vec<Mark> {
    let area = 6.0;
    let tape = |level: f64, noise: &mut Noise| {
        let seen = m(level + run.ripple * noise.normal()).get::<inch>();
        Length::new::<inch>((seen * 4.0).round() / 4.0)
    };
    let (top, low) = (0.10 + run.deeper, 0.26 + run.deeper);
    let draw = (low - top) * area / 3.0e-3;
    let mut all = vec![Mark::new(0.0, MarkKind::DrawdownBegan)];
    for i in 0..4 {
        let t = draw * i as f64 / 3.0;
        all.push(Mark::level(t, tape(top + 3.0e-3 / area * t, noise)));
    }
    all.push(Mark::new(draw, MarkKind::CallSeen));
    all.push(Mark::new(draw + 1.0, MarkKind::DrawdownEnded));
    let water = draw + 4.0;
    all.push(Mark::new(water, MarkKind::WaterSeen));
    let rise = (run.valve - run.loss) * 1e-3 / area;
    let fill = (low - top) / rise;
    for i in 0..run.readings {
        let t = fill * (i as f64 + 0.5) / run.readings as f64;
        let slip = run.slip.filter(|s| s.0 == i).map_or(0.0, |s| s.1);
        all.push(Mark::level(water + t, tape(low - rise * t + slip, noise)));
    }
    let shut = water + fill;
    all.push(Mark::new(shut, MarkKind::ShutOff));
    for minutes in [0.5, 4.0, 7.0, 10.0] {
        let t = minutes * 60.0;
        let level = top - (run.drip - run.loss) * 1e-3 / area * t;
        all.push(Mark::level(shut + t, tape(level, noise)));
    }
    all.push(Mark::new(shut + 630.0, MarkKind::Stopped));
    all
}
