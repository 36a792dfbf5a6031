//! Saturation fits: ln p [kPa absolute] = a + b u + c u^2 + d u^3 + e u^4 with
//! u = 1000 K / T - 3.3.
//!
//! Fitted to CoolProp 8.0.0 at 1 K steps by `tests/reference/refrigerant_fits.py`,
//! from which every figure here is taken and with which a test compares it; the
//! worst relative error of each line stands beside it.

use super::Refrigerant;

/// One saturation line and the range it was fitted over, in Celsius.
#[derive(Debug, PartialEq)]
pub(super) struct Fit {
    /// Lowest temperature fitted, C.
    pub low: f64,
    /// Highest temperature fitted, C.
    pub high: f64,
    coefficients: [f64; 5],
}

impl Fit {
    /// Natural logarithm of the pressure in kPa, at a temperature in kelvin.
    pub fn ln_kilopascals(&self, t: f64) -> f64 {
        let [a, b, c, d, e] = self.coefficients;
        let u = centred(t);
        a + u * (b + u * (c + u * (d + u * e)))
    }

    /// Its derivative with temperature, 1/K; positive over the fitted range.
    pub fn slope(&self, t: f64) -> f64 {
        let [_, b, c, d, e] = self.coefficients;
        let u = centred(t);
        -1000.0 / (t * t) * (b + u * (2.0 * c + u * (3.0 * d + u * 4.0 * e)))
    }
}

/// Zero at 30 C, so that few digits of each coefficient suffice.
fn centred(t: f64) -> f64 {
    1000.0 / t - 3.3
}

const fn fit(high: f64, coefficients: [f64; 5]) -> Fit {
    Fit {
        low: 0.0,
        high,
        coefficients,
    }
}

/// 0.0045 %
static R22: Fit = fit(
    70.0,
    [7.08017095, -2.3944956, -0.02333348, -0.0646381, 0.05388129],
);
/// 0.0192 %
static R32: Fit = fit(
    70.0,
    [7.5609082, -2.38158928, 0.02210249, -0.10955659, 0.12165168],
);
/// 0.0006 %
static R123: Fit = fit(
    70.0,
    [4.69236732, -3.27814391, -0.17391823, -0.0200291, 0.01906842],
);
/// 0.0045 %
static R134A: Fit = fit(
    70.0,
    [
        6.64321168,
        -2.64074827,
        -0.06288604,
        -0.06547207,
        0.05221087,
    ],
);
/// 0.0399 %
static R404A_BUBBLE: Fit = fit(
    69.0,
    [7.26127528, -2.34492766, 0.01861159, -0.1323352, 0.1744535],
);
/// 0.0574 %
static R404A_DEW: Fit = fit(
    69.0,
    [7.25151817, -2.36147891, 0.01368685, -0.14255133, 0.20601677],
);
/// 0.0011 %
static R407C_BUBBLE: Fit = fit(
    70.0,
    [7.21137456, -2.3955933, -0.01833705, -0.0617024, 0.03808958],
);
/// 0.023 %
static R407C_DEW: Fit = fit(
    70.0,
    [7.06639339, -2.5685212, -0.02060048, -0.12971715, 0.14984699],
);
/// 0.0191 %
static R410A_BUBBLE: Fit = fit(
    69.0,
    [7.54081987, -2.36795766, 0.02505634, -0.12745696, 0.13711266],
);
/// 0.0329 %
static R410A_DEW: Fit = fit(
    69.0,
    [7.53779502, -2.36855682, 0.0252335, -0.14489805, 0.18532672],
);
/// 0.0012 %
static R448A_BUBBLE: Fit = fit(
    69.0,
    [
        7.28973136,
        -2.35450808,
        -0.02042805,
        -0.05311911,
        0.02904586,
    ],
);
/// 0.0366 %
static R448A_DEW: Fit = fit(
    70.0,
    [
        7.14637295,
        -2.51164346,
        -0.00032605,
        -0.15375528,
        0.20193137,
    ],
);
/// 0.0021 %
static R449A_BUBBLE: Fit = fit(
    70.0,
    [7.27641839, -2.35533951, -0.02041879, -0.05372872, 0.0285284],
);
/// 0.0349 %
static R449A_DEW: Fit = fit(
    70.0,
    [
        7.14290214,
        -2.50051772,
        -0.00061383,
        -0.14989634,
        0.19372474,
    ],
);
/// 0.0084 %
static R454B_BUBBLE: Fit = fit(
    70.0,
    [7.49517419, -2.35535929, 0.00653152, -0.08428571, 0.07580687],
);
/// 0.0349 %
static R454B_DEW: Fit = fit(
    70.0,
    [7.45626517, -2.38238472, 0.02914278, -0.14006824, 0.18186824],
);
/// 0.04 %
static R507A_BUBBLE: Fit = fit(
    68.0,
    [7.28315466, -2.34171333, 0.02131272, -0.15135169, 0.20640042],
);
/// 0.045 %
static R507A_DEW: Fit = fit(
    68.0,
    [7.28230183, -2.34131325, 0.02154907, -0.1574071, 0.22437553],
);
/// 0.005 %
static R513A_BUBBLE: Fit = fit(
    70.0,
    [
        6.70219121,
        -2.53661017,
        -0.03955559,
        -0.06942721,
        0.05652299,
    ],
);
/// 0.0052 %
static R513A_DEW: Fit = fit(
    70.0,
    [6.70218962, -2.53677753, -0.04385253, -0.0737032, 0.0579717],
);
/// 0.0007 %
static R1233ZD: Fit = fit(
    70.0,
    [
        5.04096401,
        -3.15470893,
        -0.14783539,
        -0.02908315,
        0.02019496,
    ],
);
/// 0.0026 %
static R1234ZE: Fit = fit(
    70.0,
    [6.35664945, -2.6803077, -0.07007335, -0.05867303, 0.03852187],
);

/// The bubble line (liquid begins to boil) and the dew line (vapour begins to
/// condense); the same line twice for a single fluid.
pub(super) fn lines(refrigerant: Refrigerant) -> (&'static Fit, &'static Fit) {
    match refrigerant {
        Refrigerant::R22 => (&R22, &R22),
        Refrigerant::R123 => (&R123, &R123),
        Refrigerant::R134a => (&R134A, &R134A),
        Refrigerant::R32 => (&R32, &R32),
        Refrigerant::R404A => (&R404A_BUBBLE, &R404A_DEW),
        Refrigerant::R407C => (&R407C_BUBBLE, &R407C_DEW),
        Refrigerant::R410A => (&R410A_BUBBLE, &R410A_DEW),
        Refrigerant::R448A => (&R448A_BUBBLE, &R448A_DEW),
        Refrigerant::R449A => (&R449A_BUBBLE, &R449A_DEW),
        Refrigerant::R454B => (&R454B_BUBBLE, &R454B_DEW),
        Refrigerant::R507A => (&R507A_BUBBLE, &R507A_DEW),
        Refrigerant::R513A => (&R513A_BUBBLE, &R513A_DEW),
        Refrigerant::R1234zeE => (&R1234ZE, &R1234ZE),
        Refrigerant::R1233zdE => (&R1233ZD, &R1233ZD),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fit_is_the_one_its_script_made() {
        let table = include_str!("../../../tests/reference/refrigerant_fits.csv");
        let mut compared = 0;
        for row in table.lines().skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            let number = |i: usize| cells[i].parse::<f64>().unwrap();
            let fluid = Refrigerant::ALL
                .into_iter()
                .find(|f| f.designation() == cells[0])
                .unwrap();
            let want = Fit {
                low: number(2),
                high: number(3),
                coefficients: [4, 5, 6, 7, 8].map(number),
            };
            let (bubble, dew) = lines(fluid);
            match cells[1] {
                "bubble" => assert_eq!(*bubble, want, "{row}"),
                "dew" => assert_eq!(*dew, want, "{row}"),
                _ => assert!(*bubble == want && *dew == want, "{row}"),
            }
            compared += 1;
        }
        assert_eq!(compared, 22);
    }
}
