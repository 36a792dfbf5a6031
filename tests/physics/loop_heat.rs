//! The loop in trouble.

use coldsump::physics::heat::{flow_for, heat_rejected, nominal_tower_ton};
use coldsump::physics::loop_heat::*;
use coldsump::physics::refrigerant::Refrigerant;
use coldsump::physics::tower::{Characteristic, Duty};
use coldsump::physics::{Error, NoSolution};
use coldsump::quantity::{
    GaugePressure, Mass, Power, SpecificHeatCapacity, TemperatureInterval, Time,
};
use proptest::prelude::*;
use uom::si::mass::kilogram;
use uom::si::power::{kilowatt, watt};
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_interval::degree_fahrenheit as fahrenheit_interval;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::{minute, second};
use uom::si::volume_rate::cubic_meter_per_second;

use crate::grid::{Accuracy, Grid};
use crate::{SEA, c, df, f, m3, m3_s, near, pa, part, to_c, to_f, within_part};

const PSI: f64 = 6894.757;

fn k(v: f64) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin_interval>(v)
}

fn seconds(v: f64) -> Time {
    Time::new::<second>(v)
}

fn kw(v: f64) -> Power {
    Power::new::<kilowatt>(v)
}

fn machine(refrigerant: Refrigerant, psig: f64) -> Condenser {
    Condenser {
        refrigerant,
        cut_out: GaugePressure::from_pascals(psig * PSI),
        approach: df(10.0),
        range: df(10.0),
    }
}

/// Computed by hand with CoolProp 8.0.0 saturation: 60 nominal tower tons into
/// 3.0 m3 from 85 F entering, range 10 F, condensing 10 F over leaving.
#[test]
fn minutes_to_the_trip() {
    let heat = nominal_tower_ton() * 60.0;
    for (refrigerant, psig, minutes) in [
        (Refrigerant::R410A, 600.0, 19.0),
        (Refrigerant::R410A, 550.0, 15.9),
        (Refrigerant::R22, 350.0, 16.7),
        (Refrigerant::R134a, 200.0, 11.2),
        (Refrigerant::R134a, 180.0, 8.1),
    ] {
        let got = machine(refrigerant, psig).time_to_trip(heat, m3(3.0), f(85.0), pa(SEA));
        let what = format!("{refrigerant:?} at {psig} psig");
        near(got.unwrap().get::<minute>(), minutes, 0.15, &what);
    }
    let trip = machine(Refrigerant::R410A, 600.0).trip_entering(pa(SEA));
    near(to_f(trip.unwrap()), 128.1, 0.2, "entering at the trip");
}

/// Computed by hand: 87.9 kW into 30 kg of water and 60 kg of metal at
/// 420 J/(kg K): 0.584 K/s, 30 K in 51 s.
#[test]
fn seconds_without_flow() {
    let got = time_without_flow(
        kw(87.9),
        Mass::new::<kilogram>(30.0),
        Mass::new::<kilogram>(60.0),
        SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(420.0),
        k(30.0),
    )
    .unwrap();
    near(got.get::<second>(), 51.4, 0.2, "seconds");
    near(30.0 / got.get::<second>(), 0.584, 2e-3, "kelvin a second");
}

/// Computed with CoolProp 8.0.0 (bubble pressures, as these fluids hardly glide):
/// 85 F entering, range and approach 10 F at full flow, resistance split evenly.
#[test]
fn head_at_reduced_flow() {
    let design = CondenserDesign {
        range: df(10.0),
        approach: df(10.0),
        water_side: part(0.5),
    };
    for (part_of_flow, range, condensing, heads) in [
        (1.00, 10.0, 105.0, [342.0, 211.0, 135.0]),
        (0.75, 13.3, 108.9, [361.0, 223.0, 144.0]),
        (0.50, 20.0, 116.4, [400.0, 248.0, 162.0]),
        (0.30, 33.3, 131.2, [486.0, 302.0, 202.0]),
        (0.20, 50.0, 149.4, [609.0, 379.0, 261.0]),
    ] {
        let got = design.at(f(85.0), part(part_of_flow)).unwrap();
        near(got.range.get::<fahrenheit_interval>(), range, 0.05, "range");
        near(to_f(got.condensing), condensing, 0.06, "condensing");
        let fluids = [Refrigerant::R410A, Refrigerant::R22, Refrigerant::R134a];
        for (fluid, psig) in fluids.into_iter().zip(heads) {
            let head = got.head(fluid, pa(SEA)).unwrap().pascals() / PSI;
            near(head, psig, 1.0, &format!("{fluid:?} at {part_of_flow}"));
        }
    }
    // A blend's head reads back as the mean of its two temperatures.
    let blend = design.at(f(85.0), part(0.5)).unwrap();
    let head = blend.head(Refrigerant::R407C, pa(SEA)).unwrap();
    let mean = Refrigerant::R407C.condensing(head, pa(SEA)).unwrap().mean;
    near(to_f(mean), to_f(blend.condensing), 1e-6, "R-407C");
    // A tenth of the flow trips: past the end of every chart.
    let starved = design.at(f(85.0), part(0.1)).unwrap();
    assert!(starved.head(Refrigerant::R410A, pa(SEA)).is_err());
}

/// The trade's 500: 900,000 Btu/h over 10 F is 180 gpm, and back.
#[test]
fn flow_from_heat() {
    let heat = nominal_tower_ton() * 60.0;
    let flow = flow_for(heat, df(10.0)).unwrap();
    within_part(flow.get::<cubic_meter_per_second>(), 0.01136, 1e-3, "flow");
    let back = heat_rejected(flow, df(10.0)).unwrap();
    within_part(back.get::<watt>(), heat.get::<watt>(), 1e-12, "heat");
    assert!(flow_for(heat, df(0.0)).is_err());
}

fn recovery(wet_bulb: f64, tower: Rejection) -> Recovery {
    Recovery {
        water: m3(3.0),
        flow: m3_s(0.01136),
        heat: kw(263.76),
        wet_bulb: c(wet_bulb),
        tower,
    }
}

/// A tower good for 35/29.444/25.556 C at L/G 1.2.
fn fill() -> Rejection {
    let design = Duty {
        entering: c(35.0),
        leaving: c(29.444),
        wet_bulb: c(25.556),
        water_air_ratio: part(1.2),
        pressure: pa(SEA),
    };
    Rejection::Characteristic {
        tower: Characteristic::from_design(&design).unwrap(),
        water_air_ratio: part(1.2),
        pressure: pa(SEA),
    }
}

/// By hand: a constant approach decays by e in one turnover, 3 m3 / 11.36 L/s.
#[test]
fn a_constant_approach_is_an_exponential() {
    let loop_now = recovery(25.556, Rejection::Approach(k(4.0)));
    near(to_c(loop_now.settles().unwrap()), 29.556, 1e-9, "settles");
    let turnover = 3.0 / 0.01136;
    let after = loop_now.after(c(49.556), seconds(turnover)).unwrap();
    near(
        to_c(after),
        29.556 + 20.0 / std::f64::consts::E,
        1e-6,
        "one turnover",
    );
    let time = loop_now.time_to_within(c(49.556), k(2.0)).unwrap();
    within_part(time.get::<second>(), turnover * 10f64.ln(), 1e-12, "to 2 K");
    let there = loop_now.time_to_within(c(30.0), k(2.0)).unwrap();
    assert_eq!(there.get::<second>(), 0.0);
}

fn restart(entering: f64) -> Restart {
    Restart {
        water: m3(3.0),
        flow: m3_s(0.01136),
        wet_bulb: c(24.0),
        effectiveness: part(0.55),
        entering: c(entering),
        margin: k(2.0),
    }
}

fn five(kilowatts: f64, step: f64) -> [Restarting; 5] {
    std::array::from_fn(|i| Restarting {
        heat: kw(kilowatts),
        trip: c(47.0 - step * i as f64),
    })
}

#[test]
fn a_loop_that_stays_too_hot_cannot_be_restarted() {
    let got = restart(44.0).plan(&five(500.0, 0.0));
    assert_eq!(
        got.unwrap_err(),
        Error::NoSolution(NoSolution::StaysTooWarm)
    );
    assert!(restart(44.0).plan(&[]).is_err());
    let cool = restart(30.0).plan(&five(40.0, 0.0)).unwrap();
    assert_eq!((cool.wait, cool.spacing), (seconds(0.0), seconds(0.0)));
}

proptest! {
    /// Played out step by step, the plan keeps the margin, and a shorter
    /// spacing does not.
    #[test]
    fn the_restart_plan_holds(kilowatts in 20.0..80.0f64, step in 0.0..3.0f64, now in 30.0..60.0f64) {
        let machines = five(kilowatts, step);
        let Ok(plan) = restart(now).plan(&machines) else { return Ok(()) };
        let play = |wait: f64, spacing: f64| {
            let (turnover, dt, mut t) = (3.0 / 0.01136, 0.25, now);
            let (mut clock, mut worst) = (0.0, f64::NEG_INFINITY);
            while clock < wait + 4.0 * spacing + 6.0 * turnover {
                let on = machines.iter().enumerate().filter(|(i, _)| clock >= wait + spacing * *i as f64);
                let (mut heat, mut limit) = (0.0, f64::INFINITY);
                for (_, m) in on {
                    heat += m.heat.get::<watt>();
                    limit = limit.min(to_c(m.trip) - 2.0);
                }
                worst = f64::max(worst, t - limit);
                let hot = t + heat / (0.01136 * 999.0 * 4186.8);
                t += (hot - 0.55 * (hot - 24.0) - t) / turnover * dt;
                clock += dt;
            }
            worst
        };
        let (wait, spacing) = (plan.wait.get::<second>(), plan.spacing.get::<second>());
        prop_assert!(play(wait, spacing) < 0.05);
        if spacing > 30.0 {
            prop_assert!(play(wait, spacing - 15.0) > 0.0);
        }
    }

    #[test]
    fn less_flow_never_lowers_the_head(share in 0.0..1.0f64, a in 0.12..1.9f64, t in 10.0..40.0f64) {
        let design = CondenserDesign { range: k(5.0), approach: k(4.0), water_side: part(share) };
        let at = |x: f64| design.at(c(t), part(x)).unwrap();
        prop_assert!(at(a).condensing >= at(a + 0.05).condensing);
        let approach = at(a).approach().get::<kelvin_interval>();
        prop_assert!(approach > 0.0);
    }

    #[test]
    fn the_loop_closes_on_where_it_settles(wet in 5.0..27.0f64, start in 28.0..52.0f64, t in 1.0..3000.0f64, kind in 0..3usize) {
        let tower = [Rejection::Approach(k(3.0)), Rejection::Effectiveness(part(0.5)), fill()][kind];
        let this = recovery(wet, tower);
        let settles = this.settles().unwrap().get::<kelvin>();
        let away = |t: f64| this.after(c(start), seconds(t)).unwrap().get::<kelvin>() - settles;
        let (first, later) = (away(t), away(t + 60.0));
        prop_assert!(later.abs() <= first.abs() + 1e-6 && first * later >= -1e-9);
        let band = first.abs();
        if band > 0.02 {
            let back = this.time_to_within(c(start), k(band)).unwrap().get::<second>();
            prop_assert!((back - t).abs() < 1e-3 * t + 0.01, "{back} for {t}");
        }
    }
}

/// Against SciPy 1.17.1 and, for the fill, CoolProp 8.0.0; see
/// `tests/reference/loop_heat.py`.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/loop_heat.csv"));
    let lines = "SciPy 1.17.1";
    let air = "SciPy 1.17.1, CoolProp 8.0.0";
    let mut heads = Accuracy::of("Condensing temperature, reduced flow", lines, 0.001, "K");
    let mut waters = Accuracy::of("Loop water, effectiveness held", lines, 0.001, "K");
    let mut times = Accuracy::of("Time to settle, effectiveness held", lines, 0.05, "%");
    let mut fills = Accuracy::of("Loop water, tower characteristic", air, 0.05, "K");
    let mut fill_times = Accuracy::of("Time to settle, tower characteristic", air, 0.3, "%");
    let mut spacings = Accuracy::of("Wait and spacing of restarts", lines, 0.05, "s");
    let fill = fill();
    for row in grid.rows() {
        let n = |column: &str| row.number(column);
        let case = row.word("case");
        match case {
            "condenser" => {
                let design = CondenserDesign {
                    range: k(5.5556),
                    approach: k(5.5556),
                    water_side: part(n("a")),
                };
                let got = design.at(c(29.444), part(n("b"))).unwrap();
                heads.point(to_c(got.condensing), n("answer"), || row.said());
            }
            "restart" => {
                let got = restart(n("b")).plan(&five(n("a"), n("c")));
                let Some(spacing) = row.maybe("answer") else {
                    let too_warm = Error::NoSolution(NoSolution::StaysTooWarm);
                    assert_eq!(got, Err(too_warm), "{}", row.said());
                    continue;
                };
                let got = got.unwrap();
                spacings.point(got.spacing.get::<second>(), spacing, || row.said());
                spacings.point(got.wait.get::<second>(), n("second"), || row.said());
            }
            _ => {
                let (tower, water, time) = match case {
                    "fill" => (fill, &mut fills, &mut fill_times),
                    _ => (
                        Rejection::Effectiveness(part(0.55)),
                        &mut waters,
                        &mut times,
                    ),
                };
                let this = recovery(n("a"), tower);
                let got = this.after(c(n("b")), seconds(n("c"))).unwrap();
                water.point(to_c(got), n("answer"), || row.said());
                let got = this.time_to_within(c(n("b")), k(n("d"))).unwrap();
                let got = got.get::<second>();
                match n("second") {
                    0.0 => assert_eq!(got, 0.0, "{}", row.said()),
                    // Nearly there: a hundredth of a kelvin is seconds.
                    want if want < 30.0 => near(got, want, 0.5, "seconds to settle"),
                    want => time.point(got, want, || row.said()),
                }
            }
        }
    }
    vec![heads, waters, times, fills, fill_times, spacings]
}
