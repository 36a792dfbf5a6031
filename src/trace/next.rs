//! What to check next: most information for the minutes, walk included.

use serde::{Deserialize, Serialize};

use super::answer::Answer;
use super::belief::{Belief, Suspect, entropy_bits};
use super::cure::cure;
use super::engine::Engine;
use super::evidence::{Check, Evidence, Stage};
use super::mode::{Mode, Place};
use super::observed::{Observed, Reading, Soft};
use super::plant::{LevelControl, Plant};
use crate::quantity::sort_by;

/// A suspect this probable needs proving, not more searching.
const SETTLED: f64 = 0.9;
/// A check that promises less than this many bits is not worth asking.
const WORTH_ASKING: f64 = 0.03;
/// When nothing is worth asking, a suspect this probable is put to the proof.
const LIKELY: f64 = 0.5;
/// How many other checks are offered beside the best.
const RUNNERS_UP: usize = 4;

/// Why a check is suggested.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "reason", rename_all = "kebab-case")]
pub enum Reason {
    /// It tells the two likeliest causes apart.
    SplitsTop2 {
        /// The likeliest.
        a: Mode,
        /// The next.
        b: Mode,
    },
    /// It would confirm the likeliest cause, or rule it out.
    ConfirmsTop {
        /// The likeliest.
        mode: Mode,
    },
    /// It proves a cause: nearly certain, or all that is left to do.
    ProvesIt {
        /// That cause.
        mode: Mode,
    },
    /// It can be seen only before anything is touched.
    BeforeTouching,
    /// It takes little time where you stand.
    CheapHere,
    /// It tells enough to be worth the walk.
    WorthTheWalk {
        /// Where to.
        to: Place,
    },
}

/// A suggested check.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Suggestion {
    /// The check.
    pub check: Check,
    /// Minutes it takes there.
    pub minutes: f64,
    /// Minutes to walk there.
    pub walk_minutes: f64,
    /// Bits of doubt it is expected to remove.
    pub gain_bits: f64,
    /// Why this one.
    pub why: Reason,
}

/// What to do next.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Advice {
    /// The best check, or, when none is worth its minutes, the proof of a
    /// suspect more likely than not; `None` when nothing is left to do.
    pub best: Option<Suggestion>,
    /// Other checks, best first, at most four.
    pub runners_up: Vec<Suggestion>,
    /// A cause at 90 % or more; then `best` proves it, or is `None` once it
    /// is proved.
    pub settled: Option<Mode>,
}

/// The check with the best expected information per minute from where the
/// mechanic stands, one step ahead. Never suggests a check that was answered,
/// or whose number was read. Ends: each suggestion, once answered (also with
/// [`Answer::CouldNot`]), is not made again.
pub fn advise(plant: &Plant, observed: &Observed, evidence: &[Evidence], at: Place) -> Advice {
    Desk::new(plant, observed, evidence, at).advice()
}

/// Everything the choice looks at.
struct Desk<'a> {
    engine: Engine,
    belief: Belief,
    observed: &'a Observed,
    evidence: &'a [Evidence],
    at: Place,
    entropy: f64,
    /// World masses as found and while testing.
    masses: [Vec<f64>; 2],
}

impl<'a> Desk<'a> {
    fn new(plant: &Plant, observed: &'a Observed, evidence: &'a [Evidence], at: Place) -> Self {
        let engine = Engine::new(plant, observed, evidence);
        let belief = engine.belief();
        let entropy = entropy_bits(&engine.class_mass(&engine.post));
        let masses = [
            engine.world_mass(Stage::AsFound),
            engine.world_mass(Stage::Testing),
        ];
        Self {
            engine,
            belief,
            observed,
            evidence,
            at,
            entropy,
            masses,
        }
    }

    fn advice(&self) -> Advice {
        let top = self.belief.suspects[0];
        let settled = (top.probability >= SETTLED).then_some(top.mode);
        let looked = self.looked();
        let gated: Vec<Suggestion> = Check::ALL
            .into_iter()
            .filter(|c| !looked && self.open(*c, true) && !self.open(*c, false))
            .map(|c| self.suggestion(c))
            .filter(|s| s.gain_bits >= WORTH_ASKING)
            .collect();
        let mut rated: Vec<(f64, Suggestion)> = Check::ALL
            .into_iter()
            .filter(|c| self.open(*c, looked))
            .map(|c| self.suggestion(c))
            .filter_map(|s| self.rate(&s, &gated).map(|rate| (rate, s)))
            .collect();
        sort_by(&mut rated, |a, b| b.0.total_cmp(&a.0));
        let mut ranked: Vec<Suggestion> = rated.into_iter().map(|(_, s)| s).collect();
        let best = match settled {
            Some(_) => self.proof(SETTLED),
            None => ranked.first().copied().or_else(|| self.proof(LIKELY)),
        };
        ranked.retain(|s| best.is_none_or(|b| b.check != s.check));
        ranked.truncate(RUNNERS_UP);
        Advice {
            best,
            runners_up: ranked,
            settled,
        }
    }

    /// The next unasked proof of any suspect at least this probable.
    fn proof(&self, probable: f64) -> Option<Suggestion> {
        let sure = self
            .belief
            .suspects
            .iter()
            .filter(|s| s.probability >= probable);
        let mut proofs = sure.flat_map(|s| cure(s.mode).proof.iter().map(|c| (s.mode, *c)));
        let (mode, check) = proofs
            .find(|(_, c)| self.unasked(*c) && (*c == Check::RefillTest || self.open(*c, true)))?;
        Some(Suggestion {
            why: Reason::ProvesIt { mode },
            ..self.suggestion(check)
        })
    }

    fn unasked(&self, check: Check) -> bool {
        !self.evidence.iter().any(|e| e.check == check)
            && !self.observed.outranks(check, &self.engine.plant)
    }

    fn said(&self, check: Check, answer: Answer) -> bool {
        self.evidence
            .iter()
            .any(|e| e.check == check && e.answer == answer)
    }

    /// Bits per minute, walk included; `None` when not worth asking. A look
    /// that must come before touching anything earns by what it opens too.
    fn rate(&self, s: &Suggestion, gated: &[Suggestion]) -> Option<f64> {
        let minutes = s.minutes + s.walk_minutes;
        let own = (s.gain_bits >= WORTH_ASKING).then(|| s.gain_bits / minutes);
        if !is_look(s.check) {
            return own;
        }
        let opened = gated.iter().map(|g| {
            let on = s.check.place().walk_minutes(g.check.place()) + g.minutes;
            g.gain_bits / (minutes + on)
        });
        opened.chain(own).max_by(f64::total_cmp)
    }

    /// Whether what can be seen only before hands are on it was looked at.
    fn looked(&self) -> bool {
        !self.unasked(Check::BasinOnArrival)
            && (!self.unasked(Check::CallAsFound) || self.basin_normal())
    }

    /// Whether the check makes sense now, supposing the as-found looks were
    /// or were not had.
    fn open(&self, check: Check, looked: bool) -> bool {
        if !self.unasked(check) {
            return false;
        }
        let plant = &self.engine.plant;
        let electrode = match plant.level_control {
            LevelControl::ElectrodeRelay => true,
        };
        match check {
            Check::MachinesOut => plant.machines > 1,
            Check::BasinOnArrival => Check::LevelNow.stage_after(self.evidence) == Stage::AsFound,
            Check::LevelNow => !self.unasked(Check::BasinOnArrival),
            Check::CoilVoltage | Check::CoilPull | Check::FlowOnCall => {
                self.said(Check::CallAsFound, Answer::Calls)
                    || self.said(Check::ProbeDried, Answer::Calls)
                    || self.said(Check::Substitution, Answer::FollowsResistor)
            }
            Check::ProbeDried | Check::ProbeFilm | Check::Substitution => electrode && looked,
            Check::ForceValve | Check::StrainerBlowOff => looked,
            Check::RefillTest => {
                looked && !self.basin_normal() && self.belief.suspects[0].probability >= 0.5
            }
            _ => true,
        }
    }

    fn basin_normal(&self) -> bool {
        match self.observed.soft(Reading::BasinLevel, &self.engine.plant) {
            Some(Soft::Answer(_, weight)) => weight[1] > 0.5,
            _ => self.said(Check::BasinOnArrival, Answer::BasinNormal),
        }
    }

    fn suggestion(&self, check: Check) -> Suggestion {
        let stage = check.stage_after(self.evidence);
        let joint = self
            .engine
            .joint(check, stage, &self.masses[stage as usize]);
        let mut answer = [0.0; 4];
        for row in &joint {
            for (a, p) in answer.iter_mut().zip(row) {
                *a += p;
            }
        }
        let all: Vec<f64> = joint.iter().flatten().copied().collect();
        // H(class) - H(class | answer), with H(class, answer) from the joint.
        let gain_bits = (self.entropy + entropy_bits(&answer) - entropy_bits(&all)).max(0.0);
        let walk_minutes = self.at.walk_minutes(check.place());
        let why = self.reason(check, &joint, walk_minutes);
        Suggestion {
            check,
            minutes: check.minutes(),
            walk_minutes,
            gain_bits,
            why,
        }
    }

    fn reason(&self, check: Check, joint: &[[f64; 4]], walk_minutes: f64) -> Reason {
        let [a, b, ..] = self.belief.suspects[..] else {
            return Reason::CheapHere;
        };
        let (of_a, of_b) = (self.given(joint, &a), self.given(joint, &b));
        let apart: f64 = of_a
            .iter()
            .zip(of_b)
            .map(|(x, y)| (x - y).abs())
            .sum::<f64>()
            / 2.0;
        let as_found = is_look(check);
        if as_found && check.stage_after(self.evidence) == Stage::AsFound {
            Reason::BeforeTouching
        } else if a.probability >= 0.5 && apart > 0.3 {
            Reason::ConfirmsTop { mode: a.mode }
        } else if apart > 0.3 {
            Reason::SplitsTop2 {
                a: a.mode,
                b: b.mode,
            }
        } else if walk_minutes == 0.0 {
            Reason::CheapHere
        } else {
            Reason::WorthTheWalk { to: check.place() }
        }
    }

    /// Chance of each answer given that the suspect is there.
    fn given(&self, joint: &[[f64; 4]], suspect: &Suspect) -> [f64; 4] {
        let mut sum = [0.0; 4];
        for (class, row) in self.engine.space.classes.iter().zip(joint) {
            if class.bits(3) & suspect.mode.bit() != 0 {
                for (s, p) in sum.iter_mut().zip(row) {
                    *s += p;
                }
            }
        }
        let total: f64 = sum.iter().sum();
        if total > 0.0 {
            sum.map(|s| s / total)
        } else {
            sum
        }
    }
}

/// Whether this is a look that disturbing anything would spoil.
fn is_look(check: Check) -> bool {
    matches!(check, Check::BasinOnArrival | Check::CallAsFound)
}
