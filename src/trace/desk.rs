//! Choosing the next check, by what each promises. Which make sense now is in
//! [`super::sensible`], what proves a cause or a repair in [`super::proof`].

use super::ahead::{FIRST, Sketch};
use super::answer::Answer;
use super::belief::{Belief, entropy_bits};
use super::check::Check;
use super::evidence::Stage;
use super::mode::{Mode, Place};
use super::next::{Advice, Goal, Reason, Suggestion};
use super::tracer::Tracer;
use super::world::{Moments, Worlds};
use crate::quantity::sort_by;

/// A suspect this probable needs proving, not more searching.
const SETTLED: f64 = 0.9;
/// Minutes of other work that one would rather do than touch anything, when
/// what is wrong surely comes and goes: touching may chase it away.
const UNTOUCHED: f64 = 8.0;
/// A check that promises less than this many bits is not worth asking.
const WORTH_ASKING: f64 = 0.01;
/// A check that promises this many bits is done also where stripping all would
/// be as quick: what is named wrongly is put right in vain.
const TELLS: f64 = 0.1;
/// When nothing is worth asking, a suspect this probable is put to the proof.
pub(super) const LIKELY: f64 = 0.5;
/// A suspect this probable is looked for before a repair is proven.
const DOUBT: f64 = 0.25;
/// What else may be left when a trace closes, all in all. A lower limit costs a
/// single fault more minutes than the second ones it finds are worth.
const LEFT: f64 = 0.05;
/// The most belief that may be outside the sketch for it to think ahead. Where
/// more is, or more checks are worth asking than it follows, what tells most
/// for its minutes does as well.
const OUTSIDE: f64 = 0.02;
/// When a repair did not bring it back and nothing is worth asking, what is
/// this probable is looked for all the same.
const REMOTE: f64 = 1e-3;
/// How many other checks are offered beside the best.
const RUNNERS_UP: usize = 4;
/// How many checks of one place are thought of as one trip.
const TRIP: usize = 3;

/// Everything the choice looks at.
pub(crate) struct Desk<'a> {
    pub tracer: &'a Tracer,
    pub(super) belief: Belief,
    pub at: Place,
    pub goal: Goal,
    /// Worlds of the stages a check done now may belong to.
    pub moments: Moments,
    /// Per moment and world its leading cause, as a place in the lattice's
    /// order; one more than the last where nothing is left.
    pub leads: Vec<Vec<usize>>,
    pub entropy: f64,
    /// Nothing has been touched yet.
    untouched: bool,
    /// Part of the suspicion that is of what comes and goes.
    comes_and_goes: f64,
}

/// What a check promises.
pub(crate) struct Promise {
    /// Without its reason, which only those offered need.
    pub suggestion: Suggestion,
    /// Minutes, and the danger in minutes.
    pub cost: f64,
    /// Chance of each answer per world of its moment.
    pub chances: Vec<[f64; 3]>,
}

impl<'a> Desk<'a> {
    pub fn new(tracer: &'a Tracer, at: Place, goal: Goal) -> Self {
        let belief = tracer.belief();
        let mut moments = Moments::default();
        for check in &tracer.checks {
            moments.of(tracer, tracer.stage(*check));
        }
        let modes = &tracer.lattice.modes;
        let chance = |m: &usize| belief.of(modes[*m]).map_or(0.0, |s| s.probability);
        let mut leads = Vec::new();
        for worlds in &moments.0 {
            let each = worlds.all.iter().map(|world| {
                let there = world.there();
                let lead = there.max_by(|a, b| chance(a).total_cmp(&chance(b)));
                lead.unwrap_or(modes.len())
            });
            leads.push(each.collect::<Vec<usize>>());
        }
        let mut share = vec![0.0; modes.len() + 1];
        if let (Some(worlds), Some(leads)) = (moments.0.first(), leads.first()) {
            for (world, lead) in worlds.all.iter().zip(leads) {
                share[*lead] += world.p;
            }
        }
        let (mut comes, mut all) = (0.0, 1e-9);
        for s in &belief.suspects {
            comes += s.intermittent;
            all += s.probability;
        }
        Self {
            untouched: tracer.case.evidence.iter().all(|e| !e.check.disturbs()),
            comes_and_goes: comes / all,
            entropy: entropy_bits(&share),
            tracer,
            belief,
            at,
            goal,
            moments,
            leads,
        }
    }

    /// What each sensible check promises, in the order of the list.
    pub fn promises(&self) -> Vec<Suggestion> {
        let looked = self.looked();
        let all = self.all(|c| self.sensible(c, looked));
        all.iter().map(|p| self.told(p)).collect()
    }

    fn all(&self, which: impl Fn(Check) -> bool) -> Vec<Promise> {
        let mut checks = self.tracer.open_checks();
        checks.extend(self.tracer.answered_checks(self.goal.takes));
        checks.retain(|c| which(*c));
        checks.into_iter().map(|c| self.promise(c)).collect()
    }

    pub fn advice(&self) -> Advice {
        let top = self.belief.suspects.first();
        let settled = top.filter(|t| t.probability >= SETTLED).map(|t| t.mode);
        let mut ranked = self.ranked();
        let best = match settled {
            Some(mode) if self.proven(mode) => self.refill(mode),
            Some(_) => self.proof(SETTLED).or_else(|| ranked.first().copied()),
            None => ranked.first().copied().or_else(|| self.proof(LIKELY)),
        };
        let doubt = top.map_or(0.0, |s| s.probability);
        let repaired = self.tracer.case.corrections.last();
        let repaired = repaired.filter(|_| doubt < DOUBT).map(|c| c.mode);
        let unproven = self.unproven();
        let best = match repaired {
            Some(last) => {
                let refill = unproven.and_then(|mode| self.refill(mode));
                let shown = refill.or_else(|| self.restart(last)).or(best);
                shown.or_else(|| self.in_vain().then(|| self.proof(REMOTE)).flatten())
            }
            None => best,
        };
        ranked.retain(|s| best.is_none_or(|b| b.check != s.check));
        ranked.truncate(RUNNERS_UP);
        let proven = best.is_none_or(|s| s.check == Check::RefillTest);
        let closes = repaired.is_some()
            && unproven.is_none()
            && self.said_since(Answer::HeadsUsual)
            && (best.is_none() || self.tracer.left() < LEFT);
        let one_of = match settled.is_none() && proven && !closes {
            true => self.one_of(),
            false => Vec::new(),
        };
        let ripe = settled.filter(|_| proven);
        Advice {
            best,
            runners_up: ranked,
            settled,
            ripe: ripe.or(one_of.first().copied()),
            one_of,
            closes,
        }
    }

    /// The checks worth their minutes, best first.
    fn ranked(&self) -> Vec<Suggestion> {
        let looked = self.looked();
        let mut found = self.all(|c| self.sensible(c, looked));
        let gated = self.all(|c| !looked && self.sensible(c, true) && !self.sensible(c, false));
        let few = found.len() <= FIRST;
        let worth = |p: &Promise| few || p.suggestion.gain_bits >= WORTH_ASKING;
        sort_by(&mut found, |a, b| {
            (b.suggestion.gain_bits / b.cost).total_cmp(&(a.suggestion.gain_bits / a.cost))
        });
        let mut rated: Vec<(f64, usize)> = Vec::new();
        for (i, p) in found.iter().enumerate() {
            let check = p.suggestion.check;
            let look = check.is_look() && self.tracer.unasked(check);
            let opens = gated
                .iter()
                .filter(|g| look && worth(g))
                .map(|g| self.pair(p, g));
            let own = worth(p).then(|| self.trip(p, &found));
            if let Some(rate) = opens.chain(own).max_by(f64::total_cmp) {
                rated.push((rate, i));
            }
        }
        sort_by(&mut rated, |a, b| b.0.total_cmp(&a.0));
        let rated: Vec<&Promise> = rated.iter().map(|(_, i)| &found[*i]).collect();
        let mut waiting: Vec<&Promise> = gated.iter().filter(|g| worth(g)).collect();
        sort_by(&mut waiting, |a, b| {
            (b.suggestion.gain_bits / b.cost).total_cmp(&(a.suggestion.gain_bits / a.cost))
        });
        let mut order = Vec::new();
        if rated.len() <= FIRST
            && waiting.len() <= FIRST / 2
            && let Some(sketch) = Sketch::new(self, &rated, &waiting)
            && sketch.outside() <= OUTSIDE
        {
            match sketch.best(self, rated.len()) {
                Some(best) => order = best,
                None if rated.iter().any(|p| p.suggestion.gain_bits >= TELLS) => {}
                None => return Vec::new(),
            }
        }
        order.extend(order.len()..rated.len());
        order.truncate(1 + RUNNERS_UP);
        order.into_iter().map(|i| self.told(rated[i])).collect()
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

    pub(super) fn promise(&self, check: Check) -> Promise {
        let stage = self.tracer.stage(check);
        let moment = self.moments.0.iter().zip(&self.leads);
        let (chances, answer, all) = match moment.into_iter().find(|(w, _)| w.epoch.stage == stage)
        {
            Some((worlds, leads)) => {
                let chances = worlds.answers(self.tracer, check);
                let mut joint = vec![[0.0; 3]; self.tracer.lattice.modes.len() + 1];
                let mut answer = [0.0; 3];
                for (i, chance) in chances.iter().enumerate() {
                    let (joint, p) = (&mut joint[leads[i]], worlds.all[i].p);
                    for a in 0..3 {
                        joint[a] += p * chance[a];
                        answer[a] += p * chance[a];
                    }
                }
                (chances, answer, joint.concat())
            }
            None => (Vec::new(), [0.0; 3], Vec::new()),
        };
        // H(cause) - H(cause | answer), with H(cause, answer) from the joint.
        let gain_bits = (self.entropy + entropy_bits(&answer) - entropy_bits(&all)).max(0.0);
        let minutes = self.tracer.minutes(check);
        let walk_minutes = self.at.walk_minutes(check.place());
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
                why: Reason::CheapHere,
            },
            chances,
        }
    }

    /// A promise as a suggestion, with its reason.
    fn told(&self, promise: &Promise) -> Suggestion {
        let Suggestion {
            check,
            walk_minutes,
            ..
        } = promise.suggestion;
        Suggestion {
            why: self.reason(check, &promise.chances, walk_minutes),
            ..promise.suggestion
        }
    }

    fn reason(&self, check: Check, chances: &[[f64; 3]], walk_minutes: f64) -> Reason {
        let [a, b, ..] = self.belief.suspects[..] else {
            return Reason::CheapHere;
        };
        let stage = self.tracer.stage(check);
        let moment = self.moments.0.iter().find(|w| w.epoch.stage == stage);
        let [of_a, of_b] = [a, b].map(|s| self.given(moment, chances, s.mode));
        let apart: f64 = of_a
            .iter()
            .zip(of_b)
            .map(|(x, y)| (x - y).abs())
            .sum::<f64>()
            / 2.0;
        if !self.tracer.unasked(check) {
            Reason::TakeAgain
        } else if check.is_look() && stage == Stage::AsFound {
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
    fn given(&self, worlds: Option<&Worlds>, chances: &[[f64; 3]], suspect: Mode) -> [f64; 3] {
        let mut sum = [0.0; 3];
        let modes = &self.tracer.lattice.modes;
        let worlds = worlds.iter().flat_map(|w| &w.all);
        for (world, chance) in worlds.zip(chances) {
            if world.there().any(|m| modes[m] == suspect) {
                for (s, c) in sum.iter_mut().zip(chance) {
                    *s += world.p * c;
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
