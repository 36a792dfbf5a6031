//! The faults, as data: what each does to the parts.

use serde::{Deserialize, Serialize};
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::ohm;
use uom::si::ratio::ratio;

use super::parts::{Circuit, Throw};
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{ElectricCurrent, ElectricalResistance, Ratio};

/// A closed contact, a fuse, a terminal: ohm. At half an ampere it drops some
/// tens of millivolts, as contacts do (common practice, no source).
pub(super) const CLOSED: f64 = 0.05;
/// An open contact or a break, ohm: clean insulation (common practice, no source).
pub(super) const OPEN: f64 = 1e10;

/// One thing wrong with the circuit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fault {
    /// Nothing.
    None,
    /// The supply is dead: breaker tripped, transformer without primary.
    SupplyLost,
    /// The fuse is blown.
    FuseBlown,
    /// The disconnect is open.
    DisconnectOpen,
    /// A series contact is open; counted from 1.
    SeriesOpen(u8),
    /// The relay contact does not make when called.
    ContactStuckOpen,
    /// The relay contact never opens.
    ContactWelded,
    /// The relay contact makes, through this many ohms, 0 to 10 Mohm.
    ContactResistance(ElectricalResistance),
    /// The coil's winding is open.
    CoilOpen,
    /// Turns of the coil are shorted; this part of its impedance is left, 0.001 to 1.
    CoilShorted(Ratio),
    /// The feed from relay to coil is broken.
    FeedBroken,
    /// The feed is broken at the relay, off at the coil, and lies beside a live
    /// wire; this part of its stray capacitance is to that wire, 0 to 1.
    FeedFloating(Ratio),
    /// A loose connection in the feed, past the relay's terminal, ohms, 0 to 10 Mohm.
    FeedLoose(ElectricalResistance),
    /// The return from the coil is broken.
    ReturnBroken,
    /// A loose connection in the return, ohms, 0 to 10 Mohm.
    ReturnLoose(ElectricalResistance),
    /// A solid-state output leaks this current at supply voltage when off, 0 to 1 A.
    OutputLeakage(ElectricCurrent),
}

impl Fault {
    /// Every fault of a circuit at its usual size, the sound circuit first.
    pub(super) fn usual(circuit: &Circuit) -> Vec<Fault> {
        let mut all = vec![
            Fault::None,
            Fault::SupplyLost,
            Fault::FuseBlown,
            Fault::DisconnectOpen,
        ];
        all.extend((1..=circuit.series_contacts).map(Fault::SeriesOpen));
        let ohms = ElectricalResistance::new::<ohm>;
        // A third of the coil's impedance: 20 ohm for 24 V, 10 VA.
        let typical = ohms(0.35 * circuit.coil.holding_impedance());
        all.extend([
            Fault::ContactStuckOpen,
            Fault::ContactWelded,
            Fault::ContactResistance(typical),
            Fault::CoilOpen,
            Fault::CoilShorted(Ratio::new::<ratio>(0.1)),
            Fault::FeedBroken,
            Fault::FeedFloating(Ratio::new::<ratio>(0.5)),
            Fault::FeedLoose(typical),
            Fault::ReturnBroken,
            Fault::ReturnLoose(typical),
            Fault::OutputLeakage(ElectricCurrent::new::<ampere>(0.005)),
        ]);
        all
    }

    /// This fault in the sizes it comes in, its own among them. Sizes are
    /// judgement; leakage of 1 to 10 mA is from memory, ghosts up to 85 % of
    /// the live voltage are what meter makers and contractors report.
    pub(super) fn sizes(self) -> Vec<Fault> {
        const OHMS: &[f64] = &[0.2, 0.35, 0.6, 1.0, 1.5, 2.2, 3.3, 5.0, 8.0, 15.0, 40.0];
        let of =
            |parts: &[f64], make: &dyn Fn(f64) -> Fault| parts.iter().map(|p| make(*p)).collect();
        match self {
            Fault::ContactResistance(r) => of(OHMS, &|k| Fault::ContactResistance(k * r)),
            Fault::FeedLoose(r) => of(OHMS, &|k| Fault::FeedLoose(k * r)),
            Fault::ReturnLoose(r) => of(OHMS, &|k| Fault::ReturnLoose(k * r)),
            Fault::CoilShorted(p) => of(&[0.5, 1.0, 2.0, 4.0, 7.0], &|k| Fault::CoilShorted(k * p)),
            Fault::FeedFloating(p) => of(&[0.5, 0.7, 0.85, 1.0, 1.2, 1.4, 1.6, 1.8], &|k| {
                Fault::FeedFloating(k * p)
            }),
            Fault::OutputLeakage(i) => of(&[0.2, 0.5, 1.0, 2.0], &|k| Fault::OutputLeakage(k * i)),
            _ => vec![self],
        }
    }
}

/// The parts as they are now: ohms of every link, and what became of the rest.
#[derive(Clone, Debug)]
pub(super) struct Condition {
    /// Volts of the supply.
    pub volts: f64,
    pub source: f64,
    pub fuse: f64,
    pub disconnect: f64,
    pub series: [f64; 3],
    /// The throw that feeds the coil, and the other one.
    pub used: f64,
    pub other: f64,
    /// Added to the feed and to the return.
    pub feed: f64,
    pub back: f64,
    /// Part of the coil's impedance left; `None` when its circuit is open.
    pub coil: Option<f64>,
    /// Part of the feed's stray capacitance to the live neighbour, if not the cable's.
    pub stray_part: Option<f64>,
    /// Farads across the used throw.
    pub leak: f64,
}

impl Condition {
    /// The parts under these faults, the contact closed or not.
    ///
    /// # Errors
    /// Out of range when a fault's size is.
    pub fn of(circuit: &Circuit, closed: bool, faults: &[Fault]) -> Result<Self, Error> {
        let contact = |on: bool| if on { CLOSED } else { OPEN };
        let size = |r: ElectricalResistance| {
            within(Quantity::Resistance, r.get::<ohm>(), 0.0, 1e7).map(|r| r.max(CLOSED))
        };
        let mut is = Self {
            volts: circuit.supply.voltage.get::<volt>(),
            source: circuit.supply.impedance.get::<ohm>().max(1e-3),
            fuse: CLOSED,
            disconnect: CLOSED,
            series: [CLOSED; 3],
            used: contact(closed),
            other: contact(!closed),
            feed: 0.0,
            back: 0.0,
            coil: Some(1.0),
            stray_part: None,
            leak: 0.0,
        };
        for fault in faults {
            match *fault {
                Fault::None => {}
                Fault::SupplyLost => {
                    is.volts = 0.0;
                    if !circuit.supply.transformer {
                        is.source = OPEN;
                    }
                }
                Fault::FuseBlown => is.fuse = OPEN,
                Fault::DisconnectOpen => is.disconnect = OPEN,
                Fault::SeriesOpen(n) => {
                    let most = f64::from(circuit.series_contacts);
                    within(Quantity::SeriesContacts, f64::from(n), 1.0, 3.0)?;
                    within(Quantity::SeriesContacts, f64::from(n), 0.0, most)?;
                    is.series[usize::from(n) - 1] = OPEN;
                }
                Fault::ContactStuckOpen => is.used = OPEN,
                Fault::ContactWelded => (is.used, is.other) = (CLOSED, OPEN),
                Fault::ContactResistance(r) => is.used = is.used.max(size(r)?),
                Fault::CoilOpen => is.coil = None,
                Fault::CoilShorted(part) => {
                    let part = within(Quantity::PartLeft, part.get::<ratio>(), 1e-3, 1.0)?;
                    is.coil = is.coil.map(|c| c * part);
                }
                Fault::FeedBroken => is.feed = OPEN,
                Fault::FeedFloating(part) => {
                    (is.feed, is.coil) = (OPEN, None);
                    is.stray_part =
                        Some(within(Quantity::PartLeft, part.get::<ratio>(), 0.0, 1.0)?);
                }
                Fault::FeedLoose(r) => is.feed = is.feed.max(size(r)?),
                Fault::ReturnBroken => is.back = OPEN,
                Fault::ReturnLoose(r) => is.back = is.back.max(size(r)?),
                Fault::OutputLeakage(i) => {
                    let i = within(Quantity::Current, i.get::<ampere>(), 0.0, 1.0)?;
                    is.leak = i / (circuit.omega() * circuit.supply.voltage.get::<volt>());
                }
            }
        }
        Ok(is)
    }
}

/// Whether the relay's used throw makes without control power.
pub(super) fn closed_at_rest(throw: Throw) -> bool {
    throw == Throw::NormallyClosed
}
