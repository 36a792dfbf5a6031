//! How often a probe fouls, and how long to leave it before it is cleaned.
//!
//! Method: fouls come at a steady rate (Poisson), and the rate is judged by a
//! gamma distribution updated with what was seen: from Gamma(1, 1 year) before,
//! to Gamma(1 + fouls, 1 year + time watched). From memory: Gelman and others,
//! Bayesian Data Analysis, 3rd edition, section 2.6, "Poisson model
//! parameterized in terms of rate and exposure". The distribution before is
//! judgement: about one foul a year, loosely held (common practice, no source).
//! The visit that begins the record is a call already, so its own foul is not
//! counted. A film grows, so that soon after cleaning fouls are rarer than this
//! says: the interval is on the safe side.

/// One year of 365.25 days, in seconds.
const YEAR: f64 = 31_557_600.0;

/// Shape before anything was seen.
const SHAPE: u32 = 1;

/// Time watched before anything was seen, in years.
const WATCHED: f64 = 1.0;

/// The least time that says anything, in years: a month.
const LEAST: f64 = 30.0 / 365.25;

/// The chance of a foul that a cleaning interval is set for.
pub const ACCEPTED: f64 = 0.10;

/// The rate of fouling and the interval that follows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fouling {
    /// Fouls counted.
    pub fouls: u32,
    /// Time watched, in years.
    pub years: f64,
    /// Fouls a year: middle of the distribution, and the bounds that hold with
    /// 90 %.
    pub per_year: (f64, f64, f64),
    /// Days after which the chance of a foul is [`ACCEPTED`], whatever the rate
    /// is (the rate averaged over); and the same at the bounds of the rate, the
    /// shorter first.
    pub clean_after_days: (f64, f64, f64),
}

/// The rate from the times of visits, in milliseconds, each with whether the
/// probe had fouled, up to `now_ms`. `None` with fewer than two visits or less
/// than a month watched.
pub fn fouling(visits: &[(i64, bool)], now_ms: i64) -> Option<Fouling> {
    let first = visits.iter().map(|v| v.0).min()?;
    let seconds = now_ms.saturating_sub(first) as f64 / 1000.0;
    let years = seconds / YEAR;
    if visits.len() < 2 || years < LEAST {
        return None;
    }
    let fouls = visits.iter().filter(|v| v.1 && v.0 > first).count();
    let fouls = u32::try_from(fouls).ok()?;
    let shape = SHAPE + fouls;
    let watched = WATCHED + years;
    let rate = |part| quantile(shape, part) / watched;
    let (low, middle, high) = (rate(0.05), rate(0.5), rate(0.95));
    let days = |years: f64| years * YEAR / 86_400.0;
    // One minus the chance of none: (watched / (watched + t))^shape, averaged
    // over the gamma; exp(-rate t) at one rate.
    let stays = 1.0 - ACCEPTED;
    let averaged = watched * (stays.powf(-1.0 / f64::from(shape)) - 1.0);
    let at = |rate: f64| -stays.ln() / rate;
    Some(Fouling {
        fouls,
        years,
        per_year: (low, middle, high),
        clean_after_days: (days(at(high)), days(averaged), days(at(low))),
    })
}

/// Part of a gamma distribution of whole shape and rate 1 that lies below `x`.
fn below(shape: u32, x: f64) -> f64 {
    let mut term = 1.0;
    let mut sum = 1.0;
    for k in 1..shape {
        term *= x / f64::from(k);
        sum += term;
    }
    1.0 - (-x).exp() * sum
}

/// Where a part of that distribution lies below.
fn quantile(shape: u32, part: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    while below(shape, high) < part && high < 1e6 {
        high *= 2.0;
    }
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        if below(shape, middle) < part {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn near(a: f64, b: f64, within: f64) {
        assert!((a - b).abs() <= within, "{a} is not {b}");
    }

    /// Upper critical values of chi-square with 2n degrees of freedom are twice
    /// those of Gamma(n, 1). Source: NIST/SEMATECH e-Handbook of Statistical
    /// Methods, section 1.3.6.7.4 (2: 5.991, 10: 18.307, 20: 31.410; lower, 10:
    /// 3.940).
    #[test]
    fn quantiles_are_those_of_chi_square() {
        near(2.0 * quantile(1, 0.95), 5.991, 5e-4);
        near(2.0 * quantile(5, 0.95), 18.307, 5e-4);
        near(2.0 * quantile(10, 0.95), 31.410, 5e-4);
        near(2.0 * quantile(5, 0.05), 3.940, 5e-4);
    }

    const MONTH: i64 = 2_629_800_000;

    #[test]
    fn two_fouls_in_two_years() {
        let visits = [(0, true), (8 * MONTH, true), (17 * MONTH, true)];
        let f = fouling(&visits, 24 * MONTH).unwrap();
        assert_eq!(f.fouls, 2, "the first call began the record");
        near(f.years, 2.0, 1e-9);
        // Gamma(3, 3 years): mean 1 a year.
        let (low, middle, high) = f.per_year;
        near(middle, 0.8914, 1e-3); // 2.6741 / 3
        assert!(low < 0.3 && high > 2.0);
        // (1 / 0.9)^(1/3) - 1 = 0.03574, of three years.
        near(f.clean_after_days.1, 39.16, 0.05);
    }

    #[test]
    fn too_little_says_nothing() {
        assert_eq!(fouling(&[], 0), None);
        assert_eq!(fouling(&[(0, true)], 50 * MONTH), None);
        assert_eq!(fouling(&[(0, true), (1000, true)], 2000), None);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]

        #[test]
        fn the_interval_has_the_chance_it_is_set_for(
            months in prop::collection::vec((1i64..60, any::<bool>()), 2..12),
        ) {
            let visits: Vec<_> = months.iter().map(|(m, f)| (m * MONTH, *f)).collect();
            let now = 61 * MONTH;
            if let Some(f) = fouling(&visits, now) {
                let (short, days, long) = f.clean_after_days;
                prop_assert!(0.0 < short && short < long && days < long);
                // Averaged over the gamma by a sum, not by the formula.
                let shape = 1 + f.fouls;
                let n = 600;
                let chance: f64 = (0..n)
                    .map(|k| quantile(shape, (f64::from(k) + 0.5) / f64::from(n)) / (1.0 + f.years))
                    .map(|rate| 1.0 - (-rate * days / 365.25).exp())
                    .sum::<f64>() / f64::from(n);
                prop_assert!((chance - ACCEPTED).abs() < 4e-3, "{}", chance);
                // One foul more never makes the interval longer.
                let more: Vec<_> = visits.iter().map(|v| (v.0, true)).collect();
                prop_assert!(fouling(&more, now).unwrap().clean_after_days.1 <= days + 1e-9);
            }
        }
    }
}
