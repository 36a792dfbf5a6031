//! From the figures of one cycle to its findings.

use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::volume_rate::cubic_meter_per_second;

use super::cycle::Cycle;
use super::drawdown::drain_flow;
use super::finding::{Cover, Finding};
use super::fit::{Estimate, LevelEstimate, READING_HALF_M, inflow};
use super::mark::ExpectedMark;
use super::measure::{Figures, TAP_SLACK_S};
use super::plan::LEAK_SHARE;
use super::setup::Setup;
use crate::quantity::{Length, Ratio, VolumeRate};

/// A pass asks for a fill whose lower 95 % bound is this many times the need:
/// the need itself is an estimate of weather and load. Common practice, no
/// source.
pub(super) const MARGIN: f64 = 1.25;
/// How long a control may take to call once the level is below its call
/// level, in seconds; delays of a few seconds against waves are usual. Common
/// practice, no source.
const CALL_WAIT_S: f64 = 60.0;
/// How long water may take to come after the call, in seconds: the slowest motor
/// valves need about two minutes. Common practice, no source.
const WATER_WAIT_S: f64 = 180.0;
/// Water later than this after the call is worth a watch, in seconds.
const WATER_LATE_S: f64 = 60.0;
/// A control level this far from where it was set is off, in metres (1/2 in).
/// Common practice, no source.
const LEVEL_TOLERANCE_M: f64 = 0.0127;

/// Far off is half the height between the levels set, but at least 1 in and at
/// most 2 in. Common practice, no source.
fn far(setup: &Setup) -> f64 {
    let set = |l: Option<Length>| l.map(|l| l.get::<meter>());
    let apart = set(setup.call_level)
        .zip(set(setup.stop_level))
        .map_or(0.0, |(call, stop)| (call - stop) / 2.0);
    apart.clamp(0.0254, 0.0508)
}

/// A mark this far from what the readings show is worth a word, in seconds.
const MARK_OFF_S: f64 = 30.0;

/// The findings of one cycle; never empty.
pub(super) fn findings(setup: &Setup, cycle: &Cycle, figures: &Figures) -> Vec<Finding> {
    use ExpectedMark::*;
    let mut out = Vec::new();
    if cycle.marks.is_empty() {
        return vec![Finding::NothingYet];
    }
    let call = cycle.time(CallSeen);
    let turned = figures.rise.and_then(|r| r.began).map(|s| s.value_s);
    match cycle.time(WaterSeen).or(turned) {
        Some(water) => {
            call_findings(setup, cycle, figures, call, water, &mut out);
            fill_findings(setup, figures, &mut out);
            shut_off_findings(setup, cycle, figures, &mut out);
        }
        None => out.push(no_water(setup, cycle, call)),
    }
    level_findings(setup, cycle, figures, &mut out);
    out
}

/// Whether the readings show the level rising after `from` without water noted.
fn rising(setup: &Setup, cycle: &Cycle, from: f64) -> bool {
    inflow(&setup.basin, &cycle.readings(from, f64::INFINITY))
        .is_ok_and(|s| s.fit.flow.low > VolumeRate::default())
}

fn no_water(setup: &Setup, cycle: &Cycle, call: Option<f64>) -> Finding {
    let end = cycle.end().unwrap_or(0.0);
    let lowest = cycle.lowest_m();
    let since = call
        .or(cycle.time(ExpectedMark::DrawdownEnded))
        .unwrap_or(f64::NEG_INFINITY);
    if cycle.time(ExpectedMark::ShutOff).is_some() || rising(setup, cycle, since) {
        return Finding::WaterNotNoted;
    }
    if let Some(call) = call {
        let waited_s = end - call;
        let watched = !cycle.interrupted(call, end);
        return if waited_s >= WATER_WAIT_S && watched {
            Finding::CalledNoWater { waited_s }
        } else {
            Finding::WaterNotYet { waited_s }
        };
    }
    let stopped = cycle.time(ExpectedMark::Stopped).is_some();
    // The first reading that shows the level below `limit` for certain.
    let below = |limit: Option<Length>, doubt: f64| {
        let limit = limit?.get::<meter>() + doubt;
        cycle
            .readings(f64::NEG_INFINITY, end)
            .into_iter()
            .find(|r| r.1 >= limit)
            .map(|r| r.0)
    };
    let waited = |from: f64| end - from >= CALL_WAIT_S && !cycle.interrupted(from, end);
    let past_call = below(setup.call_level, LEVEL_TOLERANCE_M + READING_HALF_M);
    let past_low = below(setup.low_limit, 0.0);
    let failed = past_call.is_some_and(waited) || past_low.is_some_and(|t| stopped || waited(t));
    match lowest.map(Length::new::<meter>) {
        Some(lowest) if failed => Finding::NeverCalled { lowest },
        lowest => Finding::NotDownToCall { lowest },
    }
}

fn call_findings(
    setup: &Setup,
    cycle: &Cycle,
    figures: &Figures,
    call: Option<f64>,
    water: f64,
    out: &mut Vec<Finding>,
) {
    let draw = cycle.time(ExpectedMark::DrawdownBegan);
    let late = call.is_none_or(|call| call - water > TAP_SLACK_S);
    match call {
        _ if late && draw.is_some_and(|draw| water < draw) => out.push(Finding::WaterFromTheStart),
        None if draw.is_none() => out.push(Finding::WaterFromTheStart),
        None => out.push(Finding::CallNotNoted),
        Some(call) => {
            out.push(Finding::CalledByItself {
                level: figures.call_level.ok(),
            });
            if call - water > TAP_SLACK_S {
                out.push(Finding::WaterBeforeCall {
                    lead_s: call - water,
                });
            }
        }
    }
    // A basin found below the call level shows no level at which it called.
    let call_s = call.unwrap_or(water);
    let from_above = |set: Length| {
        let near = set.get::<meter>() + LEVEL_TOLERANCE_M;
        let before = cycle.readings(f64::NEG_INFINITY, call_s);
        before.first().is_none_or(|r| r.1 < near)
    };
    if let (Some(set), Ok(found)) = (setup.call_level, figures.call_level)
        && off(set, &found)
        && from_above(set)
    {
        out.push(if (found.low - set).get::<meter>() > far(setup) {
            Finding::CalledLate { set, found }
        } else {
            Finding::CallLevelOff { set, found }
        });
    }
    if cycle.time(ExpectedMark::WaterSeen).is_none() {
        out.push(Finding::WaterByReadings);
    }
    let after = figures.delays.call_to_water.map(|s| s.value_s);
    out.push(Finding::WaterCame { after });
    if let Ok(after_s) = after
        && after_s > WATER_LATE_S
    {
        out.push(Finding::WaterLate { after_s });
    }
}

fn off(set: Length, found: &LevelEstimate) -> bool {
    let (low, value, high) = found.si();
    (set.get::<meter>() - value).abs() > LEVEL_TOLERANCE_M + (high - low) / 2.0
}

fn cover(gross: Estimate, need: VolumeRate, design: bool) -> Option<Cover> {
    let n = need.get::<cubic_meter_per_second>();
    let (low, value, high) = gross.si();
    // A need so small that the ratio leaves the numbers is no need.
    (n.is_finite() && n > 1e-12).then(|| Cover {
        gross,
        need,
        ratio: Ratio::new::<ratio>(value / n),
        ratio_low: Ratio::new::<ratio>(low / n),
        ratio_high: Ratio::new::<ratio>(high / n),
        design,
    })
}

fn fill_findings(setup: &Setup, figures: &Figures, out: &mut Vec<Finding>) {
    let gross = match figures.gross {
        Ok(gross) => gross,
        Err(missing) => return out.push(Finding::FillNotMeasured(missing)),
    };
    if figures.drain_not_closed {
        out.push(Finding::DrainNotClosed);
    }
    let design = setup.design_need.and_then(|need| cover(gross, need, true));
    let today = cover(gross, setup.makeup_need, false);
    let Some(held) = today.or(design) else {
        return out.push(Finding::NeedNotKnown);
    };
    let low = held.ratio_low.get::<ratio>();
    let covers = low >= 1.0;
    let short = |c: &Cover| c.ratio_high.get::<ratio>() < 1.0 && !figures.drain_not_closed;
    out.push(if low >= MARGIN {
        Finding::FillCovers(held)
    } else if covers {
        Finding::FillMarginal(held)
    } else if short(&held) {
        Finding::FillBelowNeed(held)
    } else {
        Finding::FillUncertain(held)
    });
    if let Some(design) = design.filter(|d| covers && d.ratio_low.get::<ratio>() < 1.0) {
        out.push(if short(&design) {
            Finding::FillBelowDesign(design)
        } else {
            Finding::FillNearDesign(design)
        });
    }
    if let Some(change) = figures.changed {
        out.push(Finding::FlowChanged {
            at_s: change.at_s,
            share: Ratio::new::<ratio>(change.share),
        });
    }
    if figures.drain_not_closed {
        return;
    }
    if let Some(valve) = setup.valve.filter(|v| gross.high < v.low) {
        out.push(Finding::FillBelowValve { gross, valve });
    }
    if let Some(earlier) = setup.earlier {
        out.push(if gross.high < earlier.low {
            Finding::FillBelowEarlier { gross, earlier }
        } else {
            Finding::FillAsEarlier { earlier }
        });
    }
}

fn shut_off_findings(setup: &Setup, cycle: &Cycle, figures: &Figures, out: &mut Vec<Finding>) {
    let marked = cycle.time(ExpectedMark::ShutOff);
    let shown = figures.rise.and_then(|r| r.ended);
    let level = figures.shut_off_level.ok();
    match (marked, shown) {
        (Some(at), shown) => {
            out.push(Finding::ShutOffByItself { level });
            let by_s = shown.map_or(0.0, |s| {
                let outside = f64::max(s.low_s - at, at - s.high_s);
                if outside > MARK_OFF_S {
                    at - s.value_s
                } else {
                    0.0
                }
            });
            if by_s != 0.0 {
                out.push(Finding::ShutOffMarkOff { by_s });
            }
        }
        (None, Some(_)) => out.push(Finding::ShutOffByReadings { level }),
        (None, None) => {
            let (from, to, _) = cycle.fill_window().unwrap_or_default();
            let highest = cycle
                .readings(from, to)
                .into_iter()
                .map(|r| r.1)
                .reduce(f64::min);
            let stop = setup
                .stop_level
                .map(|l| l.get::<meter>() - LEVEL_TOLERANCE_M - READING_HALF_M);
            return out.push(match (highest, stop) {
                (Some(highest), Some(stop)) if highest < stop => Finding::NoShutOff {
                    level: Length::new::<meter>(highest),
                },
                _ => Finding::ShutOffNotSeen,
            });
        }
    }
    if level.is_none_or(|l| l.low <= Length::default()) {
        out.push(Finding::FreeboardNotShown);
    }
    if let (Some(set), Some(found)) = (setup.stop_level, level)
        && off(set, &found)
    {
        out.push(if (found.low - set).get::<meter>() > far(setup) {
            Finding::StoppedShort { set, found }
        } else {
            Finding::StopLevelOff { set, found }
        });
    }
    match figures.after_gross {
        Ok(flow) if flow.low > VolumeRate::default() => {
            let most = setup.makeup_need.max(setup.design_need.unwrap_or_default());
            out.push(match most > VolumeRate::default() && flow.low > most {
                true => Finding::ValvePasses { flow },
                false => Finding::AfterDrip { flow },
            });
        }
        Ok(flow) if flow.high < VolumeRate::default() => {
            out.push(Finding::Sag {
                flow: flow.reversed(),
            });
        }
        Ok(flow) => {
            // Where the fill was not measured, nothing says how much is a tenth.
            let told = figures
                .gross
                .is_ok_and(|fill| flow.high <= fill.value * LEAK_SHARE);
            let most = flow.high;
            out.push(Finding::Held { most, told });
        }
        Err(_) => out.push(Finding::TightnessNotWatched),
    }
}

fn level_findings(setup: &Setup, cycle: &Cycle, figures: &Figures, out: &mut Vec<Finding>) {
    let water = cycle.time(ExpectedMark::WaterSeen).unwrap_or(f64::INFINITY);
    let at_lip = |r: &&(f64, f64)| r.1 <= 0.0;
    let all = cycle.readings(f64::NEG_INFINITY, f64::INFINITY);
    let level = |r: &(f64, f64)| Length::new::<meter>(r.1);
    if let Some(r) = all.iter().filter(|r| r.0 >= water).find(at_lip) {
        out.push(Finding::PastOverflow { level: level(r) });
    }
    if let Some(r) = all.iter().filter(|r| r.0 < water).find(at_lip) {
        out.push(Finding::FoundAtOverflow { level: level(r) });
    }
    if let (Some(bore), Ok(draw)) = (setup.drain, &figures.draw) {
        let flow = draw.fit.flow.reversed();
        let deepest = draw.fit.from_level.max(draw.fit.to_level);
        let drain = drain_flow(setup, bore, deepest);
        if let Some(drain) = drain.filter(|d| flow.high < d.low) {
            out.push(Finding::DrawnSlowly { flow, drain });
        }
    }
    let lowest = cycle.lowest_m().map(Length::new::<meter>);
    let never = out.iter().any(|f| matches!(f, Finding::NeverCalled { .. }));
    if let (Some(limit), Some(lowest), false) = (setup.low_limit, lowest, never)
        && lowest >= limit
    {
        out.push(Finding::LowLimitReached { lowest });
    }
    let count = figures.slips.len();
    if count > 0 {
        out.push(Finding::ReadingsLeftOut { count });
    }
}
