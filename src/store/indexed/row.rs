//! Entries and texts as rows, and the keys of the object stores.

use js_sys::{Object, Reflect, Uint8Array};
use serde::{Deserialize, Serialize};
use wasm_bindgen::{JsCast, JsValue};

use crate::record::{About, Entry, FileId, Line, Table};
use crate::store::{KeptFile, Loaded, StoreError};

/// An entry as stored: with its keys lifted out.
#[derive(Serialize, Deserialize)]
struct Row {
    id: String,
    about: String,
    entry: Entry,
}

/// A text as stored.
#[derive(Serialize, Deserialize)]
pub struct Text {
    /// Its name.
    pub key: String,
    /// The text.
    pub text: String,
}

/// What an entry is about, as the index knows it.
pub fn name_of(about: About) -> String {
    match about {
        About::Site(id) => format!("site {id}"),
        About::Visit(id) => format!("visit {id}"),
    }
}

/// The key of a line: sites first; then visits, newest first, by the digits of
/// their ids turned round.
pub fn line_key(about: About) -> String {
    match about {
        About::Site(id) => format!("s{id}"),
        About::Visit(id) => {
            let digit = |c: char| c.to_digit(16).and_then(|d| char::from_digit(15 - d, 16));
            let turned = id
                .to_string()
                .chars()
                .map(|c| digit(c).unwrap_or(c))
                .collect::<String>();
            format!("v{turned}")
        }
    }
}

/// The things whose lines these entries may change, each once.
pub fn things(entries: &[Entry]) -> Vec<About> {
    let mut things = Vec::new();
    let mut known: Table<About, ()> = Table::new();
    // A mark or reading among thousands must not read all of them again.
    for entry in entries.iter().filter(|e| Line::moved_by(&e.body)) {
        if !known.contains_key(&entry.about) {
            known.insert(entry.about, ());
            things.push(entry.about);
        }
    }
    things
}

/// Takes a row in; one that can't be read is counted.
pub fn take(loaded: &mut Loaded, row: JsValue) {
    let id = Reflect::get(&row, &"id".into()).ok();
    loaded.last = id.and_then(|id| id.as_string());
    match serde_wasm_bindgen::from_value::<Row>(row) {
        Ok(row) => loaded.entries.push(row.entry),
        Err(_) => loaded.unreadable += 1,
    }
}

/// The file in a row; `None` when it is not whole.
pub fn file_in(row: &JsValue) -> Option<KeptFile> {
    let get = |key: &str| Reflect::get(row, &key.into()).ok();
    let text = |key: &str| get(key)?.as_string();
    Some(KeptFile {
        id: FileId::parse(&text("id")?)?,
        name: text("name").unwrap_or_default(),
        media_type: text("type").unwrap_or_default(),
        bytes: get("bytes")?.dyn_into::<Uint8Array>().ok()?.to_vec(),
    })
}

/// A file as a row.
pub fn file_as_row(file: &KeptFile) -> JsValue {
    let row = Object::new();
    for (key, value) in [
        ("id", JsValue::from(file.id.to_string())),
        ("name", file.name.as_str().into()),
        ("type", file.media_type.as_str().into()),
        ("bytes", Uint8Array::from(file.bytes.as_slice()).into()),
    ] {
        let _ = Reflect::set(&row, &key.into(), &value); // on an object of our own
    }
    row.into()
}

/// Entries as rows with their keys. Made before a transaction begins: one that
/// can't be written must not leave the ones before it behind.
pub fn rows(entries: &[Entry]) -> Result<Vec<(JsValue, JsValue)>, StoreError> {
    let row = |entry: &Entry| {
        let row = Row {
            id: entry.id.to_string(),
            about: name_of(entry.about),
            entry: entry.clone(),
        };
        Ok((row.id.as_str().into(), to_js(&row)?))
    };
    entries.iter().map(row).collect()
}

/// A value as the browser keeps it.
pub fn to_js(value: &impl Serialize) -> Result<JsValue, StoreError> {
    value
        .serialize(&serde_wasm_bindgen::Serializer::json_compatible())
        .map_err(|e| StoreError::Failed(e.to_string()))
}
