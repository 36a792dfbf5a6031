//! Figures of the tower beyond the plain ones.

/// A calculated figure of the tower.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TowerFigure {
    /// Evaporation by a balance with the air leaving saturated.
    EvaporationBalance,
    /// KaV/L delivered over KaV/L offered.
    Delivered,
}

impl TowerFigure {
    /// Every one of them.
    pub const ALL: [TowerFigure; 2] = [TowerFigure::EvaporationBalance, TowerFigure::Delivered];
}
