//! Fields for quantities and for text. What is typed is kept as it is typed;
//! a refusal stands beside the field and takes nothing away.

use std::cell::RefCell;
use std::collections::BTreeSet;

use crate::app::view::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys;

use super::icon::{Draw, Icon};
use crate::app::ledger::ledger;
use crate::app::prefs::prefs;
use crate::quantity::{Bounds, Kind, Refusal, System, Typed, Unit, read};
use crate::words::Phrase as P;

/// A quantity being typed: its text, the unit a bare number takes, and what
/// the two come to.
#[derive(Clone, Copy)]
pub struct Typing {
    key: &'static str,
    /// The text as it stands.
    pub text: RwSignal<String>,
    bare: RwSignal<Unit>,
    shown: RwSignal<bool>,
    kind: Kind,
    /// The value, or why not.
    pub outcome: Memo<Result<Typed, Refusal>>,
}

impl Typing {
    /// A quantity typed under a draft key. `initial` is used when no draft is
    /// waiting; `bounds` are what the field accepts.
    pub fn new(key: String, kind: Kind, bounds: Bounds, initial: Option<(String, Unit)>) -> Self {
        let draft = ledger().text(&draft_key(&key));
        let waiting = draft.is_some();
        let usual = prefs().system.get_untracked().unit_for(kind);
        let (first, unit) = initial.unwrap_or_else(|| (String::new(), usual));
        // A draft keeps the unit its bare number was typed in.
        let (text, unit) = match draft {
            Some(draft) => match draft.split_once(UNIT_MARK) {
                Some((symbol, text)) => {
                    let typed_in = units(kind)
                        .into_iter()
                        .find(|u| symbol.starts_with(u.symbol()));
                    (text.to_owned(), typed_in.unwrap_or(unit))
                }
                None => (draft, unit),
            },
            None => (first, unit),
        };
        let text = RwSignal::new(text);
        let bare = RwSignal::new(unit);
        let outcome = Memo::new(move |_| text.with(|text| read(text, kind, bare.get(), bounds)));
        Self {
            key: lasting(key),
            text,
            bare,
            shown: RwSignal::new(waiting),
            kind,
            outcome,
        }
    }

    /// The value, when there is one.
    pub fn typed(self) -> Option<Typed> {
        self.outcome.get().ok()
    }

    /// Whether the field is empty.
    pub fn is_empty(self) -> bool {
        self.text.with(|t| t.trim().is_empty())
    }

    /// Shows what is wrong even if the field was never left.
    pub fn show_refusal(self) {
        self.shown.set(true);
    }

    /// Forgets the draft: what was typed is on disk as an entry now.
    pub fn settled(self) {
        settle_text(self.key);
    }

    fn type_in(self, text: String) {
        self.text.set(text);
        self.shown.set(false);
        self.keep_draft();
    }

    fn keep_draft(self) {
        let text = self.text.get_untracked();
        let draft = match text.is_empty() {
            true => text,
            false => format!("{}{UNIT_MARK}{text}", self.bare.get_untracked().symbol()),
        };
        ledger().keep_text(&draft_key(self.key), &draft);
    }

    /// Types for the person: what is filled in is a draft like any other.
    pub fn fill_in(self, text: String, unit: Unit) {
        self.bare.set(unit);
        self.type_in(text);
    }

    /// Forgets the draft and stands at a value known from elsewhere.
    pub fn stand_at(self, text: String, unit: Unit) {
        self.settled();
        self.bare.set(unit);
        self.text.set(text);
    }
}

/// Stands between a draft's unit and its text.
const UNIT_MARK: char = '\u{1f}';

fn draft_key(key: &str) -> String {
    format!("draft {key}")
}

/// A field for a quantity. `commit` runs when the person is done with it.
#[component]
pub fn QuantityField(
    /// What is typed.
    typing: Typing,
    /// The field's name.
    #[prop(into)]
    label: String,
    /// Where to read it, or why.
    #[prop(optional, into)]
    hint: String,
    /// Said beside the field when the value is on disk.
    #[prop(optional, into)]
    kept: Option<Signal<Option<String>>>,
    /// Whether what is said there is an assumption, and not kept.
    #[prop(optional)]
    assumed: bool,
    /// Refused for a reason that this field alone can't see.
    #[prop(optional, into)]
    also: Option<Signal<Option<String>>>,
    /// Runs when the field is left or its unit changed.
    #[prop(optional, into)]
    commit: Option<Callback<()>>,
    /// A name for tests.
    #[prop(into)]
    test: String,
) -> View {
    let id = format!("f-{test}");
    let said = format!("s-{test}");
    let name = label.clone();
    let words = prefs().words;
    let done = move || {
        typing.shown.set(true);
        if let Some(commit) = commit {
            commit.run(());
        }
    };
    let refusal = move || {
        let shown = typing.shown.get() && !typing.is_empty();
        let system = prefs().system.get();
        (shown.then(|| typing.outcome.get().err()).flatten())
            .map(|refusal| words.refusal(&refusal, typing.kind, system))
            .or_else(|| also.and_then(|also| also.get()))
    };
    let refused = Memo::new(move |_| refusal());
    let state = move || {
        if refused.get().is_some() {
            "refused"
        } else {
            "ok"
        }
    };
    let next_unit = move |_| {
        let units = units(typing.kind);
        let at = units
            .iter()
            .position(|u| *u == typing.bare.get_untracked())
            .unwrap_or(0);
        typing.bare.set(units[(at + 1) % units.len()]);
        typing.keep_draft();
        done();
    };
    // Letters and fractions need the full keyboard; plain numbers are hit
    // more surely on the number pad.
    let pad = match typing.kind {
        Kind::Level | Kind::Length => "text",
        Kind::Temperature if prefs().system.get_untracked() == System::Si => "text",
        _ => "decimal",
    };
    markup! {
        <div class="field" data-state=state>
            <label for=id.clone()>{label}</label>
            {(!hint.is_empty()).then(|| markup! { <p class="hint">{hint.clone()}</p> })}
            <div class="entry">
                <input
                    id=id.clone()
                    data-test=test.clone()
                    type="text"
                    inputmode=pad
                    autocomplete="off"
                    autocapitalize="off"
                    spellcheck="false"
                    enterkeyhint="next"
                    prop:value=move || typing.text.get()
                    aria-describedby=said.clone()
                    aria-invalid=move || refused.get().is_some().to_string()
                    on:input=move |ev| typing.type_in(event_target_value(&ev))
                    on:change=move |_| done()
                />
                <button
                    type="button"
                    class="unit"
                    hidden=move || typing.bare.get().symbol().is_empty()
                    aria-label=move || {
                        format!("{name}: {} {}", words.phrase(P::UnitIs), typing.bare.get().symbol())
                    }
                    on:click=tap(next_unit)
                >
                    {move || typing.bare.get().symbol()}
                </button>
            </div>
            <p
                id=said
                class="said"
                aria-live="polite"
                class:no=move || refused.get().is_some()
                class:yes=move || refused.get().is_none()
            >
                {move || match (refused.get(), kept.and_then(|kept| kept.get())) {
                    (Some(why), _) => {
                        Some(markup! { <Draw icon=Icon::Cross /> <span>{why}</span> })
                    }
                    (None, Some(kept)) => {
                        let icon = if assumed { Icon::Half } else { Icon::Kept };
                        Some(markup! { <Draw icon /> <span>{kept}</span> })
                    }
                    (None, None) => None,
                }}
            </p>
        </div>
    }
}

/// The units offered by the button beside a field, in turn.
fn units(kind: Kind) -> Vec<Unit> {
    let mut units = vec![System::Us.unit_for(kind), System::Si.unit_for(kind)];
    match kind {
        Kind::GaugePressure | Kind::PressureDifference => units.push(Unit::Bar),
        Kind::Flow => units.push(Unit::CubicMetrePerHour),
        Kind::Length => units.push(Unit::Inch),
        _ => {}
    }
    units.dedup();
    units
}

/// A field for text, kept as it is typed.
#[component]
pub fn TextField(
    /// Draft key.
    #[prop(into)]
    key: String,
    /// The text as it stands.
    text: RwSignal<String>,
    /// The field's name.
    #[prop(into)]
    label: String,
    /// Help under the name.
    #[prop(optional, into)]
    hint: String,
    /// More than one line.
    #[prop(optional)]
    long: bool,
    /// Why the text is refused, when it is.
    #[prop(optional, into)]
    refusal: Option<Signal<Option<String>>>,
    /// A name for tests.
    #[prop(into)]
    test: String,
) -> View {
    let key = draft_key(&key);
    if let Some(draft) = ledger().text(&key) {
        text.set(draft);
    }
    let id = format!("f-{test}");
    let said = format!("s-{test}");
    let typed = move |ev| {
        let now = event_target_value(&ev);
        ledger().keep_text(&key, &now);
        text.set(now);
    };
    let refused = move || refusal.and_then(|r| r.get());
    let state = move || if refused().is_some() { "refused" } else { "ok" };
    let input = match long {
        true => markup! {
            <textarea
                id=id.clone()
                data-test=test
                aria-describedby=said.clone()
                prop:value=move || text.get()
                on:input=typed
            ></textarea>
        },
        false => markup! {
            <input
                id=id.clone()
                data-test=test
                type="text"
                autocomplete="off"
                aria-describedby=said.clone()
                prop:value=move || text.get()
                on:input=typed
            />
        },
    };
    markup! {
        <div class="field" data-state=state>
            <label for=id.clone()>{label}</label>
            {(!hint.is_empty()).then(|| markup! { <p class="hint">{hint.clone()}</p> })}
            {input}
            <p id=said class="said no" aria-live="polite">
                {move || refused().map(|why| markup! { <Draw icon=Icon::Cross /> <span>{why}</span> })}
            </p>
        </div>
    }
}

/// The key of something kept on the phone, for as long as the page lives: what
/// was written is often settled when its screen is gone. Each is kept once.
pub fn lasting(key: String) -> &'static str {
    thread_local! {
        static KEYS: RefCell<BTreeSet<&'static str>> = const { RefCell::new(BTreeSet::new()) };
    }
    KEYS.with_borrow_mut(|keys| match keys.get(key.as_str()) {
        Some(known) => known,
        None => {
            let new: &'static str = key.leak();
            keys.insert(new);
            new
        }
    })
}

/// Forgets the draft of a [`TextField`].
pub fn settle_text(key: &str) {
    draft_text(key, "");
}

/// Keeps a draft for a [`TextField`], as if it had been typed.
pub fn draft_text(key: &str, text: &str) {
    ledger().keep_text(&draft_key(key), text);
}

/// The draft kept under a key.
pub fn drafted_text(key: &str) -> Option<String> {
    ledger().text(&draft_key(key))
}

/// Puts the cursor into the first input a selector finds, and so on screen.
pub fn to_field(selector: &str) {
    focus(selector, false);
}

/// Gives a heading the focus, so that keys and a screen reader go on from there.
pub fn to_heading(selector: &str) {
    focus(selector, true);
}

fn focus(selector: &str, reachable: bool) {
    let found = document().query_selector(selector).ok().flatten();
    if let Some(found) = found.and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok()) {
        if reachable {
            found.set_tab_index(-1);
        }
        let _ = found.focus();
    }
}
