//! The lattice of hypotheses, exact and quick.
//!
//! A hypothesis is up to three modes, each steady or intermittent: some
//! 250,000 of them. What a piece of evidence says of one depends only on the
//! effects its modes have on it, so modes with the same effects on everything
//! heard so far share a *kind*, and likelihoods are worked out once for each
//! combination of kinds. Nothing is pruned: the sum over all hypotheses is
//! exact.
//!
//! Within an epoch a mode is in one of three conditions: steady, or
//! intermittent and acting, or intermittent and quiet; an intermittent one
//! flickers into the other for a single check now and then. The basin stood
//! low on arrival or it did not. Given these, answers are independent.
//!
//! What is gone through for every combination stands in plain loops: a tap
//! waits for it, and code built to be small does not take iterators apart.
#![allow(clippy::needless_range_loop)]

use super::heard::{Ear, Epoch, Heard};
use super::hypothesis::{FLICKER, STAYS_FULL, acts, stays_full};
use super::mode::{Lowers, Manner, Mode};
use super::plant::Plant;

/// Per condition of three modes (27), full basin or low.
pub(crate) type Table = [[f64; 2]; 27];
/// Per manner of three modes (8), full basin or low.
pub(crate) type Manners = [[f64; 2]; 8];

/// Modes that no evidence so far tells apart, or none at all.
#[derive(Clone, Default)]
pub(crate) struct KindOf {
    lowers: bool,
    /// Chance the basin kept its level, steady and intermittent.
    stays: [f64; 2],
    /// Acting and quiet effect on each piece heard.
    effects: Vec<(u8, u8)>,
    /// Per epoch, whether it had been corrected.
    corrected: Vec<bool>,
    /// Per epoch and manner, shares of the conditions steady, acting, quiet.
    shares: Vec<[[f64; 3]; 2]>,
    many: usize,
    /// Whether it has any part in each piece heard.
    minds: Vec<bool>,
    /// Likelihood of each piece per condition, this kind alone in the plant.
    alone: Vec<[[f64; 2]; 3]>,
}

/// Kinds, and the likelihood of every combination of three of them.
pub(crate) struct Lattice {
    /// Kind 0 is no mode at all.
    pub kinds: Vec<KindOf>,
    /// Modes in the order of their kinds.
    pub modes: Vec<Mode>,
    /// Kind of each of them, 1 and up.
    pub kind: Vec<usize>,
    /// Likelihood per manner for each combination.
    likelihood: Vec<[f64; 8]>,
}

/// Place of a combination of kinds `a <= b <= c`.
pub(crate) fn place([a, b, c]: [usize; 3]) -> usize {
    c * (c + 1) * (c + 2) / 6 + b * (b + 1) / 2 + a
}

/// Every combination of three of so many, the least first, in the order of
/// their places.
pub(crate) fn each_three(n: usize, mut each: impl FnMut([usize; 3])) {
    for c in 0..n {
        for b in 0..=c {
            for a in 0..=b {
                each([a, b, c]);
            }
        }
    }
}

impl KindOf {
    fn new(plant: &Plant, mode: Mode, ear: &Ear) -> Self {
        let lowers = plant.lowers(mode);
        let effects = ear.heard.iter().map(|h| h.effect(mode)).collect();
        let corrected: Vec<bool> = ear
            .epochs
            .iter()
            .map(|e| e.corrected.contains(&mode))
            .collect();
        Self {
            lowers: lowers != Lowers::No,
            stays: [Manner::Steady, Manner::Intermittent].map(|m| stays_full(lowers, m)),
            effects,
            shares: ear.epochs.iter().map(|e| shares(e, mode)).collect(),
            corrected,
            many: 1,
            minds: Vec::new(),
            alone: Vec::new(),
        }
    }

    /// Works out what each piece says of this kind alone.
    fn listen(&mut self, ear: &Ear) {
        let axes = ear
            .heard
            .iter()
            .enumerate()
            .map(|(i, h)| (h, self.axis(h, i)));
        let (minds, alone) = axes
            .map(|(h, axis)| {
                let minds = axis.acting.max(axis.quiet) > 0 || axis.drains;
                (minds, axis.alone(h, 0))
            })
            .unzip();
        (self.minds, self.alone) = (minds, alone);
    }

    fn axis(&self, heard: &Heard, piece: usize) -> Axis {
        let (acting, quiet) = self.effects[piece];
        let corrected = self.corrected[heard.epoch];
        Axis {
            acting,
            quiet: if corrected { 0 } else { quiet },
            drains: heard.minds_draining && self.lowers,
            flicker: if corrected { 0.0 } else { FLICKER },
        }
    }

    fn same(&self, other: &Self) -> bool {
        self.effects == other.effects
            && self.stays == other.stays
            && self.corrected == other.corrected
            && (self.shares == other.shares || !self.corrected.contains(&true))
    }
}

/// Shares of steady, acting and quiet for a steady and for an intermittent
/// mode in this epoch. One that was corrected acts only if that did not take.
pub(crate) fn shares(epoch: &Epoch, mode: Mode) -> [[f64; 3]; 2] {
    match epoch.residue_of(mode) {
        Some(residue) => [[0.0, residue, 1.0 - residue]; 2],
        None => {
            let acting = acts(epoch.stage);
            [[1.0, 0.0, 0.0], [0.0, acting, 1.0 - acting]]
        }
    }
}

impl Lattice {
    /// The lattice over these modes given what was heard.
    pub fn new(plant: &Plant, modes: &[Mode], ear: &Ear) -> Self {
        let mut kinds = vec![KindOf {
            stays: [1.0; 2],
            effects: vec![(0, 0); ear.heard.len()],
            corrected: vec![false; ear.epochs.len()],
            shares: vec![[[1.0, 0.0, 0.0]; 2]; ear.epochs.len()],
            ..KindOf::default()
        }];
        kinds[0].listen(ear);
        let mut members: Vec<Vec<Mode>> = vec![Vec::new()];
        for mode in modes {
            let mut kind = KindOf::new(plant, *mode, ear);
            match kinds.iter().skip(1).position(|k| k.same(&kind)) {
                Some(i) => {
                    kinds[i + 1].many += 1;
                    members[i + 1].push(*mode);
                }
                None => {
                    kind.listen(ear);
                    kinds.push(kind);
                    members.push(vec![*mode]);
                }
            }
        }
        let kind: Vec<usize> = members
            .iter()
            .enumerate()
            .flat_map(|(k, m)| m.iter().map(move |_| k))
            .collect();
        let mut lattice = Self {
            modes: members.into_iter().flatten().collect(),
            kind,
            likelihood: Vec::new(),
            kinds,
        };
        lattice.fill(ear);
        lattice
    }

    fn fill(&mut self, ear: &Ear) {
        let n = self.kinds.len();
        let mut all = Vec::with_capacity(place([0, 0, n]));
        each_three(n, |of| {
            let enough =
                |k: usize| k == 0 || of.iter().filter(|x| **x == k).count() <= self.kinds[k].many;
            all.push(match of.iter().all(|k| enough(*k)) {
                true => self.cell(ear, of),
                false => [0.0; 8],
            });
        });
        self.likelihood = all;
    }

    /// Likelihood per manner of a combination of kinds, the first the least.
    pub fn likelihood(&self, of: [usize; 3]) -> &[f64; 8] {
        &self.likelihood[place(of)]
    }

    fn cell(&self, ear: &Ear, of: [usize; 3]) -> [f64; 8] {
        let mut all = self.level(of);
        for epoch in 0..ear.epochs.len() {
            let told = self.told(ear, epoch, of);
            let manners = self.manners(&told, epoch, of);
            for m in 0..8 {
                all[m][0] *= manners[m][0];
                all[m][1] *= manners[m][1];
            }
        }
        all.map(|t| t[0] + t[1])
    }

    /// Chance of a full and of a low basin on arrival, per manner.
    pub fn level(&self, of: [usize; 3]) -> Manners {
        let mut level = [[0.0; 2]; 8];
        for m in 0..8 {
            let mut stays = STAYS_FULL;
            for i in 0..3 {
                stays *= self.kinds[of[i]].stays[m >> i & 1];
            }
            level[m] = [stays, 1.0 - stays];
        }
        level
    }

    /// Likelihood of all that was heard in an epoch.
    pub fn told(&self, ear: &Ear, epoch: usize, of: [usize; 3]) -> Told {
        let mut told = Told::default();
        for (i, heard) in ear.heard.iter().enumerate() {
            if heard.epoch == epoch {
                self.hear(&mut told, heard, i, of);
            }
        }
        told
    }

    /// Adds one piece to what was told; whether any of the kinds has a part
    /// in it.
    pub fn hear(&self, told: &mut Told, heard: &Heard, piece: usize, of: [usize; 3]) -> bool {
        let [x, y, z] = [&self.kinds[of[0]], &self.kinds[of[1]], &self.kinds[of[2]]];
        match (x.minds[piece], y.minds[piece], z.minds[piece]) {
            (false, false, false) => {
                told.all(&heard.by_effect[0]);
                return false;
            }
            (true, false, false) => told.one(0, &x.alone[piece]),
            (false, true, false) => told.one(1, &y.alone[piece]),
            (false, false, true) => told.one(2, &z.alone[piece]),
            _ => {
                let axes = [
                    x.axis(heard, piece),
                    y.axis(heard, piece),
                    z.axis(heard, piece),
                ];
                told.hear(heard, &axes);
            }
        }
        true
    }

    /// Per manner from per condition.
    pub fn manners(&self, told: &Told, epoch: usize, of: [usize; 3]) -> Manners {
        let mut out = [told.all; 8];
        let Some(table) = &told.table else {
            // Each mode for itself.
            for axis in 0..3 {
                let share = &self.kinds[of[axis]].shares[epoch];
                for m in 0..2 {
                    let t = mixed(&told.axes[axis], &share[m]);
                    for o in 0..8 {
                        if o >> axis & 1 == m {
                            out[o][0] *= t[0];
                            out[o][1] *= t[1];
                        }
                    }
                }
            }
            return out;
        };
        // One mode after the other, from its conditions to its manners.
        let (mut now, mut left) = (**table, 27);
        for axis in 0..3 {
            let share = &self.kinds[of[axis]].shares[epoch];
            let mut then = [[0.0; 2]; 27];
            left /= 3;
            for m in 0..2 {
                for s in 0..3 {
                    for low in 0..2 {
                        let of = told.axes[axis][s][low] * share[m][s];
                        for rest in 0..left {
                            then[rest + left * m][low] += now[3 * rest + s][low] * of;
                        }
                    }
                }
            }
            (now, left) = (then, 2 * left);
        }
        for m in 0..8 {
            out[m][0] *= now[m][0];
            out[m][1] *= now[m][1];
        }
        out
    }

    /// Whether any of the kinds that act, as bits, drains the basin.
    pub fn draining(&self, of: [usize; 3], acting: usize) -> bool {
        (0..3).any(|i| acting >> i & 1 == 1 && self.kinds[of[i]].lowers)
    }
}

/// What one mode does to one piece of evidence.
struct Axis {
    acting: u8,
    quiet: u8,
    drains: bool,
    flicker: f64,
}

/// Likelihood of what was heard, by the condition (steady, acting, quiet) of
/// three modes and by full basin or low: a product of what is the same for
/// all, what one mode alone decides, and what several decide together.
#[derive(Clone)]
pub(crate) struct Told {
    all: [f64; 2],
    axes: [[[f64; 2]; 3]; 3],
    table: Option<Box<Table>>,
}

impl Axis {
    /// Likelihood per condition where nothing else goes beyond `floor`.
    fn alone(&self, heard: &Heard, floor: u8) -> [[f64; 2]; 3] {
        let acting = &heard.by_effect[usize::from(self.acting.max(floor))];
        let quiet = &heard.by_effect[usize::from(self.quiet.max(floor))];
        let drains = 2 * usize::from(self.drains);
        let acting = [acting[drains], acting[drains + 1]];
        spread([quiet[0], quiet[1]], acting, self.flicker)
    }
}

impl Default for Told {
    fn default() -> Self {
        Self {
            all: [1.0; 2],
            axes: [[[1.0; 2]; 3]; 3],
            table: None,
        }
    }
}

impl Told {
    /// Without this part of it, which no state makes impossible.
    pub fn leave_out(&mut self, part: &Told) {
        let pairs = |t: &mut [f64; 2], p: &[f64; 2]| (0..2).for_each(|i| t[i] /= p[i]);
        pairs(&mut self.all, &part.all);
        let axes = self.axes.iter_mut().flatten();
        axes.zip(part.axes.iter().flatten())
            .for_each(|(t, p)| pairs(t, p));
        if let (Some(table), Some(part)) = (&mut self.table, &part.table) {
            table
                .iter_mut()
                .zip(part.iter())
                .for_each(|(t, p)| pairs(t, p));
        }
    }

    fn all(&mut self, told: &[f64; 4]) {
        self.all[0] *= told[0];
        self.all[1] *= told[1];
    }

    fn one(&mut self, axis: usize, told: &[[f64; 2]; 3]) {
        let of = &mut self.axes[axis];
        for s in 0..3 {
            of[s][0] *= told[s][0];
            of[s][1] *= told[s][1];
        }
    }

    fn hear(&mut self, heard: &Heard, axes: &[Axis; 3]) {
        let [x, y, z] = axes;
        // What is there whether they act or not; a mode that never goes
        // beyond it changes nothing.
        let least = |a: &Axis| a.acting.min(a.quiet);
        let floor = least(x).max(least(y)).max(least(z));
        let live = |a: &Axis| a.drains || a.acting.max(a.quiet) > floor;
        match (live(x), live(y), live(z)) {
            (false, false, false) => self.all(&heard.by_effect[usize::from(floor)]),
            (true, false, false) => self.one(0, &x.alone(heard, floor)),
            (false, true, false) => self.one(1, &y.alone(heard, floor)),
            (false, false, true) => self.one(2, &z.alone(heard, floor)),
            _ => {
                let told = conditions(heard, axes);
                let table = self.table.get_or_insert_with(|| Box::new([[1.0; 2]; 27]));
                for c in 0..27 {
                    table[c][0] *= told[c][0];
                    table[c][1] *= told[c][1];
                }
            }
        }
    }

    /// Likelihood in one condition, `c = first + 3 second + 9 third`.
    pub fn at(&self, c: usize) -> [f64; 2] {
        let [x, y, z] = &self.axes;
        let at = |low: usize| {
            let joint = self.table.as_ref().map_or(1.0, |t| t[c][low]);
            self.all[low] * joint * x[c % 3][low] * y[c / 3 % 3][low] * z[c / 9][low]
        };
        [at(0), at(1)]
    }
}

/// Likelihood over a mode's conditions in these shares.
fn mixed(of: &[[f64; 2]; 3], share: &[f64; 3]) -> [f64; 2] {
    let at = |low: usize| share[0] * of[0][low] + share[1] * of[1][low] + share[2] * of[2][low];
    [at(0), at(1)]
}

/// Steady, acting and quiet, from what acting and what being quiet says: one
/// that comes and goes changes its mind for a single check now and then.
fn spread(quiet: [f64; 2], acting: [f64; 2], f: f64) -> [[f64; 2]; 3] {
    let mix = |x: [f64; 2], y: [f64; 2]| [x[0] + f * (y[0] - x[0]), x[1] + f * (y[1] - x[1])];
    [acting, mix(acting, quiet), mix(quiet, acting)]
}

/// Likelihood of one piece per condition: steady, acting, quiet on each axis.
fn conditions(heard: &Heard, axes: &[Axis; 3]) -> Table {
    let [x, y, z] = axes;
    let pick = |a: &Axis, acts: usize| if acts == 1 { a.acting } else { a.quiet };
    let drain = |a: &Axis, acts: usize| acts * usize::from(a.drains);
    let mut now = [[0.0; 2]; 27];
    for bits in 0..8 {
        let (a, b, c) = (bits & 1, bits >> 1 & 1, bits >> 2);
        let effect = pick(x, a).max(pick(y, b)).max(pick(z, c));
        let drains = 2 * (drain(x, a) | drain(y, b) | drain(z, c));
        let of = &heard.by_effect[usize::from(effect)];
        now[bits] = [of[drains], of[drains + 1]];
    }
    // One mode after the other, from whether it acts to its conditions.
    let mut left = 8;
    for axis in axes {
        let mut then = [[0.0; 2]; 27];
        left /= 2;
        for s in 0..3 {
            let acts = match s {
                0 => 1.0,
                1 => 1.0 - axis.flicker,
                _ => axis.flicker,
            };
            for rest in 0..left {
                for low in 0..2 {
                    let (quiet, acting) = (now[2 * rest][low], now[2 * rest + 1][low]);
                    then[rest + left * s][low] = acts * acting + (1.0 - acts) * quiet;
                }
            }
        }
        (now, left) = (then, 3 * left);
    }
    now
}
