//! What to check next: most doubt about the leading cause removed for the
//! minutes, with the walk, what must be opened, and danger.

use serde::{Deserialize, Serialize};

use super::answer::Answer;
use super::belief::{Belief, Suspect, entropy_bits};
use super::check::{Access, Check};
use super::cure::cure;
use super::evidence::{Case, Evidence, Stage};
use super::heard::epoch_of;
use super::mode::{Mode, Place};
use super::observed::Observed;
use super::plant::Plant;
use super::tracer::Tracer;
use super::world::Worlds;
use crate::quantity::sort_by;

/// A suspect this probable needs proving, not more searching.
const SETTLED: f64 = 0.9;
/// How often a check is worth doing in one visit, between corrections.
const TAKES: usize = 3;
/// Minutes of other work that one would rather do than touch anything, when
/// what is wrong surely comes and goes: touching may chase it away.
const UNTOUCHED: f64 = 8.0;
/// A check that promises less than this many bits is not worth asking.
const WORTH_ASKING: f64 = 0.01;
/// When nothing is worth asking, a suspect this probable is put to the proof.
const LIKELY: f64 = 0.5;
/// How many other checks are offered beside the best.
const RUNNERS_UP: usize = 4;
/// How many checks of one place are thought of as one trip.
const TRIP: usize = 3;

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
    /// What it said fits nothing else, or all hangs on it: take it again.
    TakeAgain,
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
    /// Minutes it takes there, opening what is not open yet included.
    pub minutes: f64,
    /// Minutes to walk there.
    pub walk_minutes: f64,
    /// Bits of doubt about the leading cause it is expected to remove.
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

/// The check to do next from where the mechanic stands; see
/// [`Tracer::advise`].
pub fn advise(plant: &Plant, observed: &Observed, evidence: &[Evidence], at: Place) -> Advice {
    let case = Case {
        observed: *observed,
        evidence: evidence.to_vec(),
        ..Case::default()
    };
    Tracer::new(plant, &case).advise(at)
}

/// Per leading set its share and its chance of each answer.
pub(crate) type Answers = Vec<(f64, [f64; 3])>;

impl Tracer {
    /// The check with the best expected information per minute from where the
    /// mechanic stands; checks elsewhere are weighed as a trip of up to
    /// three. Goes on until a cause is proven ([`Tracer::proven`]) or nothing
    /// is worth its minutes. A check that was answered is suggested again only
    /// where a second reading is worth it, at most twice; one whose number was
    /// read, or answered with [`Answer::CouldNot`], never. So it ends.
    pub fn advise(&self, at: Place) -> Advice {
        Desk::new(self, at).advice()
    }

    /// What each check that makes sense now would promise, in the order of
    /// the list; [`Tracer::advise`] chooses among these.
    pub fn promises(&self, at: Place) -> Vec<Suggestion> {
        let desk = Desk::new(self, at);
        let looked = desk.looked();
        let open = self.open_checks().into_iter();
        open.chain(self.answered_checks())
            .filter(|c| desk.sensible(*c, looked))
            .map(|c| desk.promise(c).suggestion)
            .collect()
    }

    /// Chance of each answer of a check done now, over all that is believed.
    pub fn chances(&self, check: Check) -> [f64; 3] {
        let answers = self.answers_at(check);
        std::array::from_fn(|a| answers.iter().map(|(p, c)| p * c[a]).sum())
    }

    /// Minutes `check` takes once there, opening what is not open yet.
    pub fn minutes(&self, check: Check) -> f64 {
        let access = check.access();
        let open = access == Access::Open
            || self
                .case
                .evidence
                .iter()
                .any(|e| e.check.access() == access && e.answer != Answer::CouldNot);
        check.minutes() + if open { 0.0 } else { access.minutes() }
    }

    /// The stage of a check done now.
    pub fn stage(&self, check: Check) -> Stage {
        if self.case.corrections.is_empty() {
            check.stage_after(&self.case.evidence)
        } else {
            Stage::Corrected
        }
    }

    /// The checks not done yet whose number was not read either.
    pub(crate) fn open_checks(&self) -> Vec<Check> {
        self.checks
            .iter()
            .copied()
            .filter(|c| self.unasked(*c))
            .collect()
    }

    /// The checks that were answered, and may be done again.
    fn answered_checks(&self) -> Vec<Check> {
        let again = |c: &Check| {
            let mut takes = 0;
            for e in self.since().iter().filter(|e| e.check == *c) {
                // What can't be done now is not asked for again.
                takes += if e.answer == Answer::CouldNot {
                    TAKES
                } else {
                    1
                };
            }
            (1..TAKES).contains(&takes) && c.may_differ()
        };
        self.checks.iter().copied().filter(again).collect()
    }

    /// What was answered since the last correction: after one a check may be
    /// done as if for the first time.
    fn since(&self) -> &[Evidence] {
        let after = self.case.corrections.iter().map(|c| c.after);
        let last = after.max().unwrap_or(0);
        self.case.evidence.get(last..).unwrap_or_default()
    }

    fn unasked(&self, check: Check) -> bool {
        let asked = self.since().iter().any(|e| e.check == check);
        let read =
            self.case.corrections.is_empty() && self.case.observed.outranks(check, &self.plant);
        !asked && !read
    }

    /// Chance of each answer of a check done now, per leading set.
    pub(crate) fn answers_at(&self, check: Check) -> Answers {
        let now = epoch_of(&self.case, self.case.evidence.len(), self.stage(check));
        let worlds = Worlds::at(self, &now);
        answers_in(self, &worlds, check)
    }
}

fn answers_in(tracer: &Tracer, worlds: &Worlds, check: Check) -> Answers {
    let chances = worlds.answers(tracer, check);
    worlds
        .sets
        .iter()
        .map(|(_, p, _)| *p)
        .zip(chances)
        .collect()
}

/// Everything the choice looks at.
struct Desk<'a> {
    tracer: &'a Tracer,
    belief: Belief,
    at: Place,
    /// Worlds of the stages a check done now may belong to.
    worlds: Vec<(Stage, Worlds)>,
    /// Leading cause of each leading set, as a place in `causes`.
    lead: Vec<usize>,
    causes: usize,
    entropy: f64,
    /// Nothing has been touched yet.
    untouched: bool,
    /// Part of the suspicion that is of what comes and goes.
    comes_and_goes: f64,
}

/// What a check promises.
struct Promise {
    suggestion: Suggestion,
    cost: f64,
}

impl<'a> Desk<'a> {
    fn new(tracer: &'a Tracer, at: Place) -> Self {
        let belief = tracer.belief();
        let mut stages: Vec<Stage> = Vec::new();
        for check in tracer.checks.iter().copied() {
            let stage = tracer.stage(check);
            if !stages.contains(&stage) {
                stages.push(stage);
            }
        }
        let worlds: Vec<(Stage, Worlds)> = stages
            .into_iter()
            .map(|s| {
                let epoch = epoch_of(&tracer.case, tracer.case.evidence.len(), s);
                (s, Worlds::at(tracer, &epoch))
            })
            .collect();
        let modes = &tracer.lattice.modes;
        let chance = |m: usize| {
            let suspect = modes.get(m).and_then(|m| belief.of(*m));
            suspect.map_or(-1.0, |s| s.probability)
        };
        let lead: Vec<usize> = tracer
            .leading
            .iter()
            .map(|(set, _)| {
                let lead = set
                    .iter()
                    .copied()
                    .max_by(|a, b| chance(*a).total_cmp(&chance(*b)));
                lead.filter(|m| *m < modes.len()).unwrap_or(modes.len())
            })
            .collect();
        let causes = modes.len() + 1;
        let mut share = vec![0.0; causes];
        let total: f64 = tracer.leading.iter().map(|(_, p)| p).sum();
        for (c, (_, p)) in lead.iter().zip(&tracer.leading) {
            share[*c] += p / total;
        }
        let sum = |of: fn(&Suspect) -> f64| belief.suspects.iter().map(of).sum::<f64>();
        Self {
            untouched: tracer.case.evidence.iter().all(|e| !e.check.disturbs()),
            comes_and_goes: sum(|s| s.intermittent) / sum(|s| s.probability).max(1e-9),
            entropy: entropy_bits(&share),
            tracer,
            belief,
            at,
            worlds,
            lead,
            causes,
        }
    }

    fn advice(&self) -> Advice {
        let top = self.belief.suspects.first();
        let settled = top.filter(|t| t.probability >= SETTLED).map(|t| t.mode);
        let looked = self.looked();
        let open = self.tracer.open_checks();
        let gated: Vec<Promise> = open
            .iter()
            .filter(|c| !looked && self.sensible(**c, true) && !self.sensible(**c, false))
            .map(|c| self.promise(*c))
            .collect();
        let answered = self.tracer.answered_checks();
        let mut found: Vec<Promise> = open
            .iter()
            .chain(&answered)
            .filter(|c| self.sensible(**c, looked))
            .map(|c| self.promise(*c))
            .collect();
        let worth = |p: &Promise| p.suggestion.gain_bits >= WORTH_ASKING;
        sort_by(&mut found, |a, b| {
            (b.suggestion.gain_bits / b.cost).total_cmp(&(a.suggestion.gain_bits / a.cost))
        });
        let mut rated: Vec<(f64, Suggestion)> = Vec::new();
        for p in &found {
            let look = p.suggestion.check.is_look();
            let opens = gated
                .iter()
                .filter(|g| look && worth(g))
                .map(|g| self.pair(p, g));
            let own = worth(p).then(|| self.trip(p, &found));
            if let Some(rate) = opens.chain(own).max_by(f64::total_cmp) {
                rated.push((rate, p.suggestion));
            }
        }
        sort_by(&mut rated, |a, b| b.0.total_cmp(&a.0));
        let mut ranked: Vec<Suggestion> = rated.into_iter().map(|(_, s)| s).collect();
        let best = match settled {
            Some(mode) if self.proven(mode) => self.refill(mode),
            Some(_) => self.proof(SETTLED).or_else(|| ranked.first().copied()),
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

    fn proven(&self, mode: Mode) -> bool {
        self.tracer.is_proven(self.belief.suspects.first(), mode)
    }

    /// The refill test, where it has still to prove that this is all.
    fn refill(&self, mode: Mode) -> Option<Suggestion> {
        let check = Check::RefillTest;
        let wanted = cure(mode).refill && self.tracer.unasked(check);
        (wanted && self.tracer.checks.contains(&check)).then(|| Suggestion {
            why: Reason::ProvesIt { mode },
            ..self.promise(check).suggestion
        })
    }

    /// The next unasked check that confirms any suspect this probable.
    fn proof(&self, probable: f64) -> Option<Suggestion> {
        let sure = self
            .belief
            .suspects
            .iter()
            .filter(|s| s.probability >= probable);
        let mut proofs = sure.flat_map(|s| {
            let confirm = cure(s.mode).confirm.iter();
            confirm.map(|c| (s.mode, *c))
        });
        let here = |c: &Check| self.tracer.checks.contains(c) && self.tracer.unasked(*c);
        let (mode, check) = proofs.find(|(_, c)| here(c) && self.sensible(*c, true))?;
        Some(Suggestion {
            why: Reason::ProvesIt { mode },
            ..self.promise(check).suggestion
        })
    }

    /// Bits per minute of a check, with the best of its place that would go
    /// with it on the same trip. Two checks share what there is to learn, so
    /// each takes its part of what the one before left.
    fn trip(&self, first: &Promise, all: &[Promise]) -> f64 {
        let place = first.suggestion.check.place();
        let part = |p: &Promise| (p.suggestion.gain_bits / self.entropy.max(1e-9)).min(1.0);
        let (mut left, mut cost) = (1.0 - part(first), first.cost);
        let mut best = (1.0 - left) / cost;
        if first.suggestion.walk_minutes > 0.0 {
            let others = all.iter().filter(|p| {
                p.suggestion.check.place() == place && p.suggestion.check != first.suggestion.check
            });
            for p in others.take(TRIP - 1) {
                left *= 1.0 - part(p);
                cost += p.cost - p.suggestion.walk_minutes;
                best = best.max((1.0 - left) / cost);
            }
        }
        best * self.entropy
    }

    /// Bits per minute of a look and a check that must wait for it.
    fn pair(&self, look: &Promise, then: &Promise) -> f64 {
        let on = look
            .suggestion
            .check
            .place()
            .walk_minutes(then.suggestion.check.place());
        let cost = look.cost + on + then.cost - then.suggestion.walk_minutes;
        (look.suggestion.gain_bits + then.suggestion.gain_bits) / cost
    }

    fn said(&self, check: Check, answer: Answer) -> bool {
        self.tracer
            .case
            .evidence
            .iter()
            .any(|e| e.check == check && e.answer == answer)
    }

    /// Whether what can be seen only before hands are on it was looked at.
    fn looked(&self) -> bool {
        let waits = |c: Check| self.tracer.checks.contains(&c) && self.tracer.unasked(c);
        !waits(Check::BasinOnArrival) && (!waits(Check::CallAsFound) || self.basin_normal())
    }

    /// Whether the check makes sense now, supposing the as-found looks were
    /// or were not had.
    fn sensible(&self, check: Check, looked: bool) -> bool {
        match check {
            Check::BasinOnArrival => self.tracer.stage(Check::LevelNow) == Stage::AsFound,
            Check::LevelNow => !self.tracer.unasked(Check::BasinOnArrival),
            Check::RefillTest => {
                let top = self.belief.suspects.first();
                looked && !self.basin_normal() && top.is_some_and(|s| s.probability >= 0.5)
            }
            _ if check.needs_call() => {
                self.said(Check::CallAsFound, Answer::Calls)
                    || self.said(Check::ProbeDried, Answer::Calls)
                    || self.said(Check::WiresOffHolder, Answer::Calls)
                    || self.said(Check::Substitution, Answer::FollowsResistor)
                    || !self.tracer.plant.electric_fill()
            }
            _ if check.disturbs() => looked,
            _ => true,
        }
    }

    fn basin_normal(&self) -> bool {
        match self.tracer.case.observed.read_low(&self.tracer.plant) {
            Some(low) => !low,
            None => self.said(Check::BasinOnArrival, Answer::BasinNormal),
        }
    }

    fn promise(&self, check: Check) -> Promise {
        let stage = self.tracer.stage(check);
        let worlds = self.worlds.iter().find(|(s, _)| *s == stage);
        let answers = worlds.map_or(Vec::new(), |(_, w)| answers_in(self.tracer, w, check));
        let mut joint = vec![[0.0; 3]; self.causes];
        for (lead, (p, chance)) in self.lead.iter().zip(&answers) {
            for (j, c) in joint[*lead].iter_mut().zip(chance) {
                *j += p * c;
            }
        }
        let answer: [f64; 3] = std::array::from_fn(|a| joint.iter().map(|j| j[a]).sum());
        let all: Vec<f64> = joint.iter().flatten().copied().collect();
        // H(cause) - H(cause | answer), with H(cause, answer) from the joint.
        let gain_bits = (self.entropy + entropy_bits(&answer) - entropy_bits(&all)).max(0.0);
        let minutes = self.tracer.minutes(check);
        let walk_minutes = self.at.walk_minutes(check.place());
        let why = self.reason(check, &answers, walk_minutes);
        let mut danger: f64 = check.cautions().iter().map(|c| c.reluctance()).sum();
        if check.disturbs() && self.untouched {
            danger += UNTOUCHED * self.comes_and_goes;
        }
        Promise {
            cost: minutes + walk_minutes + danger,
            suggestion: Suggestion {
                check,
                minutes,
                walk_minutes,
                gain_bits,
                why,
            },
        }
    }

    fn reason(&self, check: Check, answers: &Answers, walk_minutes: f64) -> Reason {
        let [a, b, ..] = self.belief.suspects[..] else {
            return Reason::CheapHere;
        };
        let (of_a, of_b) = (self.given(answers, a.mode), self.given(answers, b.mode));
        let apart: f64 = of_a
            .iter()
            .zip(of_b)
            .map(|(x, y)| (x - y).abs())
            .sum::<f64>()
            / 2.0;
        if !self.tracer.unasked(check) {
            Reason::TakeAgain
        } else if check.is_look() && self.tracer.stage(check) == Stage::AsFound {
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
    fn given(&self, answers: &Answers, suspect: Mode) -> [f64; 3] {
        let mut sum = [0.0; 3];
        let sets = self.tracer.leading.iter().zip(answers);
        for ((set, _), (p, chance)) in sets {
            if set
                .iter()
                .any(|m| self.tracer.lattice.modes.get(*m) == Some(&suspect))
            {
                for (s, c) in sum.iter_mut().zip(chance) {
                    *s += p * c;
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
