//! The entry: one small immutable thing that happened.

use serde::{Deserialize, Serialize};
use uuid::Builder;

use super::body::Body;
use super::id::{DeviceId, EntryId, SiteId, VisitId};
use super::moment::{Chance, Clock, Moment};

/// Version of the body's shape that this build writes.
pub const VERSION: u16 = 1;

/// What an entry is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum About {
    /// A site's description.
    Site(SiteId),
    /// What happened on a visit.
    Visit(VisitId),
}

/// One entry. Written once, never changed: a correction is another entry.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Entry {
    /// Sorts by time of writing.
    pub id: EntryId,
    /// The phone that wrote it.
    pub device: DeviceId,
    /// When it was written.
    pub at: Moment,
    /// What it is about.
    pub about: About,
    /// Shape version of the body.
    pub v: u16,
    /// What happened.
    pub body: Body,
}

/// Writes entries: holds the phone's name and makes ids that never run
/// backwards, even when the wall clock does.
#[derive(Debug)]
pub struct Pen {
    device: DeviceId,
    last_ms: u64,
    count: u16,
}

impl Pen {
    /// A pen for this phone. `last` is the newest id already in the log, so
    /// that new ids sort after it.
    pub fn new(device: DeviceId, last: Option<EntryId>) -> Self {
        Self {
            device,
            last_ms: last.map_or(0, |id| id.ms()),
            count: 0x0fff,
        }
    }

    /// The phone it writes for.
    pub fn device(&self) -> DeviceId {
        self.device
    }

    /// A new id, later in the order than every one this pen made before.
    /// The 12 bits after the time are a counter (RFC 9562 section 6.2,
    /// method 1); when it is spent the time part moves on by one.
    pub fn id<T: From<uuid::Uuid>>(&mut self, now: Moment, chance: &impl Chance) -> T {
        let ms = u64::try_from(now.ms).unwrap_or(0);
        if ms > self.last_ms {
            (self.last_ms, self.count) = (ms, 0);
        } else if self.count >= 0x0fff {
            (self.last_ms, self.count) = (self.last_ms + 1, 0);
        } else {
            self.count += 1;
        }
        let mut bytes = chance.ten_bytes();
        bytes[0] = (self.count >> 8) as u8;
        bytes[1] = self.count as u8;
        Builder::from_unix_timestamp_millis(self.last_ms, &bytes)
            .into_uuid()
            .into()
    }

    /// An entry saying that `body` happened now.
    pub fn write(
        &mut self,
        about: About,
        body: Body,
        clock: &impl Clock,
        chance: &impl Chance,
    ) -> Entry {
        let at = clock.now();
        Entry {
            id: self.id(at, chance),
            device: self.device,
            at,
            about,
            v: VERSION,
            body,
        }
    }
}
