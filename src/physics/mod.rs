//! The plant's physics: pure functions, f64 kernels behind typed faces.

pub mod basin;
