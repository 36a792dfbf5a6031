//! Figures of the makeup control circuit.

use serde::{Deserialize, Serialize};

/// A calculated figure of the control circuit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CircuitFigure {
    /// What a meter should read.
    MeterReading,
    /// Volts at the coil and the band they lie in.
    CoilVoltage,
    /// Current while holding.
    HoldingCurrent,
    /// Resistance of the winding.
    Winding,
    /// Resistance of the wire out and back.
    WireLoop,
    /// Voltage on a wire that is connected to nothing.
    GhostVoltage,
    /// How well a fault fits a reading.
    Fit,
}

impl CircuitFigure {
    /// Every figure of this topic.
    pub const ALL: [CircuitFigure; 7] = [
        CircuitFigure::MeterReading,
        CircuitFigure::CoilVoltage,
        CircuitFigure::HoldingCurrent,
        CircuitFigure::Winding,
        CircuitFigure::WireLoop,
        CircuitFigure::GhostVoltage,
        CircuitFigure::Fit,
    ];
}
