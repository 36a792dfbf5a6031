//! What the readings show by themselves, marks or no marks: when the level
//! turned, and which part of a stretch moved at one pace.

use super::even::Even;
use super::fit::READING_SD_M;
use super::turns::{Piece, Pieces, pieces, turn};
use crate::physics::basin::Basin;

/// A time, or a time between two events, in seconds with its 95 % interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Best value.
    pub value_s: f64,
    /// Lower 95 % bound.
    pub low_s: f64,
    /// Upper 95 % bound.
    pub high_s: f64,
}

impl Span {
    pub(super) fn around(value_s: f64, half: f64) -> Self {
        Self {
            value_s,
            low_s: value_s - half,
            high_s: value_s + half,
        }
    }
}

/// A rise of the level found in the readings, on the test's clock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rise {
    /// When it began, if a reading before it shows that.
    pub began: Option<Span>,
    /// When it ended, if two readings after it show that.
    pub ended: Option<Span>,
    /// First and last reading on it.
    pub(super) from_s: f64,
    pub(super) to_s: f64,
}

/// A pace that changed within a stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Changed {
    pub at_s: f64,
    /// Pace after over pace before.
    pub share: f64,
}

/// Least height of a rise that is no ripple, in metres.
const LEAST_RISE_M: f64 = 6.0 * READING_SD_M;
/// Slower than this part of the rise before, it is no longer filling.
const SLOWED: f64 = 1.0 / 3.0;

fn searched(basin: &Basin, readings: &[(f64, f64)]) -> Pieces {
    let even = Even::over(basin, readings.iter().map(|r| r.1));
    let points: Vec<_> = readings.iter().map(|r| (r.0, even.of(r.1))).collect();
    pieces(&points, READING_SD_M)
}

fn span(found: &Pieces, a: &Piece, b: &Piece) -> Span {
    let (at, half) = turn(found, a, b, READING_SD_M);
    Span::around(at, half)
}

/// The largest rise in these readings, if there is one, and the time of a
/// reading that fits none of the pieces.
pub(super) fn rise(basin: &Basin, readings: &[(f64, f64)]) -> (Option<Rise>, Option<f64>) {
    let found = searched(basin, readings);
    (rise_in(&found), found.slip)
}

fn rise_in(found: &Pieces) -> Option<Rise> {
    let all = &found.pieces;
    let first = |p: &Piece| found.points[p.from].0;
    let last = |p: &Piece| found.points[p.to - 1].0;
    let height = |p: &Piece| -p.line.slope * (last(p) - first(p));
    let most = (0..all.len()).max_by(|a, b| height(&all[*a]).total_cmp(&height(&all[*b])))?;
    if height(&all[most]) < LEAST_RISE_M {
        return None;
    }
    let fills = |p: &Piece| p.line.slope < SLOWED * all[most].line.slope;
    let (mut from, mut to) = (most, most);
    while from > 0 && fills(&all[from - 1]) {
        from -= 1;
    }
    while to + 1 < all.len() && fills(&all[to + 1]) {
        to += 1;
    }
    Some(Rise {
        began: (from > 0).then(|| span(found, &all[from - 1], &all[from])),
        ended: all.get(to + 1).map(|next| span(found, &all[to], next)),
        from_s: first(&all[from]),
        to_s: last(&all[to]),
    })
}

/// Paces this near each other are one pace that the readings scatter about.
const ALIKE: f64 = 1.5;

/// The readings of a stretch that moved at one pace: all of them, or the
/// longest piece (the longest rising one, for a fill) with what is like it
/// beside it. With it, where two rising pieces met.
pub(super) fn steady(
    basin: &Basin,
    readings: &[(f64, f64)],
    filling: bool,
) -> (Vec<(f64, f64)>, Option<Changed>) {
    let found = searched(basin, readings);
    let all = &found.pieces;
    let long = |p: &Piece| found.points[p.to - 1].0 - found.points[p.from].0;
    let best = (0..all.len())
        .filter(|i| !filling || all[*i].line.slope < 0.0)
        .max_by(|a, b| long(&all[*a]).total_cmp(&long(&all[*b])));
    let Some(best) = best.filter(|_| all.len() > 1) else {
        return (readings.to_vec(), None);
    };
    let pace = all[best].line.slope;
    let alike = |p: &Piece| {
        let share = p.line.slope / pace;
        let few = p.to - p.from < 3 && share > SLOWED;
        filling && (few || (share > 1.0 / ALIKE && share < ALIKE))
    };
    let (mut from, mut to) = (best, best);
    while from > 0 && alike(&all[from - 1]) {
        from -= 1;
    }
    while to + 1 < all.len() && alike(&all[to + 1]) {
        to += 1;
    }
    let met = |a: usize, b: usize| Changed {
        at_s: turn(&found, &all[a], &all[b], READING_SD_M).0,
        share: all[b].line.slope / all[a].line.slope,
    };
    let rising = |i: usize| all[i].to - all[i].from >= 3 && all[i].line.slope < SLOWED * pace;
    let changed = match filling {
        true if to + 1 < all.len() && rising(to + 1) => Some(met(to, to + 1)),
        true if from > 0 && rising(from - 1) => Some(met(from - 1, from)),
        _ => None,
    };
    let (first, last) = (
        found.points[all[from].from].0,
        found.points[all[to].to - 1].0,
    );
    let inside = readings
        .iter()
        .copied()
        .filter(|r| r.0 >= first && r.0 <= last);
    (inside.collect(), changed.filter(|c| c.share.is_finite()))
}
