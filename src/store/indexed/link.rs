//! The connection to IndexedDB: opened, found lost, opened again.
//!
//! A browser may drop a connection at any time: WebKit loses its server, another
//! tab upgrades, the person clears the site's data. A write is idempotent, so it
//! is repeated on a new connection, [`TRIES`] times at most.
//!
//! `public/disk.js` stands between this and the browser: it has records written
//! with strict durability, which rexie cannot ask for, and notes on the page's
//! root why the last transaction was given up, which idb does not pass on.

use std::cell::{Cell, RefCell};
use std::pin::Pin;

use gloo_timers::future::TimeoutFuture;
use rexie::{Error, ObjectStore, Rexie, Transaction, TransactionMode};
use wasm_bindgen::JsValue;

use super::{ENTRIES, FILES, LINES, TEXTS};
use crate::store::{DEVICE, StoreError};

const NAME: &str = "coldsump";
const SCHEMA: u32 = 2;

/// How often what a lost connection stopped is tried again.
pub const TRIES: u32 = 3;

/// The browser's name for a row whose key is taken.
pub const TAKEN: &str = "ConstraintError";

/// Milliseconds before the first try; as much more before each later one.
const PAUSE: u32 = 100;

/// A connection being opened again.
pub type Mending<'a> = Pin<Box<dyn Future<Output = Result<(), StoreError>> + 'a>>;

/// The connection.
#[derive(Debug)]
pub struct Link {
    db: RefCell<Rexie>,
    /// How often it was opened again.
    round: Cell<u32>,
    /// Whether the phone's name was seen in it: a database without it is then
    /// not the one that was open.
    named: Cell<bool>,
}

impl Link {
    /// Opens the database, making it the first time.
    pub async fn open() -> Result<Self, StoreError> {
        let db = connect().await.map_err(|fault| match fault {
            StoreError::Failed(_) | StoreError::Lost => StoreError::Denied,
            other => other,
        })?;
        Ok(Self {
            db: RefCell::new(db),
            round: Cell::new(0),
            named: Cell::new(false),
        })
    }

    /// Which connection this is, for [`Link::mend`].
    pub fn round(&self) -> u32 {
        self.round.get()
    }

    /// The phone's name is kept here.
    pub fn is_named(&self) {
        self.named.set(true);
    }

    /// Opens the database again, unless that was done since `round`.
    ///
    /// # Errors
    /// [`StoreError::Gone`] when what opens is another, empty database, once;
    /// [`StoreError::Newer`] when a newer build has upgraded it; else as opening.
    pub fn mend(&self, round: u32, tries: u32) -> Mending<'_> {
        // Boxed: a phone downloads it once, and not with every call that may need it.
        Box::pin(self.mend_now(round, tries))
    }

    async fn mend_now(&self, round: u32, tries: u32) -> Result<(), StoreError> {
        TimeoutFuture::new(PAUSE * tries).await;
        if self.round.get() != round {
            return Ok(());
        }
        let db = match connect().await {
            Ok(db) => db,
            Err(StoreError::Lost) => return Ok(()), // the next try opens once more
            Err(fault) => return Err(fault),
        };
        self.db.replace(db).close();
        self.round.set(round + 1);
        if self.named.get() {
            let tx = self.begin(&[TEXTS], TransactionMode::ReadOnly)?;
            let texts = tx.store(TEXTS).map_err(failure)?;
            if !texts.key_exists(DEVICE.into()).await.map_err(failure)? {
                self.named.set(false);
                return Err(StoreError::Gone);
            }
        }
        Ok(())
    }

    /// Begins a transaction.
    pub fn begin(&self, on: &[&str], mode: TransactionMode) -> Result<Transaction, StoreError> {
        self.db.borrow().transaction(on, mode).map_err(failure)
    }
}

async fn connect() -> Result<Rexie, StoreError> {
    let opened = Rexie::builder(NAME)
        .version(SCHEMA)
        .add_object_store(
            ObjectStore::new(ENTRIES)
                .key_path("id")
                .add_index(rexie::Index::new("about", "about")),
        )
        .add_object_store(ObjectStore::new(LINES))
        .add_object_store(ObjectStore::new(FILES).key_path("id"))
        .add_object_store(ObjectStore::new(TEXTS).key_path("key"))
        .build();
    opened.await.map_err(failure)
}

/// Waits until a transaction whose requests went as `outcome` says is kept.
pub async fn finish<T>(tx: Transaction, outcome: Result<T, Error>) -> Result<T, StoreError> {
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
        _ => Err(told("AbortError".to_owned())),
    }
}

/// What an error of the library means.
pub fn failure(error: Error) -> StoreError {
    told(match error {
        Error::IdbError(inner) => format!("{inner:?}"),
        other => other.to_string(),
    })
}

/// What the browser's words mean, and what it noted on the root.
pub fn told(mut text: String) -> StoreError {
    const NOTE: &str = "data-disk";
    let page = web_sys::window().and_then(|w| w.document());
    let root = page.and_then(|page| page.document_element());
    if let Some(root) = root
        && let Some(note) = root.get_attribute(NOTE)
    {
        let _ = root.remove_attribute(NOTE);
        text = format!("{text} {note}");
    }
    let has = |names: &[&str]| names.iter().any(|name| text.contains(name));
    if has(&["QuotaExceeded"]) {
        StoreError::Full
    } else if has(&[TAKEN]) {
        StoreError::Failed(text)
    } else if has(&["Locked"]) {
        StoreError::Locked
    } else if has(&["VersionError"]) {
        StoreError::Newer
    } else if has(&["SecurityError"]) {
        StoreError::Denied
    } else if has(&["InvalidStateError", "UnknownError", "AbortError"]) {
        StoreError::Lost
    } else {
        StoreError::Failed(text)
    }
}

/// A value of the browser as an error's words.
pub fn words(value: &JsValue) -> StoreError {
    StoreError::Failed(format!("{value:?}"))
}
