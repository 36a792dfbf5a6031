//! A call drawn from a flat model: what is truly wrong, and what each check
//! then answers. Written from the model's description, not with the trace's
//! own arithmetic.

use coldsump::trace::{Answer, Check, Flat, Mode, Stage};

use crate::chance::Chance;

/// A call: what is wrong, how the basin stood, and how it goes on.
pub struct Scene<'a> {
    flat: &'a Flat,
    /// Modes by their place in the flat model, and whether they come and go.
    pub truth: Vec<(usize, bool)>,
    /// Whether the basin stood low on arrival.
    pub low: bool,
    /// Per stage, which of the faults act.
    acting: [Option<Vec<bool>>; 4],
    /// What each check said last, per stage and number of corrections.
    said: Vec<(Check, Stage, usize, usize)>,
    /// Faults put right, and whether it took.
    put_right: Vec<(usize, bool)>,
    corrections: usize,
    chance: Chance,
}

/// The flat model with every prior and every error off by a factor of two,
/// up or down.
pub fn perturbed(flat: &Flat, chance: &mut Chance) -> Flat {
    let mut off = flat.clone();
    let mut factor = || if chance.happens(0.5) { 2.0 } else { 0.5 };
    let mut total = 0.0;
    for mode in &mut off.modes {
        let f = factor();
        for p in &mut mode.prior {
            *p *= f;
            total += *p;
        }
    }
    for mode in &mut off.modes {
        mode.prior = mode.prior.map(|p| p / total);
    }
    for check in &mut off.checks {
        let same = check.full == check.low;
        for row in check.full.iter_mut().chain(&mut check.low) {
            let top = (0..3)
                .max_by(|a, b| row[*a].total_cmp(&row[*b]))
                .unwrap_or(0);
            for (i, p) in row.iter_mut().enumerate() {
                if i != top {
                    *p = (*p * factor()).min(0.5);
                }
            }
            let rest: f64 = (0..3).filter(|i| *i != top).map(|i| row[i]).sum();
            row[top] = (1.0 - rest).max(0.02);
            let all: f64 = row.iter().sum();
            row.iter_mut().for_each(|p| *p /= all);
        }
        if same {
            check.low = check.full.clone();
        }
    }
    off
}

impl<'a> Scene<'a> {
    /// A call with this many faults.
    pub fn draw(flat: &'a Flat, faults: usize, mut chance: Chance) -> Self {
        let shares = flat.modes.iter().map(|m| m.prior[0] + m.prior[1]);
        let truth = loop {
            let set: Vec<usize> = (0..faults).map(|_| chance.among(shares.clone())).collect();
            let distinct = (0..faults).all(|i| !set[..i].contains(&set[i]));
            // The share of the company factor against the most it can be.
            let own = set.iter().filter(|m| flat.modes[**m].own).count();
            let own = own.min(faults.saturating_sub(1));
            let keep = (flat.company_own / flat.company).powi(own as i32);
            if distinct && chance.happens(keep) {
                break set;
            }
        };
        let truth: Vec<(usize, bool)> = truth
            .into_iter()
            .map(|m| {
                let [steady, comes] = flat.modes[m].prior;
                (m, chance.happens(comes / (steady + comes)))
            })
            .collect();
        let stays: f64 = truth
            .iter()
            .map(|(m, comes)| flat.modes[*m].stays[usize::from(*comes)])
            .product();
        let low = !chance.happens(flat.stays_full * stays);
        Self {
            flat,
            truth,
            low,
            acting: Default::default(),
            said: Vec::new(),
            put_right: Vec::new(),
            corrections: 0,
            chance,
        }
    }

    /// Puts a fault right, if it is there; now and then that does not take.
    pub fn correct(&mut self, mode: Mode) {
        let at = self.flat.modes.iter().position(|m| m.mode == mode);
        if let Some(at) = at {
            let took = !self.chance.happens(self.flat.residue);
            self.put_right.retain(|(m, _)| *m != at);
            self.put_right.push((at, took));
        }
        self.corrections += 1;
        self.acting[Stage::Corrected as usize] = None;
    }

    /// Whether all that was wrong is put right.
    pub fn is_sound(&self) -> bool {
        self.truth
            .iter()
            .all(|(m, _)| self.put_right.contains(&(*m, true)))
    }

    /// What the check answers, done at this stage.
    pub fn answer(&mut self, check: Check, stage: Stage) -> Answer {
        let s = stage as usize;
        let at = |c: &coldsump::trace::FlatCheck| c.check == check;
        let row = self
            .flat
            .checks
            .iter()
            .find(|c| at(c))
            .expect("a check of the plant");
        let before = self
            .said
            .iter()
            .rev()
            .find(|(c, at, n, _)| (*c, *at, *n) == (check, stage, self.corrections))
            .map(|(_, _, _, a)| *a);
        let answer = match before {
            Some(a) if self.chance.happens(self.flat.copied) => a,
            _ => {
                if self.acting[s].is_none() {
                    let acts = self.flat.acts[s];
                    let each = self.truth.iter();
                    let chance = &mut self.chance;
                    let now = each
                        .map(|(_, comes)| !comes || chance.happens(acts))
                        .collect();
                    self.acting[s] = Some(now);
                }
                let acting = self.acting[s].clone().unwrap_or_default();
                let (mut effect, mut drains) = (0, false);
                for ((mode, comes), acts) in self.truth.iter().zip(acting) {
                    let (acting, quiet) = row.effects[*mode];
                    let put_right = self.put_right.iter().find(|(m, _)| m == mode);
                    let acts = match put_right {
                        Some((_, true)) => continue,
                        Some((_, false)) => true,
                        None => acts != (*comes && self.chance.happens(self.flat.flicker)),
                    };
                    effect = effect.max(if acts { acting } else { quiet });
                    drains |= acts && self.flat.modes[*mode].lowers;
                }
                let now = self.flat.low_now[s][usize::from(self.low)][usize::from(drains)];
                let low = if row.arrival {
                    self.low
                } else {
                    self.chance.happens(now)
                };
                let rows = if low { &row.low } else { &row.full };
                self.chance.among(rows[usize::from(effect)].iter().copied())
            }
        };
        self.said.push((check, stage, self.corrections, answer));
        check.answers()[answer]
    }
}
