//! Closing a trace: the cause, its proof, and what was not proven.

use crate::app::parts::icon::Icon;
use crate::app::view::prelude::*;

use super::trace::noted;
use super::trace_mind::{Known, Mind};
use crate::app::parts::choice::choice;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::Body;
use crate::trace::{Mode, Suspect};
use crate::words::Phrase as P;

/// Less likely suspects are not offered as the cause.
const OFFERED: f64 = 0.1;

/// The section. Nothing is worked out before it is opened.
pub fn closing(mind: Mind) -> View {
    let words = prefs().words;
    let open = RwSignal::new(false);
    let picked = RwSignal::new(None::<Mode>);
    let body = move || {
        open.get()
            .then(|| mind.known.get().map(|known| shown(mind, &known, picked)))
    };
    markup! {
        <section data-test="closing">
            <h2>{words.phrase(P::CloseTrace)}</h2>
            <p class="sub small">{words.phrase(P::CloseTraceSub)}</p>
            {move || named(mind)}
            <button
                type="button"
                class="second"
                data-test="show-closing"
                hidden=move || open.get()
                on:click=tap(move |_| open.set(true))
            >
                {words.phrase(P::ShowClosing)}
            </button>
            {body}
        </section>
    }
}

/// The cause as it stands in the log.
fn named(mind: Mind) -> Option<View> {
    let words = prefs().words;
    let cause = mind.job.visit.with(|v| v.as_ref()?.cause.clone())?;
    let text = format!("{}. {}", words.trace_mode(cause.mode), words.phrase(P::Named));
    Some(markup! {
        <div data-test="cause-named">{noted(Icon::Kept, text)}</div>
        <a class="button" href=Route::Visit(mind.job.id, Station::Left).href() data-test="to-left">
            {words.phrase(P::ToLeft)}
        </a>
    })
}

/// What may be named: what was put right, then what is still likely.
fn offered(mind: Mind, known: &Known) -> Vec<Mode> {
    let mut modes = mind.corrected();
    let belief = mind.belief.get().unwrap_or_else(|| known.tracer.belief());
    let likely = |s: &&Suspect| s.probability >= OFFERED && !modes.contains(&s.mode);
    let likely: Vec<Mode> = belief.suspects.iter().filter(likely).map(|s| s.mode).collect();
    let room = 4usize.saturating_sub(modes.len());
    modes.extend(likely.into_iter().take(room));
    modes.dedup();
    if modes.is_empty() {
        modes.extend(belief.suspects.first().map(|s| s.mode));
    }
    modes
}

fn shown(mind: Mind, known: &Known, picked: RwSignal<Option<Mode>>) -> Option<View> {
    let words = prefs().words;
    let system = prefs().system.get();
    let offered = offered(mind, known);
    let mode = picked
        .get()
        .filter(|m| offered.contains(m))
        .or(offered.first().copied())?;
    let closing = known.tracer.closing(mode)?;
    let evidence = known.tracer.case.evidence.clone();
    let list = |lines: Vec<String>, none: P| {
        let lines = match lines.is_empty() {
            true => vec![words.phrase(none).to_owned()],
            false => lines,
        };
        let lines = lines.into_iter().map(|l| markup! { <li>{l}</li> });
        markup! { <ul class="bullets">{lines.collect_view()}</ul> }
    };
    let proof = closing.proof.iter();
    let proof = proof.map(|s| words.trace_source(*s, &evidence, system));
    let proof = list(proof.collect(), P::NothingProves);
    let open = closing.unproven.iter();
    let open = open.map(|u| words.trace_open(u, &evidence, system));
    let open = list(open.collect(), P::NothingOpen);
    let choices = offered
        .iter()
        .map(|m| {
            let m = *m;
            choice(
                format!("close-{m:?}"),
                words.trace_mode(m),
                move || picked.get().unwrap_or(mode) == m,
                move || picked.set(Some(m)),
            )
        })
        .collect_view();
    let manner = closing.cause.manner();
    let name = move |_| {
        let standing = mind.job.visit.with_untracked(|v| v.as_ref()?.cause.clone());
        let work = standing.map(|c| c.work).filter(|w| !w.is_empty());
        let body = Body::CauseNamed {
            mode,
            manner,
            proof: words.trace_closed(&closing, &evidence, system),
            work: work.unwrap_or_else(|| untrack(|| words.trace_work(&mind.corrected()))),
        };
        mind.job.write(body);
    };
    let is_named = move || {
        let cause = mind.job.visit.with(|v| v.as_ref()?.cause.clone());
        cause.is_some_and(|c| c.mode == mode)
    };
    Some(markup! {
        <div class="answers" role="group" aria-label=words.phrase(P::CauseMode)>{choices}</div>
        <p>
            <strong>{words.trace_mode(mode)}</strong>
            {format!(", {}", words.trace_manner(manner))}
        </p>
        <dl class="basis" data-test="closing-says">
            <dt>{words.phrase(P::Proof)}</dt>
            <dd>{proof}</dd>
            <dt>{words.phrase(P::NotProvenTitle)}</dt>
            <dd>{open}</dd>
        </dl>
        <button
            type="button"
            class="second"
            data-test="name-cause"
            hidden=is_named
            on:click=tap(name)
        >
            {words.phrase(P::NameIt)}
        </button>
    })
}
