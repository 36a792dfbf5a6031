//! Home: visits, newest first, and the sites to open one at.

use crate::app::view::prelude::*;

use crate::app::ledger::ledger;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station, go};
use crate::app::signals::Outside;
use crate::record::{About, Body, SiteId, VisitId, demo};
use crate::words::Phrase as P;

/// Opens a visit at a site and goes to its first readings.
pub fn open_visit(site: SiteId, complaint: String) {
    let visit: VisitId = ledger().id();
    let opened = Body::VisitOpened { site, complaint };
    ledger().write_then(About::Visit(visit), vec![opened], move || {
        go(Route::Visit(visit, Station::Overview));
    });
}

/// Puts the demo site on this phone, once, and opens a visit there.
fn open_demo() {
    let ledger = ledger();
    let complaint = prefs().words.phrase(P::DemoComplaint).to_owned();
    let known = ledger.log().with_untracked(|log| {
        log.sites()
            .into_iter()
            .find(|(_, site)| site.demo)
            .map(|(id, _)| id)
    });
    match known {
        Some(site) => open_visit(site, complaint),
        None => {
            let site: SiteId = ledger.id();
            let described = Body::SiteDescribed {
                site: demo::bakery(|| ledger.id()),
            };
            ledger.write_then(About::Site(site), vec![described], move || {
                open_visit(site, complaint);
            });
        }
    }
}

/// The first screen.
#[component]
pub fn Home() -> View {
    let words = prefs().words;
    let log = ledger().log();
    let outside: Outside = expect_context();
    let visits = Memo::new(move |_| log.with(|log| log.visits()));
    let sites = Memo::new(move |_| log.with(|log| log.sites()));
    let outbox = Memo::new(move |_| log.with(|log| log.outbox().len()));
    let title = words.phrase(P::Product);
    let sub = words.phrase(P::ProductLine);
    let site_name = move |id: SiteId| {
        sites.with(|s| {
            s.iter()
                .find(|(s, _)| *s == id)
                .map(|(_, s)| s.name.clone())
        })
    };
    let empty = move || sites.with(Vec::is_empty);
    let act = move || {
        if empty() {
            markup! {
                <button class="primary" data-test="open-demo" on:click=tap(move |_| open_demo())>
                    {words.phrase(P::OpenDemo)}
                </button>
                <a class="button" href=Route::NewSite.href() data-test="new-site">
                    {words.phrase(P::DescribeSite)}
                </a>
            }
        } else {
            markup! {
                <a class="button primary" href="#sites" data-test="choose-site" on:click=tap(|ev| {
                    ev.prevent_default();
                    if let Some(list) = document().get_element_by_id("sites") {
                        list.scroll_into_view();
                    }
                })>
                    {words.phrase(P::OpenVisitAt)}
                </a>
            }
        }
    };
    let visit_rows = move || {
        visits
            .get()
            .into_iter()
            .map(|line| {
                let icon = if line.closed { Icon::Full } else { Icon::Half };
                let state = if line.closed { P::Closed } else { P::Open };
                markup! {
                    <li>
                        <a href=Route::Visit(line.id, Station::Overview).href() data-test="visit-row">
                            <Draw icon />
                            <span class="name">{site_name(line.site)}</span>
                            <span class="tail">
                                {format!("{} {}", line.opened.date(), line.opened.clock())}
                            </span>
                            <span class="under">
                                {format!("{} · {}", words.phrase(state), line.complaint)}
                            </span>
                        </a>
                    </li>
                }
            })
            .collect_view()
    };
    let site_rows = move || {
        sites
            .get()
            .into_iter()
            .map(|(id, site)| {
                markup! {
                    <li>
                        <a href=Route::Site(id).href() data-test="site-row">
                            <Draw icon=Icon::Empty />
                            <span class="name">{site.name.clone()}</span>
                            <span class="tail">{words.machines(site.machines.len())}</span>
                            <span class="under">{site.place.clone()}</span>
                        </a>
                    </li>
                }
            })
            .collect_view()
    };
    markup! {
        <Screen title sub name="home" act>
            {move || {
                empty()
                    .then(|| {
                        markup! {
                            <section>
                                <h2>{words.phrase(P::FirstTitle)}</h2>
                                <ol class="bullets">
                                    {[P::First1, P::First2, P::First3, P::First4]
                                        .map(|p| markup! { <li>{words.phrase(p)}</li> })
                                        .collect_view()}
                                </ol>
                                <p class="sub small" data-test="offline-ready">
                                    {move || {
                                        words
                                            .phrase(
                                                if outside.offline_ready.get() {
                                                    P::OfflineReady
                                                } else {
                                                    P::OfflineNotYet
                                                },
                                            )
                                    }}
                                </p>
                            </section>
                        }
                    })
            }}
            {move || {
                (!visits.with(Vec::is_empty))
                    .then(|| {
                        markup! {
                            <section>
                                <h2>{words.phrase(P::Visits)}</h2>
                                <ul class="rows" data-test="visits">{visit_rows()}</ul>
                            </section>
                        }
                    })
            }}
            {move || {
                (!empty())
                    .then(|| {
                        markup! {
                            <section id="sites">
                                <h2>{words.phrase(P::Sites)}</h2>
                                <ul class="rows">{site_rows()}</ul>
                                <a class="button" href=Route::NewSite.href() data-test="new-site">
                                    {words.phrase(P::DescribeSite)}
                                </a>
                            </section>
                        }
                    })
            }}
            <nav class="pair">
                <a class="button" href=Route::Outbox.href() data-test="to-outbox">
                    {move || words.outbox_with(outbox.get())}
                </a>
                <a class="button" href=Route::Workings(None).href() data-test="to-workings">
                    {words.phrase(P::Workings)}
                </a>
                <a class="button" href=Route::Settings.href() data-test="to-settings">
                    {words.phrase(P::Settings)}
                </a>
            </nav>
            {(ledger().unreadable() > 0)
                .then(|| markup! { <p class="sub">{words.unreadable(ledger().unreadable())}</p> })}
        </Screen>
    }
}
