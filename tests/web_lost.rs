//! In a browser: the database is deleted, then upgraded, under an open store.
#![cfg(target_arch = "wasm32")]

#[path = "visit/store_contract.rs"]
#[allow(dead_code)]
mod store_contract;

use coldsump::record::DeviceId;
use coldsump::store::{IndexedStore, Store, StoreError};
use rexie::Rexie;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

use store_contract::entries;

wasm_bindgen_test_configure!(run_in_browser);

/// One test, for a connection that is dropped and not closed holds up the next.
#[wasm_bindgen_test]
async fn a_database_thrown_away_or_taken_over_is_noticed() {
    let all = entries();
    let store = IndexedStore::open().await.expect("it opens");
    let name = DeviceId::parse("019ab000-0000-7000-8000-000000000001").expect("a UUID");
    store.device(name).await.expect("named");
    store.append(&all).await.expect("append");

    Rexie::delete("coldsump").await.expect("it is deleted");
    assert_eq!(store.append(&all).await, Err(StoreError::Gone));
    store.device(name).await.expect("named anew");
    store.append(&all).await.expect("kept anew");
    assert_eq!(store.load().await.expect("load").entries, all);

    let newer = Rexie::builder("coldsump").version(9).build();
    newer.await.expect("the older connection lets go").close();
    assert_eq!(store.append(&all).await, Err(StoreError::Newer));
}
