//! Any finite input gives a finite answer or a typed error: fill line, basin,
//! drain, overflow and loop.

use coldsump::physics::basin::{AreaTable, Basin, Plan, VolumeTable};
use coldsump::physics::drain::{self, Outlet};
use coldsump::physics::loop_heat::*;
use coldsump::physics::overflow::{Standpipe, running_water};
use coldsump::physics::piping::valve::{FlowCoefficient, Service};
use coldsump::physics::piping::{FillLine, Liquid, friction_factor, servo_opening, suction};
use coldsump::physics::refrigerant::Refrigerant;
use coldsump::physics::tower::{Characteristic, Duty};
use coldsump::physics::{heat, water};
use coldsump::quantity::{
    Area, DynamicViscosity, GaugePressure, Mass, MassDensity, Power, SpecificHeatCapacity, Time,
};
use proptest::prelude::*;
use uom::si::area::square_meter;
use uom::si::dynamic_viscosity::pascal_second;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::time::second;

use crate::every_input::{dk, fraction, k, number, pressure, sound, temperature};
use crate::{SEA, c, m, m3, m3_s, pa, part};

fn small() -> impl Strategy<Value = f64> {
    prop_oneof![6 => 0.0..0.5f64, 2 => 0.0..5.0f64, 1 => number()]
}

fn basins([a, b, d, e]: [f64; 4]) -> Vec<Basin> {
    let areas = [(m(0.0), a), (m(e), b), (m(d), b)].map(|(l, v)| (l, Area::new::<square_meter>(v)));
    let volumes = [(m(0.0), m3(a)), (m(e), m3(b)), (m(d), m3(0.0))];
    let mut plans = vec![
        Plan::Rectangular {
            length: m(a),
            width: m(b),
        },
        Plan::Round { diameter: m(a) },
        Plan::SlopedFloor {
            length: m(a),
            width: m(b),
            fall: m(e),
        },
    ];
    plans.extend(AreaTable::new(&areas).map(|table| Plan::LevelArea { table }));
    plans.extend(VolumeTable::new(&volumes).map(|table| Plan::LevelVolume { table }));
    plans
        .into_iter()
        .map(|plan| Basin { plan, depth: m(d) })
        .collect()
}

proptest! {
    #[test]
    fn piping_is_sound(
        [a, b, d] in [small(), small(), small()], [p, q] in [pressure(), pressure()],
        n in number(), re in prop_oneof![0.0..1e6f64, number()], t in temperature(),
    ) {
        let any = Liquid {
            density: MassDensity::new::<kilogram_per_cubic_meter>(1000.0 * (0.8 + a)),
            viscosity: DynamicViscosity::new::<pascal_second>(1e-2 * b),
            vapour_pressure: pa(0.01 * q),
            critical_pressure: pa(2e7),
        };
        sound(Liquid::water(k(t)).map(|l| l.viscosity.value + l.density.value))?;
        sound(friction_factor(part(re), part(a)).map(|q| q.value))?;
        sound(suction(m3_s(a), m(b)).map(|s| s.submergence.value))?;
        sound(servo_opening(pa(n)).map(|_| 0.0))?;
        for liquid in [any, Liquid::water(c(15.0)).unwrap()] {
            let service = Service { inlet: pa(4.0 * p), outlet: pa(q), recovery: part(0.3 + d), liquid };
            sound(service.flow(FlowCoefficient::from_cv(10.0 * b)).map(|q| q.flow.value))?;
            sound(service.needed(m3_s(a)).map(|q| q.coefficient.kv()))?;
            let line = FillLine {
                mains: GaugePressure::from_pascals(4.0 * p), lift: m(10.0 * d), bore: m(b),
                length: m(100.0 * a), roughness: m(1e-2 * b * a), fittings: part(20.0 * d),
                fixed_loss: pa(0.5 * q), strainer: FlowCoefficient::from_kv(n),
                solenoid: FlowCoefficient::from_kv(20.0 * a), water: liquid,
            };
            let open = FillLine { strainer: FlowCoefficient::from_kv(10.0), ..line };
            for line in [line, open] {
                sound(line.flow().map(|f| f.flow.value + f.drops.total().value))?;
                sound(line.at(m3_s(a)).map(|f| f.friction_factor.value + f.reynolds.value))?;
                sound(line.strainer_for(m3_s(0.01 * a)).map(|kv| kv.kv()))?;
            }
        }
    }

    #[test]
    fn basins_are_sound(
        size in [small(), small(), small(), small()], [from, to] in [small(), small()],
        [q, loss, f] in [small(), small(), small()], z in small(),
    ) {
        let outlets = [
            Outlet::Hole { bore: m(0.2 * f), coefficient: part(0.62) },
            Outlet::Hole { bore: m(f), coefficient: part(z) },
            Outlet::Pipe { bore: m(0.2 * f), length: m(z), fall: m(z), friction: part(0.1 * f), losses: part(q) },
        ];
        for outlet in outlets {
            sound(outlet.flow(m(from)).map(|q| q.value))?;
            sound(outlet.steady_height(m3_s(0.01 * q)).map(|q| q.value))?;
        }
        for basin in basins(size) {
            prop_assert!(!basin.area_at(m(from)).value.is_nan());
            prop_assert!(!basin.volume(m(from)).value.is_nan());
            sound(basin.level_at(m3(q)).map(|q| q.value))?;
            sound(water::time_to_level(&basin, m(from), m(to), m3_s(q)).map(|q| q.value))?;
            sound(drain::time_to_fill(&basin, m(from), m(to), m3_s(q), m3_s(loss)).map(|q| q.value))?;
            for outlet in outlets {
                for flow in [0.0, 0.01 * q, q] {
                    let time = drain::time_to_level(&basin, &outlet, m3_s(flow), m(from), m(to));
                    sound(time.map(|q| q.value))?;
                }
            }
        }
        let overflow = Standpipe { bore: m(f) };
        sound(overflow.flow(m(from)).map(|q| q.value))?;
        sound(overflow.head(m3_s(q)).map(|q| q.value))?;
        sound(overflow.holding(m3_s(q), m(to)).map(|h| h.head.value + h.capacity.value))?;
        sound(running_water(m3_s(q), loss).map(|w| w.cost_per_year + w.per_year.value))?;
    }

    #[test]
    fn loops_are_sound(
        [t, wet, trip] in [temperature(), temperature(), temperature()], p in pressure(),
        [q, v, x, y] in [fraction(), fraction(), fraction(), fraction()], n in number(), i in 0..14usize,
    ) {
        let heat_in = Power::new::<watt>(1e5 * q);
        let any_heat = Power::new::<watt>(n);
        let kg = Mass::new::<kilogram>;
        let specific = SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(1000.0 * y);
        sound(time_without_flow(any_heat, kg(x), kg(y), specific, dk(v)).map(|t| t.value))?;
        sound(time_without_flow(heat_in, kg(x), kg(y), specific, dk(v)).map(|t| t.value))?;
        sound(heat::flow_for(heat_in, dk(n)).map(|t| t.value))?;
        let condenser = Condenser {
            refrigerant: Refrigerant::ALL[i], cut_out: GaugePressure::from_pascals(20.0 * p),
            approach: dk(5.0 * x), range: dk(5.0 * y),
        };
        sound(condenser.trip_entering(pa(p)).map(|t| t.value))?;
        sound(condenser.time_to_trip(heat_in, m3(v), k(t), pa(p)).map(|t| t.value))?;
        let design = CondenserDesign { range: dk(5.0 * q), approach: dk(5.0 * v), water_side: part(y) };
        if let Ok(reduced) = design.at(k(t), part(x)) {
            prop_assert!(reduced.condensing.value.is_finite() && reduced.approach().value.is_finite());
            sound(reduced.head(Refrigerant::ALL[i], pa(p)).map(|g| g.pascals()))?;
        }
        sound(design.at(k(t), part(n)).map(|r| r.condensing.value))?;
        let duty = Duty {
            entering: c(35.0), leaving: c(29.0), wet_bulb: c(25.0),
            water_air_ratio: part(1.2), pressure: pa(SEA),
        };
        let tower = Characteristic::from_design(&duty).unwrap();
        for tower in [
            Rejection::Approach(dk(5.0 * x)),
            Rejection::Effectiveness(part(x)),
            Rejection::Characteristic { tower, water_air_ratio: part(y), pressure: pa(p) },
        ] {
            let this = Recovery { water: m3(v), flow: m3_s(0.02 * y), heat: heat_in, wet_bulb: k(wet), tower };
            sound(this.settles().map(|t| t.value))?;
            sound(this.after(k(t), Time::new::<second>(1000.0 * x)).map(|t| t.value))?;
            sound(this.time_to_within(k(t), dk(x)).map(|t| t.value))?;
        }
        let restart = Restart {
            water: m3(v), flow: m3_s(0.02 * y), wet_bulb: k(wet), effectiveness: part(x),
            entering: k(t), margin: dk(x),
        };
        let machines = [Restarting { heat: heat_in, trip: k(trip) }, Restarting { heat: heat_in, trip: k(t) }];
        let plan = restart.plan(&machines);
        sound(plan.map(|p| p.wait.value + p.spacing.value + p.hottest.value))?;
    }
}
