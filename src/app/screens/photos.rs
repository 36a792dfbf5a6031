//! Photos: taken or chosen, made smaller, kept beside the log, drawn on.

use js_sys::{Array, Reflect};
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsValue;
use leptos::web_sys::Event;

use crate::app::parts::choice::choice;
use crate::app::view::prelude::*;

use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::parts::field::{TextField, lasting, settle_text};
use crate::app::parts::glass::{Glass, drawings};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::ports::{call, call_wait, get, window};
use crate::app::prefs::prefs;
use crate::record::bytes::{base64, from_base64};
use crate::record::paperwork::{Drawn, Shape, Shows, Spot};
use crate::record::{Body, EntryId, FileId, What};
use crate::store::KeptFile;
use crate::words::Phrase as P;

/// The longer side of a kept photo, in pixels: enough to read a nameplate over
/// half a page, and some 200 kB.
const LONGER: f64 = 1_280.0;
/// How hard the JPEG is pressed, 0 to 1.
const QUALITY: f64 = 0.8;

/// A picture made smaller, as JPEG, with its width and height. `None` when the
/// browser can't read it.
async fn smaller(file: JsValue) -> Option<(Vec<u8>, (u16, u16))> {
    let reading = call_wait(&window(), "createImageBitmap", &Array::of1(&file)).await;
    let picture = reading?.ok()?;
    let side = |name| get(&picture, name)?.as_f64();
    let (width, height) = (side("width")?, side("height")?);
    let share = (LONGER / width.max(height)).min(1.0);
    let (width, height) = ((width * share).round(), (height * share).round());
    let canvas: JsValue = document().create_element("canvas").ok()?.into();
    for (side, long) in [("width", width), ("height", height)] {
        Reflect::set(&canvas, &side.into(), &long.into()).ok()?;
    }
    let pen = call(&canvas, "getContext", &Array::of1(&"2d".into()))?;
    let [left, top, wide, high] = [0.0, 0.0, width, height].map(JsValue::from);
    let drawn = Array::of5(&picture, &left, &top, &wide, &high);
    call(&pen, "drawImage", &drawn)?;
    let jpeg = Array::of2(&"image/jpeg".into(), &QUALITY.into());
    let address = call(&canvas, "toDataURL", &jpeg)?;
    let address = address.as_string()?;
    let bytes = from_base64(address.strip_prefix("data:image/jpeg;base64,")?)?;
    Some((bytes, (width as u16, height as u16)))
}

/// What the next photo may be of: readings and checks of the visit.
fn subjects(job: Job) -> Vec<(Shows, String)> {
    let words = prefs().words;
    let mut all = vec![(Shows::Plant, words.phrase(P::PhotoPlant).to_owned())];
    let Some((visit, site)) = job.both() else {
        return all;
    };
    for answered in &visit.answers {
        let check = answered.evidence.check;
        let known = |s: &(Shows, String)| s.0 == Shows::Check { check };
        if !all.iter().any(known) {
            all.push((Shows::Check { check }, words.trace_check(check).to_owned()));
        }
    }
    for slot in visit.readings.keys() {
        let (what, machine): (What, _) = (slot.what, slot.machine);
        let shows = Shows::Reading { what, machine };
        if !all.iter().any(|s| s.0 == shows) {
            let mut name = words.reading_name(what).to_owned();
            if let Some(owner) = site.machines.iter().find(|m| Some(m.id) == machine) {
                name = format!("{name}, {}", owner.name);
            }
            all.push((shows, name));
        }
    }
    all
}

/// The part of the paperwork's screen.
#[component]
pub fn Photos(job: Job) -> View {
    let words = prefs().words;
    let key = lasting(format!("photo {}", job.id));
    let caption = RwSignal::new(String::new());
    let chosen = RwSignal::new(0);
    let busy = RwSignal::new(false);
    let bad = RwSignal::new(false);
    let subjects = StoredValue::new(subjects(job));
    let taken = move |event: Event| {
        let Some(input) = event.target() else { return };
        let first = get(&input, "files").and_then(|files| get(&files, "0"));
        let Some(file) = first.filter(|f| f.is_object()) else {
            return;
        };
        let shows = subjects.with_value(|s| s.get(chosen.get_untracked()).map(|s| s.0));
        busy.set(true);
        bad.set(false);
        // The screen may be left before the picture is ready.
        let said = caption.get_untracked().trim().to_owned();
        spawn_local(async move {
            let small = smaller(file).await;
            busy.set(false);
            // The same picture may be chosen once more.
            let _ = Reflect::set(&input, &"value".into(), &"".into());
            let Some((bytes, size)) = small else {
                bad.set(true);
                return;
            };
            let file: FileId = ledger().id();
            let kept = KeptFile {
                id: file,
                name: format!("{file}.jpg"),
                media_type: "image/jpeg".into(),
                bytes,
            };
            let body = Body::PhotoTaken {
                file,
                shows: shows.unwrap_or(Shows::Plant),
                caption: said,
                size,
            };
            if ledger()
                .keep_file(job.about(), kept, vec![body], true)
                .await
            {
                caption.set(String::new());
                settle_text(key);
            }
        });
    };
    let choose = move |ev| chosen.set(event_target_value(&ev).parse().unwrap_or(0));
    // By name only: a shape drawn on one must not draw all of them anew.
    let photos = Memo::new(move |_| {
        job.visit.with(|v| {
            let photos = v.as_ref().map_or(&[][..], |v| &v.paper.photos);
            photos.iter().map(|p| p.entry).collect::<Vec<_>>()
        })
    });
    let names = subjects.get_value().into_iter().enumerate();
    markup! {
        <section>
            <h2>{words.phrase(P::PhotosTitle)}</h2>
            {move || {
                photos.get().into_iter().map(|entry| markup! { <OnePhoto job entry /> }).collect_view()
            }}
            <div class="field">
                <label for="f-shows">{words.phrase(P::PhotoShows)}</label>
                <select id="f-shows" data-test="photo-shows" on:change=choose>
                    {names
                        .map(|(n, (_, name))| {
                            markup! { <option value=n.to_string()>{name}</option> }
                        })
                        .collect_view()}
                </select>
            </div>
            <TextField
                key=key.to_owned()
                text=caption
                label=words.phrase(P::PhotoCaption)
                test="photo-caption"
            />
            <label class="button" for="f-photo">{words.phrase(P::TakePhoto)}</label>
            <input
                id="f-photo"
                class="hidden-visually"
                type="file"
                accept="image/*"
                capture="environment"
                data-test="photo-file"
                on:change=taken
            />
            <p class="said no" aria-live="polite">
                {move || match (busy.get(), bad.get()) {
                    (true, _) => Some(markup! { <span>{words.phrase(P::PhotoBusy)}</span> }),
                    (_, true) => Some(markup! { <Draw icon=Icon::Cross /> <span>{words.phrase(P::PhotoBad)}</span> }),
                    _ => None,
                }}
            </p>
        </section>
    }
}

#[component]
fn OnePhoto(job: Job, entry: EntryId) -> View {
    let words = prefs().words;
    let kept = Memo::new(move |_| {
        job.visit.with(|v| {
            let photos = &v.as_ref()?.paper.photos;
            photos.iter().find(|p| p.entry == entry).cloned()
        })
    });
    let Some(photo) = kept.get_untracked() else {
        return View::default();
    };
    let id = photo.file;
    let shape = f64::from(photo.size.1) / f64::from(photo.size.0.max(1));
    let address = RwSignal::new(None::<Option<String>>);
    spawn_local(async move {
        let kept = ledger().file(id).await;
        address.set(Some(
            kept.map(|k| format!("data:image/jpeg;base64,{}", base64(&k.bytes))),
        ));
    });
    let drawing = RwSignal::new(None::<Shape>);
    let ends = RwSignal::new(None::<(Spot, Spot)>);
    let passed = move |(spot, down): (Spot, bool)| {
        ends.update(|ends| match ends {
            Some((_, to)) if !down => *to = spot,
            _ => *ends = Some((spot, spot)),
        });
    };
    let now = move || {
        let (from, to) = ends.get()?;
        let shape = drawing.get()?;
        Some(Drawn { shape, from, to })
    };
    let lifted = move |()| {
        let drawn = untrack(now).filter(|d| {
            let far = |a: u16, b: u16| a.abs_diff(b) > 200;
            far(d.from.0, d.to.0) || far(d.from.1, d.to.1)
        });
        ends.set(None);
        if let Some(drawn) = drawn {
            job.write(Body::PhotoDrawn { file: id, drawn });
        }
    };
    let drawn = move || kept.get().map_or(vec![], |p| p.drawn);
    let last = move || drawn().last().map(|(entry, _)| *entry);
    let said = [photo.at.clock(), photo.caption.clone()].join(" ");
    let shapes = [(Shape::Arrow, P::Arrow), (Shape::Circle, P::Circle)];
    markup! {
        <figure class="photo" data-test="photo">
            <div class="pane" style:aspect-ratio=format!("{}", 1.0 / shape)>
                {move || match address.get() {
                    Some(Some(src)) => Some(markup! { <img src=src alt=said.clone() /> }),
                    Some(None) => Some(markup! { <p>{words.phrase(P::PhotoMissing)}</p> }),
                    None => None,
                }}
                <svg
                    viewBox=format!("0 0 10000 {:.0}", 10_000.0 * shape)
                    aria-hidden="true"
                    inner_html=move || {
                        let mut all: Vec<Drawn> = drawn().iter().map(|d| d.1).collect();
                        all.extend(now());
                        drawings(&all, shape)
                    }
                ></svg>
                {move || {
                    drawing
                        .get()
                        .map(|_| {
                            markup! {
                                <Glass
                                    label=words.phrase(P::DrawHint)
                                    passed=Callback::new(passed)
                                    lifted=Callback::new(lifted)
                                    test="photo-glass"
                                />
                            }
                        })
                }}
            </div>
            <figcaption class="sub small">{format!("{} {}", photo.at.clock(), photo.caption)}</figcaption>
            <div class="seg" role="group" aria-label=words.phrase(P::DrawOn)>
                {shapes
                    .map(|(which, name)| {
                        choice(
                            format!("draw-{which:?}"),
                            words.phrase(name),
                            move || drawing.get() == Some(which),
                            move || drawing.update(|d| {
                                *d = (*d != Some(which)).then_some(which);
                            }),
                        )
                    })
                    .collect_view()}
            </div>
            {move || drawing.get().map(|_| markup! { <p class="sub small">{words.phrase(P::DrawHint)}</p> })}
            <div class="pair">
                <button
                    type="button"
                    class="plain"
                    disabled=move || last().is_none()
                    data-test="undo-drawing"
                    on:click=tap(move |_| {
                        if let Some(last) = untrack(last) {
                            ledger().withdraw(job.about(), last);
                        }
                    })
                >
                    {words.phrase(P::Undo)}
                </button>
                <button
                    type="button"
                    class="plain"
                    data-test="take-back-photo"
                    on:click=tap(move |_| ledger().withdraw(job.about(), entry))
                >
                    {words.phrase(P::TakeBack)}
                </button>
            </div>
        </figure>
    }
}
