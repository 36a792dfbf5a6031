//! Walks added up.

use crate::walk::{Ended, Walk};

/// Many walks.
#[derive(Default)]
pub struct Tally {
    minutes: Vec<f64>,
    right: usize,
    among: usize,
    proven: usize,
    wrongly: usize,
    checks: usize,
}

impl Tally {
    /// The head of the table.
    pub const HEAD: &'static str = "\
| answers from a model | faults | planner | calls | minutes | +- | right % | +- | among those named % | proven % | \
proven wrongly % | checks |\n|---|---|---|---|---|---|---|---|---|---|---|---|";

    /// Adds one.
    pub fn add(&mut self, walk: &Walk, (right, among): (bool, bool)) {
        self.minutes.push(walk.minutes);
        self.right += usize::from(right);
        self.among += usize::from(among);
        self.proven += usize::from(walk.proven);
        self.wrongly += usize::from(walk.proven && !right);
        self.checks += walk.checks;
    }

    /// A line of the table.
    pub fn line(&self, model: &str, faults: usize, planner: &str) -> String {
        let n = self.minutes.len() as f64;
        let mean = self.minutes.iter().sum::<f64>() / n;
        let spread = self.minutes.iter().map(|m| (m - mean).powi(2)).sum::<f64>() / (n - 1.0);
        let part = |k: usize| k as f64 / n;
        let p = part(self.right);
        format!(
            "| {model} | {faults} | {planner} | {n} | {mean:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} |",
            (spread / n).sqrt(),
            100.0 * p,
            100.0 * (p * (1.0 - p) / n).sqrt(),
            100.0 * part(self.among),
            100.0 * part(self.proven),
            100.0 * part(self.wrongly),
            part(self.checks),
        )
    }
}

/// Many walks that went on after the first repair.
#[derive(Default)]
pub struct Through(Vec<Ended>);

impl Through {
    /// The head of the table.
    pub const HEAD: &'static str = "\
| answers from a model | faults | calls | minutes to the first repair | minutes to the end | +- | \
all named % | +- | closed % | all sound % | repairs in vain | checks |\n|---|---|---|---|---|---|---|---|---|---|---|---|";

    /// Adds one.
    pub fn add(&mut self, ended: Ended) {
        self.0.push(ended);
    }

    /// A line of the table.
    pub fn line(&self, model: &str, faults: usize) -> String {
        let n = self.0.len() as f64;
        let mean = |of: &dyn Fn(&Ended) -> f64| self.0.iter().map(of).sum::<f64>() / n;
        let part = |of: &dyn Fn(&Ended) -> bool| mean(&|e| f64::from(u8::from(of(e))));
        let minutes = mean(&|e| e.minutes);
        let spread = mean(&|e| (e.minutes - minutes).powi(2));
        let named = part(&|e| e.named);
        format!(
            "| {model} | {faults} | {n} | {:.1} | {minutes:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.2} | {:.1} |",
            mean(&|e| e.first),
            (spread / (n - 1.0)).sqrt(),
            100.0 * named,
            100.0 * (named * (1.0 - named) / n).sqrt(),
            100.0 * part(&|e| e.closed),
            100.0 * part(&|e| e.sound),
            mean(&|e| e.in_vain as f64),
            mean(&|e| e.checks as f64),
        )
    }
}
