//! The waterline: the basin in section, with its marks and levels.

use super::blocks::{NOTE, Type, Typesetter};
use super::face::Weight;
use super::lines::{fitted, single};
use super::strip::{Shape, Strip};
use super::style::{Colour, INK, PAPER, QUIET, SMALL, WATER, WATER_PALE};
use super::tags::{NodeId, ROOT};
use crate::quantity::sort_by;
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

    /// The figure with its words: levels to the left, marks to the right.
    pub(super) fn basin(&mut self, waterline: &Waterline) {
        const DEPTH: f32 = 92.0;
        let node = self.tags.figure(ROOT, &waterline.summary);
        let (left, width) = (self.frame.left, self.frame.width());
        let side = width * 0.31;
        let tank = Tank {
            x: left + side,
            top: 13.0,
            width: width * 0.36,
            depth: DEPTH,
        };
        let mut strip = Strip::blank(DEPTH + 25.0);
        tank.draw(&mut strip, node, waterline, 1.4);

        let levels: Vec<Tag> = [&waterline.found, &waterline.left]
            .into_iter()
            .flatten()
            .filter_map(|l| Some(Tag::new(&tank, unit(l.height)?, &l.label, &l.value)))
            .collect();
        for tag in spread(levels, &tank) {
            let ends = [(tank.x - 4.0, tag.at), (tank.x - 12.0, tag.y)];
            stroke(&mut strip, node, &ends, 0.5, WATER, 0.0);
            self.tag(
                &mut strip,
                node,
                &tag,
                WATER,
                tank.x - 15.0,
                side - 17.0,
                true,
            );
        }
        let marks: Vec<Tag> = waterline
            .marks
            .iter()
            .filter_map(|m| Some(Tag::new(&tank, unit(m.height)?, &m.label, &m.value)))
            .collect();
        let right = tank.x + tank.width;
        let room = left + width - right - 24.0;
        for tag in spread(marks, &tank) {
            let ends = [(right + 7.0, tag.at), (right + 19.0, tag.y)];
            stroke(&mut strip, node, &ends, 0.5, QUIET, 0.0);
            self.tag(&mut strip, node, &tag, QUIET, right + 22.0, room, false);
        }
        let caption = break_caption(self, waterline);
        self.flow(super::strip::joined(vec![strip], 0.0), 13.0);
        let count = self.strips.len();
        if !caption.is_empty() {
            self.strips[count - 1].keep_next = true;
        }
        self.flow(caption, 4.0);
    }

    #[allow(clippy::too_many_arguments)]
    fn tag(
        &self,
        strip: &mut Strip,
        node: NodeId,
        tag: &Tag,
        colour: Colour,
        x: f32,
        room: f32,
        flush_right: bool,
    ) {
        let value = single(self.faces, &tag.value, Weight::Bold, SMALL);
        let value = if value.width > room * 0.55 {
            fitted(self.faces, &tag.value, Weight::Bold, SMALL, room * 0.55)
        } else {
            value
        };
        let gap = if tag.value.is_empty() { 0.0 } else { 5.0 };
        let label = fitted(
            self.faces,
            &tag.label,
            NOTE.weight,
            SMALL,
            room - value.width - gap,
        );
        let start = if flush_right {
            x - label.width - gap - value.width
        } else {
            x
        };
        let y = tag.y + SMALL * 0.364;
        strip.line(Some(node), &label, start, y, SMALL, colour);
        strip.line(Some(node), &value, start + label.width + gap, y, SMALL, INK);
    }
}

fn break_caption(setter: &mut Typesetter<'_>, waterline: &Waterline) -> Vec<Strip> {
    let node = setter.tags.add(ROOT, "Caption");
    let set = Type { ..NOTE };
    let (x, width) = (setter.frame.left, setter.frame.width());
    setter.text(node, &waterline.summary.as_str().into(), set, x, width)
}

/// Words beside the tank.
struct Tag {
    /// Height of what it names.
    at: f32,
    /// Height of the words.
    y: f32,
    label: String,
    value: String,
}

impl Tag {
    fn new(tank: &Tank, height: f32, label: &str, value: &str) -> Self {
        let at = tank.y(height);
        Tag {
            at,
            y: at,
            label: label.to_owned(),
            value: value.to_owned(),
        }
    }
}

/// Moves words apart so that none covers another, keeping them by the tank.
fn spread(mut tags: Vec<Tag>, tank: &Tank) -> Vec<Tag> {
    sort_by(&mut tags, |a, b| a.at.total_cmp(&b.at));
    let (top, foot) = (tank.top - 8.0, tank.top + tank.depth + 8.0);
    let step = 11.5_f32.min((foot - top) / tags.len().max(1) as f32);
    let mut floor = top;
    for tag in &mut tags {
        tag.y = tag.y.max(floor);
        floor = tag.y + step;
    }
    let mut roof = foot;
    for tag in tags.iter_mut().rev() {
        tag.y = tag.y.min(roof);
        roof = tag.y - step;
    }
    tags
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_keep_their_distance() {
        let tank = Tank {
            x: 0.0,
            top: 20.0,
            width: 100.0,
            depth: 130.0,
        };
        let tags = (0..5).map(|_| Tag::new(&tank, 0.0, "x", "")).collect();
        let got = spread(tags, &tank);
        assert!(got.windows(2).all(|w| w[1].y - w[0].y >= 11.4));
        assert!(got[4].y <= 158.1);
    }
}
