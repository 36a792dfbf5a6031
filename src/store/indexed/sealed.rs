//! The lock, as far as the program knows of it. Rows are sealed and opened by
//! `public/lock.js`, as they go into the browser's storage and come out of it; the
//! cipher it calls for that is here.

use js_sys::{Array, Function, Promise, Reflect, Uint8Array, global};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::link::{told, words};
use crate::store::StoreError;
use crate::store::seal::{KEY, NONCE, Seal};

/// Calls what `public/lock.js` offers; for a name that is no function, what it is.
///
/// # Errors
/// [`StoreError::Failed`] when that script is not here, or throws.
pub fn lock_call(name: &str, given: &Array) -> Result<JsValue, StoreError> {
    let called = || {
        let offered = Reflect::get(&global(), &"coldsumpLock".into())?;
        let does: Function = Reflect::get(&offered, &name.into())?.dyn_into()?;
        Reflect::apply(&does, &offered, given)
    };
    called().map_err(|e| words(&e))
}

/// The same, and waits for its answer.
///
/// # Errors
/// As [`lock_call`].
pub async fn lock_wait(name: &str, given: &Array) -> Result<JsValue, StoreError> {
    let answer = JsFuture::from(Promise::resolve(&lock_call(name, given)?)).await;
    answer.map_err(|e| told(format!("{e:?}")))
}

/// Whether there is a lock.
pub fn has_lock() -> bool {
    lock_call("state", &Array::new()).is_ok_and(|state| state.is_truthy())
}

/// Bytes from the browser's source of randomness.
fn fresh() -> Option<[u8; NONCE]> {
    let mut bytes = [0; NONCE];
    let crypto = web_sys::window()?.crypto().ok()?;
    crypto.get_random_values_with_u8_array(&mut bytes).ok()?;
    Some(bytes)
}

/// Hands the cipher over: a function from a key to one that seals or opens bytes
/// for a place. Asked whether it seals, for which place, which bytes; answers
/// `undefined` for what does not open, and without randomness.
pub fn begin() {
    type Work = dyn Fn(bool, String, Vec<u8>) -> JsValue;
    let cipher = |key: Vec<u8>| {
        let Ok(key) = <[u8; KEY]>::try_from(key) else {
            return JsValue::UNDEFINED;
        };
        let seal = Seal::new(&key);
        let work = move |seals: bool, place: String, bytes: Vec<u8>| {
            let done = match seals {
                true => fresh().and_then(|nonce| seal.seal(nonce, &place, &bytes)),
                false => seal.open(&place, &bytes),
            };
            done.map_or(JsValue::UNDEFINED, |done| {
                Uint8Array::from(&done[..]).into()
            })
        };
        Closure::<Work>::new(work).into_js_value()
    };
    let cipher = Closure::<dyn Fn(Vec<u8>) -> JsValue>::new(cipher).into_js_value();
    let _ = lock_call("begin", &Array::of1(&cipher)); // a test's page may have no lock
}

/// Shows the lock that is kept, if one is.
///
/// # Errors
/// [`StoreError::Locked`] until the lock is open here; [`StoreError::Newer`] for one
/// that this build can't read.
pub fn meet(kept: Option<String>) -> Result<(), StoreError> {
    let met = lock_call("meet", &Array::of1(&kept.clone().into()));
    match met.map(|met| met.as_bool()) {
        Ok(Some(true)) => Ok(()),
        Ok(Some(false)) => Err(StoreError::Locked),
        Ok(None) => Err(StoreError::Newer),
        Err(fault) => kept.map_or(Ok(()), |_| Err(fault)),
    }
}
