//! Figures in normalised geometry: 0 is left or bottom, 1 is right or top.
//!
//! Whoever composes a figure scales its quantities; the writers only place
//! what they are given. A coordinate outside 0 to 1 is moved to the nearer
//! edge; one that is not a number is left out.

/// What a line stands for; decides its colour and dash.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ink {
    /// Water: the thing measured.
    #[default]
    Water,
    /// Plain ink: something to compare with.
    Plain,
    /// A limit that must not be crossed.
    Alarm,
    /// Believed, not shown.
    Unproven,
}

/// How a series is drawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Stroke {
    /// Joined by a line.
    #[default]
    Line,
    /// Dots alone.
    Points,
}

/// Measured points.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Series {
    /// Its name beside its last point; empty for none.
    pub label: String,
    /// What it stands for.
    pub ink: Ink,
    /// How it is drawn.
    pub stroke: Stroke,
    /// The points, x then y, 0 to 1 each.
    pub points: Vec<(f64, f64)>,
}

/// A fitted straight line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fit {
    /// Its name, such as the slope; empty for none.
    pub label: String,
    /// Start, x then y, 0 to 1 each.
    pub from: (f64, f64),
    /// End, x then y, 0 to 1 each.
    pub to: (f64, f64),
}

/// A moment: a vertical line with a short label above the plot.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Moment {
    /// Where, 0 to 1.
    pub x: f64,
    /// A word or two.
    pub label: String,
}

/// A limit: a horizontal line with a label at its right end.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Limit {
    /// Where, 0 to 1.
    pub y: f64,
    /// A word or two.
    pub label: String,
    /// What it stands for.
    pub ink: Ink,
}

/// A plot of one quantity against another.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chart {
    /// What it shows.
    pub title: String,
    /// What a reader who cannot see it should know.
    pub summary: String,
    /// The quantity and unit along the foot.
    pub x_label: String,
    /// The quantity and unit up the side.
    pub y_label: String,
    /// Where the foot is marked, 0 to 1, and with what.
    pub x_ticks: Vec<(f64, String)>,
    /// Where the side is marked, 0 to 1, and with what.
    pub y_ticks: Vec<(f64, String)>,
    /// Measured points.
    pub series: Vec<Series>,
    /// Fitted lines.
    pub fits: Vec<Fit>,
    /// Moments.
    pub moments: Vec<Moment>,
    /// Limits.
    pub limits: Vec<Limit>,
    /// Heads of [`Chart::rows`].
    pub row_heads: (String, String),
    /// The points as written numbers, for a reader of plain text.
    pub rows: Vec<(String, String)>,
}

/// A mark in the basin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MarkKind {
    /// Where water runs over.
    Overflow,
    /// Where the level control stops the fill.
    High,
    /// Where the level control calls for water.
    Low,
    /// Top of the pump's suction.
    PumpInlet,
}

/// A mark in the basin, at its height.
#[derive(Clone, Debug, PartialEq)]
pub struct LevelMark {
    /// What it is.
    pub kind: MarkKind,
    /// Height over the floor as a share of the basin's depth, 0 to 1.
    pub height: f64,
}

/// A level of the water.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Level {
    /// Height over the floor as a share of the basin's depth, 0 to 1.
    pub height: f64,
}

/// The basin in section with its marks and levels.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Waterline {
    /// What a reader who cannot see it should know.
    pub summary: String,
    /// The marks, in any order.
    pub marks: Vec<LevelMark>,
    /// Level on arrival.
    pub found: Option<Level>,
    /// Level on leaving.
    pub left: Option<Level>,
}

/// Most points of a series that a figure of a hand's width can show.
const MOST_POINTS: usize = 240;

/// Every so-manieth of these, and the last: no more than a figure can show.
pub(super) fn thinned<T: Clone>(all: &[T]) -> Vec<T> {
    let step = all.len().div_ceil(MOST_POINTS).max(1);
    let last = all.len().saturating_sub(1);
    let kept = |(n, one): (usize, &T)| (n % step == 0 || n == last).then(|| one.clone());
    all.iter().enumerate().filter_map(kept).collect()
}

/// A coordinate moved into 0 to 1, or nothing if it is not a number.
pub(super) fn unit(v: f64) -> Option<f32> {
    (!v.is_nan()).then(|| v.clamp(0.0, 1.0) as f32)
}

/// A point with both coordinates moved into 0 to 1.
pub(super) fn unit_point((x, y): (f64, f64)) -> Option<(f32, f32)> {
    Some((unit(x)?, unit(y)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_series_is_thinned_and_a_short_one_is_not() {
        let all: Vec<usize> = (0..2880).collect();
        let few = thinned(&all);
        assert!(few.len() <= 241 && few[0] == 0 && few[few.len() - 1] == 2879);
        assert_eq!(thinned(&all[..240]), all[..240]);
        assert_eq!(thinned(&all[..0]), all[..0]);
    }

    #[test]
    fn coordinates_are_kept_on_the_plot() {
        assert_eq!(unit(0.25), Some(0.25));
        assert_eq!(unit(f64::INFINITY), Some(1.0));
        assert_eq!(unit(-3.0), Some(0.0));
        assert_eq!(unit(f64::NAN), None);
        assert_eq!(unit_point((0.5, f64::NAN)), None);
    }
}
