//! A report's chart on the screen: the same normalised figure the PDF draws,
//! as SVG, with its data in a table behind it.

use crate::app::view::prelude::*;

use crate::app::prefs::prefs;
use crate::report::{Chart, Ink, Stroke};
use crate::words::Phrase as P;

const W: f64 = 340.0;
const H: f64 = 280.0;
const LEFT: f64 = 34.0;
const TOP: f64 = 66.0;
const ROW_0: f64 = 26.0;
const ROW: f64 = 13.0;
const ROWS: usize = 3;
const BOTTOM: f64 = 34.0;

fn x(v: f64) -> f64 {
    LEFT + v.clamp(0.0, 1.0) * (W - LEFT - 6.0)
}

fn y(v: f64) -> f64 {
    H - BOTTOM - v.clamp(0.0, 1.0) * (H - TOP - BOTTOM)
}

/// The row above the plot in which each moment's label finds room; `None`
/// where all rows are taken. The table behind the figure names every moment.
fn label_rows(chart: &Chart) -> Vec<Option<usize>> {
    let mut taken: [Vec<(f64, f64)>; ROWS] = Default::default();
    chart
        .moments
        .iter()
        .map(|moment| {
            if moment.label.is_empty() {
                return None; // named with the ones beside it
            }
            let (at, wide) = (x(moment.x), 7.6 * moment.label.chars().count() as f64);
            let (from, to) = match moment.x > 0.7 {
                true => (at - 6.0 - wide, at),
                false => (at, at + 6.0 + wide),
            };
            let free = |row: &Vec<(f64, f64)>| row.iter().all(|(a, b)| to < *a || from > *b);
            let row = taken.iter().position(free)?;
            taken[row].push((from, to));
            Some(row)
        })
        .collect()
}

/// Draws a chart.
#[component]
pub fn ChartView(
    /// The figure.
    chart: Chart,
) -> View {
    let words = prefs().words;
    let grid = chart
        .x_ticks
        .iter()
        .map(|(at, label)| {
            markup! {
                <line class="grid" x1=x(*at) x2=x(*at) y1=y(0.0) y2=y(1.0) />
                <text x=x(*at) y=H - BOTTOM + 15.0 text-anchor="middle">{label.clone()}</text>
            }
        })
        .collect_view();
    let rungs = chart
        .y_ticks
        .iter()
        .map(|(at, label)| {
            markup! {
                <line class="grid" x1=x(0.0) x2=x(1.0) y1=y(*at) y2=y(*at) />
                <text x=LEFT - 5.0 y=y(*at) + 4.0 text-anchor="end">{label.clone()}</text>
            }
        })
        .collect_view();
    let limits = chart
        .limits
        .iter()
        .map(|limit| {
            markup! {
                <line
                    class="limit"
                    class:low=limit.ink == Ink::Alarm
                    x1=x(0.0)
                    x2=x(1.0)
                    y1=y(limit.y)
                    y2=y(limit.y)
                />
                <text x=x(1.0) - 3.0 y=y(limit.y) - 4.0 text-anchor="end">
                    {limit.label.clone()}
                </text>
            }
        })
        .collect_view();
    // The rows for moments take no room where there are none.
    let cut = if chart.moments.is_empty() {
        TOP - ROW_0
    } else {
        0.0
    };
    let rows = label_rows(&chart);
    let moments = chart
        .moments
        .iter()
        .zip(rows)
        .map(|(moment, row)| {
            let at = x(moment.x);
            let label = row.map(|row| {
                let up = ROW_0 + ROW * row as f64;
                let (nudged, anchor) = match moment.x > 0.7 {
                    true => (at - 3.0, "end"),
                    false => (at + 3.0, "start"),
                };
                markup! {
                    <text class="strong" x=nudged y=up text-anchor=anchor>
                        {moment.label.clone()}
                    </text>
                }
            });
            let top = row.map_or(TOP, |row| ROW_0 + ROW * row as f64 - 9.0);
            markup! {
                <line class="event" x1=at x2=at y1=top y2=y(0.0) />
                {label}
            }
        })
        .collect_view();
    let fits = chart
        .fits
        .iter()
        .map(|fit| {
            markup! {
                <line
                    class="line"
                    x1=x(fit.from.0)
                    y1=y(fit.from.1)
                    x2=x(fit.to.0)
                    y2=y(fit.to.1)
                />
            }
        })
        .collect_view();
    let lines = chart
        .series
        .iter()
        .filter(|series| series.stroke == Stroke::Line)
        .map(|series| {
            let at = |p: &(f64, f64)| format!("{:.1} {:.1}", x(p.0), y(p.1));
            let path: Vec<String> = series.points.iter().map(at).collect();
            let class = match series.ink {
                Ink::Plain => "line under",
                _ => "band",
            };
            markup! { <path class=class d=format!("M{}", path.join("L")) /> }
        })
        .collect_view();
    let points = chart
        .series
        .iter()
        .filter(|series| series.stroke != Stroke::Line)
        .flat_map(|series| series.points.iter().map(move |p| (*p, series.ink)))
        .map(|((px, py), ink)| match ink {
            // A reading left out of the fit is a cross, not a ring.
            Ink::Unproven => {
                let (cx, cy) = (x(px), y(py));
                let cross = format!(
                    "M{} {}l8 8M{} {}l-8 8",
                    cx - 4.0,
                    cy - 4.0,
                    cx + 4.0,
                    cy - 4.0
                );
                markup! { <path class="event" d=cross /> }
            }
            // Of the test laid underneath: a square.
            Ink::Plain => {
                markup! { <path class="dot under" d=format!("M{} {}h8v8h-8z", x(px) - 4.0, y(py) - 4.0) /> }
            }
            _ => markup! { <circle class="dot" cx=x(px) cy=y(py) r="5" /> },
        })
        .collect_view();
    let table = chart
        .rows
        .iter()
        .map(|(a, b)| markup! { <tr><td>{a.clone()}</td><td>{b.clone()}</td></tr> })
        .collect_view();
    markup! {
        <figure>
            <svg
                class="fig"
                viewBox=format!("0 {cut} {W} {}", H - cut)
                role="img"
                aria-label=format!("{}. {}", chart.title, chart.summary)
                data-test="chart"
            >
                {grid}
                {rungs}
                <path class="axis" d=format!("M{LEFT} {TOP}V{}H{}", H - BOTTOM, x(1.0)) />
                {moments}
                {lines}
                {fits}
                {limits}
                {points}
                <text x=x(1.0) y=H - 4.0 text-anchor="end">{chart.x_label.clone()}</text>
                <text x="0" y=cut + 10.0>{chart.y_label.clone()}</text>
            </svg>
            <details>
                <summary>{words.phrase(P::AsTable)}</summary>
                <table>
                    <thead>
                        <tr>
                            <th scope="col">{chart.row_heads.0.clone()}</th>
                            <th scope="col">{chart.row_heads.1.clone()}</th>
                        </tr>
                    </thead>
                    <tbody>{table}</tbody>
                </table>
            </details>
        </figure>
    }
}
