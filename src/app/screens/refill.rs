//! The refill test: plan, running test, verdict. The test's clock is the wall
//! clock since it was begun, so a locked, reloaded or killed phone changes
//! nothing; every mark is an entry on disk before it shows.

use crate::app::view::prelude::*;
use gloo_timers::callback::Interval;
use uom::si::length::{inch, meter, millimeter};

use super::refill_verdict::VerdictView;
use super::visit_frame::{Job, StationScreen};
use crate::app::ledger::ledger;
use crate::app::parts::chart::ChartView;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::number::Amount;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::quantity::{Length, System, Value, show};
use crate::record::{Body, Site, Test, TestId, Visit, VisitId, refill_setup};
use crate::refill::{
    ExpectedMark, MarkKind, Phase, allowed, cautions, drain_open, expected, judge, phase, plan,
};
use crate::report::refill_chart;
use crate::words::Phrase as P;

/// The station.
#[component]
pub fn Refill(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let test = Memo::new(move |_| job.visit.get().and_then(|v| v.tests.last().cloned()));
    // Which test is up and whether it runs: the parts are drawn anew only
    // when this changes, not at every mark.
    let up = Memo::new(move |_| {
        test.with(|t| {
            t.as_ref()
                .map(|t| (t.id, phase(&t.timed()) != Phase::Stopped))
        })
    });
    let begin = move |_| {
        let Some((visit, site)) = job.both() else {
            return;
        };
        let test: TestId = ledger().id();
        job.write(Body::TestBegun {
            test,
            setup: refill_setup(&site, &visit),
        });
    };
    let next = move || test.with(|t| t.as_ref().and_then(|t| expected(&t.timed())));
    let act = move || match up.get() {
        None => markup! {
            <button class="primary" data-test="begin-test" on:click=tap(begin)>
                {words.phrase(P::BeginTest)}
            </button>
        },
        Some((id, true)) => {
            markup! { <NextMark job test_id=id next=Signal::derive(next) /> }
        }
        Some((_, false)) => markup! {
            <a class="button primary" href=Route::Visit(id, Station::Left).href() data-test="next">
                {words.phrase(P::ToLeft)}
            </a>
            <button data-test="begin-again" on:click=tap(begin)>
                {words.phrase(P::BeginAgain)}
            </button>
        },
    };
    let body = move || match up.get() {
        None => job
            .both()
            .map(|(visit, site)| markup! { <Plan site visit /> }),
        Some((_, true)) => Some(markup! { <Running job test /> }),
        Some((_, false)) => Some(markup! { <Ended test /> }),
    };
    let sub = words.phrase(P::RefillSub);
    markup! {
        <StationScreen job title=P::StationRefill sub name="refill" act>
            {body}
        </StationScreen>
    }
}

/// Before the test: what it will take, and what can hurt.
#[component]
fn Plan(site: Site, visit: Visit) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let setup = refill_setup(&site, &visit);
    let facts = plan(&setup, None).ok().map(|plan| {
        let minutes = plan
            .minutes_without_drain
            .map(|m| words.minutes_if_drain_shut(m));
        markup! {
            <div class="two">
                <div class="number">
                    <span class="label">{words.phrase(P::DrawTo)}</span>
                    <Amount value=Value::level(plan.draw_down_to) />
                    <span class="small sub">{words.refill_basis(plan.basis)}</span>
                </div>
                <div class="number">
                    <span class="label">{words.phrase(P::WaterSpent)}</span>
                    <Amount value=Value::volume(plan.volume_spent) />
                    <span class="small sub">{minutes}</span>
                </div>
                <div class="number">
                    <span class="label">{words.phrase(P::NeedNow)}</span>
                    <Amount value=Value::flow(setup.makeup_need) />
                    <span class="small sub">{words.phrase(P::NeedBasis)}</span>
                </div>
            </div>
        }
    });
    let losses = show(Value::flow(setup.loss_while_testing), system).to_string();
    markup! {
        <section>
            <h2>{words.phrase(P::PlanTitle)}</h2>
            {facts}
            <p class="sub small">{words.losses_while_testing(&losses)}</p>
            <div class="notice caution">
                <Draw icon=Icon::Warning />
                <ul class="bullets">
                    {cautions()
                        .map(|c| markup! { <li>{words.refill_caution(c)}</li> })
                        .collect_view()}
                </ul>
            </div>
        </section>
    }
}

/// A mark made now.
fn mark(job: Job, test: TestId, kind: ExpectedMark, level: Length) {
    let mark = match kind {
        ExpectedMark::Level => MarkKind::Level {
            below_overflow: level,
        },
        ExpectedMark::DrawdownBegan => MarkKind::DrawdownBegan,
        ExpectedMark::DrawdownEnded => MarkKind::DrawdownEnded,
        ExpectedMark::CallSeen => MarkKind::CallSeen,
        ExpectedMark::WaterSeen => MarkKind::WaterSeen,
        ExpectedMark::ShutOff => MarkKind::ShutOff,
        ExpectedMark::Interrupted => MarkKind::Interrupted,
        ExpectedMark::Stopped => MarkKind::Stopped,
    };
    job.write(Body::Marked {
        test,
        mark,
        typed: None,
    });
    buzz();
}

/// A short buzz under the thumb, where the phone has one.
fn buzz() {
    let navigator = crate::app::ports::window().navigator();
    let known = js_sys::Reflect::has(&navigator, &"vibrate".into()).unwrap_or(false);
    if known {
        navigator.vibrate_with_duration(40);
    }
}

/// The next expected mark, in the thumb's reach.
#[component]
fn NextMark(job: Job, test_id: TestId, next: Signal<Option<ExpectedMark>>) -> View {
    let words = prefs().words;
    live(move || {
        next.get().map(|kind| {
            markup! {
                <button
                    class="primary"
                    data-test="next-mark"
                    data-mark=format!("{kind:?}")
                    on:click=tap(move |_| mark(job, test_id, kind, Length::default()))
                >
                    {words.refill_mark(kind)}
                </button>
            }
        })
    })
}

/// The step of the level buttons and where they start.
fn step(system: System) -> Length {
    match system {
        System::Us => Length::new::<inch>(0.25),
        System::Si => Length::new::<millimeter>(5.0),
    }
}

/// The test under way.
#[component]
fn Running(job: Job, test: Memo<Option<Test>>) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let Some(first) = test.get_untracked() else {
        return View::default();
    };
    let (id, begun) = (first.id, first.begun);
    let now = RwSignal::new(ledger().now());
    let tick = StoredValue::new_local(Interval::new(250, move || now.set(ledger().now())));
    on_cleanup(move || tick.dispose());
    super::wake::keep_screen_on();
    let clock = move || words.test_clock(now.get().seconds_since(&begun));
    let marks = Memo::new(move |_| test.get().map(|t| t.timed()).unwrap_or_default());
    let start = job
        .visit
        .with_untracked(|v| v.as_ref().and_then(|v| v.last_level()))
        .unwrap_or(first.setup.stop_level.unwrap_or_default());
    let unit = step(system).get::<meter>();
    let steps = RwSignal::new((start.get::<meter>() / unit).round());
    let level = move || Length::new::<meter>(steps.get() * unit);
    let low = move || {
        let limit = first.setup.low_limit?;
        (level() >= limit && matches!(phase(&marks.get()), Phase::DrawingDown)).then_some(())
    };
    let sentence = move || {
        let marks = marks.get();
        words.refill_phase(phase(&marks), drain_open(&marks))
    };
    let chart = move || {
        let test = test.get()?;
        let outcome = judge(&test.setup, &test.timed());
        let drawn = !test.marks.is_empty();
        drawn.then(|| {
            markup! { <ChartView chart=refill_chart(&test, &outcome, system, words) /> }
        })
    };
    let others = move || {
        let marks = marks.get();
        allowed(&marks)
            .into_iter()
            .filter(|kind| *kind != ExpectedMark::Level)
            .map(|kind| {
                markup! {
                    <button
                        type="button"
                        data-test=format!("mark-{kind:?}")
                        on:click=tap(move |_| mark(job, id, kind, Length::default()))
                    >
                        {words.refill_mark(kind)}
                    </button>
                }
            })
            .collect_view()
    };
    let jump = move || test.get().and_then(|t| t.clock_jump_s());
    markup! {
        <section>
            <div>
                <span class="hidden-visually">{words.phrase(P::TestClock)}</span>
                <p class="clock" role="timer" data-test="clock">{clock}</p>
            </div>
            <p aria-live="polite" data-test="phase">{sentence}</p>
            {move || {
                jump().map(|s| {
                    markup! {
                        <p class="said no" data-test="clock-moved">
                            <Draw icon=Icon::Warning />
                            <span>{words.clock_moved(s)}</span>
                        </p>
                    }
                })
            }}
        </section>
        <section>
            <h3 id="level-label">{words.phrase(P::LevelNow)}</h3>
            <div class="stepper" role="group" aria-labelledby="level-label">
                <button
                    type="button"
                    aria-label=words.phrase(P::Higher)
                    data-test="level-up"
                    on:click=tap(move |_| steps.update(|s| *s -= 1.0))
                >
                    "▲"
                </button>
                <output data-test="level-now">
                    {move || markup! { <Amount value=Value::level(level()) /> }}
                </output>
                <button
                    type="button"
                    aria-label=words.phrase(P::Deeper)
                    data-test="level-down"
                    on:click=tap(move |_| steps.update(|s| *s += 1.0))
                >
                    "▼"
                </button>
            </div>
            <button
                type="button"
                class="second"
                data-test="mark-level"
                on:click=tap(move |_| mark(job, id, ExpectedMark::Level, level()))
            >
                {words.phrase(P::MarkLevel)}
            </button>
            {move || {
                low()
                    .map(|()| {
                        markup! {
                            <div class="notice urgent" role="alert">
                                <Draw icon=Icon::Warning />
                                <p>
                                    <strong>{words.phrase(P::AtLowLimit)}</strong>
                                </p>
                            </div>
                        }
                    })
            }}
        </section>
        <section>{chart}</section>
        <section>
            <h3>{words.phrase(P::OtherMarks)}</h3>
            <div class="answers">{others}</div>
        </section>
        <section>
            <h3>{words.phrase(P::Marks)}</h3>
            <MarkList job test />
            <p class="sub small">{words.phrase(P::GapNote)}</p>
        </section>
    }
}

/// Every mark with its time, newest first, each can be taken back.
#[component]
fn MarkList(job: Job, test: Memo<Option<Test>>) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    live(move || {
        let test = test.get()?;
        if test.marks.is_empty() {
            return Some(markup! { <p class="sub">{words.phrase(P::NoMarksYet)}</p> });
        }
        let rows = test
            .marks
            .iter()
            .rev()
            .map(|m| {
                let entry = m.entry;
                let name = match m.kind {
                    MarkKind::Level { below_overflow } => {
                        show(Value::level(below_overflow), system).to_string()
                    }
                    kind => words.refill_mark_short(kind.name()).to_owned(),
                };
                let at = words.test_clock(m.at.seconds_since(&test.begun));
                markup! {
                    <li data-test="mark">
                        <span title=m.at.clock_seconds()>{at}</span>
                        <span>{name}</span>
                        <button
                            type="button"
                            class="plain"
                            on:click=tap(move |_| ledger().withdraw(job.about(), entry))
                        >
                            {words.phrase(P::TakeBack)}
                        </button>
                    </li>
                }
            })
            .collect_view();
        Some(markup! { <ol class="marks" data-test="marks">{rows}</ol> })
    })
}

/// After the test.
#[component]
fn Ended(test: Memo<Option<Test>>) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    live(move || {
        let test = test.get()?;
        let outcome = judge(&test.setup, &test.timed());
        let chart = refill_chart(&test, &outcome, system, words);
        Some(markup! {
            <VerdictView test=test.clone() outcome system />
            <section>
                <h2>{words.phrase(P::ChartTitle)}</h2>
                <ChartView chart />
            </section>
        })
    })
}
