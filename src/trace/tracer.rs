//! The tracer: everything that is worked out once for a plant and what is
//! known of a call.

use super::Answer;
use super::belief::{Belief, Suspect};
use super::check::Check;
use super::evidence::{Case, Evidence};
use super::heard::Ear;
use super::lattice::Lattice;
use super::mass::{Mass, Set};
use super::mode::{Branch, Group, Mode};
use super::plant::Plant;
use super::weight::Source;
use super::world::Worlds;
use crate::quantity::sort_by;

/// Evidence counts as contradicted where a state of the world gives it less
/// than this part of what the best state would, and such states hold this
/// much of the belief: a rare cause that it points to, alone and first but not
/// yet sure, is no contradiction.
const CONTRADICTED: f64 = 0.06;
const AGAINST: f64 = 0.75;

/// Share of the belief that choosing a check looks at. The belief itself is
/// over all hypotheses.
const COVER: f64 = 0.97;

/// The exact posterior of one call, and what follows from it.
pub struct Tracer {
    pub(crate) plant: Plant,
    pub(crate) case: Case,
    /// The checks offered.
    pub(crate) checks: Vec<Check>,
    pub(crate) ear: Ear,
    pub(crate) lattice: Lattice,
    pub(crate) mass: Mass,
    pub(crate) nothing: bool,
    /// The sets that hold most of the belief.
    pub(crate) leading: Vec<(Set, f64)>,
}

impl std::fmt::Debug for Tracer {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Tracer")
            .field("case", &self.case)
            .finish_non_exhaustive()
    }
}

impl Tracer {
    /// The posterior for a plant and what is known of a call. The order of
    /// the evidence matters only to what a correction comes after.
    pub fn new(plant: &Plant, case: &Case) -> Self {
        let checks: Vec<Check> = Check::ALL.into_iter().filter(|c| c.exists(plant)).collect();
        Self::over(plant, case, &plant.modes(), &checks)
    }

    /// The same, thinking only of these modes and offering only these checks.
    pub fn over(plant: &Plant, case: &Case, modes: &[Mode], checks: &[Check]) -> Self {
        let ear = Ear::of(plant, case);
        let lattice = Lattice::new(plant, modes, &ear);
        let nothing =
            case.observed.allows_nothing(plant) && case.evidence.iter().all(allows_nothing);
        let mass = Mass::over(&lattice, nothing);
        let leading = mass.leading(&lattice, nothing, COVER);
        Self {
            plant: *plant,
            case: case.clone(),
            checks: checks.to_vec(),
            ear,
            lattice,
            mass,
            nothing,
            leading,
        }
    }

    /// The modes corrected so far.
    pub(crate) fn corrected(&self) -> Vec<Mode> {
        self.case.corrections.iter().map(|c| c.mode).collect()
    }

    /// The belief as suspects.
    pub fn belief(&self) -> Belief {
        let corrected = self.corrected();
        let remains = Worlds::remaining(self, &corrected);
        let mut suspects: Vec<Suspect> = self
            .lattice
            .modes
            .iter()
            .zip(&self.mass.modes)
            .map(|(mode, [steady, intermittent])| {
                let was = (steady + intermittent).min(1.0);
                let left = corrected
                    .iter()
                    .position(|c| c == mode)
                    .map_or(1.0, |i| remains[i]);
                Suspect {
                    mode: *mode,
                    probability: was * left,
                    steady: steady.min(1.0) * left,
                    intermittent: intermittent * left,
                    was,
                }
            })
            .collect();
        sort_by(&mut suspects, |a, b| {
            b.probability.total_cmp(&a.probability)
        });
        let mut groups: Vec<(Group, f64)> = Group::ALL.into_iter().zip(self.mass.groups).collect();
        let mut branches: Vec<(Branch, f64)> =
            Branch::ALL.into_iter().zip(self.mass.branches).collect();
        sort_by(&mut groups, |a, b| b.1.total_cmp(&a.1));
        sort_by(&mut branches, |a, b| b.1.total_cmp(&a.1));
        Belief {
            suspects,
            groups,
            branches,
            nothing: self.mass.nothing,
            best: self.mass.best(&self.lattice, self.nothing, &self.leading),
            contradictions: self.contradictions(),
        }
    }

    /// Indices of the evidence that most of the belief would hardly show.
    fn contradictions(&self) -> Vec<usize> {
        let mut found = Vec::new();
        let mut worlds: Vec<Option<Worlds>> = self.ear.epochs.iter().map(|_| None).collect();
        for (piece, heard) in self.ear.heard.iter().enumerate() {
            if let Source::Evidence(i) = heard.source {
                let worlds = worlds[heard.epoch]
                    .get_or_insert_with(|| Worlds::at(self, &self.ear.epochs[heard.epoch]));
                if worlds.against(self, piece, CONTRADICTED * heard.best()) >= AGAINST {
                    found.push(i);
                }
            }
        }
        found
    }
}

/// Whether this answer leaves room for nothing being wrong any more.
fn allows_nothing(e: &Evidence) -> bool {
    match e.check {
        Check::MachinesOut => e.answer == Answer::CouldNot,
        Check::BasinOnArrival => e.answer != Answer::BasinLow,
        _ => true,
    }
}
