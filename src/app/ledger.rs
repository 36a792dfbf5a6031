//! The app's one write door. A tap becomes an entry, the entry goes to the
//! store, and only when the store has it does the log, and so the screen,
//! change.

mod backup;

pub use backup::Untaken;

use std::cell::Cell;
use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;

use super::ports::Browser;
use crate::record::{
    About, Body, Clock, DeviceId, Entry, EntryId, FileId, Log, Moment, Pen, Site, SiteId, Table,
    Visit, VisitId,
};
use crate::store::{IndexedStore, KeptFile, Store, StoreError};

/// Log, store and pen, shared by every screen.
#[derive(Clone, Copy)]
pub struct Ledger {
    log: RwSignal<Log>,
    texts: StoredValue<Table<String, String>>,
    unsaved: RwSignal<Vec<Entry>>,
    fault: RwSignal<Option<StoreError>>,
    unreadable: usize,
    browser: Browser,
    store: StoredValue<Rc<IndexedStore>, LocalStorage>,
    pen: StoredValue<Pen, LocalStorage>,
}

impl Ledger {
    /// Opens the store and reads everything in it.
    ///
    /// # Errors
    /// As [`IndexedStore::open`] and [`Store::load`].
    pub async fn open() -> Result<Self, StoreError> {
        let browser = Browser::new();
        let store = IndexedStore::open().await?;
        let loaded = store.load().await?;
        let mut log = Log::default();
        loaded.entries.into_iter().for_each(|entry| log.add(entry));
        let mut nameless = Pen::new(DeviceId::from(uuid::Uuid::nil()), log.last());
        let device = store.device(nameless.id(browser.now(), &browser)).await?;
        let mut texts = Table::new();
        for (key, text) in store.texts().await? {
            texts.insert(key, text);
        }
        let pen = Pen::new(device, log.last());
        Ok(Self {
            log: RwSignal::new(log),
            texts: StoredValue::new(texts),
            unsaved: RwSignal::new(Vec::new()),
            fault: RwSignal::new(None),
            unreadable: loaded.unreadable,
            browser,
            store: StoredValue::new_local(Rc::new(store)),
            pen: StoredValue::new_local(pen),
        })
    }

    /// The present moment.
    pub fn now(self) -> Moment {
        self.browser.now()
    }

    /// A new id for a site, visit, test, machine or file.
    pub fn id<T: From<uuid::Uuid>>(self) -> T {
        let now = self.now();
        self.pen
            .try_update_value(|pen| pen.id(now, &self.browser))
            .expect("the pen outlives us")
    }

    /// The log, tracked.
    pub fn log(self) -> RwSignal<Log> {
        self.log
    }

    /// Entries stored by a newer build, which this one can't read.
    pub fn unreadable(self) -> usize {
        self.unreadable
    }

    /// What the last failed write said, and how many entries still wait.
    pub fn trouble(self) -> Option<(StoreError, usize)> {
        self.fault
            .get()
            .map(|fault| (fault, self.unsaved.with(Vec::len)))
    }

    /// A visit as it stands, tracked.
    pub fn visit(self, id: VisitId) -> Memo<Option<Visit>> {
        let log = self.log;
        Memo::new(move |_| log.with(|log| log.visit(id)))
    }

    /// A site as last described, tracked.
    pub fn site(self, id: SiteId) -> Memo<Option<Site>> {
        let log = self.log;
        Memo::new(move |_| log.with(|log| log.site(id)))
    }

    /// Writes entries, all or none, and then runs `done`. When the store
    /// refuses, the entries wait here, the shell says so and offers to save
    /// again, and `done` does not run.
    pub fn write_then(self, about: About, bodies: Vec<Body>, done: impl FnOnce() + 'static) {
        self.write_and(about, bodies, Box::new(done));
    }

    fn write_and(self, about: About, bodies: Vec<Body>, done: Box<dyn FnOnce()>) {
        let entries = self.entries(about, bodies);
        spawn_local(async move {
            if self.keep(entries).await {
                done();
            }
        });
    }

    /// Writes one entry.
    pub fn write(self, about: About, body: Body) {
        self.write_then(about, vec![body], || {});
    }

    /// Takes an entry back.
    pub fn withdraw(self, about: About, entry: EntryId) {
        self.write(about, Body::Withdrawn { entry });
    }

    /// Keeps a file and the entries that speak of it, all or none.
    pub async fn keep_file(self, about: About, file: KeptFile, bodies: Vec<Body>) -> bool {
        let entries = self.entries(about, bodies);
        let store = self.store.get_value();
        match store.keep_file(&file, &entries).await {
            Ok(()) => {
                self.accept(entries);
                true
            }
            Err(fault) => {
                self.fault.set(Some(fault));
                false
            }
        }
    }

    /// A kept file.
    pub async fn file(self, id: FileId) -> Option<KeptFile> {
        let store = self.store.get_value();
        store.file(id).await.unwrap_or_else(|fault| {
            self.fault.set(Some(fault));
            None
        })
    }

    /// Tries again to save what waits.
    pub fn save_again(self) {
        let entries = self.unsaved.get_untracked();
        self.unsaved.set(Vec::new());
        spawn_local(async move {
            self.keep(entries).await;
        });
    }

    /// Text kept under a key: half-typed fields and settings.
    pub fn text(self, key: &str) -> Option<String> {
        self.texts
            .with_value(|texts| texts.get(&key.to_owned()).cloned())
    }

    /// Keeps text under a key; empty text forgets it.
    pub fn keep_text(self, key: &str, text: &str) {
        let (key, text) = (key.to_owned(), text.to_owned());
        self.texts.update_value(|texts| match text.is_empty() {
            true => drop(texts.remove(&key)),
            false => texts.insert(key.clone(), text.clone()),
        });
        let store = self.store.get_value();
        spawn_local(async move {
            let kept = match text.is_empty() {
                true => store.drop_text(&key).await,
                false => store.keep_text(&key, &text).await,
            };
            if let Err(fault) = kept {
                self.fault.set(Some(fault));
            }
        });
    }

    fn entries(self, about: About, bodies: Vec<Body>) -> Vec<Entry> {
        let write = |pen: &mut Pen| {
            bodies
                .into_iter()
                .map(|body| pen.write(about, body, &self.browser, &self.browser))
                .collect()
        };
        self.pen
            .try_update_value(write)
            .expect("the pen outlives us")
    }

    async fn keep(self, entries: Vec<Entry>) -> bool {
        let store = self.store.get_value();
        match store.append(&entries).await {
            Ok(()) => {
                self.accept(entries);
                true
            }
            Err(fault) => {
                self.unsaved.update(|waiting| waiting.extend(entries));
                self.fault.set(Some(fault));
                false
            }
        }
    }

    fn accept(self, entries: Vec<Entry>) {
        if self.unsaved.with_untracked(Vec::is_empty) {
            self.fault.set(None);
        }
        self.log
            .update(|log| entries.into_iter().for_each(|entry| log.add(entry)));
    }
}

thread_local! {
    static LEDGER: Cell<Option<Ledger>> = const { Cell::new(None) };
}

/// Makes this the ledger of the app.
pub fn open_for_all(ledger: Ledger) {
    LEDGER.set(Some(ledger));
}

/// The ledger of this app. Not a reactive context: taps and futures, which
/// have none, need it too.
///
/// # Panics
/// Before [`open_for_all`].
pub fn ledger() -> Ledger {
    LEDGER.get().expect("the ledger opens before any screen")
}
