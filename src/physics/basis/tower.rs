//! Figures of the tower beyond the plain ones.

use serde::{Deserialize, Serialize};

/// A calculated figure of the tower.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TowerFigure {
    /// Evaporation by a balance with the air leaving saturated.
    EvaporationBalance,
    /// Merkel number by Poppe's method.
    PoppeMerkelNumber,
    /// What the tower would do at other heat, water and air.
    Prediction,
    /// KaV/L delivered over KaV/L offered.
    Delivered,
    /// How well each shape of trouble fits the readings.
    ShapeFit,
}

impl TowerFigure {
    /// Every one of them.
    pub const ALL: [TowerFigure; 5] = [
        TowerFigure::EvaporationBalance,
        TowerFigure::PoppeMerkelNumber,
        TowerFigure::Prediction,
        TowerFigure::Delivered,
        TowerFigure::ShapeFit,
    ];
}
