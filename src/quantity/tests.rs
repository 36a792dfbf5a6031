//! Reading and showing, tried together.

use proptest::prelude::*;

use super::*;

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
        ("79 psi", Kind::Temperature, Unit::Psig),
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
        (60.0, Unit::Ton, Kind::Heat, Us, "60.0 ton"),
        (60.0, Unit::Ton, Kind::Heat, Si, "211 kW"),
        (45.0, Unit::Second, Kind::Duration, Us, "45 s"),
        (59.6, Unit::Second, Kind::Duration, Us, "1 min"),
        (270.0, Unit::Second, Kind::Duration, Us, "4 min 30 s"),
        (38.2, Unit::Minute, Kind::Duration, Us, "38 min"),
        (87.0, Unit::Minute, Kind::Duration, Us, "1 h 27 min"),
        (119.9, Unit::Minute, Kind::Duration, Us, "2 h"),
        (8.25, Unit::Ph, Kind::Ph, Us, "8.3 pH"),
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

fn kinds() -> impl Strategy<Value = Kind> {
    prop::sample::select(Kind::ALL.to_vec())
}

fn systems() -> impl Strategy<Value = System> {
    prop::sample::select(vec![System::Us, System::Si])
}

/// Half the last digit shown, in SI, at a value of this kind: the most that
/// showing may move it.
fn rounding(kind: Kind, si: f64) -> f64 {
    let three_digits = 0.006 * si.abs();
    match kind {
        Kind::Temperature | Kind::TemperatureDifference => 0.051,
        Kind::GaugePressure | Kind::AbsolutePressure => three_digits.max(350.0),
        Kind::Humidity => 0.0051,
        Kind::Level => 0.0016,
        Kind::Length if si.abs() > 30.0 => 0.16,
        Kind::Length => 0.0051,
        Kind::Duration if si.abs() < 600.0 => 0.51,
        Kind::Duration => 30.1,
        Kind::Ph => 0.051,
        Kind::Area | Kind::Conductivity | Kind::Volume | Kind::Flow => three_digits.max(1e-4),
        Kind::Voltage | Kind::Current | Kind::Ratio => three_digits.max(1e-5),
        Kind::Resistance => three_digits.max(1e-3),
        Kind::Heat => three_digits.max(2.0),
    }
}

proptest! {
    #[test]
    fn what_is_shown_can_be_read_back(kind in kinds(), system in systems(), at in 0.0..1.0_f64) {
        let bounds = Bounds::usual(kind);
        // Cubed, to try small values as often as large ones.
        let si = bounds.low + (bounds.high - bounds.low) * at.powi(3);
        let shown = show(Value { kind, si }, system);
        match read(&shown.to_string(), kind, system.unit_for(kind), Bounds::ANY) {
            Ok(typed) => {
                let back = typed.value;
                prop_assert!((back.si - si).abs() <= rounding(kind, si), "{shown}: {si} {}", back.si);
                prop_assert_eq!(show(back, system), shown);
            }
            Err(Refusal::Ambiguous { first, .. }) => {
                prop_assert!(shown.number.contains(','), "{}", shown);
                prop_assert!((first - si).abs() <= rounding(kind, si), "{shown}: {si} {first}");
            }
            Err(refusal) => prop_assert!(false, "{shown}: {refusal:?}"),
        }
    }

    #[test]
    fn no_text_panics_or_reads_as_no_number(text in any::<String>(), kind in kinds(), system in systems()) {
        if let Ok(typed) = read(&text, kind, system.unit_for(kind), Bounds::ANY) {
            prop_assert!(typed.value.si.is_finite());
        }
    }

    #[test]
    fn no_near_miss_panics_or_breaks_the_bounds(
        text in "[ -]?[0-9.,/ ½⅛\u{a0}]{0,9}[-'\" ]{0,2}(ft|in|h|m|K|C|F|psi|V|M|µS)?[-0-9½/ ]{0,5}(\"|in|min|s)?",
        kind in kinds(),
        system in systems(),
    ) {
        let bounds = Bounds::usual(kind);
        if let Ok(typed) = read(&text, kind, system.unit_for(kind), bounds) {
            prop_assert!(bounds.contains(typed.value.si));
            prop_assert!(typed.unit.kind_fits(kind));
        }
    }

    #[test]
    fn any_value_can_be_shown(kind in kinds(), system in systems(), si in any::<f64>()) {
        let shown = show(Value { kind, si }, system);
        prop_assert!(!shown.number.contains(['i', 'N']), "{}", shown);
        let digits = shown.number.bytes().any(|b| matches!(b, b'1'..=b'9'));
        prop_assert!(digits || !shown.number.starts_with('-'), "{}", shown);
    }
}
