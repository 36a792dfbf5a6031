//! Keeping the screen on during a test, where the phone allows it. The phone
//! takes the lock back whenever the page is hidden, so it is asked again each
//! time the page shows.

use crate::app::view::prelude::*;
use js_sys::Array;
use leptos::prelude::window_event_listener_untyped;
use leptos::task::spawn_local;
use wasm_bindgen::JsValue;

use crate::app::ports::{call, call_wait, get, window};

/// Keeps the screen on until the calling screen is left.
pub fn keep_screen_on() {
    let held = StoredValue::new(None::<JsValue>);
    let ask = move || {
        spawn_local(async move {
            let mut lock = request().await;
            if lock.is_some() {
                // The one before goes, or this one where the screen was left meanwhile.
                let _ = held.try_update_value(|held| std::mem::swap(held, &mut lock));
                let_go(lock);
            }
        });
    };
    ask();
    let shown = window_event_listener_untyped("focus", move |_| ask());
    on_cleanup(move || {
        shown.remove();
        let_go(held.try_update_value(Option::take).flatten());
    });
}

fn let_go(lock: Option<JsValue>) {
    if let Some(lock) = lock {
        call(&lock, "release", &Array::new());
    }
}

async fn request() -> Option<JsValue> {
    let lock = get(&window().navigator(), "wakeLock")?;
    let screen = Array::of1(&"screen".into());
    call_wait(&lock, "request", &screen).await?.ok()
}
