//! Numbers: what the readings as found come to, each with its formula, source
//! and what it was worked out from.

use crate::app::view::prelude::*;

use super::trace_mind;
use super::visit_frame::{Job, StationScreen, way_on};
use crate::app::parts::number::Number;
use crate::app::prefs::prefs;
use crate::app::route::{Route, Station};
use crate::physics::basis::Figure;
use crate::quantity::{System, Value, show};
use crate::record::{Figures, Head, Known, Site, Visit, VisitId, What, When};
use crate::words::Phrase as P;

/// The station.
#[component]
pub fn Numbers(id: VisitId) -> View {
    let job = Job::of(id);
    trace_mind::prepare(job);
    let words = prefs().words;
    let act = way_on(Route::Visit(id, Station::Trace), words.phrase(P::ToTrace));
    let sub = words.phrase(P::NumbersSub);
    let list = move || {
        let (visit, site) = job.both()?;
        Some(markup! { <List site visit /> })
    };
    markup! {
        <StationScreen job title=P::StationNumbers sub name="numbers" act>
            <div>{list}</div>
            {soon(
                markup! {
                    <a class="button" href=Route::Workings(Some(id)).href() data-test="to-workings">
                        {words.phrase(P::Workings)}
                    </a>
                },
            )}
        </StationScreen>
    }
}

#[component]
fn List(site: Site, visit: Visit) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let figures = Figures::of(&site, &visit);
    let reading = |what| {
        let reading = visit.reading(When::AsFound, what)?;
        let name = words.reading_name(what).to_owned();
        Some((name, show(reading.value, system).to_string()))
    };
    let from = |whats: &[What]| whats.iter().filter_map(|w| reading(*w)).collect::<Vec<_>>();
    let said = |value: Value| show(value, system).to_string();
    let flow = figures.flow.as_ref().ok().map(|flow| {
        let name = match figures.flow_assumed {
            true => words.phrase(P::DesignFlow),
            false => words.reading_name(What::WaterFlow),
        };
        (name.to_owned(), said(Value::flow(*flow)))
    });
    let known = |value: Known<Value>| value.map_err(|lack| words.lack(&lack, system));
    let basis = |figure| (words.formula(figure), words.source(figure));
    let assumed =
        (figures.flow_assumed && flow.is_some()).then(|| words.phrase(P::FlowAssumed).to_owned());
    let air = [What::DryBulb, What::Humidity, What::WetBulb];
    let water = [What::EnteringWater, What::LeavingWater];
    let with_flow = || {
        from(&water)
            .into_iter()
            .chain(flow.clone())
            .collect::<Vec<_>>()
    };
    let sea_level = (figures.sea_level_assumed && figures.wet_bulb.is_ok())
        .then(|| words.phrase(P::SeaLevelAssumed).to_owned());
    let expected = figures
        .expected_approach
        .as_ref()
        .ok()
        .map(|approach| words.expected_today(&said(Value::temperature_difference(*approach))));
    let design_need = figures
        .design_water
        .as_ref()
        .ok()
        .map(|w| words.at_design_load(&said(Value::flow(w.makeup))));
    let design_dry = figures
        .design_to_dry
        .as_ref()
        .ok()
        .map(|t| words.at_design_load(&said(Value::duration(*t))));
    let balance = figures
        .evaporation
        .as_ref()
        .ok()
        .map(|e| words.evaporation_note(e, &said(Value::flow(e.by_rule))));
    let by = figures
        .evaporation
        .as_ref()
        .map_or(Figure::Evaporation, |e| e.method().figure());
    let mut level = from(&[What::BasinLevel]);
    level.extend(figures.water.as_ref().ok().map(|w| {
        (
            words.phrase(P::Makeup).to_owned(),
            said(Value::flow(w.makeup)),
        )
    }));
    let passed = figures.to_inlet.as_ref().is_ok_and(|t| t.value <= 0.0);
    let with_air = || {
        let mut all = with_flow();
        all.extend(from(&air));
        all
    };
    // Below the fold.
    let rest = markup! {
        <Number label=words.phrase(P::Evaporation)
            value=known(figures.evaporation.map(|e| Value::flow(e.rate()))) note=balance
            basis=basis(by) from=with_air() test="n-evaporation" />
        <Number label=words.phrase(P::Makeup)
            value=known(figures.water.map(|w| Value::flow(w.makeup))) note=design_need
            basis=basis(Figure::Makeup) from=with_air() test="n-makeup" />
        <Number label=words.phrase(P::ToInlet)
            value=known(figures.to_inlet.map(Value::duration))
            note=Some(words.phrase(if passed { P::InletPassed } else { P::IfNothingFills }).to_owned())
            basis=basis(Figure::MinutesToDry) from=level.clone() test="n-to-inlet" />
        <Number label=words.phrase(P::ToDry) value=known(figures.to_dry.map(Value::duration))
            note=design_dry basis=basis(Figure::MinutesToDry) from=level test="n-to-dry" />
        {figures
            .heads
            .into_iter()
            .map(|head| markup! { <Condenser site=site.clone() head system /> })
            .collect_view()}
    };
    markup! {
        <Number label=words.phrase(P::WetBulb) value=known(figures.wet_bulb.map(Value::temperature))
            note=sea_level
            basis=basis(Figure::WetBulb) from=from(&air) test="n-wet-bulb" />
        <Number label=words.phrase(P::Approach)
            value=known(figures.approach.map(Value::temperature_difference)) note=expected
            basis=basis(Figure::Approach)
            from=from(&[What::EnteringWater, What::DryBulb, What::Humidity, What::WetBulb])
            test="n-approach" />
        <Number label=words.phrase(P::Range)
            value=known(figures.range.map(Value::temperature_difference))
            basis=basis(Figure::Range) from=from(&water) test="n-range" />
        <Number label=words.phrase(P::Heat) value=known(figures.heat.map(Value::heat)) note=assumed
            basis=basis(Figure::HeatRejected) from=with_flow() test="n-heat" />
        {soon(rest)}
    }
}

#[component]
fn Condenser(site: Site, head: Head, system: System) -> View {
    let words = prefs().words;
    let machine = site.machines.into_iter().find(|m| m.id == head.machine);
    let name = machine.map(|m| words.machine_line(&m));
    let said = |value: Value| show(value, system).to_string();
    let over = head
        .over_water
        .ok()
        .map(|t| words.over_leaving_water(&said(Value::temperature_difference(t))));
    let margin = head.below_cut_out.map(|pascals| {
        let room = Value {
            kind: crate::quantity::Kind::PressureDifference,
            si: pascals.abs(),
        };
        words.from_cut_out(&said(room), pascals >= 0.0)
    });
    let note: Vec<String> = over.into_iter().chain(margin).collect();
    markup! {
        <Number
            label=format!("{}: {}", name.unwrap_or_default(), words.phrase(P::Condensing))
            value=head
                .condensing
                .map(|c| Value::temperature(c.mean))
                .map_err(|lack| words.lack(&lack, system))
            note=(!note.is_empty()).then(|| note.join(" "))
            basis=(
                words.formula(Figure::CondensingTemperature),
                words.source(Figure::CondensingTemperature),
            )
            test="n-condensing"
        />
    }
}
