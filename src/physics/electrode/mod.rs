//! The electrode level sensor: what its relay sees in water, film, foam and scale.
//!
//! Method: R = 1 / (conductivity x G) with G from potential theory for the
//! shape; series and parallel resistances for what covers or bridges the rods.
//! Formulas are from memory of standard potential theory; two rods are checked
//! against a boundary-element solution of Laplace's equation, and rods in deep
//! water against a ring-by-ring solution in three dimensions
//! (docs/accuracy.md). Films and foam are guesses of a size: read the result as
//! an order of magnitude. Polarisation of the metal is left out, as the relay's
//! small alternating voltage mostly avoids it.

mod cover;
mod probe;
mod shape;

pub use cover::{Film, Foam, Leakage, Scale};
pub use probe::{Condition, Probe, Sensed, Water};
pub use shape::{Shape, touching};
