//! The water balance: what leaves the tower, what must come back, how long it lasts.
//!
//! Makeup = evaporation + blowdown + drift (US DOE FEMP, Cooling Tower
//! Management), plus leaks and overflow that no formula knows. Blowdown =
//! E / (cycles - 1) - drift, never below zero: drift carries dissolved solids
//! out too (US DOE building energy reference; GEMI water planner).
//!
//! Evaporation three ways. Poppe: mass and energy balance along the fill
//! ([`super::tower::Poppe`]), when entering and leaving water and the air are
//! known. The balance: air leaves saturated at the enthalpy the water gave it
//! (Merkel's assumption), when only the range is. The field rule: 0.1 % of the
//! flow per F of range. Against Poppe the balance is within 10 % for usual
//! weather and up to 25 % high for hot dry air; the rule is right on a hot day,
//! 15 % high on a humid one, 13 % low in a desert and 80 % high in winter.

use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::ratio::ratio;
use uom::si::time::second;
use uom::si::volume_rate::cubic_meter_per_second;

use super::air::{self, atmosphere, kernel};
use super::basin::Basin;
use super::basis::{Figure, TowerFigure};
use super::error::{Error, Quantity, within};
use super::heat::{MOST_FLOW, SPECIFIC_HEAT, flow_rate, range_kelvin};
use super::root::bisect;
use super::tower::{self, Duty, water_air};
use crate::quantity::{
    ElectricalConductivity, Length, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature,
    Time, VolumeRate,
};

/// Fraction of the flow evaporated per kelvin by the field rule: 0.1 % per F.
const RULE_PER_KELVIN: f64 = 0.001 * 1.8;

/// Drift taken when nobody knows the eliminators: 0.005 % of the flow, the
/// upper end for modern ones (common practice, no single source).
pub const USUAL_DRIFT: f64 = 5e-5;

/// The air entering a tower and how much water meets it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EnteringAir {
    /// Dry bulb, -20 to 60 C.
    pub dry_bulb: ThermodynamicTemperature,
    /// Wet bulb, at or below the dry bulb.
    pub wet_bulb: ThermodynamicTemperature,
    /// L/G: water mass flow over dry-air mass flow, 0.05 to 20.
    pub water_air_ratio: Ratio,
    /// Local atmospheric pressure, 50 to 110 kPa.
    pub pressure: Pressure,
}

/// Which way an evaporation figure was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EvaporationMethod {
    /// Mass and energy balance along the fill.
    Poppe,
    /// Mass and energy balance with the air leaving saturated.
    Balance,
    /// 0.1 % of the flow per F of range.
    FieldRule,
}

impl EvaporationMethod {
    /// The figure whose formula and source it stands on.
    pub fn figure(self) -> Figure {
        match self {
            EvaporationMethod::Poppe => Figure::Evaporation,
            EvaporationMethod::Balance => Figure::Tower(TowerFigure::EvaporationBalance),
            EvaporationMethod::FieldRule => Figure::EvaporationRule,
        }
    }
}

/// What to know about an evaporation figure before trusting the field rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EvaporationWarning {
    /// The field rule is more than 10 % from Poppe's figure: by this part of
    /// it, positive when the rule says more.
    RuleParts(Ratio),
}

/// Evaporation, every way the readings allow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evaporation {
    /// By the field rule.
    pub by_rule: VolumeRate,
    /// By the balance, when the entering air is known.
    pub by_balance: Option<VolumeRate>,
    /// By Poppe's method, when the water's temperatures are known as well.
    pub by_poppe: Option<VolumeRate>,
}

impl Evaporation {
    /// The figure to go on with: the best there is.
    pub fn rate(&self) -> VolumeRate {
        self.by_poppe.or(self.by_balance).unwrap_or(self.by_rule)
    }

    /// Which way [`Evaporation::rate`] was found.
    pub fn method(&self) -> EvaporationMethod {
        match (self.by_poppe, self.by_balance) {
            (Some(_), _) => EvaporationMethod::Poppe,
            (None, Some(_)) => EvaporationMethod::Balance,
            (None, None) => EvaporationMethod::FieldRule,
        }
    }

    /// Whether the field rule misleads here; `None` when it is within 10 %, or
    /// when there is nothing better to hold it against.
    pub fn warning(&self) -> Option<EvaporationWarning> {
        let parts = self.by_rule / self.by_poppe? - Ratio::new::<ratio>(1.0);
        (parts.get::<ratio>().abs() > 0.1).then_some(EvaporationWarning::RuleParts(parts))
    }
}

/// Water evaporated by `flow` cooled through `range`; by the balance as well
/// when `air` is given. With the water's temperatures known,
/// [`evaporation_between`] is better.
///
/// # Errors
/// [`Error::OutOfRange`] when the flow is outside 0 to 10 m3/s, the range
/// outside 0 to 60 K, or a field of the air outside the range it states.
pub fn evaporation(
    flow: VolumeRate,
    range: TemperatureInterval,
    air: Option<&EnteringAir>,
) -> Result<Evaporation, Error> {
    let flow = flow_rate(flow)?;
    let range = range_kelvin(range)?;
    let by_balance = match air {
        Some(air) => Some(rate(flow * balance_fraction(range, air)?)),
        None => None,
    };
    Ok(Evaporation {
        by_rule: rate(flow * RULE_PER_KELVIN * range),
        by_balance,
        by_poppe: None,
    })
}

/// Water evaporated out of the `flow` that enters a tower at `entering` and
/// leaves at `leaving`; every way there is when `air` is given. Where Poppe's
/// method has no answer (no range to speak of, readings no tower can show) the
/// other two stand.
///
/// # Errors
/// As [`evaporation`], the range being that between the two temperatures.
pub fn evaporation_between(
    flow: VolumeRate,
    entering: ThermodynamicTemperature,
    leaving: ThermodynamicTemperature,
    air: Option<&EnteringAir>,
) -> Result<Evaporation, Error> {
    let simple = evaporation(flow, tower::range(entering, leaving), air)?;
    let poppe = air.and_then(|air| {
        let duty = Duty {
            entering,
            leaving,
            wet_bulb: air.wet_bulb,
            water_air_ratio: air.water_air_ratio,
            pressure: air.pressure,
        };
        duty.poppe(air.dry_bulb).ok()
    });
    Ok(Evaporation {
        by_poppe: poppe.map(|p| flow * p.evaporated),
        ..simple
    })
}

/// Evaporation over flow when the air leaves saturated at the enthalpy it got.
fn balance_fraction(range: f64, air: &EnteringAir) -> Result<f64, Error> {
    // Checks dry bulb, wet bulb and pressure together.
    air::relative_humidity(air.dry_bulb, air.wet_bulb, air.pressure)?;
    let dry = air::celsius(Quantity::DryBulb, air.dry_bulb, -20.0, 60.0)?;
    let wet = air::celsius(Quantity::WetBulb, air.wet_bulb, -60.0, 61.0)?.min(dry);
    let pressure = atmosphere(air.pressure)?;
    let l_over_g = water_air(air.water_air_ratio)?;
    let entering = kernel::ratio_from_bulbs(dry, wet, pressure).max(0.0);
    let enthalpy = kernel::enthalpy(dry, entering) + l_over_g * SPECIFIC_HEAT * range;
    let excess = |t: f64| {
        if kernel::saturation_pressure(t) > 0.9 * pressure {
            f64::INFINITY
        } else {
            kernel::saturated_enthalpy(t, pressure) - enthalpy
        }
    };
    let leaving = kernel::saturated_ratio(bisect(wet - 1.0, 100.0, excess), pressure);
    Ok(((leaving - entering) / l_over_g).max(0.0))
}

fn rate(cubic_meters_per_second: f64) -> VolumeRate {
    VolumeRate::new::<cubic_meter_per_second>(cubic_meters_per_second)
}

/// Conductivity of the basin over that of the makeup: cycles of concentration.
/// Reads false where salts drop out of solution (UFC 3-240-13FN).
///
/// # Errors
/// [`Error::OutOfRange`] when either conductivity is outside 1 uS/cm to
/// 100 mS/cm.
pub fn cycles(
    basin: ElectricalConductivity,
    makeup: ElectricalConductivity,
) -> Result<Ratio, Error> {
    let checked = |c: ElectricalConductivity| {
        within(
            Quantity::Conductivity,
            c.get::<siemens_per_meter>(),
            1e-4,
            10.0,
        )
    };
    Ok(Ratio::new::<ratio>(checked(basin)? / checked(makeup)?))
}

/// Where the water goes. Makeup is the sum of the other three.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WaterBalance {
    /// Lost as vapour.
    pub evaporation: VolumeRate,
    /// Lost as droplets.
    pub drift: VolumeRate,
    /// Bled off to hold the cycles.
    pub blowdown: VolumeRate,
    /// What the fill valve must bring, leaks and overflow not counted.
    pub makeup: VolumeRate,
}

/// The balance of a tower evaporating `evaporation` out of a circulating
/// `flow`, losing `drift` of that flow as droplets ([`USUAL_DRIFT`]), bled to
/// hold `cycles`.
///
/// # Errors
/// [`Error::OutOfRange`] when a flow is outside 0 to 10 m3/s, the drift outside
/// 0 to 1 %, or the cycles outside 1.05 to 100.
pub fn balance(
    evaporation: VolumeRate,
    flow: VolumeRate,
    drift: Ratio,
    cycles: Ratio,
) -> Result<WaterBalance, Error> {
    let evaporated = flow_rate(evaporation)?;
    let fraction = within(Quantity::DriftFraction, drift.get::<ratio>(), 0.0, 0.01)?;
    let drift = flow_rate(flow)? * fraction;
    let cycles = within(Quantity::Cycles, cycles.get::<ratio>(), 1.05, 100.0)?;
    let blowdown = (evaporated / (cycles - 1.0) - drift).max(0.0);
    Ok(WaterBalance {
        evaporation,
        drift: rate(drift),
        blowdown: rate(blowdown),
        makeup: rate(evaporated + blowdown + drift),
    })
}

/// How long the basin takes to fall from one level to another, both below the
/// overflow lip, while losing water at `loss` with no makeup; zero when the
/// second is not the lower. Exact for any shape: the water between the two
/// levels over the loss.
///
/// # Errors
/// [`Error::OutOfRange`] when the loss is outside 1 mL/h to 10 m3/s, the
/// basin's size out of range (see [`Basin::level_at`]), or a level above the
/// lip or below the floor.
pub fn time_to_level(
    basin: &Basin,
    from: Length,
    to: Length,
    loss: VolumeRate,
) -> Result<Time, Error> {
    let loss = within(
        Quantity::LossRate,
        loss.get::<cubic_meter_per_second>(),
        2.5e-10,
        MOST_FLOW,
    )?;
    let pieces = basin.sized()?;
    let (from, to) = (basin.wet_height(from)?, basin.wet_height(to)?);
    let spent = (pieces.volume(from) - pieces.volume(to)).max(0.0);
    Ok(Time::new::<second>(spent / loss))
}

/// How long until the basin is empty, losing `loss` with no makeup.
///
/// # Errors
/// As [`time_to_level`].
pub fn time_to_dry(basin: &Basin, from: Length, loss: VolumeRate) -> Result<Time, Error> {
    time_to_level(basin, from, basin.depth, loss)
}
