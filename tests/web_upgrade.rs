//! In a browser: a phone that used the program before lists had a summary.
#![cfg(target_arch = "wasm32")]

#[path = "visit/store_contract.rs"]
#[allow(dead_code)]
mod store_contract;

use coldsump::record::{LINE_FORM, Line};
use coldsump::store::{IndexedStore, Store};
use js_sys::JSON;
use rexie::{Index, ObjectStore, Rexie, TransactionMode};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

use store_contract::entries;

wasm_bindgen_test_configure!(run_in_browser);

/// The first form of the database, with the entries of a visit in it.
async fn as_it_was() {
    let db = Rexie::builder("coldsump")
        .version(1)
        .add_object_store(
            ObjectStore::new("entries")
                .key_path("id")
                .add_index(Index::new("about", "about")),
        )
        .add_object_store(ObjectStore::new("files").key_path("id"))
        .add_object_store(ObjectStore::new("texts").key_path("key"))
        .build()
        .await
        .expect("it opens");
    let tx = db
        .transaction(&["entries"], TransactionMode::ReadWrite)
        .expect("a transaction");
    let rows = tx.store("entries").expect("an object store");
    let fixture = include_str!("fixtures/entries-v1.json");
    let all = js_sys::Array::from(&JSON::parse(fixture).expect("it reads"));
    for (entry, known) in all.iter().zip(entries()) {
        let about = serde_json::to_value(known.about).expect("it is written");
        let (kind, id) = about
            .as_object()
            .and_then(|o| o.iter().next())
            .expect("one name");
        let row = js_sys::Object::new();
        let id = format!("{kind} {}", id.as_str().expect("an id"));
        for (key, value) in [
            ("id", known.id.to_string().into()),
            ("about", id.into()),
            ("entry", entry),
        ] {
            js_sys::Reflect::set(&row, &key.into(), &value).expect("it is set");
        }
        rows.add(&row, None).await.expect("it is added");
    }
    assert!(tx.done().await.expect("it ends").is_committed());
    db.close();
}

#[wasm_bindgen_test]
async fn entries_of_the_first_form_are_kept_and_summed_up() {
    as_it_was().await;
    let store = IndexedStore::open().await.expect("it opens");
    assert_eq!(store.load().await.expect("load").entries, entries());
    assert!(store.site_lines().await.expect("sites").is_empty());
    assert_eq!(store.summarise(None).await, Ok(Some(0)));
    let sites = store.site_lines().await.expect("sites");
    let visits = store.visit_lines(None, 10).await.expect("visits");
    let [Line::Site(site)] = &sites[..] else {
        panic!("one site: {sites:?}");
    };
    let [Line::Visit(visit)] = &visits[..] else {
        panic!("one visit: {visits:?}");
    };
    assert_eq!(
        (site.name.as_str(), site.machines),
        ("Halden Street Bakery", 6)
    );
    assert!(visit.site == site.id && visit.closed && visit.outbox.is_empty());
    assert_eq!(store.summarise(Some(LINE_FORM)).await, Ok(None));
}
