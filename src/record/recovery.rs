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
use crate::physics::heat::heat_rejected;
use crate::physics::loop_heat::{Condenser, Recovery, Rejection, Restart, RestartPlan, Restarting};
use crate::physics::refrigerant::{Refrigerant, head};
use crate::physics::tower::range;
use crate::quantity::{
    GaugePressure, Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Time,
    Value, Volume,
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
/// Condensing over leaving water of a sound condenser, kelvin, and by how much
/// sound ones differ. Common practice, no source.
const APPROACH_K: f64 = 6.0;
const APPROACH_DOUBT_K: f64 = 3.0;
/// The loop is foreseen within this part of the way still to go: see
/// [`Recovery::after`].
const WAY_DOUBT: f64 = 0.3;
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
    /// The machine whose head is drawn: read last, else started last.
    pub headed: Option<MachineId>,
    /// Head of that machine over the same times, as a sound condenser has it.
    /// Empty where its refrigerant is not known.
    pub head: Vec<(f64, GaugePressure)>,
    /// When the entering water was read last: [`Outlook::restart`] counts from it.
    pub read_at: Moment,
    /// When its first reading was: zero of the times above.
    pub begun: Moment,
    from: ThermodynamicTemperature,
    warms: TemperatureInterval,
    atmosphere: Pressure,
    recovery: Recovery,
    fluids: Vec<(MachineId, Refrigerant)>,
}

/// Water in the loop: as noted last, else the basin at its stop level, or
/// brimful where that is not known, and three minutes of design flow.
/// Unknown while the basin or the design flow is.
pub fn loop_water(site: &Site, visit: &Visit) -> Option<Volume> {
    let noted = visit.recovery.iter().rev();
    let mut noted = noted.filter(|p| p.what == What::LoopVolume);
    if let Some(volume) = noted.find_map(|p| p.value.as_volume()) {
        return Some(volume);
    }
    let tower = &site.tower;
    let basin = tower.basin?.volume(tower.stop_level.unwrap_or_default());
    Some(basin + tower.design_flow? * Time::new::<second>(PIPES_S))
}

/// What to expect of the loop from its first recovery reading on, shown for so
/// many seconds.
///
/// # Errors
/// [`Lack::Needs`] without a reading of the entering water, the tower's design
/// or, where the water in the loop was not noted, the basin; [`Lack::Physics`]
/// as [`Recovery::after`].
pub fn outlook(site: &Site, visit: &Visit, seconds: f64) -> Result<Outlook, Lack> {
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
    let water = fact(loop_water(site, visit), Fact::Basin)?;
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
    // A machine whose heat is not known gives its share of the design's.
    let share = heat_rejected(flow, warms)? / site.machines.len().max(1) as f64;
    let mut heat = Power::default();
    for machine in site.machines.iter().filter(|m| runs(m)) {
        heat += machine.rejects.unwrap_or(share);
    }
    let recovery = Recovery {
        water,
        flow,
        heat,
        wet_bulb,
        tower: Rejection::Effectiveness(effectiveness),
    };
    const STEPS: u32 = 24;
    let foreseen = (0..=STEPS)
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
                heat: m.rejects?,
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
    let fluid = |m: &Machine| Some((m.id, m.refrigerant?));
    let read_last = visit.recovery.iter().rev().find_map(|p| p.machine);
    let mut outlook = Outlook {
        expected: foreseen,
        settles: recovery.settles()?,
        restart,
        waiting: waits.iter().map(|m| m.id).collect(),
        headed: read_last.or_else(|| visit.started.last().map(|s| s.1)),
        head: Vec::new(),
        read_at: entering.last().map_or(first.at, |p| p.at),
        begun: first.at,
        from,
        warms,
        atmosphere,
        recovery,
        fluids: site.machines.iter().filter_map(fluid).collect(),
    };
    if let Some(machine) = outlook.headed {
        let at = |(s, water): &(f64, ThermodynamicTemperature)| {
            Some((*s, outlook.head_of(machine, *water, 0.0)?))
        };
        outlook.head = outlook.expected.iter().filter_map(at).collect();
    }
    Ok(outlook)
}

impl Outlook {
    /// Head of a machine at this entering water, with the approach so many kelvin
    /// off the usual one. The range is the design's, all machines at full heat.
    fn head_of(
        &self,
        machine: MachineId,
        entering: ThermodynamicTemperature,
        off_k: f64,
    ) -> Option<GaugePressure> {
        let (_, fluid) = self.fluids.iter().find(|f| f.0 == machine)?;
        let approach = TemperatureInterval::new::<kelvin>(APPROACH_K + off_k);
        head::expected(*fluid, entering + self.warms, approach, self.atmosphere).ok()
    }

    /// Between what bounds a reading of the loop was to be expected: entering
    /// water within 30 % of the way still to go, head besides within +/-3 K of
    /// the approach. `None` for the first reading of the water, from which all
    /// else is worked out, and for what is not foreseen.
    pub fn bounds(&self, point: &LoopPoint) -> Option<(Value, Value)> {
        let after = point.at.seconds_since(&self.begun);
        let water = self.recovery.after(self.from, Time::new::<second>(after));
        let way = range(water.ok()?, self.settles);
        let at = |share: f64| self.settles + way * share;
        let (a, b) = (at(1.0 - WAY_DOUBT), at(1.0 + WAY_DOUBT));
        let (cool, warm) = if a < b { (a, b) } else { (b, a) };
        match point.what {
            What::EnteringWater if after > 0.0 => {
                Some((Value::temperature(cool), Value::temperature(warm)))
            }
            What::HeadPressure => {
                let machine = point.machine?;
                let low = self.head_of(machine, cool, -APPROACH_DOUBT_K)?;
                let high = self.head_of(machine, warm, APPROACH_DOUBT_K)?;
                Some((Value::gauge_pressure(low), Value::gauge_pressure(high)))
            }
            _ => None,
        }
    }
}
