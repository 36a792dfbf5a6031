//! Values and how they are shown.

use super::super::*;

const F: Unit = Unit::Fahrenheit;

#[test]
fn values_as_shown() {
    use System::{Si, Us};
    let table: &[(f64, Unit, Kind, System, &str)] = &[
        (79.0, F, Kind::Temperature, Us, "79.0 °F"),
        (79.0, F, Kind::Temperature, Si, "26.1 °C"),
        (-0.04, F, Kind::Temperature, Us, "0.0 °F"),
        (-0.06, F, Kind::Temperature, Us, "-0.1 °F"),
        (
            10.0,
            Unit::FahrenheitDifference,
            Kind::TemperatureDifference,
            Si,
            "5.6 K",
        ),
        (12.54, Unit::Psig, Kind::GaugePressure, Us, "12.5 psig"),
        (99.96, Unit::Psig, Kind::GaugePressure, Us, "100 psig"),
        (212.4, Unit::Psig, Kind::GaugePressure, Us, "212 psig"),
        (212.4, Unit::Psig, Kind::GaugePressure, Si, "1464 kPa"),
        (47.4, Unit::Percent, Kind::Humidity, Us, "47%"),
        (4.52, Unit::Inch, Kind::Level, Us, "4 1/2 in"),
        (-0.4, Unit::Inch, Kind::Level, Us, "-3/8 in"),
        (-0.01, Unit::Inch, Kind::Level, Us, "0 in"),
        (4.5, Unit::Inch, Kind::Level, Si, "114 mm"),
        (66.5, Unit::Inch, Kind::Length, Us, "5 ft 6 1/2 in"),
        (60.0, Unit::Inch, Kind::Length, Us, "5 ft"),
        (8.25, Unit::Inch, Kind::Length, Us, "8 1/4 in"),
        (11.99, Unit::Inch, Kind::Length, Us, "1 ft"),
        (231.4, Unit::Foot, Kind::Length, Us, "231 ft"),
        (66.5, Unit::Inch, Kind::Length, Si, "1.69 m"),
        (3.0, Unit::GallonPerMinute, Kind::Flow, Us, "3.00 gpm"),
        (60.25, Unit::GallonPerMinute, Kind::Flow, Us, "60.3 gpm"),
        (9.996, Unit::GallonPerMinute, Kind::Flow, Us, "10.0 gpm"),
        (1250.4, Unit::Gallon, Kind::Volume, Us, "1250 gal"),
        (12_500.0, Unit::Gallon, Kind::Volume, Us, "12,500 gal"),
        (12_500.0, Unit::Litre, Kind::Volume, Si, "12 500 L"),
        (24.3, Unit::Volt, Kind::Voltage, Us, "24.3 V"),
        (0.35, Unit::Volt, Kind::Voltage, Us, "350 mV"),
        (0.0, Unit::Volt, Kind::Voltage, Us, "0 V"),
        (47e3, Unit::Ohm, Kind::Resistance, Us, "47.0 kΩ"),
        (999.6, Unit::Ohm, Kind::Resistance, Us, "1.00 kΩ"),
        (
            1450.0,
            Unit::MicrosiemensPerCentimetre,
            Kind::Conductivity,
            Us,
            "1450 µS/cm",
        ),
        (60.0, Unit::Ton, Kind::Heat, Us, "720,000 Btu/h"),
        (95_437.0, Unit::BtuPerHour, Kind::Heat, Us, "95,400 Btu/h"),
        (60.0, Unit::Ton, Kind::Heat, Si, "211 kW"),
        (45.0, Unit::Second, Kind::Duration, Us, "45 s"),
        (59.6, Unit::Second, Kind::Duration, Us, "1 min"),
        (270.0, Unit::Second, Kind::Duration, Us, "4 min 30 s"),
        (38.2, Unit::Minute, Kind::Duration, Us, "38 min"),
        (87.0, Unit::Minute, Kind::Duration, Us, "1 h 27 min"),
        (119.9, Unit::Minute, Kind::Duration, Us, "2 h"),
        (8.25, Unit::Ph, Kind::Ph, Us, "8.3 pH"),
        (
            50.32,
            Unit::KilojoulePerKilogram,
            Kind::Enthalpy,
            Us,
            "21.6 Btu/lb",
        ),
        (
            9.881,
            Unit::GramPerKilogram,
            Kind::HumidityRatio,
            Us,
            "69.2 gr/lb",
        ),
        (
            1.17,
            Unit::KilogramPerCubicMetre,
            Kind::Density,
            Us,
            "0.073 lb/ft³",
        ),
        (12.5, Unit::Pound, Kind::Mass, Us, "12.5 lb"),
        (12.5, Unit::Pound, Kind::Mass, Si, "5.67 kg"),
        (
            3600.0,
            Unit::KilogramPerHour,
            Kind::MassFlow,
            Si,
            "1.00 kg/s",
        ),
        (
            250.0,
            Unit::MilligramPerLitre,
            Kind::Concentration,
            Us,
            "250 ppm",
        ),
        (
            10.0,
            Unit::GrainPerGallon,
            Kind::AsCalciumCarbonate,
            Si,
            "171 mg/L",
        ),
        (4.0, Unit::One, Kind::Number, Us, "4.00"),
    ];
    for (number, unit, kind, system, wanted) in table {
        let value = Value {
            kind: *kind,
            si: unit.to_si(*number),
        };
        let shown = show(value, *system).to_string().replace('\u{a0}', " ");
        assert_eq!(&shown, wanted, "{number} {unit:?}");
    }
    let cycles = Value {
        kind: Kind::Ratio,
        si: 4.5,
    };
    assert_eq!(show_with(cycles, Unit::One, 1).to_string(), "4.5");
    assert_eq!(show_with(cycles, Unit::Inch, 0).to_string(), "450%");
    let lost = Value {
        kind: Kind::Flow,
        si: f64::NAN,
    };
    assert_eq!(show(lost, System::Us).number, "–");
}
