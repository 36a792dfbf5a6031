//! What comes from outside the app: the network going and coming, and a new
//! version that waits.

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::ports::{online, window};

/// Shared signals from outside.
#[derive(Clone, Copy)]
pub struct Outside {
    /// Whether the browser believes there is a network.
    pub online: RwSignal<bool>,
    /// Set when the network came back, or was there at the start, until the
    /// person has looked at the outbox.
    pub signal_is_back: RwSignal<bool>,
    /// A new version is installed and waits.
    pub update_waits: RwSignal<bool>,
    /// Everything needed offline is on the phone.
    pub offline_ready: RwSignal<bool>,
}

impl Outside {
    /// Begins to listen.
    pub fn listen() -> Self {
        let outside = Self {
            online: RwSignal::new(online()),
            signal_is_back: RwSignal::new(online()),
            update_waits: RwSignal::new(false),
            offline_ready: RwSignal::new(false),
        };
        let on = |name: &'static str, act: Box<dyn Fn()>| {
            // These live as long as the page.
            let _ = window_event_listener_untyped(name, move |_| act());
        };
        on(
            "online",
            Box::new(move || {
                outside.online.set(true);
                outside.signal_is_back.set(true);
            }),
        );
        on(
            "offline",
            Box::new(move || {
                outside.online.set(false);
                outside.signal_is_back.set(false);
            }),
        );
        on("coldsump-update-waiting", Box::new(move || outside.update_waits.set(true)));
        on("coldsump-offline-ready", Box::new(move || outside.offline_ready.set(true)));
        spawn_local(async move {
            if let Some(registration) = registration().await {
                outside.update_waits.set(registration.waiting().is_some());
                outside.offline_ready.set(registration.active().is_some());
            }
        });
        outside
    }

    /// Lets the waiting version take over, then loads it. Some engines don't
    /// tell when the new worker has control, so the page reloads after two
    /// seconds at the latest.
    pub fn take_update(self) {
        spawn_local(async move {
            let Some(waiting) = registration().await.and_then(|r| r.waiting()) else { return };
            let order = js_sys::Object::new();
            let _ = js_sys::Reflect::set(&order, &"type".into(), &"take-over".into());
            let _ = window_event_listener_untyped("coldsump-controller-changed", |_| reload());
            let _ = waiting.post_message(&order);
            gloo_timers::future::TimeoutFuture::new(2_000).await;
            reload();
        });
    }
}

fn reload() {
    let _ = window().location().reload();
}

async fn registration() -> Option<web_sys::ServiceWorkerRegistration> {
    let container =
        js_sys::Reflect::get(&window().navigator(), &JsValue::from_str("serviceWorker")).ok()?;
    let container = container.dyn_into::<web_sys::ServiceWorkerContainer>().ok()?;
    let found = JsFuture::from(container.get_registration()).await.ok()?;
    found.dyn_into().ok()
}
