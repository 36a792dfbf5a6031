//! Merkel's integral in plain f64: Celsius, pascals, kJ per kg of dry air.

use crate::physics::air::kernel::saturated_enthalpy;
use crate::physics::heat::SPECIFIC_HEAT;

/// Smallest driving enthalpy difference taken as one, kJ/kg.
const PINCHED: f64 = 0.01;

/// Water cooled from `leaving + range` to `leaving` against air that enters
/// with the enthalpy of its wet bulb. Callers check the ranges.
#[derive(Clone, Copy)]
pub(super) struct Cooling {
    pub leaving: f64,
    pub range: f64,
    pub wet_bulb: f64,
    pub water_air_ratio: f64,
    pub pressure: f64,
    /// Enthalpy of the entering air.
    air: f64,
}

impl Cooling {
    pub(super) fn new(
        leaving: f64,
        range: f64,
        wet_bulb: f64,
        water_air_ratio: f64,
        pressure: f64,
    ) -> Self {
        Self {
            leaving,
            range,
            wet_bulb,
            water_air_ratio,
            pressure,
            air: saturated_enthalpy(wet_bulb, pressure),
        }
    }

    /// Enthalpy difference that drives the cooling where the water is `rise`
    /// kelvin above its leaving temperature.
    fn drive(&self, rise: f64) -> f64 {
        let air = self.air + self.water_air_ratio * SPECIFIC_HEAT * rise;
        saturated_enthalpy(self.leaving + rise, self.pressure) - air
    }

    /// Whether the driving difference vanishes anywhere in the fill. Saturated
    /// enthalpy is convex in temperature and the air line straight, so the
    /// difference has a single minimum: golden section finds it.
    pub(super) fn pinched(&self) -> bool {
        const GOLDEN: f64 = 0.618_033_988_749_895;
        let (mut low, mut high) = (0.0, self.range);
        let (mut least, at_top) = (self.drive(low), self.drive(high));
        least = least.min(at_top);
        for _ in 0..24 {
            let (a, b) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
            let (at_a, at_b) = (self.drive(a), self.drive(b));
            least = least.min(at_a).min(at_b);
            if at_a < at_b {
                high = b;
            } else {
                low = a;
            }
        }
        least < PINCHED
    }

    /// KaV/L by the four-point Chebyshev rule, 0.1, 0.4, 0.6 and 0.9 of the range.
    pub(super) fn chebyshev(&self) -> f64 {
        let sum: f64 = [0.1, 0.4, 0.6, 0.9]
            .iter()
            .map(|f| 1.0 / self.drive(f * self.range))
            .sum();
        SPECIFIC_HEAT * self.range / 4.0 * sum
    }

    /// How much of the `offered` KaV/L is left over; negative when the duty
    /// asks for more, or for what no fill can do.
    pub(super) fn spare(&self, offered: f64) -> f64 {
        let nodes = [0.1, 0.4, 0.6, 0.9];
        if nodes.iter().any(|f| self.drive(f * self.range) < PINCHED) {
            return f64::NEG_INFINITY;
        }
        let spare = offered - self.chebyshev();
        // The pinch is worth looking for only where the nodes would do.
        if spare >= 0.0 && self.pinched() {
            return f64::NEG_INFINITY;
        }
        spare
    }

    /// KaV/L by adaptive Simpson integration, to about 1e-8.
    pub(super) fn integral(&self) -> f64 {
        let f = |rise: f64| SPECIFIC_HEAT / self.drive(rise);
        let (a, b) = (0.0, self.range);
        let ends = [f(a), f(0.5 * (a + b)), f(b)];
        let whole = (b - a) / 6.0 * (ends[0] + 4.0 * ends[1] + ends[2]);
        simpson(&f, a, b, ends, whole, 1e-8 * (1.0 + whole), 18)
    }
}

/// One step of adaptive Simpson: halve, compare, and go deeper where it matters.
fn simpson(
    f: &impl Fn(f64) -> f64,
    a: f64,
    b: f64,
    [at_a, at_m, at_b]: [f64; 3],
    whole: f64,
    tolerance: f64,
    depth: u32,
) -> f64 {
    let m = 0.5 * (a + b);
    let (at_left, at_right) = (f(0.5 * (a + m)), f(0.5 * (m + b)));
    let left = (m - a) / 6.0 * (at_a + 4.0 * at_left + at_m);
    let right = (b - m) / 6.0 * (at_m + 4.0 * at_right + at_b);
    let change = left + right - whole;
    if depth == 0 || change.abs() <= 15.0 * tolerance {
        return left + right + change / 15.0;
    }
    simpson(
        f,
        a,
        m,
        [at_a, at_left, at_m],
        left,
        tolerance / 2.0,
        depth - 1,
    ) + simpson(
        f,
        m,
        b,
        [at_m, at_right, at_b],
        right,
        tolerance / 2.0,
        depth - 1,
    )
}
