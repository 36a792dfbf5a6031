//! The store's twin in memory, for tests and for seeing what a screen does
//! without a browser.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::{KeptFile, Loaded, Store, StoreError};
use crate::record::{Entry, EntryId, FileId};

/// Keeps everything in memory; can be told to fail.
#[derive(Debug, Default)]
pub struct MemoryStore {
    entries: RefCell<BTreeMap<EntryId, Entry>>,
    files: RefCell<BTreeMap<FileId, KeptFile>>,
    texts: RefCell<BTreeMap<String, String>>,
    /// When set, every write fails with this.
    pub fault: RefCell<Option<StoreError>>,
}

impl MemoryStore {
    fn writable(&self) -> Result<(), StoreError> {
        self.fault.borrow().clone().map_or(Ok(()), Err)
    }
}

impl Store for MemoryStore {
    async fn append(&self, entries: &[Entry]) -> Result<(), StoreError> {
        self.writable()?;
        for entry in entries {
            self.entries
                .borrow_mut()
                .entry(entry.id)
                .or_insert_with(|| entry.clone());
        }
        Ok(())
    }

    async fn load(&self) -> Result<Loaded, StoreError> {
        Ok(Loaded {
            entries: self.entries.borrow().values().cloned().collect(),
            unreadable: 0,
        })
    }

    async fn keep_file(&self, file: &KeptFile, entries: &[Entry]) -> Result<(), StoreError> {
        self.append(entries).await?;
        self.files.borrow_mut().insert(file.id, file.clone());
        Ok(())
    }

    async fn file(&self, id: FileId) -> Result<Option<KeptFile>, StoreError> {
        Ok(self.files.borrow().get(&id).cloned())
    }

    async fn keep_text(&self, key: &str, text: &str) -> Result<(), StoreError> {
        self.writable()?;
        self.texts
            .borrow_mut()
            .insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    async fn drop_text(&self, key: &str) -> Result<(), StoreError> {
        self.writable()?;
        self.texts.borrow_mut().remove(key);
        Ok(())
    }

    async fn texts(&self) -> Result<Vec<(String, String)>, StoreError> {
        Ok(self
            .texts
            .borrow()
            .iter()
            .map(|(k, v)| (k.clone(), v.clone()))
            .collect())
    }
}
