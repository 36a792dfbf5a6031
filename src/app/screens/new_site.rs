//! A new site in a minute: its name, where it is, how many machines. All else
//! is completed on the site's own screen, when somebody knows it.

use crate::app::view::prelude::*;

use crate::app::ledger::ledger;
use crate::app::parts::field::{TextField, settle_text, to_field};
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Route, go};
use crate::record::{About, Body, Machine, Site, SiteId};
use crate::words::Phrase as P;

const NAME: &str = "site name";
const PLACE: &str = "site place";
const MACHINES: &str = "draft site machines";

/// The most machines that are made in one go; more can be added later.
const MOST: usize = 24;

/// Machines of which only the place in the row is known.
fn nameless(count: usize) -> Vec<Machine> {
    let machine = |n| Machine {
        id: ledger().id(),
        name: prefs().words.machine_numbered(n),
        refrigerant: None,
        cut_out: None,
        rejects: None,
        nameplate: String::new(),
    };
    (1..=count).map(machine).collect()
}

/// The screen.
#[component]
pub fn NewSite() -> View {
    let words = prefs().words;
    let name = RwSignal::new(String::new());
    let place = RwSignal::new(String::new());
    let drafted = ledger().text(MACHINES).and_then(|n| n.parse().ok());
    let count = RwSignal::new(drafted.unwrap_or(3_usize).min(MOST));
    let tried = RwSignal::new(false);
    let step = move |more: bool| {
        count.update(|n| {
            *n = if more {
                (*n + 1).min(MOST)
            } else {
                n.saturating_sub(1)
            }
        });
        ledger().keep_text(MACHINES, &count.get_untracked().to_string());
    };
    let save = move |_| {
        let site = Site {
            name: name.get_untracked().trim().to_owned(),
            place: place.get_untracked().trim().to_owned(),
            machines: nameless(count.get_untracked()),
            ..Site::default()
        };
        if site.name.is_empty() {
            tried.set(true);
            request_animation_frame(|| to_field(".field[data-state=refused] input"));
            return;
        }
        let id: SiteId = ledger().id();
        ledger().write_then(About::Site(id), vec![Body::described(site)], move || {
            [NAME, PLACE].into_iter().for_each(settle_text);
            ledger().keep_text(MACHINES, "");
            go(Route::Site(id));
        });
    };
    let name_missing = Signal::derive(move || {
        (tried.get() && name.with(|n| n.trim().is_empty()))
            .then(|| words.phrase(P::NameNeeded).to_owned())
    });
    let title = words.phrase(P::NewSiteTitle);
    let sub = words.phrase(P::NewSiteSub);
    let back = (Route::Home, words.phrase(P::Home).to_owned());
    let act = markup! {
        <button class="primary" data-test="save-site" on:click=tap(save)>
            {words.phrase(P::SaveSite)}
        </button>
    };
    markup! {
        <Screen title sub name="new-site" back act>
            <div class="fields">
                <TextField key=NAME text=name label=words.phrase(P::SiteName)
                    refusal=name_missing test="site-name" />
                <TextField key=PLACE text=place label=words.phrase(P::SitePlace)
                    test="site-place" />
                <div class="field">
                    <span class="label" id="count-label">{words.phrase(P::MachinesOnLoop)}</span>
                    <p class="hint">{words.phrase(P::MachinesOnLoopHint)}</p>
                    <div class="stepper" role="group" aria-labelledby="count-label">
                        <button type="button" aria-label=words.phrase(P::OneLess)
                            data-test="fewer" on:click=tap(move |_| step(false))>"−"</button>
                        <output data-test="machine-count" class="value">
                            {move || count.get().to_string()}
                        </output>
                        <button type="button" aria-label=words.phrase(P::OneMore)
                            data-test="more" on:click=tap(move |_| step(true))>"+"</button>
                    </div>
                </div>
            </div>
        </Screen>
    }
}
