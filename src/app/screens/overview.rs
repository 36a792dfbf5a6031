//! The visit at a glance: complaint, stations and how each stands, and the
//! one thing to do next.

use crate::app::view::prelude::*;

use super::history::SinceLast;
use super::visit_frame::{Job, NotFound, way_on};
use crate::app::ledger::ledger;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::shell::{Edge, Screen};
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::record::{
    Body, Figures, LeavingItem, MachineState, Site, Visit, VisitId, When, observed, plant,
};
use crate::refill::{self, Verdict};
use crate::trace;
use crate::words::Phrase as P;

/// How far a station has come.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Progress {
    Empty,
    /// Begun, or not proven.
    Begun,
    Done,
}

#[derive(Clone, PartialEq)]
struct Row {
    station: Station,
    name: P,
    progress: Progress,
    says: String,
    test: &'static str,
}

fn rows(visit: &Visit, site: &Site) -> Vec<Row> {
    let words = prefs().words;
    let system = prefs().system.get();
    let found = visit
        .readings
        .keys()
        .filter(|slot| slot.when == When::AsFound)
        .count();
    let out = visit
        .machines
        .iter()
        .filter(|((when, _), state)| *when == When::AsFound && **state == MachineState::HighHead)
        .count();
    let figures = Figures::of(site, visit);
    let known = figures.known();
    // A named cause stands on its proof, without odds.
    let suspect = || {
        let belief = trace::infer(&plant(site), &observed(site, visit), &visit.evidence());
        let (branch, p, first) = belief.heading()?;
        Some(words.suspect_summary(branch, p, &first))
    };
    let begun = found > 0 || !visit.answers.is_empty();
    let outcome = visit
        .tests
        .last()
        .map(|t| refill::judge(&t.setup, &t.timed()));
    let round = visit.leaving.len();
    let progress = |done: bool, begun: bool| match (done, begun) {
        (true, _) => Progress::Done,
        (_, true) => Progress::Begun,
        _ => Progress::Empty,
    };
    let row = |station, name, progress, says: String, test| Row {
        station,
        name,
        progress,
        says,
        test,
    };
    vec![
        row(
            Station::Found,
            P::StationFound,
            progress(found >= 5, found > 0),
            words.found_summary(found, out),
            "to-found",
        ),
        row(
            Station::Numbers,
            P::StationNumbers,
            progress(known >= 6, known > 0),
            words.numbers_summary(&figures, system),
            "to-numbers",
        ),
        row(
            Station::Trace,
            P::StationTrace,
            progress(visit.cause.is_some(), !visit.answers.is_empty()),
            match &visit.cause {
                Some(cause) => words.trace_named(&cause.modes()),
                None => begun
                    .then(suspect)
                    .flatten()
                    .unwrap_or_else(|| words.phrase(P::TraceNotBegun).to_owned()),
            },
            "to-trace",
        ),
        row(
            Station::Refill,
            P::StationRefill,
            match &outcome {
                Some(o) if o.verdict != Verdict::NotProven => Progress::Done,
                Some(_) => Progress::Begun,
                None => Progress::Empty,
            },
            match &outcome {
                Some(o) => words.refill_verdict(o.verdict).to_owned(),
                None => words.phrase(P::RefillNotBegun).to_owned(),
            },
            "to-refill",
        ),
        row(
            Station::Left,
            P::StationLeft,
            progress(
                round == LeavingItem::ALL.len() && visit.cause.is_some(),
                round > 0,
            ),
            words.leaving_summary(round, LeavingItem::ALL.len()),
            "to-left",
        ),
        row(
            Station::Papers,
            P::StationPapers,
            progress(
                false,
                !visit.paper.lines.is_empty() || !visit.paper.photos.is_empty(),
            ),
            words.papers_summary(visit.paper.lines.len(), visit.paper.photos.len()),
            "to-papers",
        ),
        row(
            Station::Report,
            P::StationReport,
            progress(!visit.reports.is_empty(), false),
            match visit.reports.last() {
                Some(report) => words.report_made_at(&report.at.clock()),
                None => words.phrase(P::ReportNotMade).to_owned(),
            },
            "to-report",
        ),
    ]
}

/// The overview.
#[component]
pub fn Overview(id: VisitId) -> View {
    let job = Job::of(id);
    if job.both().is_none() {
        return markup! { <NotFound /> };
    }
    let words = prefs().words;
    let both = move || job.both();
    let title = both().map_or(String::new(), |(_, site)| site.name);
    let sub = live(move || {
        let opened = both().map(|(v, _)| format!("{} {}", v.opened.date(), v.opened.clock()));
        format!(
            "{} {}",
            words.phrase(P::VisitOf),
            opened.unwrap_or_default()
        )
    });
    let edge = Signal::derive(move || {
        let (visit, site) = both()?;
        Some(Edge {
            visit: id,
            tower: site.tower,
            level: visit.last_level(),
        })
    });
    let all = Memo::new(move |_| both().map(|(visit, site)| rows(&visit, &site)));
    let next = move || {
        let rows = all.get()?;
        // Numbers follow from readings; they are never the next thing to do.
        // Neither is paperwork, of which there may be none.
        let open = |r: &&Row| {
            r.progress != Progress::Done && !matches!(r.station, Station::Numbers | Station::Papers)
        };
        rows.iter().find(open).map(|r| (r.station, r.name))
    };
    let act = move || match next() {
        Some((station, name)) => way_on(Route::Visit(id, station), &words.continue_with(name)),
        None if both().is_some_and(|(v, _)| v.closed.is_some()) => markup! {
            <a class="button primary calm" href=Route::Outbox.href() data-test="next">
                {words.phrase(P::OpenOutbox)}
            </a>
        },
        None => markup! {
            <button class="primary" data-test="close-visit" on:click=tap(move |_| {
                ledger().write(job.about(), Body::VisitClosed)
            })>
                {words.phrase(P::CloseVisit)}
            </button>
        },
    };
    let list = move || {
        let rows = all
            .get()?
            .into_iter()
            .map(|row| {
                let icon = match row.progress {
                    Progress::Empty => Icon::Empty,
                    Progress::Begun => Icon::Half,
                    Progress::Done => Icon::Full,
                };
                let state = match row.progress {
                    Progress::Empty => P::StateEmpty,
                    Progress::Begun => P::StateBegun,
                    Progress::Done => P::StateDone,
                };
                // Seven times "not begun" is heard, not read: the hollow drop says it.
                let tail = match row.progress {
                    Progress::Empty => "hidden-visually",
                    _ => "tail",
                };
                markup! {
                    <li>
                        <a href=Route::Visit(id, row.station).href() data-test=row.test>
                            <Draw icon />
                            <span class="name">{words.phrase(row.name)}</span>
                            <span class=tail>{words.phrase(state)}</span>
                            <span class="under">{row.says}</span>
                        </a>
                    </li>
                }
            })
            .collect_view();
        Some(markup! { <ol class="rows">{rows}</ol> })
    };
    // At the top until the work begins.
    let last = move |begun: bool| {
        both()
            .filter(|(v, _)| v.has_begun() == begun)
            .map(|(v, _)| markup! { <SinceLast visit=id site=v.site /> })
    };
    markup! {
        <Screen title sub edge name="overview" back=(Route::Home, words.phrase(P::Home).to_owned())
            act>
            <p data-test="complaint-said">
                {move || both().map(|(v, _)| words.quoted(&v.complaint))}
            </p>
            {last(false)}
            {list}
            {last(true)}
        </Screen>
    }
}
