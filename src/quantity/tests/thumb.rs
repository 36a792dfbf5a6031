//! What a thumb makes of a reading on a phone's keyboard.

use super::super::*;

/// Text, kind, and the number it must be in the field's US unit.
#[test]
fn slips_that_still_say_one_thing() {
    use Kind::*;
    for (text, kind, number) in [
        ("1 '4", Level, 16.0),
        ("1´4", Level, 16.0),
        ("1`4\"", Level, 16.0),
        ("1' ½\"", Level, 12.5),
        ("1′ 4½″", Level, 16.5),
        ("1 ft. 4 in.", Level, 16.0),
        ("1' - 4 1/2\"", Level, 16.5),
        ("1'-4-1/2\"", Level, 16.5),
        ("1\u{a0}ft 4\u{a0}1/2", Level, 16.5),
        ("3 1/2 in", Level, 3.5),
        ("3 1/2in", Level, 3.5),
        ("½ in", Level, 0.5),
        ("½\"", Level, 0.5),
        ("1/2", Level, 0.5),
        ("4,5\"", Level, 4.5),
        ("12,5 psi", GaugePressure, 12.5),
        ("12, psi", GaugePressure, 12.0),
        ("12.5PSI", GaugePressure, 12.5),
        ("2 1/2 psi", GaugePressure, 2.5),
        ("12½ psi", GaugePressure, 12.5),
        ("1.234,5 kPa", GaugePressure, 1234.5 / 6.894_757_293),
        ("1,234.5 kPa", GaugePressure, 1234.5 / 6.894_757_293),
        ("—5 psi", GaugePressure, -5.0),
        ("−5", Temperature, -5.0),
        ("‑5", Temperature, -5.0),
        ("79 °F", Temperature, 79.0),
        ("79 ° F", Temperature, 79.0),
        ("79°", Temperature, 79.0),
        ("79 degrees", Temperature, 79.0),
        ("79 degrees F", Temperature, 79.0),
        ("79 Deg. F", Temperature, 79.0),
        ("79 F°", Temperature, 79.0),
        ("26ºC", Temperature, 78.8),
        ("26˚c", Temperature, 78.8),
        ("10º", TemperatureDifference, 10.0),
        ("0,5", Flow, 0.5),
        ("1 200", Flow, 1200.0),
        ("1 200.5 gpm", Flow, 1200.5),
        ("12 gal / min", Flow, 12.0),
        ("3 G.P.M.", Flow, 3.0),
        ("24 V AC", Voltage, 24.0),
        ("24 volts AC", Voltage, 24.0),
        ("1500 μS / cm", Conductivity, 1500.0),
        ("29.92\" Hg", AbsolutePressure, 14.695_9),
        ("PH: 7,8", Ph, 7.8),
        ("7.8 ph", Ph, 7.8),
        ("120 mg/L CaCO3", AsCalciumCarbonate, 120.0),
    ] {
        let unit = System::Us.unit_for(kind);
        let typed = read(text, kind, unit, Bounds::usual(kind));
        let typed = typed.unwrap_or_else(|refusal| panic!("{text}: {refusal:?}"));
        let got = unit.from_si(typed.value.si);
        assert!(
            (got - number).abs() < 1e-4 * number.abs().max(1.0),
            "{text}: {got}, wanted {number}"
        );
    }
}

/// A text with two meanings, or with none, is never a number.
#[test]
fn slips_that_must_be_typed_again() {
    use Kind::*;
    for (text, kind) in [
        ("1,200 gpm", Flow),
        ("95/85", Temperature),
        ("95/85 F", Temperature),
        ("75/85 F", Temperature),
        ("120/240", Voltage),
        ("208/120 V", Voltage),
        ("24/2", Voltage),
        ("12..5 psi", GaugePressure),
        ("12,,5 psi", GaugePressure),
        ("12.5.3 psi", GaugePressure),
        ("12-5 psi", GaugePressure),
        ("12 5 psi", GaugePressure),
        ("3.1/2 in", Level),
        ("1O", GaugePressure),
        ("-", Temperature),
        ("°F", Temperature),
        ("79 FF", Temperature),
        ("79°", GaugePressure),
        ("79 F C", Temperature),
        ("+-5", Temperature),
        ("1'200 gpm", Flow),
        ("OL", Resistance),
        ("250 ppm as CaCO3", Concentration),
        ("12 lbs", GaugePressure),
        ("1500 ppm", Conductivity),
        ("1' 4 ft", Level),
        ("4 in 1 ft", Level),
    ] {
        let got = read(text, kind, System::Us.unit_for(kind), Bounds::usual(kind));
        assert!(got.is_err(), "{text}: {got:?}");
    }
}

#[test]
fn a_degree_sign_alone_leaves_the_unit_to_the_field() {
    for (bare, said) in [(Unit::Fahrenheit, 79.0), (Unit::Celsius, 79.0)] {
        let typed = read("79°", Kind::Temperature, bare, Bounds::ANY).unwrap();
        assert_eq!((typed.unit, typed.assumed_unit), (bare, true));
        assert!((bare.from_si(typed.value.si) - said).abs() < 1e-9);
    }
}

/// What is quoted back is never empty.
#[test]
fn a_refusal_quotes_what_was_typed() {
    let refused = read("-", Kind::Temperature, Unit::Celsius, Bounds::ANY).unwrap_err();
    assert_eq!(refused, Refusal::NotANumber { near: "-".into() });
}
