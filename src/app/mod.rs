//! The face: shell, screens, widgets.

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
use crate::store::StoreError;
use crate::words::{Phrase, Words};
use ledger::Ledger;
use prefs::Prefs;
use route::{Route, Station};
use screens::{
    found::Found,
    home::Home,
    leaving::Leaving,
    new_site::NewSite,
    numbers::Numbers,
    outbox::Outbox,
    overview::Overview,
    refill::Refill,
    report::Report,
    settings::Settings,
    site::SiteScreen,
    site_part::SitePart,
    trace::Trace,
    working::{WorkingScreen, Workings},
};
use signals::Outside;

/// Opens the store and mounts the app on the page.
pub fn start() {
    console_error_panic_hook::set_once();
    // Leptos sets up its own executor only when it mounts.
    wasm_bindgen_futures::spawn_local(async {
        let opened = Ledger::open().await;
        match opened {
            Ok(ledger) => view::mount(move || markup! { <App ledger /> }),
            Err(fault) => view::mount(move || markup! { <NoStore fault=fault.clone() /> }),
        }
    });
}

#[component]
fn App(ledger: Ledger) -> View {
    let chosen = Prefs::load(ledger);
    ledger::open_for_all(ledger);
    prefs::keep_for_all(chosen);
    provide_context(Outside::listen());
    let route = route::follow_address();
    let screen = move || {
        // A change of units draws the whole screen anew.
        chosen.system.track();
        match route.get() {
            Route::Home => markup! { <Home /> },
            Route::NewSite => markup! { <NewSite /> },
            Route::Site(id) | Route::History(id) => markup! { <SiteScreen id /> },
            Route::SitePart(id, part) => markup! { <SitePart id part /> },
            Route::Outbox => markup! { <Outbox /> },
            Route::Settings => markup! { <Settings /> },
            Route::Workings(visit) => markup! { <Workings visit /> },
            Route::Working(visit, working) => markup! { <WorkingScreen visit working /> },
            Route::Visit(id, station) => match station {
                Station::Overview => markup! { <Overview id /> },
                Station::Found => markup! { <Found id /> },
                Station::Numbers => markup! { <Numbers id /> },
                Station::Trace => markup! { <Trace id /> },
                Station::Refill => markup! { <Refill id /> },
                Station::Left => markup! { <Leaving id /> },
                Station::Report => markup! { <Report id /> },
            },
        }
    };
    markup! { <div data-test="app">{screen}</div> }
}

/// Said when the browser gives no storage: without it nothing could be kept.
#[component]
fn NoStore(fault: StoreError) -> View {
    let words = Words::default();
    let detail = match fault {
        StoreError::Failed(text) => text,
        StoreError::Full => words.phrase(Phrase::StoreFull).to_owned(),
        StoreError::Denied => String::new(),
    };
    markup! {
        <div class="screen" data-test="no-store">
            <header>
                <h1>{words.phrase(Phrase::NoStoreTitle)}</h1>
            </header>
            <main>
                <p>{words.phrase(Phrase::NoStoreBody)}</p>
                <p class="sub small">{detail}</p>
            </main>
        </div>
    }
}
