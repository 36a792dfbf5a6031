//! A measured value in the form the record stores.

use serde::{Deserialize, Serialize};
use uom::si::area::square_meter;
use uom::si::available_energy::joule_per_kilogram;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::electrical_resistance::ohm;
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_concentration::kilogram_per_cubic_meter as concentration_unit;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::mass_rate::kilogram_per_second;
use uom::si::power::watt;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio as one;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;
use uom::si::volume::cubic_meter;
use uom::si::volume_rate::cubic_meter_per_second;

use super::{
    Area, AvailableEnergy, ElectricCurrent, ElectricPotential, ElectricalConductivity,
    ElectricalResistance, GaugePressure, Kind, Length, Mass, MassConcentration, MassDensity,
    MassRate, Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Time, Unit,
    Volume, VolumeRate,
};

/// A value and what it measures, in the SI form of its [`Kind`].
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Value {
    /// What is measured.
    pub kind: Kind,
    /// How much, in the SI form of the kind.
    pub si: f64,
}

macro_rules! faces {
    ($($new:ident $get:ident $kind:ident $quantity:ident $unit:ident, $what:literal;)+) => {
        impl Value {
            $(
                #[doc = concat!("The value of ", $what, ".")]
                pub fn $new(quantity: $quantity) -> Self {
                    Self { kind: Kind::$kind, si: quantity.get::<$unit>() }
                }

                #[doc = concat!("As ", $what, "; `None` when the value is of another kind.")]
                pub fn $get(self) -> Option<$quantity> {
                    (self.kind == Kind::$kind).then(|| $quantity::new::<$unit>(self.si))
                }
            )+
        }
    };
}

faces! {
    temperature as_temperature Temperature ThermodynamicTemperature kelvin, "a temperature";
    temperature_difference as_temperature_difference TemperatureDifference TemperatureInterval
        kelvin_interval, "a temperature difference";
    absolute_pressure as_absolute_pressure AbsolutePressure Pressure pascal,
        "an absolute pressure";
    pressure_difference as_pressure_difference PressureDifference Pressure pascal,
        "a difference of two pressures";
    humidity as_humidity Humidity Ratio one, "a relative humidity";
    level as_level Level Length meter, "a level";
    length as_length Length Length meter, "a length";
    area as_area Area Area square_meter, "an area";
    volume as_volume Volume Volume cubic_meter, "a volume";
    flow as_flow Flow VolumeRate cubic_meter_per_second, "a flow";
    voltage as_voltage Voltage ElectricPotential volt, "a voltage";
    resistance as_resistance Resistance ElectricalResistance ohm, "a resistance";
    current as_current Current ElectricCurrent ampere, "a current";
    conductivity as_conductivity Conductivity ElectricalConductivity siemens_per_meter,
        "a conductivity";
    heat as_heat Heat Power watt, "a heat flow";
    duration as_duration Duration Time second, "a length of time";
    ratio as_ratio Ratio Ratio one, "a ratio";
    enthalpy as_enthalpy Enthalpy AvailableEnergy joule_per_kilogram, "an enthalpy";
    humidity_ratio as_humidity_ratio HumidityRatio Ratio one, "a humidity ratio";
    density as_density Density MassDensity kilogram_per_cubic_meter, "a density";
    mass as_mass Mass Mass kilogram, "a mass";
    mass_flow as_mass_flow MassFlow MassRate kilogram_per_second, "a mass flow";
    concentration as_concentration Concentration MassConcentration concentration_unit,
        "a concentration";
    calcium_carbonate as_calcium_carbonate AsCalciumCarbonate MassConcentration
        concentration_unit, "a concentration as calcium carbonate";
}

impl Value {
    /// The value of a gauge pressure.
    pub fn gauge_pressure(quantity: GaugePressure) -> Self {
        Self {
            kind: Kind::GaugePressure,
            si: quantity.pascals(),
        }
    }

    /// As a gauge pressure; `None` when the value is of another kind.
    pub fn as_gauge_pressure(self) -> Option<GaugePressure> {
        (self.kind == Kind::GaugePressure).then(|| GaugePressure::from_pascals(self.si))
    }

    /// The value of a pH.
    pub fn ph(ph: f64) -> Self {
        Self {
            kind: Kind::Ph,
            si: ph,
        }
    }

    /// As a pH; `None` when the value is of another kind.
    pub fn as_ph(self) -> Option<f64> {
        (self.kind == Kind::Ph).then_some(self.si)
    }

    /// The value of a plain number.
    pub fn number(number: f64) -> Self {
        Self {
            kind: Kind::Number,
            si: number,
        }
    }

    /// As a plain number; `None` when the value is of another kind.
    pub fn as_number(self) -> Option<f64> {
        (self.kind == Kind::Number).then_some(self.si)
    }

    /// The number in this unit; `None` when the unit does not fit the kind.
    pub fn in_unit(self, unit: Unit) -> Option<f64> {
        unit.kind_fits(self.kind).then(|| unit.from_si(self.si))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::thermodynamic_temperature::degree_fahrenheit;
    use uom::si::volume_rate::gallon_per_minute;

    #[test]
    fn a_value_answers_only_as_its_own_kind() {
        let v = Value::temperature(ThermodynamicTemperature::new::<degree_fahrenheit>(79.0));
        assert_eq!(v.kind, Kind::Temperature);
        assert!((v.in_unit(Unit::Fahrenheit).unwrap() - 79.0).abs() < 1e-9);
        assert!(v.as_temperature().is_some());
        assert!(v.as_temperature_difference().is_none());
        assert!(v.in_unit(Unit::FahrenheitDifference).is_none());
        let level = Value::level(Length::new::<meter>(0.3));
        assert!(level.as_length().is_none());
        assert_eq!(level.as_level(), Some(Length::new::<meter>(0.3)));
    }

    #[test]
    fn our_gallon_is_the_gallon_of_the_types() {
        let v = Value::flow(VolumeRate::new::<gallon_per_minute>(60.0));
        assert!((v.in_unit(Unit::GallonPerMinute).unwrap() - 60.0).abs() < 1e-5);
    }

    #[test]
    fn the_stored_form_is_kind_and_si() {
        let text = serde_json::to_string(&Value::ph(8.25)).unwrap();
        assert_eq!(text, r#"{"kind":"ph","si":8.25}"#);
        assert_eq!(
            serde_json::from_str::<Value>(&text).unwrap(),
            Value::ph(8.25)
        );
    }
}
