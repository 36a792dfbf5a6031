//! Head pressure and the water behind it.

use coldsump::physics::refrigerant::Refrigerant::{self, *};
use coldsump::physics::refrigerant::head::expected;
use coldsump::physics::{Error, Quantity, air};
use coldsump::quantity::GaugePressure;
use proptest::prelude::*;

use crate::{SEA, df, f, m, near, pa, to_f, within_part};

fn to_psig(g: GaugePressure) -> f64 {
    g.pascals() / 6_894.757_293
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
        let mean = fluid.condensing(head, pa(air)).unwrap().mean;
        prop_assert!((to_f(mean) - water - approach).abs() < 1e-5);
        let warmer = expected(fluid, f(water + 1.0), df(approach), pa(air)).unwrap();
        prop_assert!(warmer > head);
    }
}
