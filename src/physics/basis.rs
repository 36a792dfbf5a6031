//! What every figure on a screen stands on: which calculation it came from.
//!
//! The words of the formula and its source are in `words`; this room names the
//! figures.

mod chemistry;
mod circuit;
mod electrode;
mod head;
mod loop_heat;
mod piping;
mod tower;

pub use chemistry::ChemistryFigure;
pub use circuit::CircuitFigure;
pub use electrode::ElectrodeFigure;
pub use head::HeadFigure;
pub use loop_heat::LoopHeatFigure;
pub use piping::PipingFigure;
pub use tower::TowerFigure;

/// A calculated figure a person may ask about: "how do we know?"
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Figure {
    /// Atmospheric pressure from altitude.
    AtmosphericPressure,
    /// Wet bulb from dry bulb and relative humidity.
    WetBulb,
    /// Relative humidity from dry and wet bulb.
    RelativeHumidity,
    /// Leaving water less wet bulb.
    Approach,
    /// Entering less leaving water.
    Range,
    /// Range over range plus approach.
    Effectiveness,
    /// Merkel number of a duty.
    MerkelNumber,
    /// Leaving water predicted from the tower's characteristic.
    LeavingWater,
    /// Heat rejected from flow and range.
    HeatRejected,
    /// Nominal tower tons.
    TowerTons,
    /// Evaporation by Poppe's mass and energy balance along the fill.
    Evaporation,
    /// Evaporation by the field rule.
    EvaporationRule,
    /// Drift.
    Drift,
    /// Blowdown.
    Blowdown,
    /// Makeup.
    Makeup,
    /// Cycles of concentration.
    Cycles,
    /// Minutes until the basin is dry or at a level.
    MinutesToDry,
    /// How fast a loop without a tower warms.
    WarmUp,
    /// Condensing temperature from head pressure.
    CondensingTemperature,
    /// Dew point of the air.
    DewPoint,
    /// Water vapour by mass of dry air.
    HumidityRatio,
    /// Enthalpy of the air by mass of dry air.
    Enthalpy,
    /// Density of the dry air in moist air.
    AirDensity,
    /// Entering water predicted from the tower's characteristic.
    EnteringWater,
    /// Leaving water over what the tower should make today.
    OverExpected,
    /// Water standing in the basin.
    BasinVolume,
    /// Water in the basin filled to the overflow.
    BasinWhenFull,
    /// Minutes until the basin is at a level.
    MinutesToLevel,
    /// Minutes until the loop is at a temperature.
    MinutesToReach,
    /// Condensing temperature over water leaving the condenser.
    OverLeavingWater,
    /// Head pressure below the cut-out.
    BelowCutOut,
    /// Condensing temperature at the cut-out.
    TripsAt,
    /// How much warmer it may condense before the cut-out.
    WarmerToTrip,
    /// Bubble temperature at head pressure.
    BubblePoint,
    /// Dew temperature at head pressure.
    DewPointOfRefrigerant,
    /// Pressure lost in pipe and fittings of the fill line.
    PipeDrop,
    /// Pressure lost in the strainer of the fill line.
    StrainerDrop,
    /// What the overflow carries with the water at the rim.
    OverflowCapacity,
    /// Water a steady flow uses in a day.
    WaterPerDay,
    /// Wait before the first machine is started.
    RestartWait,
    /// Hottest water entering while machines restart.
    RestartHottest,
    /// A figure of the makeup control circuit.
    Circuit(CircuitFigure),
    /// A figure of the water's chemistry.
    Chemistry(ChemistryFigure),
    /// A figure of head pressure and the water behind it.
    Head(HeadFigure),
    /// A figure of the electrode level sensor.
    Electrode(ElectrodeFigure),
    /// A figure of the tower, beyond the plain ones.
    Tower(TowerFigure),
    /// A figure of fill line, drain or overflow.
    Piping(PipingFigure),
    /// A figure of a loop in trouble.
    LoopHeat(LoopHeatFigure),
}

impl Figure {
    /// Every figure, in the order of the calculations; those of a topic stand
    /// in its own `ALL`.
    pub const ALL: [Figure; 41] = [
        Figure::AtmosphericPressure,
        Figure::WetBulb,
        Figure::RelativeHumidity,
        Figure::Approach,
        Figure::Range,
        Figure::Effectiveness,
        Figure::MerkelNumber,
        Figure::LeavingWater,
        Figure::HeatRejected,
        Figure::TowerTons,
        Figure::Evaporation,
        Figure::EvaporationRule,
        Figure::Drift,
        Figure::Blowdown,
        Figure::Makeup,
        Figure::Cycles,
        Figure::MinutesToDry,
        Figure::WarmUp,
        Figure::CondensingTemperature,
        Figure::DewPoint,
        Figure::HumidityRatio,
        Figure::Enthalpy,
        Figure::AirDensity,
        Figure::EnteringWater,
        Figure::OverExpected,
        Figure::BasinVolume,
        Figure::BasinWhenFull,
        Figure::MinutesToLevel,
        Figure::MinutesToReach,
        Figure::OverLeavingWater,
        Figure::BelowCutOut,
        Figure::TripsAt,
        Figure::WarmerToTrip,
        Figure::BubblePoint,
        Figure::DewPointOfRefrigerant,
        Figure::PipeDrop,
        Figure::StrainerDrop,
        Figure::OverflowCapacity,
        Figure::WaterPerDay,
        Figure::RestartWait,
        Figure::RestartHottest,
    ];
}
