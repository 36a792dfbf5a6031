//! The waterline: the basin in section, with its marks and levels.

use super::blocks::Typesetter;
use super::strip::{Shape, Strip};
use super::style::{Colour, INK, PAPER, WATER, WATER_PALE};
use super::tags::NodeId;
use crate::report::chart::{MarkKind, Waterline, unit};

/// A rectangle by its left, top, width and height.
#[derive(Clone, Copy)]
struct Tank {
    x: f32,
    top: f32,
    width: f32,
    depth: f32,
}

impl Tank {
    fn y(&self, height: f32) -> f32 {
        self.top + self.depth * (1.0 - height)
    }

    /// Walls and floor in ink; water up to the level as left, or as found if
    /// nothing was noted on leaving; the level as found as a dashed line.
    fn draw(&self, strip: &mut Strip, node: NodeId, waterline: &Waterline, wall: f32) {
        let right = self.x + self.width;
        let floor = self.top + self.depth;
        let level = |l: &Option<crate::report::chart::Level>| {
            l.as_ref().and_then(|level| unit(level.height))
        };
        let (found, left) = (level(&waterline.found), level(&waterline.left));
        if let Some(height) = left.or(found) {
            let y = self.y(height);
            let points = vec![(self.x, y), (right, y), (right, floor), (self.x, floor)];
            strip.push(
                Some(node),
                Shape::Fill {
                    points,
                    colour: WATER_PALE,
                },
            );
            stroke(strip, node, &[(self.x, y), (right, y)], 1.4, WATER, 0.0);
        }
        if left.is_some()
            && let Some(height) = found
        {
            let y = self.y(height).min(floor - wall);
            stroke(strip, node, &[(self.x, y), (right, y)], 1.1, WATER, 2.2);
        }
        let lip = self.top - 4.0;
        let walls = [(self.x, lip), (self.x, floor), (right, floor), (right, lip)];
        stroke(strip, node, &walls, wall, INK, 0.0);
        for mark in &waterline.marks {
            let Some(height) = unit(mark.height) else {
                continue;
            };
            let y = self.y(height);
            // Where the mark meets the wall.
            stroke(strip, node, &[(right - 4.0, y), (right, y)], 0.6, INK, 0.0);
            let reach = self.width * 0.28;
            match mark.kind {
                // Over the lip and out.
                MarkKind::Overflow => {
                    stroke(strip, node, &[(right, y), (right + 5.0, y)], wall, INK, 0.0);
                }
                // Probe tips, hanging from above.
                MarkKind::High | MarkKind::Low => {
                    let at = if mark.kind == MarkKind::High {
                        0.68
                    } else {
                        0.82
                    };
                    let x = self.x + self.width * at;
                    stroke(strip, node, &[(x, lip), (x, y)], 0.7, INK, 0.0);
                    let colour = INK;
                    strip.push(
                        Some(node),
                        Shape::Disc {
                            x,
                            y,
                            radius: 1.5,
                            colour,
                            ring: 0.0,
                        },
                    );
                }
                // A pipe through the floor, open at both ends, its mouth at the
                // mark.
                MarkKind::PumpInlet => {
                    let x = self.x + reach * 0.6;
                    let far = x + reach * 0.55;
                    let foot = floor + 5.0;
                    let wet = left.or(found).is_some_and(|level| level > height);
                    let colour = if wet { WATER_PALE } else { PAPER };
                    let points = vec![
                        (x, floor - wall),
                        (far, floor - wall),
                        (far, foot),
                        (x, foot),
                    ];
                    strip.push(Some(node), Shape::Fill { points, colour });
                    stroke(strip, node, &[(x, foot), (x, y)], wall, INK, 0.0);
                    stroke(strip, node, &[(far, foot), (far, y)], wall, INK, 0.0);
                }
            }
        }
    }
}

fn stroke(
    strip: &mut Strip,
    node: NodeId,
    points: &[(f32, f32)],
    width: f32,
    colour: Colour,
    dash: f32,
) {
    let points = points.to_vec();
    strip.push(
        Some(node),
        Shape::Stroke {
            points,
            width,
            colour,
            dash,
        },
    );
}

impl Typesetter<'_> {
    /// The slim waterline of the head, without words.
    #[allow(clippy::too_many_arguments)]
    pub(super) fn slim_basin(
        &self,
        strip: &mut Strip,
        waterline: &Waterline,
        node: NodeId,
        x: f32,
        y: f32,
        width: f32,
        height: f32,
    ) {
        let tank = Tank {
            x,
            top: y + 4.0,
            width,
            depth: height - 10.0,
        };
        tank.draw(strip, node, waterline, 1.1);
    }
}
