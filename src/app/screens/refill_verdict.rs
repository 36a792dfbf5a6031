//! The verdict of a refill test: the word, the reasons, the figures with
//! their intervals.

use crate::app::view::prelude::*;

use crate::app::parts::icon::{Draw, Icon};
use crate::app::prefs::prefs;
use crate::quantity::{System, Value, show};
use crate::record::Test;
use crate::refill::{Estimate, LevelEstimate, Missing, Outcome, Span, Verdict};
use crate::words::Phrase as P;

/// Verdict, reasons, what to do next.
#[component]
pub fn VerdictView(outcome: Outcome, system: System) -> View {
    let words = prefs().words;
    let (icon, class) = match outcome.verdict {
        Verdict::Pass => (Icon::Full, "verdict state proven"),
        Verdict::PassWithWatch => (Icon::Full, "verdict state unproven"),
        Verdict::Fail => (Icon::Warning, "verdict state urgent"),
        Verdict::NotProven => (Icon::Half, "verdict state unproven"),
    };
    let reasons = outcome
        .findings
        .iter()
        .map(|f| markup! { <li>{words.finding(f, system)}</li> })
        .collect_view();
    markup! {
        <section>
            <p class=class data-test="verdict" role="heading" aria-level="2">
                <Draw icon />
                {words.refill_verdict(outcome.verdict)}
            </p>
            <ul class="bullets" data-test="findings">{reasons}</ul>
            {outcome.next.map(|next| markup! { <p>{words.refill_next(next)}</p> })}
        </section>
    }
}

/// The figures with their intervals.
#[component]
pub fn FiguresView(test: Test, outcome: Outcome, system: System) -> View {
    let words = prefs().words;
    let said = |value: Value| show(value, system).to_string();
    let flow = |estimate: &Result<Estimate, Missing>| {
        estimate
            .as_ref()
            .map(|e| {
                (
                    Value::flow(e.value),
                    said(Value::flow(e.low)),
                    said(Value::flow(e.high)),
                )
            })
            .map_err(|m| *m)
    };
    let level = |estimate: &Result<LevelEstimate, Missing>| {
        estimate
            .as_ref()
            .map(|e| {
                (
                    Value::level(e.value),
                    said(Value::level(e.low)),
                    said(Value::level(e.high)),
                )
            })
            .map_err(|m| *m)
    };
    let net = outcome
        .fill_net
        .as_ref()
        .map(|fit| fit.flow)
        .map_err(|m| *m);
    let drain = outcome
        .drawdown
        .as_ref()
        .map(|fit| fit.flow)
        .map_err(|m| *m);
    let rows = [
        (P::FillGross, flow(&outcome.fill_gross), "fill-gross"),
        (P::FillNet, flow(&net), "fill-net"),
        (P::CallLevelSeen, level(&outcome.call_level), "call-level"),
        (
            P::ShutOffLevelSeen,
            level(&outcome.shut_off_level),
            "shut-off-level",
        ),
        (P::DrainFlow, flow(&drain), "drain-flow"),
    ];
    let figures = rows
        .into_iter()
        .map(|(name, figure, test)| {
            let body = match figure {
                Ok((value, low, high)) => markup! {
                    <span class="value">
                        {show(value, system).number}
                        <span class="u">{show(value, system).unit}</span>
                    </span>
                    <span class="small sub">
                        {format!("{}: {low}\u{a0}– {high}", words.phrase(P::Interval95))}
                    </span>
                },
                Err(missing) => markup! {
                    <span class="value none">{words.refill_missing(missing)}</span>
                },
            };
            markup! {
                <div class="number" data-test=test>
                    <span class="label">{words.phrase(name)}</span>
                    {body}
                </div>
            }
        })
        .collect_view();
    let delay = |span: &Result<Span, Missing>| {
        span.as_ref().map_or_else(
            |missing| words.refill_missing(*missing).to_owned(),
            |s| words.span(s),
        )
    };
    let today = test.setup.makeup_need;
    let need = today.max(test.setup.design_need.unwrap_or_default());
    // None where neither today's readings nor the design say it.
    let need = (need.value > 0.0).then(|| {
        let need = show(Value::flow(need), system);
        markup! {
            <div class="number">
                <span class="label">{words.phrase(P::NeedNow)}</span>
                <span class="value">
                    {need.number}
                    <span class="u">{need.unit}</span>
                </span>
                <span class="small sub">{words.phrase(P::NeedBasis)}</span>
            </div>
        }
    });
    let each = (outcome.cycles.len() > 1).then(|| {
        let rows = outcome
            .cycles
            .iter()
            .enumerate()
            .map(|(n, cycle)| {
                let fill = cycle.fill_gross.map(|e| said(Value::flow(e.value)));
                markup! {
                    <tr>
                        <th scope="row">{(n + 1).to_string()}</th>
                        <td>{words.refill_verdict(cycle.verdict)}</td>
                        <td>{fill.unwrap_or_default()}</td>
                    </tr>
                }
            })
            .collect_view();
        markup! {
            <h3>{words.phrase(P::EachFill)}</h3>
            <table data-test="each-fill">
                <tbody>{rows}</tbody>
            </table>
        }
    });
    markup! {
        <section>
            <h2>{words.phrase(P::Figures)}</h2>
            {need}
            {figures}
            <table>
                <tbody>
                    <tr>
                        <th scope="row">{words.phrase(P::DrainToCall)}</th>
                        <td data-test="drain-to-call">{delay(&outcome.delays.draw_to_call)}</td>
                    </tr>
                    <tr>
                        <th scope="row">{words.phrase(P::CallToWater)}</th>
                        <td>{delay(&outcome.delays.call_to_water)}</td>
                    </tr>
                    <tr>
                        <th scope="row">{words.phrase(P::WaterToShutOff)}</th>
                        <td>{delay(&outcome.delays.water_to_shut_off)}</td>
                    </tr>
                </tbody>
            </table>
            <p class="sub small">{words.phrase(P::BasinGiven)}</p>
            {each}
        </section>
    }
}
