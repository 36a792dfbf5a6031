//! The screens.

mod backup;
pub mod found;
pub mod history;
pub mod home;
pub mod leaving;
pub mod new_site;
pub mod numbers;
pub mod outbox;
pub mod overview;
pub mod papers;
mod photos;
pub mod refill;
mod refill_verdict;
pub mod report;
pub mod settings;
mod signature;
pub mod site;
pub mod site_part;
pub mod trace;
mod visit_frame;
mod wake;
pub mod working;
