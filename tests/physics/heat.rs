//! Heat in the condenser water and the loop that loses its tower.

use coldsump::physics::heat::*;
use coldsump::quantity::{Power, Time};
use proptest::prelude::*;
use uom::si::power::{kilowatt, watt};
use uom::si::ratio::ratio;
use uom::si::temperature_interval::degree_fahrenheit as fahrenheit_interval;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::time::{minute, second};

use crate::{df, f, gpm, m3, m3_s, near, within_part};

fn tons(v: f64) -> Power {
    nominal_tower_ton() * v
}

/// US DOE building energy reference: 3 gpm over 10 F is one nominal tower ton,
/// 15,000 Btu/h (4396 W).
#[test]
fn one_nominal_tower_ton() {
    near(nominal_tower_ton().get::<watt>(), 4396.0, 0.1, "ton");
    let heat = heat_rejected(gpm(3.0), df(10.0)).unwrap();
    near(tower_tons(heat).unwrap().get::<ratio>(), 1.0, 1e-3, "tons");
    near(
        range_for(heat, gpm(3.0))
            .unwrap()
            .get::<fahrenheit_interval>(),
        10.0,
        1e-9,
        "range",
    );
}

/// The same reference sizes flow at 5.382e-8 m3/s per watt of nominal
/// capacity, with 1.25 W rejected per watt: that is 10 F too.
#[test]
fn the_reference_sizing_flow_makes_ten_fahrenheit() {
    let heat = Power::new::<kilowatt>(1.25);
    let got = range_for(heat, m3_s(5.382e-5))
        .unwrap()
        .get::<fahrenheit_interval>();
    near(got, 10.0, 0.02, "range");
}

/// Computed by hand from dT/dt = Q / (M cp): 60 nominal tower tons, 3.0 m3.
#[test]
fn a_loop_without_its_tower() {
    within_part(tons(60.0).get::<kilowatt>(), 263.8, 1e-3, "heat");
    let rise = temperature_rise(tons(60.0), m3(3.0), Time::new::<minute>(1.0)).unwrap();
    near(
        rise.get::<kelvin_interval>(),
        1.26,
        0.005,
        "kelvin in a minute",
    );
    near(
        rise.get::<fahrenheit_interval>(),
        2.27,
        0.005,
        "fahrenheit in a minute",
    );
    // Entering water at which R-410A reaches 600 psig, 10 F + 10 F below 148.1 F.
    let trip = time_to_reach(tons(60.0), m3(3.0), f(85.0), f(128.1)).unwrap();
    near(trip.get::<minute>(), 19.0, 0.1, "minutes to 128.1 F");
}

/// Computed by hand: 87.9 kW into 30 kg of water and 60 kg of metal at
/// 420 J/(kg K), that is 36.02 kg of water: +30 K in 51 s.
#[test]
fn a_condenser_without_flow() {
    let rise = temperature_rise(
        Power::new::<kilowatt>(87.9),
        m3(36.02 / 999.0),
        Time::new::<second>(51.4),
    );
    near(rise.unwrap().get::<kelvin_interval>(), 30.0, 0.2, "rise");
}

/// Computed by hand: the same heat at less flow takes a wider range.
#[test]
fn range_widens_as_flow_falls() {
    let heat = heat_rejected(gpm(180.0), df(10.0)).unwrap();
    for (fraction, range) in [
        (1.0, 10.0),
        (0.75, 13.3),
        (0.5, 20.0),
        (0.3, 33.3),
        (0.2, 50.0),
    ] {
        let got = range_for(heat, gpm(180.0 * fraction)).unwrap();
        near(got.get::<fahrenheit_interval>(), range, 0.05, "range");
    }
}

#[test]
fn no_flow_is_an_error_not_an_infinite_range() {
    assert!(range_for(tons(1.0), m3_s(0.0)).is_err());
    assert!(range_for(tons(1000.0), gpm(1.0)).is_err());
}

proptest! {
    #[test]
    fn heat_and_range_are_inverse(flow in 1e-5..2.0f64, range in 0.0..100.0f64) {
        let heat = heat_rejected(m3_s(flow), df(range)).unwrap();
        let back = range_for(heat, m3_s(flow)).unwrap().get::<fahrenheit_interval>();
        prop_assert!((back - range).abs() < 1e-9 * (1.0 + range));
    }

    #[test]
    fn rise_and_time_are_inverse(kw in 50.0..5000.0f64, water in 0.1..10.0f64, to in 86.0..200.0f64) {
        let (heat, water) = (Power::new::<kilowatt>(kw), m3(water));
        let time = time_to_reach(heat, water, f(85.0), f(to)).unwrap();
        let rise = temperature_rise(heat, water, time).unwrap().get::<fahrenheit_interval>();
        prop_assert!((rise - (to - 85.0)).abs() < 1e-6);
    }
}
