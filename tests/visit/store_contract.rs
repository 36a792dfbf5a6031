//! What every store must do; run on the memory twin and on IndexedDB.

use coldsump::record::{
    About, Body, DeviceId, Entry, EntryId, FileId, LINE_FORM, Line, Summary, VisitId,
};
use coldsump::store::{KeptFile, Loaded, SUMMARY, Store};

/// The stored form of version 1, every kind of body in it.
pub fn entries() -> Vec<Entry> {
    serde_json::from_str(include_str!("../fixtures/entries-v1.json")).expect("version 1 reads")
}

pub fn file() -> KeptFile {
    KeptFile {
        id: FileId::parse("019ab000-0000-7000-8000-000000000005").expect("a UUID"),
        name: "halden.pdf".into(),
        media_type: "application/pdf".into(),
        bytes: (0..=255).collect(),
    }
}

/// More entries than a screen ever writes at once, in the order of their ids.
pub fn many() -> Vec<Entry> {
    let all = entries();
    let id = |n: usize| EntryId::parse(&format!("01b00000-0000-7000-8000-{n:012x}"));
    (0..500)
        .map(|n| Entry {
            id: id(n).expect("a UUID"),
            ..all[n % all.len()].clone()
        })
        .collect()
}

/// Runs a store through everything the port promises. It must be empty.
pub async fn store_contract(store: &impl Store) {
    let all = entries();
    assert_eq!(store.load().await, Ok(Loaded::default()));
    the_first_writing_stays(store, &all).await;
    order_and_batches(store, &all).await;
    one_thing(store).await;
    files(store).await;
    texts(store).await;
    the_summary(store).await;
    device(store).await;
}

async fn holds(store: &impl Store, entries: &[Entry]) {
    let loaded = store.load().await.expect("load");
    assert_eq!(loaded.unreadable, 0);
    assert_eq!(loaded.entries, entries, "as first written, by id");
}

/// The same entry with another content, as no honest writer makes it.
fn forged(entry: &Entry) -> Entry {
    Entry {
        v: 99,
        ..entry.clone()
    }
}

async fn the_first_writing_stays(store: &impl Store, all: &[Entry]) {
    let append = async |batch: &[Entry]| store.append(batch).await.expect("append");
    append(&[]).await;
    holds(store, &[]).await;
    append(&all[..10]).await;
    append(&all[5..]).await; // an overlap is no error
    holds(store, all).await;
    append(&[forged(&all[0])]).await;
    append(all).await;
    holds(store, all).await;
}

async fn order_and_batches(store: &impl Store, all: &[Entry]) {
    let many = many();
    // The newest batch first, each backwards, some entries in two batches, and
    // in each batch a second writing of one that it holds already.
    for start in (0..many.len()).step_by(100).rev() {
        let end = (start + 130).min(many.len());
        let mut batch: Vec<Entry> = many[start..end].iter().rev().cloned().collect();
        batch.push(forged(&many[start]));
        store.append(&batch).await.expect("append");
    }
    let both: Vec<Entry> = all.iter().chain(&many).cloned().collect();
    assert!(both.is_sorted_by_key(|entry| entry.id));
    holds(store, &both).await;
}

async fn one_thing(store: &impl Store) {
    let all = store.load().await.expect("load").entries;
    let mut things: Vec<About> = all.iter().map(|e| e.about).collect();
    things.sort();
    things.dedup();
    assert_eq!(things.len(), 2, "a site and a visit");
    for about in things {
        let wanted: Vec<Entry> = all.iter().filter(|e| e.about == about).cloned().collect();
        assert_eq!(store.about(about).await.expect("about").entries, wanted);
    }
    let nobody = About::Visit(VisitId::parse(NOBODY).expect("a UUID"));
    assert_eq!(store.about(nobody).await, Ok(Loaded::default()));
    assert_eq!(store.newest().await, Ok(all.last().map(|e| e.id)));
    // In batches, from wherever one has come to.
    let mut seen = Vec::new();
    let mut after: Option<String> = None;
    loop {
        let batch = store.entries(after.as_deref(), 70).await.expect("entries");
        assert!(batch.entries.len() <= 70);
        let Some(last) = batch.last else { break };
        after = Some(last);
        seen.extend(batch.entries);
    }
    assert_eq!(seen, all);
}

const NOBODY: &str = "01c00000-0000-7000-8000-000000000000";

/// Every line that the store holds, as a summary.
async fn summary(store: &impl Store) -> Summary {
    let mut lines = store.site_lines().await.expect("sites");
    let mut after = None;
    loop {
        let older = store.visit_lines(after, 3).await.expect("visits");
        let Some(Line::Visit(last)) = older.last() else {
            break;
        };
        assert!(older.len() <= 3);
        after = Some(last.id);
        lines.extend(older);
    }
    let mut summary = Summary::default();
    summary.add(lines);
    summary
}

/// Opens `n` more visits, each with an id later than the one before.
fn visits(from: &[Entry], n: usize) -> Vec<Entry> {
    let opened = from
        .iter()
        .find(|e| matches!(e.body, Body::VisitOpened { .. }))
        .expect("a visit is opened");
    let visit = |n: usize| {
        let id = |k: usize| format!("01b{k:05}-0000-7000-8000-{n:012x}");
        let mut entry = opened.clone();
        entry.id = EntryId::parse(&id(20)).expect("a UUID");
        entry.about = About::Visit(VisitId::parse(&id(10 + n)).expect("a UUID"));
        entry.at.ms += 1000 * n as i64;
        entry
    };
    (1..=n).map(visit).collect()
}

async fn the_summary(store: &impl Store) {
    let before = store.load().await.expect("load").entries;
    let same = async |what: &str| {
        let all = store.load().await.expect("load").entries;
        assert_eq!(summary(store).await, Summary::of(&all), "{what}");
    };
    same("kept with every write").await;
    let more = visits(&before, 10);
    let changed = store.append(&more).await.expect("append");
    assert_eq!(changed.len(), 10);
    assert!(changed.iter().all(|(_, line)| line.is_some()));
    same("ten visits more").await;
    let first = store.first_lines(4).await.expect("lines");
    let visits_first = store.visit_lines(None, 4).await.expect("lines");
    assert_eq!(first[..4], visits_first[..]);
    assert_eq!(
        first[4..],
        store.site_lines().await.expect("sites"),
        "theirs"
    );
    // A visit whose opening is taken back has no line.
    let mut gone = more[9].clone();
    gone.id = EntryId::parse("01b00021-0000-7000-8000-000000000000").expect("a UUID");
    gone.body = Body::Withdrawn { entry: more[9].id };
    let changed = store.append(&[gone]).await.expect("append");
    assert_eq!(changed, [(more[9].about, None)]);
    same("one taken back").await;
    // Thrown away, it is made again; of this form, it is left alone.
    store.keep_lines(&[], true).await.expect("emptied");
    assert_eq!(summary(store).await, Summary::default());
    assert_eq!(store.summarise(Some(LINE_FORM)).await, Ok(None));
    assert_eq!(summary(store).await, Summary::default());
    assert_eq!(store.summarise(Some("0")).await, Ok(Some(0)));
    same("made again").await;
    let texts = store.texts().await.expect("texts");
    assert_eq!(texts, [(SUMMARY.to_owned(), LINE_FORM.to_owned())]);
    store.drop_text(SUMMARY).await.expect("dropped");
}

async fn files(store: &impl Store) {
    let kept = file();
    let before = store.load().await.expect("load").entries;
    assert_eq!(store.file(kept.id).await, Ok(None));
    let fresh = Entry {
        id: EntryId::parse("01b00001-0000-7000-8000-000000000000").expect("a UUID"),
        ..before[0].clone()
    };
    let with = [forged(&before[0]), fresh.clone()];
    store.keep_file(&kept, &with).await.expect("keep_file");
    let mut after = before;
    after.push(fresh);
    holds(store, &after).await;
    store.keep_file(&kept, &with).await.expect("keeping again");
    holds(store, &after).await;

    let big = KeptFile {
        id: FileId::parse("019ab000-0000-7000-8000-000000000006").expect("a UUID"),
        name: "Pumpe \u{2460} \u{201c}Dach\u{201d}.jpg".into(),
        media_type: "image/jpeg".into(),
        bytes: (0..1_000_000_u32)
            .map(|n| (n.wrapping_mul(n) >> 7) as u8)
            .collect(),
    };
    let empty = KeptFile {
        id: FileId::parse("019ab000-0000-7000-8000-000000000007").expect("a UUID"),
        name: String::new(),
        media_type: String::new(),
        bytes: Vec::new(),
    };
    for one in [&big, &empty] {
        store.keep_file(one, &[]).await.expect("keep_file");
    }
    for one in [kept, big, empty] {
        assert_eq!(store.file(one.id).await, Ok(Some(one)));
    }
    holds(store, &after).await;
}

async fn texts(store: &impl Store) {
    let long = "half-typed \u{1f4a7}\n".repeat(2_000);
    for (key, text) in [
        ("unit", "us"),
        ("draft b", &long),
        ("draft a", ""),
        ("unit", "si"),
    ] {
        store.keep_text(key, text).await.expect("keep_text");
    }
    let mut texts = store.texts().await.expect("texts");
    texts.sort();
    let wanted = [("draft a", ""), ("draft b", &long), ("unit", "si")];
    assert_eq!(texts, wanted.map(|(k, t)| (k.to_owned(), t.to_owned())));
    for key in ["unit", "draft a", "draft b", "unit"] {
        let dropped = store.drop_text(key).await;
        assert_eq!(dropped, Ok(()), "dropping nothing is no error");
    }
    assert_eq!(store.texts().await, Ok(Vec::new()));
}

async fn device(store: &impl Store) {
    let device =
        |n| DeviceId::parse(&format!("019ab000-0000-7000-8000-00000000000{n}")).expect("a UUID");
    assert_eq!(store.device(device(1)).await, Ok(device(1)));
    assert_eq!(store.device(device(2)).await, Ok(device(1)), "named once");
}
