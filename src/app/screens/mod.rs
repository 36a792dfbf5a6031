//! The screens.

mod beep;
pub mod found;
pub mod home;
pub mod leaving;
pub mod new_site;
pub mod numbers;
pub mod outbox;
pub mod overview;
pub mod refill;
mod refill_level;
mod refill_marks;
mod refill_plan;
mod refill_recovery;
mod refill_replay;
mod refill_verdict;
mod refill_watch;
pub mod report;
pub mod settings;
pub mod site;
pub mod trace;
mod visit_frame;
mod wake;
pub mod working;
