//! English: answers, cautions, readings, reasons and weights.

use super::trace_modes::{name, place};
use crate::trace::{Answer, Caution, Reading, Reason, Stage, Unproven};

pub(crate) fn answer(answer: Answer) -> &'static str {
    match answer {
        Answer::CouldNot => "Couldn't check",
        Answer::OneMachine => "One",
        Answer::TwoMachines => "Two",
        Answer::ThreeOrMore => "Three or more",
        Answer::BasinLow => "Low or dry",
        Answer::BasinComingUp => "Rising",
        Answer::BasinNormal => "At its level",
        Answer::WaterHot => "Hotter than usual",
        Answer::WaterUsual => "As usual",
        Answer::RangeWide => "Wider than usual",
        Answer::RangeUsual => "As usual or less",
        Answer::ApproachHigh => "Too high for today",
        Answer::ApproachUsual => "Right for today",
        Answer::ApproachLow => "Lower than it should be",
        Answer::AirGood => "Running, good air",
        Answer::AirPoor => "Stopped, slow or fouled",
        Answer::PressureSteady => "Steady",
        Answer::PressureSurging => "Swinging",
        Answer::PressureLow => "Steady but low",
        Answer::VoltageGood => "Right",
        Answer::VoltageLow => "Too low",
        Answer::NoVoltage => "None",
        Answer::Calls => "Calls for water",
        Answer::NoCall => "No call",
        Answer::Satisfied => "Satisfied",
        Answer::Dark => "Dark",
        Answer::Pulls => "Pulls",
        Answer::NoPull => "No pull",
        Answer::FullFlow => "Full flow",
        Answer::WeakFlow => "Weak flow",
        Answer::NoFlow => "No flow",
        Answer::AllOpen => "All open",
        Answer::FoundShut => "One shut or part shut",
        Answer::StrainerClean => "Blew clean",
        Answer::StrainerBlocked => "Blocked",
        Answer::MainsGood => "Right",
        Answer::MainsLow => "Low",
        Answer::HolderClean => "High: clean",
        Answer::HolderFilmed => "Low: film or damp",
        Answer::NoFoam => "No foam",
        Answer::Foam => "Foam",
        Answer::NoLoss => "Nothing running",
        Answer::LosingWater => "Water running out",
        Answer::FollowsResistor => "Follows the resistor",
        Answer::IgnoresResistor => "Ignores it",
        Answer::Refilled => "Filled in time",
        Answer::RefilledSlowly => "Too slow",
        Answer::DidNotRefill => "Didn't fill",
        Answer::OwnFaultFound => "Fault found here",
        Answer::MachineHealthy => "Nothing wrong here",
        Answer::BeyondDesign => "Past the nameplate",
        Answer::WithinDesign => "Within it",
        Answer::HeadRose => "Head rose until it tripped",
        Answer::TrippedEarly => "Tripped at a usual head",
        Answer::RangeWidened => "Its range widened first",
        Answer::LevelKept => "Level kept when it tripped",
        Answer::SaidFull => "Level fell, control said full",
        Answer::CalledInVain => "Level fell while it called",
        Answer::LoopAsUsual => "Loop as usual when it tripped",
        Answer::FlowFell => "Flow fell first",
        Answer::WaterRose => "Water off the tower rose first",
        Answer::NoTrips => "Nothing tripped",
        Answer::RanOn => "Ran as told",
        Answer::StoppedUntold => "Told to run, stopped or slowed",
        Answer::ToldToStop => "Told to stop or slow",
        Answer::FanTripped => "The fan's",
        Answer::PumpTripped => "The pump's",
        Answer::HeadsUsual => "All heads as usual",
        Answer::HeadsHigh => "A head still too high",
        Answer::Sound => "As it should be",
        Answer::NotRight => "Not right",
        Answer::OverUsual => "As usual",
        Answer::OverHigh => "Too high",
        Answer::HeadStays => "Head stays",
        Answer::HeadFalls => "Head falls",
        Answer::CurrentRight => "Right",
        Answer::CurrentLow => "Too low",
        Answer::NoCurrent => "None",
        Answer::FanFull => "Full speed",
        Answer::FanSlow => "Slow",
        Answer::FanStill => "Still",
        Answer::CyclesUsual => "As usual",
        Answer::CyclesHigh => "Higher",
        Answer::CyclesLow => "Lower",
        Answer::SwitchedOn => "On",
        Answer::SwitchedOff => "Off",
        Answer::FuseGood => "Good",
        Answer::FuseBlown => "Blown",
        Answer::CapDry => "Dry",
        Answer::CapWet => "Wet",
        Answer::FloatFree => "Free and light",
        Answer::FloatCaught => "Caught or weeded up",
        Answer::FloatHeavy => "Heavy with water",
        Answer::SignalAgrees => "They agree",
        Answer::SignalHigh => "Signal reads higher",
        Answer::ContactClosed => "Next to nothing",
        Answer::ContactOpen => "Full voltage",
        Answer::CoilSound => "Right",
        Answer::CoilReadsOpen => "Open",
        Answer::CoilReadsLow => "Too low",
        Answer::FillShuts => "Stops",
        Answer::RunsOn => "Runs on",
        Answer::ValveSound => "Sound",
        Answer::PilotDirty => "Pilot hole dirty",
        Answer::ValveWorn => "Worn, torn or seized",
    }
}

pub(crate) fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::LiveVoltage => {
            "Live parts: lock out, prove dead. Qualified people only; measure live only where you must."
        }
        Caution::MovingFan => "The fan can start by itself: lock it out. Only then reach in.",
        Caution::Fall => "Roof edge, ladder, wet deck. Use the fall protection the site requires.",
        Caution::Spray => "Legionella in the mist: fan off, keep out of it. Wear a respirator.",
        Caution::WaterPressure => "Line under pressure. Open slowly, stand aside.",
        Caution::Refrigerant => {
            "Refrigerant, hot lines: gloves and glasses. Certified people only."
        }
        Caution::ConfinedSpace => {
            "Don't climb in: it may be a confined space. That takes a permit and trained people."
        }
        Caution::Chemicals => "Treated water: gloves and glasses. Ask the water treater first.",
    }
}

pub(crate) fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::AsFound => "as found",
        Stage::WaterLetIn => "after water was let in",
        Stage::Testing => "while testing",
        Stage::Corrected => "after a correction",
    }
}

pub(crate) fn reading(reading: Reading) -> &'static str {
    match reading {
        Reading::MachinesOut => "Machines out",
        Reading::Entering => "Entering water",
        Reading::Range => "Range",
        Reading::Approach => "Approach",
        Reading::BasinLevel => "Basin level",
        Reading::PumpInlet => "Pump inlet pressure",
        Reading::ControlVoltage => "Control voltage",
    }
}

pub(crate) fn reason(reason: Reason) -> String {
    match reason {
        Reason::SplitsTop2 { a, b } => {
            format!(
                "Tells the two likeliest apart: {} or {}.",
                lower_first(name(a)),
                lower_first(name(b))
            )
        }
        Reason::ConfirmsTop { mode } => {
            format!(
                "Confirms or clears the likeliest: {}.",
                lower_first(name(mode))
            )
        }
        Reason::ProvesIt { mode } => format!("Prove it: {}.", lower_first(name(mode))),
        Reason::BeforeTouching => "Look now: once anything is touched, this is gone.".into(),
        Reason::TakeAgain => "Much hangs on this one reading: take it again.".into(),
        Reason::CheapHere => "You are here and it tells something.".into(),
        Reason::WorthTheWalk { to } => format!("Worth the walk: {}.", lower_first(place(to))),
    }
}

/// What a closed trace leaves open.
pub(crate) fn unproven(open: &Unproven) -> String {
    match open {
        Unproven::NotConfirmed(check) => {
            format!(
                "Not confirmed by: {}.",
                lower_first(super::trace_checks::title(*check))
            )
        }
        Unproven::NoRefill => "The repair was not proven by a refill test.".into(),
        Unproven::NotRestarted => {
            "The machines were not seen at their usual head since the last repair.".into()
        }
        Unproven::ComesAndGoes => "It comes and goes; it was not seen to act since.".into(),
        Unproven::Alike(mode, p) => {
            format!(
                "No check at hand tells it from: {}, {:.0}%. What would isn't on the phone.",
                lower_first(name(*mode)),
                100.0 * p
            )
        }
        Unproven::Rival(mode, p) => {
            format!(
                "Not cleared: {}, {:.0}%.",
                lower_first(name(*mode)),
                100.0 * p
            )
        }
        Unproven::Contradicted(_) => "One answer does not fit this cause: take it again.".into(),
    }
}

fn lower_first(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    text
}
