//! Coldsump: the tool of the mechanic who was called because several
//! water-cooled machines stopped on high head pressure.
//!
//! Rooms, from the ground up; a lower room never imports an upper one:
//! `quantity`, `physics`, `working`, `refill` and `trace`, `record`, `report` and
//! `store`, `app`. `words` holds every phrase and stands between `record` and
//! `report`. See DEVELOPERS.md.

#[cfg(target_arch = "wasm32")]
pub mod app;
pub mod physics;
pub mod quantity;
pub mod record;
pub mod refill;
pub mod report;
pub mod store;
pub mod trace;
pub mod words;
pub mod working;
