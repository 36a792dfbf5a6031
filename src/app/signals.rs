//! What comes from outside the app: the network going and coming, and a new
//! version that waits.

use crate::app::view::prelude::*;
use gloo_timers::callback::{Interval, Timeout};
use leptos::prelude::window_event_listener_untyped;
use leptos::task::spawn_local;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, RequestCache, RequestInit};

use super::ledger::ledger;
use super::ports::{online, window};

/// How often to ask again while reports wait and the page is up.
const ASK_AGAIN_MS: u32 = 15_000;

/// Shared signals from outside.
#[derive(Clone, Copy)]
pub struct Outside {
    /// Whether this app's own server answers. The browser's word alone is not
    /// enough: a phone can be on a network that leads nowhere.
    pub signal: RwSignal<bool>,
    /// Set each time signal comes, until the person has gone to the outbox.
    pub signal_is_back: RwSignal<bool>,
    /// A new version is installed and waits.
    pub update_waits: RwSignal<bool>,
    /// Everything needed offline is on the phone.
    pub offline_ready: RwSignal<bool>,
    /// The phone has little room left for what is kept.
    pub room_low: RwSignal<bool>,
}

/// Acts once the whole program is in and the first screen stands. Until then there may be
/// only the part of it that draws that screen: `public/boot.js`.
pub fn when_whole(act: impl Fn() + Clone + 'static) {
    let soon = move || drop(Timeout::new(300, act.clone()).forget());
    let root = document().document_element();
    if root.is_some_and(|root| root.has_attribute("data-whole")) {
        soon();
    } else {
        let _ = window_event_listener_untyped("coldsump-whole", move |_| soon());
    }
}

impl Outside {
    /// Begins to listen.
    pub fn listen() -> Self {
        let root = |name: &str| document().document_element()?.get_attribute(name);
        let outside = Self {
            signal: RwSignal::new(false),
            signal_is_back: RwSignal::new(false),
            update_waits: RwSignal::new(root("data-update").as_deref() == Some("waiting")),
            offline_ready: RwSignal::new(root("data-offline").as_deref() == Some("ready")),
            room_low: RwSignal::new(root("data-room").is_some()),
        };
        let on = |name: &'static str, act: Box<dyn Fn()>| {
            // These live as long as the page.
            let _ = window_event_listener_untyped(name, move |_| act());
        };
        for name in ["online", "focus", "pageshow"] {
            on(name, Box::new(move || outside.ask()));
        }
        on("offline", Box::new(move || outside.found(false)));
        on(
            "coldsump-update-waiting",
            Box::new(move || outside.update_waits.set(true)),
        );
        on(
            "coldsump-offline-ready",
            Box::new(move || outside.offline_ready.set(true)),
        );
        on(
            "coldsump-room-low",
            Box::new(move || outside.room_low.set(true)),
        );
        when_whole(move || {
            Interval::new(ASK_AGAIN_MS, move || {
                let waits = ledger()
                    .summary()
                    .with_untracked(|all| all.visits().iter().any(|v| !v.outbox.is_empty()));
                if waits && !document().hidden() {
                    outside.ask();
                }
            })
            .forget();
            outside.ask();
        });
        outside
    }

    /// Asks the app's own server for a sign of life. The offline copy answers
    /// only `GET`, so a `HEAD` goes out or fails.
    pub fn ask(self) {
        if !online() {
            self.found(false);
            return;
        }
        spawn_local(async move {
            let ask = RequestInit::new();
            ask.set_method("HEAD");
            ask.set_cache(RequestCache::NoStore);
            let answer = window().fetch_with_str_and_init("./manifest.webmanifest", &ask);
            self.found(JsFuture::from(answer).await.is_ok());
        });
    }

    fn found(self, signal: bool) {
        if self.signal.get_untracked() != signal {
            self.signal.set(signal);
            self.signal_is_back.set(signal);
        }
    }

    /// Lets the waiting version take over; the page then reloads. How is the
    /// business of `public/boot.js`.
    pub fn take_update(self) {
        if let Ok(event) = Event::new("coldsump-take-over") {
            let _ = window().dispatch_event(&event);
        }
    }
}
