//! The plant as the trace needs to know it.

use serde::{Deserialize, Serialize};
use uom::si::electric_potential::volt;

use crate::quantity::ElectricPotential;

/// How the basin's level is sensed and the fill valve switched.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LevelControl {
    /// Conductance electrodes, a relay, and an electric fill valve.
    #[default]
    ElectrodeRelay,
}

/// What the trace must know of the plant before any reading.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Plant {
    /// How the basin's level is controlled.
    pub level_control: LevelControl,
    /// Nominal voltage of the fill control, in volts AC; typically 24 to 240.
    pub control_voltage: ElectricPotential,
    /// Water-cooled machines on the loop, 1 or more; 0 is read as 1.
    pub machines: u8,
}

impl Default for Plant {
    /// Electrode relay at 24 V, three machines.
    fn default() -> Self {
        Self {
            level_control: LevelControl::ElectrodeRelay,
            control_voltage: ElectricPotential::new::<volt>(24.0),
            machines: 3,
        }
    }
}
