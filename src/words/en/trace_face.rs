//! English: stages and weights on the trace's screens.

use crate::trace::Stage;

pub(in crate::words) fn stage_line(stage: Stage) -> &'static str {
    match stage {
        Stage::AsFound => "Nobody has touched anything yet.",
        Stage::WaterLetIn => "Water was let in, by bypass or hose; nothing else was touched.",
        Stage::Testing => "A probe lifted, a valve worked, power cycled: hands were on it.",
        Stage::Corrected => "Something was put right; from here on it is about what remains.",
    }
}

/// Odds changed by a power of ten, as times.
pub(in crate::words) fn weighs(log10_odds: f64) -> String {
    let times = 10f64.powf(log10_odds.abs());
    let times = match times {
        t if t > 100.0 => "over 100".to_owned(),
        t if t < 1.95 => format!("{t:.1}"),
        t => format!("{t:.0}"),
    };
    let side = if log10_odds > 0.0 {
        "likelier"
    } else {
        "less likely"
    };
    format!("{times} times {side}")
}
