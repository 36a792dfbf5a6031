//! From level readings to flows and levels, each with a 95 % interval.
//!
//! Method: a straight line through level against time (see [`super::line`]),
//! times the basin's surface; in a basin whose walls are not upright, through
//! the water held (see [`super::even`]). The spread of one reading is pooled from
//! the residuals of filling and holding and what a tape can do: read to a
//! quarter inch, so within 1/8 in (a uniform error, standard deviation 1.8 mm),
//! on a surface that ripples by about 1.5 mm (common practice, no source): 2.4 mm
//! together, weighted as five readings. Valid while fill and losses are steady.
//! The interval covers the reading of the level only, not the basin's
//! dimensions: an error of 5 % in the surface is an error of 5 % in the flow.
//!
//! How far checked: 20,000 simulated tests in basins of four shapes, read to
//! the quarter inch or 5 mm at odd moments on 0.3 to 3 mm of ripple, every
//! fourth with a misread number: `./dev bench refill`. A basin that splashes
//! more wants more readings or a stilling tube.

use uom::si::area::square_meter;
use uom::si::length::meter;
use uom::si::volume_rate::cubic_meter_per_second;

use super::even::Even;
use super::line::{Line, gross_errors, least_squares, student_975};
use crate::physics::basin::Basin;
use crate::quantity::{Length, VolumeRate};

/// Standard deviation of one level reading, in metres.
pub(super) const READING_SD_M: f64 = 0.0024;
/// Degrees of freedom that stand behind [`READING_SD_M`].
const PRIOR_DOF: f64 = 5.0;
/// Half of the 95 % interval of one reading, in metres: 4.7 mm, 3/16 in.
pub(super) const READING_HALF_M: f64 = 1.96 * READING_SD_M;
/// Shortest time between first and last reading that gives a rate, in seconds.
const MIN_SPAN_S: f64 = 30.0;
/// A reading this near an event, in seconds, gives the level there, moved by
/// what the level moves in between.
const NEAR_S: f64 = 15.0;
/// The same where nothing tells how fast the level moves.
const BESIDE_S: f64 = 5.0;
/// How far a line may be drawn on past its last reading, as a share of its
/// own length.
const REACH: f64 = 1.0;

/// A flow with its 95 % interval, `low <= value <= high`, always finite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// Best value.
    pub value: VolumeRate,
    /// Lower 95 % bound.
    pub low: VolumeRate,
    /// Upper 95 % bound.
    pub high: VolumeRate,
}

/// A level below the overflow lip with its 95 % interval; for a differential,
/// the height between two levels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelEstimate {
    /// Best value.
    pub value: Length,
    /// Lower 95 % bound.
    pub low: Length,
    /// Upper 95 % bound.
    pub high: Length,
}

/// Why a figure cannot be given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// The basin's dimensions are absent or not above zero.
    NoBasin,
    /// The opening of the drain was not noted.
    NoDrawdown,
    /// The call for water was not noted.
    NoCallSeen,
    /// Running water was not noted.
    NoWaterSeen,
    /// The shut-off was not noted.
    NoShutOff,
    /// Fewer than two readings, between lip and floor, in the stretch.
    NeedTwoLevels,
    /// The readings of the stretch lie within thirty seconds of each other.
    NeedLongerApart,
    /// No reading near enough to the event to know its level.
    NeedLevelNear,
    /// The marks are in the wrong order for this delay.
    OutOfOrder,
    /// Nobody watched during the stretch.
    NotWatched,
}

/// A steady rate of level change, as a flow.
#[derive(Clone, Debug, PartialEq)]
pub struct RateFit {
    /// The flow. Its sign is said where the fit is handed out.
    pub flow: Estimate,
    /// Time of the first reading used, seconds on the test's clock.
    pub from_s: f64,
    /// Time of the last reading used.
    pub to_s: f64,
    /// The line's level at `from_s`, below the lip.
    pub from_level: Length,
    /// The line's level at `to_s`, below the lip.
    pub to_level: Length,
    /// The 95 % band of the line at its ends and middle: seconds, upper and lower
    /// level below the lip.
    pub band: [(f64, Length, Length); 3],
    /// Readings used.
    pub used: usize,
    /// Times of readings left out as gross errors.
    pub left_out: Vec<f64>,
}

/// A fitted stretch: the public fit and the line behind it.
#[derive(Clone, Debug)]
pub(super) struct Stretch {
    /// Through the even levels (see [`Even`]).
    pub line: Line,
    pub fit: RateFit,
    pub even: Even,
    /// Spread of one reading and the degrees of freedom behind it.
    spread: (f64, f64),
}

impl Stretch {
    /// Takes the spread of one reading from all these stretches together: the
    /// surface ripples alike in all of them.
    pub fn pool(&mut self, with: &[&Line]) {
        let rss: f64 = with.iter().map(|l| l.rss).sum();
        let free: usize = with.iter().map(|l| l.n.saturating_sub(2)).sum();
        self.set_spread(spread(rss, free as f64));
    }

    /// What one reading's interval shrinks to on the line at `x`.
    fn share(&self, x: f64) -> f64 {
        let far = x - self.line.mean_x;
        (1.0 / self.line.n as f64 + far * far / self.line.sxx).sqrt()
    }

    fn set_spread(&mut self, spread: (f64, f64)) {
        self.spread = spread;
        let half = self.even.area * student_975(spread.1) * spread.0 / self.line.sxx.sqrt();
        let value = self.fit.flow.si().1;
        self.fit.flow = Estimate::around(value, half, half);
        let (from, to) = (self.fit.from_s, self.fit.to_s);
        self.fit.band = [from, 0.5 * (from + to), to].map(|at| {
            let level = self.level(at, reading_half(Some(self)) * self.share(at));
            (at, level.low, level.high)
        });
    }

    /// The level the line gives at `x`, with this much on either side in even
    /// level.
    fn level(&self, x: f64, half: f64) -> LevelEstimate {
        let y = self.line.at(x);
        LevelEstimate {
            value: length(self.even.level(y)),
            low: length(self.even.level(y - half)),
            high: length(self.even.level(y + half)),
        }
    }
}

fn flow(m3_s: f64) -> VolumeRate {
    VolumeRate::new::<cubic_meter_per_second>(m3_s)
}

fn length(m: f64) -> Length {
    Length::new::<meter>(m)
}

impl Estimate {
    /// Lowest, best and highest value in cubic metres per second.
    pub(super) fn si(&self) -> (f64, f64, f64) {
        let get = |v: VolumeRate| v.get::<cubic_meter_per_second>();
        (get(self.low), get(self.value), get(self.high))
    }

    pub(super) fn around(value: f64, below: f64, above: f64) -> Self {
        Self {
            value: flow(value),
            low: flow(value - below),
            high: flow(value + above),
        }
    }

    /// The same flow counted in the other direction.
    pub(super) fn reversed(&self) -> Self {
        Self {
            value: -self.value,
            low: -self.high,
            high: -self.low,
        }
    }
}

impl LevelEstimate {
    /// Lowest, best and highest value in metres.
    pub(super) fn si(&self) -> (f64, f64, f64) {
        let get = |v: Length| v.get::<meter>();
        (get(self.low), get(self.value), get(self.high))
    }

    /// Width of the interval.
    pub(super) fn width(&self) -> Length {
        self.high - self.low
    }

    pub(super) fn around(value: f64, half: f64) -> Self {
        Self {
            value: length(value),
            low: length(value - half),
            high: length(value + half),
        }
    }
}

/// Free surface in square metres.
///
/// # Errors
/// [`Missing::NoBasin`] unless surface and depth are finite and above zero.
pub(super) fn surface(basin: &Basin) -> Result<f64, Missing> {
    let area = basin.area().get::<square_meter>();
    let depth = basin.depth.get::<meter>();
    let sound = |v: f64| v.is_finite() && v > 0.0 && v < 1e6;
    if sound(area) && sound(depth) {
        Ok(area)
    } else {
        Err(Missing::NoBasin)
    }
}

/// Spread of one reading from residuals and what is known of it beforehand: a
/// scaled inverse chi-square prior. With it, its degrees of freedom.
fn spread(rss: f64, free: f64) -> (f64, f64) {
    let dof = PRIOR_DOF + free;
    let prior = PRIOR_DOF * READING_SD_M * READING_SD_M;
    (((prior + rss) / dof).sqrt(), dof)
}

/// Fits the net flow **into** the basin: positive while the level rises.
///
/// # Errors
/// [`Missing::NoBasin`], [`Missing::NeedTwoLevels`],
/// [`Missing::NeedLongerApart`].
pub(super) fn inflow(basin: &Basin, readings: &[(f64, f64)]) -> Result<Stretch, Missing> {
    surface(basin)?;
    let depth = basin.depth.get::<meter>();
    // At the lip the basin spills and at the floor it is empty: there the
    // level no longer tells the volume.
    let wet: Vec<_> = readings
        .iter()
        .copied()
        .filter(|r| r.1 > 0.0 && r.1 < depth)
        .collect();
    let (Some(first), Some(last)) = (wet.first(), wet.last()) else {
        return Err(Missing::NeedTwoLevels);
    };
    if wet.len() < 2 {
        return Err(Missing::NeedTwoLevels);
    }
    if last.0 - first.0 < MIN_SPAN_S {
        return Err(Missing::NeedLongerApart);
    }
    let even = Even::over(basin, wet.iter().map(|r| r.1));
    let wet: Vec<_> = wet.iter().map(|r| (r.0, even.of(r.1))).collect();
    let far = gross_errors(&wet, READING_SD_M);
    let pick = |keep: bool| -> Vec<(f64, f64)> {
        wet.iter()
            .zip(&far)
            .filter(|&(_, &f)| f != keep)
            .map(|(p, _)| *p)
            .collect()
    };
    let (kept, left_out) = (pick(true), pick(false));
    let (from_s, to_s) = match (kept.first(), kept.last()) {
        (Some(a), Some(b)) if b.0 - a.0 >= MIN_SPAN_S => (a.0, b.0),
        _ => return Err(Missing::NeedLongerApart),
    };
    let line = least_squares(&kept).ok_or(Missing::NeedLongerApart)?;
    let fit = RateFit {
        flow: Estimate::around(-line.slope * even.area, 0.0, 0.0),
        from_s,
        to_s,
        from_level: length(even.level(line.at(from_s))),
        to_level: length(even.level(line.at(to_s))),
        band: [(from_s, Length::default(), Length::default()); 3],
        used: kept.len(),
        left_out: left_out.iter().map(|p| p.0).collect(),
    };
    let mut stretch = Stretch {
        line,
        fit,
        even,
        spread: (0.0, 0.0),
    };
    stretch.pool(&[&line]);
    Ok(stretch)
}

/// Half of the 95 % interval of one reading, in metres, as rough as the
/// readings of this stretch show the surface to be.
pub(super) fn reading_half(stretch: Option<&Stretch>) -> f64 {
    stretch.map_or(READING_HALF_M, |s| student_975(s.spread.1) * s.spread.0)
}

/// The level at an event, from readings of a stretch in which the level moves
/// smoothly up to the event: the reading beside it or the line drawn to it (no
/// farther than its own length), whichever is known better.
///
/// # Errors
/// [`Missing::NeedLevelNear`] when neither reaches the event.
pub(super) fn level_at(
    at_s: f64,
    readings: &[(f64, f64)],
    stretch: Option<&Stretch>,
) -> Result<LevelEstimate, Missing> {
    let beside = level_beside(at_s, readings, stretch);
    let drawn = stretch.and_then(|s| level_on_line(at_s, s));
    match (beside, drawn) {
        (Some(beside), Some(drawn)) if drawn.width() < beside.width() => Ok(drawn),
        (Some(level), _) | (None, Some(level)) => Ok(level),
        (None, None) => Err(Missing::NeedLevelNear),
    }
}

fn level_beside(
    at_s: f64,
    readings: &[(f64, f64)],
    stretch: Option<&Stretch>,
) -> Option<LevelEstimate> {
    let reach = if stretch.is_some() { NEAR_S } else { BESIDE_S };
    let gap = |r: &(f64, f64)| (r.0 - at_s).abs();
    let reading = readings
        .iter()
        .filter(|r| stretch.is_none_or(|s| !s.fit.left_out.contains(&r.0)))
        .min_by(|a, b| gap(a).total_cmp(&gap(b)))
        .filter(|r| gap(r) <= reach)?;
    // What the level moves in the gap, known about as well as a third of it.
    let moved = stretch.map_or(0.0, |s| {
        s.even.moved(reading.1, s.line.slope * (at_s - reading.0))
    });
    Some(LevelEstimate::around(
        reading.1 + moved,
        reading_half(stretch).hypot(moved / 3.0),
    ))
}

fn level_on_line(at_s: f64, stretch: &Stretch) -> Option<LevelEstimate> {
    let fit = &stretch.fit;
    let reach = REACH * (fit.to_s - fit.from_s);
    if at_s < fit.from_s - reach || at_s > fit.to_s + reach {
        return None;
    }
    Some(stretch.level(at_s, reading_half(Some(stretch)) * stretch.share(at_s)))
}

/// The height between the lower and the upper of two levels.
pub(super) fn differential(lower: &LevelEstimate, upper: &LevelEstimate) -> LevelEstimate {
    let (low_a, a, high_a) = lower.si();
    let (low_b, b, high_b) = upper.si();
    let half = ((high_a - low_a) / 2.0).hypot((high_b - low_b) / 2.0);
    LevelEstimate::around(a - b, half)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::basin::Plan;

    fn basin() -> Basin {
        Basin {
            plan: Plan::Rectangular {
                length: length(3.0),
                width: length(2.0),
            },
            depth: length(0.4),
        }
    }

    #[test]
    fn a_clean_rise_gives_its_flow() {
        // 6 m2 rising 60 mm in 200 s: 1.8 L/s.
        let readings: Vec<_> = (0..5)
            .map(|i| (50.0 * i as f64, 0.25 - 0.015 * i as f64))
            .collect();
        let fit = inflow(&basin(), &readings).unwrap().fit;
        let (low, value, high) = fit.flow.si();
        assert!((value - 1.8e-3).abs() < 1e-12);
        assert!(low < value && value < high && fit.left_out.is_empty());
        assert!((fit.to_level.get::<meter>() - 0.19).abs() < 1e-12);
    }

    #[test]
    fn a_sloped_floor_fills_at_the_same_flow() {
        // 1.8 L/s into a wedge 6 m2 at the top: level from volume, h = sqrt(V/15).
        let wedge = Basin {
            plan: Plan::SlopedFloor {
                length: length(3.0),
                width: length(2.0),
                fall: length(0.2),
            },
            depth: length(0.4),
        };
        let readings: Vec<_> = (1..6)
            .map(|i| 60.0 * f64::from(i))
            .map(|t| (t, 0.4 - (1.8e-3 * t / 15.0).sqrt()))
            .collect();
        let stretch = inflow(&wedge, &readings).unwrap();
        let (low, value, high) = stretch.fit.flow.si();
        assert!((value - 1.8e-3).abs() < 1e-9, "{value}");
        assert!(low < value && value < high);
        assert!((stretch.fit.to_level.get::<meter>() - 0.4 + 0.036f64.sqrt()).abs() < 1e-9);
        let near = level_at(300.0, &readings, Some(&stretch)).unwrap();
        assert!(near.low < near.value && near.value < near.high);
    }

    #[test]
    fn two_readings_cover_both_ends_of_a_quarter_inch() {
        // Both readings off by 1/8 in in opposite directions moves the rise by
        // 6.35 mm over 100 s on 6 m2: 0.381 L/s. The interval holds that.
        let fit = inflow(&basin(), &[(0.0, 0.25), (100.0, 0.15)]).unwrap().fit;
        let (low, value, high) = fit.flow.si();
        assert!(high - value > 0.381e-3 && value - low > 0.381e-3);
        assert!(high - value < 2.0 * 0.381e-3);
    }

    #[test]
    fn too_little_is_said_to_be_too_little() {
        let b = basin();
        assert_eq!(
            inflow(&b, &[(0.0, 0.2)]).unwrap_err(),
            Missing::NeedTwoLevels
        );
        let close = [(0.0, 0.2), (10.0, 0.1)];
        assert_eq!(inflow(&b, &close).unwrap_err(), Missing::NeedLongerApart);
        // At the lip and on the floor the level tells nothing.
        let ends = [(0.0, 0.4), (100.0, 0.2), (200.0, 0.0)];
        assert_eq!(inflow(&b, &ends).unwrap_err(), Missing::NeedTwoLevels);
        let flat = Basin {
            depth: length(0.0),
            ..b
        };
        assert_eq!(
            inflow(&flat, &[(0.0, 0.2), (90.0, 0.1)]).unwrap_err(),
            Missing::NoBasin
        );
    }

    #[test]
    fn the_level_at_an_event_is_read_or_drawn_never_guessed() {
        let readings = [(0.0, 0.25), (100.0, 0.15)];
        let stretch = inflow(&basin(), &readings).unwrap();
        let near = level_at(95.0, &readings, Some(&stretch)).unwrap();
        assert!((near.value.get::<meter>() - 0.155).abs() < 1e-12);
        let drawn = level_at(150.0, &readings, Some(&stretch)).unwrap();
        assert!((drawn.value.get::<meter>() - 0.10).abs() < 1e-12);
        assert!(drawn.width() > near.width());
        let alone = level_at(98.0, &readings[1..], None).unwrap();
        assert_eq!(alone.value, length(0.15));
        assert_eq!(
            level_at(900.0, &readings, Some(&stretch)),
            Err(Missing::NeedLevelNear)
        );
        assert_eq!(
            level_at(60.0, &readings[..1], None),
            Err(Missing::NeedLevelNear)
        );
    }
}
