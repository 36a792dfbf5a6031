//! English.

pub mod app;
pub(super) mod chemistry;
pub(super) mod circuit;
pub(super) mod electrode;
pub(super) mod physics;
pub(super) mod physics_chemistry;
pub(super) mod physics_circuit;
pub(super) mod physics_electrode;
pub(super) mod physics_head;
pub(super) mod physics_loop_heat;
pub(super) mod physics_piping;
pub(super) mod physics_refused;
pub(super) mod physics_tower;
pub(super) mod quantity;
pub(super) mod refill;
pub(super) mod refill_findings;
pub mod report;
pub(super) mod trace_checks;
pub(super) mod trace_cures;
pub(super) mod trace_face;
pub(super) mod trace_modes;
pub(super) mod trace_reasons;
pub(super) mod visit;
pub(super) mod working;
pub(super) mod working_found;
