//! Where the level changes its pace: straight pieces found in the readings
//! alone, without the marks.
//!
//! Method: least squares in each piece, and the pieces that make the sum of
//! squares plus a price for every piece least. That least sum is found exactly
//! by dynamic programming (B. Jackson et al., "An algorithm for optimal
//! partitioning of data on an interval", IEEE Signal Processing Letters 12
//! (2005) 105-108). One reading that spoils every choice is passed over. The
//! level itself never jumps, so a turn lies where the two lines meet.
//!
//! How far checked: the pieces against `ruptures` (C. Truong et al. 2020,
//! PELT on its linear cost) on the data of `tests/reference/refill_turns.csv`.

use super::line::{Line, least_squares};
use crate::quantity::sort_by;

/// Price of one more piece, in variances of one reading. A third line through
/// readings of one straight rise gains less than this in 99 of 100 (simulated).
const PRICE: f64 = 16.0;
/// What leaving one reading out must gain, in the same: less than a piece, so
/// that a slip is not taken for one.
const SLIP: f64 = 12.0;
/// Of more readings than this in one stretch, each few in a row count as one: the
/// one whose level lies in the middle, so that a slip among them is gone.
const MOST: usize = 120;

fn thinned(points: &[(f64, f64)]) -> Vec<(f64, f64)> {
    if points.len() <= MOST {
        return points.to_vec();
    }
    let few = points.len().div_ceil(MOST).max(3);
    let middle = |row: &[(f64, f64)]| {
        let mut row = row.to_vec();
        sort_by(&mut row, |a, b| a.1.total_cmp(&b.1));
        row[row.len() / 2]
    };
    points.chunks(few).map(middle).collect()
}

/// One straight piece: readings `from..to` of those searched.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    pub from: usize,
    pub to: usize,
    pub line: Line,
}

/// Pieces, and the points they count from: one point may have been passed over.
pub(super) struct Pieces {
    pub points: Vec<(f64, f64)>,
    pub pieces: Vec<Piece>,
    /// Time of the reading passed over.
    pub slip: Option<f64>,
}

/// Sums over the first so many points, from which any piece's squares follow.
#[derive(Clone, Copy, Default)]
struct Sums([f64; 6]);

impl Sums {
    fn all(points: &[(f64, f64)]) -> Vec<Sums> {
        let n = points.len().max(1) as f64;
        let (x0, y0) = (
            points.iter().map(|p| p.0).sum::<f64>() / n,
            points.iter().map(|p| p.1).sum::<f64>() / n,
        );
        let mut sums = vec![Sums::default()];
        for (x, y) in points {
            let (x, y) = (x - x0, y - y0);
            let mut next = sums[sums.len() - 1];
            for (sum, add) in next.0.iter_mut().zip([1.0, x, y, x * x, x * y, y * y]) {
                *sum += add;
            }
            sums.push(next);
        }
        sums
    }

    /// Squares left over by the best line through the points between two sums.
    fn left(from: &Sums, to: &Sums) -> f64 {
        let mut s = [0.0; 6];
        for (s, (a, b)) in s.iter_mut().zip(from.0.iter().zip(to.0)) {
            *s = b - a;
        }
        let [n, x, y, xx, xy, yy] = s;
        let (sxx, sxy, syy) = (xx - x * x / n, xy - x * y / n, yy - y * y / n);
        let rest = if sxx > 1e-9 {
            syy - sxy * sxy / sxx
        } else {
            syy
        };
        rest.max(0.0)
    }
}

/// The least total, and where the pieces end.
fn partition(points: &[(f64, f64)], price: f64) -> (f64, Vec<usize>) {
    let n = points.len();
    let sums = Sums::all(points);
    let mut best = vec![(f64::INFINITY, 0); n + 1];
    best[0] = (-price, 0);
    for end in 2..=n {
        for begin in (0..=end - 2).filter(|b| *b != 1) {
            let total = best[begin].0 + price + Sums::left(&sums[begin], &sums[end]);
            if total < best[end].0 {
                best[end] = (total, begin);
            }
        }
    }
    let (mut ends, mut at) = (Vec::new(), n);
    while at > 0 {
        ends.insert(0, at);
        at = best[at].1;
    }
    (best[n].0, ends)
}

/// The pieces of these readings (seconds, even level), given the spread of one
/// reading. Empty below two readings.
pub(super) fn pieces(points: &[(f64, f64)], sd: f64) -> Pieces {
    let all = points.len();
    let mut points = thinned(points);
    if points.len() < 2 {
        return Pieces {
            points,
            pieces: Vec::new(),
            slip: None,
        };
    }
    let variance = sd * sd;
    let mut slip = None;
    let (total, mut ends) = partition(&points, PRICE * variance);
    // Among thinned points no slip is left to look for.
    if points.len() >= 5 && points.len() == all {
        let without = |i: usize| {
            let mut rest = points.clone();
            rest.remove(i);
            let (total, ends) = partition(&rest, PRICE * variance);
            (total, ends, rest, points[i].0)
        };
        let least = (0..points.len())
            .map(without)
            .min_by(|a, b| a.0.total_cmp(&b.0));
        if let Some((less, fewer, rest, at)) = least
            && total - less > SLIP * variance
        {
            (ends, points, slip) = (fewer, rest, Some(at));
        }
    }
    let mut from = 0;
    let mut pieces = Vec::new();
    for to in ends {
        if let Some(line) = least_squares(&points[from..to]) {
            pieces.push(Piece { from, to, line });
        }
        from = to;
    }
    Pieces {
        points,
        pieces,
        slip,
    }
}

/// When one piece turns into the next, with half of a 95 % interval: where the
/// lines meet, held between the last reading of one and the first of the next.
pub(super) fn turn(found: &Pieces, before: &Piece, after: &Piece, sd: f64) -> (f64, f64) {
    let (last, first) = (found.points[before.to - 1].0, found.points[after.from].0);
    let (a, b) = (&before.line, &after.line);
    let bend = a.slope - b.slope;
    let meet = (b.at(0.0) - a.at(0.0)) / bend;
    let at = match meet.is_finite() {
        true => meet.clamp(last, first),
        false => 0.5 * (last + first),
    };
    let share = |l: &Line| 1.0 / l.n as f64 + (at - l.mean_x).powi(2) / l.sxx;
    let half = 1.96 * sd * (share(a) + share(b)).sqrt() / bend.abs();
    // A reading counted to the wrong piece can move it by one gap, no farther.
    (at, half.min(first - last).max(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Falls to 0.25 at 300 s, holds to 480 s, rises to 0.10 at 980 s, holds.
    fn test_of(at: f64) -> f64 {
        match at {
            t if t < 300.0 => 0.10 + 0.15 * t / 300.0,
            t if t < 480.0 => 0.25,
            t if t < 980.0 => 0.25 - 0.15 * (t - 480.0) / 500.0,
            _ => 0.10,
        }
    }

    fn readings(every: f64) -> Vec<(f64, f64)> {
        let mut at = 0.0;
        let mut all = Vec::new();
        while at < 1300.0 {
            all.push((at, test_of(at)));
            at += every;
        }
        all
    }

    #[test]
    fn the_pieces_of_a_test_are_found_and_meet_where_it_turned() {
        let found = pieces(&readings(28.0), 0.0024);
        let slopes: Vec<f64> = found.pieces.iter().map(|p| p.line.slope).collect();
        assert_eq!(found.pieces.len(), 4, "{slopes:?}");
        let (shut, half) = turn(&found, &found.pieces[2], &found.pieces[3], 0.0024);
        assert!((shut - 980.0).abs() < 1.0 && half < 28.0, "{shut} {half}");
    }

    #[test]
    fn one_bad_reading_makes_no_piece() {
        let mut all = readings(28.0);
        all[20].1 += 0.05;
        let found = pieces(&all, 0.0024);
        assert_eq!((found.pieces.len(), found.points.len()), (4, all.len() - 1));
    }

    #[test]
    fn thousands_of_readings_turn_where_they_did_with_a_slip_among_them() {
        let mut all = readings(0.5);
        assert!(all.len() > 2000);
        all[1500].1 += 0.05;
        let found = pieces(&all, 0.0024);
        assert_eq!((found.pieces.len(), found.slip), (4, None));
        let (shut, _) = turn(&found, &found.pieces[2], &found.pieces[3], 0.0024);
        assert!((shut - 980.0).abs() < 12.0, "{shut}");
    }

    #[test]
    fn a_straight_rise_is_one_piece() {
        let all: Vec<_> = (0..9)
            .map(|i| (60.0 * f64::from(i), 0.3 - 0.01 * f64::from(i)))
            .collect();
        assert_eq!(pieces(&all, 0.0024).pieces.len(), 1);
        assert!(pieces(&all[..1], 0.0024).pieces.is_empty());
    }

    /// Against PELT of ruptures with its linear cost, on 24 simulated tests:
    /// made by `tests/reference/refill_turns.py`. The same sum of squares is
    /// made least, so the pieces must be the same, not about the same.
    #[test]
    fn the_pieces_are_those_that_pelt_finds() {
        let text = include_str!("../../tests/reference/refill_turns.csv");
        type Set = (Vec<(f64, f64)>, Vec<usize>);
        let mut sets: Vec<Set> = Vec::new();
        for line in text.lines().skip(1) {
            let cells: Vec<&str> = line.split(',').collect();
            let set: usize = cells[0].parse().unwrap();
            if set == sets.len() {
                sets.push((Vec::new(), Vec::new()));
            }
            let at = (cells[1].parse().unwrap(), cells[2].parse().unwrap());
            sets[set].0.push(at);
            sets[set].1.push(cells[3].parse().unwrap());
        }
        assert_eq!(sets.len(), 24);
        for (n, (points, pieces)) in sets.iter().enumerate() {
            let (_, ends) = partition(points, PRICE * 0.0024 * 0.0024);
            let theirs: Vec<usize> = (1..=points.len())
                .filter(|i| *i == points.len() || pieces[*i] != pieces[i - 1])
                .collect();
            assert_eq!(ends, theirs, "set {n}");
        }
    }
}
