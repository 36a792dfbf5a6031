//! Water chemistry.

use coldsump::physics::chemistry::cycles::{Cause, change};
use coldsump::physics::chemistry::guideline::{Analysis, Item};
use coldsump::physics::chemistry::{
    Band, Index, Indices, USUAL_SOLIDS_FACTOR, Water, dissolved_solids,
};
use coldsump::physics::{Error, Quantity};
use coldsump::quantity::{ElectricalConductivity, MassConcentration, Unit};
use proptest::prelude::*;
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::mass_concentration::kilogram_per_cubic_meter;

use crate::grid::{Accuracy, Grid};
use crate::{c, near, part};

pub fn mg(v: f64) -> MassConcentration {
    MassConcentration::new::<kilogram_per_cubic_meter>(v / 1000.0)
}

fn micro(v: f64) -> ElectricalConductivity {
    ElectricalConductivity::new::<siemens_per_meter>(v * 1e-4)
}

fn water(ph: f64, celsius: f64, solids: f64, calcium: f64, alkalinity: f64) -> Water {
    Water {
        ph,
        temperature: c(celsius),
        dissolved_solids: mg(solids),
        calcium: mg(calcium),
        alkalinity: mg(alkalinity),
    }
}

/// UFC 3-240-13FN (2005), examples B-1 and B-2: pHs 6.77, LSI 1.43, RSI 5.34,
/// PSI 6.07, with B read from its table, 1.57. The formula has B 1.649, so pHs
/// is 0.08 above the print, LSI as much below, RSI and PSI twice that above.
#[test]
fn the_worked_example_of_ufc_3_240_13fn() {
    let got = water(8.2, 48.889, 1000.0, 500.0, 100.0).indices().unwrap();
    let from_table = 1.649 - 1.57;
    near(got.saturation_ph - from_table, 6.77, 0.006, "pHs");
    near(got.langelier + from_table, 1.43, 0.006, "LSI");
    near(got.ryznar - 2.0 * from_table, 5.34, 0.012, "RSI");
    near(got.puckorius - 2.0 * from_table, 6.07, 0.012, "PSI");
    assert_eq!(got.band(Index::Langelier), Band::Scaling);
    assert_eq!(got.band(Index::Ryznar), Band::Scaling);
    assert_eq!(got.band(Index::Puckorius), Band::Balanced);
}

/// A common published example: factors A 0.15, B 2.09, C 1.78, D 1.53 at 25 C,
/// B 1.09 at 82 C; saturation pH 8.2 and 7.2; LSI -0.7 (from memory) and 0.3.
#[test]
fn the_common_example_cold_and_hot() {
    let cold = water(7.5, 25.0, 320.0, 150.0, 34.0).indices().unwrap();
    near(cold.saturation_ph, 8.2, 0.05, "cold pHs");
    near(cold.langelier, -0.7, 0.05, "cold LSI");
    assert_eq!(cold.band(Index::Langelier), Band::Corrosive);
    let hot = water(7.5, 82.0, 320.0, 150.0, 34.0).indices().unwrap();
    near(hot.saturation_ph, 7.2, 0.05, "hot pHs");
    near(hot.langelier, 0.3, 0.05, "hot LSI");
    // As near to zero as the formula is good for.
    assert_eq!(hot.band(Index::Langelier), Band::Balanced);
}

/// Printed bands of UFC 3-240-13FN, appendix B.
#[test]
fn the_bands_turn_where_they_are_printed() {
    let at = |ryznar| Indices {
        saturation_ph: 7.0,
        langelier: 0.0,
        ryznar,
        puckorius: ryznar,
    };
    for index in [Index::Ryznar, Index::Puckorius] {
        assert_eq!(at(5.99).band(index), Band::Scaling);
        assert_eq!(at(6.01).band(index), Band::Balanced);
        assert_eq!(at(7.01).band(index), Band::Corrosive);
    }
}

/// The doubt of the factor moves an index by less than 0.015.
#[test]
fn solids_from_conductivity_and_what_the_doubt_does() {
    let solids = dissolved_solids(micro(1450.0), USUAL_SOLIDS_FACTOR).unwrap();
    near(
        solids.get::<kilogram_per_cubic_meter>(),
        1.015,
        1e-9,
        "kg/m3",
    );
    let index = |factor| {
        let mut water = water(8.0, 35.0, 1.0, 300.0, 200.0);
        water.dissolved_solids = dissolved_solids(micro(1450.0), factor).unwrap();
        water.indices().unwrap().langelier
    };
    let usual = index(USUAL_SOLIDS_FACTOR);
    let (low, high) = (0.6, 0.8);
    assert!((index(low) - usual).abs() < 0.015 && (index(high) - usual).abs() < 0.015);
    assert_ne!(index(low), index(high));
}

/// A maker's circulating-water sheet for galvanized towers, value by value: the
/// end printed is allowed, a hair more is not.
#[test]
fn the_limits_of_the_sheet() {
    for (item, low, high) in [
        (Item::Alkalinity, Some(100.0), 500.0),
        (Item::Calcium, Some(50.0), 500.0),
        (Item::Chloride, None, 300.0),
    ] {
        let found = |v: f64| {
            let mut water = Analysis::default();
            *field(&mut water, item) = Some(mg(v));
            water.findings()
        };
        assert_eq!(found(high), [], "{item:?}");
        let over = found(high * 1.01);
        assert_eq!(over.len(), 1, "{item:?}");
        assert_eq!((over[0].item, over[0].above), (item, true));
        near(over[0].limit, high / 1000.0, 1e-12, "limit");
        if let Some(low) = low {
            assert_eq!(found(low), [], "{item:?}");
            let under = found(low * 0.99);
            assert!(under.len() == 1 && !under[0].above, "{item:?}");
        }
    }
}

fn field(water: &mut Analysis, item: Item) -> &mut Option<MassConcentration> {
    match item {
        Item::Alkalinity => &mut water.alkalinity,
        Item::Calcium => &mut water.calcium,
        Item::Chloride => &mut water.chloride,
        other => panic!("{other:?} is no concentration"),
    }
}

#[test]
fn an_over_cycled_tower_breaks_what_it_should() {
    let water = Analysis {
        ph: Some(8.6),
        indices: Some(water(8.6, 35.0, 1500.0, 450.0, 250.0).indices().unwrap()),
        chloride: Some(mg(250.0)),
        conductivity: Some(micro(2300.0)),
        ..Analysis::default()
    };
    let items =
        |water: &Analysis| -> Vec<Item> { water.findings().iter().map(|f| f.item).collect() };
    assert_eq!(
        items(&water),
        [Item::Ph, Item::Langelier, Item::Conductivity]
    );
    // 1500 mg/L at the usual factor.
    let limit = Unit::MicrosiemensPerCentimetre.from_si(water.findings()[2].limit);
    near(limit, 2142.9, 0.1, "uS/cm");
    assert_eq!(Analysis::default().findings(), []);
}

#[test]
fn a_rise_and_a_fall_suggest_opposite_things() {
    let set = |now, set| change(part(now), part(set)).unwrap();
    assert_eq!(
        set(6.0, 4.0).causes,
        [
            Cause::BlockedBleed,
            Cause::ShutMakeup,
            Cause::FoamFromOverCycling
        ]
    );
    // Not over-cycled: foam is not suggested.
    assert_eq!(
        set(4.0, 3.0).causes,
        [Cause::BlockedBleed, Cause::ShutMakeup]
    );
    let fall = set(2.0, 4.0);
    assert_eq!(fall.factor, 0.5);
    assert_eq!(
        fall.causes[..3],
        [Cause::Overflow, Cause::Leak, Cause::BypassLeftOpen]
    );
    // What two meters may disagree by.
    assert!(set(4.3, 4.0).causes.is_empty());
    assert!(!set(4.6, 4.0).causes.is_empty());
    let error = change(part(0.0), part(4.0)).unwrap_err();
    assert!(matches!(
        error,
        Error::OutOfRange {
            quantity: Quantity::Cycles,
            ..
        }
    ));
}

proptest! {
    #[test]
    fn more_of_anything_that_scales_raises_the_index(
        ph in 6.0..10.0f64, t in 1.0..90.0f64, solids in 50.0..5e3f64,
        calcium in 5.0..2e3f64, alkalinity in 5.0..2e3f64,
    ) {
        let langelier = |w: Water| w.indices().unwrap().langelier;
        let base = langelier(water(ph, t, solids, calcium, alkalinity));
        prop_assert!(langelier(water(ph + 0.1, t, solids, calcium, alkalinity)) > base);
        prop_assert!(langelier(water(ph, t + 1.0, solids, calcium, alkalinity)) > base);
        prop_assert!(langelier(water(ph, t, solids, calcium * 1.1, alkalinity)) > base);
        prop_assert!(langelier(water(ph, t, solids, calcium, alkalinity * 1.1)) > base);
        prop_assert!(langelier(water(ph, t, solids * 1.1, calcium, alkalinity)) < base);
    }

    #[test]
    fn the_indices_hang_together(ph in 6.0..10.0f64, t in 1.0..90.0f64, alkalinity in 5.0..2e3f64) {
        let got = water(ph, t, 800.0, 200.0, alkalinity).indices().unwrap();
        prop_assert!((got.langelier - (ph - got.saturation_ph)).abs() < 1e-12);
        prop_assert!((got.ryznar - (ph - 2.0 * got.langelier)).abs() < 1e-12);
        // At its saturation pH the water is at zero, whatever it holds.
        let settled = water(got.saturation_ph, t, 800.0, 200.0, alkalinity);
        if let Ok(settled) = settled.indices() {
            prop_assert!(settled.langelier.abs() < 1e-9);
            prop_assert_eq!(settled.band(Index::Langelier), Band::Balanced);
        }
    }

    #[test]
    fn a_change_is_noticed_both_ways_or_neither(a in 1.1..20.0f64, b in 1.1..20.0f64) {
        let there = change(part(a), part(b)).unwrap();
        let back = change(part(b), part(a)).unwrap();
        prop_assert!((there.factor * back.factor - 1.0).abs() < 1e-12);
        let near = (there.factor.max(back.factor) - 1.10).abs() < 1e-9;
        prop_assert!(near || there.causes.is_empty() == back.causes.is_empty());
    }
}

/// In pH units. The formulae against a second writing of them, the Langelier index
/// against the saturation index of calcite.
pub fn accuracy() -> Vec<Accuracy> {
    let grid = Grid::read(include_str!("../reference/water_chemistry.csv"));
    let formula = "the formula, in Python";
    let mut langelier = Accuracy::of("Langelier index", formula, 0.01, "pH");
    let mut ryznar = Accuracy::of("Ryznar index", formula, 0.01, "pH");
    let mut puckorius = Accuracy::of("Puckorius index", formula, 0.01, "pH");
    let phreeqc = "calcite by PHREEQC (scatter of the method)";
    let mut usual = Accuracy::of("Langelier index, 20 to 40 C", phreeqc, 0.25, "pH");
    let mut wide = Accuracy::of("Langelier index, 5 to 82 C", phreeqc, 0.3, "pH");
    for row in grid.rows() {
        let n = |column| row.number(column);
        let celsius = n("celsius");
        let calcium = n("calcium_mg_l");
        let water = water(
            n("ph"),
            celsius,
            n("tds_mg_l"),
            calcium,
            n("alkalinity_mg_l"),
        );
        let got = water.indices().unwrap();
        langelier.point(got.langelier, n("langelier"), || row.said());
        ryznar.point(got.ryznar, n("ryznar"), || row.said());
        puckorius.point(got.puckorius, n("puckorius"), || row.said());
        wide.point(got.langelier, n("calcite_si"), || row.said());
        if (20.0..=40.0).contains(&celsius) {
            usual.point(got.langelier, n("calcite_si"), || row.said());
        }
    }
    vec![langelier, ryznar, puckorius, usual, wide]
}
