//! The suspects: how likely, what speaks for and against each, what would
//! change the mind, and how to put it right.

use crate::app::view::prelude::*;

use super::trace_card::folded;
use super::trace_mind::{Known, Mind};
use crate::app::prefs::prefs;
use crate::trace::{Mode, Strength, Suspect, Weight, cure};
use crate::words::Phrase as P;

/// How many suspects are shown in full.
const SHOWN: usize = 5;

/// How many more are named.
const REST: usize = 6;

/// The list.
pub fn suspects(mind: Mind, seen: &Known) -> View {
    let words = prefs().words;
    let all = &seen.belief.suspects;
    let corrected = seen.corrected();
    let (shown, rest) = all.split_at(SHOWN.min(all.len()));
    let rest: Vec<&str> = rest
        .iter()
        .take(REST)
        .map(|s| words.trace_mode(s.mode))
        .collect();
    let rows = shown
        .iter()
        .map(|s| suspect(mind, s, corrected.contains(&s.mode)))
        .collect_view();
    markup! {
        {rows}
        {(!rest.is_empty())
            .then(|| {
                markup! {
                    <p class="sub small">
                        {format!("{}: {}", words.phrase(P::SoFarCleared), rest.join(", "))}
                    </p>
                }
            })}
    }
}

fn suspect(mind: Mind, s: &Suspect, corrected: bool) -> View {
    let words = prefs().words;
    let mode = s.mode;
    let width = format!("{:.1}%", 100.0 * s.probability);
    let manner = match corrected {
        true => words.phrase(P::WasPutRight).to_owned(),
        false => words.manner_split(s.steady, s.intermittent, mode.can_be_intermittent()),
    };
    markup! {
        <div class="suspect" data-test=format!("suspect-{mode:?}")>
            <span class="name">{words.trace_mode(mode)}</span>
            <span class="odds">{words.percent(s.probability)}</span>
            <span class="gauge" aria-hidden="true">
                <i style:width=width></i>
            </span>
            <span class="under">{manner}</span>
            <div class="under">
                <button
                    type="button"
                    class="plain"
                    data-test=format!("why-{mode:?}")
                    aria-expanded=move || mind.is_open(mode).to_string()
                    on:click=tap(move |_| mind.turn(mode))
                >
                    {words.phrase(P::HowWeKnow)}
                </button>
                {move || mind.seen.get().filter(|_| mind.is_open(mode)).map(|seen| why(mind, &seen, mode))}
            </div>
        </div>
    }
}

/// What speaks for and against a suspect. Asked only when it is opened: each
/// piece of evidence is weighed by leaving it out.
fn why(mind: Mind, seen: &Known, mode: Mode) -> View {
    let words = prefs().words;
    let system = prefs().system.get();
    let weights = seen.tracer.why(mode);
    let evidence = &seen.tracer.case.evidence;
    let loud = weights.iter().filter(|w| w.strength() != Strength::Silent);
    let (fors, against): (Vec<&Weight>, Vec<&Weight>) = loud.partition(|w| w.speaks_for());
    let side = |weights: Vec<&Weight>, name: P| {
        let lines: Vec<View> = weights
            .into_iter()
            .map(|w| {
                let what = words.trace_source(w.source, evidence, system);
                let times = words.trace_weighs(w);
                markup! {
                    <li>{what} <span class="sub small">{times}</span></li>
                }
            })
            .collect();
        (!lines.is_empty()).then(|| {
            markup! {
                <dt>{words.phrase(name)}</dt>
                <dd>
                    <ul class="bullets weighed">{lines}</ul>
                </dd>
            }
        })
    };
    let silent = fors.is_empty() && against.is_empty();
    let turn = seen.tracer.turn(mode).map(|turn| {
        let check = turn.check;
        markup! {
            <dt>{words.phrase(P::WouldChange)}</dt>
            <dd>
                {words.trace_turn(&turn)} " "
                <button
                    type="button"
                    class="plain"
                    data-test=format!("turn-{mode:?}")
                    on:click=tap(move |_| mind.choose(check))
                >
                    {words.trace_check(check)}
                </button>
            </dd>
        }
    });
    let corrected = seen.corrected().contains(&mode);
    markup! {
        <dl class="basis">
            <dd>{words.trace_mode_line(mode)}</dd>
            {side(fors, P::For)}
            {side(against, P::Against)}
            {silent.then(|| markup! { <dd>{words.phrase(P::NothingSpeaks)}</dd> })}
            {turn}
        </dl>
        {(!corrected)
            .then(|| {
                markup! {
                    {put_right(mode)}
                    <button
                        type="button"
                        class="second"
                        data-test=format!("correct-{mode:?}")
                        on:click=tap(move |_| mind.correct(mode))
                    >
                        {words.phrase(P::IPutItRight)}
                    </button>
                }
            })}
    }
}

/// How to put a fault right: minutes, cautions, work, parts, proof.
pub fn put_right(mode: Mode) -> View {
    let words = prefs().words;
    let cure = cure(mode);
    let parts: Vec<&str> = cure.parts.iter().map(|p| words.trace_part(*p)).collect();
    let parts = match parts.is_empty() {
        true => words.phrase(P::PartsNone).to_owned(),
        false => parts.join(", "),
    };
    let effort = words.trace_repair(mode.repair_minutes(), words.trace_place(mode.place()));
    let cautions: Vec<&'static str> = cure
        .cautions
        .iter()
        .map(|c| words.trace_caution(*c))
        .collect();
    markup! {
        <div class="fields check" data-test="cure">
            <div>
                <p class="name">
                    <strong>{format!("{}: {}", words.phrase(P::PutRight), words.trace_mode(mode))}</strong>
                </p>
                <p class="sub small">{effort}</p>
            </div>
            {folded(&cautions)}
            <dl class="basis">
                <dt>{words.phrase(P::HowToCorrect)}</dt>
                <dd>{words.trace_cure(mode)}</dd>
                <dt>{words.phrase(P::PartsFor)}</dt>
                <dd>{parts}</dd>
                <dt>{words.phrase(P::ThenProve)}</dt>
                <dd>{words.trace_cure_proof(mode)}</dd>
            </dl>
        </div>
    }
}
