//! When the store fails: what was entered waits here, is said, and is saved
//! again; when the store was thrown away, what is open is kept anew.

use js_sys::Array;
use leptos::task::spawn_local;

use super::Ledger;
use crate::record::{Entry, FileId};
use crate::store::{KeptFile, Store, StoreError, file_as_row, lock_call, lock_wait, rows};

impl Ledger {
    /// What the last failed write said, and how many entries still wait.
    pub fn trouble(self) -> Option<(StoreError, usize)> {
        self.fault
            .get()
            .map(|fault| (fault, self.unsaved.with(Vec::len)))
    }

    /// Says what went wrong, and mends what can be mended here.
    pub(super) fn hurt(self, fault: StoreError) {
        let gone = fault == StoreError::Gone;
        self.fault.set(Some(fault));
        if gone {
            spawn_local(self.keep_anew());
        }
    }

    /// Entries, and perhaps a file they speak of, wait until there is room.
    pub(super) fn wait(self, entries: Vec<Entry>, file: Option<KeptFile>) {
        self.files.update_value(|files| files.extend(file));
        self.unsaved.update(|waiting| waiting.extend(entries));
        self.hand_over();
    }

    /// Lays what waits on the page, as rows: the one after a panic puts them into
    /// its backup. Sealed when there is a lock.
    fn hand_over(self) {
        let Ok(entries) = self.unsaved.with_untracked(|all| rows(all)) else {
            return; // what can't be written can't be handed over
        };
        let entries: Array = entries.into_iter().map(|(_, row)| row).collect();
        let files: Array = self
            .files
            .with_value(|all| all.iter().map(file_as_row).collect());
        let _ = lock_call("wait", &Array::of2(&entries, &files)); // as good as it goes
    }

    /// Files that wait.
    pub(super) fn waiting_file(self, id: FileId) -> Option<KeptFile> {
        self.files
            .with_value(|files| files.iter().find(|file| file.id == id).cloned())
    }

    /// Tries again to save what waits.
    pub fn save_again(self) {
        spawn_local(self.save_waiting());
    }

    async fn save_waiting(self) {
        let store = self.store.get_value();
        // Files first: an entry that stands without its file looks like a loss.
        for file in self.files.get_value() {
            if let Err(fault) = store.keep_file(&file, &[]).await {
                return self.hurt(fault);
            }
            self.files
                .update_value(|all| all.retain(|f| f.id != file.id));
        }
        let entries = self.unsaved.get_untracked();
        self.unsaved.set(Vec::new());
        let kept = self.keep(entries, true).await;
        self.hand_over();
        if kept {
            // What was to follow: a field is emptied, a screen opens.
            let mut late = Vec::new();
            self.late.update_value(|all| late.append(all));
            late.into_iter().for_each(|done| done());
        }
    }

    /// The store is empty and was not: settings, half-typed fields and the
    /// entries of what is open go into it again. What was not open is lost
    /// here, and the banner says so until the page is loaded anew.
    async fn keep_anew(self) {
        let store = self.store.get_value();
        // First: what follows is sealed for it.
        if let Err(fault) = lock_wait("anew", &Array::new()).await {
            return self.hurt(fault);
        }
        for (key, text) in self.texts.with_value(|t| t.clone().into_pairs()) {
            if let Err(fault) = store.keep_text(&key, &text).await {
                return self.hurt(fault);
            }
        }
        let device = self.pen.with_value(crate::record::Pen::device);
        let entries: Vec<Entry> = self.log.with_untracked(|log| log.held().cloned().collect());
        let kept = async {
            store.device(device).await?;
            store.append(&entries).await
        };
        match kept.await {
            Ok(changed) => {
                self.summary
                    .update(|s| changed.into_iter().for_each(|c| s.put(c)));
                self.save_waiting().await;
            }
            Err(fault) => self.hurt(fault),
        }
    }
}
