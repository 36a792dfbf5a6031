//! The basin: how much water stands in it at a level.
//!
//! A level is a depth **below the overflow lip**, positive downward, because
//! that is what a mechanic measures with a tape from a fixed edge. Plain
//! geometry with vertical walls and a flat floor; exact, no source needed.

use serde::{Deserialize, Serialize};
use uom::si::area::square_meter;
use uom::si::length::meter;

use crate::quantity::{Area, Length, Volume};

/// The basin's shape in plan.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Plan {
    /// Rectangular: inside length and width.
    Rectangular {
        /// Inside length.
        length: Length,
        /// Inside width.
        width: Length,
    },
    /// Round: inside diameter.
    Round {
        /// Inside diameter.
        diameter: Length,
    },
}

/// A basin with vertical walls and a flat floor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Basin {
    /// Shape in plan.
    pub plan: Plan,
    /// Depth from the overflow lip down to the floor.
    pub depth: Length,
}

impl Basin {
    /// Free water surface in plan, in square metres.
    pub fn area(&self) -> Area {
        let m2 = match self.plan {
            Plan::Rectangular { length, width } => length.get::<meter>() * width.get::<meter>(),
            Plan::Round { diameter } => {
                let d = diameter.get::<meter>();
                std::f64::consts::PI * d * d / 4.0
            }
        };
        Area::new::<square_meter>(m2)
    }

    /// Water standing in the basin when the surface is `below_overflow` under
    /// the lip. Clamped: a level above the lip counts as the lip, one below
    /// the floor as empty.
    pub fn volume(&self, below_overflow: Length) -> Volume {
        let drop = below_overflow
            .max(Length::new::<meter>(0.0))
            .min(self.depth);
        self.area() * (self.depth - drop)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::volume::cubic_meter;

    fn m(v: f64) -> Length {
        Length::new::<meter>(v)
    }

    #[test]
    fn volume_is_area_times_the_depth_left() {
        let basin = Basin {
            plan: Plan::Rectangular {
                length: m(3.0),
                width: m(2.0),
            },
            depth: m(0.4),
        };
        assert!((basin.volume(m(0.1)).get::<cubic_meter>() - 1.8).abs() < 1e-12);
        assert_eq!(basin.volume(m(0.5)).get::<cubic_meter>(), 0.0);
        assert!((basin.volume(m(-0.1)).get::<cubic_meter>() - 2.4).abs() < 1e-12);
    }

    #[test]
    fn round_basin_uses_the_circle() {
        let basin = Basin {
            plan: Plan::Round { diameter: m(2.4) },
            depth: m(0.3),
        };
        // 4.524 m2: pi 2.4^2 / 4.
        assert!((basin.area().get::<square_meter>() - 4.5239).abs() < 1e-4);
    }
}
