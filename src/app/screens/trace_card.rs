//! One check as a card: what to do, where, the caution, what healthy reads,
//! a field where it has a number, its answers, and "couldn't check".

use crate::app::parts::choice::choice;
use crate::app::parts::field::{QuantityField, Typing};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::view::prelude::*;

use super::found::ReadingField;
use super::trace_mind::{Mind, Shown};
use crate::app::prefs::prefs;
use crate::physics::circuit;
use crate::quantity::{Bounds, Kind, Value};
use crate::record::{What, When, at_meter, meter_says};
use crate::trace::{Answer, Check, Evidence, Stage};
use crate::words::Phrase as P;

/// The card of a check.
pub fn card(mind: Mind, shown: Shown) -> View {
    let words = prefs().words;
    let Shown {
        check,
        why,
        minutes,
        walk,
    } = shown;
    let effort = words.minutes_at(minutes, walk, words.trace_place(check.place()));
    let meter = at_meter(check);
    let mut cautions: Vec<&'static str> = check
        .cautions()
        .iter()
        .map(|c| words.trace_caution(*c))
        .collect();
    // Live parts are said above already.
    let more = meter.map_or(&[][..], |m| m.meter.cautions());
    let more = more.iter().filter(|c| **c != circuit::Caution::LiveParts);
    cautions.extend(more.map(|c| words.circuit_caution(*c)));
    let answer = move |answer: Answer| {
        let stage = untrack(|| mind.stage_of(check));
        mind.keep(Evidence::said(check, answer, stage), Box::new(|| {}));
    };
    let answers = check
        .answers()
        .iter()
        .map(|a| answer_button(*a, "", answer))
        .collect_view();
    markup! {
        <div class="fields check" data-test="check" data-check=format!("{check:?}")>
            <div>
                <p class="name">
                    <strong data-test="check-title">{words.trace_check(check)}</strong>
                </p>
                <p class="sub small">{effort}</p>
            </div>
            {why.map(|why| markup! { <p data-test="check-why">{words.trace_reason(why)}</p> })}
            {folded(&cautions)}
            <p>{words.trace_check_how(check)}</p>
            {meter
                .map(|at| {
                    markup! {
                        <p>
                            <span class="sub">{words.phrase(P::LeadsAt)} ": "</span>
                            {words.trace_leads(at)}
                        </p>
                    }
                })}
            <p class="sub">{format!("{}: {}", words.phrase(P::Healthy), words.trace_check_healthy(check))}</p>
            {check.field().map(|kind| reading(mind, check, kind))}
            {as_found(mind, check)}
            <div class="answers">
                {answers}
                {answer_button(Answer::CouldNot, "faint", answer)}
            </div>
            {stages(mind, check)}
        </div>
    }
}

/// Cautions, each with its first sentence always in sight; of three and more the
/// others are one tap away, so that the answers stand within reach.
pub(super) fn folded(all: &[&'static str]) -> Option<View> {
    let lines = all.iter().map(|said| {
        let end = said.find(". ").map_or(said.len(), |at| at + 1);
        let (first, more) = said.split_at(end);
        markup! { <span>{first} <span>{more}</span></span> }
    });
    let lines = lines.collect_view();
    (!all.is_empty()).then(|| {
        markup! {
            <div class="notice caution">
                <Draw icon=Icon::Warning />
                <details open=all.len() < 3>
                    <summary data-test="cautions">{lines}</summary>
                </details>
            </div>
        }
    })
}

fn answer_button(which: Answer, class: &'static str, does: impl Fn(Answer) + 'static) -> View {
    markup! {
        <button
            type="button"
            class=class
            data-test=format!("answer-{which:?}")
            on:click=tap(move |_| does(which))
        >
            {prefs().words.trace_answer(which)}
        </button>
    }
}

/// The field of a check that has a number: what is typed is told at once as
/// what it comes to, and kept only when the person says so.
fn reading(mind: Mind, check: Check, kind: Kind) -> View {
    let words = prefs().words;
    let key = format!("{} check {check:?}", mind.job.id);
    let bounds = Bounds {
        low: match kind {
            Kind::Voltage | Kind::Current => 0.0,
            _ => Bounds::usual(kind).low,
        },
        ..Bounds::usual(kind)
    };
    let typing = Typing::new(key, kind, bounds, None);
    let comes_to = move |value: Value| {
        let known = mind.known.get()?;
        Evidence::read(check, value, mind.stage_of(check), &known.tracer.plant)
    };
    let keep = move |_| {
        let typed = typing.outcome.get_untracked().ok();
        match typed.and_then(|t| untrack(|| comes_to(t.value))) {
            Some(evidence) => mind.keep(evidence, Box::new(move || typing.settled())),
            None => typing.show_refusal(),
        }
    };
    let means = move || {
        let value = typing.typed()?.value;
        let answer = comes_to(value)?.answer;
        let known = mind.known.get()?;
        let says = meter_says(&known.tracer.plant, check, value);
        Some(markup! {
            <div class="means" aria-live="polite" data-test="means">
                <p>
                    <span class="sub">{words.phrase(P::CountsLike)} ": "</span>
                    <strong>{words.trace_answer(answer)}</strong>
                </p>
                {says
                    .map(|says| {
                        markup! {
                            <p>{words.circuit_meaning(says.meaning)}</p>
                            {says
                                .load_it
                                .then(|| {
                                    markup! {
                                        <p class="said">
                                            <Draw icon=Icon::Warning />
                                            <span>{words.phrase(P::LoadIt)}</span>
                                        </p>
                                    }
                                })}
                        }
                    })}
            </div>
        })
    };
    markup! {
        <QuantityField typing label=words.phrase(P::ReadHere) test="reading" />
        {means}
        <button
            type="button"
            class="second"
            data-test="keep-reading"
            disabled=move || typing.is_empty()
            on:click=tap(keep)
        >
            {words.phrase(P::KeepReading)}
        </button>
        <p class="sub small">{words.phrase(P::OrInWords)}</p>
    }
}

/// The readings as found that answer this check better than words do.
fn as_found(mind: Mind, check: Check) -> Option<View> {
    let words = prefs().words;
    let asks: &[What] = match check {
        Check::BasinOnArrival => &[What::BasinLevel],
        Check::RangeWidth => &[What::EnteringWater, What::LeavingWater],
        Check::ApproachToday => &[What::EnteringWater, What::LeavingWater, What::WetBulb],
        _ => return None,
    };
    if untrack(|| mind.stage_of(check)) != Stage::AsFound {
        return None;
    }
    let job = mind.job;
    let fields = asks
        .iter()
        .map(|what| {
            let what = *what;
            let test = format!("check-{what:?}");
            markup! { <ReadingField job what when=When::AsFound test /> }
        })
        .collect_view();
    Some(markup! {
        {fields}
        <p class="sub small">{words.phrase(P::ReadAsFound)} " " {words.phrase(P::OrInWords)} ":"</p>
    })
}

/// At what stage an answer is had, and a way to say it by hand: that water
/// was let in, or that hands were on it, can't be seen from the answers.
fn stages(mind: Mind, check: Check) -> View {
    let words = prefs().words;
    let said = move || words.trace_counts_as(mind.stage_of(check));
    let line = move || words.trace_stage_line(mind.stage_of(check));
    let least = untrack(|| mind.least_stage(check));
    let may = [Stage::AsFound, Stage::WaterLetIn, Stage::Testing]
        .into_iter()
        .filter(|s| *s >= least)
        .map(|stage| {
            choice(
                format!("stage-{stage:?}"),
                words.trace_stage(stage),
                move || mind.stage_of(check) == stage,
                move || mind.say_stage(stage),
            )
        })
        .collect::<Vec<View>>();
    let may = (may.len() > 1).then_some(may);
    markup! {
        <details class="stage">
            <summary data-test="counts-as">{said}</summary>
            <p class="sub small">{line}</p>
            <div class="answers" role="group">{may}</div>
        </details>
    }
}
