//! Spanish as mechanics speak it in Mexico and the United States.
//!
//! Who is spoken to: *usted*, because a mechanic of any age reads this beside
//! a customer, and because *usted* is what trade papers use on both sides of
//! the border. Buttons and titles of steps take the infinitive ("Abrir",
//! "Guardar"), which tells neither *tú* from *usted* and is the custom of
//! phones; instructions take the imperative ("Lea", "Cierre").
//!
//! Numbers keep the point for decimals, as both countries write them, so
//! `quantity::show` is the same in either language.
//!
//! The trade's words, where there was a choice: *pileta* for the tower's cold
//! water basin, since *bandeja* is a condensate pan to many; *relleno* is the
//! tower's fill and *llenado* the filling; *relevador*, *desconectador*,
//! *banda*, *cubeta*, *desarmador* as in Mexico; *equipo* for a machine, as
//! *unidad* is here a unit of measure; *presión de alta* for head pressure,
//! *se dispara por alta* for what it does then; *purga* for bleed and
//! blowdown; *colador* for a strainer. All of this is common practice, no
//! source.

pub(super) mod app;
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
pub(super) mod report;
pub(super) mod report_said;
pub(super) mod said;
pub(super) mod trace_checks;
pub(super) mod trace_cures;
pub(super) mod trace_face;
pub(super) mod trace_modes;
pub(super) mod trace_reasons;
pub(super) mod visit;
pub(super) mod working;
pub(super) mod working_found;
