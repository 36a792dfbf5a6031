//! English: typed readings that were not taken.

use crate::quantity::{Bounds, Kind, Refusal, Shown, System, Unit, Value, show, show_with};

/// See [`Words::refusal`](crate::words::Words::refusal).
pub fn refusal(refusal: &Refusal, of: Kind, system: System) -> String {
    let example = example(of, system).replace(' ', "\u{a0}");
    match refusal {
        Refusal::Empty => format!("Type a reading, for example {example}."),
        Refusal::NotANumber { near } => {
            format!("“{near}” is not a number we can read. Type it like {example}.")
        }
        Refusal::UnknownUnit { unit } => {
            format!(
                "“{unit}” is not a unit we know for {}. Use {}.",
                kind(of),
                units(of)
            )
        }
        Refusal::WrongUnit {
            unit: Unit::InchMercury,
            wanted: Kind::GaugePressure,
        } => "inHg alone is a barometer reading. For vacuum on a gauge type it like 20 inHg vac."
            .into(),
        Refusal::WrongUnit { unit, wanted } => {
            let typed = match unit.symbol() {
                "" => "A plain number",
                symbol => symbol,
            };
            format!(
                "{typed} is not a unit of {}. Use {}.",
                bare(*wanted),
                units(*wanted)
            )
        }
        Refusal::PartTooLarge {
            number,
            unit,
            limit,
        } => {
            format!(
                "{} is too many after the larger unit: it must be less than {}.",
                as_typed(*number, *unit),
                as_typed(*limit, *unit),
            )
        }
        Refusal::BelowAbsoluteZero { si } => {
            let shown = |si| {
                show(
                    Value {
                        kind: Kind::Temperature,
                        si,
                    },
                    system,
                )
            };
            format!(
                "That is {}. Nothing is colder than {}: check the reading and its unit.",
                shown(*si),
                shown(0.0)
            )
        }
        Refusal::OutOfRange { si, bounds } => out_of_range(*si, *bounds, of, system),
        Refusal::Ambiguous {
            first,
            second,
            unit,
        } => {
            let text = |si: f64| as_typed(unit.from_si(si), *unit);
            format!(
                "That could be {} or {}. Type it without the comma, with a point for decimals.",
                text(*first),
                text(*second)
            )
        }
    }
}

/// The value, the limits, what to do.
fn out_of_range(si: f64, bounds: Bounds, of: Kind, system: System) -> String {
    let short = |si: f64| show(Value { kind: of, si }, system);
    // A value that rounds to the limit it broke is shown finer.
    let fine = [bounds.low, bounds.high]
        .iter()
        .any(|end| short(*end) == short(si));
    let text = |si: f64| {
        if fine {
            let shown = show_with(Value { kind: of, si }, system.unit_for(of), 4);
            shown.to_string()
        } else {
            short(si).to_string()
        }
    };
    let (value, what) = (text(si), bare(of));
    let (low, high) = (text(bounds.low), text(bounds.high));
    let usual = match (bounds.low.is_finite(), bounds.high.is_finite()) {
        (true, true) => format!("is usually {low} to {high}"),
        (true, false) => format!("is usually {low} or more"),
        _ => format!("is usually {high} or less"),
    };
    format!("That is {value}. This {what} {usual}: check the reading and its unit.")
}

/// A kind with its article.
pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Temperature => "a temperature",
        Kind::TemperatureDifference => "a temperature difference",
        Kind::GaugePressure => "a gauge pressure",
        Kind::PressureDifference => "a pressure difference",
        Kind::AbsolutePressure => "an absolute pressure",
        Kind::Humidity => "a relative humidity",
        Kind::Level => "a level",
        Kind::Length => "a length",
        Kind::Area => "an area",
        Kind::Volume => "a volume",
        Kind::Flow => "a flow",
        Kind::Voltage => "a voltage",
        Kind::Resistance => "a resistance",
        Kind::Current => "a current",
        Kind::Conductivity => "a conductivity",
        Kind::Heat => "a heat load",
        Kind::Duration => "a time",
        Kind::Ratio => "a ratio",
        Kind::Ph => "a pH",
        Kind::Enthalpy => "an enthalpy",
        Kind::HumidityRatio => "a humidity ratio",
        Kind::Density => "a density",
        Kind::Mass => "a mass",
        Kind::MassFlow => "a mass flow",
        Kind::Concentration => "a concentration",
        Kind::AsCalciumCarbonate => "a concentration as CaCO3",
        Kind::Number => "a number",
    }
}

/// A kind without its article.
fn bare(of: Kind) -> &'static str {
    let named = kind(of);
    named.split_once(' ').map_or(named, |(_, name)| name)
}

/// The units of a kind: "°F, °C or K".
fn units(of: Kind) -> String {
    listed(of, "a plain number", "or")
}

/// The units of a kind in a row, the last behind `or`; `plain` stands for none.
pub(in crate::words) fn listed(of: Kind, plain: &str, or: &str) -> String {
    let mut names: Vec<&str> = Unit::ALL
        .iter()
        .filter(|unit| unit.kind_fits(of))
        .map(|unit| unit.symbol())
        .map(|symbol| if symbol.is_empty() { plain } else { symbol })
        .collect();
    let last = names.pop().unwrap_or_default();
    if names.is_empty() {
        last.into()
    } else {
        format!("{} {or} {last}", names.join(", "))
    }
}

/// A number as someone typed it: up to four decimals, no closing zeros.
pub(in crate::words) fn as_typed(number: f64, unit: Unit) -> String {
    let text = format!("{number:.4}");
    let number = text.trim_end_matches('0').trim_end_matches('.').into();
    Shown {
        number,
        unit: unit.symbol(),
    }
    .to_string()
}

/// A reading one might type.
pub(in crate::words) fn example(of: Kind, system: System) -> &'static str {
    let pick = |us, si| if system == System::Us { us } else { si };
    match of {
        Kind::Temperature => pick("79 °F", "26 °C"),
        Kind::TemperatureDifference => pick("10 °F", "5.5 K"),
        Kind::GaugePressure => pick("45 psig", "310 kPa"),
        Kind::PressureDifference => pick("7 psi", "50 kPa"),
        Kind::AbsolutePressure => pick("14.7 psia", "101.3 kPa"),
        Kind::Humidity => "50%",
        Kind::Level => pick("4 1/2 in", "114 mm"),
        Kind::Length => pick("5 ft 6 in", "1.7 m"),
        Kind::Area => pick("40 ft²", "3.7 m²"),
        Kind::Volume => pick("250 gal", "950 L"),
        Kind::Flow => pick("12 gpm", "0.8 L/s"),
        Kind::Voltage => "24.3\u{a0}V",
        Kind::Resistance => "47 kΩ",
        Kind::Current => "0.25\u{a0}A",
        Kind::Conductivity => "1450 µS/cm",
        Kind::Heat => pick("60 ton", "210 kW"),
        Kind::Duration => "38\u{a0}min",
        Kind::Ratio => "30%",
        Kind::Ph => "7.8",
        Kind::Enthalpy => pick("22.1 Btu/lb", "51.4 kJ/kg"),
        Kind::HumidityRatio => pick("70 gr/lb", "10 g/kg"),
        Kind::Density => pick("0.072 lb/ft3", "1.15 kg/m3"),
        Kind::Mass => pick("25 lb", "11 kg"),
        Kind::MassFlow => pick("1500 lb/h", "0.2 kg/s"),
        Kind::Concentration => pick("250 ppm", "250 mg/L"),
        Kind::AsCalciumCarbonate => pick("120 ppm", "120 mg/L"),
        Kind::Number => "4",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::read;

    fn said(text: &str, of: Kind, system: System, bounds: Bounds) -> String {
        let refused = read(text, of, system.unit_for(of), bounds).unwrap_err();
        refusal(&refused, of, system).replace('\u{a0}', " ")
    }

    #[test]
    fn a_refusal_names_the_value_the_limits_and_the_next_step() {
        let water = Bounds::of(40.0, 140.0, Unit::Fahrenheit);
        let say = |text, system| said(text, Kind::Temperature, system, water);
        assert_eq!(
            say("300", System::Us),
            "That is 300.0 °F. This temperature is usually 40.0 °F to 140.0 °F: check the reading \
             and its unit."
        );
        assert_eq!(
            say("300 F", System::Si),
            "That is 148.9 °C. This temperature is usually 4.4 °C to 60.0 °C: check the reading \
             and its unit."
        );
        assert!(say("140.04", System::Us).starts_with("That is 140.0400 °F."));
        assert_eq!(
            say("-500", System::Us),
            "That is -500.0 °F. Nothing is colder than -459.7 °F: check the reading and its unit."
        );
        assert_eq!(
            say("79 psi", System::Us),
            "psi is not a unit of temperature. Use °F, °C or K."
        );
        assert_eq!(
            say("79 x2", System::Us),
            "“x2” is not a unit we know for a temperature. Use °F, °C or K."
        );
        assert_eq!(say("", System::Si), "Type a reading, for example 26 °C.");
        let flow = said("1,250", Kind::Flow, System::Us, Bounds::usual(Kind::Flow));
        assert_eq!(
            flow,
            "That could be 1250 gpm or 1.25 gpm. Type it without the comma, with a point for \
             decimals."
        );
        let tape = said("5' 14\"", Kind::Length, System::Us, Bounds::ANY);
        assert_eq!(
            tape,
            "14 in is too many after the larger unit: it must be less than 12 in."
        );
        let open = Bounds {
            low: 0.0,
            high: f64::INFINITY,
        };
        let volts = said("-3", Kind::Voltage, System::Us, open);
        assert_eq!(
            volts,
            "That is -3.00 V. This voltage is usually 0 V or more: check the reading and its unit."
        );
    }

    #[test]
    fn every_example_reads_and_is_plausible() {
        for of in Kind::ALL {
            for system in [System::Us, System::Si] {
                let text = example(of, system);
                let read = read(text, of, system.unit_for(of), Bounds::usual(of));
                assert!(read.is_ok(), "{of:?}: {text}: {read:?}");
            }
        }
    }
}
