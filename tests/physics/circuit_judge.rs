//! What a reading in the makeup control circuit is taken to mean.

use coldsump::physics::circuit::*;

use crate::circuit::{CALLING, leads, ohms, va, volts};
use crate::part;

fn found(circuit: &Circuit, at: Leads, meter: Meter, reading: Reading) -> (Vec<Fault>, bool) {
    let judged = judge(circuit, CALLING, at, meter, reading, Accuracy::default()).unwrap();
    assert_eq!(judged.fits.len(), circuit.faults().len());
    let fits = judged
        .fits
        .iter()
        .filter(|f| f.fits)
        .map(|f| f.fault)
        .collect();
    (fits, judged.low_impedance_tells_more)
}

fn has(faults: &[Fault], like: impl Fn(&Fault) -> bool) -> bool {
    faults.iter().any(like)
}

#[test]
fn a_half_voltage_is_a_ghost_or_a_drop_and_low_impedance_parts_them() {
    let circuit = Circuit::usual(Coil::nameplate(volts(24.0), va(10.0)), true);
    let at = leads(Point::CoilFeed, Point::SupplyReturn);
    let floating = |f: &Fault| matches!(f, Fault::FeedFloating(_));
    let bad = |f: &Fault| matches!(f, Fault::ContactResistance(_));
    let high = Meter::high_impedance();
    let (fits, more) = found(&circuit, at, high, Reading::Volts(volts(12.0)));
    assert!(
        has(&fits, floating) && has(&fits, bad) && more,
        "{fits:?} {more}"
    );
    assert!(!fits.contains(&Fault::None) && !fits.contains(&Fault::FuseBlown));
    let (fits, more) = found(
        &circuit,
        at,
        Meter::low_impedance(),
        Reading::Volts(volts(12.0)),
    );
    assert!(
        !has(&fits, floating) && has(&fits, bad) && !more,
        "{fits:?}"
    );
    let (fits, _) = found(
        &circuit,
        at,
        Meter::low_impedance(),
        Reading::Volts(volts(0.02)),
    );
    assert!(has(&fits, floating) && !has(&fits, bad), "{fits:?}");
}

/// What a fault is expected to read, the judge must count as a fit for it, at
/// every place and with every meter.
#[test]
fn every_fault_fits_its_own_reading() {
    let mut circuit = Circuit::usual(Coil::nameplate(volts(120.0), va(15.0)), false);
    circuit.series_contacts = 2;
    assert_eq!(circuit.points().len(), Point::ALL.len() - 1);
    for (first, second) in [
        (Point::RelayCommon, Point::RelayOut),
        (Point::CoilFeed, Point::CoilReturn),
        (Point::CoilFeed, Point::SupplyReturn),
    ] {
        let at = leads(first, second);
        for meter in [
            Meter::high_impedance(),
            Meter::low_impedance(),
            Meter::Clamp,
            Meter::Ohmmeter,
        ] {
            for (fault, reading) in expect(&circuit, CALLING, at, meter).unwrap() {
                let (fits, _) = found(&circuit, at, meter, reading);
                let same = std::mem::discriminant(&fault);
                assert!(
                    has(&fits, |f| std::mem::discriminant(f) == same),
                    "{fault:?} {meter:?} {at:?} {reading:?}: {fits:?}"
                );
            }
        }
    }
}

#[test]
fn meanings_at_their_places() {
    let circuit = Circuit::usual(Coil::nameplate(volts(24.0), va(10.0)), true);
    let says = |a, b, meter, fault| {
        let at = leads(a, b);
        let reading = read(&circuit, CALLING, &[fault], at, meter).unwrap();
        meaning(&circuit, at, meter, reading).unwrap()
    };
    let high = Meter::high_impedance();
    use Point::{CoilFeed, CoilReturn, RelayCommon, RelayOut, SupplyReturn};
    let over = |a, b, fault, want| assert_eq!(says(a, b, high, fault), want, "{a:?} {fault:?}");
    let amps = |fault, want| {
        assert_eq!(
            says(RelayOut, SupplyReturn, Meter::Clamp, fault),
            want,
            "{fault:?}"
        );
    };
    let coil = |fault, want| {
        assert_eq!(
            says(CoilFeed, CoilReturn, Meter::Ohmmeter, fault),
            want,
            "{fault:?}"
        );
    };
    over(RelayCommon, RelayOut, Fault::None, Meaning::ClosedOrDead);
    over(
        RelayCommon,
        RelayOut,
        Fault::ContactStuckOpen,
        Meaning::OpenBetween,
    );
    over(
        RelayCommon,
        RelayOut,
        Fault::ContactResistance(ohms(20.0)),
        Meaning::DropBetween,
    );
    over(RelayOut, SupplyReturn, Fault::None, Meaning::LiveHere);
    over(RelayOut, SupplyReturn, Fault::FuseBlown, Meaning::DeadHere);
    over(
        CoilFeed,
        SupplyReturn,
        Fault::FeedFloating(part(0.5)),
        Meaning::WeakHere,
    );
    over(CoilFeed, CoilReturn, Fault::None, Meaning::CoilFed);
    over(
        CoilFeed,
        CoilReturn,
        Fault::FeedLoose(ohms(30.0)),
        Meaning::CoilLow,
    );
    over(CoilFeed, CoilReturn, Fault::ReturnBroken, Meaning::CoilDead);
    over(
        CoilReturn,
        SupplyReturn,
        Fault::ReturnBroken,
        Meaning::OpenBetween,
    );
    amps(Fault::None, Meaning::HoldingCurrent);
    amps(Fault::CoilOpen, Meaning::NoCurrent);
    amps(Fault::CoilShorted(part(0.2)), Meaning::HighCurrent);
    coil(Fault::None, Meaning::Winding);
    coil(Fault::CoilOpen, Meaning::NoWayThrough);
    coil(Fault::CoilShorted(part(0.05)), Meaning::ShortedThrough);
    over(CoilFeed, CoilFeed, Fault::None, Meaning::SamePoint);
}
