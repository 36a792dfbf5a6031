//! The loop's recovery as a figure: entering water read, and as expected.

use super::chart::{Chart, Ink, Series, Stroke};
use crate::quantity::{System, Value, show};
use crate::record::{Outlook, Visit, What};
use crate::words::{Phrase, Words};
use uom::si::thermodynamic_temperature::kelvin;

/// The chart; `None` without a reading.
pub fn recovery_chart(
    visit: &Visit,
    outlook: &Outlook,
    system: System,
    words: Words,
) -> Option<Chart> {
    let read: Vec<_> = visit
        .recovery
        .iter()
        .filter(|p| p.what == What::EnteringWater)
        .collect();
    let begun = read.first()?.at;
    let points: Vec<(f64, f64)> = read
        .iter()
        .filter_map(|p| {
            let t = p.value.as_temperature()?.get::<kelvin>();
            Some((p.at.seconds_since(&begun), t))
        })
        .collect();
    let expected = outlook
        .expected
        .iter()
        .map(|(s, t)| (*s, t.get::<kelvin>()));
    let expected: Vec<(f64, f64)> = expected.collect();
    let all = || points.iter().chain(&expected);
    let end = all().map(|p| p.0).fold(60.0, f64::max);
    let low = all().map(|p| p.1).fold(f64::INFINITY, f64::min) - 0.5;
    let high = all().map(|p| p.1).fold(0.0, f64::max) + 0.5;
    let place = |p: &(f64, f64)| (p.0 / end, (p.1 - low) / (high - low));
    let said = |k: f64| {
        let t = crate::quantity::ThermodynamicTemperature::new::<kelvin>(k);
        show(Value::temperature(t), system)
    };
    let unit = said(low).unit;
    let series = |points: &[(f64, f64)], ink, stroke| Series {
        label: String::new(),
        ink,
        stroke,
        points: points.iter().map(place).collect(),
    };
    let tick = |n: i32| f64::from(n) / 4.0;
    Some(Chart {
        title: words.phrase(Phrase::RecoveryTitle).to_owned(),
        summary: words.phrase(Phrase::RecoverySummary).to_owned(),
        x_label: words.phrase(Phrase::MinutesAxis).to_owned(),
        y_label: format!("{unit} {}", words.phrase(Phrase::EnteringAxis)),
        x_ticks: (0..=4)
            .map(|n| (tick(n), format!("{:.0}", tick(n) * end / 60.0)))
            .collect(),
        y_ticks: (0..=4)
            .map(|n| (tick(n), said(low + tick(n) * (high - low)).number))
            .collect(),
        series: vec![
            series(&expected, Ink::Plain, Stroke::Line),
            series(&points, Ink::Water, Stroke::Points),
        ],
        row_heads: (
            words.phrase(Phrase::TestClock).to_owned(),
            words.phrase(Phrase::EnteringAxis).to_owned(),
        ),
        rows: points
            .iter()
            .map(|p| (words.test_clock(p.0), said(p.1).to_string()))
            .collect(),
        ..Chart::default()
    })
}
