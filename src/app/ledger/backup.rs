//! Everything on this phone as one JSON document, and taking one in.
//!
//! JSON is the browser's own: it is exact to the last bit of a number, and an
//! entry of a newer build goes through as it is.

use js_sys::{Array, JSON, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};

use super::Ledger;
use crate::app::send::save;
use crate::record::paperwork::files;
use crate::record::{Entry, Log, Pen};
use crate::store::backup::{FORM, FileCopy, sift};
use crate::store::{KeptFile, Store, StoreError, file_in, to_js};

/// Key of the time of the last backup.
pub const LAST_BACKUP: &str = "setting backup";

/// What taking in a backup brought.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Taken {
    /// Entries that were not here.
    pub new: usize,
    /// Entries that were here already.
    pub known: usize,
    /// Entries that say something else than those of the same name here, which
    /// stay; and files whose bytes are not those that were copied.
    pub refused: usize,
    /// Entries of a newer build.
    pub unreadable: usize,
    /// Files that were not here.
    pub files: usize,
}

/// Why a backup was not taken in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Untaken {
    /// It is not a backup of this app, or of a newer form.
    NotOne,
    /// It is larger than any backup.
    TooLarge,
    /// The store did not keep it. What it kept before stays.
    Store(StoreError),
}

impl From<StoreError> for Untaken {
    fn from(fault: StoreError) -> Self {
        Untaken::Store(fault)
    }
}

fn get(of: &JsValue, key: &str) -> JsValue {
    Reflect::get(of, &key.into()).unwrap_or_default()
}

impl Ledger {
    /// Every entry and every file that one speaks of; what waits to be saved
    /// too. When the store can't be read, what is open.
    ///
    /// # Errors
    /// As [`Store::load`], when nothing is open either.
    pub async fn backup(self) -> Result<String, StoreError> {
        let store = self.store.get_value();
        let mut known: Vec<Entry> = self.unsaved.get_untracked();
        let entries = match store.raw_entries().await {
            Ok(all) => {
                for entry in &known {
                    all.push(&to_js(entry)?);
                }
                known.extend(store.load().await?.entries);
                all
            }
            Err(fault) => {
                self.log
                    .with_untracked(|log| known.extend(log.held().cloned()));
                if known.is_empty() {
                    return Err(fault);
                }
                self.hurt(fault); // said: it is not all
                known.iter().map(to_js).collect::<Result<_, _>>()?
            }
        };
        let copies = Array::new();
        for (id, _) in files(known.iter()) {
            let file = match self.waiting_file(id) {
                None => store.file(id).await.ok().flatten(),
                waiting => waiting,
            };
            if let Some(file) = file {
                copies.push(&to_js(&FileCopy::from(&file))?);
            }
        }
        let now = self.now();
        let made = format!("{} {}", now.date(), now.clock());
        let document = Object::new();
        for (key, value) in [
            ("coldsump-backup", JsValue::from(FORM)),
            ("made", made.into()),
            ("entries", entries.into()),
            ("files", copies.into()),
        ] {
            let _ = Reflect::set(&document, &key.into(), &value);
        }
        let text = JSON::stringify(&document).map_err(|e| StoreError::Failed(format!("{e:?}")))?;
        Ok(text.into())
    }

    /// Makes a backup and hands it to the phone; answers when, if the phone
    /// took it.
    ///
    /// # Errors
    /// As [`Ledger::backup`].
    pub async fn save_backup(self) -> Result<Option<String>, StoreError> {
        let bytes = self.backup().await?.into_bytes();
        let now = self.now();
        let file = KeptFile {
            id: self.id(),
            name: format!("coldsump-backup-{}.json", now.date()),
            media_type: "application/json".into(),
            bytes,
        };
        Ok(save(&file).then(|| {
            let when = format!("{} {}", now.date(), now.clock());
            self.keep_text(LAST_BACKUP, &when);
            when
        }))
    }

    /// Takes in a backup: keeps what is not here yet. Nothing here changes.
    ///
    /// # Errors
    /// [`Untaken`].
    pub async fn take_in(self, document: JsValue) -> Result<Taken, Untaken> {
        let form = get(&document, "coldsump-backup").as_f64();
        let list = |key| get(&document, key).dyn_into::<Array>();
        let (Some(form), Ok(entries), Ok(copies)) = (form, list("entries"), list("files")) else {
            return Err(Untaken::NotOne);
        };
        if form != f64::from(FORM) {
            return Err(Untaken::NotOne);
        }
        let mut taken = Taken::default();
        let mut read = Vec::new();
        for entry in entries.iter() {
            match sound(entry) {
                Some(entry) => read.push(entry),
                None => taken.unreadable += 1,
            }
        }
        let store = self.store.get_value();
        let mut here = Log::default();
        let all = store.load().await?.entries;
        all.into_iter().for_each(|entry| here.add(entry));
        let sifted = sift(&here, read);
        (taken.known, taken.refused) = (sifted.known, sifted.other);
        // Files before the entries that speak of them: an entry that stands
        // without its file would look like a loss.
        let wanted = files(sifted.new.iter());
        for copy in copies.iter() {
            // One that was sealed comes as the row it was.
            let row = file_in(&copy);
            let copy = serde_wasm_bindgen::from_value::<FileCopy>(copy).ok();
            let id = (row.as_ref().map(|row| row.id)).or(copy.as_ref().map(|copy| copy.id));
            let Some(id) = id else {
                taken.refused += 1;
                continue;
            };
            let spoken_of = wanted.iter().find(|(name, _)| *name == id);
            let Some((_, sha256)) = spoken_of else {
                continue;
            };
            if store.file(id).await?.is_some() {
                continue;
            }
            match row.or_else(|| copy?.open()) {
                Some(file) if sha256.is_empty() || file.sha256() == *sha256 => {
                    store.keep_file(&file, &[]).await?;
                    taken.files += 1;
                }
                _ => taken.refused += 1,
            }
        }
        let changed = store.append(&sifted.new).await?;
        taken.new = sifted.new.len();
        self.accept(sifted.new, changed, false);
        // What is written from now on sorts after what came in.
        let last = store.newest().await?;
        self.pen
            .update_value(|pen| *pen = Pen::new(pen.device(), last));
        Ok(taken)
    }
}

/// An entry that reads, and would read the same out of the next backup: a number
/// too large to hold comes as an infinity, which JSON can't carry on.
fn sound(entry: JsValue) -> Option<Entry> {
    let text = String::from(JSON::stringify(&entry).ok()?);
    let again = JSON::parse(&text).ok()?;
    let [read, again] = [entry, again].map(serde_wasm_bindgen::from_value::<Entry>);
    read.ok()
        .filter(|read| again.is_ok_and(|again| again == *read))
}
