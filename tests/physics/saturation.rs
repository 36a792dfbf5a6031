//! Saturation pressure of water and the standard atmosphere.

use coldsump::physics::air;
use uom::si::pressure::pascal;

use crate::grid::{Accuracy, Grid};
use crate::{c, m, within_part};

/// ISO 2533:1975 by its own printed table, hPa at geopotential altitude: from
/// memory. ASHRAE's formula is the same atmosphere.
#[test]
fn the_standard_atmosphere_matches_its_table() {
    for (altitude, hectopascals) in [
        (-500.0, 1074.78),
        (0.0, 1013.25),
        (500.0, 954.61),
        (1000.0, 898.75),
        (1500.0, 845.56),
        (2000.0, 794.95),
        (3000.0, 701.09),
        (5000.0, 540.20),
    ] {
        let got = air::standard_pressure(m(altitude)).unwrap();
        let got = got.get::<pascal>() / 100.0;
        within_part(got, hectopascals, 1e-4, &format!("at {altitude} m"));
    }
}

/// Over ice, over liquid, and the atmosphere.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/saturation.csv"));
    let of = |what, reference| Accuracy::of(what, reference, 0.1, "%");
    let mut ice = of("Saturation over ice, -40 to -1 C", "CoolProp 8.0.0");
    let mut liquid = of("Saturation over water, 0 to 90 C", "CoolProp 8.0.0");
    let mut atmosphere = of("Standard atmosphere, -500 to 5000 m", "ISO 2533");
    for row in grid.rows() {
        let (at, want) = (row.number("at"), row.number("pressure_pa"));
        let saturated = || air::saturation_pressure(c(at)).unwrap().get::<pascal>();
        match row.word("what") {
            "ice" => ice.point(saturated(), want, || row.said()),
            "liquid" => liquid.point(saturated(), want, || row.said()),
            "atmosphere" => {
                let got = air::standard_pressure(m(at)).unwrap().get::<pascal>();
                atmosphere.point(got, want, || row.said());
            }
            other => panic!("{other}"),
        }
    }
    vec![ice, liquid, atmosphere]
}
