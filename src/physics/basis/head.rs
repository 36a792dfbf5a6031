//! Figures of head pressure and the water behind it.

use serde::{Deserialize, Serialize};

/// A calculated figure of head pressure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HeadFigure {
    /// Head to expect at this leaving water and a normal approach.
    Expected,
    /// Head with a part of the usual water flow.
    AtFlow,
    /// Water entering the condenser at which it trips.
    EnteringWaterAtTrip,
    /// Water leaving the condenser at which it trips.
    LeavingWaterAtTrip,
}

impl HeadFigure {
    /// Every figure of this topic.
    pub const ALL: [HeadFigure; 4] = [
        HeadFigure::Expected,
        HeadFigure::AtFlow,
        HeadFigure::EnteringWaterAtTrip,
        HeadFigure::LeavingWaterAtTrip,
    ];
}
