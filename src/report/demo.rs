//! A report on the Halden Street Bakery, invented, for tests and the example.

use super::chart::{
    Chart, Fit, Ink, Level, LevelMark, Limit, MarkKind, Moment, Series, Stroke, Waterline,
};
use super::doc::{
    Block, Callout, Column, Doc, Fact, Footer, KeyFigure, PageSize, Table, Text, Tone,
};
use super::pdf::{DocDate, Fonts};

/// The fonts of the repository.
pub fn fonts() -> Fonts<'static> {
    Fonts {
        regular: include_bytes!("../../public/fonts/report-regular.ttf"),
    }
}

/// An invented afternoon.
pub const CREATED: DocDate = DocDate {
    year: 2025,
    month: 8,
    day: 14,
    hour: 16,
    minute: 40,
    second: 0,
    offset_minutes: -300,
};

/// The basin of the bakery's tower.
pub fn waterline() -> Waterline {
    let mark = |kind, height| LevelMark { kind, height };
    Waterline {
        summary: "Basin in section. As found ½ in over the floor, below the pump inlet; \
                  as left at the high probe."
            .into(),
        marks: vec![
            mark(MarkKind::Overflow, 0.94),
            mark(MarkKind::High, 0.72),
            mark(MarkKind::Low, 0.52),
            mark(MarkKind::PumpInlet, 0.2),
        ],
        found: Some(Level { height: 0.04 }),
        left: Some(Level { height: 0.71 }),
    }
}

fn chart() -> Chart {
    let minutes: Vec<(f64, f64)> = (0..=20)
        .map(|i| {
            let t = f64::from(i) / 20.0;
            let wobble = 0.012 * f64::from((i * 7) % 5 - 2);
            (t, (0.06 + 0.72 * t + wobble).min(0.76))
        })
        .collect();
    let rows = minutes
        .iter()
        .step_by(4)
        .map(|(t, h)| {
            (
                format!("{:.0}", t * 20.0),
                format!("{:.1}", 15.0 * (1.0 - h)),
            )
        })
        .collect();
    let tick = |at: f64, label: &str| (at, label.to_owned());
    Chart {
        title: "Level against time".into(),
        summary: "The level rose 0.55 in/min for 20 min with the valve open and one circuit \
                  running; the fill gains on losses by 11.9 gal/min ± 0.8."
            .into(),
        x_label: "Minutes since the valve opened".into(),
        y_label: "Below overflow, in".into(),
        x_ticks: vec![
            tick(0.0, "0"),
            tick(0.25, "5"),
            tick(0.5, "10"),
            tick(0.75, "15"),
            tick(1.0, "20"),
        ],
        y_ticks: vec![
            tick(0.0, "15"),
            tick(0.333, "10"),
            tick(0.667, "5"),
            tick(1.0, "0"),
        ],
        series: vec![Series {
            label: "Level".into(),
            ink: Ink::Water,
            stroke: Stroke::Points,
            points: minutes,
        }],
        fits: vec![Fit {
            label: "0.55 in/min".into(),
            from: (0.0, 0.06),
            to: (1.0, 0.78),
        }],
        moments: vec![
            Moment {
                x: 0.0,
                label: "Valve open".into(),
            },
            Moment {
                x: 0.6,
                label: "Circuit 2 on".into(),
            },
        ],
        limits: vec![
            Limit {
                y: 0.72,
                label: "High probe".into(),
                ink: Ink::Plain,
            },
            Limit {
                y: 0.2,
                label: "Pump inlet".into(),
                ink: Ink::Alarm,
            },
        ],
        row_heads: ("Minutes".into(), "Below overflow, in".into()),
        rows,
    }
}

fn readings() -> Table {
    let row = |cells: [&str; 5]| cells.iter().map(|c| Text::from(*c)).collect();
    let rows: Vec<Vec<Text>> = vec![
        row([
            "Head pressure, circuit 1",
            "psig",
            "388, lockout",
            "241",
            "gauge set 2",
        ]),
        row([
            "Head pressure, circuit 2",
            "psig",
            "391, lockout",
            "238",
            "gauge set 2",
        ]),
        row(["Condenser water in", "°F", "118", "84", "strap-on, ±1 °F"]),
        row(["Condenser water out", "°F", "119", "93", "strap-on, ±1 °F"]),
        row(["Wet bulb at the tower", "°F", "77", "77", "sling"]),
        row(["Approach", "Δ°F", "—", "7", "worked out"]),
        row(["Mains pressure, static", "psig", "52", "52", "hose bib"]),
        row(["Coil, call for water", "V AC", "0.0", "25.1", "meter"]),
        row([
            "Probe lead, high to common",
            "kΩ",
            "4.1 (reads wet)",
            "> 2,000",
            "meter",
        ]),
    ];
    Table {
        caption: "Readings as found and as left".into(),
        columns: vec![
            Column::left("Reading", 3.0),
            Column::left("Unit", 0.8),
            Column::right("As found", 1.7),
            Column::right("As left", 1.1),
            Column::left("How", 1.6),
        ],
        rows,
    }
}

fn figure(label: &str, number: &str, unit: &str, note: &str) -> KeyFigure {
    KeyFigure {
        label: label.into(),
        number: number.into(),
        unit: unit.into(),
        note: note.into(),
    }
}

fn callout(tone: Tone, word: &str, text: &str) -> Block {
    Block::Callout(Callout {
        tone,
        word: word.into(),
        text: text.into(),
    })
}

/// The report.
pub fn bakery(page: PageSize) -> Doc {
    let fact = |label: &str, value: &str| Fact {
        label: label.into(),
        value: value.into(),
    };
    let heading = |level, text: &str| Block::Heading {
        level,
        text: text.into(),
    };
    Doc {
        title: "Six circuits out on head pressure: dry tower basin".into(),
        language: "en".into(),
        subject: "Visit report · Halden Street Bakery".into(),
        author: "M. Quarles".into(),
        facts: vec![
            fact(
                "Site",
                "Halden Street Bakery, 12 Halden Street, roof and basement",
            ),
            fact("Visit", "14 August 2025, 13:05 to 16:40"),
            fact("Mechanic", "M. Quarles, with T. Ødegård"),
            fact(
                "Plant",
                "Six water-cooled condensing units, one 60-ton open tower",
            ),
        ],
        mark: Some(waterline()),
        blocks: vec![
            callout(
                Tone::ActNow,
                "ACT NOW",
                "Have the high probe replaced before Friday’s bake. Until then someone reads the \
                 basin every 4 hours: call us if the water stands more than 7 in below the \
                 overflow.",
            ),
            Block::KeyFigures(vec![
                figure("As found, below overflow", "14½", "in", "tape, two corners"),
                figure("As left, below overflow", "3⅝", "in", "tape, two corners"),
                figure(
                    "Fill gains on losses by",
                    "11.9",
                    "gal/min",
                    "refill test, ± 0.8",
                ),
                figure("Condenser water in", "84", "°F", "was 118 °F"),
            ]),
            heading(1, "What happened"),
            Block::Paragraph(
                Text::default()
                    .plain(
                        "All six circuits locked out on head pressure between 11:20 and 11:50. \
                         The tower basin was dry: ½ in of water, below the pump inlet. Condenser \
                         water came back at 118 °F. ",
                    )
                    .bold("The level control read “full” over an empty basin.")
                    .plain(
                        " Foam and scale bridged the high probe to common, so the relay never \
                         called for water. The fill valve, its coil, the strainer and the mains \
                         all work.",
                    ),
            ),
            callout(
                Tone::Proven,
                "PROVEN",
                "Probe lead read 4.1 kΩ wet with the basin dry. Wiped, it read over 2,000 kΩ and \
                 the valve opened within 3 s. Bridged again with foam, it closed.",
            ),
            callout(
                Tone::NotProven,
                "NOT PROVEN",
                "That the foam comes from the new biocide. The dosing began nine days before the \
                 first drift; nobody has tried without it.",
            ),
            heading(1, "Refill test"),
            Block::Figure(chart()),
            Block::Table(readings()),
            heading(1, "Before the next visit"),
            Block::List {
                numbered: true,
                items: vec![
                    "Replace the three electrodes and the holder; keep the old ones.".into(),
                    Text::default()
                        .plain("Ask the water treatment firm about ")
                        .bold("foam")
                        .plain(" at the present dose."),
                    "Blow down to 3 cycles of concentration and read conductivity.".into(),
                ],
            },
            callout(
                Tone::Note,
                "NOTE",
                "Read with care: levels were taken with the fan off. Local codes and the water \
                 treatment plan come first.",
            ),
        ],
        page,
        footer: Footer {
            title: "Halden Street Bakery, 14 August 2025".into(),
            page: "page".into(),
            of: "of".into(),
        },
    }
}
