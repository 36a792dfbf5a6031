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
use crate::quantity::{Bounds, Kind, Unit, Value, show};
use crate::record::{Body, MachineId, MachineState, What, When, loop_water, outlook};
use crate::report::recovery_chart;
use crate::words::Phrase as P;

use super::found::bounds;

/// Shortest stretch shown, in seconds.
const SHOWN_S: f64 = 3600.0;

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
    let water = Typing::new(
        format!("loop volume {id}"),
        Kind::Volume,
        Bounds::of(0.05, 5_000.0, Unit::CubicMetre),
        None,
    );
    let now = RwSignal::new(ledger().now());
    let tick = StoredValue::new(Interval::new(500, move || now.set(ledger().now())));
    on_cleanup(move || tick.dispose());
    let known = move || {
        let (visit, site) = job.both()?;
        let volume = water.typed().and_then(|t| t.value.as_volume());
        let volume = volume.or_else(|| loop_water(&site))?;
        let first = visit.recovery.first()?.at;
        let last = visit.recovery.last()?.at;
        let shown = (1.25 * last.seconds_since(&first)).max(SHOWN_S);
        outlook(&site, &visit, volume, shown).ok()
    };
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
        let now = now.get();
        // The spacing after the last start; before the first, the wait from now.
        let left = outlook.restart.map(|plan| match last_started() {
            Some((at, _)) => plan.spacing.get::<second>() - now.seconds_since(&at),
            None => plan.wait.get::<second>(),
        });
        let said = match left {
            Some(left) if left > 0.0 => words.start_in(&name, left),
            Some(_) => words.start_now(&name),
            None => words.phrase(P::RestartUnknown).to_owned(),
        };
        Some(markup! {
            <p class="clock" role="timer" data-test="restart-timer">{said}</p>
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
        let outlook = known()?;
        let system = prefs().system.get();
        let chart = job
            .visit
            .with(|v| recovery_chart(v.as_ref()?, &outlook, system, words))?;
        let settles = show(Value::temperature(outlook.settles), system).to_string();
        let said = words.settles_at(&settles);
        Some(markup! { <ChartView chart /> <p class="sub small">{said}</p> })
    };
    let rows = move || {
        let visit = job.visit.get()?;
        let system = prefs().system.get();
        let rows = visit
            .recovery
            .iter()
            .rev()
            .map(|p| {
                let name = p.machine.and_then(machine_name);
                let value = show(p.value, system).to_string();
                let said = format!("{value} {}", name.unwrap_or_default());
                markup! {
                    <li>
                        <span>{p.at.clock()}</span>
                        <span>{said}</span>
                        {take_back(job.about(), p.entry)}
                    </li>
                }
            })
            .collect_view();
        Some(markup! { <ol class="marks" data-test="loop-readings">{rows}</ol> })
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
                        label=words.phrase(P::LoopWater)
                        hint=words.phrase(P::LoopWaterHint)
                        test="loop-volume"
                    />
                </div>
                {figure}
                {rows}
            </details>
        </section>
    }
}
