//! The entering water at which a machine's high-pressure cut-out trips.

use uom::si::temperature_interval::kelvin as kelvin_interval;

use super::condenser::approach_kelvin;
use crate::physics::error::Error;
use crate::physics::heat::{range_kelvin, time_to_reach};
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{
    GaugePressure, Power, Pressure, TemperatureInterval, ThermodynamicTemperature, Time, Volume,
};

/// A machine's condenser as it runs now, and the cut-out that guards it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Condenser {
    /// The refrigerant.
    pub refrigerant: Refrigerant,
    /// Setting of the high-pressure cut-out, from the machine's own label. None
    /// is assumed: published rules of thumb for it disagree by a fifth.
    pub cut_out: GaugePressure,
    /// Condensing temperature less leaving water, 0 to 30 K.
    pub approach: TemperatureInterval,
    /// Leaving less entering water, 0 to 60 K.
    pub range: TemperatureInterval,
}

impl Condenser {
    /// The entering water at which it trips: saturation at the cut-out (mean of
    /// bubble and dew) less approach less range, both held: with heat and water
    /// flow unchanged, condensing rises kelvin for kelvin with the entering water
    /// (common practice, no source). +/-2 K: a compressor adds heat as head
    /// rises, a cut-out is not set to better than some percent, and the approach
    /// grows with fouling.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the atmosphere is outside 50 to 110 kPa, the
    /// cut-out off the refrigerant's fit (see [`Refrigerant::condensing`]), the
    /// approach outside 0 to 30 K or the range outside 0 to 60 K.
    pub fn trip_entering(&self, atmospheric: Pressure) -> Result<ThermodynamicTemperature, Error> {
        let condensing = self.refrigerant.condensing(self.cut_out, atmospheric)?.mean;
        let above = approach_kelvin(self.approach)? + range_kelvin(self.range)?;
        Ok(condensing - TemperatureInterval::new::<kelvin_interval>(above))
    }

    /// How long a loop holding `water` takes from `entering` to the trip when
    /// `heat` (of every machine on the loop) goes in and none comes out; zero
    /// when it is there already. +/-30 %.
    ///
    /// # Errors
    /// As [`Condenser::trip_entering`], and as [`time_to_reach`]: heat 1 W to
    /// 1 GW, water 1 L to 100,000 m3, both temperatures 0 to 100 C.
    pub fn time_to_trip(
        &self,
        heat: Power,
        water: Volume,
        entering: ThermodynamicTemperature,
        atmospheric: Pressure,
    ) -> Result<Time, Error> {
        time_to_reach(heat, water, entering, self.trip_entering(atmospheric)?)
    }
}
