//! The figures of the fill line, the drain and the overflow.

use serde::{Deserialize, Serialize};

/// A calculated figure of the water side of the basin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PipingFigure {
    /// Flow through a valve.
    ValveFlow,
    /// Flow the fill line brings.
    FillFlow,
    /// How far the strainer is blocked.
    StrainerBlockage,
    /// Pressure drop a servo valve needs.
    ServoDrop,
    /// Submergence of the pump suction.
    Submergence,
    /// Time to drain.
    DrainTime,
    /// Time to refill.
    FillTime,
    /// Level at which drain and fill balance.
    SteadyLevel,
    /// Head over the overflow.
    OverflowHead,
    /// Water and money lost to a flow that never stops.
    RunningWater,
}

impl PipingFigure {
    /// Every figure here.
    pub const ALL: [PipingFigure; 10] = [
        PipingFigure::ValveFlow,
        PipingFigure::FillFlow,
        PipingFigure::StrainerBlockage,
        PipingFigure::ServoDrop,
        PipingFigure::Submergence,
        PipingFigure::DrainTime,
        PipingFigure::FillTime,
        PipingFigure::SteadyLevel,
        PipingFigure::OverflowHead,
        PipingFigure::RunningWater,
    ];
}
