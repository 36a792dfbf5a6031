//! One site: what stands there, its visits, and opening one.

use crate::app::view::prelude::*;

use super::home::open_visit;
use super::visit_frame::NotFound;
use crate::app::ledger::ledger;
use crate::app::parts::field::{TextField, settle_text};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::quantity::{Value, show};
use crate::record::{Site, SiteId};
use crate::words::Phrase as P;

/// A site.
#[component]
pub fn SiteScreen(id: SiteId) -> View {
    match ledger().site(id).get() {
        Some(site) => markup! { <Described id site /> },
        None => markup! { <NotFound /> },
    }
}

#[component]
fn Described(id: SiteId, site: Site) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let log = ledger().log();
    let draft = StoredValue::new(format!("complaint {id}"));
    let complaint = RwSignal::new(String::new());
    let name = site.name.clone();
    let title = name;
    let place = site.place.clone();
    let sub = place;
    let text = |value: Value| show(value, system).to_string();
    let tower = &site.tower;
    let facts = [
        (P::DesignFlow, text(Value::flow(tower.design_flow))),
        (P::DesignIn, text(Value::temperature(tower.design_in))),
        (P::DesignOut, text(Value::temperature(tower.design_out))),
        (
            P::DesignWetBulb,
            text(Value::temperature(tower.design_wet_bulb)),
        ),
        (P::BasinDepth, text(Value::level(tower.basin.depth))),
        (P::StopLevel, text(Value::level(tower.stop_level))),
        (P::CallLevel, text(Value::level(tower.call_level))),
        (P::InletLevel, text(Value::level(tower.inlet_level))),
        (
            P::ControlNominal,
            text(Value::voltage(site.control_voltage)),
        ),
    ];
    let machines: Vec<_> = site
        .machines
        .iter()
        .map(|m| {
            let cut_out = m.cut_out.map(|p| {
                format!(
                    "{} {}",
                    words.phrase(P::CutOut),
                    text(Value::gauge_pressure(p))
                )
            });
            (
                m.name.clone(),
                m.refrigerant.designation(),
                cut_out.unwrap_or_default(),
            )
        })
        .collect();
    let visits = move || {
        let lines = log.with(|log| log.visits());
        lines
            .into_iter()
            .filter(|line| line.site == id)
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
        draft.with_value(|key| settle_text(key));
        let usual = words.phrase(P::UsualComplaint).to_owned();
        open_visit(id, if said.is_empty() { usual } else { said });
    };
    let act = move || {
        markup! {
            <button class="primary" data-test="open-visit" on:click=tap(open)>
                {words.phrase(P::OpenVisit)}
            </button>
        }
    };
    markup! {
        <Screen title sub name="site" back=(Route::Home, words.phrase(P::Home).to_owned()) act>
            <TextField
                key=draft.get_value()
                text=complaint
                label=words.phrase(P::Complaint)
                hint=words.phrase(P::ComplaintHint)
                long=true
                test="complaint"
            />
            <section>
                <h2>{words.phrase(P::Visits)}</h2>
                <ul class="rows">{visits}</ul>
            </section>
            <section>
                <h2>{words.phrase(P::TowerAndBasin)}</h2>
                <table>
                    <tbody>
                        {facts
                            .map(|(name, value)| {
                                markup! {
                                    <tr>
                                        <th scope="row">{words.phrase(name)}</th>
                                        <td>{value}</td>
                                    </tr>
                                }
                            })
                            .collect_view()}
                    </tbody>
                </table>
            </section>
            <section>
                <h2>{words.phrase(P::Machines)}</h2>
                <ul class="rows">
                    {machines
                        .into_iter()
                        .map(|(name, refrigerant, cut_out)| {
                            markup! {
                                <li>
                                    <div class="row">
                                        <span></span>
                                        <span class="name">{name}</span>
                                        <span class="tail">{refrigerant}</span>
                                        <span class="under">{cut_out}</span>
                                    </div>
                                </li>
                            }
                        })
                        .collect_view()}
                </ul>
            </section>
        </Screen>
    }
}
