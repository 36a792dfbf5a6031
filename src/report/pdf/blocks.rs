//! Cutting the document's blocks into strips.

use super::face::{Faces, Weight};
use super::lines::{Line, break_lines};
use super::pictures::Jpeg;
use super::strip::{Shape, Strip, baseline, joined};
use super::style::{
    BODY, Colour, Frame, HAIRLINE, HEAD, INK, KEEP, LEAD, QUIET, SMALL, leading, tone_colour,
};
use super::tags::{NodeId, ROOT, Tags};
use crate::report::doc::{Block, Callout, Doc, Text, Tone};

/// How text is set.
#[derive(Clone, Copy)]
pub(super) struct Type {
    pub(super) weight: Weight,
    pub(super) size: f32,
    pub(super) colour: Colour,
}

/// Labels and notes.
pub(super) const NOTE: Type = Type {
    weight: Weight::Regular,
    size: SMALL,
    colour: QUIET,
};
/// Heads of columns, captions.
pub(super) const NOTE_BOLD: Type = Type {
    weight: Weight::Bold,
    size: SMALL,
    colour: QUIET,
};
/// Running text.
const RUNNING: Type = Type {
    weight: Weight::Regular,
    size: BODY,
    colour: INK,
};

/// The document on its way to strips.
pub(super) struct Typesetter<'a> {
    pub(super) faces: &'a Faces<'a>,
    pub(super) frame: Frame,
    pub(super) tags: Tags,
    pub(super) strips: Vec<Strip>,
    /// Photos in the order shown.
    pub(super) images: Vec<Jpeg<'a>>,
    /// Depth of the heading last set: a reader's outline must not skip one.
    pub(super) depth: u8,
}

impl<'a> Typesetter<'a> {
    /// Cuts the whole document.
    pub(super) fn document(&mut self, doc: &'a Doc) {
        self.head(doc);
        for block in &doc.blocks {
            self.block(block);
        }
    }

    fn block(&mut self, block: &'a Block) {
        match block {
            Block::Heading { level, text } => self.heading(*level, text),
            Block::Paragraph(text) => {
                let node = self.tags.add(ROOT, "P");
                let strips = self.text(node, text, RUNNING, self.frame.left, self.frame.width());
                self.flow(strips, 7.0);
            }
            Block::Callout(callout) => self.callout(callout),
            Block::Table(table) => self.table(table),
            Block::KeyFigures(figures) => self.key_figures(figures),
            Block::List { numbered, items } => self.list(*numbered, items),
            Block::Figure(chart) => self.chart(chart),
            Block::Fine(texts) => {
                for (i, text) in texts.iter().enumerate() {
                    let node = self.tags.add(ROOT, "P");
                    let strips = self.text(node, text, NOTE, self.frame.left, self.frame.width());
                    self.flow(strips, if i == 0 { 5.0 } else { 2.5 });
                }
            }
            Block::Photos(pictures) => self.photos(pictures),
            Block::Signature(signature) => self.signature(signature),
            Block::PageBreak => {
                self.strips.push(Strip {
                    break_before: true,
                    ..Strip::default()
                });
            }
        }
    }

    /// Lines of `text`, one strip each, its left edge at `x`.
    pub(super) fn text(
        &self,
        node: NodeId,
        text: &Text,
        set: Type,
        x: f32,
        width: f32,
    ) -> Vec<Strip> {
        break_lines(self.faces, text, set.weight, set.size, width)
            .iter()
            .map(|line| self.line_strip(node, line, set, x))
            .collect()
    }

    fn line_strip(&self, node: NodeId, line: &Line, set: Type, x: f32) -> Strip {
        let height = leading(set.size);
        let mut strip = Strip::blank(height);
        strip.line(
            Some(node),
            line,
            x,
            baseline(height, set.size),
            set.size,
            set.colour,
        );
        strip
    }

    /// Appends strips that belong together: space above the first, and at
    /// least two lines on either side of a page break.
    pub(super) fn flow(&mut self, mut strips: Vec<Strip>, before: f32) {
        let count = strips.len();
        if let Some(first) = strips.first_mut() {
            first.before = before;
        }
        for (i, strip) in strips.iter_mut().enumerate() {
            strip.keep_next |= count > 1 && (i == 0 || i + 2 == count);
        }
        self.strips.append(&mut strips);
    }

    fn heading(&mut self, level: u8, text: &str) {
        let (size, before) = match level {
            0 | 1 => (HEAD, 24.0),
            2 => (LEAD, 15.0),
            _ => (BODY, 11.0),
        };
        self.depth = level.clamp(1, self.depth + 1);
        let role = match self.depth {
            1 => "H2",
            2 => "H3",
            _ => "H4",
        };
        let node = self.tags.add(ROOT, role);
        let set = Type {
            weight: Weight::Bold,
            size,
            colour: INK,
        };
        let mut strips = self.text(node, &text.into(), set, self.frame.left, self.frame.width());
        if level < 2
            && let Some(first) = strips.first_mut()
        {
            let mut ruled = Strip::blank(first.height + 8.0);
            ruled.hairline(self.frame.hang, self.frame.right, 0.0);
            ruled.absorb(first, 8.0);
            *first = ruled;
        }
        let count = strips.len();
        for strip in strips.iter_mut().skip(count.saturating_sub(6)) {
            strip.keep_next = true;
        }
        self.flow(strips, before);
    }

    fn callout(&mut self, callout: &Callout) {
        let colour = tone_colour(callout.tone);
        let node = self.tags.add(ROOT, "P");
        let (x, width) = (self.frame.left, self.frame.width());
        let word = Type {
            weight: Weight::Bold,
            size: LEAD,
            colour,
        };
        let mut strips = self.text(node, &callout.word.as_str().into(), word, x, width);
        strips.extend(self.text(node, &callout.text, RUNNING, x, width));
        let Some(first) = strips.first_mut() else {
            return;
        };
        for shape in sign(callout.tone, self.frame.left - 22.0, first.height / 2.0) {
            first.push(None, shape);
        }
        let bar = self.frame.left - 9.0;
        for strip in &mut strips {
            let (width, dash) = match callout.tone {
                Tone::ActNow | Tone::Proven => (2.2, 0.0),
                Tone::NotProven => (2.2, 3.0),
                Tone::Note => (HAIRLINE, 0.0),
            };
            let points = vec![(bar, 0.0), (bar, strip.height)];
            strip.push(
                None,
                Shape::Stroke {
                    points,
                    width,
                    colour,
                    dash,
                },
            );
        }
        self.flow(joined(strips, KEEP), 13.0);
    }

    fn list(&mut self, numbered: bool, items: &[Text]) {
        const INDENT: f32 = 20.0;
        let list = self.tags.add(ROOT, "L");
        let begun = self.strips.len();
        for (i, item) in items.iter().enumerate() {
            let point = self.tags.add(list, "LI");
            let label = self.tags.add(point, "Lbl");
            let body = self.tags.add(point, "LBody");
            let x = self.frame.left;
            let mut strips =
                self.text(body, item, RUNNING, x + INDENT, self.frame.width() - INDENT);
            if strips.is_empty() {
                strips.push(Strip::blank(leading(BODY)));
            }
            let mark = if numbered {
                format!("{}.", i + 1)
            } else {
                "•".to_owned()
            };
            let line = super::lines::single(self.faces, &mark, Weight::Regular, BODY);
            let y = baseline(strips[0].height, BODY);
            // The mark goes first so that it is also read first.
            let mut first = Strip::blank(strips[0].height);
            first.line(Some(label), &line, x, y, BODY, QUIET);
            first.absorb(&strips[0], 0.0);
            strips[0] = first;
            self.flow(strips, if i == 0 { 7.0 } else { 3.0 });
        }
        self.keep_whole(begun, 80.0);
    }

    /// Keeps all since `begun` on one page, if it is no taller than `most`.
    pub(super) fn keep_whole(&mut self, begun: usize, most: f32) {
        let strips = &mut self.strips[begun..];
        let tall: f32 = strips.iter().map(|s| s.height + s.before).sum();
        if let [before @ .., _] = strips
            && tall <= most
        {
            before.iter_mut().for_each(|s| s.keep_next = true);
        }
    }

    /// Sets columns side by side, line by line: strip `i` holds line `i` of
    /// each column. Each column is a list of strips already at its own x.
    pub(super) fn abreast(columns: Vec<Vec<Strip>>) -> Vec<Strip> {
        let count = columns.iter().map(Vec::len).max().unwrap_or(0);
        (0..count)
            .map(|i| {
                let row: Vec<&Strip> = columns.iter().filter_map(|c| c.get(i)).collect();
                let height = row.iter().map(|s| s.height).fold(0.0, f32::max);
                let mut strip = Strip::blank(height);
                for part in row {
                    strip.absorb(part, 0.0);
                }
                strip
            })
            .collect()
    }

    /// A short rule in ink, for the top of a column of figures.
    pub(super) fn rule(strip: &mut Strip, x0: f32, x1: f32, y: f32, colour: Colour) {
        let points = vec![(x0, y), (x1, y)];
        strip.push(
            None,
            Shape::Stroke {
                points,
                width: 1.0,
                colour,
                dash: 0.0,
            },
        );
    }
}

/// A direction turned by a sixteenth of a half turn.
pub(super) fn turned((c, s): (f32, f32)) -> (f32, f32) {
    const STEP: (f32, f32) = (0.980_785_25, 0.195_090_32);
    (c * STEP.0 - s * STEP.1, s * STEP.0 + c * STEP.1)
}

/// The sign of a state, about 9 points wide, centred on (`x`, `y`): a filled
/// triangle on its tip, a half-filled disc, a full disc, a stroke.
fn sign(tone: Tone, x: f32, y: f32) -> Vec<Shape> {
    let colour = tone_colour(tone);
    match tone {
        Tone::ActNow => {
            let points = vec![(x - 5.0, y - 4.4), (x + 5.0, y - 4.4), (x, y + 4.6)];
            vec![Shape::Fill { points, colour }]
        }
        Tone::NotProven => {
            let half: Vec<(f32, f32)> =
                std::iter::successors(Some((1.0, 0.0)), |p| Some(turned(*p)))
                    .take(17)
                    .map(|(c, s)| (x + 4.4 * c, y + 4.4 * s))
                    .collect();
            vec![
                Shape::Disc {
                    x,
                    y,
                    radius: 4.4,
                    colour,
                    ring: 1.0,
                },
                Shape::Fill {
                    points: half,
                    colour,
                },
            ]
        }
        Tone::Proven => vec![Shape::Disc {
            x,
            y,
            radius: 4.8,
            colour,
            ring: 0.0,
        }],
        Tone::Note => {
            let points = vec![(x - 4.5, y), (x + 4.5, y)];
            vec![Shape::Stroke {
                points,
                width: 1.2,
                colour,
                dash: 0.0,
            }]
        }
    }
}
