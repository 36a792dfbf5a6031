//! Drawing a page: strips to a content stream (ISO 32000-1, 8 and 9).

use super::face::Weight;
use super::out::{bytes, numbers};
use super::pages::Page;
use super::strip::{Item, Shape};
use super::style::{Colour, Frame};
use super::tags::{NodeId, Tags};

/// How wide a line bold letters are outlined with, in parts of their size.
const HEAVIER: f32 = 0.032;

/// The content stream of a page, uncompressed. Notes in `tags` which content
/// belongs to which node.
pub(super) fn content(page: &Page, number: usize, frame: &Frame, tags: &mut Tags) -> Vec<u8> {
    let mut content = Vec::new();
    let mut open: Option<Option<NodeId>> = None;
    let mut mcid = 0;
    for placed in page {
        for Item { tag, shape } in &placed.strip.items {
            if open != Some(*tag) {
                if open.is_some() {
                    op(&mut content, &[], "EMC");
                }
                match *tag {
                    None => op(&mut content, &[], "/Artifact BMC"),
                    Some(node) => {
                        let role = tags.role(node);
                        op(&mut content, &[], &format!("/{role}<</MCID {mcid}>>BDC"));
                        tags.content(node, number, mcid);
                        mcid += 1;
                    }
                }
                open = Some(*tag);
            }
            if let Some(node) = tag {
                for (x, y) in shape.corners() {
                    tags.cover(*node, r(x), r(frame.page_height - placed.y - y));
                }
            }
            draw(&mut content, shape, placed.y, frame.page_height);
        }
    }
    if open.is_some() {
        op(&mut content, &[], "EMC");
    }
    content
}

/// Rounds to hundredths of a point: enough for print, and short to write.
fn r(v: f32) -> f32 {
    (v * 100.0).round() / 100.0
}

/// An operator after its numbers.
fn op(content: &mut Vec<u8>, with: &[f32], name: &str) {
    numbers(content, with);
    content.extend(name.bytes());
    content.push(b'\n');
}

fn pen(content: &mut Vec<u8>, colour: &Colour, width: f32) {
    op(content, colour, "RG");
    op(content, &[width], "w");
}

fn draw(content: &mut Vec<u8>, shape: &Shape, top: f32, page_height: f32) {
    let y_of = |y: f32| r(page_height - top - y);
    match shape {
        Shape::Glyphs {
            x,
            y,
            size,
            colour,
            glyphs,
        } => {
            let bold = glyphs.weight == Weight::Bold;
            op(content, colour, "rg");
            if bold {
                pen(content, colour, r(HEAVIER * size));
            }
            op(content, &[], "BT");
            content.extend(b"/F0 ");
            op(content, &[*size], "Tf");
            op(content, &[if bold { 2.0 } else { 0.0 }], "Tr");
            op(content, &[r(*x), y_of(*y)], "Td");
            bytes(content, glyphs.ids.iter().flat_map(|id| id.to_be_bytes()));
            op(content, &[], "Tj");
            op(content, &[], "ET");
        }
        Shape::Stroke {
            points,
            width,
            colour,
            dash,
        } => {
            pen(content, colour, *width);
            dashes(content, *dash);
            path(content, points, &y_of);
            op(content, &[], "S");
        }
        Shape::Fill { points, colour } => {
            op(content, colour, "rg");
            path(content, points, &y_of);
            op(content, &[], "h f");
        }
        Shape::Image {
            index,
            x,
            y,
            width,
            height,
        } => {
            op(content, &[], "q");
            let place = [r(*width), 0.0, 0.0, r(*height), r(*x), y_of(y + height)];
            op(content, &place, "cm");
            op(content, &[], &format!("/I{index} Do Q"));
        }
        Shape::Disc {
            x,
            y,
            radius,
            colour,
            ring,
        } => {
            let (x, y) = (r(*x), y_of(*y));
            if *ring > 0.0 {
                pen(content, colour, *ring);
                dashes(content, 0.0);
            } else {
                op(content, colour, "rg");
            }
            circle(content, x, y, *radius);
            op(content, &[], if *ring > 0.0 { "S" } else { "f" });
        }
    }
}

fn dashes(content: &mut Vec<u8>, dash: f32) {
    content.push(b'[');
    if dash > 0.0 {
        numbers(content, &[dash, dash * 0.75]);
    }
    op(content, &[], "] 0 d");
}

fn path(content: &mut Vec<u8>, points: &[(f32, f32)], y_of: &dyn Fn(f32) -> f32) {
    for (i, (x, y)) in points.iter().enumerate() {
        op(content, &[r(*x), y_of(*y)], if i == 0 { "m" } else { "l" });
    }
}

/// A circle as four Bezier curves; 0.5523 is the usual handle length,
/// 4/3 (sqrt 2 - 1).
fn circle(content: &mut Vec<u8>, x: f32, y: f32, radius: f32) {
    let h = radius * 0.5523;
    op(content, &[r(x + radius), y], "m");
    for (a, b, c) in [
        ((radius, h), (h, radius), (0.0, radius)),
        ((-h, radius), (-radius, h), (-radius, 0.0)),
        ((-radius, -h), (-h, -radius), (0.0, -radius)),
        ((h, -radius), (radius, -h), (radius, 0.0)),
    ] {
        let curve = [x + a.0, y + a.1, x + b.0, y + b.1, x + c.0, y + c.1];
        op(content, &curve.map(r), "c");
    }
    op(content, &[], "h");
}
