//! The frame that all stations of a visit share: the visit and its site,
//! looked up once, the waterline, and the way back to the overview.

use crate::app::view::prelude::*;

use crate::app::ledger::ledger;
use crate::app::parts::shell::{Edge, Screen};
use crate::app::prefs::prefs;
use crate::app::route::{Part, Route, Station};
use crate::record::{About, Body, Site, Visit, VisitId};
use crate::words::Phrase as P;

/// A visit and its site, tracked.
#[derive(Clone, Copy)]
pub struct Job {
    /// The visit's name.
    pub id: VisitId,
    /// The visit as it stands.
    pub visit: Memo<Option<Visit>>,
    /// Its site as last described.
    pub site: Memo<Option<Site>>,
}

impl Job {
    /// Looks a visit up.
    pub fn of(id: VisitId) -> Self {
        let visit = ledger().visit(id);
        let log = ledger().log();
        let site = Memo::new(move |_| {
            let site = visit.with(|v| v.as_ref().map(|v| v.site))?;
            log.with(|log| log.site(site))
        });
        Self { id, visit, site }
    }

    /// Both, when both are known.
    pub fn both(self) -> Option<(Visit, Site)> {
        self.visit.get().zip(self.site.get())
    }

    /// What its entries are about.
    pub fn about(self) -> About {
        About::Visit(self.id)
    }

    /// Writes one entry about it.
    pub fn write(self, body: Body) {
        ledger().write(self.about(), body);
    }
}

/// A station's screen.
#[component]
pub fn StationScreen(
    /// The job.
    job: Job,
    /// Station's title.
    title: P,
    /// Under the title.
    #[prop(into)]
    sub: View,
    /// Name for tests.
    name: &'static str,
    /// The action bar.
    #[prop(into)]
    act: View,
    /// The body.
    children: Children,
) -> View {
    let words = prefs().words;
    let edge = Signal::derive(move || {
        let tower = job.site.with(|s| s.as_ref().map(|s| s.tower.clone()))?;
        job.visit.with(|visit| {
            Some(Edge {
                visit: job.id,
                tower,
                level: visit.as_ref()?.last_level(),
            })
        })
    });
    let back = move || {
        let name = job
            .site
            .with_untracked(|s| s.as_ref().map(|s| s.name.clone()));
        let name = name.unwrap_or_else(|| words.phrase(P::Visit).to_owned());
        (Route::Visit(job.id, Station::Overview), name)
    };
    let title = words.phrase(title);
    if job.visit.with(Option::is_none) || job.site.with(Option::is_none) {
        return markup! { <NotFound /> };
    }
    markup! {
        <Screen title sub edge name back=back() act>
            {children()}
        </Screen>
    }
}

/// The way on to the next screen, in the action bar.
pub fn way_on(to: Route, name: &str) -> View {
    let name = name.to_owned();
    markup! {
        <a class="button primary" href=to.href() data-test="next">{name}</a>
    }
}

/// In place of the refill test while the basin is not described.
pub fn to_basin(job: Job) -> View {
    let words = prefs().words;
    let site = job.visit.with_untracked(|v| v.as_ref().map(|v| v.site));
    let href = site
        .map_or(Route::Home, |id| Route::SitePart(id, Part::Basin))
        .href();
    markup! {
        <a class="button primary" href=href data-test="to-basin">{words.phrase(P::ToBasin)}</a>
    }
}

/// Said when an address names something this phone does not hold.
#[component]
pub fn NotFound() -> View {
    let words = prefs().words;
    let title = words.phrase(P::NotHereTitle);
    markup! {
        <Screen
            title
            name="not-here"
            back=(Route::Home, words.phrase(P::Home).to_owned())
        >
            <p>{words.phrase(P::NotHereBody)}</p>
        </Screen>
    }
}
