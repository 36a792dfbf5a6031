//! Which screen is up: the part of the address after `#`, so that the back
//! button and a link to a screen work without a server.

use std::cell::Cell;

use leptos::prelude::window_event_listener_untyped;

use crate::app::view::prelude::*;

use super::ports::{call, get, window};
use crate::record::{SiteId, VisitId};
use crate::working::Working;

/// A screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Route {
    /// Sites and visits.
    Home,
    /// Describing a new site.
    NewSite,
    /// One site.
    Site(SiteId),
    /// One part of a site, to complete or correct.
    SitePart(SiteId, Part),
    /// What a site's visits show over time.
    History(SiteId),
    /// A visit, at one of its stations.
    Visit(VisitId, Station),
    /// Reports that wait to be sent.
    Outbox,
    /// Units, language, light, who does the visits, the lock, backups.
    Settings,
    /// The lock over the records.
    Lock,
    /// The list of workings; of a visit, filled from it.
    Workings(Option<VisitId>),
    /// One working; of a visit, filled from it.
    Working(Option<VisitId>, Working),
}

/// The parts of a site's description.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Name, address, way in, contacts.
    Who,
    /// The machines on the loop.
    Machines,
    /// Design point, height, makeup water.
    Tower,
    /// Basin and marks.
    Basin,
    /// Loop and level control.
    Plant,
}

const PARTS: [(Part, &str); 5] = [
    (Part::Who, "who"),
    (Part::Machines, "machines"),
    (Part::Tower, "tower"),
    (Part::Basin, "basin"),
    (Part::Plant, "plant"),
];

/// The stations of a visit, in the order of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Station {
    /// The visit at a glance.
    Overview,
    /// Readings before anything was changed.
    Found,
    /// What the readings come to.
    Numbers,
    /// The search for the cause.
    Trace,
    /// The refill test.
    Refill,
    /// Cause, work, leaving round.
    Left,
    /// Work, parts, time, advice, photos.
    Papers,
    /// The report.
    Report,
}

const STATIONS: [(Station, &str); 8] = [
    (Station::Overview, ""),
    (Station::Found, "found"),
    (Station::Numbers, "numbers"),
    (Station::Trace, "trace"),
    (Station::Refill, "refill"),
    (Station::Left, "left"),
    (Station::Papers, "papers"),
    (Station::Report, "report"),
];

impl Route {
    /// Reads the part after `#`; anything unknown is home.
    pub fn parse(hash: &str) -> Self {
        let path = hash.trim_start_matches('#').trim_matches('/');
        let mut parts = path.split('/');
        let route = match (parts.next(), parts.next(), parts.next()) {
            (Some("outbox"), ..) => Some(Route::Outbox),
            (Some("settings"), ..) => Some(Route::Settings),
            (Some("lock"), ..) => Some(Route::Lock),
            (Some("workings"), None, _) => Some(Route::Workings(None)),
            (Some("workings"), Some(slug), _) => {
                Working::named(slug).map(|w| Route::Working(None, w))
            }
            (Some("visit"), Some(id), Some("workings")) => {
                let working = parts.next().map(Working::named);
                VisitId::parse(id).and_then(|id| match working {
                    None => Some(Route::Workings(Some(id))),
                    Some(known) => known.map(|w| Route::Working(Some(id), w)),
                })
            }
            (Some("site"), Some("new"), _) => Some(Route::NewSite),
            (Some("site"), Some(id), None) => SiteId::parse(id).map(Route::Site),
            (Some("site"), Some(id), Some("history")) => SiteId::parse(id).map(Route::History),
            (Some("site"), Some(id), Some(name)) => {
                let part = PARTS.iter().find(|(_, n)| *n == name).map(|(p, _)| *p);
                SiteId::parse(id)
                    .zip(part)
                    .map(|(id, part)| Route::SitePart(id, part))
            }
            (Some("visit"), Some(id), station) => {
                let name = station.unwrap_or("");
                let station = STATIONS.iter().find(|(_, n)| *n == name).map(|(s, _)| *s);
                VisitId::parse(id)
                    .zip(station)
                    .map(|(id, station)| Route::Visit(id, station))
            }
            _ => None,
        };
        route.unwrap_or(Route::Home)
    }

    /// The address of a screen, for `href`.
    pub fn href(self) -> String {
        match self {
            Route::Home => "#/".into(),
            Route::NewSite => "#/site/new".into(),
            Route::Site(id) => format!("#/site/{id}"),
            Route::History(id) => format!("#/site/{id}/history"),
            Route::SitePart(id, part) => {
                let name = PARTS
                    .iter()
                    .find(|(p, _)| *p == part)
                    .map_or("", |(_, n)| n);
                format!("#/site/{id}/{name}")
            }
            Route::Visit(id, station) => {
                let name = STATIONS
                    .iter()
                    .find(|(s, _)| *s == station)
                    .map_or("", |(_, n)| n);
                format!("#/visit/{id}/{name}")
            }
            Route::Outbox => "#/outbox".into(),
            Route::Workings(None) => "#/workings".into(),
            Route::Workings(Some(id)) => format!("#/visit/{id}/workings"),
            Route::Working(visit, working) => {
                format!("{}/{}", Route::Workings(visit).href(), working.slug())
            }
            Route::Settings => "#/settings".into(),
            Route::Lock => "#/lock".into(),
        }
    }
}

/// The present screen, kept in step with the address.
pub fn follow_address() -> RwSignal<Route> {
    let route = RwSignal::new(address());
    let listener = window_event_listener_untyped("hashchange", move |_| follow());
    on_cleanup(move || listener.remove());
    ROUTE.set(Some(route));
    route
}

fn address() -> Route {
    Route::parse(&window().location().hash().unwrap_or_default())
}

/// Draws what the address says, unless it is drawn.
fn follow() {
    let (Some(route), address) = (ROUTE.get(), address()) else {
        return;
    };
    if route.with_untracked(|route| *route != address) {
        MOVED.set(true);
        // To take what has the focus off the page, a browser first lays out all that is
        // there, the screen that goes and the one that comes.
        if let Some(held) = get(&document(), "activeElement") {
            call(&held, "blur", &js_sys::Array::new());
        }
        route.set(address);
        window().scroll_to_with_x_and_y(0.0, 0.0);
    }
}

thread_local! {
    static ROUTE: Cell<Option<RwSignal<Route>>> = const { Cell::new(None) };
    static MOVED: Cell<bool> = const { Cell::new(false) };
}

/// Whether the person went to the screen that is being drawn; asked once.
pub fn just_moved() -> bool {
    MOVED.take()
}

/// Goes to a screen, at once: the one that is left is not drawn again first.
pub fn go(route: Route) {
    let _ = window().location().set_hash(&route.href());
    follow();
}
