//! The loop in trouble: how long until a machine trips, what a condenser does
//! with little water or none, how the loop comes back, and how far apart to
//! restart the machines.
//!
//! The loop is one mixed tank: water in basin, pipes and condensers at the
//! temperature that enters the machines, no metal, steady heat. Real
//! compressors draw more and cool less as head rises, real loops travel in
//! slugs: read every time here as +/-30 %. The sums themselves agree with
//! SciPy's differential equation solver within 0.1 %.

mod condenser;
mod recovery;
mod restart;
mod trip;

pub use condenser::{CondenserDesign, ReducedFlow, time_without_flow};
pub use recovery::{Recovery, Rejection};
pub use restart::{MOST_MACHINES, Restart, RestartPlan, Restarting};
pub use trip::Condenser;
