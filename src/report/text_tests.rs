use proptest::prelude::*;

use super::*;
use crate::report::demo::bakery;
use crate::report::doc::{Column, PageSize};

#[test]
fn the_demo_reads_as_text() {
    let text = to_text(&bakery(PageSize::Letter), 78);
    assert!(text.lines().all(|line| columns(line) <= 78), "{text}");
    for words in [
        "| ACT NOW\n| Have the high probe replaced",
        "The level control read “full”",
        "As found, below overflow: 14½ in (tape, two corners)",
        "Minutes  Below overflow, in",
        "1. Replace the three electrodes",
        "118 °F",
    ] {
        assert!(text.contains(words), "missing {words:?} in\n{text}");
    }
}

#[test]
fn table_columns_line_up() {
    let table = Table {
        caption: String::new(),
        columns: vec![Column::left("Reading", 1.0), Column::right("°F", 1.0)],
        rows: vec![
            vec!["Supply".into(), "84".into()],
            vec!["Return water, strapped".into(), "103.5".into()],
        ],
    };
    let doc = Doc {
        blocks: vec![Block::Table(table)],
        ..Doc::default()
    };
    let text = to_text(&doc, 40);
    let want = "\n\
                Reading                    °F\n\
                ----------------------  -----\n\
                Supply                     84\n\
                Return water, strapped  103.5\n";
    assert_eq!(text, want);
}

#[test]
fn long_cells_wrap_inside_their_column() {
    let table = Table {
        caption: String::new(),
        columns: vec![Column::left("A", 1.0), Column::left("B", 1.0)],
        rows: vec![vec!["one two three four five six seven".into(), "x".into()]],
    };
    let doc = Doc {
        blocks: vec![Block::Table(table)],
        ..Doc::default()
    };
    let text = to_text(&doc, 32);
    assert!(text.lines().all(|l| columns(l) <= 32));
    assert!(text.contains("seven"));
}

proptest! {
    #[test]
    fn no_text_is_too_wide_or_lost(s in "\\PC{0,60}", width in 0usize..100) {
        let doc = Doc {
            title: s.clone(),
            blocks: vec![Block::Paragraph(s.as_str().into())],
            ..Doc::default()
        };
        let text = to_text(&doc, width);
        // A wide character may need two columns where one is left.
        prop_assert!(text.lines().all(|l| columns(l) <= width.max(NARROWEST)));
        let ink = |s: &str| s.chars().filter(|c| !c.is_whitespace() && *c != '=').count();
        prop_assert_eq!(ink(&text), 2 * ink(&s));
    }
}
