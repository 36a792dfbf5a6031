//! The lock: on, off, another passphrase, and what it is worth.

use leptos::task::spawn_local;

use crate::app::view::prelude::*;

use crate::app::ledger::ledger;
use crate::app::parts::fault::fault_said;
use crate::app::parts::field::to_field;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::secret::{Secret, lock_now, rewriting};
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::Route;
use crate::store::can_lock;
use crate::store::lock::long_enough;
use crate::words::Phrase as P;

/// What is being done.
#[derive(Clone, Copy, PartialEq)]
enum Deed {
    /// A lock is put on.
    On,
    /// Another passphrase.
    Change,
    /// The lock is taken off.
    Off,
}

/// Says in plain words what the lock is worth.
fn worth() -> View {
    let words = prefs().words;
    let list = |items: &[P]| {
        let item = |p: &P| markup! { <li>{words.phrase(*p)}</li> };
        items.iter().map(item).collect_view()
    };
    markup! {
        <section>
            <h2>{words.phrase(P::LockGuards)}</h2>
            <ul class="bullets">{list(&[P::LockGuards1])}</ul>
        </section>
        <section>
            <h2>{words.phrase(P::LockNot)}</h2>
            <ul class="bullets">
                {list(&[P::LockNot1, P::LockNot2, P::LockNot3, P::LockNot4])}
            </ul>
        </section>
        <div class="notice caution" data-test="lock-forgot">
            <Draw icon=Icon::Warning />
            <div><p>{words.phrase(P::LockForgot)}</p></div>
        </div>
    }
}

/// The screen.
#[component]
pub fn LockScreen() -> View {
    let words = prefs().words;
    let ledger = ledger();
    let locked = RwSignal::new(ledger.has_lock());
    let unfinished = RwSignal::new(ledger.store().unfinished());
    let (first, second) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let (shown, tried) = (RwSignal::new(false), RwSignal::new(false));
    let changing = RwSignal::new(false);
    let busy = RwSignal::new(false);
    let done = RwSignal::new(None::<(bool, u32, u32)>);
    let said = RwSignal::new(None::<String>);
    let short = Signal::derive(move || {
        let short = tried.get() && first.with(|text| !long_enough(text));
        short.then(|| words.phrase(P::PassphraseShort).to_owned())
    });
    let other = Signal::derive(move || {
        let other = tried.get() && first.get() != second.get();
        other.then(|| words.phrase(P::PassphraseOther).to_owned())
    });
    let act = move |deed: Deed| {
        if busy.get_untracked() {
            return;
        }
        if matches!(deed, Deed::On | Deed::Change) {
            tried.set(true);
            if untrack(|| short.get().is_some() || other.get().is_some()) {
                request_animation_frame(|| to_field(".field[data-state=refused] input"));
                return;
            }
        }
        busy.set(true);
        said.set(None);
        spawn_local(async move {
            let store = ledger.store();
            let passphrase = first.get_untracked();
            let worked = async {
                match deed {
                    Deed::On | Deed::Change => store.lock_by(&passphrase).await?,
                    Deed::Off => store.take_lock_off().await?,
                }
                match deed {
                    Deed::Change => Ok(0),
                    _ => {
                        let told = move |now, all| done.set(Some((deed == Deed::Off, now, all)));
                        store.rewrite(told).await
                    }
                }
            };
            let worked = worked.await;
            done.set(None);
            busy.set(false);
            locked.set(ledger.has_lock());
            unfinished.set(store.unfinished());
            said.set(Some(match worked {
                Err(_) if store.unfinished() => words.phrase(P::LockHalf).to_owned(),
                Err(why) => fault_said(words, &why),
                Ok(0) => {
                    first.set(String::new());
                    second.set(String::new());
                    tried.set(false);
                    changing.set(false);
                    let did = match deed {
                        Deed::Change => P::LockChanged,
                        Deed::Off => P::LockIsOff,
                        Deed::On => P::LockIsOn,
                    };
                    words.phrase(did).to_owned()
                }
                Ok(n) => words.lock_stays(n),
            }));
        });
    };
    let deed = move || if locked.get() { Deed::Change } else { Deed::On };
    let asks = move || can_lock() && (!locked.get() || changing.get());
    let fields = move || {
        asks().then(|| {
            let go = move |ev: leptos::web_sys::Event| {
                ev.prevent_default();
                act(untrack(deed));
            };
            markup! {
                <form id="lock" class="fields" on:submit=go>
                    <Secret words text=first label=P::Passphrase hint=Some(P::PassphraseHint)
                        shown refusal=short fresh=true test="passphrase" />
                    <Secret words text=second label=P::PassphraseAgain
                        shown refusal=other fresh=true test="passphrase-again" />
                </form>
            }
        })
    };
    let title = words.phrase(P::Lock);
    let sub = move || {
        words.phrase(if locked.get() {
            P::LockOnSub
        } else {
            P::LockOffSub
        })
    };
    let sub = markup! { <span data-test="lock-state">{sub}</span> };
    let back = (Route::Settings, words.phrase(P::Settings).to_owned());
    let foot = move || match (can_lock(), asks()) {
        (false, ..) => View::default(),
        (_, true) => markup! {
            <button class="primary" type="submit" form="lock" data-test="lock-set"
                disabled=move || busy.get()>
                {move || words.phrase(if locked.get() { P::LockChange } else { P::LockTurnOn })}
            </button>
        },
        _ => lock_now("primary"),
    };
    let more = move || {
        (locked.get() && !asks() && !unfinished.get()).then(|| {
            markup! {
                <div class="pair">
                    <button data-test="lock-change" disabled=move || busy.get()
                        on:click=tap(move |_| changing.set(true))>
                        {words.phrase(P::LockChange)}
                    </button>
                    <button data-test="lock-off" disabled=move || busy.get()
                        on:click=tap(move |_| act(Deed::Off))>
                        {words.phrase(P::LockTurnOff)}
                    </button>
                </div>
            }
        })
    };
    let insecure = (!can_lock()).then(|| {
        markup! { <p data-test="lock-needs-https">{words.phrase(P::LockNeedsHttps)}</p> }
    });
    markup! {
        <Screen title sub name="lock" back act=live(foot)>
            {insecure}
            <p aria-live="polite" data-test="lock-said">{move || said.get()}</p>
            {move || done.get().map(|(opens, now, all)| rewriting(words, opens, now, all))}
            <div>{fields}</div>
            <div>{more}</div>
            {worth()}
        </Screen>
    }
}
