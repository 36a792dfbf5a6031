//! From a site and a visit to what the trace and the refill test ask for.

use super::body::{MachineState, What, When};
use super::figures::{Fact, Figures, Known, Lack, Need};
use super::site::Site;
use super::visit::Visit;
use crate::quantity::VolumeRate;
use crate::refill::Setup;
use crate::trace::{Case, Observed, Plant};

/// The plant as the trace needs it.
pub fn plant(site: &Site) -> Plant {
    let usual = site.plant.unwrap_or_default();
    Plant {
        control_voltage: site.control_voltage.unwrap_or(usual.control_voltage),
        machines: u8::try_from(site.machines.len()).unwrap_or(u8::MAX).max(1),
        ..usual
    }
}

/// All that is known of a visit's call, as the trace needs it. Its evidence is
/// the visit's answers, and behind them what a refill test has shown.
pub fn case(site: &Site, visit: &Visit) -> Case {
    let (evidence, corrections) = visit.told();
    Case {
        observed: observed(site, visit),
        evidence,
        corrections,
    }
}

/// The readings as found, as the trace needs them.
pub fn observed(site: &Site, visit: &Visit) -> Observed {
    let figures = Figures::of(site, visit);
    let states = || {
        visit
            .machines
            .iter()
            .filter(|((when, _), _)| *when == When::AsFound)
    };
    let out = states()
        .filter(|(_, state)| **state == MachineState::HighHead)
        .count();
    let running_or_out = states()
        .filter(|(_, s)| **s != MachineState::Stopped)
        .count();
    let count = |n: usize| u8::try_from(n).ok().filter(|n| *n > 0);
    // Without a range the machines reject nothing, and then neither range nor
    // approach says anything about the tower.
    let loaded = figures.range.is_ok();
    Observed {
        machines_out: count(out),
        machines_total: count(running_or_out.max(site.machines.len())),
        entering: visit
            .reading(When::AsFound, What::EnteringWater)
            .and_then(|r| r.value.as_temperature()),
        entering_usual: figures
            .expected_approach
            .as_ref()
            .ok()
            .zip(figures.wet_bulb.as_ref().ok())
            .map(|(approach, wet)| *wet + *approach),
        range: figures.range.clone().ok(),
        design_range: site
            .tower
            .design_in
            .zip(site.tower.design_out)
            .map(|(hot, cold)| crate::physics::tower::range(hot, cold)),
        approach: figures.approach.clone().ok().filter(|_| loaded),
        predicted_approach: figures.expected_approach.clone().ok(),
        basin_below_overflow: figures.level.clone().ok(),
        call_level: site.tower.call_level,
        control_voltage: visit
            .reading(When::AsFound, What::ControlVoltage)
            .and_then(|r| r.value.as_voltage()),
        nominal_voltage: site.control_voltage,
        ..Observed::default()
    }
}

/// What a refill test begun now should know. The losses while it fills are
/// today's need, in the share of machines seen running last.
///
/// # Errors
/// [`Lack::Needs`] when the basin's shape is not known: levels then say nothing
/// of flows.
pub fn refill_setup(site: &Site, visit: &Visit) -> Known<Setup> {
    let basin = site
        .tower
        .basin
        .ok_or_else(|| Lack::Needs(vec![Need::Fact(Fact::Basin)]))?;
    let figures = Figures::of(site, visit);
    let need = figures.water.as_ref().ok().map(|w| w.makeup);
    let design = figures.design_water.as_ref().ok().map(|w| w.makeup);
    let running = site
        .machines
        .iter()
        .filter(|m| {
            let left = visit.machines.get(&(When::AsLeft, m.id));
            let state = left.or_else(|| visit.machines.get(&(When::AsFound, m.id)));
            state == Some(&MachineState::Running)
        })
        .count();
    let share = running as f64 / site.machines.len().max(1) as f64;
    let usual = design.unwrap_or_default();
    Ok(Setup {
        basin,
        // Machines that are out reject nothing, so today's figure can be far
        // too small to judge a fill valve by: the design day's is judged too.
        makeup_need: need.unwrap_or_default(),
        design_need: design,
        loss_while_testing: VolumeRate::default().max(usual * share),
        call_level: site.tower.call_level,
        stop_level: site.tower.stop_level,
        low_limit: site.tower.inlet_level,
        valve: None,
        earlier: None,
        valve_cv: None,
        mains: None,
        drain: None,
        earlier_drain: None,
    })
}
