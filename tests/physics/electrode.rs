//! The electrode level sensor.

use coldsump::physics::electrode::*;
use coldsump::physics::{Error, Quantity};
use coldsump::quantity::{ElectricalConductivity, ElectricalResistance, Length};
use proptest::prelude::*;
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::electrical_resistance::ohm;
use uom::si::length::millimeter;
use uom::si::ratio::ratio;

use crate::circuit::{hz, ohms, pico};
use crate::grid::{Accuracy, Grid};
use crate::{m, near, part, within_part};

fn mm(v: f64) -> Length {
    Length::new::<millimeter>(v)
}

fn us_cm(v: f64) -> ElectricalConductivity {
    ElectricalConductivity::new::<siemens_per_meter>(1e-4 * v)
}

fn rods() -> Shape {
    Shape::RodPair {
        diameter: mm(6.0),
        spacing: mm(40.0),
    }
}

fn tight() -> Leakage {
    Leakage {
        insulation: ohms(1e12),
        capacitance: pico(0.0),
        frequency: hz(60.0),
    }
}

fn film(thickness: f64, conductivity: f64) -> Film {
    Film {
        thickness: mm(thickness),
        path: mm(40.0),
        width: mm(20.0),
        conductivity: us_cm(conductivity),
    }
}

/// Rods 6 mm across and 40 mm apart, a tip, a rod in a 100 mm pipe and one rod
/// to the basin, computed by hand from standard potential theory (formulas
/// from memory).
#[test]
fn resistance_of_the_water() {
    let pipe = Shape::RodInPipe {
        diameter: mm(6.0),
        bore: mm(100.0),
    };
    let single = Shape::RodToBasin { diameter: mm(6.0) };
    for (kappa, l10, l25, l50, l150, coax, tip, body) in [
        (
            10.0, 82_270.0, 32_908.0, 16_454.0, 5485.0, 8955.0, 53_052.0, 15_957.0,
        ),
        (
            50.0, 16_454.0, 6582.0, 3291.0, 1097.0, 1791.0, 10_610.0, 3191.0,
        ),
        (300.0, 2742.0, 1097.0, 548.0, 183.0, 299.0, 1768.0, 532.0),
        (500.0, 1645.0, 658.0, 329.0, 110.0, 179.0, 1061.0, 319.0),
        (1500.0, 548.0, 219.0, 110.0, 37.0, 60.0, 354.0, 106.0),
        (2500.0, 329.0, 132.0, 66.0, 22.0, 36.0, 212.0, 64.0),
    ] {
        let of = |shape: Shape, l| shape.resistance(mm(l), us_cm(kappa)).unwrap().get::<ohm>();
        for (got, want) in [
            (of(rods(), 10.0), l10),
            (of(rods(), 25.0), l25),
            (of(rods(), 50.0), l50),
            (of(rods(), 150.0), l150),
            (of(pipe, 50.0), coax),
            (touching(mm(6.0), us_cm(kappa)).unwrap().get::<ohm>(), tip),
            (of(single, 25.0), body),
        ] {
            near(got, want, 0.51, "ohm");
        }
    }
}

/// A film 40 mm long and 20 mm wide, computed by hand.
#[test]
fn resistance_of_a_film() {
    for (conductivity, thickness, kilohm) in [
        (1500.0, 0.05, 267.0),
        (1500.0, 0.2, 66.7),
        (1500.0, 1.0, 13.3),
        (10_000.0, 0.2, 10.0),
        (10_000.0, 1.0, 2.0),
    ] {
        let r = film(thickness, conductivity).resistance().unwrap();
        within_part(r.get::<ohm>(), 1000.0 * kilohm, 0.005, "film");
    }
}

/// Water of 1500 uS/cm, rods in 50 mm of foam: computed by hand with the form
/// of Feitosa et al. 2005 (from memory).
#[test]
fn resistance_of_foam() {
    for (liquid, kilohm) in [(0.02, 14.5), (0.05, 5.1), (0.10, 2.2), (0.20, 0.92)] {
        let foam = Foam {
            liquid: part(liquid),
            wetted: mm(50.0),
        };
        let probe = Probe {
            foam: Some(foam),
            ..bare()
        };
        let r = probe.resistance(Condition::Foam).unwrap().unwrap();
        within_part(r.get::<ohm>(), 1000.0 * kilohm, 0.025, "foam");
    }
}

/// Limits: all liquid conducts as the liquid, dry foam as a third of its liquid
/// part (Lemlich, from memory).
#[test]
fn foam_at_its_limits() {
    let sigma = |liquid| {
        let foam = Foam {
            liquid: part(liquid),
            wetted: mm(50.0),
        };
        foam.relative_conductivity().unwrap().get::<ratio>()
    };
    near(sigma(1.0), 1.0, 1e-12, "liquid");
    within_part(sigma(1e-4), 1e-4 / 3.0, 0.001, "Lemlich");
}

/// A coat of 1e-4 S/m on 25 mm of a 6 mm rod, computed by hand: 0.1 mm adds
/// 2.1 kohm, 1 mm 21 kohm.
#[test]
fn resistance_of_scale() {
    for (thickness, kilohm) in [(0.1, 2.1), (1.0, 21.0)] {
        let scale = Scale {
            thickness: mm(thickness),
            conductivity: ElectricalConductivity::new::<siemens_per_meter>(1e-4),
        };
        let r = scale.resistance(mm(6.0), mm(25.0)).unwrap();
        within_part(r.get::<ohm>(), 1000.0 * kilohm, 0.015, "scale");
    }
}

fn bare() -> Probe {
    Probe {
        shape: rods(),
        immersion: mm(50.0),
        water: Water::Cycled,
        film: None,
        foam: None,
        scale: None,
        leakage: tight(),
    }
}

fn fooled_by(probe: &Probe, sensitivity: f64) -> Vec<Condition> {
    let mut all = probe.sensed(ohms(sensitivity)).unwrap();
    all.retain(|s| s.fooled);
    all.into_iter().map(|s| s.condition).collect()
}

/// Computed by hand: at 10 to 100 kohm film and foam both read wet; at 0.5 to 2
/// kohm neither does and water still is seen.
#[test]
fn a_sensitive_relay_is_fooled_and_a_dull_one_is_not() {
    let probe = Probe {
        film: Some(film(0.2, 10_000.0)),
        foam: Some(Foam {
            liquid: part(0.05),
            wetted: mm(50.0),
        }),
        ..bare()
    };
    assert_eq!(fooled_by(&probe, 50e3), [Condition::Film, Condition::Foam]);
    assert_eq!(fooled_by(&probe, 1e3), []);
    let (low, high) = probe.safe_settings(part(2.0)).unwrap().expect("a setting");
    within_part(low.get::<ohm>(), 219.0, 0.01, "low end");
    within_part(high.get::<ohm>(), 2550.0, 0.02, "high end");
    for setting in [low, high] {
        assert_eq!(fooled_by(&probe, setting.get::<ohm>()), []);
    }
    // A wet foam in front of a coated rod leaves none.
    let hopeless = Probe {
        foam: Some(Foam {
            liquid: part(0.2),
            wetted: mm(50.0),
        }),
        scale: Some(Scale {
            thickness: mm(1.0),
            conductivity: ElectricalConductivity::new::<siemens_per_meter>(1e-4),
        }),
        ..probe
    };
    assert_eq!(hopeless.safe_settings(part(1.0)).unwrap(), None);
    assert_eq!(
        fooled_by(&hopeless, 2e3),
        [Condition::Foam, Condition::Scaled]
    );
}

#[test]
fn a_damp_cap_and_a_long_cable_read_wet_too() {
    let damp = Probe {
        leakage: Leakage {
            insulation: ohms(40e3),
            ..tight()
        },
        ..bare()
    };
    assert_eq!(fooled_by(&damp, 50e3), [Condition::Dry]);
    // 10 nF at 60 Hz: 265 kohm.
    let long = Probe {
        leakage: Leakage {
            capacitance: pico(10_000.0),
            ..tight()
        },
        ..bare()
    };
    let dry = long.resistance(Condition::Dry).unwrap().unwrap();
    within_part(dry.get::<ohm>(), 265e3, 0.002, "cable");
    assert_eq!(fooled_by(&long, 1e6), [Condition::Dry]);
    assert_eq!(fooled_by(&long, 100e3), []);
}

#[test]
fn water_not_measured_is_taken_as_said() {
    let micro = |water: Water| 1e4 * water.conductivity().get::<siemens_per_meter>();
    near(micro(Water::Cycled), 1500.0, 1e-9, "cycled");
    near(micro(Water::Mains), 300.0, 1e-9, "mains");
    near(
        micro(Water::Measured(us_cm(820.0))),
        820.0,
        1e-9,
        "measured",
    );
}

#[test]
fn what_is_out_of_range_is_said() {
    let quantity = |result: Result<ElectricalResistance, Error>| match result {
        Err(Error::OutOfRange { quantity, .. }) => quantity,
        other => panic!("{other:?}"),
    };
    let touching_rods = Shape::RodPair {
        diameter: mm(6.0),
        spacing: mm(6.0),
    };
    let size = Quantity::ElectrodeSize;
    assert_eq!(
        quantity(touching_rods.resistance(mm(50.0), us_cm(300.0))),
        size
    );
    assert_eq!(quantity(rods().resistance(mm(5.0), us_cm(300.0))), size);
    let kappa = Quantity::Conductivity;
    assert_eq!(quantity(rods().resistance(mm(50.0), us_cm(0.5))), kappa);
    assert_eq!(quantity(touching(mm(6.0), us_cm(-1.0))), kappa);
}

proptest! {
    /// Deeper or saltier water never reads more ohms.
    #[test]
    fn more_water_conducts_more(
        shape in 0..4usize, d in 2.0..20.0f64, gap in 1.2..20.0f64,
        l in 1.0..40.0f64, more in 1.0..5.0f64, kappa in 10.0..9000.0f64,
    ) {
        let (diameter, far) = (mm(d), mm(d * gap));
        let shape = [
            Shape::RodPair { diameter, spacing: far },
            Shape::RodPairDeep { diameter, spacing: far },
            Shape::RodInPipe { diameter, bore: far },
            Shape::RodToBasin { diameter },
        ][shape];
        let of = |l: f64, k: f64| shape.resistance(mm(l * d), us_cm(k)).unwrap().get::<ohm>();
        let r = of(l, kappa);
        prop_assert!(r > 0.0);
        prop_assert!(of(l, kappa * more) <= r * (1.0 + 1e-12));
        if l > 2.0 {
            prop_assert!(of(l * more, kappa) <= r * (1.0 + 1e-12));
        }
    }

    /// What the settings promise holds at both ends, for any film, foam and coat.
    #[test]
    fn a_safe_setting_is_safe(
        film_mm in 0.02..2.0f64, film_k in 300.0..20_000.0f64, liquid in 0.01..0.3f64,
        coat in 0.0..0.5f64, margin in 1.0..5.0f64, kappa in 100.0..5000.0f64,
    ) {
        let probe = Probe {
            water: Water::Measured(us_cm(kappa)),
            film: Some(film(film_mm, film_k)),
            foam: Some(Foam { liquid: part(liquid), wetted: mm(50.0) }),
            scale: Some(Scale {
                thickness: mm(coat),
                conductivity: ElectricalConductivity::new::<siemens_per_meter>(1e-3),
            }),
            leakage: Leakage::usual(),
            ..bare()
        };
        if let Some((low, high)) = probe.safe_settings(part(margin)).unwrap() {
            for setting in [low * 1.000001, high * 0.999999] {
                prop_assert_eq!(fooled_by(&probe, setting.get::<ohm>()), []);
            }
        } else {
            let all = probe.sensed(ohms(1e3)).unwrap();
            let ends = |wet| all.iter().filter(move |s| s.condition.wet() == Some(wet));
            let worst = ends(true).map(|s| s.resistance.get::<ohm>()).fold(0.0, f64::max);
            let best = ends(false).map(|s| s.resistance.get::<ohm>()).fold(f64::MAX, f64::min);
            prop_assert!(worst * margin > best / margin);
        }
    }
}

/// Against the numerical grid; also for the docs' table.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/electrode.csv"));
    let of = |quantity, reference, tolerance| Accuracy::of(quantity, reference, tolerance, "%");
    let mut pair = of(
        "Two rods in water that ends at their tips",
        "Laplace, multipoles",
        1.0,
    );
    let mut deep = of("Two rods in deep water", "Laplace, rings", 6.0);
    let mut single = of("One rod to the basin", "Laplace, rings", 3.0);
    for row in grid.rows() {
        let diameter = m(row.number("diameter_m"));
        let far = row.maybe("other_m").map(m);
        let shape = match (row.word("case"), far) {
            ("pair", Some(spacing)) => Shape::RodPair { diameter, spacing },
            ("deep", Some(spacing)) => Shape::RodPairDeep { diameter, spacing },
            ("single", None) => Shape::RodToBasin { diameter },
            _ => panic!("{}", row.said()),
        };
        let length = row.maybe("immersion_m").unwrap_or(0.1);
        let one = ElectricalConductivity::new::<siemens_per_meter>(1.0);
        let got = shape.resistance(m(length), one).unwrap().get::<ohm>() * length;
        let line = match shape {
            Shape::RodPair { .. } => &mut pair,
            Shape::RodPairDeep { .. } => &mut deep,
            _ => &mut single,
        };
        line.point(got, row.number("shape_factor"), || row.said());
    }
    vec![pair, deep, single]
}

#[test]
fn rods_agree_with_the_numerical_solution() {
    for checked in accuracy() {
        checked.held();
    }
}
