//! Restarting the machines one by one on a loop that is still hot.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::time::second;
use uom::si::volume_rate::cubic_meter_per_second;

use crate::physics::air::{celsius, temperature};
use crate::physics::error::{Error, NoSolution, Quantity, within};
use crate::physics::heat::{MOST_FLOW, PER_VOLUME, heat_watts, volume};
use crate::physics::root::bisect;
use crate::quantity::{
    Power, Ratio, TemperatureInterval, ThermodynamicTemperature, Time, Volume, VolumeRate,
};

/// Most machines on one loop.
pub const MOST_MACHINES: usize = 24;

/// A machine waiting to be started.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Restarting {
    /// Heat it puts into the loop, 1 W to 1 GW: of a machine pulling down a warm
    /// space, more than at rest.
    pub heat: Power,
    /// Entering water at which it trips (see [`super::Condenser`]), 0 to 100 C.
    pub trip: ThermodynamicTemperature,
}

/// A loop with the pump and the tower running and every machine off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Restart {
    /// Water in the loop, 1 L to 100,000 m3.
    pub water: Volume,
    /// Flow over the tower, 1 mL/s to 10 m3/s.
    pub flow: VolumeRate,
    /// Entering wet bulb, -20 to 45 C.
    pub wet_bulb: ThermodynamicTemperature,
    /// Tower effectiveness, range over range plus approach, held; 0.05 to 1.
    pub effectiveness: Ratio,
    /// Water entering the machines now, wet bulb to 100 C.
    pub entering: ThermodynamicTemperature,
    /// How far below its trip a running machine's water must stay, 0 to 30 K.
    pub margin: TemperatureInterval,
}

/// When to start the machines.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RestartPlan {
    /// Until the first start, with the tower alone at work.
    pub wait: Time,
    /// From each start to the next, at least.
    pub spacing: Time,
    /// Hottest water entering a running machine from the first start on.
    pub hottest: ThermodynamicTemperature,
}

/// A stage of the restart: where the loop settles with the machines that run,
/// and the water they allow, C.
#[derive(Clone, Copy, Default)]
struct Stage {
    settles: f64,
    limit: f64,
}

impl Restart {
    /// The least wait and spacing, in the order given, that keep the water
    /// entering every running machine `margin` below its trip. +/-30 %.
    ///
    /// In a mixed loop each start only raises where the loop settles, so the
    /// spacing matters while the loop is hotter than the next machine allows.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, or the
    /// machines are none or more than [`MOST_MACHINES`];
    /// [`NoSolution::StaysTooWarm`] when with all machines running (or with
    /// none) the loop settles above what one of them allows.
    pub fn plan(&self, machines: &[Restarting]) -> Result<RestartPlan, Error> {
        let most = MOST_MACHINES as f64;
        within(Quantity::Machines, machines.len() as f64, 1.0, most)?;
        let flow = self.flow.get::<cubic_meter_per_second>();
        let flow = within(Quantity::WaterFlow, flow, 1e-6, MOST_FLOW)?;
        let turnover = volume(self.water)? / flow;
        let wet = celsius(Quantity::WetBulb, self.wet_bulb, -20.0, 45.0)?;
        let part = self.effectiveness.get::<ratio>();
        let part = within(Quantity::Effectiveness, part, 0.05, 1.0)?;
        let now = celsius(
            Quantity::LoopTemperature,
            self.entering,
            wet.max(0.0),
            100.0,
        )?;
        let margin = self.margin.get::<kelvin_interval>();
        let margin = within(Quantity::TemperatureMargin, margin, 0.0, 30.0)?;
        // After each start: settling temperature and the limit of all running.
        let mut stages = [Stage::default(); MOST_MACHINES];
        let (mut heat, mut limit) = (0.0, f64::INFINITY);
        for (stage, machine) in stages.iter_mut().zip(machines) {
            heat += heat_watts(machine.heat, 1.0)?;
            let trip = celsius(Quantity::EnteringWater, machine.trip, 0.0, 100.0)?;
            limit = f64::min(limit, trip - margin);
            let range = heat / (flow * PER_VOLUME);
            *stage = Stage {
                settles: wet + range * (1.0 - part) / part,
                limit,
            };
        }
        let stages = &stages[..machines.len()];
        let last = stages[stages.len() - 1];
        let stays = Error::NoSolution(NoSolution::StaysTooWarm);
        if last.settles >= last.limit || wet >= last.limit {
            return Err(stays);
        }
        let decay = turnover / part;
        let first = stages[0].limit;
        let wait = if now > first {
            decay * ((now - wet) / (first - wet)).ln()
        } else {
            0.0
        };
        let begin = now.min(first);
        // Worst excess over a limit at any start, for a spacing.
        let excess = |spacing: f64| {
            let left = (-spacing / decay).exp();
            let (mut water, mut worst) = (begin, f64::NEG_INFINITY);
            for pair in stages.windows(2) {
                water = pair[0].settles + (water - pair[0].settles) * left;
                worst = f64::max(worst, water - pair[1].limit);
            }
            worst
        };
        let mut spacing = 0.0;
        if excess(0.0) > 0.0 {
            let mut high = 0.01 * decay;
            while excess(high) > 0.0 {
                high *= 2.0;
                if high > 1e3 * decay {
                    return Err(stays);
                }
            }
            spacing = bisect(0.0, high, |s| -excess(s));
        }
        Ok(RestartPlan {
            wait: Time::new::<second>(wait),
            spacing: Time::new::<second>(spacing),
            hottest: temperature(begin.max(last.settles)),
        })
    }
}
