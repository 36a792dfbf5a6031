//! The basin in section, for drawing: how wide the water is at each depth.

use uom::si::length::meter;

use super::Basin;

impl Basin {
    /// The corners of the basin's section from the lip to the floor: how far
    /// down (0 at the lip, 1 at the floor) and how wide the water surface is
    /// there (1 where it is widest). A step has two corners at one depth. Empty
    /// when the basin has no depth or no surface.
    pub fn outline(&self) -> Vec<(f64, f64)> {
        let depth = self.depth.get::<meter>();
        let pieces = super::Pieces::of(self);
        let widest = pieces
            .each()
            .iter()
            .fold(0.0, |w: f64, p| w.max(p.area_low).max(p.area_high));
        if !(depth > 0.0 && widest > 0.0) {
            return Vec::new();
        }
        let mut corners = Vec::new();
        for piece in pieces.each().iter().rev() {
            for (height, area) in [(piece.high, piece.area_high), (piece.low, piece.area_low)] {
                let corner = (1.0 - height / depth, area / widest);
                if corners.last() != Some(&corner) {
                    corners.push(corner);
                }
            }
        }
        corners
    }
}

#[cfg(test)]
mod tests {
    use crate::physics::basin::{AreaTable, Basin, Plan};
    use crate::quantity::{Area, Length};
    use uom::si::area::square_meter;
    use uom::si::length::meter;

    fn m(v: f64) -> Length {
        Length::new::<meter>(v)
    }

    #[test]
    fn a_sloped_floor_narrows_to_nothing_at_its_deep_end() {
        let basin = Basin {
            plan: Plan::SlopedFloor {
                length: m(3.0),
                width: m(2.0),
                fall: m(0.1),
            },
            depth: m(0.4),
        };
        let corners = basin.outline();
        assert_eq!(corners, [(0.0, 1.0), (0.75, 1.0), (1.0, 0.0)]);
    }

    #[test]
    fn a_step_shows_as_a_step() {
        let row = |level, area| (m(level), Area::new::<square_meter>(area));
        let rows = [row(0.0, 6.0), row(0.3, 6.0), row(0.3, 3.0), row(0.4, 3.0)];
        let basin = Basin {
            plan: Plan::LevelArea {
                table: AreaTable::new(&rows).unwrap(),
            },
            depth: m(0.4),
        };
        let corners = basin.outline();
        let near = |(a, b): (f64, f64), (c, d): (f64, f64)| (a - c).abs() + (b - d).abs() < 1e-9;
        let wanted = [(0.0, 1.0), (0.75, 1.0), (0.75, 0.5), (1.0, 0.5)];
        assert_eq!(corners.len(), 4, "{corners:?}");
        assert!(corners.iter().zip(wanted).all(|(a, b)| near(*a, b)));
    }

    #[test]
    fn a_basin_of_nothing_has_no_outline() {
        let flat = Basin {
            plan: Plan::Round { diameter: m(2.0) },
            depth: m(0.0),
        };
        assert!(flat.outline().is_empty());
    }
}
