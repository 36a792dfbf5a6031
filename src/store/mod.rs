//! Where entries are kept: the port, its memory twin, and the IndexedDB one.
//!
//! Beside the entries a store keeps the summary: a line for each site and visit,
//! worked out from the entries about it in the same write. It can be thrown away
//! and is made again when it is missing or of another form.

pub mod backup;
#[cfg(target_arch = "wasm32")]
mod indexed;
mod memory;
pub mod seal;

use crate::record::{
    About, Changed, DeviceId, Entry, EntryId, FileId, LINE_FORM, Line, Table, VisitId,
};

#[cfg(target_arch = "wasm32")]
pub use indexed::{
    IndexedStore, file_as_row, file_in, has_lock, lock_call, lock_wait, rows, to_js,
};
pub use memory::MemoryStore;

/// Why keeping or fetching failed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// The phone has no room left for this app.
    Full,
    /// The browser gives this page no storage (private mode, blocked).
    Denied,
    /// The connection to the storage was lost and did not come back.
    Lost,
    /// A newer build, in another tab, has taken the storage over.
    Newer,
    /// The browser has thrown away what was kept. What is kept from now on
    /// stands alone.
    Gone,
    /// A lock is on whose passphrase was not given here, or it was put on or
    /// taken off in another tab.
    Locked,
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

/// Under this key a store keeps the form of its summary.
pub const SUMMARY: &str = "summary";

/// Under this key a store keeps its lock, when it has one (`docs/lock.md`).
pub const LOCK: &str = "lock";

/// Under this key a store keeps the phone's name in the log.
pub const DEVICE: &str = "device";

/// What reading entries gave.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Loaded {
    /// Entries that this build understands.
    pub entries: Vec<Entry>,
    /// How many it does not (written by a newer build); they stay stored.
    pub unreadable: usize,
    /// The key of the last row read, to go on from; `None` when none was.
    pub last: Option<String>,
}

/// The storage port. A call that returned `Ok` has the data on disk as far as
/// the engine can tell.
#[allow(async_fn_in_trait)] // one thread, no dyn: the futures need no bounds
pub trait Store {
    /// Keeps entries, all or none, and answers what that did to the summary.
    /// Keeping one again changes nothing.
    ///
    /// # Errors
    /// [`StoreError`] says which there are.
    async fn append(&self, entries: &[Entry]) -> Result<Vec<Changed>, StoreError>;

    /// Entries in the order of their ids, after one of them or from the first
    /// on: at most `count` rows, so that no phone must hold all at once.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn entries(&self, after: Option<&str>, count: u32) -> Result<Loaded, StoreError>;

    /// Every entry about one thing.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn about(&self, about: About) -> Result<Loaded, StoreError>;

    /// The id of the newest entry.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn newest(&self) -> Result<Option<EntryId>, StoreError>;

    /// The line of every site.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn site_lines(&self) -> Result<Vec<Line>, StoreError>;

    /// Lines of visits, newest first: those older than one of them, or from
    /// the newest on, at most `count`.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn visit_lines(
        &self,
        after: Option<VisitId>,
        count: u32,
    ) -> Result<Vec<Line>, StoreError>;

    /// Lines for a first screen: the newest visits, at most `count`, with their
    /// sites; without visits, as many sites.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn first_lines(&self, count: u32) -> Result<Vec<Line>, StoreError>;

    /// Keeps lines as they are; the first of many batches empties the summary.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn keep_lines(&self, lines: &[Line], first: bool) -> Result<(), StoreError>;

    /// Every entry.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn load(&self) -> Result<Loaded, StoreError> {
        self.each(&mut |_| true).await
    }

    /// The entries that `wanted` keeps, read in batches. Rows that this build
    /// can't read are counted.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn each(&self, wanted: &mut dyn FnMut(&Entry) -> bool) -> Result<Loaded, StoreError> {
        const BATCH: u32 = 2_000;
        let mut all = Loaded::default();
        let mut after: Option<String> = None;
        loop {
            let batch = self.entries(after.as_deref(), BATCH).await?;
            all.unreadable += batch.unreadable;
            let Some(last) = batch.last else {
                return Ok(all);
            };
            after = Some(last);
            all.entries
                .extend(batch.entries.into_iter().filter(|e| wanted(e)));
        }
    }

    /// Makes the summary again if the one that is kept is of another form than
    /// this build's; answers whether it did, and how many entries can't be read.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn summarise(&self, kept: Option<&str>) -> Result<Option<usize>, StoreError> {
        if kept == Some(LINE_FORM) {
            return Ok(None);
        }
        let all = self.each(&mut |entry| Line::bears_on(&entry.body)).await?;
        let mut things: Table<About, Vec<Entry>> = Table::new();
        for entry in all.entries {
            things.or_insert(entry.about, Vec::new()).push(entry);
        }
        let lines: Vec<Line> = things
            .into_pairs()
            .into_iter()
            .filter_map(|(about, entries)| Line::of(about, entries))
            .collect();
        self.keep_lines(&[], true).await?;
        for batch in lines.chunks(500) {
            self.keep_lines(batch, false).await?;
        }
        // Last, so that a summary half made is made again.
        self.keep_text(SUMMARY, LINE_FORM).await?;
        Ok(Some(all.unreadable))
    }

    /// Keeps a file and the entries that speak of it, all or none.
    ///
    /// # Errors
    /// As [`Store::append`].
    async fn keep_file(
        &self,
        file: &KeptFile,
        entries: &[Entry],
    ) -> Result<Vec<Changed>, StoreError>;

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
        let texts = self.texts().await?;
        let known = texts.into_iter().find(|(key, _)| key == DEVICE);
        if let Some(id) = known.and_then(|(_, text)| DeviceId::parse(&text)) {
            return Ok(id);
        }
        self.keep_text(DEVICE, &fresh.to_string()).await?;
        Ok(fresh)
    }
}
