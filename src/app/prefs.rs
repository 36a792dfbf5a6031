//! The person's settings: units, light, language.

use std::cell::Cell;

use crate::app::view::prelude::*;

use super::ledger::Ledger;
use super::ports::window;
use crate::quantity::System;
use crate::words::{Tongue, Words};

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
    /// The language, for what is drawn anew when it changes.
    pub tongue: RwSignal<Tongue>,
    /// The report's language where it is not the app's.
    report: RwSignal<Option<Tongue>>,
}

const SYSTEM: &str = "setting units";
const LIGHT: &str = "setting light";
const TONGUE: &str = "setting language";
const REPORT: &str = "setting report language";

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
        let kept = |key| ledger.text(key).and_then(|tag| Tongue::of_tag(&tag));
        let tongue = kept(TONGUE).unwrap_or_else(of_browser);
        let prefs = Self {
            system: RwSignal::new(system),
            light: RwSignal::new(light),
            words: Words(tongue),
            tongue: RwSignal::new(tongue),
            report: RwSignal::new(kept(REPORT)),
        };
        prefs.apply_light();
        prefs.apply_tongue();
        prefs
    }

    /// Chooses the units.
    pub fn choose_system(self, ledger: Ledger, system: System) {
        let name = if system == System::Si { "si" } else { "us" };
        ledger.keep_text_then(SYSTEM, name, Box::new(move || self.system.set(system)));
    }

    /// Chooses the light.
    pub fn choose_light(self, ledger: Ledger, light: Light) {
        let done = move || {
            self.light.set(light);
            self.apply_light();
        };
        ledger.keep_text_then(LIGHT, light.name(), Box::new(done));
    }

    /// Chooses the language. What is drawn from now on is in it.
    pub fn choose_tongue(mut self, ledger: Ledger, tongue: Tongue) {
        self.words = Words(tongue);
        let done = move || {
            keep_for_all(self);
            self.apply_tongue();
            self.tongue.set(tongue);
        };
        ledger.keep_text_then(TONGUE, tongue.tag(), Box::new(done));
    }

    /// Who speaks in the report: the app's language unless another was chosen.
    pub fn report_words(self) -> Words {
        self.report.get().map_or(self.words, Words)
    }

    /// Chooses the report's language; the app's own means to follow it.
    pub fn choose_report(self, ledger: Ledger, tongue: Tongue) {
        let other = (tongue != self.words.0).then_some(tongue);
        let tag = other.map_or("", Tongue::tag);
        ledger.keep_text_then(REPORT, tag, Box::new(move || self.report.set(other)));
    }

    fn apply_light(self) {
        mark_root("data-light", self.light.get_untracked().name());
    }

    fn apply_tongue(self) {
        mark_root("lang", self.words.0.tag());
    }
}

/// Notes a word on the page's root.
pub fn mark_root(name: &str, value: &str) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute(name, value);
    }
}

/// The browser's language, if it is spoken here.
pub fn of_browser() -> Tongue {
    let tag = window().navigator().language();
    tag.and_then(|tag| Tongue::of_tag(&tag)).unwrap_or_default()
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
