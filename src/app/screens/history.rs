//! A site over time: what each visit showed, as small plots with a table
//! behind, and how long to leave the probe before it is cleaned.

use crate::app::view::prelude::*;
use leptos::task::spawn_local;

use super::visit_frame::NotFound;
use crate::app::ledger::ledger;
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::shell::{Screen, opening};
use crate::app::parts::small_plot::{Dot, small_plot};
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::quantity::{Kind, Value, show};
use crate::record::{
    About, Fouling, History, Moment, Past, Since, Site, SiteId, Trend, VisitId, since,
};
use crate::words::Phrase as P;

/// A figure's name.
fn name(trend: Trend) -> &'static str {
    prefs().words.phrase(match trend {
        Trend::Approach => P::Approach,
        Trend::WetBulb => P::WetBulb,
        Trend::Fill => P::FillGross,
        Trend::Conductivity => P::TrendConductivity,
    })
}

fn text(value: Value) -> String {
    show(value, prefs().system.get_untracked()).to_string()
}

/// The history of a site, of the visits whose entries are here.
fn history(id: SiteId, site: &Site) -> History {
    let ids = ledger().visits_to(id);
    let folded: Vec<_> = ledger()
        .log()
        .with(|log| ids.into_iter().filter_map(|id| log.visit(id)).collect());
    History::of(site, &folded)
}

/// The screen.
#[component]
pub fn HistoryScreen(id: SiteId) -> View {
    let words = prefs().words;
    let Some(site) = ledger().site(id).get_untracked() else {
        return markup! { <NotFound /> };
    };
    // Nothing is drawn before all of it is there: it would move under the thumb.
    let there = RwSignal::new(false);
    spawn_local(async move {
        ledger().bring_past(id).await;
        there.set(true);
    });
    let back = (Route::Site(id), site.name.clone());
    let kept = StoredValue::new(site);
    let of = Memo::new(move |_| kept.with_value(|site| history(id, site)));
    let plots = move || {
        of.with(|history| {
            [
                against_wet_bulb(history),
                over_time(history, Trend::Fill),
                over_time(history, Trend::Conductivity),
                calls(history),
            ]
            .into_iter()
            .flatten()
            .collect_view()
        })
    };
    let cleaning = move || of.with(|history| cleaning(history.fouling(ledger().now())));
    let rows = move || of.with(|history| history.visits.iter().rev().map(row).collect_view());
    let head = [
        Trend::Approach,
        Trend::WetBulb,
        Trend::Fill,
        Trend::Conductivity,
    ];
    let table = move || {
        let line = |past: &Past| {
            let cells = past.figures.iter().map(|figure| {
                markup! { <td>{figure.map_or("–".to_owned(), text)}</td> }
            });
            markup! {
                <tr><th scope="row">{past.opened.date()}</th>{cells.collect_view()}</tr>
            }
        };
        of.with(|history| history.visits.iter().map(line).collect_view())
    };
    let title = words.phrase(P::ToHistory);
    let drawn = move || match there.get() {
        true => markup! {
            <section data-test="plots">
                {plots}
                <details>
                    <summary>{words.phrase(P::AsTable)}</summary>
                    <table>
                        <thead>
                            <tr>
                                <th scope="col">{words.phrase(P::Visit)}</th>
                                {head.map(|t| markup! { <th scope="col">{name(t)}</th> }).into_iter().collect_view()}
                            </tr>
                        </thead>
                        <tbody>{table}</tbody>
                    </table>
                </details>
            </section>
            <section>
                <h2>{words.phrase(P::CleaningTitle)}</h2>
                <div data-test="cleaning">{cleaning}</div>
            </section>
            <section>
                <h2>{words.phrase(P::Visits)}</h2>
                <ul class="rows">{rows}</ul>
            </section>
        },
        false => opening(),
    };
    markup! { <Screen title name="history" back>{drawn}</Screen> }
}

/// The causes a visit named.
fn named(past: &Past) -> String {
    let words = prefs().words;
    let mut modes: Vec<crate::trace::Mode> = past.cause.iter().map(|c| c.0).collect();
    if modes.is_empty() {
        return words.phrase(P::NoCauseNamed).to_owned();
    }
    modes.extend(&past.also);
    words.trace_named(&modes)
}

/// One visit with its cause.
fn row(past: &Past) -> View {
    let cause = named(past);
    let icon = if past.fouled { Icon::Full } else { Icon::Empty };
    markup! {
        <li>
            <a href=Route::Visit(past.visit, Station::Overview).href()>
                <Draw icon />
                <span class="name">{past.opened.date()}</span>
                <span class="tail"></span>
                <span class="under">{format!("{cause} · {}", past.complaint)}</span>
            </a>
        </li>
    }
}

/// First and last of a row of figures, in words.
fn summary(name: &str, points: &[(Moment, Value)]) -> String {
    let said = |(at, value): &(Moment, Value)| format!("{}: {}", at.date(), text(*value));
    let all: Vec<String> = points.iter().map(said).collect();
    format!("{name}. {}", all.join("; "))
}

fn over_time(history: &History, trend: Trend) -> Option<View> {
    let points = history.points(trend);
    let (first, last) = (points.first()?.0, points.last()?.0);
    if points.len() < 2 {
        return None;
    }
    let count = points.len();
    let dot = |(n, (at, value)): (usize, &(Moment, Value))| Dot {
        x: at.ms as f64,
        y: value.si,
        full: false,
        says: match n == 0 || n + 1 == count {
            true => text(*value),
            false => String::new(),
        },
    };
    let dots: Vec<Dot> = points.iter().enumerate().map(dot).collect();
    let name = name(trend);
    let ends = [first.date(), last.date()];
    Some(small_plot(
        &dots,
        true,
        name,
        [&ends[0], &ends[1]],
        summary(name, &points),
    ))
}

/// Approach over wet bulb: the tower itself, whatever the day was like.
fn against_wet_bulb(history: &History) -> Option<View> {
    let pairs: Vec<(Moment, Value, Value)> = (history.visits.iter())
        .filter_map(|v| Some((v.opened, v.figures[0]?, v.figures[1]?)))
        .collect();
    if pairs.len() < 2 {
        return None;
    }
    let dot = |(at, approach, wet): &(Moment, Value, Value)| Dot {
        x: wet.si,
        y: approach.si,
        full: false,
        says: format!("{} {}", &at.date()[..7], text(*approach)),
    };
    let dots: Vec<Dot> = pairs.iter().map(dot).collect();
    let said = |(at, approach, wet): &(Moment, Value, Value)| {
        format!("{}: {}, {}", at.date(), text(*approach), text(*wet))
    };
    let all: Vec<String> = pairs.iter().map(said).collect();
    let name = prefs().words.phrase(P::ApproachAgainst);
    let wet = pairs.iter().map(|p| p.2);
    let at = |si: f64| {
        text(Value {
            kind: Kind::Temperature,
            si,
        })
    };
    let least = wet.clone().fold(f64::INFINITY, |low, w| low.min(w.si));
    let most = wet.fold(f64::NEG_INFINITY, |high, w| high.max(w.si));
    let ends = [at(least), at(most)];
    let summary = format!("{name}. {}", all.join("; "));
    Some(small_plot(
        &dots,
        false,
        name,
        [&ends[0], &ends[1]],
        summary,
    ))
}

/// The calls on a line of time; a fouled probe is filled.
fn calls(history: &History) -> Option<View> {
    let (first, last) = (history.visits.first()?, history.visits.last()?);
    if history.visits.len() < 2 {
        return None;
    }
    let dot = |v: &Past| Dot {
        x: v.opened.ms as f64,
        y: 0.0,
        full: v.fouled,
        says: String::new(),
    };
    let dots: Vec<Dot> = history.visits.iter().map(dot).collect();
    let words = prefs().words;
    let said = |v: &Past| format!("{}: {}", v.opened.date(), named(v));
    let all: Vec<String> = history.visits.iter().map(said).collect();
    let name = words.phrase(P::CallsPlot);
    let ends = [first.opened.date(), last.opened.date()];
    let summary = format!("{name}. {}", all.join("; "));
    Some(small_plot(
        &dots,
        false,
        name,
        [&ends[0], &ends[1]],
        summary,
    ))
}

fn cleaning(fouling: Option<Fouling>) -> View {
    let words = prefs().words;
    match fouling {
        None => markup! { <p class="sub">{words.phrase(P::CleaningUnknown)}</p> },
        Some(f) => markup! {
            <p class="value" data-test="clean-after">{words.about_days(f.clean_after_days.1)}</p>
            <p>{words.cleaning_interval(&f)}</p>
            <details>
                <summary>{words.phrase(P::HowWeKnow)}</summary>
                <p class="small">{words.phrase(P::CleaningMethod)}</p>
            </details>
        },
    }
}

/// What the last visit left, at the top of a new one.
#[component]
pub fn SinceLast(visit: VisitId, site: SiteId) -> View {
    let words = prefs().words;
    let Some(before) = ledger().visit_before(visit, site) else {
        return View::default();
    };
    spawn_local(async move { ledger().bring(About::Visit(before)).await });
    let told = Memo::new(move |_| {
        ledger().log().with(|log| {
            let (then, now) = (log.visit(before)?, log.visit(visit)?);
            Some(since(&log.site(site)?, &then, &now))
        })
    });
    let lines = move |since: Since| {
        let mut lines = Vec::new();
        if let Some((mode, manner)) = since.before.cause {
            lines.push(format!(
                "{}: {}, {}",
                words.phrase(P::CauseTitle),
                words.trace_mode(mode),
                words.trace_manner(manner)
            ));
        }
        for item in since.before.not_so {
            lines.push(format!(
                "{}: {}",
                words.phrase(P::LeavingNotSo),
                words.leaving_item(item)
            ));
        }
        for (trend, then, now) in since.changed {
            lines.push(format!(
                "{}: {}, {} {}",
                name(trend),
                text(then),
                words.phrase(P::NowIs),
                text(now)
            ));
        }
        lines
            .into_iter()
            .map(|line| markup! { <li>{line}</li> })
            .collect_view()
    };
    live(move || {
        let since = told.get()?;
        let title = words.last_time(since.days);
        Some(markup! {
            <section data-test="since-last">
                <h2>{title}</h2>
                <ul class="bullets">{lines(since)}</ul>
                <a class="button" href=Route::History(site).href()>{words.phrase(P::ToHistory)}</a>
            </section>
        })
    })
}
