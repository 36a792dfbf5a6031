//! What a number measures, and which unit each system writes it in.

use crate::quantity::named::by_name;
use serde::{Deserialize, Serialize};

use super::Unit;

/// What a number measures. Each kind has one SI form, named below, in which
/// the record stores it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A temperature; stored in kelvins.
    Temperature,
    /// A difference of two temperatures (range, approach, superheat); kelvins.
    TemperatureDifference,
    /// A pressure above the local atmosphere; pascals.
    GaugePressure,
    /// A difference of two pressures (a drop, the room below a cut-out); pascals.
    PressureDifference,
    /// A pressure above vacuum (a barometer); pascals.
    AbsolutePressure,
    /// Relative humidity; a fraction, 0 to 1.
    Humidity,
    /// A water level or probe length: read to the nearest 1/8 in or mm; metres.
    Level,
    /// A length of pipe, a basin side, a height: feet and inches, or m; metres.
    Length,
    /// An area; square metres.
    Area,
    /// A volume; cubic metres.
    Volume,
    /// A volume flow; cubic metres per second.
    Flow,
    /// An electric potential; volts.
    Voltage,
    /// An electric resistance; ohms.
    Resistance,
    /// An electric current; amperes.
    Current,
    /// The electrical conductivity of water; siemens per metre.
    Conductivity,
    /// A heat flow; watts.
    Heat,
    /// A length of time; seconds.
    Duration,
    /// A ratio (a mixing fraction, cycles of concentration); a plain number.
    Ratio,
    /// pH; a plain number.
    Ph,
    /// Enthalpy of moist air by mass of dry air; joules per kilogram.
    Enthalpy,
    /// Water vapour by mass of dry air; kilograms per kilogram.
    HumidityRatio,
    /// Mass by volume; kilograms per cubic metre.
    Density,
    /// A mass (a charge, a dose); kilograms.
    Mass,
    /// A mass flow; kilograms per second.
    MassFlow,
    /// A substance dissolved in water, by its own mass (chloride, silica);
    /// kilograms per cubic metre.
    Concentration,
    /// Calcium, hardness or alkalinity in water, as the mass of calcium
    /// carbonate that stands for it; kilograms per cubic metre.
    AsCalciumCarbonate,
    /// A plain number written as one: cycles of concentration, water to air,
    /// an index.
    Number,
}
by_name!(Kind: Temperature TemperatureDifference GaugePressure PressureDifference AbsolutePressure Humidity Level Length Area Volume Flow Voltage Resistance Current Conductivity Heat Duration Ratio Ph Enthalpy HumidityRatio Density Mass MassFlow Concentration AsCalciumCarbonate Number);

impl Kind {
    /// Every kind.
    pub const ALL: [Kind; 27] = [
        Kind::Temperature,
        Kind::TemperatureDifference,
        Kind::GaugePressure,
        Kind::PressureDifference,
        Kind::AbsolutePressure,
        Kind::Humidity,
        Kind::Level,
        Kind::Length,
        Kind::Area,
        Kind::Volume,
        Kind::Flow,
        Kind::Voltage,
        Kind::Resistance,
        Kind::Current,
        Kind::Conductivity,
        Kind::Heat,
        Kind::Duration,
        Kind::Ratio,
        Kind::Ph,
        Kind::Enthalpy,
        Kind::HumidityRatio,
        Kind::Density,
        Kind::Mass,
        Kind::MassFlow,
        Kind::Concentration,
        Kind::AsCalciumCarbonate,
        Kind::Number,
    ];
}

/// A system of units a person works in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum System {
    /// US customary units.
    #[default]
    Us,
    /// The SI and units used with it.
    Si,
}

impl System {
    /// The unit a field of this kind is labelled with, and so the unit of a
    /// number typed without one.
    pub fn unit_for(self, kind: Kind) -> Unit {
        let us = self == System::Us;
        let pick = |if_us: Unit, if_si: Unit| if us { if_us } else { if_si };
        match kind {
            Kind::Temperature => pick(Unit::Fahrenheit, Unit::Celsius),
            Kind::TemperatureDifference => pick(Unit::FahrenheitDifference, Unit::Kelvin),
            Kind::GaugePressure => pick(Unit::Psig, Unit::Kilopascal),
            Kind::PressureDifference => pick(Unit::Psi, Unit::Kilopascal),
            Kind::AbsolutePressure => pick(Unit::Psia, Unit::Kilopascal),
            Kind::Humidity | Kind::Ratio => Unit::Percent,
            Kind::Level => pick(Unit::Inch, Unit::Millimetre),
            Kind::Length => pick(Unit::Foot, Unit::Metre),
            Kind::Area => pick(Unit::SquareFoot, Unit::SquareMetre),
            Kind::Volume => pick(Unit::Gallon, Unit::Litre),
            Kind::Flow => pick(Unit::GallonPerMinute, Unit::LitrePerSecond),
            Kind::Voltage => Unit::Volt,
            Kind::Resistance => Unit::Ohm,
            Kind::Current => Unit::Ampere,
            Kind::Conductivity => Unit::MicrosiemensPerCentimetre,
            // A ton is 12,000 Btu/h of cooling or 15,000 at the tower: Btu/h is plain.
            Kind::Heat => pick(Unit::BtuPerHour, Unit::Kilowatt),
            Kind::Duration => Unit::Minute,
            Kind::Ph => Unit::Ph,
            Kind::Enthalpy => pick(Unit::BtuPerPound, Unit::KilojoulePerKilogram),
            Kind::HumidityRatio => pick(Unit::GrainPerPound, Unit::GramPerKilogram),
            Kind::Number => Unit::One,
            Kind::Density => pick(Unit::PoundPerCubicFoot, Unit::KilogramPerCubicMetre),
            Kind::Mass => pick(Unit::Pound, Unit::Kilogram),
            Kind::MassFlow => pick(Unit::PoundPerHour, Unit::KilogramPerSecond),
            Kind::Concentration | Kind::AsCalciumCarbonate => {
                pick(Unit::PartPerMillion, Unit::MilligramPerLitre)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_default_unit_fits_its_kind() {
        for kind in Kind::ALL {
            for system in [System::Us, System::Si] {
                assert!(system.unit_for(kind).kind_fits(kind), "{kind:?} {system:?}");
            }
        }
    }

    #[test]
    fn kinds_are_stored_under_stable_names() {
        let name = |k: Kind| serde_json::to_string(&k).unwrap();
        assert_eq!(
            name(Kind::TemperatureDifference),
            "\"temperature-difference\""
        );
        assert_eq!(name(Kind::Ph), "\"ph\"");
        assert_eq!(name(Kind::AsCalciumCarbonate), "\"as-calcium-carbonate\"");
        assert_eq!(name(Kind::MassFlow), "\"mass-flow\"");
    }
}
