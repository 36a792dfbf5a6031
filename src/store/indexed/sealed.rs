//! Rows under the lock: sealed as they are written, opened as they are read,
//! and all of them rewritten when the lock is turned on or off.
//!
//! A sealed row keeps its keys and has `sealed` in place of all else: the row as
//! JSON, after it, for a file, a new line and its bytes. A sealed line is the
//! bytes alone. A reader takes clear and sealed rows, so a rewrite may stop at
//! any moment; the lock's state says that it did.

use std::cell::RefCell;

use js_sys::{JSON, Object, Reflect, Uint8Array};
use rexie::{Error, KeyRange, Transaction};
use wasm_bindgen::{JsCast, JsValue};

use super::link::{TRIES, failure, finish, words};
use super::passphrase::{fresh, stretched};
use super::row::{Text, to_js};
use super::{ENTRIES, FILES, IndexedStore, LINES, TEXTS};
use crate::store::lock::{LOCK, Lock, LockState};
use crate::store::seal::Seal;
use crate::store::{DEVICE, SUMMARY, StoreError, both};

/// The lock of this store, if it has one, and its key when it is open.
#[derive(Debug, Default)]
pub struct Bolt {
    lock: RefCell<Option<Lock>>,
    open: RefCell<Option<Open>>,
}

struct Open {
    key: [u8; 32],
    seal: Seal,
}

impl std::fmt::Debug for Open {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Open") // never the key
    }
}

/// The keys that a row keeps when it is sealed.
fn keys(store: &str) -> &'static [&'static str] {
    match store {
        ENTRIES => &["id", "about"],
        FILES => &["id"],
        _ => &["key"],
    }
}

/// What stays clear: what is asked for before the lock is open, and the phone's
/// random name.
fn stays_clear(key: &str) -> bool {
    key == LOCK || key == SUMMARY || key == DEVICE || key.starts_with("setting ")
}

fn get(row: &JsValue, key: &str) -> JsValue {
    Reflect::get(row, &key.into()).unwrap_or_default()
}

fn set(row: &JsValue, key: &str, value: &JsValue) {
    let _ = Reflect::set(row, &key.into(), value); // on an object of our own
}

/// Where a row stands, which what is sealed in it is bound to.
fn place(store: &str, row: &JsValue) -> String {
    let mut place = store.to_owned();
    for key in keys(store) {
        place.push(' ');
        place.push_str(&get(row, key).as_string().unwrap_or_default());
    }
    place
}

fn bytes_of(value: &JsValue) -> Option<Vec<u8>> {
    value.dyn_ref::<Uint8Array>().map(Uint8Array::to_vec)
}

impl Bolt {
    /// A lock opened by a passphrase; `None` when that is another's.
    ///
    /// # Errors
    /// [`StoreError::Failed`] where the browser gives no cryptography.
    pub async fn opened_by(lock: Lock, passphrase: &str) -> Result<Option<Self>, StoreError> {
        let by = stretched(passphrase, &lock.salt, lock.rounds).await?;
        let Some(key) = lock.open(&by) else {
            return Ok(None);
        };
        let bolt = Self::default();
        *bolt.lock.borrow_mut() = Some(lock);
        bolt.hold(key);
        Ok(Some(bolt))
    }

    fn hold(&self, key: [u8; 32]) {
        let seal = Seal::new(&key);
        *self.open.borrow_mut() = Some(Open { key, seal });
    }

    /// Whether rows are to be sealed as they are written.
    fn seals(&self) -> bool {
        let lock = self.lock.borrow();
        let seals = |lock: &Lock| lock.state != LockState::Opening;
        self.open.borrow().is_some() && lock.as_ref().is_some_and(seals)
    }

    fn close(&self, place: &str, clear: &[u8]) -> Result<Uint8Array, StoreError> {
        let open = self.open.borrow();
        let sealed = match &*open {
            Some(open) => open.seal.seal(fresh()?, place, clear),
            None => None,
        };
        let sealed = sealed.ok_or(StoreError::Locked)?;
        Ok(Uint8Array::from(sealed.as_slice()))
    }

    fn reveal(&self, place: &str, sealed: &JsValue) -> Option<Vec<u8>> {
        let open = self.open.borrow();
        open.as_ref()?.seal.open(place, &bytes_of(sealed)?)
    }

    /// A row as it is to be written.
    pub fn row(&self, store: &str, row: JsValue) -> Result<JsValue, StoreError> {
        let exempt = store == TEXTS
            && get(&row, "key")
                .as_string()
                .is_some_and(|k| stays_clear(&k));
        if !self.seals() || exempt {
            return Ok(row);
        }
        let sealed = Object::new();
        for key in keys(store) {
            set(&sealed, key, &get(&row, key));
        }
        let bytes = bytes_of(&get(&row, "bytes"));
        let head = match &bytes {
            // Not the bytes, but the row stays as it is: it may be tried again.
            Some(_) => {
                let head = Object::assign(&Object::new(), row.unchecked_ref());
                set(&head, "bytes", &JsValue::UNDEFINED);
                head.into()
            }
            None => row,
        };
        let text = JSON::stringify(&head).map_err(|e| words(&e))?;
        let mut clear = String::from(text).into_bytes();
        if let Some(bytes) = bytes {
            clear.push(b'\n');
            clear.extend(bytes);
        }
        let closed = self.close(&place(store, &sealed), &clear)?;
        set(&sealed, "sealed", &closed);
        Ok(sealed.into())
    }

    /// A row as it was before it was sealed; `None` when it does not open here.
    pub fn opened(&self, store: &str, row: JsValue) -> Option<JsValue> {
        let sealed = get(&row, "sealed");
        if sealed.is_undefined() {
            return Some(row);
        }
        let clear = self.reveal(&place(store, &row), &sealed)?;
        let end = clear.iter().position(|b| *b == b'\n');
        let head = &clear[..end.unwrap_or(clear.len())];
        let row = JSON::parse(std::str::from_utf8(head).ok()?).ok()?;
        if let Some(end) = end {
            set(&row, "bytes", &Uint8Array::from(&clear[end + 1..]));
        }
        Some(row)
    }

    /// A line as it is to be written under its key.
    pub fn line(&self, key: &str, line: &str) -> Result<JsValue, StoreError> {
        match self.seals() {
            true => Ok(self
                .close(&format!("{LINES} {key}"), line.as_bytes())?
                .into()),
            false => Ok(line.into()),
        }
    }

    /// The text of a line that was kept under this key.
    pub fn line_text(&self, key: &str, kept: &JsValue) -> Option<String> {
        kept.as_string().or_else(|| {
            let clear = self.reveal(&format!("{LINES} {key}"), kept)?;
            String::from_utf8(clear).ok()
        })
    }

    /// What a row or a line is to be now; `None` when it is so already, and an
    /// error in it when it does not open.
    fn turned(
        &self,
        store: &str,
        key: &JsValue,
        kept: &JsValue,
    ) -> Result<Option<JsValue>, StoreError> {
        let is_sealed = match store {
            LINES => kept.is_object(),
            _ => !get(kept, "sealed").is_undefined(),
        };
        if is_sealed == self.seals() {
            return Ok(None);
        }
        let name = key.as_string().unwrap_or_default();
        let new = match (store, is_sealed) {
            (LINES, false) => self.line(&name, &kept.as_string().unwrap_or_default())?,
            (LINES, true) => self
                .line_text(&name, kept)
                .ok_or(StoreError::Locked)?
                .into(),
            (_, false) => self.row(store, kept.clone())?,
            (_, true) => self.opened(store, kept.clone()).ok_or(StoreError::Locked)?,
        };
        Ok(Some(new))
    }

    fn is_open(&self) -> bool {
        self.open.borrow().is_some()
    }

    /// Takes note of the lock that the store has; refused while it is closed.
    pub fn meet(&self, kept: Option<Lock>) -> Result<(), StoreError> {
        let known = self.lock.borrow().as_ref().map(|lock| lock.name.clone());
        let same = known == kept.as_ref().map(|lock| lock.name.clone());
        if self.is_open() {
            // With another's rows the key at hand would do harm.
            return if same {
                Ok(())
            } else {
                Err(StoreError::Locked)
            };
        }
        let is_closed = kept.is_some();
        *self.lock.borrow_mut() = kept;
        if is_closed {
            Err(StoreError::Locked)
        } else {
            Ok(())
        }
    }

    /// Whether the store's lock still is the one that rows are sealed for.
    fn is(&self, kept: Option<&Lock>) -> bool {
        let lock = self.lock.borrow();
        let known = lock.as_ref().filter(|_| self.is_open());
        let of = |lock: &Lock| (lock.name.clone(), lock.state == LockState::Opening);
        known.map(of) == kept.map(of)
    }
}

/// Reads a lock out of its row.
pub fn lock_in(row: JsValue) -> Option<Lock> {
    Lock::read(&get(&row, "text").as_string()?)
}

/// Whether the store's lock still is this tab's. Asked in every write: another
/// tab may have turned it on or off, and what this one seals then would open for
/// nobody.
pub async fn ours(tx: &Transaction, bolt: &Bolt) -> Result<bool, Error> {
    let row = tx.store(TEXTS)?.get(LOCK.into()).await?;
    let row = row.filter(JsValue::is_object);
    let lock = row.clone().and_then(lock_in);
    // One that can't be read is of a newer build.
    Ok(lock.is_some() == row.is_some() && bolt.is(lock.as_ref()))
}

impl IndexedStore {
    /// The lock, open or not.
    pub fn lock(&self) -> Option<Lock> {
        self.bolt.lock.borrow().clone()
    }

    /// Opens the lock; false when the passphrase is another.
    ///
    /// # Errors
    /// [`StoreError::Failed`] where the browser gives no cryptography.
    pub async fn unlock(&self, passphrase: &str) -> Result<bool, StoreError> {
        let Some(lock) = self.lock() else {
            return Ok(true);
        };
        let opened = Bolt::opened_by(lock, passphrase).await?;
        let Some(open) = opened.and_then(|bolt| bolt.open.take()) else {
            return Ok(false);
        };
        self.bolt.open.replace(Some(open));
        Ok(true)
    }

    /// Keeps the lock as it is, beside records: so it is written through.
    async fn keep_lock(&self) -> Result<(), StoreError> {
        let text = self.lock().as_ref().map(Lock::write);
        let row = text.map(|text| {
            to_js(&Text {
                key: LOCK.into(),
                text,
            })
        });
        let row = row.transpose()?;
        let tx = self.begin(&[TEXTS, ENTRIES])?;
        let outcome = async {
            let texts = tx.store(TEXTS)?;
            match &row {
                Some(row) => texts.put(row, None).await.map(drop),
                None => texts.delete(LOCK.into()).await,
            }
        };
        let outcome = outcome.await;
        finish(tx, Ok(true), outcome).await
    }

    /// Closes a lock over the key by a passphrase, and keeps it.
    async fn close_by(
        &self,
        passphrase: &str,
        key: [u8; 32],
        name: String,
        state: LockState,
    ) -> Result<(), StoreError> {
        let salt: [u8; 16] = fresh()?;
        let by = stretched(passphrase, &salt, crate::store::lock::ROUNDS).await?;
        let lock = Lock::new(name, salt.to_vec(), fresh()?, &by, &key);
        let mut lock = lock.ok_or(StoreError::Locked)?;
        lock.state = state;
        let before = self.bolt.lock.replace(Some(lock));
        let kept = self.keep_lock().await;
        match kept {
            Ok(()) => self.bolt.hold(key),
            Err(_) => drop(self.bolt.lock.replace(before)),
        }
        kept
    }

    /// Puts a lock on: from now on what is written is sealed. What is here
    /// already is by [`IndexedStore::rewrite`].
    ///
    /// # Errors
    /// As [`crate::store::Store::append`].
    pub async fn put_lock(&self, passphrase: &str) -> Result<(), StoreError> {
        // Only over a store that has none.
        let tx = self.read(TEXTS)?;
        if !ours(&tx, &self.bolt).await.map_err(failure)? || self.lock().is_some() {
            return Err(StoreError::Locked);
        }
        let name = crate::record::bytes::base64(&fresh::<9>()?);
        self.close_by(passphrase, fresh()?, name, LockState::Closing)
            .await
    }

    /// Another passphrase for the same lock.
    ///
    /// # Errors
    /// As [`IndexedStore::put_lock`].
    pub async fn new_passphrase(&self, passphrase: &str) -> Result<(), StoreError> {
        let key = self.bolt.open.borrow().as_ref().map(|open| open.key);
        let (Some(key), Some(lock)) = (key, self.lock()) else {
            return Err(StoreError::Locked);
        };
        self.close_by(passphrase, key, lock.name, lock.state).await
    }

    /// Begins to take the lock off: [`IndexedStore::rewrite`] does it.
    ///
    /// # Errors
    /// As [`IndexedStore::put_lock`].
    pub async fn take_lock_off(&self) -> Result<(), StoreError> {
        self.turn(LockState::Opening).await
    }

    async fn turn(&self, state: LockState) -> Result<(), StoreError> {
        let before = self.lock();
        if let Some(lock) = self.bolt.lock.borrow_mut().as_mut() {
            lock.state = state;
        }
        let kept = self.keep_lock().await;
        if kept.is_err() {
            self.bolt.lock.replace(before);
        }
        kept
    }

    /// The lock again, in a store that was thrown away and begins anew.
    ///
    /// # Errors
    /// As [`IndexedStore::put_lock`].
    pub async fn lock_anew(&self) -> Result<(), StoreError> {
        match self.lock() {
            Some(_) => self.keep_lock().await,
            None => Ok(()),
        }
    }

    /// A setting, which is never sealed.
    pub async fn setting(&self, key: &str) -> Option<String> {
        let tx = self.read(TEXTS).ok()?;
        let row = tx.store(TEXTS).ok()?.get(key.into()).await.ok()??;
        get(&row, "text").as_string()
    }

    /// How many entries are kept, sealed or not.
    pub async fn count(&self) -> u32 {
        let Ok(tx) = self.read(ENTRIES) else { return 0 };
        let Ok(entries) = tx.store(ENTRIES) else {
            return 0;
        };
        entries.count(None).await.unwrap_or(0)
    }

    /// Whether a rewrite was begun and is not at its end.
    pub fn unfinished(&self) -> bool {
        self.lock().is_some_and(|lock| lock.state != LockState::On)
    }

    /// Seals or opens every row that is not yet as the lock's state wants it, in
    /// batches; `told` hears how many rows of how many are done. Answers how many
    /// rows did not open: the lock then stays on.
    ///
    /// # Errors
    /// As [`crate::store::Store::append`]. What is done is done, and the next
    /// call goes on.
    pub async fn rewrite(&self, told: &dyn Fn(u32, u32)) -> Result<u32, StoreError> {
        let failed = self.pass(told).await?;
        match self.lock().map(|lock| lock.state) {
            Some(LockState::Opening) if failed == 0 => {
                let lock = self.bolt.lock.replace(None);
                if let Err(fault) = self.keep_lock().await {
                    self.bolt.lock.replace(lock);
                    return Err(fault);
                }
                self.bolt.open.replace(None);
            }
            Some(LockState::Opening) => {
                self.turn(LockState::Closing).await?;
                self.pass(told).await?;
                self.turn(LockState::On).await?;
            }
            Some(LockState::Closing) => self.turn(LockState::On).await?,
            _ => {}
        }
        Ok(failed)
    }

    async fn pass(&self, told: &dyn Fn(u32, u32)) -> Result<u32, StoreError> {
        const STORES: [(&str, u32); 4] = [(ENTRIES, 200), (LINES, 200), (TEXTS, 200), (FILES, 4)];
        let (mut all, mut done, mut failed) = (0, 0, 0);
        for (store, _) in STORES {
            let tx = self.read(store)?;
            let count = tx.store(store).map_err(failure)?.count(None).await;
            all += count.map_err(failure)?;
        }
        for (store, count) in STORES {
            let mut after = None;
            let mut tries = 0;
            loop {
                told(done, all.max(done));
                let round = self.link.round();
                match self.batch(store, after.clone(), count).await {
                    Err(StoreError::Lost) if tries < TRIES => {
                        tries += 1;
                        self.link.mend(round, tries).await?;
                    }
                    Err(fault) => return Err(fault),
                    Ok((0, ..)) => break,
                    Ok((rows, last, unopened)) => {
                        tries = 0;
                        done += rows;
                        failed += unopened;
                        after = last;
                    }
                }
            }
        }
        told(all, all);
        Ok(failed)
    }

    /// Rewrites the next rows after a key: how many there were, the last one's
    /// key, and how many did not open.
    async fn batch(
        &self,
        store: &str,
        after: Option<JsValue>,
        count: u32,
    ) -> Result<(u32, Option<JsValue>, u32), StoreError> {
        let tx = self.begin(&[store, TEXTS])?;
        let range = || {
            let from = after.as_ref();
            let range = from.map(|key| KeyRange::lower_bound(key, Some(true)));
            range.transpose()
        };
        let mut unopened = 0;
        let work = async {
            let rows = tx.store(store)?;
            let keys = rows.get_all_keys(range()?, Some(count)).await?;
            let kept = rows.get_all(range()?, Some(count)).await?;
            for (key, row) in keys.iter().zip(&kept) {
                match self.bolt.turned(store, key, row) {
                    Ok(None) => {}
                    Ok(Some(new)) => {
                        let beside = (store == LINES).then_some(key);
                        rows.put(&new, beside).await?;
                    }
                    Err(_) => unopened += 1,
                }
            }
            Ok((keys.len() as u32, keys.last().cloned()))
        };
        let (ours, outcome) = both(ours(&tx, &self.bolt), work).await;
        let (rows, last) = finish(tx, ours, outcome).await?;
        Ok((rows, last, unopened))
    }
}
