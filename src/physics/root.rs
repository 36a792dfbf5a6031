//! Bisection: slow, and it cannot miss.

/// The point in `low..=high` where `rising` crosses zero.
///
/// `rising` must not decrease over the interval; if it has one sign throughout,
/// the end nearest to zero comes back. Sixty halvings leave an error of
/// 1e-18 of the interval, below what f64 holds.
pub(super) fn bisect(mut low: f64, mut high: f64, rising: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if rising(middle) < 0.0 {
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

    #[test]
    fn finds_the_root_and_stops_at_an_end() {
        assert!((bisect(0.0, 4.0, |x| x * x - 2.0) - 2f64.sqrt()).abs() < 1e-12);
        assert!((bisect(0.0, 4.0, |x| x + 1.0)).abs() < 1e-12);
        assert!((bisect(0.0, 4.0, |x| x - 9.0) - 4.0).abs() < 1e-12);
    }
}
