//! Tables: rows between hairlines, the head repeated on each page.

use std::rc::Rc;

use super::blocks::{NOTE_BOLD, Type, Typesetter};
use super::face::Weight;
use super::lines::break_lines;
use super::strip::{Strip, baseline, joined};
use super::style::{CELL, INK, QUIET, leading};
use super::tags::{NodeId, ROOT, Role};
use crate::report::doc::{Align, Column, Table, Text};

/// Space between columns.
const GUTTER: f32 = 12.0;
/// Space above and below the words of a row.
const PAD: f32 = 2.2;
/// Tables shorter than this are not cut.
const WHOLE: f32 = 330.0;
/// Rows taller than this are cut at their lines.
const ROW_KEEP: f32 = 180.0;

/// Where a column stands.
struct Slot {
    x: f32,
    width: f32,
    align: Align,
}

impl Typesetter<'_> {
    /// Caption, head, rows.
    pub(super) fn table(&mut self, table: &Table) {
        if table.columns.is_empty() {
            return;
        }
        let node = self.tags.add(ROOT, "Table");
        let slots = slots(&table.columns, self.frame.left, self.frame.width());
        let mut before = 13.0;
        if !table.caption.is_empty() {
            let caption = self.tags.add(node, "Caption");
            let set = Type {
                weight: Weight::Bold,
                size: CELL,
                colour: INK,
            };
            let (x, width) = (self.frame.left, self.frame.width());
            let mut strips = self.text(caption, &table.caption.as_str().into(), set, x, width);
            let from = strips.len().saturating_sub(4);
            strips[from..].iter_mut().for_each(|s| s.keep_next = true);
            self.flow(strips, before);
            before = 3.0;
        }
        let heads: Vec<Text> = table
            .columns
            .iter()
            .map(|c| c.head.as_str().into())
            .collect();
        let mut head = Vec::new();
        if heads.iter().any(|h| !h.to_plain().is_empty()) {
            head = self.row(node, &slots, &heads, NOTE_BOLD, "TH");
            let (left, right) = (self.frame.left, self.frame.right);
            if let Some(last) = head.last_mut() {
                Self::rule(last, left, right, last.height, INK);
            }
            head.iter_mut().for_each(|s| s.keep_next = true);
        }
        // Only a head of sensible height is worth repeating.
        let repeat = match head.as_slice() {
            [one] => Some(Rc::new(one.untagged())),
            _ => None,
        };
        self.flow(head, before);
        let count = table.rows.len();
        let first = self.strips.len();
        for (i, row) in table.rows.iter().enumerate() {
            let set = Type {
                weight: Weight::Regular,
                size: CELL,
                colour: INK,
            };
            let mut strips = self.row(node, &slots, &table.cells(row), set, "TD");
            let (left, right) = (self.frame.left, self.frame.right);
            if let Some(last) = strips.last_mut() {
                last.hairline(left, right, last.height);
                // The last two rows stay together, so that no page opens
                // with a lone one.
                last.keep_next = i + 2 == count;
            }
            for strip in &mut strips {
                strip.head = repeat.clone();
            }
            self.strips.append(&mut strips);
        }
        // A table that takes less than half a page stays in one piece.
        self.keep_whole(first, WHOLE);
    }

    fn row(
        &mut self,
        table: NodeId,
        slots: &[Slot],
        cells: &[Text],
        set: Type,
        role: Role,
    ) -> Vec<Strip> {
        let row = self.tags.add(table, "TR");
        let mut columns = Vec::new();
        for (slot, cell) in slots.iter().zip(cells) {
            let node = self.tags.add(row, role);
            columns.push(self.cell(node, slot, cell, set));
        }
        let mut strips = Self::abreast(columns);
        if strips.is_empty() {
            strips.push(Strip::blank(leading(set.size)));
        }
        let mut whole = joined(strips, ROW_KEEP);
        for (i, strip) in whole.iter_mut().enumerate() {
            let above = if i == 0 { PAD } else { 0.0 };
            let mut padded = Strip::blank(strip.height + above);
            padded.absorb(strip, above);
            *strip = padded;
        }
        if let Some(last) = whole.last_mut() {
            last.height += PAD;
        }
        whole
    }

    fn cell(&self, node: NodeId, slot: &Slot, cell: &Text, set: Type) -> Vec<Strip> {
        let lines = break_lines(self.faces, cell, set.weight, set.size, slot.width);
        let height = leading(set.size) - 0.6;
        lines
            .iter()
            .map(|line| {
                let mut strip = Strip::blank(height);
                let x = match slot.align {
                    Align::Left => slot.x,
                    Align::Right => slot.x + slot.width - line.width,
                };
                let colour = if set.weight == Weight::Bold {
                    QUIET
                } else {
                    set.colour
                };
                strip.line(
                    Some(node),
                    line,
                    x,
                    baseline(height, set.size),
                    set.size,
                    colour,
                );
                strip
            })
            .collect()
    }
}

fn slots(columns: &[Column], left: f32, width: f32) -> Vec<Slot> {
    let weight = |c: &Column| {
        if c.weight.is_finite() && c.weight > 0.0 {
            c.weight
        } else {
            1.0
        }
    };
    let gutter = GUTTER.min(width / (2.0 * columns.len() as f32));
    let room = width - gutter * (columns.len() as f32 - 1.0);
    let total: f64 = columns.iter().map(|c| f64::from(weight(c))).sum();
    let mut x = left;
    columns
        .iter()
        .map(|column| {
            let share = (f64::from(weight(column)) / total) as f32 * room;
            let slot = Slot {
                x,
                width: share,
                align: column.align,
            };
            x += share + gutter;
            slot
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_fill_the_width_in_their_shares() {
        let columns = [
            Column::left("", 3.0),
            Column::right("", 1.0),
            Column::left("", f32::NAN),
        ];
        let slots = slots(&columns, 100.0, 424.0);
        assert!((slots[0].width - 240.0).abs() < 1e-3);
        assert!((slots[1].width - 80.0).abs() < 1e-3);
        assert!((slots[2].x + slots[2].width - 524.0).abs() < 1e-3);
    }
}
