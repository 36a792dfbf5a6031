//! Everything one cycle measures: flows, levels, delays.

use uom::si::length::meter;
use uom::si::velocity::meter_per_second;
use uom::si::volume_rate::cubic_meter_per_second;

use super::cycle::Cycle;
use super::fit::{Estimate, LevelEstimate, Missing, Stretch, inflow, level_at, reading_half};
use super::line::Line;
use super::mark::ExpectedMark;
use super::seen::{Changed, Rise, Span, rise, steady};
use super::setup::Setup;
use crate::quantity::{Length, sort_by};

/// Two marks this close may have been tapped in the wrong order, in seconds.
pub(super) const TAP_SLACK_S: f64 = 10.0;
/// A tap comes within so many seconds of what it marks, 95 times in 100; two
/// of them bound a delay. Common practice, no source.
const TAP_HALF_S: f64 = 2.0;
/// Running losses are known to about a quarter of their value.
const LOSS_DOUBT: f64 = 0.25;
/// A reading this soon after the shut-off still shows its level, in seconds.
const SETTLED_S: f64 = 300.0;

/// Times between the test's events, as far as a thumb marks them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Delays {
    /// From drain opened to call.
    pub draw_to_call: Result<Span, Missing>,
    /// From call to running water; slightly negative when tapped the other way.
    /// Where nobody marked the water, to where the level turned.
    pub call_to_water: Result<Span, Missing>,
    /// From running water to shut-off.
    pub water_to_shut_off: Result<Span, Missing>,
}

/// Everything measured in one cycle.
pub(super) struct Figures {
    pub draw: Result<Stretch, Missing>,
    pub fill: Result<Stretch, Missing>,
    pub after: Result<Stretch, Missing>,
    pub gross: Result<Estimate, Missing>,
    pub after_gross: Result<Estimate, Missing>,
    pub drain_not_closed: bool,
    /// A pace that changed while it filled.
    pub changed: Option<Changed>,
    /// What the readings show of the fill by themselves.
    pub rise: Option<Rise>,
    /// Times of readings that stand far off the others.
    pub slips: Vec<f64>,
    pub call_level: Result<LevelEstimate, Missing>,
    pub shut_off_level: Result<LevelEstimate, Missing>,
    pub delays: Delays,
}

impl Figures {
    pub fn of(setup: &Setup, cycle: &Cycle) -> Self {
        use ExpectedMark::*;
        let basin = &setup.basin;
        let mut draw = cycle
            .draw_window()
            .ok_or(Missing::NoDrawdown)
            .and_then(|(a, b)| inflow(basin, &cycle.readings(a, b)));
        let (rise, slip) = rise(basin, &cycle.readings(f64::NEG_INFINITY, f64::INFINITY));
        let window = fill_window(cycle, rise.as_ref());
        let mut changed = None;
        let mut fill = window.ok_or(Missing::NoWaterSeen).and_then(|(a, b, _)| {
            let part;
            (part, changed) = steady(basin, &cycle.readings(a, b), true);
            inflow(basin, &part)
        });
        let shut = shut_off(cycle, rise.as_ref());
        let mut after = match (shut, cycle.end()) {
            (Some(shut), Some(end)) if !cycle.drain_open_at(end) => {
                inflow(basin, &steady(basin, &cycle.readings(shut, end), false).0)
            }
            (Some(_), _) => Err(Missing::NeedTwoLevels),
            (None, _) => Err(Missing::NoShutOff),
        };
        // A basin ripples while it fills as it does afterwards; while it is
        // drawn down the pace changes, and a line tells nothing of ripple.
        let lines: Vec<Line> = [&fill, &after]
            .into_iter()
            .flatten()
            .map(|s| s.line)
            .collect();
        let lines: Vec<&Line> = lines.iter().collect();
        for stretch in [&mut fill, &mut after].into_iter().flatten() {
            stretch.pool(&lines);
        }
        if let Some(draw) = draw.as_mut().ok().filter(|_| !lines.is_empty()) {
            draw.pool(&lines);
        }
        let mut slips: Vec<f64> = slip.into_iter().collect();
        for stretch in [&draw, &fill, &after].into_iter().flatten() {
            slips.extend(&stretch.fit.left_out);
        }
        sort_by(&mut slips, f64::total_cmp);
        slips.dedup();
        let gross_of = |s: &Result<Stretch, Missing>| {
            s.as_ref()
                .map(|s| gross(setup, &s.fit.flow))
                .map_err(|e| *e)
        };
        let tapped = |name| cycle.time(name).map(|t| Span::around(t, TAP_HALF_S));
        let water = tapped(WaterSeen).or(rise.and_then(|r| r.began));
        let ended = tapped(ShutOff).or(rise.and_then(|r| r.ended));
        let (drain, call) = (tapped(DrawdownBegan), tapped(CallSeen));
        let delay = |a: Option<Span>, b: Option<Span>, no_a, no_b| {
            let (a, b): (Span, Span) = (a.ok_or(no_a)?, b.ok_or(no_b)?);
            let apart = b.value_s - a.value_s;
            let half = |s: Span| s.high_s - s.value_s;
            if apart < -TAP_SLACK_S {
                Err(Missing::OutOfOrder)
            } else if cycle.interrupted(a.value_s, b.value_s) {
                Err(Missing::NotWatched)
            } else {
                Ok(Span::around(apart, half(a).hypot(half(b))))
            }
        };
        Self {
            gross: gross_of(&fill),
            after_gross: gross_of(&after),
            drain_not_closed: window.is_some_and(|w| w.2),
            call_level: call_level(setup, cycle, &lines),
            shut_off_level: shut_off_level(
                setup,
                cycle,
                shut,
                window,
                fill.as_ref().ok(),
                after.as_ref().ok(),
            ),
            delays: Delays {
                draw_to_call: delay(drain, call, Missing::NoDrawdown, Missing::NoCallSeen),
                call_to_water: delay(call, water, Missing::NoCallSeen, Missing::NoWaterSeen),
                water_to_shut_off: delay(water, ended, Missing::NoWaterSeen, Missing::NoShutOff),
            },
            changed,
            rise,
            slips,
            draw,
            fill,
            after,
        }
    }
}

/// The stretch of the fill: by the marks, or where nobody marked the water, by
/// the rise in the readings.
fn fill_window(cycle: &Cycle, rise: Option<&Rise>) -> Option<(f64, f64, bool)> {
    cycle
        .fill_window()
        .or_else(|| rise.map(|r| (r.from_s, r.to_s, cycle.drain_open_at(r.to_s))))
}

/// When the fill stopped: by the mark, else by the readings.
fn shut_off(cycle: &Cycle, rise: Option<&Rise>) -> Option<f64> {
    cycle
        .time(ExpectedMark::ShutOff)
        .or_else(|| Some(rise?.ended?.value_s))
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

fn call_level(setup: &Setup, cycle: &Cycle, lines: &[&Line]) -> Result<LevelEstimate, Missing> {
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
    let mut stretch = inflow(&setup.basin, &near).ok();
    if let Some(stretch) = stretch.as_mut().filter(|_| !lines.is_empty()) {
        stretch.pool(lines);
    }
    level_at(call, &near, stretch.as_ref())
}

fn shut_off_level(
    setup: &Setup,
    cycle: &Cycle,
    shut: Option<f64>,
    window: Option<(f64, f64, bool)>,
    fill: Option<&Stretch>,
    after: Option<&Stretch>,
) -> Result<LevelEstimate, Missing> {
    let shut = shut.ok_or(Missing::NoShutOff)?;
    let (from, to, _) = window.ok_or(Missing::NoWaterSeen)?;
    let mut best = level_at(shut, &cycle.readings(from, to), fill);
    let mut better = |other: LevelEstimate| {
        if best.is_err() || best.is_ok_and(|b| other.width() < b.width()) {
            best = Ok(other);
        }
    };
    if cycle.drain_open_at(shut) {
        return best;
    }
    let still = cycle.readings(shut, shut + SETTLED_S);
    if let Ok(level) = level_at(shut, &still, after) {
        better(level);
    }
    // What is lost meanwhile lowers the first reading after it.
    if let (Some(&(at, level)), None) = (still.first(), after) {
        let area = setup.basin.area_at(Length::new::<meter>(level));
        let lost = (setup.loss_while_testing / area).get::<meter_per_second>() * (at - shut);
        let lost = if lost.is_finite() { lost.max(0.0) } else { 0.0 };
        better(LevelEstimate::around(
            level - lost,
            reading_half(fill).hypot(0.5 * lost),
        ));
    }
    best
}
