//! The likeliest states of the world at a moment of the visit: which modes
//! act just now and whether the basin stood low. For choosing the next check
//! and for pointing at contradictions.

use super::check::Check;
use super::heard::{Epoch, again, by_basin, chances, said_before};
use super::hypothesis::FLICKER;
use super::mass::{Set, kinds, prior, priors};
use super::mode::Mode;
use super::sheet;
use super::tracer::Tracer;

/// Probability by which of the three modes act (bits) and full or low.
type Acting = [[f64; 2]; 8];

/// The leading sets with their states at one moment.
pub(crate) struct Worlds {
    /// The moment.
    pub epoch: Epoch,
    /// Set, probability, and states within it (adding to one).
    pub sets: Vec<(Set, f64, Acting)>,
}

impl Worlds {
    /// The leading sets at this moment, shares adding to one.
    pub fn at(tracer: &Tracer, epoch: &Epoch) -> Self {
        let priors = priors(&tracer.lattice.modes);
        let total: f64 = tracer.leading.iter().map(|(_, p)| p).sum();
        let sets = tracer.leading.iter().map(|(set, p)| {
            let acting = acting(tracer, &priors, *set, epoch);
            (*set, p / total, acting)
        });
        Self {
            epoch: epoch.clone(),
            sets: sets.collect(),
        }
    }

    /// Of each corrected mode, given that it was there, the chance that the
    /// correction did not take.
    pub fn remaining(tracer: &Tracer, corrected: &[Mode]) -> Vec<f64> {
        if corrected.is_empty() {
            return Vec::new();
        }
        let now = super::heard::epoch_of(
            &tracer.case,
            tracer.case.evidence.len(),
            super::evidence::Stage::Corrected,
        );
        let worlds = Self::at(tracer, &now);
        let of = |mode: &Mode| {
            let (mut there, mut left) = (0.0, 0.0);
            for (set, p, acting) in &worlds.sets {
                let here = |m: &usize| tracer.lattice.modes.get(*m) == Some(mode);
                if let Some(i) = set.iter().position(here) {
                    there += p;
                    let bits = acting.iter().enumerate().filter(|(b, _)| b >> i & 1 == 1);
                    left += p * bits.map(|(_, a)| a[0] + a[1]).sum::<f64>();
                }
            }
            if there > 0.0 {
                left / there
            } else {
                super::hypothesis::RESIDUE
            }
        };
        corrected.iter().map(of).collect()
    }

    /// Belief in states that give a piece heard less than `least`.
    pub fn against(&self, tracer: &Tracer, piece: usize, least: f64) -> f64 {
        let heard = &tracer.ear.heard[piece];
        let mut against = 0.0;
        for (set, p, acting) in &self.sets {
            for (bits, by_level) in acting.iter().enumerate() {
                let (effect, drains) = self.effect(tracer, *set, bits, |mode| heard.effect(mode));
                for (low, share) in by_level.iter().enumerate() {
                    if heard.by_effect[effect][2 * usize::from(drains) + low] < least {
                        against += p * share;
                    }
                }
            }
        }
        against
    }

    /// The strongest effect of a set whose modes in `bits` act, and whether
    /// any of those drains the basin.
    fn effect(
        &self,
        tracer: &Tracer,
        set: Set,
        bits: usize,
        of: impl Fn(Mode) -> (u8, u8),
    ) -> (usize, bool) {
        let mut strongest = 0;
        for (i, m) in set.iter().enumerate() {
            let Some(mode) = tracer.lattice.modes.get(*m) else {
                continue;
            };
            let (acting, quiet) = of(*mode);
            let here = if bits >> i & 1 == 1 {
                acting
            } else if self.epoch.corrected.contains(mode) {
                0
            } else {
                quiet
            };
            strongest = strongest.max(usize::from(here));
        }
        (
            strongest,
            tracer.lattice.draining(kinds(&tracer.lattice, set), bits),
        )
    }

    /// Chance of each answer of `check` within each leading set.
    pub fn answers(&self, tracer: &Tracer, check: Check) -> Vec<[f64; 3]> {
        let Some(sheet) = sheet::of(check) else {
            return Vec::new();
        };
        let case = &tracer.case;
        let last = case.evidence.len();
        let before = said_before(case, last, check, &self.epoch, &tracer.plant);
        let columns: [_; 3] = std::array::from_fn(|column| {
            by_basin(sheet, self.epoch.stage, |effect, low| {
                again(chances(sheet, &tracer.plant, effect, low), before)[column]
            })
        });
        let each = |(set, _, acting): &(Set, f64, Acting)| {
            let mut chance = [0.0; 3];
            for (bits, by_level) in acting.iter().enumerate() {
                if by_level[0] + by_level[1] <= 0.0 {
                    continue;
                }
                let (effect, drains) = self.effect(tracer, *set, bits, |m| sheet.effect(m));
                for (low, share) in by_level.iter().enumerate() {
                    let i = 2 * usize::from(drains) + low;
                    for (c, column) in chance.iter_mut().zip(&columns) {
                        *c += share * column[effect][i];
                    }
                }
            }
            chance
        };
        self.sets.iter().map(each).collect()
    }
}

/// States of one set at a moment, from all that was heard.
fn acting(tracer: &Tracer, priors: &[[f64; 2]], set: Set, moment: &Epoch) -> Acting {
    let lattice = &tracer.lattice;
    let of = kinds(lattice, set);
    let prior = prior(lattice, priors, set, tracer.nothing);
    let mut told = lattice.level(of);
    let mut here = None;
    for (epoch, known) in tracer.ear.epochs.iter().enumerate() {
        let heard = lattice.told(&tracer.ear, None, epoch, of);
        if known == moment {
            here = Some(heard);
            continue;
        }
        for (t, m) in told.iter_mut().zip(lattice.manners(&heard, epoch, of)) {
            t[0] *= m[0];
            t[1] *= m[1];
        }
    }
    let axes = set.map(|m| Axis::of(tracer, m, moment));
    let mut conditions = [[0.0; 2]; 27];
    for (manner, (p, told)) in prior.iter().zip(&told).enumerate() {
        if *p == 0.0 {
            continue;
        }
        let share: [_; 3] = std::array::from_fn(|i| axes[i].shares[manner >> i & 1]);
        for (c, condition) in conditions.iter_mut().enumerate() {
            let share = p * share[0][c % 3] * share[1][c / 3 % 3] * share[2][c / 9];
            condition[0] += share * told[0];
            condition[1] += share * told[1];
        }
    }
    if let Some(heard) = here {
        for (c, condition) in conditions.iter_mut().enumerate() {
            let told = heard.at(c);
            condition[0] *= told[0];
            condition[1] *= told[1];
        }
    }
    let mut acting = [[0.0; 2]; 8];
    for (c, condition) in conditions.iter().enumerate() {
        if condition[0] + condition[1] <= 0.0 {
            continue;
        }
        let each = [c % 3, c / 3 % 3, c / 9];
        let acts: [f64; 3] = std::array::from_fn(|i| axes[i].acts[each[i]]);
        for (bits, a) in acting.iter_mut().enumerate() {
            let now: f64 = acts
                .iter()
                .enumerate()
                .map(|(i, p)| if bits >> i & 1 == 1 { *p } else { 1.0 - p })
                .product();
            a[0] += now * condition[0];
            a[1] += now * condition[1];
        }
    }
    let total: f64 = acting.iter().flatten().sum();
    if total > 0.0 {
        acting.iter_mut().flatten().for_each(|a| *a /= total);
    }
    acting
}

/// One mode of a set, or none, at a moment.
struct Axis {
    /// Per manner, shares of steady, acting and quiet.
    shares: [[f64; 3]; 2],
    /// Per condition, the chance that it acts for one check.
    acts: [f64; 3],
}

impl Axis {
    fn of(tracer: &Tracer, mode: usize, moment: &Epoch) -> Self {
        let Some(mode) = tracer.lattice.modes.get(mode) else {
            return Self {
                shares: [[1.0, 0.0, 0.0]; 2],
                acts: [0.0; 3],
            };
        };
        let corrected = moment.corrected.contains(mode);
        let flicker = if corrected { 0.0 } else { FLICKER };
        Self {
            shares: super::lattice::shares(moment, *mode),
            acts: [1.0, 1.0 - flicker, flicker],
        }
    }
}
