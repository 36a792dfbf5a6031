//! What comes from outside the app: the network going and coming, and a new
//! version that waits.

use leptos::prelude::*;
use web_sys::Event;

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
        on(
            "coldsump-update-waiting",
            Box::new(move || outside.update_waits.set(true)),
        );
        on(
            "coldsump-offline-ready",
            Box::new(move || outside.offline_ready.set(true)),
        );
        let root = |name: &str| {
            let root = document().document_element()?;
            root.get_attribute(name)
        };
        outside
            .offline_ready
            .set(root("data-offline").as_deref() == Some("ready"));
        outside
            .update_waits
            .set(root("data-update").as_deref() == Some("waiting"));
        outside
    }

    /// Lets the waiting version take over; the page then reloads. How is the
    /// business of `public/boot.js`.
    pub fn take_update(self) {
        if let Ok(event) = Event::new("coldsump-take-over") {
            let _ = window().dispatch_event(&event);
        }
    }
}
