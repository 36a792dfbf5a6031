//! Why: which evidence speaks for and against a suspect, how loudly, and
//! what would change the mind.

use serde::{Deserialize, Serialize};

use super::answer::Answer;
use super::check::Check;
use super::evidence::{Case, Evidence};
use super::lattice::{Manners, Told, each_three, place};
use super::mass::before;
use super::mode::Mode;
use super::observed::{Observed, Reading};
use super::plant::Plant;
use super::tracer::Tracer;
use super::world::Moments;
use crate::quantity::sort_by;

/// Where a weight comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    /// An answered check, by its index in the evidence.
    Evidence(usize),
    /// A number read.
    Reading(Reading),
}

/// How loudly evidence speaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Strength {
    /// Changes the odds less than 1.25 times.
    Silent,
    /// Changes the odds at least 1.25 times.
    Slight,
    /// Changes the odds at least 2 times.
    Some,
    /// Changes the odds at least 10 times.
    Strong,
}

/// One piece of evidence against or for a suspect.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Weight {
    /// Which evidence.
    pub source: Source,
    /// Base-10 logarithm by which it changes the suspect's odds, given all
    /// the rest: above 0 for, below 0 against. Two pieces that say the same
    /// thing share the credit, so each reads lower than it would alone.
    pub log10_odds: f64,
}

/// An answer that would change the mind about a suspect.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Turn {
    /// The check.
    pub check: Check,
    /// The answer that would do it.
    pub answer: Answer,
    /// About what the suspect's probability would become.
    pub probability: f64,
}

impl Weight {
    /// How loud, for or against.
    pub fn strength(&self) -> Strength {
        let loud = self.log10_odds.abs();
        if loud >= 1.0 {
            Strength::Strong
        } else if loud >= 2f64.log10() {
            Strength::Some
        } else if loud >= 1.25f64.log10() {
            Strength::Slight
        } else {
            Strength::Silent
        }
    }

    /// Whether it speaks for the suspect.
    pub fn speaks_for(&self) -> bool {
        self.log10_odds > 0.0
    }
}

impl Tracer {
    /// Weight of every piece of evidence for a suspect, loudest first: the odds
    /// with everything over the odds with that piece left out. Evidence that
    /// tells nothing (could not, outranked by a number) is not
    /// listed. Empty for a mode that the plant can't have.
    pub fn why(&self, suspect: Mode) -> Vec<Weight> {
        let Some(at) = self.lattice.modes.iter().position(|m| *m == suspect) else {
            return Vec::new();
        };
        let with = odds(self.mass.modes[at].iter().sum());
        let without = self.without_each(at);
        let pieces = self.ear.heard.iter().zip(without);
        let each = pieces.map(|(heard, p)| Weight {
            source: heard.source,
            log10_odds: with - odds(p),
        });
        let mut weights: Vec<Weight> = each.collect();
        sort_by(&mut weights, |a, b| {
            b.log10_odds.abs().total_cmp(&a.log10_odds.abs())
        });
        weights
    }

    /// Probability of a mode of the lattice with each piece left out. One pass
    /// over the combinations of kinds: a piece is divided out of what its
    /// epoch told.
    fn without_each(&self, mode: usize) -> Vec<f64> {
        let (lattice, ear) = (&self.lattice, &self.ear);
        let before = before(lattice, mode, self.nothing);
        let mut sums = vec![[0.0; 2]; ear.heard.len()];
        each_three(lattice.kinds.len(), |of| {
            let before = &before[place(of)];
            if before[0] == [0.0; 8] {
                return;
            }
            let epochs = 0..ear.epochs.len();
            let told: Vec<Told> = epochs.map(|e| lattice.told(ear, e, of)).collect();
            let by_epoch = told.iter().enumerate();
            let manners: Vec<Manners> = by_epoch.map(|(e, t)| lattice.manners(t, e, of)).collect();
            for (piece, (heard, sum)) in ear.heard.iter().zip(&mut sums).enumerate() {
                let mut part = Told::default();
                let here = match lattice.hear(&mut part, heard, piece, of) {
                    true => {
                        let mut rest = told[heard.epoch].clone();
                        rest.leave_out(&part);
                        lattice.manners(&rest, heard.epoch, of)
                    }
                    false => {
                        let [full, low, ..] = heard.by_effect[0];
                        manners[heard.epoch].map(|m| [m[0] / full, m[1] / low])
                    }
                };
                let mut all = lattice.level(of);
                for (e, known) in manners.iter().enumerate() {
                    let known = if e == heard.epoch { &here } else { known };
                    for (a, k) in all.iter_mut().zip(known) {
                        a[0] *= k[0];
                        a[1] *= k[1];
                    }
                }
                for (s, before) in sum.iter_mut().zip(before) {
                    *s += all
                        .iter()
                        .zip(before)
                        .map(|(l, p)| p * (l[0] + l[1]))
                        .sum::<f64>();
                }
            }
        });
        sums.into_iter().map(|[all, with]| with / all).collect()
    }

    /// What would change the mind most about a suspect, of the checks not
    /// done yet: the answer after which it would be least likely. `None` when
    /// no answer that can be expected at least once in a hundred calls halves
    /// it.
    pub fn turn(&self, suspect: Mode) -> Option<Turn> {
        let mut best = None::<Turn>;
        let mut moments = Moments::default();
        let place = self.lattice.modes.iter().position(|m| *m == suspect)?;
        for check in self.open_checks() {
            let worlds = moments.of(self, self.stage(check));
            let (mut there, mut all) = ([0.0; 3], [0.0; 3]);
            let mut now = 0.0;
            for (world, chance) in worlds.all.iter().zip(worlds.answers(self, check)) {
                let here = world.there().any(|m| m == place);
                let share = f64::from(u8::from(here)) * world.p;
                now += share;
                for (column, c) in chance.iter().enumerate() {
                    all[column] += world.p * c;
                    there[column] += share * c;
                }
            }
            for (column, answer) in check.answers().iter().enumerate() {
                if all[column] < 0.01 {
                    continue;
                }
                let then = there[column] / all[column];
                if then < 0.5 * now && best.is_none_or(|b| then < b.probability) {
                    best = Some(Turn {
                        check,
                        answer: *answer,
                        probability: then,
                    });
                }
            }
        }
        best
    }
}

/// Weight of every piece of evidence for `mode`; see [`Tracer::why`].
pub fn why(plant: &Plant, observed: &Observed, evidence: &[Evidence], mode: Mode) -> Vec<Weight> {
    let case = Case {
        observed: *observed,
        evidence: evidence.to_vec(),
        ..Case::default()
    };
    Tracer::new(plant, &case).why(mode)
}

/// Odds on a base-10 logarithm, held within twelve orders either way.
fn odds(p: f64) -> f64 {
    let p = p.clamp(1e-12, 1.0 - 1e-12);
    (p / (1.0 - p)).log10()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trace::evidence::{Correction, Stage};
    use crate::trace::heard::Ear;
    use crate::trace::lattice::Lattice;
    use crate::trace::mass::Mass;

    /// The quick way against working the whole posterior out anew without the
    /// piece, over a call with readings taken twice, three stages and a repair.
    #[test]
    fn a_piece_divided_out_leaves_what_it_would_be_without() {
        use Answer as A;
        use Check as K;
        let said = [
            (K::MachinesOut, A::ThreeOrMore, Stage::AsFound),
            (K::BasinOnArrival, A::BasinLow, Stage::AsFound),
            (K::CallAsFound, A::Satisfied, Stage::AsFound),
            (K::FoamLook, A::NoFoam, Stage::AsFound),
            (K::FlowOnCall, A::WeakFlow, Stage::WaterLetIn),
            (K::WiresOffHolder, A::Calls, Stage::Testing),
            (K::HolderCap, A::CapWet, Stage::Testing),
            (K::HolderCap, A::CapDry, Stage::Testing),
            (K::CoilVoltage, A::VoltageLow, Stage::Testing),
            (K::ProbeFilm, A::HolderFilmed, Stage::Testing),
            (K::RefillTest, A::RefilledSlowly, Stage::Corrected),
            (K::FanRuns, A::FanSlow, Stage::Corrected),
        ];
        let case = Case {
            evidence: said.map(|(c, a, s)| Evidence::said(c, a, s)).to_vec(),
            corrections: vec![Correction {
                mode: Mode::ProbeFilm,
                after: 10,
            }],
            ..Case::default()
        };
        let plant = Plant::default();
        let tracer = Tracer::new(&plant, &case);
        for suspect in [
            Mode::ProbeFilm,
            Mode::BeltOff,
            Mode::StrainerBlocked,
            Mode::CoilWeak,
        ] {
            let at = tracer
                .lattice
                .modes
                .iter()
                .position(|m| *m == suspect)
                .expect("there");
            let quick = tracer.without_each(at);
            assert_eq!(quick.len(), case.evidence.len());
            for (piece, quick) in quick.into_iter().enumerate() {
                let mut ear = Ear::of(&plant, &case);
                ear.heard.remove(piece);
                let lattice = Lattice::new(&plant, &tracer.lattice.modes, &ear);
                let mass = Mass::over(&lattice, tracer.nothing);
                let at = lattice
                    .modes
                    .iter()
                    .position(|m| *m == suspect)
                    .expect("there");
                let whole: f64 = mass.modes[at].iter().sum();
                assert!(
                    (quick - whole).abs() < 1e-12 + 1e-9 * whole,
                    "{suspect:?} {piece}: {quick} {whole}"
                );
            }
        }
    }
}
