//! The posterior against plain enumeration: every set, manner, condition and
//! flicker spelled out from the flat model, nothing shared with the lattice.

use super::super::*;

/// A piece of evidence as the enumeration hears it.
struct Heard<'a> {
    check: &'a FlatCheck,
    weights: [f64; 3],
    epoch: usize,
}

struct Brute<'a> {
    flat: &'a Flat,
    heard: Vec<Heard<'a>>,
    /// Stage and corrected modes of each epoch.
    epochs: Vec<(Stage, Vec<Mode>)>,
}

impl Brute<'_> {
    /// Likelihood of what was heard in an epoch, over every way these faults
    /// (place, comes and goes) may act in it.
    fn epoch(&self, epoch: usize, faults: &[(usize, bool)], low: bool) -> f64 {
        let (stage, corrected) = &self.epochs[epoch];
        let s = *stage as usize;
        let n = faults.len();
        let gone = |f: &(usize, bool)| corrected.contains(&self.flat.modes[f.0].mode);
        let mut all = 0.0;
        for acting in 0..1usize << n {
            let mut p = 1.0;
            for (i, f) in faults.iter().enumerate() {
                let acts = match (gone(f), f.1) {
                    (true, _) => self.flat.residue,
                    (false, true) => self.flat.acts[s],
                    (false, false) => 1.0,
                };
                p *= if acting >> i & 1 == 1 {
                    acts
                } else {
                    1.0 - acts
                };
            }
            let mut last = Vec::<(Check, [f64; 3])>::new();
            for heard in self.heard.iter().filter(|h| h.epoch == epoch) {
                let mut told = 0.0;
                for now in 0..1usize << n {
                    let mut q = 1.0;
                    let (mut effect, mut drains) = (0, false);
                    for (i, f) in faults.iter().enumerate() {
                        let flicker = if f.1 && !gone(f) {
                            self.flat.flicker
                        } else {
                            0.0
                        };
                        let same = now >> i & 1 == acting >> i & 1;
                        q *= if same { 1.0 - flicker } else { flicker };
                        let (acts, quiet) = heard.check.effects[f.0];
                        if now >> i & 1 == 1 {
                            effect = effect.max(acts);
                            drains |= self.flat.modes[f.0].lowers;
                        } else if !gone(f) {
                            effect = effect.max(quiet);
                        }
                    }
                    let lower = if heard.check.arrival {
                        f64::from(u8::from(low))
                    } else {
                        self.flat.low_now[s][usize::from(low)][usize::from(drains)]
                    };
                    let before = last.iter().rev().find(|l| l.0 == heard.check.check);
                    let chance = |row: &[f64; 3]| -> f64 {
                        let each = (0..3).map(|a| {
                            let p = match before {
                                Some((_, b)) => {
                                    self.flat.copied * b[a] + (1.0 - self.flat.copied) * row[a]
                                }
                                None => row[a],
                            };
                            heard.weights[a] * p
                        });
                        each.sum()
                    };
                    let e = usize::from(effect);
                    let (low, full) = (&heard.check.low[e], &heard.check.full[e]);
                    told += q * (lower * chance(low) + (1.0 - lower) * chance(full));
                }
                p *= told;
                last.push((heard.check.check, heard.weights));
            }
            all += p;
        }
        all
    }

    /// Weight of a set of faults.
    fn weight(&self, faults: &[(usize, bool)], nothing: bool) -> f64 {
        let flat = self.flat;
        let own = faults.iter().filter(|f| flat.modes[f.0].own).count();
        let mut p = match faults.len() {
            0 => f64::from(u8::from(nothing)) * flat.nothing,
            n => {
                let own = own.min(n - 1);
                flat.company_own.powi(own as i32) * flat.company.powi((n - 1 - own) as i32)
            }
        };
        let mut full = flat.stays_full;
        for (m, comes) in faults {
            p *= flat.modes[*m].prior[usize::from(*comes)];
            full *= flat.modes[*m].stays[usize::from(*comes)];
        }
        let level = |low: bool| {
            let told: f64 = (0..self.epochs.len())
                .map(|e| self.epoch(e, faults, low))
                .product();
            told * if low { 1.0 - full } else { full }
        };
        p * (level(false) + level(true))
    }

    /// Probability of each mode.
    fn marginals(&self, nothing: bool) -> Vec<f64> {
        let n = self.flat.modes.len();
        let one: Vec<(usize, bool)> = (0..n).flat_map(|m| [(m, false), (m, true)]).collect();
        let mut of = vec![0.0; n];
        let mut total = self.weight(&[], nothing);
        let mut add = |faults: &[(usize, bool)]| {
            let p = self.weight(faults, nothing);
            total += p;
            faults.iter().for_each(|f| of[f.0] += p);
        };
        for (i, a) in one.iter().enumerate() {
            add(&[*a]);
            for (j, b) in one[..i].iter().enumerate().filter(|(_, b)| b.0 != a.0) {
                add(&[*b, *a]);
                for c in one[..j].iter().filter(|c| c.0 != b.0 && c.0 != a.0) {
                    add(&[*c, *b, *a]);
                }
            }
        }
        of.into_iter().map(|p| p / total).collect()
    }
}

/// A small generator, so that the sets are the same every time.
fn next(seed: &mut u64) -> usize {
    *seed = seed
        .wrapping_mul(6_364_136_223_846_793_005)
        .wrapping_add(1_442_695_040_888_963_407);
    (*seed >> 33) as usize
}

#[test]
fn the_belief_is_what_enumeration_gives() {
    let plant = Plant::default();
    let (all, mut seed) = (plant.modes(), 20_260_901);
    let mut told = 0;
    for round in 0..12 {
        let mut modes: Vec<Mode> = (0..7).map(|_| all[next(&mut seed) % all.len()]).collect();
        modes.sort();
        modes.dedup();
        let speaks = |c: &Check| c.exists(&plant) && modes.iter().any(|m| c.speaks_of(*m));
        let checks: Vec<Check> = Check::ALL.into_iter().filter(speaks).collect();
        let mut case = Case::default();
        for _ in 0..3 + round % 4 {
            let check = checks[next(&mut seed) % checks.len()];
            let answer = check.answers()[next(&mut seed) % check.answers().len()];
            let stage = case.evidence.iter().map(|e| e.stage).max();
            let stage = stage
                .unwrap_or(Stage::AsFound)
                .max(Stage::ALL[next(&mut seed) % 3]);
            case.evidence.push(Evidence::said(check, answer, stage));
            if next(&mut seed).is_multiple_of(3) {
                case.evidence.push(Evidence::said(check, answer, stage));
            }
        }
        if round % 3 == 0 {
            let after = case.evidence.len() - 1;
            case.corrections.push(Correction {
                mode: modes[0],
                after,
            });
        }
        let flat = Flat::over(&plant, &modes, &checks);
        let mut brute = Brute {
            flat: &flat,
            heard: Vec::new(),
            epochs: Vec::new(),
        };
        for (i, e) in case.evidence.iter().enumerate() {
            let done = case
                .corrections
                .iter()
                .filter(|c| c.after <= i)
                .map(|c| c.mode);
            let epoch = (e.stage, done.collect::<Vec<_>>());
            let known = brute.epochs.iter().position(|k| *k == epoch);
            let epoch = known.unwrap_or_else(|| {
                brute.epochs.push(epoch);
                brute.epochs.len() - 1
            });
            let mut weights = [0.0; 3];
            weights[e.check.column(e.answer).expect("an answer of the check")] = 1.0;
            let check = flat
                .checks
                .iter()
                .find(|c| c.check == e.check)
                .expect("its row");
            brute.heard.push(Heard {
                check,
                weights,
                epoch,
            });
        }
        let tracer = Tracer::over(&plant, &case, &modes, &checks);
        let want = brute.marginals(tracer.nothing);
        let belief = tracer.belief();
        for (mode, p) in modes.iter().zip(want) {
            let got = belief.of(*mode).expect("a suspect").was;
            assert!((got - p).abs() < 1e-12, "{mode:?}: {got} {p}\n{case:?}");
            told += 1;
        }
        let [mut of, mut sum] = [0.0; 2];
        for (set, p) in &tracer.leading {
            sum += p;
            of += p * f64::from(u8::from(
                set.iter()
                    .any(|m| tracer.lattice.modes.get(*m) == Some(&modes[0])),
            ));
        }
        let first = belief.of(modes[0]).expect("a suspect").was;
        assert!(
            sum <= 1.0 + 1e-12 && sum > 0.9 && of <= first + 1e-12,
            "{sum} {of} {first}"
        );
    }
    assert!(told > 60, "{told}");
}
