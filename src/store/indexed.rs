//! The store in the browser: IndexedDB through rexie.
//!
//! Three object stores: `entries` (key: entry id, index on what it is about),
//! `files` (bytes as a Uint8Array) and `texts` (half-typed fields and settings).
//! Every call opens a transaction and waits until it is complete, so `Ok`
//! means that the engine has accepted the write. All object stores must be
//! declared at every upgrade: one that is not is deleted with its data.

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

    async fn put_entries(tx: &Transaction, entries: &[Entry]) -> Result<(), StoreError> {
        let store = tx.store(ENTRIES).map_err(failure)?;
        for entry in entries {
            let about = match entry.about {
                About::Site(id) => format!("site {id}"),
                About::Visit(id) => format!("visit {id}"),
            };
            let row = Row {
                id: entry.id.to_string(),
                about,
                entry: entry.clone(),
            };
            store.put(&to_js(&row)?, None).await.map_err(failure)?;
        }
        Ok(())
    }
}

impl Store for IndexedStore {
    async fn append(&self, entries: &[Entry]) -> Result<(), StoreError> {
        let tx = self.write(&[ENTRIES])?;
        Self::put_entries(&tx, entries).await?;
        finish(tx).await
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
        let tx = self.write(&[FILES, ENTRIES])?;
        tx.store(FILES)
            .map_err(failure)?
            .put(&row, None)
            .await
            .map_err(failure)?;
        Self::put_entries(&tx, entries).await?;
        finish(tx).await
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
        let tx = self.write(&[TEXTS])?;
        let row = to_js(&Text {
            key: key.into(),
            text: text.into(),
        })?;
        tx.store(TEXTS)
            .map_err(failure)?
            .put(&row, None)
            .await
            .map_err(failure)?;
        finish(tx).await
    }

    async fn drop_text(&self, key: &str) -> Result<(), StoreError> {
        let tx = self.write(&[TEXTS])?;
        tx.store(TEXTS)
            .map_err(failure)?
            .delete(key.into())
            .await
            .map_err(failure)?;
        finish(tx).await
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

async fn finish(tx: Transaction) -> Result<(), StoreError> {
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
