//! Walks added up.

use coldsump::trace::Mode;

/// How a walk ended.
pub struct Walk {
    /// Minutes of checks, of opening things, and of walking.
    pub minutes: f64,
    /// How many checks.
    pub checks: usize,
    /// The likeliest cause at the end.
    pub named: Option<Mode>,
    /// Whether it was proven.
    pub proven: bool,
}

/// Many walks.
#[derive(Default)]
pub struct Tally {
    minutes: Vec<f64>,
    right: usize,
    proven: usize,
    wrongly: usize,
    checks: usize,
}

impl Tally {
    /// The head of the table.
    pub const HEAD: &'static str = "\
| answers from a model | faults | planner | calls | minutes | +- | right % | +- | proven % | \
proven wrongly % | checks |\n|---|---|---|---|---|---|---|---|---|---|---|";

    /// Adds one.
    pub fn add(&mut self, walk: &Walk, right: bool) {
        self.minutes.push(walk.minutes);
        self.right += usize::from(right);
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
            "| {model} | {faults} | {planner} | {n} | {mean:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} | {:.1} |",
            (spread / n).sqrt(),
            100.0 * p,
            100.0 * (p * (1.0 - p) / n).sqrt(),
            100.0 * part(self.proven),
            100.0 * part(self.wrongly),
            part(self.checks),
        )
    }
}
