//! The test as a figure: level against time, free of any device. The screen
//! and the report draw the same one.

use uom::si::length::meter;

use super::fit::RateFit;
use super::judge::Outcome;
use super::mark::{ExpectedMark, Mark, in_order};
use super::setup::Setup;
use super::ticks::{Tick, TickUnit, level_ticks, time_ticks};
use crate::quantity::Length;

/// One level reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Seconds on the test's clock.
    pub t_s: f64,
    /// Metres below the lip.
    pub level_m: f64,
    /// Left out of the fit as a gross error.
    pub left_out: bool,
}

/// Which stretch a fitted line belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinePart {
    /// Drawing down.
    Drawdown,
    /// Filling.
    Fill,
    /// After the shut-off.
    AfterShutOff,
}

/// A fitted line from one (seconds, metres below the lip) to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FigureLine {
    /// Its stretch.
    pub part: LinePart,
    /// Where it begins.
    pub from: (f64, f64),
    /// Where it ends.
    pub to: (f64, f64),
    /// Its 95 % band: seconds, upper and lower edge in metres below the lip.
    pub band: [(f64, f64, f64); 3],
}

/// A level worth a line across the figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limit {
    /// The overflow lip, at zero.
    Overflow,
    /// The level at which the control is satisfied.
    Stop,
    /// The level at which it calls.
    Call,
    /// The pump inlet's limit.
    LowLimit,
}

/// An event on the time axis; level readings are [`Point`]s instead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MarkAt {
    /// Seconds on the test's clock.
    pub t_s: f64,
    /// Which event.
    pub mark: ExpectedMark,
}

/// Level against time. Depths grow downward: `y_top_m < y_bottom_m`.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Left edge, seconds on the test's clock.
    pub x_min_s: f64,
    /// Right edge, always beyond the left one.
    pub x_max_s: f64,
    /// Upper edge, metres below the lip.
    pub y_top_m: f64,
    /// Lower edge, metres below the lip.
    pub y_bottom_m: f64,
    /// Level readings in the order of time.
    pub points: Vec<Point>,
    /// Fitted lines.
    pub lines: Vec<FigureLine>,
    /// Events in the order of time.
    pub marks: Vec<MarkAt>,
    /// Levels that matter, metres below the lip.
    pub limits: Vec<(Limit, f64)>,
    /// Ticks in minutes since the left edge.
    pub x_ticks: Vec<Tick>,
    /// Ticks of depth below the lip in the chosen unit.
    pub y_ticks: Vec<Tick>,
}

/// Shortest time axis, in seconds.
const SHORTEST_S: f64 = 60.0;

impl Figure {
    /// Makes room for another figure, so that both share their axes.
    pub fn widen(&mut self, other: &Figure, unit: TickUnit) {
        self.x_min_s = self.x_min_s.min(other.x_min_s);
        self.x_max_s = self.x_max_s.max(other.x_max_s);
        self.y_top_m = self.y_top_m.min(other.y_top_m);
        self.y_bottom_m = self.y_bottom_m.max(other.y_bottom_m);
        self.x_ticks = time_ticks(self.x_min_s, self.x_max_s);
        self.y_ticks = level_ticks(self.y_top_m, self.y_bottom_m, unit);
    }

    /// Moves everything in it along the time axis.
    pub fn shift(&mut self, by_s: f64) {
        self.x_min_s += by_s;
        self.x_max_s += by_s;
        self.points.iter_mut().for_each(|p| p.t_s += by_s);
        self.marks.iter_mut().for_each(|m| m.t_s += by_s);
        for line in &mut self.lines {
            line.from.0 += by_s;
            line.to.0 += by_s;
            line.band.iter_mut().for_each(|b| b.0 += by_s);
        }
    }

    /// When water ran, or else the test began.
    pub fn water_s(&self) -> f64 {
        let water = self
            .marks
            .iter()
            .find(|m| m.mark == ExpectedMark::WaterSeen);
        water.map_or(self.x_min_s, |m| m.t_s)
    }
}

/// Draws up the figure of a test; `outcome` is what
/// [`judge`](super::judge()) said of the same setup and marks.
pub fn figure(setup: &Setup, marks: &[Mark], outcome: &Outcome, unit: TickUnit) -> Figure {
    let ordered = in_order(marks);
    let x_min_s = ordered.first().map_or(0.0, |m| m.at_s);
    let last = ordered.last().map_or(0.0, |m| m.at_s);
    let x_max_s = last.max(x_min_s + SHORTEST_S);

    let cycles = match outcome.cycles.is_empty() {
        true => std::slice::from_ref(outcome),
        false => &outcome.cycles[..],
    };
    let fits: Vec<(LinePart, &RateFit)> = cycles
        .iter()
        .flat_map(|c| {
            [
                (LinePart::Drawdown, &c.drawdown),
                (LinePart::Fill, &c.fill_net),
                (LinePart::AfterShutOff, &c.after_shut_off),
            ]
        })
        .filter_map(|(part, fit)| Some((part, fit.as_ref().ok()?)))
        .collect();
    let left_out = |t: f64| outcome.slips.contains(&t);
    let points: Vec<Point> = ordered
        .iter()
        .filter_map(|m| {
            let level_m = m.level_m()?;
            Some(Point {
                t_s: m.at_s,
                level_m,
                left_out: left_out(m.at_s),
            })
        })
        .collect();
    let m = |l: Length| l.get::<meter>();
    let lines = fits
        .iter()
        .map(|(part, f)| FigureLine {
            part: *part,
            from: (f.from_s, m(f.from_level)),
            to: (f.to_s, m(f.to_level)),
            band: f.band.map(|(t, low, high)| (t, m(low), m(high))),
        })
        .collect();
    let set = [
        (Limit::Overflow, Some(Length::default())),
        (Limit::Stop, setup.stop_level),
        (Limit::Call, setup.call_level),
        (Limit::LowLimit, setup.low_limit),
    ];
    let limits: Vec<(Limit, f64)> = set
        .into_iter()
        .filter_map(|(limit, level)| Some((limit, m(level?))))
        .filter(|(_, level)| level.is_finite())
        .collect();

    let levels = || {
        limits
            .iter()
            .map(|l| l.1)
            .chain(points.iter().map(|p| p.level_m))
    };
    let highest = levels().fold(0.0, f64::min);
    let mut deepest = levels().fold(0.0, f64::max);
    if deepest <= 0.0 {
        let depth = m(setup.basin.depth);
        deepest = if depth.is_finite() && depth > 0.0 {
            depth
        } else {
            0.3
        };
    }
    let pad = 0.06 * (deepest - highest);
    let (y_top_m, y_bottom_m) = (highest - pad, deepest + pad);
    Figure {
        x_min_s,
        x_max_s,
        y_top_m,
        y_bottom_m,
        points,
        lines,
        marks: ordered
            .iter()
            .filter(|m| m.level_m().is_none())
            .map(|m| MarkAt {
                t_s: m.at_s,
                mark: m.kind.name(),
            })
            .collect(),
        limits,
        x_ticks: time_ticks(x_min_s, x_max_s),
        y_ticks: level_ticks(y_top_m, y_bottom_m, unit),
    }
}
