//! Drawing a page: strips to a content stream.

use pdf_writer::types::{LineCapStyle, LineJoinStyle, TextRenderingMode};
use pdf_writer::{Content, Finish, Name, Str};

use super::face::Weight;
use super::pages::Page;
use super::strip::{Item, Shape};
use super::style::Frame;
use super::tags::{NodeId, Tags};

/// Name of the font in the page's resources.
pub(super) const FONT: Name<'static> = Name(b"F0");

/// Name of a photo in the resources of every page.
pub(super) fn image_name(index: usize) -> Vec<u8> {
    format!("I{index}").into_bytes()
}

/// How wide a line bold letters are outlined with, in parts of their size.
const HEAVIER: f32 = 0.032;

/// The content stream of a page, uncompressed. Notes in `tags` which content
/// belongs to which node.
pub(super) fn content(page: &Page, number: usize, frame: &Frame, tags: &mut Tags) -> Vec<u8> {
    let mut content = Content::new();
    content.set_line_cap(LineCapStyle::ButtCap);
    content.set_line_join(LineJoinStyle::MiterJoin);
    let mut open: Option<Option<NodeId>> = None;
    let mut mcid = 0;
    for placed in page {
        for Item { tag, shape } in &placed.strip.items {
            if open != Some(*tag) {
                if open.is_some() {
                    content.end_marked_content();
                }
                match *tag {
                    None => {
                        content.begin_marked_content(Name(b"Artifact"));
                    }
                    Some(node) => {
                        content
                            .begin_marked_content_with_properties(tags.role(node).to_name())
                            .properties()
                            .identify(mcid)
                            .finish();
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
        content.end_marked_content();
    }
    content.finish().into_vec()
}

/// Rounds to hundredths of a point: enough for print, and short to write.
fn r(v: f32) -> f32 {
    (v * 100.0).round() / 100.0
}

fn draw(content: &mut Content, shape: &Shape, top: f32, page_height: f32) {
    let y_of = |y: f32| r(page_height - top - y);
    match shape {
        Shape::Glyphs {
            x,
            y,
            size,
            colour,
            glyphs,
        } => {
            let bytes: Vec<u8> = glyphs.ids.iter().flat_map(|id| id.to_be_bytes()).collect();
            content.set_fill_rgb(colour[0], colour[1], colour[2]);
            content.begin_text();
            content.set_font(FONT, *size);
            if glyphs.weight == Weight::Bold {
                content.set_text_rendering_mode(TextRenderingMode::FillStroke);
                content.set_stroke_rgb(colour[0], colour[1], colour[2]);
                content.set_line_width(r(HEAVIER * size));
            } else {
                content.set_text_rendering_mode(TextRenderingMode::Fill);
            }
            content.next_line(r(*x), y_of(*y));
            content.show(Str(&bytes));
            content.end_text();
        }
        Shape::Stroke {
            points,
            width,
            colour,
            dash,
        } => {
            content.set_stroke_rgb(colour[0], colour[1], colour[2]);
            content.set_line_width(*width);
            let pattern = [*dash, *dash * 0.75];
            let used = if *dash > 0.0 { &pattern[..] } else { &[] };
            content.set_dash_pattern(used.iter().copied(), 0.0);
            path(content, points, &y_of);
            content.stroke();
        }
        Shape::Fill { points, colour } => {
            content.set_fill_rgb(colour[0], colour[1], colour[2]);
            path(content, points, &y_of);
            content.close_path();
            content.fill_nonzero();
        }
        Shape::Image {
            index,
            x,
            y,
            width,
            height,
        } => {
            let (width, height) = (r(*width), r(*height));
            content.save_state();
            content.transform([width, 0.0, 0.0, height, r(*x), y_of(y + height)]);
            content.x_object(Name(&image_name(*index)));
            content.restore_state();
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
                content.set_stroke_rgb(colour[0], colour[1], colour[2]);
                content.set_line_width(*ring);
                content.set_dash_pattern([], 0.0);
                circle(content, x, y, *radius);
                content.stroke();
            } else {
                content.set_fill_rgb(colour[0], colour[1], colour[2]);
                circle(content, x, y, *radius);
                content.fill_nonzero();
            }
        }
    }
}

fn path(content: &mut Content, points: &[(f32, f32)], y_of: &dyn Fn(f32) -> f32) {
    for (i, (x, y)) in points.iter().enumerate() {
        if i == 0 {
            content.move_to(r(*x), y_of(*y));
        } else {
            content.line_to(r(*x), y_of(*y));
        }
    }
}

/// A circle as four Bezier curves; 0.5523 is the usual handle length,
/// 4/3 (sqrt 2 - 1).
fn circle(content: &mut Content, x: f32, y: f32, radius: f32) {
    let h = radius * 0.5523;
    content.move_to(r(x + radius), y);
    for (a, b, c) in [
        ((radius, h), (h, radius), (0.0, radius)),
        ((-h, radius), (-radius, h), (-radius, 0.0)),
        ((-radius, -h), (-h, -radius), (0.0, -radius)),
        ((h, -radius), (radius, -h), (radius, 0.0)),
    ] {
        content.cubic_to(
            r(x + a.0),
            r(y + a.1),
            r(x + b.0),
            r(y + b.1),
            r(x + c.0),
            r(y + c.1),
        );
    }
    content.close_path();
}
