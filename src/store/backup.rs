//! A backup: every entry and every file in one JSON document, and taking one
//! in. Taking in is a union: what is here already stays as it is.
//!
//! The document's form is `docs/backup.schema.json`.

use serde::{Deserialize, Serialize};

use super::KeptFile;
use crate::record::bytes::{base64, from_base64, sha256};
use crate::record::{Entry, FileId, Log};

/// Version of the document's form that this build writes.
pub const FORM: u16 = 1;

/// The largest file that is read as one, in bytes: the longest text a browser
/// makes (V8, 2^29 - 24), so every backup that could be written can be read.
pub const MOST_BYTES: f64 = 536_870_888.0;

/// A file as it stands in a backup.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FileCopy {
    /// Its name in the log.
    pub id: FileId,
    /// File name as offered to the person.
    pub name: String,
    /// Media type.
    pub media_type: String,
    /// SHA-256 of its bytes in hexadecimal.
    pub sha256: String,
    /// Its bytes.
    pub base64: String,
}

impl From<&KeptFile> for FileCopy {
    fn from(file: &KeptFile) -> Self {
        Self {
            id: file.id,
            name: file.name.clone(),
            media_type: file.media_type.clone(),
            sha256: sha256(&file.bytes),
            base64: base64(&file.bytes),
        }
    }
}

impl FileCopy {
    /// The file; `None` when its bytes are not those it was copied from.
    pub fn open(self) -> Option<KeptFile> {
        let bytes = from_base64(&self.base64)?;
        (sha256(&bytes) == self.sha256).then_some(KeptFile {
            id: self.id,
            name: self.name,
            media_type: self.media_type,
            bytes,
        })
    }
}

/// A backup.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Backup {
    /// [`FORM`].
    pub coldsump_backup: u16,
    /// When it was made, local: `2026-11-24 09:30`.
    pub made: String,
    /// Every entry.
    pub entries: Vec<Entry>,
    /// Every file that an entry speaks of.
    pub files: Vec<FileCopy>,
}

/// What a backup would bring.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sifted {
    /// Entries that are not here yet.
    pub new: Vec<Entry>,
    /// How many are here already.
    pub known: usize,
    /// How many bear the name of an entry here and say something else, or a
    /// name that can't be kept. Those here stay.
    pub other: usize,
}

/// Whether an entry may come in: its name lies before the year 10,000. A later
/// one would leave no names after it, and what is written next would sort first.
pub fn keepable(entry: &Entry) -> bool {
    entry.id.ms() < LATEST
}

/// The first millisecond of the year 10,000.
const LATEST: u64 = 253_402_300_800_000;

/// Sifts entries by what a log holds already.
pub fn sift(log: &Log, entries: Vec<Entry>) -> Sifted {
    let mut sifted = Sifted::default();
    let mut seen = log.clone();
    for entry in entries {
        match seen.entry(entry.id) {
            None if !keepable(&entry) => sifted.other += 1,
            None => {
                seen.add(entry.clone());
                sifted.new.push(entry);
            }
            Some(here) if *here == entry => sifted.known += 1,
            Some(_) => sifted.other += 1,
        }
    }
    sifted
}
