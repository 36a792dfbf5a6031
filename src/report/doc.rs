//! The report as a document: what it says, free of any page or screen.
//!
//! Every word in it was chosen by whoever composed it; the writers add only
//! page numbers, and even their words come from [`Footer`].

use super::chart::{Chart, Waterline};
use crate::record::FileId;
use crate::record::paperwork::{Drawn, Spot};

/// A sheet of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PageSize {
    /// US Letter, 8.5 by 11 in.
    #[default]
    Letter,
    /// ISO 216 A4, 210 by 297 mm.
    A4,
}

/// A stretch of text in one weight.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Run {
    /// The words. A line feed starts a new line.
    pub text: String,
    /// Set in the bold weight.
    pub bold: bool,
}

/// Text with bold stretches.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Text {
    /// The stretches, in reading order.
    pub runs: Vec<Run>,
}

impl Text {
    /// Adds words in the regular weight.
    pub fn plain(mut self, text: impl Into<String>) -> Self {
        self.runs.push(Run {
            text: text.into(),
            bold: false,
        });
        self
    }

    /// Adds words in the bold weight.
    pub fn bold(mut self, text: impl Into<String>) -> Self {
        self.runs.push(Run {
            text: text.into(),
            bold: true,
        });
        self
    }

    /// The words alone, without weights.
    pub fn to_plain(&self) -> String {
        self.runs.iter().map(|run| run.text.as_str()).collect()
    }
}

impl From<&str> for Text {
    fn from(text: &str) -> Self {
        Text::default().plain(text)
    }
}

impl From<String> for Text {
    fn from(text: String) -> Self {
        Text::default().plain(text)
    }
}

/// How far a statement may be leaned on. Decides colour and shape; the word
/// beside it is the composer's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// Something must be done before anyone relies on the plant.
    ActNow,
    /// Believed, not shown.
    NotProven,
    /// Shown by evidence.
    Proven,
    /// Said in passing.
    Note,
}

/// A statement set apart, with a word that says how to take it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Callout {
    /// Decides colour and shape.
    pub tone: Tone,
    /// The word that says the same without colour, such as "ACT NOW".
    pub word: String,
    /// The statement.
    pub text: Text,
}

/// Where cells stand in their column.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Align {
    /// Flush left: words.
    #[default]
    Left,
    /// Flush right: numbers.
    Right,
}

/// A column of a [`Table`].
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// Its head.
    pub head: String,
    /// Where its cells stand.
    pub align: Align,
    /// Its share of the width against the other columns' weights; a weight
    /// that is not a positive finite number counts as 1.
    pub weight: f32,
}

impl Column {
    /// A column of words.
    pub fn left(head: impl Into<String>, weight: f32) -> Self {
        Column {
            head: head.into(),
            align: Align::Left,
            weight,
        }
    }

    /// A column of numbers.
    pub fn right(head: impl Into<String>, weight: f32) -> Self {
        Column {
            head: head.into(),
            align: Align::Right,
            weight,
        }
    }
}

/// Rows under heads. A row with fewer cells than columns ends in empty cells;
/// cells beyond the last column are joined to its last cell.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// What the table shows; empty for none.
    pub caption: String,
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows.
    pub rows: Vec<Vec<Text>>,
}

impl Table {
    /// A row's cells, exactly one for each column. Empty if the table has no
    /// columns.
    pub fn cells(&self, row: &[Text]) -> Vec<Text> {
        let mut cells: Vec<Text> = row.iter().take(self.columns.len()).cloned().collect();
        if let Some(last) = cells.last_mut() {
            for extra in row.iter().skip(self.columns.len()) {
                last.runs.push(Run {
                    text: " ".into(),
                    bold: false,
                });
                last.runs.extend(extra.runs.iter().cloned());
            }
        }
        cells.resize(self.columns.len(), Text::default());
        cells
    }
}

/// A number the reader came for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct KeyFigure {
    /// What it is.
    pub label: String,
    /// The number, already written out.
    pub number: String,
    /// Its unit; empty for none.
    pub unit: String,
    /// How it is known; empty for none.
    pub note: String,
}

/// A photo with what is drawn on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Where its bytes are kept.
    pub file: FileId,
    /// The JPEG. Composed empty; whoever has the files fills it in.
    pub jpeg: Vec<u8>,
    /// Said in its place when there are no bytes, or none that can be read.
    pub missing: String,
    /// What it shows, below it; also for a reader who cannot see it.
    pub caption: Text,
    /// What is drawn on it.
    pub drawn: Vec<Drawn>,
}

/// A signature as it was drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Signature {
    /// What it is, for a reader who cannot see it.
    pub summary: String,
    /// Below it: who and when.
    pub caption: String,
    /// The strokes of the pen.
    pub strokes: Vec<Vec<Spot>>,
}

/// One part of the report. A report holds a few hundred of them, so that the
/// size of a figure beside the rest does not matter.
#[derive(Clone, Debug, PartialEq)]
#[allow(clippy::large_enum_variant)]
pub enum Block {
    /// A heading. Level 1 opens a part, 2 a passage, 3 and beyond a detail;
    /// level 0 counts as 1. The document's title is not among them.
    Heading {
        /// Depth, from 1.
        level: u8,
        /// The words.
        text: String,
    },
    /// A paragraph.
    Paragraph(Text),
    /// A statement set apart.
    Callout(Callout),
    /// Rows under heads.
    Table(Table),
    /// The numbers the reader came for, side by side.
    KeyFigures(Vec<KeyFigure>),
    /// Points, one below another.
    List {
        /// Numbered from 1 instead of dotted.
        numbered: bool,
        /// The points.
        items: Vec<Text>,
    },
    /// A chart.
    Figure(Chart),
    /// What must be said and is not read first: small.
    Fine(Vec<Text>),
    /// Photos, side by side.
    Photos(Vec<Picture>),
    /// A signature.
    Signature(Signature),
    /// Goes on at the top of a page.
    PageBreak,
}

/// A line of the head: whose plant, when, who.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fact {
    /// What it is.
    pub label: String,
    /// What it says.
    pub value: String,
}

/// The words at the foot of each page: "`title` · `page` 1 `of` 2".
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Footer {
    /// Names the document; empty for none.
    pub title: String,
    /// The word for page.
    pub page: String,
    /// The word between the page and the number of pages.
    pub of: String,
}

/// A report.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Doc {
    /// Title, also in the file's properties.
    pub title: String,
    /// Language of the words, as a BCP 47 tag; "en" when empty.
    pub language: String,
    /// One line on what it is about: shown above the title and put in the
    /// file's properties.
    pub subject: String,
    /// Who wrote it; in the file's properties only.
    pub author: String,
    /// Lines below the title.
    pub facts: Vec<Fact>,
    /// The slim waterline beside the title.
    pub mark: Option<Waterline>,
    /// The report itself.
    pub blocks: Vec<Block>,
    /// The paper.
    pub page: PageSize,
    /// The foot of each page.
    pub footer: Footer,
}

impl Doc {
    /// Every photo in it.
    pub fn pictures_mut(&mut self) -> impl Iterator<Item = &mut Picture> {
        self.blocks.iter_mut().flat_map(|block| match block {
            Block::Photos(pictures) => pictures.as_mut_slice(),
            _ => &mut [],
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_match_the_columns() {
        let table = Table {
            columns: vec![Column::left("a", 1.0), Column::left("b", 1.0)],
            ..Table::default()
        };
        let few = table.cells(&["1".into()]);
        assert_eq!(few, vec![Text::from("1"), Text::default()]);
        let many = table.cells(&["1".into(), "2".into(), "3".into()]);
        assert_eq!(many.len(), 2);
        assert_eq!(many[1].to_plain(), "2 3");
        assert!(Table::default().cells(&["1".into()]).is_empty());
    }
}
