//! Typed texts and what they are read as.

use super::super::*;

const F: Unit = Unit::Fahrenheit;

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * b.abs().max(1.0)
}

/// Text, kind, bare unit; the number wanted and the unit it counts.
#[test]
fn what_people_type() {
    use Kind::*;
    let table: &[(&str, Kind, Unit, f64, Unit)] = &[
        ("79F", Temperature, F, 79.0, F),
        ("79 °F", Temperature, F, 79.0, F),
        ("  79°f ", Temperature, F, 79.0, F),
        ("79 deg F", Temperature, Unit::Celsius, 79.0, F),
        ("79℉", Temperature, F, 79.0, F),
        ("26 C", Temperature, F, 26.0, Unit::Celsius),
        ("26,5", Temperature, Unit::Celsius, 26.5, Unit::Celsius),
        ("299.15 K", Temperature, F, 299.15, Unit::Kelvin),
        ("-3", Temperature, F, -3.0, F),
        ("−3", Temperature, F, -3.0, F),
        ("- 3 F", Temperature, F, -3.0, F),
        (
            "+10",
            TemperatureDifference,
            Unit::FahrenheitDifference,
            10.0,
            Unit::FahrenheitDifference,
        ),
        (
            "5.5 K",
            TemperatureDifference,
            Unit::FahrenheitDifference,
            5.5,
            Unit::Kelvin,
        ),
        (
            "5.5 °C",
            TemperatureDifference,
            Unit::FahrenheitDifference,
            5.5,
            Unit::Kelvin,
        ),
        ("12.5 psi", GaugePressure, Unit::Psig, 12.5, Unit::Psig),
        (
            "12.5psig",
            GaugePressure,
            Unit::Kilopascal,
            12.5,
            Unit::Psig,
        ),
        ("2 barg", GaugePressure, Unit::Psig, 200.0, Unit::Kilopascal),
        (
            "20 inHg vac",
            GaugePressure,
            Unit::Psig,
            -67_727.78,
            Unit::Pascal,
        ),
        ("14.7 psia", AbsolutePressure, Unit::Psia, 14.7, Unit::Psia),
        (
            "14.7 PSI",
            AbsolutePressure,
            Unit::Kilopascal,
            14.7,
            Unit::Psia,
        ),
        (
            "29.92 in Hg",
            AbsolutePressure,
            Unit::Psia,
            29.92,
            Unit::InchMercury,
        ),
        ("50%", Humidity, Unit::Percent, 0.5, Unit::One),
        ("50 % RH", Humidity, Unit::Percent, 0.5, Unit::One),
        ("½", Level, Unit::Inch, 0.5, Unit::Inch),
        ("4 1/2", Level, Unit::Inch, 4.5, Unit::Inch),
        ("4-1/2 in", Level, Unit::Millimetre, 4.5, Unit::Inch),
        ("4½ in.", Level, Unit::Millimetre, 4.5, Unit::Inch),
        ("-1 1/4\"", Level, Unit::Inch, -1.25, Unit::Inch),
        ("114 mm", Level, Unit::Inch, 11.4, Unit::Centimetre),
        ("1' 4 1/2\"", Level, Unit::Inch, 16.5, Unit::Inch),
        ("1’4½”", Level, Unit::Inch, 16.5, Unit::Inch),
        ("1' 4''", Level, Unit::Inch, 16.0, Unit::Inch),
        ("5'-6 1/2\"", Length, Unit::Foot, 66.5, Unit::Inch),
        ("5' 6", Length, Unit::Foot, 66.0, Unit::Inch),
        ("2 ft 3 in", Length, Unit::Foot, 27.0, Unit::Inch),
        ("2ft3in", Length, Unit::Metre, 27.0, Unit::Inch),
        ("2 ft 3", Length, Unit::Metre, 27.0, Unit::Inch),
        ("-2 ft 3 in", Level, Unit::Inch, -27.0, Unit::Inch),
        ("3,2 m", Length, Unit::Foot, 3.2, Unit::Metre),
        ("40 sq ft", Area, Unit::SquareMetre, 40.0, Unit::SquareFoot),
        ("40 ft²", Area, Unit::SquareMetre, 40.0, Unit::SquareFoot),
        ("1.5 m3", Volume, Unit::Gallon, 1500.0, Unit::Litre),
        (
            "3 gpm",
            Flow,
            Unit::LitrePerSecond,
            3.0,
            Unit::GallonPerMinute,
        ),
        (
            "1.2 L/s",
            Flow,
            Unit::GallonPerMinute,
            1.2,
            Unit::LitrePerSecond,
        ),
        (
            "7.2 m³/h",
            Flow,
            Unit::GallonPerMinute,
            2.0,
            Unit::LitrePerSecond,
        ),
        ("24 VAC", Voltage, Unit::Volt, 24.0, Unit::Volt),
        ("24vac", Voltage, Unit::Volt, 24.0, Unit::Volt),
        ("350 mV", Voltage, Unit::Volt, 0.35, Unit::Volt),
        ("1.5M", Resistance, Unit::Ohm, 1.5e6, Unit::Ohm),
        ("47 kΩ", Resistance, Unit::Ohm, 47e3, Unit::Ohm),
        ("12 ohms", Resistance, Unit::Ohm, 12.0, Unit::Ohm),
        ("4 mA", Current, Unit::Ampere, 0.004, Unit::Ampere),
        (
            "450 us/cm",
            Conductivity,
            Unit::MillisiemensPerCentimetre,
            0.45,
            Unit::MillisiemensPerCentimetre,
        ),
        (
            "1500 uS",
            Conductivity,
            Unit::MicrosiemensPerCentimetre,
            1.5,
            Unit::MillisiemensPerCentimetre,
        ),
        (
            "1.5 mS/cm",
            Conductivity,
            Unit::MicrosiemensPerCentimetre,
            1500.0,
            Unit::MicrosiemensPerCentimetre,
        ),
        (
            "60 tons",
            Heat,
            Unit::Kilowatt,
            720.0,
            Unit::ThousandBtuPerHour,
        ),
        ("720,000.0 Btu/h", Heat, Unit::Ton, 60.0, Unit::Ton),
        ("38", Duration, Unit::Minute, 38.0, Unit::Minute),
        ("1 h 27 min", Duration, Unit::Minute, 87.0, Unit::Minute),
        ("1h27", Duration, Unit::Minute, 87.0, Unit::Minute),
        (
            "1 d 2 h 3 min",
            Duration,
            Unit::Minute,
            1563.0,
            Unit::Minute,
        ),
        ("90 min", Duration, Unit::Second, 1.5, Unit::Hour),
        ("4.5 x", Ratio, Unit::Percent, 4.5, Unit::One),
        ("pH 7.8", Ph, Unit::Ph, 7.8, Unit::Ph),
        ("7,8", Ph, Unit::Ph, 7.8, Unit::Ph),
        ("25 lbs", Mass, Unit::Kilogram, 25.0, Unit::Pound),
        ("8 oz", Mass, Unit::Pound, 0.5, Unit::Pound),
        ("2,5 kg", Mass, Unit::Pound, 2500.0, Unit::Gram),
        (
            "60 lb/min",
            MassFlow,
            Unit::KilogramPerSecond,
            3600.0,
            Unit::PoundPerHour,
        ),
        (
            "250 mg/l",
            Concentration,
            Unit::PartPerMillion,
            250.0,
            Unit::PartPerMillion,
        ),
        (
            "120 ppm as CaCO₃",
            AsCalciumCarbonate,
            Unit::MilligramPerLitre,
            120.0,
            Unit::MilligramPerLitre,
        ),
        (
            "7 gpg",
            AsCalciumCarbonate,
            Unit::PartPerMillion,
            7.0,
            Unit::GrainPerGallon,
        ),
    ];
    for (text, kind, bare, number, unit) in table {
        let typed = read(text, *kind, *bare, Bounds::ANY)
            .unwrap_or_else(|refusal| panic!("{text}: {refusal:?}"));
        let ours = unit.from_si(typed.value.si);
        assert!(
            near(ours, *number),
            "{text}: {ours} {unit:?}, wanted {number}"
        );
        assert_eq!(typed.value.kind, *kind);
    }
}

#[test]
fn the_unit_typed_and_the_unit_assumed() {
    let typed = read("26 C", Kind::Temperature, F, Bounds::ANY).unwrap();
    assert_eq!((typed.unit, typed.assumed_unit), (Unit::Celsius, false));
    let typed = read("79", Kind::Temperature, F, Bounds::ANY).unwrap();
    assert_eq!((typed.unit, typed.assumed_unit), (F, true));
    let typed = read("1' 4", Kind::Level, Unit::Inch, Bounds::ANY).unwrap();
    assert_eq!((typed.unit, typed.assumed_unit), (Unit::Foot, false));
}

#[test]
fn refusals_say_what_was_wrong() {
    let no = |text: &str, kind: Kind| {
        read(text, kind, System::Us.unit_for(kind), Bounds::usual(kind)).unwrap_err()
    };
    let near = |near: &str| Refusal::NotANumber { near: near.into() };
    let unknown = |unit: &str| Refusal::UnknownUnit { unit: unit.into() };
    assert_eq!(no(" \u{a0} ", Kind::Temperature), Refusal::Empty);
    assert_eq!(no("cold", Kind::Temperature), near("cold"));
    assert_eq!(no("NaN", Kind::Temperature), near("NaN"));
    assert_eq!(no("inf", Kind::Voltage), near("inf"));
    assert_eq!(no("--3", Kind::Temperature), near("-3"));
    assert_eq!(no("10-15", Kind::GaugePressure), near("-15"));
    assert_eq!(no("5 1234", Kind::GaugePressure), near("1234"));
    assert_eq!(no("1:27", Kind::Duration), unknown(":"));
    assert_eq!(no("1e5", Kind::Resistance), unknown("e5"));
    assert_eq!(no("79 X", Kind::Temperature), unknown("X"));
    assert_eq!(no("5 mohm", Kind::Resistance), unknown("mohm"));
    assert_eq!(no("5 barg", Kind::AbsolutePressure), unknown("barg"));
    for (text, kind, unit) in [
        ("79 psi", Kind::Temperature, Unit::Psi),
        ("30 psia", Kind::GaugePressure, Unit::Psia),
        ("30 psig", Kind::AbsolutePressure, Unit::Psig),
        ("20 inHg", Kind::GaugePressure, Unit::InchMercury),
        ("3 m3", Kind::Length, Unit::CubicMetre),
        ("3 gal", Kind::Flow, Unit::Gallon),
    ] {
        assert_eq!(
            no(text, kind),
            Refusal::WrongUnit { unit, wanted: kind },
            "{text}"
        );
    }
    let too_many = Refusal::PartTooLarge {
        number: 14.0,
        unit: Unit::Inch,
        limit: 12.0,
    };
    assert_eq!(no("5' 14\"", Kind::Length), too_many);
    assert!(matches!(
        no("300 C", Kind::Temperature),
        Refusal::OutOfRange { .. }
    ));
    assert!(matches!(
        no("-500", Kind::Temperature),
        Refusal::BelowAbsoluteZero { .. }
    ));
    assert_eq!(
        read("5", Kind::Flow, Unit::Gallon, Bounds::ANY),
        Err(Refusal::WrongUnit {
            unit: Unit::Gallon,
            wanted: Kind::Flow
        })
    );
    assert!(read("-459.67 F", Kind::Temperature, F, Bounds::ANY).is_ok());
    assert!(matches!(
        no(&"9".repeat(400), Kind::Voltage),
        Refusal::NotANumber { .. }
    ));
}

#[test]
fn a_comma_before_three_digits_is_decided_by_the_bounds() {
    let micro = Unit::MicrosiemensPerCentimetre;
    let with = |low, high| {
        read(
            "1,250",
            Kind::Conductivity,
            micro,
            Bounds::of(low, high, micro),
        )
        .map(|typed| (micro.from_si(typed.value.si) * 1e6).round() / 1e6)
    };
    assert_eq!(with(100.0, 5000.0), Ok(1250.0));
    assert_eq!(with(0.0, 100.0), Ok(1.25));
    let Err(Refusal::Ambiguous {
        first,
        second,
        unit,
    }) = with(0.0, 5000.0)
    else {
        panic!("two plausible readings were not refused");
    };
    assert!(near(unit.from_si(first), 1250.0) && near(unit.from_si(second), 1.25));
    let Err(Refusal::OutOfRange { si, .. }) = with(2000.0, 5000.0) else {
        panic!("no plausible reading, and not refused");
    };
    assert!(near(micro.from_si(si), 1250.0));
}
