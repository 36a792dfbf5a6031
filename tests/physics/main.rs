//! The physics against published values and independent libraries.
//!
//! Beside each row stands where its number was printed, or which library
//! computed it. Doing this in one binary keeps the link time down.

mod accuracy;
mod air;
mod chemistry;
mod circuit;
mod circuit_grid;
mod circuit_judge;
mod drain;
mod electrode;
mod every_input;
mod every_input_chemistry;
mod every_input_electric;
mod every_input_plant;
mod every_input_tower;
mod grid;
mod head;
mod heat;
mod loop_heat;
mod piping;
mod refrigerant;
mod saturation;
mod tower;
mod tower_poppe;
mod tower_prediction;
mod tower_shortfall;
mod water;

use coldsump::physics::tower::{DesignedTower, Duty};
use coldsump::quantity::{
    Length, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Volume, VolumeRate,
};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::degree_fahrenheit as fahrenheit_interval;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
use uom::si::volume::cubic_meter;
use uom::si::volume_rate::{cubic_meter_per_second, gallon_per_minute};

/// Standard sea-level pressure, Pa.
const SEA: f64 = 101_325.0;

fn c(v: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(v)
}

fn f(v: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_fahrenheit>(v)
}

fn df(v: f64) -> TemperatureInterval {
    TemperatureInterval::new::<fahrenheit_interval>(v)
}

fn pa(v: f64) -> Pressure {
    Pressure::new::<pascal>(v)
}

fn part(v: f64) -> Ratio {
    Ratio::new::<ratio>(v)
}

fn m(v: f64) -> Length {
    Length::new::<meter>(v)
}

fn m3(v: f64) -> Volume {
    Volume::new::<cubic_meter>(v)
}

fn m3_s(v: f64) -> VolumeRate {
    VolumeRate::new::<cubic_meter_per_second>(v)
}

fn gpm(v: f64) -> VolumeRate {
    VolumeRate::new::<gallon_per_minute>(v)
}

fn to_c(t: ThermodynamicTemperature) -> f64 {
    t.get::<degree_celsius>()
}

fn to_f(t: ThermodynamicTemperature) -> f64 {
    t.get::<degree_fahrenheit>()
}

/// A duty at sea level, in F.
fn duty(entering: f64, leaving: f64, wet_bulb: f64, l_over_g: f64) -> Duty {
    Duty {
        entering: f(entering),
        leaving: f(leaving),
        wet_bulb: f(wet_bulb),
        water_air_ratio: part(l_over_g),
        pressure: pa(SEA),
    }
}

/// The duty of a grid's row, in C.
fn duty_of(row: &grid::Row) -> Duty {
    Duty {
        entering: c(row.number("entering_c")),
        leaving: c(row.number("leaving_c")),
        wet_bulb: c(row.number("wet_bulb_c")),
        water_air_ratio: part(row.number("water_air_ratio")),
        pressure: pa(row.number("pressure_pa")),
    }
}

/// The tower of the rated condition, 95/85/78 F at L/G 1.2 (US DOE building
/// energy reference; the ratio is ours).
fn nominal() -> DesignedTower {
    DesignedTower::new(&duty(95.0, 85.0, 78.0, 1.2)).unwrap()
}

/// Fails unless `got` is within `tolerance` of `want`.
#[track_caller]
fn near(got: f64, want: f64, tolerance: f64, what: &str) {
    assert!(
        (got - want).abs() <= tolerance,
        "{what}: got {got}, want {want} +/- {tolerance}"
    );
}

/// Fails unless `got` is within the part `tolerance` of `want`.
#[track_caller]
fn within_part(got: f64, want: f64, tolerance: f64, what: &str) {
    near(got, want, want.abs() * tolerance, what);
}
