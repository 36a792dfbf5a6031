//! The tower's design point, the site's height, and its makeup water.

use crate::app::view::prelude::*;

use super::{Fact, Form, also, frame};
use crate::app::parts::field::{QuantityField, TextField};
use crate::app::prefs::prefs;
use crate::quantity::{Bounds, Kind, System, Unit, Value};
use crate::record::{Site, SiteId, Tower};
use crate::words::Phrase as P;

/// The design temperatures must fall from hot water to cold to wet bulb; one
/// that is not known is passed over.
fn fault(upper: &[Fact], lower: Fact) -> Option<P> {
    let low = lower.held().ok()??.si;
    let high = upper.iter().find_map(|f| f.held().ok()?)?.si;
    (low >= high).then_some(P::DesignOrder)
}

/// The form.
pub fn form(id: SiteId, site: Site) -> View {
    let words = prefs().words;
    let tried = RwSignal::new(false);
    let tower = site.tower;
    let key = move |name: &str| format!("site {id} {name}");
    let temperature = |name, known: Option<_>| {
        let bounds = Bounds::of(32.0, 140.0, Unit::Fahrenheit);
        let known = known.map(Value::temperature);
        Fact::new(key(name), Kind::Temperature, bounds, known)
    };
    let hot = temperature("hot", tower.design_in);
    let cold = temperature("cold", tower.design_out);
    let wet_bulb = temperature("wet bulb", tower.design_wet_bulb);
    let flow = Fact::new(
        key("flow"),
        Kind::Flow,
        Bounds::of(1.0, 20_000.0, Unit::GallonPerMinute),
        tower.design_flow.map(Value::flow),
    );
    let altitude = Fact::new(
        key("altitude"),
        Kind::Length,
        Bounds::of(-1_000.0, 14_000.0, Unit::Foot),
        site.altitude.map(Value::length),
    );
    let cycles = Fact::new(
        key("cycles"),
        Kind::Number,
        Bounds::of(1.1, 30.0, Unit::One),
        Some(Value::number(tower.cycles)),
    );
    let makeup = RwSignal::new(site.makeup);
    let cold_fault = move || fault(&[hot], cold);
    let wet_fault = move || fault(&[cold, hot], wet_bulb);
    let change = move |site: &mut Site| {
        let held = |fact: Fact| fact.held().ok();
        if cold_fault().is_some() || wet_fault().is_some() {
            return None;
        }
        let tower = &mut site.tower;
        tower.design_flow = held(flow)?.and_then(Value::as_flow);
        tower.design_in = held(hot)?.and_then(Value::as_temperature);
        tower.design_out = held(cold)?.and_then(Value::as_temperature);
        tower.design_wet_bulb = held(wet_bulb)?.and_then(Value::as_temperature);
        tower.cycles = held(cycles)?.map_or(Tower::default().cycles, |v| v.si);
        site.altitude = held(altitude)?.and_then(Value::as_length);
        site.makeup = makeup.get_untracked().trim().to_owned();
        Some(())
    };
    let fields = [flow, hot, cold, wet_bulb, altitude, cycles];
    // Rated condition of an open tower, offered where the plate is not at
    // hand: 95 to 85 at 78 °F wet bulb (common practice, no source).
    let rate = move |_| {
        let us = prefs().system.get_untracked() == System::Us;
        for (fact, in_us, in_si) in [
            (hot, "95", "35"),
            (cold, "85", "29.4"),
            (wet_bulb, "78", "25.6"),
        ] {
            let (text, unit) = match us {
                true => (in_us, Unit::Fahrenheit),
                false => (in_si, Unit::Celsius),
            };
            fact.typing.fill_in(text.to_owned(), unit);
        }
    };
    let form = Form {
        id,
        title: P::PartTower,
        tried,
        fields: Box::new(move || fields.map(|f| f.typing).to_vec()),
        texts: Box::new(move || vec![key("makeup")]),
        change: Box::new(change),
    };
    let body = markup! {
        <section>
            <h2>{words.phrase(P::Tower)}</h2>
            <p class="sub small">{words.phrase(P::TowerHint)}</p>
            <QuantityField typing=flow.typing label=words.phrase(P::DesignFlow) test="flow"
                hint=words.phrase(P::DesignFlowHint) />
            <div class="two">
                <QuantityField typing=hot.typing label=words.phrase(P::DesignIn) test="hot" />
                <QuantityField typing=cold.typing label=words.phrase(P::DesignOut) test="cold"
                    also=also(cold_fault) />
                <QuantityField typing=wet_bulb.typing label=words.phrase(P::DesignWetBulb)
                    test="design-wet-bulb" also=also(wet_fault) />
                <QuantityField typing=altitude.typing label=words.phrase(P::Altitude)
                    test="altitude" />
            </div>
            <button type="button" data-test="usual-rating" on:click=tap(rate)>
                {words.phrase(P::UsualRating)}
            </button>
        </section>
        <section>
            <h2>{words.phrase(P::MakeupWater)}</h2>
            <TextField key=key("makeup") text=makeup label=words.phrase(P::MakeupSupply)
                hint=words.phrase(P::MakeupSupplyHint) long=true test="makeup-supply" />
            <QuantityField typing=cycles.typing label=words.phrase(P::CyclesSet) test="cycles"
                hint=words.phrase(P::CyclesHint) />
        </section>
    };
    frame(form, body)
}
