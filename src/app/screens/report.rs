//! The report: read it as text, make the PDF, keep it in the outbox.

use crate::app::view::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;

use super::visit_frame::{Job, StationScreen};
use crate::app::ledger::ledger;
use crate::app::parts::choice::choice;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::ports::window;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::{Body, FileId, VisitId};
use crate::report::{DocDate, Fonts, compose, to_pdf, to_text};
use crate::store::KeptFile;
use crate::words::{Phrase as P, Tongue};

/// Where making the PDF stands.
#[derive(Clone, PartialEq)]
enum Making {
    Idle,
    Busy,
    Failed(String),
}

/// The station.
#[component]
pub fn Report(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let making = RwSignal::new(Making::Idle);
    let made = Memo::new(move |_| job.visit.with(|v| v.as_ref()?.reports.last().cloned()));
    let make = move |_| {
        if making.get_untracked() == Making::Busy {
            return;
        }
        making.set(Making::Busy);
        spawn_local(async move {
            making.set(match make_pdf(job).await {
                Ok(()) => Making::Idle,
                Err(why) => Making::Failed(why),
            });
        });
    };
    let label = move || {
        words.phrase(match (making.get(), made.get().is_some()) {
            (Making::Busy, _) => P::MakingReport,
            (_, true) => P::MakeAgain,
            (_, false) => P::MakeReport,
        })
    };
    let act = move || {
        markup! {
            {move || {
                made.get()
                    .map(|_| {
                        markup! {
                            <a class="button primary" href=Route::Outbox.href() data-test="to-outbox">
                                {words.phrase(P::OpenOutbox)}
                            </a>
                        }
                    })
            }}
            <button
                class:primary=move || made.get().is_none()
                data-test="make-report"
                aria-busy=move || (making.get() == Making::Busy).to_string()
                on:click=tap(make)
            >
                {label}
            </button>
        }
    };
    let text = move || {
        let (visit, site) = job.both()?;
        Some(to_text(
            &compose(&site, &visit, system, prefs().report_words()),
            40,
        ))
    };
    let sub = words.phrase(P::ReportSub);
    markup! {
        <StationScreen job title=P::StationReport sub name="report" act>
            <div aria-live="polite">
                {move || match making.get() {
                    Making::Failed(why) => {
                        Some(
                            markup! {
                                <p class="said no">
                                    <Draw icon=Icon::Cross />
                                    <span>{why}</span>
                                </p>
                            },
                        )
                    }
                    _ => {
                        made.get()
                            .map(|report| {
                                markup! {
                                    <p class="said yes" data-test="report-kept">
                                        <Draw icon=Icon::Kept />
                                        <span>
                                            {format!(
                                                "{}: {}",
                                                words.phrase(P::ReportKept),
                                                report.name,
                                            )}
                                        </span>
                                    </p>
                                }
                            })
                    }
                }}
            </div>
            <section>
                <h2>{words.phrase(P::ReportIn)}</h2>
                <div class="seg" role="group" aria-label=words.phrase(P::ReportIn)>
                    {Tongue::ALL
                        .map(|tongue| {
                            choice(
                                format!("report-{}", tongue.tag()),
                                tongue.name(),
                                move || prefs().report_words().0 == tongue,
                                move || prefs().choose_report(ledger(), tongue),
                            )
                        })
                        .collect_view()}
                </div>
            </section>
            <section>
                <h2>{words.phrase(P::TextVersion)}</h2>
                <pre
                    class="plain-text"
                    data-test="report-text"
                    lang=move || prefs().report_words().0.tag()
                >
                    {text}
                </pre>
            </section>
            <a class="button plain" href=Route::Visit(id, Station::Overview).href()>
                {words.phrase(P::BackTo)}
            </a>
        </StationScreen>
    }
}

async fn fetch(path: &str) -> Option<Vec<u8>> {
    let answer = JsFuture::from(window().fetch_with_str(path)).await.ok()?;
    let answer: web_sys::Response = answer.dyn_into().ok()?;
    if !answer.ok() {
        return None;
    }
    let bytes = JsFuture::from(answer.array_buffer().ok()?).await.ok()?;
    Some(js_sys::Uint8Array::new(&bytes).to_vec())
}

/// Composes the report, writes the PDF and keeps it with its entry.
async fn make_pdf(job: Job) -> Result<(), String> {
    let words = prefs().words;
    let missing = || words.phrase(P::FontsMissing).to_owned();
    let regular = fetch("fonts/report-regular.ttf")
        .await
        .ok_or_else(missing)?;
    let system = prefs().system.get_untracked();
    let (visit, site) =
        untrack(|| job.both()).ok_or_else(|| words.phrase(P::NotHereTitle).to_owned())?;
    let spoken = untrack(|| prefs().report_words());
    let doc = compose(&site, &visit, system, spoken);
    let now = ledger().now();
    let (year, month, day, hour, minute, second) = now.local();
    let created = DocDate {
        year: u16::try_from(year).unwrap_or(0),
        month,
        day,
        hour,
        minute,
        second,
        offset_minutes: now.offset_min,
    };
    let fonts = Fonts { regular: &regular };
    let bytes = to_pdf(&doc, fonts, created)
        .map_err(|e| format!("{}: {e:?}", words.phrase(P::ReportFailed)))?;
    let file: FileId = ledger().id();
    let name = format!("{} {}.pdf", file_name(&site.name), now.date());
    let body = Body::ReportMade {
        file,
        name: name.clone(),
        bytes: u32::try_from(bytes.len()).unwrap_or(u32::MAX),
    };
    let kept = KeptFile {
        id: file,
        name,
        media_type: "application/pdf".into(),
        bytes,
    };
    match ledger().keep_file(job.about(), kept, vec![body]).await {
        true => Ok(()),
        false => Err(words.phrase(P::StoreFailed).to_owned()),
    }
}

/// A site's name as a file name: every run of spaces and signs is one dash.
fn file_name(name: &str) -> String {
    let parts: Vec<&str> = name
        .split(|c: char| c.is_whitespace() || c.is_ascii() && !c.is_ascii_alphanumeric())
        .filter(|p| !p.is_empty())
        .collect();
    if parts.is_empty() {
        "visit".to_owned()
    } else {
        parts.join("-")
    }
}
