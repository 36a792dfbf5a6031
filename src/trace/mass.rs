//! The posterior over sets of modes: prior times likelihood, added up over
//! manners, with the sums that suspects and headings need.
//!
//! Modes of the same kind and part of the plant form a *family*. All sets with
//! members of the same three families have the same likelihoods and the same
//! company, so their priors are added up first: the sum over distinct members
//! is an elementary symmetric polynomial, exact.

use super::hypothesis::{Fault, Hypothesis, NOTHING, company};
use super::lattice::{Lattice, each_three, place};
use super::mode::{Group, Manner, Mode};

/// A set of up to three modes as places in the lattice's order, the absent
/// ones first as `NONE`.
pub(crate) type Set = [usize; 3];
/// No mode.
pub(crate) const NONE: usize = usize::MAX;

/// The posterior.
pub(crate) struct Mass {
    /// Per mode of the lattice, steady and intermittent.
    pub modes: Vec<[f64; 2]>,
    /// Per group, that any of its modes is there.
    pub groups: [f64; Group::ALL.len()],
    /// Per branch.
    pub branches: [f64; BRANCHES],
    /// Probability that nothing is wrong.
    pub nothing: f64,
    /// What all hypotheses weigh together before they are made to add to one.
    total: f64,
    families: Vec<Family>,
    /// Every three families, as places, with their part.
    threes: Vec<([usize; 3], f64)>,
}

const BRANCHES: usize = super::mode::Branch::ALL.len();

/// Modes of one kind and group. The first of all is no mode.
#[derive(Clone, Default)]
struct Family {
    kind: usize,
    group: Option<Group>,
    /// Places of its modes in the lattice's order.
    modes: Vec<usize>,
    /// Sum of the priors, of their products in pairs, and in threes, by manner.
    one: [f64; 2],
    two: [[f64; 2]; 2],
    three: [[[f64; 2]; 2]; 2],
}

/// What one more fault of a family meets: it alone of its family, with a
/// second of it, with two more.
#[derive(Clone, Default)]
struct Meets {
    alone: [f64; 2],
    second: [[f64; 2]; 2],
    third: [[[f64; 2]; 2]; 2],
}

/// Prior of each mode of the lattice: steady, intermittent; adds to one.
pub(crate) fn priors(modes: &[Mode]) -> Vec<[f64; 2]> {
    let weight = |m: &Mode| m.row().map_or(0.0, |r| f64::from(r.weight));
    let total: f64 = modes.iter().map(weight).sum();
    let each = |m: &Mode| {
        let p = weight(m) / total;
        [
            p * (1.0 - m.intermittent_share()),
            p * m.intermittent_share(),
        ]
    };
    modes.iter().map(each).collect()
}

/// Kinds of the modes of a set.
pub(crate) fn kinds(lattice: &Lattice, set: Set) -> [usize; 3] {
    set.map(|m| lattice.kind.get(m).copied().unwrap_or(0))
}

/// Prior of a set per manner of its modes, unnormalised.
pub(crate) fn prior(lattice: &Lattice, priors: &[[f64; 2]], set: Set, nothing: bool) -> [f64; 8] {
    let factor = company_of(
        set.map(|m| lattice.modes.get(m).map(|m| m.group())),
        nothing,
    );
    let of = set.map(|m| priors.get(m).copied().unwrap_or([1.0, 0.0]));
    std::array::from_fn(|m| factor * of[0][m & 1] * of[1][m >> 1 & 1] * of[2][m >> 2 & 1])
}

/// The families of a lattice, in the order of their kinds, one mode on request
/// in a family of its own.
fn families(lattice: &Lattice, priors: &[[f64; 2]], apart: Option<usize>) -> Vec<Family> {
    let mut all = vec![Family {
        one: [1.0, 0.0],
        ..Family::default()
    }];
    for (place, (mode, kind)) in lattice.modes.iter().zip(&lattice.kind).enumerate() {
        let group = Some(mode.group());
        let of_its_own = |at: &usize| apart == Some(*at);
        let known = all
            .iter()
            .position(|f| f.kind == *kind && f.group == group && !f.modes.iter().any(of_its_own));
        let known = known.filter(|_| !of_its_own(&place));
        let at = known.unwrap_or_else(|| {
            all.push(Family {
                kind: *kind,
                group,
                ..Family::default()
            });
            all.len() - 1
        });
        let (family, p) = (&mut all[at], priors[place]);
        family.modes.push(place);
        for x in 0..2 {
            family.one[x] += p[x];
            for y in 0..2 {
                family.two[x][y] += p[x] * p[y];
                for z in 0..2 {
                    family.three[x][y][z] += p[x] * p[y] * p[z];
                }
            }
        }
    }
    all
}

impl Family {
    /// Sum over unordered pairs of different members, by manner.
    fn pairs(&self, x: usize, y: usize) -> f64 {
        if self.modes.len() < 2 {
            return 0.0;
        }
        (self.one[x] * self.one[y] - self.two[x][y]) / 2.0
    }

    /// The same over threes.
    fn threes(&self, x: usize, y: usize, z: usize) -> f64 {
        if self.modes.len() < 3 {
            return 0.0;
        }
        let [s, q] = [
            self.one[x] * self.one[y] * self.one[z],
            self.two[x][y] * self.one[z]
                + self.two[x][z] * self.one[y]
                + self.two[y][z] * self.one[x],
        ];
        (s - q + 2.0 * self.three[x][y][z]) / 6.0
    }

    /// Members that are left for a set which has `p` already.
    fn others(&self, p: [f64; 2], y: usize) -> f64 {
        self.one[y] - p[y]
    }

    /// Unordered pairs that are left for it.
    fn other_pairs(&self, p: [f64; 2], y: usize, z: usize) -> f64 {
        if self.modes.len() < 3 {
            return 0.0;
        }
        (self.others(p, y) * self.others(p, z) - self.two[y][z] + p[y] * p[z]) / 2.0
    }
}

/// What the sets of three families weigh before anything is heard, by manner
/// of a first, a second and a third mode.
fn weights(families: &[Family], at: [usize; 3], nothing: bool) -> [f64; 8] {
    let of = at.map(|f| &families[f]);
    let [a, b, c] = of;
    let factor = company_of(of.map(|f| f.group), nothing);
    let same = [at[0] == at[1] && at[0] > 0, at[1] == at[2] && at[1] > 0];
    std::array::from_fn(|m| {
        let (x, y, z) = (m & 1, m >> 1 & 1, m >> 2);
        factor
            * match same {
                // No mode has but one manner: its other prior is 0.
                [false, false] => a.one[x] * b.one[y] * c.one[z],
                [true, false] => a.pairs(x, y) * c.one[z],
                [false, true] => b.pairs(y, z) * a.one[x],
                [true, true] => a.threes(x, y, z),
            }
    })
}

/// Per combination of kinds, what its sets weigh before anything is heard by
/// manner: all of them, and those with this mode.
pub(crate) fn before(lattice: &Lattice, mode: usize, nothing: bool) -> Vec<[[f64; 8]; 2]> {
    let families = families(lattice, &priors(&lattice.modes), Some(mode));
    let mut all = vec![[[0.0; 8]; 2]; place([0, 0, lattice.kinds.len()])];
    each_three(families.len(), |at| {
        let weights = weights(&families, at, nothing);
        let here = &mut all[place(at.map(|f| families[f].kind))];
        let with = at.iter().any(|f| families[*f].modes.contains(&mode));
        for of in &mut here[..1 + usize::from(with)] {
            of.iter_mut().zip(weights).for_each(|(o, w)| *o += w);
        }
    });
    all
}

impl Mass {
    /// The posterior over a lattice; nothing wrong at all only when
    /// `nothing` is allowed.
    pub fn over(lattice: &Lattice, nothing: bool) -> Self {
        let priors = priors(&lattice.modes);
        let families = families(lattice, &priors, None);
        let n = families.len();
        let mut mass = Self {
            modes: vec![[0.0; 2]; lattice.modes.len()],
            groups: [0.0; Group::ALL.len()],
            branches: [0.0; BRANCHES],
            nothing: 0.0,
            total: 0.0,
            threes: Vec::with_capacity(n * (n + 1) * (n + 2) / 6),
            families: Vec::new(),
        };
        let mut meets = vec![Meets::default(); n];
        each_three(n, |at| {
            mass.add(lattice, &families, &mut meets, at, nothing)
        });
        for (family, met) in families.iter().zip(&meets).skip(1) {
            for place in &family.modes {
                let p = priors[*place];
                for x in 0..2 {
                    let mut meets = met.alone[x];
                    for y in 0..2 {
                        meets += met.second[x][y] * family.others(p, y);
                        for z in 0..2 {
                            meets += met.third[x][y][z] * family.other_pairs(p, y, z);
                        }
                    }
                    mass.modes[*place][x] = p[x] * meets;
                }
            }
        }
        mass.families = families;
        mass.normalise();
        mass
    }

    /// Adds the sets with members of these three families.
    fn add(
        &mut self,
        lattice: &Lattice,
        families: &[Family],
        meets: &mut [Meets],
        at: [usize; 3],
        nothing: bool,
    ) {
        let of = at.map(|f| &families[f]);
        let likelihood = lattice.likelihood(of.map(|f| f.kind));
        let factor = company_of(of.map(|f| f.group), nothing);
        let weights = weights(families, at, nothing);
        let (ab, bc) = (at[0] == at[1] && at[0] > 0, at[1] == at[2] && at[1] > 0);
        let mut sum = 0.0;
        for (m, l) in likelihood.iter().enumerate() {
            let (x, y, z) = (m & 1, m >> 1 & 1, m >> 2);
            // No mode has but one manner.
            if (at[0] == 0 && x == 1) || (at[1] == 0 && y == 1) || (at[2] == 0 && z == 1) {
                continue;
            }
            sum += l * weights[m];
            let l = l * factor;
            let [a, b, c] = of;
            match (ab, bc) {
                (false, false) => {
                    meets[at[0]].alone[x] += l * b.one[y] * c.one[z];
                    meets[at[1]].alone[y] += l * a.one[x] * c.one[z];
                    meets[at[2]].alone[z] += l * a.one[x] * b.one[y];
                }
                (true, false) => {
                    meets[at[0]].second[x][y] += l * c.one[z];
                    meets[at[2]].alone[z] += l * a.pairs(x, y);
                }
                (false, true) => {
                    meets[at[1]].second[y][z] += l * a.one[x];
                    meets[at[0]].alone[x] += l * b.pairs(y, z);
                }
                (true, true) => meets[at[0]].third[x][y][z] += l,
            }
        }
        self.total += sum;
        self.threes.push((at, sum));
        if at[2] == 0 {
            self.nothing = sum;
        }
        let (mut groups, mut branches) = (0u32, 0u32);
        for group in of.iter().filter_map(|f| f.group) {
            groups |= 1 << group as u32;
            branches |= 1 << group.branch() as u32;
        }
        for (i, g) in self.groups.iter_mut().enumerate() {
            *g += f64::from(groups >> i & 1) * sum;
        }
        for (i, b) in self.branches.iter_mut().enumerate() {
            *b += f64::from(branches >> i & 1) * sum;
        }
    }

    fn normalise(&mut self) {
        let total = self.total;
        let every = self
            .modes
            .iter_mut()
            .flatten()
            .chain(&mut self.groups)
            .chain(&mut self.branches)
            .chain(self.threes.iter_mut().map(|(_, p)| p))
            .chain(std::iter::once(&mut self.nothing));
        every.for_each(|p| *p /= total);
    }

    /// The sets that hold all but some of the belief, with their shares: at
    /// least `cover` of it, and few.
    pub fn leading(&self, lattice: &Lattice, nothing: bool, cover: f64) -> Vec<(Set, f64)> {
        let priors = priors(&lattice.modes);
        let mut least = 3e-4;
        loop {
            let mut leading = Vec::new();
            for (at, _) in self.threes.iter().filter(|(_, p)| *p >= least) {
                self.each_of(*at, |set| {
                    let likelihood = lattice.likelihood(kinds(lattice, set));
                    let prior = prior(lattice, &priors, set, nothing);
                    let p: f64 = prior.iter().zip(likelihood).map(|(p, l)| p * l).sum();
                    if p >= least * self.total {
                        leading.push((set, p / self.total));
                    }
                });
            }
            if leading.iter().map(|(_, p)| p).sum::<f64>() >= cover || least < 1e-9 {
                return leading;
            }
            least /= 3.0;
        }
    }

    /// Every set of one member of each of these families.
    fn each_of(&self, at: [usize; 3], mut each: impl FnMut(Set)) {
        const NO: &[usize] = &[NONE];
        let of = at.map(|f| match f {
            0 => NO,
            f => &self.families[f].modes[..],
        });
        let same = |x: usize, y: usize| at[x] == at[y] && at[x] > 0;
        for (k, c) in of[2].iter().enumerate() {
            let to = if same(1, 2) { k } else { of[1].len() };
            for (j, b) in of[1][..to].iter().enumerate() {
                let to = if same(0, 1) { j } else { of[0].len() };
                for a in &of[0][..to] {
                    let mut set = [*a, *b, *c];
                    // In the lattice's order, the absent first.
                    set.sort_unstable_by_key(|m| m.wrapping_add(1));
                    each(set);
                }
            }
        }
    }

    /// The likeliest hypothesis among these sets, and its probability.
    pub fn best(&self, lattice: &Lattice, nothing: bool, sets: &[(Set, f64)]) -> (Hypothesis, f64) {
        let priors = priors(&lattice.modes);
        let mut best = ([NONE; 3], 0, -1.0);
        for (set, _) in sets {
            let likelihood = lattice.likelihood(kinds(lattice, *set));
            let prior = prior(lattice, &priors, *set, nothing);
            for (m, (p, l)) in prior.iter().zip(likelihood).enumerate() {
                if p * l > best.2 {
                    best = (*set, m, p * l);
                }
            }
        }
        (hypothesis(lattice, best.0, best.1), best.2 / self.total)
    }
}

/// Factor on the product of the shares of modes of these groups.
fn company_of(groups: [Option<Group>; 3], nothing: bool) -> f64 {
    let faults = groups.iter().flatten().count();
    let own = groups
        .iter()
        .flatten()
        .filter(|g| **g == Group::Machine)
        .count();
    match faults {
        0 if nothing => NOTHING,
        0 => 0.0,
        _ => company(faults, own),
    }
}

/// A set with its manners, the present modes first.
fn hypothesis(lattice: &Lattice, set: Set, manners: usize) -> Hypothesis {
    let mut faults = [None; 3];
    let present = set.iter().enumerate().filter(|(_, m)| **m != NONE);
    for (fault, (i, mode)) in faults.iter_mut().zip(present) {
        *fault = Some(Fault {
            mode: lattice.modes[*mode],
            manner: if manners >> i & 1 == 1 {
                Manner::Intermittent
            } else {
                Manner::Steady
            },
        });
    }
    Hypothesis { faults }
}
