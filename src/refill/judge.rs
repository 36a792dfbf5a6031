//! From marks to figures, findings and a verdict.

use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::volume_rate::cubic_meter_per_second;

use super::cycle::{Cycle, cycles};
use super::finding::{Cover, Finding, NextReading, Verdict, Weight};
use super::fit::{
    Estimate, LevelEstimate, Missing, READING_HALF_M, RateFit, Stretch, differential, inflow,
    level_at,
};
use super::mark::{ExpectedMark, Mark, in_order};
use super::phase::{Phase, phase};
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
/// How long a fill valve may take before "no water" is a failure, in seconds;
/// the slowest motor valves need about two minutes. Common practice, no source.
const WATER_WAIT_S: f64 = 180.0;
/// Water later than this after the call is worth a watch, in seconds.
const WATER_LATE_S: f64 = 60.0;
/// Two marks this close may have been tapped in the wrong order, in seconds.
const TAP_SLACK_S: f64 = 10.0;
/// A control level this far from where it was set is off, in metres (1/2 in).
/// Common practice, no source.
const LEVEL_TOLERANCE_M: f64 = 0.0127;
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

/// What a refill test says. With several cycles: the figures of the cycle that
/// decides the verdict.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Where the test stands.
    pub phase: Phase,
    /// Mean flow out of the basin while it was drawn down, losses included.
    pub drawdown: Result<RateFit, Missing>,
    /// Net flow into the basin while filling: what the level shows.
    pub fill_net: Result<RateFit, Missing>,
    /// Flow through the fill: net plus running losses, these taken to be known
    /// within 25 %. A least value if [`Finding::DrainNotClosed`] is present.
    pub fill_gross: Result<Estimate, Missing>,
    /// Net flow into the basin after the shut-off.
    pub after_shut_off: Result<RateFit, Missing>,
    /// Level at the call.
    pub call_level: Result<LevelEstimate, Missing>,
    /// Level at the shut-off.
    pub shut_off_level: Result<LevelEstimate, Missing>,
    /// Height from call level to shut-off level.
    pub differential: Result<LevelEstimate, Missing>,
    /// Times between events.
    pub delays: Delays,
    /// The verdict.
    pub verdict: Verdict,
    /// Its reasons, never empty; the deciding ones first.
    pub findings: Vec<Finding>,
    /// What would help most next.
    pub next: Option<NextReading>,
}

/// Judges a refill test. Marks may come in any order; marks with an unusable
/// time or level are left out and counted.
///
/// [`Verdict::Pass`] needs all of: the control called by itself, water came,
/// the lower 95 % bound of the gross fill is at least 1.25 times the need, and
/// the fill shut off by itself below the overflow. Fails on: no call with the
/// level below the call level for a minute; no water three minutes after the
/// call; the upper 95 % bound below the need; the level past the stop level
/// with the fill running on; water at the overflow.
pub fn judge(setup: &Setup, marks: &[Mark]) -> Outcome {
    let ordered = in_order(marks);
    let now = phase(&ordered);
    let mut outcomes: Vec<(bool, Outcome)> = cycles(&ordered)
        .iter()
        .map(|cycle| {
            let run = cycle.time(ExpectedMark::WaterSeen).is_some()
                && cycle.time(ExpectedMark::ShutOff).is_some();
            (run, judge_cycle(setup, cycle, now))
        })
        .collect();
    let run = outcomes.iter().filter(|(run, _)| *run).count();
    let good = |v: Verdict| matches!(v, Verdict::Pass | Verdict::PassWithWatch);
    let passed = outcomes
        .iter()
        .filter(|(run, o)| *run && good(o.verdict))
        .count();
    // A failure anywhere decides; then a watch, then a pass; else the last.
    let rank = |v: Verdict| match v {
        Verdict::Fail => 3,
        Verdict::PassWithWatch => 2,
        Verdict::Pass => 1,
        Verdict::NotProven => 0,
    };
    let decides = (0..outcomes.len()).max_by_key(|&i| (rank(outcomes[i].1.verdict), i));
    let (_, mut outcome) = outcomes.swap_remove(decides.unwrap_or(0));
    if run > 1 {
        outcome.findings.push(Finding::Cycles { run, passed });
    } else if good(outcome.verdict) {
        outcome.findings.push(Finding::OneCycleOnly);
    }
    if marks.len() > ordered.len() {
        outcome.findings.push(Finding::MarksLeftOut {
            count: marks.len() - ordered.len(),
        });
    }
    outcome.findings.sort_by_key(|f| match f.weight() {
        Weight::Fail => 0,
        Weight::Unproven => 1,
        Weight::Watch => 2,
        Weight::Proof => 3,
        Weight::Remark => 4,
    });
    outcome.next = next_reading(&outcome);
    outcome
}

fn judge_cycle(setup: &Setup, cycle: &Cycle, now: Phase) -> Outcome {
    let figures = Figures::of(setup, cycle);
    let findings = findings(setup, cycle, &figures);
    let has = |w: Weight| findings.iter().any(|f| f.weight() == w);
    let proofs = findings
        .iter()
        .filter(|f| f.weight() == Weight::Proof)
        .count();
    let verdict = if has(Weight::Fail) {
        Verdict::Fail
    } else if has(Weight::Unproven) {
        Verdict::NotProven
    } else if has(Weight::Watch) {
        Verdict::PassWithWatch
    } else if proofs == 4 {
        Verdict::Pass
    } else {
        Verdict::NotProven
    };
    let fit = |s: &Result<Stretch, Missing>| s.as_ref().map(|s| s.fit.clone()).map_err(|e| *e);
    let drawdown = fit(&figures.draw).map(|f| RateFit {
        flow: f.flow.reversed(),
        ..f
    });
    Outcome {
        phase: now,
        drawdown,
        fill_net: fit(&figures.fill),
        fill_gross: figures.gross,
        after_shut_off: fit(&figures.after),
        call_level: figures.call_level,
        shut_off_level: figures.shut_off_level,
        differential: figures.call_level.and_then(|call| {
            figures
                .shut_off_level
                .map(|shut| differential(&call, &shut))
        }),
        delays: figures.delays,
        verdict,
        findings,
        next: None,
    }
}

/// Everything measured in one cycle.
struct Figures {
    draw: Result<Stretch, Missing>,
    fill: Result<Stretch, Missing>,
    after: Result<Stretch, Missing>,
    gross: Result<Estimate, Missing>,
    after_gross: Result<Estimate, Missing>,
    drain_not_closed: bool,
    call_level: Result<LevelEstimate, Missing>,
    shut_off_level: Result<LevelEstimate, Missing>,
    delays: Delays,
}

impl Figures {
    fn of(setup: &Setup, cycle: &Cycle) -> Self {
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
        Some(window) if cycle.drain_open_at(call) => window,
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
    near.sort_by(|a, b| (a.0 - call).abs().total_cmp(&(b.0 - call).abs()));
    near.truncate(3);
    near.sort_by(|a, b| a.0.total_cmp(&b.0));
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
    let read = read.map(|r| LevelEstimate::around(r.1, READING_HALF_M));
    let width = |e: &LevelEstimate| e.high - e.low;
    match (drawn, read) {
        (Ok(drawn), Some(read)) if width(&read) < width(&drawn) => Ok(read),
        (Err(_), Some(read)) => Ok(read),
        (drawn, _) => drawn,
    }
}

fn findings(setup: &Setup, cycle: &Cycle, figures: &Figures) -> Vec<Finding> {
    use ExpectedMark::*;
    let mut out = Vec::new();
    if cycle.marks.is_empty() {
        return vec![Finding::NothingYet];
    }
    let water = cycle.time(WaterSeen);
    match (cycle.time(CallSeen), water) {
        (call, Some(water)) => {
            call_findings(setup, cycle, figures, call, water, &mut out);
            fill_findings(setup, figures, &mut out);
            shut_off_findings(setup, cycle, figures, &mut out);
        }
        (call, None) => out.push(no_water(setup, cycle, call)),
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
    match call {
        _ if draw.is_some_and(|draw| water < draw) => out.push(Finding::WaterFromTheStart),
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
    if let (Some(set), Ok(found)) = (setup.call_level, figures.call_level) {
        if off(set, &found) {
            out.push(Finding::CallLevelOff { set, found });
        }
    }
    let after = figures.delays.call_to_water_s;
    out.push(Finding::WaterCame { after });
    if let Ok(after_s) = after {
        if after_s > WATER_LATE_S {
            out.push(Finding::WaterLate { after_s });
        }
    }
}

fn off(set: Length, found: &LevelEstimate) -> bool {
    let (low, value, high) = found.si();
    (set.get::<meter>() - value).abs() > LEVEL_TOLERANCE_M + (high - low) / 2.0
}

fn cover(gross: Estimate, need: VolumeRate) -> Option<Cover> {
    let n = need.get::<cubic_meter_per_second>();
    let (low, value, high) = gross.si();
    // A need so small that the ratio leaves the numbers is no need.
    (n.is_finite() && n > 1e-12).then(|| Cover {
        gross,
        need,
        ratio: Ratio::new::<ratio>(value / n),
        ratio_low: Ratio::new::<ratio>(low / n),
        ratio_high: Ratio::new::<ratio>(high / n),
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
    let Some(cover_today) = cover(gross, setup.makeup_need) else {
        return out.push(Finding::NeedNotKnown);
    };
    let low = cover_today.ratio_low.get::<ratio>();
    let covers = low >= 1.0;
    out.push(if low >= MARGIN {
        Finding::FillCovers(cover_today)
    } else if covers {
        Finding::FillMarginal(cover_today)
    } else if cover_today.ratio_high.get::<ratio>() < 1.0 && !figures.drain_not_closed {
        Finding::FillBelowNeed(cover_today)
    } else {
        Finding::FillUncertain(cover_today)
    });
    let design = setup.design_need.and_then(|need| cover(gross, need));
    if let Some(design) = design.filter(|d| covers && d.ratio.get::<ratio>() < 1.0) {
        out.push(Finding::FillBelowDesign(design));
    }
}

fn shut_off_findings(setup: &Setup, cycle: &Cycle, figures: &Figures, out: &mut Vec<Finding>) {
    let zero = Length::default();
    if cycle.time(ExpectedMark::ShutOff).is_none() {
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
    let level = figures.shut_off_level.ok();
    out.push(Finding::ShutOffByItself { level });
    if level.is_none_or(|l| l.low <= zero) {
        out.push(Finding::FreeboardNotShown);
    }
    if let (Some(set), Some(found)) = (setup.stop_level, level) {
        if off(set, &found) {
            out.push(Finding::StopLevelOff { set, found });
        }
    }
    match figures.after_gross {
        Ok(flow) if flow.low > VolumeRate::default() => out.push(Finding::AfterDrip { flow }),
        Ok(flow) if flow.high < VolumeRate::default() => {
            out.push(Finding::Sag {
                flow: flow.reversed(),
            });
        }
        Ok(_) => {}
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
    let lowest = cycle.lowest_m().map(Length::new::<meter>);
    let never = out.iter().any(|f| matches!(f, Finding::NeverCalled { .. }));
    if let (Some(limit), Some(lowest), false) = (setup.low_limit, lowest, never) {
        if lowest >= limit {
            out.push(Finding::LowLimitReached { lowest });
        }
    }
    let left_out = |s: &Result<Stretch, Missing>| s.as_ref().map_or(0, |s| s.fit.left_out.len());
    let count = left_out(&figures.draw) + left_out(&figures.fill) + left_out(&figures.after);
    if count > 0 {
        out.push(Finding::ReadingsLeftOut { count });
    }
}

/// What would help most, from the first finding that asks for something.
fn next_reading(outcome: &Outcome) -> Option<NextReading> {
    if outcome.verdict == Verdict::Fail {
        return None;
    }
    let stopped = outcome.phase == Phase::Stopped;
    let filling = outcome.phase == Phase::Filling;
    let drain = outcome.findings.contains(&Finding::DrainNotClosed);
    let live = |next: NextReading| if stopped { NextReading::RunAgain } else { next };
    let refill = |next: NextReading| if filling { next } else { NextReading::RunAgain };
    outcome.findings.iter().find_map(|finding| {
        Some(match finding {
            Finding::NothingYet => NextReading::Begin,
            Finding::NotDownToCall { .. } => live(NextReading::DrawFarther),
            Finding::WaterNotYet { .. } => live(NextReading::WaitForWater),
            Finding::WaterNotNoted => NextReading::NoteWater,
            Finding::WaterFromTheStart => NextReading::RunAgain,
            Finding::FillNotMeasured(Missing::NoBasin) => NextReading::BasinSize,
            Finding::FillNotMeasured(Missing::NeedTwoLevels) => refill(NextReading::LevelNow),
            Finding::FillNotMeasured(_) => refill(NextReading::LevelLater),
            Finding::FillUncertain(_) if drain => NextReading::NoteDrainClosed,
            Finding::FillUncertain(_) => refill(NextReading::LevelLater),
            Finding::NeedNotKnown => NextReading::MakeupNeed,
            Finding::ShutOffNotSeen => live(NextReading::WaitForShutOff),
            Finding::FreeboardNotShown => live(NextReading::LevelAtShutOff),
            Finding::TightnessNotWatched => live(NextReading::LevelAfterShutOff),
            Finding::OneCycleOnly => NextReading::RunAgain,
            _ => return None,
        })
    })
}
