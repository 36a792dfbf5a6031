//! The store in the browser: IndexedDB through rexie.
//!
//! Four object stores: `entries` (key: entry id, index on what it is about),
//! `lines` (the summary, as text under keys that sort newest first), `files`
//! (bytes as a Uint8Array) and `texts` (half-typed fields and settings).
//! Every call opens one transaction and waits until it is complete, so `Ok`
//! means that the engine has accepted the write; after an error the transaction
//! is aborted, so nothing of it is kept. All object stores must be declared at
//! every upgrade: one that is not is deleted with its data.

use std::future::poll_fn;
use std::task::Poll;

use js_sys::{Reflect, Uint8Array};
use rexie::{Direction, Error, KeyRange, ObjectStore, Rexie, Transaction, TransactionMode};
use serde::{Deserialize, Serialize};
use wasm_bindgen::{JsCast, JsValue};

use super::{KeptFile, Loaded, Store, StoreError};
use crate::record::{About, Changed, Entry, EntryId, FileId, Line, Table, VisitId};

const NAME: &str = "coldsump";
const SCHEMA: u32 = 2;
const ENTRIES: &str = "entries";
const FILES: &str = "files";
const TEXTS: &str = "texts";
const LINES: &str = "lines";

/// The IndexedDB store.
#[derive(Debug)]
pub struct IndexedStore {
    db: Rexie,
}

/// An entry as stored: with its keys lifted out.
#[derive(Serialize, Deserialize)]
struct Row {
    id: String,
    about: String,
    entry: Entry,
}

#[derive(Serialize, Deserialize)]
struct Text {
    key: String,
    text: String,
}

impl IndexedStore {
    /// Opens the store, making it the first time.
    ///
    /// # Errors
    /// [`StoreError::Denied`] when the browser gives this page no storage.
    pub async fn open() -> Result<Self, StoreError> {
        let db = Rexie::builder(NAME)
            .version(SCHEMA)
            .add_object_store(
                ObjectStore::new(ENTRIES)
                    .key_path("id")
                    .add_index(rexie::Index::new("about", "about")),
            )
            .add_object_store(ObjectStore::new(LINES))
            .add_object_store(ObjectStore::new(FILES).key_path("id"))
            .add_object_store(ObjectStore::new(TEXTS).key_path("key"))
            .build()
            .await
            .map_err(|error| match failure(error) {
                StoreError::Failed(_) => StoreError::Denied,
                other => other,
            })?;
        Ok(Self { db })
    }

    /// Every entry as it is stored, those of a newer build too.
    ///
    /// # Errors
    /// As [`Store::load`].
    pub async fn raw_entries(&self) -> Result<js_sys::Array, StoreError> {
        let tx = self.read(ENTRIES)?;
        let rows = tx.store(ENTRIES).map_err(failure)?;
        let rows = rows.get_all(None, None).await.map_err(failure)?;
        let entry = |row: &JsValue| Reflect::get(row, &"entry".into()).unwrap_or_default();
        Ok(rows.iter().map(entry).collect())
    }

    fn write(&self, stores: &[&str]) -> Result<Transaction, StoreError> {
        self.db
            .transaction(stores, TransactionMode::ReadWrite)
            .map_err(failure)
    }

    fn read(&self, store: &str) -> Result<Transaction, StoreError> {
        self.db
            .transaction(&[store], TransactionMode::ReadOnly)
            .map_err(failure)
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

/// What an entry is about, as the index knows it.
fn name_of(about: About) -> String {
    match about {
        About::Site(id) => format!("site {id}"),
        About::Visit(id) => format!("visit {id}"),
    }
}

/// The key of a line: sites first; then visits, newest first, by the digits of
/// their ids turned round.
fn line_key(about: About) -> String {
    match about {
        About::Site(id) => format!("s{id}"),
        About::Visit(id) => {
            let digit = |c: char| c.to_digit(16).and_then(|d| char::from_digit(15 - d, 16));
            let turned = id
                .to_string()
                .chars()
                .map(|c| digit(c).unwrap_or(c))
                .collect::<String>();
            format!("v{turned}")
        }
    }
}

/// The things these entries are about, each once.
fn things(entries: &[Entry]) -> Vec<About> {
    let mut things = Vec::new();
    let mut known: Table<About, ()> = Table::new();
    // A mark or reading among thousands must not read all of them again.
    for entry in entries.iter().filter(|e| Line::moved_by(&e.body)) {
        if !known.contains_key(&entry.about) {
            known.insert(entry.about, ());
            things.push(entry.about);
        }
    }
    things
}

/// Takes a row in; one that can't be read is counted.
fn take(loaded: &mut Loaded, row: JsValue) {
    let id = Reflect::get(&row, &"id".into()).ok();
    loaded.last = id.and_then(|id| id.as_string());
    match serde_wasm_bindgen::from_value::<Row>(row) {
        Ok(row) => loaded.entries.push(row.entry),
        Err(_) => loaded.unreadable += 1,
    }
}

/// Entries as rows with their keys. Made before a transaction begins: one that
/// can't be written must not leave the ones before it behind.
fn rows(entries: &[Entry]) -> Result<Vec<(JsValue, JsValue)>, StoreError> {
    let row = |entry: &Entry| {
        let row = Row {
            id: entry.id.to_string(),
            about: name_of(entry.about),
            entry: entry.clone(),
        };
        Ok((row.id.as_str().into(), to_js(&row)?))
    };
    entries.iter().map(row).collect()
}

impl Store for IndexedStore {
    async fn append(&self, entries: &[Entry]) -> Result<Vec<Changed>, StoreError> {
        let rows = rows(entries)?;
        if rows.is_empty() {
            return Ok(Vec::new()); // a transaction without a request never says it is done
        }
        let tx = self.write(&[ENTRIES, LINES])?;
        let outcome = async {
            Self::add_new(&tx, &rows).await?;
            Self::sum_up(&tx, &things(entries)).await
        };
        let outcome = outcome.await;
        finish(tx, outcome).await
    }

    async fn entries(&self, after: Option<&str>, count: u32) -> Result<Loaded, StoreError> {
        let tx = self.read(ENTRIES)?;
        let range = match after {
            None => None,
            Some(id) => {
                Some(KeyRange::lower_bound(&id.into(), Some(true)).map_err(|e| failure(e.into()))?)
            }
        };
        let store = tx.store(ENTRIES).map_err(failure)?;
        let rows = store.get_all(range, Some(count)).await.map_err(failure)?;
        let mut loaded = Loaded::default();
        rows.into_iter().for_each(|row| take(&mut loaded, row));
        Ok(loaded)
    }

    async fn about(&self, about: About) -> Result<Loaded, StoreError> {
        let tx = self.read(ENTRIES)?;
        let only = KeyRange::only(&name_of(about).into()).map_err(|e| failure(e.into()))?;
        let by_thing = tx.store(ENTRIES).and_then(|s| s.index("about"));
        let rows = by_thing.map_err(failure)?.get_all(Some(only), None).await;
        let mut loaded = Loaded::default();
        let rows = rows.map_err(failure)?;
        rows.into_iter().for_each(|row| take(&mut loaded, row));
        Ok(loaded)
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
        let row = js_sys::Object::new();
        let set = |key: &str, value: &JsValue| {
            Reflect::set(&row, &key.into(), value)
                .map(drop)
                .map_err(|e| words(&e))
        };
        set("id", &file.id.to_string().into())?;
        set("name", &file.name.as_str().into())?;
        set("type", &file.media_type.as_str().into())?;
        set("bytes", &Uint8Array::from(file.bytes.as_slice()))?;
        let rows = rows(entries)?;
        let tx = self.write(&[FILES, ENTRIES, LINES])?;
        let outcome = async {
            tx.store(FILES)?.put(&row, None).await?;
            Self::add_new(&tx, &rows).await?;
            Self::sum_up(&tx, &things(entries)).await
        };
        let outcome = outcome.await;
        finish(tx, outcome).await
    }

    async fn file(&self, id: FileId) -> Result<Option<KeptFile>, StoreError> {
        let tx = self.read(FILES)?;
        let key = id.to_string().into();
        let row = tx
            .store(FILES)
            .map_err(failure)?
            .get(key)
            .await
            .map_err(failure)?;
        let Some(row) = row.filter(|row| row.is_object()) else {
            return Ok(None);
        };
        let get = |key: &str| Reflect::get(&row, &key.into()).map_err(|e| words(&e));
        let text = |key: &str| Ok::<_, StoreError>(get(key)?.as_string().unwrap_or_default());
        let bytes = get("bytes")?
            .dyn_into::<Uint8Array>()
            .map_err(|_| StoreError::Failed("a kept file has no bytes".into()))?
            .to_vec();
        Ok(Some(KeptFile {
            id,
            name: text("name")?,
            media_type: text("type")?,
            bytes,
        }))
    }

    async fn keep_text(&self, key: &str, text: &str) -> Result<(), StoreError> {
        let row = to_js(&Text {
            key: key.into(),
            text: text.into(),
        })?;
        let tx = self.write(&[TEXTS])?;
        let store = tx.store(TEXTS).map_err(failure)?;
        let outcome = store.put(&row, None).await;
        finish(tx, outcome.map(drop)).await
    }

    async fn drop_text(&self, key: &str) -> Result<(), StoreError> {
        let tx = self.write(&[TEXTS])?;
        let store = tx.store(TEXTS).map_err(failure)?;
        let outcome = store.delete(key.into()).await;
        finish(tx, outcome).await
    }

    async fn texts(&self) -> Result<Vec<(String, String)>, StoreError> {
        let tx = self.read(TEXTS)?;
        let rows = tx.store(TEXTS).map_err(failure)?.get_all(None, None).await;
        let texts = rows.map_err(failure)?.into_iter();
        Ok(texts
            .filter_map(|row| serde_wasm_bindgen::from_value::<Text>(row).ok())
            .map(|t| (t.key, t.text))
            .collect())
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

fn to_js(value: &impl Serialize) -> Result<JsValue, StoreError> {
    value
        .serialize(&serde_wasm_bindgen::Serializer::json_compatible())
        .map_err(|e| StoreError::Failed(e.to_string()))
}

/// Waits until a transaction whose requests went as `outcome` says is kept.
async fn finish<T>(tx: Transaction, outcome: Result<T, Error>) -> Result<T, StoreError> {
    let answer = match outcome {
        Ok(answer) => answer,
        Err(error) => {
            // A request refused on the spot stops nothing by itself: what was
            // asked before it would be kept. This fails only when the engine
            // has aborted.
            let _ = tx.abort().await;
            return Err(failure(error));
        }
    };
    match tx.done().await.map_err(failure)? {
        result if result.is_committed() => Ok(answer),
        _ => Err(StoreError::Failed("the write was aborted".into())),
    }
}

fn failure(error: Error) -> StoreError {
    match error {
        Error::IdbError(inner) => {
            let text = format!("{inner:?}");
            if text.contains("QuotaExceeded") {
                StoreError::Full
            } else if text.contains("SecurityError") || text.contains("InvalidStateError") {
                StoreError::Denied
            } else {
                StoreError::Failed(text)
            }
        }
        other => StoreError::Failed(other.to_string()),
    }
}

fn words(value: &JsValue) -> StoreError {
    StoreError::Failed(format!("{value:?}"))
}
