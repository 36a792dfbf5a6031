//! Axis ticks at round numbers.

use uom::si::length::{inch, meter};

use crate::quantity::Length;

/// The unit an axis of levels is divided in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TickUnit {
    /// Inches.
    Inches,
    /// Centimetres.
    Centimetres,
}

/// One tick: its place in the figure's own unit (seconds or metres) and the
/// number to print beside it (minutes, inches or centimetres), unit left off.
#[derive(Clone, Debug, PartialEq)]
pub struct Tick {
    /// Place on the axis.
    pub at: f64,
    /// Number as printed.
    pub label: String,
}

/// Most steps an axis is divided into.
const MOST: f64 = 6.0;

/// A round step that divides `span` into at most six: the first of `usual`
/// that does, else 1, 2 or 5 times a power of ten.
fn step(span: f64, usual: &[f64]) -> f64 {
    if let Some(&step) = usual.iter().find(|&&s| span / s <= MOST) {
        return step;
    }
    let power = 10f64.powf((span / MOST).log10().floor());
    [1.0, 2.0, 5.0]
        .into_iter()
        .map(|s| s * power)
        .find(|s| span / s <= MOST)
        .unwrap_or(10.0 * power)
}

/// Ticks over `from..=to`, counted in `unit` (the size of one in the axis's
/// own measure) from `zero`.
fn ticks(from: f64, to: f64, zero: f64, unit: f64, usual: &[f64]) -> Vec<Tick> {
    let (low, high) = ((from - zero) / unit, (to - zero) / unit);
    if low.is_nan() || high.is_nan() || high <= low {
        return Vec::new();
    }
    let step = step(high - low, usual);
    let (first, last) = ((low / step - 1e-9).ceil(), (high / step + 1e-9).floor());
    let count = (last - first).clamp(0.0, 20.0) as usize;
    (0..=count)
        .map(|i| {
            let value = (first + i as f64) * step + 0.0;
            let text = format!("{value:.2}");
            let label = text.trim_end_matches('0').trim_end_matches('.').to_owned();
            Tick {
                at: zero + value * unit,
                label,
            }
        })
        .collect()
}

/// Ticks over `from..=to` at round numbers of the unit it is counted in, at most
/// seven of them; none when the span is empty or not finite.
pub fn round_ticks(from: f64, to: f64) -> Vec<Tick> {
    ticks(from, to, 0.0, 1.0, &[])
}

/// Ticks in minutes since `from_s`; both ends in seconds.
pub fn time_ticks(from_s: f64, to_s: f64) -> Vec<Tick> {
    let usual = [0.5, 1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0];
    ticks(from_s, to_s, from_s, 60.0, &usual)
}

/// Ticks of depth below the lip between two depths in metres.
pub(super) fn level_ticks(top_m: f64, bottom_m: f64, unit: TickUnit) -> Vec<Tick> {
    match unit {
        TickUnit::Inches => {
            let size = Length::new::<inch>(1.0).get::<meter>();
            ticks(
                top_m,
                bottom_m,
                0.0,
                size,
                &[0.25, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0],
            )
        }
        TickUnit::Centimetres => ticks(
            top_m,
            bottom_m,
            0.0,
            0.01,
            &[0.5, 1.0, 2.0, 5.0, 10.0, 20.0],
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn labels(ticks: &[Tick]) -> Vec<&str> {
        ticks.iter().map(|t| t.label.as_str()).collect()
    }

    #[test]
    fn ticks_fall_on_round_numbers() {
        assert_eq!(
            labels(&time_ticks(30.0, 30.0 + 19.0 * 60.0)),
            ["0", "5", "10", "15"]
        );
        let inches = level_ticks(-0.01, 0.30, TickUnit::Inches);
        assert_eq!(labels(&inches), ["0", "3", "6", "9"]);
        assert!((inches[1].at - 0.0762).abs() < 1e-12);
        assert_eq!(
            labels(&level_ticks(0.0, 0.25, TickUnit::Centimetres)),
            ["0", "5", "10", "15", "20", "25"]
        );
    }

    #[test]
    fn huge_and_empty_axes_stay_small() {
        assert!(time_ticks(0.0, 2e9).len() <= 7);
        assert!(time_ticks(5.0, 5.0).is_empty());
        assert!(level_ticks(f64::NAN, 1.0, TickUnit::Inches).is_empty());
    }
}
