//! What can wait for the paint: a tap is answered by what the thumb is at, and the
//! rest of the screen comes a frame later.

use leptos::prelude::request_animation_frame;

use super::graph::RwSignal;
use super::{View, live};

/// Runs when what changed just now has been painted.
pub fn after_paint(does: impl FnOnce() + 'static) {
    after(Box::new(does));
}

fn after(does: Box<dyn FnOnce()>) {
    // The first frame paints it, the second begins when it has.
    request_animation_frame(move || request_animation_frame(does));
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
