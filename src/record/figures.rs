//! What the readings come to: the numbers of the visit, each with what it was
//! worked out from, or what is missing.

use uom::si::ratio::ratio;
use uom::si::volume_rate::cubic_meter_per_second;

use super::body::{What, When};
use super::id::MachineId;
use super::site::{Machine, Site, Tower};
use super::visit::{Slot, Visit};
use crate::physics::refrigerant::Condensing;
use crate::physics::tower::{Characteristic, Duty};
use crate::physics::water::{EnteringAir, Evaporation, USUAL_DRIFT, WaterBalance};
use crate::physics::{Error, air, heat, tower as cooling, water};
use crate::quantity::{
    Length, Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Time, Value,
    VolumeRate,
};

/// What a number may need of the site, and a site may not know.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fact {
    /// Water flow over the tower at design.
    DesignFlow,
    /// Water onto the tower at design.
    DesignIn,
    /// Water off the tower at design.
    DesignOut,
    /// Wet bulb at design.
    DesignWetBulb,
    /// Shape and depth of the basin.
    Basin,
    /// Where the pump inlet draws air.
    InletLevel,
    /// The machine's refrigerant.
    Refrigerant,
}

/// Something a number needs and does not have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// A reading of the visit.
    Reading(What),
    /// A fact of the site.
    Fact(Fact),
}

impl From<What> for Need {
    fn from(what: What) -> Self {
        Need::Reading(what)
    }
}

/// Why a number can't be given.
#[derive(Clone, Debug, PartialEq)]
pub enum Lack {
    /// These readings and facts of the site are missing.
    Needs(Vec<Need>),
    /// The readings are outside what the calculation is good for.
    Physics(Error),
    /// The water off the tower reads no colder than the water onto it: no
    /// heat is being rejected.
    NoRange,
}

impl Lack {
    /// The lack of these readings.
    pub fn readings(whats: &[What]) -> Self {
        Lack::Needs(whats.iter().map(|w| Need::Reading(*w)).collect())
    }
}

/// A fact of the site, or the lack of it.
pub(super) fn fact<T: Copy>(known: Option<T>, fact: Fact) -> Known<T> {
    known.ok_or_else(|| Lack::Needs(vec![Need::Fact(fact)]))
}

impl From<Error> for Lack {
    fn from(error: Error) -> Self {
        Lack::Physics(error)
    }
}

/// One machine's condensing side.
#[derive(Clone, Debug, PartialEq)]
pub struct Head {
    /// The machine.
    pub machine: MachineId,
    /// Saturation temperatures at its head pressure.
    pub condensing: Result<Condensing, Lack>,
    /// Condensing temperature over the water leaving the condensers.
    pub over_water: Result<TemperatureInterval, Lack>,
    /// Head pressure below the cut-out, in pascals; negative when above.
    pub below_cut_out: Option<f64>,
}

/// A number or the lack of it.
pub type Known<T> = Result<T, Lack>;

/// The numbers of a visit, from one round of readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Figures {
    /// Local atmospheric pressure, from the site's altitude.
    pub atmosphere: Known<Pressure>,
    /// Whether sea level was assumed for want of the site's height.
    pub sea_level_assumed: bool,
    /// Outdoor wet bulb, measured or from dry bulb and humidity.
    pub wet_bulb: Known<ThermodynamicTemperature>,
    /// Water leaving the tower over wet bulb.
    pub approach: Known<TemperatureInterval>,
    /// What the approach would be today if the tower did as at design.
    pub expected_approach: Known<TemperatureInterval>,
    /// Water onto the tower less water off it.
    pub range: Known<TemperatureInterval>,
    /// Water flow used: measured, or the design flow.
    pub flow: Known<VolumeRate>,
    /// Whether that flow is the design flow for want of a measured one.
    pub flow_assumed: bool,
    /// Heat rejected.
    pub heat: Known<Power>,
    /// Evaporation now.
    pub evaporation: Known<Evaporation>,
    /// Evaporation, drift, bleed and makeup now.
    pub water: Known<WaterBalance>,
    /// The same at design load in today's air, or design air.
    pub design_water: Known<WaterBalance>,
    /// Basin level below the lip, as read.
    pub level: Known<Length>,
    /// Time until the pump inlet is reached if nothing fills the basin.
    pub to_inlet: Known<Time>,
    /// Time until the basin is dry if nothing fills it.
    pub to_dry: Known<Time>,
    /// The same at design load.
    pub design_to_dry: Known<Time>,
    /// Each machine's condensing side, where its head pressure was read.
    pub heads: Vec<Head>,
}

impl Figures {
    /// The numbers as found.
    pub fn of(site: &Site, visit: &Visit) -> Self {
        Self::at(site, visit, When::AsFound)
    }

    /// The numbers as found or as left.
    pub fn at(site: &Site, visit: &Visit, when: When) -> Self {
        let read = |what| visit.reading(when, what).map(|r| r.value);
        let temperature = |what| {
            read(what)
                .and_then(Value::as_temperature)
                .ok_or_else(|| Lack::readings(&[what]))
        };
        let atmosphere: Known<Pressure> =
            air::standard_pressure(site.altitude.unwrap_or_default()).map_err(Lack::from);
        let wet_bulb = match temperature(What::WetBulb) {
            Ok(measured) => Ok(measured),
            Err(_) => both(temperature(What::DryBulb), || {
                let humidity = read(What::Humidity).and_then(Value::as_humidity);
                humidity.ok_or_else(|| Lack::readings(&[What::Humidity]))
            })
            .and_then(|(dry, rh)| Ok(air::wet_bulb(dry, rh, atmosphere.clone()?)?)),
        };
        let cold = temperature(What::EnteringWater);
        let hot = temperature(What::LeavingWater);
        let approach =
            both(cold.clone(), || wet_bulb.clone()).map(|(cold, wet)| cooling::approach(cold, wet));
        let range = both(cold.clone(), || hot.clone()).and_then(|(cold, hot)| {
            if hot > cold {
                Ok(cooling::range(hot, cold))
            } else {
                Err(Lack::NoRange)
            }
        });
        let measured = read(What::WaterFlow).and_then(Value::as_flow);
        let tower = &site.tower;
        let design_flow = fact(tower.design_flow, Fact::DesignFlow);
        let flow = measured.map_or_else(|| design_flow.clone(), Ok);
        let water_air_ratio = {
            let share = flow
                .as_ref()
                .ok()
                .zip(tower.design_flow)
                .map(|(now, then)| {
                    now.get::<cubic_meter_per_second>() / then.get::<cubic_meter_per_second>()
                });
            let share = share.filter(|s| s.is_finite() && *s > 0.0);
            tower.water_air_ratio * share.unwrap_or(1.0)
        };
        let entering_air = both(wet_bulb.clone(), || temperature(What::DryBulb)).and_then(
            |(wet_bulb, dry_bulb)| {
                Ok(EnteringAir {
                    dry_bulb,
                    wet_bulb,
                    water_air_ratio,
                    pressure: atmosphere.clone()?,
                })
            },
        );
        let evaporation = range.clone().and_then(|_| {
            let (cold, hot) = both(cold.clone(), || hot.clone())?;
            evaporate(flow.clone()?, hot, cold, &entering_air)
        });
        let cycles = Ratio::new::<ratio>(site.tower.cycles);
        let drift = Ratio::new::<ratio>(USUAL_DRIFT);
        let water_now = evaporation
            .clone()
            .and_then(|e| Ok(water::balance(e.rate(), flow.clone()?, drift, cycles)?));
        let design_air = entering_air.or_else(|_| design_entering_air(site, &atmosphere));
        let design_water = design_duty(tower).and_then(|(flow, hot, cold)| {
            let e = evaporate(flow, hot, cold, &design_air)?;
            Ok(water::balance(e.rate(), flow, drift, cycles)?)
        });
        let level = read(What::BasinLevel)
            .and_then(Value::as_level)
            .ok_or_else(|| Lack::readings(&[What::BasinLevel]));
        let basin = fact(tower.basin, Fact::Basin);
        let fall = |to: Known<Length>, need: &Known<WaterBalance>| {
            let held = both(basin.clone(), || to);
            both(both(level.clone(), || held), || need.clone()).and_then(|(where_to, need)| {
                let (from, (basin, to)) = where_to;
                // A reading above the lip is a full basin.
                let from = from.max(Length::default()).min(basin.depth);
                Ok(water::time_to_level(&basin, from, to, need.makeup)?)
            })
        };
        let floor = || basin.clone().map(|b| b.depth);
        let heads = site
            .machines
            .iter()
            .filter_map(|m| head(m, visit, when, &hot, &atmosphere))
            .collect();
        Figures {
            expected_approach: expected_approach(site, &wet_bulb, &range, &atmosphere),
            to_inlet: fall(fact(tower.inlet_level, Fact::InletLevel), &water_now),
            to_dry: fall(floor(), &water_now),
            design_to_dry: fall(floor(), &design_water),
            heat: range
                .clone()
                .and_then(|range| Ok(heat::heat_rejected(flow.clone()?, range)?)),
            water: water_now,
            atmosphere,
            sea_level_assumed: site.altitude.is_none(),
            wet_bulb,
            approach,
            range,
            flow,
            flow_assumed: measured.is_none(),
            evaporation,
            design_water,
            level,
            heads,
        }
    }

    /// How many of the seven main numbers are known.
    pub fn known(&self) -> usize {
        [
            self.wet_bulb.is_ok(),
            self.approach.is_ok(),
            self.range.is_ok(),
            self.heat.is_ok(),
            self.evaporation.is_ok(),
            self.water.is_ok(),
            self.to_dry.is_ok(),
        ]
        .into_iter()
        .filter(|known| *known)
        .count()
    }
}

/// Both of two, or all that is missing for either.
fn both<A, B>(a: Known<A>, b: impl FnOnce() -> Known<B>) -> Known<(A, B)> {
    match (a, b()) {
        (Ok(a), Ok(b)) => Ok((a, b)),
        (Err(Lack::Needs(mut first)), Err(Lack::Needs(second))) => {
            for what in second {
                if !first.contains(&what) {
                    first.push(what);
                }
            }
            Err(Lack::Needs(first))
        }
        (Err(lack), _) | (_, Err(lack)) => Err(lack),
    }
}

fn evaporate(
    flow: VolumeRate,
    entering: ThermodynamicTemperature,
    leaving: ThermodynamicTemperature,
    air: &Known<EnteringAir>,
) -> Known<Evaporation> {
    // Air outside the balance's bounds still leaves the field rule.
    let at = |air| water::evaporation_between(flow, entering, leaving, air);
    Ok(at(air.as_ref().ok()).or_else(|_| at(None))?)
}

/// Design air: the design wet bulb under the 95 °F dry bulb at which towers are
/// rated, or saturated where the wet bulb is higher. Common practice, no source.
fn design_entering_air(site: &Site, atmosphere: &Known<Pressure>) -> Known<EnteringAir> {
    let wet_bulb = fact(site.tower.design_wet_bulb, Fact::DesignWetBulb)?;
    let rated = ThermodynamicTemperature::new::<
        uom::si::thermodynamic_temperature::degree_fahrenheit,
    >(95.0);
    let dry_bulb = rated.max(wet_bulb);
    let water_air_ratio = site.tower.water_air_ratio;
    Ok(EnteringAir {
        dry_bulb,
        wet_bulb,
        water_air_ratio,
        pressure: atmosphere.clone()?,
    })
}

/// The approach a tower as at design would show at today's wet bulb and
/// today's range, or the design range when today's is unknown.
fn expected_approach(
    site: &Site,
    wet_bulb: &Known<ThermodynamicTemperature>,
    range: &Known<TemperatureInterval>,
    atmosphere: &Known<Pressure>,
) -> Known<TemperatureInterval> {
    let plant = &site.tower;
    let pressure = atmosphere.clone()?;
    let design_wet_bulb = fact(plant.design_wet_bulb, Fact::DesignWetBulb);
    let water = both(fact(plant.design_in, Fact::DesignIn), || {
        fact(plant.design_out, Fact::DesignOut)
    });
    let at_design = both(design_wet_bulb, || water);
    let (wet, (design_wet_bulb, (entering, leaving))) = both(wet_bulb.clone(), || at_design)?;
    let design = Duty {
        entering,
        leaving,
        wet_bulb: design_wet_bulb,
        water_air_ratio: plant.water_air_ratio,
        pressure,
    };
    let design_range = cooling::range(entering, leaving);
    let range = range.clone().unwrap_or(design_range);
    let leaving = Characteristic::from_design(&design)?.leaving_water(
        wet,
        range,
        plant.water_air_ratio,
        pressure,
    )?;
    Ok(cooling::approach(leaving, wet))
}

/// Flow and temperatures at design.
fn design_duty(
    tower: &Tower,
) -> Known<(
    VolumeRate,
    ThermodynamicTemperature,
    ThermodynamicTemperature,
)> {
    let water = both(fact(tower.design_in, Fact::DesignIn), || {
        fact(tower.design_out, Fact::DesignOut)
    });
    let (flow, (hot, cold)) = both(fact(tower.design_flow, Fact::DesignFlow), || water)?;
    Ok((flow, hot, cold))
}

fn head(
    machine: &Machine,
    visit: &Visit,
    when: When,
    leaving_water: &Known<ThermodynamicTemperature>,
    atmosphere: &Known<Pressure>,
) -> Option<Head> {
    let slot = Slot {
        when,
        what: What::HeadPressure,
        machine: Some(machine.id),
    };
    let head = visit.readings.get(&slot)?.value.as_gauge_pressure()?;
    let refrigerant = fact(machine.refrigerant, Fact::Refrigerant);
    let condensing = both(refrigerant, || atmosphere.clone())
        .and_then(|(refrigerant, air)| Ok(refrigerant.condensing(head, air)?));
    let over_water = both(condensing.clone(), || leaving_water.clone())
        .map(|(condensing, water)| cooling::approach(condensing.mean, water));
    let below_cut_out = machine
        .cut_out
        .map(|cut_out| cut_out.pascals() - head.pascals());
    Some(Head {
        machine: machine.id,
        condensing,
        over_water,
        below_cut_out,
    })
}
