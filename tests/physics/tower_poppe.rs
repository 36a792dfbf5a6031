//! Poppe's method.

use coldsump::physics::tower::Duty;
use coldsump::physics::{Error, NoSolution, air};
use proptest::prelude::*;
use uom::si::available_energy::kilojoule_per_kilogram;
use uom::si::ratio::ratio;

use crate::grid::{Accuracy, Grid};
use crate::{SEA, c, duty, duty_of, f, near, pa, part, to_c, within_part};

/// Computed with scipy by Poppe's method over ASHRAE psychrometrics with
/// Buck's factor: KaV/L, and how much more it is than Merkel's.
#[test]
fn poppe_asks_for_more_fill_than_merkel() {
    for (d, poppe, merkel) in [
        (duty(95.0, 85.0, 78.0, 1.2), 1.2587, 1.1791),
        (duty(105.0, 85.0, 78.0, 0.97), 1.8171, 1.6970),
    ] {
        let got = d.poppe(f(95.0)).unwrap().merkel_number.get::<ratio>();
        within_part(got, poppe, 3e-3, "KaV/L by Poppe");
        let plain = d.merkel_number().unwrap().get::<ratio>();
        within_part(plain, merkel, 3e-3, "KaV/L by Merkel");
    }
}

/// Computed with scipy by Poppe's method over ASHRAE psychrometrics with
/// Buck's factor: evaporation as a percentage of the flow.
#[test]
fn evaporation_by_poppe() {
    for (hot, cold, dry, wet, l_over_g, percent, per_f) in [
        (95.0, 85.0, 95.0, 78.0, 1.2, 1.012, 0.00101),
        (95.0, 85.0, 95.0, 78.0, 1.0, 1.020, 0.00102),
        (95.0, 85.0, 95.0, 78.0, 1.5, 0.997, 0.00100),
        (95.0, 85.0, 85.0, 78.0, 1.2, 0.865, 0.00086),
        (95.0, 85.0, 78.0, 77.9, 1.2, 0.772, 0.00077),
        (95.0, 85.0, 110.0, 70.0, 1.2, 1.146, 0.00115),
        (85.0, 75.0, 75.0, 65.0, 1.2, 0.852, 0.00085),
        (75.0, 65.0, 55.0, 50.0, 1.2, 0.698, 0.00070),
        (60.0, 50.0, 35.0, 32.0, 1.2, 0.564, 0.00056),
        (105.0, 85.0, 95.0, 78.0, 0.97, 1.880, 0.00094),
    ] {
        let got = duty(hot, cold, wet, l_over_g).poppe(f(dry)).unwrap();
        let what = format!("{hot}/{cold} at {dry}/{wet}, L/G {l_over_g}");
        let evaporated = got.evaporated.get::<ratio>();
        near(100.0 * evaporated, percent, 0.005, &what);
        near(evaporated / (hot - cold), per_f, 6e-6, &what);
    }
}

/// Against scipy over CoolProp 8.0.0; see `tests/reference/poppe.py`.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/poppe.csv"));
    let reference = "scipy over CoolProp 8.0.0";
    let mut merkel = Accuracy::of("KaV/L by Poppe", reference, 0.8, "%");
    let mut lost = Accuracy::of("Evaporation by Poppe", reference, 0.5, "%");
    let mut warm = Accuracy::of("Leaving air by Poppe", reference, 0.05, "K");
    let mut wet = Accuracy::of("Humidity of leaving air by Poppe", reference, 0.3, "%");
    for row in grid.rows() {
        let d = duty_of(&row);
        let got = d.poppe(c(row.number("dry_bulb_c"))).unwrap();
        let at = || row.said();
        merkel.point(
            got.merkel_number.get::<ratio>(),
            row.number("merkel_number"),
            at,
        );
        lost.point(got.evaporated.get::<ratio>(), row.number("evaporated"), at);
        warm.point(
            to_c(got.leaving_air.dry_bulb),
            row.number("leaving_air_c"),
            at,
        );
        let humidity = got.leaving_air.humidity_ratio.get::<ratio>();
        wet.point(humidity, row.number("leaving_humidity_ratio"), at);
        let fog = row.word("supersaturated") == "yes";
        assert_eq!(got.leaving_air.supersaturated, fog, "{}", row.said());
    }
    vec![merkel, lost, warm, wet]
}

/// The duty whose leaving water is `approach` above `wet`, K.
fn any_duty(wet: f64, approach: f64, range: f64, l_over_g: f64, p: f64) -> Duty {
    Duty {
        entering: c(wet + approach + range),
        leaving: c(wet + approach),
        wet_bulb: c(wet),
        water_air_ratio: part(l_over_g),
        pressure: pa(p),
    }
}

proptest! {
    /// Water in less water out is what the air gained, and so is the heat,
    /// reckoned from the states on the outside only.
    #[test]
    fn mass_and_energy_close(
        wet in 1.0..28.0f64, gap in 0.0..15.0f64, approach in 2.0..10.0f64,
        range in 1.0..20.0f64, l_over_g in 0.3..2.0f64, p in 6e4..1.05e5f64,
    ) {
        let d = any_duty(wet, approach, range, l_over_g, p);
        let dry = c(wet + gap);
        let Ok(rh) = air::relative_humidity(dry, d.wet_bulb, d.pressure) else { return Ok(()) };
        let Ok(got) = d.poppe(dry) else { return Ok(()) };
        let (w_in, h_in) = (
            air::humidity_ratio(dry, rh, d.pressure).unwrap().get::<ratio>(),
            air::enthalpy(dry, rh, d.pressure).unwrap().get::<kilojoule_per_kilogram>(),
        );
        let out = got.leaving_air;
        let (w_out, vapour) = (out.humidity_ratio.get::<ratio>(), out.vapour.get::<ratio>());
        let gained = w_out - w_in;
        prop_assert!((gained - got.evaporated.get::<ratio>() * l_over_g).abs() < 1e-9);
        prop_assert!(gained > 0.0 && vapour <= w_out);
        prop_assert_eq!(out.supersaturated, vapour < w_out);
        // Specific heat of water 4.1868 kJ/(kg K), as everywhere.
        let (hot, cold) = (to_c(d.entering), to_c(d.leaving));
        let given = 4.1868 * (l_over_g * hot - (l_over_g - gained) * cold);
        // Vapour as ASHRAE's moist air, droplets as water at the air's temperature.
        let t = to_c(out.dry_bulb);
        let h_out = 1.006 * t + vapour * (2501.0 + 1.86 * t) + (w_out - vapour) * 4.1868 * t;
        prop_assert!((h_out - h_in - given).abs() < 1e-6 * h_out.abs().max(1.0), "{h_out} {given}");
        let saturated = air::saturated_humidity_ratio(out.dry_bulb, d.pressure).unwrap();
        if out.supersaturated {
            prop_assert!((saturated.get::<ratio>() - vapour).abs() < 1e-9);
        } else {
            prop_assert!(saturated.get::<ratio>() >= vapour);
        }
    }

    #[test]
    fn a_harder_duty_asks_for_more_fill(
        wet in 5.0..26.0f64, gap in 0.5..10.0f64, approach in 3.0..8.0f64,
        range in 3.0..8.0f64, l_over_g in 0.6..1.3f64,
    ) {
        let leaving = wet + approach;
        let at = |wet: f64, hot: f64, l_over_g: f64| {
            let d = any_duty(wet, leaving - wet, hot - leaving, l_over_g, SEA);
            d.poppe(c(wet + gap)).map_or(f64::INFINITY, |p| p.merkel_number.get::<ratio>())
        };
        let hot = leaving + range;
        let here = at(wet, hot, l_over_g);
        prop_assert!(at(wet + 0.5, hot, l_over_g) >= here);
        prop_assert!(at(wet, hot + 0.5, l_over_g) >= here);
        prop_assert!(at(wet, hot, l_over_g + 0.1) >= here);
    }

    #[test]
    fn drier_air_of_the_same_wet_bulb_takes_more(
        wet in 10.0..26.0f64, gap in 0.0..12.0f64, range in 3.0..8.0f64, l_over_g in 0.6..1.3f64,
    ) {
        let d = any_duty(wet, 5.0, range, l_over_g, SEA);
        let at = |gap: f64| d.poppe(c(wet + gap)).map(|p| p.evaporated.get::<ratio>());
        if let (Ok(less), Ok(more)) = (at(gap), at(gap + 1.0)) {
            prop_assert!(more > less, "{less} then {more}");
        }
    }
}

#[test]
fn water_colder_than_the_air_allows_is_a_pinch() {
    let pinch = Err(Error::NoSolution(NoSolution::Pinch));
    assert_eq!(duty(95.0, 77.0, 78.0, 1.2).poppe(f(95.0)), pinch);
    assert_eq!(duty(95.0, 85.0, 78.0, 5.0).poppe(f(95.0)), pinch);
}
