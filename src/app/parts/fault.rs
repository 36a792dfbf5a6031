//! What the storage says, in words.

use crate::app::view::prelude::*;

use crate::app::ledger::ledger;
use crate::app::prefs::prefs;
use crate::store::StoreError;
use crate::words::{Phrase as P, Words};

/// Why something was not kept, and what to do.
pub fn fault_said(words: Words, fault: &StoreError) -> String {
    let phrase = words.phrase(match fault {
        StoreError::Full => P::StoreFull,
        StoreError::Denied => P::StoreDenied,
        StoreError::Lost => P::StoreLost,
        StoreError::Newer => P::StoreNewer,
        StoreError::Gone => P::StoreGone,
        StoreError::Locked => P::StoreLocked,
        StoreError::Failed(text) => {
            return format!("{} ({text})", words.phrase(P::StoreFailed));
        }
    });
    phrase.to_owned()
}

/// Whether the browser has promised to keep the records, as far as it said.
pub fn promise() -> P {
    let root = document().document_element();
    let said = root.and_then(|root| root.get_attribute("data-kept"));
    match said.as_deref() {
        Some("yes") => P::KeptYes,
        Some(_) => P::KeptNo,
        None => P::KeptUnknown,
    }
}

/// The banner of what was not kept: why, saving again, a backup.
#[component]
pub fn NotSaved(fault: StoreError, waiting: usize) -> View {
    let words = prefs().words;
    let ledger = ledger();
    let why = fault_said(words, &fault);
    let save_backup = move |_| {
        leptos::task::spawn_local(async move {
            let _ = ledger.save_backup().await; // the banner that stands says what is wrong
        });
    };
    markup! {
        <div class="banner tall" data-test="not-saved">
            <span>{why}</span>
            {(waiting > 0)
                .then(|| {
                    markup! {
                        <button data-test="save-again" on:click=tap(move |_| ledger.save_again())>
                            {words.phrase(P::SaveAgain)}
                        </button>
                    }
                })}
            <button data-test="backup-now" on:click=tap(save_backup)>
                {words.phrase(P::SaveBackup)}
            </button>
        </div>
    }
}
