//! Saturation fits: ln p [kPa absolute] = a + b/T + c ln T + d T, T in kelvin.
//!
//! Fitted to CoolProp 8.0.0 at 1 K steps; the worst relative error of each
//! line stands beside it.

use super::Refrigerant;

/// One saturation line and the range it was fitted over, in Celsius.
pub(super) struct Fit {
    /// Lowest temperature fitted, C.
    pub low: f64,
    /// Highest temperature fitted, C.
    pub high: f64,
    coefficients: [f64; 4],
}

impl Fit {
    /// Natural logarithm of the pressure in kPa, at a temperature in kelvin.
    pub fn ln_kilopascals(&self, t: f64) -> f64 {
        let [a, b, c, d] = self.coefficients;
        a + b / t + c * t.ln() + d * t
    }

    /// Its derivative with temperature, 1/K; positive over the fitted range.
    pub fn slope(&self, t: f64) -> f64 {
        let [_, b, c, d] = self.coefficients;
        -b / (t * t) + c / t + d
    }
}

const fn fit(high: f64, a: f64, b: f64, c: f64, d: f64) -> Fit {
    Fit {
        low: 0.0,
        high,
        coefficients: [a, b, c, d],
    }
}

/// 0.011 %
static R22: Fit = fit(70.0, 102.8203889, -4779.667812, -15.29456518, 0.02449667902);
/// 0.001 %
static R123: Fit = fit(70.0, 107.5656631, -6192.033013, -15.44896583, 0.01924961885);
/// 0.010 %
static R134A: Fit = fit(70.0, 119.4454816, -5565.735587, -17.98594709, 0.02749995714);
/// 0.042 %
static R32: Fit = fit(70.0, 141.9611159, -5653.391884, -22.26342751, 0.03783571961);
/// 0.057 %
static R404A_BUBBLE: Fit = fit(67.0, 167.0058712, -6289.166904, -26.72410379, 0.04523150597);
/// 0.084 %
static R404A_DEW: Fit = fit(68.0, 189.4209831, -6900.40772, -30.63661761, 0.051658477);
/// 0.004 %
static R407C_BUBBLE: Fit = fit(70.0, 92.89699872, -4508.858759, -13.54172805, 0.02167721934);
/// 0.052 %
static R407C_DEW: Fit = fit(70.0, 183.9399502, -7062.599902, -29.43158715, 0.04818040456);
/// 0.045 %
static R410A_BUBBLE: Fit = fit(66.0, 161.4664192, -6153.893196, -25.6949667, 0.0435564955);
/// 0.046 %
static R410A_DEW: Fit = fit(65.0, 168.1244617, -6319.115789, -26.87782902, 0.04567769194);
/// 0.041 %
static R507A_BUBBLE: Fit = fit(64.0, 166.8784243, -6273.577991, -26.71293706, 0.04534418883);
/// 0.051 %
static R507A_DEW: Fit = fit(65.0, 173.1645762, -6433.520226, -27.82255254, 0.04726125294);
/// 0.019 %
static R454B_BUBBLE: Fit = fit(70.0, 115.5651625, -4984.893553, -17.59544996, 0.0294279431);
/// 0.072 %
static R454B_DEW: Fit = fit(70.0, 178.183086, -6583.110346, -28.66848264, 0.04885374505);
/// 0.011 %
static R513A_BUBBLE: Fit = fit(70.0, 114.9764044, -5285.965231, -17.34415739, 0.02729446495);
/// 0.011 %
static R513A_DEW: Fit = fit(70.0, 121.7463579, -5477.557959, -18.51221351, 0.02906451716);
/// 0.004 %
static R1234ZE: Fit = fit(70.0, 113.3733356, -5471.509237, -16.91824553, 0.02543411226);
/// under 0.001 %
static R1233ZD: Fit = fit(70.0, 108.0804463, -6013.37124, -15.64796861, 0.0205079129);
/// 0.001 %
static R448A_BUBBLE: Fit = fit(69.0, 86.89259756, -4313.642363, -12.49573346, 0.01990124104);
/// 0.078 %
static R448A_DEW: Fit = fit(70.0, 206.8373617, -7545.364722, -33.55615355, 0.05591107866);
/// 0.002 %
static R449A_BUBBLE: Fit = fit(70.0, 87.59579185, -4333.625695, -12.62033946, 0.02010391658);
/// 0.074 %
static R449A_DEW: Fit = fit(70.0, 201.9434107, -7408.400248, -32.70268127, 0.05446538171);

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
