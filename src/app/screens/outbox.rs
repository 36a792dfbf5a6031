//! The outbox: reports that nobody has said arrived. Sharing first, then
//! mail, then saving; handing a file over is not the same as its arrival, so
//! only the person can say that it is there.

use crate::app::view::prelude::*;
use leptos::task::spawn_local;

use crate::app::card::card;
use crate::app::ledger::ledger;
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::app::send::{Sent, can_share, mail, save, share};
use crate::app::signals::Outside;
use crate::record::{About, Body, Outgoing, Way};
use crate::report::mail::{Enclosed, short_text, to_eml};
use crate::report::{compose, to_csv};
use crate::store::KeptFile;
use crate::words::Phrase as P;

/// The outbox.
#[component]
pub fn Outbox() -> View {
    let words = prefs().words;
    let summary = ledger().summary();
    let outside: Outside = expect_context();
    let title = words.phrase(P::Outbox);
    let sub = live(move || {
        words.phrase(if outside.signal.get() {
            P::SignalThere
        } else {
            P::SignalNone
        })
    });
    let going = Memo::new(move |_| summary.with(|all| all.outbox()));
    markup! {
        <Screen title sub name="outbox" back=(Route::Home, words.phrase(P::Home).to_owned())>
            {move || {
                going
                    .with(Vec::is_empty)
                    .then(|| markup! { <p>{words.phrase(P::OutboxEmpty)}</p> })
            }}
            {move || going.get().into_iter().map(|out| markup! { <Going out /> }).collect_view()}
        </Screen>
    }
}

#[component]
fn Going(out: Outgoing) -> View {
    let words = prefs().words;
    let ledger = ledger();
    let outside: Outside = expect_context();
    let (visit, id) = (out.visit, out.file);
    let about = About::Visit(visit);
    let issue = out.issue;
    let site = ledger.summary().with_untracked(|all| {
        let site = all.visits().iter().find(|line| line.id == visit)?.site;
        all.site(site).map(|s| s.name.clone())
    });
    // The bytes are fetched before the tap: the share sheet opens only
    // straight from a tap.
    let file = RwSignal::new(None::<KeptFile>);
    let refused = RwSignal::new(None::<P>);
    let sha256 = out.sha256.clone();
    spawn_local(async move {
        let kept = ledger.file(id).await;
        // A report is frozen: what goes out is what was made.
        match kept {
            Some(kept) if !sha256.is_empty() && kept.sha256() != sha256 => {
                refused.set(Some(P::FileChanged));
            }
            kept => file.set(kept),
        }
        // For the mail's text.
        ledger.bring_visit(visit).await;
    });
    let handed = move |way: Way| ledger.write(about, Body::ReportHandedOver { file: id, way });
    let shareable = move || file.with(|f| f.as_ref().is_some_and(can_share));
    let do_share = move |_| {
        let Some(kept) = file.get_untracked() else {
            return;
        };
        spawn_local(async move {
            match share(&kept).await {
                Sent::Yes => handed(Way::Shared),
                Sent::ThoughtBetter => {}
                Sent::Refused => refused.set(Some(P::ShareRefused)),
            }
        });
    };
    // Subject and text: the customer's page.
    let letter = move || {
        ledger.log().with_untracked(|log| {
            let mut visit = log.visit(visit)?;
            let site = log.site(visit.site)?;
            visit.paper.card = card();
            // The issue that goes out, not the next one.
            visit.reports.truncate(issue - 1);
            let system = prefs().system.get_untracked();
            let spoken = untrack(|| prefs().report_words());
            let doc = compose(&site, &visit, system, spoken, "");
            Some((doc.footer.title.clone(), short_text(&doc, 72)))
        })
    };
    let do_mail = move |_| {
        if let Some((subject, body)) = letter() {
            let more = untrack(|| prefs().report_words()).phrase(P::MailMore);
            mail(&subject, &body, more);
            handed(Way::Mailed);
        }
    };
    let do_mail_file = move |_| {
        let (Some((subject, body)), Some(kept)) = (letter(), file.get_untracked()) else {
            return;
        };
        let enclosed = Enclosed {
            name: &kept.name,
            media_type: &kept.media_type,
            bytes: &kept.bytes,
        };
        let message = KeptFile {
            name: kept.name.replace(".pdf", ".eml"),
            media_type: "message/rfc822".into(),
            bytes: to_eml(&subject, &body, &[enclosed], &ledger.now()),
            ..kept.clone()
        };
        if save(&message) {
            handed(Way::MailFile);
        }
    };
    let do_table = move |_| {
        let table = ledger.log().with_untracked(|log| {
            let visit = log.visit(visit)?;
            let site = log.site(visit.site)?;
            let spoken = untrack(|| prefs().report_words());
            Some(to_csv(
                &site,
                &visit,
                prefs().system.get_untracked(),
                spoken,
            ))
        });
        if let (Some(table), Some(kept)) = (table, file.get_untracked()) {
            save(&KeptFile {
                name: kept.name.replace(".pdf", ".csv"),
                media_type: "text/csv".into(),
                bytes: table.into_bytes(),
                ..kept
            });
        }
    };
    let do_save = move |_| {
        if let Some(kept) = file.get_untracked()
            && save(&kept)
        {
            handed(Way::Saved);
        }
    };
    let name = out.name.clone();
    // Handed over: then the first thing is whether it arrived.
    let asked = out.handed.is_some();
    markup! {
        <section data-test="outgoing">
            <h2>{site.unwrap_or_default()}</h2>
            <p>{name}</p>
            <p class="sub">
                {match out.handed {
                    Some((way, at)) => words.handed_over(way, &at.clock()),
                    None => words.report_waits(&out.made.date(), &out.made.clock()),
                }}
            </p>
            {move || {
                refused.get().map(|why| markup! { <p class="said no">{words.phrase(why)}</p> })
            }}
            <div class="answers">
                {asked
                    .then(|| {
                        markup! {
                            <button
                                class="primary"
                                data-test="confirm-sent"
                                on:click=tap(move |_| {
                                    ledger.write(about, Body::ReportConfirmed { file: id })
                                })
                            >
                                {words.phrase(P::ItArrived)}
                            </button>
                        }
                    })}
                {move || {
                    shareable()
                        .then(|| {
                            markup! {
                                <button class:primary=!asked data-test="share" on:click=tap(do_share)>
                                    {words.phrase(P::ShareReport)}
                                </button>
                            }
                        })
                }}
                <button data-test="mail-file" class:primary=move || !asked && !shareable() on:click=tap(do_mail_file)>
                    {words.phrase(P::MailFile)}
                </button>
                <button data-test="mail" on:click=tap(do_mail) disabled=move || !outside.signal.get()>
                    {words.phrase(P::MailReport)}
                </button>
                <button data-test="save-pdf" on:click=tap(do_save)>
                    {words.phrase(P::SaveReport)}
                </button>
                <button data-test="save-csv" on:click=tap(do_table)>
                    {words.phrase(P::SaveTable)}
                </button>
                <a class="button plain" href=Route::Visit(visit, Station::Report).href()>
                    {words.phrase(P::ToVisit)}
                </a>
            </div>
        </section>
    }
}
