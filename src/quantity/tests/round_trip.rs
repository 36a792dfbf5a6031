//! What must hold for any value and any text.

use proptest::prelude::*;

use super::super::*;

fn kinds() -> impl Strategy<Value = Kind> {
    prop::sample::select(Kind::ALL.to_vec())
}

fn systems() -> impl Strategy<Value = System> {
    prop::sample::select(vec![System::Us, System::Si])
}

/// Half the last digit shown, in SI, at a value of this kind: the most that
/// showing may move it.
fn rounding(kind: Kind, si: f64) -> f64 {
    // Half a step is half a percent of 100; below 0.1 of the unit, 0.0005 of it.
    let three_digits = |finest: f64| (0.00501 * si.abs()).max(0.000501 * finest);
    match kind {
        Kind::Temperature | Kind::TemperatureDifference | Kind::Ph => 0.0501,
        Kind::GaugePressure | Kind::PressureDifference | Kind::AbsolutePressure
            if si.abs() < 99e3 =>
        {
            345.0
        }
        Kind::GaugePressure | Kind::PressureDifference | Kind::AbsolutePressure => 3450.0,
        Kind::Humidity => 0.00501,
        Kind::Level => 0.00159,
        Kind::Length if si.abs() > 30.0 => 0.153,
        Kind::Length => 0.00501,
        Kind::Duration if si.abs() < 600.0 => 0.501,
        Kind::Duration => 30.01,
        Kind::Area => three_digits(1.0),
        Kind::Volume => three_digits(3.8e-3),
        Kind::Flow => three_digits(1e-3),
        Kind::Voltage | Kind::Current => three_digits(1e-3),
        Kind::Resistance => three_digits(1.0),
        Kind::Conductivity => three_digits(1e-4),
        Kind::Heat => three_digits(3517.0),
        Kind::Ratio => three_digits(0.01),
        Kind::Enthalpy => three_digits(2326.0),
        Kind::HumidityRatio => three_digits(1e-3),
        Kind::Density => three_digits(16.1),
        Kind::Mass => three_digits(1.0),
        Kind::MassFlow => three_digits(1.0),
        Kind::Concentration | Kind::AsCalciumCarbonate => three_digits(1e-3),
        Kind::Number => three_digits(1.0),
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
        prop_assert!(!shown.number.contains("inf") && !shown.number.contains("NaN"), "{}", shown);
        let digits = shown.number.bytes().any(|b| matches!(b, b'1'..=b'9'));
        prop_assert!(digits || !shown.number.starts_with('-'), "{}", shown);
    }
}
