//! What a refill test found, as data.

use super::fit::{Estimate, LevelEstimate, Missing};
use super::setup::FlowRange;
use crate::quantity::{Length, Ratio, VolumeRate};

/// The test's verdict. Its reasons are the findings beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Called by itself, filled well above the need, shut off by itself below
    /// the overflow.
    Pass,
    /// Works, with something to watch.
    PassWithWatch,
    /// A part of the makeup chain did not do its work.
    Fail,
    /// The marks do not support a verdict.
    NotProven,
}

/// What a finding does to the verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// One of the proofs a pass rests on.
    Proof,
    /// Worth saying, changes nothing.
    Remark,
    /// Lowers a pass to a pass with a watch.
    Watch,
    /// Keeps the test from proving anything.
    Unproven,
    /// Fails the test.
    Fail,
}

/// How the measured fill compares with the need.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cover {
    /// Measured fill before losses.
    pub gross: Estimate,
    /// What it has to cover.
    pub need: VolumeRate,
    /// Best value over need.
    pub ratio: Ratio,
    /// Lower 95 % bound over need.
    pub ratio_low: Ratio,
    /// Upper 95 % bound over need.
    pub ratio_high: Ratio,
    /// Whether the need is the design day's, not today's.
    pub design: bool,
}

/// One finding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Finding {
    /// Nothing was marked yet.
    NothingYet,
    /// The control called by itself.
    CalledByItself {
        /// Level at the call, if it is known.
        level: Option<LevelEstimate>,
    },
    /// Water ran without the call having been noted.
    CallNotNoted,
    /// Water ran this long before the call, in seconds.
    WaterBeforeCall {
        /// Seconds from water to call.
        lead_s: f64,
    },
    /// Water ran before the basin was drawn down, so nothing shows a call.
    WaterFromTheStart,
    /// The basin was drawn past the call level (or to the low limit), no call.
    NeverCalled {
        /// Deepest level read.
        lowest: Length,
    },
    /// No call yet, and the basin is not shown to be down at the call level.
    NotDownToCall {
        /// Deepest level read, if any was.
        lowest: Option<Length>,
    },
    /// The call came at another level than set.
    CallLevelOff {
        /// Level set.
        set: Length,
        /// Level found.
        found: LevelEstimate,
    },
    /// Water came after the call.
    WaterCame {
        /// Seconds from call to water, if both were seen.
        after: Result<f64, Missing>,
    },
    /// Water came, but late.
    WaterLate {
        /// Seconds from call to water.
        after_s: f64,
    },
    /// The control called and no water came.
    CalledNoWater {
        /// Seconds waited.
        waited_s: f64,
    },
    /// The control calls; too early to say that no water comes.
    WaterNotYet {
        /// Seconds waited.
        waited_s: f64,
    },
    /// The level rose or the fill shut off, yet running water was not noted.
    WaterNotNoted,
    /// Nobody marked the water, and the readings show when the level turned.
    WaterByReadings,
    /// The level rose at one pace and then at another.
    FlowChanged {
        /// When, on the test's clock.
        at_s: f64,
        /// Flow after over flow before.
        share: Ratio,
    },
    /// The fill is less than this valve passes at this mains pressure.
    FillBelowValve {
        /// Measured.
        gross: Estimate,
        /// What the valve passes.
        valve: FlowRange,
    },
    /// The fill is less than in the site's earlier test.
    FillBelowEarlier {
        /// Measured.
        gross: Estimate,
        /// Measured then.
        earlier: FlowRange,
    },
    /// The fill is as in the site's earlier test.
    FillAsEarlier {
        /// Measured then.
        earlier: FlowRange,
    },
    /// The fill covers the need with the margin.
    FillCovers(Cover),
    /// The fill covers the need, without the margin.
    FillMarginal(Cover),
    /// The fill is below the need.
    FillBelowNeed(Cover),
    /// The interval reaches across the need: cannot tell.
    FillUncertain(Cover),
    /// The fill covers today's need and not the design day's.
    FillBelowDesign(Cover),
    /// The fill covers today's need; the interval reaches across the design
    /// day's.
    FillNearDesign(Cover),
    /// The fill was not measured.
    FillNotMeasured(Missing),
    /// Today's need is not known, so the fill has nothing to be held against.
    NeedNotKnown,
    /// The drain was never noted closed: the fill may be higher than measured.
    DrainNotClosed,
    /// The fill shut off by itself.
    ShutOffByItself {
        /// Level at shut-off, if it is known.
        level: Option<LevelEstimate>,
    },
    /// The level rose past the stop level and the fill ran on.
    NoShutOff {
        /// Level reached.
        level: Length,
    },
    /// The shut-off was not waited for.
    ShutOffNotSeen,
    /// Nobody marked the shut-off, and the readings show that the level held.
    ShutOffByReadings {
        /// Level at which it held, if it is known.
        level: Option<LevelEstimate>,
    },
    /// The readings put the end of the fill at another time than the mark.
    ShutOffMarkOff {
        /// Seconds from the end in the readings to the mark.
        by_s: f64,
    },
    /// The fill stopped far short of the stop level: it was told "full" early.
    StoppedShort {
        /// Level set.
        set: Length,
        /// Level found.
        found: LevelEstimate,
    },
    /// The control called far below the level set.
    CalledLate {
        /// Level set.
        set: Length,
        /// Level found.
        found: LevelEstimate,
    },
    /// The fill came back on soon after it had stopped, drain shut: chatter.
    Chatter {
        /// How often.
        times: usize,
        /// Shortest time from shut-off to the next call or water, seconds.
        soonest_s: f64,
    },
    /// The shut-off came at another level than set.
    StopLevelOff {
        /// Level set.
        set: Length,
        /// Level found.
        found: LevelEstimate,
    },
    /// The fill ran the basin to the overflow or past it.
    PastOverflow {
        /// Level read, zero at the lip and negative above it.
        level: Length,
    },
    /// The basin stood at the overflow before the test touched it.
    FoundAtOverflow {
        /// Level read.
        level: Length,
    },
    /// The readings do not show that the shut-off came below the overflow.
    FreeboardNotShown,
    /// Water kept coming after the shut-off.
    AfterDrip {
        /// Flow into the basin after the shut-off, losses added back.
        flow: Estimate,
    },
    /// More water came in after the shut-off than the plant ever uses: the valve
    /// does not shut, and the basin will run over.
    ValvePasses {
        /// Flow into the basin after the shut-off, losses added back.
        flow: Estimate,
    },
    /// The level fell after the shut-off by more than the losses explain.
    Sag {
        /// Flow out of the basin beyond the losses.
        flow: Estimate,
    },
    /// The level held after the shut-off, as far as the readings can tell.
    Held {
        /// Upper 95 % bound of what may still come in.
        most: VolumeRate,
        /// Whether that rules out a tenth of the fill.
        told: bool,
    },
    /// Nobody watched the level after the shut-off.
    TightnessNotWatched,
    /// The basin fell slower than a drain of this bore draws it.
    DrawnSlowly {
        /// Measured, losses included.
        flow: Estimate,
        /// What a drain of this bore passes at the deepest level.
        drain: FlowRange,
    },
    /// The level fell to the pump inlet's limit before water came.
    LowLimitReached {
        /// Deepest level read.
        lowest: Length,
    },
    /// Readings were left out as gross errors.
    ReadingsLeftOut {
        /// How many.
        count: usize,
    },
    /// Marks without a usable time or level were left out.
    MarksLeftOut {
        /// How many.
        count: usize,
    },
    /// Seen once: a fault that comes and goes is not excluded.
    OneCycleOnly,
    /// Several cycles were run.
    Cycles {
        /// Cycles run to the shut-off.
        run: usize,
        /// Of these, cycles that passed, with or without a watch.
        passed: usize,
    },
}

impl Finding {
    /// What this finding does to the verdict.
    pub fn weight(&self) -> Weight {
        use Finding::*;
        match self {
            CalledByItself { .. } | WaterCame { .. } | FillCovers(_) | ShutOffByItself { .. } => {
                Weight::Proof
            }
            TightnessNotWatched
            | Held { .. }
            | DrawnSlowly { .. }
            | ReadingsLeftOut { .. }
            | MarksLeftOut { .. }
            | OneCycleOnly
            | Cycles { .. }
            | FillAsEarlier { .. }
            | DrainNotClosed => Weight::Remark,
            CallNotNoted
            | WaterBeforeCall { .. }
            | CallLevelOff { .. }
            | WaterLate { .. }
            | FillMarginal(_)
            | FillNearDesign(_)
            | WaterByReadings
            | ShutOffByReadings { .. }
            | ShutOffMarkOff { .. }
            | FlowChanged { .. }
            | FillBelowValve { .. }
            | FillBelowEarlier { .. }
            | Chatter { .. }
            | StopLevelOff { .. }
            | FoundAtOverflow { .. }
            | AfterDrip { .. }
            | Sag { .. }
            | LowLimitReached { .. } => Weight::Watch,
            NothingYet
            | WaterFromTheStart
            | NotDownToCall { .. }
            | WaterNotYet { .. }
            | WaterNotNoted
            | FillUncertain(_)
            | FillNotMeasured(_)
            | NeedNotKnown
            | ShutOffNotSeen
            | FreeboardNotShown => Weight::Unproven,
            NeverCalled { .. }
            | CalledNoWater { .. }
            | FillBelowNeed(_)
            | FillBelowDesign(_)
            | StoppedShort { .. }
            | ValvePasses { .. }
            | CalledLate { .. }
            | NoShutOff { .. }
            | PastOverflow { .. } => Weight::Fail,
        }
    }
}

/// The reading or mark that would help most next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NextReading {
    /// Begin: read the level and open the drain.
    Begin,
    /// Draw farther down, to the call level.
    DrawFarther,
    /// Wait for water at the fill.
    WaitForWater,
    /// Note when water runs at the fill.
    NoteWater,
    /// Note when the drain was closed.
    NoteDrainClosed,
    /// Read the level now, while it fills.
    LevelNow,
    /// Read the level again later, while it still fills.
    LevelLater,
    /// Wait for the fill to stop by itself.
    WaitForShutOff,
    /// Read the level just after the fill has stopped.
    LevelAtShutOff,
    /// Read the level again when as much time has passed since the fill stopped as
    /// it took.
    LevelAfterShutOff,
    /// Measure the basin.
    BasinSize,
    /// Work out today's makeup need.
    MakeupNeed,
    /// Run the test again from the start.
    RunAgain,
}
