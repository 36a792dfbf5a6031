//! The screens.

pub mod found;
pub mod home;
pub mod leaving;
pub mod new_site;
pub mod numbers;
pub mod outbox;
pub mod overview;
pub mod refill;
mod refill_verdict;
pub mod report;
pub mod settings;
pub mod site;
pub mod trace;
mod trace_card;
mod trace_close;
mod trace_list;
mod trace_mind;
mod trace_so_far;
mod trace_suspects;
mod visit_frame;
mod wake;
pub mod working;
