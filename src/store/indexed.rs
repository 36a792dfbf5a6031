//! The store in the browser: IndexedDB through rexie.
//!
//! Three object stores: `entries` (key: entry id, index on what it is about),
//! `files` (bytes as a Uint8Array) and `texts` (half-typed fields and settings).
//! Every call opens one transaction and waits until it is complete, so `Ok`
//! means that the engine has accepted the write; after an error the transaction
//! is aborted, so nothing of it is kept. All object stores must be declared at
//! every upgrade: one that is not is deleted with its data.

use js_sys::{Reflect, Uint8Array};
use rexie::{Error, ObjectStore, Rexie, Transaction, TransactionMode};
use serde::{Deserialize, Serialize};
use wasm_bindgen::{JsCast, JsValue};

use super::{KeptFile, Loaded, Store, StoreError};
use crate::record::{About, Entry, FileId};

const NAME: &str = "coldsump";
const SCHEMA: u32 = 1;
const ENTRIES: &str = "entries";
const FILES: &str = "files";
const TEXTS: &str = "texts";

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
}

/// Entries as rows with their keys. Made before a transaction begins: one that
/// can't be written must not leave the ones before it behind.
fn rows(entries: &[Entry]) -> Result<Vec<(JsValue, JsValue)>, StoreError> {
    let row = |entry: &Entry| {
        let row = Row {
            id: entry.id.to_string(),
            about: match entry.about {
                About::Site(id) => format!("site {id}"),
                About::Visit(id) => format!("visit {id}"),
            },
            entry: entry.clone(),
        };
        Ok((row.id.as_str().into(), to_js(&row)?))
    };
    entries.iter().map(row).collect()
}

impl Store for IndexedStore {
    async fn append(&self, entries: &[Entry]) -> Result<(), StoreError> {
        let rows = rows(entries)?;
        if rows.is_empty() {
            return Ok(()); // a transaction without a request never says it is done
        }
        let tx = self.write(&[ENTRIES])?;
        let outcome = Self::add_new(&tx, &rows).await;
        finish(tx, outcome).await
    }

    async fn load(&self) -> Result<Loaded, StoreError> {
        let tx = self.read(ENTRIES)?;
        let rows = tx
            .store(ENTRIES)
            .map_err(failure)?
            .get_all(None, None)
            .await;
        let mut loaded = Loaded::default();
        for row in rows.map_err(failure)? {
            match serde_wasm_bindgen::from_value::<Row>(row) {
                Ok(row) => loaded.entries.push(row.entry),
                Err(_) => loaded.unreadable += 1,
            }
        }
        Ok(loaded)
    }

    async fn keep_file(&self, file: &KeptFile, entries: &[Entry]) -> Result<(), StoreError> {
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
        let tx = self.write(&[FILES, ENTRIES])?;
        let outcome = async {
            tx.store(FILES)?.put(&row, None).await?;
            Self::add_new(&tx, &rows).await
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

fn to_js(value: &impl Serialize) -> Result<JsValue, StoreError> {
    value
        .serialize(&serde_wasm_bindgen::Serializer::json_compatible())
        .map_err(|e| StoreError::Failed(e.to_string()))
}

/// Waits until a transaction whose requests went as `outcome` says is kept.
async fn finish(tx: Transaction, outcome: Result<(), Error>) -> Result<(), StoreError> {
    if let Err(error) = outcome {
        // A request refused on the spot stops nothing by itself: what was asked
        // before it would be kept. This fails only when the engine has aborted.
        let _ = tx.abort().await;
        return Err(failure(error));
    }
    match tx.done().await.map_err(failure)? {
        result if result.is_committed() => Ok(()),
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
