//! Reading the level during a test: by the step buttons or typed, in the
//! basin's own scale.

use super::refill_marks::mark;
use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::parts::choice::choice;
use crate::app::parts::field::{TextField, lasting, settle_text};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::number::Amount;
use crate::app::prefs::prefs;
use crate::app::view::prelude::*;
use crate::quantity::{Kind, Length, Refusal, Value};
use crate::record::{Test, TestId};
use crate::refill::{MarkKind, Phase, Scale, ScaleKind, phase};
use crate::words::Phrase as P;
use uom::si::length::meter;

const KINDS: [(ScaleKind, P, &str); 3] = [
    (ScaleKind::BelowOverflow, P::ScaleBelow, "scale-below"),
    (ScaleKind::Staff, P::ScaleStaff, "scale-staff"),
    (ScaleKind::WallMarks, P::ScaleMarks, "scale-marks"),
];

/// Step buttons, field, scale and the button that marks.
#[component]
pub fn LevelEntry(job: Job, test: Memo<Option<Test>>, id: TestId) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let site = job
        .visit
        .with_untracked(|v| v.as_ref().map(|v| v.site.to_string()))
        .unwrap_or_default();
    let kind_key = lasting(format!("scale {site}"));
    let (lip_key, each_key) = (format!("lip {site}"), format!("each {site}"));
    let text_key = lasting(format!("level {id}"));
    let kept = ledger().text(kind_key);
    let first = KINDS.iter().position(|k| Some(k.2) == kept.as_deref());
    // Plain numbers: every other type of signal weighs kilobytes.
    let place = RwSignal::new(first.unwrap_or(0) as f64);
    let kind = move || KINDS[place.get() as usize].0;
    let (lip, each) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let text = RwSignal::new(String::new());
    let scale = move || lip.with(|lip| each.with(|each| Scale::typed(kind(), lip, each, system)));
    let setup = test.with_untracked(|t| t.as_ref().map(|t| t.setup));
    let stood = job
        .visit
        .with_untracked(|v| v.as_ref().and_then(|v| v.last_level()))
        .or(setup.and_then(|s| s.stop_level))
        .unwrap_or_default();
    let step = move || {
        let step = scale().map(|s| s.step(system));
        step.map_or(0.005, |s| s.get::<meter>())
    };
    // In whole steps, so that the buttons meet the marks of the tape.
    let rounded = |level: f64, step: f64| step * (level / step).round();
    let stepped = RwSignal::new(rounded(stood.get::<meter>(), untrack(step)));
    let is_typed = move || text.with(|t| !t.trim().is_empty());
    let level = move || match is_typed() {
        true => scale().and_then(|s| text.with(|text| s.level(text, system))),
        false => Ok(Length::new::<meter>(stepped.get())),
    };
    let refused = Signal::derive(move || {
        let refusal = level().err()?;
        (refusal != Refusal::Empty || is_typed())
            .then(|| words.refusal(&refusal, Kind::Level, system))
    });
    let turn = move |by: f64| {
        let step = untrack(step);
        if untrack(is_typed) {
            forget(text, text_key);
        }
        stepped.update(|l| *l = rounded(*l, step) + step * by);
    };
    let keep = move |_| {
        let Ok(below_overflow) = untrack(level) else {
            return;
        };
        let typed = untrack(is_typed).then(|| text.get_untracked().trim().to_owned());
        stepped.set(below_overflow.get::<meter>());
        let kind = MarkKind::Level { below_overflow };
        forget(text, text_key);
        mark(job, id, kind, typed);
    };
    let low = move || {
        let limit = setup?.low_limit?;
        let falling = test.with(|t| {
            t.as_ref()
                .is_some_and(|t| phase(&t.timed()) == Phase::DrawingDown)
        });
        (falling && level().is_ok_and(|l| l >= limit)).then(|| {
            markup! {
                <div class="notice urgent" role="alert">
                    <Draw icon=Icon::Warning />
                    <p>
                        <strong>{words.phrase(P::AtLowLimit)}</strong>
                    </p>
                </div>
            }
        })
    };
    let own = move || {
        let kind = kind();
        let number = match (kind, scale(), level()) {
            (ScaleKind::BelowOverflow, ..) => None,
            (_, Ok(scale), Ok(level)) => Some(words.on_scale(kind, scale.shows(level))),
            _ => None,
        };
        number.map(|n| markup! { <span class="small sub">{n}</span> })
    };
    let kinds = [0, 1, 2]
        .map(|n| {
            let (_, name, test) = KINDS[n];
            choice(
                test,
                words.phrase(name),
                move || place.get() == n as f64,
                move || {
                    place.set(n as f64);
                    ledger().keep_text(kind_key, test);
                },
            )
        })
        .collect_view();
    let lip_field = markup! {
        <TextField key=lip_key text=lip label=words.phrase(P::ScaleAtLip) hint=words.phrase(P::ScaleAtLipHint) test="scale-lip" />
    };
    let each_field = markup! {
        <TextField key=each_key text=each label=words.phrase(P::ScaleEach) test="scale-each" />
    };
    markup! {
        <section>
            <h2 class="minor" id="level-label">{words.phrase(P::LevelNow)}</h2>
            <div class="stepper" role="group" aria-labelledby="level-label">
                <button
                    type="button"
                    aria-label=words.phrase(P::Higher)
                    data-test="level-up"
                    on:click=tap(move |_| turn(-1.0))
                >
                    "▲"
                </button>
                <output data-test="level-now">
                    {move || {
                        level().ok().map(|l| markup! { <Amount value=Value::level(l) /> })
                    }}
                    {own}
                </output>
                <button
                    type="button"
                    aria-label=words.phrase(P::Deeper)
                    data-test="level-down"
                    on:click=tap(move |_| turn(1.0))
                >
                    "▼"
                </button>
            </div>
            <TextField
                key=text_key.to_owned()
                text
                label=words.phrase(P::TypeLevel)
                refusal=refused
                test="level-typed"
            />
            <button type="button" class="second" data-test="mark-level" on:click=tap(keep)>
                {words.phrase(P::MarkLevel)}
            </button>
            {low}
            <details>
                <summary>{words.phrase(P::ScaleTitle)}</summary>
                <div class="seg" role="group" aria-label=words.phrase(P::ScaleTitle)>
                    {kinds}
                </div>
                <div hidden=move || kind() == ScaleKind::BelowOverflow>{lip_field}</div>
                <div hidden=move || kind() != ScaleKind::WallMarks>{each_field}</div>
            </details>
        </section>
    }
}

fn forget(text: RwSignal<String>, key: &str) {
    text.set(String::new());
    settle_text(key);
}
