//! Knowing when the phone did not watch a running test: a lock, a reload, a
//! dead battery. What it finds is written as an entry.

use std::cell::{Cell, RefCell};

use gloo_timers::callback::Interval;
use leptos::wasm_bindgen::JsCast;
use leptos::wasm_bindgen::closure::Closure;

use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::view::prelude::*;
use crate::quantity::decimal;
use crate::record::{Body, Moment, TestId};

/// Ticks this far apart by the wall, in seconds, are a gap.
const GAP_S: f64 = 5.0;
/// The clocks may drift apart this far between ticks, in seconds.
const DRIFT_S: f64 = 2.0;
/// Seconds between notes on disk of being there.
const NOTED_S: f64 = 10.0;

thread_local! {
    /// Whether the page was out of sight since it was asked last.
    static HIDDEN: Cell<bool> = const { Cell::new(false) };
    /// The moment this page watched a test last.
    static SEEN: RefCell<Option<Moment>> = const { RefCell::new(None) };
    static LISTENS: Cell<bool> = const { Cell::new(false) };
}

fn hidden() -> bool {
    document().hidden()
}

fn key(test: TestId) -> String {
    format!("alive {test}")
}

fn written(m: &Moment) -> String {
    format!("{} {} {} {}", m.ms, m.offset_min, m.run, m.run_ms)
}

fn read(text: &str) -> Option<Moment> {
    let mut parts = text.split(' ');
    Some(Moment {
        ms: parts.next()?.parse().ok()?,
        offset_min: parts.next()?.parse().ok()?,
        run: parts.next()?.parse().ok()?,
        run_ms: decimal(parts.next()?)?,
    })
}

/// Watches until the calling screen is left; `now` ticks four times a second.
pub fn watch(job: Job, test: TestId, now: RwSignal<Moment>) {
    if !LISTENS.replace(true) {
        let saw = Closure::<dyn Fn()>::new(|| HIDDEN.with(|h| h.set(h.get() || hidden())));
        let saw = saw.into_js_value();
        // Fails only for a listener that is none.
        let _ =
            document().add_event_listener_with_callback("visibilitychange", saw.unchecked_ref());
    }
    let noted = ledger().text(&key(test)).and_then(|t| read(&t));
    let last = SEEN.with_borrow(|s| *s).or(noted);
    if let Some(last) = last {
        look(job, test, &last, &ledger().now());
    }
    let noted_ms = Cell::new(0);
    let tick = StoredValue::new(Interval::new(250, move || {
        let at = ledger().now();
        if hidden() {
            return;
        }
        let before = SEEN.with_borrow(|s| *s);
        if let Some(before) = before {
            look(job, test, &before, &at);
        }
        SEEN.with_borrow_mut(|s| *s = Some(at));
        now.set(at);
        let since = (at.ms - noted_ms.get()) as f64 / 1000.0;
        if since.abs() >= NOTED_S {
            noted_ms.set(at.ms);
            ledger().keep_text(&key(test), &written(&at));
        }
    }));
    on_cleanup(move || tick.dispose());
}

/// Writes down a gap between two moments, if there is one.
fn look(job: Job, test: TestId, last: &Moment, now: &Moment) {
    let slept = HIDDEN.with(Cell::get);
    let gap = match now.clock_jump_since(last) {
        None => true,
        Some(jump) => jump.abs() > DRIFT_S || (slept && now.seconds_since(last) >= GAP_S),
    };
    HIDDEN.with(|h| h.set(false));
    if gap {
        job.write(Body::TestResumed {
            test,
            last: *last,
            slept,
        });
    }
}
