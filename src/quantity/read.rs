//! Reading what a person types.

use super::name::{only_degrees, unit_named};
use super::number::{Number, cut, fraction, number};
use super::{Bounds, Kind, Refusal, Unit, Value};

/// A reading as typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Typed {
    /// The value.
    pub value: Value,
    /// The unit it was typed in; the larger one of feet and inches.
    pub unit: Unit,
    /// No unit was typed, so the field's own was taken.
    pub assumed_unit: bool,
}

/// The longest text worth reading, in bytes.
const LONGEST: usize = 64;

/// Reads a typed value of one kind.
///
/// `bare` is the unit of a number typed without one; `bounds` is the span of
/// plausible values in the SI form of `kind`.
///
/// Taken: `79F`, `26,5 °C`, `12.5psig`, `4-1/2 in`, `½`, `1' 4 1/2"`,
/// `2 ft 3 in`, `1 h 27 min`, `24 VAC`, `1500 uS`, a minus of any kind. A
/// smaller unit left out after a larger one is understood (`1' 4`). Case is
/// ignored except where it alone tells milli from mega. A lone degree sign
/// leaves the unit to the field.
///
/// **Fractions.** `95/85` is two temperatures and `120/240` two voltages, so a
/// slash makes a fraction only of a length, a level or a plain ratio; elsewhere
/// only the fractions of a gauge's face do, below one, in halves, thirds,
/// quarters and eighths.
///
/// **Commas.** With both points and commas, the last sign marks decimals. More
/// than one of a sign groups thousands. One comma before exactly three digits
/// (`1,250`) is read as thousands, and as decimals only when the first reading
/// breaks the bounds and the second does not; when both are plausible the text
/// is refused. Every other single comma, also one after a lone 0, marks
/// decimals. One point always marks decimals. A space groups thousands where
/// exactly three digits follow it.
///
/// ```
/// use coldsump::quantity::{Bounds, Kind, Unit, read};
///
/// let typed = read("26,5 °C", Kind::Temperature, Unit::Fahrenheit, Bounds::ANY)?;
/// assert!((typed.value.in_unit(Unit::Fahrenheit).unwrap() - 79.7).abs() < 1e-9);
///
/// let tape = read("1' 4 1/2\"", Kind::Level, Unit::Inch, Bounds::usual(Kind::Level))?;
/// assert!((tape.value.in_unit(Unit::Inch).unwrap() - 16.5).abs() < 1e-9);
///
/// let bare = read("12.5", Kind::GaugePressure, Unit::Psig, Bounds::ANY)?;
/// assert!(bare.assumed_unit);
/// # Ok::<(), coldsump::quantity::Refusal>(())
/// ```
///
/// # Errors
///
/// - [`Refusal::Empty`]: nothing but spaces;
/// - [`Refusal::NotANumber`]: no number where one belongs, or one too
///   large to hold, or a text longer than 64 bytes;
/// - [`Refusal::UnknownUnit`]: an unknown word after the number;
/// - [`Refusal::WrongUnit`]: the unit typed, or `bare`, does not fit `kind`;
/// - [`Refusal::PartTooLarge`]: 12 in or more after feet, and the like;
/// - [`Refusal::BelowAbsoluteZero`]: a temperature below 0 K;
/// - [`Refusal::Ambiguous`]: a comma with two plausible readings;
/// - [`Refusal::OutOfRange`]: outside `bounds`.
pub fn read(text: &str, kind: Kind, bare: Unit, bounds: Bounds) -> Result<Typed, Refusal> {
    let mut rest = text.trim();
    if rest.is_empty() {
        return Err(Refusal::Empty);
    }
    if rest.len() > LONGEST {
        return Err(Refusal::NotANumber { near: cut(rest) });
    }
    if kind == Kind::Ph && rest.get(..2).is_some_and(|p| p.eq_ignore_ascii_case("ph")) {
        rest = rest[2..].trim_start_matches([' ', ':', '=']);
    }
    let mut sign = 1.0;
    if let Some(after) = rest.strip_prefix(['-', '−', '–', '—', '‐', '‑']) {
        sign = -1.0;
        rest = after.trim_start();
    } else if let Some(after) = rest.strip_prefix('+') {
        rest = after.trim_start();
    }
    let typed = rest;
    let (first, rest) = number(typed).map_err(|refusal| match refusal {
        Refusal::NotANumber { near } if near.is_empty() => stuck(text.trim()),
        other => other,
    })?;
    if !is_fraction_of(kind, &typed[..typed.len() - rest.len()], first.value) {
        return Err(stuck(typed));
    }
    let rest = rest.trim();
    let assumed_unit = rest.is_empty() || (kind_has_degrees(kind) && only_degrees(rest));
    let (unit, tail) = if assumed_unit {
        (bare, 0.0)
    } else {
        unit_and_tail(rest, kind)?
    };
    if !unit.kind_fits(kind) {
        return Err(Refusal::WrongUnit { unit, wanted: kind });
    }
    let si = |n: f64| unit.to_si(sign * (n + tail));
    let si = settle(first, si, kind, unit, bounds).map_err(|refusal| match refusal {
        Refusal::NotANumber { .. } => stuck(text.trim()),
        other => other,
    })?;
    Ok(Typed {
        value: Value { kind, si },
        unit,
        assumed_unit,
    })
}

/// Where reading stopped.
fn stuck(at: &str) -> Refusal {
    Refusal::NotANumber { near: cut(at) }
}

fn kind_has_degrees(kind: Kind) -> bool {
    matches!(kind, Kind::Temperature | Kind::TemperatureDifference)
}

/// Whether a number written so may be a fraction, if it is one at all.
fn is_fraction_of(kind: Kind, written: &str, value: f64) -> bool {
    let Some((top, bottom)) = written.rsplit_once(['/', '\u{2044}']) else {
        return true;
    };
    let free = matches!(
        kind,
        Kind::Level | Kind::Length | Kind::Ratio | Kind::Number
    );
    let mixed = !top.bytes().all(|b| b.is_ascii_digit());
    free || (matches!(bottom, "2" | "3" | "4" | "8") && (mixed || value < 1.0))
}

/// Picks the reading of a number that the bounds allow.
fn settle(
    number: Number,
    si: impl Fn(f64) -> f64,
    kind: Kind,
    unit: Unit,
    bounds: Bounds,
) -> Result<f64, Refusal> {
    let first = si(number.value);
    let second = number.as_decimal.map(si).filter(|s| bounds.contains(*s));
    match second {
        Some(second) if !bounds.contains(first) => Ok(second),
        Some(second) => Err(Refusal::Ambiguous {
            first,
            second,
            unit,
        }),
        None if !first.is_finite() => Err(Refusal::NotANumber {
            near: String::new(),
        }),
        // A hair of slack: -459.67 °F itself must not fall to rounding.
        None if kind == Kind::Temperature && first < -1e-9 => {
            Err(Refusal::BelowAbsoluteZero { si: first })
        }
        None if !bounds.contains(first) => Err(Refusal::OutOfRange { si: first, bounds }),
        None => Ok(first),
    }
}

/// The smaller unit that may follow a larger one, and how many make one.
fn smaller(unit: Unit) -> Option<(Unit, f64)> {
    match unit {
        Unit::Foot => Some((Unit::Inch, 12.0)),
        Unit::Day => Some((Unit::Hour, 24.0)),
        Unit::Hour => Some((Unit::Minute, 60.0)),
        Unit::Minute => Some((Unit::Second, 60.0)),
        _ => None,
    }
}

/// The unit after the first number, and what smaller parts follow, counted in
/// that unit.
fn unit_and_tail(text: &str, kind: Kind) -> Result<(Unit, f64), Refusal> {
    let unknown = |word: &str| Refusal::UnknownUnit { unit: cut(word) };
    if text.starts_with(|c: char| c.is_ascii_digit() || "-−–—+/.,".contains(c)) {
        return Err(stuck(text));
    }
    let named = unit_named(text, kind);
    if let Some(unit) = named.filter(|unit| unit.kind_fits(kind)) {
        return Ok((unit, 0.0));
    }
    let parted = matches!(kind, Kind::Level | Kind::Length | Kind::Duration);
    let start = text.find(|c: char| c.is_ascii_digit() || fraction(c).is_some());
    let Some(start) = start.filter(|_| parted) else {
        return named.map(|unit| (unit, 0.0)).ok_or_else(|| unknown(text));
    };
    let (word, part) = text.split_at(start);
    let word = word.trim_end();
    // 5'-6 1/2": the hyphen of drawings.
    let joined = word.strip_suffix('-').filter(|w| !w.is_empty());
    let unit = unit_named(joined.unwrap_or(word), kind).ok_or_else(|| unknown(word))?;
    let next = smaller(unit).filter(|_| unit.kind_fits(kind));
    let Some((next, limit)) = next.filter(|_| joined.is_none() || unit == Unit::Foot) else {
        return named.map(|unit| (unit, 0.0)).ok_or_else(|| stuck(part));
    };
    let (count, rest) = number(part)?;
    let count = count.as_decimal.unwrap_or(count.value);
    let rest = rest.trim();
    let (unit_of_part, tail) = if rest.is_empty() {
        (next, 0.0)
    } else {
        unit_and_tail(rest, kind)?
    };
    if unit_of_part != next {
        return Err(stuck(part));
    }
    if count + tail >= limit {
        return Err(Refusal::PartTooLarge {
            number: count + tail,
            unit: next,
            limit,
        });
    }
    Ok((unit, (count + tail) / limit))
}
