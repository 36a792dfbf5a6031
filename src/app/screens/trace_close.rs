//! Closing a trace: the cause, its proof, and what was not proven.

use crate::app::parts::icon::Icon;
use crate::app::view::prelude::*;

use super::trace::noted;
use super::trace_mind::{Known, Mind};
use crate::app::parts::choice::choice;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::Body;
use crate::trace::Mode;
use crate::words::Phrase as P;

/// Less likely suspects are not offered as the cause.
const OFFERED: f64 = 0.1;

/// The section. Nothing is worked out before it is opened.
pub fn closing(mind: Mind) -> View {
    let words = prefs().words;
    let open = mind.closing;
    // One more than the mode's place, or none.
    let picked = RwSignal::new(0usize);
    let body = move || {
        let seen = mind.seen.get().filter(|_| open.get())?;
        shown(mind, &seen, picked)
    };
    markup! {
        <section data-test="closing">
            <h2>{words.phrase(P::CloseTrace)}</h2>
            <p class="sub small">{words.phrase(P::CloseTraceSub)}</p>
            {move || named(mind, &mind.seen.get()?)}
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
fn named(mind: Mind, seen: &Known) -> Option<View> {
    let words = prefs().words;
    let cause = seen.visit.cause.as_ref()?;
    let text = format!(
        "{}. {}",
        words.trace_named(&cause.modes()),
        words.phrase(P::Named)
    );
    Some(markup! {
        <div data-test="cause-named">{noted(Icon::Kept, text)}</div>
        <a class="button" href=Route::Visit(mind.job.id, Station::Left).href() data-test="to-left">
            {words.phrase(P::ToLeft)}
        </a>
    })
}

/// What may be named: what was put right, then what is still likely.
fn offered(seen: &Known) -> Vec<Mode> {
    let mut modes = seen.corrected();
    let suspects = &seen.belief.suspects;
    for s in suspects.iter().filter(|s| s.probability >= OFFERED) {
        if modes.len() < 4 && !modes.contains(&s.mode) {
            modes.push(s.mode);
        }
    }
    if modes.is_empty() {
        modes.extend(suspects.first().map(|s| s.mode));
    }
    modes
}

fn shown(mind: Mind, seen: &Known, picked: RwSignal<usize>) -> Option<View> {
    let words = prefs().words;
    let system = prefs().system.get();
    let offered = offered(seen);
    let is_picked = |m: &&Mode| **m as usize + 1 == picked.get();
    let mode = *offered.iter().find(is_picked).or(offered.first())?;
    let closing = seen.tracer.closing(mode)?;
    let evidence = seen.tracer.case.evidence.clone();
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
                move || mode == m,
                move || picked.set(m as usize + 1),
            )
        })
        .collect_view();
    let manner = closing.cause.manner();
    let standing = seen.visit.cause.as_ref();
    // What else was put right is named with it.
    let mut also = seen.corrected();
    also.retain(|m| *m != mode);
    also.dedup();
    let mut modes = vec![mode];
    modes.extend(&also);
    // What nothing at hand tells apart is one answer.
    let one_of = &seen.advice.one_of;
    let called = match one_of.len() > 1 && one_of.contains(&mode) {
        true => words.trace_either(one_of),
        false => words.trace_named(&modes),
    };
    let is_named = standing.is_some_and(|c| c.modes() == modes);
    // What a person wrote of the work stays.
    let work = standing.map(|c| c.work.clone()).filter(|w| !w.is_empty());
    let work = work.unwrap_or_else(|| words.trace_work(&seen.corrected()));
    let name = move |_| {
        let body = Body::CauseNamed {
            mode,
            manner,
            proof: words.trace_closed(&closing, &evidence, system),
            work: work.clone(),
            also: also.clone(),
        };
        mind.job.write(body);
    };
    Some(markup! {
        <div class="answers" role="group" aria-label=words.phrase(P::CauseMode)>{choices}</div>
        <p>
            <strong>{called}</strong>
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
