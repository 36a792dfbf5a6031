//! The posterior over sets of modes: prior times likelihood, added up over
//! manners, with the sums that suspects and headings need.

use super::hypothesis::{Fault, Hypothesis, NOTHING, company};
use super::lattice::Lattice;
use super::mode::{Branch, Group, Manner, Mode};

/// A set of up to three modes as places in the lattice's order, the absent
/// ones first as `NONE`.
pub(crate) type Set = [usize; 3];
/// No mode.
pub(crate) const NONE: usize = usize::MAX;

/// The posterior.
pub(crate) struct Mass {
    /// Per set, in the order of [`each_set`]; adds to one.
    pub sets: Vec<f64>,
    /// Per mode of the lattice, steady and intermittent.
    pub modes: Vec<[f64; 2]>,
    /// Per group, that any of its modes is there.
    pub groups: [f64; Group::ALL.len()],
    /// Per branch.
    pub branches: [f64; Branch::ALL.len()],
    /// The likeliest hypothesis.
    pub best: (Hypothesis, f64),
    /// Logarithm of the evidence's own probability, up to a constant.
    pub total: f64,
}

/// Calls `each` with every set of up to three of `n` modes: nothing first,
/// then by the last, the second and the first of them.
pub(crate) fn each_set(n: usize, mut each: impl FnMut(Set)) {
    each([NONE; 3]);
    for c in 0..n {
        each([NONE, NONE, c]);
        for b in 0..c {
            each([NONE, b, c]);
            for a in 0..b {
                each([a, b, c]);
            }
        }
    }
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
    let own = |m: &&usize| {
        lattice
            .modes
            .get(**m)
            .is_some_and(|m| m.group() == Group::Machine)
    };
    let faults = set.iter().filter(|m| **m != NONE).count();
    let factor = match faults {
        0 if nothing => NOTHING,
        0 => 0.0,
        _ => company(faults, set.iter().filter(own).count()),
    };
    let of = set.map(|m| priors.get(m).copied().unwrap_or([1.0, 0.0]));
    std::array::from_fn(|m| factor * of[0][m & 1] * of[1][m >> 1 & 1] * of[2][m >> 2 & 1])
}

impl Mass {
    /// The posterior over a lattice; nothing wrong at all only when
    /// `nothing` is allowed.
    pub fn over(lattice: &Lattice, nothing: bool) -> Self {
        let n = lattice.modes.len();
        let priors = priors(&lattice.modes);
        let group: Vec<usize> = lattice.modes.iter().map(|m| m.group() as usize).collect();
        let branch: Vec<usize> = lattice
            .modes
            .iter()
            .map(|m| m.group().branch() as usize)
            .collect();
        let mut mass = Self {
            sets: Vec::with_capacity(1 + n + n * n / 2 + n * n * n / 6),
            modes: vec![[0.0; 2]; n],
            groups: [0.0; Group::ALL.len()],
            branches: [0.0; Branch::ALL.len()],
            best: (Hypothesis::default(), -1.0),
            total: 0.0,
        };
        let mut best = ([NONE; 3], 0);
        each_set(n, |set| {
            let likelihood = lattice.likelihood(kinds(lattice, set));
            let prior = prior(lattice, &priors, set, nothing);
            let mut sum = 0.0;
            for m in 0..8 {
                let p = prior[m] * likelihood[m];
                if p == 0.0 {
                    continue;
                }
                sum += p;
                for (i, mode) in set.iter().enumerate() {
                    if let Some(mode) = mass.modes.get_mut(*mode) {
                        mode[m >> i & 1] += p;
                    }
                }
                if p > mass.best.1 {
                    (best, mass.best.1) = ((set, m), p);
                }
            }
            mass.sets.push(sum);
            mass.total += sum;
            for i in 0..3 {
                let Some(g) = group.get(set[i]) else { continue };
                if !set[..i].iter().any(|m| group.get(*m) == Some(g)) {
                    mass.groups[*g] += sum;
                }
                let b = branch[set[i]];
                if !set[..i].iter().any(|m| branch.get(*m) == Some(&b)) {
                    mass.branches[b] += sum;
                }
            }
        });
        mass.normalise();
        mass.best.0 = hypothesis(lattice, best.0, best.1);
        mass
    }

    fn normalise(&mut self) {
        let total = self.total;
        let every = self
            .sets
            .iter_mut()
            .chain(self.modes.iter_mut().flatten())
            .chain(&mut self.groups)
            .chain(&mut self.branches)
            .chain(std::iter::once(&mut self.best.1));
        every.for_each(|p| *p /= total);
    }

    /// The sets that hold all but some of the belief, with their shares: at
    /// least `cover` of it, and few.
    pub fn leading(&self, n: usize, cover: f64) -> Vec<(Set, f64)> {
        let mut least = 3e-4;
        loop {
            let held: f64 = self.sets.iter().filter(|p| **p >= least).sum();
            if held >= cover || least < 1e-9 {
                break;
            }
            least /= 3.0;
        }
        let mut leading = Vec::new();
        let mut at = 0;
        each_set(n, |set| {
            if self.sets[at] >= least {
                leading.push((set, self.sets[at]));
            }
            at += 1;
        });
        leading
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
