//! The invented site that ships with the product: Halden Street Bakery. All
//! names and numbers are made up.

use uom::si::electric_potential::volt;
use uom::si::length::{foot, inch};
use uom::si::power::kilowatt;
use uom::si::pressure::{pascal, psi};
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_fahrenheit;
use uom::si::volume_rate::gallon_per_minute;

pub use super::demo_past::earlier;
use super::id::MachineId;
use super::site::{Machine, Site, Tower};
use crate::physics::basin::{Basin, Plan};
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{
    ElectricPotential, GaugePressure, Length, Power, Pressure, Ratio, ThermodynamicTemperature,
    VolumeRate,
};

/// The bakery: six water-cooled condensing units, one 60-ton open tower on
/// the roof, electrode level control at 24 V. `id` names the machines.
pub fn bakery(mut id: impl FnMut() -> MachineId) -> Site {
    let inches = Length::new::<inch>;
    let fahrenheit = ThermodynamicTemperature::new::<degree_fahrenheit>;
    let mut machine = |name: &str, refrigerant, cut_out_psi: f64, kilowatts: f64| Machine {
        id: id(),
        name: name.into(),
        refrigerant: Some(refrigerant),
        cut_out: Some(GaugePressure::from_pascals(
            Pressure::new::<psi>(cut_out_psi).get::<pascal>(),
        )),
        rejects: Some(Power::new::<kilowatt>(kilowatts)),
        nameplate: String::new(),
    };
    Site {
        name: "Halden Street Bakery".into(),
        place: "14 Halden Street, two stories".into(),
        access: "Roof by the ladder behind the flour store; pump room key at the front desk".into(),
        contacts: "Shift baker, bakery desk".into(),
        altitude: Some(Length::new::<foot>(120.0)),
        tower: Tower {
            design_flow: Some(VolumeRate::new::<gallon_per_minute>(180.0)),
            design_in: Some(fahrenheit(95.0)),
            design_out: Some(fahrenheit(85.0)),
            design_wet_bulb: Some(fahrenheit(78.0)),
            water_air_ratio: Ratio::new::<ratio>(1.2),
            cycles: 4.0,
            basin: Some(Basin {
                plan: Plan::Rectangular {
                    length: Length::new::<foot>(9.0),
                    width: Length::new::<foot>(7.0),
                },
                depth: inches(16.0),
            }),
            stop_level: Some(inches(3.0)),
            call_level: Some(inches(6.0)),
            inlet_level: Some(inches(12.0)),
        },
        control_voltage: Some(ElectricPotential::new::<volt>(24.0)),
        makeup: "1 in city water, shut-off in the pump room".into(),
        machines: vec![
            machine("Retarder 1", Refrigerant::R134a, 200.0, 31.0),
            machine("Retarder 2", Refrigerant::R134a, 200.0, 31.0),
            machine("Retarder 3", Refrigerant::R134a, 200.0, 31.0),
            machine("Blast chiller 1", Refrigerant::R407C, 350.0, 57.0),
            machine("Blast chiller 2", Refrigerant::R407C, 350.0, 57.0),
            machine("Blast chiller 3", Refrigerant::R407C, 350.0, 57.0),
        ],
        plant: None,
        demo: true,
    }
}
