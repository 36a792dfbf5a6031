//! Poppe's method: the same duty with the water that evaporates counted.
//!
//! Method: Poppe & Rogener (1991, VDI-Warmeatlas) as restated by Kloppers &
//! Kroger (2005, Int. J. Heat Mass Transfer 48:765): mass and energy balances
//! of water and air along the fill, Lewis factor after Bosnjakovic, and the
//! branch for air that carries fog. Merkel's three shortcuts are gone: water
//! lost counts, the Lewis factor is not 1, and the air need not leave
//! saturated. Runge-Kutta of the fourth order over water temperature, closed
//! on the water that leaves.
//!
//! Valid range: as [`Duty`], dry bulb -20 to 60 C. Checked against scipy over
//! CoolProp 8.0.0 properties in `tests/reference/poppe.py`; see
//! `docs/accuracy.md`. For usual duties its KaV/L is about 7 % above Merkel's;
//! a constant fitted with one is used with that one only.

use uom::si::available_energy::kilojoule_per_kilogram;
use uom::si::ratio::ratio;

use super::poppe_kernel::{Exit, Tower, air};
use super::{Duty, wet_bulb_celsius};
use crate::physics::air::kernel::ratio_from_bulbs;
use crate::physics::air::{celsius, relative_humidity, temperature};
use crate::physics::error::{Error, NoSolution, Quantity};
use crate::quantity::{AvailableEnergy, Ratio, ThermodynamicTemperature};

/// Air as it leaves the fill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeavingAir {
    /// Dry bulb; of the fog, when there is fog.
    pub dry_bulb: ThermodynamicTemperature,
    /// Water carried, vapour and droplets, kg per kg dry air.
    pub humidity_ratio: Ratio,
    /// The part of it that is vapour, kg per kg dry air.
    pub vapour: Ratio,
    /// Enthalpy per kg dry air, droplets among it, above dry air and liquid
    /// water at 0 C.
    pub enthalpy: AvailableEnergy,
    /// Whether the air carries fog.
    pub supersaturated: bool,
}

/// A duty by Poppe's method.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Poppe {
    /// KaV/L by Poppe. Not to be compared with [`Duty::merkel_number`].
    pub merkel_number: Ratio,
    /// Water evaporated over water entering the tower, by mass.
    pub evaporated: Ratio,
    /// The air that leaves.
    pub leaving_air: LeavingAir,
}

impl Duty {
    /// This duty by Poppe's method, for air that enters at `dry_bulb`, -20 to
    /// 60 C. [`Duty::water_air_ratio`] is that of the entering water.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, the
    /// dry bulb outside -20 to 60 C, or the wet bulb above it or below that of
    /// dry air; [`NoSolution::Pinch`] when the air would become as warm as the
    /// water somewhere in the fill.
    pub fn poppe(&self, dry_bulb: ThermodynamicTemperature) -> Result<Poppe, Error> {
        let duty = self.in_range()?;
        relative_humidity(dry_bulb, self.wet_bulb, self.pressure)?;
        let dry = celsius(Quantity::DryBulb, dry_bulb, -20.0, 60.0)?;
        let wet = wet_bulb_celsius(self.wet_bulb)?.min(dry);
        let entering = ratio_from_bulbs(dry, wet, duty.pressure).max(0.0);
        let tower = Tower {
            entering_water: duty.leaving + duty.range,
            leaving_water: duty.leaving,
            dry_bulb: dry,
            humidity_ratio: entering,
            water_air_ratio: duty.water_air_ratio,
            pressure: duty.pressure,
        };
        let Exit {
            merkel,
            humidity_ratio,
            enthalpy,
        } = tower.exit().ok_or(Error::NoSolution(NoSolution::Pinch))?;
        let leaving = air(enthalpy, humidity_ratio, duty.pressure);
        Ok(Poppe {
            merkel_number: Ratio::new::<ratio>(merkel),
            evaporated: Ratio::new::<ratio>((humidity_ratio - entering) / duty.water_air_ratio),
            leaving_air: LeavingAir {
                dry_bulb: temperature(leaving.dry_bulb),
                humidity_ratio: Ratio::new::<ratio>(humidity_ratio),
                vapour: Ratio::new::<ratio>(leaving.vapour),
                enthalpy: AvailableEnergy::new::<kilojoule_per_kilogram>(enthalpy),
                supersaturated: leaving.supersaturated,
            },
        })
    }
}
