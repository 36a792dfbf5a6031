//! A small plot: a few points in the order of time, with what a reader who
//! can't see it should know as its name.

use std::fmt::Write;

use crate::app::view::prelude::*;

const LEFT: f64 = 8.0;
const RIGHT: f64 = 300.0;
const TOP: f64 = 26.0;
const BOTTOM: f64 = 104.0;

/// A point with what stands beside it.
pub struct Dot {
    /// Place along the plot.
    pub x: f64,
    /// Place up the plot.
    pub y: f64,
    /// Filled, for a visit that stands out.
    pub full: bool,
    /// Beside the point; empty for none.
    pub says: String,
}

/// The least and the greatest, with a margin; never of no width.
fn span(values: impl Iterator<Item = f64> + Clone) -> (f64, f64) {
    let low = values.clone().fold(f64::INFINITY, f64::min);
    let high = values.fold(f64::NEG_INFINITY, f64::max);
    let margin = (0.12 * (high - low)).max(1e-9 * (1.0 + high.abs()));
    (low - margin, high + margin)
}

/// Draws the points joined in their order. `ends` stand under the plot, left
/// and right; `name` over it.
pub fn small_plot(
    dots: &[Dot],
    joined: bool,
    name: &str,
    ends: [&str; 2],
    summary: String,
) -> View {
    let (x0, x1) = span(dots.iter().map(|d| d.x));
    let (y0, y1) = span(dots.iter().map(|d| d.y));
    let x = |v: f64| LEFT + (v - x0) / (x1 - x0) * (RIGHT - LEFT);
    let y = |v: f64| BOTTOM - 16.0 - (v - y0) / (y1 - y0) * (BOTTOM - TOP - 30.0);
    let mut svg = String::new();
    let _ = write!(
        svg,
        "<path class='axis' d='M{LEFT} {TOP}V{BOTTOM}H{RIGHT}'/><text x='0' y='12'>{name}</text>\
         <text x='{LEFT}' y='{0}'>{1}</text><text x='{RIGHT}' y='{0}' text-anchor='end'>{2}</text>",
        BOTTOM + 16.0,
        ends[0],
        ends[1],
    );
    if joined {
        let mut path = String::new();
        for (n, dot) in dots.iter().enumerate() {
            let pen = if n == 0 { 'M' } else { 'L' };
            let _ = write!(path, "{pen}{:.1} {:.1}", x(dot.x), y(dot.y));
        }
        let _ = write!(svg, "<path class='line' d='{path}'/>");
    }
    // Where a label is already; one that would lie over it is left to the table.
    let mut taken: Vec<(f64, f64, f64)> = Vec::new();
    for (n, dot) in dots.iter().enumerate().rev() {
        // Beside the line, not on it: under a point from which it rises.
        let next = dots
            .get(n + 1)
            .or(n.checked_sub(1).and_then(|n| dots.get(n)));
        let under = joined && next.is_some_and(|next| next.y > dot.y);
        let down = if under { 17.0 } else { -7.0 };
        let (cx, cy) = (x(dot.x), y(dot.y));
        let class = if dot.full { "dot full" } else { "dot" };
        let (anchor, beside) = match cx > 200.0 {
            true => ("end", -9.0),
            false => ("start", 9.0),
        };
        let _ = write!(
            svg,
            "<circle class='{class}' cx='{cx:.1}' cy='{cy:.1}' r='5'/>"
        );
        let (at, down) = (cx + beside, cy + down);
        let wide = 7.8 * dot.says.chars().count() as f64;
        let left = if beside < 0.0 { at - wide } else { at };
        let over =
            |t: &(f64, f64, f64)| left < t.1 && t.0 < left + wide && (t.2 - down).abs() < 14.0;
        if !taken.iter().any(over) {
            taken.push((left, left + wide, down));
            let _ = write!(
                svg,
                "<text class='strong' x='{at:.1}' y='{down:.1}' text-anchor='{anchor}'>{}</text>",
                dot.says,
            );
        }
    }
    markup! {
        <svg class="fig" viewBox="0 0 340 124" role="img" aria-label=summary inner_html=svg></svg>
    }
}
