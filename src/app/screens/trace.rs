//! The trace: what to check next and why, the suspects, and what was
//! answered. Any check may be done in any order.

use crate::app::parts::choice::choice;
use crate::app::view::prelude::*;

use super::visit_frame::{Job, StationScreen};
use crate::app::ledger::ledger;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::{Body, Site, Visit, VisitId, case, plant};
use crate::trace::{
    Advice, Answer, Belief, Check, Evidence, Mode, Place, Reason, Source, Strength, Tracer, Weight,
    cure,
};
use crate::words::Phrase as P;

/// What the trace says now.
#[derive(Clone, PartialEq)]
struct Mind {
    visit: Visit,
    site: Site,
    belief: Belief,
    advice: Advice,
    /// What speaks for and against each suspect that is shown.
    weights: Vec<Vec<Weight>>,
}

/// The station.
#[component]
pub fn Trace(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let at_key = StoredValue::new(format!("at {id}"));
    let kept = at_key.with_value(|key| ledger().text(key));
    let start = Place::ALL
        .into_iter()
        .find(|p| kept.as_deref() == Some(words.trace_place(*p)));
    let at = RwSignal::new(start.unwrap_or(Place::MachineRoom));
    let chosen = RwSignal::new(None::<Check>);
    let mind = Memo::new(move |_| {
        let (visit, site) = job.both()?;
        let tracer = Tracer::new(&plant(&site), &case(&site, &visit));
        let belief = tracer.belief();
        let advice = tracer.advise(at.get());
        let shown: Vec<Mode> = belief.suspects.iter().take(SHOWN).map(|s| s.mode).collect();
        let weights = tracer.why(&shown);
        Some(Mind {
            weights,
            visit,
            site,
            belief,
            advice,
        })
    });
    let go_to = move |place: Place| {
        at.set(place);
        at_key.with_value(|key| ledger().keep_text(key, words.trace_place(place)));
    };
    let settled = move || mind.with(|m| m.as_ref().and_then(|m| m.advice.settled));
    let act = move || {
        let calm = settled().is_none();
        markup! {
            <a
                class="button primary"
                class:calm=calm
                href=Route::Visit(id, Station::Refill).href()
                data-test="next"
            >
                {words.phrase(P::ToRefill)}
            </a>
        }
    };
    let sub = live(move || {
        let top = mind.with(|m| m.as_ref().and_then(|m| m.belief.heading()));
        let begun = mind.with(|m| m.as_ref().is_some_and(|m| m.visit.has_begun()));
        match top {
            Some((branch, p, first)) if begun => words.suspect_summary(branch, p, &first),
            _ => words.phrase(P::TraceSub).to_owned(),
        }
    });
    let current = move || {
        let mind = mind.get()?;
        let suggestion = mind.advice.best;
        let check = chosen.get().or(suggestion.as_ref().map(|s| s.check))?;
        let again = suggestion
            .as_ref()
            .is_some_and(|s| s.check == check && s.why == Reason::TakeAgain);
        let because = suggestion.filter(|s| s.check == check).map(|s| {
            (
                words.trace_reason(s.why),
                words.minutes_at(s.minutes, s.walk_minutes, words.trace_place(check.place())),
            )
        });
        let (why, effort) = because.unzip();
        let effort = effort.unwrap_or_else(|| {
            words.minutes_at(check.minutes(), 0.0, words.trace_place(check.place()))
        });
        let evidence = mind.visit.evidence();
        Some(
            markup! { <CheckCard job check why effort evidence chosen again go_to=Callback::new(go_to) /> },
        )
    };
    markup! {
        <StationScreen job title=P::StationTrace sub name="trace" act>
            <section>
                <h2>{words.phrase(P::CheckNext)}</h2>
                {move || {
                    current().unwrap_or_else(|| {
                        markup! { <p>{words.phrase(P::NothingLeft)}</p> }
                    })
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
                                move || at.get() == place,
                                move || go_to(place),
                            )
                        })
                        .collect_view()}
                </div>
            </section>
            <section data-test="suspects">
                <h2>{words.phrase(P::Suspects)}</h2>
                <div>{move || mind.get().map(|mind| markup! { <Suspects mind /> })}</div>
            </section>
            <section>
                <h2>{words.phrase(P::SoFar)}</h2>
                <div>{move || mind.get().map(|mind| markup! { <Answered job mind chosen /> })}</div>
            </section>
            <section>
                <h2>{words.phrase(P::OtherChecks)}</h2>
                <div>{move || mind.get().map(|mind| markup! { <Others mind chosen /> })}</div>
            </section>
        </StationScreen>
    }
}

/// One check: what to do, where, the caution, what healthy reads, answers.
#[component]
fn CheckCard(
    job: Job,
    check: Check,
    why: Option<String>,
    effort: String,
    evidence: Vec<Evidence>,
    chosen: RwSignal<Option<Check>>,
    again: bool,
    go_to: Callback<Place>,
) -> View {
    let words = prefs().words;
    let stage = check.stage_after(&evidence);
    let answer = move |answer: Answer| {
        let body = Body::CheckAnswered {
            check,
            answer,
            stage,
            value: None,
            again,
        };
        ledger().write_then(job.about(), vec![body], move || {
            chosen.set(None);
            go_to.run(check.place());
            if let Some(top) = document().query_selector("main").ok().flatten() {
                top.scroll_into_view();
            }
        });
    };
    let cautions = check.cautions();
    markup! {
        <div class="fields" data-test="check" data-check=format!("{check:?}")>
            <div>
                <p class="name">
                    <strong data-test="check-title">{words.trace_check(check)}</strong>
                </p>
                <p class="sub small">{effort}</p>
            </div>
            {why.map(|why| markup! { <p data-test="check-why">{why}</p> })}
            {(!cautions.is_empty())
                .then(|| {
                    markup! {
                        <div class="notice caution">
                            <Draw icon=Icon::Warning />
                            <div>
                                {cautions
                                    .iter()
                                    .map(|c| markup! { <p>{words.trace_caution(*c)}</p> })
                                    .collect_view()}
                            </div>
                        </div>
                    }
                })}
            <p>{words.trace_check_how(check)}</p>
            <p class="sub">{format!("{}: {}", words.phrase(P::Healthy), words.trace_check_healthy(check))}</p>
            <div class="answers">
                {check
                    .answers()
                    .iter()
                    .map(|a| {
                        let a = *a;
                        markup! {
                            <button
                                type="button"
                                data-test=format!("answer-{a:?}")
                                on:click=tap(move |_| answer(a))
                            >
                                {words.trace_answer(a)}
                            </button>
                        }
                    })
                    .collect_view()}
                <button
                    type="button"
                    class="faint"
                    data-test="answer-CouldNot"
                    on:click=tap(move |_| answer(Answer::CouldNot))
                >
                    {words.trace_answer(Answer::CouldNot)}
                </button>
            </div>
        </div>
    }
}

/// How many suspects are shown in full.
const SHOWN: usize = 5;

/// How many more are named.
const REST: usize = 6;

#[component]
fn Suspects(mind: Mind) -> View {
    let words = prefs().words;
    let evidence = mind.visit.evidence();
    let (shown, rest) = mind
        .belief
        .suspects
        .split_at(SHOWN.min(mind.belief.suspects.len()));
    let rest: Vec<String> = rest
        .iter()
        .take(REST)
        .map(|s| words.trace_mode(s.mode).to_owned())
        .collect();
    let rows = shown
        .iter()
        .zip(mind.weights)
        .map(|(s, weights)| {
            let width = format!("{:.1}%", 100.0 * s.probability);
            let manner = words.manner_split(s.steady, s.intermittent, s.mode.can_be_intermittent());
            markup! {
                <div class="suspect" data-test=format!("suspect-{:?}", s.mode)>
                    <span class="name">{words.trace_mode(s.mode)}</span>
                    <span class="odds">{words.percent(s.probability)}</span>
                    <span class="gauge" aria-hidden="true">
                        <i style:width=width></i>
                    </span>
                    <span class="under">{manner}</span>
                    <details class="under">
                        <summary>{words.phrase(P::HowWeKnow)}</summary>
                        <Why mode=s.mode weights evidence=evidence.clone() />
                    </details>
                </div>
            }
        })
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

#[component]
fn Why(mode: Mode, weights: Vec<Weight>, evidence: Vec<Evidence>) -> View {
    let words = prefs().words;
    let loud: Vec<Weight> = weights
        .into_iter()
        .filter(|w| w.strength() != Strength::Silent)
        .collect();
    let line = |w: &Weight| {
        let what = match w.source {
            Source::Evidence(n) => evidence.get(n).map_or(String::new(), |e| {
                format!(
                    "{}: {}",
                    words.trace_check(e.check),
                    words.trace_answer(e.answer)
                )
            }),
            Source::Reading(reading) => words.trace_reading(reading).to_owned(),
        };
        markup! { <li>{format!("{} ({})", what, words.trace_strength(w.strength()))}</li> }
    };
    let side = |for_it: bool, name: P| {
        let lines: Vec<_> = loud
            .iter()
            .filter(|w| w.speaks_for() == for_it)
            .map(line)
            .collect();
        (!lines.is_empty()).then(|| {
            markup! {
                <dt>{words.phrase(name)}</dt>
                <dd>
                    <ul class="bullets">{lines}</ul>
                </dd>
            }
        })
    };
    let cure = cure(mode);
    let parts: Vec<&str> = cure.parts.iter().map(|p| words.trace_part(*p)).collect();
    markup! {
        <dl class="basis">
            <dd>{words.trace_mode_line(mode)}</dd>
            {side(true, P::For)}
            {side(false, P::Against)}
            {loud.is_empty().then(|| markup! { <dd>{words.phrase(P::NothingSpeaks)}</dd> })}
            <dt>{words.phrase(P::HowToCorrect)}</dt>
            <dd>{words.trace_cure(mode)}</dd>
            {(!parts.is_empty())
                .then(|| {
                    markup! {
                        <dt>{words.phrase(P::PartsFor)}</dt>
                        <dd>{parts.join(", ")}</dd>
                    }
                })}
            <dt>{words.phrase(P::Proof)}</dt>
            <dd>{words.trace_cure_proof(mode)}</dd>
        </dl>
    }
}

#[component]
fn Answered(job: Job, mind: Mind, chosen: RwSignal<Option<Check>>) -> View {
    let words = prefs().words;
    let odd = mind.belief.contradictions.clone();
    let rows = mind
        .visit
        .answers
        .iter()
        .enumerate()
        .map(|(n, a)| {
            let (entry, check) = (a.entry, a.evidence.check);
            markup! {
                <li>
                    <div class="row">
                        <Draw icon=if odd.contains(&n) { Icon::Warning } else { Icon::Full } />
                        <span>
                            <span class="small sub">{words.trace_check(check)}</span>
                            <br />
                            <span class="name">{words.trace_answer(a.evidence.answer)}</span>
                            {odd
                                .contains(&n)
                                .then(|| {
                                    markup! {
                                        <br />
                                        <span class="state unproven">
                                            {words.phrase(P::Contradiction)}
                                        </span>
                                    }
                                })}
                        </span>
                        <button
                            type="button"
                            data-test=format!("take-back-{check:?}")
                            on:click=tap(move |_| {
                                ledger().withdraw(job.about(), entry);
                                chosen.set(None);
                            })
                        >
                            {words.phrase(P::TakeBack)}
                        </button>
                    </div>
                </li>
            }
        })
        .collect_view();
    markup! { <ul class="rows">{rows}</ul> }
}

#[component]
fn Others(mind: Mind, chosen: RwSignal<Option<Check>>) -> View {
    let words = prefs().words;
    let ranked: Vec<Check> = mind.advice.runners_up.iter().map(|s| s.check).collect();
    let rest = Check::ALL.into_iter().filter(|c| !ranked.contains(c));
    let all: Vec<Check> = ranked.iter().copied().chain(rest).collect();
    let row = move |check: Check| {
        markup! {
            <li>
                <button
                    type="button"
                    class="faint"
                    data-test=format!("choose-{check:?}")
                    on:click=tap(move |_| {
                        chosen.set(Some(check));
                        if let Some(top) = document().query_selector("main").ok().flatten() {
                            top.scroll_into_view();
                        }
                    })
                >
                    {format!("{} · {}", words.trace_check(check), words.trace_place(check.place()))}
                </button>
            </li>
        }
    };
    let (first, more) = all.split_at(ranked.len().min(3));
    markup! {
        <ul class="answers">{first.iter().map(|c| row(*c)).collect_view()}</ul>
        <details>
            <summary data-test="all-checks">{words.phrase(P::AllChecks)}</summary>
            <ul class="answers">{more.iter().map(|c| row(*c)).collect_view()}</ul>
        </details>
    }
}
