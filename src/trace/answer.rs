//! Answers a check can have.

use crate::quantity::named::by_name;

/// What a check said. Each check allows a few of these
/// ([`Check::answers`](super::Check::answers)) and always
/// [`Answer::CouldNot`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// The check was not possible; tells nothing.
    CouldNot,
    /// One machine is out.
    OneMachine,
    /// Two machines are out.
    TwoMachines,
    /// Three or more machines are out.
    ThreeOrMore,
    /// The water stands below the call level.
    BasinLow,
    /// The level is rising.
    BasinComingUp,
    /// The water stands at its working level.
    BasinNormal,
    /// Water to the machines is hotter than usual.
    WaterHot,
    /// Water to the machines is as warm as usual.
    WaterUsual,
    /// The range is wider than usual.
    RangeWide,
    /// The range is as usual.
    RangeUsual,
    /// The approach is higher than it should be today.
    ApproachHigh,
    /// The approach is as it should be today.
    ApproachUsual,
    /// The approach is lower than it should be today.
    ApproachLow,
    /// The fan runs and air moves through the fill.
    AirGood,
    /// Fan stopped, slow or backwards, or the fill is fouled.
    AirPoor,
    /// The pump gauges stand still where they usually do.
    PressureSteady,
    /// The pump gauges swing.
    PressureSurging,
    /// The pump gauges stand still but low.
    PressureLow,
    /// The voltage is right.
    VoltageGood,
    /// There is voltage, but too little.
    VoltageLow,
    /// There is no voltage.
    NoVoltage,
    /// The control calls for water.
    Calls,
    /// The control does not call for water.
    NoCall,
    /// The control is satisfied: it takes the basin for full.
    Satisfied,
    /// The control shows nothing at all.
    Dark,
    /// The coil pulls.
    Pulls,
    /// The coil does not pull.
    NoPull,
    /// Full flow into the basin.
    FullFlow,
    /// Some flow, much less than full.
    WeakFlow,
    /// No flow.
    NoFlow,
    /// Every hand valve stands open.
    AllOpen,
    /// A hand valve was found shut or partly shut.
    FoundShut,
    /// The strainer blew clean water freely.
    StrainerClean,
    /// The strainer was blocked.
    StrainerBlocked,
    /// Supply pressure is right.
    MainsGood,
    /// Supply pressure is low.
    MainsLow,
    /// The dry probe holder is clean.
    HolderClean,
    /// Film, scale or damp bridges the probe holder.
    HolderFilmed,
    /// No foam on the basin.
    NoFoam,
    /// Foam stands on the basin.
    Foam,
    /// No water goes where it should not.
    NoLoss,
    /// Water leaves by bleed, overflow, leak or drain.
    LosingWater,
    /// The control's output follows the test resistor.
    FollowsResistor,
    /// The control's output ignores the test resistor.
    IgnoresResistor,
    /// The basin refilled in its usual time; whether the fill shut is asked apart.
    Refilled,
    /// The basin refilled too slowly.
    RefilledSlowly,
    /// The basin did not refill.
    DidNotRefill,
    /// The machine has a fault of its own.
    OwnFaultFound,
    /// The machine has none of its own.
    MachineHealthy,
    /// Weather or load is past the design point.
    BeyondDesign,
    /// Weather and load are within design.
    WithinDesign,
    /// As it should be.
    Sound,
    /// Not as it should be.
    NotRight,
    /// Condensing over leaving water as usual.
    OverUsual,
    /// Condensing over leaving water too far.
    OverHigh,
    /// Head stays where it is.
    HeadStays,
    /// Head falls at once.
    HeadFalls,
    /// Current as on the nameplate.
    CurrentRight,
    /// Current well under the nameplate.
    CurrentLow,
    /// No current.
    NoCurrent,
    /// The fan runs at full speed.
    FanFull,
    /// The fan runs slow.
    FanSlow,
    /// The fan stands still.
    FanStill,
    /// Conductivity as usual.
    CyclesUsual,
    /// Conductivity over its usual.
    CyclesHigh,
    /// Conductivity under its usual.
    CyclesLow,
    /// The handle is on.
    SwitchedOn,
    /// The handle is off.
    SwitchedOff,
    /// The fuse is good.
    FuseGood,
    /// The fuse is blown.
    FuseBlown,
    /// The cap is dry inside.
    CapDry,
    /// The cap is wet inside.
    CapWet,
    /// The float moves freely.
    FloatFree,
    /// The float is caught or weeded up.
    FloatCaught,
    /// The float is heavy with water.
    FloatHeavy,
    /// The signal agrees with the tape.
    SignalAgrees,
    /// The signal says more than the tape.
    SignalHigh,
    /// Next to nothing across the contact: closed.
    ContactClosed,
    /// Full voltage across the contact: open.
    ContactOpen,
    /// The coil's resistance is right.
    CoilSound,
    /// The coil reads open.
    CoilReadsOpen,
    /// The coil reads too low.
    CoilReadsLow,
    /// The fill shuts.
    FillShuts,
    /// The fill runs on.
    RunsOn,
    /// The fill valve is sound inside.
    ValveSound,
    /// The pilot hole is dirty.
    PilotDirty,
    /// Diaphragm, seat or body are worn.
    ValveWorn,
    /// The head rose with the water until it tripped.
    HeadRose,
    /// It tripped at a head that was not high.
    TrippedEarly,
    /// Its range widened first.
    RangeWidened,
    /// When it tripped the basin had kept its level.
    LevelKept,
    /// The level fell and the control said full.
    SaidFull,
    /// The control called and the level fell.
    CalledInVain,
    /// When it tripped the loop ran as usual.
    LoopAsUsual,
    /// The flow fell first.
    FlowFell,
    /// The water off the tower rose first.
    WaterRose,
    /// Nothing tripped.
    NoTrips,
    /// The fan's starter or drive tripped.
    FanTripped,
    /// The pump's starter tripped.
    PumpTripped,
    /// It ran on as told.
    RanOn,
    /// It was told to run, and stopped or fell back.
    StoppedUntold,
    /// It was told to stop or to run slow.
    ToldToStop,
    /// Every machine runs at its usual head again.
    HeadsUsual,
    /// A head stands too high still.
    HeadsHigh,
}
by_name!(Answer: CouldNot OneMachine TwoMachines ThreeOrMore BasinLow BasinComingUp BasinNormal WaterHot WaterUsual RangeWide RangeUsual ApproachHigh ApproachUsual ApproachLow AirGood AirPoor PressureSteady PressureSurging PressureLow VoltageGood VoltageLow NoVoltage Calls NoCall Satisfied Dark Pulls NoPull FullFlow WeakFlow NoFlow AllOpen FoundShut StrainerClean StrainerBlocked MainsGood MainsLow HolderClean HolderFilmed NoFoam Foam NoLoss LosingWater FollowsResistor IgnoresResistor Refilled RefilledSlowly DidNotRefill OwnFaultFound MachineHealthy BeyondDesign WithinDesign Sound NotRight OverUsual OverHigh HeadStays HeadFalls CurrentRight CurrentLow NoCurrent FanFull FanSlow FanStill CyclesUsual CyclesHigh CyclesLow SwitchedOn SwitchedOff FuseGood FuseBlown CapDry CapWet FloatFree FloatCaught FloatHeavy SignalAgrees SignalHigh ContactClosed ContactOpen CoilSound CoilReadsOpen CoilReadsLow FillShuts RunsOn ValveSound PilotDirty ValveWorn HeadRose TrippedEarly RangeWidened LevelKept SaidFull CalledInVain LoopAsUsual FlowFell WaterRose NoTrips FanTripped PumpTripped RanOn StoppedUntold ToldToStop HeadsUsual HeadsHigh);
