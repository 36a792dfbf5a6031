//! Which unit a typed word means.

use super::{Kind, Unit};

/// Words matched whatever their case, written as [`plain`] leaves them.
const WORDS: &[(&str, Unit)] = &[
    ("f", Unit::Fahrenheit),
    ("fahrenheit", Unit::Fahrenheit),
    ("c", Unit::Celsius),
    ("celsius", Unit::Celsius),
    ("f", Unit::FahrenheitDifference),
    ("k", Unit::Kelvin),
    ("kelvin", Unit::Kelvin),
    ("c", Unit::CelsiusDifference),
    ("psi", Unit::Psi),
    ("psid", Unit::Psi),
    ("psi", Unit::Psig),
    ("psig", Unit::Psig),
    ("psi", Unit::Psia),
    ("psia", Unit::Psia),
    ("kpa", Unit::Kilopascal),
    ("bar", Unit::Bar),
    ("pa", Unit::Pascal),
    ("inhg", Unit::InchMercury),
    ("inhga", Unit::InchMercury),
    ("inhgabs", Unit::InchMercury),
    ("inhgvac", Unit::InchMercuryVacuum),
    ("inhgvacuum", Unit::InchMercuryVacuum),
    ("invac", Unit::InchMercuryVacuum),
    ("\"hgvac", Unit::InchMercuryVacuum),
    ("\"hg", Unit::InchMercury),
    ("%", Unit::Percent),
    ("%rh", Unit::Percent),
    ("rh", Unit::Percent),
    ("percent", Unit::Percent),
    ("pct", Unit::Percent),
    ("x", Unit::One),
    ("cycles", Unit::One),
    ("in", Unit::Inch),
    ("\"", Unit::Inch),
    ("inch", Unit::Inch),
    ("inches", Unit::Inch),
    ("ft", Unit::Foot),
    ("'", Unit::Foot),
    ("foot", Unit::Foot),
    ("feet", Unit::Foot),
    ("mm", Unit::Millimetre),
    ("cm", Unit::Centimetre),
    ("m", Unit::Metre),
    ("meter", Unit::Metre),
    ("meters", Unit::Metre),
    ("metre", Unit::Metre),
    ("metres", Unit::Metre),
    ("ft2", Unit::SquareFoot),
    ("sqft", Unit::SquareFoot),
    ("in2", Unit::SquareInch),
    ("sqin", Unit::SquareInch),
    ("m2", Unit::SquareMetre),
    ("sqm", Unit::SquareMetre),
    ("gal", Unit::Gallon),
    ("gallon", Unit::Gallon),
    ("gallons", Unit::Gallon),
    ("l", Unit::Litre),
    ("liter", Unit::Litre),
    ("liters", Unit::Litre),
    ("litre", Unit::Litre),
    ("litres", Unit::Litre),
    ("m3", Unit::CubicMetre),
    ("ft3", Unit::CubicFoot),
    ("cuft", Unit::CubicFoot),
    ("gpm", Unit::GallonPerMinute),
    ("gal/min", Unit::GallonPerMinute),
    ("l/s", Unit::LitrePerSecond),
    ("lps", Unit::LitrePerSecond),
    ("l/min", Unit::LitrePerMinute),
    ("lpm", Unit::LitrePerMinute),
    ("m3/h", Unit::CubicMetrePerHour),
    ("m3/hr", Unit::CubicMetrePerHour),
    ("v", Unit::Volt),
    ("vac", Unit::Volt),
    ("vdc", Unit::Volt),
    ("volt", Unit::Volt),
    ("volts", Unit::Volt),
    ("voltsac", Unit::Volt),
    ("voltsdc", Unit::Volt),
    ("ohm", Unit::Ohm),
    ("ohms", Unit::Ohm),
    ("k", Unit::Kilohm),
    ("kohm", Unit::Kilohm),
    ("kohms", Unit::Kilohm),
    ("kilohm", Unit::Kilohm),
    ("kilohms", Unit::Kilohm),
    ("meg", Unit::Megohm),
    ("megs", Unit::Megohm),
    ("megohm", Unit::Megohm),
    ("megohms", Unit::Megohm),
    ("a", Unit::Ampere),
    ("amp", Unit::Ampere),
    ("amps", Unit::Ampere),
    ("aac", Unit::Ampere),
    ("adc", Unit::Ampere),
    ("us/cm", Unit::MicrosiemensPerCentimetre),
    ("us", Unit::MicrosiemensPerCentimetre),
    ("umho/cm", Unit::MicrosiemensPerCentimetre),
    ("umhos", Unit::MicrosiemensPerCentimetre),
    ("ton", Unit::Ton),
    ("tons", Unit::Ton),
    ("tr", Unit::Ton),
    ("btu/h", Unit::BtuPerHour),
    ("btu/hr", Unit::BtuPerHour),
    ("btuh", Unit::BtuPerHour),
    ("mbh", Unit::ThousandBtuPerHour),
    ("kw", Unit::Kilowatt),
    ("w", Unit::Watt),
    ("watt", Unit::Watt),
    ("watts", Unit::Watt),
    ("m", Unit::Minute),
    ("min", Unit::Minute),
    ("mins", Unit::Minute),
    ("minute", Unit::Minute),
    ("minutes", Unit::Minute),
    ("s", Unit::Second),
    ("sec", Unit::Second),
    ("secs", Unit::Second),
    ("second", Unit::Second),
    ("seconds", Unit::Second),
    ("h", Unit::Hour),
    ("hr", Unit::Hour),
    ("hrs", Unit::Hour),
    ("hour", Unit::Hour),
    ("hours", Unit::Hour),
    ("d", Unit::Day),
    ("day", Unit::Day),
    ("days", Unit::Day),
    ("ph", Unit::Ph),
    ("btu/lb", Unit::BtuPerPound),
    ("kj/kg", Unit::KilojoulePerKilogram),
    ("gr/lb", Unit::GrainPerPound),
    ("g/kg", Unit::GramPerKilogram),
    ("lb/ft3", Unit::PoundPerCubicFoot),
    ("kg/m3", Unit::KilogramPerCubicMetre),
    ("lb", Unit::Pound),
    ("lbs", Unit::Pound),
    ("pound", Unit::Pound),
    ("pounds", Unit::Pound),
    ("oz", Unit::Ounce),
    ("kg", Unit::Kilogram),
    ("kilos", Unit::Kilogram),
    ("g", Unit::Gram),
    ("lb/h", Unit::PoundPerHour),
    ("lb/hr", Unit::PoundPerHour),
    ("lbs/hr", Unit::PoundPerHour),
    ("pph", Unit::PoundPerHour),
    ("lb/min", Unit::PoundPerMinute),
    ("kg/s", Unit::KilogramPerSecond),
    ("kg/h", Unit::KilogramPerHour),
    ("kg/hr", Unit::KilogramPerHour),
    ("ppm", Unit::PartPerMillion),
    ("mg/l", Unit::MilligramPerLitre),
    ("gpg", Unit::GrainPerGallon),
];

/// Words whose first letter is a prefix, milli or mega, that only its case
/// tells apart: that letter must be typed as here.
const PREFIXED: &[(&str, Unit)] = &[
    ("mv", Unit::Millivolt),
    ("mvac", Unit::Millivolt),
    ("mvdc", Unit::Millivolt),
    ("M", Unit::Megohm),
    ("Mohm", Unit::Megohm),
    ("Mohms", Unit::Megohm),
    ("ma", Unit::Milliampere),
    ("madc", Unit::Milliampere),
    ("ms/cm", Unit::MillisiemensPerCentimetre),
    ("ms", Unit::MillisiemensPerCentimetre),
];

/// Words that say gauge or absolute, or what stands for the substance, where
/// the unit alone does not.
const MARKED: &[(&str, Unit, Kind)] = &[
    ("kpag", Unit::Kilopascal, Kind::GaugePressure),
    ("barg", Unit::Bar, Kind::GaugePressure),
    ("kpaa", Unit::Kilopascal, Kind::AbsolutePressure),
    ("bara", Unit::Bar, Kind::AbsolutePressure),
    ("ppmascaco3", Unit::PartPerMillion, Kind::AsCalciumCarbonate),
    ("ppmcaco3", Unit::PartPerMillion, Kind::AsCalciumCarbonate),
    (
        "mg/lascaco3",
        Unit::MilligramPerLitre,
        Kind::AsCalciumCarbonate,
    ),
    (
        "mg/lcaco3",
        Unit::MilligramPerLitre,
        Kind::AsCalciumCarbonate,
    ),
];

/// The unit a word means when this kind is asked for: a fitting unit when
/// there is one, else a unit of another kind, else `None`. The words for a
/// plain number are known only where a plain number fits.
pub(super) fn unit_named(word: &str, kind: Kind) -> Option<Unit> {
    let plain = plain(word);
    let plain = without_degree(&plain);
    let lower = plain.to_ascii_lowercase();
    let loose = WORDS.iter().filter(|(w, _)| *w == lower);
    let exact = PREFIXED
        .iter()
        .filter(|(w, _)| w.eq_ignore_ascii_case(&lower) && w.as_bytes()[0] == plain.as_bytes()[0]);
    let marked = MARKED
        .iter()
        .find(|(w, _, k)| *w == lower && *k == kind)
        .map(|(_, u, _)| *u);
    let mut found = loose.chain(exact).map(|(_, unit)| *unit);
    let other = found.clone().find(|unit| *unit != Unit::One);
    marked
        .or_else(|| found.find(|unit| unit.kind_fits(kind)))
        .or(other)
}

/// Whether a word is the degree sign, or says "degrees", and no unit.
pub(super) fn only_degrees(word: &str) -> bool {
    without_degree(&plain(word)).is_empty()
}

/// A plain word without the "degrees" before its letter.
fn without_degree(word: &str) -> &str {
    let long = ["degrees", "degree", "deg"].into_iter().find(|degree| {
        let start = word.get(..degree.len());
        start.is_some_and(|s| s.eq_ignore_ascii_case(degree))
    });
    &word[long.map_or(0, str::len)..]
}

/// One spelling for the many signs a keyboard offers: no spaces, degree signs
/// or full stops; straight quotes; plain digits; `u` for micro, `ohm` for Ω.
fn plain(word: &str) -> String {
    let mut out = String::with_capacity(word.len());
    for c in word.chars() {
        match c {
            '°' | 'º' | '˚' | '.' => {}
            c if c.is_whitespace() => {}
            'µ' | 'μ' => out.push('u'),
            'Ω' | '\u{2126}' | 'ω' => out.push_str("ohm"),
            '℃' => out.push('c'),
            '℉' => out.push('f'),
            '²' => out.push('2'),
            '³' | '₃' => out.push('3'),
            '\'' | '’' | '‘' | '′' | '´' | '`' if out == "'" => {
                out.clear();
                out.push('"');
            }
            '’' | '‘' | '′' | '´' | '`' => out.push('\''),
            '”' | '“' | '″' => out.push('"'),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_is_known_by_its_own_symbol() {
        for &unit in Unit::ALL {
            for kind in Kind::ALL.into_iter().filter(|k| unit.kind_fits(*k)) {
                if unit != Unit::One {
                    assert_eq!(unit_named(unit.symbol(), kind), Some(unit), "{unit:?}");
                }
            }
        }
    }

    #[test]
    fn case_decides_only_between_milli_and_mega() {
        assert_eq!(unit_named("M", Kind::Resistance), Some(Unit::Megohm));
        assert_eq!(unit_named("MOHM", Kind::Resistance), Some(Unit::Megohm));
        assert_eq!(unit_named("mohm", Kind::Resistance), None);
        assert_eq!(unit_named("mΩ", Kind::Resistance), None);
        assert_eq!(unit_named("MV", Kind::Voltage), None);
        assert_eq!(unit_named("mv", Kind::Voltage), Some(Unit::Millivolt));
        assert_eq!(
            unit_named("KPA", Kind::GaugePressure),
            Some(Unit::Kilopascal)
        );
    }

    #[test]
    fn a_word_of_another_kind_is_still_known() {
        assert_eq!(unit_named("psig", Kind::AbsolutePressure), Some(Unit::Psig));
        assert_eq!(unit_named("psi", Kind::AbsolutePressure), Some(Unit::Psia));
        assert_eq!(unit_named("barg", Kind::AbsolutePressure), None);
        assert_eq!(unit_named("m", Kind::Duration), Some(Unit::Minute));
        assert_eq!(unit_named("m", Kind::Level), Some(Unit::Metre));
    }
}
