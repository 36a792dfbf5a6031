//! The tower off its design point, and Merkel numbers over a grid.

use coldsump::physics::air::saturated_enthalpy;
use coldsump::physics::tower::{Carried, DesignedTower, Duty, Prediction, Today};
use coldsump::physics::{Error, NoSolution, Quantity};
use proptest::prelude::*;
use uom::si::available_energy::btu_it_per_pound;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::degree_fahrenheit as fahrenheit_interval;

use crate::grid::{Accuracy, Grid};
use crate::{SEA, c, df, duty_of, f, near, nominal, pa, part, to_c, to_f, within_part};

fn today(wet: f64, carried: Carried, water: f64, air: f64) -> Today {
    Today {
        wet_bulb: f(wet),
        carried,
        water: part(water),
        air: part(air),
        pressure: pa(SEA),
    }
}

fn at(wet: f64, heat: f64, water: f64, air: f64) -> Prediction {
    let today = today(wet, Carried::Heat(part(heat)), water, air);
    nominal().predict(&today).unwrap()
}

/// Computed with scipy over ASHRAE psychrometrics with Buck's factor (enthalpy
/// 0.1 % from CoolProp's, so 0.05 F is allowed): a tower of 95/85/78 F at L/G
/// 1.2, n = 0.6.
#[test]
fn every_row_of_the_off_design_table() {
    for (wet, cold) in [
        (55.0, 69.00),
        (60.0, 72.29),
        (65.0, 75.68),
        (70.0, 79.17),
        (75.0, 82.78),
        (78.0, 85.00),
        (80.0, 86.50),
    ] {
        let got = at(wet, 1.0, 1.0, 1.0);
        near(to_f(got.leaving), cold, 0.05, "leaving against wet bulb");
        near(
            got.approach.get::<fahrenheit_interval>(),
            cold - wet,
            0.05,
            "approach",
        );
    }
    for (range, cold) in [
        (5.0, 81.97),
        (8.0, 83.88),
        (10.0, 85.0),
        (12.0, 86.01),
        (15.0, 87.36),
    ] {
        let got = at(78.0, range / 10.0, 1.0, 1.0);
        near(to_f(got.leaving), cold, 0.05, "leaving against heat");
        near(got.range.get::<fahrenheit_interval>(), range, 1e-9, "range");
        let same = today(78.0, Carried::Range(df(range)), 1.0, 1.0);
        near(
            to_f(nominal().predict(&same).unwrap().leaving),
            cold,
            0.05,
            "by range",
        );
    }
    for (air, l_over_g, merkel, cold) in [
        (1.0, 1.20, 1.179, 85.00),
        (0.75, 1.60, 0.992, 87.49),
        (0.5, 2.40, 0.778, 92.01),
        (0.35, 3.43, 0.628, 97.07),
    ] {
        let got = at(78.0, 1.0, 1.0, air);
        near(got.water_air_ratio.get::<ratio>(), l_over_g, 0.005, "L/G");
        within_part(got.merkel_number.get::<ratio>(), merkel, 2e-3, "KaV/L");
        near(to_f(got.leaving), cold, 0.05, "leaving against air");
    }
    for (water, range, cold, hot) in [
        (1.0, 10.0, 85.00, 95.00),
        (0.8, 12.5, 84.43, 96.93),
        (0.6, 16.7, 83.57, 100.24),
        (0.5, 20.0, 82.98, 102.98),
        (0.4, 25.0, 82.21, 107.21),
    ] {
        let got = at(78.0, 1.0, water, 1.0);
        near(got.range.get::<fahrenheit_interval>(), range, 0.05, "range");
        near(to_f(got.leaving), cold, 0.05, "leaving against water");
        near(to_f(got.entering), hot, 0.05, "entering against water");
    }
}

/// Cooling Tower Thermal Design Manual (web edition), example 2-6: the four
/// driving differences of 104/89/81 F at L/G 1.6492, as 1/Btu per lb.
#[test]
fn driving_differences_of_the_design_manual() {
    let h = |t: f64| {
        saturated_enthalpy(f(t), pa(SEA))
            .unwrap()
            .get::<btu_it_per_pound>()
    };
    let rows = [
        (90.5, 0.1065),
        (95.0, 0.1154),
        (98.0, 0.1159),
        (102.5, 0.1069),
    ];
    let mut sum = 0.0;
    for (water, inverse) in rows {
        let got = 1.0 / (h(water) - h(81.0) - 1.6492 * (water - 89.0));
        within_part(got, inverse, 3e-3, "1 / (hw - ha)");
        sum += got;
    }
    within_part(sum, 0.4447, 2e-3, "sum");
    within_part(sum * 15.0 / 4.0, 1.6677, 2e-3, "KaV/L");
}

/// Computed with scipy over ASHRAE psychrometrics with Buck's factor, cp
/// 4.186: integral and four points, in F.
#[test]
fn merkel_numbers_by_the_same_psychrometrics() {
    for (hot, cold, wet, l_over_g, quad, four) in [
        (104.0, 89.0, 81.0, 1.6492, 1.6680, 1.6666),
        (105.0, 85.0, 78.0, 0.97, 1.6970, 1.6977),
        (95.0, 85.0, 78.0, 1.2, 1.1791, 1.1788),
    ] {
        let d = Duty {
            entering: f(hot),
            leaving: f(cold),
            wet_bulb: f(wet),
            water_air_ratio: part(l_over_g),
            pressure: pa(SEA),
        };
        let exact = d.merkel_number_integrated().unwrap().get::<ratio>();
        within_part(exact, quad, 1e-3, "integral");
        within_part(
            d.merkel_number().unwrap().get::<ratio>(),
            four,
            1e-3,
            "four points",
        );
    }
}

/// Effectiveness-NTU on the air side in 40 steps (Jaber & Webb 1989, ASME J.
/// Heat Transfer 111:837, split the range alike; the form is from memory): an
/// independent way from KaV/L to heat, which must meet the integral.
#[test]
fn effectiveness_ntu_in_steps_meets_the_integral() {
    let h = |t: f64| saturated_enthalpy(c(t), pa(SEA)).unwrap().value / 1000.0;
    for (hot, cold, wet, l_over_g) in [(35.0, 29.5, 25.5, 1.2), (40.0, 30.0, 25.0, 1.0)] {
        let (n, cp) = (40, 4.1868);
        let step = (hot - cold) / f64::from(n);
        let (mut air, mut merkel) = (h(wet), 0.0);
        for i in 0..n {
            let t = cold + step * f64::from(i);
            let slope = (h(t + step) - h(t)) / step;
            let capacity = slope / (l_over_g * cp);
            let heat = l_over_g * cp * step;
            // q = eps (hs(hot end) - h): solved for NTU of this slice of fill.
            let eps = heat / (h(t + step) - air);
            let ntu = ((1.0 - eps * capacity) / (1.0 - eps)).ln() / (1.0 - capacity);
            // Counterflow on the air side; KaV/L is NTU over L/G.
            merkel += ntu / l_over_g;
            air += heat;
        }
        let d = Duty {
            entering: c(hot),
            leaving: c(cold),
            wet_bulb: c(wet),
            water_air_ratio: part(l_over_g),
            pressure: pa(SEA),
        };
        let exact = d.merkel_number_integrated().unwrap().get::<ratio>();
        within_part(merkel, exact, 1e-3, "KaV/L by steps of effectiveness");
    }
}

#[test]
fn what_no_tower_carries_is_an_error() {
    let tower = nominal();
    let of = |today| tower.predict(&today).unwrap_err();
    let hot = today(80.0, Carried::Heat(part(3.0)), 0.3, 0.1);
    assert!(matches!(
        of(hot),
        Error::OutOfRange {
            quantity: Quantity::Range,
            ..
        }
    ));
    let airless = today(80.0, Carried::Heat(part(2.0)), 1.0, 0.1);
    assert_eq!(of(airless), Error::NoSolution(NoSolution::BeyondTower));
    let winter = today(5.0, Carried::Heat(part(0.2)), 1.0, 1.0);
    assert_eq!(of(winter), Error::NoSolution(NoSolution::Freezing));
    let none = today(70.0, Carried::Heat(part(0.0)), 1.0, 1.0);
    assert!(matches!(
        of(none),
        Error::OutOfRange {
            quantity: Quantity::LoadFraction,
            ..
        }
    ));
}

proptest! {
    /// The predicted duty asks for exactly what the characteristic offers, and
    /// a tower designed on the prediction is the same tower.
    #[test]
    fn a_prediction_designs_the_same_tower(
        wet in 50.0..80.0f64, heat in 0.4..1.4f64, water in 0.6..1.3f64, air in 0.6..1.2f64,
    ) {
        let got = at(wet, heat, water, air);
        let duty = Duty {
            entering: got.entering,
            leaving: got.leaving,
            wet_bulb: f(wet),
            water_air_ratio: got.water_air_ratio,
            pressure: pa(SEA),
        };
        let again = DesignedTower::new(&duty).unwrap();
        let (a, b) = (again.characteristic().constant(), nominal().characteristic().constant());
        prop_assert!((a / b - 1.0).abs() < 1e-6, "{a} {b}");
    }

    /// Less air or more heat: warmer. Less water at the same heat: colder off
    /// the tower, hotter onto it.
    #[test]
    fn each_fault_moves_the_water_its_own_way(
        wet in 50.0..80.0f64, heat in 0.5..1.2f64, water in 0.5..1.2f64, air in 0.5..1.2f64,
    ) {
        let here = at(wet, heat, water, air);
        prop_assert!(at(wet, heat, water, air - 0.1).leaving > here.leaving);
        prop_assert!(at(wet, heat + 0.1, water, air).leaving > here.leaving);
        prop_assert!(at(wet + 1.0, heat, water, air).leaving > here.leaving);
        let low = at(wet, heat, water - 0.1, air);
        prop_assert!(low.leaving < here.leaving && low.entering > here.entering);
    }
}

/// Against CoolProp 8.0.0; see `tests/reference/merkel.py` and
/// `tests/reference/tower_prediction.py`.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/merkel.csv"));
    let reference = "scipy over CoolProp 8.0.0";
    let name = "KaV/L by Merkel up to 3, driven by 5 kJ/kg or more";
    let mut exact = Accuracy::of(name, reference, 0.3, "%");
    let mut four = Accuracy::of(name, "four points over CoolProp 8.0.0", 0.3, "%");
    let mut close = Accuracy::of(
        "KaV/L by Merkel above 3 or closer to a pinch",
        reference,
        2.0,
        "%",
    );
    for row in grid.rows() {
        let d = duty_of(&row);
        let got = d.merkel_number_integrated().unwrap().get::<ratio>();
        if row.number("least_drive_kj_kg") < 5.0 || row.number("integral") > 3.0 {
            close.point(got, row.number("integral"), || row.said());
            continue;
        }
        exact.point(got, row.number("integral"), || row.said());
        let got = d.merkel_number().unwrap().get::<ratio>();
        four.point(got, row.number("four_point"), || row.said());
    }
    let grid = Grid::read(include_str!("../reference/tower_prediction.csv"));
    let mut cold = Accuracy::of("Leaving water predicted", reference, 0.05, "K");
    let mut hot = Accuracy::of("Entering water predicted", reference, 0.05, "K");
    for row in grid.rows() {
        let pressure = pa(row.number("pressure_pa"));
        let design = Duty {
            entering: c(row.number("design_entering_c")),
            leaving: c(row.number("design_leaving_c")),
            wet_bulb: c(row.number("design_wet_bulb_c")),
            water_air_ratio: part(row.number("design_water_air_ratio")),
            pressure,
        };
        let today = Today {
            wet_bulb: c(row.number("wet_bulb_c")),
            carried: Carried::Heat(part(row.number("heat"))),
            water: part(row.number("water")),
            air: part(row.number("air")),
            pressure,
        };
        let got = DesignedTower::new(&design)
            .unwrap()
            .predict(&today)
            .unwrap();
        cold.point(to_c(got.leaving), row.number("leaving_c"), || row.said());
        hot.point(to_c(got.entering), row.number("entering_c"), || row.said());
    }
    vec![exact, four, close, cold, hot]
}
