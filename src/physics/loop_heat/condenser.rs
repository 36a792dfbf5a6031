//! One condenser with little water, or none.

use uom::si::mass::kilogram;
use uom::si::ratio::ratio;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

use crate::physics::air::{celsius, temperature};
use crate::physics::error::{Error, Quantity, within};
use crate::physics::heat::{SPECIFIC_HEAT, heat_watts, range_kelvin};
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{
    GaugePressure, Mass, Power, Pressure, Ratio, SpecificHeatCapacity, TemperatureInterval,
    ThermodynamicTemperature, Time,
};

/// Exponent of the water-side heat transfer over the flow: turbulent flow in a
/// tube (Dittus and Boelter).
const EXPONENT: f64 = 0.8;

/// Checked condenser approach, K.
pub(super) fn approach_kelvin(approach: TemperatureInterval) -> Result<f64, Error> {
    let k = approach.get::<kelvin_interval>();
    within(Quantity::CondenserApproach, k, 0.0, 30.0)
}

/// How long a condenser takes to warm by `rise` when its water stands still and
/// `heat` keeps coming: water and metal taken as one mass. +/-30 %: the heat
/// falls as head rises, and the refrigerant's own mass is not counted.
///
/// # Errors
/// [`Error::OutOfRange`] when the heat is outside 1 W to 1 GW, either mass
/// outside 0 to 1,000,000 kg, the metal's specific heat outside 50 to
/// 2000 J/(kg K) (420 for copper and steel), or the rise outside 0 to 60 K.
pub fn time_without_flow(
    heat: Power,
    water: Mass,
    metal: Mass,
    metal_specific_heat: SpecificHeatCapacity,
    rise: TemperatureInterval,
) -> Result<Time, Error> {
    let heat = heat_watts(heat, 1.0)?;
    let water = within(Quantity::WaterMass, water.get::<kilogram>(), 0.0, 1e6)?;
    let metal = within(Quantity::MetalMass, metal.get::<kilogram>(), 0.0, 1e6)?;
    let specific = metal_specific_heat.get::<joule_per_kilogram_kelvin>();
    let specific = within(Quantity::MetalSpecificHeat, specific, 50.0, 2000.0)?;
    let capacity = water * SPECIFIC_HEAT * 1000.0 + metal * specific;
    Ok(Time::new::<second>(capacity * range_kelvin(rise)? / heat))
}

/// A condenser at its design flow, with its heat held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CondenserDesign {
    /// Leaving less entering water, 0.1 to 30 K.
    pub range: TemperatureInterval,
    /// Condensing temperature less leaving water, 0.1 to 30 K.
    pub approach: TemperatureInterval,
    /// Part of the resistance to heat that lies on the water side, 0 to 1; half
    /// when nobody knows (common practice, no source).
    pub water_side: Ratio,
}

/// A condenser at a part of its design flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReducedFlow {
    /// Leaving less entering water.
    pub range: TemperatureInterval,
    /// Leaving water.
    pub leaving: ThermodynamicTemperature,
    /// Condensing temperature.
    pub condensing: ThermodynamicTemperature,
}

impl CondenserDesign {
    /// The condenser with `fraction` of its design flow and all of its heat.
    /// Effectiveness and NTU with one condensing temperature; the water side
    /// goes with flow^0.8. Good for +/-30 % of the rise in condensing
    /// temperature, worse under a third of the flow, where the heat falls off
    /// and the flow may turn laminar.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, the
    /// entering water outside 0 to 60 C, the fraction outside 0.05 to 2, or the
    /// range found above 60 K.
    pub fn at(
        &self,
        entering: ThermodynamicTemperature,
        fraction: Ratio,
    ) -> Result<ReducedFlow, Error> {
        let range = self.range.get::<kelvin_interval>();
        let range = within(Quantity::Range, range, 0.1, 30.0)?;
        let approach = self.approach.get::<kelvin_interval>();
        let approach = within(Quantity::CondenserApproach, approach, 0.1, 30.0)?;
        let share = within(
            Quantity::WaterSideShare,
            self.water_side.get::<ratio>(),
            0.0,
            1.0,
        )?;
        let entering = celsius(Quantity::EnteringWater, entering, 0.0, 60.0)?;
        let part = within(Quantity::FlowFraction, fraction.get::<ratio>(), 0.05, 2.0)?;
        let design_ntu = (1.0 + range / approach).ln();
        let resistance = share * part.powf(-EXPONENT) + 1.0 - share;
        let ntu = design_ntu / (part * resistance);
        let wider = within(Quantity::Range, range / part, 0.0, 60.0)?;
        Ok(ReducedFlow {
            range: TemperatureInterval::new::<kelvin_interval>(wider),
            leaving: temperature(entering + wider),
            condensing: temperature(entering + wider / -(-ntu).exp_m1()),
        })
    }
}

impl ReducedFlow {
    /// What the head gauge reads: the pressure at which the mean of the
    /// refrigerant's bubble and dew temperature is the condensing temperature,
    /// less the atmosphere.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the condensing temperature is off the
    /// refrigerant's fit ([`Refrigerant::condensing_pressure`]); above it, that
    /// is long past any cut-out.
    pub fn head(
        &self,
        refrigerant: Refrigerant,
        atmospheric: Pressure,
    ) -> Result<GaugePressure, Error> {
        let pressure = refrigerant.condensing_pressure(self.condensing)?;
        Ok(GaugePressure::from_absolute(pressure, atmospheric))
    }

    /// Condensing temperature less leaving water.
    pub fn approach(&self) -> TemperatureInterval {
        let k = self.condensing.get::<kelvin>() - self.leaving.get::<kelvin>();
        TemperatureInterval::new::<kelvin_interval>(k)
    }
}
