//! The basin in section, to scale: what of the box around it is not water, and
//! the drawing with its marks beside the form that describes it.

use std::fmt::Write;

use crate::app::view::prelude::*;
use uom::si::length::meter;

use crate::physics::basin::Basin;
use crate::quantity::{Length, System, Value, show};
use crate::words::{Phrase as P, Words};

/// What lies outside a basin of this outline whose water narrows downward, as a
/// path in a box: `left` to `right`, `top` to `floor`. Nothing where the walls
/// are upright.
pub fn outside(
    corners: &[(f64, f64)],
    left: f64,
    right: f64,
    top: f64,
    floor: f64,
) -> Option<String> {
    if corners.iter().all(|(_, wide)| *wide > 0.999) {
        return None;
    }
    let mut path = String::new();
    for (i, (down, wide)) in corners.iter().enumerate() {
        let pen = if i == 0 { 'M' } else { 'L' };
        let (x, y) = (left + wide * (right - left), top + down * (floor - top));
        let _ = write!(path, "{pen}{x:.1} {y:.1}");
    }
    let _ = write!(path, "L{right} {floor}V{top}Z");
    Some(path)
}

/// The same as a picture that fills the tank at the edge of a screen.
pub fn ground(basin: &Basin) -> Option<View> {
    let path = outside(&basin.outline(), 0.0, 100.0, 0.0, 100.0)?;
    let inner = format!("<path d='{path}'/>");
    Some(markup! {
        <svg class="ground" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true"
            inner_html=inner></svg>
    })
}

/// The basin in section with its marks, by name and level.
pub fn section(basin: &Basin, marks: &[(P, Length)], words: Words, system: System) -> View {
    let (left, right, top, floor) = (20.0, 236.0, 20.0, 168.0);
    let depth = basin.depth.get::<meter>();
    let y = |level: Length| {
        let down = (level.get::<meter>() / depth).clamp(0.0, 1.0);
        top + down * (floor - top)
    };
    let mut svg = String::new();
    let _ = write!(
        svg,
        "<path class='pool' d='M{left} {top}H{right}V{floor}H{left}Z'/>"
    );
    if let Some(path) = outside(&basin.outline(), left, right, top, floor) {
        let _ = write!(svg, "<path class='ground' d='{path}'/>");
    }
    let _ = write!(
        svg,
        "<path class='axis' d='M{left} {top}V{floor}H{right}V{top}'/>"
    );
    let mut title = Vec::new();
    let mut free: f64 = 0.0;
    for (name, level) in marks {
        let (at, name) = (y(*level), words.phrase(*name));
        let said = show(Value::level(*level), system).to_string();
        // Names of marks that lie close stand under each other.
        free = (at + 4.0).max(free);
        let _ = write!(
            svg,
            "<path class='limit' d='M{left} {at:.1}H{right}'/>\
             <text x='{0}' y='{free:.1}'>{name} {said}</text>",
            right + 6.0,
        );
        free += 15.0;
        title.push(format!("{name} {said}"));
    }
    markup! {
        <svg class="fig" viewBox="0 0 340 176" role="img" aria-label=title.join(", ")
            data-test="basin-section" inner_html=svg></svg>
    }
}
