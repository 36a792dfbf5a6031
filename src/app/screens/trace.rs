//! The trace: what to check next and why, where the fault can be, the
//! suspects, what was answered, and closing it. Any check may be done in any
//! order.

use crate::app::parts::choice::choice;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::plant_view::plant_view;
use crate::app::view::prelude::*;

use super::trace_card::card;
use super::trace_close::closing;
use super::trace_list::{instead, places};
use super::trace_mind::{Mind, to_top};
use super::trace_so_far::{last_kept, odd_ones, so_far};
use super::trace_suspects::{put_right, suspects};
use super::visit_frame::{Job, StationScreen};
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::VisitId;
use crate::trace::{Mode, Place};
use crate::words::Phrase as P;

/// The station.
#[component]
pub fn Trace(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let mind = Mind::of(job);
    let sub = live(move || {
        let top = mind.belief.with(|b| b.as_ref().and_then(|b| b.heading()));
        let begun = job.visit.with(|v| v.as_ref().is_some_and(|v| v.has_begun()));
        match top {
            Some((branch, p, first)) if begun => words.suspect_summary(branch, p, &first),
            _ => words.phrase(P::TraceSub).to_owned(),
        }
    });
    // Nearly certain and nothing left to prove it by: put it right.
    let ripe = Memo::new(move |_| {
        let advice = mind.advice.get()?;
        let mode = advice.settled.filter(|_| advice.best.is_none())?;
        (!mind.corrected().contains(&mode)).then_some(mode)
    });
    let act = move || action(mind, ripe.get());
    markup! {
        <StationScreen job title=P::StationTrace sub name="trace" act>
            {move || odd_ones(mind)}
            <section>
                <h2>{words.phrase(P::CheckNext)}</h2>
                {move || last_kept(mind)}
                {move || match (mind.shown.get(), ripe.get()) {
                    (Some(shown), _) => card(mind, shown),
                    (None, Some(mode)) => put_right(mind, mode),
                    (None, None) => markup! { <p>{words.phrase(P::NothingLeft)}</p> },
                }}
            </section>
            <section>
                <h3>{words.phrase(P::YouAreAt)}</h3>
                <div class="seg" role="group" aria-label=words.phrase(P::YouAreAt)>
                    {Place::ALL
                        .map(|place| {
                            choice(
                                format!("at-{place:?}"),
                                words.trace_place(place),
                                move || mind.at.get() == place,
                                move || mind.go_to(place),
                            )
                        })
                        .collect_view()}
                </div>
            </section>
            {move || instead(mind)}
            <section>
                <h2>{words.phrase(P::WhereItCanBe)}</h2>
                {move || drawing(mind)}
            </section>
            <section data-test="suspects">
                <h2>{words.phrase(P::Suspects)}</h2>
                <div>{move || suspects(mind)}</div>
            </section>
            <section>
                <h2>{words.phrase(P::SoFar)}</h2>
                <div>{move || so_far(mind)}</div>
            </section>
            <section>
                <h2>{words.phrase(P::ByPlace)}</h2>
                <p class="sub small">{words.phrase(P::AnyOrder)}</p>
                {places(mind)}
            </section>
            {closing(mind)}
        </StationScreen>
    }
}

/// The one thing at the bottom: put it right when nothing is left to prove,
/// else on to the refill test.
fn action(mind: Mind, ripe: Option<Mode>) -> View {
    let words = prefs().words;
    let calm = mind.corrected().is_empty();
    let refill = markup! {
        <a
            class="button primary"
            class:calm=calm
            href=Route::Visit(mind.job.id, Station::Refill).href()
            data-test="next"
        >
            {words.phrase(P::ToRefill)}
        </a>
    };
    match ripe {
        Some(mode) => markup! {
            <button
                type="button"
                class="primary"
                data-test="put-right"
                on:click=tap(move |_| mind.correct(mode))
            >
                {format!("{}: {}", words.phrase(P::IPutItRight), words.trace_mode(mode))}
            </button>
        },
        None => refill,
    }
}

fn drawing(mind: Mind) -> Option<View> {
    let known = mind.known.get()?;
    let belief = mind.belief.get()?;
    let level = known.visit.last_level().map(|below| {
        let depth = known.site.tower.basin.depth;
        1.0 - (below / depth).value
    });
    let plant = known.tracer.plant;
    let corrected = mind.corrected();
    Some(plant_view(&belief, &plant, &corrected, level, prefs().words))
}

/// A small button that names an entry and takes it back.
pub(super) fn take_back(mind: Mind, entry: crate::record::EntryId, test: String) -> View {
    let words = prefs().words;
    markup! {
        <button
            type="button"
            data-test=test
            on:click=tap(move |_| {
                mind.take_back(entry);
                to_top();
            })
        >
            {words.phrase(P::TakeBack)}
        </button>
    }
}

/// A line under an icon.
pub(super) fn noted(icon: Icon, text: String) -> View {
    markup! {
        <p class="said yes">
            <Draw icon />
            <span>{text}</span>
        </p>
    }
}
