//! The waterline: the basin drawn to scale at the left edge of every screen
//! of a visit, with its real marks and the last known level.

use crate::app::view::prelude::*;
use uom::si::length::meter;

use super::section::ground;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::quantity::{Length, Value, show};
use crate::record::{Tower, VisitId};
use crate::words::Phrase as P;

/// How far down the basin a level is, 0 at the overflow lip, 1 at the floor.
fn share(level: Length, depth: Length) -> f64 {
    let depth = depth.get::<meter>();
    if depth > 0.0 {
        (level.get::<meter>() / depth).clamp(0.0, 1.0)
    } else {
        1.0
    }
}

/// The basin at the edge. Tapping it opens the refill station.
#[component]
pub fn Waterline(
    /// The visit.
    visit: VisitId,
    /// The tower, for scale and marks.
    tower: Tower,
    /// The last known level below the lip.
    level: Option<Length>,
) -> View {
    let words = prefs().words;
    let marks = [
        ("over", P::MarkOverflow, Some(Length::default())),
        ("stop", P::MarkStop, tower.stop_level),
        ("call", P::MarkCall, tower.call_level),
        ("inlet", P::MarkInlet, tower.inlet_level),
    ];
    let now = move || level.map(|l| show(Value::level(l), prefs().system.get()).to_string());
    let label = move || match now() {
        Some(level) => format!("{}: {level}", words.phrase(P::BasinLevelNow)),
        None => words.phrase(P::BasinLevelUnknown).to_owned(),
    };
    // Where it breaks, before its unit: "14 1/2" over "in".
    let in_two = move || match now() {
        Some(level) => match level.rsplit_once('\u{a0}') {
            Some((number, unit)) => format!("{number} {unit}"),
            None => level,
        },
        None => "?".to_owned(),
    };
    let depth = tower.basin.map(|b| b.depth);
    let water = match level.zip(depth) {
        Some((level, depth)) => {
            let height = format!("{:.2}%", 100.0 * (1.0 - share(level, depth)));
            markup! { <div class="water" style:height=height></div> }
        }
        None => markup! { <div class="unknown"></div> },
    };
    let marks = marks
        .into_iter()
        .filter_map(|(class, name, at)| {
            let top = format!("{:.2}%", 100.0 * share(at?, depth?));
            Some(markup! {
                <div class=format!("mark {class}") style:top=top>
                    <span>{words.phrase(name)}</span>
                </div>
            })
        })
        .collect_view();
    markup! {
        <a
            class="waterline"
            href=Route::Visit(visit, Station::Refill).href()
            data-test="waterline"
        >
            <span class="hidden-visually">{label}</span>
            <div class="tank" aria-hidden="true">
                {water}
                {tower.basin.map(|basin| ground(&basin))}
                {marks}
            </div>
            <span class="now" aria-hidden="true">{in_two}</span>
        </a>
    }
}
