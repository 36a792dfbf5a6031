//! Readings and marks as a table for other programs: RFC 4180, UTF-8, one line
//! for each value, numbers with a point whatever the language.

use crate::quantity::{System, Value, decimal};
use crate::record::{Moment, Site, Visit, When};
use crate::refill::MarkKind;
use crate::words::Words;

/// Heads of the columns. `value` is in `unit`; `si` is the same number in the
/// SI form in which it is stored (kelvins, pascals, metres, volts, cubic metres
/// a second; humidity as a fraction). `typed` is what the person typed.
pub const HEADS: [&str; 10] = [
    "site", "when", "date", "time", "what", "machine", "value", "unit", "si", "typed",
];

/// A field: quoted where it must be. A text that a spreadsheet would take for
/// a formula gets an apostrophe before it (OWASP, "CSV injection").
pub fn field(text: &str) -> String {
    const FIRST: [char; 11] = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];
    // Not `-2,`, which is a number only where the comma is the point.
    let plain = |c: char| c.is_ascii_digit() || "+-.eE".contains(c);
    let number = text.chars().all(plain) && decimal(text).is_some();
    let formula = text.starts_with(FIRST) && !number;
    let text = match formula {
        true => format!("'{text}"),
        false => text.to_owned(),
    };
    match text.contains([',', '"', '\r', '\n']) {
        true => format!("\"{}\"", text.replace('"', "\"\"")),
        false => text,
    }
}

/// Readings as found and as left, then the marks of each refill test.
pub fn to_csv(site: &Site, visit: &Visit, system: System, words: Words) -> String {
    let mut out = HEADS.join(",") + "\r\n";
    let mut line =
        |when: &str, at: &Moment, what: &str, machine: &str, value: Option<Value>, typed: &str| {
            let numbers = value.map_or([const { String::new() }; 3], |value| {
                let unit = system.unit_for(value.kind);
                let shown = value.in_unit(unit).unwrap_or(value.si);
                [
                    format!("{}", (shown * 1e6).round() / 1e6),
                    unit.symbol().to_owned(),
                    format!("{}", value.si),
                ]
            });
            let [number, unit, si] = &numbers;
            let (date, time) = (at.date(), at.clock_seconds());
            let fields = [
                &site.name, when, &date, &time, what, machine, number, unit, si, typed,
            ];
            out += &fields.map(field).join(",");
            out += "\r\n";
        };
    for (slot, reading) in visit.readings.iter() {
        let when = match slot.when {
            When::AsFound => "as-found",
            When::AsLeft => "as-left",
        };
        let machine = site.machines.iter().find(|m| Some(m.id) == slot.machine);
        line(
            when,
            &reading.at,
            words.reading_name(slot.what),
            machine.map_or("", |m| &m.name),
            Some(reading.value),
            &reading.typed,
        );
    }
    for (n, test) in visit.tests.iter().enumerate() {
        let when = format!("refill-test-{}", n + 1);
        for mark in &test.marks {
            let level = match mark.kind {
                MarkKind::Level { below_overflow } => Some(Value::level(below_overflow)),
                _ => None,
            };
            let typed = mark.typed.as_deref().unwrap_or_default();
            let what = words.refill_mark(mark.kind.name());
            line(&when, &mark.at, what, "", level, typed);
        }
    }
    out
}
