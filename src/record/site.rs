//! What stands at a site: tower, basin, level control, machines.

use serde::{Deserialize, Serialize};

use super::id::MachineId;
use crate::physics::basin::Basin;
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{
    ElectricPotential, GaugePressure, Length, Power, Ratio, ThermodynamicTemperature, VolumeRate,
};
use crate::trace::Plant;

/// A customer's site, as last described. Only its name must be known: what is
/// not is `None`, and the figures that need it say so.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Site {
    /// What the customer calls it.
    pub name: String,
    /// Address or how to find it; may be empty.
    pub place: String,
    /// How to get in; may be empty.
    pub access: String,
    /// Whom to ask for, and their numbers; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub contacts: String,
    /// Height above sea level; sea level is assumed while nobody knows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub altitude: Option<Length>,
    /// The open tower and its basin.
    pub tower: Tower,
    /// Nominal voltage of the level control circuit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub control_voltage: Option<ElectricPotential>,
    /// The makeup supply: line, meter, where it shuts off; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub makeup: String,
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
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub design_flow: Option<VolumeRate>,
    /// Water onto the tower at design.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub design_in: Option<ThermodynamicTemperature>,
    /// Water off the tower at design.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub design_out: Option<ThermodynamicTemperature>,
    /// Entering wet bulb at design.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub design_wet_bulb: Option<ThermodynamicTemperature>,
    /// Water mass flow over dry-air mass flow at design.
    pub water_air_ratio: Ratio,
    /// Cycles of concentration the bleed is set for.
    pub cycles: f64,
    /// Basin geometry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub basin: Option<Basin>,
    /// Where the level control should call for water, below the overflow lip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub call_level: Option<Length>,
    /// Where the fill should stop, below the overflow lip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stop_level: Option<Length>,
    /// Where the pump inlet starts to draw air, below the overflow lip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inlet_level: Option<Length>,
}

impl Default for Tower {
    /// Nothing known; water to air 1.2 and four cycles, which are usual
    /// (common practice, no source).
    fn default() -> Self {
        Self {
            design_flow: None,
            design_in: None,
            design_out: None,
            design_wet_bulb: None,
            water_air_ratio: Ratio::new::<uom::si::ratio::ratio>(1.2),
            cycles: 4.0,
            basin: None,
            call_level: None,
            stop_level: None,
            inlet_level: None,
        }
    }
}

/// One water-cooled machine on the loop.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Machine {
    /// Its name in the log.
    pub id: MachineId,
    /// What people on site call it.
    pub name: String,
    /// Refrigerant on the nameplate, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub refrigerant: Option<Refrigerant>,
    /// High-pressure cut-out on the nameplate, when known.
    pub cut_out: Option<GaugePressure>,
    /// Heat it rejects at full load, when known.
    pub rejects: Option<Power>,
    /// The rest of the nameplate: maker, model, serial number; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub nameplate: String,
}
