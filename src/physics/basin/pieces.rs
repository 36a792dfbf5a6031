//! A basin as a stack of pieces whose surface grows in a straight line with
//! height: plain f64, metres above the lowest point of the floor.

use uom::si::length::meter;

use super::table::MOST_ROWS;
use super::{Basin, Plan};

/// Water between two heights; the surface runs in a straight line between.
#[derive(Clone, Copy, Default)]
pub(in crate::physics) struct Piece {
    pub low: f64,
    pub high: f64,
    pub area_low: f64,
    pub area_high: f64,
}

impl Piece {
    /// Surface at a height within the piece.
    pub fn area(&self, height: f64) -> f64 {
        let part = (height - self.low) / (self.high - self.low);
        self.area_low + (self.area_high - self.area_low) * part
    }

    /// Water below a height, counted from the foot of the piece.
    fn volume(&self, height: f64) -> f64 {
        (height - self.low) * 0.5 * (self.area_low + self.area(height))
    }

    /// The part of the piece between two heights, if any.
    pub fn between(&self, low: f64, high: f64) -> Option<Piece> {
        let (low, high) = (self.low.max(low), self.high.min(high));
        (low < high).then(|| Piece {
            low,
            high,
            area_low: self.area(low),
            area_high: self.area(high),
        })
    }
}

/// Every piece of a basin, from the floor up to the lip.
#[derive(Clone, Copy)]
pub(in crate::physics) struct Pieces {
    all: [Piece; MOST_ROWS + 1],
    count: usize,
}

impl Pieces {
    /// The pieces of this basin.
    pub fn of(basin: &Basin) -> Self {
        let depth = basin.depth.get::<meter>();
        let mut pieces = Self {
            all: [Piece::default(); MOST_ROWS + 1],
            count: 0,
        };
        match &basin.plan {
            Plan::Rectangular { length, width } => {
                let area = plain(length.get::<meter>() * width.get::<meter>());
                pieces.push(depth, 0.0, depth, area, area);
            }
            Plan::Round { diameter } => {
                let d = diameter.get::<meter>();
                let area = plain(std::f64::consts::PI * d * d / 4.0);
                pieces.push(depth, 0.0, depth, area, area);
            }
            Plan::SlopedFloor {
                length,
                width,
                fall,
            } => {
                let area = plain(length.get::<meter>() * width.get::<meter>());
                let fall = fall.get::<meter>().max(0.0);
                pieces.push(depth, 0.0, fall, 0.0, area);
                pieces.push(depth, fall, depth, area, area);
            }
            Plan::LevelArea { table } => {
                let rows = table.0.rows();
                let (mut foot, mut below) = (0.0, rows[rows.len() - 1].1);
                for &(level, area) in rows.iter().rev() {
                    let height = depth - level;
                    pieces.push(depth, foot, height, below, area);
                    (foot, below) = (height, area);
                }
                pieces.push(depth, foot, depth, below, below);
            }
            Plan::LevelVolume { table } => {
                let rows = table.0.rows();
                let last = rows.len() - 2;
                for i in (0..=last).rev() {
                    let (upper, lower) = (rows[i], rows[i + 1]);
                    let area = (upper.1 - lower.1) / (lower.0 - upper.0);
                    let low = if i == last { 0.0 } else { depth - lower.0 };
                    let high = if i == 0 { depth } else { depth - upper.0 };
                    pieces.push(depth, low, high, area, area);
                }
            }
        }
        pieces
    }

    /// Adds what of a piece lies between floor and lip.
    fn push(&mut self, depth: f64, low: f64, high: f64, area_low: f64, area_high: f64) {
        let whole = Piece {
            low,
            high,
            area_low,
            area_high,
        };
        if let Some(piece) = whole.between(0.0, depth) {
            self.all[self.count] = piece;
            self.count += 1;
        }
    }

    /// From the floor up.
    pub fn each(&self) -> &[Piece] {
        &self.all[..self.count]
    }

    /// Surface at a height; at a step, the surface under it.
    pub fn area(&self, height: f64) -> f64 {
        let all = self.each();
        all.iter()
            .find(|p| height <= p.high)
            .or(all.last())
            .map_or(0.0, |p| p.area(height))
    }

    /// Water below a height.
    pub fn volume(&self, height: f64) -> f64 {
        self.each()
            .iter()
            .filter(|p| height > p.low)
            .map(|p| p.volume(height.min(p.high)))
            .sum()
    }

    /// The height below which this much water stands; the lip for any more.
    pub fn height(&self, volume: f64) -> f64 {
        let mut left = volume.max(0.0);
        let mut height = 0.0;
        for piece in self.each() {
            let holds = piece.volume(piece.high);
            if left < holds {
                // left = a x + slope x^2 / 2, in the form that does not cancel.
                let a = piece.area_low;
                let slope = (piece.area_high - a) / (piece.high - piece.low);
                let root = (a * a + 2.0 * slope * left).max(0.0).sqrt();
                return if left > 0.0 {
                    piece.low + (2.0 * left / (a + root)).min(piece.high - piece.low)
                } else {
                    piece.low
                };
            }
            left -= holds;
            height = piece.high;
        }
        height
    }
}

/// Keeps the surface of an absurd basin finite, so that differences stay numbers.
fn plain(area: f64) -> f64 {
    area.clamp(-1e200, 1e200)
}
