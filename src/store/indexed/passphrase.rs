//! From a passphrase to a key, by the browser's own PBKDF2; and its randomness.

use js_sys::{Array, JsString, Object, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{CryptoKey, SubtleCrypto};

use super::link::words;
use crate::store::StoreError;
use crate::store::seal::KEY;

/// The browser's cryptography, which it gives only to a page that came over
/// https or from this machine.
fn subtle() -> Option<SubtleCrypto> {
    let crypto = web_sys::window()?.crypto().ok()?;
    let subtle = crypto.subtle();
    subtle.is_object().then_some(subtle)
}

/// Whether passphrases can be used here.
pub fn can_lock() -> bool {
    subtle().is_some()
}

/// The key that a passphrase comes to: PBKDF2-HMAC-SHA-256 (RFC 8018), 32 bytes.
/// The passphrase is brought to one form of its letters first (NFKC), so that
/// every keyboard gives the same (NIST SP 800-63B, 5.1.1.2).
///
/// # Errors
/// [`StoreError::Failed`] where the browser gives no cryptography.
pub async fn stretched(
    passphrase: &str,
    salt: &[u8],
    rounds: u32,
) -> Result<[u8; KEY], StoreError> {
    let subtle = subtle().ok_or_else(|| StoreError::Failed("no WebCrypto".into()))?;
    let text = String::from(JsString::from(passphrase).normalize("NFKC"));
    let raw = Uint8Array::from(text.as_bytes());
    let uses = Array::of1(&"deriveBits".into());
    let key = subtle.import_key_with_str("raw", &raw, "PBKDF2", false, &uses);
    let key = JsFuture::from(key.map_err(|e| words(&e))?).await;
    let key: CryptoKey = key.map_err(|e| words(&e))?.unchecked_into();
    let how = Object::new();
    let salt = Uint8Array::from(salt);
    for (name, value) in [
        ("name", JsValue::from("PBKDF2")),
        ("hash", "SHA-256".into()),
        ("salt", salt.into()),
        ("iterations", rounds.into()),
    ] {
        let _ = Reflect::set(&how, &name.into(), &value);
    }
    let bits = subtle.derive_bits_with_object(&how, &key, 8 * KEY as u32);
    let bits = JsFuture::from(bits.map_err(|e| words(&e))?).await;
    let bits = Uint8Array::new(&bits.map_err(|e| words(&e))?);
    let mut out = [0; KEY];
    if bits.length() as usize != KEY {
        return Err(StoreError::Failed("PBKDF2".into()));
    }
    bits.copy_to(&mut out);
    Ok(out)
}

/// Bytes from the browser's source of randomness.
///
/// # Errors
/// [`StoreError::Failed`] where there is none: nothing is then sealed.
pub fn fresh<const N: usize>() -> Result<[u8; N], StoreError> {
    let mut bytes = [0; N];
    let crypto = web_sys::window().and_then(|w| w.crypto().ok());
    let crypto = crypto.ok_or_else(|| StoreError::Failed("no randomness".into()))?;
    let drawn = crypto.get_random_values_with_u8_array(&mut bytes);
    drawn.map_err(|e| words(&e))?;
    Ok(bytes)
}
