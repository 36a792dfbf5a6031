//! As found: readings as people type them, and which machines are out.

use crate::app::parts::choice::choice;
use crate::app::view::prelude::*;

use super::visit_frame::{Job, StationScreen, way_on};
use crate::app::ledger::ledger;
use crate::app::parts::field::{QuantityField, Typing};
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::quantity::{Bounds, Unit};
use crate::record::{Body, Machine, MachineId, MachineState, Slot, VisitId, What, When};
use crate::words::Phrase as P;

/// How many machines stand above the fold.
const AT_ONCE: usize = 2;

/// What each reading may be. Wider than usual so that a true odd reading can
/// be entered, narrow enough that a slip of the thumb is caught.
pub fn bounds(what: What) -> Bounds {
    match what {
        What::HeadPressure => Bounds::of(-14.0, 800.0, Unit::Psig),
        What::EnteringWater | What::LeavingWater => Bounds::of(32.0, 160.0, Unit::Fahrenheit),
        What::DryBulb => Bounds::of(-40.0, 140.0, Unit::Fahrenheit),
        What::WetBulb => Bounds::of(-40.0, 110.0, Unit::Fahrenheit),
        What::Humidity => Bounds::of(1.0, 100.0, Unit::Percent),
        What::BasinLevel => Bounds::of(-6.0, 120.0, Unit::Inch),
        What::ControlVoltage => Bounds::of(0.0, 480.0, Unit::Volt),
        What::WaterFlow => Bounds::of(1.0, 20_000.0, Unit::GallonPerMinute),
        What::Conductivity => Bounds::of(10.0, 20_000.0, Unit::MicrosiemensPerCentimetre),
        What::LoopVolume => Bounds::of(0.05, 5_000.0, Unit::CubicMetre),
    }
}

/// The station.
#[component]
pub fn Found(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let machines = job
        .site
        .with_untracked(|s| s.as_ref().map(|s| s.machines.clone()));
    let rows = machines.unwrap_or_default().into_iter().enumerate();
    let mut rows: Vec<View> = rows
        .map(|(n, machine)| markup! { <MachineRow job machine n when=When::AsFound /> })
        .collect();
    let others = rows.split_off(AT_ONCE.min(rows.len()));
    let act = way_on(
        Route::Visit(id, Station::Numbers),
        words.phrase(P::ToNumbers),
    );
    let sub = words.phrase(P::FoundSub);
    let loop_fields = [
        (What::EnteringWater, "entering-water"),
        (What::LeavingWater, "leaving-water"),
        (What::DryBulb, "dry-bulb"),
        (What::Humidity, "humidity"),
        (What::WetBulb, "wet-bulb"),
        (What::BasinLevel, "basin-level"),
        (What::ControlVoltage, "control-voltage"),
        (What::WaterFlow, "water-flow"),
        (What::Conductivity, "conductivity"),
    ];
    markup! {
        <StationScreen job title=P::StationFound sub name="found" act>
            <section>
                <h2>{words.phrase(P::Machines)}</h2>
                <p class="sub small">{words.reading_hint(What::HeadPressure)}</p>
                <div class="fields">
                    {View::Many(rows)}
                    {soon(View::Many(others))}
                </div>
            </section>
            {soon(
                markup! {
                    <section>
                        <h2>{words.phrase(P::WaterAirControl)}</h2>
                        <div class="fields">
                            {loop_fields
                                .map(|(what, test)| {
                                    markup! {
                                        <ReadingField job what when=When::AsFound test=test.to_owned() />
                                    }
                                })
                                .collect_view()}
                        </div>
                    </section>
                }
            )}
        </StationScreen>
    }
}

/// A field that becomes an entry when it is left.
#[component]
pub fn ReadingField(
    /// The job.
    job: Job,
    /// What is read.
    what: What,
    /// As found or as left.
    when: When,
    /// On which machine.
    #[prop(optional)]
    machine: Option<MachineId>,
    /// A name for tests.
    test: String,
) -> View {
    let words = prefs().words;
    let slot = Slot {
        when,
        what,
        machine,
    };
    let standing = Memo::new(move |_| {
        job.visit
            .with(|v| v.as_ref().and_then(|v| v.readings.get(&slot).cloned()))
    });
    let initial = standing.get_untracked().map(|r| (r.typed, r.unit));
    let key = format!("{} {when:?} {what:?} {machine:?}", job.id);
    let typing = Typing::new(key, what.kind(), bounds(what), initial);
    let kept = Signal::derive(move || standing.get().map(|r| words.kept_at(&r.at.clock())));
    let commit = move |()| {
        if typing.is_empty() {
            if let Some(reading) = standing.get_untracked() {
                let gone = |entry| Body::Withdrawn { entry };
                let all = reading.entries.into_iter().map(gone).collect();
                ledger().write_then(job.about(), all, || {});
            }
            typing.settled();
            return;
        }
        let Some(typed) = typing.typed() else { return };
        let text = typing.text.get_untracked();
        let same = |r: &crate::record::Reading| r.value == typed.value && r.typed == text;
        if standing.get_untracked().is_some_and(|r| same(&r)) {
            typing.settled();
            return;
        }
        let body = Body::ReadingTaken {
            what,
            machine,
            when,
            value: typed.value,
            typed: text,
            unit: typed.unit,
        };
        ledger().write_then(job.about(), vec![body], move || typing.settled());
    };
    // Over the list of machines it is said once for all of them.
    let hint = match machine {
        Some(_) => "",
        None => words.reading_hint(what),
    };
    markup! {
        <QuantityField
            typing
            label=words.reading_name(what)
            hint
            kept
            commit=Callback::new(commit)
            test
        />
    }
}

/// One machine: its state, and its head pressure.
#[component]
pub fn MachineRow(
    /// The job.
    job: Job,
    /// The machine.
    machine: Machine,
    /// Its place in the list.
    n: usize,
    /// As found or as left.
    when: When,
) -> View {
    let words = prefs().words;
    let id = machine.id;
    let state = Memo::new(move |_| {
        job.visit.with(|v| {
            v.as_ref()
                .and_then(|v| v.machines.get(&(when, id)).copied())
        })
    });
    let states = [
        (MachineState::Running, P::MachineRunning, "running"),
        (MachineState::HighHead, P::MachineHighHead, "high-head"),
        (MachineState::Stopped, P::MachineStopped, "stopped"),
    ];
    let heading = words.machine_line(&machine);
    markup! {
        <fieldset class="fields">
            <legend class="hidden-visually">{heading.clone()}</legend>
            <h3 aria-hidden="true">{heading.clone()}</h3>
            <div class="seg" role="group" aria-label=heading>
                {states
                    .map(|(which, name, test)| {
                        let body = Body::MachineSeen { machine: id, when, state: which };
                        choice(
                            format!("machine-{n}-{test}"),
                            words.phrase(name),
                            move || state.get() == Some(which),
                            move || job.write(body.clone()),
                        )
                    })
                    .collect_view()}
            </div>
            <ReadingField
                job
                what=What::HeadPressure
                when
                machine=id
                test=format!("head-{n}")
            />
        </fieldset>
    }
}
