//! Marks: made with one tap, moved openly when they were late, taken back and
//! put back.

use super::beep;
use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::take_back::take_back;
use crate::app::prefs::prefs;
use crate::app::view::prelude::*;
use crate::quantity::{Value, show};
use crate::record::{Body, Gap, LoggedMark, MOST_MOVED_S, Test, TestId};
use crate::refill::{ExpectedMark, MarkKind};
use crate::words::Phrase as P;

/// So many marks are listed at first, the newest, and so many more by a tap.
const STEP: f64 = 100.0;

/// Makes a mark now. Tone and buzz say that it is on disk.
pub fn mark(job: Job, test: TestId, mark: MarkKind, typed: Option<String>) {
    beep::ready();
    let body = Body::Marked { test, mark, typed };
    ledger().write_then(job.about(), vec![body], beep::beep);
}

/// The mark that a button of this name makes; a level needs its own.
pub fn plain(kind: ExpectedMark) -> MarkKind {
    match kind {
        ExpectedMark::Level => MarkKind::Interrupted,
        ExpectedMark::DrawdownBegan => MarkKind::DrawdownBegan,
        ExpectedMark::DrawdownEnded => MarkKind::DrawdownEnded,
        ExpectedMark::CallSeen => MarkKind::CallSeen,
        ExpectedMark::WaterSeen => MarkKind::WaterSeen,
        ExpectedMark::ShutOff => MarkKind::ShutOff,
        ExpectedMark::Interrupted => MarkKind::Interrupted,
        ExpectedMark::Stopped => MarkKind::Stopped,
    }
}

fn name(kind: MarkKind) -> String {
    let words = prefs().words;
    match kind {
        MarkKind::Level { below_overflow } => {
            show(Value::level(below_overflow), prefs().system.get_untracked()).to_string()
        }
        kind => words.refill_mark_short(kind.name()).to_owned(),
    }
}

/// Every mark and gap with its time, newest first.
#[component]
pub fn MarkList(job: Job, test: Memo<Option<Test>>) -> View {
    let words = prefs().words;
    // Which mark is opened, by its place; -1 for none.
    let open = RwSignal::new(-1.0);
    let most = RwSignal::new(STEP);
    let list = move |test: &Test| {
        let back = test.undone.map(|(kind, entry)| {
            let said = words.taken_back(&name(kind));
            markup! {
                <p class="kept" aria-live="polite">
                    <span>{said}</span>
                    <button
                        type="button"
                        data-test="put-back"
                        on:click=tap(move |_| ledger().withdraw(job.about(), entry))
                    >
                        {words.phrase(P::PutBack)}
                    </button>
                </p>
            }
        });
        if test.marks.is_empty() {
            let none = words.phrase(P::NoMarksYet);
            return markup! { {back} <p class="sub">{none}</p> };
        }
        // Marks and gaps in one list, by the test's clock.
        let older = test.marks.len().saturating_sub(most.get() as usize);
        let mut rows: Vec<(f64, View)> = test
            .marks
            .iter()
            .enumerate()
            .skip(older)
            .map(|(n, m)| (m.at_s(), row(job, test.id, m, n as f64, open)))
            .collect();
        let from_s = rows.first().map_or(0.0, |r| r.0);
        let shown = |g: &&Gap| older == 0 || g.to_s >= from_s;
        for gap in test.gaps.iter().filter(shown) {
            let said = words.refill_gap(gap);
            let line = markup! {
                <li class="gap" data-test="gap">
                    <Draw icon=Icon::Warning />
                    <span>{said}</span>
                </li>
            };
            rows.push((gap.to_s - 1e-3, line));
        }
        crate::quantity::sort_by(&mut rows, |a, b| b.0.total_cmp(&a.0));
        let rows: Vec<View> = rows.into_iter().map(|r| r.1).collect();
        let more = (older > 0).then(|| {
            let said = words.older_marks(older);
            markup! {
                <button
                    type="button"
                    data-test="older-marks"
                    on:click=tap(move |_| most.update(|m| *m += STEP))
                >
                    {said}
                </button>
            }
        });
        markup! { {back} <ol class="marks" data-test="marks">{rows}</ol> {more} }
    };
    live(move || test.with(|t| t.as_ref().map(list)))
}

fn row(job: Job, test: TestId, m: &LoggedMark, n: f64, open: RwSignal<f64>) -> View {
    let words = prefs().words;
    let entry = m.entry;
    let at = words.test_clock(m.at_s());
    let by = m.moved.map_or(0.0, |moved| moved.0);
    let note = match (&m.typed, m.moved) {
        (_, Some(_)) => words.mark_moved(m.tapped_s, by),
        (Some(typed), None) => words.as_typed(typed),
        (None, None) => String::new(),
    };
    let shift = move |step: f64| {
        let by_s = (by + step).clamp(-MOST_MOVED_S, MOST_MOVED_S);
        let mark = entry;
        let by_s = if step == 0.0 { 0.0 } else { by_s };
        job.write(Body::MarkMoved { test, mark, by_s });
    };
    let steps = move || {
        (open.get() == n).then(|| {
            let buttons = [-10.0, -1.0, 1.0, 10.0]
                .map(|step| {
                    let label = words.seconds_step(step);
                    markup! {
                        <button
                            type="button"
                            data-test=format!("shift{step}")
                            on:click=tap(move |_| shift(step))
                        >
                            {label}
                        </button>
                    }
                })
                .collect_view();
            markup! {
                <div class="shift" role="group" aria-label=words.phrase(P::MoveMark)>
                    {buttons}
                    {take_back(job.about(), entry)}
                </div>
            }
        })
    };
    let title = m.at.clock_seconds();
    let name = name(m.kind);
    let change = format!("{} {name} {at}", words.phrase(P::Change));
    markup! {
        <li data-test="mark" data-entry=entry.to_string()>
            <span title=title>{at}</span>
            <span>
                {name}
                <small class="sub">{note}</small>
            </span>
            <button
                type="button"
                class="plain"
                data-test="change-mark"
                aria-label=change
                aria-expanded=move || (open.get() == n).to_string()
                on:click=tap(move |_| open.update(|o| *o = if *o == n { -1.0 } else { n }))
            >
                {words.phrase(P::Change)}
            </button>
            {steps}
        </li>
    }
}
