//! The store in the browser: IndexedDB through rexie.
//!
//! Four object stores: `entries` (key: entry id, index on what it is about),
//! `lines` (the summary, as text under keys that sort newest first), `files`
//! (bytes as a Uint8Array) and `texts` (half-typed fields and settings).
//! Every call opens one transaction and waits until it is complete, so `Ok`
//! means that the engine has accepted the write; after an error the transaction
//! is aborted, so nothing of it is kept. A call that a lost connection stopped is
//! repeated (`link.rs`). Under a lock what a row holds is sealed on its way to the
//! browser's storage (`sealed.rs`). All object stores must be declared at every upgrade: one
//! that is not is deleted with its data.

mod link;
mod row;
mod sealed;

use std::future::poll_fn;
use std::task::Poll;

use js_sys::Reflect;
use rexie::{Direction, Error, KeyRange, Transaction, TransactionMode};
use wasm_bindgen::JsValue;

use self::link::{Link, TAKEN, TRIES, failure, finish};
use self::row::{Text, line_key, name_of, take, things};
use super::{DEVICE, KeptFile, LOCK, Loaded, Store, StoreError};
use crate::record::{About, Changed, Entry, EntryId, FileId, Line, Table, VisitId};

pub use self::row::{file_as_row, file_in, rows, to_js};
pub use self::sealed::{has_lock, lock_call, lock_wait};

const ENTRIES: &str = "entries";
const FILES: &str = "files";
const TEXTS: &str = "texts";
const LINES: &str = "lines";

/// The IndexedDB store.
#[derive(Debug)]
pub struct IndexedStore {
    link: Link,
}

/// Tries until it is done, on a new connection when one was lost.
macro_rules! lasting {
    ($self:ident, $attempt:expr) => {{
        let mut tries = 0;
        loop {
            let round = $self.link.round();
            match $attempt.await {
                Err(StoreError::Lost) if tries < TRIES => {
                    tries += 1;
                    $self.link.mend(round, tries).await?;
                }
                done => return done,
            }
        }
    }};
}

impl IndexedStore {
    /// Opens the store, making it the first time.
    ///
    /// # Errors
    /// [`StoreError::Denied`] when the browser gives this page no storage.
    pub async fn open() -> Result<Self, StoreError> {
        sealed::begin();
        Ok(Self {
            link: Link::open().await?,
        })
    }

    /// Every entry as it is stored, those of a newer build too.
    ///
    /// # Errors
    /// As [`Store::load`]; [`StoreError::Locked`] when the rows are sealed by a
    /// lock that another tab put on.
    pub async fn raw_entries(&self) -> Result<js_sys::Array, StoreError> {
        lasting!(self, self.raw())
    }

    async fn raw(&self) -> Result<js_sys::Array, StoreError> {
        let rows = self.read(ENTRIES)?.store(ENTRIES).map_err(failure)?;
        let rows = rows.get_all(None, None).await.map_err(failure)?;
        let entry = |row: &JsValue| Reflect::get(row, &"entry".into()).ok();
        let found = rows.iter().filter_map(entry);
        let found: js_sys::Array = found.filter(|entry| !entry.is_undefined()).collect();
        // One that does not open under this lock opens for nobody.
        match rows.len() == found.length() as usize || has_lock() {
            true => Ok(found),
            false => Err(StoreError::Locked),
        }
    }

    fn write(&self, stores: &[&str]) -> Result<Transaction, StoreError> {
        self.link.begin(stores, TransactionMode::ReadWrite)
    }

    fn read(&self, store: &str) -> Result<Transaction, StoreError> {
        self.link.begin(&[store], TransactionMode::ReadOnly)
    }

    /// Keeps a file's row, if there is one, and entries, all or none. Whether one is
    /// there already is asked only when the engine says that one is: of what was just
    /// tapped none is, and to ask would cost every tap a turn.
    async fn keep_rows(
        &self,
        file: Option<&JsValue>,
        entries: &[Entry],
        rows: &[(JsValue, JsValue)],
    ) -> Result<Vec<Changed>, StoreError> {
        let things = things(entries);
        match self.add_rows(file, &things, rows, false).await {
            Err(StoreError::Failed(why)) if why.contains(TAKEN) => {
                self.add_rows(file, &things, rows, true).await
            }
            done => done,
        }
    }

    /// The same; with `known`, some are there already and stay as they are.
    async fn add_rows(
        &self,
        file: Option<&JsValue>,
        things: &[About],
        rows: &[(JsValue, JsValue)],
        known: bool,
    ) -> Result<Vec<Changed>, StoreError> {
        let on = [ENTRIES, LINES, FILES];
        let tx = self.write(&on[..if file.is_some() { 3 } else { 2 }])?;
        let outcome = async {
            if let Some(row) = file {
                tx.store(FILES)?.put(row, None).await?;
            }
            let store = tx.store(ENTRIES)?;
            for (id, row) in rows {
                if !(known && store.key_exists(id.clone()).await?) {
                    store.add(row, None).await?;
                }
            }
            Self::sum_up(&tx, things).await
        };
        let outcome = outcome.await;
        finish(tx, outcome).await
    }

    /// Keeps the row of a text, or without one forgets the text.
    async fn put_text(&self, key: &str, row: Option<&JsValue>) -> Result<(), StoreError> {
        let tx = self.write(&[TEXTS])?;
        let store = tx.store(TEXTS).map_err(failure)?;
        let outcome = match row {
            Some(row) => store.put(row, None).await.map(drop),
            None => store.delete(key.into()).await,
        };
        finish(tx, outcome).await
    }

    /// The rows of entries between two keys, or about one thing.
    async fn loaded(
        &self,
        about: Option<About>,
        after: Option<&str>,
        count: Option<u32>,
    ) -> Result<Loaded, StoreError> {
        let range = match (about, after) {
            (Some(about), _) => Some(KeyRange::only(&name_of(about).into())),
            (None, Some(id)) => Some(KeyRange::lower_bound(&id.into(), Some(true))),
            (None, None) => None,
        };
        let range = range.transpose().map_err(|e| failure(e.into()))?;
        let store = self.read(ENTRIES)?.store(ENTRIES).map_err(failure)?;
        let rows = match about {
            Some(_) => {
                let by_thing = store.index("about").map_err(failure)?;
                by_thing.get_all(range, count).await
            }
            None => store.get_all(range, count).await,
        };
        let mut loaded = Loaded::default();
        rows.map_err(failure)?
            .into_iter()
            .for_each(|row| take(&mut loaded, row));
        Ok(loaded)
    }

    /// The row of a kept file; `None` when there is none.
    async fn file_row(&self, id: FileId) -> Result<Option<JsValue>, StoreError> {
        let store = self.read(FILES)?.store(FILES).map_err(failure)?;
        let row = store.get(id.to_string().into()).await.map_err(failure)?;
        Ok(row.filter(JsValue::is_object))
    }

    /// The lines of these things, worked out from all that is kept about each.
    async fn sum_up(tx: &Transaction, things: &[About]) -> Result<Vec<Changed>, Error> {
        let (entries, lines) = (tx.store(ENTRIES)?, tx.store(LINES)?);
        let by_thing = entries.index("about")?;
        let mut changed = Vec::new();
        for about in things {
            let only = KeyRange::only(&name_of(*about).into())?;
            let mut loaded = Loaded::default();
            let rows = by_thing.get_all(Some(only), None).await?;
            rows.into_iter().for_each(|row| take(&mut loaded, row));
            let line = Line::of(*about, loaded.entries);
            let key = line_key(*about).into();
            match &line {
                Some(line) => drop(lines.put(&line.write().into(), Some(&key)).await?),
                None => lines.delete(key).await?,
            }
            changed.push((*about, line));
        }
        Ok(changed)
    }

    /// The lines between two keys; those of another form are passed over.
    async fn lines(
        &self,
        from: &str,
        open: bool,
        to: &str,
        count: Option<u32>,
    ) -> Result<Vec<Line>, StoreError> {
        let tx = self.read(LINES)?;
        let range = KeyRange::bound(&from.into(), &to.into(), Some(open), Some(true));
        let range = range.map_err(|e| failure(e.into()))?;
        let store = tx.store(LINES).map_err(failure)?;
        let texts = store.get_all(Some(range), count).await.map_err(failure)?;
        let read = |text: JsValue| Line::read(&text.as_string()?);
        Ok(texts.into_iter().filter_map(read).collect())
    }
}

impl Store for IndexedStore {
    async fn append(&self, entries: &[Entry]) -> Result<Vec<Changed>, StoreError> {
        let rows = rows(entries)?;
        if rows.is_empty() {
            return Ok(Vec::new()); // a transaction without a request never says it is done
        }
        lasting!(self, self.keep_rows(None, entries, &rows))
    }

    async fn entries(&self, after: Option<&str>, count: u32) -> Result<Loaded, StoreError> {
        lasting!(self, self.loaded(None, after, Some(count)))
    }

    async fn about(&self, about: About) -> Result<Loaded, StoreError> {
        lasting!(self, self.loaded(Some(about), None, None))
    }

    async fn newest(&self) -> Result<Option<EntryId>, StoreError> {
        let tx = self.read(ENTRIES)?;
        let store = tx.store(ENTRIES).map_err(failure)?;
        let last = store.scan(None, Some(1), None, Some(Direction::Prev)).await;
        let last = last.map_err(failure)?.into_iter().next();
        Ok(last.and_then(|(key, _)| EntryId::parse(&key.as_string()?)))
    }

    async fn site_lines(&self) -> Result<Vec<Line>, StoreError> {
        self.lines("s", false, "t", None).await
    }

    async fn visit_lines(
        &self,
        after: Option<VisitId>,
        count: u32,
    ) -> Result<Vec<Line>, StoreError> {
        let from = after.map_or("v".to_owned(), |id| line_key(About::Visit(id)));
        self.lines(&from, true, "w", Some(count)).await
    }

    async fn first_lines(&self, count: u32) -> Result<Vec<Line>, StoreError> {
        let mut first = self.visit_lines(None, count).await?;
        if first.is_empty() {
            return self.lines("s", false, "t", Some(count)).await;
        }
        let sites = first.iter().filter_map(|line| match line {
            Line::Visit(visit) => Some(About::Site(visit.site)),
            Line::Site(_) => None,
        });
        let mut wanted: Table<About, ()> = Table::new();
        sites.for_each(|site| wanted.insert(site, ()));
        let tx = self.read(LINES)?;
        let store = tx.store(LINES).map_err(failure)?;
        let keys = wanted.keys().map(|site| line_key(*site));
        let asked = keys.map(|key| store.get(key.into()));
        for text in all_at_once(asked).await {
            let text = text.map_err(failure)?;
            first.extend(text.and_then(|t| Line::read(&t.as_string()?)));
        }
        Ok(first)
    }

    async fn keep_lines(&self, lines: &[Line], first: bool) -> Result<(), StoreError> {
        if lines.is_empty() && !first {
            return Ok(());
        }
        let tx = self.write(&[LINES])?;
        let outcome = async {
            let store = tx.store(LINES)?;
            if first {
                store.clear().await?;
            }
            let row = |l: &Line| (l.write().into(), Some(line_key(l.about()).into()));
            if lines.is_empty() {
                return Ok(());
            }
            store.put_all(lines.iter().map(row)).await
        };
        let outcome = outcome.await;
        finish(tx, outcome).await
    }

    async fn keep_file(
        &self,
        file: &KeptFile,
        entries: &[Entry],
    ) -> Result<Vec<Changed>, StoreError> {
        let row = file_as_row(file);
        let rows = rows(entries)?;
        lasting!(self, self.keep_rows(Some(&row), entries, &rows))
    }

    async fn file(&self, id: FileId) -> Result<Option<KeptFile>, StoreError> {
        let mut tries = 0;
        let row = loop {
            let round = self.link.round();
            match self.file_row(id).await {
                Err(StoreError::Lost) if tries < TRIES => {
                    tries += 1;
                    self.link.mend(round, tries).await?;
                }
                row => break row?,
            }
        };
        let Some(row) = row else {
            return Ok(None);
        };
        let file = file_in(&row);
        file.ok_or_else(|| StoreError::Failed("a kept file has no bytes".into()))
            .map(Some)
    }

    async fn keep_text(&self, key: &str, text: &str) -> Result<(), StoreError> {
        let row = to_js(&Text {
            key: key.into(),
            text: text.into(),
        })?;
        if key == DEVICE {
            self.link.is_named();
        }
        lasting!(self, self.put_text(key, Some(&row)))
    }

    async fn drop_text(&self, key: &str) -> Result<(), StoreError> {
        lasting!(self, self.put_text(key, None))
    }

    async fn texts(&self) -> Result<Vec<(String, String)>, StoreError> {
        let tx = self.read(TEXTS)?;
        let rows = tx.store(TEXTS).map_err(failure)?.get_all(None, None).await;
        let texts = rows.map_err(failure)?.into_iter();
        let mut texts: Vec<(String, String)> = texts
            .filter_map(|row| serde_wasm_bindgen::from_value::<Text>(row).ok())
            .map(|t| (t.key, t.text))
            .collect();
        let at = texts.iter().position(|(key, _)| key == LOCK);
        let lock = at.map(|at| texts.swap_remove(at).1);
        sealed::meet(lock)?;
        if texts.iter().any(|(key, _)| key == DEVICE) {
            self.link.is_named();
        }
        Ok(texts)
    }
}

/// Asks for all before any answer has come: each takes its time on the way.
async fn all_at_once<T>(asked: impl Iterator<Item = impl Future<Output = T>>) -> Vec<T> {
    let mut asked: Vec<_> = asked.map(Box::pin).collect();
    let mut answers: Vec<Option<T>> = asked.iter().map(|_| None).collect();
    poll_fn(move |cx| {
        let mut waiting = false;
        for (ask, answer) in asked.iter_mut().zip(&mut answers) {
            if answer.is_none() {
                match ask.as_mut().poll(cx) {
                    Poll::Ready(got) => *answer = Some(got),
                    Poll::Pending => waiting = true,
                }
            }
        }
        match waiting {
            true => Poll::Pending,
            false => Poll::Ready(answers.drain(..).flatten().collect()),
        }
    })
    .await
}
