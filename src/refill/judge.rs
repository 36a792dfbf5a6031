//! The verdict over all cycles of a test.

use super::cycle::{Cycle, cycles};
use super::finding::{Finding, NextReading, Verdict, Weight};
use super::fit::{Estimate, LevelEstimate, Missing, RateFit, Stretch, differential};
use super::mark::{ExpectedMark, Mark, in_order};
use super::measure::{Delays, Figures};
use super::phase::{Phase, phase};
use super::reasons::findings;
use super::seen::Rise;
use super::setup::Setup;
use crate::quantity::sort_by;

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
    /// The largest rise of the level as the readings alone show it.
    pub rise: Option<Rise>,
    /// Times of readings left out as gross errors, of all cycles.
    pub slips: Vec<f64>,
    /// What would help most next.
    pub next: Option<NextReading>,
    /// Each cycle by itself, in the order of time; empty in these.
    pub cycles: Vec<Outcome>,
}

/// Judges a refill test. Marks may come in any order; marks with an unusable
/// time or level are left out and counted.
///
/// [`Verdict::Pass`] needs all of: the control called by itself, water came,
/// the lower 95 % bound of the gross fill is at least 1.25 times the need, and
/// the fill shut off by itself below the overflow, near the stop level. Fails on: no call with the
/// level below the call level for a minute; no water three minutes after the
/// call; the upper 95 % bound below the need; the level past the stop level
/// with the fill running on; water at the overflow.
pub fn judge(setup: &Setup, marks: &[Mark]) -> Outcome {
    let ordered = in_order(marks);
    let now = phase(&ordered);
    let cycles = cycles(&ordered);
    let mut outcomes: Vec<(bool, Outcome)> = cycles
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
    let mut outcome = outcomes[decides.unwrap_or(0)].1.clone();
    outcome.slips = outcomes.iter().flat_map(|(_, o)| o.slips.clone()).collect();
    outcome.cycles = outcomes.drain(..).map(|(_, o)| o).collect();
    if let Some(chatter) = chatter(&cycles) {
        outcome.findings.push(chatter);
        if outcome.verdict == Verdict::Pass {
            outcome.verdict = Verdict::PassWithWatch;
        }
    }
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
    let rank = |f: &Finding| match f.weight() {
        Weight::Fail => 0,
        Weight::Unproven => 1,
        Weight::Watch => 2,
        Weight::Proof => 3,
        Weight::Remark => 4,
    };
    sort_by(&mut outcome.findings, |a, b| rank(a).cmp(&rank(b)));
    outcome.next = next_reading(&outcome);
    outcome
}

/// A fill that came back on within this time after it stopped, in seconds,
/// with nobody at the drain. Common practice, no source.
const CHATTER_S: f64 = 60.0;

fn chatter(cycles: &[Cycle]) -> Option<Finding> {
    let back = |pair: &[Cycle]| {
        let begins = pair[1].marks.first()?;
        let stopped = pair[0].time(ExpectedMark::ShutOff)?;
        let after = begins.at_s - stopped;
        let by_hand = begins.kind.name() == ExpectedMark::DrawdownBegan;
        (!by_hand && after <= CHATTER_S && !pair[0].drain_open_at(stopped)).then_some(after)
    };
    let soon: Vec<f64> = cycles.windows(2).filter_map(back).collect();
    let soonest_s = soon.iter().copied().reduce(f64::min)?;
    let times = soon.len();
    Some(Finding::Chatter { times, soonest_s })
}

fn judge_cycle(setup: &Setup, cycle: &Cycle, now: Phase) -> Outcome {
    let figures = Figures::of(setup, cycle);
    let findings = findings(setup, &cycle.without(&figures.slips), &figures);
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
        rise: figures.rise,
        slips: figures.slips,
        next: None,
        cycles: Vec::new(),
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
            Finding::WaterByReadings => NextReading::NoteWater,
            Finding::ShutOffNotSeen => live(NextReading::WaitForShutOff),
            Finding::FreeboardNotShown => live(NextReading::LevelAtShutOff),
            Finding::TightnessNotWatched | Finding::Held { told: false, .. } => {
                live(NextReading::LevelAfterShutOff)
            }
            Finding::OneCycleOnly => NextReading::RunAgain,
            _ => return None,
        })
    })
}
