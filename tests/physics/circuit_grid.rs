//! The makeup control circuit against the circuit simulator.

use coldsump::physics::circuit::*;
use coldsump::quantity::Ratio;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::ohm;
use uom::si::ratio::ratio;

use crate::circuit::{amperes, hz, leads, ohms, pico, va, volts};
use crate::grid::{Accuracy as Checked, Grid};
use crate::{m, near, part};

/// The circuits of the reference; its script has the same.
fn reference_circuit(name: &str) -> Circuit {
    let coil = |v: f64, apparent: f64, pf: f64, inrush: f64, inrush_pf: f64| Coil {
        rated: volts(v),
        apparent_power: va(apparent),
        power_factor: part(pf),
        inrush: part(inrush),
        inrush_power_factor: part(inrush_pf),
    };
    let (coil, source, contacts, wire, runs, strays, hertz, neighbour) = match name {
        "bakery" => (
            coil(24.0, 10.0, 0.4, 5.0, 0.8),
            1.2,
            0,
            Wire::Awg18,
            (12.0, 30.0),
            (80.0, 80.0),
            60.0,
            24.0,
        ),
        "beside" => (
            coil(24.0, 20.0, 0.5, 4.0, 0.7),
            0.6,
            2,
            Wire::Awg16,
            (40.0, 60.0),
            (90.0, 40.0),
            60.0,
            120.0,
        ),
        "mains" => (
            coil(120.0, 20.0, 0.35, 6.0, 0.75),
            0.3,
            1,
            Wire::Awg14,
            (20.0, 45.0),
            (80.0, 60.0),
            60.0,
            120.0,
        ),
        "metric" => (
            coil(230.0, 10.0, 0.45, 3.0, 0.9),
            0.5,
            3,
            Wire::Mm150,
            (15.0, 50.0),
            (100.0, 50.0),
            50.0,
            230.0,
        ),
        _ => panic!("{name}"),
    };
    let small = coil.rated < volts(100.0);
    let no = matches!(name, "bakery" | "mains");
    Circuit {
        supply: Supply {
            voltage: coil.rated,
            frequency: hz(hertz),
            impedance: ohms(source),
            transformer: small,
        },
        fuse: amperes(100.0),
        series_contacts: contacts,
        throw: if no {
            Throw::NormallyOpen
        } else {
            Throw::NormallyClosed
        },
        cable: Cable {
            wire,
            to_relay: m(runs.0),
            to_coil: m(runs.1),
            stray_live: pico(strays.0),
            stray_return: pico(strays.1),
            neighbour: volts(neighbour),
        },
        coil,
    }
}

fn reference_fault(name: &str, size: Option<f64>) -> Fault {
    let size = size.unwrap_or(f64::NAN);
    match name {
        "series-open" => Fault::SeriesOpen(size as u8),
        "contact-resistance" => Fault::ContactResistance(ohms(size)),
        "coil-shorted" => Fault::CoilShorted(Ratio::new::<ratio>(size)),
        "feed-floating" => Fault::FeedFloating(part(size)),
        "feed-loose" => Fault::FeedLoose(ohms(size)),
        "return-loose" => Fault::ReturnLoose(ohms(size)),
        "output-leakage" => Fault::OutputLeakage(amperes(size)),
        _ => word(name),
    }
}

fn word<T: serde::de::DeserializeOwned>(name: &str) -> T {
    serde_json::from_str(&format!("\"{name}\"")).unwrap_or_else(|_| panic!("{name}"))
}

fn reference_meter(name: &str) -> Meter {
    let input = |r: f64, c: f64| Input {
        resistance: ohms(r),
        capacitance: pico(c),
    };
    match name {
        "high" => Meter::HighImpedance(input(10e6, 100.0)),
        "middle" => Meter::HighImpedance(input(1e6, 0.0)),
        "low" => Meter::LowImpedance(input(3e3, 0.0)),
        "clamp" => Meter::Clamp,
        "ohms" => Meter::Ohmmeter,
        _ => panic!("{name}"),
    }
}

/// Against the reference grid; also for the docs' table.
pub fn accuracy() -> Vec<Checked> {
    let grid = Grid::read(include_str!("../reference/circuit.csv"));
    let of = |quantity, tolerance, unit| Checked::of(quantity, "ngspice", tolerance, unit);
    let mut big = of("Volts between two terminals", 0.1, "%");
    let mut small = of("Volts between two terminals, below 1 mV", 1e-6, "V");
    let mut current = of("Amperes at a terminal", 0.1, "%");
    let mut tiny = of("Amperes at a terminal, below 10 uA", 1e-8, "A");
    let mut resistance = of("Ohms between two terminals, dead", 0.1, "%");
    let mut open = 0;
    for row in grid.rows() {
        let circuit = reference_circuit(row.word("circuit"));
        let state = State {
            calling: row.number("calling") > 0.5,
            armature: word(row.word("armature")),
            coil_lifted: row.number("lifted") > 0.5,
        };
        let fault = reference_fault(row.word("fault"), row.maybe("size"));
        let at = leads(word(row.word("first")), word(row.word("second")));
        let meter = reference_meter(row.word("meter"));
        let got = read(&circuit, state, &[fault], at, meter).unwrap();
        match (got, row.maybe("reading")) {
            (Reading::Volts(v), Some(want)) if want >= 1e-3 => {
                big.point(v.get::<volt>(), want, || row.said());
            }
            (Reading::Volts(v), Some(want)) => small.point(v.get::<volt>(), want, || row.said()),
            (Reading::Amperes(i), Some(want)) if want >= 1e-5 => {
                current.point(i.get::<ampere>(), want, || row.said());
            }
            (Reading::Amperes(i), Some(want)) => {
                tiny.point(i.get::<ampere>(), want, || row.said());
            }
            (Reading::Ohms(r), Some(want)) if want > 0.0 => {
                resistance.point(r.get::<ohm>(), want, || row.said());
            }
            (Reading::Ohms(r), Some(_)) => near(r.get::<ohm>(), 0.0, 1e-6, &row.said()),
            (Reading::OpenLine, None) => open += 1,
            (got, _) => panic!("{got:?} for {}", row.said()),
        }
    }
    assert!(open > 30, "the grid has {open} open lines");
    vec![big, small, current, tiny, resistance]
}

#[test]
fn readings_agree_with_the_simulator() {
    for checked in accuracy() {
        checked.held();
    }
}
