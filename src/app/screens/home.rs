//! Home: a search over sites and visits; visits, newest first; and the sites to
//! open one at. Only what fits a screen or two is drawn at once.

use crate::app::view::prelude::*;
use leptos::task::spawn_local;

use super::lock::lock_now;
use crate::app::ledger::ledger;
use crate::app::parts::field::settle_text;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::install::install;
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station, go};
use crate::app::signals::Outside;
use crate::quantity::sort_by;
use crate::record::{
    About, Body, Costs, Query, SiteId, SiteLine, Summary, Table, VisitId, VisitLine, demo,
};
use crate::words::Phrase as P;

/// Rows of a list that are drawn at first, and more at each tap.
const ROWS: usize = 10;

/// Opens a visit at a site and goes to it. The draft of its complaint is
/// forgotten when it is on disk.
pub fn open_visit(site: SiteId, complaint: String, draft: Option<&'static str>) {
    let visit: VisitId = ledger().id();
    let opened = Body::VisitOpened { site, complaint };
    ledger().write_then(About::Visit(visit), vec![opened], move || {
        draft.into_iter().for_each(settle_text);
        go(Route::Visit(visit, Station::Overview));
    });
}

/// Puts the demo site on this phone, once, and opens a visit there.
fn open_demo(opening: RwSignal<bool>) {
    opening.set(true);
    let ledger = ledger();
    let complaint = prefs().words.phrase(P::DemoComplaint).to_owned();
    let known = ledger
        .summary()
        .with_untracked(|all| all.sites().into_iter().find(|s| s.demo).map(|s| s.id));
    match known {
        Some(site) => open_visit(site, complaint, None),
        None => {
            let site: SiteId = ledger.id();
            let bakery = demo::bakery(|| ledger.id());
            let earlier = ledger.earlier(site, &bakery);
            let described = Body::described(bakery);
            ledger.write_then(About::Site(site), vec![described], move || {
                spawn_local(async move {
                    ledger.keep_made(earlier).await;
                    open_visit(site, complaint, None);
                });
            });
        }
    }
}

/// What the lists show: sites, and visits with the names of their sites.
type Lists = (Vec<SiteLine>, Vec<(VisitLine, String)>);

/// The sites and visits that a search finds, best first; all of them while
/// nothing is asked.
fn found(all: &Summary, query: &Query) -> Lists {
    let mut names: Table<SiteId, Costs> = Table::new();
    let mut sites: Vec<(u32, &SiteLine)> = Vec::new();
    let mut visits: Vec<(u32, &VisitLine)> = Vec::new();
    if query.is_empty() {
        sites.extend(all.sites().into_iter().map(|s| (0, s)));
        visits.extend(all.visits().iter().take(MOST).map(|v| (0, v)));
    } else {
        for site in all.sites() {
            let place = query.costs(&site.place).further();
            let costs = query.costs(&site.name).or(place);
            sites.extend(query.score(&[costs]).map(|score| (score, site)));
            names.insert(site.id, costs);
        }
        for visit in all.visits() {
            let own = query.costs(&format!("{} {}", visit.complaint, visit.opened.date()));
            let site = names.get(&visit.site).copied();
            let score = query.score(&[site.unwrap_or(own), own]);
            visits.extend(score.map(|score| (score, visit)));
        }
        // Equal ones stay in their order: sites by name, visits newest first.
        sort_by(&mut sites, |a, b| a.0.cmp(&b.0));
        sort_by(&mut visits, |a, b| a.0.cmp(&b.0));
    }
    let name = |id| all.site(id).map_or(String::new(), |s| s.name.clone());
    // More than these nobody pages through: the search narrows it.
    let visits = visits.into_iter().take(MOST);
    (
        sites.into_iter().take(MOST).map(|s| s.1.clone()).collect(),
        visits.map(|(_, v)| (v.clone(), name(v.site))).collect(),
    )
}

/// The most rows that can be paged through.
const MOST: usize = 400;

/// What the marks of the waterline mean.
fn lesson() -> View {
    let words = prefs().words;
    [
        (P::MarkOverflow, P::LessonOver),
        (P::MarkStop, P::LessonStop),
        (P::MarkCall, P::LessonCall),
        (P::MarkInlet, P::LessonInlet),
    ]
    .map(|(mark, means)| {
        markup! { <div><dt>{words.phrase(mark)}</dt><dd>{words.phrase(means)}</dd></div> }
    })
    .collect_view()
}

/// The first screen.
#[component]
pub fn Home() -> View {
    let words = prefs().words;
    let summary = ledger().summary();
    let outside: Outside = expect_context();
    let asked = RwSignal::new(String::new());
    let visits_shown = RwSignal::new(ROWS);
    let sites_shown = RwSignal::new(ROWS);
    // While the demo is written the first screen stays as it is: what is drawn
    // next is the visit.
    let opening = RwSignal::new(false);
    let holds = move || opening.get() && ledger().trouble().is_none();
    let lists = Memo::new(move |_| {
        if holds() {
            return Lists::default();
        }
        let query = asked.with(|text| Query::new(text));
        summary.with(|all| found(all, &query))
    });
    let outbox = Memo::new(move |_| summary.with(|all| all.outbox().len()));
    let empty = Memo::new(move |_| holds() || summary.with(Summary::is_empty));
    let title = words.phrase(P::Product);
    let sub = words.phrase(P::ProductLine);
    let act = move || {
        if empty.get() {
            markup! {
                <button class="primary" data-test="open-demo" on:click=tap(move |_| open_demo(opening))>
                    {move || words.phrase(if opening.get() { P::Opening } else { P::OpenDemo })}
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
        let rows = |(line, name): &(VisitLine, String)| {
            let icon = if line.closed { Icon::Full } else { Icon::Half };
            let state = if line.closed { P::Closed } else { P::Open };
            markup! {
                <li>
                    <a href=Route::Visit(line.id, Station::Overview).href() data-test="visit-row">
                        <Draw icon />
                        <span class="name">{name.clone()}</span>
                        <span class="tail">{line.opened.date()}</span>
                        <span class="under">
                            {format!("{} · {}", words.phrase(state), line.complaint)}
                        </span>
                    </a>
                </li>
            }
        };
        lists.with(|(_, visits)| {
            visits
                .iter()
                .take(visits_shown.get())
                .map(rows)
                .collect_view()
        })
    };
    let site_rows = move || {
        let rows = |site: &SiteLine| {
            markup! {
                <li>
                    <a href=Route::Site(site.id).href() data-test="site-row">
                        <Draw icon=Icon::Basin />
                        <span class="name">{site.name.clone()}</span>
                        <span class="tail">{words.machines(site.machines)}</span>
                        <span class="under">{site.place.clone()}</span>
                    </a>
                </li>
            }
        };
        lists.with(|(sites, _)| {
            sites
                .iter()
                .take(sites_shown.get())
                .map(rows)
                .collect_view()
        })
    };
    let more = move |shown: RwSignal<usize>, count: usize, test: &'static str| {
        (count > shown.get()).then(|| {
            markup! {
                <button type="button" data-test=test on:click=tap(move |_| shown.update(|n| *n += ROWS))>
                    {words.phrase(P::ShowMore)}
                </button>
            }
        })
    };
    let nothing =
        move || lists.with(|(sites, visits)| sites.is_empty() && visits.is_empty()) && !empty.get();
    let search = move |ev| {
        asked.set(event_target_value(&ev));
        visits_shown.set(ROWS);
        sites_shown.set(ROWS);
    };
    let field = move || {
        (!empty.get()).then(|| {
            markup! {
                <div class="field">
                    <label for="f-search">{words.phrase(P::Search)}</label>
                    <input id="f-search" data-test="search" type="search" autocomplete="off"
                        autocapitalize="off" spellcheck="false" enterkeyhint="search"
                        aria-describedby="s-search"
                        on:input=search />
                    <p id="s-search" class="said" aria-live="polite">
                        {move || nothing().then(|| words.phrase(P::SearchNothing))}
                    </p>
                </div>
            }
        })
    };
    // Below the fold.
    let below = markup! {
        {move || {
            (!empty.get())
                .then(|| {
                    markup! {
                        <section id="sites">
                            <h2>{words.phrase(P::Sites)}</h2>
                            <ul class="rows">{site_rows()}</ul>
                            {more(sites_shown, lists.with(|l| l.0.len()), "more-sites")}
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
            {lock_now()}
        </nav>
        {(ledger().unreadable() > 0)
            .then(|| markup! { <p class="sub">{words.unreadable(ledger().unreadable())}</p> })}
    };
    markup! {
        <Screen title sub name="home" act>
            {move || {
                empty
                    .get()
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
                            {soon(markup! {
                                <section>
                                    <h2>{words.phrase(P::LessonTitle)}</h2>
                                    <p>{words.phrase(P::LessonSub)}</p>
                                    <dl class="lesson">{lesson()}</dl>
                                </section>
                                {install()}
                            })}
                        }
                    })
            }}
            <div>{field}</div>
            {move || {
                (!lists.with(|l| l.1.is_empty()))
                    .then(|| {
                        markup! {
                            <section>
                                <h2>{words.phrase(P::Visits)}</h2>
                                <ul class="rows" data-test="visits">{visit_rows()}</ul>
                                {more(visits_shown, lists.with(|l| l.1.len()), "more-visits")}
                            </section>
                        }
                    })
            }}
            {soon(below)}
        </Screen>
    }
}
