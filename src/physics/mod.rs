//! The plant's physics: pure functions, f64 kernels behind typed faces.
//!
//! Every function that can fail says so with [`Error`]: an input outside the
//! method's range, or a duty that has no answer. No finite input gives NaN or
//! a panic.

pub mod air;
pub mod basin;
pub mod basis;
pub mod chemistry;
pub mod circuit;
pub mod drain;
pub mod electrode;
mod error;
pub mod heat;
pub mod loop_heat;
pub mod overflow;
pub mod piping;
pub mod refrigerant;
mod root;
pub mod tower;
pub mod water;

pub use error::{Error, NoSolution, Quantity};
