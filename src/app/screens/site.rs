//! One site: opening a visit, its visits, and what is known of it, part by
//! part; each part is a tap away from being completed or corrected.

use crate::app::view::prelude::*;

use super::home::open_visit;
use super::visit_frame::NotFound;
use crate::app::ledger::ledger;
use crate::app::parts::field::{TextField, lasting};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Part, Route, Station};
use crate::quantity::{Value, show};
use crate::record::{Site, SiteId, Summary, plant};
use crate::trace::LevelControl;
use crate::words::Phrase as P;

/// A site.
#[component]
pub fn SiteScreen(id: SiteId) -> View {
    match ledger().site(id).get() {
        Some(site) => markup! { <Described id site /> },
        None => markup! { <NotFound /> },
    }
}

/// How much of a part is known.
fn icon(known: usize, of: usize) -> Icon {
    match known {
        0 => Icon::Empty,
        n if n < of => Icon::Half,
        _ => Icon::Full,
    }
}

struct Row {
    part: Part,
    name: P,
    icon: Icon,
    says: String,
    test: &'static str,
}

fn rows(site: &Site) -> [Row; 5] {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let text = |value: Value| show(value, system).to_string();
    let tower = &site.tower;
    let join = |parts: Vec<Option<String>>| {
        let known: Vec<String> = parts
            .into_iter()
            .flatten()
            .filter(|t| !t.is_empty())
            .collect();
        match known.is_empty() {
            true => words.phrase(P::NotKnownYet).to_owned(),
            false => known.join(" · "),
        }
    };
    let named = |name: P, level: Option<_>| {
        level.map(|l| format!("{} {}", words.phrase(name), text(Value::level(l))))
    };
    let marks = [tower.stop_level, tower.call_level, tower.inlet_level];
    let design = [tower.design_in, tower.design_out, tower.design_wet_bulb];
    let temperatures = design.into_iter().flatten();
    let temperatures: Vec<String> = temperatures.map(|t| text(Value::temperature(t))).collect();
    let count = |known: &[bool]| known.iter().filter(|k| **k).count();
    let machines = site.machines.iter();
    let plated = machines
        .clone()
        .filter(|m| m.refrigerant.is_some() && m.cut_out.is_some());
    let control = match plant(site).level_control {
        LevelControl::ElectrodeRelay => P::ElectrodeRelay,
        LevelControl::FloatValve => P::FloatValve,
        LevelControl::FloatSwitch => P::FloatSwitch,
        LevelControl::Transmitter => P::Transmitter,
    };
    let volts = site.control_voltage.map(|v| text(Value::voltage(v)));
    let chosen = site.plant.is_some();
    let control = chosen.then(|| words.phrase(control).to_owned());
    let known_of_tower =
        count(&design.map(|t| t.is_some())) + usize::from(tower.design_flow.is_some());
    let known_of_basin = count(&marks.map(|m| m.is_some())) + usize::from(tower.basin.is_some());
    let row = |part, name, icon, says, test| Row {
        part,
        name,
        icon,
        says,
        test,
    };
    [
        row(
            Part::Who,
            P::PartWho,
            icon(
                count(&[
                    !site.place.is_empty(),
                    !site.access.is_empty(),
                    !site.contacts.is_empty(),
                ]),
                3,
            ),
            join(vec![
                Some(site.place.clone()),
                Some(site.access.clone()),
                Some(site.contacts.clone()),
            ]),
            "part-who",
        ),
        row(
            Part::Machines,
            P::Machines,
            match site.machines.len() {
                0 => Icon::Empty,
                n if plated.count() < n => Icon::Half,
                _ => Icon::Full,
            },
            join(vec![Some(
                machines
                    .map(|m| words.machine_line(m))
                    .collect::<Vec<_>>()
                    .join(", "),
            )]),
            "part-machines",
        ),
        row(
            Part::Basin,
            P::PartBasin,
            icon(known_of_basin, 4),
            join(vec![
                tower.basin.map(|b| {
                    format!(
                        "{} {}",
                        words.phrase(P::MarkFloor),
                        text(Value::level(b.depth))
                    )
                }),
                named(P::MarkStop, tower.stop_level),
                named(P::MarkCall, tower.call_level),
                named(P::MarkInlet, tower.inlet_level),
            ]),
            "part-basin",
        ),
        row(
            Part::Tower,
            P::PartTower,
            icon(known_of_tower, 4),
            join(vec![
                tower.design_flow.map(|f| text(Value::flow(f))),
                Some(temperatures.join(" / ")),
                Some(site.makeup.clone()),
            ]),
            "part-tower",
        ),
        row(
            Part::Plant,
            P::PartPlant,
            icon(count(&[chosen, volts.is_some()]), 2),
            join(vec![control, volts]),
            "part-plant",
        ),
    ]
}

#[component]
fn Described(id: SiteId, site: Site) -> View {
    let words = prefs().words;
    let summary = ledger().summary();
    let draft = lasting(format!("complaint {id}"));
    let complaint = RwSignal::new(String::new());
    let title = site.name.clone();
    let sub = site.place.clone();
    let lines = Memo::new(move |_| {
        let mine = |all: &Summary| {
            let visits = all.visits().iter().filter(|line| line.site == id);
            visits.cloned().collect::<Vec<_>>()
        };
        summary.with(mine)
    });
    let visits = move || {
        lines
            .get()
            .into_iter()
            .map(|line| {
                markup! {
                    <li>
                        <a href=Route::Visit(line.id, Station::Overview).href()>
                            <Draw icon=if line.closed { Icon::Full } else { Icon::Half } />
                            <span class="name">{line.opened.date()}</span>
                            <span class="tail">{line.opened.clock()}</span>
                            <span class="under">{line.complaint}</span>
                        </a>
                    </li>
                }
            })
            .collect_view()
    };
    let open = move |_| {
        let said = complaint.get_untracked().trim().to_owned();
        let usual = words.phrase(P::UsualComplaint).to_owned();
        open_visit(id, if said.is_empty() { usual } else { said }, Some(draft));
    };
    let act = move || {
        markup! {
            <button class="primary" data-test="open-visit" on:click=tap(open)>
                {words.phrase(P::OpenVisit)}
            </button>
        }
    };
    let parts = rows(&site)
        .into_iter()
        .map(|row| {
            markup! {
                <li>
                    <a href=Route::SitePart(id, row.part).href() data-test=row.test>
                        <Draw icon=row.icon />
                        <span class="name">{words.phrase(row.name)}</span>
                        <span class="tail">{words.phrase(P::Change)}</span>
                        <span class="under">{row.says}</span>
                    </a>
                </li>
            }
        })
        .collect_view();
    markup! {
        <Screen title sub name="site" back=(Route::Home, words.phrase(P::Home).to_owned()) act>
            <TextField
                key=draft.to_owned()
                text=complaint
                label=words.phrase(P::Complaint)
                hint=words.phrase(P::ComplaintHint)
                long=true
                test="complaint"
            />
            <section>
                <h2>{words.phrase(P::AboutSite)}</h2>
                <ul class="rows">{parts}</ul>
            </section>
            {move || {
                (!lines.with(Vec::is_empty))
                    .then(|| {
                        markup! {
                            <section>
                                <h2>{words.phrase(P::Visits)}</h2>
                                <ul class="rows">{visits()}</ul>
                                <a class="button" href=Route::History(id).href() data-test="to-history">
                                    {words.phrase(P::ToHistory)}
                                </a>
                            </section>
                        }
                    })
            }}
        </Screen>
    }
}
