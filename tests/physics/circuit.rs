//! The makeup control circuit.

use coldsump::physics::circuit::*;
use coldsump::physics::{Error, Quantity};
use coldsump::quantity::{
    Capacitance, ElectricCurrent, ElectricPotential, ElectricalResistance, Frequency, Length, Power,
};
use proptest::prelude::*;
use uom::si::capacitance::picofarad;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::ohm;
use uom::si::length::foot;
use uom::si::power::watt;
use uom::si::ratio::ratio;

use crate::{m, near, part, within_part};

pub fn volts(v: f64) -> ElectricPotential {
    ElectricPotential::new::<volt>(v)
}

pub fn ohms(v: f64) -> ElectricalResistance {
    ElectricalResistance::new::<ohm>(v)
}

pub fn amperes(v: f64) -> ElectricCurrent {
    ElectricCurrent::new::<ampere>(v)
}

pub fn pico(v: f64) -> Capacitance {
    Capacitance::new::<picofarad>(v)
}

pub fn hz(v: f64) -> Frequency {
    Frequency::new::<uom::si::frequency::hertz>(v)
}

pub fn va(v: f64) -> Power {
    Power::new::<watt>(v)
}

/// A coil of which the impedances add arithmetically: all resistance.
fn resistive(rated: f64, apparent: f64) -> Coil {
    Coil {
        power_factor: part(1.0),
        inrush_power_factor: part(1.0),
        ..Coil::nameplate(volts(rated), va(apparent))
    }
}

/// The usual circuit with neither source nor wire resistance worth naming.
fn stiff(coil: Coil) -> Circuit {
    let mut circuit = Circuit::usual(coil, true);
    circuit.supply.impedance = ohms(0.0);
    circuit.cable.to_relay = m(0.01);
    circuit.cable.to_coil = m(0.01);
    circuit
}

pub const CALLING: State = State {
    calling: true,
    armature: Armature::Seated,
    coil_lifted: false,
};

pub fn leads(first: Point, second: Point) -> Leads {
    Leads { first, second }
}

fn number(reading: Reading) -> f64 {
    match reading {
        Reading::Volts(v) => v.get::<volt>(),
        Reading::Amperes(i) => i.get::<ampere>(),
        Reading::Ohms(r) => r.get::<ohm>(),
        Reading::OpenLine => f64::INFINITY,
    }
}

fn reads(circuit: &Circuit, state: State, fault: Fault, a: Point, b: Point, meter: Meter) -> f64 {
    number(read(circuit, state, &[fault], leads(a, b), meter).unwrap())
}

/// Computed by hand, impedances added arithmetically: 20 ohm before a 24 V,
/// 10 VA coil (57.6 ohm) drops 6.2 V and leaves it 17.8 V, 74 %.
#[test]
fn a_bad_contact_starves_the_coil() {
    let circuit = stiff(resistive(24.0, 10.0));
    let bad = Fault::ContactResistance(ohms(20.0));
    let high = Meter::high_impedance();
    let across = |a, b, state| reads(&circuit, state, bad, a, b, high);
    near(
        across(Point::RelayCommon, Point::RelayOut, CALLING),
        6.2,
        0.05,
        "drop",
    );
    near(
        across(Point::CoilFeed, Point::CoilReturn, CALLING),
        17.8,
        0.05,
        "coil",
    );
    let duty = coil_duty(&circuit, CALLING, &[bad]).unwrap();
    near(
        duty.part_of_rated.get::<ratio>(),
        0.74,
        0.005,
        "part of rated",
    );
    assert_eq!(duty.fed, Fed::TooLow);
    assert!(duty.may_hold);
    // With the coil's lead off nothing loads it, and all looks well.
    let unloaded = State {
        coil_lifted: true,
        ..CALLING
    };
    near(
        across(Point::CoilFeed, Point::CoilReturn, unloaded),
        24.0,
        0.01,
        "unloaded",
    );
    near(
        across(Point::RelayCommon, Point::RelayOut, unloaded),
        0.0,
        0.001,
        "unloaded drop",
    );
    // A new call finds the armature down: it takes its inrush and gets less still.
    let anew = State {
        armature: Armature::ByVoltage,
        ..CALLING
    };
    let duty = coil_duty(&circuit, anew, &[bad]).unwrap();
    assert!(!duty.seated);
    near(
        duty.voltage.get::<volt>(),
        24.0 * 11.52 / 31.52,
        0.1,
        "at inrush",
    );
    assert!(coil_duty(&circuit, anew, &[]).unwrap().seated);
}

/// Limits of +10 % and -15 % in volts (common practice, no source); -10 % is
/// that of fluid-power design data sheet 30 (1990).
#[test]
fn the_bands_of_a_coil() {
    for (rated, low, high) in [
        (24.0, 20.4, 26.4),
        (120.0, 102.0, 132.0),
        (230.0, 195.5, 253.0),
    ] {
        let fed = |v: f64| Fed::of(part(v / rated));
        assert_eq!(fed(low - 0.01), Fed::TooLow);
        assert_eq!(fed(low + 0.01), Fed::Low);
        assert_eq!(fed(0.9 * rated + 0.01), Fed::Good);
        assert_eq!(fed(high - 0.01), Fed::Good);
        assert_eq!(fed(high + 0.01), Fed::TooHigh);
    }
}

/// Computed by hand: holding current is VA / V, |Z| is V^2 / VA.
#[test]
fn holding_currents() {
    for (rated, apparent, current, z) in [
        (24.0, 10.0, 0.417, 57.6),
        (24.0, 20.0, 0.833, 28.8),
        (120.0, 10.0, 0.083, 1440.0),
        (120.0, 20.0, 0.167, 720.0),
        (230.0, 10.0, 0.043, 5290.0),
        (230.0, 20.0, 0.087, 2645.0),
    ] {
        let coil = Coil::nameplate(volts(rated), va(apparent));
        let holding = coil.holding_current().unwrap().get::<ampere>();
        near(holding, current, 0.0006, "holding current");
        within_part(rated / holding, z, 1e-9, "impedance");
        let clamp = reads(
            &stiff(coil),
            CALLING,
            Fault::None,
            Point::RelayOut,
            Point::SupplyReturn,
            Meter::Clamp,
        );
        within_part(clamp, holding, 0.01, "clamp");
    }
}

/// Typical resistance of the winding, from memory: 5 to 60 ohm at 24 V, 150 to
/// 1000 at 120 V, 600 to 4000 at 230 V.
#[test]
fn an_ohmmeter_finds_less_than_the_impedance() {
    for (rated, low, high) in [
        (24.0, 5.0, 60.0),
        (120.0, 150.0, 1000.0),
        (230.0, 600.0, 4000.0),
    ] {
        let circuit = stiff(Coil::nameplate(volts(rated), va(10.0)));
        let found = |fault| {
            reads(
                &circuit,
                CALLING,
                fault,
                Point::CoilFeed,
                Point::CoilReturn,
                Meter::Ohmmeter,
            )
        };
        assert!(
            (low..high).contains(&found(Fault::None)),
            "{}",
            found(Fault::None)
        );
        assert_eq!(found(Fault::CoilOpen), f64::INFINITY);
        within_part(
            found(Fault::CoilShorted(part(0.1))),
            0.1 * found(Fault::None),
            1e-6,
            "short",
        );
        let winding = circuit.coil.winding().unwrap();
        within_part(found(Fault::None), winding.get::<ohm>(), 1e-6, "winding");
    }
}

/// Computed by hand from 6.385 ohm per 1000 ft of AWG 18: 200 ft of run is 400
/// ft of wire and drops 2.1 V at 0.83 A, 5.1 V at 2 A.
#[test]
fn a_long_run_at_24_volts() {
    let run = Wire::Awg18
        .loop_resistance(Length::new::<foot>(200.0))
        .unwrap()
        .get::<ohm>();
    near(run * 0.833, 2.1, 0.05, "holding");
    near(run * 2.0, 5.1, 0.05, "inrush");
    let mut sizes = Wire::ALL.map(|w| w.loop_resistance(m(1.0)).unwrap().get::<ohm>());
    let as_listed = sizes;
    sizes[..3].sort_by(|a, b| b.total_cmp(a));
    sizes[3..].sort_by(|a, b| b.total_cmp(a));
    assert_eq!(sizes, as_listed, "thicker wire has less");
}

/// The ghost on a conductor broken beside a live one, equal stray to both
/// sides, 80 pF/m at 60 Hz: computed by hand as a divider (Thevenin half the
/// voltage behind both capacitances). Reported: up to 80-85 % of the live
/// voltage (a meter maker), 60-120 V beside 230 V (an electrical contractors'
/// association, Western Australia).
#[test]
fn ghost_voltages() {
    for (live, metres, by_10m, by_1m, by_3k) in [
        (120.0, 10.0, 59.0, 31.0, 0.11),
        (120.0, 50.0, 60.0, 57.0, 0.54),
        (230.0, 30.0, 115.0, 101.0, 0.62),
        (24.0, 30.0, 12.0, 10.5, 0.07),
    ] {
        let mut circuit = stiff(Coil::nameplate(volts(live), va(10.0)));
        circuit.cable.to_coil = m(metres);
        let ghost = |resistance| {
            let input = Input {
                resistance: ohms(resistance),
                capacitance: pico(0.0),
            };
            let fault = Fault::FeedFloating(part(0.5));
            let meter = Meter::HighImpedance(input);
            reads(
                &circuit,
                CALLING,
                fault,
                Point::CoilFeed,
                Point::SupplyReturn,
                meter,
            )
        };
        within_part(ghost(10e6), by_10m, 0.02, "10 Mohm");
        within_part(ghost(1e6), by_1m, 0.02, "1 Mohm");
        near(ghost(3e3), by_3k, 0.006, "3 kohm");
        let strong = Fault::FeedFloating(part(0.85));
        let (a, b) = (Point::CoilFeed, Point::SupplyReturn);
        let most = reads(&circuit, CALLING, strong, a, b, Meter::high_impedance()) / live;
        assert!((0.78..0.86).contains(&most), "{most}");
        let low = reads(&circuit, CALLING, strong, a, b, Meter::low_impedance()) / live;
        assert!(low < 0.02, "low impedance leaves {low}");
    }
}

/// From memory: a solid-state output leaks 1 to 10 mA when off, shows near full
/// voltage with no load, and can hold in a small coil.
#[test]
fn a_leaking_output_looks_live_and_may_hold() {
    let circuit = stiff(Coil::nameplate(volts(120.0), va(4.0)));
    let leak = Fault::OutputLeakage(amperes(0.010));
    let off = State {
        calling: false,
        coil_lifted: true,
        armature: Armature::Seated,
    };
    let (a, b) = (Point::CoilFeed, Point::SupplyReturn);
    let open = reads(&circuit, off, leak, a, b, Meter::high_impedance());
    assert!(open > 114.0, "{open}");
    let loaded = reads(&circuit, off, leak, a, b, Meter::low_impedance());
    assert!(loaded < 0.4 * open, "{loaded}");
    let off = State {
        coil_lifted: false,
        ..off
    };
    assert!(coil_duty(&circuit, off, &[leak]).unwrap().may_hold);
    assert!(!coil_duty(&circuit, off, &[]).unwrap().may_hold);
}

#[test]
fn a_coil_off_its_stem_burns() {
    let circuit = stiff(Coil::nameplate(volts(24.0), va(10.0)));
    let heat = |armature| {
        let state = State {
            armature,
            ..CALLING
        };
        coil_duty(&circuit, state, &[])
            .unwrap()
            .winding_heat
            .get::<ratio>()
    };
    within_part(heat(Armature::Seated), 1.0, 0.02, "holding");
    // Five times the current for good.
    within_part(heat(Armature::Free), 25.0, 0.05, "off its stem");
}

#[test]
fn shorted_turns_blow_a_small_fuse() {
    let mut circuit = stiff(Coil::nameplate(volts(24.0), va(10.0)));
    let short = Fault::CoilShorted(part(0.1));
    circuit.fuse = amperes(1.0);
    let duty = coil_duty(&circuit, CALLING, &[short]).unwrap();
    assert!(duty.fuse_blows && duty.fed == Fed::Dead);
    let (a, b) = (Point::SupplyHot, Point::FuseOut);
    near(
        reads(&circuit, CALLING, short, a, b, Meter::high_impedance()),
        24.0,
        0.1,
        "across it",
    );
    assert_eq!(
        reads(&circuit, CALLING, short, a, b, Meter::Ohmmeter),
        f64::INFINITY
    );
    circuit.fuse = amperes(5.0);
    assert!(!coil_duty(&circuit, CALLING, &[short]).unwrap().fuse_blows);
    assert!(!coil_duty(&circuit, CALLING, &[]).unwrap().fuse_blows);
}

/// From memory of trade practice: an open contact reads full voltage and a
/// closed one some tens of millivolts; two opens in series, across either one
/// alone, read nothing trustworthy.
#[test]
fn contacts_open_closed_and_two_open() {
    let circuit = stiff(Coil::nameplate(volts(24.0), va(10.0)));
    let high = Meter::high_impedance();
    let across = |faults: &[Fault]| {
        let at = leads(Point::RelayCommon, Point::RelayOut);
        number(read(&circuit, CALLING, faults, at, high).unwrap())
    };
    let closed = across(&[]);
    assert!(closed > 0.0 && closed < 0.05, "{closed}");
    near(across(&[Fault::ContactStuckOpen]), 24.0, 0.1, "open");
    let two = across(&[Fault::ContactStuckOpen, Fault::FeedBroken]);
    assert!(two < 12.0, "{two}");
    // A broken return lets the whole coil stand at the hot side.
    let back = Fault::ReturnBroken;
    let far = reads(
        &circuit,
        CALLING,
        back,
        Point::CoilReturn,
        Point::SupplyReturn,
        high,
    );
    near(far, 24.0, 0.1, "return side");
    near(
        reads(
            &circuit,
            CALLING,
            back,
            Point::CoilFeed,
            Point::CoilReturn,
            high,
        ),
        0.0,
        0.01,
        "across the coil",
    );
}

#[test]
fn what_is_out_of_range_is_said() {
    let good = Circuit::usual(Coil::nameplate(volts(24.0), va(10.0)), true);
    let at = leads(Point::CoilFeed, Point::CoilReturn);
    let refused = |circuit: Circuit, fault| match read(
        &circuit,
        CALLING,
        &[fault],
        at,
        Meter::high_impedance(),
    ) {
        Err(Error::OutOfRange { quantity, .. }) => quantity,
        other => panic!("{other:?}"),
    };
    let mut bad = good;
    bad.supply.voltage = volts(480.0);
    assert_eq!(refused(bad, Fault::None), Quantity::Voltage);
    bad = good;
    bad.series_contacts = 4;
    assert_eq!(refused(bad, Fault::None), Quantity::SeriesContacts);
    assert_eq!(
        refused(good, Fault::SeriesOpen(1)),
        Quantity::SeriesContacts
    );
    bad.series_contacts = 2;
    assert_eq!(refused(bad, Fault::SeriesOpen(0)), Quantity::SeriesContacts);
    assert_eq!(refused(bad, Fault::SeriesOpen(3)), Quantity::SeriesContacts);
    let negative = Fault::ContactResistance(ohms(-1.0));
    assert_eq!(refused(good, negative), Quantity::Resistance);
}

proptest! {
    /// The lower the meter's resistance, the lower its reading: across resistances
    /// and one kind of reactance a load never raises what is between the leads.
    #[test]
    fn a_meter_that_loads_more_reads_no_more(
        fault in 0..15usize, a in 0..12usize, b in 0..12usize, calling: bool,
        r in 3.0..7.0f64, less in 0.0..3.0f64,
    ) {
        let circuit = Circuit::usual(resistive(120.0, 15.0), true);
        let fault = circuit.faults()[fault];
        let state = State { calling, armature: Armature::Seated, coil_lifted: false };
        let at = leads(Point::ALL[a], Point::ALL[b]);
        let by = |power: f64| {
            let input = Input { resistance: ohms(10f64.powf(power)), capacitance: pico(0.0) };
            number(read(&circuit, state, &[fault], at, Meter::HighImpedance(input)).unwrap())
        };
        let (high, low) = (by(r), by(r - less));
        prop_assert!(low <= high * (1.0 + 1e-6) + 1e-7, "{low} over {high}");
    }

    /// The voltages across the parts in series can't be less than the supply.
    #[test]
    fn drops_round_the_loop_reach_the_supply(fault in 0..15usize, calling: bool) {
        let circuit = Circuit::usual(Coil::nameplate(volts(120.0), va(15.0)), true);
        let fault = circuit.faults()[fault];
        let state = State { calling, ..State::default() };
        let input = Input { resistance: ohms(1e12), capacitance: pico(0.0) };
        let volts = |a, b| {
            number(read(&circuit, state, &[fault], leads(a, b), Meter::HighImpedance(input)).unwrap())
        };
        let mut loop_points = circuit.points();
        loop_points.retain(|p| *p != Point::RelayOther);
        let sum: f64 = loop_points.windows(2).map(|p| volts(p[0], p[1])).sum();
        let whole = volts(Point::SupplyHot, Point::SupplyReturn);
        prop_assert!(sum >= whole * 0.98 - 1e-6, "{sum} below {whole}");
    }
}
