//! In a browser: the lock over the records. Sealed at rest, opened by one
//! passphrase, put on and taken off through any stop in the middle.
#![cfg(target_arch = "wasm32")]

#[path = "fixtures/lock_page.rs"]
mod lock_page;
#[path = "visit/store_contract.rs"]
mod store_contract;

use coldsump::store::{LOCK, Store, StoreError, lock_wait};
use js_sys::{Array, Uint8Array};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

use lock_page::*;
use store_contract::{entries, file, many, store_contract};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
async fn a_locked_store_keeps_the_contract() {
    let store = fresh().await;
    lock_by(PASSPHRASE).await.expect("locked");
    rewrite().await.expect("nothing to seal");
    store_contract(&store).await;
    let rows = disk().await;
    let entries = rows.iter().filter(|row| row.starts_with("entries "));
    for row in entries {
        assert!(
            row.contains("\"sealed\":\"#") && !row.contains("\"entry\""),
            "{row}"
        );
    }
    assert!(rows.iter().all(|row| !row.contains("Halden")));
}

#[wasm_bindgen_test]
async fn on_through_a_new_start_and_off_again() {
    let store = lived_in().await;
    let before = disk().await;
    assert_eq!(state(), None);
    lock_by(PASSPHRASE).await.expect("locked");
    assert_eq!(state().as_deref(), Some("closing"));
    // While it is sealed: what is written now is sealed, what was is read.
    let draft = store.keep_text("draft proof", "Dry on arriv").await;
    draft.expect("kept");
    is_lived_in(&store).await;
    js_sys::eval("window.told = []").expect("it runs");
    assert_eq!(rewrite().await, Ok(0.0));
    assert_eq!(state().as_deref(), Some("on"));
    is_lived_in(&store).await;
    let sound = format!(
        "told.length > 4 && told.every(([now, all], n) => now <= all && now >= (told[n - 1]?.[0] ?? 0))
         && told.at(-1)[0] === told.at(-1)[1] && told.at(-1)[1] === {}",
        before.len() + 1
    );
    assert_eq!(js_sys::eval(&sound).expect("it runs").as_bool(), Some(true));
    no_clear_text(&disk().await);

    // A new start: nothing is read before the passphrase, and no other opens it.
    let next = again().await;
    assert_eq!(next.texts().await, Err(StoreError::Locked));
    assert_eq!(unlock("five words of no sens").await, Ok(false));
    assert_eq!(unlock("Five words of no sense").await, Ok(false));
    assert_eq!(next.texts().await, Err(StoreError::Locked));
    assert_eq!(next.append(&entries()).await, Err(StoreError::Locked));
    assert_eq!(unlock(PASSPHRASE).await, Ok(true));
    is_lived_in(&next).await;

    // Another passphrase seals the key alone anew.
    let sealed = disk().await;
    lock_by("another one").await.expect("changed");
    let changed = disk().await;
    let differ = sealed.iter().zip(&changed).filter(|(a, b)| a != b);
    let differ: Vec<_> = differ.map(|(row, _)| row.as_str()).collect();
    assert!(matches!(differ[..], [row] if row.starts_with("texts lock ")));
    let third = again().await;
    assert_eq!(third.texts().await, Err(StoreError::Locked));
    assert_eq!(unlock(PASSPHRASE).await, Ok(false));
    assert_eq!(unlock("another one").await, Ok(true));

    take_off().await.expect("begun");
    assert_eq!(rewrite().await, Ok(0.0));
    assert_eq!(state(), None);
    is_lived_in(&third).await;
    assert_eq!(disk().await, before, "row for row as it was");
    is_lived_in(&again().await).await;
}

#[wasm_bindgen_test]
async fn a_rewrite_that_stops_anywhere_goes_on() {
    lived_in().await;
    let before = disk().await;
    // Before the lock itself is kept: then there is none.
    full_after(Some(0));
    assert!(lock_by(PASSPHRASE).await.is_err());
    full_after(None);
    assert!(state().is_none() && disk().await == before);
    lock_by(PASSPHRASE).await.expect("locked");
    // In the first batch, in a later one, and at the last row.
    for after in [Some(100), Some(200), None] {
        let store = unlocked().await;
        let rows = disk().await;
        let clear = rows
            .iter()
            .filter(|row| !row.contains("\"sealed\""))
            .count();
        // The lock and a setting stay clear.
        full_after(Some(after.unwrap_or(clear as u32 - 3)));
        assert_eq!(rewrite().await, Err(StoreError::Full));
        full_after(None);
        assert_eq!(state().as_deref(), Some("closing"));
        is_lived_in(&store).await;
    }
    let store = unlocked().await;
    rewrite().await.expect("sealed");
    assert_eq!(state().as_deref(), Some("on"));
    no_clear_text(&disk().await);
    is_lived_in(&store).await;

    take_off().await.expect("begun");
    for after in [0, 250] {
        let store = unlocked().await;
        full_after(Some(after));
        assert_eq!(rewrite().await, Err(StoreError::Full));
        full_after(None);
        assert_eq!(state().as_deref(), Some("opening"));
        is_lived_in(&store).await;
    }
    unlocked().await;
    rewrite().await.expect("opened");
    assert_eq!(disk().await, before);
}

#[wasm_bindgen_test]
async fn a_tab_that_missed_the_lock_writes_nothing() {
    let tab = lived_in().await;
    lock_by(PASSPHRASE).await.expect("locked");
    rewrite().await.expect("sealed");
    let sealed = disk().await;
    let on = lock_text().await;
    let new = many()[..1].to_vec();
    let refused = async || {
        let locked = Some(StoreError::Locked);
        assert_eq!(tab.append(&new).await.err(), locked);
        assert_eq!(tab.keep_text("draft a", "b").await.err(), locked);
        assert_eq!(tab.drop_text("draft proof").await.err(), locked);
        assert_eq!(tab.keep_file(&file(), &[]).await.err(), locked);
    };
    // A tab that was open before.
    other_tab();
    refused().await;
    assert_eq!(tab.raw_entries().await.err(), Some(StoreError::Locked));
    assert_eq!(lock_by("another one").await, Err(StoreError::Locked));
    assert_eq!(disk().await, sealed, "nothing clear came in");

    // And one that still holds the key while the lock is taken off, and when it is
    // off: what it sealed would open for nobody.
    tab_with(&on).await;
    take_off().await.expect("begun");
    let opening = lock_text().await;
    tab_with(&on).await;
    refused().await;
    assert_eq!(rewrite().await, Err(StoreError::Locked));
    tab_with(&opening).await;
    rewrite().await.expect("opened");
    let open = disk().await;
    tab_with(&on).await;
    refused().await;
    assert_eq!(lock_by("another one").await, Err(StoreError::Locked));
    // A second lock is another one, by whatever passphrase.
    other_tab();
    lock_by(PASSPHRASE).await.expect("locked");
    let second = lock_text().await;
    tab_with(&on).await;
    refused().await;
    tab_with(&second).await;
    take_off().await.expect("begun");
    rewrite().await.expect("opened");
    assert_eq!(disk().await, open);
}

/// The store was thrown away under a lock: it comes back first, with what is sealed
/// for it after it.
#[wasm_bindgen_test]
async fn a_lock_is_put_on_anew_over_an_emptied_store() {
    let store = lived_in().await;
    lock_by(PASSPHRASE).await.expect("locked");
    rewrite().await.expect("sealed");
    for name in STORES {
        behind(name, "store.clear();").await;
    }
    assert_eq!(store.append(&entries()).await, Err(StoreError::Locked));
    lock_wait("anew", &Array::new()).await.expect("kept");
    store.append(&entries()).await.expect("kept");
    let store = unlocked().await;
    assert_eq!(store.load().await.expect("load").entries, entries());
    assert!(disk().await.iter().all(|row| !row.contains("Halden")));
}

#[wasm_bindgen_test]
async fn rows_that_were_swapped_or_changed_do_not_open() {
    let store = lived_in().await;
    lock_by(PASSPHRASE).await.expect("locked");
    rewrite().await.expect("sealed");
    let sealed = disk().await.len();
    let all = store.load().await.expect("load").entries.len();
    behind(
        "entries",
        "const [a, b, c] = rows;
         [a.sealed, b.sealed] = [b.sealed, a.sealed];
         c.sealed[40] ^= 1;
         [a, b, c].forEach(put);",
    )
    .await;
    let loaded = store.load().await.expect("load");
    assert_eq!((loaded.entries.len(), loaded.unreadable), (all - 3, 3));
    // Under another thing's name it does not open either.
    behind(
        "entries",
        "const { about } = rows.find((row) => row.about !== rows[3].about);
         put({ ...rows[3], about });",
    )
    .await;
    assert_eq!(store.load().await.expect("load").unreadable, 4);
    behind("files", "rows[0].sealed[60] ^= 128; put(rows[0]);").await;
    assert!(matches!(
        store.file(file().id).await,
        Err(StoreError::Failed(_))
    ));
    // The lock can't be taken off over what would be lost: it stays, and all
    // that opens is sealed again.
    take_off().await.expect("begun");
    assert_eq!(rewrite().await, Ok(5.0));
    assert_eq!(state().as_deref(), Some("on"));
    let rows = disk().await;
    no_clear_text(&rows);
    assert_eq!(rows.len(), sealed);
    let loaded = unlocked().await.load().await.expect("load");
    assert_eq!((loaded.entries.len(), loaded.unreadable), (all - 4, 4));
}

/// PBKDF2-HMAC-SHA-256: the first 32 bytes of the vectors in RFC 7914, section 11.
#[wasm_bindgen_test]
async fn the_passphrase_s_key_is_the_standard_s() {
    page();
    let stretched = async |passphrase: &str, salt: &[u8], rounds: u32| {
        let given = Array::of3(&passphrase.into(), &Uint8Array::from(salt), &rounds.into());
        let key = lock_wait("stretched", &given).await.expect("a key");
        let key = Uint8Array::new(&key).to_vec();
        key.iter().map(|b| format!("{b:02x}")).collect::<String>()
    };
    assert_eq!(
        stretched("passwd", b"salt", 1).await,
        "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"
    );
    assert_eq!(
        stretched("Password", b"NaCl", 80_000).await,
        "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"
    );
    // One form of the letters, whichever way a keyboard makes them.
    assert_eq!(
        stretched("ma\u{f1}ana", b"salt", 1).await,
        stretched("man\u{303}ana", b"salt", 1).await
    );
}

/// A lock and a row made by Node's own PBKDF2 and ChaCha20-Poly1305
/// (`tests/fixtures/lock.mjs`) open by their passphrase. The form is forever.
#[wasm_bindgen_test]
async fn a_lock_from_elsewhere_opens() {
    let store = fresh().await;
    let rows = include_str!("fixtures/lock-v1.json");
    let put = format!(
        "for (const row of {rows}) {{
             if (row.sealed) row.sealed = Uint8Array.from(atob(row.sealed), (c) => c.charCodeAt(0));
             put(row);
         }}"
    );
    behind("texts", &put).await;
    assert_eq!(store.texts().await, Err(StoreError::Locked));
    assert_eq!(unlock("Tower 3, south side").await, Ok(false));
    assert_eq!(unlock("Tower 3, north side").await, Ok(true));
    let text = ("draft proof".to_owned(), "Probe fouled".to_owned());
    assert_eq!(store.texts().await, Ok(vec![text]));
    behind("texts", "store.clear();").await;
}

/// One that can't be read is of a newer build, or would hold up the phone for long.
#[wasm_bindgen_test]
async fn a_lock_that_cannot_be_read_is_left_alone() {
    let store = fresh().await;
    let sound = "1 a on 600000 AQEBAQEBAQEBAQEBAQEBAQ== AQEB";
    for text in [
        "2 some other form",
        &sound.replace("600000", "10000001"),
        &sound.replace("600000", "0"),
        &sound.replace("600000", "many"),
        "1 a on 600000",
    ] {
        let row = format!(r#"{{ "key": "{LOCK}", "text": "{text}" }}"#);
        behind("texts", &format!("put({row});")).await;
        assert_eq!(store.texts().await.err(), Some(StoreError::Newer), "{text}");
        assert_eq!(store.append(&entries()).await, Err(StoreError::Locked));
    }
    behind("texts", "store.clear();").await;
}
