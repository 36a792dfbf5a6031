//! Head pressure and the water behind it.

use coldsump::physics::refrigerant::Refrigerant::{self, *};
use coldsump::physics::refrigerant::head::{
    condenser_approach, entering_water_at_trip, expected, leaving_water_at_trip, room,
};
use coldsump::physics::{Error, Quantity, air};
use coldsump::quantity::{GaugePressure, TemperatureInterval};
use proptest::prelude::*;
use uom::si::pressure::psi;
use uom::si::temperature_interval::degree_fahrenheit as fahrenheit_interval;

use crate::{SEA, df, f, m, near, pa, to_f, within_part};

fn psig(v: f64) -> GaugePressure {
    GaugePressure::from_pascals(v * 6_894.757_293)
}

fn to_psig(g: GaugePressure) -> f64 {
    g.pascals() / 6_894.757_293
}

fn to_df(t: TemperatureInterval) -> f64 {
    t.get::<fahrenheit_interval>()
}

/// 105 F condensing is 95 F leaving water and an approach of 10 F (from memory,
/// a rule of the trade); the head is the table of CoolProp 8.0.0, dew and bubble
/// psig, between which the head of a blend lies.
#[test]
fn expected_head_lies_between_the_lines_of_the_table() {
    for (fluid, dew, bubble) in crate::refrigerant::HEAD_AT_105 {
        let head = to_psig(expected(fluid, f(95.0), df(10.0), pa(SEA)).unwrap());
        let hair = 0.0015 * (bubble + 14.7) + 0.05;
        let what = fluid.designation();
        assert!(head > dew - hair && head < bubble + hair, "{what}: {head}");
        // The mean of the lines' temperatures is near the mean of their pressures.
        within_part(head, 0.5 * (dew + bubble), 0.01, what);
    }
}

/// R-410A, a cut-out at 550 psig is 141 F condensing (CoolProp 8.0.0): from a
/// head of 341.4 psig, 105 F, it is 36 F.
#[test]
fn room_to_the_cut_out() {
    let here = pa(SEA);
    let room = room(R410A, psig(341.4), psig(550.0), here).unwrap();
    near(room.pressure.get::<psi>(), 208.6, 1e-4, "psi");
    near(to_f(room.trips_at), 141.0, 0.6, "trips at");
    near(to_df(room.warmer), 36.0, 0.7, "warmer");
    // 85 F in, 95 F out: it trips when water enters 36 F warmer.
    let approach = condenser_approach(R410A, psig(341.4), f(95.0), here).unwrap();
    near(to_df(approach), 10.0, 0.1, "approach");
    let entering = entering_water_at_trip(R410A, psig(550.0), approach, df(10.0), here).unwrap();
    near(to_f(entering), 85.0 + to_df(room.warmer), 1e-6, "entering");
    let leaving = leaving_water_at_trip(R410A, psig(550.0), approach, here).unwrap();
    near(to_f(leaving), to_f(entering) + 10.0, 1e-6, "leaving");
}

#[test]
fn above_the_cut_out_the_room_is_negative() {
    let room = room(R134a, psig(190.0), psig(180.0), pa(SEA)).unwrap();
    assert!(room.pressure.value < 0.0 && to_df(room.warmer) < 0.0);
}

/// The same gauge means a cooler condenser high up: 2.6 psi less atmosphere at
/// 1609 m.
#[test]
fn the_local_atmosphere_counts() {
    let high = air::standard_pressure(m(1609.0)).unwrap();
    let at = |air| to_psig(expected(R134a, f(95.0), df(10.0), air).unwrap());
    near(at(high) - at(pa(SEA)), 2.6, 0.05, "psi more on the gauge");
}

#[test]
fn what_cannot_be_is_said() {
    let error = expected(R410A, f(150.0), df(20.0), pa(SEA)).unwrap_err();
    assert!(matches!(
        error,
        Error::OutOfRange {
            quantity: Quantity::SaturationTemperature,
            ..
        }
    ));
    let error = expected(R410A, f(95.0), df(100.0), pa(SEA)).unwrap_err();
    assert!(matches!(
        error,
        Error::OutOfRange {
            quantity: Quantity::CondenserApproach,
            ..
        }
    ));
}

proptest! {
    #[test]
    fn approach_and_head_are_inverse(
        i in 0..14usize, water in 45.0..120.0f64, approach in 0.0..25.0f64, air in 6e4..1.1e5f64,
    ) {
        let fluid = Refrigerant::ALL[i];
        let head = expected(fluid, f(water), df(approach), pa(air)).unwrap();
        let back = condenser_approach(fluid, head, f(water), pa(air)).unwrap();
        prop_assert!((to_df(back) - approach).abs() < 1e-5);
        let warmer = expected(fluid, f(water + 1.0), df(approach), pa(air)).unwrap();
        prop_assert!(warmer > head);
    }
}
