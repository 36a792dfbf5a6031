//! The lock's screen: before it is opened nothing of the records is read.

use std::rc::Rc;

use leptos::task::spawn_local;

use super::ledger::Ledger;
use super::parts::fault::fault_said;
use super::parts::field::to_field;
use super::parts::secret::{Secret, rewriting};
use super::prefs::{LIGHT, TONGUE, mark_root, of_browser};
use super::{App, NoStore, read_on};
use crate::app::view::prelude::*;
use crate::store::lock::LockState;
use crate::store::{IndexedStore, StoreError};
use crate::words::{Phrase as P, Tongue, Words};

type Opened = RwSignal<Option<Result<Ledger, StoreError>>>;

/// What the lock's screen shows of a store that is still closed.
pub struct Closed {
    store: Rc<IndexedStore>,
    words: Words,
    records: u32,
}

impl Closed {
    /// Reads what is not sealed: language, light, and how many records there are.
    pub async fn of(store: Rc<IndexedStore>) -> Self {
        let tongue = store.setting(TONGUE).await;
        let tongue = tongue.and_then(|tag| Tongue::of_tag(&tag));
        let words = Words(tongue.unwrap_or_else(of_browser));
        mark_root("lang", words.0.tag());
        if let Some(light) = store.setting(LIGHT).await {
            mark_root("data-light", &light);
        }
        let records = store.count().await;
        Self {
            store,
            words,
            records,
        }
    }
}

/// The lock's screen, and the app in its place once it is open.
pub fn gate(closed: Closed) -> View {
    let closed = Rc::new(closed);
    let opened: Opened = RwSignal::new(None);
    live(move || match opened.get() {
        None => unlock(closed.clone(), opened),
        Some(Ok(ledger)) => markup! { <App ledger /> },
        Some(Err(fault)) => markup! { <NoStore fault=fault.clone() /> },
    })
}

fn unlock(closed: Rc<Closed>, opened: Opened) -> View {
    let words = closed.words;
    let text = RwSignal::new(String::new());
    let shown = RwSignal::new(false);
    let busy = RwSignal::new(false);
    let done = RwSignal::new(None::<(bool, u32, u32)>);
    let refused = RwSignal::new(None::<String>);
    let store = closed.store.clone();
    let go = move |ev: leptos::web_sys::Event| {
        ev.prevent_default();
        if busy.get_untracked() {
            return;
        }
        busy.set(true);
        refused.set(None);
        let store = store.clone();
        spawn_local(async move {
            let passphrase = text.get_untracked();
            let why = match store.unlock(&passphrase).await {
                Ok(true) => None,
                Ok(false) => Some(words.phrase(P::PassphraseWrong).to_owned()),
                Err(why) => Some(fault_said(words, &why)),
            };
            if why.is_some() {
                refused.set(why);
                busy.set(false);
                request_animation_frame(|| to_field("#f-passphrase"));
                return;
            }
            if store.unfinished() {
                let opens = store.lock().is_some_and(|l| l.state == LockState::Opening);
                // What stops here goes on the next time: sealed and clear
                // records are read alike.
                let _ = store
                    .rewrite(move |now, all| done.set(Some((opens, now, all))))
                    .await;
            }
            let ledger = Ledger::open(store, || {}).await;
            if let Ok(ledger) = &ledger {
                read_on(*ledger);
            }
            opened.set(Some(ledger));
        });
    };
    document().set_title(&format!("{} · Coldsump", words.phrase(P::LockedTitle)));
    request_animation_frame(|| to_field("#f-passphrase"));
    markup! {
        <div class="screen" data-test="screen-locked">
            <header>
                <h1>{words.phrase(P::LockedTitle)}</h1>
                <p class="sub">{words.phrase(P::LockedSub)}</p>
            </header>
            <main>
                <div class="number">
                    <span class="label">{words.phrase(P::LockedRecords)}</span>
                    <span class="value hero">{closed.records.to_string()}</span>
                </div>
                <form id="unlock" on:submit=go>
                    <Secret words text label=P::Passphrase shown fresh=false
                        refusal=Signal::derive(move || refused.get()) test="passphrase" />
                </form>
                {move || done.get().map(|(opens, now, all)| rewriting(words, opens, now, all))}
                <p class="sub small">{words.phrase(P::LockedForgot)}</p>
            </main>
            <div class="act">
                <button class="primary" type="submit" form="unlock" data-test="unlock"
                    disabled=move || busy.get()>
                    {move || words.phrase(if busy.get() { P::Unlocking } else { P::Unlock })}
                </button>
            </div>
        </div>
    }
}
