//! Thinking ahead: the minutes that are expected to a proven cause after each
//! check, over what it may say and what one would do then.
//!
//! Policy improvement (Bertsekas, Tsitsiklis and Wu, Rollout algorithms for
//! combinatorial optimization, 1997; from memory): each of the first few
//! checks, and after what it is likely to say each of a few more, is followed
//! by the plain walk that does what tells most for its minutes, worked out to
//! its end. The search runs on a sketch: the likeliest states of the world
//! with their chances of each answer, the causes beyond it in one lump. What
//! was done before counts in it as in the belief: a check done again half
//! repeats itself, and not more often than the goal allows.

use super::check::{Access, Check};
use super::closing::confirms;
use super::cure::cure;
use super::desk::{Desk, Promise};
use super::heard::COPIED;
use super::hypothesis::FLICKER;
use super::mode::Place;
use super::next::Goal;
use super::sensible::opens_call;
use super::world::{State, states};

/// Worlds and states a sketch holds at most, and the least share of a state.
const WORLDS: usize = 48;
const STATES: usize = 40;
const LEAST: f64 = 1e-3;
/// Causes that are told apart.
const CAUSES: usize = 14;
/// Checks weighed as the next step, and checks thought of in all.
pub(crate) const FIRST: usize = 6;
const LATER: usize = 12;
/// Minutes of stripping everything and coming back for it, where no check proves
/// a cause. Judgement.
const STRIP: f64 = 240.0;
/// What happens this seldom is not followed to its end but costs so much.
const SELDOM: f64 = 0.01;
const REST: f64 = 40.0;
/// A check that promises less than this many bits is not worth asking.
const WORTH_ASKING: f64 = 0.01;
/// How many steps after the first are chosen by trying the likeliest few, how
/// many are tried, and what is too seldom for it.
const DEEP: usize = 1;
const WIDE: usize = 3;
const HEAVY: f64 = 0.1;

/// One check of the sketch.
struct Step {
    check: Check,
    place: Place,
    /// Minutes without walk and without opening.
    minutes: f64,
    /// Danger, in minutes.
    danger: f64,
    access: Access,
    disturbs: bool,
    /// Whether it is a look as found, not had yet.
    looks: bool,
    /// Must wait for the looks as found, or for a call for water.
    waits: bool,
    wants_call: bool,
    answers: usize,
    /// How often it may still be done.
    room: u8,
    /// Causes each answer confirms, as bits.
    confirms: [u32; 3],
    /// Per moment and answer, the chance in each state, the lump last, as if
    /// it was never done.
    chance: [[Vec<f64>; 3]; 2],
    /// Per moment, one more than the answer that it gave last.
    before: [u8; 2],
}

/// The sketch.
pub(crate) struct Sketch {
    /// Cause of each state; causes are counted from the likeliest.
    lead: Vec<usize>,
    /// Causes that are there in each state.
    there: Vec<Vec<usize>>,
    weight: Vec<f64>,
    steps: Vec<Step>,
    /// Causes that a check has confirmed, as bits.
    confirmed: u32,
    goal: Goal,
}

/// Where one stands in the search.
#[derive(Clone, Copy)]
struct Stand {
    at: Place,
    opened: u32,
    touched: bool,
    looked: bool,
    calls: bool,
    /// How often each step was done; per moment, one more than the answer
    /// that it gave last.
    done: [u8; LATER],
    said: [[u8; LATER]; 2],
    confirmed: u32,
}

impl Sketch {
    /// Of the checks that are `found` worth it, best first, and of those that
    /// must wait for the looks.
    pub fn new(desk: &Desk, found: &[&Promise], waiting: &[&Promise]) -> Option<Self> {
        let tracer = desk.tracer;
        let worlds = desk.moments.0.first()?;
        let leads = desk.leads.first()?;
        // The moment that hands are on it comes last.
        let (mut now, mut then) = (0, desk.moments.0.len() - 1);
        if desk.moments.0[now].epoch.stage > desk.moments.0[then].epoch.stage {
            (now, then) = (then, now);
        }
        let mut order: Vec<usize> = (0..worlds.all.len()).collect();
        order.sort_unstable_by(|a, b| worlds.all[*b].p.total_cmp(&worlds.all[*a].p));
        let mut share = vec![0.0; tracer.lattice.modes.len() + 1];
        for (world, lead) in worlds.all.iter().zip(leads) {
            share[*lead] += world.p;
        }
        let mut causes: Vec<usize> = (0..share.len()).filter(|c| share[*c] > LEAST).collect();
        causes.sort_unstable_by(|a, b| share[*b].total_cmp(&share[*a]));
        causes.truncate(CAUSES);
        let mut all = Vec::new();
        for i in order.iter().take(WORLDS) {
            let Some(cause) = causes.iter().position(|c| *c == leads[*i]) else {
                continue;
            };
            let world = &worlds.all[*i];
            let states = states(tracer, world, &desk.moments.0, LEAST);
            all.extend(states.into_iter().map(|s| (s, cause, *i)));
        }
        all.sort_unstable_by(|a, b| b.0.p.total_cmp(&a.0.p));
        all.truncate(STATES);
        // What was left out counts with what was kept of its cause.
        let mut held = vec![0.0; causes.len()];
        for (state, cause, _) in &all {
            held[*cause] += state.p;
        }
        for (state, cause, _) in &mut all {
            state.p *= share[causes[*cause]] / held[*cause];
        }
        let mut weight: Vec<f64> = all.iter().map(|(s, _, _)| s.p).collect();
        let held: f64 = weight.iter().sum();
        weight.push((1.0 - held).max(0.0));
        let mut checks: Vec<(Check, bool)> = Vec::new();
        let first = found
            .iter()
            .take(FIRST)
            .map(|p| (p.suggestion.check, false));
        let waits = waiting
            .iter()
            .take(FIRST / 2)
            .map(|p| (p.suggestion.check, true));
        for (check, waits) in first.chain(waits) {
            checks.push((check, waits));
        }
        let modes = &tracer.lattice.modes;
        for cause in &causes {
            let confirm = modes.get(*cause).map_or(&[][..], |m| cure(*m).confirm);
            for check in confirm
                .iter()
                .filter(|c| tracer.room(**c, desk.goal.takes) > 0)
            {
                let known = checks.iter().any(|(c, _)| c == check);
                if !known && checks.len() < LATER {
                    checks.push((*check, !desk.sensible(*check, desk.looked())));
                }
            }
        }
        let mut sketch = Self {
            lead: all.iter().map(|(_, c, _)| *c).collect(),
            there: Vec::new(),
            weight,
            steps: Vec::new(),
            confirmed: 0,
            goal: desk.goal,
        };
        for (c, cause) in causes.iter().enumerate() {
            let known = modes.get(*cause).is_some_and(|m| tracer.confirmed(*m));
            sketch.confirmed |= u32::from(known || !desk.goal.shown) << c;
        }
        for (_, _, i) in &all {
            let there = worlds.all[*i].there();
            let there = there.filter_map(|m| causes.iter().position(|c| *c == m));
            sketch.there.push(there.collect());
        }
        for (check, waits) in checks {
            let lump = found.iter().chain(waiting);
            let lump = lump.copied().find(|p| p.suggestion.check == check);
            let chance = [
                chances(desk, &all, lump, check, now)?,
                chances(desk, &all, lump, check, then)?,
            ];
            let before = [now, then].map(|m| {
                let said = desk.moments.0[m].before(tracer, check);
                let sure = said.and_then(|said| said.iter().position(|w| *w > 0.5));
                sure.map_or(0, |a| a as u8 + 1)
            });
            let mut confirms_of = [0; 3];
            for (c, cause) in causes.iter().enumerate() {
                let Some(mode) = modes.get(*cause) else {
                    continue;
                };
                for (a, answer) in check.answers().iter().enumerate() {
                    confirms_of[a] |= u32::from(confirms(*mode, check, *answer)) << c;
                }
            }
            sketch.steps.push(Step {
                check,
                place: check.place(),
                minutes: check.minutes(),
                danger: check.cautions().iter().map(|c| c.reluctance()).sum(),
                access: check.access(),
                disturbs: check.disturbs(),
                looks: check.is_look() && tracer.unasked(check),
                waits,
                wants_call: check.needs_call(),
                answers: check.answers().len(),
                room: tracer.room(check, desk.goal.takes) as u8,
                confirms: confirms_of,
                chance,
                before,
            });
        }
        Some(sketch)
    }

    /// How much of the belief is in no state of the sketch.
    pub fn outside(&self) -> f64 {
        self.weight.last().copied().unwrap_or(0.0)
    }

    /// The first checks, as places among those found, by the minutes expected
    /// to a proven cause, fewest first; `None` where nothing was put right yet
    /// and stripping what is left is quicker than any of them.
    pub fn best(&self, desk: &Desk, first: usize) -> Option<Vec<usize>> {
        let tracer = desk.tracer;
        let mut opened = 1 << Access::Open as u32;
        for step in &self.steps {
            opened |= u32::from(tracer.is_open(step.access)) << step.access as u32;
        }
        let stand = Stand {
            at: desk.at,
            opened,
            touched: desk.moments.0.len() < 2,
            looked: false,
            calls: desk.called(),
            done: [0; LATER],
            said: std::array::from_fn(|m| {
                std::array::from_fn(|i| self.steps.get(i).map_or(0, |s| s.before[m]))
            }),
            confirmed: self.confirmed,
        };
        let mut out = Vec::new();
        for i in 0..first.min(FIRST) {
            let minutes = self.after(i, &self.weight, &stand, DEEP);
            out.push((minutes + self.steps[i].danger, i));
        }
        out.sort_by(|a, b| a.0.total_cmp(&b.0));
        let repaired = !tracer.case.corrections.is_empty();
        let worth = repaired || out.first().is_none_or(|(minutes, _)| *minutes < STRIP);
        worth.then(|| out.into_iter().map(|(_, i)| i).collect())
    }

    /// Minutes of a step from here.
    fn cost(&self, step: &Step, stand: &Stand) -> f64 {
        let open = stand.opened >> step.access as u32 & 1 == 1;
        let opening = if open { 0.0 } else { step.access.minutes() };
        step.minutes + opening + stand.at.walk_minutes(step.place)
    }

    /// Minutes times weight of doing this step and all that follows, where so
    /// many of the steps after it are chosen among a few.
    fn after(&self, i: usize, weight: &[f64], stand: &Stand, deep: usize) -> f64 {
        let mut sum = weight.iter().sum::<f64>() * self.cost(&self.steps[i], stand);
        let mut left = vec![0.0; weight.len()];
        for a in 0..self.steps[i].answers {
            let then = self.then(i, a, weight, stand, &mut left);
            sum += self.roll(&left, &then, deep);
        }
        sum
    }

    /// Where one stands once a step gave an answer, and the weights left.
    fn then(&self, i: usize, a: usize, weight: &[f64], stand: &Stand, left: &mut [f64]) -> Stand {
        let step = &self.steps[i];
        let mut then = *stand;
        then.at = step.place;
        then.opened |= 1 << step.access as u32;
        then.touched |= step.disturbs;
        then.looked |= step.looks;
        then.done[i] += 1;
        then.confirmed |= step.confirms[a];
        then.calls |= opens_call(step.check, step.check.answers()[a]);
        let moment = usize::from(then.touched);
        then.said[moment][i] = a as u8 + 1;
        let (copied, fresh) = stand.again(moment, i, a);
        let chance = &step.chance[moment][a];
        for ((l, w), c) in left.iter_mut().zip(weight).zip(chance) {
            *l = w * (copied + fresh * c);
        }
        then
    }

    fn may(&self, i: usize, stand: &Stand) -> bool {
        let step = &self.steps[i];
        stand.done[i] < step.room
            && (!step.waits || stand.looked)
            && (!step.wants_call || stand.calls)
    }

    /// Minutes times weight from a state of the belief to the end, when the
    /// step that tells most for its minutes is done, again and again; of the
    /// first `deep` steps, the best of those that tell most.
    fn roll(&self, weight: &[f64], stand: &Stand, deep: usize) -> f64 {
        let total: f64 = weight.iter().sum();
        if total < SELDOM {
            return total * REST;
        }
        if self.is_found(weight, stand) {
            return 0.0;
        }
        let mut best = [(0.0, usize::MAX); WIDE];
        let whole = self.doubt(weight, &[], (0.0, 1.0));
        for (i, step) in self.steps.iter().enumerate() {
            if self.may(i, stand) {
                let moment = usize::from(stand.touched || step.disturbs);
                let left: f64 = (0..step.answers)
                    .map(|a| self.doubt(weight, &step.chance[moment][a], stand.again(moment, i, a)))
                    .sum();
                let gain = whole - left;
                let rate = gain / self.cost(step, stand);
                if gain > WORTH_ASKING * total {
                    let mut here = (rate, i);
                    for b in &mut best {
                        if here.0 > b.0 {
                            std::mem::swap(b, &mut here);
                        }
                    }
                }
            }
        }
        let (wide, deep) = match deep > 0 && total > HEAVY {
            true => (WIDE, deep - 1),
            false => (1, 0),
        };
        let tried = best.into_iter().take(wide).filter(|b| b.0 > 0.0);
        let each = tried.map(|(_, i)| self.after(i, weight, stand, deep));
        each.fold(total * STRIP, f64::min)
    }

    /// Doubt about the cause in bits times weight, after an answer of these
    /// chances; the lump is a cause of its own.
    fn doubt(&self, weight: &[f64], chance: &[f64], (copied, fresh): (f64, f64)) -> f64 {
        let mut share = [0.0; CAUSES + 1];
        for (i, w) in weight.iter().enumerate() {
            let c = chance.get(i).copied().unwrap_or(1.0);
            let cause = self.lead.get(i).copied().unwrap_or(CAUSES);
            share[cause] += w * (copied + fresh * c);
        }
        let total: f64 = share.iter().sum();
        if total <= 0.0 {
            return 0.0;
        }
        let each = share.iter().filter(|s| **s > 0.0);
        each.map(|s| s * f64::from(((total / s) as f32).log2()))
            .sum()
    }

    fn is_found(&self, weight: &[f64], stand: &Stand) -> bool {
        let mut share = [0.0; CAUSES + 1];
        for (w, there) in weight.iter().zip(&self.there) {
            for c in there {
                share[*c] += w;
            }
        }
        let sure = self.goal.sure * weight.iter().sum::<f64>();
        (0..CAUSES).any(|c| share[c] >= sure && stand.confirmed >> c & 1 == 1)
    }
}

impl Stand {
    /// How much an answer repeats what the step said before, and how much it
    /// is a fresh one.
    fn again(&self, moment: usize, i: usize, a: usize) -> (f64, f64) {
        match usize::from(self.said[moment][i]) {
            0 => (0.0, 1.0),
            said if said == a + 1 => (COPIED, 1.0 - COPIED),
            _ => (0.0, 1.0 - COPIED),
        }
    }
}

/// Per answer the chance of a check at a moment in each state, the lump last;
/// it answers like the whole belief without the rest.
fn chances(
    desk: &Desk,
    all: &[(State, usize, usize)],
    lump: Option<&Promise>,
    check: Check,
    moment: usize,
) -> Option<[Vec<f64>; 3]> {
    let tracer = desk.tracer;
    let worlds = &desk.moments.0[moment];
    let asked = worlds.ask_after(tracer, check, None)?;
    let mut chance: [Vec<f64>; 3] = Default::default();
    let mut said = [0.0; 3];
    for (state, _, i) in all {
        let world = &desk.moments.0[0].all[*i];
        let mut level = [0.0; 2];
        level[state.low] = 1.0;
        let mut sum = [0.0; 3];
        // Each that comes and goes may change its mind for once.
        for flips in (0..8).filter(|f| f & !state.comes == 0) {
            let mut p = 1.0;
            for i in (0..3).filter(|i| state.comes >> i & 1 == 1) {
                p *= match flips >> i & 1 {
                    1 => FLICKER,
                    _ => 1.0 - FLICKER,
                };
            }
            let one = asked.chance(world, state.acts[moment] ^ flips, level);
            (0..3).for_each(|a| sum[a] += p * one[a]);
        }
        for a in 0..3 {
            chance[a].push(sum[a]);
            said[a] += state.p * sum[a];
        }
    }
    let mut whole = said;
    if let Some(lump) = lump {
        whole = [0.0; 3];
        let stage = tracer.stage(check);
        let worlds = desk.moments.0.iter().find(|w| w.epoch.stage == stage)?;
        for (world, c) in worlds.all.iter().zip(&lump.chances) {
            (0..3).for_each(|a| whole[a] += world.p * c[a]);
        }
        if let Some(before) = worlds.before(tracer, check) {
            whole = std::array::from_fn(|a| (whole[a] - COPIED * before[a]) / (1.0 - COPIED));
        }
    }
    let of: [f64; 3] = std::array::from_fn(|a| (whole[a] - said[a]).max(1e-6));
    let sum: f64 = of.iter().take(check.answers().len()).sum();
    for a in 0..3 {
        chance[a].push(of[a] / sum);
    }
    Some(chance)
}
