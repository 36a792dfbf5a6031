//! What every store must do; run on the memory twin and on IndexedDB.

use coldsump::record::{DeviceId, Entry};
use coldsump::store::{KeptFile, Store};

/// The stored form of version 1, every kind of body in it.
pub fn entries() -> Vec<Entry> {
    serde_json::from_str(include_str!("../fixtures/entries-v1.json")).expect("version 1 reads")
}

pub fn file() -> KeptFile {
    KeptFile {
        id: coldsump::record::FileId::parse("019ab000-0000-7000-8000-000000000005")
            .expect("a UUID"),
        name: "halden.pdf".into(),
        media_type: "application/pdf".into(),
        bytes: (0..=255).collect(),
    }
}

/// Runs a store through everything the port promises. It must be empty.
pub async fn store_contract(store: &impl Store) {
    let all = entries();
    assert!(store.load().await.expect("load").entries.is_empty());
    store.append(&all[..10]).await.expect("append");
    store
        .append(&all[5..])
        .await
        .expect("an overlap is no error");
    let mut changed = all[0].clone();
    changed.v = 99;
    store.append(&[changed]).await.expect("append");
    let loaded = store.load().await.expect("load");
    assert_eq!(
        loaded.entries, all,
        "as written, in order, first writing kept"
    );
    assert_eq!(loaded.unreadable, 0);

    let kept = file();
    assert_eq!(store.file(kept.id).await, Ok(None));
    store.keep_file(&kept, &all[..1]).await.expect("keep_file");
    assert_eq!(store.file(kept.id).await, Ok(Some(kept)));

    store.keep_text("unit", "us").await.expect("keep_text");
    store.keep_text("unit", "si").await.expect("keep_text");
    let texts = store.texts().await.expect("texts");
    assert_eq!(texts, [("unit".to_owned(), "si".to_owned())]);
    store.drop_text("unit").await.expect("drop_text");
    store
        .drop_text("unit")
        .await
        .expect("dropping nothing is no error");
    assert!(store.texts().await.expect("texts").is_empty());

    let device =
        |n| DeviceId::parse(&format!("019ab000-0000-7000-8000-00000000000{n}")).expect("a UUID");
    assert_eq!(store.device(device(1)).await, Ok(device(1)));
    assert_eq!(store.device(device(2)).await, Ok(device(1)), "named once");
}
