//! The part of the settings that is about paper and keeping: who does the
//! visits, and backups.

use js_sys::{Array, Reflect};
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{Event, Response};
use wasm_bindgen_futures::JsFuture;

use crate::app::view::prelude::*;

use crate::app::card::{KEYS, PRICE, price};
use crate::app::ledger::{LAST_BACKUP, Untaken, ledger};
use crate::app::parts::fault::{fault_said, promise};
use crate::app::parts::field::TextField;
use crate::app::prefs::prefs;
use crate::quantity::System;
use crate::store::{has_lock, lock_wait};
use crate::words::Phrase as P;

/// Who does the visits.
#[component]
pub fn CardForm() -> View {
    let words = prefs().words;
    let names = [P::CardName, P::CardFirm, P::CardLicence, P::CardPhone];
    let tests = ["card-name", "card-firm", "card-licence", "card-phone"];
    let fields = KEYS.into_iter().zip(names).zip(tests);
    let money = RwSignal::new(String::new());
    let refusal = Signal::derive(move || {
        let typed = money.get();
        let bad = !typed.trim().is_empty() && price(&typed).is_none();
        bad.then(|| words.phrase(P::PriceBad).to_owned())
    });
    let per = match prefs().system.get_untracked() {
        System::Us => P::CardPrice,
        System::Si => P::CardPriceSi,
    };
    markup! {
        <section>
            <h2>{words.phrase(P::CardTitle)}</h2>
            <p class="sub small">{words.phrase(P::CardSub)}</p>
            <div class="fields">
                {fields
                    .map(|((key, name), test)| {
                        let text = RwSignal::new(String::new());
                        let label = words.phrase(name);
                        markup! { <TextField key text label test /> }
                    })
                    .collect_view()}
                <TextField
                    key=PRICE
                    text=money
                    label=words.phrase(per)
                    hint=words.phrase(P::CardPriceHint)
                    refusal
                    test="card-price"
                />
            </div>
        </section>
    }
}

/// What a chosen file says as JSON; its text never enters the program.
async fn document_of(file: wasm_bindgen::JsValue) -> Result<wasm_bindgen::JsValue, Untaken> {
    let not_one = |_| Untaken::NotOne;
    let file: leptos::web_sys::Blob = file.dyn_into().map_err(not_one)?;
    if file.size() > crate::store::backup::MOST_BYTES {
        return Err(Untaken::TooLarge);
    }
    let answer = Response::new_with_opt_blob(Some(&file)).and_then(|answer| answer.json());
    let json = JsFuture::from(answer.map_err(not_one)?).await;
    let json = json.map_err(not_one)?;
    // A sealed one waits for its passphrase.
    let lock = Reflect::get(&json, &"lock".into()).unwrap_or_default();
    let host = document().get_element_by_id("open-backup");
    match host.filter(|_| lock.is_string()) {
        Some(host) => {
            let opened = lock_wait("openBackup", &Array::of2(&json, &host)).await;
            opened.map_err(Untaken::Store)
        }
        None => Ok(json),
    }
}

/// Saving everything to a file, and taking one in.
#[component]
pub fn Backup() -> View {
    let words = prefs().words;
    let ledger = ledger();
    let last = RwSignal::new(ledger.text(LAST_BACKUP));
    let said = RwSignal::new(None::<String>);
    let busy = RwSignal::new(false);
    let do_save = move |_| {
        if busy.get_untracked() {
            return;
        }
        busy.set(true);
        spawn_local(async move {
            let saved = ledger.save_backup().await;
            busy.set(false);
            match saved {
                Ok(when) => last.set(when.or(last.get_untracked())),
                Err(why) => said.set(Some(fault_said(words, &why))),
            }
        });
    };
    let chosen = move |event: Event| {
        let Some(input) = event.target() else { return };
        let files = Reflect::get(&input, &"files".into()).unwrap_or_default();
        let Ok(file) = Reflect::get(&files, &"0".into()) else {
            return;
        };
        if !file.is_object() {
            return;
        }
        said.set(Some(words.phrase(P::TakingBackup).to_owned()));
        spawn_local(async move {
            let taken = match document_of(file).await {
                Ok(document) => ledger.take_in(document).await,
                Err(why) => Err(why),
            };
            let _ = Reflect::set(&input, &"value".into(), &"".into());
            said.set(Some(match taken {
                Ok(t) => words.backup_taken([t.new, t.known, t.files, t.refused, t.unreadable]),
                Err(Untaken::TooLarge) => words.phrase(P::BackupTooLarge).to_owned(),
                Err(Untaken::NotOne) => words.phrase(P::NotBackup).to_owned(),
                Err(Untaken::Store(why)) => fault_said(words, &why),
            }));
        });
    };
    markup! {
        <section>
            <h2>{words.phrase(P::Backup)}</h2>
            <p class="sub small">{words.phrase(P::BackupSub)}</p>
            <p data-test="backup-last">
                {move || match last.get() {
                    Some(when) => words.backup_saved(&when),
                    None => words.phrase(P::BackupNone).to_owned(),
                }}
            </p>
            {has_lock().then(|| {
                markup! { <p class="sub small" data-test="backup-clear">{words.phrase(P::BackupClear)}</p> }
            })}
            <p class="sub small" data-test="storage-kept">{words.phrase(promise())}</p>
            <div class="pair">
                <button data-test="save-backup" on:click=tap(do_save)>
                    {move || words.phrase(if busy.get() { P::SavingBackup } else { P::SaveBackup })}
                </button>
                <label class="button" for="f-backup">{words.phrase(P::TakeBackup)}</label>
                <input
                    id="f-backup"
                    class="hidden-visually"
                    type="file"
                    accept="application/json,.json"
                    data-test="backup-file"
                    on:change=chosen
                />
            </div>
            <div id="open-backup"></div>
            <p aria-live="polite" data-test="backup-said">{move || said.get()}</p>
        </section>
    }
}
