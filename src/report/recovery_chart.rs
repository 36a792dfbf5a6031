//! The loop's recovery as a figure: entering water or a machine's head, read and
//! as expected.

use super::chart::{Chart, Ink, Series, Stroke, thinned};
use crate::quantity::{System, Value, show};
use crate::record::{Outlook, Visit, What};
use crate::refill::{round_ticks, time_ticks};
use crate::words::{Phrase, Words};
use uom::si::thermodynamic_temperature::kelvin;

/// The chart of the entering water, or of the head of the machine that
/// [`Outlook::headed`] names; `None` without a reading.
pub fn recovery_chart(
    visit: &Visit,
    outlook: &Outlook,
    what: What,
    system: System,
    words: Words,
) -> Option<Chart> {
    let read: Vec<_> = visit
        .recovery
        .iter()
        .filter(|p| p.what == what && (p.machine.is_none() || p.machine == outlook.headed))
        .collect();
    read.first()?;
    let begun = outlook.begun;
    let heads = what == What::HeadPressure;
    let points: Vec<(f64, f64)> = read
        .iter()
        .map(|p| (p.at.seconds_since(&begun), p.value.si))
        .collect();
    let expected: Vec<(f64, f64)> = match heads {
        true => outlook
            .head
            .iter()
            .map(|(s, p)| (*s, p.pascals()))
            .collect(),
        false => {
            let water = outlook.expected.iter();
            water.map(|(s, t)| (*s, t.get::<kelvin>())).collect()
        }
    };
    let all = || points.iter().chain(&expected);
    let end = all().map(|p| p.0).fold(60.0, f64::max);
    // Half a kelvin, or half a psi of room.
    let room = if heads { 3_500.0 } else { 0.5 };
    let low = all().map(|p| p.1).fold(f64::INFINITY, f64::min) - room;
    let high = all().map(|p| p.1).fold(0.0, f64::max) + room;
    let place = |p: &(f64, f64)| (p.0 / end, (p.1 - low) / (high - low));
    let kind = what.kind();
    let said = |si: f64| show(Value { kind, si }, system);
    let unit = system.unit_for(kind);
    let series = |points: &[(f64, f64)], ink, stroke| Series {
        label: String::new(),
        ink,
        stroke,
        points: points.iter().map(place).collect(),
    };
    let axis = words.phrase(match heads {
        true => Phrase::HeadAxis,
        false => Phrase::EnteringAxis,
    });
    Some(Chart {
        title: format!("{}: {axis}", words.phrase(Phrase::RecoveryTitle)),
        summary: words.phrase(Phrase::RecoverySummary).to_owned(),
        x_label: words.phrase(Phrase::MinutesAxis).to_owned(),
        y_label: format!("{axis}, {}", unit.symbol()),
        x_ticks: time_ticks(0.0, end)
            .into_iter()
            .map(|t| (t.at / end, t.label))
            .collect(),
        y_ticks: round_ticks(unit.from_si(low), unit.from_si(high))
            .into_iter()
            .map(|t| (place(&(0.0, unit.to_si(t.at))).1, t.label))
            .collect(),
        series: vec![
            series(&expected, Ink::Plain, Stroke::Line),
            series(&thinned(&points), Ink::Water, Stroke::Points),
        ],
        row_heads: (words.phrase(Phrase::TestClock).to_owned(), axis.to_owned()),
        rows: thinned(&points)
            .iter()
            .map(|p| (words.test_clock(p.0), said(p.1).to_string()))
            .collect(),
        ..Chart::default()
    })
}
