//! What covers the rods or bridges them.

use std::f64::consts::PI;

use uom::si::capacitance::farad;
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::electrical_resistance::ohm;
use uom::si::frequency::hertz;
use uom::si::ratio::ratio;

use super::shape::{kappa, size};
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{
    Capacitance, ElectricalConductivity, ElectricalResistance, Frequency, Length, Ratio,
};

/// A wet film from one electrode to another, over the holder or along slime.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Film {
    /// How thick, 1 um to 20 mm.
    pub thickness: Length,
    /// How far it runs, 1 mm to 2 m.
    pub path: Length,
    /// How wide, 0.1 mm to 0.5 m.
    pub width: Length,
    /// How well it conducts, 1 uS/cm to 200 mS/cm.
    pub conductivity: ElectricalConductivity,
}

impl Film {
    /// Resistance along it: path / (conductivity x width x thickness).
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a part is outside its stated range.
    pub fn resistance(&self) -> Result<ElectricalResistance, Error> {
        let section = size(self.width, 1e-4, 0.5)? * size(self.thickness, 1e-6, 0.02)?;
        let path = size(self.path, 1e-3, 2.0)?;
        Ok(ElectricalResistance::new::<ohm>(
            path / (kappa(self.conductivity)? * section),
        ))
    }
}

/// A poorly conducting coat on the wetted rod: scale, oil, grease.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// How thick, 0 to 20 mm.
    pub thickness: Length,
    /// How well it conducts, 1e-9 to 20 S/m.
    pub conductivity: ElectricalConductivity,
}

impl Scale {
    /// Resistance it puts in series: thickness / (conductivity x wetted side).
    /// For a coat much thinner than the rod.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a part is outside its stated range, the
    /// diameter outside 1 to 50 mm or the immersion outside 0.1 mm to 5 m.
    pub fn resistance(
        &self,
        diameter: Length,
        immersion: Length,
    ) -> Result<ElectricalResistance, Error> {
        let kappa = self.conductivity.get::<siemens_per_meter>();
        let kappa = within(Quantity::Conductivity, kappa, 1e-9, 20.0)?;
        let side = PI * size(diameter, 1e-3, 0.05)? * size(immersion, 1e-4, 5.0)?;
        Ok(ElectricalResistance::new::<ohm>(
            size(self.thickness, 0.0, 0.02)? / (kappa * side),
        ))
    }
}

/// Foam standing on the water and round the rods.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foam {
    /// Part of it that is liquid, 0.0001 to 1: dry foam 0.02, wet foam 0.2.
    pub liquid: Ratio,
    /// Length of rod it wets, one rod diameter to 5 m.
    pub wetted: Length,
}

impl Foam {
    /// Conductivity over that of the liquid: 2 phi (1 + 12 phi) / (6 + 29 phi -
    /// 9 phi^2). Feitosa et al. 2005, from memory; for dry foam phi / 3
    /// (Lemlich, from memory).
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the liquid part is outside 0.0001 to 1.
    pub fn relative_conductivity(&self) -> Result<Ratio, Error> {
        let phi = within(
            Quantity::LiquidFraction,
            self.liquid.get::<ratio>(),
            1e-4,
            1.0,
        )?;
        let sigma = 2.0 * phi * (1.0 + 12.0 * phi) / (6.0 + 29.0 * phi - 9.0 * phi * phi);
        Ok(Ratio::new::<ratio>(sigma))
    }
}

/// What leaks in parallel wherever the water is: cap, holder and cable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leakage {
    /// Through damp in the cap and the cable's insulation, 100 ohm to 1 Tohm.
    pub insulation: ElectricalResistance,
    /// Between the cable's conductors, whole length, 0 to 10 uF.
    pub capacitance: Capacitance,
    /// Frequency at which the relay senses, 10 Hz to 10 kHz.
    pub frequency: Frequency,
}

impl Leakage {
    /// A dry cap and 20 m of cable at 100 pF/m, sensed at 60 Hz (common
    /// practice, no source).
    pub fn usual() -> Self {
        Self {
            insulation: ElectricalResistance::new::<ohm>(1e8),
            capacitance: Capacitance::new::<farad>(2e-9),
            frequency: Frequency::new::<hertz>(60.0),
        }
    }

    /// What the relay senses of `path` with this beside it: the magnitude.
    /// `None` for a path is no path at all.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a part is outside its stated range or the
    /// path outside 1 mohm to 1 Pohm.
    pub fn beside(
        &self,
        path: Option<ElectricalResistance>,
    ) -> Result<ElectricalResistance, Error> {
        let resistance = |r: ElectricalResistance, low, high| {
            within(Quantity::Resistance, r.get::<ohm>(), low, high)
        };
        let frequency = within(
            Quantity::Frequency,
            self.frequency.get::<hertz>(),
            10.0,
            1e4,
        )?;
        let farads = self.capacitance.get::<farad>();
        let farads = within(Quantity::Capacitance, farads, 0.0, 1e-5)?;
        let mut conductance = 1.0 / resistance(self.insulation, 100.0, 1e12)?;
        if let Some(path) = path {
            conductance += 1.0 / resistance(path, 1e-3, 1e15)?;
        }
        let susceptance = 2.0 * PI * frequency * farads;
        Ok(ElectricalResistance::new::<ohm>(
            1.0 / conductance.hypot(susceptance),
        ))
    }
}
