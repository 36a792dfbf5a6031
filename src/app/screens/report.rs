//! The report: read it as text, make the PDF, keep it in the outbox.

use crate::app::view::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;

use super::signature::Signature;
use super::visit_frame::{Job, StationScreen};
use crate::app::card::card;
use crate::app::ledger::ledger;
use crate::app::parts::choice::choice;
use crate::app::parts::field::{TextField, settle_text};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::ports::window;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::quantity::{System, Value};
use crate::record::bytes::sha256;
use crate::record::{Body, FileId, Visit, VisitId};
use crate::report::doc::{Doc, PageSize};
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

/// Key of the paper's setting.
const PAPER: &str = "setting paper";

/// The paper as chosen, or as the units suggest.
fn paper() -> PageSize {
    match ledger().text(PAPER).as_deref() {
        Some("a4") => PageSize::A4,
        Some(_) => PageSize::Letter,
        None if prefs().system.get_untracked() == System::Si => PageSize::A4,
        None => PageSize::Letter,
    }
}

/// What the next issue corrects, as typed.
fn corrects_key(id: VisitId) -> String {
    format!("corrects {id}")
}

/// The next issue of a visit's report, with the card of today.
fn next_issue(job: Job, corrects: &str) -> Option<(Visit, Doc)> {
    let (mut visit, site) = job.both()?;
    visit.paper.card = card();
    let system = prefs().system.get_untracked();
    let doc = compose(&site, &visit, system, prefs().report_words(), corrects);
    Some((visit, doc))
}

/// The station.
#[component]
pub fn Report(id: VisitId) -> View {
    let job = Job::of(id);
    let words = prefs().words;
    let corrects = RwSignal::new(String::new());
    let page = RwSignal::new(paper());
    let making = RwSignal::new(Making::Idle);
    let made = Memo::new(move |_| job.visit.with(|v| v.as_ref()?.reports.last().cloned()));
    let make = move |_| {
        if making.get_untracked() == Making::Busy {
            return;
        }
        making.set(Making::Busy);
        spawn_local(async move {
            let why = corrects.get_untracked().trim().to_owned();
            making.set(match make_pdf(job, page.get_untracked(), why).await {
                Ok(()) => {
                    corrects.set(String::new());
                    settle_text(&corrects_key(id));
                    Making::Idle
                }
                Err(why) => Making::Failed(why),
            });
        });
    };
    let label = move || {
        words.phrase(match (making.get(), made.get().is_some()) {
            (Making::Busy, _) => P::MakingReport,
            (_, true) => P::MakeIssue,
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
        let corrects = corrects.get();
        let (_, doc) = next_issue(job, corrects.trim())?;
        Some(to_text(&doc, 40))
    };
    let sub = words.phrase(P::ReportSub);
    let papers = [
        (PageSize::Letter, P::PaperLetter, "letter"),
        (PageSize::A4, P::PaperA4, "a4"),
    ];
    // What was made stays; making it again is a new issue that says why.
    let issues = move || {
        let reports = job.visit.with(|v| v.as_ref().map(|v| v.reports.clone()))?;
        if reports.is_empty() {
            return None;
        }
        let lines = reports.into_iter().enumerate().map(|(n, made)| {
            let at = format!("{} {}", made.at.date(), made.at.clock());
            let line = words.issue_line(n + 1, &at, made.bytes.div_ceil(1000), &made.sha256);
            markup! { <li data-test="issue"><p class="row-text">{line}</p></li> }
        });
        Some(markup! {
            <section>
                <h2>{words.phrase(P::Issues)}</h2>
                <ul class="rows">{lines.collect_view()}</ul>
                <TextField
                    key=corrects_key(id)
                    text=corrects
                    label=words.phrase(P::Corrects)
                    hint=words.phrase(P::CorrectsHint)
                    test="corrects"
                />
            </section>
        })
    };
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
            {issues}
            <Signature job />
            <section>
                <h2>{words.phrase(P::Paper)}</h2>
                <div class="seg" role="group" aria-label=words.phrase(P::Paper)>
                    {papers
                        .map(|(which, name, kept)| {
                            choice(
                                format!("paper-{kept}"),
                                words.phrase(name),
                                move || page.get() == which,
                                move || {
                                    page.set(which);
                                    ledger().keep_text(PAPER, kept);
                                },
                            )
                        })
                        .collect_view()}
                </div>
            </section>
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
            {soon(markup! {
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
            })}
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
async fn make_pdf(job: Job, page: PageSize, corrects: String) -> Result<(), String> {
    let words = prefs().words;
    let missing = || words.phrase(P::FontsMissing).to_owned();
    // First: the screen may be left while the font is fetched.
    let (visit, mut doc) = untrack(|| next_issue(job, &corrects))
        .ok_or_else(|| words.phrase(P::NotHereTitle).to_owned())?;
    let regular = fetch("fonts/report-regular.ttf")
        .await
        .ok_or_else(missing)?;
    doc.page = page;
    for picture in doc.pictures_mut() {
        if let Some(kept) = ledger().file(picture.file).await {
            picture.jpeg = kept.bytes;
        }
    }
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
    let issue = match visit.reports.len() {
        0 => String::new(),
        n => format!(" {}", n + 1),
    };
    let name = format!("{} {}{issue}.pdf", file_name(&doc.title), now.date());
    let made = Body::ReportMade {
        file,
        name: name.clone(),
        bytes: u32::try_from(bytes.len()).unwrap_or(u32::MAX),
        sha256: sha256(&bytes),
        corrects,
    };
    let kept = KeptFile {
        id: file,
        name,
        media_type: "application/pdf".into(),
        bytes,
    };
    // What was printed of who did it goes with the report.
    let known = untrack(|| job.visit.with(|v| v.as_ref().map(|v| v.paper.card.clone())));
    let known = known.unwrap_or_default();
    let mut bodies = Vec::new();
    for (new, old) in visit.paper.card.lines().into_iter().zip(known.lines()) {
        if new != old {
            let (item, text, amount) = new;
            bodies.push(Body::LineWritten {
                item,
                text: text.to_owned(),
                amount: amount.map(Value::number),
                by: String::new(),
            });
        }
    }
    bodies.push(made);
    match ledger().keep_file(job.about(), kept, bodies, false).await {
        true => Ok(()),
        false => Err(words.phrase(P::StoreFailed).to_owned()),
    }
}

/// A site's name as a file name: every run of spaces and signs is one dash.
fn file_name(name: &str) -> String {
    // Short enough for every phone and every mail.
    let short: String = name.chars().take(60).collect();
    let parts: Vec<&str> = short
        .split(|c: char| c.is_whitespace() || c.is_ascii() && !c.is_ascii_alphanumeric())
        .filter(|p| !p.is_empty())
        .collect();
    if parts.is_empty() {
        "visit".to_owned()
    } else {
        parts.join("-")
    }
}
