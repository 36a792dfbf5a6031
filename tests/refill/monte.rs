//! Many simulated tests against what was true in them.

use coldsump::quantity::Length;
use coldsump::refill::{Estimate, Finding, LevelEstimate, Mark, MarkKind, Outcome, Verdict, judge};
use uom::si::length::meter;
use uom::si::volume_rate::cubic_meter_per_second;

use super::basin::{Noise, Shape, Trial, misread};

/// How often an interval held the truth.
#[derive(Clone, Copy, Debug, Default)]
pub struct Cover {
    /// Figures given.
    pub given: usize,
    /// Of these, intervals that held the truth.
    pub held: usize,
}

impl Cover {
    fn add(&mut self, held: Option<bool>) {
        self.given += usize::from(held.is_some());
        self.held += usize::from(held == Some(true));
    }

    /// The share, in percent.
    pub fn percent(&self) -> f64 {
        100.0 * self.held as f64 / self.given.max(1) as f64
    }
}

/// What a lot of trials came to.
#[derive(Clone, Debug)]
pub struct Lot {
    /// What the lot is.
    pub name: String,
    /// Trials.
    pub runs: usize,
    /// Sum of (measured over true - 1) of the flow through the fill.
    bias: f64,
    /// Sum of half an interval over the flow.
    width: f64,
    /// Gross and net flow of the fill.
    pub gross: Cover,
    /// Net flow.
    pub net: Cover,
    /// Level at the call.
    pub call: Cover,
    /// Level at the shut-off.
    pub stop: Cover,
    /// Height between the two.
    pub differential: Cover,
    /// Flow after the shut-off.
    pub after: Cover,
    /// Time from call to water.
    pub delay: Cover,
    /// Turns found, and those within one reading of the truth.
    pub turns: Cover,
    /// Mean flow out while it was drawn down.
    pub draw: Cover,
    /// Trials in which the findings spoke of water after the shut-off.
    pub drips: usize,
    /// Trials that passed with nothing said of it and a tenth of the fill ruled out.
    pub ruled_out: usize,
    /// Verdicts: pass, pass with a watch, fail, not proven.
    pub verdicts: [usize; 4],
}

impl Lot {
    /// An empty lot.
    pub fn new(name: &str) -> Self {
        let none = Cover::default();
        Self {
            name: name.to_owned(),
            runs: 0,
            bias: 0.0,
            width: 0.0,
            gross: none,
            net: none,
            call: none,
            stop: none,
            differential: none,
            after: none,
            delay: none,
            turns: none,
            draw: none,
            drips: 0,
            ruled_out: 0,
            verdicts: [0; 4],
        }
    }

    /// Each interval by its name.
    pub fn covers(&self) -> [(&'static str, Cover); 8] {
        [
            ("gross", self.gross),
            ("net", self.net),
            ("call", self.call),
            ("stop", self.stop),
            ("differential", self.differential),
            ("after", self.after),
            ("delay", self.delay),
            ("drain", self.draw),
        ]
    }

    /// Mean of measured over true, less one, in percent.
    pub fn bias_percent(&self) -> f64 {
        100.0 * self.bias / self.gross.given.max(1) as f64
    }

    /// Mean half-width of the interval of the flow, in percent of it.
    #[allow(dead_code)] // the bench prints it
    pub fn width_percent(&self) -> f64 {
        100.0 * self.width / self.gross.given.max(1) as f64
    }

    /// Share of trials that passed, with or without a watch, in percent.
    pub fn passed_percent(&self) -> f64 {
        100.0 * (self.verdicts[0] + self.verdicts[1]) as f64 / self.runs.max(1) as f64
    }

    /// Runs one trial and adds it up.
    pub fn run(&mut self, trial: &Trial, noise: &mut Noise) {
        let marks = trial.marks(noise);
        self.add(trial, &marks, &judge(&trial.setup(), &marks));
    }

    fn add(&mut self, trial: &Trial, marks: &[Mark], outcome: &Outcome) {
        self.runs += 1;
        if let Ok(gross) = &outcome.fill_gross {
            let (low, value, high) = si(gross);
            self.bias += value / trial.valve - 1.0;
            self.width += 0.5 * (high - low) / trial.valve;
        }
        let flow = |e: &Estimate, truth: f64| {
            let (low, _, high) = si(e);
            low <= truth && truth <= high
        };
        let level = |e: &LevelEstimate, truth: f64| {
            let m = |l: Length| l.get::<meter>();
            m(e.low) <= truth && truth <= m(e.high)
        };
        let net = trial.valve - trial.loss;
        let gross = outcome.fill_gross.ok();
        self.gross.add(gross.map(|e| flow(&e, trial.valve)));
        let fit = outcome.fill_net.as_ref().ok();
        self.net.add(fit.map(|f| flow(&f.flow, net)));
        let call = outcome.call_level.ok();
        self.call.add(call.map(|e| level(&e, trial.call)));
        let stop = outcome.shut_off_level.ok();
        self.stop.add(stop.map(|e| level(&e, trial.stop)));
        let apart = outcome.differential.ok();
        self.differential
            .add(apart.map(|e| level(&e, trial.call - trial.stop)));
        let after = outcome.after_shut_off.as_ref().ok();
        self.after
            .add(after.map(|f| flow(&f.flow, trial.drip - trial.loss)));
        let draw = outcome.drawdown.as_ref().ok();
        self.draw
            .add(draw.map(|f| flow(&f.flow, trial.drain + trial.loss)));
        let says = |f: fn(&Finding) -> bool| usize::from(outcome.findings.iter().any(f));
        self.drips +=
            says(|f| matches!(f, Finding::AfterDrip { .. } | Finding::ValvePasses { .. }));
        self.ruled_out += says(|f| matches!(f, Finding::Held { told: true, .. }));
        let delay = outcome.delays.call_to_water.ok();
        self.delay
            .add(delay.map(|s| s.low_s <= trial.delay && trial.delay <= s.high_s));
        let times: Vec<f64> = marks
            .iter()
            .filter(|m| matches!(m.kind, MarkKind::Level { .. }))
            .map(|m| m.at_s)
            .collect();
        let rise = outcome.rise;
        let ended = rise.and_then(|r| r.ended).map(|s| s.value_s);
        let began = rise.and_then(|r| r.began).map(|s| s.value_s);
        for (found, truth) in [(began, trial.fill_begins()), (ended, trial.fill_ends())] {
            self.turns
                .add(found.map(|at| readings_between(&times, at, truth) <= 1));
        }
        self.verdicts[match outcome.verdict {
            Verdict::Pass => 0,
            Verdict::PassWithWatch => 1,
            Verdict::Fail => 2,
            Verdict::NotProven => 3,
        }] += 1;
    }
}

/// How many readings lie between two times.
fn readings_between(times: &[f64], a: f64, b: f64) -> usize {
    let (from, to) = (a.min(b), a.max(b));
    times.iter().filter(|t| **t > from && **t < to).count()
}

fn si(e: &Estimate) -> (f64, f64, f64) {
    let get = |v: coldsump::quantity::VolumeRate| v.get::<cubic_meter_per_second>();
    (get(e.low), get(e.value), get(e.high))
}

/// The mixed lot and the same trials by what is special in them.
pub fn by_kind(runs: usize, seed: u64) -> Vec<Lot> {
    let mut noise = Noise(seed);
    let names = [
        "all",
        "upright walls",
        "round",
        "sloped floor",
        "stepped floor",
        "4 or 5 readings",
        "6 to 9 readings",
        "10 to 14 readings",
        "ripple to 1.5 mm",
        "ripple to 3 mm",
        " of these, 4 or 5 readings",
        " of these, 10 to 14",
        "one misread",
    ];
    let mut lots: Vec<Lot> = names.into_iter().map(Lot::new).collect();
    for _ in 0..runs {
        let mut trial = Trial::any(&mut noise);
        // Below six readings one bad one can't be told from the rest.
        if trial.readings >= 6 && noise.below(3) == 0 {
            trial.slip = Some((noise.below(trial.readings), misread(&mut noise)));
        }
        let shape = match trial.shape {
            Shape::Straight => 1,
            Shape::Round => 2,
            Shape::Sloped(_) => 3,
            Shape::Stepped(_) => 4,
        };
        let many = match trial.readings {
            ..=5 => 5,
            6..=9 => 6,
            _ => 7,
        };
        let rough = if trial.ripple < 1.5e-3 { 8 } else { 9 };
        let marks = trial.marks(&mut noise);
        let outcome = judge(&trial.setup(), &marks);
        let slip = trial.slip.map(|_| 12);
        let rough_few = match (rough, many) {
            (9, 5) => Some(10),
            (9, 7) => Some(11),
            _ => None,
        };
        let special = slip.into_iter().chain(rough_few);
        for lot in [0, shape, many, rough].into_iter().chain(special) {
            lots[lot].add(&trial, &marks, &outcome);
        }
    }
    lots
}

/// Valves that give less than is needed: from just under it, and from well
/// under it.
pub fn below_need(runs: usize, seed: u64) -> Vec<Lot> {
    let mut noise = Noise(seed);
    let mut lots = Vec::new();
    for (name, low, high) in [
        ("valve 99 to 100 % of need", 0.99, 1.0),
        ("valve 90 to 99 % of need", 0.90, 0.99),
        ("valve 50 to 90 % of need", 0.5, 0.9),
    ] {
        let mut lot = Lot::new(name);
        for _ in 0..runs {
            let mut trial = Trial::any(&mut noise);
            trial.need = trial.valve / noise.between(low, high);
            lot.run(&trial, &mut noise);
        }
        lots.push(lot);
    }
    lots
}

/// Water that ripples 3 mm from the first reading to the last, read seldom and often.
#[allow(dead_code)] // the bench prints it
pub fn rough(runs: usize, seed: u64) -> Vec<Lot> {
    let mut noise = Noise(seed);
    let names = ["3 mm, 4 or 5 readings", "3 mm, 10 to 14 readings"];
    let mut lots = names.map(Lot::new);
    for _ in 0..runs {
        for (lot, least, more) in [(0, 4, 2), (1, 10, 5)] {
            let mut trial = Trial::any(&mut noise);
            trial.ripple = 3e-3;
            trial.readings = least + noise.below(more);
            lots[lot].run(&trial, &mut noise);
        }
    }
    lots.into()
}

/// A valve that passes after it shut, and a chain in which all is right.
pub fn others(runs: usize, seed: u64) -> Vec<Lot> {
    let mut noise = Noise(seed);
    let mut tight = Lot::new("sound chain");
    let mut drips = Lot::new("valve passing 10 %");
    let mut planned = Lot::new("the same, watched as planned");
    let mut calm = Lot::new("sound, watched as planned");
    for _ in 0..runs {
        let mut trial = Trial::any(&mut noise);
        trial.loss = 0.0;
        trial.believed = 0.0;
        tight.run(&trial, &mut noise);
        trial.drip = 0.1 * trial.valve;
        drips.run(&trial, &mut noise);
        trial.watch = Some(trial.planned_watch());
        planned.run(&trial, &mut noise);
        trial.drip = 0.0;
        calm.run(&trial, &mut noise);
    }
    vec![tight, drips, planned, calm]
}
