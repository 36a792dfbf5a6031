//! The likeliest states of the world at a moment of the visit: which modes
//! act just now and whether the basin stood low. For choosing the next check
//! and for pointing at contradictions.

use super::check::Check;
use super::evidence::Stage;
use super::heard::{ByBasin, Epoch, again, by_basin, chances, epoch_of, said_before};
use super::hypothesis::FLICKER;
use super::lattice::{Manners, Told};
use super::mass::{NONE, Set, kinds, prior, priors};
use super::mode::Mode;
use super::sheet;
use super::tracer::Tracer;

/// Probability by which of the three modes act (bits) and full or low.
type Acting = [[f64; 2]; 8];

/// The leading sets with their states at one moment.
pub(crate) struct Worlds {
    /// The moment.
    pub epoch: Epoch,
    /// The leading sets, each once for every way its corrections may have
    /// gone; probabilities add to one.
    pub all: Vec<World>,
}

/// A set of modes at a moment.
pub(crate) struct World {
    pub set: Set,
    pub p: f64,
    /// Which of its modes are gone, as bits: corrected, and it took.
    gone: usize,
    /// Which were corrected, and it did not take.
    stays: usize,
    /// Which of its modes lower the basin where they act, as bits.
    lowers: usize,
    /// States within it, adding to one.
    acting: Acting,
}

impl World {
    /// The strongest effect where its modes in `bits` act, and the place of
    /// full and low in what follows from it: another where one of them drains.
    ///
    /// In plain loops, as all that is gone through for each check and world: a
    /// tap waits for it, and small code does not take an iterator apart.
    fn shows(&self, effects: &[[u8; 2]], bits: usize) -> (usize, usize) {
        let mut most = 0;
        for i in 0..3 {
            if self.set[i] != NONE {
                most = most.max(effects[self.set[i]][bits >> i & 1]);
            }
        }
        let drains = bits & self.lowers != 0;
        (usize::from(most), 2 * usize::from(drains))
    }

    /// The modes that are still there, as places in the lattice's order.
    pub fn there(&self) -> impl Iterator<Item = usize> + '_ {
        let each = self.set.iter().enumerate();
        each.filter(|(i, m)| **m != NONE && self.gone >> i & 1 == 0)
            .map(|(_, m)| *m)
    }
}

/// The worlds of the moments that checks done now belong to: one, or as found
/// and once hands are on it.
#[derive(Default)]
pub(crate) struct Moments(pub Vec<Worlds>);

impl Moments {
    /// The worlds of a check done now at this stage.
    pub fn of(&mut self, tracer: &Tracer, stage: Stage) -> &Worlds {
        let known = self.0.iter().position(|w| w.epoch.stage == stage);
        let at = known.unwrap_or_else(|| {
            let epoch = epoch_of(&tracer.case, tracer.case.evidence.len(), stage);
            self.0.push(Worlds::at(tracer, &epoch));
            self.0.len() - 1
        });
        &self.0[at]
    }
}

impl Worlds {
    /// The leading sets at this moment, shares adding to one.
    pub fn at(tracer: &Tracer, epoch: &Epoch) -> Self {
        let priors = priors(&tracer.lattice.modes);
        let total: f64 = tracer.leading.iter().map(|(_, p)| p).sum();
        let mut all = Vec::with_capacity(tracer.leading.len());
        for (set, p) in &tracer.leading {
            let acting = acting(tracer, &priors, *set, epoch);
            let (mut corrected, mut lowers) = (0, 0);
            let of = kinds(&tracer.lattice, *set);
            for (i, m) in set.iter().enumerate() {
                let mode = tracer.lattice.modes.get(*m);
                corrected |= usize::from(mode.is_some_and(|m| epoch.corrected.contains(m))) << i;
                lowers |= usize::from(tracer.lattice.draining(of, 1 << i)) << i;
            }
            let world = World {
                set: *set,
                p: p / total,
                gone: 0,
                stays: 0,
                lowers,
                acting,
            };
            part(&mut all, world, corrected);
        }
        Self {
            epoch: epoch.clone(),
            all,
        }
    }

    /// Of each corrected mode, given that it was there, the chance that the
    /// correction did not take.
    pub fn remaining(tracer: &Tracer, corrected: &[Mode]) -> Vec<f64> {
        if corrected.is_empty() {
            return Vec::new();
        }
        let mut moments = Moments::default();
        let worlds = moments.of(tracer, Stage::Corrected);
        let of = |mode: &Mode| {
            let (mut there, mut left) = (0.0, 0.0);
            for world in &worlds.all {
                let here = |m: &usize| tracer.lattice.modes.get(*m) == Some(mode);
                if let Some(i) = world.set.iter().position(here) {
                    there += world.p;
                    left += world.p * f64::from(u8::from(world.gone >> i & 1 == 0));
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
        let effects = self.effects(tracer, |mode| heard.effect(mode));
        let mut against = 0.0;
        for world in &self.all {
            for (bits, by_level) in world.acting.iter().enumerate() {
                let (effect, at) = world.shows(&effects, bits);
                for (low, share) in by_level.iter().enumerate() {
                    if heard.by_effect[effect][at + low] < least {
                        against += world.p * share;
                    }
                }
            }
        }
        against
    }

    /// What each mode does to a check at this moment when it does not act and
    /// when it does. Looked up once for all worlds: a tap waits for this.
    fn effects(&self, tracer: &Tracer, of: impl Fn(Mode) -> (u8, u8)) -> Vec<[u8; 2]> {
        let each = |mode: &Mode| {
            let (acting, quiet) = of(*mode);
            match self.epoch.corrected.contains(mode) {
                true => [0, acting],
                false => [quiet, acting],
            }
        };
        tracer.lattice.modes.iter().map(each).collect()
    }

    /// What `check` would say at this moment, by effect; `None` when it has
    /// no sheet.
    pub fn ask(&self, tracer: &Tracer, check: Check) -> Option<Asked> {
        self.ask_after(tracer, check, self.before(tracer, check))
    }

    /// What `check` said last at this moment.
    pub fn before(&self, tracer: &Tracer, check: Check) -> Option<[f64; 3]> {
        let case = &tracer.case;
        let last = case.evidence.len();
        said_before(case, last, check, &self.epoch, &tracer.plant)
    }

    /// What `check` would say at this moment when it said `before`.
    pub fn ask_after(
        &self,
        tracer: &Tracer,
        check: Check,
        before: Option<[f64; 3]>,
    ) -> Option<Asked> {
        let sheet = sheet::of(check)?;
        let column = |column: usize| {
            by_basin(sheet, self.epoch.stage, |effect, low| {
                again(chances(sheet, &tracer.plant, effect, low), before)[column]
            })
        };
        let (x, y, z) = (column(0), column(1), column(2));
        let rows = (0..x.len()).map(|effect| [x[effect], y[effect], z[effect]]);
        Some(Asked {
            effects: self.effects(tracer, |mode| sheet.effect(mode)),
            rows: rows.collect(),
        })
    }

    /// Chance of each answer of `check` within each of these worlds.
    pub fn answers(&self, tracer: &Tracer, check: Check) -> Vec<[f64; 3]> {
        let Some(asked) = self.ask(tracer, check) else {
            return Vec::new();
        };
        let mut all = Vec::with_capacity(self.all.len());
        for world in &self.all {
            let mut chance = [0.0; 3];
            for bits in 0..8 {
                let level = world.acting[bits];
                if level[0] + level[1] > 0.0 {
                    let said = asked.chance(world, bits, level);
                    for a in 0..3 {
                        chance[a] += said[a];
                    }
                }
            }
            all.push(chance);
        }
        all
    }
}

/// A check as it would be done at a moment: chances by answer and effect.
pub(crate) struct Asked {
    /// What each mode does to it when quiet and when acting.
    effects: Vec<[u8; 2]>,
    rows: Vec<[ByBasin; 3]>,
}

impl Asked {
    /// Chance of each answer where the modes of a world in `bits` act.
    pub fn chance(&self, world: &World, bits: usize, level: [f64; 2]) -> [f64; 3] {
        let (effect, at) = world.shows(&self.effects, bits);
        let [x, y, z] = &self.rows[effect];
        let [full, low] = level;
        [
            full * x[at] + low * x[at + 1],
            full * y[at] + low * y[at + 1],
            full * z[at] + low * z[at + 1],
        ]
    }
}

/// Adds a set's world, in parts by which of its corrections took.
fn part(all: &mut Vec<World>, world: World, corrected: usize) {
    for gone in (0..8).filter(|g| g & !corrected == 0) {
        let mut acting = world.acting;
        for (bits, a) in acting.iter_mut().enumerate() {
            if bits & corrected != corrected & !gone {
                *a = [0.0; 2];
            }
        }
        let share: f64 = acting.iter().flatten().sum();
        if share > 1e-9 {
            acting.iter_mut().flatten().for_each(|a| *a /= share);
            all.push(World {
                p: world.p * share,
                gone,
                stays: corrected & !gone,
                acting,
                ..world
            });
        }
    }
}

/// One set as the moments know it: told by all other moments per manner, and
/// per moment by condition.
struct Known {
    /// Prior times what the other moments told.
    manners: Manners,
    /// Per moment, what it told by condition.
    here: Vec<Option<Told>>,
}

fn known(tracer: &Tracer, priors: &[[f64; 2]], set: Set, moments: &[&Epoch]) -> Known {
    let lattice = &tracer.lattice;
    let of = kinds(lattice, set);
    let prior = prior(lattice, priors, set, tracer.nothing);
    let mut manners = lattice.level(of);
    let mut here: Vec<Option<Told>> = moments.iter().map(|_| None).collect();
    for (epoch, known) in tracer.ear.epochs.iter().enumerate() {
        let heard = lattice.told(&tracer.ear, epoch, of);
        if let Some(at) = moments.iter().position(|m| *m == known) {
            here[at] = Some(heard);
            continue;
        }
        for (t, m) in manners.iter_mut().zip(lattice.manners(&heard, epoch, of)) {
            t[0] *= m[0];
            t[1] *= m[1];
        }
    }
    for (t, p) in manners.iter_mut().zip(prior) {
        t[0] *= p;
        t[1] *= p;
    }
    Known { manners, here }
}

/// A state of one set over two moments: what comes and goes, what acts at
/// each, and whether the basin stood low. As bits.
#[derive(Clone, Copy)]
pub(crate) struct State {
    pub p: f64,
    pub comes: usize,
    pub acts: [usize; 2],
    pub low: usize,
}

/// Every state of a world that is likelier than `least`; probabilities add to
/// the world's, but for those left out. Where there is one moment both are it.
pub(crate) fn states(tracer: &Tracer, world: &World, moments: &[Worlds], least: f64) -> Vec<State> {
    let priors = priors(&tracer.lattice.modes);
    let epochs: Vec<&Epoch> = moments.iter().map(|w| &w.epoch).collect();
    let known = known(tracer, &priors, world.set, &epochs);
    let mut states = Vec::new();
    for (manner, told) in known.manners.iter().enumerate() {
        for (low, told) in told.iter().enumerate().filter(|(_, t)| **t > 0.0) {
            let mut of = [Vec::new(), Vec::new()];
            for (m, epoch) in epochs.iter().take(2).enumerate() {
                let axes = world.set.map(|m| Axis::of(tracer, m, epoch));
                for c in 0..27 {
                    let each = [c % 3, c / 3 % 3, c / 9];
                    let (mut share, mut acts, mut comes) = (1.0, 0, 0);
                    for (i, axis) in axes.iter().enumerate() {
                        share *= axis.shares[manner >> i & 1][each[i]];
                        acts |= usize::from(axis.acts[each[i]] > 0.5) << i;
                        let flickers = axis.acts[each[i]] > 0.0 && axis.acts[each[i]] < 1.0;
                        comes |= usize::from(flickers) << i;
                    }
                    if share > 0.0 {
                        let heard = known.here[m].as_ref();
                        let p = share * heard.map_or(1.0, |h| h.at(c)[low]);
                        of[m].push((p, acts, comes));
                    }
                }
            }
            if epochs.len() < 2 {
                // The one moment stands for both.
                for (p, acts, comes) in &of[0] {
                    let acts = [*acts; 2];
                    states.push((
                        told * p,
                        State {
                            p: 0.0,
                            comes: *comes,
                            acts,
                            low,
                        },
                    ));
                }
                continue;
            }
            for (p, acts, comes) in &of[0] {
                for (q, then, _) in &of[1] {
                    let acts = [*acts, *then];
                    states.push((
                        told * p * q,
                        State {
                            p: 0.0,
                            comes: *comes,
                            acts,
                            low,
                        },
                    ));
                }
            }
        }
    }
    // What a corrected mode does belongs to the world, not to its states.
    states.retain(|(_, s)| s.acts[0] & world.gone == 0 && world.stays & !s.acts[0] == 0);
    let total: f64 = states.iter().map(|(p, _)| p).sum();
    let scale = world.p / total.max(f64::MIN_POSITIVE);
    let each = states.into_iter().map(|(p, s)| State { p: p * scale, ..s });
    each.filter(|s| s.p >= least).collect()
}

/// States of one set at a moment, from all that was heard.
fn acting(tracer: &Tracer, priors: &[[f64; 2]], set: Set, moment: &Epoch) -> Acting {
    let known = known(tracer, priors, set, &[moment]);
    let axes = set.map(|m| Axis::of(tracer, m, moment));
    let [x, y, z] = &axes;
    let mut acting = [[0.0; 2]; 8];
    for c in 0..27 {
        let (a, b, d) = (c % 3, c / 3 % 3, c / 9);
        let mut condition = [0.0; 2];
        for manner in 0..8 {
            let told = known.manners[manner];
            let share =
                x.shares[manner & 1][a] * y.shares[manner >> 1 & 1][b] * z.shares[manner >> 2][d];
            condition[0] += share * told[0];
            condition[1] += share * told[1];
        }
        if condition == [0.0; 2] {
            continue;
        }
        if let Some(heard) = &known.here[0] {
            let told = heard.at(c);
            condition[0] *= told[0];
            condition[1] *= told[1];
        }
        let now = |acts: f64, bit: usize| if bit == 1 { acts } else { 1.0 - acts };
        for (bits, acting) in acting.iter_mut().enumerate() {
            let now = now(x.acts[a], bits & 1)
                * now(y.acts[b], bits >> 1 & 1)
                * now(z.acts[d], bits >> 2);
            acting[0] += now * condition[0];
            acting[1] += now * condition[1];
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
