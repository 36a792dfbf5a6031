//! The refill test, in English: buttons, phases, cautions.

use std::cmp::Ordering;

use crate::record::Why;
use crate::refill::{
    Caution, DrainBasis, DrawBasis, ExpectedMark, Limit, Missing, NextReading, Phase, Verdict,
};
use crate::words::Words;

pub(in crate::words) fn mark(mark: ExpectedMark) -> &'static str {
    match mark {
        ExpectedMark::DrawdownBegan => "Drain opened",
        ExpectedMark::CallSeen => "It calls for water",
        ExpectedMark::DrawdownEnded => "Drain closed",
        ExpectedMark::WaterSeen => "Water is running",
        ExpectedMark::Level => "Read the level",
        ExpectedMark::ShutOff => "Fill has stopped",
        ExpectedMark::Interrupted => "I was away",
        ExpectedMark::Stopped => "End the test",
    }
}

/// The mark in a list or on a figure.
pub(in crate::words) fn mark_short(mark: ExpectedMark) -> &'static str {
    match mark {
        ExpectedMark::DrawdownBegan => "drain open",
        ExpectedMark::CallSeen => "call",
        ExpectedMark::DrawdownEnded => "drain shut",
        ExpectedMark::WaterSeen => "water",
        ExpectedMark::Level => "level",
        ExpectedMark::ShutOff => "shut-off",
        ExpectedMark::Interrupted => "away",
        ExpectedMark::Stopped => "end",
    }
}

pub(in crate::words) fn phase(phase: Phase, drain_open: bool) -> &'static str {
    match (phase, drain_open) {
        (Phase::NotBegun, _) => "Read the level. Then open the drain and tap at once.",
        (Phase::DrawingDown, _) => {
            "Watch the level control. Read the level on the way down. Tap when it calls for water."
        }
        (Phase::WaitingForCall, _) => {
            "Drain is closed. Read the level. Tap when the control calls for water."
        }
        (Phase::WaitingForWater, true) => {
            "It calls. Close the drain. Listen at the fill and tap when water runs."
        }
        (Phase::WaitingForWater, false) => "It calls. Listen at the fill and tap when water runs.",
        (Phase::Filling, true) => "Water is running. Close the drain and tap.",
        (Phase::Filling, false) => {
            "Water is running. Read the level every few minutes. Tap when the fill stops by itself."
        }
        (Phase::FillStopped, true) => "Fill has stopped. Close the drain and tap.",
        (Phase::FillStopped, false) => {
            "Fill has stopped. Read the level twice now, and twice more when as much time has passed \
             as the fill took: it must hold."
        }
        (Phase::Stopped, true) => "Test ended. Is the drain closed?",
        (Phase::Stopped, false) => "Test ended.",
    }
}

pub(in crate::words) fn gap(why: Why, from: &str, to: &str, words: Words) -> String {
    match why {
        Why::Away => format!("{from} to {to}: the phone was locked or away."),
        Why::Restarted => format!("{from} to {to}: the app was loaded again."),
        Why::ClockMoved(by) => {
            let way = if by < 0.0 { "back" } else { "on" };
            let by = words.test_clock(by.abs());
            format!("{to}: the phone's clock was set {way} by {by}; the test's clock was not.")
        }
        Why::NotKnown => format!(
            "{to}: the clock was set back while the app was shut. How long that was is not known: \
             start the test again."
        ),
    }
}

pub(in crate::words) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Pass => "Passed",
        Verdict::PassWithWatch => "Passed, keep an eye on it",
        Verdict::Fail => "Failed",
        Verdict::NotProven => "Not proven",
    }
}

pub(in crate::words) fn missing(missing: Missing) -> &'static str {
    match missing {
        Missing::NoBasin => "Basin size is not known.",
        Missing::NoDrawdown => "Opening the drain was not noted.",
        Missing::NoCallSeen => "The call for water was not noted.",
        Missing::NoWaterSeen => "Running water was not noted.",
        Missing::NoShutOff => "The fill stopping was not noted.",
        Missing::NeedTwoLevels => "Two level readings are needed, below the overflow.",
        Missing::NeedLongerApart => "The readings are too close together in time.",
        Missing::NeedLevelNear => "No level reading is near enough in time.",
        Missing::OutOfOrder => "The marks are in the wrong order for this time.",
        Missing::NotWatched => "Nobody was watching at that time.",
    }
}

pub(in crate::words) fn next(next: NextReading) -> &'static str {
    match next {
        NextReading::Begin => "Read the level, then open the drain.",
        NextReading::DrawFarther => "Draw the basin below the call level and read the level.",
        NextReading::WaitForWater => "Wait three minutes from the call for water.",
        NextReading::NoteWater => "Note when water ran at the fill.",
        NextReading::NoteDrainClosed => "Note when the drain was closed.",
        NextReading::LevelNow => "Read the level now.",
        NextReading::LevelLater => "Read the level again in a few minutes.",
        NextReading::WaitForShutOff => "Wait for the fill to stop by itself.",
        NextReading::LevelAtShutOff => "Read the level now that the fill has stopped.",
        NextReading::LevelAfterShutOff => {
            "Read the level twice when as much time has passed since the stop as the fill took: it \
             must hold."
        }
        NextReading::BasinSize => "Measure the basin: length, width, depth below the overflow.",
        NextReading::MakeupNeed => "Work out how much makeup the plant needs today.",
        NextReading::RunAgain => "Run the test once more.",
    }
}

pub(in crate::words) fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::PumpInlet => {
            "Every machine on this loop loses water if the basin drops below the pump inlet. \
             Tell the site first and watch the level."
        }
        Caution::Aerosol => {
            "Tower water can carry Legionella. Keep out of mist and splash; wear what the site's \
             water plan asks for."
        }
        Caution::Discharge => {
            "Treated water may not go down every drain. Get the site's permission first."
        }
        Caution::Lockout => {
            "Lock out the fan and pump before anyone reaches into the basin. No entry without \
             the site's confined space rules."
        }
        Caution::LivePower => {
            "Live control wiring and water: open panels only if licensed, under local code."
        }
        Caution::Footing => "Wet roof and ladder. Use fall protection as the site requires.",
    }
}

pub(in crate::words) fn limit(limit: Limit) -> &'static str {
    match limit {
        Limit::Overflow => "Overflow",
        Limit::Stop => "Stop level",
        Limit::Call => "Call level",
        Limit::LowLimit => "Pump inlet limit",
    }
}

pub(in crate::words) fn basis(basis: DrawBasis) -> &'static str {
    match basis {
        DrawBasis::PastCallLevel => "An inch below the call level.",
        DrawBasis::LowLimitFirst => {
            "Stop here: the pump inlet limit comes before the control is sure to call."
        }
        DrawBasis::LowLimit => "Call level not known: down to the pump inlet limit, no further.",
        DrawBasis::HalfDepth => {
            "Call level not known: half the depth. Check where the pump inlet sits first."
        }
    }
}

pub(in crate::words) fn taken_back(mark: &str) -> String {
    format!("Taken back: {mark}")
}

pub(in crate::words) fn mark_moved(clock: &str, step: &str) -> String {
    format!("tapped {clock}, moved {step}")
}

pub(in crate::words) fn typed(typed: &str) -> String {
    format!("typed {typed}")
}

pub(in crate::words) fn wall_mark(shows: f64) -> String {
    format!("mark {shows:.1}")
}

pub(in crate::words) fn fill_takes(least: &str, most: &str) -> String {
    format!("{least} to {most} for the fill.")
}

pub(in crate::words) fn draw_takes(least: &str, most: &str, basis: DrainBasis) -> String {
    match basis {
        DrainBasis::Earlier => format!("{least} to {most}, as in the earlier test here."),
        DrainBasis::Bore => format!("{least} to {most} through a drain of this bore, fully open."),
        DrainBasis::Usual => {
            format!(
                "{least} to {most}: drain not known, 1 to 2\u{a0}in taken. Enter its bore below."
            )
        }
    }
}

pub(in crate::words) fn watch_after(share: &str) -> String {
    format!(
        "After the stop: two readings at once, two more after {share} times as long as the fill \
         took. That shows a valve passing a tenth of it."
    )
}

pub(in crate::words) fn fill_at_most(most: &str) -> String {
    format!("A fill of up to {most} still covers the need with a quarter to spare.")
}

pub(in crate::words) fn minutes_to_limit(left: &str) -> String {
    format!("Pump inlet. If no water comes, the losses take {left} to get there.")
}

pub(in crate::words) fn start_in(time: &str) -> String {
    format!("in {time}")
}

pub(in crate::words) fn start_now() -> &'static str {
    "now"
}

pub(in crate::words) fn machine_started(machine: &str) -> String {
    format!("{machine} started")
}

pub(in crate::words) fn settles_at(temperature: &str) -> String {
    format!(
        "With the machines noted as running it settles near {temperature}. Line: expected, within \
         30% of the way still to go."
    )
}

pub(in crate::words) fn older_marks(count: usize) -> String {
    format!("{count} older")
}

pub(in crate::words) fn head_foreseen(machine: &str) -> String {
    format!(
        "Head of {machine}. Line: as a sound condenser has it with the water expected, give or take 5\u{a0}°F \
         (3\u{a0}K) of approach. Far above: scale, air in it, or too little water."
    )
}

pub(in crate::words) fn foreseen(low: &str, high: &str, side: Ordering) -> String {
    match side {
        Ordering::Less => format!("lower than the {low} to {high} expected"),
        Ordering::Equal => format!("expected {low} to {high}"),
        Ordering::Greater => format!("higher than the {low} to {high} expected"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_buttons_say_the_same() {
        use ExpectedMark::*;
        let all = [
            DrawdownBegan,
            CallSeen,
            DrawdownEnded,
            WaterSeen,
            Level,
            ShutOff,
            Interrupted,
            Stopped,
        ];
        let labels: std::collections::BTreeSet<_> = all.into_iter().map(mark).collect();
        assert_eq!(labels.len(), all.len());
        assert!(
            labels.iter().all(|l| l.len() <= 20),
            "a button is read at arm's length"
        );
    }
}
