//! The person's settings: units, light, language.

use std::cell::Cell;

use leptos::prelude::*;

use super::ledger::Ledger;
use crate::quantity::System;
use crate::words::Words;

/// How bright the screen's design is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Light {
    /// As the phone says.
    Phone,
    /// Paper and ink.
    Day,
    /// A basement.
    Dark,
    /// Full sun.
    Glare,
}

impl Light {
    /// All of them.
    pub const ALL: [Light; 4] = [Light::Phone, Light::Day, Light::Dark, Light::Glare];

    fn name(self) -> &'static str {
        match self {
            Light::Phone => "phone",
            Light::Day => "day",
            Light::Dark => "dark",
            Light::Glare => "glare",
        }
    }
}

/// Settings shared by every screen.
#[derive(Clone, Copy)]
pub struct Prefs {
    /// US or SI.
    pub system: RwSignal<System>,
    /// Light.
    pub light: RwSignal<Light>,
    /// The speaker.
    pub words: Words,
}

const SYSTEM: &str = "setting units";
const LIGHT: &str = "setting light";

impl Prefs {
    /// The settings as kept.
    pub fn load(ledger: Ledger) -> Self {
        let system = match ledger.text(SYSTEM).as_deref() {
            Some("si") => System::Si,
            _ => System::Us,
        };
        let kept = ledger.text(LIGHT).unwrap_or_default();
        let light = Light::ALL
            .into_iter()
            .find(|l| l.name() == kept)
            .unwrap_or(Light::Phone);
        let prefs = Self {
            system: RwSignal::new(system),
            light: RwSignal::new(light),
            words: Words::default(),
        };
        prefs.apply_light();
        prefs
    }

    /// Chooses the units.
    pub fn choose_system(self, ledger: Ledger, system: System) {
        ledger.keep_text(SYSTEM, if system == System::Si { "si" } else { "us" });
        self.system.set(system);
    }

    /// Chooses the light.
    pub fn choose_light(self, ledger: Ledger, light: Light) {
        ledger.keep_text(LIGHT, light.name());
        self.light.set(light);
        self.apply_light();
    }

    fn apply_light(self) {
        if let Some(root) = document().document_element() {
            let _ = root.set_attribute("data-light", self.light.get_untracked().name());
        }
    }
}

thread_local! {
    static PREFS: Cell<Option<Prefs>> = const { Cell::new(None) };
}

/// Makes these the settings of the app.
pub fn keep_for_all(prefs: Prefs) {
    PREFS.set(Some(prefs));
}

/// The settings of this app.
///
/// # Panics
/// Before [`keep_for_all`].
pub fn prefs() -> Prefs {
    PREFS.get().expect("the settings load before any screen")
}
