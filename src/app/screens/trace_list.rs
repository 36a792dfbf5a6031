//! The other checks: the runners-up, and every check of the plant by place.

use crate::app::parts::icon::{Draw, Icon};
use crate::app::view::prelude::*;

use super::trace_mind::Mind;
use crate::app::prefs::prefs;
use crate::trace::{Check, Place};
use crate::words::Phrase as P;

/// The runners-up.
pub fn instead(mind: Mind) -> Option<View> {
    let words = prefs().words;
    let shown = mind.shown.get().map(|s| s.check);
    let rows: Vec<View> = mind
        .advice
        .get()?
        .best
        .into_iter()
        .chain(mind.advice.get()?.runners_up)
        .filter(|s| Some(s.check) != shown)
        .take(3)
        .map(|s| {
            let place = words.trace_place(s.check.place());
            row(mind, s.check, words.minutes_at(s.minutes, s.walk_minutes, place))
        })
        .collect();
    (!rows.is_empty()).then(|| {
        markup! {
            <section data-test="instead">
                <h3>{words.phrase(P::OrInstead)}</h3>
                <ul class="picks">{rows}</ul>
            </section>
        }
    })
}

/// Every check the plant has, folded by place.
pub fn places(mind: Mind) -> View {
    Place::ALL.map(|place| one_place(mind, place)).collect_view()
}

fn one_place(mind: Mind, place: Place) -> View {
    let words = prefs().words;
    let open = RwSignal::new(false);
    let checks = move || {
        let known = mind.known.get();
        let all = known.map_or(Vec::new(), |k| k.tracer.checks.clone());
        all.into_iter().filter(move |c| c.place() == place)
    };
    let done = move |check: Check| {
        mind.job.visit.with(|v| {
            let answers = &v.as_ref()?.answers;
            let last = answers.iter().rev().find(|a| a.evidence.check == check)?;
            Some(last.evidence)
        })
    };
    let title = move || {
        let all = checks().count();
        let said = checks().filter(|c| done(*c).is_some()).count();
        words.trace_place_count(words.trace_place(place), said, all)
    };
    let rows = move || {
        open.get().then(|| {
            checks()
                .map(|check| {
                    let said = done(check);
                    let under = match said {
                        Some(e) => words.trace_answered(&e, prefs().system.get()),
                        None => words.minutes_at(check.minutes(), 0.0, words.trace_place(place)),
                    };
                    row(mind, check, under)
                })
                .collect_view()
        })
    };
    markup! {
        <details
            data-test=format!("checks-{place:?}")
            on:toggle=tap(move |_| open.update(|o| *o = !*o))
        >
            <summary>{title}</summary>
            <ul class="picks">{rows}</ul>
        </details>
    }
}

fn row(mind: Mind, check: Check, under: String) -> View {
    let words = prefs().words;
    let done = mind.job.visit.with(|v| {
        v.as_ref()
            .is_some_and(|v| v.answers.iter().any(|a| a.evidence.check == check))
    });
    let icon = if done { Icon::Full } else { Icon::Empty };
    markup! {
        <li>
            <button
                type="button"
                data-test=format!("choose-{check:?}")
                on:click=tap(move |_| mind.choose(check))
            >
                <Draw icon />
                <span>{words.trace_check(check)}</span>
                <span class="sub small">{under}</span>
            </button>
        </li>
    }
}
