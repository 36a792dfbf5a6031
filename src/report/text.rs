//! The document as plain text, for a message or an e-mail.

use super::chart::Chart;
use super::doc::{Align, Block, Doc, Table, Text};

/// Least width that still holds a table.
const NARROWEST: usize = 32;

/// Writes the document as plain text with lines of at most `width` columns
/// (32 if less is asked), each ended by a line feed. A character of East Asian
/// scripts or an emoji counts as two columns, a combining mark as none.
/// Control characters are dropped.
pub fn to_text(doc: &Doc, width: usize) -> String {
    with(doc, &doc.blocks, width)
}

/// The document's head over some of its blocks.
pub(super) fn with(doc: &Doc, blocks: &[Block], width: usize) -> String {
    let mut page = Sheet {
        out: String::new(),
        width: width.max(NARROWEST),
    };
    if !doc.subject.is_empty() {
        page.wrapped(&doc.subject, "", "");
    }
    page.ruled(&doc.title, '=');
    let label = doc
        .facts
        .iter()
        .map(|f| columns(&f.label))
        .max()
        .unwrap_or(0)
        .min(page.width / 3);
    for fact in &doc.facts {
        let first = format!("{}  ", fit(&fact.label, label, Align::Left));
        page.wrapped(&fact.value, &first, &" ".repeat(label + 2));
    }
    for block in blocks {
        page.block(block);
    }
    page.out
}

struct Sheet {
    out: String,
    width: usize,
}

impl Sheet {
    fn block(&mut self, block: &Block) {
        match block {
            Block::PageBreak => {}
            _ => self.out.push('\n'),
        }
        match block {
            Block::Heading { level: 0 | 1, text } => self.ruled(text, '='),
            Block::Heading { level: 2, text } => self.ruled(text, '-'),
            Block::Heading { text, .. } => self.wrapped(text, "", ""),
            Block::Paragraph(text) => self.wrapped(&text.to_plain(), "", ""),
            Block::Callout(callout) => {
                self.wrapped(&callout.word, "| ", "| ");
                self.wrapped(&callout.text.to_plain(), "| ", "| ");
            }
            Block::Table(table) => self.table(table),
            Block::KeyFigures(figures) => {
                for figure in figures {
                    let value = [figure.number.as_str(), figure.unit.as_str()]
                        .into_iter()
                        .filter(|s| !s.is_empty())
                        .collect::<Vec<_>>()
                        .join(" ");
                    let note = match figure.note.as_str() {
                        "" => String::new(),
                        note => format!(" ({note})"),
                    };
                    self.wrapped(&format!("{}: {value}{note}", figure.label), "", "    ");
                }
            }
            Block::List { numbered, items } => {
                for (i, item) in items.iter().enumerate() {
                    let mark = if *numbered {
                        format!("{}. ", i + 1)
                    } else {
                        "- ".into()
                    };
                    let rest = " ".repeat(mark.len());
                    self.wrapped(&item.to_plain(), &mark, &rest);
                }
            }
            Block::Fine(texts) => {
                for text in texts {
                    self.wrapped(&text.to_plain(), "", "");
                }
            }
            Block::Photos(pictures) => {
                for picture in pictures {
                    self.wrapped(&picture.caption.to_plain(), "* ", "  ");
                }
            }
            Block::Signature(signature) => self.wrapped(&signature.caption, "", ""),
            Block::Figure(chart) => self.chart(chart),
            Block::PageBreak => {}
        }
    }

    fn line(&mut self, line: &str) {
        self.out.push_str(line.trim_end());
        self.out.push('\n');
    }

    fn ruled(&mut self, text: &str, rule: char) {
        let lines = wrap(text, self.width);
        let longest = lines.iter().map(|l| columns(l)).max().unwrap_or(0);
        for line in lines {
            self.line(&line);
        }
        if longest > 0 {
            self.line(&rule.to_string().repeat(longest));
        }
    }

    fn wrapped(&mut self, text: &str, first: &str, rest: &str) {
        let room = self
            .width
            .saturating_sub(columns(first).max(columns(rest)))
            .max(1);
        for (i, line) in wrap(text, room).iter().enumerate() {
            let lead = if i == 0 { first } else { rest };
            self.line(&format!("{lead}{line}"));
        }
    }

    fn chart(&mut self, chart: &Chart) {
        self.wrapped(&chart.title, "", "");
        self.wrapped(&chart.summary, "", "");
        if !chart.rows.is_empty() {
            self.out.push('\n');
            let rows: Vec<Vec<String>> = chart
                .rows
                .iter()
                .map(|(x, y)| vec![x.clone(), y.clone()])
                .collect();
            let heads = vec![chart.row_heads.0.clone(), chart.row_heads.1.clone()];
            self.grid(&heads, &rows, &[Align::Right, Align::Right]);
        }
    }

    fn table(&mut self, table: &Table) {
        if table.columns.is_empty() {
            return;
        }
        self.wrapped(&table.caption, "", "");
        let heads: Vec<String> = table.columns.iter().map(|c| c.head.clone()).collect();
        let rows: Vec<Vec<String>> = table
            .rows
            .iter()
            .map(|row| table.cells(row).iter().map(Text::to_plain).collect())
            .collect();
        let aligns: Vec<Align> = table.columns.iter().map(|c| c.align).collect();
        self.grid(&heads, &rows, &aligns);
    }

    /// Columns side by side if each gets at least four; otherwise one line
    /// "head: cell" for each cell.
    fn grid(&mut self, heads: &[String], rows: &[Vec<String>], aligns: &[Align]) {
        let gaps = 2 * (heads.len() - 1);
        if heads.len() * 4 + gaps > self.width {
            for row in rows {
                for (head, cell) in heads.iter().zip(row) {
                    self.wrapped(&format!("{head}: {cell}"), "", "    ");
                }
                self.out.push('\n');
            }
            return;
        }
        let widths = shares(heads, rows, self.width - gaps);
        if heads.iter().any(|h| !h.is_empty()) {
            self.grid_row(heads, &widths, aligns);
            let rules: Vec<String> = widths.iter().map(|w| "-".repeat(*w)).collect();
            self.line(&rules.join("  "));
        }
        for row in rows {
            self.grid_row(row, &widths, aligns);
        }
    }

    fn grid_row(&mut self, cells: &[String], widths: &[usize], aligns: &[Align]) {
        let wrapped: Vec<Vec<String>> = cells
            .iter()
            .zip(widths)
            .map(|(cell, w)| wrap(cell, *w))
            .collect();
        let height = wrapped.iter().map(Vec::len).max().unwrap_or(0);
        for i in 0..height {
            let line: Vec<String> = wrapped
                .iter()
                .zip(widths.iter().zip(aligns))
                .map(|(lines, (w, align))| fit(lines.get(i).map_or("", String::as_str), *w, *align))
                .collect();
            self.line(&line.join("  "));
        }
    }
}

/// Widths of columns: what each would like, taken from the widest until all
/// fit in `room`.
fn shares(heads: &[String], rows: &[Vec<String>], room: usize) -> Vec<usize> {
    let mut widths: Vec<usize> = heads
        .iter()
        .enumerate()
        .map(|(i, head)| {
            let cells = rows.iter().filter_map(|row| row.get(i));
            cells
                .chain([head])
                .map(|c| columns(c))
                .max()
                .unwrap_or(0)
                .clamp(1, room)
        })
        .collect();
    while widths.iter().sum::<usize>() > room {
        match widths.iter_mut().max() {
            Some(widest) if *widest > 1 => *widest -= 1,
            _ => break,
        }
    }
    widths
}

/// Lines of at most `width` columns, where a character allows it. Empty text
/// gives no line.
fn wrap(text: &str, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    for part in text.split('\n') {
        let mut line = String::new();
        for word in part.split([' ', '\t', '\r']).filter(|w| !w.is_empty()) {
            let gap = usize::from(!line.is_empty());
            if columns(&line) + gap + columns(word) <= width {
                line.extend(std::iter::repeat_n(' ', gap));
            } else if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            for ch in word.chars().filter(|c| !c.is_control()) {
                if columns(&line) + column(ch) > width && !line.is_empty() {
                    lines.push(std::mem::take(&mut line));
                }
                line.push(ch);
            }
        }
        if !line.is_empty() || text.contains('\n') {
            lines.push(line);
        }
    }
    while lines.last().is_some_and(String::is_empty) {
        lines.pop();
    }
    lines
}

fn fit(text: &str, width: usize, align: Align) -> String {
    let text: String = text.chars().filter(|c| !c.is_control()).collect();
    let pad = " ".repeat(width.saturating_sub(columns(&text)));
    match align {
        Align::Left => format!("{text}{pad}"),
        Align::Right => format!("{pad}{text}"),
    }
}

fn columns(text: &str) -> usize {
    text.chars().map(column).sum()
}

/// Columns of a character on a terminal; ranges after Unicode Annex 11, from
/// memory and by block, so a rare character may be off by one.
fn column(ch: char) -> usize {
    match ch {
        c if c.is_control() => 0,
        '\u{300}'..='\u{36F}' | '\u{200B}'..='\u{200F}' | '\u{FE00}'..='\u{FE0F}' => 0,
        '\u{1100}'..='\u{115F}'
        | '\u{2E80}'..='\u{A4CF}'
        | '\u{AC00}'..='\u{D7A3}'
        | '\u{F900}'..='\u{FAFF}'
        | '\u{FE30}'..='\u{FE6F}'
        | '\u{FF00}'..='\u{FF60}'
        | '\u{1F300}'..='\u{1FAFF}'
        | '\u{20000}'..='\u{3FFFD}' => 2,
        _ => 1,
    }
}

#[cfg(test)]
#[path = "text_tests.rs"]
mod tests;
