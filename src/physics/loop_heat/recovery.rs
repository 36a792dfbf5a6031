//! The loop on its way to where it settles, with the tower pulling heat.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;
use uom::si::volume_rate::cubic_meter_per_second;

use crate::physics::air::{celsius, temperature};
use crate::physics::error::{Error, Quantity, within};
use crate::physics::heat::{MOST_FLOW, range_for, volume};
use crate::physics::tower::{Characteristic, Cooled};
use crate::quantity::{
    Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Time, Volume, VolumeRate,
};

/// How the tower answers the water that comes to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rejection {
    /// Water leaves so far above the wet bulb, whatever comes: too good while
    /// the loop is hot, so the shortest time.
    Approach(TemperatureInterval),
    /// Range over range plus approach stays as it is; 0.05 to 1.
    Effectiveness(Ratio),
    /// By the tower's characteristic.
    Characteristic {
        /// What the fill can do.
        tower: Characteristic,
        /// L/G, water over dry air by mass, 0.05 to 20.
        water_air_ratio: Ratio,
        /// Local atmospheric pressure, 50 to 110 kPa.
        pressure: Pressure,
    },
}

/// A loop with steady heat and a tower at work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Recovery {
    /// Water in the loop, 1 L to 100,000 m3.
    pub water: Volume,
    /// Flow over the tower, 1 mL/s to 10 m3/s.
    pub flow: VolumeRate,
    /// Heat of the machines that run, 0 to 1 GW; with a characteristic, enough
    /// for a range of 0.1 K.
    pub heat: Power,
    /// Entering wet bulb, -20 to 45 C.
    pub wet_bulb: ThermodynamicTemperature,
    /// The tower.
    pub tower: Rejection,
}

/// Water leaving the tower by water entering it, Celsius.
enum Kernel {
    Constant(f64),
    Effectiveness(f64),
    Cooled(Cooled),
}

struct Checked {
    /// Time the flow takes to turn the loop over once, s.
    turnover: f64,
    range: f64,
    wet: f64,
    settles: f64,
    tower: Kernel,
}

impl Checked {
    /// How fast a distance from the settling temperature shrinks, 1/s. Nearer
    /// than 0.1 mK it is what it is there: closer the difference drowns in
    /// rounding, and at nothing there is none.
    fn pull(&self, distance: f64) -> f64 {
        let distance = distance.abs().max(1e-4).copysign(distance);
        let entering = self.settles + distance;
        let hot = entering + self.range;
        let leaving = match &self.tower {
            Kernel::Constant(leaving) => *leaving,
            Kernel::Effectiveness(e) => hot - e * (hot - self.wet),
            Kernel::Cooled(tower) => tower.leaving(hot),
        };
        (entering - leaving) / distance / self.turnover
    }

    /// Checked starting temperature, C.
    fn start(&self, entering: ThermodynamicTemperature) -> Result<f64, Error> {
        let least = self.wet.max(0.0);
        let most = match self.tower {
            Kernel::Cooled(_) => 60.0 - self.range,
            _ => 100.0,
        };
        celsius(Quantity::LoopTemperature, entering, least, most.max(least))
    }
}

impl Recovery {
    fn checked(&self) -> Result<Checked, Error> {
        let water = volume(self.water)?;
        let flow = self.flow.get::<cubic_meter_per_second>();
        let flow = within(Quantity::WaterFlow, flow, 1e-6, MOST_FLOW)?;
        let range = range_for(self.heat, self.flow)?;
        let wet = celsius(Quantity::WetBulb, self.wet_bulb, -20.0, 45.0)?;
        let warms = range.get::<kelvin_interval>();
        let (settles, tower) = match &self.tower {
            Rejection::Approach(approach) => {
                let k = approach.get::<kelvin_interval>();
                let leaving = wet + within(Quantity::Approach, k, 0.1, 60.0)?;
                (leaving, Kernel::Constant(leaving))
            }
            Rejection::Effectiveness(part) => {
                let e = within(Quantity::Effectiveness, part.get::<ratio>(), 0.05, 1.0)?;
                (wet + warms * (1.0 - e) / e, Kernel::Effectiveness(e))
            }
            Rejection::Characteristic {
                tower,
                water_air_ratio,
                pressure,
            } => {
                let leaving =
                    tower.leaving_water(self.wet_bulb, range, *water_air_ratio, *pressure)?;
                let cooled = tower.cooled(self.wet_bulb, *water_air_ratio, *pressure)?;
                let leaving = leaving.get::<kelvin>() - 273.15;
                (leaving, Kernel::Cooled(cooled))
            }
        };
        celsius(Quantity::LoopTemperature, temperature(settles), 0.0, 100.0)?;
        Ok(Checked {
            turnover: water / flow,
            range: warms,
            wet,
            settles,
            tower,
        })
    }

    /// Where the water entering the machines settles.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, the
    /// approach outside 0.1 to 60 K, the range above 60 K or the answer outside
    /// 0 to 100 C; with a characteristic, as [`Characteristic::leaving_water`].
    pub fn settles(&self) -> Result<ThermodynamicTemperature, Error> {
        Ok(temperature(self.checked()?.settles))
    }

    /// The water entering the machines `elapsed` after it was `entering`.
    /// +/-30 % of the way still to go.
    ///
    /// # Errors
    /// As [`Recovery::settles`]; [`Error::OutOfRange`] when `entering` is below
    /// the wet bulb or above 100 C (with a characteristic, above 60 C less the
    /// range), or the time outside 0 to 1 day.
    pub fn after(
        &self,
        entering: ThermodynamicTemperature,
        elapsed: Time,
    ) -> Result<ThermodynamicTemperature, Error> {
        let this = self.checked()?;
        let from = this.start(entering)? - this.settles;
        let elapsed = within(Quantity::Elapsed, elapsed.get::<second>(), 0.0, 86_400.0)?;
        // The logarithm of the distance falls almost evenly: Runge and Kutta on
        // it is exact for the plain towers and close for the fill.
        let steps = (2.0 * elapsed / this.turnover).ceil().clamp(4.0, 400.0);
        let step = elapsed / steps;
        let mut distance = from;
        for _ in 0..steps as u32 {
            if distance.abs() < 1e-6 {
                return Ok(temperature(this.settles));
            }
            let fall = |part: f64| -step * this.pull(distance * part.exp());
            let a = fall(0.0);
            let b = fall(0.5 * a);
            let c = fall(0.5 * b);
            let d = fall(c);
            distance *= ((a + 2.0 * b + 2.0 * c + d) / 6.0).exp();
        }
        Ok(temperature(this.settles + distance))
    }

    /// How long until the water entering the machines is within `band` of where
    /// it settles; zero when it is. +/-30 %.
    ///
    /// # Errors
    /// As [`Recovery::after`] without the time; [`Error::OutOfRange`] when the
    /// band is outside 0.01 to 60 K.
    pub fn time_to_within(
        &self,
        entering: ThermodynamicTemperature,
        band: TemperatureInterval,
    ) -> Result<Time, Error> {
        let this = self.checked()?;
        let from = this.start(entering)? - this.settles;
        let band = within(Quantity::Band, band.get::<kelvin_interval>(), 0.01, 60.0)?;
        if from.abs() <= band {
            return Ok(Time::new::<second>(0.0));
        }
        // dt = -d ln(distance) / pull: four panels of three Gauss points.
        const PANELS: f64 = 4.0;
        const GAUSS: [(f64, f64); 3] = [
            (-0.774_596_669_241_483_4, 5.0 / 18.0),
            (0.0, 8.0 / 18.0),
            (0.774_596_669_241_483_4, 5.0 / 18.0),
        ];
        let width = (from.abs() / band).ln() / PANELS;
        let mut seconds = 0.0;
        for panel in 0..PANELS as u32 {
            for (at, weight) in GAUSS {
                let s = width * (f64::from(panel) + 0.5 + 0.5 * at);
                seconds += weight * width / this.pull(from * (-s).exp());
            }
        }
        Ok(Time::new::<second>(seconds))
    }
}
