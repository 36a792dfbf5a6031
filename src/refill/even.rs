//! Levels counted evenly: so that steady flow moves them along a straight line
//! in a basin of any shape.

use uom::si::area::square_meter;
use uom::si::length::meter;
use uom::si::volume::cubic_meter;

use crate::physics::basin::Basin;
use crate::quantity::{Length, Volume};

/// A basin, and the surface of a straight-walled one that stands for it. An
/// even level is how far the same water would stand below the lip of that one;
/// in a straight-walled basin it is the level itself.
#[derive(Clone, Copy, Debug)]
pub(super) struct Even {
    basin: Basin,
    /// The surface, m2.
    pub area: f64,
    /// Even level of the empty basin, m.
    empty: f64,
}

impl Even {
    /// By the largest surface at any of these levels (m below the lip), so that
    /// no reading counts for more than the tape can tell. The full surface
    /// when there is none.
    pub fn over(basin: &Basin, levels: impl Iterator<Item = f64>) -> Self {
        let at = |l: f64| basin.area_at(Length::new::<meter>(l)).get::<square_meter>();
        let most = levels.map(at).fold(0.0, f64::max);
        let area = if most > 0.0 { most } else { at(0.0) };
        Self {
            basin: *basin,
            area,
            empty: basin.volume(Length::default()).get::<cubic_meter>() / area,
        }
    }

    fn depth(&self) -> f64 {
        self.basin.depth.get::<meter>()
    }

    fn surface(&self, level: f64) -> f64 {
        let there = self.basin.area_at(Length::new::<meter>(level));
        let there = there.get::<square_meter>();
        if there > 0.0 { there } else { self.area }
    }

    /// The even level of a level between lip and floor.
    pub fn of(&self, level: f64) -> f64 {
        let held = self.basin.volume(Length::new::<meter>(level));
        self.empty - held.get::<cubic_meter>() / self.area
    }

    /// The level of an even level; past lip and floor the walls go on upright.
    pub fn level(&self, even: f64) -> f64 {
        if even < 0.0 {
            return even * self.area / self.surface(0.0);
        }
        let held = (self.empty - even) * self.area;
        match self
            .basin
            .level_at(Volume::new::<cubic_meter>(held.max(0.0)))
        {
            Ok(level) if held > 0.0 => level.get::<meter>(),
            _ => {
                let depth = self.depth();
                depth + (even - self.empty) * self.area / self.surface(depth)
            }
        }
    }

    /// How far a level moves near `level` while its even level moves by `rise`.
    pub fn moved(&self, level: f64, rise: f64) -> f64 {
        rise * self.area / self.surface(level)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::basin::Plan;

    fn m(v: f64) -> Length {
        Length::new::<meter>(v)
    }

    #[test]
    fn straight_walls_change_nothing() {
        let basin = Basin {
            plan: Plan::Round { diameter: m(2.4) },
            depth: m(0.4),
        };
        let even = Even::over(&basin, [0.1, 0.3].into_iter());
        for level in [-0.05, 0.0, 0.1, 0.33, 0.4, 0.5] {
            assert!((even.level(level) - level).abs() < 1e-12);
        }
        assert!((even.of(0.17) - 0.17).abs() < 1e-12);
        assert!((even.moved(0.2, 0.01) - 0.01).abs() < 1e-12);
    }

    #[test]
    fn a_sloped_floor_goes_there_and_back() {
        let basin = Basin {
            plan: Plan::SlopedFloor {
                length: m(3.0),
                width: m(2.0),
                fall: m(0.2),
            },
            depth: m(0.4),
        };
        let even = Even::over(&basin, [0.1, 0.35].into_iter());
        for level in [0.0, 0.1, 0.2, 0.25, 0.3, 0.39] {
            assert!((even.level(even.of(level)) - level).abs() < 1e-9, "{level}");
        }
        // Under the high end the surface is half: the level moves twice as far.
        assert!((even.moved(0.3, 0.01) - 0.02).abs() < 1e-12);
    }
}
