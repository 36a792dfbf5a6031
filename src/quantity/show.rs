//! Showing a value with the digits its measurement deserves.

use std::fmt;

use super::{Kind, System, Unit, Value};

/// Keeps a number and its unit on one line.
const JOIN: char = '\u{a0}';

/// A value ready to be shown: the number large, the unit small beside it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// The number. Feet and hours stand in it when inches or minutes follow:
    /// `1 ft 4 1/2`, `1 h 27`. A dash when the value is not a finite number.
    pub number: String,
    /// The unit's symbol; empty for a plain number.
    pub unit: &'static str,
}

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.number)?;
        if !self.unit.is_empty() {
            if self.unit != "%" {
                write!(f, "{JOIN}")?;
            }
            f.write_str(self.unit)?;
        }
        Ok(())
    }
}

/// Shows a value in a system's unit for its kind.
///
/// Digits: temperatures and pH 0.1; pressures 0.1 below 100, else 1; humidity
/// 1 %; level 1/8 in or 1 mm; length 1/8 in, from 100 ft on 1 ft, or 0.01 m;
/// durations in seconds below ten minutes, else minutes; all
/// others three significant digits, never coarser than one of the unit nor
/// finer than 0.001, heat never finer than three figures. Volts, amperes and ohms take a prefix when it reads
/// better. From 10,000 on, thousands are grouped: by commas in US units, by
/// spaces in SI.
///
/// ```
/// use coldsump::quantity::{Kind, System, Value, show};
///
/// let level = Value { kind: Kind::Level, si: 0.1143 };
/// assert_eq!(show(level, System::Us).number, "4\u{a0}1/2");
/// assert_eq!(show(level, System::Si).to_string(), "114\u{a0}mm");
///
/// let took = Value { kind: Kind::Duration, si: 5220.0 };
/// assert_eq!(show(took, System::Us).to_string(), "1\u{a0}h\u{a0}27\u{a0}min");
/// ```
pub fn show(value: Value, system: System) -> Shown {
    let unit = system.unit_for(value.kind);
    if !value.si.is_finite() {
        return Shown {
            number: "–".into(),
            unit: unit.symbol(),
        };
    }
    let parts_fit = value.si.abs() < 1e6;
    match value.kind {
        Kind::Level if system == System::Us && parts_fit => inches(value.si),
        Kind::Length if system == System::Us && parts_fit => feet(value.si),
        Kind::Duration if parts_fit => duration(value.si),
        kind => {
            let unit = prefixed(unit, value.si);
            let number = match kind {
                Kind::Heat => three_figures(unit.from_si(value.si)),
                _ => unit.from_si(value.si),
            };
            Shown {
                number: grouped(number, digits(kind, unit, number), system),
                unit: unit.symbol(),
            }
        }
    }
}

/// A known value as one would type it into a field in which a bare number has
/// this unit.
pub fn as_typed(value: Value, unit: Unit, system: System) -> String {
    let shown = match unit == system.unit_for(value.kind) {
        true => show(value, system),
        false => show_with(value, unit, 2),
    };
    // Feet and inches, and kilohms, carry their unit with the number.
    let bare = shown.unit == unit.symbol() && !shown.number.contains(char::is_whitespace);
    let text = match bare {
        _ if value.si == 0.0 && value.kind == Kind::Length => "0".to_owned(),
        true => shown.number.replace(',', ""),
        false => shown.to_string(),
    };
    text.replace(JOIN, " ")
}

/// Shows a value in a chosen unit with a chosen number of decimals (at most
/// 9), without grouping thousands. A unit that does not fit the value's kind
/// gives way to the SI one, so that a number never stands beside a unit it was
/// not converted to.
pub fn show_with(value: Value, unit: Unit, digits: u8) -> Shown {
    let unit = if unit.kind_fits(value.kind) {
        unit
    } else {
        System::Si.unit_for(value.kind)
    };
    let number = unit.from_si(value.si);
    let number = if number.is_finite() {
        fixed(number, digits.min(9))
    } else {
        "–".into()
    };
    Shown {
        number,
        unit: unit.symbol(),
    }
}

/// The unit with the prefix that suits the size. Thresholds sit where three
/// digits round up to a thousand.
fn prefixed(unit: Unit, si: f64) -> Unit {
    let size = si.abs();
    match unit {
        Unit::Volt if (5e-7..0.9995).contains(&size) => Unit::Millivolt,
        Unit::Ampere if (5e-7..0.09995).contains(&size) => Unit::Milliampere,
        Unit::Ohm if size >= 999_500.0 => Unit::Megohm,
        Unit::Ohm if size >= 999.5 => Unit::Kilohm,
        unit => unit,
    }
}

/// Decimals for a number of this kind.
fn digits(kind: Kind, unit: Unit, number: f64) -> u8 {
    match kind {
        Kind::Temperature | Kind::TemperatureDifference | Kind::Ph => 1,
        Kind::GaugePressure | Kind::PressureDifference | Kind::AbsolutePressure => {
            u8::from(number.abs() < 99.95)
        }
        Kind::Humidity => 0,
        Kind::Level | Kind::Length => match unit {
            Unit::Metre => 2,
            Unit::Foot => 1,
            _ => 0,
        },
        _ => significant(number),
    }
}

/// Rounded to three significant figures: heat comes from a flow and a small
/// difference of two temperatures and is never known better.
fn three_figures(number: f64) -> f64 {
    if number == 0.0 {
        return number;
    }
    let scale = 10f64.powf(number.abs().log10().floor() - 2.0);
    (number / scale).round() * scale
}

/// Decimals that leave three significant digits, 0 to 3; none for what would
/// show as zero.
fn significant(number: f64) -> u8 {
    match number.abs() {
        n if n >= 99.95 => 0,
        n if n >= 9.995 => 1,
        n if n >= 0.9995 => 2,
        n if n >= 0.0005 => 3,
        _ => 0,
    }
}

/// A number with fixed decimals and no minus before a zero; a dash for one
/// that is not finite. Halves round away from zero; the nudge keeps a half that
/// a unit conversion left just short.
fn fixed(number: f64, digits: u8) -> String {
    let nudged = number * (1.0 + 1e-12);
    if !nudged.is_finite() {
        return "–".into();
    }
    let text = format!("{nudged:.*}", usize::from(digits));
    let zero = !text.bytes().any(|b| matches!(b, b'1'..=b'9'));
    if zero {
        text.trim_start_matches('-').into()
    } else {
        text
    }
}

/// As [`fixed`], thousands grouped from 10,000 on.
fn grouped(number: f64, digits: u8, system: System) -> String {
    let text = fixed(number, digits);
    let whole_end = text.find('.').unwrap_or(text.len());
    let start = usize::from(text.starts_with('-'));
    if whole_end - start < 5 {
        return text;
    }
    let mark = if system == System::Us { ',' } else { JOIN };
    let mut out = String::with_capacity(text.len() + 8);
    for (i, c) in text.char_indices() {
        if i > start && i < whole_end && (whole_end - i).is_multiple_of(3) {
            out.push(mark);
        }
        out.push(c);
    }
    out
}

/// A count of eighths as a mixed number: `4 1/2`, `3/8`, `0`.
fn eighths(count: u64) -> String {
    let (whole, part) = (count / 8, count % 8);
    let fraction = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"][part as usize];
    match (whole, part) {
        (_, 0) => whole.to_string(),
        (0, _) => fraction.into(),
        _ => format!("{whole}{JOIN}{fraction}"),
    }
}

/// A level in inches to the nearest eighth.
fn inches(si: f64) -> Shown {
    let count = (Unit::Inch.from_si(si.abs()) * 8.0).round() as u64;
    Shown {
        number: minus(si < 0.0 && count > 0, eighths(count)),
        unit: Unit::Inch.symbol(),
    }
}

/// A length in feet and inches to the nearest eighth; whole feet from 100 ft.
fn feet(si: f64) -> Shown {
    let count = (Unit::Inch.from_si(si.abs()) * 8.0).round() as u64;
    let (feet, rest) = (count / 96, count % 96);
    let (number, unit) = if feet >= 100 {
        return Shown {
            number: grouped(Unit::Foot.from_si(si), 0, System::Us),
            unit: "ft",
        };
    } else if rest == 0 && feet > 0 {
        (feet.to_string(), Unit::Foot)
    } else if feet == 0 {
        (eighths(rest), Unit::Inch)
    } else {
        (format!("{feet}{JOIN}ft{JOIN}{}", eighths(rest)), Unit::Inch)
    };
    Shown {
        number: minus(si < 0.0 && count > 0, number),
        unit: unit.symbol(),
    }
}

/// A duration: `45 s`, `4 min 30 s`, `38 min`, `1 h 27 min`.
fn duration(si: f64) -> Shown {
    let pair = |large: u64, unit: Unit, small: u64, below: Unit| {
        if large == 0 {
            (small.to_string(), below)
        } else if small == 0 {
            (large.to_string(), unit)
        } else {
            (
                format!("{large}{JOIN}{}{JOIN}{small}", unit.symbol()),
                below,
            )
        }
    };
    let seconds = si.abs().round() as u64;
    let (number, unit) = if seconds < 600 {
        pair(seconds / 60, Unit::Minute, seconds % 60, Unit::Second)
    } else {
        let minutes = (si.abs() / 60.0).round() as u64;
        pair(minutes / 60, Unit::Hour, minutes % 60, Unit::Minute)
    };
    Shown {
        number: minus(si < 0.0 && seconds > 0, number),
        unit: unit.symbol(),
    }
}

/// The text, a minus before it when negative.
fn minus(negative: bool, text: String) -> String {
    if negative { format!("-{text}") } else { text }
}
