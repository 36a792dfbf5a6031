//! Moist-air kernels in plain f64: degrees Celsius, pascals, kJ per kg of dry
//! air, kg of water per kg of dry air. Callers check the ranges.

use crate::physics::root::{Jet, halley, halley_step};

/// Ratio of the molar masses of water and dry air (ASHRAE Fundamentals 2017).
const MASS_RATIO: f64 = 0.621945;

/// Lowest wet bulb looked for: 20 K below the coldest dry bulb accepted.
const COLDEST: f64 = -40.0;

/// ln p = `a`/T + `b` + `c`T + `d`T^2 + `e`T^3 + `f`T^4 + `g` ln T, Pa and K.
/// Hyland & Wexler 1983, coefficients as in ASHRAE Fundamentals ch. 1, eq. 5-6.
type Line = [f64; 7];

const OVER_ICE: Line = [
    -5.674_535_9e3,
    6.392_524_7,
    -9.677_843_0e-3,
    6.221_570_1e-7,
    2.074_782_5e-9,
    -9.484_024_0e-13,
    4.163_501_9,
];

const OVER_WATER: Line = [
    -5.800_220_6e3,
    1.391_499_3,
    -4.864_023_9e-2,
    4.176_476_8e-5,
    -1.445_209_3e-8,
    0.0,
    6.545_967_3,
];

fn line(celsius: f64) -> &'static Line {
    if celsius < 0.0 {
        &OVER_ICE
    } else {
        &OVER_WATER
    }
}

/// Saturation pressure, Pa; over ice below 0 C, over water from 0 C up.
pub(in crate::physics) fn saturation_pressure(celsius: f64) -> f64 {
    let [a, b, c, d, e, f, g] = *line(celsius);
    let t = celsius + 273.15;
    (a / t + b + t * (c + t * (d + t * (e + t * f))) + g * t.ln()).exp()
}

/// How much more vapour saturated air holds than the pure vapour pressure
/// says. Buck 1981, `fw5` over water and `fi4` over ice; pressure in Pa.
pub(super) fn enhancement(celsius: f64, pressure: f64) -> f64 {
    let hpa = pressure / 100.0;
    if celsius < 0.0 {
        1.0003 + 4.18e-6 * hpa
    } else {
        1.0016 + 3.15e-6 * hpa - 0.074 / hpa
    }
}

/// Partial pressure of the vapour in saturated air, Pa.
pub(super) fn saturated_vapour(celsius: f64, pressure: f64) -> f64 {
    enhancement(celsius, pressure) * saturation_pressure(celsius)
}

/// Humidity ratio at a partial pressure of vapour. The pressure must exceed it.
pub(super) fn ratio_at_vapour(vapour: f64, pressure: f64) -> f64 {
    MASS_RATIO * vapour / (pressure - vapour)
}

/// Partial pressure of vapour at a humidity ratio, Pa.
pub(super) fn vapour_at_ratio(ratio: f64, pressure: f64) -> f64 {
    pressure * ratio / (MASS_RATIO + ratio)
}

/// Humidity ratio of saturated air.
pub(in crate::physics) fn saturated_ratio(celsius: f64, pressure: f64) -> f64 {
    ratio_at_vapour(saturated_vapour(celsius, pressure), pressure)
}

/// Enthalpy above 0 C dry air and liquid water, kJ per kg dry air.
/// ASHRAE Fundamentals ch. 1, eq. 30.
pub(in crate::physics) fn enthalpy(celsius: f64, ratio: f64) -> f64 {
    1.006 * celsius + ratio * (2501.0 + 1.86 * celsius)
}

/// Enthalpy of saturated air, kJ per kg dry air.
pub(in crate::physics) fn saturated_enthalpy(celsius: f64, pressure: f64) -> f64 {
    enthalpy(celsius, saturated_ratio(celsius, pressure))
}

/// Its slope, kJ per kg dry air and kelvin.
pub(in crate::physics) fn saturated_enthalpy_slope(celsius: f64, pressure: f64) -> f64 {
    let [vapour, slope, _] = saturated_vapour_jet(celsius, pressure);
    let dry_part = pressure - vapour;
    let ratio_slope = MASS_RATIO * pressure * slope / (dry_part * dry_part);
    1.006 + 1.86 * ratio_at_vapour(vapour, pressure) + ratio_slope * (2501.0 + 1.86 * celsius)
}

/// Humidity ratio from dry and wet bulb; negative when no air is that dry.
/// ASHRAE Fundamentals ch. 1, eq. 33 (water on the wick) and 35 (ice, below 0 C).
pub(in crate::physics) fn ratio_from_bulbs(dry: f64, wet: f64, pressure: f64) -> f64 {
    let ratio = saturated_ratio(wet, pressure);
    if wet < 0.0 {
        ((2830.0 - 0.24 * wet) * ratio - 1.006 * (dry - wet)) / (2830.0 + 1.86 * dry - 2.1 * wet)
    } else {
        ((2501.0 - 2.326 * wet) * ratio - 1.006 * (dry - wet)) / (2501.0 + 1.86 * dry - 4.186 * wet)
    }
}

/// [`saturated_vapour`] with slope and curvature. The curvature takes the
/// slope of ln p to fall as 1/T^2, as it nearly does.
fn saturated_vapour_jet(celsius: f64, pressure: f64) -> Jet {
    let [a, _, c, d, e, f, g] = *line(celsius);
    let t = celsius + 273.15;
    let vapour = saturated_vapour(celsius, pressure);
    let log_slope = -a / (t * t) + c + t * (2.0 * d + t * (3.0 * e + t * 4.0 * f)) + g / t;
    let slope = vapour * log_slope;
    [vapour, slope, slope * (log_slope - 2.0 / t)]
}

/// How much too wet air of this dry bulb and humidity ratio would have to be
/// for `wet` to be its wet bulb: [`ratio_from_bulbs`] less the ratio, times its
/// denominator, with slope and curvature. `saturated` is the vapour at `wet`.
fn excess(dry: f64, ratio: f64, wet: f64, pressure: f64, saturated: Jet) -> Jet {
    let [vapour, slope, curvature] = saturated;
    let part = 1.0 / (pressure - vapour);
    let bend = MASS_RATIO * pressure * part * part;
    let w = MASS_RATIO * vapour * part;
    let w_slope = bend * slope;
    let w_curvature = bend * (curvature + 2.0 * slope * slope * part);
    let (latent, falls, wick) = if wet < 0.0 {
        (2830.0, 0.24, 2.1)
    } else {
        (2501.0, 2.326, 4.186)
    };
    let evaporation = latent - falls * wet;
    let heat = latent + 1.86 * dry - wick * wet;
    [
        evaporation * w - 1.006 * (dry - wet) - ratio * heat,
        evaporation * w_slope - falls * w + 1.006 + ratio * wick,
        evaporation * w_curvature - 2.0 * falls * w_slope,
    ]
}

/// Just below the ice point, where a wick carries ice.
const LAST_ICE: f64 = -1e-9;

/// Wet bulb at a relative humidity (0 to 1), C: with ice on the wick wherever
/// ice gives a wet bulb below 0 C, with water otherwise.
pub(super) fn wet_bulb(dry: f64, humidity: f64, pressure: f64) -> f64 {
    let saturated = saturated_vapour_jet(dry, pressure);
    let ratio = ratio_at_vapour(humidity * saturated[0], pressure);
    let (low, high) = if ratio_from_bulbs(dry, dry.min(LAST_ICE), pressure) > ratio {
        (COLDEST, dry.min(LAST_ICE))
    } else {
        (dry.min(0.0), dry)
    };
    let first = dry + halley_step(excess(dry, ratio, dry, pressure, saturated));
    halley(low, high, first.clamp(low, high), |wet| {
        let saturated = saturated_vapour_jet(wet, pressure);
        excess(dry, ratio, wet, pressure, saturated)
    })
}

/// Dry-air density, kg per m3 of moist air. ASHRAE Fundamentals ch. 1, eq. 26.
pub(super) fn dry_air_density(celsius: f64, ratio: f64, pressure: f64) -> f64 {
    pressure / (287.042 * (celsius + 273.15) * (1.0 + 1.607858 * ratio))
}
