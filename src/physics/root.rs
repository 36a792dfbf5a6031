//! Roots in one unknown: bisection, slow and it cannot miss; and Halley's
//! method inside a bracket, for what is smooth and asked for often.

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

/// A function's value, slope and curvature at one point.
pub(super) type Jet = [f64; 3];

/// How far Halley's method moves from a point; Newton's when the curvature is 0.
pub(super) fn halley_step([value, slope, curvature]: Jet) -> f64 {
    -2.0 * value * slope / (2.0 * slope * slope - value * curvature)
}

/// The point in `low..=high` where `rising` crosses zero, sought from `start`.
///
/// As [`bisect`], also at the ends, with fewer calls: a step that leaves the
/// bracket, or is no number, becomes a halving. The slope must be positive. The
/// curvature may be rough; the answer is within 1e-8 for functions as bent as a
/// saturation curve.
pub(super) fn halley(mut low: f64, mut high: f64, start: f64, rising: impl Fn(f64) -> Jet) -> f64 {
    /// A step this short is the last: the next one goes with its square.
    const SHORT: f64 = 1e-3;
    let mut at = start;
    for _ in 0..60 {
        let jet = rising(at);
        if jet[0] < 0.0 {
            low = at;
        } else {
            high = at;
        }
        let step = halley_step(jet);
        let next = at + step;
        if (low..=high).contains(&next) {
            if step.abs() < SHORT {
                return next;
            }
            at = next;
        } else {
            at = 0.5 * (low + high);
        }
    }
    at
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

    #[test]
    fn halley_finds_the_same_from_anywhere() {
        for start in [0.1, 1.0, 2.0, 3.9, 4.0] {
            let root = halley(0.0, 4.0, start, |x| [x * x - 2.0, 2.0 * x, 2.0]);
            assert!((root - 2f64.sqrt()).abs() < 1e-8, "{root} from {start}");
            let newton = halley(0.0, 4.0, start, |x| [x.exp() - 9.0, x.exp(), 0.0]);
            assert!((newton - 9f64.ln()).abs() < 1e-6, "{newton} from {start}");
            let low = halley(0.0, 4.0, start, |x| [x + 1.0, 1.0, 0.0]);
            assert!(low.abs() < 1e-12, "{low} from {start}");
            let high = halley(0.0, 4.0, start, |x| [x - 9.0, 1.0, 0.0]);
            assert!((high - 4.0).abs() < 1e-12, "{high} from {start}");
        }
    }
}
