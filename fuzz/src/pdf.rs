//! Text in a PDF, and the same text as plain lines.

use std::collections::BTreeMap;

use coldsump::record::FileId;
use coldsump::report::doc::{
    Block, Callout, Column, Doc, Fact, Footer, KeyFigure, PageSize, Picture, Signature, Table,
    Text, Tone,
};
use coldsump::report::{DocDate, Fonts, to_pdf, to_text};

use super::reader;

/// The report's font.
pub const FONT: Fonts<'static> = Fonts {
    regular: include_bytes!("../../public/fonts/report-regular.ttf"),
};

const CREATED: DocDate = DocDate {
    year: 2026,
    month: 11,
    day: 24,
    hour: 9,
    minute: 30,
    second: 0,
    offset_minutes: -300,
};

/// The first byte picks page and width of lines; the rest, between bytes 0xff,
/// are texts that go into every place a document has.
///
/// # Panics
/// When the file is not sound, does not hold the text of a paragraph, or when
/// lines of plain text carry control characters.
pub fn holds(data: &[u8]) {
    let [how, rest @ ..] = data else { return };
    let texts: Vec<String> = rest.split(|b| *b == 0xff).map(super::text).collect();
    let doc = document(&texts, how & 1 == 1);
    let pdf = to_pdf(&doc, FONT, CREATED).expect("any text can be set");
    let size: usize = texts.iter().map(String::len).sum();
    assert!(
        pdf.len() < 200_000 + 4_000 * (texts.len() + size),
        "{} bytes",
        pdf.len()
    );
    let said = reader::text(&pdf);
    for text in &texts {
        assert!(holds_text(&said, text), "{text:?} is not in\n{said}");
    }
    let plain = to_text(&doc, usize::from(*how));
    let sane = |c: char| c == '\n' || !c.is_control();
    assert!(plain.chars().all(sane), "{plain:?}");
    assert!(plain.lines().all(|line| line == line.trim_end()));
}

/// Whether all letters of `text` stand in `said`, in order. Letters that the
/// font lacks may stand as its box or, when they draw nothing, not at all.
fn holds_text(said: &str, text: &str) -> bool {
    let letters: BTreeMap<char, ()> = said.chars().map(|c| (c, ())).collect();
    let mut said = said.chars();
    text.chars()
        .filter(|c| !c.is_whitespace() && letters.contains_key(c))
        .filter(|c| c.is_ascii_graphic() || c.is_alphabetic())
        .all(|wanted| said.any(|c| c == wanted))
        && text
            .chars()
            .filter(char::is_ascii_graphic)
            .all(|c| letters.contains_key(&c))
}

fn document(texts: &[String], letter: bool) -> Doc {
    let all: String = texts.concat();
    let any = |n: usize| {
        texts
            .get(n % texts.len().max(1))
            .cloned()
            .unwrap_or_default()
    };
    let cell = |n: usize| Text::default().plain(any(n)).bold(any(n + 1));
    let tones = [Tone::ActNow, Tone::NotProven, Tone::Proven, Tone::Note];
    let mut blocks: Vec<Block> = texts
        .iter()
        .map(|t| Block::Paragraph(t.as_str().into()))
        .collect();
    blocks.push(Block::PageBreak);
    blocks.extend(tones.map(|tone| {
        Block::Callout(Callout {
            tone,
            word: any(0),
            text: cell(1),
        })
    }));
    blocks.extend((0..4).map(|level| Block::Heading {
        level,
        text: any(usize::from(level)),
    }));
    let figure = |n| KeyFigure {
        label: any(n),
        number: any(n + 1),
        unit: any(n + 2),
        note: any(n + 3),
    };
    blocks.push(Block::KeyFigures(
        (0..texts.len().min(6)).map(figure).collect(),
    ));
    let columns = (0..texts.len().min(5)).map(|n| Column::left(any(n), 1.0));
    blocks.push(Block::Table(Table {
        caption: any(0),
        columns: columns.collect(),
        rows: (0..3)
            .map(|row| (0..6).map(|n| cell(n + row)).collect())
            .collect(),
    }));
    blocks.push(Block::List {
        numbered: letter,
        items: (0..3).map(cell).collect(),
    });
    blocks.push(Block::Fine((0..2).map(cell).collect()));
    blocks.push(Block::Photos(vec![Picture {
        file: FileId::parse("019ab000-0000-7000-8000-000000000006").expect("a UUID"),
        jpeg: all.clone().into_bytes(), // no JPEG: the words stand in its place
        missing: any(1),
        caption: cell(2),
        drawn: Vec::new(),
    }]));
    blocks.push(Block::Signature(Signature {
        summary: any(0),
        caption: any(1),
        strokes: Vec::new(),
    }));
    Doc {
        title: any(0),
        language: any(3),
        subject: any(1),
        author: any(2),
        facts: vec![Fact {
            label: any(0),
            value: any(1),
        }],
        mark: None,
        blocks,
        page: if letter {
            PageSize::Letter
        } else {
            PageSize::A4
        },
        footer: Footer {
            title: any(0),
            page: any(1),
            of: any(2),
        },
    }
}
