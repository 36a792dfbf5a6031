//! Reading a bare number: decimals, thousands, fractions.

use super::Refusal;

/// A number as typed, with its second reading when a comma leaves one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Number {
    /// The number; with commas as thousands where there are two readings.
    pub value: f64,
    /// The number with its comma marking decimals, when that reads as well.
    pub as_decimal: Option<f64>,
}

/// At most 24 characters of a text, to quote in a refusal.
pub(super) fn cut(text: &str) -> String {
    text.chars().take(24).collect()
}

/// The value of a one-character fraction.
pub(super) fn fraction(c: char) -> Option<f64> {
    Some(match c {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅛' => 0.125,
        '⅜' => 0.375,
        '⅝' => 0.625,
        '⅞' => 0.875,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        _ => return None,
    })
}

/// Reads the number a text begins with; returns it and the text behind it.
///
/// # Errors
///
/// [`Refusal::NotANumber`] when the text begins with none, when its commas and
/// points do not group, when a fraction divides by zero or a mixed number's
/// fraction is not below one, or when the number is too large to hold.
pub(super) fn number(text: &str) -> Result<(Number, &str), Refusal> {
    let refuse = || Refusal::NotANumber { near: cut(text) };
    let plain = |value| Number {
        value,
        as_decimal: None,
    };
    if let Some((value, rest)) = glyph(text) {
        return Ok((plain(value), rest));
    }
    let whole_end = digits(text);
    let (whole, after) = text.split_at(whole_end);
    if whole_end > 0 {
        if let Some((bottom, rest)) = over(after) {
            let value = nearest(whole, "") / bottom;
            return if value.is_finite() {
                Ok((plain(value), rest))
            } else {
                Err(refuse())
            };
        }
        if let Some((part, rest)) = fraction_behind(after) {
            let whole = nearest(whole, "");
            let fits = part < 1.0 && whole.is_finite();
            return if fits {
                Ok((plain(whole + part), rest))
            } else {
                Err(refuse())
            };
        }
    }
    let (token, rest) = token(text);
    let number = separated(&token).ok_or_else(refuse)?;
    if number.value.is_finite() {
        Ok((number, rest))
    } else {
        Err(refuse())
    }
}

/// The number that digits before and behind the decimal mark make: the nearest
/// `f64` up to 15 digits, within two units in the last place beyond. The
/// library's reader is exact for any length and fills 12 kB of the program.
fn nearest(whole: &str, part: &str) -> f64 {
    let add = |sum: f64, digit: u8| 10.0 * sum + f64::from(digit - b'0');
    let behind = part.trim_end_matches('0');
    let sum = whole.bytes().chain(behind.bytes()).fold(0.0, add);
    sum / behind.bytes().fold(1.0, |power, _| 10.0 * power)
}

/// A plain number, all of a text: a sign or none, digits, and a point or a
/// comma before decimals. No unit, no groups, no fraction; the nearest `f64` up
/// to 15 digits. For counts and prices, where [`read`](super::read) says too
/// much. `None` for anything else and for what is too large to hold.
pub fn decimal(text: &str) -> Option<f64> {
    let bare = text.strip_prefix(['-', '+']).unwrap_or(text);
    let (whole, part) = bare.split_once(['.', ',']).unwrap_or((bare, ""));
    let figures = digits(whole) == whole.len() && digits(part) == part.len();
    let sign = if text.starts_with('-') { -1.0 } else { 1.0 };
    (figures && whole.len() + part.len() > 0)
        .then(|| sign * nearest(whole, part))
        .filter(|n| n.is_finite())
}

/// How many leading ASCII digits.
fn digits(text: &str) -> usize {
    text.bytes().take_while(u8::is_ascii_digit).count()
}

/// A leading one-character fraction.
fn glyph(text: &str) -> Option<(f64, &str)> {
    let mut chars = text.chars();
    let value = fraction(chars.next()?)?;
    Some((value, chars.as_str()))
}

/// A slash and a denominator.
fn over(text: &str) -> Option<(f64, &str)> {
    let text = text.strip_prefix(['/', '\u{2044}'])?;
    let (bottom, rest) = text.split_at(digits(text));
    (!bottom.is_empty()).then(|| (nearest(bottom, ""), rest))
}

/// A fraction behind a whole number: after a space, a hyphen, or nothing.
fn fraction_behind(text: &str) -> Option<(f64, &str)> {
    let inner = text.trim_start();
    let inner = inner.strip_prefix('-').unwrap_or(inner);
    if let Some(found) = glyph(inner) {
        return Some(found);
    }
    let (top, rest) = inner.split_at(digits(inner));
    let (bottom, rest) = over(rest)?;
    (!top.is_empty()).then(|| (nearest(top, "") / bottom, rest))
}

/// The run of digits, points, commas and grouping spaces a text begins with,
/// spaces left out, and the text behind it. A closing point or comma is not
/// part of the number and is dropped.
fn token(text: &str) -> (String, &str) {
    let mut token = String::new();
    let mut rest = text;
    loop {
        let run = digits(rest);
        token.push_str(&rest[..run]);
        rest = &rest[run..];
        let Some(sign) = rest.chars().next() else {
            break;
        };
        let behind = &rest[sign.len_utf8()..];
        let next = digits(behind);
        if (sign == '.' || sign == ',') && next > 0 {
            token.push(sign);
        } else if !(sign.is_whitespace()
            && next == 3
            && (1..=3).contains(&run)
            && !token.contains(['.', ','])
            && over(&behind[3..]).is_none())
        {
            if run > 0 && (sign == '.' || sign == ',') {
                rest = behind;
            }
            break;
        }
        rest = behind;
    }
    (token, rest)
}

/// A token of digits, points and commas as a number; the rule is in
/// [`read`](super::read). `None` when the signs do not group.
fn separated(token: &str) -> Option<Number> {
    let parse = |decimal: Option<char>| -> Option<f64> {
        let (whole, part) = match decimal {
            Some(mark) => token.rsplit_once(mark)?,
            None => (token, ""),
        };
        if part.contains(['.', ',']) {
            return None;
        }
        let mut groups = whole.split(['.', ',']);
        let lead = groups.next()?;
        let mut rest = groups.peekable();
        if rest.peek().is_some() && !(1..=3).contains(&lead.len()) {
            return None;
        }
        let mut text = String::from(lead);
        for group in rest {
            if group.len() != 3 {
                return None;
            }
            text.push_str(group);
        }
        (!text.is_empty() || !part.is_empty()).then(|| nearest(&text, part))
    };
    let commas = token.matches(',').count();
    let points = token.matches('.').count();
    let plain = |value| Number {
        value,
        as_decimal: None,
    };
    match (commas, points) {
        (0, 0) => parse(None).map(plain),
        (1, 0) => {
            let decimal = parse(Some(','))?;
            match parse(None).filter(|_| !token.starts_with('0')) {
                Some(value) => Some(Number {
                    value,
                    as_decimal: Some(decimal),
                }),
                None => Some(plain(decimal)),
            }
        }
        (0, 1) => parse(Some('.')).map(plain),
        (_, 0) | (0, _) => parse(None).map(plain),
        _ => {
            let last = token.rfind(['.', ','])?;
            let mark = if token[last..].starts_with(',') {
                ','
            } else {
                '.'
            };
            let whole = &token[..last];
            (!whole.contains(mark))
                .then(|| parse(Some(mark)))?
                .map(plain)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn value(text: &str) -> Option<f64> {
        number(text)
            .ok()
            .filter(|(_, rest)| rest.is_empty())
            .map(|(n, _)| n.value)
    }

    #[test]
    fn plain_numbers() {
        for (text, wanted) in [
            ("12.4", 12.4),
            ("4,10", 4.1),
            ("-0.25", -0.25),
            ("+7", 7.0),
            (".5", 0.5),
            ("5.", 5.0),
        ] {
            assert_eq!(decimal(text), Some(wanted), "{text}");
        }
        for text in [
            "", "-", ".", "1.2.3", "1,234.5", "1e5", "inf", "NaN", " 1", "1 in", "--1",
        ] {
            assert_eq!(decimal(text), None, "{text}");
        }
        assert_eq!(decimal(&"9".repeat(400)), None);
    }

    #[test]
    fn decimals_and_groups() {
        for (text, wanted) in [
            ("26", 26.0),
            ("26.5", 26.5),
            ("26,5", 26.5),
            (".5", 0.5),
            (",5", 0.5),
            ("26.", 26.0),
            ("0,125", 0.125),
            ("1.250", 1.25),
            ("1,250.5", 1250.5),
            ("1.250,5", 1250.5),
            ("1,250,000", 1_250_000.0),
            ("1.250.000", 1_250_000.0),
            ("12 500", 12_500.0),
            ("12\u{a0}500,5", 12_500.5),
            ("1234,567", 1234.567),
        ] {
            assert_eq!(value(text), Some(wanted), "{text}");
        }
        let both = number("1,250").unwrap().0;
        assert_eq!(
            both,
            Number {
                value: 1250.0,
                as_decimal: Some(1.25)
            }
        );
        for text in [
            "1,25,000",
            "12,3456,789",
            "1.2,3.4",
            ",",
            ".",
            "",
            "x",
            "1,2,3",
        ] {
            assert_eq!(value(text), None, "{text}");
        }
    }

    proptest::proptest! {
        #[test]
        fn decimals_are_the_nearest_number(whole in "[0-9]{1,8}", part in "[0-9]{0,7}") {
            let library: f64 = format!("{whole}.{part}").parse().unwrap();
            proptest::prop_assert_eq!(nearest(&whole, &part), library);
        }
    }

    #[test]
    fn fractions() {
        for (text, wanted) in [
            ("1/2", 0.5),
            ("4 1/2", 4.5),
            ("4-1/2", 4.5),
            ("4½", 4.5),
            ("4 ⅛", 4.125),
            ("⅞", 0.875),
            ("5/4", 1.25),
            ("4 125/1000", 4.125),
            ("4 1⁄2", 4.5),
        ] {
            assert_eq!(value(text), Some(wanted), "{text}");
        }
        for text in ["1/0", "4 1/0", "4 3/2", "4 1/", "0/0"] {
            assert_eq!(value(text), None, "{text}");
        }
    }
}
