//! The face: shell, screens, widgets.

mod card;
mod ledger;
mod parts;
mod ports;
mod prefs;
mod route;
mod screens;
mod send;
mod signals;
pub mod view;

use crate::app::view::prelude::*;
use crate::record::{About, VisitId};
use crate::store::{StoreError, lock_wait};
use crate::words::{Phrase, Words};
use ledger::Ledger;
use parts::fault::fault_said;
use parts::shell::opening;
use prefs::Prefs;
use route::{Route, Station};
use screens::{
    found::Found,
    history::HistoryScreen,
    home::Home,
    leaving::Leaving,
    lock::LockScreen,
    new_site::NewSite,
    numbers::Numbers,
    outbox::Outbox,
    overview::Overview,
    papers::Papers,
    refill::Refill,
    report::Report,
    settings::Settings,
    site::SiteScreen,
    site_part::SitePart,
    trace::Trace,
    working::{WorkingScreen, Workings},
};
use signals::{Outside, when_whole};

/// Opens the store and mounts the app on the page.
pub fn start() {
    // The boot script reads it there when the program has died.
    std::panic::set_hook(Box::new(|why| {
        prefs::mark_root("data-stopped", &why.to_string());
    }));
    // Leptos sets up its own executor only when it mounts.
    wasm_bindgen_futures::spawn_local(async {
        let mut opened = Ledger::open(say_again).await;
        // The line that stood meanwhile.
        if let Some(boot) = document().get_element_by_id("boot") {
            boot.remove();
        }
        while let Err(StoreError::Locked) = opened {
            if let Err(fault) = lock_wait("gate", &js_sys::Array::new()).await {
                opened = Err(fault);
                break;
            }
            opened = Ledger::open(say_again).await;
        }
        match opened {
            Ok(ledger) => {
                view::mount(move || markup! { <App ledger /> });
                // When the first screen stands.
                request_animation_frame(move || when_whole(move || ledger.read_on()));
            }
            Err(fault) => view::mount(move || markup! { <NoStore fault=fault.clone() /> }),
        }
    });
}

/// Said in place of the loading line while the lists are made anew.
fn say_again() {
    if let Some(line) = document().get_element_by_id("boot-say") {
        line.set_text_content(Some(Words(prefs::of_browser()).phrase(Phrase::ListsAgain)));
    }
}

#[component]
fn App(ledger: Ledger) -> View {
    let chosen = Prefs::load(ledger);
    ledger::open_for_all(ledger);
    prefs::keep_for_all(chosen);
    provide_context(Outside::listen());
    let route = route::follow_address();
    // The entries a screen shows are brought before it is drawn.
    let needs = move || match route.get() {
        Route::Visit(id, _) | Route::Workings(Some(id)) | Route::Working(Some(id), _) => {
            Some(About::Visit(id))
        }
        Route::Site(id) | Route::SitePart(id, _) | Route::History(id) => Some(About::Site(id)),
        _ => None,
    };
    let there = Memo::new(move |_| {
        let Some(about) = needs() else {
            return true;
        };
        let About::Visit(id) = about else {
            return ledger.is_open(about);
        };
        let site = ledger.log().with_untracked(|log| Some(log.visit(id)?.site));
        let before = site.and_then(|site| ledger.visit_before(id, site));
        ledger.is_open(about)
            && site.is_none_or(|site| ledger.is_open(About::Site(site)))
            && before.is_none_or(|before| ledger.is_open(About::Visit(before)))
    });
    let screen = move || {
        route.track();
        // A change of units or language draws the whole screen anew.
        chosen.system.track();
        chosen.tongue.track();
        if !there.get() {
            let about = untrack(needs);
            wasm_bindgen_futures::spawn_local(async move {
                match about {
                    Some(About::Visit(id)) => ledger.bring_visit(id).await,
                    Some(about) => ledger.bring(about).await,
                    None => {}
                }
            });
            return opening();
        }
        match route.get() {
            Route::Home => markup! { <Home /> },
            // Called where it can't be inlined: an engine compiles what it runs, and a
            // start needs no other screen.
            other => std::hint::black_box(screen_of as fn(Route) -> View)(other),
        }
    };
    markup! { <div data-test="app">{screen}</div> }
}

/// Every screen but the first.
fn screen_of(route: Route) -> View {
    match route {
        Route::Home => markup! { <Home /> },
        Route::NewSite => markup! { <NewSite /> },
        Route::Site(id) => markup! { <SiteScreen id /> },
        Route::History(id) => markup! { <HistoryScreen id /> },
        Route::SitePart(id, part) => markup! { <SitePart id part /> },
        Route::Outbox => markup! { <Outbox /> },
        Route::Settings => markup! { <Settings /> },
        Route::Lock => markup! { <LockScreen /> },
        Route::Workings(visit) => markup! { <Workings visit /> },
        Route::Working(visit, working) => markup! { <WorkingScreen visit working /> },
        Route::Visit(id, station) => {
            // One alone is compiled when it is gone to.
            let screen: fn(VisitId) -> View = match station {
                Station::Overview => |id| markup! { <Overview id /> },
                Station::Found => |id| markup! { <Found id /> },
                Station::Numbers => |id| markup! { <Numbers id /> },
                Station::Trace => |id| markup! { <Trace id /> },
                Station::Refill => |id| markup! { <Refill id /> },
                Station::Left => |id| markup! { <Leaving id /> },
                Station::Papers => |id| markup! { <Papers id /> },
                Station::Report => |id| markup! { <Report id /> },
            };
            screen(id)
        }
    }
}

/// Said when the browser gives no storage: without it nothing could be kept.
#[component]
fn NoStore(fault: StoreError) -> View {
    let words = Words(prefs::of_browser());
    let detail = match fault {
        StoreError::Denied => String::new(),
        other => fault_said(words, &other),
    };
    let again = move |_| drop(ports::window().location().reload());
    markup! {
        <div class="screen" data-test="no-store">
            <header>
                <h1>{words.phrase(Phrase::NoStoreTitle)}</h1>
            </header>
            <main>
                <p>{words.phrase(Phrase::NoStoreBody)}</p>
                <p class="sub small">{detail}</p>
            </main>
            <div class="act">
                <button class="primary" data-test="try-again" on:click=tap(again)>
                    {words.phrase(Phrase::TryAgain)}
                </button>
            </div>
        </div>
    }
}
