//! The loop on its way back after the fix: what was read, and what to expect.

use uom::si::power::watt;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin;
use uom::si::time::second;

use super::body::{What, When};
use super::figures::{Fact, Figures, Lack, fact};
use super::id::{EntryId, MachineId};
use super::moment::Moment;
use super::site::{Machine, Site};
use super::visit::Visit;
use crate::physics::loop_heat::{Condenser, Recovery, Rejection, Restart, RestartPlan, Restarting};
use crate::physics::tower::range;
use crate::quantity::{
    Power, Ratio, TemperatureInterval, ThermodynamicTemperature, Time, Value, Volume,
};

/// A reading of the loop, by its time.
#[derive(Clone, Debug, PartialEq)]
pub struct LoopPoint {
    /// The entry that says so.
    pub entry: EntryId,
    /// When.
    pub at: Moment,
    /// Of what.
    pub what: What,
    /// On which machine.
    pub machine: Option<MachineId>,
    /// Value in SI.
    pub value: Value,
    /// As typed.
    pub typed: String,
}

/// Minutes of design flow that pipes and condensers are taken to hold beside
/// the basin. Common practice, no source.
const PIPES_S: f64 = 180.0;
/// Condensing over leaving water of a sound condenser, kelvin. Common practice,
/// no source.
const APPROACH_K: f64 = 6.0;
/// How far below its trip a machine's water is to stay, kelvin. Common
/// practice, no source.
const MARGIN_K: f64 = 3.0;

/// What the loop is expected to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlook {
    /// Entering water from the first reading on: seconds after it, and the
    /// temperature; +/-30 % of the way still to go.
    pub expected: Vec<(f64, ThermodynamicTemperature)>,
    /// Where it settles with the machines that run.
    pub settles: ThermodynamicTemperature,
    /// When to start the machines that wait, in the order of the site.
    pub restart: Option<RestartPlan>,
    /// The machines that wait.
    pub waiting: Vec<MachineId>,
}

/// Water in the loop where nobody has said: the basin at its stop level and
/// three minutes of design flow.
/// Unknown while the basin, its stop level or the design flow are.
pub fn loop_water(site: &Site) -> Option<Volume> {
    let tower = &site.tower;
    let basin = tower.basin?.volume(tower.stop_level?);
    Some(basin + tower.design_flow? * Time::new::<second>(PIPES_S))
}

/// What to expect of the loop from its first recovery reading on, shown for so
/// many seconds.
///
/// # Errors
/// [`Lack::Needs`] without a reading of the entering water;
/// [`Lack::Physics`] as [`Recovery::after`].
pub fn outlook(site: &Site, visit: &Visit, water: Volume, seconds: f64) -> Result<Outlook, Lack> {
    let needs = || Lack::readings(&[What::EnteringWater]);
    let entering: Vec<&LoopPoint> = visit
        .recovery
        .iter()
        .filter(|p| p.what == What::EnteringWater)
        .collect();
    let first = entering.first().ok_or_else(needs)?;
    let from = first.value.as_temperature().ok_or_else(needs)?;
    let figures = Figures::of(site, visit);
    let tower = &site.tower;
    let flow = fact(tower.design_flow, Fact::DesignFlow)?;
    let (hot, cold) = (
        fact(tower.design_in, Fact::DesignIn)?,
        fact(tower.design_out, Fact::DesignOut)?,
    );
    let design_wet = fact(tower.design_wet_bulb, Fact::DesignWetBulb)?;
    let wet_bulb = figures.wet_bulb.unwrap_or(design_wet);
    let warms = range(hot, cold);
    let above = range(cold, design_wet);
    let k = |t: TemperatureInterval| t.get::<kelvin>();
    let effectiveness = Ratio::new::<ratio>(k(warms) / (k(warms) + k(above)));
    let runs = |m: &Machine| {
        let left = visit.machines.get(&(When::AsLeft, m.id));
        left == Some(&super::body::MachineState::Running)
    };
    let rejects = |m: &Machine| m.rejects.unwrap_or_default();
    let heat: Power = site
        .machines
        .iter()
        .filter(|m| runs(m))
        .map(rejects)
        .fold(Power::default(), |a, b| a + b);
    let recovery = Recovery {
        water,
        flow,
        heat,
        wet_bulb,
        tower: Rejection::Effectiveness(effectiveness),
    };
    const STEPS: u32 = 24;
    let expected = (0..=STEPS)
        .map(|n| {
            let at = seconds * f64::from(n) / f64::from(STEPS);
            Ok((at, recovery.after(from, Time::new::<second>(at))?))
        })
        .collect::<Result<_, Lack>>()?;
    let now = entering
        .last()
        .and_then(|p| p.value.as_temperature())
        .unwrap_or(from);
    let atmosphere = figures.atmosphere?;
    let waits: Vec<&Machine> = site.machines.iter().filter(|m| !runs(m)).collect();
    // Those that run already come first: their heat is there.
    let all = || {
        site.machines
            .iter()
            .filter(|m| runs(m))
            .chain(waits.iter().copied())
    };
    let starting: Vec<Restarting> = all()
        .filter_map(|m| {
            let condenser = Condenser {
                refrigerant: m.refrigerant?,
                cut_out: m.cut_out?,
                approach: TemperatureInterval::new::<kelvin>(APPROACH_K),
                range: warms,
            };
            Some(Restarting {
                heat: rejects(m),
                trip: condenser.trip_entering(atmosphere).ok()?,
            })
        })
        .collect();
    let restart = Restart {
        water,
        flow,
        wet_bulb,
        effectiveness,
        entering: now,
        margin: TemperatureInterval::new::<kelvin>(MARGIN_K),
    };
    let known = starting.len() == site.machines.len()
        && !waits.is_empty()
        && starting.iter().all(|m| m.heat.get::<watt>() > 1.0);
    let restart = known.then(|| restart.plan(&starting).ok()).flatten();
    Ok(Outlook {
        expected,
        settles: recovery.settles()?,
        restart,
        waiting: waits.iter().map(|m| m.id).collect(),
    })
}
