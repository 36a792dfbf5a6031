//! Spanish: typed readings that were not taken.

use crate::quantity::{Bounds, Kind, Refusal, System, Unit, Value, show, show_with};
use crate::words::en::quantity::{as_typed, example};

/// See [`Words::refusal`](crate::words::Words::refusal).
pub fn refusal(refusal: &Refusal, of: Kind, system: System) -> String {
    let example = example(of, system).replace(' ', "\u{a0}");
    match refusal {
        Refusal::Empty => format!("Escriba una lectura, por ejemplo {example}."),
        Refusal::NotANumber { near } => {
            format!("“{near}” no es un número que se pueda leer. Escríbalo como {example}.")
        }
        Refusal::UnknownUnit { unit } => {
            format!(
                "“{unit}” no es una unidad conocida para {}. Use {}.",
                kind(of),
                units(of)
            )
        }
        Refusal::WrongUnit {
            unit: Unit::InchMercury,
            wanted: Kind::GaugePressure,
        } => {
            "inHg solo es lectura de barómetro. Para vacío en un manómetro escríbalo como 20 inHg \
              vac."
                .into()
        }
        Refusal::WrongUnit { unit, wanted } => {
            let typed = match unit.symbol() {
                "" => "Un número solo",
                symbol => symbol,
            };
            format!(
                "{typed} no es una unidad de {}. Use {}.",
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
                "{} es demasiado después de la unidad mayor: debe ser menos de {}.",
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
                "Eso es {}. Nada es más frío que {}: revise la lectura y su unidad.",
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
                "Eso puede ser {} o {}. Escríbalo sin la coma, con punto para los decimales.",
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
    let (value, what) = (text(si), kind(of));
    let (low, high) = (text(bounds.low), text(bounds.high));
    let usual = match (bounds.low.is_finite(), bounds.high.is_finite()) {
        (true, true) => format!("de {low} a {high}"),
        (true, false) => format!("de {low} o más"),
        _ => format!("de {high} o menos"),
    };
    format!("Eso es {value}. Aquí {what} suele ser {usual}: revise la lectura y su unidad.")
}

/// A kind with its article.
pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Temperature => "una temperatura",
        Kind::TemperatureDifference => "una diferencia de temperatura",
        Kind::GaugePressure => "una presión manométrica",
        Kind::PressureDifference => "una diferencia de presión",
        Kind::AbsolutePressure => "una presión absoluta",
        Kind::Humidity => "una humedad relativa",
        Kind::Level => "un nivel",
        Kind::Length => "una longitud",
        Kind::Area => "un área",
        Kind::Volume => "un volumen",
        Kind::Flow => "un caudal",
        Kind::Voltage => "un voltaje",
        Kind::Resistance => "una resistencia",
        Kind::Current => "una corriente",
        Kind::Conductivity => "una conductividad",
        Kind::Heat => "una carga de calor",
        Kind::Duration => "un tiempo",
        Kind::Ratio => "una proporción",
        Kind::Ph => "un pH",
        Kind::Enthalpy => "una entalpía",
        Kind::HumidityRatio => "una relación de humedad",
        Kind::Density => "una densidad",
        Kind::Mass => "una masa",
        Kind::MassFlow => "un flujo de masa",
        Kind::Concentration => "una concentración",
        Kind::AsCalciumCarbonate => "una concentración como CaCO3",
        Kind::Number => "un número",
    }
}

/// A kind without its article.
fn bare(of: Kind) -> &'static str {
    let named = kind(of);
    named.split_once(' ').map_or(named, |(_, name)| name)
}

/// The units of a kind: "°F, °C o K".
fn units(of: Kind) -> String {
    crate::words::en::quantity::listed(of, "un número solo", "o")
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
            "Eso es 300.0 °F. Aquí una temperatura suele ser de 40.0 °F a 140.0 °F: revise la \
             lectura y su unidad."
        );
        assert_eq!(
            say("79 psi", System::Us),
            "psi no es una unidad de temperatura. Use °F, °C o K."
        );
        assert_eq!(
            say("79 x2", System::Us),
            "“x2” no es una unidad conocida para una temperatura. Use °F, °C o K."
        );
        let flow = said("1,250", Kind::Flow, System::Us, Bounds::usual(Kind::Flow));
        assert_eq!(
            flow,
            "Eso puede ser 1250 gpm o 1.25 gpm. Escríbalo sin la coma, con punto para los \
             decimales."
        );
    }
}
