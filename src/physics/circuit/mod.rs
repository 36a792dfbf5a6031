//! The makeup control circuit: what a meter reads at any two terminals, and
//! which faults a reading fits.
//!
//! Method: the circuit is a network of R + jX at one frequency, solved by
//! nodal analysis with the meter's input in it; a table of faults says which
//! part each one changes. Checked against an independent circuit simulator
//! over states, faults, lead positions and meters (docs/accuracy.md). The
//! arithmetic is exact; how well the parts are known is not: source, wiring
//! and power factor move a reading by some percent, stray capacitance a ghost
//! voltage by tens of percent.
//!
//! One side of the supply is the return and the reference; whether it is
//! bonded to earth is not in the model. Live work is for qualified people under
//! local codes; the words say so beside every point.

mod coil;
mod complex;
mod fault;
mod judge;
mod meaning;
mod network;
mod parts;
mod point;
mod read;
mod wiring;

pub use coil::{CoilDuty, Fed, coil_duty};
pub use fault::Fault;
pub use judge::{Accuracy, Fit, Judgement, expect, judge};
pub use meaning::{Meaning, meaning};
pub use parts::{Cable, Circuit, Coil, Supply, Throw, Wire};
pub use point::{Armature, Caution, Input, Leads, Meter, Point, Reading, State};
pub use read::read;
