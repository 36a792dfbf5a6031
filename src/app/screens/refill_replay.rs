//! Earlier tests of the site: a replay of any of them, and two laid over each
//! other.

use std::rc::Rc;

use gloo_timers::callback::Interval;

use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::parts::chart::ChartView;
use crate::app::parts::choice::choice;
use crate::app::prefs::prefs;
use crate::app::view::prelude::*;
use crate::quantity::{Value, show};
use crate::record::{Test, earlier_tests};
use crate::refill::{MarkKind, judge};
use crate::report::{refill_chart_in, refill_overlay};
use crate::words::Phrase as P;

/// Steps of a replay, and milliseconds from one to the next.
const STEPS: f64 = 60.0;
const STEP_MS: u32 = 120;

/// The test as it stood so far into it, as a share of all.
fn part(test: &Test, share: f64) -> Test {
    let end = test.marks.iter().map(|m| m.at_s()).fold(0.0, f64::max);
    let mut part = test.clone();
    part.marks.retain(|m| m.at_s() <= share * end);
    part
}

/// The last level read in it.
fn last_level(test: &Test) -> Option<String> {
    let system = prefs().system.get_untracked();
    test.marks.iter().rev().find_map(|m| match m.kind {
        MarkKind::Level { below_overflow } => {
            Some(show(Value::level(below_overflow), system).to_string())
        }
        _ => None,
    })
}

/// The list, with one test opened and perhaps another under it.
#[component]
pub fn Earlier(job: Job) -> View {
    let words = prefs().words;
    // Places in the list, -1 for none; steps of the replay.
    let (open, under, at) = (
        RwSignal::new(-1.0),
        RwSignal::new(-1.0),
        RwSignal::new(STEPS),
    );
    let site = job.visit.with_untracked(|v| v.as_ref().map(|v| v.site));
    let tests = site.map(|site| {
        ledger()
            .log()
            .with_untracked(|log| earlier_tests(log, site))
    });
    let tests = Rc::new(tests.unwrap_or_default());
    let listed = tests.clone();
    let tick = Interval::new(STEP_MS, move || {
        if at.get_untracked() < STEPS {
            at.update(|a| *a += 1.0);
        }
    });
    let tick = StoredValue::new(tick);
    on_cleanup(move || tick.dispose());
    let figure = move || {
        let system = prefs().system.get();
        let of = |place: f64| tests.get(place as usize).filter(|_| place >= 0.0);
        let test = of(open.get())?;
        let now = part(test, at.get() / STEPS);
        let outcome = judge(&test.setup, &test.timed());
        let chart = match of(under.get()).filter(|t| t.id != test.id) {
            Some(other) => {
                let theirs = judge(&other.setup, &other.timed());
                refill_overlay((test, &outcome), (other, &theirs), system, words)
            }
            None => {
                let stands = judge(&now.setup, &now.timed());
                refill_chart_in(&now, &stands, (test, &outcome), system, words)
            }
        };
        let clock = now.marks.last().map(|m| words.test_clock(m.at_s()));
        let level = last_level(&now);
        Some(markup! {
            <p class="clock" data-test="replay-clock">
                {clock}
                " "
                <small>{level}</small>
            </p>
            <ChartView chart />
            <button
                type="button"
                class="second"
                data-test="replay"
                on:click=tap(move |_| {
                    under.set(-1.0);
                    at.set(0.0);
                })
            >
                {words.phrase(P::Replay)}
            </button>
        })
    };
    let rows = move || {
        let system = prefs().system.get();
        if listed.is_empty() {
            return markup! { <p class="sub">{words.phrase(P::NoEarlier)}</p> };
        }
        let rows = listed
            .iter()
            .enumerate()
            .map(|(n, test)| {
                let n = n as f64;
                let outcome = judge(&test.setup, &test.timed());
                let fill = outcome
                    .fill_gross
                    .map(|g| show(Value::flow(g.value), system).to_string());
                let mut line = format!(
                    "{} {} · {}",
                    test.begun.date(),
                    test.begun.clock(),
                    words.refill_verdict(outcome.verdict)
                );
                line.extend(fill.iter().flat_map(|fill| [" · ", fill]));
                let lay = (open.get() >= 0.0 && open.get() != n).then(|| {
                    choice(
                        "lay-under",
                        words.phrase(P::LayUnder),
                        move || under.get() == n,
                        move || {
                            at.set(STEPS);
                            under.update(|u| *u = if *u == n { -1.0 } else { n });
                        },
                    )
                });
                markup! {
                    <li>
                        {choice(
                            "earlier-test",
                            line,
                            move || open.get() == n,
                            move || {
                                under.set(-1.0);
                                open.set(n);
                                at.set(STEPS);
                            },
                        )}
                        {lay}
                    </li>
                }
            })
            .collect_view();
        markup! { <ol class="earlier answers">{rows}</ol> }
    };
    markup! {
        <section>
            <details>
                <summary data-test="earlier">{words.phrase(P::EarlierTests)}</summary>
                {rows}
                {figure}
            </details>
        </section>
    }
}
