//! Figures of the water's chemistry.

use serde::{Deserialize, Serialize};

/// A calculated figure of the water's chemistry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ChemistryFigure {
    /// pH at which the water would be saturated with calcite.
    SaturationPh,
    /// Langelier saturation index.
    Langelier,
    /// Ryznar stability index.
    Ryznar,
    /// Puckorius scaling index.
    Puckorius,
    /// Dissolved solids from conductivity.
    DissolvedSolids,
    /// Cycles now over cycles then.
    CyclesChange,
    /// Water lost beyond what holds the cycles.
    BeyondBleed,
}

impl ChemistryFigure {
    /// Every figure of this topic.
    pub const ALL: [ChemistryFigure; 7] = [
        ChemistryFigure::SaturationPh,
        ChemistryFigure::Langelier,
        ChemistryFigure::Ryznar,
        ChemistryFigure::Puckorius,
        ChemistryFigure::DissolvedSolids,
        ChemistryFigure::CyclesChange,
        ChemistryFigure::BeyondBleed,
    ];
}
