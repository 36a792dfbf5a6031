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

use super::heard::{Ear, Epoch, Heard};
use super::hypothesis::{FLICKER, RESIDUE, STAYS_FULL, acts, stays_full};
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
fn place([a, b, c]: [usize; 3]) -> usize {
    c * (c + 1) * (c + 2) / 6 + b * (b + 1) / 2 + a
}

impl KindOf {
    fn new(plant: &Plant, mode: Mode, ear: &Ear, left_out: Option<usize>) -> Self {
        let lowers = plant.lowers(mode);
        let heard = ear.heard.iter().enumerate();
        let effects = heard
            .map(|(i, h)| {
                if Some(i) == left_out {
                    (0, 0)
                } else {
                    h.effect(mode)
                }
            })
            .collect();
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
        }
    }

    fn same(&self, other: &Self) -> bool {
        self.effects == other.effects
            && self.stays == other.stays
            && self.corrected == other.corrected
    }
}

/// Shares of steady, acting and quiet for a steady and for an intermittent
/// mode in this epoch. One that was corrected acts only if that did not take.
pub(crate) fn shares(epoch: &Epoch, mode: Mode) -> [[f64; 3]; 2] {
    if epoch.corrected.contains(&mode) {
        [[0.0, RESIDUE, 1.0 - RESIDUE]; 2]
    } else {
        let acting = acts(epoch.stage);
        [[1.0, 0.0, 0.0], [0.0, acting, 1.0 - acting]]
    }
}

impl Lattice {
    /// The lattice over these modes given what was heard, one piece left out
    /// on request.
    pub fn new(plant: &Plant, modes: &[Mode], ear: &Ear, left_out: Option<usize>) -> Self {
        let mut kinds = vec![KindOf {
            stays: [1.0; 2],
            effects: vec![(0, 0); ear.heard.len()],
            corrected: vec![false; ear.epochs.len()],
            shares: vec![[[1.0, 0.0, 0.0]; 2]; ear.epochs.len()],
            ..KindOf::default()
        }];
        let mut members: Vec<Vec<Mode>> = vec![Vec::new()];
        for mode in modes {
            let kind = KindOf::new(plant, *mode, ear, left_out);
            match kinds.iter().skip(1).position(|k| k.same(&kind)) {
                Some(i) => {
                    kinds[i + 1].many += 1;
                    members[i + 1].push(*mode);
                }
                None => {
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
        lattice.fill(ear, left_out);
        lattice
    }

    fn fill(&mut self, ear: &Ear, left_out: Option<usize>) {
        let n = self.kinds.len();
        let mut all = Vec::with_capacity(place([0, 0, n]));
        for c in 0..n {
            for b in 0..=c {
                for a in 0..=b {
                    let of = [a, b, c];
                    let enough = |k: usize| {
                        k == 0 || of.iter().filter(|x| **x == k).count() <= self.kinds[k].many
                    };
                    let cell = if of.iter().all(|k| enough(*k)) {
                        self.cell(ear, left_out, of)
                    } else {
                        [0.0; 8]
                    };
                    all.push(cell);
                }
            }
        }
        self.likelihood = all;
    }

    /// Likelihood per manner of a combination of kinds, the first the least.
    pub fn likelihood(&self, of: [usize; 3]) -> &[f64; 8] {
        &self.likelihood[place(of)]
    }

    fn cell(&self, ear: &Ear, left_out: Option<usize>, of: [usize; 3]) -> [f64; 8] {
        let mut told = self.level(of);
        for epoch in 0..ear.epochs.len() {
            let (table, scale) = self.table(ear, left_out, epoch, of);
            let manners = match table {
                Some(table) => self.manners(&table, epoch, of),
                None => [[1.0; 2]; 8],
            };
            for (t, m) in told.iter_mut().zip(manners) {
                t[0] *= m[0] * scale[0];
                t[1] *= m[1] * scale[1];
            }
        }
        told.map(|t| t[0] + t[1])
    }

    /// Chance of a full and of a low basin on arrival, per manner.
    pub fn level(&self, of: [usize; 3]) -> Manners {
        let mut level = [[0.0; 2]; 8];
        for (m, l) in level.iter_mut().enumerate() {
            let stays: f64 = of
                .iter()
                .enumerate()
                .map(|(i, k)| self.kinds[*k].stays[m >> i & 1])
                .product();
            *l = [STAYS_FULL * stays, 1.0 - STAYS_FULL * stays];
        }
        level
    }

    /// Likelihood of all that was heard in an epoch per condition of the
    /// modes, `None` when it is the same for all; and a factor by level.
    pub fn table(
        &self,
        ear: &Ear,
        left_out: Option<usize>,
        epoch: usize,
        of: [usize; 3],
    ) -> (Option<Table>, [f64; 2]) {
        let mut table = None::<Table>;
        let mut scale = [1.0; 2];
        for (i, heard) in ear.heard.iter().enumerate() {
            if heard.epoch != epoch || Some(i) == left_out {
                continue;
            }
            let axes: [Axis; 3] = std::array::from_fn(|a| self.axis(heard, i, epoch, of[a]));
            if axes.iter().all(|a| a.flat() && a.acting == 0) {
                let of = &heard.by_effect[0];
                scale[0] *= of[0];
                scale[1] *= of[1];
                continue;
            }
            let told = conditions(heard, &axes);
            match &mut table {
                Some(table) => {
                    for (t, l) in table.iter_mut().zip(&told) {
                        t[0] *= l[0];
                        t[1] *= l[1];
                    }
                }
                None => table = Some(told),
            }
        }
        (table, scale)
    }

    fn axis(&self, heard: &Heard, piece: usize, epoch: usize, kind: usize) -> Axis {
        let kind = &self.kinds[kind];
        let (acting, quiet) = kind.effects[piece];
        let corrected = kind.corrected[epoch];
        Axis {
            acting,
            quiet: if corrected { 0 } else { quiet },
            drains: heard.minds_draining && kind.lowers,
            flicker: if corrected { 0.0 } else { FLICKER },
        }
    }

    /// Per manner from per condition.
    pub fn manners(&self, table: &Table, epoch: usize, of: [usize; 3]) -> Manners {
        let share = of.map(|k| &self.kinds[k].shares[epoch]);
        let mut out = [[0.0; 2]; 8];
        let mut two = [[[0.0; 2]; 9]; 2];
        for (m, two) in two.iter_mut().enumerate() {
            for (i, t) in two.iter_mut().enumerate() {
                for low in 0..2 {
                    t[low] = (0..3).map(|s| share[0][m][s] * table[3 * i + s][low]).sum();
                }
            }
        }
        for (m, o) in out.iter_mut().enumerate() {
            let (m0, m1, m2) = (m & 1, m >> 1 & 1, m >> 2 & 1);
            for (c, w2) in share[2][m2].iter().enumerate() {
                if *w2 == 0.0 {
                    continue;
                }
                for (b, w1) in share[1][m1].iter().enumerate() {
                    let t = &two[m0][3 * c + b];
                    o[0] += w2 * w1 * t[0];
                    o[1] += w2 * w1 * t[1];
                }
            }
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

impl Axis {
    /// Whether acting or quiet makes no difference.
    fn flat(&self) -> bool {
        self.acting == self.quiet && !self.drains
    }
}

/// Likelihood of one piece per condition: steady, acting, quiet on each axis.
fn conditions(heard: &Heard, axes: &[Axis; 3]) -> Table {
    let mut raw = [[0.0; 2]; 8];
    for (bits, r) in raw.iter_mut().enumerate() {
        let (mut effect, mut drains) = (0, 0);
        for (i, axis) in axes.iter().enumerate() {
            if bits >> i & 1 == 1 {
                effect = effect.max(axis.acting);
                drains |= 2 * usize::from(axis.drains);
            } else {
                effect = effect.max(axis.quiet);
            }
        }
        let of = &heard.by_effect[usize::from(effect)];
        *r = [of[drains], of[drains + 1]];
    }
    let spread = |quiet: [f64; 2], acting: [f64; 2], f: f64| {
        let mix = |x: [f64; 2], y: [f64; 2]| [x[0] + f * (y[0] - x[0]), x[1] + f * (y[1] - x[1])];
        [acting, mix(acting, quiet), mix(quiet, acting)]
    };
    let mut first = [[0.0; 2]; 12];
    for rest in 0..4 {
        let three = spread(raw[2 * rest], raw[2 * rest + 1], axes[0].flicker);
        first[3 * rest..3 * rest + 3].copy_from_slice(&three);
    }
    let mut second = [[0.0; 2]; 18];
    for last in 0..2 {
        for s in 0..3 {
            let (quiet, acting) = (first[6 * last + s], first[6 * last + 3 + s]);
            for (c, v) in spread(quiet, acting, axes[1].flicker)
                .into_iter()
                .enumerate()
            {
                second[9 * last + 3 * c + s] = v;
            }
        }
    }
    let mut all = [[0.0; 2]; 27];
    for s in 0..9 {
        for (c, v) in spread(second[s], second[9 + s], axes[2].flicker)
            .into_iter()
            .enumerate()
        {
            all[9 * c + s] = v;
        }
    }
    all
}
