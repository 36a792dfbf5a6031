//! The cooling tower.

use coldsump::physics::tower::*;
use coldsump::physics::{Error, NoSolution};
use proptest::prelude::*;
use uom::si::mass_rate::pound_per_minute;
use uom::si::ratio::ratio;
use uom::si::specific_volume::cubic_foot_per_pound;
use uom::si::temperature_interval::degree_fahrenheit as fahrenheit_interval;
use uom::si::volume_rate::cubic_foot_per_minute;

use coldsump::quantity::{MassRate, VolumeRate};

use crate::{SEA, c, df, duty, f, near, pa, part, to_f, within_part};

fn chebyshev(d: &Duty) -> f64 {
    d.merkel_number().unwrap().get::<ratio>()
}

fn integrated(d: &Duty) -> f64 {
    d.merkel_number_integrated().unwrap().get::<ratio>()
}

/// Cooling Tower Thermal Design Manual (web edition), example 2-6: KaV/L
/// 1.6677 for 104/89/81 F at L/G 1.6492.
#[test]
fn merkel_number_of_the_design_manual() {
    within_part(
        chebyshev(&duty(104.0, 89.0, 81.0, 1.6492)),
        1.6677,
        0.005,
        "KaV/L",
    );
}

/// D. Q. Kern, Process Heat Transfer (1950), example 17.2, 1.70 read from a
/// chart in 5 F steps (by way of the FOSSEE textbook companion).
#[test]
fn merkel_number_of_kern() {
    within_part(
        chebyshev(&duty(120.0, 85.0, 75.0, 0.93006)),
        1.70,
        0.05,
        "KaV/L",
    );
}

/// Perry's Chemical Engineers' Handbook, section 12: 1.70 (from memory).
#[test]
fn merkel_number_of_perry() {
    within_part(
        chebyshev(&duty(105.0, 85.0, 78.0, 0.97)),
        1.70,
        0.005,
        "KaV/L",
    );
}

/// Computed: four-point rule and scipy integration over CoolProp 8.0.0 moist
/// air. Ordering of the 80 F rows as stated in the design manual, ex. 2-4 to 2-6.
#[test]
fn merkel_number_matches_coolprop() {
    for (d, cheb, quad) in [
        (duty(104.0, 89.0, 81.0, 1.6492), 1.6690, 1.6704),
        (duty(104.0, 89.0, 80.0, 1.6492), 1.4878, 1.4889),
        (duty(104.0, 89.0, 80.0, 1.2540), 1.1685, 1.1688),
        (duty(120.0, 85.0, 75.0, 0.93006), 1.761, 1.758),
        (duty(105.0, 85.0, 78.0, 0.97), 1.6995, 1.6988),
        (duty(95.0, 85.0, 78.0, 1.0), 1.0665, 1.0665),
        (duty(95.0, 85.0, 78.0, 1.2), 1.1802, 1.1805),
        (duty(95.0, 85.0, 78.0, 1.3), 1.2501, 1.2505),
        (duty(95.0, 85.0, 78.0, 1.5), 1.4301, 1.4306),
    ] {
        within_part(chebyshev(&d), cheb, 0.003, "four-point");
        within_part(integrated(&d), quad, 0.003, "integrated");
    }
}

/// Computed with scipy integration over ASHRAE psychrometrics with Buck's factor.
#[test]
fn merkel_number_in_si_and_at_altitude() {
    let si = |entering, leaving, wet, l_over_g| Duty {
        entering: c(entering),
        leaving: c(leaving),
        wet_bulb: c(wet),
        water_air_ratio: part(l_over_g),
        pressure: pa(SEA),
    };
    for (d, quad, cheb) in [
        (si(40.0, 30.0, 25.0, 1.2), 1.4727, 1.4721),
        (si(35.0, 29.5, 25.5, 1.3), 1.2013, 1.2009),
    ] {
        within_part(integrated(&d), quad, 1e-3, "integrated");
        within_part(chebyshev(&d), cheb, 1e-3, "four-point");
    }
    let high = Duty {
        pressure: pa(83_431.0),
        ..duty(95.0, 85.0, 78.0, 1.2)
    };
    within_part(chebyshev(&high), 0.9005, 2e-3, "at 1609 m");
}

/// Cooling Tower Thermal Design Manual, example 2-1: 20,000 gpm and 1,600,000
/// acfm of 14.3309 ft3/lb give L/G 1.4928, with water of 500/60 lb/gal.
#[test]
fn water_air_ratio_of_the_design_manual() {
    let water = MassRate::new::<pound_per_minute>(20_000.0 * 500.0 / 60.0);
    let air = VolumeRate::new::<cubic_foot_per_minute>(1_600_000.0);
    let volume = uom::si::f64::SpecificVolume::new::<cubic_foot_per_pound>(14.3309);
    let got = water_air_ratio(water, air, volume.recip()).unwrap();
    near(got.get::<ratio>(), 1.4928, 1e-4, "L/G");
}

fn nominal() -> Characteristic {
    Characteristic::from_design(&duty(95.0, 85.0, 78.0, 1.2)).unwrap()
}

fn leaving(wet_bulb: f64, range: f64, l_over_g: f64) -> f64 {
    let got = nominal().leaving_water(f(wet_bulb), df(range), part(l_over_g), pa(SEA));
    to_f(got.unwrap())
}

/// Computed with scipy over ASHRAE psychrometrics with Buck's factor: a tower
/// of 95/85/78 F at L/G 1.2, n = 0.6.
#[test]
fn a_fixed_tower_off_its_design_point() {
    within_part(nominal().constant(), 1.3154, 2e-3, "C");
    for (wet, cold) in [
        (55.0, 69.00),
        (60.0, 72.29),
        (65.0, 75.68),
        (70.0, 79.17),
        (75.0, 82.78),
        (78.0, 85.00),
        (80.0, 86.50),
    ] {
        near(
            leaving(wet, 10.0, 1.2),
            cold,
            0.05,
            "leaving against wet bulb",
        );
    }
    for (range, cold) in [
        (5.0, 81.97),
        (8.0, 83.88),
        (10.0, 85.00),
        (12.0, 86.01),
        (15.0, 87.36),
    ] {
        near(
            leaving(78.0, range, 1.2),
            cold,
            0.05,
            "leaving against range",
        );
    }
    for (air, l_over_g, merkel, cold) in [
        (1.0, 1.20, 1.179, 85.00),
        (0.75, 1.60, 0.992, 87.49),
        (0.5, 2.40, 0.778, 92.01),
        (0.35, 3.43, 0.628, 97.07),
    ] {
        let changed = off_design_ratio(part(1.2), part(1.0), part(air)).unwrap();
        near(changed.get::<ratio>(), l_over_g, 0.005, "L/G");
        let offered = nominal().merkel_number(changed).unwrap().get::<ratio>();
        within_part(offered, merkel, 2e-3, "KaV/L");
        near(
            leaving(78.0, 10.0, changed.get::<ratio>()),
            cold,
            0.05,
            "leaving against air",
        );
    }
    for (water, range, cold, hot) in [
        (1.0, 10.0, 85.00, 95.00),
        (0.8, 12.5, 84.43, 96.93),
        (0.6, 10.0 / 0.6, 83.57, 100.24),
        (0.5, 20.0, 82.98, 102.98),
        (0.4, 25.0, 82.21, 107.21),
    ] {
        let changed = off_design_ratio(part(1.2), part(water), part(1.0)).unwrap();
        let got = leaving(78.0, range, changed.get::<ratio>());
        near(got, cold, 0.05, "leaving against water");
        near(got + range, hot, 0.05, "entering against water");
    }
}

/// US DOE building energy reference: 95/85/78 F is range 10 F, approach 7 F;
/// effectiveness is range over range plus approach.
#[test]
fn approach_range_and_effectiveness() {
    near(
        approach(f(85.0), f(78.0)).get::<fahrenheit_interval>(),
        7.0,
        1e-9,
        "approach",
    );
    near(
        range(f(95.0), f(85.0)).get::<fahrenheit_interval>(),
        10.0,
        1e-9,
        "range",
    );
    let got = effectiveness(f(95.0), f(85.0), f(78.0))
        .unwrap()
        .get::<ratio>();
    near(got, 10.0 / 17.0, 1e-9, "effectiveness");
    assert!(effectiveness(f(85.0), f(85.0), f(85.0)).is_err());
}

#[test]
fn a_duty_no_tower_can_do_is_a_pinch() {
    let pinch = Err(Error::NoSolution(NoSolution::Pinch));
    assert_eq!(duty(95.0, 77.0, 78.0, 1.2).merkel_number(), pinch);
    assert_eq!(duty(95.0, 85.0, 78.0, 5.0).merkel_number(), pinch);
    assert_eq!(
        duty(95.0, 85.0, 78.0, 5.0).merkel_number_integrated(),
        pinch
    );
}

#[test]
fn a_freezing_or_overloaded_tower_says_so() {
    let at = |wet, range, l_over_g| {
        nominal()
            .leaving_water(f(wet), df(range), part(l_over_g), pa(SEA))
            .unwrap_err()
    };
    assert_eq!(at(0.0, 5.0, 1.2), Error::NoSolution(NoSolution::Freezing));
    assert_eq!(
        at(80.0, 60.0, 20.0),
        Error::NoSolution(NoSolution::BeyondTower)
    );
}

proptest! {
    #[test]
    fn the_predicted_water_needs_exactly_the_fill_there_is(
        wet in 10.0..30.0f64, range in 2.0..15.0f64, l_over_g in 0.6..2.0f64, p in 7e4..1.05e5f64,
    ) {
        let tower = nominal();
        let span = df(range * 1.8);
        let cold = tower.leaving_water(c(wet), span, part(l_over_g), pa(p)).unwrap();
        let duty = Duty {
            entering: cold + span,
            leaving: cold,
            wet_bulb: c(wet),
            water_air_ratio: part(l_over_g),
            pressure: pa(p),
        };
        let asked = chebyshev(&duty);
        let offered = tower.merkel_number(part(l_over_g)).unwrap().get::<ratio>();
        prop_assert!((asked / offered - 1.0).abs() < 1e-6, "{asked} against {offered}");
        let closely = integrated(&duty);
        prop_assert!((closely / asked - 1.0).abs() < 0.02, "{closely} against {asked}");
    }

    #[test]
    fn leaving_water_rises_with_wet_bulb_range_and_water(
        wet in 50.0..80.0f64, range in 3.0..25.0f64, l_over_g in 0.5..2.5f64,
    ) {
        let here = leaving(wet, range, l_over_g);
        prop_assert!(here > wet);
        prop_assert!(leaving(wet + 1.0, range, l_over_g) > here);
        prop_assert!(leaving(wet, range + 1.0, l_over_g) > here);
        prop_assert!(leaving(wet, range, l_over_g + 0.1) > here);
    }
}
