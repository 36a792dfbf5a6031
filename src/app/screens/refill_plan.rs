//! The plan of a refill test: how far, how long, how much water, and what can
//! hurt. The fill valve, the mains pressure and the drain are asked for here.

use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::parts::field::{QuantityField, Typing};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::parts::number::Amount;
use crate::app::prefs::prefs;
use crate::app::view::prelude::*;
use crate::physics::piping::valve::FlowCoefficient;
use crate::quantity::{Bounds, Kind, Time, Unit, Value, show};
use crate::record::{Figures, earlier_tests, refill_setup, with_earlier};
use crate::refill::{Setup, cautions, plan, valve_range};
use crate::words::Phrase as P;
use uom::si::time::minute;

/// The valve's Cv, the mains pressure and the drain's bore, being typed. They
/// go into the test's entry, and stand here again at the site's next test.
#[derive(Clone, Copy)]
pub struct ValveTyped {
    cv: Typing,
    mains: Typing,
    drain: Typing,
}

impl ValveTyped {
    /// What was typed for this visit's site before.
    pub fn of(job: Job) -> Self {
        let site = job
            .visit
            .with_untracked(|v| v.as_ref().map(|v| v.site.to_string()))
            .unwrap_or_default();
        let number = |name: &str, kind, low, high, unit| {
            Typing::new(
                format!("{name} {site}"),
                kind,
                Bounds::of(low, high, unit),
                None,
            )
        };
        Self {
            cv: number("valve cv", Kind::Number, 0.01, 5_000.0, Unit::One),
            mains: number("mains", Kind::GaugePressure, 1.0, 300.0, Unit::Psig),
            drain: number("drain", Kind::Level, 0.25, 24.0, Unit::Inch),
        }
    }

    /// The setup of a test begun now.
    pub fn setup(self, job: Job) -> Option<Setup> {
        let (visit, site) = job.both()?;
        let atmosphere = Figures::of(&site, &visit).atmosphere.ok();
        let typed = |typing: Typing| typing.typed().map(|t| t.value);
        let tests = ledger().log().with(|log| earlier_tests(log, visit.site));
        let setup = Setup {
            valve_cv: typed(self.cv).and_then(Value::as_number),
            mains: typed(self.mains).and_then(Value::as_gauge_pressure),
            drain: typed(self.drain).and_then(Value::as_level),
            ..refill_setup(&site, &visit).ok()?
        };
        let setup = with_earlier(setup, &tests);
        let valve = match (setup.valve_cv, setup.mains, atmosphere) {
            (Some(cv), Some(mains), Some(air)) => {
                valve_range(FlowCoefficient::from_cv(cv), mains, air).ok()
            }
            _ => None,
        };
        Some(Setup { valve, ..setup })
    }
}

/// The plan.
#[component]
pub fn Plan(job: Job, valve: ValveTyped) -> View {
    let words = prefs().words;
    let system = prefs().system.get_untracked();
    let said = move |v| show(v, system).to_string();
    let fact = move |name: P, value: Value, note: String| {
        markup! {
            <div class="number">
                <span class="label">{words.phrase(name)}</span>
                <Amount value />
                <span class="small sub">{note}</span>
            </div>
        }
    };
    let facts = move || {
        let setup = valve.setup(job)?;
        let plan = plan(&setup).ok()?;
        let need = setup.makeup_need.max(setup.design_need.unwrap_or_default());
        let alone = plan.minutes_without_drain;
        let fill = plan.expected.map(|e| {
            let note = match plan.fill_minutes {
                Some((least, most)) => words.fill_takes(least, most),
                None => words.phrase(P::FillTooSmall).to_owned(),
            };
            let (low, high) = (
                show(Value::flow(e.low), system),
                show(Value::flow(e.high), system),
            );
            // One unit for both, where it is one.
            let first = match low.unit == high.unit {
                true => low.number,
                false => low.to_string(),
            };
            let range = format!("{first}\u{a0}– {}", high.number);
            let unit = high.unit;
            markup! {
                <div class="number wide" data-test="plan-fill">
                    <span class="label">{words.phrase(P::FillExpected)}</span>
                    <span class="value">
                        {range}
                        <span class="u">{unit}</span>
                    </span>
                    <span class="small sub">{note}</span>
                </div>
            }
        });
        let draw = plan.draw.map(|d| {
            let minutes = |m: f64| show(Value::duration(Time::new::<minute>(m)), system);
            let middle = (d.least * d.most).sqrt().round().max(1.0);
            let shown = minutes(middle);
            markup! {
                <div class="number" data-test="plan-draw">
                    <span class="label">{words.phrase(P::DrawTakes)}</span>
                    <span class="value">
                        {shown.number}
                        <span class="u">{shown.unit}</span>
                    </span>
                    <span class="small sub">{words.draw_takes(d.least, d.most, d.basis)}</span>
                </div>
            }
        });
        let watch = plan.watch_share.map(|share| words.watch_after(share));
        let longest = plan.longest_passing_minutes.map(|m| words.fill_at_most(m));
        let limit = setup.low_limit.map(|limit| {
            let left = plan.minutes_to_limit.map(|m| words.minutes_to_limit(m));
            fact(P::StopBelow, Value::level(limit), left.unwrap_or_default())
        });
        let alone = alone
            .map(|m| words.minutes_if_drain_shut(m))
            .unwrap_or_default();
        // Neither is said while neither today's readings nor the design give it.
        let known = need.value > 0.0;
        let losses =
            known.then(|| words.losses_while_testing(&said(Value::flow(setup.loss_while_testing))));
        let need = known.then(|| {
            let basis = words.phrase(P::NeedBasis).to_owned();
            fact(P::NeedNow, Value::flow(need), basis)
        });
        Some(markup! {
            <div class="two">
                {fact(
                    P::DrawTo,
                    Value::level(plan.draw_down_to),
                    words.refill_basis(plan.basis).to_owned(),
                )}
                {draw}
                {fact(P::WaterSpent, Value::volume(plan.volume_spent), alone)}
                {need}
                {limit}
                {fill}
            </div>
            <p class="sub small">{longest}</p>
            <p class="sub small" data-test="plan-watch">{watch}</p>
            <p class="sub small">{losses}</p>
        })
    };
    let missing = job.both().is_none().then(|| words.phrase(P::NotHereBody));
    markup! {
        <section>
            <h2>{words.phrase(P::PlanTitle)}</h2>
            {missing}
            {facts}
            <div class="notice caution">
                <Draw icon=Icon::Warning />
                <ul class="bullets">
                    {cautions()
                        .map(|c| markup! { <li>{words.refill_caution(c)}</li> })
                        .collect_view()}
                </ul>
            </div>
            <details>
                <summary>{words.phrase(P::ValveTitle)}</summary>
                <div class="fields">
                    <QuantityField
                        typing=valve.cv
                        label=words.phrase(P::ValveCv)
                        hint=words.phrase(P::ValveHint)
                        test="valve-cv"
                    />
                    <QuantityField
                        typing=valve.mains
                        label=words.phrase(P::MainsPressure)
                        test="mains"
                    />
                    <QuantityField
                        typing=valve.drain
                        label=words.phrase(P::DrainBore)
                        test="drain-bore"
                    />
                </div>
            </details>
        </section>
    }
}
