//! Any finite input gives a finite answer or a typed error, never NaN or a panic.

use coldsump::physics::basin::{Basin, Plan};
use coldsump::physics::refrigerant::Refrigerant;
use coldsump::physics::tower::{Characteristic, Duty};
use coldsump::physics::water::{EnteringAir, balance, cycles, evaporation, time_to_level};
use coldsump::physics::{Error, air, heat, tower};
use coldsump::quantity::{
    ElectricalConductivity, GaugePressure, MassDensity, MassRate, Power, Ratio,
    TemperatureInterval, ThermodynamicTemperature, Time,
};
use proptest::prelude::*;
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::mass_rate::kilogram_per_second;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

use crate::{m, m3, m3_s, pa, part};

/// Numbers people type by mistake, numbers at the edges, and any number at all.
pub fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        proptest::num::f64::NORMAL | proptest::num::f64::SUBNORMAL | proptest::num::f64::ZERO,
        -400.0..400.0f64,
        0.0..3.0f64,
        250.0..340.0f64,
        4e4..1.2e5f64,
        Just(f64::MAX),
        Just(f64::MIN),
        Just(f64::MIN_POSITIVE),
    ]
}

/// Numbers inside most ranges, so that the kernels and not only the guards run.
pub fn temperature() -> impl Strategy<Value = f64> {
    prop_oneof![4 => 250.0..335.0f64, 1 => number()]
}

pub fn pressure() -> impl Strategy<Value = f64> {
    prop_oneof![4 => 5e4..1.1e5f64, 1 => number()]
}

pub fn fraction() -> impl Strategy<Value = f64> {
    prop_oneof![4 => 0.0..2.0f64, 1 => number()]
}

pub fn k(v: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(v)
}

pub fn dk(v: f64) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin_interval>(v)
}

/// Finite, or an error that says something.
pub fn sound(result: Result<f64, Error>) -> Result<(), TestCaseError> {
    match result {
        Ok(v) => prop_assert!(v.is_finite(), "answered {v}"),
        Err(Error::OutOfRange {
            value, low, high, ..
        }) => {
            prop_assert!(low <= high, "bounds {low} to {high}");
            prop_assert!(
                !(low..=high).contains(&value),
                "{value} is in {low} to {high}"
            );
        }
        Err(Error::NoSolution(_)) => {}
    }
    Ok(())
}

proptest! {
    #[test]
    fn air_is_sound(t in temperature(), w in temperature(), rh in fraction(), p in pressure()) {
        let (t, w, rh, p) = (k(t), k(w), part(rh), pa(p));
        sound(air::standard_pressure(m(t.value)).map(|q| q.value))?;
        sound(air::saturation_pressure(t).map(|q| q.value))?;
        sound(air::enhancement_factor(t, p).map(|q| q.value))?;
        sound(air::saturated_humidity_ratio(t, p).map(|q| q.value))?;
        sound(air::saturated_enthalpy(t, p).map(|q| q.value))?;
        sound(air::humidity_ratio(t, rh, p).map(|q| q.value))?;
        sound(air::enthalpy(t, rh, p).map(|q| q.value))?;
        sound(air::dry_air_density(t, rh, p).map(|q| q.value))?;
        sound(air::dew_point(t, rh).map(|q| q.value))?;
        sound(air::wet_bulb(t, rh, p).map(|q| q.value))?;
        sound(air::relative_humidity(t, w, p).map(|q| q.value))?;
    }

    #[test]
    fn tower_is_sound(
        [hot, cold, wet] in [temperature(), temperature(), temperature()],
        l_over_g in fraction(), p in pressure(), range in prop_oneof![0.0..50.0f64, number()],
        [n, water, fan] in [fraction(), fraction(), fraction()],
    ) {
        let (hot, cold) = if hot < cold { (cold, hot) } else { (hot, cold) };
        let duty = Duty {
            entering: k(hot), leaving: k(cold), wet_bulb: k(wet),
            water_air_ratio: part(l_over_g), pressure: pa(p),
        };
        sound(duty.merkel_number().map(|q| q.value))?;
        sound(duty.merkel_number_integrated().map(|q| q.value))?;
        sound(tower::effectiveness(k(hot), k(cold), k(wet)).map(|q| q.value))?;
        sound(tower::off_design_ratio(part(l_over_g), part(water), part(fan)).map(|q| q.value))?;
        sound(tower::water_air_ratio(
            MassRate::new::<kilogram_per_second>(water), m3_s(fan),
            MassDensity::new::<kilogram_per_cubic_meter>(n),
        ).map(|q| q.value))?;
        prop_assert!(!tower::approach(k(cold), k(wet)).value.is_nan());
        prop_assert!(!tower::range(k(hot), k(cold)).value.is_nan());
        let predict = |c: Characteristic, l: Ratio| {
            c.leaving_water(k(wet), dk(range), l, pa(p)).map(|q| q.value)
        };
        if let Ok(tower) = Characteristic::with_exponent(&duty, n) {
            sound(predict(tower, part(water)))?;
        }
    }

    #[test]
    fn water_is_sound(
        flow in fraction(), range in number(), [t, w] in [temperature(), temperature()],
        l_over_g in fraction(), p in pressure(), a in fraction(), [b, c, d] in [number(), number(), number()],
    ) {
        let air = EnteringAir {
            dry_bulb: k(t), wet_bulb: k(w), water_air_ratio: part(l_over_g), pressure: pa(p),
        };
        sound(evaporation(m3_s(flow), dk(range), Some(&air)).map(|e| e.rate().value))?;
        sound(evaporation(m3_s(flow), dk(range), None).map(|e| e.rate().value))?;
        sound(balance(m3_s(flow), m3_s(a), part(b), part(c)).map(|q| q.makeup.value))?;
        let siemens = ElectricalConductivity::new::<siemens_per_meter>;
        sound(cycles(siemens(a), siemens(b)).map(|q| q.value))?;
        let round = Basin { plan: Plan::Round { diameter: m(a) }, depth: m(d) };
        let square = Basin { plan: Plan::Rectangular { length: m(a), width: m(b) }, depth: m(d) };
        for basin in [round, square] {
            sound(time_to_level(&basin, m(c), m(l_over_g), m3_s(flow)).map(|q| q.value))?;
        }
    }

    #[test]
    fn heat_is_sound(q in number(), v in number(), r in number(), t in temperature(), to in temperature()) {
        let heat_in = Power::new::<watt>(q);
        sound(heat::heat_rejected(m3_s(v), dk(r)).map(|q| q.value))?;
        sound(heat::range_for(heat_in, m3_s(v)).map(|q| q.value))?;
        sound(heat::tower_tons(heat_in).map(|q| q.value))?;
        sound(heat::temperature_rise(heat_in, m3(v), Time::new::<second>(r)).map(|q| q.value))?;
        sound(heat::time_to_reach(heat_in, m3(v), k(t), k(to)).map(|q| q.value))?;
    }

    #[test]
    fn refrigerant_is_sound(
        i in 0..14usize, t in temperature(), g in prop_oneof![0.0..5e6f64, number()], p in pressure(),
    ) {
        let fluid = Refrigerant::ALL[i];
        sound(fluid.bubble_pressure(k(t)).map(|q| q.value))?;
        sound(fluid.dew_pressure(k(t)).map(|q| q.value))?;
        sound(fluid.bubble_temperature(pa(g)).map(|q| q.value))?;
        sound(fluid.dew_temperature(pa(g)).map(|q| q.value))?;
        sound(fluid.condensing(GaugePressure::from_pascals(g), pa(p)).map(|q| q.mean.value))?;
    }
}
