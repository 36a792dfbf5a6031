//! What stands at a site: tower, basin, level control, machines.

use serde::{Deserialize, Serialize};

use super::id::MachineId;
use crate::physics::basin::Basin;
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{
    ElectricPotential, GaugePressure, Length, Power, Ratio, ThermodynamicTemperature, VolumeRate,
};
use crate::trace::Plant;

/// A customer's site, as last described.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Site {
    /// What the customer calls it.
    pub name: String,
    /// Address or how to find it; may be empty.
    pub place: String,
    /// How to get in; may be empty.
    pub access: String,
    /// Height above sea level.
    pub altitude: Length,
    /// The open tower and its basin.
    pub tower: Tower,
    /// Nominal voltage of the level control circuit.
    pub control_voltage: ElectricPotential,
    /// The machines on the loop.
    pub machines: Vec<Machine>,
    /// How the plant is built, as far as the trace asks; the usual one when
    /// nobody has said. Its voltage and number of machines are the site's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plant: Option<Plant>,
    /// True for the invented site that ships with the product.
    #[serde(default)]
    pub demo: bool,
}

/// An open cooling tower and its basin.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Tower {
    /// Water flow over the tower at design.
    pub design_flow: VolumeRate,
    /// Water onto the tower at design.
    pub design_in: ThermodynamicTemperature,
    /// Water off the tower at design.
    pub design_out: ThermodynamicTemperature,
    /// Entering wet bulb at design.
    pub design_wet_bulb: ThermodynamicTemperature,
    /// Water mass flow over dry-air mass flow at design.
    pub water_air_ratio: Ratio,
    /// Cycles of concentration the bleed is set for.
    pub cycles: f64,
    /// Basin geometry.
    pub basin: Basin,
    /// Where the level control should call for water, below the overflow lip.
    pub call_level: Length,
    /// Where the fill should stop, below the overflow lip.
    pub stop_level: Length,
    /// Where the pump inlet starts to draw air, below the overflow lip.
    pub inlet_level: Length,
}

/// One water-cooled machine on the loop.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Machine {
    /// Its name in the log.
    pub id: MachineId,
    /// What people on site call it.
    pub name: String,
    /// Refrigerant on the nameplate.
    pub refrigerant: Refrigerant,
    /// High-pressure cut-out on the nameplate, when known.
    pub cut_out: Option<GaugePressure>,
    /// Heat it rejects at full load, when known.
    pub rejects: Option<Power>,
}
