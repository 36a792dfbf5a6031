//! The basin: how much water stands in it at a level, and the level back.
//!
//! A level is a depth **below the overflow lip**, positive downward, because
//! that is what a mechanic measures with a tape from a fixed edge. Plain
//! geometry; exact for each shape, no source needed. A table is followed
//! exactly between its rows: surface in a straight line ([`AreaTable`]), or
//! volume in a straight line ([`VolumeTable`]).

mod outline;
mod pieces;
mod table;

use serde::{Deserialize, Serialize};
use uom::si::area::square_meter;
use uom::si::length::meter;
use uom::si::volume::cubic_meter;

use super::error::{Error, Quantity, within};
use crate::quantity::{Area, Length, Volume};
pub(super) use pieces::Pieces;
pub use table::{AreaTable, MOST_ROWS, VolumeTable};

/// The basin's shape.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Plan {
    /// Rectangular in plan with a level floor: inside length and width.
    Rectangular {
        /// Inside length.
        length: Length,
        /// Inside width.
        width: Length,
    },
    /// Round in plan with a level floor: inside diameter.
    Round {
        /// Inside diameter.
        diameter: Length,
    },
    /// Rectangular in plan with a floor that falls evenly along the length to
    /// one end. The basin's depth is that of the low end.
    SlopedFloor {
        /// Inside length, along the fall.
        length: Length,
        /// Inside width, across the fall.
        width: Length,
        /// How much the floor falls from the high end to the low end; at most
        /// the depth.
        fall: Length,
    },
    /// Any shape, by its water surface at several levels: steps, benches,
    /// islands.
    LevelArea {
        /// Surface at each level.
        table: AreaTable,
    },
    /// Any shape, by the water it holds at several levels, as filled through a
    /// meter.
    LevelVolume {
        /// Water at each level; only differences count.
        table: VolumeTable,
    },
}

/// A basin with an overflow lip.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Basin {
    /// The shape.
    pub plan: Plan,
    /// Depth from the overflow lip down to the lowest point of the floor.
    pub depth: Length,
}

impl Basin {
    /// Free water surface with the basin full to the lip, in square metres.
    pub fn area(&self) -> Area {
        self.area_at(Length::new::<meter>(0.0))
    }

    /// Free water surface when it is `below_overflow` under the lip. Clamped
    /// as [`Basin::volume`]; at a step, the surface under the step.
    pub fn area_at(&self, below_overflow: Length) -> Area {
        Area::new::<square_meter>(Pieces::of(self).area(self.height(below_overflow)))
    }

    /// Water standing in the basin when the surface is `below_overflow` under
    /// the lip. Clamped: a level above the lip counts as the lip, one below
    /// the floor as empty.
    pub fn volume(&self, below_overflow: Length) -> Volume {
        Volume::new::<cubic_meter>(Pieces::of(self).volume(self.height(below_overflow)))
    }

    /// The level, below the lip, at which the basin holds this much water.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the basin itself is out of range (surface at
    /// the lip 0.001 to 10,000 m2, depth 1 mm to 20 m, fall of the floor 0 to
    /// the depth), or the volume outside zero to full.
    pub fn level_at(&self, volume: Volume) -> Result<Length, Error> {
        let pieces = self.sized()?;
        let depth = self.depth.get::<meter>();
        let held = within(
            Quantity::WaterVolume,
            volume.get::<cubic_meter>(),
            0.0,
            pieces.volume(depth),
        )?;
        Ok(Length::new::<meter>(depth - pieces.height(held)))
    }

    /// Height of a level above the lowest point of the floor, in metres.
    pub(super) fn height(&self, below_overflow: Length) -> f64 {
        let depth = self.depth.get::<meter>();
        depth - below_overflow.get::<meter>().max(0.0).min(depth)
    }

    /// The pieces of a basin whose size is in range.
    ///
    /// # Errors
    /// As [`Basin::level_at`].
    pub(super) fn sized(&self) -> Result<Pieces, Error> {
        let depth = self.depth.get::<meter>();
        let surface = self.area().get::<square_meter>();
        within(Quantity::BasinArea, surface, 1e-3, 1e4)?;
        within(Quantity::BasinDepth, depth, 1e-3, 20.0)?;
        if let Plan::SlopedFloor { fall, .. } = self.plan {
            within(Quantity::FloorFall, fall.get::<meter>(), 0.0, depth)?;
        }
        Ok(Pieces::of(self))
    }

    /// A level between lip and floor as a height above the floor, in metres.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] for a level above the lip or below the floor.
    pub(super) fn wet_height(&self, below_overflow: Length) -> Result<f64, Error> {
        let depth = self.depth.get::<meter>();
        let level = within(
            Quantity::Level,
            below_overflow.get::<meter>(),
            0.0,
            depth.max(0.0),
        )?;
        Ok(depth - level)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn m(v: f64) -> Length {
        Length::new::<meter>(v)
    }

    fn held(basin: &Basin, below: f64) -> f64 {
        basin.volume(m(below)).get::<cubic_meter>()
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
        assert!((held(&basin, 0.1) - 1.8).abs() < 1e-12);
        assert_eq!(held(&basin, 0.5), 0.0);
        assert!((held(&basin, -0.1) - 2.4).abs() < 1e-12);
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

    #[test]
    fn a_sloped_floor_holds_a_wedge_under_a_box() {
        let basin = Basin {
            plan: Plan::SlopedFloor {
                length: m(3.0),
                width: m(2.0),
                fall: m(0.1),
            },
            depth: m(0.4),
        };
        // Wedge 6 x 0.1 / 2, box 6 x 0.3.
        assert!((held(&basin, 0.0) - 2.1).abs() < 1e-12);
        assert!((held(&basin, 0.3) - 0.3).abs() < 1e-12);
        // Half up the wedge: half the floor wet, a quarter of its water.
        assert!((held(&basin, 0.35) - 0.075).abs() < 1e-12);
        assert!((basin.area_at(m(0.35)).get::<square_meter>() - 3.0).abs() < 1e-12);
    }

    #[test]
    fn stored_basins_read_and_write_as_ever() {
        let old = r#"{"plan":{"rectangular":{"length":3.0,"width":2.0}},"depth":0.4}"#;
        let basin: Basin = serde_json::from_str(old).unwrap();
        assert_eq!(serde_json::to_string(&basin).unwrap(), old);
        let new = r#"{"plan":{"level-area":{"table":[[0.0,6.0],[0.3,4.0]]}},"depth":0.3}"#;
        let basin: Basin = serde_json::from_str(new).unwrap();
        assert_eq!(serde_json::to_string(&basin).unwrap(), new);
        assert!((held(&basin, 0.0) - 1.5).abs() < 1e-12);
        let upside_down = r#"{"plan":{"level-area":{"table":[[0.3,6.0],[0.0,4.0]]}},"depth":0.3}"#;
        assert!(serde_json::from_str::<Basin>(upside_down).is_err());
    }
}
