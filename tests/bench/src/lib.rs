//! The sums that are timed: one list of inputs in, one list of answers out.
//! `main.rs` runs them natively, the page runs them as wasm. Plain numbers come
//! in and go out; between them stand the same typed calls that the program makes.

pub mod pace;
pub mod report;

use coldsump::physics::air;
use coldsump::physics::refrigerant::Refrigerant;
use coldsump::physics::tower::{Characteristic, Duty};
use coldsump::quantity::{Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature};
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};
#[cfg(target_arch = "wasm32")]
use wasm_bindgen::prelude::wasm_bindgen;

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}

fn pascals(p: f64) -> Pressure {
    Pressure::new::<pascal>(p)
}

/// One wet bulb, C, from dry bulb (C), relative humidity (0 to 1) and pressure
/// (Pa). NaN for what the physics refuses.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen)]
pub fn wet_bulb(dry_bulb: f64, humidity: f64, pressure: f64) -> f64 {
    let humidity = Ratio::new::<ratio>(humidity);
    air::wet_bulb(celsius(dry_bulb), humidity, pascals(pressure))
        .map_or(f64::NAN, |t| t.get::<degree_celsius>())
}

/// Wet bulbs, C, of states given one after the other as [`wet_bulb`] takes them.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen)]
pub fn wet_bulbs(states: &[f64]) -> Vec<f64> {
    let states = states.chunks_exact(3);
    states.map(|s| wet_bulb(s[0], s[1], s[2])).collect()
}

/// Leaving water, C, of the tower that does 95/85/78 F at L/G 1.2 at sea level.
/// Each state: wet bulb (C), range (K), L/G, pressure (Pa).
#[cfg_attr(target_arch = "wasm32", wasm_bindgen)]
pub fn leaving_water(states: &[f64]) -> Vec<f64> {
    let design = Duty {
        entering: celsius(35.0),
        leaving: celsius(29.444_444_444_444_443),
        wet_bulb: celsius(25.555_555_555_555_557),
        water_air_ratio: Ratio::new::<ratio>(1.2),
        pressure: pascals(101_325.0),
    };
    let Ok(tower) = Characteristic::from_design(&design) else {
        return Vec::new();
    };
    let states = states.chunks_exact(4);
    let leaving = states.map(|s| {
        let range = TemperatureInterval::new::<kelvin_interval>(s[1]);
        tower
            .leaving_water(
                celsius(s[0]),
                range,
                Ratio::new::<ratio>(s[2]),
                pascals(s[3]),
            )
            .map_or(f64::NAN, |t| t.get::<degree_celsius>())
    });
    leaving.collect()
}

/// Bubble and dew temperature, K, of R-22, R-134a, R-404A, R-407C and R-410A,
/// each at every one of the pressures (Pa) given for it.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen)]
pub fn saturation(pressures: &[f64]) -> Vec<f64> {
    const FLUIDS: [Refrigerant; 5] = [
        Refrigerant::R22,
        Refrigerant::R134a,
        Refrigerant::R404A,
        Refrigerant::R407C,
        Refrigerant::R410A,
    ];
    let each = pressures.len() / FLUIDS.len();
    let mut answers = Vec::with_capacity(2 * pressures.len());
    for (fluid, pressures) in FLUIDS.iter().zip(pressures.chunks_exact(each.max(1))) {
        for p in pressures {
            let p = pascals(*p);
            let bubble = fluid.bubble_temperature(p);
            let dew = fluid.dew_temperature(p);
            let answer = [bubble, dew].map(|t| t.map_or(f64::NAN, |t| t.get::<kelvin>()));
            answers.extend(answer);
        }
    }
    answers
}

/// The PDF of the invented report.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen)]
pub fn report_made() -> Vec<u8> {
    report::made(&report::document())
}

/// How many answers each stored call has.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen)]
pub fn pace_paths() -> Vec<u32> {
    pace::paths().iter().map(|path| path.len() as u32).collect()
}

/// What follows from the first answers of a stored call, and the milliseconds that the
/// thinking took, by a clock of the caller's.
#[cfg(target_arch = "wasm32")]
#[wasm_bindgen]
pub fn pace_step(path: usize, answers: usize, clock: &js_sys::Function) -> Vec<f64> {
    let now = || {
        clock
            .call0(&wasm_bindgen::JsValue::NULL)
            .ok()
            .and_then(|t| t.as_f64())
    };
    let path = &pace::paths()[path][..answers];
    let began = now();
    let [first, next] = pace::step(path);
    let took = now()
        .zip(began)
        .map_or(f64::NAN, |(end, began)| end - began);
    vec![first, next, took]
}
