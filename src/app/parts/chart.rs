//! A report's chart on the screen: the same normalised figure the PDF draws,
//! as SVG, with its data in a table behind it.

use leptos::prelude::*;

use crate::app::parts::erased::markup;

use crate::app::prefs::prefs;
use crate::report::{Chart, Ink};
use crate::words::Phrase as P;

const W: f64 = 340.0;
const H: f64 = 250.0;
const LEFT: f64 = 34.0;
const TOP: f64 = 26.0;
const BOTTOM: f64 = 34.0;

fn x(v: f64) -> f64 {
    LEFT + v.clamp(0.0, 1.0) * (W - LEFT - 6.0)
}

fn y(v: f64) -> f64 {
    H - BOTTOM - v.clamp(0.0, 1.0) * (H - TOP - BOTTOM)
}

/// Draws a chart. `now` is the present level, drawn as water.
#[component]
pub fn ChartView(
    /// The figure.
    chart: Chart,
) -> impl IntoView {
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
    let moments = chart
        .moments
        .iter()
        .enumerate()
        .map(|(n, moment)| {
            // Labels take turns in two rows, so that neighbours stay readable.
            let row = TOP - 14.0 + 12.0 * (n % 2) as f64;
            let (nudged, anchor) = match moment.x > 0.8 {
                true => (x(moment.x) - 3.0, "end"),
                false => (x(moment.x) + 3.0, "start"),
            };
            markup! {
                <line class="event" x1=x(moment.x) x2=x(moment.x) y1=row + 2.0 y2=y(0.0) />
                <text
                    class="strong"
                    x=nudged
                    y=row
                    text-anchor=anchor
                >
                    {moment.label.clone()}
                </text>
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
    let points = chart
        .series
        .iter()
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
            _ => markup! { <circle class="dot" cx=x(px) cy=y(py) r="5" /> },
        })
        .collect_view();
    let rows = chart
        .rows
        .iter()
        .map(|(a, b)| markup! { <tr><td>{a.clone()}</td><td>{b.clone()}</td></tr> })
        .collect_view();
    markup! {
        <figure>
            <svg
                class="fig"
                viewBox=format!("0 0 {W} {H}")
                role="img"
                aria-label=format!("{}. {}", chart.title, chart.summary)
                data-test="chart"
            >
                {grid}
                {rungs}
                <path class="axis" d=format!("M{LEFT} {TOP}V{}H{}", H - BOTTOM, x(1.0)) />
                {limits}
                {moments}
                {fits}
                {points}
                <text x=x(1.0) y=H - 4.0 text-anchor="end">{chart.x_label.clone()}</text>
                <text x="0" y="10">{chart.y_label.clone()}</text>
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
                    <tbody>{rows}</tbody>
                </table>
            </details>
        </figure>
    }
}
