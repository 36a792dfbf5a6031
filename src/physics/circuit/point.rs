//! Where the leads go, in which state the circuit is, and what meter reads it.

use serde::{Deserialize, Serialize};
use uom::si::capacitance::farad;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::ohm;

use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{Capacitance, ElectricCurrent, ElectricPotential, ElectricalResistance};

/// A terminal a lead can be put on, in order along the circuit. One past the
/// last series contact there is, is the same metal as that contact's far side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Point {
    /// Hot side of the supply, ahead of the fuse.
    SupplyHot,
    /// Load side of the fuse.
    FuseOut,
    /// Load side of the disconnect.
    DisconnectOut,
    /// Load side of the first series contact.
    Series1,
    /// Load side of the second.
    Series2,
    /// Load side of the third.
    Series3,
    /// COM of the level relay.
    RelayCommon,
    /// The throw that feeds the coil.
    RelayOut,
    /// The throw that is not used.
    RelayOther,
    /// End of the feed wire at the coil.
    CoilFeed,
    /// End of the return wire at the coil.
    CoilReturn,
    /// Return terminal of the supply.
    SupplyReturn,
}

impl Point {
    /// Every point, in order.
    pub const ALL: [Point; 12] = [
        Point::SupplyHot,
        Point::FuseOut,
        Point::DisconnectOut,
        Point::Series1,
        Point::Series2,
        Point::Series3,
        Point::RelayCommon,
        Point::RelayOut,
        Point::RelayOther,
        Point::CoilFeed,
        Point::CoilReturn,
        Point::SupplyReturn,
    ];
}

/// Where the two leads are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Leads {
    /// First lead; a clamp goes round the conductor leaving this point toward
    /// the load, that conductor alone.
    pub first: Point,
    /// Second lead; a clamp has none.
    pub second: Point,
}

/// How the armature of the coil stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Armature {
    /// Seated if the coil gets its pull-in voltage under inrush, else not.
    #[default]
    ByVoltage,
    /// Seated already.
    Seated,
    /// Not seated: jammed, or the coil is off its stem.
    Free,
}

/// What the circuit is doing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct State {
    /// The level control calls for water.
    pub calling: bool,
    /// How the armature stands.
    pub armature: Armature,
    /// The coil's lead is lifted off, so that nothing loads the feed.
    pub coil_lifted: bool,
}

/// What a voltmeter puts between its leads.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Input {
    /// Resistance, 1 ohm to 1 Tohm.
    pub resistance: ElectricalResistance,
    /// Capacitance, 0 to 1 uF.
    pub capacitance: Capacitance,
}

/// What reads.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Meter {
    /// AC volts, the usual input.
    HighImpedance(Input),
    /// AC volts on a low-impedance input, or with a load across the leads.
    LowImpedance(Input),
    /// AC amperes by clamp.
    Clamp,
    /// Ohms with the disconnect open, the supply dead and the relay at rest.
    Ohmmeter,
}

/// What can hurt someone at a step on the circuit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Caution {
    /// Live parts are within reach.
    LiveParts,
    /// "Dead" must be proven.
    LiveDeadLive,
    /// The meter must see a dead circuit.
    ProveDead,
    /// The meter draws current.
    LoadsCircuit,
    /// A conductor is sorted out next to live parts.
    ClampNearLive,
    /// A coil is off its stem, or may come off it.
    CoilOffStem,
    /// A lead is lifted or refitted.
    LiftLead,
}

impl Meter {
    /// Cautions to show where this meter is used.
    pub fn cautions(self) -> &'static [Caution] {
        match self {
            Meter::HighImpedance(_) => &[Caution::LiveParts, Caution::LiveDeadLive],
            Meter::LowImpedance(_) => &[
                Caution::LiveParts,
                Caution::LiveDeadLive,
                Caution::LoadsCircuit,
            ],
            Meter::Clamp => &[Caution::LiveParts, Caution::ClampNearLive],
            Meter::Ohmmeter => &[Caution::ProveDead, Caution::LiveDeadLive, Caution::LiftLead],
        }
    }

    /// The usual voltmeter: 10 Mohm and 100 pF (common practice, no source).
    pub fn high_impedance() -> Self {
        Meter::HighImpedance(Input::of(10e6, 100e-12))
    }

    /// The usual low-impedance range: 3 kohm (from memory).
    pub fn low_impedance() -> Self {
        Meter::LowImpedance(Input::of(3e3, 0.0))
    }
}

impl Input {
    fn of(ohms: f64, farads: f64) -> Self {
        Self {
            resistance: ElectricalResistance::new::<ohm>(ohms),
            capacitance: Capacitance::new::<farad>(farads),
        }
    }

    /// Ohm and farad, checked.
    pub(super) fn checked(&self) -> Result<(f64, f64), Error> {
        let (r, c) = (
            self.resistance.get::<ohm>(),
            self.capacitance.get::<farad>(),
        );
        Ok((
            within(Quantity::Resistance, r, 1.0, 1e12)?,
            within(Quantity::Capacitance, c, 0.0, 1e-6)?,
        ))
    }
}

/// What the meter shows.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reading {
    /// Volts RMS.
    Volts(ElectricPotential),
    /// Amperes RMS.
    Amperes(ElectricCurrent),
    /// Ohms.
    Ohms(ElectricalResistance),
    /// An ohmmeter over its range, 40 Mohm.
    OpenLine,
}

impl Reading {
    /// The number in V, A or ohm; an open line is the end of the range.
    pub(super) fn number(self) -> f64 {
        match self {
            Reading::Volts(v) => v.get::<volt>(),
            Reading::Amperes(i) => i.get::<ampere>(),
            Reading::Ohms(r) => r.get::<ohm>(),
            Reading::OpenLine => OPEN_LINE,
        }
    }
}

/// Where an ohmmeter shows no number any more, ohm (common practice, no source).
pub(super) const OPEN_LINE: f64 = 40e6;
