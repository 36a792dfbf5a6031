//! Reading entries and backups, and taking them in.

use coldsump::record::{Entry, Log};
use coldsump::store::backup::{Backup, FileCopy, keepable, sift};
use serde_json::Value as Json;

/// The entries that a document holds, each read by itself as the app does: of a
/// backup, of a list, or one alone. What can't be read is left out.
pub fn entries(data: &[u8]) -> Vec<Entry> {
    let Ok(document) = serde_json::from_slice::<Json>(data) else {
        return Vec::new();
    };
    let list = match document {
        Json::Array(list) => list,
        Json::Object(mut all) if all.contains_key("entries") => match all.remove("entries") {
            Some(Json::Array(list)) => list,
            _ => Vec::new(),
        },
        one => vec![one],
    };
    let read = |one| serde_json::from_value::<Entry>(one).ok();
    list.into_iter().filter_map(read).collect()
}

/// Reads a document as a backup and as entries.
///
/// # Panics
/// When what is read does not serialise back equal, when taking it in a second
/// time brings anything or changes what is here, or when a file opens whose
/// bytes are not those its sum says.
pub fn holds(data: &[u8]) {
    if let Ok(backup) = serde_json::from_slice::<Backup>(data) {
        let text = serde_json::to_string(&backup).expect("a backup is written");
        assert_eq!(
            serde_json::from_str::<Backup>(&text).ok(),
            Some(backup.clone())
        );
        for copy in backup.files {
            opens_as_it_says(copy);
        }
    }
    let read = entries(data);
    for entry in &read {
        let text = serde_json::to_string(entry).expect("an entry is written");
        let again: Entry = serde_json::from_str(&text).expect("what was written reads");
        assert_eq!(again, *entry);
        assert_eq!(serde_json::to_string(&again).ok(), Some(text));
    }
    taken_in_once(read);
}

fn opens_as_it_says(copy: FileCopy) {
    let (claimed, length) = (copy.sha256.clone(), copy.base64.len());
    if let Some(file) = copy.open() {
        assert_eq!(file.sha256(), claimed);
        assert!(file.bytes.len() <= length, "more bytes than came in");
        let again = FileCopy::from(&file);
        assert_eq!(again.open(), Some(file));
    }
}

fn taken_in_once(read: Vec<Entry>) {
    let mut log = Log::default();
    let sifted = sift(&log, read.clone());
    let told = sifted.new.len() + sifted.known + sifted.other;
    assert_eq!(told, read.len(), "an entry was neither taken nor counted");
    assert!(sifted.new.iter().all(keepable));
    sifted.new.iter().cloned().for_each(|entry| log.add(entry));
    let before = log.clone();
    let again = sift(&log, read.clone());
    assert!(again.new.is_empty(), "it came in twice");
    read.into_iter().for_each(|entry| log.add(entry));
    for entry in before.held() {
        assert_eq!(log.entry(entry.id), Some(entry), "it was written over");
    }
}
