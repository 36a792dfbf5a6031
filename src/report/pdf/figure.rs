//! Charts.

use super::blocks::{NOTE, Type, Typesetter};
use super::face::Weight;
use super::lines::{Line, fitted, single};
use super::strip::{Shape, Strip};
use super::style::{CELL, Colour, HAIR, HAIRLINE, INK, PAPER, QUIET, SMALL, ink_colour};
use super::tags::{NodeId, ROOT};
use crate::quantity::sort_by;
use crate::report::chart::{Chart, Stroke, unit, unit_point};

/// Height of the plot.
const PLOT: f32 = 116.0;
/// Distance from the middle of small words down to their baseline.
const DOWN: f32 = SMALL * 0.364;

/// The plot's rectangle.
#[derive(Clone, Copy)]
struct Plot {
    left: f32,
    right: f32,
    top: f32,
    foot: f32,
}

impl Plot {
    fn x(&self, x: f32) -> f32 {
        self.left + (self.right - self.left) * x
    }

    fn y(&self, y: f32) -> f32 {
        self.foot - (self.foot - self.top) * y
    }

    fn at(&self, (x, y): (f32, f32)) -> (f32, f32) {
        (self.x(x), self.y(y))
    }
}

/// A strip and the node its shapes belong to.
struct Sheet<'a> {
    strip: Strip,
    node: NodeId,
    setter: &'a Typesetter<'a>,
}

impl Sheet<'_> {
    fn stroke(&mut self, points: Vec<(f32, f32)>, width: f32, colour: Colour, dash: f32) {
        self.strip.push(
            Some(self.node),
            Shape::Stroke {
                points,
                width,
                colour,
                dash,
            },
        );
    }

    fn dot(&mut self, (x, y): (f32, f32), radius: f32, colour: Colour) {
        self.strip.push(
            Some(self.node),
            Shape::Disc {
                x,
                y,
                radius,
                colour,
                ring: 0.0,
            },
        );
    }

    fn label(&self, text: &str, room: f32) -> Line {
        fitted(self.setter.faces, text, Weight::Regular, SMALL, room)
    }

    fn set(&mut self, line: &Line, x: f32, y: f32, colour: Colour) {
        self.strip.line(Some(self.node), line, x, y, SMALL, colour);
    }
}

impl Typesetter<'_> {
    /// Title, plot, summary.
    pub(super) fn chart(&mut self, chart: &Chart) {
        let (x, width) = (self.frame.left, self.frame.width());
        let title = self.tags.add(ROOT, "P");
        let set = Type {
            weight: Weight::Bold,
            size: CELL,
            colour: INK,
        };
        let mut strips = self.text(title, &chart.title.as_str().into(), set, x, width);
        let from = strips.len().saturating_sub(4);
        strips[from..].iter_mut().for_each(|s| s.keep_next = true);
        self.flow(strips, 13.0);

        let node = self.tags.figure(ROOT, &chart.summary);
        let plot = self.plot(chart, node);
        self.strips.push(plot);

        let caption = self.tags.add(ROOT, "Caption");
        let words = self.text(caption, &chart.summary.as_str().into(), NOTE, x, width);
        if !words.is_empty()
            && let Some(plot) = self.strips.last_mut()
        {
            plot.keep_next = true;
        }
        self.flow(words, 4.0);
    }

    fn plot(&self, chart: &Chart, node: NodeId) -> Strip {
        let (x, width) = (self.frame.left, self.frame.width());
        let side = |texts: &mut dyn Iterator<Item = &String>, most: f32| {
            texts
                .map(|t| single(self.faces, t, Weight::Regular, SMALL).width)
                .fold(0.0, f32::max)
                .min(most)
        };
        let ticks = side(&mut chart.y_ticks.iter().map(|t| &t.1), 70.0);
        let limits = side(&mut chart.limits.iter().map(|l| &l.label), 90.0);
        let names = side(&mut chart.series.iter().map(|s| &s.label), 90.0);
        let margin = limits.max(names);
        let top = 34.0;
        let plot = Plot {
            left: x + ticks + 7.0,
            right: x + width - if margin > 0.0 { margin + 8.0 } else { 4.0 },
            top,
            foot: top + PLOT,
        };
        let strip = Strip::blank(plot.foot + 32.0);
        let mut sheet = Sheet {
            strip,
            node,
            setter: self,
        };
        axes(&mut sheet, chart, plot, x);
        lines(&mut sheet, chart, plot);
        side_labels(&mut sheet, chart, plot, x + width);
        sheet.strip
    }
}

fn axes(sheet: &mut Sheet<'_>, chart: &Chart, plot: Plot, x: f32) {
    let name = sheet.label(&chart.y_label, plot.right - x);
    sheet.set(&name, x, 8.0, QUIET);
    for (at, label) in &chart.y_ticks {
        let Some(at) = unit(*at) else { continue };
        let y = plot.y(at);
        sheet.stroke(vec![(plot.left, y), (plot.right, y)], HAIRLINE, HAIR, 0.0);
        let line = sheet.label(label, plot.left - x - 6.0);
        sheet.set(&line, plot.left - 6.0 - line.width, y + DOWN, QUIET);
    }
    let foot = vec![(plot.left, plot.foot), (plot.right, plot.foot)];
    sheet.stroke(foot, 0.8, INK, 0.0);
    let mut free = f32::MIN;
    for (at, label) in &chart.x_ticks {
        let Some(at) = unit(*at) else { continue };
        let x = plot.x(at);
        sheet.stroke(vec![(x, plot.foot), (x, plot.foot + 3.5)], 0.8, INK, 0.0);
        let line = sheet.label(label, plot.right - plot.left);
        let start = x - line.width / 2.0;
        // A label that would cover the one before it is left out; its tick
        // stays.
        if start >= free {
            sheet.set(&line, start, plot.foot + 13.0, QUIET);
            free = start + line.width + 4.0;
        }
    }
    let name = sheet.label(&chart.x_label, plot.right - plot.left);
    sheet.set(&name, plot.right - name.width, plot.foot + 25.0, QUIET);
}

fn lines(sheet: &mut Sheet<'_>, chart: &Chart, plot: Plot) {
    let mut free = [f32::MIN; 2];
    for moment in &chart.moments {
        let Some(at) = unit(moment.x) else { continue };
        let x = plot.x(at);
        sheet.stroke(vec![(x, plot.top - 2.0), (x, plot.foot)], 0.6, QUIET, 1.5);
        if moment.label.is_empty() {
            continue; // named with the ones beside it
        }
        let line = sheet.label(&moment.label, plot.right - plot.left);
        let start = (x - line.width / 2.0)
            .min(plot.right - line.width)
            .max(plot.left);
        // Two rows of labels; a label that fits in neither goes on the upper.
        let row = free.iter().position(|free| start >= *free).unwrap_or(1);
        free[row] = start + line.width + 5.0;
        let y = plot.top - 4.0 - 9.0 * row as f32;
        sheet.set(&line, start, y, QUIET);
    }
    for limit in &chart.limits {
        let Some(at) = unit(limit.y) else { continue };
        let y = plot.y(at);
        let colour = ink_colour(limit.ink);
        sheet.stroke(vec![(plot.left, y), (plot.right, y)], 0.9, colour, 4.0);
    }
    for series in &chart.series {
        let colour = ink_colour(series.ink);
        let points: Vec<(f32, f32)> = series
            .points
            .iter()
            .filter_map(|p| unit_point(*p))
            .map(|p| plot.at(p))
            .collect();
        if series.stroke != Stroke::Points && points.len() > 1 {
            sheet.stroke(points.clone(), 1.5, colour, 0.0);
        }
        if series.stroke != Stroke::Line || points.len() == 1 {
            points.iter().for_each(|p| sheet.dot(*p, 2.0, colour));
        }
    }
    for fit in &chart.fits {
        let (Some(from), Some(to)) = (unit_point(fit.from), unit_point(fit.to)) else {
            continue;
        };
        let (from, to) = (plot.at(from), plot.at(to));
        sheet.stroke(vec![from, to], 1.0, INK, 0.0);
        let line = sheet.label(&fit.label, plot.right - plot.left);
        let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
        let x = (middle.0 + 6.0).min(plot.right - line.width).max(plot.left);
        let above = (to.1 - from.1) * (to.0 - from.0) >= 0.0;
        let y = if above {
            middle.1 - 5.0
        } else {
            middle.1 + 12.0
        };
        if line.width > 0.0 {
            // Paper behind the words, so that no line runs through them.
            let (right, top, foot) = (x + line.width + 2.0, y - 7.5, y + 2.5);
            let points = vec![(x - 2.0, top), (right, top), (right, foot), (x - 2.0, foot)];
            sheet.strip.push(
                Some(sheet.node),
                Shape::Fill {
                    points,
                    colour: PAPER,
                },
            );
        }
        sheet.set(&line, x, y, INK);
    }
}

/// Names of limits and series beside the plot, moved apart.
fn side_labels(sheet: &mut Sheet<'_>, chart: &Chart, plot: Plot, right: f32) {
    let room = right - plot.right - 6.0;
    let mut labels: Vec<(f32, &str, Colour)> = Vec::new();
    for limit in &chart.limits {
        if let Some(at) = unit(limit.y) {
            labels.push((plot.y(at), &limit.label, ink_colour(limit.ink)));
        }
    }
    for series in &chart.series {
        if let Some(last) = series.points.iter().rev().find_map(|p| unit_point(*p)) {
            labels.push((plot.at(last).1, &series.label, ink_colour(series.ink)));
        }
    }
    labels.retain(|(_, label, _)| !label.is_empty());
    sort_by(&mut labels, |a, b| a.0.total_cmp(&b.0));
    let mut free = plot.top - 6.0;
    for (y, label, colour) in labels {
        let y = y.max(free).min(plot.foot);
        free = y + 10.0;
        let line = sheet.label(label, room);
        sheet.set(&line, plot.right + 6.0, y + DOWN, colour);
    }
}
