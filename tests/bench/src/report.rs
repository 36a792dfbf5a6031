//! The report that is timed: the invented one of the tests, two pages.

use coldsump::report::doc::{Block, Doc, PageSize};
use coldsump::report::{chart, doc, pdf};

#[path = "../../../src/report/demo.rs"]
#[allow(dead_code)]
mod demo;

/// The document.
pub fn document() -> Doc {
    demo::bakery(PageSize::Letter)
}

/// The PDF of a document.
pub fn made(doc: &Doc) -> Vec<u8> {
    pdf::to_pdf(doc, demo::fonts(), demo::CREATED).expect("the report can be written")
}

/// What the document says, one block a line: a letter, then fields between
/// tabs. For whoever sets the same words with another library.
pub fn outline(doc: &Doc) -> String {
    let mut out = format!("S\t{}\nT\t{}\n", doc.subject, doc.title);
    for fact in &doc.facts {
        out += &format!("F\t{}\t{}\n", fact.label, fact.value);
    }
    for block in &doc.blocks {
        match block {
            Block::Heading { text, .. } => out += &format!("H\t{text}\n"),
            Block::Paragraph(text) => out += &format!("P\t{}\n", text.to_plain()),
            Block::Callout(said) => {
                out += &format!("C\t{}\t{}\n", said.word, said.text.to_plain());
            }
            Block::KeyFigures(figures) => {
                for f in figures {
                    out += &format!("K\t{}\t{}\t{}\t{}\n", f.label, f.number, f.unit, f.note);
                }
            }
            Block::List { items, .. } => {
                for item in items {
                    out += &format!("L\t{}\n", item.to_plain());
                }
            }
            Block::Table(table) => {
                out += &format!("P\t{}\n", table.caption);
                let heads: Vec<&str> = table.columns.iter().map(|c| c.head.as_str()).collect();
                out += &format!("R\t{}\n", heads.join("\t"));
                for row in &table.rows {
                    let cells: Vec<String> = row.iter().map(|c| c.to_plain()).collect();
                    out += &format!("R\t{}\n", cells.join("\t"));
                }
            }
            Block::Figure(chart) => {
                out += &format!("P\t{}\n", chart.title);
                for series in &chart.series {
                    let points: Vec<String> = series
                        .points
                        .iter()
                        .map(|(x, y)| format!("{x},{y}"))
                        .collect();
                    out += &format!("G\t{}\t{}\n", series.label, points.join(" "));
                }
                out += &format!("P\t{}\n", chart.summary);
            }
            _ => {}
        }
    }
    out + &format!("E\t{}\n", doc.footer.title)
}
