//! As left: the cause and its proof, the work, readings as left, and the
//! leaving round.

use crate::app::parts::choice::choice;
use crate::app::view::prelude::*;

use super::found::{MachineRow, ReadingField};
use super::visit_frame::{Job, StationScreen, way_on};
use crate::app::ledger::ledger;
use crate::app::parts::field::{TextField, lasting, settle_text};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::take_back::take_back;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::{Body, LeavingItem, LeavingState, VisitId, What, When};
use crate::trace::{Manner, Mode};
use crate::words::Phrase as P;

/// The station.
#[component]
pub fn Leaving(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let act = way_on(Route::Visit(id, Station::Report), words.phrase(P::ToReport));
    let sub = words.phrase(P::LeftSub);
    markup! {
        <StationScreen job title=P::StationLeft sub name="left" act>
            <CauseForm job />
            {soon(below(job))}
        </StationScreen>
    }
}

/// What stands below the cause.
fn below(job: Job) -> View {
    let words = prefs().words;
    let machines = job
        .site
        .with_untracked(|s| s.as_ref().map(|s| s.machines.clone()));
    let left = [
        (What::EnteringWater, "left-entering-water"),
        (What::LeavingWater, "left-leaving-water"),
        (What::BasinLevel, "left-basin-level"),
        (What::ControlVoltage, "left-control-voltage"),
    ];
    markup! {
            <section>
                <h2>{words.phrase(P::LeavingTitle)}</h2>
                <div class="fields">
                    {LeavingItem::ALL
                        .map(|item| markup! { <LeavingRow job item /> })
                        .collect_view()}
                </div>
            </section>
            <section>
                <h2>{words.phrase(P::AsLeftReadings)}</h2>
                <div class="fields">
                    {left
                        .map(|(what, test)| {
                            markup! {
                                <ReadingField job what when=When::AsLeft test=test.to_owned() />
                            }
                        })
                        .collect_view()}
                    <p class="sub small">{words.reading_hint(What::HeadPressure)}</p>
                    {machines
                        .unwrap_or_default()
                        .into_iter()
                        .enumerate()
                        .map(|(n, machine)| {
                            markup! { <MachineRow job machine n=n + 100 when=When::AsLeft /> }
                        })
                        .collect_view()}
                </div>
            </section>
            <NoteForm job />
    }
}

/// What failed, how we know, what was done.
#[component]
fn CauseForm(job: Job) -> View {
    let words = prefs().words;
    let id = job.id;
    let (mode_key, proof_key, work_key) = (
        format!("cause {id}"),
        format!("proof {id}"),
        format!("work {id}"),
    );
    let keys = StoredValue::new((mode_key, proof_key, work_key));
    let standing = Memo::new(move |_| job.visit.with(|v| v.as_ref()?.cause.clone()));
    let kept = ledger().text(&keys.with_value(|k| k.0.clone()));
    let drafted = kept.and_then(|k| Mode::ALL.into_iter().find(|m| format!("{m:?}") == k));
    let first = standing.get_untracked();
    // Nothing is chosen for the person: a cause is named, or it is not.
    let mode = RwSignal::new(drafted.or(first.as_ref().map(|c| c.mode)));
    let manner = first.as_ref().map(|c| c.manner);
    let manner = RwSignal::new(manner.unwrap_or(Manner::Steady));
    let proof = RwSignal::new(first.as_ref().map_or(String::new(), |c| c.proof.clone()));
    let work = RwSignal::new(first.map_or(String::new(), |c| c.work));
    let choose = move |ev| {
        let chosen = event_target_value(&ev);
        let known = Mode::ALL.into_iter().find(|m| format!("{m:?}") == chosen);
        mode.set(known);
        if !known.is_some_and(Mode::can_be_intermittent) {
            manner.set(Manner::Steady);
        }
        keys.with_value(|k| ledger().keep_text(&k.0, &chosen));
    };
    let lacks = RwSignal::new(false);
    let save = move |_| {
        let Some(mode) = mode.get_untracked() else {
            lacks.set(true);
            return;
        };
        let also = standing.get_untracked().map_or(Vec::new(), |c| c.also);
        let body = Body::CauseNamed {
            mode,
            also: also.into_iter().filter(|m| *m != mode).collect(),
            manner: manner.get_untracked(),
            proof: proof.get_untracked().trim().to_owned(),
            work: work.get_untracked().trim().to_owned(),
        };
        // The screen may be left before it is on disk.
        let (cause, proof, work) = keys.get_value();
        ledger().write_then(job.about(), vec![body], move || {
            ledger().keep_text(&cause, "");
            settle_text(&proof);
            settle_text(&work);
        });
    };
    let is_kept = move || {
        standing.get().is_some_and(|c| {
            Some(c.mode) == mode.get()
                && c.manner == manner.get()
                && c.proof == proof.get().trim()
                && c.work == work.get().trim()
        })
    };
    // After this the list itself keeps what is chosen.
    let chosen = mode.get_untracked();
    let manners = [
        (Manner::Steady, P::MannerSteady),
        (Manner::Intermittent, P::MannerIntermittent),
    ];
    markup! {
        <section>
            <h2>{words.phrase(P::CauseTitle)}</h2>
            <div class="field">
                <label for="f-cause">{words.phrase(P::CauseMode)}</label>
                <select id="f-cause" data-test="cause" on:change=choose>
                    <option value="" selected=chosen.is_none()>
                        {words.phrase(P::NoCauseNamed)}
                    </option>
                    {Mode::ALL
                        .map(|m| {
                            markup! {
                                <option value=format!("{m:?}") selected=chosen == Some(m)>
                                    {words.trace_mode(m)}
                                </option>
                            }
                        })
                        .collect_view()}
                </select>
            </div>
            {move || {
                mode.get()
                    .is_some_and(Mode::can_be_intermittent)
                    .then(|| {
                        markup! {
                            <div class="seg" role="group" aria-label=words.phrase(P::CauseMode)>
                                {manners
                                    .map(|(which, name)| {
                                        choice(
                                            format!("manner-{which:?}"),
                                            words.phrase(name),
                                            move || manner.get() == which,
                                            move || manner.set(which),
                                        )
                                    })
                                    .collect_view()}
                            </div>
                        }
                    })
            }}
            <p class="sub small">{move || mode.get().map(|m| words.trace_cure_proof(m))}</p>
            <TextField
                key=keys.with_value(|k| k.1.clone())
                text=proof
                label=words.phrase(P::Proof)
                hint=words.phrase(P::ProofHint)
                long=true
                test="proof"
            />
            <TextField
                key=keys.with_value(|k| k.2.clone())
                text=work
                label=words.phrase(P::Work)
                hint=words.phrase(P::WorkHint)
                long=true
                test="work"
            />
            <p
                class="said no"
                role="alert"
                data-test="no-cause"
                hidden=move || !lacks.get() || mode.get().is_some()
            >
                {words.phrase(P::ChooseCause)}
            </p>
            <button type="button" data-test="save-cause" on:click=tap(save)>
                {words.phrase(P::SaveCause)}
            </button>
            <p class="said yes" aria-live="polite" data-test="cause-kept">
                {move || {
                    is_kept()
                        .then(|| {
                            markup! {
                                <Draw icon=Icon::Kept />
                                <span>{words.phrase(P::CauseKept)}</span>
                            }
                        })
                }}
            </p>
        </section>
    }
}

#[component]
fn LeavingRow(job: Job, item: LeavingItem) -> View {
    let words = prefs().words;
    let state = Memo::new(move |_| {
        job.visit
            .with(|v| v.as_ref().and_then(|v| v.leaving.get(&item).copied()))
    });
    let states = [
        LeavingState::So,
        LeavingState::NotSo,
        LeavingState::NoneHere,
    ];
    let name = words.leaving_item(item);
    markup! {
        <div class="field">
            <span class="label">{name}</span>
            <div class="seg" role="group" aria-label=name>
                {states
                    .map(|which| {
                        choice(
                            format!("leaving-{item:?}-{which:?}"),
                            words.leaving_state(which),
                            move || state.get() == Some(which),
                            move || job.write(Body::LeavingAnswered { item, state: which }),
                        )
                    })
                    .collect_view()}
            </div>
        </div>
    }
}

#[component]
fn NoteForm(job: Job) -> View {
    let words = prefs().words;
    let key = lasting(format!("note {}", job.id));
    let text = RwSignal::new(String::new());
    let keep = move |_| {
        let note = text.get_untracked().trim().to_owned();
        if note.is_empty() {
            return;
        }
        ledger().write_then(
            job.about(),
            vec![Body::NoteWritten { text: note }],
            move || {
                text.set(String::new());
                settle_text(key);
            },
        );
    };
    let notes = move || {
        let visit = job.visit.get()?;
        let rows = visit
            .notes
            .into_iter()
            .map(|(entry, at, text)| {
                markup! {
                    <li>
                        <div class="kept">
                            <p>
                                {text}
                                " "
                                <span class="sub small">{at.clock()}</span>
                            </p>
                            {take_back(job.about(), entry)}
                        </div>
                    </li>
                }
            })
            .collect_view();
        Some(markup! { <ul class="rows">{rows}</ul> })
    };
    markup! {
        <section>
            <h2>{words.phrase(P::Notes)}</h2>
            {notes}
            <TextField key=key.to_owned() text label=words.phrase(P::NewNote) long=true test="note" />
            <button type="button" data-test="keep-note" on:click=tap(keep)>
                {words.phrase(P::KeepNote)}
            </button>
        </section>
    }
}
