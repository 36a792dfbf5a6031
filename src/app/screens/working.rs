//! Workings: the list, and one calculation on its own. The face draws any of
//! them from what it asks for and answers.

use crate::app::ledger::ledger;
use crate::app::parts::choice::choice;
use crate::app::parts::field::{QuantityField, Typing};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::number::Number;
use crate::app::parts::picture::picture;
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::app::view::prelude::*;
use crate::physics::basis::Figure;
use crate::quantity::{Unit, Value, show};
use crate::record::{KnownInput, VisitId, known_input};
use crate::words::Phrase as P;
use crate::working::{Answer, Ask, Choice, Given, Say, Saying, Tone, Working};

/// The list.
#[component]
pub fn Workings(visit: Option<VisitId>) -> View {
    let words = prefs().words;
    let title = words.phrase(P::Workings);
    let sub = match visit {
        Some(_) => P::WorkingsOfVisit,
        None => P::WorkingsSub,
    };
    let sub = words.phrase(sub);
    let back = match visit {
        Some(id) => (
            Route::Visit(id, Station::Numbers),
            words.phrase(P::StationNumbers),
        ),
        None => (Route::Home, words.phrase(P::Home)),
    };
    let rows = Working::ALL
        .map(|working| {
            let (name, question) = words.working(working);
            markup! {
                <li>
                    <a
                        href=Route::Working(visit, working).href()
                        data-test=format!("working-{}", working.slug())
                    >
                        <Draw icon=Icon::Equals />
                        <span class="name">{name}</span>
                        <span class="under">{question}</span>
                    </a>
                </li>
            }
        })
        .collect_view();
    markup! {
        <Screen title sub name="workings" back=(back.0, back.1.to_owned())>
            <ul class="rows">{rows}</ul>
        </Screen>
    }
}

/// An input being answered.
#[derive(Clone, Copy)]
enum Input {
    Number(Ask, Typing),
    Place(Ask, RwSignal<usize>),
}

/// What stands in a field before anything is typed, and why.
struct Start {
    text: String,
    unit: Unit,
    why: Option<P>,
}

/// A working.
#[component]
pub fn WorkingScreen(visit: Option<VisitId>, working: Working) -> View {
    let words = prefs().words;
    let known = visit.and_then(|id| {
        let visit = ledger().visit(id).get_untracked()?;
        let site = ledger().site(visit.site).get_untracked()?;
        Some((visit, site))
    });
    let knows = move |ask| {
        let (visit, site) = known.as_ref()?;
        known_input(site, visit, ask)
    };
    let key = move |ask: Ask| match visit {
        Some(id) => format!("{id} {ask:?}"),
        None => format!("{} {ask:?}", working.slug()),
    };
    let start = |ask: Ask, kind| match (knows(ask), ask.preset()) {
        (Some(KnownInput::Typed(text, unit)), _) => Start {
            text,
            unit,
            why: Some(P::FromVisit),
        },
        (Some(KnownInput::Value(value)), _) => {
            let (text, unit) = ask.typed(prefs().system.get_untracked(), value);
            Start {
                text,
                unit,
                why: Some(P::FromVisit),
            }
        }
        (_, Some(si)) => {
            let (text, unit) = ask.typed(prefs().system.get_untracked(), Value { kind, si });
            Start {
                text,
                unit,
                why: Some(P::Assumed),
            }
        }
        _ => Start {
            text: String::new(),
            unit: ask.unit(prefs().system.get_untracked(), kind),
            why: None,
        },
    };
    let mut inputs = Vec::new();
    let mut resets: Vec<Box<dyn Fn()>> = Vec::new();
    let mut fields: Vec<(Ask, View)> = Vec::new();
    for &ask in working.asks() {
        match ask.answer() {
            Answer::Number(kind, bounds) => {
                let Start { text, unit, why } = start(ask, kind);
                let typing = Typing::new(key(ask), kind, bounds, Some((text.clone(), unit)));
                inputs.push(Input::Number(ask, typing));
                let first = text.clone();
                resets.push(Box::new(move || typing.stand_at(first.clone(), unit)));
                let kept = Signal::derive(move || {
                    let untouched = typing.text.with(|t| *t == text && !t.is_empty());
                    why.filter(|_| untouched)
                        .map(|w| words.phrase(w).to_owned())
                });
                fields.push((
                    ask,
                    markup! {
                        <QuantityField typing label=words.ask(ask) hint=words.ask_hint(ask) kept
                            assumed=why == Some(P::Assumed) test=format!("{ask:?}") />
                    },
                ));
            }
            Answer::Choice(of) => {
                let first = match knows(ask) {
                    Some(KnownInput::Place(place)) => place,
                    _ => ask.preset().map_or(0, |si| si as usize),
                };
                let kept = ledger().text(&key(ask)).and_then(|t| t.parse().ok());
                let place = RwSignal::new(kept.unwrap_or(first).min(of.len() - 1));
                inputs.push(Input::Place(ask, place));
                let at = key(ask);
                resets.push(Box::new(move || {
                    ledger().keep_text(&at, "");
                    place.set(first);
                }));
                fields.push((ask, chooser(ask, of, place, key(ask))));
            }
        }
    }
    let given = Memo::new(move |_| {
        let mut given = Given::default();
        for input in &inputs {
            match input {
                Input::Number(ask, typing) => {
                    if let Some(typed) = typing.typed() {
                        given.set(*ask, typed.value.si);
                    }
                }
                Input::Place(ask, place) => given.set(*ask, place.get() as f64),
            }
        }
        given
    });
    let answers = move || {
        let given = given.get();
        let system = prefs().system.get();
        // What can't be answered yet is named once for all that lack the same.
        let mut lacking: Vec<(String, Figure, String)> = Vec::new();
        let mut numbers = Vec::new();
        for (figure, value) in working.solve(&given) {
            let name = words.figure(figure);
            match value {
                Ok(value) => numbers.push(markup! {
                    <Number label=name value=Ok(value) note=None
                        basis=(words.formula(figure), words.source(figure))
                        test=format!("a-{figure:?}") />
                }),
                Err(fault) => {
                    let why = words.working_fault(&fault, system);
                    match lacking.iter_mut().find(|(said, ..)| *said == why) {
                        Some((_, _, names)) => *names = format!("{names} · {name}"),
                        None => lacking.push((why, figure, name.to_owned())),
                    }
                }
            }
        }
        let lacking = lacking
            .into_iter()
            .map(|(why, first, names)| {
                markup! {
                    <div class="number" data-test=format!("a-{first:?}")>
                        <span class="label">{names}</span>
                        <span class="value none">{why}</span>
                    </div>
                }
            })
            .collect_view();
        let drawn = working.picture(&given).map(|p| picture(&p, words, system));
        let said = findings(working.sayings(&given));
        markup! { {drawn}{said}{numbers}{lacking} }
    };
    // Before the fields: a caution is read before the step.
    let careful = Memo::new(move |_| given.with(|given| working.cautions(given)));
    let cautions = move || cautions(careful.get());
    // A field that does not matter now is out of sight, with what it holds.
    let fields = fields
        .into_iter()
        .map(|(ask, field)| {
            let matters = Memo::new(move |_| given.with(|given| working.shows(given, ask)));
            markup! { <div hidden=move || !matters.get()>{field}</div> }
        })
        .collect_view();
    let (name, question) = words.working(working);
    let title = name;
    let sub = question;
    let back = (Route::Workings(visit), words.phrase(P::Workings).to_owned());
    let resets = StoredValue::new(resets);
    let clear = move |_| resets.with_value(|all| all.iter().for_each(|reset| reset()));
    markup! {
        <Screen title sub name="working" back>
            <div class="desk">
                <section class="fields">
                    {cautions}
                    {fields}
                    <button class="plain" data-test="clear-working" on:click=tap(clear)>
                        {words.phrase(P::BackToKnown)}
                    </button>
                </section>
                <section data-test="answers" aria-live="off">
                    <h2>{words.phrase(P::Answers)}</h2>
                    {answers}
                </section>
            </div>
        </Screen>
    }
}

/// Cautions, together under one sign.
fn cautions(all: Vec<Say>) -> Option<View> {
    let words = prefs().words;
    (!all.is_empty()).then(|| {
        let lines = all
            .into_iter()
            .map(|say| markup! { <p>{words.say(say).0}</p> })
            .collect_view();
        markup! { <div class="notice caution"><Draw icon=Icon::Warning /><div>{lines}</div></div> }
    })
}

/// What is found, in words.
fn findings(all: Vec<Saying>) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let rows = all
        .into_iter()
        .map(|Saying { tone, say, value }| {
            let (name, more) = words.say(say);
            let icon = match tone {
                Tone::Finding => Icon::Warning,
                Tone::Fits => Icon::Full,
                Tone::Plain => Icon::Empty,
            };
            let value = value.map(|v| show(v, system).to_string());
            markup! {
                <li>
                    <div class="row">
                        <Draw icon />
                        <span class="name">{name}</span>
                        <span class="tail">{value}</span>
                        <span class="under">{more}</span>
                    </div>
                </li>
            }
        })
        .collect_view();
    markup! { <ul class="rows" data-test="sayings">{rows}</ul> }
}

/// A choice of a few: buttons for two or three, a list for more.
fn chooser(ask: Ask, of: Choice, place: RwSignal<usize>, key: String) -> View {
    let words = prefs().words;
    let key = StoredValue::new(key);
    let choose = move |at: usize| {
        key.with_value(|key| ledger().keep_text(key, &at.to_string()));
        place.set(at);
    };
    let name = words.ask(ask);
    let id = format!("f-{ask:?}");
    if of.len() <= 3 {
        let buttons = (0..of.len())
            .map(|at| {
                choice(
                    format!("{ask:?}-{at}"),
                    words.option(of, at),
                    move || place.get() == at,
                    move || choose(at),
                )
            })
            .collect_view();
        return markup! {
            <div class="field">
                <span class="label" id=id.clone()>{name}</span>
                <div class="seg" role="group" aria-labelledby=id>{buttons}</div>
            </div>
        };
    }
    let options = (0..of.len())
        .map(|at| {
            markup! {
                <option value=at.to_string() selected=move || place.get() == at>
                    {words.option(of, at)}
                </option>
            }
        })
        .collect_view();
    let changed = move |ev| choose(event_target_value(&ev).parse().unwrap_or(0));
    markup! {
        <div class="field">
            <label for=id.clone()>{name}</label>
            <select id=id data-test=format!("{ask:?}") on:change=changed>{options}</select>
        </div>
    }
}
