//! A makeup chain that behaves as told, and a tester who reads it as people
//! do: to the quarter inch or the half centimetre, on a rippling surface, at
//! odd moments, a second or two late, with one misread number if asked for.
//!
//! The geometry is written out here by hand, not taken from the program, so
//! that an error in its basins shows as a bias.

use coldsump::physics::basin::{AreaTable, Basin, Plan};
use coldsump::quantity::{Length, VolumeRate};
use coldsump::refill::{Mark, MarkKind, Setup};
use uom::si::area::square_meter;
use uom::si::length::{inch, meter};
use uom::si::volume_rate::cubic_meter_per_second;

/// SplitMix64 (Steele, Lea & Flood 2014): the same noise on every machine.
pub struct Noise(pub u64);

impl Noise {
    /// Uniform between two bounds.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        low + (high - low) * (((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64)
    }

    /// Normal with mean zero and spread one (Box and Muller 1958).
    pub fn normal(&mut self) -> f64 {
        let radius = (-2.0 * self.between(f64::MIN_POSITIVE, 1.0).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.between(0.0, 1.0)).cos()
    }

    /// A whole number below `n`.
    pub fn below(&mut self, n: usize) -> usize {
        (self.between(0.0, n as f64) as usize).min(n - 1)
    }
}

fn m(v: f64) -> Length {
    Length::new::<meter>(v)
}

fn flow(m3_s: f64) -> VolumeRate {
    VolumeRate::new::<cubic_meter_per_second>(m3_s)
}

/// The basin's shape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// Upright walls, level floor.
    Straight,
    /// Round.
    Round,
    /// The floor falls this far to one end.
    Sloped(f64),
    /// This far below the lip the surface halves.
    Stepped(f64),
}

/// One test to be simulated. Metres, square metres, cubic metres a second.
#[derive(Clone, Copy, Debug)]
pub struct Trial {
    /// The shape.
    pub shape: Shape,
    /// Surface at the lip.
    pub area: f64,
    /// Lip to lowest floor.
    pub depth: f64,
    /// Where it truly stops and calls, below the lip.
    pub stop: f64,
    /// Where it truly calls.
    pub call: f64,
    /// Through the fill valve.
    pub valve: f64,
    /// Lost while it fills, truly, and as the tester believes.
    pub loss: f64,
    /// As the tester believes.
    pub believed: f64,
    /// Through the drain.
    pub drain: f64,
    /// After the shut-off, into the basin.
    pub drip: f64,
    /// From call to water, seconds.
    pub delay: f64,
    /// From water to the drain shut, seconds; negative when shut before.
    pub drain_shut: f64,
    /// Readings while it fills.
    pub readings: usize,
    /// Spread of the ripple.
    pub ripple: f64,
    /// A misread number: which reading of the fill, and by how much.
    pub slip: Option<(usize, f64)>,
    /// Smallest step of the tape.
    pub step: f64,
    /// What the tester holds it against.
    pub need: f64,
    /// Seconds watched after the shut-off as the plan asks, two readings at each
    /// end; else four readings at odd moments of fifteen minutes.
    pub watch: Option<f64>,
}

impl Trial {
    /// A trial of the mixed lot: every shape, noise and tempo.
    pub fn any(noise: &mut Noise) -> Self {
        let depth = noise.between(0.35, 0.6);
        let stop = noise.between(0.06, 0.12);
        let call = stop + noise.between(0.08, 0.16);
        let shape = match noise.below(4) {
            0 => Shape::Straight,
            1 => Shape::Round,
            2 => Shape::Sloped(depth - noise.between(stop, call)),
            _ => Shape::Stepped(noise.between(stop, call)),
        };
        let mut trial = Self {
            shape,
            area: noise.between(2.0, 15.0),
            depth,
            stop,
            call,
            valve: 0.0,
            loss: 0.0,
            believed: 0.0,
            drain: 0.0,
            drip: 0.0,
            delay: noise.between(1.0, 30.0),
            drain_shut: noise.between(-20.0, 60.0),
            readings: 4 + noise.below(11),
            ripple: noise.between(0.3e-3, 3e-3),
            slip: None,
            step: if noise.below(2) == 0 { 0.00635 } else { 0.005 },
            need: 0.0,
            watch: None,
        };
        let volume = trial.missing(call) - trial.missing(stop);
        let net = volume / (60.0 * noise.between(4.0, 25.0));
        trial.loss = net * noise.between(0.0, 0.4);
        // Known within 25 %, 95 times in 100.
        trial.believed = trial.loss * (1.0 + 0.25 / 1.96 * noise.normal());
        trial.valve = net + trial.loss;
        trial.drain = volume / (60.0 * noise.between(3.0, 12.0)) + trial.loss;
        trial.need = trial.valve * noise.between(0.2, 0.5);
        trial
    }

    /// Water missing from full to the lip, at a level below it.
    fn missing(&self, level: f64) -> f64 {
        match self.shape {
            Shape::Straight | Shape::Round => self.area * level,
            Shape::Sloped(fall) => {
                let wall = self.depth - fall;
                let wedge = (level - wall).max(0.0);
                self.area * (level - wedge * wedge / (2.0 * fall))
            }
            Shape::Stepped(at) => self.area * (level.min(at) + 0.5 * (level - at).max(0.0)),
        }
    }

    /// The level at which so much is missing.
    fn level(&self, missing: f64) -> f64 {
        let plain = missing / self.area;
        match self.shape {
            Shape::Straight | Shape::Round => plain,
            Shape::Sloped(fall) => {
                let wall = self.depth - fall;
                let past = plain - wall;
                match past > 0.0 {
                    true => wall + fall - (fall * fall - 2.0 * fall * past).max(0.0).sqrt(),
                    false => plain,
                }
            }
            Shape::Stepped(at) => plain.min(at) + 2.0 * (plain - at).max(0.0),
        }
    }

    fn basin(&self) -> Basin {
        let width = 2.0;
        let length = m(self.area / width);
        let width = m(width);
        let plan = match self.shape {
            Shape::Straight => Plan::Rectangular { length, width },
            Shape::Round => Plan::Round {
                diameter: m((4.0 * self.area / std::f64::consts::PI).sqrt()),
            },
            Shape::Sloped(fall) => Plan::SlopedFloor {
                length,
                width,
                fall: m(fall),
            },
            Shape::Stepped(at) => {
                let rows = [
                    (0.0, self.area),
                    (at, self.area),
                    (at, 0.5 * self.area),
                    (self.depth, 0.5 * self.area),
                ];
                Plan::LevelArea {
                    table: table(&rows),
                }
            }
        };
        Basin {
            plan,
            depth: m(self.depth),
        }
    }

    /// What the tester knows beforehand.
    pub fn setup(&self) -> Setup {
        Setup {
            basin: self.basin(),
            makeup_need: flow(self.need),
            design_need: None,
            loss_while_testing: flow(self.believed),
            call_level: Some(m(self.call)),
            stop_level: Some(m(self.stop)),
            low_limit: None,
            valve: None,
            earlier: None,
            valve_cv: None,
            mains: None,
            drain: None,
            earlier_drain: None,
        }
    }

    /// When water runs and the drain is shut: from here only the fill counts.
    pub fn fill_begins(&self) -> f64 {
        let (draw, water, shut) = self.times();
        let _ = draw;
        water.max(shut)
    }

    /// Times of call, water and drain shut.
    pub fn times(&self) -> (f64, f64, f64) {
        let volume = self.missing(self.call) - self.missing(self.stop);
        let call = volume / (self.drain + self.loss);
        let water = call + self.delay;
        (call, water, (water + self.drain_shut).max(call))
    }

    /// Water missing at a time, and when the fill stops.
    fn water_missing(&self, at: f64) -> (f64, f64) {
        let (_, water, shut) = self.times();
        let flow = |t: f64| {
            let drain = if t < shut { self.drain } else { 0.0 };
            let valve = if t >= water { self.valve } else { 0.0 };
            drain + self.loss - valve
        };
        let (first, second) = (water.min(shut), water.max(shut));
        let start = self.missing(self.stop);
        let low = start + flow(0.0) * first + flow(first) * (second - first);
        let full = second + (low - start) / (self.valve - self.loss);
        let missing = if at < first {
            start + flow(0.0) * at
        } else if at < second {
            start + flow(0.0) * first + flow(first) * (at - first)
        } else if at < full {
            low - (self.valve - self.loss) * (at - second)
        } else {
            start - (self.drip - self.loss) * (at - full)
        };
        (missing, full)
    }

    /// How long the plan asks to watch after the shut-off, in seconds.
    pub fn planned_watch(&self) -> f64 {
        let plan = coldsump::refill::plan(&self.setup()).expect("a sound basin");
        plan.watch_share.expect("something to fill") * (self.fill_ends() - self.fill_begins())
    }

    /// When the fill stops.
    pub fn fill_ends(&self) -> f64 {
        self.water_missing(0.0).1
    }

    /// The true level at a time, below the lip.
    pub fn level_at(&self, at: f64) -> f64 {
        self.level(self.water_missing(at).0)
    }

    /// The marks a tester makes.
    pub fn marks(&self, noise: &mut Noise) -> Vec<Mark> {
        let (call, water, shut) = self.times();
        let (from, full) = (self.fill_begins(), self.fill_ends());
        let mut all = vec![Mark::new(0.0, MarkKind::DrawdownBegan)];
        let mut read = |at: f64, off: f64, noise: &mut Noise| {
            let seen = self.level_at(at) + self.ripple * noise.normal() + off;
            let seen = (seen / self.step).round() * self.step;
            all.push(Mark::level(at + noise.normal(), m(seen)));
        };
        for at in moments(5.0, call - 5.0, 3 + noise.below(3), noise) {
            read(at, 0.0, noise);
        }
        let last = full - 5.0;
        for (i, at) in moments(from + 8.0, last, self.readings, noise)
            .into_iter()
            .enumerate()
        {
            let off = self.slip.filter(|s| s.0 == i).map_or(0.0, |s| s.1);
            read(at, off, noise);
        }
        let mut after = moments(full + 20.0, full + 900.0, 4, noise);
        if let Some(watch) = self.watch {
            after = [20.0, 50.0, watch, watch + 30.0].map(|s| full + s).to_vec();
        }
        let end = after[3] + 20.0;
        for at in after {
            read(at, 0.0, noise);
        }
        let mut tap = |at: f64, kind| all.push(Mark::new(at + noise.normal(), kind));
        tap(call, MarkKind::CallSeen);
        tap(water, MarkKind::WaterSeen);
        tap(shut, MarkKind::DrawdownEnded);
        tap(full, MarkKind::ShutOff);
        tap(end, MarkKind::Stopped);
        all
    }
}

/// Odd moments in order, no two in the same instant.
fn moments(from: f64, to: f64, count: usize, noise: &mut Noise) -> Vec<f64> {
    let each = (to - from) / count as f64;
    (0..count)
        .map(|i| from + each * (i as f64 + noise.between(0.05, 0.95)))
        .collect()
}

fn table(rows: &[(f64, f64)]) -> AreaTable {
    let area = coldsump::quantity::Area::new::<square_meter>;
    let rows: Vec<_> = rows.iter().map(|&(l, a)| (m(l), area(a))).collect();
    AreaTable::new(&rows).expect("a sound table")
}

/// A misread inch or more, up or down.
pub fn misread(noise: &mut Noise) -> f64 {
    let inches = (1 + noise.below(3)) as f64;
    let sign = if noise.below(2) == 0 { 1.0 } else { -1.0 };
    sign * Length::new::<inch>(inches).get::<meter>()
}
