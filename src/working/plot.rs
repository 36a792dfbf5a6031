//! Pictures as data.

use crate::quantity::Kind;

/// A picture beside the answers.
#[derive(Clone, Debug, PartialEq)]
pub enum Picture {
    /// Curves over two axes, and today's point.
    Plot(Plot),
    /// A basin in section: depth, level now and level then below the lip, m.
    Basin {
        /// From the lip to the floor.
        depth: f64,
        /// Where the water stands.
        now: f64,
        /// The level that matters.
        then: Option<f64>,
        /// Its corners, as [`Basin::outline`](crate::physics::basin::Basin::outline).
        outline: Vec<(f64, f64)>,
    },
}

/// Curves over two axes.
#[derive(Clone, Debug, PartialEq)]
pub struct Plot {
    /// Across.
    pub x: Axis,
    /// Up.
    pub y: Axis,
    /// The curves, the strongest last.
    pub curves: Vec<Curve>,
    /// Today's point.
    pub point: Option<(f64, f64)>,
}

/// An axis, in the SI form of its kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    /// What it measures.
    pub kind: Kind,
    /// Which input or answer that is.
    pub name: Name,
    /// Its low end.
    pub low: f64,
    /// Its high end.
    pub high: f64,
}

impl Axis {
    /// An axis up that holds these curves and a point, with room to spare.
    pub fn around(
        kind: Kind,
        name: Name,
        curves: &[Curve],
        point: Option<(f64, f64)>,
        spare: f64,
    ) -> Self {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        let drawn = curves.iter().flat_map(|c| &c.points).chain(point.as_ref());
        for (_, y) in drawn {
            low = low.min(*y);
            high = high.max(*y);
        }
        Self {
            kind,
            name,
            low: low - spare,
            high: high + spare,
        }
    }
}

/// What an axis is called.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Name {
    /// As an input is.
    Ask(super::Ask),
    /// As an answer is.
    Figure(crate::physics::basis::Figure),
}

/// A curve.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Its points, in order along x, in the SI forms of the axes.
    pub points: Vec<(f64, f64)>,
    /// Whether it is the one the working is about.
    pub strong: bool,
}

impl Curve {
    /// A curve over `axis` by a function; points without a value are left out.
    pub fn over(axis: Axis, steps: usize, strong: bool, f: &dyn Fn(f64) -> Option<f64>) -> Self {
        let at = |i: usize| axis.low + (axis.high - axis.low) * i as f64 / steps as f64;
        let points = (0..=steps)
            .filter_map(|i| Some((at(i), f(at(i))?)))
            .collect();
        Self { points, strong }
    }
}
