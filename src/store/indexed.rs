//! The store in the browser: IndexedDB through rexie.
//!
//! Four object stores: `entries` (key: entry id, index on what it is about),
//! `lines` (the summary, as text under keys that sort newest first), `files`
//! (bytes as a Uint8Array) and `texts` (half-typed fields and settings).
//! Every call opens one transaction and waits until it is complete, so `Ok`
//! means that the engine has accepted the write; after an error the transaction
//! is aborted, so nothing of it is kept. A call that a lost connection stopped is
//! repeated (`link.rs`). Under a lock what a row holds is sealed (`sealed.rs`). All object stores must be declared at every upgrade: one
//! that is not is deleted with its data.

mod link;
mod passphrase;
mod row;
mod sealed;

use std::future::poll_fn;
use std::task::Poll;

use js_sys::{Reflect, Uint8Array};
use rexie::{Direction, Error, KeyRange, Transaction, TransactionMode};
use wasm_bindgen::JsValue;

pub use self::passphrase::{can_lock, stretched};

use self::link::{Link, TRIES, failure, finish, words};
pub use self::row::file_in;
use self::row::{Text, line_key, name_of, rows, take, things, to_js};
pub use self::sealed::Bolt;
use self::sealed::{lock_in, ours};
use super::lock::LOCK;
use super::{DEVICE, KeptFile, Loaded, Store, StoreError, both};
use crate::record::{About, Changed, Entry, EntryId, FileId, Line, Table, VisitId};

const ENTRIES: &str = "entries";
const FILES: &str = "files";
const TEXTS: &str = "texts";
const LINES: &str = "lines";

/// The IndexedDB store.
#[derive(Debug)]
pub struct IndexedStore {
    link: Link,
    bolt: Bolt,
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
        Ok(Self {
            link: Link::open().await?,
            bolt: Bolt::default(),
        })
    }

    /// Every entry as it was written, those of a newer build too.
    ///
    /// # Errors
    /// As [`Store::load`]; [`StoreError::Locked`] when the rows are sealed by a
    /// lock that another tab put on.
    pub async fn raw_entries(&self) -> Result<js_sys::Array, StoreError> {
        lasting!(self, self.raw())
    }

    async fn raw(&self) -> Result<js_sys::Array, StoreError> {
        let tx = self
            .link
            .begin(&[ENTRIES, TEXTS], TransactionMode::ReadOnly)?;
        let rows = tx.store(ENTRIES).map_err(failure)?;
        let (ours, rows) = both(ours(&tx, &self.bolt), rows.get_all(None, None)).await;
        if !ours.map_err(failure)? {
            return Err(StoreError::Locked);
        }
        let entry = |row: JsValue| {
            let row = self.bolt.opened(ENTRIES, row)?;
            Reflect::get(&row, &"entry".into()).ok()
        };
        Ok(rows
            .map_err(failure)?
            .into_iter()
            .filter_map(entry)
            .collect())
    }

    /// The rows of entries as they are written.
    ///
    /// # Errors
    /// [`StoreError::Failed`] when one can't be written.
    pub fn rows(&self, entries: &[Entry]) -> Result<Vec<JsValue>, StoreError> {
        let rows = rows(&self.bolt, entries)?;
        Ok(rows.into_iter().map(|(_, row)| row).collect())
    }

    fn begin(&self, stores: &[&str]) -> Result<Transaction, StoreError> {
        self.link.begin(stores, TransactionMode::ReadWrite)
    }

    fn read(&self, store: &str) -> Result<Transaction, StoreError> {
        self.link.begin(&[store], TransactionMode::ReadOnly)
    }

    /// Keeps a file's row, if there is one, and entries, all or none.
    async fn keep(
        &self,
        file: Option<&JsValue>,
        entries: &[Entry],
        rows: &[(JsValue, JsValue)],
    ) -> Result<Vec<Changed>, StoreError> {
        let on = [ENTRIES, LINES, TEXTS, FILES];
        let tx = self.begin(&on[..if file.is_some() { 4 } else { 3 }])?;
        let outcome = async {
            if let Some(row) = file {
                tx.store(FILES)?.put(row, None).await?;
            }
            Self::add_new(&tx, rows).await?;
            self.sum_up(&tx, &things(entries)).await
        };
        let (ours, outcome) = both(ours(&tx, &self.bolt), outcome).await;
        finish(tx, ours, outcome).await
    }

    /// Keeps the row of a text, or without one forgets the text.
    async fn put_text(&self, key: &str, row: Option<&JsValue>) -> Result<(), StoreError> {
        let tx = self.begin(&[TEXTS])?;
        let store = tx.store(TEXTS).map_err(failure)?;
        let outcome = async {
            match row {
                Some(row) => store.put(row, None).await.map(drop),
                None => store.delete(key.into()).await,
            }
        };
        let (ours, outcome) = both(ours(&tx, &self.bolt), outcome).await;
        finish(tx, ours, outcome).await
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
            .for_each(|row| take(&mut loaded, &self.bolt, row));
        Ok(loaded)
    }

    /// The row of a file as it is written.
    ///
    /// # Errors
    /// [`StoreError::Failed`] when it can't be written.
    pub fn file_as_row(&self, file: &KeptFile) -> Result<JsValue, StoreError> {
        let row = js_sys::Object::new();
        for (key, value) in [
            ("id", JsValue::from(file.id.to_string())),
            ("name", file.name.as_str().into()),
            ("type", file.media_type.as_str().into()),
            ("bytes", Uint8Array::from(file.bytes.as_slice()).into()),
        ] {
            Reflect::set(&row, &key.into(), &value).map_err(|e| words(&e))?;
        }
        self.bolt.row(FILES, row.into())
    }

    /// The row of a kept file; `None` when there is none.
    async fn file_row(&self, id: FileId) -> Result<Option<JsValue>, StoreError> {
        let store = self.read(FILES)?.store(FILES).map_err(failure)?;
        let row = store.get(id.to_string().into()).await.map_err(failure)?;
        let Some(row) = row.filter(JsValue::is_object) else {
            return Ok(None);
        };
        let opened = self.bolt.opened(FILES, row);
        opened
            .ok_or_else(|| StoreError::Failed("a kept file does not open".into()))
            .map(Some)
    }

    /// Adds the rows whose key is new; what is kept already stays as it is.
    async fn add_new(tx: &Transaction, rows: &[(JsValue, JsValue)]) -> Result<(), Error> {
        let store = tx.store(ENTRIES)?;
        for (id, row) in rows {
            if !store.key_exists(id.clone()).await? {
                store.add(row, None).await?;
            }
        }
        Ok(())
    }

    /// The lines of these things, worked out from all that is kept about each.
    async fn sum_up(&self, tx: &Transaction, things: &[About]) -> Result<Vec<Changed>, Error> {
        let (entries, lines) = (tx.store(ENTRIES)?, tx.store(LINES)?);
        let by_thing = entries.index("about")?;
        let mut changed = Vec::new();
        for about in things {
            let only = KeyRange::only(&name_of(*about).into())?;
            let mut loaded = Loaded::default();
            let rows = by_thing.get_all(Some(only), None).await?;
            rows.into_iter()
                .for_each(|row| take(&mut loaded, &self.bolt, row));
            let line = Line::of(*about, loaded.entries);
            let key = line_key(*about);
            let row = line
                .as_ref()
                .map(|line| self.bolt.line(&key, &line.write()));
            match row.and_then(Result::ok) {
                Some(row) => drop(lines.put(&row, Some(&key.into())).await?),
                None => lines.delete(key.into()).await?,
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
        let range = || {
            let range = KeyRange::bound(&from.into(), &to.into(), Some(open), Some(true));
            range.map_err(|e| failure(e.into()))
        };
        let store = tx.store(LINES).map_err(failure)?;
        let kept = store.get_all(Some(range()?), count).await;
        let kept = kept.map_err(failure)?;
        // A sealed line opens under its key alone.
        let mut keys = Vec::new();
        if kept.iter().any(JsValue::is_object) {
            let all = store.get_all_keys(Some(range()?), count).await;
            keys = all.map_err(failure)?;
        }
        let read = |(n, kept): (usize, &JsValue)| {
            let key = keys.get(n).and_then(JsValue::as_string).unwrap_or_default();
            Line::read(&self.bolt.line_text(&key, kept)?)
        };
        Ok(kept.iter().enumerate().filter_map(read).collect())
    }
}

impl Store for IndexedStore {
    async fn append(&self, entries: &[Entry]) -> Result<Vec<Changed>, StoreError> {
        let rows = rows(&self.bolt, entries)?;
        if rows.is_empty() {
            return Ok(Vec::new()); // a transaction without a request never says it is done
        }
        lasting!(self, self.keep(None, entries, &rows))
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
        let keys: Vec<String> = wanted.keys().map(|site| line_key(*site)).collect();
        let asked = keys.iter().map(|key| store.get(key.into()));
        for (kept, key) in all_at_once(asked).await.into_iter().zip(&keys) {
            let kept = kept.map_err(failure)?;
            first.extend(kept.and_then(|k| Line::read(&self.bolt.line_text(key, &k)?)));
        }
        Ok(first)
    }

    async fn keep_lines(&self, lines: &[Line], first: bool) -> Result<(), StoreError> {
        if lines.is_empty() && !first {
            return Ok(());
        }
        let row = |line: &Line| {
            let key = line_key(line.about());
            Ok((self.bolt.line(&key, &line.write())?, Some(key.into())))
        };
        let rows: Vec<(JsValue, Option<JsValue>)> =
            lines.iter().map(row).collect::<Result<_, StoreError>>()?;
        let tx = self.begin(&[LINES, TEXTS])?;
        let outcome = async {
            let store = tx.store(LINES)?;
            if first {
                store.clear().await?;
            }
            if rows.is_empty() {
                return Ok(());
            }
            store.put_all(rows.into_iter()).await
        };
        let (ours, outcome) = both(ours(&tx, &self.bolt), outcome).await;
        finish(tx, ours, outcome).await
    }

    async fn keep_file(
        &self,
        file: &KeptFile,
        entries: &[Entry],
    ) -> Result<Vec<Changed>, StoreError> {
        let row = self.file_as_row(file)?;
        let rows = rows(&self.bolt, entries)?;
        lasting!(self, self.keep(Some(&row), entries, &rows))
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
        let row = self.bolt.row(TEXTS, row)?;
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
        let rows = rows.map_err(failure)?;
        let is = |row: &&JsValue| Reflect::get(row, &"key".into()).is_ok_and(|key| key == LOCK);
        let lock = rows.iter().find(is).cloned();
        let lock = lock.map(|row| lock_in(row).ok_or(StoreError::Newer));
        self.bolt.meet(lock.transpose()?)?;
        let text = |row| {
            let row = self.bolt.opened(TEXTS, row)?;
            serde_wasm_bindgen::from_value::<Text>(row).ok()
        };
        let texts = rows.into_iter().filter_map(text);
        let texts: Vec<(String, String)> = texts
            .filter(|t| t.key != LOCK)
            .map(|t| (t.key, t.text))
            .collect();
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
