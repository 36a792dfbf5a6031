//! Describing a new site by typing. Every field keeps its draft, so the form
//! can be left and found again; the site becomes an entry when it is saved.

use crate::app::parts::choice::choice;
use crate::app::view::prelude::*;
use uom::si::ratio::ratio;

use crate::app::ledger::ledger;
use crate::app::parts::field::{QuantityField, TextField, Typing, settle_text, to_field};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::shell::Screen;
use crate::app::prefs::prefs;
use crate::app::route::{Route, go};
use crate::physics::basin::{Basin, Plan};
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{Bounds, Kind, Length, Ratio, System, Unit};
use crate::record::{About, Body, Machine, Site, SiteId, Tower};
use crate::words::Phrase as P;

/// One machine being typed.
#[derive(Clone, Copy)]
struct MachineForm {
    n: usize,
    name: RwSignal<String>,
    refrigerant: RwSignal<Refrigerant>,
    cut_out: Typing,
}

impl MachineForm {
    fn new(n: usize) -> Self {
        let kept = ledger().text(&refrigerant_key(n)).unwrap_or_default();
        let known = Refrigerant::ALL
            .into_iter()
            .find(|r| r.designation() == kept);
        Self {
            n,
            name: RwSignal::new(String::new()),
            refrigerant: RwSignal::new(known.unwrap_or(Refrigerant::R410A)),
            cut_out: Typing::new(
                format!("site cut-out {n}"),
                Kind::GaugePressure,
                Bounds::of(1.0, 700.0, Unit::Psig),
                None,
            ),
        }
    }
}

fn refrigerant_key(n: usize) -> String {
    format!("site refrigerant {n}")
}

fn name_key(n: usize) -> String {
    format!("site machine {n}")
}

const ROUND: &str = "site round";
const MACHINES: &str = "site machines";
const NAME: &str = "site name";
const PLACE: &str = "site place";

/// Everything being typed.
#[derive(Clone, Copy)]
struct Form {
    name: RwSignal<String>,
    place: RwSignal<String>,
    round: RwSignal<bool>,
    length: Typing,
    width: Typing,
    depth: Typing,
    stop: Typing,
    call: Typing,
    inlet: Typing,
    flow: Typing,
    hot: Typing,
    cold: Typing,
    wet_bulb: Typing,
    voltage: Typing,
    altitude: Typing,
    machines: RwSignal<Vec<MachineForm>>,
    tried: RwSignal<bool>,
}

impl Form {
    fn new() -> Self {
        let field = |name: &str, kind, bounds: Bounds| {
            Typing::new(format!("site {name}"), kind, bounds, None)
        };
        // Rated condition of an open tower, offered where the plate is not
        // at hand: 95 to 85 at 78 °F wet bulb.
        let us = prefs().system.get_untracked() == System::Us;
        let rated = |name: &str, us_text: &str, si_text: &str| {
            let (text, unit) = match us {
                true => (us_text, Unit::Fahrenheit),
                false => (si_text, Unit::Celsius),
            };
            let bounds = Bounds::of(32.0, 140.0, Unit::Fahrenheit);
            let first = Some((text.to_owned(), unit));
            Typing::new(format!("site {name}"), Kind::Temperature, bounds, first)
        };
        let depth = Bounds::of(0.0, 12.0, Unit::Foot);
        let side = Bounds::of(0.5, 100.0, Unit::Foot);
        let count = ledger()
            .text(MACHINES)
            .and_then(|n| n.parse().ok())
            .unwrap_or(2);
        Self {
            name: RwSignal::new(String::new()),
            place: RwSignal::new(String::new()),
            round: RwSignal::new(ledger().text(ROUND).is_some()),
            length: field("length", Kind::Length, side),
            width: field("width", Kind::Length, side),
            depth: field("depth", Kind::Level, depth),
            stop: field("stop", Kind::Level, depth),
            call: field("call", Kind::Level, depth),
            inlet: field("inlet", Kind::Level, depth),
            flow: field(
                "flow",
                Kind::Flow,
                Bounds::of(1.0, 20_000.0, Unit::GallonPerMinute),
            ),
            hot: rated("hot", "95", "35"),
            cold: rated("cold", "85", "29.4"),
            wet_bulb: rated("wet bulb", "78", "25.6"),
            voltage: Typing::new(
                "site voltage".into(),
                Kind::Voltage,
                Bounds::of(5.0, 480.0, Unit::Volt),
                Some(("24".into(), Unit::Volt)),
            ),
            altitude: Typing::new(
                "site altitude".into(),
                Kind::Length,
                Bounds::of(-1_000.0, 14_000.0, Unit::Foot),
                Some(("0".into(), if us { Unit::Foot } else { Unit::Metre })),
            ),
            machines: RwSignal::new((0..count).map(MachineForm::new).collect()),
            tried: RwSignal::new(false),
        }
    }

    fn level(typing: Typing) -> Option<Length> {
        typing.typed()?.value.as_level()
    }

    /// The levels must come in order from the lip down.
    fn level_fault(self, upper: Option<Typing>, lower: Typing) -> Option<String> {
        let low = Self::level(lower)?;
        let words = prefs().words;
        if let Some(high) = upper.and_then(Self::level)
            && low <= high
        {
            return Some(words.phrase(P::LevelOrder).to_owned());
        }
        let deep = Self::level(self.depth)?;
        (low > deep).then(|| words.phrase(P::LevelBelowFloor).to_owned())
    }

    fn site(self) -> Option<Site> {
        let temperature = |t: Typing| t.typed()?.value.as_temperature();
        let length = |t: Typing| t.typed()?.value.as_length();
        let name = self.name.get().trim().to_owned();
        if name.is_empty() {
            return None;
        }
        let plan = match self.round.get() {
            true => Plan::Round {
                diameter: length(self.length)?,
            },
            false => Plan::Rectangular {
                length: length(self.length)?,
                width: length(self.width)?,
            },
        };
        let faults = [
            self.level_fault(None, self.stop),
            self.level_fault(Some(self.stop), self.call),
            self.level_fault(Some(self.call), self.inlet),
            self.temperature_fault(self.cold, self.hot),
            self.temperature_fault(self.wet_bulb, self.cold),
        ];
        if faults.iter().any(Option::is_some) {
            return None;
        }
        let mut machines = Vec::new();
        for form in self.machines.get() {
            let name = form.name.get().trim().to_owned();
            if name.is_empty() && form.cut_out.is_empty() {
                continue;
            }
            let cut_out = match form.cut_out.is_empty() {
                true => None,
                false => Some(form.cut_out.typed()?.value.as_gauge_pressure()?),
            };
            let fallback = || prefs().words.machine_numbered(form.n + 1);
            machines.push(Machine {
                id: ledger().id(),
                name: if name.is_empty() { fallback() } else { name },
                refrigerant: form.refrigerant.get(),
                cut_out,
                rejects: None,
            });
        }
        Some(Site {
            name,
            place: self.place.get().trim().to_owned(),
            access: String::new(),
            altitude: length(self.altitude)?,
            tower: Tower {
                design_flow: self.flow.typed()?.value.as_flow()?,
                design_in: temperature(self.hot)?,
                design_out: temperature(self.cold)?,
                design_wet_bulb: temperature(self.wet_bulb)?,
                water_air_ratio: Ratio::new::<ratio>(1.2),
                cycles: 4.0,
                basin: Basin {
                    plan,
                    depth: Self::level(self.depth)?,
                },
                call_level: Self::level(self.call)?,
                stop_level: Self::level(self.stop)?,
                inlet_level: Self::level(self.inlet)?,
            },
            control_voltage: self.voltage.typed()?.value.as_voltage()?,
            machines,
            plant: None,
            demo: false,
        })
    }

    /// Design temperatures must fall from hot water to cold to wet bulb.
    fn temperature_fault(self, lower: Typing, upper: Typing) -> Option<String> {
        let (low, high) = (lower.typed()?.value.si, upper.typed()?.value.si);
        (low >= high).then(|| prefs().words.phrase(P::DesignOrder).to_owned())
    }

    fn quantities(self) -> Vec<Typing> {
        let mut all = vec![
            self.length,
            self.depth,
            self.stop,
            self.call,
            self.inlet,
            self.flow,
            self.hot,
            self.cold,
            self.wet_bulb,
            self.voltage,
            self.altitude,
        ];
        if !self.round.get_untracked() {
            all.push(self.width);
        }
        all
    }

    fn settle(self) {
        self.quantities()
            .into_iter()
            .chain([self.width])
            .for_each(Typing::settled);
        [NAME, PLACE].into_iter().for_each(settle_text);
        for form in self.machines.get_untracked() {
            form.cut_out.settled();
            settle_text(&name_key(form.n));
            ledger().keep_text(&refrigerant_key(form.n), "");
        }
        [ROUND, MACHINES]
            .into_iter()
            .for_each(|key| ledger().keep_text(key, ""));
    }
}

/// The screen.
#[component]
pub fn NewSite() -> View {
    let words = prefs().words;
    let form = Form::new();
    let title = words.phrase(P::NewSiteTitle);
    let sub = words.phrase(P::NewSiteSub);
    let save = move |_| {
        form.tried.set(true);
        form.quantities().into_iter().for_each(Typing::show_refusal);
        let Some(site) = form.site() else {
            // Once the refusals are drawn, to the first of them.
            request_animation_frame(|| to_field(".field[data-state=refused] input"));
            return;
        };
        let id: SiteId = ledger().id();
        let body = Body::SiteDescribed { site };
        ledger().write_then(About::Site(id), vec![body], move || {
            form.settle();
            go(Route::Site(id));
        });
    };
    let complete = Memo::new(move |_| form.tried.get() && form.site().is_none());
    let act = move || {
        markup! {
            {move || {
                complete
                    .get()
                    .then(|| {
                        markup! {
                            <p class="said no" role="alert" data-test="incomplete">
                                <Draw icon=Icon::Cross />
                                <span>{words.phrase(P::SiteIncomplete)}</span>
                            </p>
                        }
                    })
            }}
            <button class="primary" data-test="save-site" on:click=tap(save)>
                {words.phrase(P::SaveSite)}
            </button>
        }
    };
    let missing = move |typing: Typing| {
        Signal::derive(move || {
            (form.tried.get() && typing.is_empty()).then(|| words.phrase(P::NeededHere).to_owned())
        })
    };
    let level = move |typing: Typing, upper: Option<Typing>| {
        Signal::derive(move || {
            let needed = || words.phrase(P::NeededHere).to_owned();
            (form.tried.get() && typing.is_empty())
                .then(needed)
                .or_else(|| form.level_fault(upper, typing))
        })
    };
    let falls = move |lower: Typing, upper: Typing| {
        Signal::derive(move || {
            let empty = form.tried.get() && lower.is_empty();
            empty
                .then(|| words.phrase(P::NeededHere).to_owned())
                .or_else(|| form.temperature_fault(lower, upper))
        })
    };
    let name_missing = Signal::derive(move || {
        (form.tried.get() && form.name.with(|n| n.trim().is_empty()))
            .then(|| words.phrase(P::NameNeeded).to_owned())
    });
    let shape = move |round: bool, name: P, test: &'static str| {
        let choose = move || {
            form.round.set(round);
            ledger().keep_text(ROUND, if round { "yes" } else { "" });
        };
        choice(
            test,
            words.phrase(name),
            move || form.round.get() == round,
            choose,
        )
    };
    let add = move |_| {
        let n = form.machines.with_untracked(Vec::len);
        form.machines.update(|m| m.push(MachineForm::new(n)));
        ledger().keep_text(MACHINES, &(n + 1).to_string());
    };
    let side = move || {
        words.phrase(if form.round.get() {
            P::Diameter
        } else {
            P::InsideLength
        })
    };
    let back = (Route::Home, words.phrase(P::Home).to_owned());
    markup! {
        <Screen title sub name="new-site" back act>
            <section>
                <TextField key=NAME text=form.name label=words.phrase(P::SiteName)
                    refusal=name_missing test="site-name" />
                <TextField key=PLACE text=form.place label=words.phrase(P::SitePlace)
                    test="site-place" />
            </section>
            <section>
                <h2>{words.phrase(P::Basin)}</h2>
                <p class="sub small">{words.phrase(P::BasinHint)}</p>
                <div class="seg" role="group" aria-label=words.phrase(P::BasinShape)>
                    {shape(false, P::Rectangular, "rectangular")}
                    {shape(true, P::Round, "round")}
                </div>
                <div class="two">
                    {move || {
                        markup! {
                            <QuantityField typing=form.length label=side() test="length"
                                also=missing(form.length) />
                        }
                    }}
                    {move || {
                        (!form.round.get())
                            .then(|| {
                                markup! {
                                    <QuantityField typing=form.width also=missing(form.width)
                                        label=words.phrase(P::InsideWidth) test="width" />
                                }
                            })
                    }}
                </div>
                <QuantityField typing=form.depth label=words.phrase(P::BasinDepth) test="depth"
                    also=missing(form.depth) />
                <QuantityField typing=form.stop label=words.phrase(P::StopLevel) test="stop"
                    also=level(form.stop, None) />
                <QuantityField typing=form.call label=words.phrase(P::CallLevel) test="call"
                    also=level(form.call, Some(form.stop)) />
                <QuantityField typing=form.inlet label=words.phrase(P::InletLevel) test="inlet"
                    hint=words.phrase(P::InletHint) also=level(form.inlet, Some(form.call)) />
            </section>
            <section>
                <h2>{words.phrase(P::Tower)}</h2>
                <p class="sub small">{words.phrase(P::TowerHint)}</p>
                <QuantityField typing=form.flow label=words.phrase(P::DesignFlow) test="flow"
                    hint=words.phrase(P::DesignFlowHint) also=missing(form.flow) />
                <div class="two">
                    <QuantityField typing=form.hot label=words.phrase(P::DesignIn) test="hot"
                        also=missing(form.hot) />
                    <QuantityField typing=form.cold label=words.phrase(P::DesignOut) test="cold"
                        also=falls(form.cold, form.hot) />
                    <QuantityField typing=form.wet_bulb label=words.phrase(P::DesignWetBulb)
                        test="design-wet-bulb" also=falls(form.wet_bulb, form.cold) />
                    <QuantityField typing=form.altitude label=words.phrase(P::Altitude)
                        test="altitude" also=missing(form.altitude) />
                </div>
                <QuantityField typing=form.voltage label=words.phrase(P::ControlNominal)
                    test="nominal" also=missing(form.voltage) />
            </section>
            <section>
                <h2>{words.phrase(P::Machines)}</h2>
                {move || {
                    form.machines
                        .get()
                        .into_iter()
                        .map(|machine| markup! { <MachineFields machine /> })
                        .collect_view()
                }}
                <button type="button" data-test="add-machine" on:click=tap(add)>
                    {words.phrase(P::AddMachine)}
                </button>
            </section>
        </Screen>
    }
}

#[component]
fn MachineFields(machine: MachineForm) -> View {
    let words = prefs().words;
    let n = machine.n;
    let choose = move |ev| {
        let chosen = event_target_value(&ev);
        if let Some(known) = Refrigerant::ALL
            .into_iter()
            .find(|r| r.designation() == chosen)
        {
            machine.refrigerant.set(known);
            ledger().keep_text(&refrigerant_key(n), known.designation());
        }
    };
    let id = format!("f-refrigerant-{n}");
    markup! {
        <fieldset class="fields">
            <TextField key=name_key(n) text=machine.name test=format!("machine-{n}")
                label=words.machine_numbered(n + 1) />
            <div class="two">
                <div class="field">
                    <label for=id.clone()>{words.phrase(P::RefrigerantLabel)}</label>
                    <select id=id data-test=format!("refrigerant-{n}") on:change=choose>
                        {Refrigerant::ALL
                            .map(|r| {
                                markup! {
                                    <option
                                        value=r.designation()
                                        selected=move || machine.refrigerant.get() == r
                                    >
                                        {r.designation()}
                                    </option>
                                }
                            })
                            .collect_view()}
                    </select>
                </div>
                <QuantityField typing=machine.cut_out label=words.phrase(P::CutOut)
                    test=format!("cut-out-{n}") />
            </div>
        </fieldset>
    }
}
