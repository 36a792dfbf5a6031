//! Strips: the horizontal slices a document is cut into before it is laid on
//! pages. A strip is never cut; a page break falls only between strips.

use std::rc::Rc;

use super::lines::{Glyphs, Line};
use super::style::{Colour, HAIR, HAIRLINE};
use super::tags::NodeId;

/// Something to draw. Coordinates in points; y runs down from the top of the
/// strip, x from the left edge of the sheet.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Shape {
    /// Glyphs on a baseline.
    Glyphs {
        x: f32,
        y: f32,
        size: f32,
        colour: Colour,
        glyphs: Glyphs,
    },
    /// A stroked path; dashed if `dash` is positive.
    Stroke {
        points: Vec<(f32, f32)>,
        width: f32,
        colour: Colour,
        dash: f32,
    },
    /// A filled polygon.
    Fill {
        points: Vec<(f32, f32)>,
        colour: Colour,
    },
    /// A photo, by its place among the document's.
    Image {
        index: usize,
        x: f32,
        y: f32,
        width: f32,
        height: f32,
    },
    /// A disc, filled; or a ring if `ring` is a positive stroke width.
    Disc {
        x: f32,
        y: f32,
        radius: f32,
        colour: Colour,
        ring: f32,
    },
}

/// A shape and the part of the document it belongs to; decoration has none.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Item {
    pub(super) tag: Option<NodeId>,
    pub(super) shape: Shape,
}

/// A slice of the document.
#[derive(Clone, Debug, Default)]
pub(super) struct Strip {
    /// Space above, dropped at the top of a page.
    pub(super) before: f32,
    pub(super) height: f32,
    /// Stays on the page of the strip that follows.
    pub(super) keep_next: bool,
    /// Starts a new page.
    pub(super) break_before: bool,
    /// Drawn again above this strip when it comes first on a page.
    pub(super) head: Option<Rc<Strip>>,
    pub(super) items: Vec<Item>,
}

impl Strip {
    /// An empty slice of some height.
    pub(super) fn blank(height: f32) -> Self {
        Strip {
            height,
            ..Strip::default()
        }
    }

    /// Adds a shape.
    pub(super) fn push(&mut self, tag: Option<NodeId>, shape: Shape) {
        self.items.push(Item { tag, shape });
    }

    /// Sets a line with its left end at `x` and its baseline at `y`.
    pub(super) fn line(
        &mut self,
        tag: Option<NodeId>,
        line: &Line,
        x: f32,
        y: f32,
        size: f32,
        colour: Colour,
    ) {
        let mut x = x;
        for glyphs in &line.parts {
            self.push(
                tag,
                Shape::Glyphs {
                    x,
                    y,
                    size,
                    colour,
                    glyphs: glyphs.clone(),
                },
            );
            x += glyphs.width;
        }
    }

    /// Draws a hairline from `x0` to `x1`.
    pub(super) fn hairline(&mut self, x0: f32, x1: f32, y: f32) {
        self.push(
            None,
            Shape::Stroke {
                points: vec![(x0, y), (x1, y)],
                width: HAIRLINE,
                colour: HAIR,
                dash: 0.0,
            },
        );
    }

    /// Takes over the shapes of `other`, moved down by `dy`.
    pub(super) fn absorb(&mut self, other: &Strip, dy: f32) {
        let begun = self.items.len();
        self.items.extend_from_slice(&other.items);
        for item in &mut self.items[begun..] {
            item.shape.lower(dy);
        }
    }

    /// The same strip as decoration, for a repeated table head.
    pub(super) fn untagged(&self) -> Strip {
        let mut copy = self.clone();
        for item in &mut copy.items {
            item.tag = None;
        }
        copy
    }
}

impl Shape {
    /// Moves the shape down.
    fn lower(&mut self, dy: f32) {
        match self {
            Shape::Glyphs { y, .. } | Shape::Image { y, .. } | Shape::Disc { y, .. } => *y += dy,
            Shape::Stroke { points, .. } | Shape::Fill { points, .. } => {
                points.iter_mut().for_each(|p| p.1 += dy);
            }
        }
    }

    /// The corners of what it covers, as far as a figure's box needs them.
    pub(super) fn corners(&self) -> Vec<(f32, f32)> {
        match self {
            Shape::Stroke { points, .. } | Shape::Fill { points, .. } => points.clone(),
            Shape::Glyphs {
                x, y, size, glyphs, ..
            } => vec![(*x, *y), (x + glyphs.width, y - size)],
            Shape::Disc { x, y, radius, .. } => {
                vec![(x - radius, y - radius), (x + radius, y + radius)]
            }
            Shape::Image {
                x,
                y,
                width,
                height,
                ..
            } => vec![(*x, *y), (x + width, y + height)],
        }
    }
}

/// Baseline of a line of `size` centred on its capitals in a strip of `height`.
pub(super) fn baseline(height: f32, size: f32) -> f32 {
    height / 2.0 + size * 0.364
}

/// Puts strips one below another into a single one if together they are no
/// taller than `limit`; otherwise returns them as they are.
pub(super) fn joined(strips: Vec<Strip>, limit: f32) -> Vec<Strip> {
    let total: f32 = strips.iter().map(|s| s.height).sum::<f32>()
        + strips.iter().skip(1).map(|s| s.before).sum::<f32>();
    if strips.len() < 2 || total > limit {
        return strips;
    }
    let mut whole = Strip {
        before: strips[0].before,
        break_before: strips[0].break_before,
        head: strips[0].head.clone(),
        keep_next: strips.last().is_some_and(|s| s.keep_next),
        ..Strip::blank(total)
    };
    let mut y = 0.0;
    for (i, strip) in strips.iter().enumerate() {
        if i > 0 {
            y += strip.before;
        }
        whole.absorb(strip, y);
        y += strip.height;
    }
    vec![whole]
}
