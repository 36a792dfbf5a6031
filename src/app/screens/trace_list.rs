//! The other checks: the runners-up, and every check of the plant by place.

use crate::app::parts::icon::{Draw, Icon};
use crate::app::view::prelude::*;

use super::trace_mind::{Known, Mind};
use crate::app::prefs::prefs;
use crate::trace::{Check, Place};
use crate::words::Phrase as P;

/// The runners-up, and the suggested check while another is on the card.
pub fn instead(mind: Mind, seen: &Known) -> View {
    let words = prefs().words;
    let shown = mind.shown().map(|s| s.check);
    let advice = &seen.advice;
    let mut rows = Vec::new();
    for s in advice.best.iter().chain(&advice.runners_up) {
        if Some(s.check) != shown && rows.len() < 3 {
            let place = words.trace_place(s.check.place());
            let effort = words.minutes_at(s.minutes, s.walk_minutes, place);
            rows.push(row(
                mind,
                s.check,
                seen.answer_of(s.check).is_some(),
                effort,
            ));
        }
    }
    if rows.is_empty() {
        return View::default();
    }
    markup! {
        <section data-test="instead">
            <h3>{words.phrase(P::OrInstead)}</h3>
            <ul class="picks">{rows}</ul>
        </section>
    }
}

/// Every check the plant has, folded by place.
pub fn places(mind: Mind) -> View {
    Place::ALL
        .map(|place| one_place(mind, place))
        .collect_view()
}

fn one_place(mind: Mind, place: Place) -> View {
    let words = prefs().words;
    let name = words.trace_place(place);
    let open = RwSignal::new(false);
    let here = move |seen: &Known| {
        let mut here = seen.tracer.checks.clone();
        here.retain(|c| c.place() == place);
        here
    };
    let title = move || {
        let seen = mind.seen.get()?;
        let here = here(&seen);
        let done = here.iter().filter(|c| seen.answer_of(**c).is_some());
        Some(words.trace_place_count(name, done.count(), here.len()))
    };
    let rows = move || {
        let seen = mind.seen.get().filter(|_| open.get())?;
        let mut rows = Vec::new();
        for check in here(&seen) {
            let said = seen.answer_of(check);
            let under = match &said {
                Some(e) => words.trace_answered(e, prefs().system.get()),
                None => format!("{:.0}\u{a0}min", check.minutes()),
            };
            rows.push(row(mind, check, said.is_some(), under));
        }
        Some(rows)
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

fn row(mind: Mind, check: Check, done: bool, under: String) -> View {
    let icon = if done { Icon::Full } else { Icon::Empty };
    markup! {
        <li>
            <button
                type="button"
                data-test=format!("choose-{check:?}")
                on:click=tap(move |_| mind.choose(check))
            >
                <Draw icon />
                <span>{prefs().words.trace_check(check)}</span>
                <span class="sub small">{under}</span>
            </button>
        </li>
    }
}
