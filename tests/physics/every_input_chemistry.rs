//! Any finite input to the chemistry and the head pressure gives a finite answer
//! or a typed error.

use coldsump::physics::chemistry::cycles::{Against, beyond_bleed, change};
use coldsump::physics::chemistry::guideline::{Analysis, Metal};
use coldsump::physics::chemistry::{Water, dissolved_solids, skin};
use coldsump::physics::refrigerant::{Refrigerant, head};
use coldsump::quantity::{ElectricalConductivity, GaugePressure, TemperatureInterval};
use proptest::prelude::*;
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::kelvin;

use crate::chemistry::mg;
use crate::every_input::{number, sound};
use crate::{m3_s, pa, part};

fn k(v: f64) -> coldsump::quantity::ThermodynamicTemperature {
    coldsump::quantity::ThermodynamicTemperature::new::<kelvin>(v)
}

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
        sound(skin(Some(k(other)), k(t)).map(|s| s.temperature.value))?;
        sound(change(part(other), part(factor), Against::SetPoint).map(|c| c.factor))?;
        sound(beyond_bleed(m3_s(s), part(factor * 5.0), part(other)).map(|q| q.value))?;
        let analysis = Analysis {
            ph: Some(ph), temperature: Some(k(t)), indices: indices.ok(), calcium: Some(mg(calcium)),
            chloride: Some(mg(other)), silica: Some(mg(f64::NAN)), conductivity: Some(conductivity),
            metal: Metal::Stainless316, ..Analysis::default()
        };
        for found in analysis.findings() {
            prop_assert!(found.value.is_finite() && found.limit.is_finite());
            prop_assert_eq!(found.value > found.limit, found.above);
        }
    }

    #[test]
    fn head_is_sound(
        i in 0..14usize, t in mostly(270.0..345.0), approach in mostly(-5.0..20.0),
        range in mostly(0.0..20.0), g in mostly(0.0..5e6), cut in mostly(0.0..5e6),
        p in mostly(5e4..1.1e5),
    ) {
        let fluid = Refrigerant::ALL[i];
        let (g, cut) = (GaugePressure::from_pascals(g), GaugePressure::from_pascals(cut));
        let interval = TemperatureInterval::new::<kelvin_interval>;
        let (approach, range, p) = (interval(approach), interval(range), pa(p));
        sound(fluid.condensing_pressure(k(t)).map(|q| q.value))?;
        sound(head::condenser_approach(fluid, g, k(t), p).map(|q| q.value))?;
        sound(head::expected(fluid, k(t), approach, p).map(|q| q.pascals()))?;
        sound(head::room(fluid, g, cut, p).map(|r| r.pressure.value + r.warmer.value + r.trips_at.value))?;
        sound(head::leaving_water_at_trip(fluid, cut, approach, p).map(|q| q.value))?;
        sound(head::entering_water_at_trip(fluid, cut, approach, range, p).map(|q| q.value))?;
    }
}
