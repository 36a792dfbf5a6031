//! What a meter reads: the circuit solved with the meter's own input in it.

use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::ohm;

use super::coil::PULL_IN;
use super::complex::Complex;
use super::fault::{Condition, Fault, OPEN, closed_at_rest};
use super::parts::Circuit;
use super::point::{Armature, Leads, Meter, OPEN_LINE, Point, Reading, State};
use super::wiring::{OHMMETER, dead, leaving, node, wire};
use crate::physics::error::Error;
use crate::quantity::{ElectricCurrent, ElectricPotential, ElectricalResistance};

/// A fuse opens within two minutes at twice its rating (UL 248-14, from memory).
const BLOWS_AT: f64 = 2.0;

/// What the meter reads with the circuit in this state under these faults.
///
/// The network is solved at one frequency in RMS phasors, the meter's own
/// input in it. Contacts and fuses are resistances (0.05 ohm closed, 10 Gohm
/// open), the coil is R + jX, stray capacitance stands at the ends of the runs.
/// With the ohmmeter the disconnect is open, the supply dead and the relay at
/// rest, whatever `state` says. A clamp reads one conductor.
///
/// # Errors
/// [`Error::OutOfRange`] when a part, the size of a fault or the meter's input
/// is outside its stated range.
pub fn read(
    circuit: &Circuit,
    state: State,
    faults: &[Fault],
    leads: Leads,
    meter: Meter,
) -> Result<Reading, Error> {
    let (is, seated) = settle(circuit, state, faults)?;
    let (first, second) = (node(circuit, leads.first), node(circuit, leads.second));
    match meter {
        Meter::HighImpedance(input) | Meter::LowImpedance(input) => {
            let (r, c) = input.checked()?;
            let mut net = wire(circuit, &is, seated);
            if first != second {
                net.admittance(first, second, Complex::new(1.0 / r, circuit.omega() * c));
            }
            let volts = net.solve()?.between(first, second).abs();
            Ok(Reading::Volts(ElectricPotential::new::<volt>(volts)))
        }
        Meter::Clamp => {
            let solved = wire(circuit, &is, seated).solve()?;
            let amperes = leaving(circuit, &solved, leads.first);
            Ok(Reading::Amperes(ElectricCurrent::new::<ampere>(amperes)))
        }
        Meter::Ohmmeter => {
            let closed = closed_at_rest(circuit.throw);
            let mut at_rest = Condition::of(circuit, closed, faults)?;
            (at_rest.fuse, at_rest.disconnect) = (is.fuse, OPEN);
            let solved = dead(circuit, &at_rest, first, second).solve()?;
            let amperes = solved.current(OHMMETER, first).abs();
            let ohms = (1.0 / amperes - 1.0).max(0.0);
            Ok(if ohms < OPEN_LINE {
                Reading::Ohms(ElectricalResistance::new::<ohm>(ohms))
            } else {
                Reading::OpenLine
            })
        }
    }
}

/// The parts as they end up: whether the armature seats, and the fuse blown by
/// a coil that takes too much whenever it is called.
pub(super) fn settle(
    circuit: &Circuit,
    state: State,
    faults: &[Fault],
) -> Result<(Condition, bool), Error> {
    circuit.check()?;
    let mut is = Condition::of(circuit, state.calling, faults)?;
    if faults.iter().any(|f| matches!(f, Fault::CoilShorted(_))) {
        let called = Condition::of(circuit, true, faults)?;
        let seated = seats(circuit, state.armature, &called)?;
        let solved = wire(circuit, &called, seated).solve()?;
        if leaving(circuit, &solved, Point::SupplyHot) > BLOWS_AT * circuit.fuse.get::<ampere>() {
            is.fuse = OPEN;
        }
    }
    if state.coil_lifted {
        is.coil = None;
    }
    let seated = seats(circuit, state.armature, &is)?;
    Ok((is, seated))
}

fn seats(circuit: &Circuit, armature: Armature, is: &Condition) -> Result<bool, Error> {
    Ok(match armature {
        Armature::Seated => true,
        Armature::Free => false,
        Armature::ByVoltage => {
            let solved = wire(circuit, is, false).solve()?;
            let (feed, back) = (Point::CoilFeed, Point::CoilReturn);
            let volts = solved.between(node(circuit, feed), node(circuit, back));
            is.coil.is_some() && volts.abs() >= PULL_IN * circuit.coil.rated.get::<volt>()
        }
    })
}
