//! Figures of the water's chemistry.

/// A calculated figure of the water's chemistry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
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
}

impl ChemistryFigure {
    /// Every figure of this topic.
    pub const ALL: [ChemistryFigure; 6] = [
        ChemistryFigure::SaturationPh,
        ChemistryFigure::Langelier,
        ChemistryFigure::Ryznar,
        ChemistryFigure::Puckorius,
        ChemistryFigure::DissolvedSolids,
        ChemistryFigure::CyclesChange,
    ];
}
