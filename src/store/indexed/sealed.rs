//! The lock, as the program holds it. Rows are sealed and opened by
//! `public/lock.js` as they go into the browser's storage and come out of it; here
//! are its key, its cipher and what a passphrase does.

use std::cell::{Cell, RefCell};

use js_sys::{Array, Function, Promise, Reflect, Uint8Array, global};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::link::{told, words};
use super::{ENTRIES, IndexedStore, TEXTS};
use crate::record::bytes::base64;
use crate::store::StoreError;
use crate::store::lock::{Lock, LockState, ROUNDS};
use crate::store::seal::{KEY, Seal};

/// The lock of this store, if it has one, and its key while it is open.
#[derive(Default)]
pub struct Bolt {
    lock: RefCell<Option<Lock>>,
    key: Cell<Option<[u8; KEY]>>,
}

impl std::fmt::Debug for Bolt {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Bolt") // never the key
    }
}

/// Whether passphrases can be used here: the browser gives its cryptography only
/// to a page that came over https or from this machine.
pub fn can_lock() -> bool {
    let get = |of: &JsValue, key: &str| Reflect::get(of, &key.into()).unwrap_or_default();
    let crypto = get(&global(), "crypto");
    crypto.is_object() && get(&crypto, "subtle").is_object()
}

/// Calls what `public/lock.js` offers.
fn call(name: &str, given: &Array) -> Result<JsValue, StoreError> {
    let called = || {
        let offered = Reflect::get(&global(), &"coldsumpLock".into())?;
        let does: Function = Reflect::get(&offered, &name.into())?.dyn_into()?;
        Reflect::apply(&does, &offered, given)
    };
    called().map_err(|e| words(&e))
}

/// The same, and waits for its answer.
async fn wait_for(name: &str, given: &Array) -> Result<JsValue, StoreError> {
    let answer = JsFuture::from(Promise::resolve(&call(name, given)?)).await;
    answer.map_err(|e| told(format!("{e:?}")))
}

/// Bytes from the browser's source of randomness; without one nothing is sealed.
fn fresh<const N: usize>() -> Result<[u8; N], StoreError> {
    let mut bytes = [0; N];
    let crypto = web_sys::window().and_then(|w| w.crypto().ok());
    let crypto = crypto.ok_or(StoreError::Locked)?;
    let drawn = crypto.get_random_values_with_u8_array(&mut bytes);
    drawn.map_err(|e| words(&e))?;
    Ok(bytes)
}

/// The key that a passphrase comes to: PBKDF2-HMAC-SHA-256 (RFC 8018) of the
/// browser, over the passphrase in one form of its letters (NFKC; NIST SP 800-63B,
/// 5.1.1.2).
///
/// # Errors
/// [`StoreError::Failed`] where the browser gives no cryptography.
pub async fn stretched(
    passphrase: &str,
    salt: &[u8],
    rounds: u32,
) -> Result<[u8; KEY], StoreError> {
    let given = Array::of3(&passphrase.into(), &Uint8Array::from(salt), &rounds.into());
    let key = wait_for("stretched", &given).await?;
    let key = Uint8Array::new(&key).to_vec();
    key.try_into().map_err(|_| StoreError::Locked)
}

/// Seals or opens bytes for a place, as `public/lock.js` asks: whether it seals, the
/// place, the bytes; `undefined` for what does not open. It lives as long as the page.
fn cipher(key: &[u8; KEY]) -> JsValue {
    let seal = Seal::new(key);
    let work = move |seals: bool, place: String, bytes: Vec<u8>| {
        let done = match seals {
            true => fresh().ok().and_then(|n| seal.seal(n, &place, &bytes)),
            false => seal.open(&place, &bytes),
        };
        // Without randomness the row is not written: what calls this then fails.
        done.map_or(JsValue::UNDEFINED, |done| {
            Uint8Array::from(&done[..]).into()
        })
    };
    Closure::<dyn Fn(bool, String, Vec<u8>) -> JsValue>::new(work).into_js_value()
}

/// A sealed backup as a clear one; `None` when the passphrase is not its own.
///
/// # Errors
/// [`StoreError::Failed`] when it is no such document, or the browser gives no
/// cryptography.
pub async fn unsealed(
    backup: &JsValue,
    lock: &Lock,
    passphrase: &str,
) -> Result<Option<JsValue>, StoreError> {
    let by = stretched(passphrase, &lock.salt, lock.rounds).await?;
    let Some(key) = lock.open(&by) else {
        return Ok(None);
    };
    call("unsealed", &Array::of2(backup, &cipher(&key))).map(Some)
}

/// Lays rows that the store did not take on the page, for the one after a panic.
pub fn lay_open(entries: &Array, files: &Array) {
    let _ = call("wait", &Array::of2(entries, files)); // as good as it goes
}

impl Bolt {
    /// Takes note of the lock that the store has; refused while it is closed.
    pub fn meet(&self, kept: Option<Lock>) -> Result<(), StoreError> {
        let name = |lock: Option<&Lock>| lock.map(|lock| lock.name.clone());
        let same = name(self.lock.borrow().as_ref()) == name(kept.as_ref());
        if self.key.get().is_some() {
            return if same {
                Ok(())
            } else {
                Err(StoreError::Locked)
            };
        }
        let closed = kept.is_some();
        self.lock.replace(kept);
        if closed {
            Err(StoreError::Locked)
        } else {
            Ok(())
        }
    }
}

impl IndexedStore {
    /// The lock, open or not.
    pub fn lock(&self) -> Option<Lock> {
        self.bolt.lock.borrow().clone()
    }

    /// Whether a rewrite was begun and is not at its end.
    pub fn unfinished(&self) -> bool {
        self.lock().is_some_and(|lock| lock.state != LockState::On)
    }

    /// Opens the lock; false when the passphrase is another.
    ///
    /// # Errors
    /// [`StoreError::Failed`] where the browser gives no cryptography.
    pub async fn unlock(&self, passphrase: &str) -> Result<bool, StoreError> {
        let Some(lock) = self.lock() else {
            return Ok(true);
        };
        let by = stretched(passphrase, &lock.salt, lock.rounds).await?;
        let Some(key) = lock.open(&by) else {
            return Ok(false);
        };
        call("hold", &Array::of2(&lock.write().into(), &cipher(&key)))?;
        self.bolt.key.set(Some(key));
        Ok(true)
    }

    /// Keeps another lock, or none, and holds it from then on.
    async fn keep(&self, lock: Option<Lock>, key: [u8; KEY], anew: bool) -> Result<(), StoreError> {
        let text = lock.as_ref().map(Lock::write);
        let given = Array::of3(&text.into(), &cipher(&key), &anew.into());
        wait_for("keep", &given).await?;
        self.bolt.key.set(lock.is_some().then_some(key));
        self.bolt.lock.replace(lock);
        Ok(())
    }

    /// Puts a lock on, or gives the one that is open another passphrase. From then
    /// on what is written is sealed; what is here already is by
    /// [`IndexedStore::rewrite`].
    ///
    /// # Errors
    /// As [`crate::store::Store::append`]; [`StoreError::Locked`] when another tab
    /// has put one on.
    pub async fn lock_by(&self, passphrase: &str) -> Result<(), StoreError> {
        let known = self.lock().zip(self.bolt.key.get());
        let (name, state, key) = match known {
            Some((lock, key)) => (lock.name, lock.state, key),
            None => (base64(&fresh::<9>()?), LockState::Closing, fresh()?),
        };
        let salt: [u8; 16] = fresh()?;
        let by = stretched(passphrase, &salt, ROUNDS).await?;
        let lock = Lock::new(name, salt.to_vec(), fresh()?, &by, &key);
        let lock = lock.map(|lock| lock.at(state));
        self.keep(Some(lock.ok_or(StoreError::Locked)?), key, false)
            .await
    }

    /// Begins to take the lock off, or to seal again: [`IndexedStore::rewrite`]
    /// does it.
    async fn turn(&self, state: Option<LockState>) -> Result<(), StoreError> {
        let Some((lock, key)) = self.lock().zip(self.bolt.key.get()) else {
            return Err(StoreError::Locked);
        };
        let lock = state.map(|state| lock.at(state));
        self.keep(lock, key, false).await
    }

    /// Begins to take the lock off: [`IndexedStore::rewrite`] does it.
    ///
    /// # Errors
    /// As [`IndexedStore::lock_by`].
    pub async fn take_lock_off(&self) -> Result<(), StoreError> {
        self.turn(Some(LockState::Opening)).await
    }

    /// The lock again, in a store that was thrown away and begins anew.
    ///
    /// # Errors
    /// As [`IndexedStore::lock_by`].
    pub async fn lock_anew(&self) -> Result<(), StoreError> {
        match self.lock().zip(self.bolt.key.get()) {
            Some((lock, key)) => self.keep(Some(lock), key, true).await,
            None => Ok(()),
        }
    }

    /// Seals or opens every row that is not yet as the lock's state wants it, in
    /// batches; `told` hears how many rows of how many are done. Answers how many
    /// rows did not open: the lock then stays on.
    ///
    /// # Errors
    /// As [`crate::store::Store::append`]. What is done is done, and the next call
    /// goes on.
    pub async fn rewrite(&self, told: impl Fn(u32, u32) + 'static) -> Result<u32, StoreError> {
        let told = Closure::<dyn Fn(u32, u32)>::new(told);
        let given = Array::of1(told.as_ref());
        let mut failed = 0;
        loop {
            let unopened = wait_for("rewrite", &given).await?.as_f64();
            failed += unopened.unwrap_or(0.0) as u32;
            let next = match self.lock().map(|lock| lock.state) {
                Some(LockState::Opening) if failed == 0 => None,
                // What would be lost keeps the lock on, over all of it.
                Some(LockState::Opening) => Some(LockState::Closing),
                Some(LockState::Closing) => Some(LockState::On),
                _ => return Ok(failed),
            };
            self.turn(next).await?;
            if next != Some(LockState::Closing) {
                return Ok(failed);
            }
        }
    }

    /// A setting, which is never sealed.
    pub async fn setting(&self, key: &str) -> Option<String> {
        let tx = self.read(TEXTS).ok()?;
        let row = tx.store(TEXTS).ok()?.get(key.into()).await.ok()??;
        let text = Reflect::get(&row, &"text".into()).ok()?;
        text.as_string()
    }

    /// How many entries are kept, sealed or not.
    pub async fn count(&self) -> u32 {
        let Ok(tx) = self.read(ENTRIES) else { return 0 };
        let Ok(entries) = tx.store(ENTRIES) else {
            return 0;
        };
        let keys = entries.get_all_keys(None, None).await;
        keys.map_or(0, |keys| keys.len() as u32)
    }
}
