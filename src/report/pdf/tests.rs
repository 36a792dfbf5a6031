use std::io::Write;
use std::process::{Command, Stdio};

use proptest::prelude::*;

use super::*;
use crate::report::chart::{
    Chart, Fit, Level, LevelMark, Limit, MarkKind, Moment, Series, Waterline,
};
use crate::report::demo::{CREATED, bakery, fonts};
use crate::report::doc::{
    Block, Callout, Column, Fact, Footer, KeyFigure, PageSize, Table, Text, Tone,
};

/// Runs a tool on a PDF and returns what it prints. Fails if the tool is not
/// there or objects.
fn run(tool: &str, package: &str, args: &[&str], pdf: &[u8]) -> String {
    let mut file = tempfile();
    file.1
        .write_all(pdf)
        .expect("write the PDF to a temporary file");
    let path = file.0.to_str().expect("temporary path is UTF-8");
    let args: Vec<&str> = args
        .iter()
        .map(|a| if *a == "FILE" { path } else { *a })
        .collect();
    let out = Command::new(tool)
        .args(&args)
        .stdin(Stdio::null())
        .output()
        .unwrap_or_else(|e| panic!("{tool} did not start ({e}): install the package {package}"));
    std::fs::remove_file(&file.0).expect("remove the temporary file");
    let said = String::from_utf8_lossy(&out.stdout).into_owned();
    let grumbled = String::from_utf8_lossy(&out.stderr);
    assert!(
        out.status.success() && grumbled.is_empty(),
        "{tool}: {said}{grumbled}"
    );
    said
}

fn tempfile() -> (std::path::PathBuf, std::fs::File) {
    static NEXT: std::sync::atomic::AtomicU32 = std::sync::atomic::AtomicU32::new(0);
    let n = NEXT.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
    let name = format!("coldsump-report-{}-{n}.pdf", std::process::id());
    let path = std::env::temp_dir().join(name);
    let file = std::fs::File::create(&path).expect("create a temporary file");
    (path, file)
}

fn check(pdf: &[u8]) {
    let said = run("qpdf", "qpdf", &["--check", "FILE"], pdf);
    assert!(
        said.contains("No syntax or stream encoding errors found"),
        "{said}"
    );
}

fn words(pdf: &[u8]) -> String {
    let said = run(
        "pdftotext",
        "poppler-utils",
        &["-enc", "UTF-8", "FILE", "-"],
        pdf,
    );
    said.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn demo(page: PageSize) -> Vec<u8> {
    to_pdf(&bakery(page), fonts(), CREATED).expect("the demo can be written")
}

#[test]
fn the_demo_is_sound_and_reads_back() {
    for (page, size) in [
        (PageSize::Letter, "612 x 792"),
        (PageSize::A4, "595.276 x 841.89"),
    ] {
        let pdf = demo(page);
        check(&pdf);
        let info = run("pdfinfo", "poppler-utils", &["FILE"], &pdf);
        for want in ["Tagged:          yes", "Pages:           2", size] {
            assert!(info.contains(want), "{want} not in\n{info}");
        }
        assert!(
            info.contains("Title:           Six circuits out on head pressure"),
            "{info}"
        );
        let text = words(&pdf);
        for want in [
            "The tower basin was dry: ½ in of water, below the pump inlet.",
            "Condenser water came back at 118 °F.",
            "The level control read “full” over an empty basin.",
            "M. Quarles, with T. Ødegård",
            "Probe lead read 4.1 kΩ wet with the basin dry.",
            "Halden Street Bakery, 14 August 2025 · page 2 of 2",
        ] {
            assert!(text.contains(want), "{want:?} not in\n{text}");
        }
    }
}

#[test]
fn fonts_are_embedded_with_a_unicode_map() {
    let said = run(
        "pdffonts",
        "poppler-utils",
        &["FILE"],
        &demo(PageSize::Letter),
    );
    let fonts: Vec<&str> = said.lines().skip(2).collect();
    assert_eq!(fonts.len(), 1, "{said}");
    for font in fonts {
        assert!(
            font.contains("CID TrueType") && font.contains("Identity-H"),
            "{font}"
        );
        assert!(
            font.contains("yes no  yes"),
            "embedded, whole, mapped: {font}"
        );
    }
}

#[test]
fn the_structure_tree_reads_in_order() {
    let said = run(
        "pdfinfo",
        "poppler-utils",
        &["-struct-text", "FILE"],
        &demo(PageSize::A4),
    );
    let places: Vec<usize> = [
        "H1",
        "ACT NOW",
        "What happened",
        "Table",
        "TH",
        "TD",
        "LBody",
    ]
    .iter()
    .map(|w| said.find(w).unwrap_or_else(|| panic!("{w} not in\n{said}")))
    .collect();
    assert!(places.is_sorted(), "{places:?}\n{said}");
    assert!(said.contains("Figure"), "{said}");
}

#[test]
fn same_document_same_bytes() {
    assert_eq!(demo(PageSize::Letter), demo(PageSize::Letter));
    assert_ne!(demo(PageSize::Letter), demo(PageSize::A4));
}

#[test]
fn the_file_stays_small() {
    let size = demo(PageSize::Letter).len();
    assert!(size < 100_000, "{size} bytes");
}

#[test]
fn bad_fonts_and_dates_are_refused() {
    let doc = bakery(PageSize::Letter);
    let bad = Fonts {
        regular: b"not a font",
    };
    assert!(matches!(to_pdf(&doc, bad, CREATED), Err(PdfError::Font)));
    for date in [
        DocDate {
            month: 13,
            ..CREATED
        },
        DocDate { day: 0, ..CREATED },
        DocDate {
            offset_minutes: -30,
            ..CREATED
        },
    ] {
        assert_eq!(to_pdf(&doc, fonts(), date), Err(PdfError::Date(date)));
    }
}

#[test]
fn a_table_over_pages_repeats_its_head() {
    let table = Table {
        caption: "Log".into(),
        columns: vec![Column::left("Zeitpunkt", 1.0), Column::right("°F", 1.0)],
        rows: (0..120)
            .map(|i| vec![format!("row {i}").into(), "84".into()])
            .collect(),
    };
    let doc = Doc {
        blocks: vec![Block::Table(table)],
        ..Doc::default()
    };
    let pdf = to_pdf(&doc, fonts(), CREATED).expect("written");
    check(&pdf);
    let text = words(&pdf);
    let info = run("pdfinfo", "poppler-utils", &["FILE"], &pdf);
    let pages: usize = info
        .lines()
        .find_map(|l| l.strip_prefix("Pages:"))
        .and_then(|n| n.trim().parse().ok())
        .expect("a page count");
    assert!(pages > 2);
    assert_eq!(text.matches("Zeitpunkt").count(), pages);
    assert!((0..120).all(|i| text.contains(&format!("row {i}"))));
}

#[test]
fn labels_of_moments_close_together_stand_clear_of_each_other() {
    let named = |x: f64, label: &str| Moment {
        x,
        label: label.to_owned(),
    };
    // A test of seconds on a scale of a minute: two groups, each with its names
    // at its middle.
    let chart = Chart {
        moments: vec![
            named(0.0, ""),
            named(0.04, "opened, called, came"),
            named(0.06, ""),
            named(0.17, ""),
            named(0.18, "stopped, ended"),
        ],
        ..Chart::default()
    };
    let doc = Doc {
        blocks: vec![Block::Figure(chart)],
        ..Doc::default()
    };
    let pdf = to_pdf(&doc, fonts(), CREATED).expect("written");
    let said = run("pdftotext", "poppler-utils", &["-bbox", "FILE", "-"], &pdf);
    let side = |line: &str, name: &str| -> Option<f64> {
        let from = line.split(&format!("{name}=\"")).nth(1)?;
        from.split('"').next()?.parse().ok()
    };
    let boxes: Vec<[f64; 4]> = said
        .lines()
        .filter(|line| line.contains("<word"))
        .map(|line| ["xMin", "xMax", "yMin", "yMax"].map(|n| side(line, n).expect("a side")))
        .collect();
    assert!(boxes.len() >= 5, "{said}");
    for (n, a) in boxes.iter().enumerate() {
        for b in &boxes[n + 1..] {
            // A box holds the deepest letter, which a row may reach into.
            let clear = |x: f64, y: f64| x <= y + 1.0;
            let beside = clear(a[1], b[0]) || clear(b[1], a[0]);
            let apart = beside || clear(a[3], b[2]) || clear(b[3], a[2]);
            assert!(apart, "{a:?} lies on {b:?}:\n{said}");
        }
    }
}

#[test]
fn scripts_the_font_lacks_do_no_harm() {
    let text = "مرحبا 水塔 👩‍🔧 \u{202E}abc e\u{301}";
    let pdf = to_pdf(&every_block(text, 0.5), fonts(), CREATED).expect("written");
    check(&pdf);
    assert!(words(&pdf).contains('\u{FFFD}'));
}

/// A document with `s` in every place that takes words.
fn every_block(s: &str, at: f64) -> Doc {
    let text = || Text::default().plain(s).bold(s);
    let own = || s.to_owned();
    let waterline = Waterline {
        summary: own(),
        marks: [
            MarkKind::Overflow,
            MarkKind::High,
            MarkKind::Low,
            MarkKind::PumpInlet,
        ]
        .into_iter()
        .map(|kind| LevelMark { kind, height: at })
        .collect(),
        found: Some(Level { height: at }),
        left: Some(Level { height: -at }),
    };
    let chart = Chart {
        title: own(),
        summary: own(),
        x_label: own(),
        y_label: own(),
        x_ticks: vec![(at, own()), (0.5, own())],
        y_ticks: vec![(at, own())],
        series: vec![Series {
            label: own(),
            points: vec![(at, 0.1), (0.2, at)],
            ..Series::default()
        }],
        fits: vec![Fit {
            label: own(),
            from: (at, at),
            to: (1.0, 0.0),
        }],
        moments: vec![
            Moment {
                x: at,
                label: own(),
            },
            Moment {
                x: 0.3,
                label: own(),
            },
        ],
        limits: vec![Limit {
            y: at,
            label: own(),
            ..Limit::default()
        }],
        row_heads: (own(), own()),
        rows: vec![(own(), own())],
    };
    let figure = KeyFigure {
        label: own(),
        number: own(),
        unit: own(),
        note: own(),
    };
    let callout = |tone| {
        Block::Callout(Callout {
            tone,
            word: own(),
            text: text(),
        })
    };
    let columns = vec![
        Column::left(s, at as f32),
        Column::right(s, 1.0),
        Column::left("", 0.1),
    ];
    Doc {
        title: own(),
        language: own(),
        subject: own(),
        author: own(),
        facts: vec![Fact {
            label: own(),
            value: own(),
        }],
        mark: Some(waterline),
        blocks: vec![
            Block::Heading {
                level: 1,
                text: own(),
            },
            Block::Heading {
                level: 9,
                text: own(),
            },
            Block::Paragraph(text()),
            callout(Tone::ActNow),
            callout(Tone::NotProven),
            callout(Tone::Proven),
            callout(Tone::Note),
            Block::KeyFigures(vec![figure; 5]),
            Block::List {
                numbered: false,
                items: vec![text(), text()],
            },
            Block::Figure(chart),
            Block::PageBreak,
            Block::Table(Table {
                caption: own(),
                columns,
                rows: vec![vec![text(); 4], vec![], vec![text()]],
            }),
        ],
        page: PageSize::A4,
        footer: Footer {
            title: own(),
            page: own(),
            of: own(),
        },
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Any text in any block: a file, and a sound one.
    #[test]
    fn any_text_makes_a_sound_file(s in "[\\x00-\\u{10FFFF}]{0,80}", at in any::<f64>()) {
        let pdf = to_pdf(&every_block(&s, at), fonts(), CREATED).expect("written");
        check(&pdf);
    }

    /// Very long text without and with places to break.
    #[test]
    fn long_text_makes_a_file(s in "[a-z水 ]{0,8}", times in 1usize..200) {
        let pdf = to_pdf(&every_block(&s.repeat(times), 0.4), fonts(), CREATED).expect("written");
        prop_assert!(pdf.starts_with(b"%PDF-1.7"));
    }
}

/// Every letter of every language is in the report's font.
#[test]
fn the_font_has_every_letter_of_every_language() {
    let faces = super::face::Faces::parse(fonts()).expect("the font parses");
    let mut letters = std::collections::BTreeSet::from_iter("áéíóúüñÁÉÍÓÚÜÑ¿¡º".chars());
    for tongue in ["en", "es"] {
        let folder = format!("{}/src/words/{tongue}", env!("CARGO_MANIFEST_DIR"));
        for file in std::fs::read_dir(folder).expect("a folder a language") {
            let path = file.expect("a file").path();
            letters.extend(std::fs::read_to_string(path).expect("text").chars());
        }
    }
    let absent: Vec<char> = letters
        .into_iter()
        .filter(|c| !c.is_control() && faces.glyph(*c) == Some(super::face::ABSENT))
        .collect();
    assert!(absent.is_empty(), "{absent:?}");
}
