//! What was heard, as likelihoods: each answer and reading becomes a small
//! table by effect, by whether anything drains the basin, and by whether it
//! stood low on arrival.

use super::answer::Answer;
use super::check::Check;
use super::evidence::{Case, Evidence, Stage};
use super::hypothesis::{RESIDUE, TRIP_PER_DAY, low_now};
use super::mode::Mode;
use super::observed::{Reading, Soft};
use super::plant::Plant;
use super::sheet::{self, Sheet};
use super::weight::Source;

/// No reading is less likely than this under any state, so that no evidence,
/// however absurd, leaves every hypothesis dead.
const IMPOSSIBLE: f64 = 1e-12;

/// Chance that a check taken again in the same epoch only repeats what it
/// said: same hands, same meter, same place. Else it is a fresh witness.
/// Common practice, no source.
pub(crate) const COPIED: f64 = 0.5;

/// A stretch of the visit in which an intermittent fault keeps its mind, but
/// for a flicker.
#[derive(Clone, PartialEq)]
pub(crate) struct Epoch {
    pub stage: Stage,
    /// What had been corrected by then, and again where it was done again.
    pub corrected: Vec<Mode>,
    /// Chance that each of these did not take, as the tests before the last
    /// of them left it.
    pub residue: Vec<f64>,
}

impl Epoch {
    /// Before anything was corrected.
    fn begun(stage: Stage) -> Self {
        Self {
            stage,
            corrected: Vec::new(),
            residue: Vec::new(),
        }
    }

    /// Chance that the last correction of this mode did not take; `None` when
    /// it was not corrected.
    pub fn residue_of(&self, mode: Mode) -> Option<f64> {
        let at = self.corrected.iter().rposition(|m| *m == mode)?;
        self.residue.get(at).copied()
    }
}

/// Likelihood by `draining * 2 + low on arrival`.
pub(crate) type ByBasin = [f64; 4];

/// One piece of evidence.
pub(crate) struct Heard {
    pub source: Source,
    /// Index of its epoch.
    pub epoch: usize,
    /// Likelihood per effect.
    pub by_effect: Vec<ByBasin>,
    /// Whether anything draining the basin changes it.
    pub minds_draining: bool,
    sheet: &'static Sheet,
}

impl Heard {
    /// Acting and quiet effect of a mode.
    pub fn effect(&self, mode: Mode) -> (u8, u8) {
        self.sheet.effect(mode)
    }

    /// The largest likelihood any state gives it.
    pub fn best(&self) -> f64 {
        self.by_effect.iter().flatten().copied().fold(0.0, f64::max)
    }
}

/// Chance of each answer for an effect over a full or a low basin.
pub(crate) fn chances(sheet: &Sheet, plant: &Plant, effect: usize, low: bool) -> [f64; 3] {
    if sheet.check == Check::MachinesOut {
        return machines_out(plant.machines, effect > 0);
    }
    let rows = sheet.rows_over(low);
    let row = rows
        .get(effect)
        .or(rows.last())
        .copied()
        .unwrap_or_default();
    row.map(|p| f64::from(p) / 1000.0)
}

/// Chance that one, two, or three and more of `machines` are out. A cause
/// common to the machines takes any number alike; machines failing each by
/// itself pile up as powers of [`TRIP_PER_DAY`].
fn machines_out(machines: u8, common: bool) -> [f64; 3] {
    let kinds = usize::from(machines.clamp(1, 3));
    let mut chance: [f64; 3] = std::array::from_fn(|i| match (i < kinds, common) {
        (false, _) => 0.0,
        (true, true) => 1.0,
        (true, false) => TRIP_PER_DAY.powi(i as i32),
    });
    let total: f64 = chance.iter().sum();
    chance.iter_mut().for_each(|c| *c /= total);
    chance
}

/// A likelihood per effect from one that knows effect and level: at a later
/// stage the level on arrival is only half known to hold.
pub(crate) fn by_basin(
    sheet: &Sheet,
    stage: Stage,
    of: impl Fn(usize, bool) -> f64,
) -> Vec<ByBasin> {
    (0..sheet.rows.len())
        .map(|effect| {
            let (full, low) = (of(effect, false), of(effect, true));
            std::array::from_fn(|i| {
                let (draining, was_low) = (i >= 2, i % 2 == 1);
                let share = if sheet.arrival {
                    f64::from(u8::from(was_low))
                } else {
                    low_now(stage, was_low, draining)
                };
                (share * low + (1.0 - share) * full).max(IMPOSSIBLE)
            })
        })
        .collect()
}

/// Everything heard on a call.
pub(crate) struct Ear {
    pub epochs: Vec<Epoch>,
    pub heard: Vec<Heard>,
}

impl Ear {
    /// Listens to a case. A check taken again in the same epoch counts for less
    /// where it repeats itself ([`COPIED`]); a number read as found outranks
    /// the words for the same thing.
    pub fn of(plant: &Plant, case: &Case) -> Self {
        let mut ear = Self {
            epochs: Vec::new(),
            heard: Vec::new(),
        };
        for reading in Reading::ALL {
            if let (Some(soft), Some(sheet)) = (
                case.observed.soft(reading, plant),
                sheet::of(reading.check()),
            ) {
                let epoch = ear.epoch(Epoch::begun(Stage::AsFound));
                let source = Source::Reading(reading);
                match soft {
                    Soft::Weights(weights) => {
                        ear.weigh(source, epoch, sheet, plant, weights, None);
                    }
                    _ => ear.add(source, epoch, sheet, |effect, low| {
                        soft.likelihood(effect, low).unwrap_or(1.0)
                    }),
                }
            }
        }
        for (i, e) in case.evidence.iter().enumerate() {
            let (Some(weights), Some(sheet)) = (e.weights(plant), sheet::of(e.check)) else {
                continue;
            };
            let outranked = e.stage == Stage::AsFound && case.observed.outranks(e.check, plant);
            if !outranked {
                let epoch = ear.epoch(epoch_of(case, i, e.stage));
                let before = before(case, i, plant);
                ear.weigh(Source::Evidence(i), epoch, sheet, plant, weights, before);
            }
        }
        ear
    }

    /// Index of an epoch, new or known.
    pub fn epoch(&mut self, epoch: Epoch) -> usize {
        let known = self.epochs.iter().position(|e| *e == epoch);
        known.unwrap_or_else(|| {
            self.epochs.push(epoch);
            self.epochs.len() - 1
        })
    }

    fn weigh(
        &mut self,
        source: Source,
        epoch: usize,
        sheet: &'static Sheet,
        plant: &Plant,
        weights: [f64; 3],
        before: Option<[f64; 3]>,
    ) {
        self.add(source, epoch, sheet, |effect, low| {
            let chance = again(chances(sheet, plant, effect, low), before);
            chance.iter().zip(weights).map(|(p, w)| p * w).sum()
        });
    }

    fn add(
        &mut self,
        source: Source,
        epoch: usize,
        sheet: &'static Sheet,
        of: impl Fn(usize, bool) -> f64,
    ) {
        let by_effect = by_basin(sheet, self.epochs[epoch].stage, of);
        let minds_draining = by_effect.iter().any(|l| l[..2] != l[2..]);
        self.heard.push(Heard {
            source,
            epoch,
            by_effect,
            minds_draining,
            sheet,
        });
    }
}

/// The epoch of something said at `stage` after the first `after` answers.
pub(crate) fn epoch_of(case: &Case, after: usize, stage: Stage) -> Epoch {
    let mut epoch = Epoch::begun(stage);
    let done = case.corrections.iter().filter(|c| c.after <= after);
    let last = done.clone().map(|c| c.after).max().unwrap_or(0);
    for c in done {
        epoch.corrected.push(c.mode);
        let tested = case.evidence.get(c.after..last).unwrap_or_default();
        epoch.residue.push(residue(c.mode, tested));
    }
    epoch
}

/// Chance that a correction did not take after these tests of it. Only a test
/// that went well counts here: one that did not may have met another fault.
fn residue(mode: Mode, tested: &[Evidence]) -> f64 {
    let mut odds = RESIDUE / (1.0 - RESIDUE);
    for e in tested {
        let went_well = matches!(e.answer, Answer::Refilled | Answer::HeadsUsual);
        if let Some(sheet) = sheet::of(e.check).filter(|_| went_well) {
            let effect = usize::from(sheet.effect(mode).0);
            odds *= f64::from(sheet.rows[effect][0]) / f64::from(sheet.rows[0][0]);
        }
    }
    odds / (1.0 + odds)
}

/// Chance of each answer of a check that said `before` in the same epoch.
pub(crate) fn again(chance: [f64; 3], before: Option<[f64; 3]>) -> [f64; 3] {
    let Some(before) = before else { return chance };
    std::array::from_fn(|a| COPIED * before[a] + (1.0 - COPIED) * chance[a])
}

/// What this check said before, in the same epoch; its weights add to one.
pub(crate) fn before(case: &Case, i: usize, plant: &Plant) -> Option<[f64; 3]> {
    let e = &case.evidence[i];
    said_before(case, i, e.check, &epoch_of(case, i, e.stage), plant)
}

/// What a check said in this epoch, the last time of the first `i` answers.
pub(crate) fn said_before(
    case: &Case,
    i: usize,
    check: Check,
    epoch: &Epoch,
    plant: &Plant,
) -> Option<[f64; 3]> {
    let earlier = case.evidence[..i].iter().enumerate().rev();
    let mut same = earlier.filter(|(j, b)| {
        let outranked = b.stage == Stage::AsFound && case.observed.outranks(check, plant);
        b.check == check && !outranked && epoch_of(case, *j, b.stage) == *epoch
    });
    same.find_map(|(_, b)| b.weights(plant))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trace::hypothesis::common_cause;

    /// The model's own counting gives the same odds as [`common_cause`].
    #[test]
    fn the_model_weighs_machines_out_as_common_cause_does() {
        // Shares of calls in the ratio of 0.004 to 0.002 a day.
        let (own, shared) = (0.004 / 0.006, 0.002 / 0.006);
        for n in 1..=3u8 {
            let i = usize::from(n - 1);
            let common = shared * machines_out(6, true)[i];
            let got = common / (common + own * machines_out(6, false)[i]);
            let want = common_cause(n, 0.004, 0.002 * machines_out(6, true)[0]);
            assert!((got - want).abs() < 2e-3, "{n}: {got} {want}");
        }
        assert_eq!(machines_out(2, true), [0.5, 0.5, 0.0]);
        assert_eq!(machines_out(1, false), [1.0, 0.0, 0.0]);
    }
}
