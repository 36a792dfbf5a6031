//! The lock, as the screens use it.

use std::rc::Rc;

use leptos::task::spawn_local;

use super::Ledger;
use crate::app::ports::window;
use crate::store::{IndexedStore, Store};

impl Ledger {
    /// The store itself.
    pub fn store(self) -> Rc<IndexedStore> {
        self.store.get_value()
    }

    /// Whether there is a lock.
    pub fn has_lock(self) -> bool {
        self.store().lock().is_some()
    }

    /// Whether something waits that only this page holds.
    pub fn waits(self) -> bool {
        !self.unsaved.with(Vec::is_empty)
    }

    /// Locks: the page starts anew, and with it everything it held goes. Not while
    /// something waits that only the page holds; the banner says so then.
    pub fn lock_now(self) {
        let store = self.store();
        spawn_local(async move {
            // Stands behind every write that is on its way.
            let _ = store.texts().await;
            if self.unsaved.with_untracked(Vec::is_empty) {
                let _ = window().location().reload();
            }
        });
    }
}
