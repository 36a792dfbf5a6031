//! In a browser: phones that used an earlier form of the database.
#![cfg(target_arch = "wasm32")]

#[path = "visit/store_contract.rs"]
#[allow(dead_code)]
mod store_contract;

use coldsump::record::{Body, Entry, LINE_FORM, Line, Summary};
use coldsump::store::{IndexedStore, Store};
use js_sys::JSON;
use rexie::{Index, ObjectStore, Rexie, TransactionMode};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

use store_contract::entries;

wasm_bindgen_test_configure!(run_in_browser);

/// A form of the database as the program of its day left it, from a fixture:
/// every object store, row for row.
async fn left_by(fixture: &str) {
    let script = "return new Promise((done, fail) => {
        const { version, stores } = JSON.parse(fixture);
        const request = indexedDB.open('coldsump', version);
        request.onerror = () => fail(request.error);
        request.onupgradeneeded = () => {
            for (const [name, { keyPath, indexes, rows }] of Object.entries(stores)) {
                const store = request.result.createObjectStore(name, { keyPath });
                for (const [index, path] of indexes) store.createIndex(index, path);
                for (const [key, row] of rows) {
                    if (row.bytes) row.bytes = new Uint8Array(row.bytes);
                    keyPath ? store.add(row) : store.add(row, key);
                }
            }
        };
        request.onsuccess = () => { request.result.close(); done(); };
    });";
    Rexie::delete("coldsump").await.expect("it is deleted");
    let made = js_sys::Function::new_with_args("fixture", script)
        .call1(&wasm_bindgen::JsValue::NULL, &fixture.into())
        .expect("it runs");
    let made = wasm_bindgen_futures::JsFuture::from(js_sys::Promise::from(made));
    made.await.expect("the database is made");
}

/// The second form: with the summary. Left by the release build after the demo
/// was opened, a photo was taken and a line half typed. Never edit it.
#[wasm_bindgen_test]
async fn the_second_form_opens_with_all_that_was_in_it() {
    left_by(include_str!("fixtures/indexed-v2.json")).await;
    let store = IndexedStore::open().await.expect("it opens");
    let loaded = store.load().await.expect("load");
    assert_eq!((loaded.entries.len(), loaded.unreadable), (115, 0));
    let texts = store.texts().await.expect("texts");
    let text = |name: &str| texts.iter().find(|(key, _)| key.starts_with(name));
    assert_eq!(text("draft work-line").expect("the draft").1, "Half a li");
    let kept = text("summary").map(|(_, form)| form.clone());
    let photos = loaded.entries.iter().filter_map(|e| match e.body {
        Body::PhotoTaken { file, .. } => Some(file),
        _ => None,
    });
    for file in photos {
        let photo = store.file(file).await.expect("it reads").expect("a photo");
        assert!(photo.bytes.starts_with(&[0xff, 0xd8]), "a JPEG");
    }
    // The summary as it was left, or made again in this build's form.
    store.summarise(kept.as_deref()).await.expect("summed up");
    let mut lines = store.site_lines().await.expect("sites");
    lines.extend(store.visit_lines(None, 50).await.expect("visits"));
    let mut summary = Summary::default();
    summary.add(lines);
    assert_eq!(summary, Summary::of(&loaded.entries));
    assert_eq!(summary.sites()[0].name, "Halden Street Bakery");
    // A connection that is dropped and not closed would hold up the next test.
    std::mem::forget(store);
}

/// The first form of the database, with the entries of a visit in it.
async fn as_it_was() {
    Rexie::delete("coldsump").await.expect("it is deleted");
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
    // Names only: JSON in a browser and serde_json may differ in a last bit.
    let names = |all: Vec<Entry>| -> Vec<_> { all.iter().map(|e| (e.id, e.about)).collect() };
    let loaded = store.load().await.expect("load");
    assert_eq!(loaded.unreadable, 0);
    assert_eq!(names(loaded.entries), names(entries()));
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
    std::mem::forget(store);
}
