//! The span within which a reading is believed.

use serde::{Deserialize, Serialize};

use super::{Kind, Unit};

/// A span of plausible values in the SI form of a kind, both ends included. An
/// end may be infinite, but an infinite end cannot be stored as JSON.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bounds {
    /// Lowest plausible value.
    pub low: f64,
    /// Highest plausible value.
    pub high: f64,
}

impl Bounds {
    /// Every finite value.
    pub const ANY: Bounds = Bounds {
        low: f64::NEG_INFINITY,
        high: f64::INFINITY,
    };

    /// From two numbers of a unit, in either order.
    pub fn of(a: f64, b: f64, unit: Unit) -> Self {
        let (a, b) = (unit.to_si(a), unit.to_si(b));
        Self {
            low: a.min(b),
            high: a.max(b),
        }
    }

    /// What a commercial cooling plant can show at all: wide on purpose, to
    /// catch a slip of the finger, not to judge the plant. Common practice,
    /// no source.
    pub fn usual(kind: Kind) -> Self {
        match kind {
            Kind::Temperature => Self::of(-60.0, 350.0, Unit::Fahrenheit),
            Kind::TemperatureDifference => Self::of(-200.0, 200.0, Unit::FahrenheitDifference),
            // No weather brings the atmosphere above about 16 psia.
            Kind::GaugePressure => Self::of(-16.0, 900.0, Unit::Psig),
            Kind::PressureDifference => Self::of(-900.0, 900.0, Unit::Psi),
            Kind::AbsolutePressure => Self::of(0.0, 900.0, Unit::Psia),
            Kind::Humidity => Self::of(0.0, 100.0, Unit::Percent),
            Kind::Level => Self::of(-3.0, 15.0, Unit::Foot),
            Kind::Length => Self::of(0.0, 3_000.0, Unit::Foot),
            Kind::Area => Self::of(0.0, 10_000.0, Unit::SquareFoot),
            Kind::Volume => Self::of(0.0, 200_000.0, Unit::Gallon),
            Kind::Flow => Self::of(0.0, 20_000.0, Unit::GallonPerMinute),
            Kind::Voltage => Self::of(-1_000.0, 1_000.0, Unit::Volt),
            Kind::Resistance => Self::of(0.0, 2_000.0, Unit::Megohm),
            Kind::Current => Self::of(-2_000.0, 2_000.0, Unit::Ampere),
            Kind::Conductivity => Self::of(0.0, 20.0, Unit::MillisiemensPerCentimetre),
            Kind::Heat => Self::of(0.0, 10_000.0, Unit::Ton),
            Kind::Duration => Self::of(0.0, 30.0, Unit::Day),
            Kind::Ratio => Self::of(0.0, 20.0, Unit::One),
            Kind::Ph => Self::of(0.0, 14.0, Unit::Ph),
            Kind::Enthalpy => Self::of(-50.0, 500.0, Unit::KilojoulePerKilogram),
            Kind::HumidityRatio => Self::of(0.0, 200.0, Unit::GramPerKilogram),
            Kind::Number => Self::of(-1_000.0, 1_000.0, Unit::One),
            Kind::Mass => Self::of(0.0, 100_000.0, Unit::Pound),
            Kind::MassFlow => Self::of(0.0, 10_000_000.0, Unit::PoundPerHour),
            Kind::Concentration | Kind::AsCalciumCarbonate => {
                Self::of(0.0, 50_000.0, Unit::MilligramPerLitre)
            }
            Kind::Density => Self::of(0.0, 2_000.0, Unit::KilogramPerCubicMetre),
        }
    }

    /// Whether a value lies within, give or take the rounding of a unit
    /// conversion (one part in 10⁹). Never true of NaN or an infinity.
    pub fn contains(self, si: f64) -> bool {
        let slack = |end: f64| {
            if end.is_finite() {
                end.abs() * 1e-9
            } else {
                0.0
            }
        };
        si.is_finite() && si >= self.low - slack(self.low) && si <= self.high + slack(self.high)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_belong_to_the_span_in_either_unit() {
        let water = Bounds::of(40.0, 140.0, Unit::Fahrenheit);
        assert!(water.contains(Unit::Celsius.to_si(60.0)));
        assert!(water.contains(Unit::Fahrenheit.to_si(40.0)));
        assert!(!water.contains(Unit::Fahrenheit.to_si(140.1)));
        assert!(!water.contains(f64::NAN));
        assert!(!Bounds::ANY.contains(f64::INFINITY));
    }

    #[test]
    fn vacuum_bounds_come_out_in_order() {
        let b = Bounds::of(0.0, 30.0, Unit::InchMercuryVacuum);
        assert!(b.low < b.high && b.contains(-50_000.0));
    }
}
