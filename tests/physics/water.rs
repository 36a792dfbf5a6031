//! The water balance and the time a basin lasts.

use coldsump::physics::basin::{Basin, Plan};
use coldsump::physics::water::*;
use coldsump::quantity::ElectricalConductivity;
use proptest::prelude::*;
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::ratio::ratio;
use uom::si::time::minute;
use uom::si::volume_rate::{
    cubic_meter_per_second, gallon_per_day, gallon_per_minute, liter_per_second,
};

use crate::{SEA, df, f, gpm, m, m3_s, near, pa, part, within_part};

/// GEMI Water Sustainability Planner equations, case example sheet: 9,900 gpm,
/// 8 F, windage 0.1 %; gallons per day.
#[test]
fn water_balance_of_the_gemi_case() {
    let flow = gpm(9_900.0);
    let evaporated = evaporation(flow, df(8.0), None).unwrap();
    assert_eq!(evaporated.method(), EvaporationMethod::FieldRule);
    near(
        evaporated.rate().get::<gallon_per_day>(),
        114_048.0,
        0.5,
        "evaporation",
    );
    for (cycles, blowdown, makeup) in [(4.0, 23_760.0, 152_064.0), (8.0, 2_037.0, 130_341.0)] {
        let got = balance(evaporated.rate(), flow, part(0.001), part(cycles)).unwrap();
        near(got.drift.get::<gallon_per_day>(), 14_256.0, 0.5, "windage");
        near(
            got.blowdown.get::<gallon_per_day>(),
            blowdown,
            0.5,
            "blowdown",
        );
        near(got.makeup.get::<gallon_per_day>(), makeup, 0.5, "makeup");
    }
}

/// UFC 3-240-13FN: 800 over 300 microsiemens is 2.67 cycles.
#[test]
fn cycles_of_the_ufc_example() {
    let us = |v: f64| ElectricalConductivity::new::<siemens_per_meter>(v * 1e-4);
    near(
        cycles(us(800.0), us(300.0)).unwrap().get::<ratio>(),
        2.67,
        0.005,
        "cycles",
    );
}

/// Saturated-exit balance, computed with scipy over ASHRAE psychrometrics with
/// Buck's factor: evaporated fraction of the flow per F of range.
#[test]
fn evaporation_by_balance() {
    for (hot, cold, dry, wet, l_over_g, factor) in [
        (95.0, 85.0, 95.0, 78.0, 1.2, 0.00104),
        (95.0, 85.0, 95.0, 78.0, 1.0, 0.00110),
        (95.0, 85.0, 95.0, 78.0, 1.5, 0.00098),
        (95.0, 85.0, 85.0, 78.0, 1.2, 0.00085),
        (95.0, 85.0, 78.0, 77.9, 1.2, 0.00072),
        (95.0, 85.0, 110.0, 70.0, 1.2, 0.00143),
        (85.0, 75.0, 75.0, 65.0, 1.2, 0.00085),
        (75.0, 65.0, 55.0, 50.0, 1.2, 0.00068),
        (60.0, 50.0, 35.0, 32.0, 1.2, 0.00053),
        (105.0, 85.0, 95.0, 78.0, 0.97, 0.00093),
    ] {
        let air = EnteringAir {
            dry_bulb: f(dry),
            wet_bulb: f(wet),
            water_air_ratio: part(l_over_g),
            pressure: pa(SEA),
        };
        let got = evaporation(gpm(180.0), df(hot - cold), Some(&air)).unwrap();
        assert_eq!(got.method(), EvaporationMethod::Balance);
        let per_f = got.rate().get::<gallon_per_minute>() / 180.0 / (hot - cold);
        near(
            per_f,
            factor,
            1.0e-5,
            &format!("{hot}/{cold} at {dry}/{wet}, L/G {l_over_g}"),
        );
    }
}

/// Computed with scipy by Poppe's method over ASHRAE psychrometrics with
/// Buck's factor: evaporated part of the flow in percent, and by it what part
/// the field rule (1 % per 10 F) is off.
#[test]
fn evaporation_by_poppe_and_what_the_field_rule_makes_of_it() {
    for (hot, cold, dry, wet, l_over_g, percent) in [
        (95.0, 85.0, 95.0, 78.0, 1.2, 1.012),
        (95.0, 85.0, 85.0, 78.0, 1.2, 0.865),
        (95.0, 85.0, 110.0, 70.0, 1.2, 1.146),
        (60.0, 50.0, 35.0, 32.0, 1.2, 0.564),
        (105.0, 85.0, 95.0, 78.0, 0.97, 1.880),
    ] {
        let air = EnteringAir {
            dry_bulb: f(dry),
            wet_bulb: f(wet),
            water_air_ratio: part(l_over_g),
            pressure: pa(SEA),
        };
        let got = evaporation_between(gpm(180.0), f(hot), f(cold), Some(&air)).unwrap();
        assert_eq!(got.method(), EvaporationMethod::Poppe);
        let part = got.rate().get::<gallon_per_minute>() / 1.8;
        near(part, percent, 0.005, "percent of the flow");
        let off = 0.1 * (hot - cold) / percent - 1.0;
        match got.warning() {
            None => assert!(off.abs() < 0.1, "{hot}/{cold}: {off} and no warning"),
            Some(EvaporationWarning::RuleParts(by)) => {
                assert!(off.abs() > 0.1, "{hot}/{cold}: {off}");
                near(by.get::<ratio>(), off, 0.01, "part off");
            }
        }
    }
}

#[test]
fn without_air_or_with_readings_no_tower_shows_the_simpler_ways_stand() {
    let bare = evaporation_between(gpm(180.0), f(95.0), f(85.0), None).unwrap();
    assert_eq!(bare.method(), EvaporationMethod::FieldRule);
    assert_eq!(bare.warning(), None);
    let air = EnteringAir {
        dry_bulb: f(95.0),
        wet_bulb: f(86.0),
        water_air_ratio: part(1.2),
        pressure: pa(SEA),
    };
    // Leaving water below the wet bulb.
    let odd = evaporation_between(gpm(180.0), f(95.0), f(85.0), Some(&air)).unwrap();
    assert_eq!(odd.method(), EvaporationMethod::Balance);
    assert_eq!(odd.by_rule, bare.by_rule);
}

/// Engineering practice: about 0.03 gpm evaporated per nominal tower ton of
/// 3 gpm and 10 F (common practice; 1 % of the flow).
#[test]
fn the_rule_gives_three_hundredths_of_a_gallon_per_ton() {
    let got = evaporation(gpm(3.0), df(10.0), None).unwrap();
    near(
        got.by_rule.get::<gallon_per_minute>(),
        0.030,
        1e-9,
        "per ton",
    );
}

/// Computed by hand from makeup = E + B + D: 180 gpm, E 1.01 %, drift 0.005 %,
/// basin of 6 m2; makeup stopped with the level 150 mm above the floor.
#[test]
fn minutes_until_the_basin_is_dry() {
    let flow = m3_s(0.01136);
    let evaporated = flow * 0.0101;
    let basin = Basin {
        plan: Plan::Rectangular {
            length: m(3.0),
            width: m(2.0),
        },
        depth: m(0.4),
    };
    for (cycles, makeup, minutes) in [(3.0, 0.172, 87.0), (4.0, 0.153, 98.0), (6.0, 0.138, 109.0)] {
        let got = balance(evaporated, flow, part(USUAL_DRIFT), part(cycles)).unwrap();
        near(got.makeup.get::<liter_per_second>(), makeup, 5e-4, "makeup");
        let dry = time_to_dry(&basin, m(0.25), got.makeup).unwrap();
        near(dry.get::<minute>(), minutes, 0.5, "minutes to dry");
    }
    let no_bleed = time_to_dry(&basin, m(0.25), evaporated).unwrap();
    near(
        no_bleed.get::<minute>(),
        131.0,
        0.5,
        "minutes without bleed",
    );
    assert_eq!(
        time_to_level(&basin, m(0.2), m(0.1), evaporated)
            .unwrap()
            .get::<minute>(),
        0.0
    );
}

/// From the formula: cycles 3 to 6 cuts makeup 20 % and blowdown 60 %.
#[test]
fn what_more_cycles_save() {
    let at = |n: f64| balance(gpm(1.8), gpm(180.0), part(0.0), part(n)).unwrap();
    let (three, six) = (at(3.0), at(6.0));
    within_part(
        (six.makeup / three.makeup).get::<ratio>(),
        0.8,
        1e-9,
        "makeup left",
    );
    within_part(
        (six.blowdown / three.blowdown).get::<ratio>(),
        0.4,
        1e-9,
        "blowdown left",
    );
}

#[test]
fn drift_alone_can_hold_the_cycles() {
    let got = balance(gpm(1.0), gpm(1000.0), part(0.002), part(10.0)).unwrap();
    assert_eq!(got.blowdown.get::<gallon_per_minute>(), 0.0);
    within_part(got.makeup.get::<gallon_per_minute>(), 3.0, 1e-9, "makeup");
}

proptest! {
    #[test]
    fn the_balance_closes(e in 0.0..0.1f64, flow in 0.0..5.0f64, drift in 0.0..0.01f64, n in 1.05..100.0f64) {
        let got = balance(m3_s(e), m3_s(flow), part(drift), part(n)).unwrap();
        let [m, e, b, d] = [got.makeup, got.evaporation, got.blowdown, got.drift]
            .map(|q| q.get::<cubic_meter_per_second>());
        prop_assert!((m - e - b - d).abs() <= 1e-12 * (1.0 + m));
        prop_assert!(b >= 0.0);
        // Dissolved solids balance too, unless drift alone carries more than the cycles ask.
        if b > 0.0 {
            prop_assert!((m - n * (b + d)).abs() <= 1e-9 * m, "{m} in, {} out", n * (b + d));
        }
    }

    #[test]
    fn hotter_or_drier_work_evaporates_more(wet in 40.0..80.0f64, gap in 0.0..20.0f64, range in 2.0..20.0f64) {
        let at = |range: f64, gap: f64| {
            let air = EnteringAir {
                dry_bulb: f(wet + gap), wet_bulb: f(wet), water_air_ratio: part(1.2), pressure: pa(SEA),
            };
            evaporation(gpm(100.0), df(range), Some(&air)).unwrap().rate()
        };
        prop_assert!(at(range, gap).value > 0.0);
        prop_assert!(at(range + 1.0, gap) > at(range, gap));
        prop_assert!(at(range, gap + 1.0) > at(range, gap));
    }
}
