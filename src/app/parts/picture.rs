//! A working's picture as SVG, with its summary for those who can't see it.

use std::fmt::Write;

use super::section::outside;
use crate::app::view::prelude::*;
use crate::quantity::{Kind, System, Unit, Value, show};
use crate::refill::round_ticks;
use crate::words::{Phrase as P, Words};
use crate::working::{Ask, Axis, AxisName, Picture, Plot};

const W: f64 = 340.0;
const H: f64 = 240.0;
const LEFT: f64 = 44.0;
const TOP: f64 = 22.0;
const RIGHT: f64 = 334.0;
const BOTTOM: f64 = 204.0;

/// Draws a picture.
pub fn picture(of: &Picture, words: Words, system: System) -> View {
    let (inner, title, height) = match of {
        Picture::Plot(plot) => (
            curves(plot, words, system),
            plot_title(plot, words, system),
            H,
        ),
        Picture::Basin {
            depth,
            now,
            then,
            outline,
        } => basin(*depth, *now, *then, outline, words, system),
    };
    let table = match of {
        Picture::Plot(plot) => table(plot, words, system),
        Picture::Basin { .. } => None,
    };
    markup! {
        <svg class="fig" viewBox=format!("0 0 {W} {height}") role="img" aria-label=title
            data-test="picture" inner_html=inner></svg>
        {table}
    }
}

/// The strongest curve in figures, behind the picture.
fn table(plot: &Plot, words: Words, system: System) -> Option<View> {
    const ROWS: usize = 8;
    let points = &plot.curves.last()?.points;
    let every = points.len().div_ceil(ROWS).max(1);
    let rows = points
        .iter()
        .step_by(every)
        .map(|(x, y)| {
            let (x, y) = (
                shown(plot.x.kind, *x, system),
                shown(plot.y.kind, *y, system),
            );
            markup! { <tr><td>{x}</td><td>{y}</td></tr> }
        })
        .collect_view();
    Some(markup! {
        <details>
            <summary>{words.phrase(P::AsTable)}</summary>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{axis_name(plot.x, words)}</th>
                        <th scope="col">{axis_name(plot.y, words)}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </details>
    })
}

fn axis_name(axis: Axis, words: Words) -> &'static str {
    match axis.name {
        AxisName::Ask(ask) => words.ask(ask),
        AxisName::Figure(figure) => words.figure(figure),
    }
}

fn shown(kind: Kind, si: f64, system: System) -> String {
    show(Value { kind, si }, system).to_string()
}

fn plot_title(plot: &Plot, words: Words, system: System) -> String {
    let (x, y) = (axis_name(plot.x, words), axis_name(plot.y, words));
    match plot.point {
        Some((px, py)) => format!(
            "{x}: {}. {y}: {}.",
            shown(plot.x.kind, px, system),
            shown(plot.y.kind, py, system)
        ),
        None => format!("{y}, {x}"),
    }
}

/// Round numbers of a unit within an axis.
fn ticks(axis: Axis, unit: Unit) -> Vec<(f64, String)> {
    round_ticks(unit.from_si(axis.low), unit.from_si(axis.high))
        .into_iter()
        .map(|t| (unit.to_si(t.at), t.label))
        .collect()
}

fn curves(plot: &Plot, words: Words, system: System) -> String {
    let place = |axis: Axis, v: f64, from: f64, to: f64| {
        from + (v - axis.low) / (axis.high - axis.low) * (to - from)
    };
    let x = |v: f64| place(plot.x, v, LEFT, RIGHT);
    let y = |v: f64| place(plot.y, v, BOTTOM, TOP);
    let mut svg = String::new();
    let (x_unit, y_unit) = (system.unit_for(plot.x.kind), system.unit_for(plot.y.kind));
    for (si, v) in ticks(plot.x, x_unit) {
        let at = x(si);
        let _ = write!(
            svg,
            "<path class='grid' d='M{at:.1} {TOP}V{BOTTOM}'/>\
             <text x='{at:.1}' y='{:.0}' text-anchor='middle'>{v}</text>",
            BOTTOM + 16.0
        );
    }
    for (si, v) in ticks(plot.y, y_unit) {
        let at = y(si);
        let _ = write!(
            svg,
            "<path class='grid' d='M{LEFT} {at:.1}H{RIGHT}'/>\
             <text x='{:.0}' y='{:.1}' text-anchor='end'>{v}</text>",
            LEFT - 6.0,
            at + 4.0
        );
    }
    for curve in &plot.curves {
        let mut d = String::new();
        for (i, (px, py)) in curve.points.iter().enumerate() {
            let pen = if i == 0 { 'M' } else { 'L' };
            let _ = write!(d, "{pen}{:.1} {:.1}", x(*px), y(*py));
        }
        let class = if curve.strong { "line" } else { "faint" };
        let _ = write!(svg, "<path class='{class}' d='{d}'/>");
    }
    let _ = write!(
        svg,
        "<path class='axis' d='M{LEFT} {TOP}V{BOTTOM}H{RIGHT}'/>"
    );
    if let Some((px, py)) = plot.point {
        let (cx, cy) = (x(px), y(py));
        let anchor = if cx > 0.7 * W { "end" } else { "start" };
        let beside = if cx > 0.7 * W { -10.0 } else { 10.0 };
        let _ = write!(
            svg,
            "<path class='limit' d='M{cx:.1} {BOTTOM}V{cy:.1}H{LEFT}'/>\
             <circle class='dot' cx='{cx:.1}' cy='{cy:.1}' r='6'/>\
             <text class='strong' x='{:.1}' y='{:.1}' text-anchor='{anchor}'>{}</text>",
            cx + beside,
            cy - 8.0,
            words.phrase(P::Today)
        );
    }
    let _ = write!(
        svg,
        "<text x='0' y='11'>{}, {}</text>\
         <text x='{RIGHT}' y='{:.0}' text-anchor='end'>{}, {}</text>",
        axis_name(plot.y, words),
        y_unit.symbol(),
        H - 4.0,
        axis_name(plot.x, words),
        x_unit.symbol()
    );
    svg
}

/// The basin in section: walls, water, the level that matters.
fn basin(
    depth: f64,
    now: f64,
    then: Option<f64>,
    outline: &[(f64, f64)],
    words: Words,
    system: System,
) -> (String, String, f64) {
    let (left, right, top, floor) = (20.0, 320.0, 24.0, 144.0);
    let y = |level: f64| top + (level / depth).clamp(0.0, 1.0) * (floor - top);
    let level = |si: f64| shown(Kind::Level, si, system);
    let mut svg = String::new();
    let ground = outside(outline, left, right, top, floor);
    let ground = ground.map_or(String::new(), |d| format!("<path class='ground' d='{d}'/>"));
    let _ = write!(
        svg,
        "<path class='pool' d='M{left} {0:.1}H{right}V{floor}H{left}Z'/>\
         <path class='line' d='M{left} {0:.1}H{right}'/>{ground}\
         <path class='axis' d='M{left} {top}V{floor}H{right}V{top}'/>\
         <text x='{left}' y='14'>{1}</text>\
         <text class='strong' x='{2}' y='{3:.1}' text-anchor='middle'>{4}</text>",
        y(now),
        words.phrase(P::MarkOverflow),
        (left + right) / 2.0,
        y(now) - 6.0,
        level(now),
    );
    let mut title = format!("{}: {}", words.ask(Ask::LevelNow), level(now));
    if let Some(then) = then {
        let _ = write!(
            svg,
            "<path class='limit low' d='M{left} {0:.1}H{right}'/>\
             <text x='{1}' y='{2:.1}' text-anchor='end'>{3}</text>",
            y(then),
            right - 6.0,
            y(then) - 4.0,
            level(then),
        );
        title = format!("{title}. {}: {}", words.ask(Ask::LevelThen), level(then));
    }
    (svg, title, 156.0)
}
