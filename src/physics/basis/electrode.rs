//! Figures of the electrode level sensor.

use serde::{Deserialize, Serialize};

/// A calculated figure of the level sensor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ElectrodeFigure {
    /// Resistance of the water between the electrodes.
    WaterResistance,
    /// Resistance when a tip just touches.
    TipResistance,
    /// Resistance of a bridging film.
    FilmResistance,
    /// Resistance of foam.
    FoamResistance,
    /// Resistance a coat adds.
    ScaleResistance,
    /// Sensitivities that nothing fools.
    SafeSettings,
}

impl ElectrodeFigure {
    /// Every figure of this topic.
    pub const ALL: [ElectrodeFigure; 6] = [
        ElectrodeFigure::WaterResistance,
        ElectrodeFigure::TipResistance,
        ElectrodeFigure::FilmResistance,
        ElectrodeFigure::FoamResistance,
        ElectrodeFigure::ScaleResistance,
        ElectrodeFigure::SafeSettings,
    ];
}
