//! The pump's suction: how deep it must stand under water.

use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::velocity::meter_per_second;

use super::{GRAVITY, bore_of, circle};
use crate::physics::error::Error;
use crate::physics::heat::flow_rate;
use crate::quantity::{Length, Ratio, Velocity, VolumeRate};

/// A pump suction at a flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suction {
    /// Velocity in the suction opening.
    pub velocity: Velocity,
    /// Froude number V / sqrt(g D).
    pub froude: Ratio,
    /// Water needed over the opening to keep a vortex from drawing air.
    pub submergence: Length,
}

/// Submergence a suction opening needs: S = D (1 + 2.3 V / sqrt(g D)), the form
/// of ANSI/HI 9.8 (from memory). A warning only: basins with an anti-vortex
/// plate run well with less.
///
/// # Errors
/// [`Error::OutOfRange`] when the flow is outside 0 to 10 m3/s or the bore
/// outside 1 mm to 2 m.
pub fn suction(flow: VolumeRate, bore: Length) -> Result<Suction, Error> {
    let bore = bore_of(bore)?;
    let velocity = flow_rate(flow)? / circle(bore);
    let froude = velocity / (GRAVITY * bore).sqrt();
    Ok(Suction {
        velocity: Velocity::new::<meter_per_second>(velocity),
        froude: Ratio::new::<ratio>(froude),
        submergence: Length::new::<meter>(bore * (1.0 + 2.3 * froude)),
    })
}
