//! The one table of fault modes: where each belongs, how often it is met, how
//! much of it comes and goes, whether it empties the basin, and how long
//! putting it right takes.
//!
//! Weights are relative to all calls for high head on water-cooled machines
//! (they add to about 1300; the posterior divides by the sum). Hardly
//! anything is published for makeup chains. What is, and what was made of it:
//!
//! - Weibull lives of a widely copied reliability table: chance of failing
//!   within a year 0.05 AC motor, 0.09 solenoid valve, 0.08 control valve,
//!   0.17 solid-state controller, 0.17 centrifugal pump, 0.36 transducer.
//!   Marked [`Basis::Weibull`]: the weights of such parts stand to each other
//!   as these figures do, shared among the ways a part fails.
//! - An equipment insurer (2015): 60-70 % of breakdowns electrical, 30-40 %
//!   mechanical. Marked [`Basis::Insurer`]: used for the split between power
//!   and water side of the fill.
//! - All else is judgement, marked so. Wet, fouled sensors get more than
//!   solid-state parts.

use super::group::{Group, Place};
use crate::quantity::named::by_name;

/// Where a prior comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Scaled from published Weibull lives.
    Weibull,
    /// Scaled from an insurer's split into electrical and mechanical.
    Insurer,
    /// Judgement: common practice, no source.
    Judgement,
}

/// How surely a mode empties the basin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lowers {
    /// It has nothing to do with the level, or raises it.
    No,
    /// Sometimes: under load, or slowly.
    Sometimes,
    /// Nearly always.
    Surely,
}

/// One row of the table.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// The part of the plant.
    pub group: Group,
    /// Where the part is found.
    pub place: Place,
    /// Weight among all calls, about per thousand.
    pub weight: f32,
    /// Percent of its cases that come and go by themselves.
    pub comes_and_goes: u8,
    /// Whether it empties the basin.
    pub lowers: Lowers,
    /// Minutes to put it right, parts on hand.
    pub minutes: u16,
    /// Where the weight comes from.
    pub basis: Basis,
}

macro_rules! modes {
    ($($(#[$doc:meta])* $name:ident: $group:ident $place:ident $weight:literal $share:literal
        $lowers:ident $minutes:literal $basis:ident;)* = general $($(#[$gdoc:meta])* $general:ident
        = $of:ident $at:ident;)*) => {
        /// One way the plant can be at fault.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Mode {
            $($(#[$doc])* $name,)*
            $($(#[$gdoc])* $general,)*
        }
        by_name!(Mode: $($name)* $($general)*);

        impl Mode {
            /// Every mode the trace tells apart, in a fixed order.
            pub const ALL: [Mode; [$(Mode::$name),*].len()] = [$(Mode::$name),*];

            /// Causes that name a part of the plant without saying which
            /// fault. The trace never suspects them, but a person may close a
            /// call with one, and old entries do.
            pub const GENERAL: [Mode; [$(Mode::$general),*].len()] = [$(Mode::$general),*];
        }

        pub(super) const TABLE: [Row; Mode::ALL.len()] = [$(Row {
            group: Group::$group,
            place: Place::$place,
            weight: $weight,
            comes_and_goes: $share,
            lowers: Lowers::$lowers,
            minutes: $minutes,
            basis: Basis::$basis,
        }),*];

        pub(super) const GENERAL: [(Group, Place); Mode::GENERAL.len()] =
            [$((Group::$of, Place::$at)),*];
    };
}

modes! {
    /// Condenser tubes fouled or scaled.
    CondenserFouled: Machine MachineRoom 175.0 0 No 120 Judgement;
    /// The machine's water regulating valve does not open enough.
    RegulatingValve: Machine MachineRoom 75.0 30 No 60 Judgement;
    /// Air or other gas in the condenser.
    NonCondensables: Machine MachineRoom 45.0 0 No 90 Judgement;
    /// Too much refrigerant.
    Overcharge: Machine MachineRoom 45.0 0 No 60 Judgement;
    /// The head pressure control trips early.
    PressureControl: Machine MachineRoom 50.0 40 No 30 Judgement;
    /// The machine's own water strainer is blocked.
    BranchStrainer: Machine MachineRoom 55.0 5 No 20 Judgement;
    /// The machine's own hand valve is shut or throttled.
    BranchValve: Machine MachineRoom 25.0 0 No 5 Judgement;
    /// This machine carries more than it was built for.
    MachineOverload: Machine MachineRoom 32.0 60 No 15 Judgement;
    /// The day is hotter, wetter or busier than the tower was sized for.
    ConditionsBeyondDesign: Conditions Roof 60.0 60 No 15 Judgement;
    /// The condenser pump does not run.
    PumpStopped: CondenserWater Basement 28.0 30 No 45 Weibull;
    /// The condenser pump runs backwards.
    PumpBackwards: CondenserWater Basement 4.0 0 No 20 Judgement;
    /// Pump worn, or its coupling slipping.
    PumpWorn: CondenserWater Basement 14.0 10 No 180 Weibull;
    /// The pump's strainer is blocked.
    PumpStrainer: CondenserWater Basement 36.0 5 No 25 Judgement;
    /// Air trapped in pump or loop.
    AirBound: CondenserWater Basement 14.0 40 No 20 Judgement;
    /// A common valve of the loop is throttled.
    LoopValve: CondenserWater Basement 10.0 5 No 10 Judgement;
    /// The basin's outlet screen or equalizer is choked.
    SuctionScreen: CondenserWater Roof 14.0 15 No 20 Judgement;
    /// The tower fan does not run.
    FanStopped: TowerAir Roof 34.0 35 No 60 Weibull;
    /// The tower fan runs backwards.
    FanBackwards: TowerAir Roof 5.0 0 No 20 Judgement;
    /// The fan belt slips or is off.
    BeltOff: TowerAir Roof 32.0 15 No 30 Judgement;
    /// The fan's thermostat or drive holds it slow.
    FanControl: TowerAir Roof 20.0 45 No 40 Weibull;
    /// The fill is scaled or fouled.
    FillFouled: TowerAir Roof 24.0 0 No 240 Judgement;
    /// Louvers, eliminators or inlet blocked.
    AirInlet: TowerAir Roof 9.0 10 No 30 Judgement;
    /// The tower breathes its own discharge air.
    Recirculation: TowerAir Roof 8.0 70 No 30 Judgement;
    /// Spray nozzles or hot deck blocked.
    NozzlesBlocked: TowerWater Roof 16.0 5 No 60 Judgement;
    /// One cell gets too little water.
    CellUneven: TowerWater Roof 6.0 10 No 20 Judgement;
    /// The tower's bypass passes hot water to the basin.
    TowerBypass: TowerWater Basement 8.0 30 No 40 Weibull;
    /// A wet film bridges the probe.
    ProbeFilm: Sensing Roof 56.0 65 Surely 25 Judgement;
    /// Foam bridges the probe.
    ProbeFoam: Sensing Roof 19.0 80 Surely 30 Judgement;
    /// The probe's cable is shorted.
    ProbeCableShort: Sensing Roof 7.0 40 Surely 45 Judgement;
    /// Moisture in the holder's cap bridges the terminals.
    HolderMoisture: Sensing Roof 14.0 65 Surely 15 Judgement;
    /// The controller says full whatever the probe says.
    ControllerStuckFull: Sensing Basement 7.0 25 Surely 30 Weibull;
    /// The sensing pipe or still well is plugged.
    StillWell: Sensing Roof 8.0 20 Surely 25 Judgement;
    /// The float is jammed up.
    FloatJammedUp: Sensing Roof 45.0 35 Surely 20 Judgement;
    /// The level transmitter reads high.
    TransmitterHigh: Sensing Roof 36.0 35 Surely 40 Weibull;
    /// The call level is set too low.
    CallSetLow: Sensing Roof 8.0 0 Sometimes 20 Judgement;
    /// The reference electrode is lost: it fills for ever.
    ReferenceLost: Sensing Roof 6.0 25 No 30 Judgement;
    /// The float is waterlogged: it fills for ever.
    FloatSunk: Sensing Roof 10.0 5 No 20 Judgement;
    /// The control supply is off at the panel.
    SupplyLost: FillPower Basement 9.0 35 Surely 15 Insurer;
    /// The control fuse is blown.
    FuseBlown: FillPower Basement 8.0 5 Surely 15 Insurer;
    /// The control transformer has failed.
    TransformerFailed: FillPower Basement 6.0 15 Surely 40 Insurer;
    /// The disconnect is open.
    DisconnectOff: FillPower Basement 8.0 0 Surely 5 Judgement;
    /// The controller has power and does nothing.
    ControllerDead: FillPower Basement 8.0 25 Surely 45 Weibull;
    /// The relay's contact is burnt and does not close.
    RelayContactOpen: FillPower Basement 13.0 40 Surely 30 Insurer;
    /// The relay's contact is welded: it fills for ever.
    RelayContactWelded: FillPower Basement 3.0 30 No 30 Insurer;
    /// A joint or conductor of high resistance starves the coil.
    WiringHighResistance: FillPower Basement 10.0 45 Surely 45 Insurer;
    /// A conductor to the fill valve is broken.
    WiringOpen: FillPower Basement 7.0 45 Surely 45 Insurer;
    /// The fill valve's coil is open.
    CoilOpen: FillPower Basement 16.0 12 Surely 20 Weibull;
    /// The coil is weak: shorted turns, wrong voltage.
    CoilWeak: FillPower Basement 6.0 50 Surely 20 Weibull;
    /// The fill valve's body sticks shut.
    ValveStuck: FillValve Basement 14.0 35 Surely 45 Weibull;
    /// The pilot hole is blocked.
    PilotBlocked: FillValve Basement 10.0 35 Surely 35 Weibull;
    /// The diaphragm is torn.
    DiaphragmTorn: FillValve Basement 8.0 10 Surely 40 Weibull;
    /// The fill valve is installed backwards.
    ValveBackwards: FillValve Basement 1.5 0 Surely 45 Judgement;
    /// Too little pressure difference to lift the pilot valve.
    LowDifferential: FillValve Basement 5.0 50 Surely 60 Judgement;
    /// The fill valve passes when shut.
    ValvePassing: FillValve Basement 12.0 25 No 40 Weibull;
    /// A hand valve in the makeup line is shut.
    HandValveShut: MakeupLine Basement 18.0 0 Surely 5 Judgement;
    /// The makeup strainer is blocked.
    StrainerBlocked: MakeupLine Basement 18.0 10 Surely 20 Judgement;
    /// The backflow preventer sticks.
    BackflowStuck: MakeupLine Mains 6.0 20 Surely 60 Judgement;
    /// The pressure reducing valve gives too little.
    ReducingValve: MakeupLine Mains 6.0 25 Surely 40 Judgement;
    /// Supply pressure in the street or building is low.
    MainsLow: MakeupLine Mains 8.0 55 Surely 20 Judgement;
    /// The makeup line is frozen.
    LineFrozen: MakeupLine Roof 3.0 50 Surely 60 Judgement;
    /// The bleed is stuck open.
    BleedStuckOpen: WaterLoss Roof 9.0 25 Sometimes 30 Weibull;
    /// The bleed control calls too long.
    BleedOverset: WaterLoss Basement 5.0 30 Sometimes 20 Judgement;
    /// Basin or piping leaks.
    BasinLeak: WaterLoss Roof 8.0 5 Sometimes 90 Judgement;
    /// The overflow is set too low.
    OverflowLow: WaterLoss Roof 4.0 0 Sometimes 15 Judgement;
    /// The basin's drain is ajar.
    DrainAjar: WaterLoss Roof 6.0 5 Sometimes 10 Judgement;
    /// The loop drains back when the pump stops.
    DrainsBack: WaterLoss Basement 6.0 40 Sometimes 60 Judgement;
    = general
    /// One machine's own fault, not narrowed.
    MachineFault = Machine MachineRoom;
    /// The tower is short of air, not narrowed.
    TowerAirSide = TowerAir Roof;
    /// The loop is short of water, not narrowed.
    WaterFlowLow = CondenserWater Basement;
    /// The fill control is without power, not narrowed.
    ControlPowerLost = FillPower Basement;
    /// The level sensor reports full over a low basin, not narrowed.
    SensorFalseFull = Sensing Roof;
    /// Water leaves the basin unseen, not narrowed.
    BleedOrLeak = WaterLoss Roof;
}
