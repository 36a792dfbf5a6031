//! Straight lines through readings: plain f64 kernels.
//!
//! Methods and sources:
//! * ordinary least squares, checked against the certified values of NIST
//!   StRD "Norris" (itl.nist.gov/div898/strd/lls/data/Norris.shtml);
//! * repeated median slope, A. F. Siegel, "Robust regression using repeated
//!   medians", Biometrika 69 (1982) 242-244, to find gross errors, followed by
//!   least squares on the rest (the reweighting of Rousseeuw & Leroy, "Robust
//!   Regression and Outlier Detection", Wiley 1987);
//! * Student's t from the expansion 26.7.5 of Abramowitz & Stegun, "Handbook
//!   of Mathematical Functions", checked against the table of the NIST/SEMATECH
//!   e-Handbook of Statistical Methods, section 1.3.6.7.2.

use crate::quantity::sort_by;

/// A least-squares line `y = level + slope (x - mean_x)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line {
    pub n: usize,
    pub mean_x: f64,
    pub mean_y: f64,
    pub slope: f64,
    /// Sum of squared distances of x from its mean.
    pub sxx: f64,
    /// Sum of squared residuals.
    pub rss: f64,
}

impl Line {
    /// The line's height at `x`.
    pub fn at(&self, x: f64) -> f64 {
        self.mean_y + self.slope * (x - self.mean_x)
    }
}

/// Least squares. `None` for fewer than two points or no spread in x.
pub(super) fn least_squares(points: &[(f64, f64)]) -> Option<Line> {
    let n = points.len();
    if n < 2 {
        return None;
    }
    let mean_x = points.iter().map(|p| p.0).sum::<f64>() / n as f64;
    let mean_y = points.iter().map(|p| p.1).sum::<f64>() / n as f64;
    let sxx: f64 = points.iter().map(|p| (p.0 - mean_x).powi(2)).sum();
    let sxy: f64 = points.iter().map(|p| (p.0 - mean_x) * (p.1 - mean_y)).sum();
    if sxx.is_nan() || sxx <= 0.0 {
        return None;
    }
    let slope = sxy / sxx;
    let rss = points
        .iter()
        .map(|p| (p.1 - mean_y - slope * (p.0 - mean_x)).powi(2))
        .sum();
    Some(Line {
        n,
        mean_x,
        mean_y,
        slope,
        sxx,
        rss,
    })
}

/// Middle value; the mean of the two middle ones for an even count. Zero for
/// an empty list.
fn median(mut values: Vec<f64>) -> f64 {
    sort_by(&mut values, f64::total_cmp);
    match values.len() {
        0 => 0.0,
        n if n % 2 == 1 => values[n / 2],
        n => (values[n / 2 - 1] + values[n / 2]) / 2.0,
    }
}

/// The repeated median goes through every pair of points: of more than so many,
/// every so-manieth is taken.
const MOST_PAIRED: usize = 120;

/// Distance of each point from the repeated-median line.
fn robust_residuals(points: &[(f64, f64)]) -> Vec<f64> {
    let step = points.len().div_ceil(MOST_PAIRED).max(1);
    let few: Vec<(f64, f64)> = points.iter().copied().step_by(step).collect();
    let through: Vec<f64> = few
        .iter()
        .map(|a| {
            let slopes: Vec<f64> = few
                .iter()
                .filter(|b| b.0 != a.0)
                .map(|b| (b.1 - a.1) / (b.0 - a.0))
                .collect();
            median(slopes)
        })
        .collect();
    let slope = median(through);
    let heights: Vec<f64> = points.iter().map(|p| p.1 - slope * p.0).collect();
    let height = median(heights);
    points.iter().map(|p| p.1 - slope * p.0 - height).collect()
}

/// Fewest points among which a gross error can be told from the rest.
const ENOUGH_TO_DOUBT: usize = 5;

/// Which points stand far off the line the others agree on. None are named
/// below five points, nor when more than a quarter would be: then it is not a
/// line with a slip in it, and the spread must say so instead.
pub(super) fn gross_errors(points: &[(f64, f64)], reading_sd: f64) -> Vec<bool> {
    let n = points.len();
    let none = vec![false; n];
    if n < ENOUGH_TO_DOUBT {
        return none;
    }
    let off = robust_residuals(points);
    let sizes: Vec<f64> = off.iter().map(|r| r.abs()).collect();
    // 1.4826 makes the median absolute deviation a standard deviation for
    // normal noise; four of them is a slip, not a ripple.
    let scale = (1.4826 * median(sizes)).max(reading_sd);
    let far: Vec<bool> = off.iter().map(|r| r.abs() > 4.0 * scale).collect();
    let count = far.iter().filter(|&&f| f).count();
    if count * 4 > n { none } else { far }
}

/// The 97.5 % point of Student's t, for 4 or more degrees of freedom (within
/// 0.001 of the table).
pub(super) fn student_975(dof: f64) -> f64 {
    let z: f64 = 1.959_963_984_540_054;
    let (z3, z5, z7, z9) = (z.powi(3), z.powi(5), z.powi(7), z.powi(9));
    let g1 = (z3 + z) / 4.0;
    let g2 = (5.0 * z5 + 16.0 * z3 + 3.0 * z) / 96.0;
    let g3 = (3.0 * z7 + 19.0 * z5 + 17.0 * z3 - 15.0 * z) / 384.0;
    let g4 = (79.0 * z9 + 776.0 * z7 + 1482.0 * z5 - 1920.0 * z3 - 945.0 * z) / 92_160.0;
    z + (g1 + (g2 + (g3 + g4 / dof) / dof) / dof) / dof
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST StRD "Norris", calibration of ozone monitors, 36 points as (y, x):
    /// itl.nist.gov/div898/strd/lls/data/LINKS/DATA/Norris.dat (public domain).
    const NORRIS: [(f64, f64); 36] = [
        (0.1, 0.2),
        (338.8, 337.4),
        (118.1, 118.2),
        (888.0, 884.6),
        (9.2, 10.1),
        (228.1, 226.5),
        (668.5, 666.3),
        (998.5, 996.3),
        (449.1, 448.6),
        (778.9, 777.0),
        (559.2, 558.2),
        (0.3, 0.4),
        (0.1, 0.6),
        (778.1, 775.5),
        (668.8, 666.9),
        (339.3, 338.0),
        (448.9, 447.5),
        (10.8, 11.6),
        (557.7, 556.0),
        (228.3, 228.1),
        (998.0, 995.8),
        (888.8, 887.6),
        (119.6, 120.2),
        (0.3, 0.3),
        (0.6, 0.3),
        (557.6, 556.8),
        (339.3, 339.1),
        (888.0, 887.2),
        (998.5, 999.0),
        (778.9, 779.0),
        (10.2, 11.1),
        (117.6, 118.3),
        (228.9, 229.2),
        (668.4, 669.1),
        (449.2, 448.9),
        (0.2, 0.5),
    ];

    fn norris() -> Vec<(f64, f64)> {
        NORRIS.iter().map(|&(y, x)| (x, y)).collect()
    }

    #[test]
    fn least_squares_meets_the_certified_norris_values() {
        let line = least_squares(&norris()).unwrap();
        let sd = (line.rss / 34.0).sqrt();
        // Certified: B0, B1, residual standard deviation, sd of B1, sd of B0.
        let sd_b0 = sd * (1.0 / 36.0 + line.mean_x.powi(2) / line.sxx).sqrt();
        for (got, certified) in [
            (line.at(0.0), -0.262323073774029),
            (line.slope, 1.00211681802045),
            (sd, 0.884796396144373),
            (sd / line.sxx.sqrt(), 0.429796848199937e-3),
            (sd_b0, 0.232818234301152),
        ] {
            assert!(
                (got / certified - 1.0).abs() < 1e-10,
                "{got} against {certified}"
            );
        }
    }

    #[test]
    fn student_meets_the_published_table() {
        // NIST/SEMATECH e-Handbook 1.3.6.7.2, column 0.975.
        for (dof, t) in [
            (4.0, 2.776),
            (5.0, 2.571),
            (6.0, 2.447),
            (10.0, 2.228),
            (30.0, 2.042),
        ] {
            assert!(
                (student_975(dof) - t).abs() < 1e-3,
                "{dof}: {}",
                student_975(dof)
            );
        }
    }

    #[test]
    fn one_slip_is_named_and_a_crooked_set_is_left_alone() {
        let mut points: Vec<(f64, f64)> = (0..6).map(|i| (i as f64, 2.0 * i as f64)).collect();
        points[3].1 += 1.0;
        let far = gross_errors(&points, 0.1);
        assert_eq!(far, [false, false, false, true, false, false]);
        assert!(
            !gross_errors(&points[..4], 0.1).contains(&true),
            "four points cannot tell"
        );
        let crooked: Vec<(f64, f64)> = (0..8).map(|i| (i as f64, (i % 2) as f64 * 5.0)).collect();
        assert!(!gross_errors(&crooked, 0.1).contains(&true));
    }

    #[test]
    fn slips_among_thousands_are_named_without_pairing_them_all() {
        let mut points: Vec<(f64, f64)> = (0..2880)
            .map(|i| (10.0 * i as f64, 0.001 * i as f64 + 0.05 * (i % 3) as f64))
            .collect();
        for slip in [24, 1001, 2879] {
            points[slip].1 += 3.0;
        }
        let far = gross_errors(&points, 0.05);
        let named: Vec<usize> = (0..far.len()).filter(|i| far[*i]).collect();
        assert_eq!(named, [24, 1001, 2879]);
    }

    #[test]
    fn a_line_needs_two_different_times() {
        assert_eq!(least_squares(&[(1.0, 2.0)]), None);
        assert_eq!(least_squares(&[(1.0, 2.0), (1.0, 3.0)]), None);
    }
}
