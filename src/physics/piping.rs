//! The fill line: what its valves and pipe let through, and what each part takes.
//!
//! Valves by IEC 60534-2-1 ([`valve`]); pipe friction by Darcy and Weisbach
//! with Colebrook and White ([`friction_factor`]); the line from mains to
//! basin as one balance of pressures ([`FillLine`]).
//!
//! Checked against the standard's two worked examples and, over a grid, against
//! fluids 1.3.1 with SciPy's root finder. The inputs are the larger error: loss
//! coefficients of fittings are good for 20 % at best, old pipe is rougher and
//! narrower than new.

mod friction;
mod line;
mod liquid;
mod suction;
pub mod valve;

pub use friction::friction_factor;
pub use line::{Drops, FillLine, LineFlow, ServoOpening, servo_opening};
pub use liquid::Liquid;
pub use suction::{Suction, suction};

use uom::si::length::meter;

use super::error::{Error, Quantity, within};
use crate::quantity::Length;

/// Acceleration of gravity, m/s2.
pub(super) const GRAVITY: f64 = 9.806_65;

/// Checked inside bore of a pipe or hole, m.
pub(super) fn bore_of(bore: Length) -> Result<f64, Error> {
    within(Quantity::Bore, bore.get::<meter>(), 1e-3, 2.0)
}

/// Area of a round bore, m2.
pub(super) fn circle(bore: f64) -> f64 {
    std::f64::consts::PI * bore * bore / 4.0
}
