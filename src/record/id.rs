//! Names for things: UUID version 7 (RFC 9562), so that sorting by id sorts
//! by time of writing.

use serde::{Deserialize, Serialize};
use uuid::Uuid;

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(Uuid);

        impl $name {
            /// Reads the hyphenated form; `None` when it is not a UUID.
            pub fn parse(text: &str) -> Option<Self> {
                Uuid::try_parse(text).ok().map(Self)
            }

            /// When it was made, in milliseconds since 1970 (RFC 9562, 5.7).
            pub fn ms(&self) -> u64 {
                let time = &self.0.as_bytes()[..6];
                time.iter().fold(0, |ms, b| (ms << 8) | u64::from(*b))
            }
        }

        impl From<Uuid> for $name {
            fn from(id: Uuid) -> Self {
                Self(id)
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                self.0.fmt(f)
            }
        }
    )*};
}

ids! {
    /// One entry of the log.
    EntryId
    /// The phone that wrote an entry.
    DeviceId
    /// A customer's site.
    SiteId
    /// One call to a site.
    VisitId
    /// One refill test within a visit.
    TestId
    /// One machine on a site's loop.
    MachineId
    /// A file kept beside the log: a report as it was made.
    FileId
}
