//! The tower held against its design: which shape of trouble fits.

use coldsump::physics::tower::{
    Carried, Fit, FlowKnown, Parameter, Readings, Settle, Shape, Shortfall, Today, Verdict,
    WetBulbs,
};
use coldsump::physics::{Error, NoSolution, Quantity};
use coldsump::quantity::TemperatureInterval;
use proptest::prelude::*;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::degree_fahrenheit as fahrenheit_interval;
use uom::si::temperature_interval::kelvin as kelvin_interval;

use crate::{SEA, df, f, near, nominal, pa, part};

/// What the thermometers show at these parts of design, the air drawn in
/// `rise` F above the day's wet bulb.
fn shown(wet: f64, rise: f64, heat: f64, water: f64, air: f64) -> Readings {
    let today = Today {
        wet_bulb: f(wet + rise),
        carried: Carried::Heat(part(heat)),
        water: part(water),
        air: part(air),
        pressure: pa(SEA),
    };
    let does = nominal().predict(&today).unwrap();
    read(does.entering, does.leaving, wet)
}

fn read(
    entering: coldsump::quantity::ThermodynamicTemperature,
    leaving: coldsump::quantity::ThermodynamicTemperature,
    wet: f64,
) -> Readings {
    Readings {
        entering,
        leaving,
        wet_bulbs: WetBulbs::Away(f(wet)),
        water: None,
        heat: None,
        pressure: pa(SEA),
        thermometer: Readings::usual_thermometer(),
    }
}

fn judged(readings: &Readings) -> Shortfall {
    nominal().shortfall(readings).unwrap()
}

fn fit(got: &Shortfall, shape: Shape) -> Fit {
    *got.fits.iter().find(|f| f.shape == shape).unwrap()
}

#[test]
fn a_tower_at_its_design_point_is_healthy_and_whole() {
    let got = judged(&shown(78.0, 0.0, 1.0, 1.0, 1.0));
    assert_eq!(got.fits[0].shape, Shape::Healthy);
    assert_eq!(got.flow, FlowKnown::Assumed);
    near(
        got.part().unwrap().get::<ratio>(),
        1.0,
        1e-6,
        "part delivered",
    );
    near(
        got.over_expected.unwrap().get::<fahrenheit_interval>(),
        0.0,
        1e-6,
        "over expected",
    );
    near(
        fit(&got, Shape::Healthy).chi_square,
        0.0,
        1e-6,
        "chi-square",
    );
}

#[test]
fn half_the_heat_on_a_sound_tower_is_healthy() {
    let got = judged(&shown(70.0, 0.0, 0.5, 1.0, 1.0));
    assert_eq!(got.verdict, Verdict::One(Shape::Healthy), "{:#?}", got.fits);
    let Some(Parameter::Heat(heat)) = got.fits[0].parameter else {
        panic!("{:?}", got.fits)
    };
    near(heat.get::<ratio>(), 0.5, 0.01, "heat");
}

/// From the table of a tower at 40 % of its water: 107.21 onto it, 82.21 off
/// it at 78 F wet bulb (computed with scipy, see the off-design table).
#[test]
fn wide_range_and_low_leaving_water_is_low_flow() {
    let got = judged(&read(f(107.21), f(82.21), 78.0));
    assert_eq!(
        got.verdict,
        Verdict::One(Shape::LowWater),
        "{:#?}",
        got.fits
    );
    let Some(Parameter::Water(water)) = got.fits[0].parameter else {
        panic!("{:?}", got.fits)
    };
    near(water.get::<ratio>(), 0.4, 0.01, "water");
    assert!(got.fits[0].spread < 0.1);
    assert_eq!(got.settle, None);
}

/// From the same table: half the air, 102.01 onto it and 92.01 off it; there
/// and at design, KaV/L by scipy over CoolProp 8.0.0.
#[test]
fn normal_range_and_high_approach_is_air_or_recirculation() {
    let mut readings = read(f(102.01), f(92.01), 78.0);
    let blind = judged(&readings);
    let air = fit(&blind, Shape::WeakAir);
    let Some(Parameter::Air(part_of_air)) = air.parameter else {
        panic!("{air:?}")
    };
    near(part_of_air.get::<ratio>(), 0.5, 0.01, "air");
    // The day's wet bulb alone cannot tell weak air from recirculation.
    assert!(
        matches!(
            blind.verdict,
            Verdict::Either(Shape::WeakAir, Shape::Recirculation)
                | Verdict::Either(Shape::Recirculation, Shape::WeakAir)
        ),
        "{:#?}",
        blind.fits
    );
    assert_eq!(blind.settle, Some(Settle::InletWetBulb));
    // Read at the inlet as well and found the same: it is the air.
    readings.wet_bulbs = WetBulbs::Both {
        away: f(78.0),
        inlet: f(78.0),
    };
    let both = judged(&readings);
    assert_eq!(
        both.verdict,
        Verdict::One(Shape::WeakAir),
        "{:#?}",
        both.fits
    );
    near(
        both.part().unwrap().get::<ratio>(),
        0.5238 / 1.1805,
        0.002,
        "part delivered",
    );
    near(
        both.over_expected.unwrap().get::<fahrenheit_interval>(),
        7.01,
        0.06,
        "over expected",
    );
}

#[test]
fn a_raised_inlet_wet_bulb_is_recirculation() {
    let mut readings = shown(75.0, 7.0, 0.9, 1.0, 1.0);
    readings.wet_bulbs = WetBulbs::Both {
        away: f(75.0),
        inlet: f(82.0),
    };
    let got = judged(&readings);
    assert_eq!(
        got.verdict,
        Verdict::One(Shape::Recirculation),
        "{:#?}",
        got.fits
    );
    let Some(Parameter::Rise(rise)) = got.fits[0].parameter else {
        panic!("{:?}", got.fits)
    };
    near(rise.get::<fahrenheit_interval>(), 7.0, 0.2, "rise");
    // The fill itself delivers all it should with the air it gets.
    near(
        got.part().unwrap().get::<ratio>(),
        1.0,
        1e-6,
        "part delivered",
    );
    // Read at the inlet only, the rise cannot be seen and is not claimed.
    readings.wet_bulbs = WetBulbs::AtInlet(f(82.0));
    let got = judged(&readings);
    assert!(got.fits.iter().all(|f| f.shape != Shape::Recirculation));
    assert_eq!(got.verdict, Verdict::One(Shape::Healthy), "{:#?}", got.fits);
}

#[test]
fn wide_range_and_high_approach_is_load() {
    let got = judged(&shown(78.0, 0.0, 1.6, 1.0, 1.0));
    assert_eq!(
        got.verdict,
        Verdict::One(Shape::BeyondDesign),
        "{:#?}",
        got.fits
    );
    let Some(Parameter::Heat(heat)) = got.fits[0].parameter else {
        panic!("{:?}", got.fits)
    };
    near(heat.get::<ratio>(), 1.6, 0.02, "heat");
}

#[test]
fn a_little_more_heat_or_less_water_needs_a_meter() {
    let mut readings = shown(78.0, 0.0, 1.0, 0.8, 1.0);
    let blind = judged(&readings);
    let weights = [Shape::LowWater, Shape::BeyondDesign].map(|s| fit(&blind, s).weight);
    assert!(weights[1] > 0.1 * weights[0], "{:#?}", blind.fits);
    assert!(
        matches!(blind.verdict, Verdict::Either(..)),
        "{:#?}",
        blind.fits
    );
    assert_eq!(blind.settle, Some(Settle::WaterFlow));
    readings.water = Some(part(0.8));
    let metered = judged(&readings);
    assert_eq!(metered.flow, FlowKnown::Metered);
    assert_eq!(
        metered.verdict,
        Verdict::One(Shape::LowWater),
        "{:#?}",
        metered.fits
    );
    readings.water = None;
    readings.heat = Some(part(1.0));
    let known = judged(&readings);
    assert_eq!(known.flow, FlowKnown::FromHeat);
    near(known.water.get::<ratio>(), 0.8, 0.01, "water from heat");
    assert!(fit(&known, Shape::LowWater).weight > blind.fits[0].weight);
}

#[test]
fn readings_no_tower_can_show_are_a_contradiction() {
    // Leaving water far below the wet bulb.
    let got = judged(&read(f(80.0), f(70.0), 78.0));
    assert_eq!(
        got.verdict,
        Verdict::One(Shape::Contradiction),
        "{:#?}",
        got.fits
    );
    assert_eq!(got.settle, Some(Settle::Thermometers));
    assert_eq!(got.delivered, Err(Error::NoSolution(NoSolution::Pinch)));
    // Entering colder than leaving: no range, so no KaV/L either.
    let got = judged(&read(f(80.0), f(95.0), 70.0));
    assert_eq!(
        got.verdict,
        Verdict::One(Shape::Contradiction),
        "{:#?}",
        got.fits
    );
    assert!(matches!(
        got.delivered,
        Err(Error::OutOfRange {
            quantity: Quantity::Range,
            ..
        })
    ));
    assert!(got.over_expected.is_err());
}

#[test]
fn poor_thermometers_say_less() {
    let mut readings = shown(78.0, 0.0, 1.0, 0.6, 1.0);
    let sharp = fit(&judged(&readings), Shape::LowWater);
    readings.thermometer = TemperatureInterval::new::<kelvin_interval>(3.0);
    let blunt = fit(&judged(&readings), Shape::LowWater);
    assert!(blunt.weight < sharp.weight && blunt.spread > sharp.spread);
}

#[test]
fn readings_out_of_range_are_errors() {
    let mut readings = shown(78.0, 0.0, 1.0, 1.0, 1.0);
    readings.heat = Some(part(9.0));
    assert!(matches!(
        nominal().shortfall(&readings),
        Err(Error::OutOfRange {
            quantity: Quantity::LoadFraction,
            ..
        })
    ));
    readings.heat = None;
    readings.thermometer = df(0.0);
    assert!(matches!(
        nominal().shortfall(&readings),
        Err(Error::OutOfRange {
            quantity: Quantity::ThermometerError,
            ..
        })
    ));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// A strong single fault with every reading taken is always named, and its
    /// size found, at any wet bulb.
    #[test]
    fn a_strong_fault_fully_read_is_named(
        wet in 60.0..78.0f64, which in 0..4usize, size in 0.0..1.0f64, heat in 0.7..1.0f64,
    ) {
        let shape = [Shape::LowWater, Shape::WeakAir, Shape::Recirculation, Shape::BeyondDesign][which];
        let (mut water, mut air, mut rise, mut heat) = (1.0, 1.0, 0.0, heat);
        match shape {
            Shape::LowWater => water = 0.35 + 0.3 * size,
            Shape::WeakAir => air = 0.3 + 0.2 * size,
            Shape::Recirculation => rise = 6.0 + 3.0 * size,
            _ => heat = 1.5 + 0.3 * size,
        }
        let mut readings = shown(wet, rise, heat, water, air);
        readings.water = Some(part(water));
        readings.heat = Some(part(heat));
        readings.wet_bulbs = WetBulbs::Both { away: f(wet), inlet: f(wet + rise) };
        let got = judged(&readings);
        prop_assert_eq!(got.fits[0].shape, shape, "{:#?}", got.fits);
        let (found, want) = match got.fits[0].parameter.unwrap() {
            Parameter::Water(r) => (r.get::<ratio>(), water),
            Parameter::Air(r) => (r.get::<ratio>(), air),
            Parameter::Heat(r) => (r.get::<ratio>(), heat),
            Parameter::Rise(d) => (d.get::<fahrenheit_interval>(), rise),
        };
        prop_assert!((found / want - 1.0).abs() < 0.02, "{found} {want}");
        let sum: f64 = got.fits.iter().map(|f| f.weight).sum();
        prop_assert!((sum - 1.0).abs() < 1e-9);
    }
}
