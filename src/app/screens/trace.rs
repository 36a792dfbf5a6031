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
use super::trace_mind::{Known, Mind, to_top};
use super::trace_so_far::{last_kept, odd_ones, so_far};
use super::trace_suspects::{put_right, suspects};
use super::visit_frame::{Job, StationScreen};
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::VisitId;
use crate::trace::{Check, Mode, Place, Suspect};
use crate::words::Phrase as P;

/// The station.
#[component]
pub fn Trace(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let mind = Mind::of(job);
    let sub = live(move || {
        let known = mind.known.get();
        let Some(known) = known.filter(|k| k.visit.has_begun()) else {
            return words.phrase(P::TraceSub).to_owned();
        };
        match (known.corrected(), known.belief.heading()) {
            (corrected, _) if !corrected.is_empty() => {
                words.trace_remains(&corrected, known.belief.suspects.first())
            }
            (_, Some((branch, p, first))) => words.suspect_summary(branch, p, &first),
            (_, None) => words.phrase(P::TraceSub).to_owned(),
        }
    });
    let act = live(move || mind.known.get().map(|known| action(mind, &known)));
    // All that stands below the card comes at once, when the card is painted.
    let below = Memo::new(move |_| mind.seen.with(Option::is_some));
    markup! {
        <StationScreen job title=P::StationTrace sub name="trace" act>
            <div class="col">
                {move || mind.known.get().map(|known| odd_ones(mind, &known))}
                <section>
                    <h2>{words.phrase(P::CheckNext)}</h2>
                    {move || mind.known.get().map(|known| last_kept(mind, &known))}
                    {move || mind.known.get().map(|known| next(mind, &known))}
                    {move || {
                        mind.follow();
                        View::default()
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
                {move || mind.seen.get().map(|seen| instead(mind, &seen))}
            </div>
            {move || {
                below
                    .get()
                    .then(|| {
                        markup! {
                        <div class="col">
                            <section>
                                <h2>{words.phrase(P::WhereItCanBe)}</h2>
                                {move || mind.seen.get().map(|seen| drawing(&seen))}
                            </section>
                            <section data-test="suspects">
                                <h2>{words.phrase(P::Suspects)}</h2>
                                <div>{move || mind.seen.get().map(|seen| suspects(mind, &seen))}</div>
                            </section>
                            <section>
                                <h2>{words.phrase(P::SoFar)}</h2>
                                <div>{move || mind.seen.get().map(|seen| so_far(mind, &seen))}</div>
                            </section>
                            <section>
                                <h2>{words.phrase(P::ByPlace)}</h2>
                                <p class="sub small">{words.phrase(P::AnyOrder)}</p>
                                {places(mind)}
                            </section>
                            {closing(mind)}
                        </div>
                        }
                    })
            }}
        </StationScreen>
    }
}

/// The card of the next check, or what to put right, or that it is done.
fn next(mind: Mind, known: &Known) -> View {
    let words = prefs().words;
    let said = |phrase| markup! { <p>{words.phrase(phrase)}</p> };
    let free = mind.chosen.get().is_none();
    match (mind.shown(), known.ripe()) {
        (_, Some(mode)) if free => markup! {
            {one_of(known)}
            {put_right(mode)}
        },
        _ if free && known.closes() => done(known),
        (Some(shown), _) => card(mind, shown),
        _ => said(P::NothingLeft),
    }
}

/// What may be the cause where nothing left would tell more.
fn one_of(known: &Known) -> Option<View> {
    let of = |m: &Mode| known.belief.of(*m).copied();
    let suspects: Vec<Suspect> = known.advice.one_of.iter().filter_map(of).collect();
    (!suspects.is_empty()).then(|| {
        markup! { <p data-test="one-of">{prefs().words.trace_one_of(&suspects)}</p> }
    })
}

/// Said when what was put right is proven, or can be by no refill.
fn done(known: &Known) -> View {
    let words = prefs().words;
    let modes = known.corrected();
    let proofs = modes.iter().map(|m| {
        let text = format!("{}: {}", words.trace_mode(*m), words.trace_cure_proof(*m));
        markup! { <dd>{text}</dd> }
    });
    markup! {
        <p>{words.phrase(P::NothingLeftClose)}</p>
        <dl class="basis">
            <dt>{words.phrase(P::ThenProve)}</dt>
            {proofs.collect_view()}
        </dl>
    }
}

/// The one thing at the bottom: put it right when nothing is left to prove,
/// close the trace when what was put right is proven, else the refill test.
fn action(mind: Mind, known: &Known) -> View {
    let words = prefs().words;
    let refill = mind.shown().is_some_and(|s| s.check == Check::RefillTest);
    let button = |text: String, test: &'static str, mode: Option<Mode>| {
        let act = move |_| match mode {
            Some(mode) => mind.correct(mode),
            None => mind.close(),
        };
        markup! {
            <button type="button" class="primary" data-test=test on:click=tap(act)>
                {text}
            </button>
        }
    };
    match known.ripe() {
        Some(mode) => {
            let name = words.trace_mode(mode);
            let text = format!("{}: {name}", words.phrase(P::IPutItRight));
            button(text, "put-right", Some(mode))
        }
        None if known.closes() => {
            button(words.phrase(P::CloseTrace).to_owned(), "to-closing", None)
        }
        None => markup! {
            <a
                class="button primary"
                class:calm=!refill
                href=Route::Visit(mind.job.id, Station::Refill).href()
                data-test="next"
            >
                {words.phrase(P::ToRefill)}
            </a>
        },
    }
}

fn drawing(seen: &Known) -> View {
    let basin = seen.site.tower.basin;
    let level = seen.visit.last_level().zip(basin);
    let level = level.map(|(below, basin)| 1.0 - (below / basin.depth).value);
    let plant = &seen.tracer.plant;
    plant_view(&seen.belief, plant, &seen.corrected(), level, prefs().words)
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
