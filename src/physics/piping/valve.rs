//! Liquid through a valve, IEC 60534-2-1 (ISA-75.01.01).
//!
//! Q = Kv sqrt(dp / (rho/rho0)), Q in m3/h, dp in bar, rho0 = 999.1 kg/m3
//! (water at 15 C); Cv is the same in US gpm and psi, Kv = 0.86498 Cv. The flow
//! chokes once dp reaches FL^2 (p1 - FF pv), FF = 0.96 - 0.28 sqrt(pv/pc): then
//! it grows no further. Turbulent flow in a valve of line size: no factor for
//! reducers, none for viscosity. Both worked examples of the standard come out
//! within 0.1 %.
//!
//! FL is 0.8 to 0.9 for globe-pattern fill valves, 0.6 for a ball (common
//! practice, no source). A fill valve at ordinary mains pressure does not choke
//! unless some 4 bar are lost across it.

use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::volume_rate::cubic_meter_per_second;

use super::Liquid;
use crate::physics::error::{Error, Quantity, within};
use crate::physics::heat::MOST_FLOW;
use crate::quantity::{Pressure, Ratio, VolumeRate};

/// Kv of a valve of Cv 1: the flow of 1 US gpm at 1 psi, in m3/h at 1 bar.
const KV_PER_CV: f64 = 0.864_977_9;

/// Density the coefficients are stated for, kg/m3.
const REFERENCE_DENSITY: f64 = 999.1;

/// How much a valve or strainer lets through. Held as Kv, m3/h of water at
/// 1 bar; 0.0001 to 10,000 is accepted where it is used.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct FlowCoefficient(f64);

impl FlowCoefficient {
    /// From Kv: m3/h of water at 1 bar.
    pub fn from_kv(kv: f64) -> Self {
        Self(kv)
    }

    /// From Cv: US gpm of water at 1 psi.
    pub fn from_cv(cv: f64) -> Self {
        Self(cv * KV_PER_CV)
    }

    /// Kv: m3/h of water at 1 bar.
    pub fn kv(self) -> f64 {
        self.0
    }

    /// Cv: US gpm of water at 1 psi.
    pub fn cv(self) -> f64 {
        self.0 / KV_PER_CV
    }

    pub(super) fn checked(self) -> Result<Self, Error> {
        within(Quantity::FlowCoefficient, self.0, 1e-4, 1e4).map(Self)
    }

    /// Flow in m3/s at a pressure drop in Pa, not choked.
    pub(super) fn flow_si(self, drop: f64, density: f64) -> f64 {
        self.0 / 3600.0 * (drop / 1e5 * REFERENCE_DENSITY / density).sqrt()
    }

    /// Pressure drop in Pa at a flow in m3/s, not choked.
    pub(super) fn drop_si(self, flow: f64, density: f64) -> f64 {
        (flow * 3600.0 / self.0).powi(2) * 1e5 * density / REFERENCE_DENSITY
    }

    /// The coefficient that passes a flow in m3/s at a drop in Pa.
    pub(super) fn for_si(flow: f64, drop: f64, density: f64) -> Self {
        Self(flow * 3600.0 / (drop / 1e5 * REFERENCE_DENSITY / density).sqrt())
    }
}

/// What stands on both sides of a valve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Service {
    /// Pressure before the valve, 1 kPa to 10 MPa absolute and at or above the
    /// vapour pressure.
    pub inlet: Pressure,
    /// Pressure behind it, from zero to the pressure before it.
    pub outlet: Pressure,
    /// Liquid pressure recovery factor FL, 0.3 to 1.
    pub recovery: Ratio,
    /// What flows.
    pub liquid: Liquid,
}

/// A service in SI numbers.
struct Checked {
    drop: f64,
    choked: bool,
    density: f64,
}

impl Service {
    /// The pressure drop that drives the flow, held where it chokes.
    fn checked(&self) -> Result<Checked, Error> {
        let (vapour, critical) = self.liquid.pressures_si()?;
        let inlet = self.inlet.get::<pascal>();
        let inlet = within(Quantity::InletPressure, inlet, vapour.max(1e3), 1e7)?;
        let outlet = self.outlet.get::<pascal>();
        let outlet = within(Quantity::OutletPressure, outlet, 0.0, inlet)?;
        let recovery = self.recovery.get::<ratio>();
        let recovery = within(Quantity::PressureRecovery, recovery, 0.3, 1.0)?;
        let most = recovery * recovery * (inlet - critical_ratio(vapour, critical) * vapour);
        Ok(Checked {
            drop: (inlet - outlet).min(most),
            choked: inlet - outlet >= most,
            density: self.liquid.density_si()?,
        })
    }

    /// The flow a valve passes, and whether it chokes.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when Kv is outside 0.0001 to 10,000 m3/h, or a
    /// field outside the range it states.
    pub fn flow(&self, valve: FlowCoefficient) -> Result<Passed, Error> {
        let service = self.checked()?;
        let flow = valve.checked()?.flow_si(service.drop, service.density);
        Ok(Passed {
            flow: VolumeRate::new::<cubic_meter_per_second>(flow),
            choked: service.choked,
        })
    }

    /// The flow coefficient a flow needs, and whether it chokes.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the flow is outside 0 to 10 m3/s, a field
    /// outside the range it states, the pressure drop below 1 Pa, or the
    /// coefficient found outside 0.0001 to 10,000 m3/h.
    pub fn needed(&self, flow: VolumeRate) -> Result<Needed, Error> {
        let service = self.checked()?;
        let flow = flow.get::<cubic_meter_per_second>();
        let flow = within(Quantity::WaterFlow, flow, 0.0, MOST_FLOW)?;
        let drop = within(Quantity::PressureDrop, service.drop, 1.0, 1e7)?;
        Ok(Needed {
            coefficient: FlowCoefficient::for_si(flow, drop, service.density).checked()?,
            choked: service.choked,
        })
    }
}

/// What a valve lets through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Passed {
    /// The flow.
    pub flow: VolumeRate,
    /// Whether the flow is choked: less pressure behind would not raise it.
    pub choked: bool,
}

/// The valve a flow needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Needed {
    /// Its flow coefficient.
    pub coefficient: FlowCoefficient,
    /// Whether the flow is choked in it.
    pub choked: bool,
}

/// FF, the liquid critical pressure ratio factor.
fn critical_ratio(vapour: f64, critical: f64) -> f64 {
    0.96 - 0.28 * (vapour / critical).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From the definitions: 231 in3 a minute, pound-force per square inch.
    #[test]
    fn a_cv_in_kv() {
        let inch = 0.0254f64;
        let gpm = 231.0 * inch.powi(3) * 60.0;
        let psi = 0.453_592_37 * 9.806_65 / (inch * inch);
        assert!((gpm / (psi / 1e5).sqrt() - KV_PER_CV).abs() < 1e-6);
    }

    /// IEC 60534-2-1 example 2 gives FF 0.94424 for 70.1 and 22,120 kPa (by way
    /// of the fluids test suite).
    #[test]
    fn critical_ratio_of_the_standard() {
        assert!((critical_ratio(70.1e3, 22.12e6) - 0.94424).abs() < 5e-6);
    }
}
