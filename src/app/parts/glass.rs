//! A pane to draw on with a finger: gives the places the finger passed, in
//! ten-thousandths of the pane's width and height.

use crate::app::view::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{Element, Event};

use crate::record::paperwork::{Drawn, Shape, Spot};

fn number(event: &Event, name: &str) -> f64 {
    let value = js_sys::Reflect::get(event, &name.into()).ok();
    value.and_then(|v| v.as_f64()).unwrap_or(0.0)
}

fn spot(event: &Event) -> Option<Spot> {
    let pane: Element = event.current_target()?.dyn_into().ok()?;
    let part = |at: f64, of: i32| (10_000.0 * at / f64::from(of.max(1))).clamp(0.0, 10_000.0);
    Some((
        part(number(event, "offsetX"), pane.client_width()) as u16,
        part(number(event, "offsetY"), pane.client_height()) as u16,
    ))
}

/// The pane. `passed` is told each place, and whether the finger has just
/// come down; `lifted` when it goes.
#[component]
pub fn Glass(
    /// Its name.
    #[prop(into)]
    label: String,
    /// Where the finger is; true when it has just come down.
    passed: Callback<(Spot, bool)>,
    /// The finger is gone.
    lifted: Callback<()>,
    /// A name for tests.
    test: &'static str,
) -> View {
    let down = RwSignal::new(false);
    let begin = move |event: Event| {
        event.prevent_default();
        let pane = event
            .current_target()
            .and_then(|t| t.dyn_into::<Element>().ok());
        if let Some(pane) = pane {
            let _ = pane.set_pointer_capture(number(&event, "pointerId") as i32);
        }
        if let Some(spot) = spot(&event) {
            down.set(true);
            passed.run((spot, true));
        }
    };
    let go_on = move |event: Event| {
        if let Some(spot) = spot(&event).filter(|_| down.get_untracked()) {
            passed.run((spot, false));
        }
    };
    let end = move |_: Event| {
        if down.get_untracked() {
            down.set(false);
            lifted.run(());
        }
    };
    markup! {
        <div
            class="glass"
            role="img"
            aria-label=label
            data-test=test
            on:pointerdown=begin
            on:pointermove=go_on
            on:pointerup=end
            on:pointercancel=end
        ></div>
    }
}

/// SVG of strokes, in a box of 10,000 by 10,000.
pub fn strokes(all: &[Vec<Spot>]) -> String {
    let mut out = String::new();
    for stroke in all {
        out += "<polyline points=\"";
        for (x, y) in stroke {
            out += &format!("{x},{y} ");
        }
        // A dot is a line of no length with round ends.
        if let [(x, y)] = stroke[..] {
            out += &format!("{x},{y}");
        }
        out += "\"/>";
    }
    out
}

/// SVG of what is drawn on a photo of a shape (height over width), in a box
/// 10,000 wide: once in paper below, once in ink.
pub fn drawings(all: &[Drawn], shape: f64) -> String {
    let mut lines = String::new();
    for drawn in all {
        let at = |(x, y): Spot| (f64::from(x), f64::from(y) * shape);
        let (from, to) = (at(drawn.from), at(drawn.to));
        match drawn.shape {
            Shape::Arrow => {
                let (dx, dy) = (to.0 - from.0, to.1 - from.1);
                let length = dx.hypot(dy).max(1.0);
                let (dx, dy) = (600.0 * dx / length, 600.0 * dy / length);
                let side = |s: f64| (to.0 - dx + s * dy * 0.5, to.1 - dy - s * dx * 0.5);
                let (a, b) = (side(1.0), side(-1.0));
                lines += &format!(
                    "<path d=\"M{:.0} {:.0}L{:.0} {:.0}M{:.0} {:.0}L{:.0} {:.0}L{:.0} {:.0}\"/>",
                    from.0, from.1, to.0, to.1, a.0, a.1, to.0, to.1, b.0, b.1
                );
            }
            Shape::Circle => {
                lines += &format!(
                    "<ellipse cx=\"{:.0}\" cy=\"{:.0}\" rx=\"{:.0}\" ry=\"{:.0}\"/>",
                    (from.0 + to.0) / 2.0,
                    (from.1 + to.1) / 2.0,
                    ((from.0 - to.0) / 2.0).abs(),
                    ((from.1 - to.1) / 2.0).abs()
                );
            }
        }
    }
    format!("<g class=\"halo\">{lines}</g><g>{lines}</g>")
}
