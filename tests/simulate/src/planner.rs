//! Who chooses the next check: the trace's own planner, and simpler ones that
//! share its belief, its rule of what makes sense now, and its end.

use coldsump::trace::{Check, Place, Suggestion, Tracer};

/// A way to choose the next check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Planner {
    /// The trace.
    Ours,
    /// Down the plain list, from the machines through the tower to the street.
    FixedWalk,
    /// The check whose answer is most open.
    HalfSplit,
    /// Most doubt removed per minute of the check itself, whatever the walk.
    Greedy,
}

impl Planner {
    /// Every one, ours first.
    pub const ALL: [Planner; 4] = [
        Planner::Ours,
        Planner::FixedWalk,
        Planner::HalfSplit,
        Planner::Greedy,
    ];

    /// Its name in the table.
    pub fn name(self) -> &'static str {
        match self {
            Planner::Ours => "the trace",
            Planner::FixedWalk => "fixed walk",
            Planner::HalfSplit => "half-split",
            Planner::Greedy => "greedy per minute, no walk",
        }
    }

    /// The next check; `None` when it has none left.
    pub fn next(self, tracer: &Tracer, at: Place) -> Option<Check> {
        let best = |score: &dyn Fn(&Suggestion) -> f64| {
            let all = tracer.promises(at);
            let asks = all.iter().filter(|s| s.check != Check::RefillTest);
            asks.max_by(|a, b| score(a).total_cmp(&score(b)))
                .map(|s| s.check)
        };
        match self {
            // The refill test proves the repair, not the cause.
            Planner::Ours => {
                let next = tracer.advise(at).best.map(|s| s.check);
                next.filter(|c| *c != Check::RefillTest)
            }
            Planner::FixedWalk => {
                let all = tracer.promises(at);
                all.iter()
                    .map(|s| s.check)
                    .find(|c| *c != Check::RefillTest)
            }
            Planner::HalfSplit => best(&|s| {
                let chance = tracer.chances(s.check);
                let each = chance.iter().filter(|p| **p > 0.0);
                each.map(|p| -p * p.log2()).sum()
            }),
            Planner::Greedy => best(&|s| s.gain_bits / s.minutes),
        }
    }
}
