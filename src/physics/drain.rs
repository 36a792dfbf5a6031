//! Draining and filling the basin: how long, and where the level settles.
//!
//! Torricelli with a discharge coefficient: Q = C a sqrt(2 g (h + z)), h the
//! water above the lowest point of the floor, z how far the outlet lies below
//! it. A hole has C = Cd and z = 0; a drain pipe C = 1/sqrt(1 + K + f L/D). The
//! time is the integral of A dh / (Q - q), q the water running in: in closed
//! form on every shape here, since each is made of pieces whose surface grows
//! in a straight line.
//!
//! Checked against SciPy's differential equation solver within 0.01 %. The
//! coefficient is the larger error: Cd is 0.6 to 0.65 for a clean sharp hole
//! (common practice, no source), and near the end a vortex draws air and slows
//! the drain: read it as +/-10 %, more for the last inch.

use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::time::second;
use uom::si::volume_rate::cubic_meter_per_second;

use super::basin::{Basin, Pieces};
use super::error::{Error, NoSolution, Quantity, within};
use super::heat::flow_rate;
use super::piping::{GRAVITY, bore_of, circle};
use crate::quantity::{Length, Ratio, Time, VolumeRate};

/// Where the water goes out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outlet {
    /// A hole in the floor at its lowest point.
    Hole {
        /// Bore, 1 mm to 2 m.
        bore: Length,
        /// Discharge coefficient, 0.1 to 1; 0.62 for a clean sharp edge.
        coefficient: Ratio,
    },
    /// A drain pipe, running full.
    Pipe {
        /// Inside bore, 1 mm to 2 m.
        bore: Length,
        /// Length, 0 to 10 km.
        length: Length,
        /// How far the open end lies below the floor, 0 to 100 m.
        fall: Length,
        /// Darcy friction factor, 0 to 1; 0.02 to 0.03 for a drain.
        friction: Ratio,
        /// Sum of the loss coefficients of entry, fittings and valves, 0 to
        /// 1000; the velocity the water leaves with is counted besides.
        losses: Ratio,
    },
}

/// Q = k sqrt(h + z), m3/s.
#[derive(Clone, Copy)]
struct Law {
    k: f64,
    z: f64,
}

impl Law {
    fn flow(self, height: f64) -> f64 {
        self.k * (height + self.z).sqrt()
    }
}

impl Outlet {
    fn law(&self) -> Result<Law, Error> {
        let (bore, coefficient, z) = match *self {
            Outlet::Hole { bore, coefficient } => {
                let c = coefficient.get::<ratio>();
                (
                    bore,
                    within(Quantity::DischargeCoefficient, c, 0.1, 1.0)?,
                    0.0,
                )
            }
            Outlet::Pipe {
                bore,
                length,
                fall,
                friction,
                losses,
            } => {
                let d = bore_of(bore)?;
                let l = within(Quantity::PipeLength, length.get::<meter>(), 0.0, 1e4)?;
                let f = within(Quantity::FrictionFactor, friction.get::<ratio>(), 0.0, 1.0)?;
                let k = within(Quantity::LossCoefficient, losses.get::<ratio>(), 0.0, 1e3)?;
                let z = within(Quantity::Lift, fall.get::<meter>(), 0.0, 100.0)?;
                (bore, 1.0 / (1.0 + k + f * l / d).sqrt(), z)
            }
        };
        Ok(Law {
            k: coefficient * circle(bore_of(bore)?) * (2.0 * GRAVITY).sqrt(),
            z,
        })
    }

    /// The flow out with the water this high above the lowest floor.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states or the
    /// height outside 0 to 20 m.
    pub fn flow(&self, height: Length) -> Result<VolumeRate, Error> {
        let h = within(Quantity::Level, height.get::<meter>(), 0.0, 20.0)?;
        let flow = self.law()?.flow(h);
        Ok(VolumeRate::new::<cubic_meter_per_second>(flow))
    }

    /// The height above the lowest floor at which the outlet just passes
    /// `inflow`; zero when it passes that even from an empty basin. May lie
    /// above the lip: then the basin overflows.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states or the
    /// inflow outside 0 to 10 m3/s.
    pub fn steady_height(&self, inflow: VolumeRate) -> Result<Length, Error> {
        let law = self.law()?;
        let height = (flow_rate(inflow)? / law.k).powi(2) - law.z;
        Ok(Length::new::<meter>(height.max(0.0)))
    }
}

/// How long the level takes from one level to another (both below the lip)
/// with the outlet open and `inflow` running in; zero when it is there. Up or
/// down.
///
/// # Errors
/// [`Error::OutOfRange`] when a field of the outlet is outside the range it
/// states, the inflow outside 0 to 10 m3/s, the basin's size out of range (see
/// [`Basin::level_at`]) or a level above the lip or below the floor;
/// [`NoSolution::NeverReached`] when the level settles on the way, or moves
/// away.
pub fn time_to_level(
    basin: &Basin,
    outlet: &Outlet,
    inflow: VolumeRate,
    from: Length,
    to: Length,
) -> Result<Time, Error> {
    let law = outlet.law()?;
    let inflow = flow_rate(inflow)?;
    let pieces = basin.sized()?;
    let (from, to) = (basin.wet_height(from)?, basin.wet_height(to)?);
    // The net outflow keeps its sign between the levels unless it settles.
    let (at_from, at_to) = (law.flow(from) - inflow, law.flow(to) - inflow);
    let falls = to < from;
    if from == to {
        return Ok(Time::new::<second>(0.0));
    }
    // Nearer than rounding to the settling level counts as never.
    let hair = 1e-12 * law.flow(from.max(to)).max(inflow);
    if falls && at_to <= hair && !(inflow == 0.0 && to + law.z == 0.0)
        || !falls && at_to >= -hair
        || falls != (at_from > 0.0)
    {
        return Err(Error::NoSolution(NoSolution::NeverReached));
    }
    let seconds = integral(&pieces, law, inflow, from.min(to), from.max(to));
    Ok(Time::new::<second>(seconds.abs()))
}

/// The integral of A dh / (k sqrt(h + z) - q) over a range without its pole.
fn integral(pieces: &Pieces, law: Law, inflow: f64, low: f64, high: f64) -> f64 {
    let settles = inflow / law.k;
    let parts = pieces.each().iter().filter_map(|p| p.between(low, high));
    parts
        .map(|part| {
            // A = a + b u^2 with u = sqrt(h + z): dh = 2 u du.
            let b = (part.area_high - part.area_low) / (part.high - part.low);
            let a = part.area_low - b * (part.low + law.z);
            let (u, v) = ((part.low + law.z).sqrt(), (part.high + law.z).sqrt());
            let scaled = if settles > 20.0 * v {
                panel(a, b, settles, u, v)
            } else {
                closed(a, b, settles, u, v)
            };
            2.0 / law.k * scaled
        })
        .sum()
}

/// Integral of (a u + b u^3) / (u - c) from u to v, exact.
fn closed(a: f64, b: f64, c: f64, u: f64, v: f64) -> f64 {
    let log = if c == 0.0 {
        0.0
    } else {
        ((v - c) / (u - c)).abs().ln()
    };
    let d = v - u;
    a * (d + c * log)
        + b * (d * (v * v + u * v + u * u) / 3.0
            + 0.5 * c * d * (u + v)
            + c * c * d
            + c * c * c * log)
}

/// The same far from the pole, where the closed form would cancel: Gauss and
/// Legendre with five points, good to rounding there.
fn panel(a: f64, b: f64, c: f64, u: f64, v: f64) -> f64 {
    const AT: [(f64, f64); 5] = [
        (0.0, 0.568_888_888_888_888_9),
        (0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
        (-0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
        (0.906_179_845_938_664, 0.236_926_885_056_189_08),
        (-0.906_179_845_938_664, 0.236_926_885_056_189_08),
    ];
    let (middle, half) = (0.5 * (u + v), 0.5 * (v - u));
    AT.iter()
        .map(|&(x, weight)| {
            let s = middle + half * x;
            weight * half * s * (a + b * s * s) / (s - c)
        })
        .sum()
}

/// How long a basin takes to fill from one level to another (both below the
/// lip) with `inflow` coming in and `loss` going out, both steady; zero when
/// the second is not the higher. Exact for any shape.
///
/// # Errors
/// [`Error::OutOfRange`] when a flow is outside 0 to 10 m3/s, the basin's size
/// out of range (see [`Basin::level_at`]) or a level above the lip or below the
/// floor; [`NoSolution::NeverReached`] when the inflow does not exceed the loss
/// by 1 mL/h.
pub fn time_to_fill(
    basin: &Basin,
    from: Length,
    to: Length,
    inflow: VolumeRate,
    loss: VolumeRate,
) -> Result<Time, Error> {
    let net = flow_rate(inflow)? - flow_rate(loss)?;
    let pieces = basin.sized()?;
    let (from, to) = (basin.wet_height(from)?, basin.wet_height(to)?);
    let wanted = (pieces.volume(to) - pieces.volume(from)).max(0.0);
    if wanted == 0.0 {
        return Ok(Time::new::<second>(0.0));
    }
    if net < 2.5e-10 {
        return Err(Error::NoSolution(NoSolution::NeverReached));
    }
    Ok(Time::new::<second>(wanted / net))
}
