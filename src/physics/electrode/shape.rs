//! Resistance of the water between an electrode and its reference.

use std::f64::consts::PI;

use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::electrical_resistance::ohm;
use uom::si::length::meter;

use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{ElectricalConductivity, ElectricalResistance, Length};

/// The electrode and what the current goes back to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// Two parallel rods, the water ending at their tips: acosh(s/d) / (pi
    /// kappa L). In deep water it is less: 40 % less for 10 mm of 6 mm rods 40 mm apart.
    RodPair {
        /// Diameter of each rod, 1 to 50 mm.
        diameter: Length,
        /// Between their axes, 1.05 diameters to 2 m.
        spacing: Length,
    },
    /// Two parallel rods hung into water much deeper and wider than they
    /// reach: (F(a) - F(s)) / (pi kappa L), F(x) = asinh(2L/x) - sqrt(1 +
    /// (x/2L)^2) + x/2L, a the radius: Howe's mean potential with the surface
    /// as a mirror. Up to 6 % high for short thick rods.
    RodPairDeep {
        /// Diameter of each rod, 1 to 50 mm.
        diameter: Length,
        /// Between their axes, 1.05 diameters to 2 m.
        spacing: Length,
    },
    /// A rod inside a metal pipe: ln(D/d) / (2 pi kappa L).
    RodInPipe {
        /// Diameter of the rod, 1 to 50 mm.
        diameter: Length,
        /// Inside diameter of the pipe, 1.05 diameters to 2 m.
        bore: Length,
    },
    /// One rod to the body of a large metal basin: (ln(4L/a) - 1) / (2 pi
    /// kappa L), as for a ground rod. Within 3 % in deep water.
    RodToBasin {
        /// Diameter of the rod, 1 to 50 mm.
        diameter: Length,
    },
}

/// A length of the sensor in m, checked.
pub(super) fn size(length: Length, low: f64, high: f64) -> Result<f64, Error> {
    within(Quantity::ElectrodeSize, length.get::<meter>(), low, high)
}

/// A conductivity in S/m, checked: 1 uS/cm to 200 mS/cm.
pub(super) fn kappa(conductivity: ElectricalConductivity) -> Result<f64, Error> {
    let kappa = conductivity.get::<siemens_per_meter>();
    within(Quantity::Conductivity, kappa, 1e-4, 20.0)
}

impl Shape {
    /// Diameter of the rod.
    pub fn diameter(&self) -> Length {
        match *self {
            Shape::RodPair { diameter, .. }
            | Shape::RodPairDeep { diameter, .. }
            | Shape::RodInPipe { diameter, .. }
            | Shape::RodToBasin { diameter } => diameter,
        }
    }

    /// Resistance through water with this length of rod in it.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a size is outside its stated range, the
    /// immersion outside one diameter to 5 m, or the conductivity outside
    /// 1 uS/cm to 200 mS/cm.
    pub fn resistance(
        &self,
        immersion: Length,
        conductivity: ElectricalConductivity,
    ) -> Result<ElectricalResistance, Error> {
        let d = size(self.diameter(), 1e-3, 0.05)?;
        let length = size(immersion, d, 5.0)?;
        let other = |far: Length| size(far, 1.05 * d, 2.0);
        // Shape factor: R kappa L.
        let shape = match *self {
            Shape::RodPair { spacing, .. } => (other(spacing)? / d).acosh() / PI,
            Shape::RodPairDeep { spacing, .. } => {
                let f = |x: f64| {
                    let u = 2.0 * length / x;
                    u.asinh() - (1.0 + 1.0 / (u * u)).sqrt() + 1.0 / u
                };
                (f(0.5 * d) - f(other(spacing)?)) / PI
            }
            Shape::RodInPipe { bore, .. } => (other(bore)? / d).ln() / (2.0 * PI),
            Shape::RodToBasin { .. } => ((8.0 * length / d).ln() - 1.0) / (2.0 * PI),
        };
        Ok(ElectricalResistance::new::<ohm>(
            shape / (kappa(conductivity)? * length),
        ))
    }
}

/// Resistance when only the round tip of a rod touches the water: 1 / (2 pi
/// kappa a), the reference well under.
///
/// # Errors
/// [`Error::OutOfRange`] when the diameter is outside 1 to 50 mm or the
/// conductivity outside 1 uS/cm to 200 mS/cm.
pub fn touching(
    diameter: Length,
    conductivity: ElectricalConductivity,
) -> Result<ElectricalResistance, Error> {
    let d = size(diameter, 1e-3, 0.05)?;
    Ok(ElectricalResistance::new::<ohm>(
        1.0 / (PI * d * kappa(conductivity)?),
    ))
}
