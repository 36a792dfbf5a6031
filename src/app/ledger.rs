//! The app's one write door. A tap becomes an entry, the entry goes to the
//! store, and only when the store has it does the log, and so the screen,
//! change. Lists live from the summary; the entries of a visit are read when it
//! is opened.

mod backup;
mod faults;

pub use backup::{LAST_BACKUP, Untaken};

use std::cell::Cell;
use std::future::poll_fn;
use std::pin::pin;
use std::rc::Rc;
use std::task::Poll;

use crate::app::view::prelude::*;
use leptos::task::spawn_local;

use super::ports::Browser;
use crate::record::{
    About, Body, Changed, Clock, DeviceId, Entry, EntryId, FileId, LINE_FORM, Line, Log, Moment,
    Pen, Site, SiteId, Summary, Table, Visit, VisitId, demo,
};
use crate::store::{DEVICE, IndexedStore, KeptFile, SUMMARY, Store, StoreError};

/// How many lines the first screen has at once; all others follow when it
/// stands.
const AT_ONCE: u32 = 10;

/// Lines read in one go after that.
const BATCH: u32 = 1_000;

/// What is done when a write has ended.
type After = Box<dyn FnOnce()>;

/// Summary, open entries, store and pen, shared by every screen.
#[derive(Clone, Copy)]
pub struct Ledger {
    summary: RwSignal<Summary>,
    /// Entries of the visits and sites that were opened since the start.
    log: RwSignal<Log>,
    /// Which those are.
    open: RwSignal<Vec<About>>,
    texts: StoredValue<Table<String, String>>,
    /// The key of each text that is on its way to the disk.
    writing: StoredValue<Vec<String>>,
    /// Entries that the store did not take.
    unsaved: RwSignal<Vec<Entry>>,
    /// Files that it did not take.
    files: StoredValue<Vec<KeptFile>>,
    /// What was to follow when they are on disk.
    late: StoredValue<Vec<After>>,
    fault: RwSignal<Option<StoreError>>,
    unreadable: RwSignal<usize>,
    browser: Browser,
    store: StoredValue<Rc<IndexedStore>>,
    pen: StoredValue<Pen>,
}

impl Ledger {
    /// Opens the store and reads the first lines of the summary; `again` runs
    /// when the summary must be made again first, which takes a while.
    ///
    /// # Errors
    /// As [`IndexedStore::open`] and [`Store::append`].
    pub async fn open(again: impl FnOnce()) -> Result<Self, StoreError> {
        let browser = Browser::new();
        let store = IndexedStore::open().await?;
        // All asked for together: each answer takes its time to come.
        let kept_texts = store.texts();
        let first = store.first_lines(AT_ONCE);
        let (kept_texts, (last, first)) = both(kept_texts, both(store.newest(), first)).await;
        let (last, mut first) = (last?, first?);
        let mut texts = Table::new();
        for (key, text) in kept_texts? {
            texts.insert(key, text);
        }
        let form = texts.get(&SUMMARY.to_owned()).cloned();
        let mut unreadable = 0;
        if form.as_deref() != Some(LINE_FORM) {
            if last.is_some() {
                again();
            }
            unreadable = store.summarise(form.as_deref()).await?.unwrap_or(0);
            first = store.first_lines(AT_ONCE).await?;
        }
        let mut summary = Summary::default();
        summary.add(first);
        let mut nameless = Pen::new(DeviceId::from(uuid::Uuid::nil()), last);
        let device = match texts
            .get(&DEVICE.to_owned())
            .and_then(|t| DeviceId::parse(t))
        {
            Some(known) => known,
            None => store.device(nameless.id(browser.now(), &browser)).await?,
        };
        Ok(Self {
            summary: RwSignal::new(summary),
            log: RwSignal::new(Log::default()),
            open: RwSignal::new(Vec::new()),
            texts: StoredValue::new(texts),
            writing: StoredValue::new(Vec::new()),
            unsaved: RwSignal::new(Vec::new()),
            files: StoredValue::new(Vec::new()),
            late: StoredValue::new(Vec::new()),
            fault: RwSignal::new(None),
            unreadable: RwSignal::new(unreadable),
            browser,
            store: StoredValue::new(Rc::new(store)),
            pen: StoredValue::new(Pen::new(device, last)),
        })
    }

    /// Reads the lines that [`Ledger::open`] left out, in batches, so that the
    /// screen that stands already stays quick.
    pub fn read_on(self) {
        let store = self.store.get_value();
        spawn_local(async move {
            let all = async {
                let sites = store.site_lines().await?;
                self.summary.update(|s| s.add(sites));
                let mut after = None;
                loop {
                    let lines = store.visit_lines(after, BATCH).await?;
                    let Some(Line::Visit(last)) = lines.last() else {
                        return Ok(());
                    };
                    after = Some(last.id);
                    self.summary.update(|s| s.add(lines));
                }
            };
            // A list that ends early must not look whole.
            if let Err(fault) = all.await {
                self.hurt(fault);
            }
        });
    }

    /// What every list shows, tracked.
    pub fn summary(self) -> RwSignal<Summary> {
        self.summary
    }

    /// Keeps entries that this phone did not make just now.
    pub async fn keep_made(self, entries: Vec<Entry>) -> bool {
        self.keep(entries, false).await
    }

    /// The demo site's earlier visits, as this phone would have written them.
    pub fn earlier(self, id: SiteId, site: &Site) -> Vec<Entry> {
        let device = self.pen.with_value(Pen::device);
        demo::earlier(device, id, site, self.now(), &self.browser)
    }

    /// Whether the entries about a thing are here, tracked.
    pub fn is_open(self, about: About) -> bool {
        self.open.with(|open| open.contains(&about))
    }

    /// Brings the entries about a thing here, if they are not yet.
    pub async fn bring(self, about: About) {
        if self.open.with_untracked(|open| open.contains(&about)) {
            return;
        }
        let store = self.store.get_value();
        match store.about(about).await {
            Ok(loaded) => {
                self.unreadable.update(|n| *n = (*n).max(loaded.unreadable));
                self.log
                    .update(|log| loaded.entries.into_iter().for_each(|e| log.add(e)));
                self.open.update(|open| open.push(about));
            }
            Err(fault) => {
                self.hurt(fault);
                // The screen then says that it is not here.
                self.open.update(|open| open.push(about));
            }
        }
    }

    /// The newest visits to a site, newest first, by the summary; tracked.
    pub fn visits_to(self, site: SiteId) -> Vec<VisitId> {
        const MOST: usize = 40;
        self.summary.with(|all| {
            let mine = all.visits().iter().filter(|line| line.site == site);
            mine.take(MOST).map(|line| line.id).collect()
        })
    }

    /// Brings them here, one after the other.
    pub async fn bring_past(self, site: SiteId) {
        for visit in leptos::prelude::untrack(|| self.visits_to(site)) {
            self.bring(About::Visit(visit)).await;
        }
    }

    /// The visit to a site before this one, by the summary.
    pub fn visit_before(self, visit: VisitId, site: SiteId) -> Option<VisitId> {
        self.summary.with_untracked(|all| {
            let mut mine = all.visits().iter().filter(|line| line.site == site);
            mine.find(|line| line.id == visit)?;
            mine.next().map(|line| line.id)
        })
    }

    /// Brings a visit and its site here, and the visit before it: what that one
    /// left stands at the top of this one.
    pub async fn bring_visit(self, id: VisitId) {
        // The summary knows the site before the entries do.
        let known = self.summary.with_untracked(|all| {
            let line = all.visits().iter().find(|line| line.id == id)?;
            Some(line.site)
        });
        if let Some(site) = known {
            if let Some(before) = self.visit_before(id, site) {
                self.bring(About::Visit(before)).await;
            }
            both(self.bring(About::Visit(id)), self.bring(About::Site(site))).await;
            return;
        }
        self.bring(About::Visit(id)).await;
        let site = self.log.with_untracked(|log| log.visit(id).map(|v| v.site));
        if let Some(site) = site {
            self.bring(About::Site(site)).await;
        }
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

    /// The entries of what is open, tracked.
    pub fn log(self) -> RwSignal<Log> {
        self.log
    }

    /// Entries stored by a newer build, which this one can't read.
    pub fn unreadable(self) -> usize {
        self.unreadable.get()
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
    /// again; `done` runs when they are on disk.
    pub fn write_then(self, about: About, bodies: Vec<Body>, done: impl FnOnce() + 'static) {
        self.write_and(about, bodies, Box::new(done));
    }

    fn write_and(self, about: About, bodies: Vec<Body>, done: After) {
        let entries = self.entries(about, bodies);
        spawn_local(async move {
            match self.keep(entries, true).await {
                true => done(),
                false => self.late.update_value(|late| late.push(done)),
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

    /// Keeps a file and the entries that speak of it, all or none. A file there is
    /// `only_once` waits with them when the store refuses.
    pub async fn keep_file(
        self,
        about: About,
        file: KeptFile,
        bodies: Vec<Body>,
        only_once: bool,
    ) -> bool {
        let entries = self.entries(about, bodies);
        let store = self.store.get_value();
        match store.keep_file(&file, &entries).await {
            Ok(changed) => {
                self.accept(entries, changed, true);
                true
            }
            Err(fault) => {
                if only_once {
                    self.wait(entries, Some(file));
                }
                self.hurt(fault);
                false
            }
        }
    }

    /// A kept file.
    pub async fn file(self, id: FileId) -> Option<KeptFile> {
        let store = self.store.get_value();
        store.file(id).await.unwrap_or_else(|fault| {
            self.hurt(fault);
            None
        })
    }

    /// Text kept under a key: half-typed fields and settings.
    pub fn text(self, key: &str) -> Option<String> {
        self.texts
            .with_value(|texts| texts.get(&key.to_owned()).cloned())
    }

    /// Keeps text under a key; empty text forgets it.
    pub fn keep_text(self, key: &str, text: &str) {
        self.keep_text_then(key, text, Box::new(|| {}));
    }

    /// The same, and then, when it is on disk or could not be, something more. Each
    /// write begins at once: the program may die at the next letter.
    pub fn keep_text_then(self, key: &str, text: &str, done: After) {
        let (key, mut text) = (key.to_owned(), text.to_owned());
        self.texts.update_value(|texts| match text.is_empty() {
            true => drop(texts.remove(&key)),
            false => texts.insert(key.clone(), text.clone()),
        });
        self.writing.update_value(|all| all.push(key.clone()));
        let store = self.store.get_value();
        spawn_local(async move {
            loop {
                let kept = match text.is_empty() {
                    true => store.drop_text(&key).await,
                    false => store.keep_text(&key, &text).await,
                };
                if let Err(fault) = kept {
                    self.hurt(fault);
                    break;
                }
                // One that was repeated may end after a later one: the last to end
                // writes what was typed last.
                let newest = self.text(&key).unwrap_or_default();
                let ways = |all: &Vec<String>| all.iter().filter(|k| **k == key).count();
                if newest == text || self.writing.with_value(ways) > 1 {
                    break;
                }
                text = newest;
            }
            self.writing.update_value(|all| {
                if let Some(at) = all.iter().position(|k| *k == key) {
                    all.swap_remove(at);
                }
            });
            done();
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

    /// `own` entries were made here and now; others come from elsewhere.
    async fn keep(self, entries: Vec<Entry>, own: bool) -> bool {
        let store = self.store.get_value();
        match store.append(&entries).await {
            Ok(changed) => {
                self.accept(entries, changed, own);
                true
            }
            Err(fault) => {
                self.wait(entries, None);
                self.hurt(fault);
                false
            }
        }
    }

    /// Takes in what the store has kept. Entries of things that are not open
    /// stay where they are: opening brings them all.
    fn accept(self, entries: Vec<Entry>, changed: Vec<Changed>, own: bool) {
        // What was thrown away stays said.
        let over = self.fault.with_untracked(|f| *f != Some(StoreError::Gone));
        if over && self.unsaved.with_untracked(Vec::is_empty) {
            self.fault.set(None);
        }
        let mut open = self.open.get_untracked();
        for entry in &entries {
            let begins = matches!(
                entry.body,
                Body::VisitOpened { .. } | Body::SiteDescribed { .. }
            );
            // What this phone has just begun holds no more than this; what
            // was there before is open when it is written about.
            if own && begins && !open.contains(&entry.about) {
                open.push(entry.about);
                self.open.set(open.clone());
            }
        }
        self.summary
            .update(|s| changed.into_iter().for_each(|c| s.put(c)));
        self.log.update(|log| {
            let here = |e: &Entry| open.contains(&e.about);
            entries.into_iter().filter(here).for_each(|e| log.add(e));
        });
    }
}

/// Two futures at once.
async fn both<A, B>(a: impl Future<Output = A>, b: impl Future<Output = B>) -> (A, B) {
    let (mut a, mut b) = (pin!(a), pin!(b));
    let (mut got_a, mut got_b) = (None, None);
    poll_fn(move |cx| {
        if got_a.is_none()
            && let Poll::Ready(got) = a.as_mut().poll(cx)
        {
            got_a = Some(got);
        }
        if got_b.is_none()
            && let Poll::Ready(got) = b.as_mut().poll(cx)
        {
            got_b = Some(got);
        }
        match (got_a.take(), got_b.take()) {
            (Some(a), Some(b)) => Poll::Ready((a, b)),
            (a, b) => {
                (got_a, got_b) = (a, b);
                Poll::Pending
            }
        }
    })
    .await
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
