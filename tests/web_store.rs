//! In a browser: IndexedDB keeps the store's contract, all of a write or none.
#![cfg(target_arch = "wasm32")]

#[path = "visit/store_contract.rs"]
mod store_contract;

use coldsump::record::Entry;
use coldsump::store::{IndexedStore, Store, StoreError};
use js_sys::{Function, JSON};
use rexie::{Rexie, Transaction, TransactionMode};
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

use store_contract::{entries, file, many, store_contract};

wasm_bindgen_test_configure!(run_in_browser);

const STORES: [&str; 4] = ["entries", "files", "lines", "texts"];

/// A second way to the same disk, past the store.
async fn behind() -> (Rexie, Transaction) {
    let db = Rexie::builder("coldsump").build().await.expect("it opens");
    let tx = db
        .transaction(&STORES, TransactionMode::ReadWrite)
        .expect("a transaction");
    (db, tx)
}

/// The store, empty, as on a phone that has never run the program.
async fn fresh() -> IndexedStore {
    let store = IndexedStore::open().await.expect("it opens");
    let (db, tx) = behind().await;
    for name in STORES {
        let found = tx.store(name).expect("an object store");
        found.clear().await.expect("it empties");
    }
    assert!(tx.done().await.expect("it ends").is_committed());
    db.close();
    store
}

#[wasm_bindgen_test]
async fn indexed_db_keeps_the_contract() {
    store_contract(&fresh().await).await;
}

#[wasm_bindgen_test]
async fn what_was_kept_is_there_when_opened_again() {
    let first = fresh().await;
    first.keep_file(&file(), &entries()).await.expect("kept");
    first.keep_text("unit", "si").await.expect("kept");
    let second = IndexedStore::open().await.expect("it opens");
    assert_eq!(second.load().await.expect("load").entries, entries());
    assert_eq!(second.file(file().id).await, Ok(Some(file())));
    let texts = second.texts().await.expect("texts");
    assert_eq!(texts, [("unit".to_owned(), "si".to_owned())]);
    // Both stay open, as in two tabs: neither overwrites the other.
    let more = many();
    second.append(&more[..2]).await.expect("append");
    first.append(&more[1..3]).await.expect("append");
    let all: Vec<Entry> = entries()
        .into_iter()
        .chain(more)
        .take(entries().len() + 3)
        .collect();
    assert_eq!(second.load().await.expect("load").entries, all);
}

#[wasm_bindgen_test]
async fn an_entry_of_a_newer_build_stays_and_is_counted() {
    let store = fresh().await;
    let (db, tx) = behind().await;
    let row = r#"{ "id": "zz", "about": "site", "entry": { "v": 2, "body": { "sung": {} } } }"#;
    let row = JSON::parse(row).expect("it reads");
    let rows = tx.store("entries").expect("an object store");
    rows.add(&row, None).await.expect("it is added");
    assert!(tx.done().await.expect("it ends").is_committed());
    db.close();
    store.append(&entries()).await.expect("append");
    for _ in 0..2 {
        let loaded = store.load().await.expect("load");
        assert_eq!((loaded.entries, loaded.unreadable), (entries(), 1));
    }
}

/// Makes every `nth` record added from now on fail, `times` of them: by an
/// exception of this name, or with none after it was asked for, as when the
/// engine gives up.
fn break_add(nth: u32, times: u32, refusal: Option<&str>) -> Function {
    let script = "const honest = IDBObjectStore.prototype.add;
        let asked = 0;
        IDBObjectStore.prototype.add = function (...row) {
            const fails = ++asked % nth === 0 && asked <= nth * times;
            if (fails && refusal) throw new DOMException('no', refusal);
            const request = honest.apply(this, row);
            if (fails) this.transaction.abort();
            return request;
        };
        return () => { IDBObjectStore.prototype.add = honest; };";
    let refusal = refusal.map_or(JsValue::NULL, JsValue::from_str);
    Function::new_with_args("nth, times, refusal", script)
        .call3(&JsValue::NULL, &nth.into(), &times.into(), &refusal)
        .expect("it runs")
        .into()
}

#[wasm_bindgen_test]
async fn a_write_that_fails_half_way_keeps_nothing() {
    let store = fresh().await;
    let all = entries();
    store.append(&all[..2]).await.expect("append");
    for (refusal, fault) in [
        (Some("QuotaExceededError"), StoreError::Full),
        (Some("UnknownError"), StoreError::Lost),
        (None, StoreError::Lost),
    ] {
        let mend = break_add(3, 9999, refusal);
        let appended = store.append(&all).await;
        mend.call0(&JsValue::NULL).expect("it runs");
        assert_eq!(appended, Err(fault.clone()), "{refusal:?}");
        let mend = break_add(3, 9999, refusal);
        let kept = store.keep_file(&file(), &all).await;
        mend.call0(&JsValue::NULL).expect("it runs");
        assert_eq!(kept, Err(fault), "{refusal:?}");
        assert_eq!(store.load().await.expect("load").entries, all[..2]);
        assert_eq!(store.file(file().id).await, Ok(None));
    }
    // The same write passes when the trouble is over.
    store.keep_file(&file(), &all).await.expect("kept");
    assert_eq!(store.load().await.expect("load").entries, all);
    assert_eq!(store.file(file().id).await, Ok(Some(file())));
}

#[wasm_bindgen_test]
async fn a_write_that_a_lost_connection_stopped_is_repeated() {
    let store = fresh().await;
    let all = entries();
    for (n, refusal) in [Some("UnknownError"), Some("InvalidStateError"), None]
        .into_iter()
        .enumerate()
    {
        // Three times lost, the fourth time kept.
        let mend = break_add(2, 3, refusal);
        let kept = store.append(&all[n * 4..n * 4 + 4]).await;
        mend.call0(&JsValue::NULL).expect("it runs");
        assert!(kept.is_ok(), "{refusal:?}: {kept:?}");
    }
    assert_eq!(store.load().await.expect("load").entries, all[..12]);
}
