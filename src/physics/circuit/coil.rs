//! What the coil gets, and whether that is enough.

use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::ratio::ratio;

use super::fault::{Condition, Fault};
use super::parts::Circuit;
use super::point::{Point, State};
use super::read::settle;
use super::wiring::{node, wire};
use crate::physics::error::Error;
use crate::quantity::{ElectricCurrent, ElectricPotential, Ratio};

/// Part of rated voltage below which a coil may not pull in, the usual lower
/// limit for water valves: -15 % (common practice, no source).
pub(super) const PULL_IN: f64 = 0.85;
/// Part below which to look into it: -10 % (fluid-power design data sheet 30, 1990).
const LOOK_INTO: f64 = 0.90;
/// Part above which a coil runs too hot: +10 % (both of these).
const TOO_HIGH: f64 = 1.10;
/// Part of the holding current that may keep a seated armature up: 30 % (from memory).
const MAY_HOLD: f64 = 0.3;

/// How well the coil is fed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fed {
    /// Next to nothing: below 5 % of rated.
    Dead,
    /// Below -15 %: it may hum and not pull in.
    TooLow,
    /// Between -15 and -10 %: look into it.
    Low,
    /// Between -10 and +10 %.
    Good,
    /// Above +10 %: it runs hot.
    TooHigh,
}

impl Fed {
    /// The band a part of rated voltage lies in.
    pub fn of(part: Ratio) -> Self {
        match part.get::<ratio>() {
            p if p < 0.05 => Fed::Dead,
            p if p < PULL_IN => Fed::TooLow,
            p if p < LOOK_INTO => Fed::Low,
            p if p <= TOO_HIGH => Fed::Good,
            _ => Fed::TooHigh,
        }
    }
}

/// What the coil gets and does, no meter connected.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoilDuty {
    /// Volts at the coil.
    pub voltage: ElectricPotential,
    /// Amperes through it.
    pub current: ElectricCurrent,
    /// Volts over rated volts.
    pub part_of_rated: Ratio,
    /// The band that lies in.
    pub fed: Fed,
    /// The armature is seated.
    pub seated: bool,
    /// The current may keep an armature up that is seated already.
    pub may_hold: bool,
    /// Heat in the winding over that while holding at rated voltage. A coil
    /// without its armature takes its inrush for good and burns in minutes.
    pub winding_heat: Ratio,
    /// The fuse does not stand this.
    pub fuse_blows: bool,
}

/// What the coil gets in this state under these faults.
///
/// # Errors
/// [`Error::OutOfRange`] as for [`read`].
pub fn coil_duty(circuit: &Circuit, state: State, faults: &[Fault]) -> Result<CoilDuty, Error> {
    let asked = Condition::of(circuit, state.calling, faults)?;
    let (is, seated) = settle(circuit, state, faults)?;
    let solved = wire(circuit, &is, seated).solve()?;
    let (feed, back) = (
        node(circuit, Point::CoilFeed),
        node(circuit, Point::CoilReturn),
    );
    let volts = solved.between(feed, back).abs();
    let amperes = match is.coil {
        Some(_) if !state.coil_lifted => solved.current(feed, back).abs(),
        _ => 0.0,
    };
    let rated = circuit.coil.rated.get::<volt>();
    let holding = rated / circuit.coil.holding_impedance();
    let part = Ratio::new::<ratio>(volts / rated);
    Ok(CoilDuty {
        voltage: ElectricPotential::new::<volt>(volts),
        current: ElectricCurrent::new::<ampere>(amperes),
        part_of_rated: part,
        fed: Fed::of(part),
        seated,
        may_hold: amperes >= MAY_HOLD * holding,
        winding_heat: Ratio::new::<ratio>((amperes / holding).powi(2)),
        fuse_blows: is.fuse != asked.fuse,
    })
}
