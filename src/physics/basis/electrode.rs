//! Figures of the electrode level sensor.

/// A calculated figure of the level sensor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ElectrodeFigure {
    /// Resistance of the water between the electrodes.
    WaterResistance,
    /// Resistance of a bridging film.
    FilmResistance,
    /// Resistance of foam.
    FoamResistance,
    /// Sensitivities that nothing fools.
    SafeSettings,
}

impl ElectrodeFigure {
    /// Every figure of this topic.
    pub const ALL: [ElectrodeFigure; 4] = [
        ElectrodeFigure::WaterResistance,
        ElectrodeFigure::FilmResistance,
        ElectrodeFigure::FoamResistance,
        ElectrodeFigure::SafeSettings,
    ];
}
