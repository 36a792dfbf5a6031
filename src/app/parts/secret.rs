//! A field for a passphrase. Nothing typed in it is kept anywhere.

use crate::app::view::prelude::*;

use super::icon::{Draw, Icon};
use crate::app::ledger::ledger;
use crate::app::prefs::prefs;
use crate::words::{Phrase as P, Words};

/// The field; `shown` makes its letters readable, in all fields that share it.
#[component]
pub fn Secret(
    /// Who speaks: the lock's screen comes before the settings are read.
    words: Words,
    /// What is typed.
    text: RwSignal<String>,
    /// The field's name.
    label: P,
    /// Help under the name.
    #[prop(optional_no_strip)]
    hint: Option<P>,
    /// Whether its letters are shown.
    shown: RwSignal<bool>,
    /// Why it is refused, when it is.
    refusal: Signal<Option<String>>,
    /// Whether it is a new one: a password keeper asks that.
    fresh: bool,
    /// A name for tests.
    test: &'static str,
) -> View {
    let id = format!("f-{test}");
    let said = format!("s-{test}");
    let keeper = if fresh {
        "new-password"
    } else {
        "current-password"
    };
    markup! {
        <div class="field" data-state=move || if refusal.get().is_some() { "refused" } else { "ok" }>
            <label for=id.clone()>{words.phrase(label)}</label>
            {hint.map(|hint| markup! { <p class="hint">{words.phrase(hint)}</p> })}
            <div class="entry">
                <input
                    id=id
                    data-test=test
                    type=move || if shown.get() { "text" } else { "password" }
                    autocomplete=keeper
                    autocapitalize="off"
                    spellcheck="false"
                    enterkeyhint="go"
                    aria-describedby=said.clone()
                    aria-invalid=move || refusal.get().is_some().to_string()
                    prop:value=move || text.get()
                    on:input=move |ev| text.set(event_target_value(&ev))
                />
                <button
                    type="button"
                    class="unit"
                    data-test=format!("show-{test}")
                    aria-pressed=move || shown.get().to_string()
                    on:click=tap(move |_| shown.update(|shown| *shown = !*shown))
                >
                    {move || words.phrase(if shown.get() { P::HideText } else { P::ShowText })}
                </button>
            </div>
            <p id=said class="said no" aria-live="polite">
                {move || {
                    refusal.get().map(|why| markup! { <Draw icon=Icon::Cross /> <span>{why}</span> })
                }}
            </p>
        </div>
    }
}

/// How far the records are sealed or opened.
pub fn rewriting(words: Words, opens: bool, done: u32, all: u32) -> View {
    markup! {
        <div class="number" data-test="lock-progress">
            <span class="label" role="status">
                {words.phrase(if opens { P::LockOpening } else { P::LockSealing })}
            </span>
            <span class="value hero">
                {done.to_string()}<span class="u">{format!("/ {all}")}</span>
            </span>
        </div>
    }
}

/// The button that locks at once.
pub fn lock_now(class: &'static str) -> View {
    markup! {
        <button type="button" class=class data-test="lock-now" disabled=move || ledger().waits() on:click=tap(move |_| ledger().lock_now())>
            {prefs().words.phrase(P::LockNow)}
        </button>
    }
}
