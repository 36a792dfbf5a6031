//! What happened: entries, what they are about, and folding them into a site
//! or a visit.
//!
//! Everything that happens is one small immutable [`Entry`]. Nothing is
//! updated in place: a correction is a later entry about the same thing, a
//! removal is an entry that withdraws another. What a screen shows is folded
//! from entries by pure functions, so merging two phones is the union of two
//! sets.

mod at_meter;
mod body;
pub mod bytes;
pub mod demo;
mod demo_past;
mod earlier;
mod entry;
mod figures;
mod fouling;
mod given;
mod history;
mod id;
mod line;
mod log;
mod moment;
pub mod paperwork;
mod reason;
mod recovery;
mod search;
mod site;
mod standing;
mod summary;
mod table;
mod test;
mod visit;

pub use at_meter::{AtMeter, MeterSays, at_meter, meter_says};
pub use body::{Body, LeavingItem, LeavingState, MachineState, Way, What, When};
pub use earlier::{earlier_tests, with_earlier};
pub use entry::{About, Entry, Pen, VERSION};
pub use figures::{Fact, Figures, Head, Known, Lack, Need};
pub use fouling::{ACCEPTED, Fouling, fouling};
pub use given::{KnownInput, known_input};
pub use history::{History, Past, Since, Trend, past, since};
pub use id::{DeviceId, EntryId, FileId, MachineId, SiteId, TestId, VisitId};
pub use line::{LINE_FORM, Line, Outgoing, SiteLine, VisitLine};
pub use log::Log;
pub use moment::{Chance, Clock, Moment};
pub use reason::{case, observed, plant, refill_setup};
pub use recovery::{LoopPoint, Outlook, loop_water, outlook};
pub use search::{Costs, Query};
pub use site::{Machine, Site, Tower};
pub use summary::{Changed, Summary};
pub use table::Table;
pub use test::{Gap, LoggedMark, MOST_MOVED_S, Test, Why};
pub use visit::{Answered, Cause, MadeReport, Reading, Slot, Visit};
