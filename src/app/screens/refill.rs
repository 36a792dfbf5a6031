//! The refill test: plan, running test, verdict. The test's clock is the wall
//! clock since it was begun, so a locked, reloaded or killed phone changes
//! nothing; every mark is an entry on disk before it shows.

use crate::app::view::prelude::*;
use leptos::task::spawn_local;

use super::refill_level::LevelEntry;
use super::refill_marks::{MarkList, mark, plain};
use super::refill_plan::{Plan, ValveTyped};
use super::refill_recovery::LoopRecovery;
use super::refill_replay::Earlier;
use super::refill_verdict::{FiguresView, VerdictView};
use super::refill_watch::watch;
use super::visit_frame::{Job, StationScreen};
use crate::app::ledger::ledger;
use crate::app::parts::chart::ChartView;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::{Body, Test, TestId, VisitId, earlier_tests};
use crate::refill::{ExpectedMark, Phase, allowed, drain_open, expected, judge, phase};
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
    let valve = ValveTyped::of(job);
    let begin = move |_| {
        if let Some(setup) = untrack(|| valve.setup(job)) {
            let test: TestId = ledger().id();
            job.write(Body::TestBegun { test, setup });
        }
    };
    let next = move || test.with(|t| t.as_ref().and_then(|t| expected(&t.timed())));
    // Without the basin's shape a level says nothing of flow.
    let basin = job.site.with_untracked(|s| {
        let known = s.as_ref().and_then(|s| s.tower.basin);
        known.is_some()
    });
    let act = move || match up.get() {
        None if !basin => super::visit_frame::to_basin(job),
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
    // Earlier tests come here after the screen stands.
    let site = job.visit.with_untracked(|v| v.as_ref().map(|v| v.site));
    if let Some(site) = site {
        spawn_local(ledger().bring_past(site));
    }
    let kept = Memo::new(move |_| {
        let log = ledger().log();
        site.map_or(0, |site| log.with(|log| earlier_tests(log, site).len()))
    });
    let earlier = move || {
        kept.track();
        markup! { <Earlier job /> }
    };
    let body = move || match up.get() {
        None => markup! {
            <Plan job valve />
            <LoopRecovery job />
            {earlier}
        },
        Some((_, true)) => markup! { <Running job test /> },
        Some((_, false)) => markup! {
            <Ended test />
            {soon(
                markup! {
                    <Measured test />
                    <section>
                        <details>
                            <summary>{words.phrase(P::Marks)}</summary>
                            <MarkList job test />
                        </details>
                    </section>
                    <LoopRecovery job />
                    {earlier}
                },
            )}
        },
    };
    let sub = words.phrase(P::RefillSub);
    markup! {
        <StationScreen job title=P::StationRefill sub name="refill" act>
            {body}
        </StationScreen>
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
                    on:click=tap(move |_| mark(job, test_id, plain(kind), None))
                >
                    {words.refill_mark(kind)}
                </button>
            }
        })
    })
}

/// The test under way.
#[component]
fn Running(job: Job, test: Memo<Option<Test>>) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let Some(first) = test.get_untracked() else {
        return View::default();
    };
    let id = first.id;
    let now = RwSignal::new(ledger().now());
    watch(job, id, now);
    super::wake::keep_screen_on();
    super::beep::prepare();
    let clock = move || {
        let now = now.get();
        test.with(|t| t.as_ref().map(|t| words.test_clock(t.clock_s(&now))))
    };
    let marks = Memo::new(move |_| {
        test.with(|t| t.as_ref().map(Test::timed))
            .unwrap_or_default()
    });
    let sentence = move || {
        let marks = marks.get();
        words.refill_phase(phase(&marks), drain_open(&marks))
    };
    // The chart follows when what was tapped has been painted.
    let drawn = RwSignal::new(test.get_untracked());
    let follow = move || {
        let now = test.get();
        after_paint(move || drawn.set(now));
        View::default()
    };
    let chart = move || {
        drawn.with(|test| {
            let test = test.as_ref().filter(|t| !t.marks.is_empty())?;
            let outcome = judge(&test.setup, &test.timed());
            let chart = refill_chart(test, &outcome, system, words);
            Some(markup! { <ChartView chart /> })
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
                        on:click=tap(move |_| mark(job, id, plain(kind), None))
                    >
                        {words.refill_mark(kind)}
                    </button>
                }
            })
            .collect_view()
    };
    let jump = move || test.with(|t| t.as_ref().and_then(Test::clock_jump_s));
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
        {follow}
        {soon(
            markup! {
                <LevelEntry job test id />
                <section>{chart}</section>
                <section>
                    <h2 class="minor">{words.phrase(P::OtherMarks)}</h2>
                    <div class="answers">{others}</div>
                </section>
                <section>
                    <h2 class="minor">{words.phrase(P::Marks)}</h2>
                    <MarkList job test />
                    <p class="sub small">{words.phrase(P::GapNote)}</p>
                </section>
            }
        )}
    }
}

/// After the test: how it went.
#[component]
fn Ended(test: Memo<Option<Test>>) -> View {
    let system = prefs().system.get_untracked();
    live(move || {
        let test = test.get()?;
        let outcome = judge(&test.setup, &test.timed());
        Some(markup! { <VerdictView outcome system /> })
    })
}

/// What it is judged by.
#[component]
fn Measured(test: Memo<Option<Test>>) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    live(move || {
        let test = test.get()?;
        let outcome = judge(&test.setup, &test.timed());
        let chart = refill_chart(&test, &outcome, system, words);
        Some(markup! {
            <FiguresView test=test.clone() outcome system />
            <section>
                <h2>{words.phrase(P::ChartTitle)}</h2>
                <ChartView chart />
            </section>
        })
    })
}
