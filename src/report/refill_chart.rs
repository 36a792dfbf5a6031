//! The refill test's figure in the report's normalised geometry, drawn by the
//! PDF and by the screen alike.

use super::chart::{Chart, Fit, Ink, Limit, Moment, Series, Stroke, thinned};
use crate::quantity::{Length, System, Value, show, sort_by};
use crate::record::Test;
use crate::refill::{self, Figure, Outcome, TickUnit, figure};
use crate::words::{Phrase, Words};
use uom::si::length::meter;

/// The chart of one refill test.
pub fn refill_chart(test: &Test, outcome: &Outcome, system: System, words: Words) -> Chart {
    let drawn = drawn(test, outcome, system);
    draw(test, outcome, &drawn, None, system, words)
}

/// The same with its axes as wide as another's: a replay stands still in them.
pub fn refill_chart_in(
    test: &Test,
    outcome: &Outcome,
    whole: (&Test, &Outcome),
    system: System,
    words: Words,
) -> Chart {
    let mut figure = drawn(test, outcome, system);
    figure.widen(&drawn(whole.0, whole.1, system), unit(system));
    draw(test, outcome, &figure, None, system, words)
}

/// Two tests laid over each other, both from when the water ran; the second in
/// plain ink.
pub fn refill_overlay(
    test: (&Test, &Outcome),
    other: (&Test, &Outcome),
    system: System,
    words: Words,
) -> Chart {
    let mut figure = drawn(test.0, test.1, system);
    let mut under = drawn(other.0, other.1, system);
    under.shift(figure.water_s() - under.water_s());
    figure.widen(&under, unit(system));
    draw(test.0, test.1, &figure, Some(&under), system, words)
}

fn unit(system: System) -> TickUnit {
    match system {
        System::Us => TickUnit::Inches,
        System::Si => TickUnit::Centimetres,
    }
}

fn drawn(test: &Test, outcome: &Outcome, system: System) -> Figure {
    figure(&test.setup, &test.timed(), outcome, unit(system))
}

fn draw(
    test: &Test,
    outcome: &Outcome,
    figure: &Figure,
    under: Option<&Figure>,
    system: System,
    words: Words,
) -> Chart {
    let x = |s: f64| (s - figure.x_min_s) / (figure.x_max_s - figure.x_min_s);
    let y = |m: f64| (figure.y_bottom_m - m) / (figure.y_bottom_m - figure.y_top_m);
    let level = |m: f64| show(Value::level(Length::new::<meter>(m)), system).to_string();
    let line = |points: Vec<(f64, f64)>, ink| Series {
        label: String::new(),
        ink,
        stroke: Stroke::Line,
        points,
    };
    let mut series = Vec::new();
    if let Some(under) = under {
        let points = under.points.iter().filter(|p| !p.left_out);
        let points: Vec<(f64, f64)> = points.map(|p| (x(p.t_s), y(p.level_m))).collect();
        series.push(Series {
            stroke: Stroke::Points,
            ..line(thinned(&points), Ink::Plain)
        });
        for l in &under.lines {
            let ends = [l.from, l.to].map(|(t, m)| (x(t), y(m)));
            series.push(line(ends.to_vec(), Ink::Plain));
        }
    }
    for l in &figure.lines {
        for edge in [|b: &(f64, f64, f64)| b.1, |b: &(f64, f64, f64)| b.2] {
            let edge = l.band.iter().map(|b| (x(b.0), y(edge(b)))).collect();
            series.push(line(edge, Ink::Water));
        }
    }
    let points = |left_out: bool| {
        figure
            .points
            .iter()
            .filter(|p| p.left_out == left_out)
            .map(|p| (x(p.t_s), y(p.level_m)))
            .collect::<Vec<_>>()
    };
    series.push(Series {
        // The side of the plot names it already.
        label: String::new(),
        ink: Ink::Water,
        stroke: Stroke::Points,
        points: thinned(&points(false)),
    });
    let odd = points(true);
    if !odd.is_empty() {
        let label = words.left_out_reading().to_owned();
        series.push(Series {
            label,
            ink: Ink::Unproven,
            stroke: Stroke::Points,
            points: thinned(&odd),
        });
    }
    let fits = figure
        .lines
        .iter()
        .map(|l| Fit {
            label: String::new(),
            from: (x(l.from.0), y(l.from.1)),
            to: (x(l.to.0), y(l.to.1)),
        })
        .collect();
    let moments = moments(
        figure
            .marks
            .iter()
            .map(|m| (x(m.t_s), words.refill_mark_short(m.mark))),
    );
    let limits = figure
        .limits
        .iter()
        .map(|(limit, m)| Limit {
            y: y(*m),
            label: words.refill_limit(*limit).to_owned(),
            ink: if *limit == refill::Limit::LowLimit {
                Ink::Alarm
            } else {
                Ink::Plain
            },
        })
        .collect();
    // Every event, and as many readings as anybody reads.
    let timed = test.timed();
    let is_level = |m: &&refill::Mark| m.kind.name() == refill::ExpectedMark::Level;
    let (levels, mut rows): (Vec<&refill::Mark>, Vec<&refill::Mark>) =
        timed.iter().partition(is_level);
    rows.extend(thinned(&levels));
    sort_by(&mut rows, |a, b| a.at_s.total_cmp(&b.at_s));
    let rows = rows
        .iter()
        .map(|m| {
            let name = words.refill_mark_short(m.kind.name());
            let said = match m.kind {
                refill::MarkKind::Level { below_overflow } => level(below_overflow.get::<meter>()),
                _ => name.to_owned(),
            };
            (words.test_clock(m.at_s), said)
        })
        .collect();
    let ticks = |ticks: &[refill::Tick], place: &dyn Fn(f64) -> f64| {
        ticks
            .iter()
            .map(|t| (place(t.at), t.label.clone()))
            .collect()
    };
    let unit_name = if system == System::Us { "in" } else { "cm" };
    Chart {
        title: words.phrase(Phrase::ChartTitle).to_owned(),
        summary: words.chart_summary(outcome.verdict, figure.points.len()),
        x_label: words.phrase(Phrase::MinutesAxis).to_owned(),
        y_label: format!("{unit_name} {}", words.phrase(Phrase::BelowOverflowAxis)),
        x_ticks: ticks(&figure.x_ticks, &x),
        y_ticks: ticks(&figure.y_ticks, &y),
        series,
        fits,
        moments,
        limits,
        row_heads: (
            words.phrase(Phrase::TestClock).to_owned(),
            words.phrase(Phrase::Marks).to_owned(),
        ),
        rows,
    }
}

/// Moments with their labels; those too close to be labelled side by side
/// share one label, at the middle of them.
fn moments<'a>(marks: impl Iterator<Item = (f64, &'a str)>) -> Vec<Moment> {
    const CLOSE: f64 = 0.09;
    let mut groups: Vec<Vec<(f64, &str)>> = Vec::new();
    for mark in marks {
        match groups.last_mut() {
            Some(group) if mark.0 - group[group.len() - 1].0 < CLOSE => group.push(mark),
            _ => groups.push(vec![mark]),
        }
    }
    let labelled = |group: Vec<(f64, &str)>| {
        let middle = group.len() / 2;
        let names: Vec<&str> = group.iter().map(|(_, name)| *name).collect();
        let label = names.join(", ");
        let place = |(n, (x, _)): (usize, (f64, &str))| Moment {
            x,
            label: if n == middle {
                label.clone()
            } else {
                String::new()
            },
        };
        group.into_iter().enumerate().map(place).collect::<Vec<_>>()
    };
    groups.into_iter().flat_map(labelled).collect()
}
