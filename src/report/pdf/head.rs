//! The head of page one and the key figures.

use super::blocks::{NOTE, NOTE_BOLD, Type, Typesetter};
use super::face::Weight;
use super::lines::{Line, single};
use super::strip::{Strip, baseline, joined};
use super::style::{BODY, CELL, HEAD, HERO, INK, KEEP, LEAD, QUIET, SMALL, WATER, leading};
use super::tags::ROOT;
use crate::report::doc::{Doc, KeyFigure};

/// Least height of the head when the waterline stands beside it.
const MARK_HEIGHT: f32 = 104.0;

impl Typesetter<'_> {
    /// Subject, title, facts; the waterline in the narrow column.
    pub(super) fn head(&mut self, doc: &Doc) {
        let (x, width) = (self.frame.left, self.frame.width());
        let mut strips = Vec::new();
        let mark = doc
            .mark
            .as_ref()
            .map(|mark| (mark, self.tags.figure(ROOT, &mark.summary)));
        if !doc.subject.is_empty() {
            let node = self.tags.add(ROOT, "P");
            let set = Type {
                weight: Weight::Bold,
                size: SMALL,
                colour: WATER,
            };
            strips.extend(self.text(node, &doc.subject.as_str().into(), set, x, width));
        }
        let node = self.tags.add(ROOT, "H1");
        let set = Type {
            weight: Weight::Bold,
            size: HERO,
            colour: INK,
        };
        strips.extend(self.text(node, &doc.title.as_str().into(), set, x, width));
        let labels = doc
            .facts
            .iter()
            .map(|fact| single(self.faces, &fact.label, NOTE.weight, NOTE.size).width)
            .fold(0.0, f32::max)
            .min(width * 0.3);
        for (i, fact) in doc.facts.iter().enumerate() {
            let node = self.tags.add(ROOT, "P");
            let value = Type {
                weight: Weight::Regular,
                size: SMALL,
                colour: INK,
            };
            let indent = labels + 14.0;
            let columns = vec![
                self.text(node, &fact.label.as_str().into(), NOTE, x, labels.max(1.0)),
                self.text(
                    node,
                    &fact.value.as_str().into(),
                    value,
                    x + indent,
                    width - indent,
                ),
            ];
            let mut rows = Self::abreast(columns);
            if i == 0
                && let Some(first) = rows.first_mut()
            {
                first.before = 7.0;
            }
            strips.extend(rows);
        }
        let mut strips = joined(strips, self.frame.foot - self.frame.top - 40.0);
        if let Some((mark, node)) = mark {
            if strips.is_empty() {
                strips.push(Strip::blank(MARK_HEIGHT));
            }
            let height: f32 = strips.iter().map(|s| s.height).sum();
            let last = strips.len() - 1;
            strips[last].height += (MARK_HEIGHT - height).max(0.0);
            let tall = strips[0].height.min(170.0);
            let tall = tall.max(MARK_HEIGHT);
            let mut first = Strip::blank(strips[0].height);
            self.slim_basin(
                &mut first,
                mark,
                node,
                self.frame.hang,
                4.0,
                30.0,
                tall - 8.0,
            );
            first.absorb(&strips[0], 0.0);
            first.before = strips[0].before;
            strips[0] = first;
        }
        self.strips.append(&mut strips);
        self.strips.push(Strip::blank(4.0));
    }

    /// The numbers the reader came for, up to four abreast.
    pub(super) fn key_figures(&mut self, figures: &[KeyFigure]) {
        const GAP: f32 = 16.0;
        let abreast = match figures.len() {
            0 => return,
            n @ 1..=4 => n.max(2),
            5 | 6 | 9 => 3,
            _ => 4,
        };
        let room = self.frame.width() + GAP;
        let width = room / abreast as f32 - GAP;
        for row in figures.chunks(abreast) {
            let mut tops = Strip::blank(5.0);
            // Neighbours share a size, unless one is so long that all would
            // have to be small.
            let shared = row
                .iter()
                .filter_map(|f| self.step(f, width))
                .filter(|s| *s < 3)
                .max()
                .unwrap_or(0);
            let mut columns = Vec::new();
            for (i, figure) in row.iter().enumerate() {
                let x = self.frame.left + (width + GAP) * i as f32;
                Self::rule(&mut tops, x, x + width, 0.0, INK);
                columns.push(self.key_figure(figure, shared, x, width));
            }
            // Labels share a line, then numbers, then notes.
            let deepest = columns.iter().map(|c| c.0.len()).max().unwrap_or(0);
            let columns = columns
                .into_iter()
                .map(|(mut label, rest)| {
                    label.resize_with(deepest, Strip::default);
                    label.extend(rest);
                    label
                })
                .collect();
            let mut strips = vec![tops];
            strips.extend(Self::abreast(columns));
            self.flow(joined(strips, KEEP), 14.0);
        }
    }

    fn key_figure(
        &mut self,
        figure: &KeyFigure,
        shared: usize,
        x: f32,
        width: f32,
    ) -> (Vec<Strip>, Vec<Strip>) {
        let node = self.tags.add(ROOT, "P");
        let label = self.text(node, &figure.label.as_str().into(), NOTE_BOLD, x, width);
        let mut rest = self.number(figure, node, shared, x, width);
        rest.extend(self.text(node, &figure.note.as_str().into(), NOTE, x, width));
        (label, rest)
    }

    /// Number and unit set in sizes `step`, with their width.
    fn sized(&self, figure: &KeyFigure, step: usize) -> Sized {
        let (size, unit_size) = STEPS[step];
        let number = single(self.faces, &figure.number, Weight::Bold, size);
        let unit = match figure.unit.as_str() {
            "" => Line::default(),
            unit => single(self.faces, unit, Weight::Regular, unit_size),
        };
        let gap = if unit.parts.is_empty() {
            0.0
        } else {
            size * 0.12
        };
        Sized {
            width: number.width + gap + unit.width,
            number,
            unit,
            gap,
        }
    }

    /// The first, largest, of [`STEPS`] in which a figure fits.
    fn step(&self, figure: &KeyFigure, width: f32) -> Option<usize> {
        (0..STEPS.len()).find(|step| self.sized(figure, *step).width <= width)
    }

    /// Number and unit on one line, no larger than in `shared` sizes; a number
    /// that fits in none is broken into lines.
    fn number(
        &self,
        figure: &KeyFigure,
        node: usize,
        shared: usize,
        x: f32,
        width: f32,
    ) -> Vec<Strip> {
        let Some(step) = self.step(figure, width) else {
            let text = format!("{} {}", figure.number, figure.unit);
            let set = Type {
                weight: Weight::Bold,
                size: BODY,
                colour: INK,
            };
            return self.text(node, &text.into(), set, x, width);
        };
        let step = step.max(shared);
        let (size, unit_size) = STEPS[step];
        let Sized {
            number, unit, gap, ..
        } = self.sized(figure, step);
        let height = leading(HERO) + 2.0;
        let y = baseline(height, HERO);
        let mut strip = Strip::blank(height);
        strip.line(Some(node), &number, x, y, size, INK);
        strip.line(
            Some(node),
            &unit,
            x + number.width + gap,
            y,
            unit_size,
            QUIET,
        );
        vec![strip]
    }
}

/// Sizes of number and unit, from the one wished for down.
const STEPS: [(f32, f32); 5] = [
    (HERO, LEAD),
    (HERO, CELL),
    (HEAD, SMALL),
    (LEAD, SMALL),
    (BODY, SMALL),
];

/// Number and unit, set.
struct Sized {
    number: Line,
    unit: Line,
    gap: f32,
    width: f32,
}
