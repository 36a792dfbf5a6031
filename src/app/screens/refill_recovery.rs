//! The loop after the fix: entering water and head over time against what is
//! expected, and when to start the next machine.

use gloo_timers::callback::Interval;
use uom::si::time::second;

use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::parts::chart::ChartView;
use crate::app::parts::field::{QuantityField, Typing};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::take_back::take_back;
use crate::app::prefs::prefs;
use crate::app::view::prelude::*;
use crate::quantity::{Value, show};
use crate::record::{Body, LoopPoint, MachineId, MachineState, What, When, outlook};
use crate::report::recovery_chart;
use crate::words::Phrase as P;

use super::found::bounds;

/// Shortest stretch shown, in seconds.
const SHOWN_S: f64 = 3600.0;
/// Most readings listed, the newest; the figure and the report have the others.
const ROWS: usize = 30;

/// Readings, figure, and the next start.
#[component]
pub fn LoopRecovery(job: Job) -> View {
    let words = prefs().words;
    let id = job.id;
    let field = |what: What, name: &str| {
        Typing::new(format!("loop {name} {id}"), what.kind(), bounds(what), None)
    };
    let entering = field(What::EnteringWater, "water");
    let head = field(What::HeadPressure, "head");
    let water = field(What::LoopVolume, "volume");
    let now = RwSignal::new(ledger().now());
    let tick = StoredValue::new(Interval::new(500, move || now.set(ledger().now())));
    on_cleanup(move || tick.dispose());
    let looked = move || {
        job.visit.with(|visit| {
            let visit = visit.as_ref()?;
            let first = visit.recovery.first()?.at;
            let last = visit.recovery.last()?.at;
            let shown = (1.25 * last.seconds_since(&first)).max(SHOWN_S);
            job.site
                .with(|site| Some(outlook(site.as_ref()?, visit, shown)))
        })
    };
    let known = move || looked()?.ok();
    let machine_name = move |id: MachineId| {
        job.site.with(|s| {
            let machines = s.as_ref().map(|s| &s.machines)?;
            machines.iter().find(|m| m.id == id).map(|m| m.name.clone())
        })
    };
    let note = move |typing: Typing, what: What, machine: Option<MachineId>| {
        let Some(typed) = typing.typed() else {
            typing.show_refusal();
            return;
        };
        let body = Body::LoopRead {
            what,
            machine,
            value: typed.value,
            typed: typing.text.get_untracked().trim().to_owned(),
        };
        ledger().write_then(job.about(), vec![body], move || {
            typing.stand_at(String::new(), typed.unit);
        });
    };
    let last_started = move || job.visit.with(|v| v.as_ref()?.started.last().copied());
    let next = move || {
        let outlook = known()?;
        let machine = *outlook.waiting.first()?;
        let name = machine_name(machine)?;
        let next = name.clone();
        // The spacing after the last start; before the first, the wait from the
        // last reading of the water.
        let from = match last_started() {
            Some((at, _)) => outlook.restart.map(|plan| (plan.spacing, at)),
            None => outlook.restart.map(|plan| (plan.wait, outlook.read_at)),
        };
        // Only this is said anew while the time runs.
        let said = move || match from {
            Some((time, at)) => words.start_in(time.get::<second>() - now.get().seconds_since(&at)),
            None => words.phrase(P::RestartUnknown).to_owned(),
        };
        let class = if from.is_some() { "clock" } else { "sub" };
        Some(markup! {
            <div class="field" role="timer" data-test="restart-timer">
                <p class="label">{next}</p>
                <p class=class>{said}</p>
            </div>
            <button
                type="button"
                class="second"
                data-test="machine-started"
                on:click=tap(move |_| {
                    job.write(Body::MachineSeen {
                        machine,
                        when: When::AsLeft,
                        state: MachineState::Running,
                    });
                })
            >
                {words.machine_started(&name)}
            </button>
        })
    };
    let figure = move || {
        let system = prefs().system.get();
        let outlook = match looked()? {
            Ok(outlook) => outlook,
            Err(lack) => {
                let why = words.lack(&lack, system);
                return Some(markup! { <p class="sub" data-test="not-foreseen">{why}</p> });
            }
        };
        let charts = job.visit.with(|v| {
            let chart = |what| recovery_chart(v.as_ref()?, &outlook, what, system, words);
            [What::EnteringWater, What::HeadPressure].map(|what| {
                let chart = chart(what);
                chart.map(|chart| markup! { <ChartView chart /> })
            })
        });
        let settles = show(Value::temperature(outlook.settles), system).to_string();
        let said = words.settles_at(&settles);
        let [entering, head] = charts;
        let named = outlook.headed.and_then(machine_name);
        let head = head.map(|head| {
            let named = words.head_foreseen(&named.unwrap_or_default());
            markup! { {head} <p class="sub small" data-test="head-foreseen">{named}</p> }
        });
        Some(markup! { {entering} <p class="sub small">{said}</p> {head} })
    };
    let rows = move || {
        let system = prefs().system.get();
        let outlook = known();
        let last: Vec<LoopPoint> = job.visit.with(|v| {
            let all = v.as_ref().map(|v| v.recovery.iter().rev().take(ROWS));
            all.into_iter().flatten().cloned().collect()
        });
        let rows = last
            .iter()
            .map(|p| {
                let name = p.machine.and_then(machine_name);
                let value = show(p.value, system).to_string();
                let name = name.unwrap_or_else(|| words.reading_name(p.what).to_owned());
                let bounds = outlook.as_ref().and_then(|o| o.bounds(p));
                let foreseen = bounds.map(|b| words.foreseen(p, b, system));
                markup! {
                    <li>
                        <span>
                            <strong>{value}</strong>
                            " "
                            <span class="sub">{p.at.clock()}</span>
                            <small>{name}</small>
                            <small class="sub">{foreseen}</small>
                        </span>
                        {take_back(job.about(), p.entry)}
                    </li>
                }
            })
            .collect_view();
        markup! { <ol class="marks" data-test="loop-readings">{rows}</ol> }
    };
    let of_machine = move || {
        last_started()
            .map(|s| s.1)
            .or_else(|| known()?.waiting.first().copied())
    };
    let head_label = words.phrase(P::HeadOfStarted);
    markup! {
        <section>
            <details>
                <summary data-test="recovery">{words.phrase(P::RecoveryTitle)}</summary>
                <div class="notice caution">
                    <Draw icon=Icon::Warning />
                    <p>{words.phrase(P::RecoveryCaution)}</p>
                </div>
                <div class="fields">
                    <QuantityField
                        typing=entering
                        label=words.phrase(P::EnteringAxis)
                        test="loop-entering"
                    />
                    <button
                        type="button"
                        class="second"
                        data-test="note-entering"
                        on:click=tap(move |_| note(entering, What::EnteringWater, None))
                    >
                        {words.phrase(P::NoteReading)}
                    </button>
                    {next}
                    <QuantityField typing=head label=head_label test="loop-head" />
                    <button
                        type="button"
                        data-test="note-head"
                        on:click=tap(move |_| {
                            note(head, What::HeadPressure, untrack(of_machine));
                        })
                    >
                        {words.phrase(P::NoteReading)}
                    </button>
                    <QuantityField
                        typing=water
                        label=words.reading_name(What::LoopVolume)
                        hint=words.reading_hint(What::LoopVolume)
                        test="loop-volume"
                    />
                    <button
                        type="button"
                        data-test="note-volume"
                        on:click=tap(move |_| note(water, What::LoopVolume, None))
                    >
                        {words.phrase(P::NoteReading)}
                    </button>
                </div>
                {figure}
                {rows}
            </details>
        </section>
    }
}
