//! Keeping the screen on during a test, where the phone allows it. The phone
//! takes the lock back whenever the page is hidden, so it is asked again each
//! time the page shows.

use crate::app::view::prelude::*;
use js_sys::{Function, Promise, Reflect};
use leptos::prelude::window_event_listener_untyped;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use crate::app::ports::window;

/// Keeps the screen on until the calling screen is left.
pub fn keep_screen_on() {
    let held = StoredValue::new(None::<JsValue>);
    let ask = move || {
        spawn_local(async move {
            if let Some(lock) = request().await {
                let _ = held.try_update_value(|held| *held = Some(lock));
            }
        });
    };
    ask();
    let shown = window_event_listener_untyped("focus", move |_| ask());
    on_cleanup(move || {
        shown.remove();
        let lock = held.try_update_value(Option::take).flatten();
        let release = lock
            .as_ref()
            .and_then(|l| Reflect::get(l, &"release".into()).ok());
        if let (Some(lock), Some(Ok(release))) = (lock, release.map(|r| r.dyn_into::<Function>())) {
            let _ = release.call0(&lock);
        }
    });
}

async fn request() -> Option<JsValue> {
    let lock = Reflect::get(&window().navigator(), &"wakeLock".into()).ok()?;
    let request: Function = Reflect::get(&lock, &"request".into())
        .ok()?
        .dyn_into()
        .ok()?;
    let promise: Promise = request
        .call1(&lock, &"screen".into())
        .ok()?
        .dyn_into()
        .ok()?;
    JsFuture::from(promise).await.ok()
}
