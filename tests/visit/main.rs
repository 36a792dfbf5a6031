//! A visit from its first entry to its report, through the public faces of
//! `record`, `store` and `report`.

mod correction;
mod figures;
mod fold;
mod given;
mod history;
mod merge;
mod outside;
mod recovery;
mod refill_clock;
mod report;
mod store;
mod store_contract;
mod story;
mod wire;
