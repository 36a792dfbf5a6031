//! The one table of checks: where each is done, how long it takes, what must
//! be opened, what can hurt, and what it can say. Minutes: common practice, no
//! source. Level control and fill valve stand with the pumps, the probe at the
//! tower.

use crate::quantity::named::by_name;

use super::access::{Access, Caution};
use crate::trace::answer::Answer;
use crate::trace::mode::Place;

/// One row of the table.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Row {
    pub place: Place,
    pub minutes: u8,
    pub access: Access,
    pub cautions: &'static [Caution],
    pub answers: &'static [Answer],
    /// Whether doing it disturbs what was found.
    pub disturbs: bool,
}

macro_rules! checks {
    ($($(#[$doc:meta])* $name:ident: $place:ident $minutes:literal $access:ident $care:ident
        $($touch:ident)? [$($answer:ident)*];)*) => {
        /// Something to look at, measure or try.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Check {
            $($(#[$doc])* $name,)*
        }
        by_name!(Check: $($name)*);

        impl Check {
            /// Every check, in the order a plain list would ask them: from
            /// the machines through the tower to the street.
            pub const ALL: [Check; [$(Check::$name),*].len()] = [$(Check::$name),*];
        }

        pub(super) const TABLE: [Row; Check::ALL.len()] = [$(Row {
            place: Place::$place,
            minutes: $minutes,
            access: Access::$access,
            cautions: $care,
            answers: &[$(Answer::$answer),*],
            disturbs: !<[&str]>::is_empty(&[$(stringify!($touch))?]),
        }),*];
    };
}

const NONE: &[Caution] = &[];
const LIVE: &[Caution] = &[Caution::LiveVoltage];
const ROOF: &[Caution] = &[Caution::Fall, Caution::Spray];
const FAN: &[Caution] = &[Caution::MovingFan, Caution::Fall, Caution::Spray];
const WATER: &[Caution] = &[Caution::WaterPressure];
const GAS: &[Caution] = &[Caution::Refrigerant, Caution::LiveVoltage];
const PROBE: &[Caution] = &[
    Caution::LiveVoltage,
    Caution::Spray,
    Caution::Chemicals,
    Caution::Fall,
];
const BASIN: &[Caution] = &[
    Caution::Fall,
    Caution::Spray,
    Caution::Chemicals,
    Caution::ConfinedSpace,
];
const JAR: &[Caution] = &[Caution::Fall, Caution::Spray, Caution::Chemicals];
const CALLED: &[Caution] = &[Caution::LiveVoltage, Caution::WaterPressure];
const TREATED: &[Caution] = &[Caution::Chemicals];

checks! {
    /// How many machines are out on head pressure.
    MachinesOut: MachineRoom 2 Open NONE [OneMachine TwoMachines ThreeOrMore];
    /// Temperature of the water to the machines against the usual.
    EnteringWater: MachineRoom 2 Open NONE [WaterHot WaterUsual];
    /// Range against the usual.
    RangeWidth: MachineRoom 4 Open NONE [RangeWide RangeUsual];
    /// The tripped machine's own condenser, regulating valve and charge.
    MachineOwn: MachineRoom 12 MachinePanel GAS [OwnFaultFound MachineHealthy];
    /// This machine's range against its neighbors'.
    MachineRange: MachineRoom 5 Open NONE [RangeWide RangeUsual];
    /// Condensing temperature over the water leaving this machine.
    CondenserOverWater: MachineRoom 6 MachinePanel GAS [OverUsual OverHigh];
    /// The machine's own hand valves.
    BranchValves: MachineRoom 2 Open WATER [AllOpen FoundShut];
    /// The machine's own strainer.
    BranchStrainer: MachineRoom 8 Open WATER touches [StrainerClean StrainerBlocked];
    /// The regulating valve flushed open by hand.
    RegulatingByHand: MachineRoom 4 Open WATER touches [HeadStays HeadFalls];
    /// The regulating valve taken through its travel.
    RegulatingTravel: MachineRoom 6 Open WATER touches [Sound NotRight];
    /// What this machine carries today.
    MachineLoad: MachineRoom 4 Open NONE [WithinDesign BeyondDesign];
    /// Weather and load in the hour it tripped.
    TripHour: MachineRoom 4 Open NONE [WithinDesign BeyondDesign];
    /// Where the pressure control trips.
    CutOutTest: MachineRoom 12 MachinePanel GAS touches [Sound NotRight];
    /// Liquid subcooling and charge.
    ChargeLook: MachineRoom 10 MachinePanel GAS [Sound NotRight];
    /// Standing pressure against the water's temperature.
    StandingPressure: MachineRoom 30 MachinePanel GAS touches [Sound NotRight];
    /// The condenser opened.
    TubesLook: MachineRoom 60 MachinePanel GAS touches [Sound NotRight];
    /// The pump gauges.
    PumpPressure: Basement 3 Open NONE [PressureSteady PressureSurging PressureLow];
    /// Pump current.
    PumpCurrent: Basement 5 Open LIVE [CurrentRight CurrentLow NoCurrent];
    /// Trip flags and fault memory of the fan's and the pump's starters.
    TripMemory: Basement 4 Open LIVE [NoTrips FanTripped PumpTripped];
    /// The way the pump turns.
    PumpRotation: Basement 3 Open LIVE [Sound NotRight];
    /// Pressure drop over the pump's strainer.
    PumpStrainerDrop: Basement 4 Open WATER [StrainerClean StrainerBlocked];
    /// The pump's head against a closed valve.
    ShutOffHead: Basement 5 Open WATER touches [Sound NotRight];
    /// The loop's common valves.
    LoopValves: Basement 5 Open WATER [AllOpen FoundShut];
    /// Air from the loop's vents.
    VentAir: Basement 6 Open WATER touches [Sound NotRight];
    /// The basin's level as found.
    BasinOnArrival: Roof 2 Open ROOF [BasinLow BasinNormal];
    /// What the control showed over the basin, before anyone touched it.
    CallAsFound: Basement 2 Open LIVE [Calls Satisfied Dark];
    /// The basin's level at this moment.
    LevelNow: Roof 1 Open ROOF [BasinLow BasinComingUp BasinNormal];
    /// Approach against what it should be today.
    ApproachToday: Roof 6 Open ROOF [ApproachHigh ApproachUsual ApproachLow];
    /// Fan running, air through the fill.
    FanAndAir: Roof 4 Open FAN [AirGood AirPoor];
    /// How the fan runs.
    FanRuns: Roof 2 Open FAN [FanFull FanSlow FanStill];
    /// The way the fan turns.
    FanRotation: Roof 3 Open FAN [Sound NotRight];
    /// The fan's belt and sheaves.
    BeltLook: Roof 5 Fan FAN [Sound NotRight];
    /// What the fan's thermostat or drive is told.
    FanCommand: Roof 6 Open LIVE [Sound NotRight];
    /// The fill.
    FillLook: Roof 6 Open FAN [Sound NotRight];
    /// Louvers, eliminators and screens.
    InletLook: Roof 3 Open ROOF [Sound NotRight];
    /// Wet bulb at the inlet against a spot well away.
    InletAir: Roof 6 Open ROOF [Sound NotRight];
    /// Spray or hot deck.
    SprayLook: Roof 4 Open FAN [Sound NotRight];
    /// Water to each cell.
    CellLook: Roof 4 Open ROOF [Sound NotRight];
    /// The tower's bypass valve.
    TowerBypassLook: Basement 4 Open WATER [Sound NotRight];
    /// The basin's outlet screen and equalizer.
    SuctionLook: Roof 5 Open BASIN [Sound NotRight];
    /// Weather and load against the design point.
    WeatherAndLoad: Roof 3 Open ROOF [BeyondDesign WithinDesign];
    /// Foam on the basin.
    FoamLook: Roof 1 Open ROOF [NoFoam Foam];
    /// Basin water shaken in a jar.
    FoamJar: Roof 3 Open JAR [NoFoam Foam];
    /// Bleed, overflow, drain and leaks.
    WaterLoss: Roof 5 Open ROOF [NoLoss LosingWater];
    /// The bleed, while nothing calls for it.
    BleedLook: Roof 3 Open TREATED [NoLoss LosingWater];
    /// The bleed's settings.
    BleedSettings: Basement 5 Open TREATED [Sound NotRight];
    /// The overflow's height and whether it runs.
    OverflowLook: Roof 3 Open ROOF [Sound NotRight];
    /// The drain.
    DrainLook: Roof 2 Open ROOF [NoLoss LosingWater];
    /// Level with the fill shut, ten minutes.
    LevelHold: Roof 13 Open ROOF touches [NoLoss LosingWater];
    /// What the level does when the pump stops.
    PumpStopRise: Basement 8 Open LIVE touches [Sound NotRight];
    /// Conductivity against its usual.
    Conductivity: Roof 3 Open TREATED [CyclesUsual CyclesHigh CyclesLow];
    /// Supply voltage at the level control.
    ControlVoltage: Basement 3 Panel LIVE [VoltageGood VoltageLow NoVoltage];
    /// The disconnect's handle.
    DisconnectLook: Basement 1 Open LIVE [SwitchedOn SwitchedOff];
    /// Voltage into the transformer.
    PanelSupply: Basement 3 Panel LIVE [VoltageGood NoVoltage];
    /// Voltage out of the transformer.
    TransformerOutput: Basement 3 Panel LIVE [VoltageGood VoltageLow NoVoltage];
    /// The control fuse.
    FuseCheck: Basement 3 Panel LIVE [FuseGood FuseBlown];
    /// The call level against its mark.
    CallMark: Roof 8 Open BASIN [Sound NotRight];
    /// Probe lifted, wiped and dried: does the control call.
    ProbeDried: Roof 8 Holder PROBE touches [Calls NoCall];
    /// Wires off at the holder: does the control call.
    WiresOffHolder: Roof 5 Holder PROBE touches [Calls NoCall];
    /// The holder's cap, opened.
    HolderCap: Roof 3 Holder PROBE touches [CapDry CapWet];
    /// The holder wetted with basin water: does the control call again.
    HolderWetted: Roof 5 Holder PROBE touches [Calls NoCall];
    /// Resistance across the dry probe holder.
    ProbeFilm: Roof 8 Holder PROBE touches [HolderClean HolderFilmed];
    /// The same with its terminals wiped dry.
    TerminalsDried: Roof 5 Holder PROBE touches [HolderClean HolderFilmed];
    /// The float moved by hand.
    FloatByHand: Roof 4 Open BASIN touches [Sound NotRight];
    /// The float taken out and looked at.
    FloatLook: Roof 8 Holder BASIN touches [FloatFree FloatCaught FloatHeavy];
    /// The transmitter's signal against the tape.
    LevelSignal: Basement 6 Panel LIVE [SignalAgrees SignalHigh];
    /// The sensing pipe or still well blown through.
    StillWellLook: Roof 8 Open BASIN touches [Sound NotRight];
    /// A known resistor in place of the probe.
    Substitution: Basement 6 Panel LIVE touches [FollowsResistor IgnoresResistor];
    /// The relay tapped while it calls.
    RelayTap: Basement 3 Panel LIVE touches [Sound NotRight];
    /// Called ten times over: pulls and flows each time.
    CycleCall: Basement 7 Panel CALLED touches [Sound NotRight];
    /// Voltage across the output contact while the control calls.
    ContactDrop: Basement 3 Panel LIVE [ContactClosed ContactOpen];
    /// Voltage at the output terminals while the control calls.
    OutputVoltage: Basement 3 Panel LIVE [VoltageGood NoVoltage];
    /// Joints and terminals to the fill valve.
    Joints: Basement 8 ValveBox LIVE touches [Sound NotRight];
    /// Voltage at the coil while the control calls.
    CoilVoltage: Basement 4 ValveBox LIVE [VoltageGood VoltageLow NoVoltage];
    /// Current through the coil while the control calls.
    CoilCurrent: Basement 4 ValveBox LIVE [CurrentRight CurrentLow NoCurrent];
    /// Resistance of the coil, off the circuit.
    CoilResistance: Basement 6 ValveBox LIVE touches [CoilSound CoilReadsOpen CoilReadsLow];
    /// Coil pulling while the control calls.
    CoilPull: Basement 2 Open LIVE [Pulls NoPull];
    /// Flow into the basin while the control calls.
    FlowOnCall: Basement 3 Open WATER [FullFlow WeakFlow NoFlow];
    /// Whether the fill stops when the control is satisfied.
    FillStops: Basement 4 Open WATER [FillShuts RunsOn];
    /// Whether the fill stops when its valve is told to shut at the valve.
    ToldToShut: Basement 4 ValveBox CALLED touches [FillShuts RunsOn];
    /// Fill valve opened by hand, or the bypass.
    ForceValve: Basement 5 Open WATER touches [FullFlow WeakFlow NoFlow];
    /// The arrow on the fill valve.
    ValveArrow: Basement 1 Open NONE [Sound NotRight];
    /// The fill valve opened up.
    ValveStrip: Basement 18 Bonnet WATER touches [ValveSound PilotDirty ValveWorn];
    /// The diaphragm against the light.
    DiaphragmLook: Basement 3 Bonnet WATER touches [Sound NotRight];
    /// Pressure difference over the fill valve against its nameplate.
    Differential: Basement 5 Open WATER [Sound NotRight];
    /// Positions of the hand valves in the makeup line.
    HandValves: Basement 3 Open WATER [AllOpen FoundShut];
    /// Strainer blow-off.
    StrainerBlowOff: Basement 6 Open WATER touches [StrainerClean StrainerBlocked];
    /// Pressure before the fill valve while it should flow.
    PressureAtValve: Basement 4 Open WATER [MainsGood MainsLow];
    /// The makeup line where it runs cold.
    LineCold: Roof 4 Open ROOF [Sound NotRight];
    /// Pressure after the reducing valve while flowing.
    PressureAfterReducer: Mains 4 Open WATER [MainsGood MainsLow];
    /// The backflow preventer.
    BackflowLook: Mains 5 Open WATER [Sound NotRight];
    /// Supply pressure while flowing.
    MainsPressure: Mains 4 Open WATER [MainsGood MainsLow];
    /// Head, water in and out and current of one machine recorded until it
    /// trips again.
    MachineRecorder: MachineRoom 45 MachinePanel GAS [HeadRose TrippedEarly RangeWidened];
    /// Level, call and coil recorded until it happens again. Fitting and
    /// coming back are counted, the wait is not.
    LevelRecorder: Basement 45 Panel LIVE [LevelKept SaidFull CalledInVain];
    /// Pump, fan and water temperatures recorded until it happens again.
    LoopRecorder: Basement 45 Open LIVE [LoopAsUsual FlowFell WaterRose];
    /// The coil's voltage in the level recorder's record, when it happened.
    CoilInRecord: Basement 3 Open NONE [VoltageGood VoltageLow NoVoltage];
    /// The pump's current in the loop recorder's record, when it happened.
    PumpInRecord: Basement 3 Open NONE [CurrentRight CurrentLow NoCurrent];
    /// The fan in the loop recorder's record, when it happened.
    FanInRecord: Basement 3 Open NONE [RanOn StoppedUntold ToldToStop];
    /// The machine's load in its recorder's record, when it tripped.
    LoadInRecord: MachineRoom 3 Open NONE [WithinDesign BeyondDesign];
    /// The timed refill test.
    RefillTest: Roof 25 Open BASIN touches [Refilled RefilledSlowly DidNotRefill];
    /// The machines run up again after a repair, until their heads stand still.
    Restart: MachineRoom 15 Open GAS [HeadsUsual HeadsHigh];
}
