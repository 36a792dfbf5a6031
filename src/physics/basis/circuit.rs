//! Figures of the makeup control circuit.

/// A calculated figure of the control circuit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum CircuitFigure {
    /// What a meter should read.
    MeterReading,
    /// Volts at the coil and the band they lie in.
    CoilVoltage,
    /// Current while holding.
    HoldingCurrent,
    /// Resistance of the winding.
    Winding,
}

impl CircuitFigure {
    /// Every figure of this topic.
    pub const ALL: [CircuitFigure; 4] = [
        CircuitFigure::MeterReading,
        CircuitFigure::CoilVoltage,
        CircuitFigure::HoldingCurrent,
        CircuitFigure::Winding,
    ];
}
