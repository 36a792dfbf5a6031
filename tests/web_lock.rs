//! In a browser: the lock over the records. Sealed at rest, opened by one
//! passphrase, put on and taken off through any stop in the middle.
#![cfg(target_arch = "wasm32")]

#[path = "visit/store_contract.rs"]
mod store_contract;

use std::cell::RefCell;
use std::rc::Rc;

use coldsump::store::lock::{LOCK, Lock, LockState};
use coldsump::store::{IndexedStore, Loaded, Store, StoreError, stretched};
use js_sys::{Function, Promise};
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

use store_contract::{entries, file, many, store_contract};

wasm_bindgen_test_configure!(run_in_browser);

const STORES: [&str; 4] = ["entries", "files", "lines", "texts"];

const PASSPHRASE: &str = "five words of no sense";

/// Below the page's scripts: the browser's own ways, and writes that fail after so many.
const UNDER: &str = "
    const { get } = Object.getOwnPropertyDescriptor(IDBRequest.prototype, 'result');
    const { put } = IDBObjectStore.prototype;
    window.raw = { result: get, put, transaction: IDBDatabase.prototype.transaction };
    window.putsLeft = Infinity;
    IDBObjectStore.prototype.put = function (...row) {
        if (window.putsLeft-- <= 0) throw new DOMException('no', 'QuotaExceededError');
        return put.apply(this, row);
    };";

/// Puts the page's own scripts under the store, once; as no modules.
fn page() {
    thread_local!(static DONE: std::cell::Cell<bool> = const { std::cell::Cell::new(false) });
    if DONE.replace(true) {
        return;
    }
    let disk = include_str!("../public/disk.js");
    let lock = include_str!("../public/lock.js").replace("import './disk.js';", "");
    for script in [UNDER, disk, &lock] {
        Function::new_no_args(script)
            .call0(&JsValue::NULL)
            .expect("it runs");
    }
}

/// From here on this page is a tab that holds no lock. One that holds its own
/// again has unlocked it again.
fn other_tab() {
    js_sys::eval("coldsumpLock.hold()").expect("it runs");
}

/// The store, empty, as on a phone that has never run the program.
async fn fresh() -> IndexedStore {
    page();
    let store = again().await;
    for name in STORES {
        behind(name, "store.clear();").await;
    }
    store
}

/// A second start over the same disk.
async fn again() -> IndexedStore {
    other_tab();
    IndexedStore::open().await.expect("it opens")
}

/// The same, with the lock open.
async fn unlocked() -> IndexedStore {
    let store = again().await;
    assert_eq!(store.texts().await, Err(StoreError::Locked));
    assert_eq!(store.unlock(PASSPHRASE).await, Ok(true));
    store.texts().await.expect("open");
    store
}

/// Rewrites rows on the disk behind the store, by a script over `rows` and `put`.
async fn behind(store: &str, script: &str) {
    let script = format!(
        "return new Promise((done, fail) => {{
            const opening = indexedDB.open('coldsump');
            opening.onsuccess = () => {{
                const db = opening.result;
                const tx = raw.transaction.call(db, '{store}', 'readwrite');
                const store = tx.objectStore('{store}');
                const asked = store.getAll();
                asked.onsuccess = () => {{
                    const rows = raw.result.call(asked);
                    const put = (row) => raw.put.call(store, row);
                    {script}
                }};
                tx.oncomplete = () => {{ db.close(); done(); }};
                tx.onabort = () => fail(tx.error);
            }};
        }});"
    );
    let done = Function::new_no_args(&script)
        .call0(&JsValue::NULL)
        .expect("it runs");
    JsFuture::from(Promise::from(done)).await.expect("written");
}

/// What lies on the disk, as text: every row with its key, bytes by their letters.
async fn disk() -> Vec<String> {
    let script = "return (async () => {
        const ask = (r) => new Promise((done, no) => { r.onsuccess = () => done(raw.result.call(r)); r.onerror = no; });
        const db = await ask(indexedDB.open('coldsump'));
        const all = [];
        const plain = (_, v) => v instanceof Uint8Array
            ? '#' + Array.from(v, (b) => String.fromCharCode(b)).join('') : v;
        for (const name of ['entries', 'files', 'lines', 'texts']) {
            const store = db.transaction(name).objectStore(name);
            const [keys, rows] = await Promise.all([ask(store.getAllKeys()), ask(store.getAll())]);
            rows.forEach((row, n) => all.push(name + ' ' + keys[n] + ' ' + JSON.stringify(row, plain)));
        }
        db.close();
        return all;
    })()";
    let rows = Function::new_no_args(script)
        .call0(&JsValue::NULL)
        .expect("it runs");
    let rows = JsFuture::from(Promise::from(rows)).await.expect("it reads");
    js_sys::Array::from(&rows)
        .iter()
        .map(|row| row.as_string().expect("a text"))
        .collect()
}

/// A store with some of everything in it.
async fn lived_in() -> IndexedStore {
    let store = fresh().await;
    store.keep_file(&file(), &entries()).await.expect("kept");
    store.append(&many()).await.expect("kept");
    store
        .keep_text("draft proof", "Dry on arriv")
        .await
        .expect("kept");
    store.keep_text("setting units", "si").await.expect("kept");
    store
}

async fn is_lived_in(store: &IndexedStore) {
    let loaded = store.load().await.expect("load");
    let all: Vec<_> = entries().into_iter().chain(many()).collect();
    assert_eq!((loaded.unreadable, loaded.entries), (0, all));
    assert_eq!(store.file(file().id).await, Ok(Some(file())));
    let mut texts = store.texts().await.expect("texts");
    texts.sort();
    let text = |key: &str, text: &str| (key.to_owned(), text.to_owned());
    let kept = [
        text("draft proof", "Dry on arriv"),
        text("setting units", "si"),
    ];
    assert_eq!(texts, kept);
    assert_eq!(store.site_lines().await.expect("sites").len(), 1);
    assert_eq!(store.first_lines(5).await.expect("lines").len(), 2);
}

/// What must not be found on a locked disk, and what stays: keys and settings.
fn no_clear_text(rows: &[String]) {
    for row in rows {
        for word in [
            "Halden",
            "Dry on",
            "halden.pdf",
            "machine",
            "\"at\"",
            "body",
        ] {
            assert!(!row.contains(word), "{word:?} is clear in {row}");
        }
    }
    assert!(rows.iter().any(|row| row.contains("\"si\"")));
}

fn ignore(_: u32, _: u32) {}

#[wasm_bindgen_test]
async fn a_locked_store_keeps_the_contract() {
    let store = fresh().await;
    store.lock_by(PASSPHRASE).await.expect("locked");
    store.rewrite(ignore).await.expect("nothing to seal");
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
    let told = Rc::new(RefCell::new(Vec::new()));
    store.lock_by(PASSPHRASE).await.expect("locked");
    // While it is sealed: what is written now is sealed, what was is read.
    store
        .keep_text("draft proof", "Dry on arriv")
        .await
        .expect("kept");
    is_lived_in(&store).await;
    let heard = told.clone();
    let tell = move |done, all| heard.borrow_mut().push((done, all));
    assert_eq!(store.rewrite(tell).await, Ok(0));
    is_lived_in(&store).await;
    let told = told.borrow();
    assert!(told.is_sorted() && told.len() > 4);
    let (done, all) = told.last().copied().expect("told");
    assert!(
        done == all && all as usize == before.len() + 1,
        "{done} {all}"
    );
    no_clear_text(&disk().await);

    // A new start: nothing is read before the passphrase, and no other opens it.
    let next = again().await;
    assert_eq!(next.texts().await, Err(StoreError::Locked));
    assert_eq!(next.unlock("five words of no sens").await, Ok(false));
    assert_eq!(next.unlock("Five words of no sense").await, Ok(false));
    assert_eq!(next.texts().await, Err(StoreError::Locked));
    assert_eq!(next.append(&entries()).await, Err(StoreError::Locked));
    assert_eq!(next.unlock(PASSPHRASE).await, Ok(true));
    is_lived_in(&next).await;
    assert!(!next.unfinished());

    // Another passphrase seals the key alone anew.
    let sealed = disk().await;
    next.lock_by("another one").await.expect("changed");
    let changed = disk().await;
    let differ = sealed.iter().zip(&changed).filter(|(a, b)| a != b);
    let differ: Vec<_> = differ.map(|(row, _)| row.as_str()).collect();
    assert!(matches!(differ[..], [row] if row.starts_with("texts lock ")));
    let third = again().await;
    assert_eq!(third.texts().await, Err(StoreError::Locked));
    assert_eq!(third.unlock(PASSPHRASE).await, Ok(false));
    assert_eq!(third.unlock("another one").await, Ok(true));

    third.take_lock_off().await.expect("begun");
    assert_eq!(third.rewrite(ignore).await, Ok(0));
    is_lived_in(&third).await;
    assert_eq!(disk().await, before, "row for row as it was");
    is_lived_in(&again().await).await;
}

/// After so many more rows every write fails, as when the phone is full.
fn full_after(rows: Option<u32>) {
    let left = rows.map_or("Infinity".to_owned(), |rows| rows.to_string());
    js_sys::eval(&format!("window.putsLeft = {left}")).expect("it runs");
}

#[wasm_bindgen_test]
async fn a_rewrite_that_stops_anywhere_goes_on() {
    let store = lived_in().await;
    let before = disk().await;
    // Before the lock itself is kept: then there is none.
    full_after(Some(0));
    assert!(store.lock_by(PASSPHRASE).await.is_err());
    full_after(None);
    assert!(store.lock().is_none() && disk().await == before);
    store.lock_by(PASSPHRASE).await.expect("locked");
    // In the first batch, in a later one, and in the last object store.
    for after in [Some(100), Some(200), None] {
        let store = unlocked().await;
        let clear = disk()
            .await
            .iter()
            .filter(|row| !row.contains("\"sealed\""))
            .count();
        store.unlock(PASSPHRASE).await.expect("in front again");
        // All but one: the lock and a setting stay clear.
        let after = after.unwrap_or(clear as u32 - 3);
        assert!(store.unfinished());
        full_after(Some(after));
        assert_eq!(store.rewrite(ignore).await, Err(StoreError::Full));
        full_after(None);
        is_lived_in(&store).await;
    }
    let store = unlocked().await;
    store.rewrite(ignore).await.expect("sealed");
    assert_eq!(store.lock().map(|lock| lock.state), Some(LockState::On));
    no_clear_text(&disk().await);
    is_lived_in(&store).await;

    store.take_lock_off().await.expect("begun");
    for after in [0, 250] {
        let store = unlocked().await;
        assert!(store.unfinished());
        full_after(Some(after));
        assert_eq!(store.rewrite(ignore).await, Err(StoreError::Full));
        full_after(None);
        is_lived_in(&store).await;
    }
    let store = unlocked().await;
    store.rewrite(ignore).await.expect("opened");
    assert_eq!(disk().await, before);
}

#[wasm_bindgen_test]
async fn a_tab_that_missed_the_lock_writes_nothing() {
    let first = lived_in().await;
    let missed = again().await;
    is_lived_in(&missed).await;
    first.lock_by(PASSPHRASE).await.expect("locked");
    first.rewrite(ignore).await.expect("sealed");
    let sealed = disk().await;
    let new = many()[..1].to_vec();
    let refused = async |tab: &IndexedStore| {
        let locked = Some(StoreError::Locked);
        assert_eq!(tab.append(&new).await.err(), locked);
        assert_eq!(tab.keep_text("draft a", "b").await.err(), locked);
        assert_eq!(tab.drop_text("draft proof").await.err(), locked);
        assert_eq!(tab.keep_file(&file(), &[]).await.err(), locked);
    };
    other_tab();
    refused(&missed).await;
    assert_eq!(missed.raw_entries().await.err(), Some(StoreError::Locked));
    let second = missed.lock_by("another one").await;
    assert_eq!(second, Err(StoreError::Locked));
    assert_eq!(disk().await, sealed, "nothing clear came in");

    // And one that still holds the key when the lock is off: what it sealed
    // would open for nobody.
    let holds = unlocked().await;
    first.unlock(PASSPHRASE).await.expect("in front again");
    first.take_lock_off().await.expect("begun");
    holds.unlock(PASSPHRASE).await.expect("in front again");
    refused(&holds).await;
    assert_eq!(holds.rewrite(ignore).await, Err(StoreError::Locked));
    first.unlock(PASSPHRASE).await.expect("in front again");
    first.rewrite(ignore).await.expect("opened");
    let open = disk().await;
    holds.unlock(PASSPHRASE).await.expect("in front again");
    refused(&holds).await;
    assert_eq!(holds.lock_by("another one").await, Err(StoreError::Locked));
    // A second lock is another one, by whatever passphrase.
    other_tab();
    first.lock_by(PASSPHRASE).await.expect("locked");
    holds.unlock(PASSPHRASE).await.expect("in front again");
    refused(&holds).await;
    first.unlock(PASSPHRASE).await.expect("in front again");
    first.take_lock_off().await.expect("begun");
    first.rewrite(ignore).await.expect("opened");
    assert_eq!(disk().await, open);
}

#[wasm_bindgen_test]
async fn rows_that_were_swapped_or_changed_do_not_open() {
    let store = lived_in().await;
    store.lock_by(PASSPHRASE).await.expect("locked");
    store.rewrite(ignore).await.expect("sealed");
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
    store.take_lock_off().await.expect("begun");
    assert_eq!(store.rewrite(ignore).await, Ok(5));
    assert_eq!(store.lock().map(|lock| lock.state), Some(LockState::On));
    let rows = disk().await;
    no_clear_text(&rows);
    assert_eq!(rows.len(), sealed);
    let loaded = unlocked().await.load().await.expect("load");
    assert_eq!((loaded.entries.len(), loaded.unreadable), (all - 4, 4));
    assert_ne!(loaded, Loaded::default());
}

/// PBKDF2-HMAC-SHA-256: the first 32 bytes of the vectors in RFC 7914, section 11.
#[wasm_bindgen_test]
async fn the_passphrase_s_key_is_the_standard_s() {
    page();
    let hex = |key: [u8; 32]| key.iter().map(|b| format!("{b:02x}")).collect::<String>();
    let one = stretched("passwd", b"salt", 1).await.expect("a key");
    assert_eq!(
        hex(one),
        "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"
    );
    let many = stretched("Password", b"NaCl", 80_000).await.expect("a key");
    assert_eq!(
        hex(many),
        "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"
    );
    // One form of the letters, whichever way a keyboard makes them.
    let composed = stretched("llenado ma\u{f1}ana", b"salt", 1).await;
    assert_eq!(
        composed,
        stretched("llenado man\u{303}ana", b"salt", 1).await
    );
}

/// A lock made by Node's own PBKDF2 and ChaCha20-Poly1305
/// (`tests/fixtures/lock.mjs`) opens by its passphrase.
#[wasm_bindgen_test]
async fn a_lock_from_elsewhere_opens() {
    page();
    let lock = Lock::read(include_str!("fixtures/lock-v1.txt").trim()).expect("it reads");
    let by = stretched("Tower 3, north side", &lock.salt, lock.rounds).await;
    assert_eq!(lock.open(&by.expect("a key")), Some([4; 32]));
}

#[wasm_bindgen_test]
async fn a_lock_of_a_newer_build_is_left_alone() {
    let store = fresh().await;
    let row = format!(r#"{{ "key": "{LOCK}", "text": "2 some other form" }}"#);
    behind("texts", &format!("put({row});")).await;
    assert_eq!(store.texts().await, Err(StoreError::Newer));
    assert_eq!(store.append(&entries()).await, Err(StoreError::Locked));
    behind("texts", "store.clear();").await;
}
