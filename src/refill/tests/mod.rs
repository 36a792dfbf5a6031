//! The room as a whole, on simulated basins.

mod any_marks;
mod flows;
mod verdicts;
