//! The model laid flat: every number the belief rests on, as plain data. For
//! whoever reasons from the same model by other means: the table in
//! `docs/trace.md`, the outside inference the posterior is held against, and
//! the simulation that draws calls from it.

use serde::{Deserialize, Serialize};

use super::check::Check;
use super::evidence::Stage;
use super::heard::{COPIED, chances};
use super::hypothesis::{
    COMPANY, COMPANY_OWN, FLICKER, NOTHING, RESIDUE, STAYS_FULL, acts, low_now, stays_full,
};
use super::mass::priors;
use super::mode::{Group, Lowers, Manner, Mode};
use super::plant::Plant;
use super::sheet;

/// One fault mode.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FlatMode {
    /// Which.
    pub mode: Mode,
    /// Share of the calls, steady and intermittent; all modes add to 1.
    pub prior: [f64; 2],
    /// One machine's own fault, which seldom keeps company.
    pub own: bool,
    /// Whether it can empty the basin.
    pub lowers: bool,
    /// Chance that the basin kept its level although it is there, steady and
    /// intermittent.
    pub stays: [f64; 2],
}

/// One check.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FlatCheck {
    /// Which.
    pub check: Check,
    /// How many answers it has, 2 or 3.
    pub answers: usize,
    /// Chances of the answers per effect, over a full basin.
    pub full: Vec<[f64; 3]>,
    /// The same over a low one.
    pub low: Vec<[f64; 3]>,
    /// Whether "low" is the level on arrival, whatever happened since.
    pub arrival: bool,
    /// Per mode, in the order of [`Flat::modes`], the effect while it acts and
    /// while it is quiet. Of several the highest number speaks.
    pub effects: Vec<(u8, u8)>,
}

/// The whole model of one plant.
///
/// A call: a set of up to three modes, each steady or intermittent; its share
/// is the product of theirs and of the company factor. The basin is full on
/// arrival with the product of the `stays` of its modes and
/// [`Flat::stays_full`]. In each epoch (a stage, and what had been corrected)
/// an intermittent mode acts or is quiet, and changes its mind for one check
/// now and then; a corrected one acts with [`Flat::residue`]. Each check then
/// answers by the chances of its strongest effect and of the level.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Flat {
    /// The modes this plant can have.
    pub modes: Vec<FlatMode>,
    /// The checks it allows.
    pub checks: Vec<FlatCheck>,
    /// Factor for each fault beyond the first.
    pub company: f64,
    /// The same for a machine's own.
    pub company_own: f64,
    /// Prior of nothing wrong, where the symptoms allow it.
    pub nothing: f64,
    /// Chance that an intermittent mode acts, per stage.
    pub acts: [f64; 4],
    /// Chance that it changes its mind for one check.
    pub flicker: f64,
    /// Chance that a correction did not take.
    pub residue: f64,
    /// Chance that the basin kept its level with nothing to empty it.
    pub stays_full: f64,
    /// Chance that the basin stands low now, by stage, by whether it did on
    /// arrival, by whether anything drains it.
    pub low_now: [[[f64; 2]; 2]; 4],
    /// Chance that a check taken again only repeats what it said.
    pub copied: f64,
}

impl Flat {
    /// The model of a plant.
    pub fn of(plant: &Plant) -> Self {
        let checks: Vec<Check> = Check::ALL.into_iter().filter(|c| c.exists(plant)).collect();
        Self::over(plant, &plant.modes(), &checks)
    }

    /// The model of a plant of which only these modes and checks are thought.
    pub fn over(plant: &Plant, modes: &[Mode], checks: &[Check]) -> Self {
        let each = |(mode, prior): (&Mode, [f64; 2])| {
            let lowers = plant.lowers(*mode);
            FlatMode {
                mode: *mode,
                prior,
                own: mode.group() == Group::Machine,
                lowers: lowers != Lowers::No,
                stays: [Manner::Steady, Manner::Intermittent].map(|m| stays_full(lowers, m)),
            }
        };
        let check = |check: &Check| {
            let sheet = sheet::of(*check)?;
            let rows = |low| {
                let effects = 0..sheet.rows.len();
                effects.map(|e| chances(sheet, plant, e, low)).collect()
            };
            Some(FlatCheck {
                check: *check,
                answers: check.answers().len(),
                full: rows(false),
                low: rows(true),
                arrival: sheet.arrival,
                effects: modes.iter().map(|m| sheet.effect(*m)).collect(),
            })
        };
        let low = |s| [false, true].map(|l| [false, true].map(|d| low_now(s, l, d)));
        Self {
            modes: modes.iter().zip(priors(modes)).map(each).collect(),
            checks: checks.iter().filter_map(check).collect(),
            company: COMPANY,
            company_own: COMPANY_OWN,
            nothing: NOTHING,
            acts: Stage::ALL.map(acts),
            flicker: FLICKER,
            residue: RESIDUE,
            stays_full: STAYS_FULL,
            low_now: Stage::ALL.map(low),
            copied: COPIED,
        }
    }
}
