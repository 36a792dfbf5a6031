//! What happened: entries, what they are about, and folding them into a site
//! or a visit.
//!
//! Everything that happens is one small immutable [`Entry`]. Nothing is
//! updated in place: a correction is a later entry about the same thing, a
//! removal is an entry that withdraws another. What a screen shows is folded
//! from entries by pure functions, so merging two phones is the union of two
//! sets.

mod body;
pub mod demo;
mod earlier;
mod entry;
mod figures;
mod given;
mod id;
mod log;
mod moment;
mod reason;
mod recovery;
mod site;
mod standing;
mod table;
mod test;
mod visit;

pub use body::{Body, LeavingItem, LeavingState, MachineState, Way, What, When};
pub use earlier::{earlier_fill, earlier_tests};
pub use entry::{About, Entry, Pen, VERSION};
pub use figures::{Figures, Head, Known, Lack};
pub use given::{KnownInput, known_input};
pub use id::{DeviceId, EntryId, FileId, MachineId, SiteId, TestId, VisitId};
pub use log::{Log, Outgoing, VisitLine};
pub use moment::{Chance, Clock, Moment};
pub use reason::{case, observed, plant, refill_setup};
pub use recovery::{LoopPoint, Outlook, loop_water, outlook};
pub use site::{Machine, Site, Tower};
pub use table::Table;
pub use test::{Gap, LoggedMark, MOST_MOVED_S, Test, Why};
pub use visit::{Answered, Cause, MadeReport, Reading, Slot, Visit};
