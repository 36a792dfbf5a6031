//! What can wait for the paint: a tap is answered by what the thumb is at, and the
//! rest of the screen comes a frame later.

use gloo_timers::callback::Timeout;
use leptos::prelude::request_animation_frame;

use super::graph::RwSignal;
use super::{View, live};

/// Between a paint and what waits for it. Judgement, no source.
const BREATH_MS: u32 = 10;

/// Runs when what changed just now has been painted.
pub fn after_paint(does: impl FnOnce() + 'static) {
    after(Box::new(does));
}

fn after(does: Box<dyn FnOnce()>) {
    // The frame paints it. What comes then is no part of the next frame, which would not
    // let a finger or a timer in before it: it waits its turn behind them.
    request_animation_frame(move || drop(Timeout::new(BREATH_MS, does).forget()));
}

/// A part that is drawn when what stands above it has been painted.
pub fn soon(part: View) -> View {
    let mut part = Some(part);
    let painted = RwSignal::new(false);
    after_paint(move || painted.set(true));
    live(move || match painted.get() {
        true => part.take().unwrap_or_default(),
        false => View::default(),
    })
}
