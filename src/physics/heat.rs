//! Heat carried by the condenser water, and how fast a loop without a tower warms.
//!
//! Method: Q = flow x density x specific heat x range, with the water the
//! trade's "500" stands for: 999.0 kg/m3 (8.337 lb/gal, 60 F) and
//! 4.1868 kJ/(kg K) (1 Btu/(lb F)), which give 500.2 Btu/h per gpm and F. Real
//! water carries 0.5 % less at 30 C and 1 % less at 43 C, inside what a flow
//! reading is good for.
//! One nominal tower ton is 15,000 Btu/h rejected (US DOE building energy
//! reference: 3 gpm per ton, 95/85/78 F, 1.25 x capacity), not the 12,000 Btu/h
//! of a refrigeration ton.
//!
//! The warm-up is a perfectly mixed loop with constant heat and no metal; real
//! compressors take more power and cool less as head rises: read it as +/-30 %.

use uom::si::power::watt;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;
use uom::si::volume::cubic_meter;
use uom::si::volume_rate::cubic_meter_per_second;

use super::error::{Error, Quantity, within};
use crate::quantity::{
    Power, Ratio, TemperatureInterval, ThermodynamicTemperature, Time, Volume, VolumeRate,
};

/// Specific heat of water, kJ/(kg K): exactly 1 Btu/(lb F).
pub(super) const SPECIFIC_HEAT: f64 = 4.1868;

/// Density of water, kg/m3, at 60 F.
const DENSITY: f64 = 999.0;

/// Heat capacity of water by volume, J/(m3 K).
pub(super) const PER_VOLUME: f64 = DENSITY * SPECIFIC_HEAT * 1000.0;

/// One nominal tower ton in watts: 15,000 Btu/h, Btu of the international table.
const TOWER_TON: f64 = 15_000.0 * 1_055.055_852_62 / 3600.0;

/// Largest water flow accepted, m3/s (about 160,000 gpm).
pub(super) const MOST_FLOW: f64 = 10.0;

/// Checked flow, m3/s; zero allowed.
pub(super) fn flow_rate(flow: VolumeRate) -> Result<f64, Error> {
    within(
        Quantity::WaterFlow,
        flow.get::<cubic_meter_per_second>(),
        0.0,
        MOST_FLOW,
    )
}

/// Checked range, K; zero allowed.
pub(super) fn range_kelvin(range: TemperatureInterval) -> Result<f64, Error> {
    within(Quantity::Range, range.get::<kelvin_interval>(), 0.0, 60.0)
}

/// Checked heat, W, from `low` to 1 GW.
pub(super) fn heat_watts(heat: Power, low: f64) -> Result<f64, Error> {
    within(Quantity::Heat, heat.get::<watt>(), low, 1e9)
}

/// Checked volume of loop water, m3.
pub(super) fn volume(water: Volume) -> Result<f64, Error> {
    within(Quantity::WaterVolume, water.get::<cubic_meter>(), 1e-3, 1e5)
}

/// Heat given up by `flow` cooled through `range`.
///
/// # Errors
/// [`Error::OutOfRange`] when the flow is outside 0 to 10 m3/s or the range
/// outside 0 to 60 K.
pub fn heat_rejected(flow: VolumeRate, range: TemperatureInterval) -> Result<Power, Error> {
    Ok(Power::new::<watt>(
        flow_rate(flow)? * PER_VOLUME * range_kelvin(range)?,
    ))
}

/// The range at which `flow` carries `heat`.
///
/// # Errors
/// [`Error::OutOfRange`] when the heat is outside 0 to 1 GW, the flow outside
/// 1 mL/s to 10 m3/s, or the range would exceed 60 K (a loop that boils).
pub fn range_for(heat: Power, flow: VolumeRate) -> Result<TemperatureInterval, Error> {
    let flow = within(
        Quantity::WaterFlow,
        flow.get::<cubic_meter_per_second>(),
        1e-6,
        MOST_FLOW,
    )?;
    let range = heat_watts(heat, 0.0)? / (flow * PER_VOLUME);
    Ok(TemperatureInterval::new::<kelvin_interval>(within(
        Quantity::Range,
        range,
        0.0,
        60.0,
    )?))
}

/// The flow that carries `heat` over `range`: the flow a meterless loop runs at,
/// from its heat balance. As good as the heat and the two thermometers: 0.5 F
/// off over a range of 10 F is 5 %.
///
/// # Errors
/// [`Error::OutOfRange`] when the heat is outside 0 to 1 GW, the range outside
/// 0.1 to 60 K, or the flow would exceed 10 m3/s.
pub fn flow_for(heat: Power, range: TemperatureInterval) -> Result<VolumeRate, Error> {
    let range = within(Quantity::Range, range.get::<kelvin_interval>(), 0.1, 60.0)?;
    let flow = heat_watts(heat, 0.0)? / (range * PER_VOLUME);
    Ok(VolumeRate::new::<cubic_meter_per_second>(within(
        Quantity::WaterFlow,
        flow,
        0.0,
        MOST_FLOW,
    )?))
}

/// One nominal tower ton: 15,000 Btu/h rejected, 4396 W.
pub fn nominal_tower_ton() -> Power {
    Power::new::<watt>(TOWER_TON)
}

/// Heat as a number of nominal tower tons.
///
/// # Errors
/// [`Error::OutOfRange`] when the heat is outside 0 to 1 GW.
pub fn tower_tons(heat: Power) -> Result<Ratio, Error> {
    Ok(Ratio::new::<ratio>(heat_watts(heat, 0.0)? / TOWER_TON))
}

/// How much a loop holding `water` warms in `elapsed` when `heat` goes in and
/// none comes out.
///
/// # Errors
/// [`Error::OutOfRange`] when the heat is outside 0 to 1 GW, the water outside
/// 1 L to 100,000 m3, or the time outside 0 to 1 day.
pub fn temperature_rise(
    heat: Power,
    water: Volume,
    elapsed: Time,
) -> Result<TemperatureInterval, Error> {
    let elapsed = within(Quantity::Elapsed, elapsed.get::<second>(), 0.0, 86_400.0)?;
    let rise = heat_watts(heat, 0.0)? * elapsed / (volume(water)? * PER_VOLUME);
    Ok(TemperatureInterval::new::<kelvin_interval>(rise))
}

/// How long a loop holding `water` takes to warm from one temperature to
/// another under `heat` with no rejection; zero when it is there already.
///
/// # Errors
/// [`Error::OutOfRange`] when the heat is outside 1 W to 1 GW, the water
/// outside 1 L to 100,000 m3, or a temperature outside 0 to 100 C.
pub fn time_to_reach(
    heat: Power,
    water: Volume,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
) -> Result<Time, Error> {
    let loop_kelvin = |t: ThermodynamicTemperature| {
        within(Quantity::LoopTemperature, t.get::<kelvin>(), 273.15, 373.15)
    };
    let rise = (loop_kelvin(to)? - loop_kelvin(from)?).max(0.0);
    Ok(Time::new::<second>(
        volume(water)? * PER_VOLUME * rise / heat_watts(heat, 1.0)?,
    ))
}
