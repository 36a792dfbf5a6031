//! What every figure on a screen stands on: which calculation it came from.
//!
//! The words of the formula and its source are in `words`; this room names the
//! figures.

use serde::{Deserialize, Serialize};

/// A calculated figure a person may ask about: "how do we know?"
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
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
    /// Evaporation by mass and energy balance.
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
}

impl Figure {
    /// Every figure, in the order of the calculations.
    pub const ALL: [Figure; 19] = [
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
    ];
}
