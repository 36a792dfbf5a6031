//! Taking an entry back.

use crate::app::ledger::ledger;
use crate::app::prefs::prefs;
use crate::app::view::prelude::*;
use crate::record::{About, EntryId};
use crate::words::Phrase as P;

/// The button that takes an entry back.
pub fn take_back(about: About, entry: EntryId) -> View {
    let label = prefs().words.phrase(P::TakeBack);
    markup! {
        <button
            type="button"
            class="plain"
            on:click=tap(move |_| ledger().withdraw(about, entry))
        >
            {label}
        </button>
    }
}
