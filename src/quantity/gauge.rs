//! Pressure as a gauge reads it: above the local atmosphere.

use serde::{Deserialize, Serialize};
use uom::si::f64::Pressure;
use uom::si::pressure::pascal;

/// A gauge pressure: the pressure above the local atmosphere, in pascals.
///
/// Kept apart from the absolute [`Pressure`] in the type, because mixing the
/// two is a 14.7 psi mistake. Valid from minus one atmosphere (full vacuum)
/// upward; the type does not check, the reader of typed input does.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct GaugePressure(f64);

impl GaugePressure {
    /// A gauge pressure from pascals above the local atmosphere.
    pub fn from_pascals(pa: f64) -> Self {
        Self(pa)
    }

    /// Pascals above the local atmosphere.
    pub fn pascals(self) -> f64 {
        self.0
    }

    /// The absolute pressure, given the local atmospheric pressure.
    pub fn absolute(self, atmosphere: Pressure) -> Pressure {
        Pressure::new::<pascal>(self.0 + atmosphere.get::<pascal>())
    }

    /// What a gauge reads at this absolute pressure under the local atmosphere.
    pub fn from_absolute(absolute: Pressure, atmosphere: Pressure) -> Self {
        Self(absolute.get::<pascal>() - atmosphere.get::<pascal>())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gauge_and_absolute_differ_by_the_local_atmosphere() {
        let air = Pressure::new::<pascal>(83_431.0);
        let gauge = GaugePressure::from_pascals(1_000_000.0);
        let absolute = gauge.absolute(air);
        assert_eq!(absolute.get::<pascal>(), 1_083_431.0);
        assert_eq!(GaugePressure::from_absolute(absolute, air), gauge);
    }
}
