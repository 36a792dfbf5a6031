//! Basins of every shape: what they hold, how they drain, fill and overflow.

use coldsump::physics::basin::{AreaTable, Basin, Plan, VolumeTable};
use coldsump::physics::drain::{Outlet, time_to_fill, time_to_level};
use coldsump::physics::overflow::{Standpipe, running_water};
use coldsump::physics::{Error, NoSolution, water};
use coldsump::quantity::{Area, Time, VolumeRate};
use proptest::prelude::*;
use uom::si::area::square_meter;
use uom::si::length::{meter, millimeter};
use uom::si::time::{minute, second};
use uom::si::volume::{cubic_meter, gallon};
use uom::si::volume_rate::{cubic_meter_per_second, liter_per_second};

use crate::grid::{Accuracy, Grid};
use crate::{gpm, m, m3, m3_s, near, part, within_part};

const NEVER: Error = Error::NoSolution(NoSolution::NeverReached);

fn litres(v: f64) -> VolumeRate {
    VolumeRate::new::<liter_per_second>(v)
}

fn basin(plan: Plan) -> Basin {
    Basin {
        plan,
        depth: m(0.4),
    }
}

fn box_6m2() -> Basin {
    basin(Plan::Rectangular {
        length: m(3.0),
        width: m(2.0),
    })
}

fn round() -> Basin {
    basin(Plan::Round { diameter: m(2.4) })
}

fn sloped() -> Basin {
    basin(Plan::SlopedFloor {
        length: m(3.0),
        width: m(2.0),
        fall: m(0.15),
    })
}

/// 1, 3, 3 and 8 m2 at 0, 0.1, 0.2 and 0.4 m above the floor.
fn tabled() -> Basin {
    let rows = [(0.0, 8.0), (0.2, 3.0), (0.3, 3.0), (0.4, 1.0)];
    let rows = rows.map(|(level, area)| (m(level), Area::new::<square_meter>(area)));
    basin(Plan::LevelArea {
        table: AreaTable::new(&rows).unwrap(),
    })
}

/// Two steps: 6 m2 above 0.25 m below the lip, 2.5 m2 under it, metered from
/// 1 m3 up.
fn stepped() -> Basin {
    let rows = [(0.0, 2.875), (0.25, 1.375), (0.4, 1.0)];
    let rows = rows.map(|(level, held)| (m(level), m3(held)));
    basin(Plan::LevelVolume {
        table: VolumeTable::new(&rows).unwrap(),
    })
}

fn shapes() -> [Basin; 5] {
    [box_6m2(), round(), sloped(), tabled(), stepped()]
}

fn hole() -> Outlet {
    Outlet::Hole {
        bore: m(0.05),
        coefficient: part(0.62),
    }
}

/// A 50 mm pipe 3 m long to 1 m below the floor; with the leaving velocity, K 4.2.
fn pipe() -> Outlet {
    Outlet::Pipe {
        bore: m(0.05),
        length: m(3.0),
        fall: m(1.0),
        friction: part(0.02),
        losses: part(2.0),
    }
}

/// Time between two heights above the floor.
fn fall(b: &Basin, out: &Outlet, inflow: VolumeRate, from: f64, to: f64) -> Result<f64, Error> {
    let below = |height: f64| m(0.4 - height);
    time_to_level(b, out, inflow, below(from), below(to)).map(|t| t.get::<second>())
}

/// Computed by hand from the integral of A dh / (Cd a sqrt(2 g h) - q); the
/// first also by SciPy's solver (515.26 s).
#[test]
fn basins_drain() {
    let none = litres(0.0);
    let first = fall(&box_6m2(), &hole(), none, 0.30, 0.10).unwrap();
    near(first, 515.3, 0.1, "6 m2 by a hole");
    let empty = fall(&box_6m2(), &hole(), none, 0.30, 0.0).unwrap();
    near(empty / 60.0, 20.32, 5e-3, "minutes to empty");
    let circle = fall(&round(), &hole(), none, 0.30, 0.10).unwrap();
    near(circle, 388.5, 0.1, "round");
    let piped = fall(&box_6m2(), &pipe(), none, 0.30, 0.10).unwrap();
    near(piped / 60.0, 4.31, 5e-3, "minutes by the pipe");
    let fed = fall(&box_6m2(), &hole(), litres(0.5), 0.30, 0.10).unwrap();
    near(fed, 662.0, 0.1, "with makeup running");
    let steady = hole().steady_height(litres(0.5)).unwrap();
    near(steady.get::<millimeter>(), 8.6, 0.05, "steady level");
    assert_eq!(
        fall(&box_6m2(), &hole(), litres(0.5), 0.30, 0.008).unwrap_err(),
        NEVER
    );
    assert_eq!(
        fall(&box_6m2(), &hole(), litres(0.5), 0.10, 0.30).unwrap_err(),
        NEVER
    );
}

/// Computed by hand: 1.2 m3 against a loss of 0.15 L/s.
#[test]
fn basins_refill() {
    let fill = |inflow: f64| {
        time_to_fill(&box_6m2(), m(0.3), m(0.1), litres(inflow), litres(0.15))
            .map(|t| t.get::<minute>())
    };
    for (inflow, minutes) in [(0.30, 133.3), (0.50, 57.1), (1.83, 11.9)] {
        near(fill(inflow).unwrap(), minutes, 0.06, "minutes to refill");
    }
    assert_eq!(fill(0.15).unwrap_err(), NEVER);
}

#[test]
fn a_table_is_followed_between_its_rows() {
    let held = |b: &Basin, h: f64| b.volume(m(0.4 - h)).get::<cubic_meter>();
    // By hand: 0.2 m3 to 0.1 m, 0.3 more to 0.2 m, 1.1 more to the lip.
    near(held(&tabled(), 0.1), 0.2, 1e-12, "to the first row");
    near(held(&tabled(), 0.4), 1.6, 1e-12, "full");
    near(held(&stepped(), 0.15), 0.375, 1e-12, "under the step");
    near(held(&stepped(), 0.4), 1.875, 1e-12, "full");
    let surface = stepped().area_at(m(0.3)).get::<square_meter>();
    near(surface, 2.5, 1e-9, "under the step");
}

/// Computed from the textbook forms (from memory), with SI coefficients.
#[test]
fn overflows_carry() {
    let flow = |o: Standpipe, head: f64| o.flow(m(head)).unwrap().get::<liter_per_second>();
    let standpipe = |bore: f64| Standpipe { bore: m(bore) };
    near(flow(standpipe(0.08), 0.02), 1.26, 5e-3, "80 mm");
    near(flow(standpipe(0.10), 0.03), 2.89, 5e-3, "100 mm");
    near(flow(standpipe(0.05), 0.01), 0.28, 5e-3, "50 mm");
    // Deep over the rim it is an orifice.
    let drowned = 0.6 * 1.963_495e-3 * (2.0 * 9.80665f64 * 0.1).sqrt() * 1e3;
    near(flow(standpipe(0.05), 0.1), drowned, 1e-4, "drowned");
}

#[test]
fn an_overflow_holds_a_valve_or_not() {
    let stuck = litres(1.83);
    let held = Standpipe { bore: m(0.1) }.holding(stuck, m(0.05)).unwrap();
    assert!(held.holds && held.head < m(0.03) && held.capacity > stuck);
    let small = Standpipe { bore: m(0.03) }.holding(stuck, m(0.05)).unwrap();
    assert!(!small.holds && small.head > m(0.05) && small.capacity < stuck);
}

/// Computed: 1 gpm is 1440 gal a day, 525,600 gal a year; at $12 per 1000 gal
/// $6,307 a year, 3 gpm $18,922, 5 gpm $31,536.
#[test]
fn water_that_runs_away_costs() {
    for (flow, cost) in [(1.0, 6307.0), (3.0, 18_922.0), (5.0, 31_536.0)] {
        let got = running_water(gpm(flow), 12.0 / 3.785412).unwrap();
        near(got.cost_per_year, cost, 1.0, "cost");
        within_part(got.per_day.get::<gallon>(), 1440.0 * flow, 1e-5, "a day");
        within_part(
            got.per_year.get::<gallon>(),
            525_600.0 * flow,
            1e-5,
            "a year",
        );
    }
    let day = running_water(gpm(1.0), 0.0).unwrap().per_day;
    near(day.get::<cubic_meter>(), 5.45, 5e-3, "m3 a day");
}

proptest! {
    #[test]
    fn level_and_volume_go_both_ways(i in 0..5usize, level in 0.0..0.4f64) {
        let b = shapes()[i];
        let held = b.volume(m(level));
        let back = b.level_at(held).unwrap();
        prop_assert!((back.get::<meter>() - level).abs() < 1e-9, "{back:?} for {level}");
        let less = b.volume(m((level + 1e-3).min(0.4)));
        prop_assert!(less < held || level > 0.399);
        // The surface is the slope of the volume.
        let middle = b.area_at(m(level + 5e-4)).get::<square_meter>();
        let slope = (held - less).get::<cubic_meter>() / 1e-3;
        prop_assert!(i == 4 || (slope - middle).abs() < 0.05 || level > 0.399);
    }

    #[test]
    fn without_an_outlet_to_speak_of_time_is_volume_over_flow(
        i in 0..5usize, a in 0.0..0.4f64, b in 0.0..0.4f64, q in 0.05..5.0f64,
    ) {
        let (high, low) = (a.min(b), a.max(b));
        let shape = shapes()[i];
        let pinhole = Outlet::Hole { bore: m(1e-3), coefficient: part(0.1) };
        let open = time_to_level(&shape, &pinhole, litres(q), m(low), m(high)).unwrap();
        let shut = time_to_fill(&shape, m(low), m(high), litres(q), litres(0.0)).unwrap();
        let out = pinhole.flow(m(0.4)).unwrap();
        prop_assert!(open >= shut * 0.999_999_999);
        prop_assert!(open * (1.0 - (out / litres(q)).value) <= shut * 1.000_000_001);
        let spent = water::time_to_level(&shape, m(high), m(low), litres(q)).unwrap();
        prop_assert!((spent - shut).abs() < Time::new::<second>(1e-6));
    }

    /// What ran out and in is what the basin lost, by small steps of the level.
    #[test]
    fn mass_balance_closes(i in 0..5usize, from in 0.0..0.2f64, to in 0.25..0.39f64, q in 0.0..0.4f64) {
        let shape = shapes()[i];
        let (steps, mut out, mut time) = (400, 0.0, 0.0);
        for n in 0..steps {
            let at = |n: i32| from + (to - from) * f64::from(n) / f64::from(steps);
            let t = time_to_level(&shape, &hole(), litres(q), m(at(n)), m(at(n + 1)));
            let Ok(t) = t else { prop_assert_eq!(t, Err(NEVER)); return Ok(()) };
            let middle = m(0.4 - 0.5 * (at(n) + at(n + 1)));
            out += hole().flow(middle).unwrap().get::<cubic_meter_per_second>() * t.value;
            time += t.value;
        }
        let lost = (shape.volume(m(from)) - shape.volume(m(to))).get::<cubic_meter>();
        prop_assert!((out - q * 1e-3 * time - lost).abs() < 1e-3 * lost, "{out} {time} {lost}");
        let whole = time_to_level(&shape, &hole(), litres(q), m(from), m(to)).unwrap();
        prop_assert!((whole.value / time - 1.0).abs() < 1e-9);
    }

    #[test]
    fn head_and_flow_of_an_overflow_go_both_ways(bore in 0.03..0.3f64, head in 1e-4..4.9f64) {
        let overflow = Standpipe { bore: m(bore) };
        let flow = overflow.flow(m(head)).unwrap();
        let back = overflow.head(flow).unwrap().get::<meter>();
        prop_assert!((back / head - 1.0).abs() < 1e-9);
        prop_assert!(overflow.flow(m(head * 1.01)).unwrap() > flow);
    }
}

/// Against SciPy 1.17.1; see `tests/reference/drain.py`.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/drain.csv"));
    let mut times = Accuracy::of(
        "Time to drain or fill, outlet open",
        "SciPy 1.17.1",
        0.01,
        "%",
    );
    for row in grid.rows() {
        let shape = match row.word("basin") {
            "straight" => box_6m2(),
            "round" => round(),
            "sloped" => sloped(),
            _ => tabled(),
        };
        let outlet = if row.number("z") > 0.0 {
            pipe()
        } else {
            hole()
        };
        let inflow = m3_s(row.number("inflow_m3_s"));
        let got = fall(
            &shape,
            &outlet,
            inflow,
            row.number("from_m"),
            row.number("to_m"),
        );
        match row.maybe("seconds") {
            Some(want) => times.point(got.expect("a time"), want, || row.said()),
            None => assert_eq!(got, Err(NEVER), "{}", row.said()),
        }
    }
    vec![times]
}
