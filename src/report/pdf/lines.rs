//! Breaking text into lines by measured width.

use super::face::{Faces, Weight};
use crate::report::doc::{Run, Text};

/// Glyphs of one weight, in a row.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Glyphs {
    pub(super) weight: Weight,
    pub(super) ids: Vec<u16>,
    /// Width in points.
    pub(super) width: f32,
}

/// One line.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Line {
    pub(super) parts: Vec<Glyphs>,
    /// Width in points.
    pub(super) width: f32,
}

/// Where a line may end.
#[derive(Clone, Copy, PartialEq)]
enum Kind {
    /// No break here.
    Solid,
    /// A break replaces it.
    Space,
    /// A break may follow it.
    Hyphen,
    /// A break must replace it.
    Feed,
}

#[derive(Clone, Copy)]
struct Cell {
    id: u16,
    width: f32,
    weight: Weight,
    kind: Kind,
}

/// Breaks `text` set in `size` into lines no wider than `width`, where a word
/// or a single glyph allows it. `base` is the weight of runs that are not
/// bold. Empty text gives no line.
pub(super) fn break_lines(
    faces: &Faces<'_>,
    text: &Text,
    base: Weight,
    size: f32,
    width: f32,
) -> Vec<Line> {
    let cells = shape(faces, text, base, size);
    let mut lines = Vec::new();
    let (mut start, mut i) = (0, 0);
    let mut used = 0.0;
    let mut last_break: Option<(usize, usize)> = None;
    while i < cells.len() {
        let cell = cells[i];
        if cell.kind == Kind::Feed {
            lines.push(set(&cells[start..i]));
            (start, i, used, last_break) = (i + 1, i + 1, 0.0, None);
            continue;
        }
        if cell.kind == Kind::Space {
            if i > start {
                last_break = Some((i, i + 1));
            }
        } else if used + cell.width > width && i > start {
            let (end, next) = last_break.unwrap_or((i, i));
            lines.push(set(&cells[start..end]));
            start = next;
            while start < cells.len() && cells[start].kind == Kind::Space {
                start += 1;
            }
            (i, used, last_break) = (start, 0.0, None);
            continue;
        }
        used += cell.width;
        i += 1;
        if cell.kind == Kind::Hyphen {
            last_break = Some((i, i));
        }
    }
    if start < cells.len() {
        lines.push(set(&cells[start..]));
    }
    lines
}

/// One line of any width; line feeds become spaces.
pub(super) fn single(faces: &Faces<'_>, text: &str, weight: Weight, size: f32) -> Line {
    set(&flat(faces, text, weight, size))
}

/// One line cut at `width`, with an ellipsis where something was cut. For
/// labels inside figures only: their full words stand in the summary.
pub(super) fn fitted(faces: &Faces<'_>, text: &str, weight: Weight, size: f32, width: f32) -> Line {
    // A label has at most a few dozen characters' room; no need to shape more.
    let short: String = text.chars().take(400).collect();
    let whole = single(faces, &short, weight, size);
    if whole.width <= width && short.len() == text.len() {
        return whole;
    }
    let ellipsis = single(faces, "…", weight, size);
    let room = width - ellipsis.width;
    let mut cells = flat(faces, &short, weight, size);
    let mut used: f32 = cells.iter().map(|c| c.width).sum();
    while used > room || cells.last().is_some_and(|c| c.kind == Kind::Space) {
        match cells.pop() {
            Some(cell) => used -= cell.width,
            None => return Line::default(),
        }
    }
    cells.extend(flat(faces, "…", weight, size));
    set(&cells)
}

/// The cells of one line; line feeds become spaces.
fn flat(faces: &Faces<'_>, text: &str, weight: Weight, size: f32) -> Vec<Cell> {
    shape(faces, &Text::from(text), weight, size)
        .into_iter()
        .map(|cell| {
            if cell.kind == Kind::Feed {
                space(faces, cell.weight, size)
            } else {
                cell
            }
        })
        .collect()
}

fn space(faces: &Faces<'_>, weight: Weight, size: f32) -> Cell {
    let id = faces.glyph(' ').unwrap_or(super::face::ABSENT);
    Cell {
        id,
        width: faces.advance(id) * size,
        weight,
        kind: Kind::Space,
    }
}

/// Whether it is a letter of the report's fonts.
fn letter(c: char) -> bool {
    c.is_ascii_alphabetic() || ('À'..='ž').contains(&c)
}

fn shape(faces: &Faces<'_>, text: &Text, base: Weight, size: f32) -> Vec<Cell> {
    let mut cells = Vec::new();
    let mut before = ' ';
    for Run { text, bold } in &text.runs {
        let weight = if *bold { Weight::Bold } else { base };
        let mut chars = text.chars().peekable();
        while let Some(ch) = chars.next() {
            if ch == '\n' {
                cells.push(Cell {
                    kind: Kind::Feed,
                    width: 0.0,
                    ..space(faces, weight, size)
                });
            } else if let Some(id) = faces.glyph(ch) {
                let after = chars.peek().copied().unwrap_or(' ');
                let kind = match ch {
                    '\u{A0}' | '\u{202F}' | '\u{2007}' => Kind::Solid,
                    _ if ch.is_whitespace() => Kind::Space,
                    '-' | '–' | '—' | '‐' if letter(before) && letter(after) => Kind::Hyphen,
                    _ => Kind::Solid,
                };
                cells.push(Cell {
                    id,
                    width: faces.advance(id) * size,
                    weight,
                    kind,
                });
            }
            before = ch;
        }
    }
    cells
}

fn set(cells: &[Cell]) -> Line {
    let end = cells
        .iter()
        .rposition(|c| c.kind != Kind::Space)
        .map_or(0, |last| last + 1);
    let mut line = Line::default();
    for cell in &cells[..end] {
        line.width += cell.width;
        match line.parts.last_mut() {
            Some(part) if part.weight == cell.weight => {
                part.ids.push(cell.id);
                part.width += cell.width;
            }
            _ => line.parts.push(Glyphs {
                weight: cell.weight,
                ids: vec![cell.id],
                width: cell.width,
            }),
        }
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::demo::fonts;

    fn lines(text: &str, width: f32) -> Vec<Line> {
        let faces = Faces::parse(fonts()).expect("fonts parse");
        break_lines(&faces, &text.into(), Weight::Regular, 10.0, width)
    }

    #[test]
    fn no_line_is_wider_than_asked() {
        let text = "The probe read full over an empty basin while every part worked when tested.";
        let got = lines(text, 90.0);
        assert!(got.len() > 3);
        assert!(
            got.iter()
                .all(|line| line.width <= 90.0 && line.width > 0.0)
        );
    }

    #[test]
    fn a_word_wider_than_the_line_is_cut() {
        let got = lines(&"W".repeat(40), 50.0);
        assert!(got.len() > 5);
        let glyphs: usize = got.iter().flat_map(|l| &l.parts).map(|p| p.ids.len()).sum();
        assert_eq!(glyphs, 40);
    }

    #[test]
    fn non_breaking_spaces_hold() {
        let room = lines("level 79", 500.0)[0].width + 1.0;
        assert_eq!(lines("level 79 °F", room).len(), 2);
        let held = lines("level 79\u{A0}°F", room);
        assert_eq!(held.len(), 2);
        assert!(
            held[0].width < held[1].width,
            "the number moved down with its unit"
        );
    }

    #[test]
    fn feeds_break_and_nothing_gives_nothing() {
        assert_eq!(lines("a\nb", 500.0).len(), 2);
        assert!(lines("", 500.0).is_empty());
        assert_eq!(lines("word", 0.0).len(), 4);
    }

    #[test]
    fn letters_without_a_glyph_show_the_box() {
        let got = lines("水e\u{301}\u{200D}", 500.0);
        assert_eq!(got[0].parts[0].ids.len(), 2);
        assert_eq!(got[0].parts[0].ids[0], super::super::face::ABSENT);
    }

    #[test]
    fn figures_are_tabular() {
        assert_eq!(lines("1111", 500.0)[0].width, lines("8888", 500.0)[0].width);
    }
}
