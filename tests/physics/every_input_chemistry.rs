//! Any finite input to the chemistry and the head pressure gives a finite answer
//! or a typed error.

use coldsump::physics::chemistry::cycles::change;
use coldsump::physics::chemistry::guideline::{Analysis, Item};
use coldsump::physics::chemistry::{Water, dissolved_solids};
use coldsump::physics::refrigerant::{Refrigerant, head};
use coldsump::quantity::ElectricalConductivity;
use proptest::prelude::*;
use uom::si::electrical_conductivity::siemens_per_meter;

use crate::chemistry::mg;
use crate::every_input::{dk, k, number, sound};
use crate::{pa, part};

fn mostly(usual: std::ops::Range<f64>) -> BoxedStrategy<f64> {
    prop_oneof![6 => usual, 1 => number()].boxed()
}

proptest! {
    #[test]
    fn chemistry_is_sound(
        ph in mostly(4.0..12.0), t in mostly(270.0..370.0), solids in mostly(1.0..3e4),
        calcium in mostly(0.0..6e3), alkalinity in mostly(0.0..6e3), s in mostly(0.0..0.5),
        factor in mostly(0.3..1.1), other in number(),
    ) {
        let water = Water {
            ph, temperature: k(t), dissolved_solids: mg(solids), calcium: mg(calcium),
            alkalinity: mg(alkalinity),
        };
        let indices = water.indices();
        sound(indices.map(|i| i.langelier + i.ryznar + i.puckorius + i.saturation_ph))?;
        let conductivity = ElectricalConductivity::new::<siemens_per_meter>(s);
        sound(dissolved_solids(conductivity, factor).map(|q| q.value))?;
        sound(change(part(other), part(factor)).map(|c| c.factor))?;
        let analysis = Analysis {
            ph: Some(ph), indices: indices.ok(), calcium: Some(mg(calcium)),
            chloride: Some(mg(other)), alkalinity: Some(mg(f64::NAN)),
            conductivity: Some(conductivity),
        };
        for found in analysis.findings() {
            prop_assert!(found.limit.is_finite());
            prop_assert_ne!(found.item, Item::Alkalinity);
        }
    }

    #[test]
    fn head_is_sound(
        i in 0..14usize, t in mostly(270.0..345.0), approach in mostly(-5.0..20.0),
        p in mostly(5e4..1.1e5),
    ) {
        let fluid = Refrigerant::ALL[i];
        let (approach, p) = (dk(approach), pa(p));
        sound(fluid.condensing_pressure(k(t)).map(|q| q.value))?;
        sound(head::expected(fluid, k(t), approach, p).map(|q| q.pascals()))?;
    }
}
