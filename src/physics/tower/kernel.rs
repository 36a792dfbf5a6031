//! Merkel's integral in plain f64: Celsius, pascals, kJ per kg of dry air.

use crate::physics::air::kernel::{saturated_enthalpy, saturated_enthalpy_slope};
use crate::physics::heat::SPECIFIC_HEAT;

/// Smallest driving enthalpy difference taken as one, kJ/kg.
const PINCHED: f64 = 0.01;

/// Where the four-point rule looks, as parts of the range.
const CHEBYSHEV: [f64; 4] = [0.1, 0.4, 0.6, 0.9];

/// Water cooled from `leaving + range` to `leaving` against air that enters
/// with `air` enthalpy, that of its wet bulb. Callers check the ranges.
#[derive(Clone, Copy)]
pub(super) struct Cooling {
    pub leaving: f64,
    pub range: f64,
    /// Enthalpy of the entering air.
    pub air: f64,
    pub water_air_ratio: f64,
    pub pressure: f64,
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

    /// How fast [`Cooling::drive`] grows with the rise.
    fn drive_slope(&self, rise: f64) -> f64 {
        saturated_enthalpy_slope(self.leaving + rise, self.pressure)
            - self.water_air_ratio * SPECIFIC_HEAT
    }

    /// Whether the driving difference vanishes anywhere in the fill. Saturated
    /// enthalpy is convex in temperature and the air line straight, so the
    /// difference has a single minimum. It lies at an end, or above where the
    /// tangents at the ends meet; only when that is too low to tell, golden
    /// section looks for it.
    pub(super) fn pinched(&self) -> bool {
        const GOLDEN: f64 = 0.618_033_988_749_895;
        let (mut low, mut high) = (0.0, self.range);
        let (at_bottom, at_top) = (self.drive(low), self.drive(high));
        let mut least = at_bottom.min(at_top);
        let (falls, rises) = (self.drive_slope(low), self.drive_slope(high));
        if least < PINCHED || falls >= 0.0 || rises <= 0.0 {
            return least < PINCHED;
        }
        let meet = (at_bottom - at_top + rises * self.range) / (rises - falls);
        if at_bottom + falls * meet >= PINCHED {
            return false;
        }
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

    /// KaV/L by the four-point Chebyshev rule.
    pub(super) fn chebyshev(&self) -> f64 {
        let sum: f64 = CHEBYSHEV
            .iter()
            .map(|f| 1.0 / self.drive(f * self.range))
            .sum();
        SPECIFIC_HEAT * self.range / 4.0 * sum
    }

    /// How fast [`Cooling::chebyshev`] falls as the leaving water gets warmer, 1/K.
    pub(super) fn chebyshev_fall(&self) -> f64 {
        let sum: f64 = CHEBYSHEV
            .iter()
            .map(|f| {
                let (rise, drive) = (f * self.range, self.drive(f * self.range));
                saturated_enthalpy_slope(self.leaving + rise, self.pressure) / (drive * drive)
            })
            .sum();
        SPECIFIC_HEAT * self.range / 4.0 * sum
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
