//! Work and photos: what was done, parts, time, advice, pictures.

use crate::app::parts::choice::choice;
use crate::app::view::prelude::*;

use super::photos::Photos;
use super::visit_frame::{Job, StationScreen, way_on};
use crate::app::ledger::ledger;
use crate::app::parts::field::{
    QuantityField, TextField, Typing, draft_text, drafted_text, lasting, settle_text,
};
use crate::app::parts::take_back::take_back;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::quantity::{Bounds, Kind, Unit, show};
use crate::record::paperwork::Item;
use crate::record::{Body, VisitId};
use crate::trace::cure;
use crate::words::Phrase as P;

/// A part of the screen: lines of some items, and the fields for another.
#[derive(Clone, Copy)]
struct Part {
    title: P,
    sub: Option<P>,
    items: &'static [(Item, P)],
    line: P,
    amount: Option<(P, Kind)>,
    dated: bool,
    test: &'static str,
}

const PARTS: [Part; 4] = [
    Part {
        title: P::WorkTitle,
        sub: None,
        items: &[(Item::Work, P::WorkTitle)],
        line: P::WorkLine,
        amount: None,
        dated: false,
        test: "work-line",
    },
    Part {
        title: P::PartsTitle,
        sub: None,
        items: &[(Item::Part, P::PartsTitle)],
        line: P::PartLine,
        amount: Some((P::PartCount, Kind::Number)),
        dated: false,
        test: "part",
    },
    Part {
        title: P::AdviceTitle,
        sub: Some(P::AdviceSub),
        items: &[
            (Item::AdviseNow, P::AdviceNow),
            (Item::AdviseSoon, P::AdviceSoon),
            (Item::AdvisePlan, P::AdvicePlan),
            (Item::ComeBack, P::AdviceBack),
        ],
        line: P::AdviceLine,
        amount: None,
        dated: true,
        test: "advice",
    },
    Part {
        title: P::TimeTitle,
        sub: None,
        items: &[(Item::OnSite, P::TimeOnSite), (Item::Travel, P::TimeTravel)],
        line: P::TimeLine,
        amount: Some((P::TimeLong, Kind::Duration)),
        dated: false,
        test: "time",
    },
];

/// The station.
#[component]
pub fn Papers(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let act = way_on(Route::Visit(id, Station::Report), words.phrase(P::ToReport));
    let sub = words.phrase(P::PapersSub);
    let [first, others @ ..] = PARTS;
    markup! {
        <StationScreen job title=P::StationPapers sub name="papers" act>
            <Lines job part=first />
            {soon(
                markup! {
                    {others.iter().map(|part| markup! { <Lines job part=*part /> }).collect_view()}
                    <Photos job />
                }
            )}
        </StationScreen>
    }
}

/// The lines of one part, and the fields for the next.
#[component]
fn Lines(job: Job, part: Part) -> View {
    let words = prefs().words;
    let key = lasting(format!("{} {}", part.test, job.id));
    let item = RwSignal::new(part.items[0].0);
    let text = RwSignal::new(String::new());
    let by_key = lasting(format!("{} by {}", part.test, job.id));
    let by = RwSignal::new(drafted_text(by_key).unwrap_or_default());
    let missing = RwSignal::new(false);
    let typing = part.amount.map(|(_, kind)| {
        let bounds = match kind {
            Kind::Number => Bounds::of(0.001, 9_999.0, Unit::One),
            _ => Bounds::of(1.0, 4_320.0, Unit::Minute),
        };
        let key = format!("{} amount {}", part.test, job.id);
        Typing::new(key, kind, bounds, None)
    });
    let keep = move |_| {
        let said = text.get_untracked().trim().to_owned();
        let amount = typing.and_then(|t| t.typed()).map(|t| t.value);
        // Time is said by its length, all else by its words.
        let timed = part.amount.is_some_and(|(_, kind)| kind == Kind::Duration);
        let wrong = typing.is_some_and(|t| amount.is_none() && (timed || !t.is_empty()));
        if let Some(typing) = typing.filter(|_| wrong) {
            typing.show_refusal();
        }
        let mute = said.is_empty() && !timed;
        missing.set(mute || (wrong && typing.is_some_and(|t| t.is_empty())));
        if wrong || mute {
            return;
        }
        let body = Body::LineWritten {
            item: item.get_untracked(),
            text: said,
            amount,
            by: by.get_untracked(),
        };
        ledger().write_then(job.about(), vec![body], move || {
            settle_text(key);
            settle_text(by_key);
            text.set(String::new());
            by.set(String::new());
            if let Some(typing) = typing {
                typing.settled();
                typing.text.set(String::new());
            }
        });
    };
    let lines = move || {
        let visit = job.visit.get()?;
        let system = prefs().system.get();
        let mine = visit.paper.lines.into_iter();
        let mine = mine.filter(|l| part.items.iter().any(|(item, _)| *item == l.item));
        let rows = mine.map(|line| {
            let name = part.items.iter().find(|(item, _)| *item == line.item);
            let name = name.filter(|_| part.items.len() > 1);
            let name = name.map_or(String::new(), |(_, name)| words.phrase(*name).to_owned());
            let amount = line.amount.map(|value| match value.kind {
                Kind::Number => format!("{} ×", value.si),
                _ => show(value, system).to_string(),
            });
            let head = [name, line.by, amount.unwrap_or_default()];
            let head: Vec<String> = head.into_iter().filter(|s| !s.is_empty()).collect();
            markup! {
                <li data-test=format!("{}-kept", part.test)>
                    <div class="kept">
                        <p>
                            <strong>{head.join(" · ")}</strong>
                            "\u{a0}"
                            {line.text}
                        </p>
                        {take_back(job.about(), line.entry)}
                    </div>
                </li>
            }
        });
        Some(markup! { <ul class="rows">{rows.collect_view()}</ul> })
    };
    // The parts that the named cause usually takes, one tap each.
    let usual = move || {
        let cause = job.visit.with(|v| v.as_ref()?.cause.clone())?;
        let offers = cure(cause.mode).parts.iter().map(|part| {
            let name = words.trace_part(*part);
            markup! {
                <button type="button" on:click=tap(move |_| {
                    draft_text(key, name);
                    text.set(name.to_owned());
                })>
                    {name}
                </button>
            }
        });
        Some(markup! { <div class="offers">{offers.collect_view()}</div> })
    };
    let refusal = Signal::derive(move || {
        missing
            .get()
            .then(|| words.phrase(P::LineNeeded).to_owned())
    });
    let label = words.phrase(part.line);
    // A part is named before it is counted; time is long before it is for something.
    let is_part = part.test == "part";
    let mut amount = part.amount.zip(typing).map(|((name, _), typing)| {
        markup! {
            <QuantityField
                typing
                label=words.phrase(name)
                test=format!("{}-amount", part.test)
            />
        }
    });
    let before = if is_part { None } else { amount.take() };
    markup! {
        <section>
            <h2>{words.phrase(part.title)}</h2>
            {part.sub.map(|sub| markup! { <p class="sub small">{words.phrase(sub)}</p> })}
            {lines}
            {(part.items.len() > 1)
                .then(|| {
                    markup! {
                        <div class="seg" role="group" aria-label=words.phrase(part.title)>
                            {part
                                .items
                                .iter()
                                .map(|(which, name)| {
                                    choice(
                                        format!("{}-{which:?}", part.test),
                                        words.phrase(*name),
                                        move || item.get() == *which,
                                        move || item.set(*which),
                                    )
                                })
                                .collect_view()}
                        </div>
                    }
                })}
            {before}
            <TextField key=key.to_owned() text label refusal test=part.test />
            {is_part.then_some(usual)}
            {amount}
            {part
                .dated
                .then(|| {
                    markup! {
                        <div class="field">
                            <label for="f-by">{words.phrase(P::AdviceBy)}</label>
                            <input
                                id="f-by"
                                data-test="advice-by"
                                type="date"
                                prop:value=move || by.get()
                                on:input=move |ev| {
                                    let day = event_target_value(&ev);
                                    draft_text(by_key, &day);
                                    by.set(day);
                                }
                            />
                        </div>
                    }
                })}
            <button type="button" data-test=format!("keep-{}", part.test) on:click=tap(keep)>
                {words.phrase(P::KeepLine)}
            </button>
        </section>
    }
}
