//! Units, their symbols and their conversion factors.
//!
//! Factors are exact by definition, or built from exact ones (inch 0.0254 m,
//! US gallon 231 in³, pound 0.453 592 37 kg, standard gravity 9.806 65 m/s²,
//! Btu (IT) 1055.055 852 62 J); only the conventional inch of mercury is a
//! rounded 3386.389 Pa. The tests check them against NIST SP 811 (2008),
//! Appendix B.

use crate::quantity::named::by_name;

use super::Kind;

macro_rules! units {
    ($($(#[$doc:meta])* $unit:ident $symbol:literal $factor:expr, [$($kind:ident),+];)+) => {
        /// A unit a person may type or be shown.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Unit { $($(#[$doc])* $unit,)+ }
        by_name!(Unit: $($unit)+);

        impl Unit {
            /// Every unit, grouped by kind, the commonest of a kind first.
            pub const ALL: &[Unit] = &[$(Unit::$unit),+];

            /// The symbol shown beside a number.
            pub fn symbol(self) -> &'static str {
                match self { $(Unit::$unit => $symbol,)+ }
            }

            /// Whether this unit can express this kind of quantity.
            pub fn kind_fits(self, kind: Kind) -> bool {
                match self { $(Unit::$unit => matches!(kind, $(Kind::$kind)|+),)+ }
            }

            /// SI units in one of this unit, leaving any shifted zero aside.
            fn factor(self) -> f64 {
                match self { $(Unit::$unit => $factor,)+ }
            }
        }
    };
}

const INCH: f64 = 0.0254;
const GALLON: f64 = 231.0 * INCH * INCH * INCH;
const FOOT: f64 = 0.3048;
const POUND: f64 = 0.453_592_37;
const PSI: f64 = POUND * 9.806_65 / (INCH * INCH);
const INCH_MERCURY: f64 = 3386.389;
const BTU_PER_HOUR: f64 = 1_055.055_852_62 / 3600.0;

units! {
    /// Degree Fahrenheit, a temperature.
    Fahrenheit "°F" 5.0 / 9.0, [Temperature];
    /// Degree Celsius, a temperature.
    Celsius "°C" 1.0, [Temperature];
    /// Fahrenheit degrees between two temperatures.
    FahrenheitDifference "°F" 5.0 / 9.0, [TemperatureDifference];
    /// Kelvin, a temperature or a difference.
    Kelvin "K" 1.0, [Temperature, TemperatureDifference];
    /// Celsius degrees between two temperatures.
    CelsiusDifference "°C" 1.0, [TemperatureDifference];
    /// Pound-force per square inch above the atmosphere.
    Psig "psig" PSI, [GaugePressure, PressureDifference];
    /// Pound-force per square inch between two pressures.
    Psi "psi" PSI, [PressureDifference];
    /// Pound-force per square inch above vacuum.
    Psia "psia" PSI, [AbsolutePressure];
    /// Kilopascal, of what the kind says.
    Kilopascal "kPa" 1000.0, [GaugePressure, PressureDifference, AbsolutePressure];
    /// Bar, of what the kind says.
    Bar "bar" 100_000.0, [GaugePressure, PressureDifference, AbsolutePressure];
    /// Pascal, of what the kind says.
    Pascal "Pa" 1.0, [GaugePressure, PressureDifference, AbsolutePressure];
    /// Inch of mercury above vacuum, as a barometer reads.
    InchMercury "inHg" INCH_MERCURY, [AbsolutePressure];
    /// Inch of mercury below the atmosphere, as a compound gauge reads vacuum:
    /// more of it is a lower pressure.
    InchMercuryVacuum "inHg vac" -INCH_MERCURY, [GaugePressure];
    /// Percent.
    Percent "%" 0.01, [Humidity, Ratio];
    /// A plain number, for ratios such as cycles of concentration.
    One "" 1.0, [Ratio, Number];
    /// Inch.
    Inch "in" INCH, [Level, Length];
    /// Foot.
    Foot "ft" FOOT, [Level, Length];
    /// Millimetre.
    Millimetre "mm" 0.001, [Level, Length];
    /// Centimetre.
    Centimetre "cm" 0.01, [Level, Length];
    /// Metre.
    Metre "m" 1.0, [Level, Length];
    /// Square foot.
    SquareFoot "ft²" FOOT * FOOT, [Area];
    /// Square inch.
    SquareInch "in²" INCH * INCH, [Area];
    /// Square metre.
    SquareMetre "m²" 1.0, [Area];
    /// US gallon.
    Gallon "gal" GALLON, [Volume];
    /// Litre.
    Litre "L" 0.001, [Volume];
    /// Cubic metre.
    CubicMetre "m³" 1.0, [Volume];
    /// Cubic foot, the unit of many US water meters.
    CubicFoot "ft³" FOOT * FOOT * FOOT, [Volume];
    /// US gallon per minute.
    GallonPerMinute "gpm" GALLON / 60.0, [Flow];
    /// Litre per second.
    LitrePerSecond "L/s" 0.001, [Flow];
    /// Litre per minute.
    LitrePerMinute "L/min" 0.001 / 60.0, [Flow];
    /// Cubic metre per hour.
    CubicMetrePerHour "m³/h" 1.0 / 3600.0, [Flow];
    /// Volt.
    Volt "V" 1.0, [Voltage];
    /// Millivolt.
    Millivolt "mV" 0.001, [Voltage];
    /// Ohm.
    Ohm "Ω" 1.0, [Resistance];
    /// Kilohm.
    Kilohm "kΩ" 1e3, [Resistance];
    /// Megohm.
    Megohm "MΩ" 1e6, [Resistance];
    /// Ampere.
    Ampere "A" 1.0, [Current];
    /// Milliampere.
    Milliampere "mA" 0.001, [Current];
    /// Microsiemens per centimetre.
    MicrosiemensPerCentimetre "µS/cm" 1e-4, [Conductivity];
    /// Millisiemens per centimetre.
    MillisiemensPerCentimetre "mS/cm" 0.1, [Conductivity];
    /// Ton of refrigeration, 12,000 Btu/h. Not the 15,000 Btu/h by which
    /// towers are sometimes rated.
    Ton "ton" 12_000.0 * BTU_PER_HOUR, [Heat];
    /// British thermal unit (IT) per hour.
    BtuPerHour "Btu/h" BTU_PER_HOUR, [Heat];
    /// Thousand Btu per hour.
    ThousandBtuPerHour "MBH" 1000.0 * BTU_PER_HOUR, [Heat];
    /// Kilowatt.
    Kilowatt "kW" 1000.0, [Heat];
    /// Watt.
    Watt "W" 1.0, [Heat];
    /// Minute.
    Minute "min" 60.0, [Duration];
    /// Second.
    Second "s" 1.0, [Duration];
    /// Hour.
    Hour "h" 3600.0, [Duration];
    /// Day of 24 hours.
    Day "d" 86_400.0, [Duration];
    /// The pH scale.
    Ph "pH" 1.0, [Ph];
    /// Btu (IT) per pound of dry air, from 0 °C as everywhere here.
    BtuPerPound "Btu/lb" 2326.0, [Enthalpy];
    /// Kilojoule per kilogram of dry air.
    KilojoulePerKilogram "kJ/kg" 1000.0, [Enthalpy];
    /// Grains of water per pound of dry air, 7000 to the pound.
    GrainPerPound "gr/lb" 1.0 / 7000.0, [HumidityRatio];
    /// Grams of water per kilogram of dry air.
    GramPerKilogram "g/kg" 0.001, [HumidityRatio];
    /// Pound per cubic foot.
    PoundPerCubicFoot "lb/ft³" POUND / (FOOT * FOOT * FOOT), [Density];
    /// Kilogram per cubic metre.
    KilogramPerCubicMetre "kg/m³" 1.0, [Density];
    /// Pound.
    Pound "lb" POUND, [Mass];
    /// Ounce, 16 to the pound.
    Ounce "oz" POUND / 16.0, [Mass];
    /// Kilogram.
    Kilogram "kg" 1.0, [Mass];
    /// Gram.
    Gram "g" 0.001, [Mass];
    /// Pound per hour.
    PoundPerHour "lb/h" POUND / 3600.0, [MassFlow];
    /// Pound per minute.
    PoundPerMinute "lb/min" POUND / 60.0, [MassFlow];
    /// Kilogram per second.
    KilogramPerSecond "kg/s" 1.0, [MassFlow];
    /// Kilogram per hour.
    KilogramPerHour "kg/h" 1.0 / 3600.0, [MassFlow];
    /// Part per million in water, taken as a milligram per litre.
    PartPerMillion "ppm" 0.001, [Concentration, AsCalciumCarbonate];
    /// Milligram per litre.
    MilligramPerLitre "mg/L" 0.001, [Concentration, AsCalciumCarbonate];
    /// Grain per US gallon, the hardness unit of softeners.
    GrainPerGallon "gpg" POUND / (7000.0 * GALLON), [AsCalciumCarbonate];
}

impl Unit {
    /// A number of this unit in the SI form of its kind (see [`Kind`]).
    pub fn to_si(self, number: f64) -> f64 {
        match self {
            Unit::Fahrenheit => (number + 459.67) * 5.0 / 9.0,
            Unit::Celsius => number + 273.15,
            _ => number * self.factor(),
        }
    }

    /// The number of this unit that an SI value amounts to.
    pub fn from_si(self, si: f64) -> f64 {
        match self {
            Unit::Fahrenheit => si * 9.0 / 5.0 - 459.67,
            Unit::Celsius => si - 273.15,
            _ => si / self.factor(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// NIST SP 811 (2008), Appendix B.8 and B.9. Compared with public copies of
    /// the tables: psi, bar, inHg, inch, foot, gallon, gpm, ton, day, and
    /// t/°C = (t/°F - 32)/1.8. From memory: the square and cubic units, Btu/h,
    /// the masses, mass flows and the grain per gallon.
    #[test]
    fn factors_agree_with_nist_sp_811() {
        for (unit, published) in [
            (Unit::Psig, 6.894757e3),
            (Unit::Psia, 6.894757e3),
            (Unit::Bar, 1.0e5),
            (Unit::InchMercury, 3.386389e3),
            (Unit::Inch, 2.54e-2),
            (Unit::Foot, 3.048e-1),
            (Unit::SquareInch, 6.4516e-4),
            (Unit::SquareFoot, 9.290304e-2),
            (Unit::CubicFoot, 2.831685e-2),
            (Unit::Gallon, 3.785412e-3),
            (Unit::GallonPerMinute, 6.309020e-5),
            (Unit::BtuPerHour, 2.930711e-1),
            (Unit::Ton, 3.516853e3),
            (Unit::FahrenheitDifference, 5.555556e-1),
            (Unit::Day, 8.64e4),
            (Unit::BtuPerPound, 2.326e3),
            (Unit::Pound, 4.535924e-1),
            (Unit::Ounce, 2.834952e-2),
            (Unit::PoundPerHour, 1.259979e-4),
            (Unit::PoundPerMinute, 7.559873e-3),
            (Unit::GrainPerGallon, 1.711806e-2),
        ] {
            let ours = unit.to_si(1.0);
            assert!(
                (ours / published - 1.0).abs() < 2e-7,
                "{unit:?}: {ours} against {published}"
            );
        }
        for (f, c) in [
            (32.0, 0.0),
            (212.0, 100.0),
            (-40.0, -40.0),
            (79.0, 26.111_111),
        ] {
            let ours = Unit::Celsius.from_si(Unit::Fahrenheit.to_si(f));
            assert!((ours - c).abs() < 1e-6, "{f} °F: {ours} against {c} °C");
        }
    }

    #[test]
    fn prefixed_units_stand_in_their_ratios() {
        for (large, small, ratio) in [
            (Unit::Metre, Unit::Millimetre, 1e3),
            (Unit::Metre, Unit::Centimetre, 1e2),
            (Unit::CubicMetre, Unit::Litre, 1e3),
            (Unit::LitrePerSecond, Unit::LitrePerMinute, 60.0),
            (Unit::LitrePerSecond, Unit::CubicMetrePerHour, 3.6),
            (Unit::Volt, Unit::Millivolt, 1e3),
            (Unit::Megohm, Unit::Kilohm, 1e3),
            (Unit::Kilohm, Unit::Ohm, 1e3),
            (Unit::Ampere, Unit::Milliampere, 1e3),
            (
                Unit::MillisiemensPerCentimetre,
                Unit::MicrosiemensPerCentimetre,
                1e3,
            ),
            (Unit::Kilowatt, Unit::Watt, 1e3),
            (Unit::Kilogram, Unit::Gram, 1e3),
            (Unit::KilogramPerSecond, Unit::KilogramPerHour, 3600.0),
            (Unit::PartPerMillion, Unit::MilligramPerLitre, 1.0),
            (Unit::Ton, Unit::ThousandBtuPerHour, 12.0),
            (Unit::Hour, Unit::Minute, 60.0),
            (Unit::Minute, Unit::Second, 60.0),
            (Unit::Bar, Unit::Kilopascal, 100.0),
            (Unit::Kilopascal, Unit::Pascal, 1e3),
        ] {
            let ours = small.from_si(large.to_si(1.0));
            assert!(
                (ours / ratio - 1.0).abs() < 1e-12,
                "{large:?} to {small:?}: {ours}"
            );
        }
    }

    #[test]
    fn every_unit_fits_some_kind() {
        for unit in Unit::ALL {
            assert!(Kind::ALL.into_iter().any(|k| unit.kind_fits(k)), "{unit:?}");
        }
    }

    proptest! {
        #[test]
        fn conversion_is_monotonic_and_inverts(a in -1e6..1e6_f64, b in -1e6..1e6_f64) {
            prop_assume!((a - b).abs() > 1e-6);
            for &unit in Unit::ALL {
                let rising = (unit.to_si(a) < unit.to_si(b)) == (a < b);
                prop_assert_eq!(rising, unit != Unit::InchMercuryVacuum, "{:?}", unit);
                prop_assert!((unit.from_si(unit.to_si(a)) - a).abs() < 1e-8, "{:?}", unit);
            }
        }
    }
}
