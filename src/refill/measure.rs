//! Everything one cycle measures: flows, levels, delays.

use uom::si::volume_rate::cubic_meter_per_second;

use super::cycle::Cycle;
use super::fit::{Estimate, LevelEstimate, Missing, Stretch, inflow, level_at, reading_half};
use super::mark::ExpectedMark;
use super::setup::Setup;
use crate::quantity::sort_by;

/// Two marks this close may have been tapped in the wrong order, in seconds.
pub(super) const TAP_SLACK_S: f64 = 10.0;
/// Running losses are known to about a quarter of their value.
const LOSS_DOUBT: f64 = 0.25;
/// A reading this soon after the shut-off still shows its level, in seconds.
const SETTLED_S: f64 = 300.0;

/// Seconds between the test's events.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Delays {
    /// From drain opened to call.
    pub draw_to_call_s: Result<f64, Missing>,
    /// From call to running water; slightly negative when tapped the other way.
    pub call_to_water_s: Result<f64, Missing>,
    /// From running water to shut-off.
    pub water_to_shut_off_s: Result<f64, Missing>,
}

/// Everything measured in one cycle.
pub(super) struct Figures {
    pub draw: Result<Stretch, Missing>,
    pub fill: Result<Stretch, Missing>,
    pub after: Result<Stretch, Missing>,
    pub gross: Result<Estimate, Missing>,
    pub after_gross: Result<Estimate, Missing>,
    pub drain_not_closed: bool,
    pub call_level: Result<LevelEstimate, Missing>,
    pub shut_off_level: Result<LevelEstimate, Missing>,
    pub delays: Delays,
}

impl Figures {
    pub fn of(setup: &Setup, cycle: &Cycle) -> Self {
        use ExpectedMark::*;
        let rate = |from, to| inflow(&setup.basin, &cycle.readings(from, to));
        let draw = cycle
            .draw_window()
            .ok_or(Missing::NoDrawdown)
            .and_then(|(a, b)| rate(a, b));
        let window = cycle.fill_window();
        let fill = window
            .ok_or(Missing::NoWaterSeen)
            .and_then(|(a, b, _)| rate(a, b));
        let shut = cycle.time(ShutOff);
        let after = match (shut, cycle.end()) {
            (Some(shut), Some(end)) if !cycle.drain_open_at(end) => rate(shut, end),
            (Some(_), _) => Err(Missing::NeedTwoLevels),
            (None, _) => Err(Missing::NoShutOff),
        };
        let gross_of = |s: &Result<Stretch, Missing>| {
            s.as_ref()
                .map(|s| gross(setup, &s.fit.flow))
                .map_err(|e| *e)
        };
        let delay = |a, b, no_a: Missing, no_b: Missing| {
            let (a, b): (f64, f64) = (cycle.time(a).ok_or(no_a)?, cycle.time(b).ok_or(no_b)?);
            if b - a < -TAP_SLACK_S {
                Err(Missing::OutOfOrder)
            } else if cycle.interrupted(a, b) {
                Err(Missing::NotWatched)
            } else {
                Ok(b - a)
            }
        };
        Self {
            gross: gross_of(&fill),
            after_gross: gross_of(&after),
            drain_not_closed: window.is_some_and(|w| w.2),
            call_level: call_level(setup, cycle),
            shut_off_level: shut_off_level(cycle, fill.as_ref().ok()),
            delays: Delays {
                draw_to_call_s: delay(
                    DrawdownBegan,
                    CallSeen,
                    Missing::NoDrawdown,
                    Missing::NoCallSeen,
                ),
                call_to_water_s: delay(
                    CallSeen,
                    WaterSeen,
                    Missing::NoCallSeen,
                    Missing::NoWaterSeen,
                ),
                water_to_shut_off_s: delay(
                    WaterSeen,
                    ShutOff,
                    Missing::NoWaterSeen,
                    Missing::NoShutOff,
                ),
            },
            draw,
            fill,
            after,
        }
    }
}

/// Adds the running losses back to a net flow. A loss that is negative or
/// not a number counts as none.
fn gross(setup: &Setup, net: &Estimate) -> Estimate {
    let loss = setup.loss_while_testing.get::<cubic_meter_per_second>();
    let loss = if loss.is_finite() && loss < 1e3 {
        loss.max(0.0)
    } else {
        0.0
    };
    let (low, value, high) = net.si();
    let doubt = LOSS_DOUBT * loss;
    Estimate::around(
        value + loss,
        (value - low).hypot(doubt),
        (high - value).hypot(doubt),
    )
}

fn call_level(setup: &Setup, cycle: &Cycle) -> Result<LevelEstimate, Missing> {
    use ExpectedMark::*;
    let call = cycle.time(CallSeen).ok_or(Missing::NoCallSeen)?;
    let start = f64::NEG_INFINITY;
    let water = cycle.time(WaterSeen).unwrap_or(f64::INFINITY);
    let (from, to) = match cycle.draw_window() {
        Some((a, b)) if call >= a && call <= b + TAP_SLACK_S => (a, b),
        _ => (
            cycle
                .time(DrawdownEnded)
                .filter(|&t| t <= call)
                .unwrap_or(start),
            water,
        ),
    };
    // A drain runs slower as the level falls: only the nearest three readings
    // are near enough to a straight line.
    let mut near = cycle.readings(from, to);
    sort_by(&mut near, |a, b| {
        (a.0 - call).abs().total_cmp(&(b.0 - call).abs())
    });
    near.truncate(3);
    sort_by(&mut near, |a, b| a.0.total_cmp(&b.0));
    let stretch = inflow(&setup.basin, &near).ok();
    level_at(call, &near, stretch.as_ref())
}

fn shut_off_level(cycle: &Cycle, fill: Option<&Stretch>) -> Result<LevelEstimate, Missing> {
    let shut = cycle
        .time(ExpectedMark::ShutOff)
        .ok_or(Missing::NoShutOff)?;
    let (from, to, _) = cycle.fill_window().ok_or(Missing::NoWaterSeen)?;
    let drawn = level_at(shut, &cycle.readings(from, to), fill);
    let read = if cycle.drain_open_at(shut) {
        None
    } else {
        cycle.readings(shut, shut + SETTLED_S).first().copied()
    };
    let read = read.map(|r| LevelEstimate::around(r.1, reading_half(fill)));
    match (drawn, read) {
        (Ok(drawn), Some(read)) if read.width() < drawn.width() => Ok(read),
        (Err(_), Some(read)) => Ok(read),
        (drawn, _) => drawn,
    }
}
