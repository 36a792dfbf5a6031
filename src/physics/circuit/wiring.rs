//! The parts wired into a network.

use uom::si::capacitance::farad;
use uom::si::electric_potential::volt;
use uom::si::length::meter;

use super::complex::Complex;
use super::fault::{Condition, OPEN};
use super::network::{Network, Solution};
use super::parts::Circuit;
use super::point::Point;

/// Nodes: the return is the reference, the two ideal sources, then the points.
const SOURCE: usize = 1;
const NEIGHBOUR: usize = 2;
const FIRST_POINT: usize = 3;
/// The ohmmeter's own source stands where the dead supply's was.
pub(super) const OHMMETER: usize = SOURCE;

/// The node of a point; the return terminal is the reference.
pub(super) fn node(circuit: &Circuit, point: Point) -> usize {
    let contacts = usize::from(circuit.series_contacts);
    let last = Point::DisconnectOut as usize + contacts;
    match point {
        Point::SupplyReturn => 0,
        _ if point <= Point::Series3 => FIRST_POINT + (point as usize).min(last),
        _ => FIRST_POINT + point as usize + contacts - 3,
    }
}

/// Amperes leaving a point toward the load.
pub(super) fn leaving(circuit: &Circuit, solved: &Solution, point: Point) -> f64 {
    let (point, next) = match point {
        // Inside the relay there is no wire to put a clamp round.
        Point::RelayCommon | Point::RelayOut => (Point::RelayOut, Point::CoilFeed),
        Point::RelayOther => return 0.0,
        Point::SupplyReturn => {
            return solved
                .current(SOURCE, node(circuit, Point::SupplyHot))
                .abs();
        }
        _ => {
            // The next point that is other metal.
            let here = node(circuit, point);
            let ahead = Point::ALL.into_iter().skip(point as usize + 1);
            let mut other = ahead.filter(|p| node(circuit, *p) != here);
            (point, other.next().unwrap_or(Point::SupplyReturn))
        }
    };
    solved
        .current(node(circuit, point), node(circuit, next))
        .abs()
}

/// Feed, return and the rest of the circuit under power.
pub(super) fn wire(circuit: &Circuit, is: &Condition, seated: bool) -> Network {
    let mut net = Network::default();
    net.source(SOURCE, 0, Complex::new(is.volts, 0.0));
    let live = circuit.cable.neighbour.get::<volt>();
    net.source(NEIGHBOUR, 0, Complex::new(live, 0.0));
    chain(circuit, is, SOURCE, &mut net);
    let at = |p| node(circuit, p);
    if is.leak > 0.0 {
        let y = Complex::new(0.0, circuit.omega() * is.leak);
        net.admittance(at(Point::RelayCommon), at(Point::RelayOut), y);
    }
    coil(circuit, is, circuit.coil.impedance(seated), &mut net);
    stray(circuit, is, &mut net);
    net
}

/// The coil as this impedance, less what a short took of it.
fn coil(circuit: &Circuit, is: &Condition, z: Complex, net: &mut Network) {
    let z = match is.coil {
        Some(part) => z * Complex::new(part, 0.0),
        None => Complex::new(OPEN, 0.0),
    };
    let (feed, back) = (Point::CoilFeed, Point::CoilReturn);
    net.impedance(node(circuit, feed), node(circuit, back), z);
}

/// Stray capacitance: half of each run's at each end of it.
fn stray(circuit: &Circuit, is: &Condition, net: &mut Network) {
    let cable = &circuit.cable;
    let omega = circuit.omega();
    let (live, back) = (
        cable.stray_live.get::<farad>(),
        cable.stray_return.get::<farad>(),
    );
    let mut put = |point, length: f64, live: f64, back: f64| {
        let at = node(circuit, point);
        let y = |c: f64| Complex::new(0.0, omega * c * length);
        net.admittance(at, NEIGHBOUR, y(live));
        net.admittance(at, 0, y(back));
    };
    let (relay, coil) = (cable.to_relay.get::<meter>(), cable.to_coil.get::<meter>());
    put(Point::Series3, 0.5 * relay, live, back);
    put(Point::RelayCommon, 0.5 * relay, live, back);
    match is.stray_part {
        // Cut off at the relay: all of it hangs on the far end.
        Some(part) => {
            let both = live + back;
            put(Point::CoilFeed, coil, part * both, (1.0 - part) * both);
        }
        None => {
            put(Point::RelayOut, 0.5 * coil, live, back);
            put(Point::CoilFeed, 0.5 * coil, live, back);
        }
    }
    // The other half of the return's hangs on the reference itself.
    put(Point::CoilReturn, 0.5 * (relay + coil), live, back);
}

/// Everything in series but the coil.
fn chain(circuit: &Circuit, is: &Condition, source: usize, net: &mut Network) {
    let at = |p| node(circuit, p);
    let run = |length: f64| length * circuit.cable.wire.ohm_per_meter();
    let to_relay = run(circuit.cable.to_relay.get::<meter>());
    let to_coil = run(circuit.cable.to_coil.get::<meter>());
    net.resistance(source, at(Point::SupplyHot), is.source);
    net.resistance(at(Point::SupplyHot), at(Point::FuseOut), is.fuse);
    net.resistance(at(Point::FuseOut), at(Point::DisconnectOut), is.disconnect);
    let series = [Point::Series1, Point::Series2, Point::Series3];
    let mut before = at(Point::DisconnectOut);
    for (point, ohms) in series
        .into_iter()
        .zip(is.series)
        .take(usize::from(circuit.series_contacts))
    {
        net.resistance(before, at(point), ohms);
        before = at(point);
    }
    net.resistance(before, at(Point::RelayCommon), to_relay);
    net.resistance(at(Point::RelayCommon), at(Point::RelayOut), is.used);
    net.resistance(at(Point::RelayCommon), at(Point::RelayOther), is.other);
    net.resistance(at(Point::RelayOut), at(Point::CoilFeed), to_coil + is.feed);
    net.resistance(at(Point::CoilReturn), 0, to_relay + to_coil + is.back);
}

/// The dead circuit with an ohmmeter on it, one volt behind one ohm: direct
/// current, no capacitance.
pub(super) fn dead(circuit: &Circuit, is: &Condition, first: usize, second: usize) -> Network {
    let mut net = Network::default();
    chain(circuit, is, 0, &mut net);
    let winding = Complex::new(circuit.coil.impedance(false).re, 0.0);
    coil(circuit, is, winding, &mut net);
    net.resistance(NEIGHBOUR, 0, OPEN);
    net.source(OHMMETER, second, Complex::ONE);
    net.resistance(OHMMETER, first, 1.0);
    net
}
