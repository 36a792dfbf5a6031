//! Where entries are kept: the port, its memory twin, and the IndexedDB one.

pub mod backup;
#[cfg(target_arch = "wasm32")]
mod indexed;
mod memory;

use crate::record::{DeviceId, Entry, FileId};

#[cfg(target_arch = "wasm32")]
pub use indexed::IndexedStore;
pub use memory::MemoryStore;

/// Why keeping or fetching failed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// The phone has no room left for this app.
    Full,
    /// The browser gives this page no storage (private mode, blocked).
    Denied,
    /// Anything else, in the browser's own words.
    Failed(String),
}

/// A file kept beside the log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptFile {
    /// Its name in the log.
    pub id: FileId,
    /// File name as offered to the person.
    pub name: String,
    /// Media type.
    pub media_type: String,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

impl KeptFile {
    /// SHA-256 of its bytes, in hexadecimal.
    pub fn sha256(&self) -> String {
        crate::record::bytes::sha256(&self.bytes)
    }
}

/// What reading the whole log gave.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Loaded {
    /// Entries that this build understands.
    pub entries: Vec<Entry>,
    /// How many it does not (written by a newer build); they stay stored.
    pub unreadable: usize,
}

/// The storage port. A call that returned `Ok` has the data on disk as far as
/// the engine can tell.
#[allow(async_fn_in_trait)] // one thread, no dyn: the futures need no bounds
pub trait Store {
    /// Keeps entries, all or none. Keeping one again changes nothing.
    ///
    /// # Errors
    /// [`StoreError::Full`] when out of room, [`StoreError::Denied`] when the
    /// browser allows no storage, else [`StoreError::Failed`].
    async fn append(&self, entries: &[Entry]) -> Result<(), StoreError>;

    /// Every entry.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn load(&self) -> Result<Loaded, StoreError>;

    /// Keeps a file and the entries that speak of it, all or none.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn keep_file(&self, file: &KeptFile, entries: &[Entry]) -> Result<(), StoreError>;

    /// A kept file; `None` when there is none of that name.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn file(&self, id: FileId) -> Result<Option<KeptFile>, StoreError>;

    /// Keeps half-typed text, or a setting, under a key.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn keep_text(&self, key: &str, text: &str) -> Result<(), StoreError>;

    /// Forgets the text under a key.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn drop_text(&self, key: &str) -> Result<(), StoreError>;

    /// Every kept text with its key.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn texts(&self) -> Result<Vec<(String, String)>, StoreError>;

    /// The phone's name in the log, made from `fresh` the first time.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn device(&self, fresh: DeviceId) -> Result<DeviceId, StoreError> {
        const KEY: &str = "device";
        let known = self.texts().await?.into_iter().find(|(key, _)| key == KEY);
        if let Some(id) = known.and_then(|(_, text)| DeviceId::parse(&text)) {
            return Ok(id);
        }
        self.keep_text(KEY, &fresh.to_string()).await?;
        Ok(fresh)
    }
}
