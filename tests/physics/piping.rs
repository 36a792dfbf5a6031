//! Fill line, valves and pump suction.

use coldsump::physics::piping::valve::{FlowCoefficient, Service};
use coldsump::physics::piping::{
    FillLine, Liquid, ServoOpening, friction_factor, servo_opening, suction,
};
use coldsump::physics::{Error, NoSolution};
use coldsump::quantity::{DynamicViscosity, GaugePressure, MassDensity};
use proptest::prelude::*;
use uom::si::dynamic_viscosity::pascal_second;
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{kilopascal, pascal};
use uom::si::ratio::ratio;
use uom::si::velocity::meter_per_second;
use uom::si::volume_rate::{
    cubic_meter_per_hour, cubic_meter_per_second, gallon_per_minute, liter_per_second,
};

use crate::grid::{Accuracy, Grid};
use crate::{c, m, m3_s, near, pa, part, within_part};

const PSI: f64 = 6894.757;

fn liquid(density: f64, viscosity: f64, vapour: f64, critical: f64) -> Liquid {
    Liquid {
        density: MassDensity::new::<kilogram_per_cubic_meter>(density),
        viscosity: DynamicViscosity::new::<pascal_second>(viscosity),
        vapour_pressure: pa(vapour),
        critical_pressure: pa(critical),
    }
}

fn mains_water() -> Liquid {
    liquid(999.0, 1.14e-3, 1.7e3, 22.064e6)
}

fn kv(v: f64) -> FlowCoefficient {
    FlowCoefficient::from_kv(v)
}

/// The supply line of the check below: 8 elbows at 0.75, 2 gate valves at
/// 0.17, entry 0.5 and exit 1.
fn supply() -> FillLine {
    FillLine {
        mains: GaugePressure::from_pascals(350e3),
        lift: m(6.0),
        bore: m(0.0262),
        length: m(30.0),
        roughness: m(1.5e-6),
        fittings: part(8.0 * 0.75 + 2.0 * 0.17 + 1.5),
        fixed_loss: pa(50e3),
        strainer: kv(14.0),
        solenoid: kv(9.5),
        water: mains_water(),
    }
}

/// IEC 60534-2-1 examples 1 and 2 (as quoted in the test suite of the open
/// library fluids): 360 m3/h of water, 680 to 220 kPa. Kv 165 in a globe valve
/// of FL 0.9, not choked; 238 in a segmented ball of FL 0.6, choked.
#[test]
fn valves_of_the_standard() {
    let water = liquid(965.4, 3.1472e-4, 70.1e3, 22.12e6);
    for (recovery, want, choked) in [(0.9, 164.995, false), (0.6, 238.06, true)] {
        let service = Service {
            inlet: pa(680e3),
            outlet: pa(220e3),
            recovery: part(recovery),
            liquid: water,
        };
        let got = service.needed(m3_s(0.1)).unwrap();
        within_part(got.coefficient.kv(), want, 1e-3, "Kv");
        assert_eq!(got.choked, choked);
        let back = service.flow(got.coefficient).unwrap();
        within_part(back.flow.get::<cubic_meter_per_hour>(), 360.0, 1e-9, "flow");
        assert_eq!(back.choked, choked);
    }
}

/// From the definition of Cv, computed with fluids 1.3.1 for the conversion:
/// Cv 11 (Kv 9.515) at 30 psi passes 60.25 gpm, 13.68 m3/h.
#[test]
fn a_fill_valve_at_thirty_psi() {
    let valve = FlowCoefficient::from_cv(11.0);
    within_part(valve.kv(), 9.515, 1e-4, "Kv");
    within_part(valve.cv(), 11.0, 1e-12, "Cv");
    let service = Service {
        inlet: pa(101_325.0 + 30.0 * PSI),
        outlet: pa(101_325.0),
        recovery: part(0.9),
        liquid: mains_water(),
    };
    let passed = service.flow(valve).unwrap();
    assert!(!passed.choked);
    within_part(passed.flow.get::<gallon_per_minute>(), 60.25, 5e-4, "gpm");
    within_part(
        passed.flow.get::<cubic_meter_per_hour>(),
        13.68,
        5e-4,
        "m3/h",
    );
}

/// Computed with fluids 1.3.1 (friction factor) and SciPy 1.17.1 (brentq).
#[test]
fn the_supply_line() {
    let got = supply().flow().unwrap();
    near(got.flow.get::<liter_per_second>(), 1.827, 1e-3, "L/s");
    near(got.flow.get::<gallon_per_minute>(), 28.96, 0.02, "gpm");
    near(got.velocity.get::<meter_per_second>(), 3.39, 5e-3, "m/s");
    within_part(got.reynolds.get::<ratio>(), 77_800.0, 1e-3, "Re");
    near(got.friction_factor.get::<ratio>(), 0.0192, 5e-5, "f");
    for (drop, want) in [
        (got.drops.pipe, 126.3),
        (got.drops.fittings, 45.0),
        (got.drops.solenoid, 47.9),
        (got.drops.strainer, 22.0),
        (got.drops.lift, 58.8),
        (got.drops.fixed, 50.0),
    ] {
        near(drop.get::<kilopascal>(), want, 0.08, "drop, kPa");
    }
    near(got.drops.total().get::<kilopascal>(), 350.0, 1e-6, "all");

    let fouled = FillLine {
        strainer: kv(2.0),
        ..supply()
    };
    let slow = fouled.flow().unwrap().flow;
    near(slow.get::<liter_per_second>(), 0.780, 1e-3, "fouled");
    near(slow.get::<gallon_per_minute>(), 12.4, 0.05, "fouled");
    let strainer = supply().strainer_for(slow).unwrap();
    within_part(strainer.kv(), 2.0, 1e-6, "Kv of the fouled strainer");
    let weak = FillLine {
        mains: GaugePressure::from_pascals(200e3),
        ..supply()
    };
    let flow = weak.flow().unwrap().flow;
    near(flow.get::<liter_per_second>(), 1.091, 1e-3, "weak mains");
}

#[test]
fn a_line_that_cannot_fill_says_so() {
    let high = FillLine {
        lift: m(40.0),
        ..supply()
    };
    let none = Error::NoSolution(NoSolution::NoPressure);
    assert_eq!(high.flow().unwrap_err(), none);
    assert_eq!(high.strainer_for(m3_s(1e-4)).unwrap_err(), none);
    assert_eq!(
        supply().strainer_for(m3_s(3e-3)).unwrap_err(),
        Error::NoSolution(NoSolution::MoreThanTheLine)
    );
}

/// 0.3 to 0.7 bar to open a pilot-operated valve: from memory.
#[test]
fn a_servo_valve_wants_pressure() {
    let at = |kpa: f64| servo_opening(pa(kpa * 1e3)).unwrap();
    assert_eq!(at(20.0), ServoOpening::StaysShut);
    assert_eq!(at(50.0), ServoOpening::Doubtful);
    assert_eq!(at(200.0), ServoOpening::Opens);
}

/// Computed by hand from the form of ANSI/HI 9.8 (from memory).
#[test]
fn water_over_the_suction() {
    let got = suction(m3_s(0.01136), m(0.150)).unwrap();
    near(got.velocity.get::<meter_per_second>(), 0.64, 5e-3, "m/s");
    near(got.froude.get::<ratio>(), 0.53, 5e-3, "Froude");
    near(got.submergence.get::<meter>(), 0.333, 5e-4, "S");
    let larger = suction(m3_s(0.0227), m(0.200)).unwrap();
    near(larger.submergence.get::<meter>(), 0.437, 5e-4, "S");
}

proptest! {
    #[test]
    fn the_pressures_close_and_the_strainer_comes_back(
        mains in 1e5..8e5f64, lift in -5.0..5.0f64, bore in 0.01..0.08f64, length in 0.0..300.0f64,
        strainer in 0.2..50.0f64, solenoid in 0.5..50.0f64,
    ) {
        let line = FillLine {
            mains: GaugePressure::from_pascals(mains), lift: m(lift), bore: m(bore),
            length: m(length), strainer: kv(strainer), solenoid: kv(solenoid),
            fixed_loss: pa(2e4), ..supply()
        };
        let got = line.flow().unwrap();
        prop_assert!((got.drops.total().get::<pascal>() / mains - 1.0).abs() < 1e-9);
        // A strainer that takes next to nothing can't be told from none.
        if got.drops.strainer > pa(1e-4 * mains) {
            let back = line.strainer_for(got.flow).unwrap().kv();
            prop_assert!((back / strainer - 1.0).abs() < 1e-6, "{back} for {strainer}");
        }
    }

    #[test]
    fn more_pressure_or_less_dirt_brings_more(
        mains in 1.5e5..8e5f64, strainer in 0.2..20.0f64, bore in 0.01..0.05f64,
    ) {
        let at = |mains: f64, strainer: f64, bore: f64| {
            let line = FillLine {
                mains: GaugePressure::from_pascals(mains), bore: m(bore), strainer: kv(strainer),
                ..supply()
            };
            line.flow().unwrap().flow
        };
        let flow = at(mains, strainer, bore);
        prop_assert!(at(1.01 * mains, strainer, bore) > flow);
        prop_assert!(at(mains, 1.01 * strainer, bore) > flow);
        prop_assert!(at(mains, strainer, 1.01 * bore) > flow);
    }

    #[test]
    fn friction_loss_never_falls_with_flow(re in 1.0..2e4f64, rough in 0.0..0.05f64) {
        let loss = |re: f64| {
            friction_factor(part(re), part(rough)).unwrap().get::<ratio>() * re * re
        };
        prop_assert!(loss(1.001 * re) > loss(re));
    }

    #[test]
    fn a_choked_valve_passes_no_more(inlet in 2e5..1e6f64, recovery in 0.4..1.0f64) {
        let flow = |outlet: f64| {
            let service = Service {
                inlet: pa(inlet), outlet: pa(outlet), recovery: part(recovery), liquid: mains_water(),
            };
            service.flow(kv(5.0)).unwrap()
        };
        let mut last = flow(inlet);
        for i in (0..20).rev() {
            let next = flow(inlet * f64::from(i) / 20.0);
            prop_assert!(next.flow >= last.flow);
            prop_assert!(!last.choked || next.choked && next.flow == last.flow);
            last = next;
        }
    }
}

/// Against fluids 1.3.1, SciPy 1.17.1 and CoolProp 8.0.0; see
/// `tests/reference/piping.py`.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/piping.csv"));
    let mut factors = Accuracy::of("Friction factor", "fluids 1.3.1", 0.001, "%");
    let mut flows = Accuracy::of("Fill line flow", "fluids 1.3.1, SciPy 1.17.1", 0.1, "%");
    let mut valves = Accuracy::of("Valve coefficient Kv", "fluids 1.3.1", 0.01, "%");
    let mut densities = Accuracy::of("Density of water", "CoolProp 8.0.0", 0.02, "%");
    let mut viscosities = Accuracy::of("Viscosity of water", "CoolProp 8.0.0", 0.1, "%");
    let mut vapours = Accuracy::of("Vapor pressure of water", "CoolProp 8.0.0", 0.1, "%");
    for row in grid.rows() {
        let n = |column: &str| row.number(column);
        match row.word("case") {
            "friction" => {
                let got = friction_factor(part(n("a")), part(n("b"))).unwrap();
                factors.point(got.get::<ratio>(), n("answer"), || row.said());
            }
            "line" => {
                let line = FillLine {
                    mains: GaugePressure::from_pascals(n("a")),
                    lift: m(n("b")),
                    bore: m(n("c")),
                    length: m(n("d")),
                    roughness: m(n("e")),
                    fittings: part(8.8),
                    strainer: kv(n("f")),
                    solenoid: kv(n("g")),
                    ..supply()
                };
                let got = line.flow().unwrap();
                // Between laminar and turbulent no method is right.
                if !(1990.0..4010.0).contains(&got.reynolds.get::<ratio>()) {
                    let si = got.flow.get::<cubic_meter_per_second>();
                    flows.point(si, n("answer"), || row.said());
                }
            }
            "valve" => {
                let service = Service {
                    inlet: pa(n("a")),
                    outlet: pa(n("b")),
                    recovery: part(n("c")),
                    liquid: liquid(998.0, 1e-3, 2.4e3, 22.064e6),
                };
                let got = service.needed(m3_s(n("d"))).unwrap();
                assert_eq!(got.choked, row.word("choked") == "1", "{}", row.said());
                valves.point(got.coefficient.kv(), n("answer"), || row.said());
            }
            _ => {
                let water = Liquid::water(c(n("a"))).unwrap();
                let density = water.density.get::<kilogram_per_cubic_meter>();
                densities.point(density, n("b"), || row.said());
                let viscosity = water.viscosity.get::<pascal_second>();
                viscosities.point(viscosity, n("c"), || row.said());
                let vapour = water.vapour_pressure.get::<pascal>();
                vapours.point(vapour, n("d"), || row.said());
            }
        }
    }
    vec![factors, flows, valves, densities, viscosities, vapours]
}
