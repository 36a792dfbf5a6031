//! Any finite input to the tower's wider calculations gives a finite answer or
//! a typed error.

use coldsump::physics::tower::{
    Carried, DesignedTower, Duty, Parameter, Readings, Today, WetBulbs,
};
use coldsump::physics::water::{EnteringAir, evaporation_between};
use proptest::prelude::*;
use uom::si::ratio::ratio;

use crate::every_input::{dk, fraction, k, number, pressure, sound, temperature};
use crate::{SEA, f, m3_s, pa, part};

fn nominal() -> Duty {
    Duty {
        entering: f(95.0),
        leaving: f(85.0),
        wet_bulb: f(78.0),
        water_air_ratio: part(1.2),
        pressure: pa(SEA),
    }
}

/// Water temperatures a mechanic may read, hot side first or not.
fn water() -> impl Strategy<Value = f64> {
    prop_oneof![4 => 273.0..334.0f64, 1 => number()]
}

proptest! {
    #[test]
    fn poppe_is_sound(
        [hot, cold] in [water(), water()], [dry, wet] in [temperature(), temperature()],
        l_over_g in prop_oneof![4 => 0.05..5.0f64, 1 => number()], p in pressure(), flow in fraction(),
    ) {
        let (dry, wet) = if dry < wet { (wet, dry) } else { (dry, wet) };
        let duty = Duty {
            entering: k(hot), leaving: k(cold), wet_bulb: k(wet),
            water_air_ratio: part(l_over_g), pressure: pa(p),
        };
        let got = duty.poppe(k(dry));
        sound(got.map(|q| q.merkel_number.value))?;
        sound(got.map(|q| q.evaporated.value))?;
        sound(got.map(|q| q.leaving_air.dry_bulb.value))?;
        sound(got.map(|q| q.leaving_air.vapour.value))?;
        sound(got.map(|q| q.leaving_air.enthalpy.value))?;
        let air = EnteringAir {
            dry_bulb: k(dry), wet_bulb: k(wet), water_air_ratio: part(l_over_g), pressure: pa(p),
        };
        let lost = evaporation_between(m3_s(flow), k(hot), k(cold), Some(&air));
        sound(lost.map(|e| e.rate().value))?;
        let _ = lost.map(|e| e.warning());
    }

    #[test]
    fn prediction_is_sound(
        wet in temperature(), [water, air, heat] in [fraction(), fraction(), fraction()],
        range in prop_oneof![0.0..50.0f64, number()], p in pressure(), n in fraction(),
    ) {
        let Ok(tower) = DesignedTower::with_exponent(&nominal(), n) else { return Ok(()) };
        for carried in [Carried::Range(dk(range)), Carried::Heat(part(heat))] {
            let today = Today {
                wet_bulb: k(wet), carried, water: part(water), air: part(air), pressure: pa(p),
            };
            let got = tower.predict(&today);
            sound(got.map(|q| q.leaving.value))?;
            sound(got.map(|q| q.entering.value))?;
            sound(got.map(|q| q.merkel_number.value))?;
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn shortfall_is_sound(
        [hot, cold] in [water(), water()], [away, inlet] in [temperature(), temperature()],
        which in 0..3usize, [flow, heat] in proptest::array::uniform2(proptest::option::of(fraction())),
        p in pressure(), thermometer in prop_oneof![0.05..3.0f64, number()],
    ) {
        let tower = DesignedTower::new(&nominal()).unwrap();
        let wet_bulbs = [
            WetBulbs::Away(k(away)),
            WetBulbs::AtInlet(k(inlet)),
            WetBulbs::Both { away: k(away), inlet: k(inlet) },
        ][which];
        let readings = Readings {
            entering: k(hot), leaving: k(cold), wet_bulbs, water: flow.map(part),
            heat: heat.map(part), pressure: pa(p), thermometer: dk(thermometer),
        };
        let got = match tower.shortfall(&readings) {
            Ok(got) => got,
            Err(error) => return sound(Err(error)),
        };
        sound(got.delivered.map(|q| q.value))?;
        sound(got.part().map(|q| q.value))?;
        sound(got.over_expected.map(|q| q.value))?;
        let mut sum = 0.0;
        for fit in &got.fits {
            sum += fit.weight;
            prop_assert!(fit.spread.is_finite() && !fit.chi_square.is_nan());
            if let Some(Parameter::Water(q) | Parameter::Air(q) | Parameter::Heat(q)) = fit.parameter {
                prop_assert!(q.get::<ratio>().is_finite());
            }
        }
        prop_assert!((sum - 1.0).abs() < 1e-9, "weights add up to {sum}");
    }
}
