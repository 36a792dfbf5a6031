//! What the water does to the tubes: scaling indices, limits, cycles.

use uom::si::ratio::ratio;

use super::given::{Answered, Fault, Given};
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{ChemistryFigure, Figure};
use crate::physics::chemistry::cycles::change;
use crate::physics::chemistry::guideline::Analysis;
use crate::physics::chemistry::{Index, Indices, USUAL_SOLIDS_FACTOR, Water, dissolved_solids};
use crate::quantity::{MassConcentration, Ratio, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "scale",
    asks: &[
        Ask::Ph,
        Ask::SkinWater,
        Ask::BasinConductivity,
        Ask::Calcium,
        Ask::Alkalinity,
        Ask::Chloride,
        Ask::MakeupConductivity,
        Ask::SetCycles,
    ],
    rows: &[
        (Figure::Chemistry(ChemistryFigure::Langelier), |g| {
            index(g, |i| i.langelier)
        }),
        (Figure::Chemistry(ChemistryFigure::Ryznar), |g| {
            index(g, |i| i.ryznar)
        }),
        (Figure::Chemistry(ChemistryFigure::Puckorius), |g| {
            index(g, |i| i.puckorius)
        }),
        (Figure::Chemistry(ChemistryFigure::SaturationPh), |g| {
            Ok(Value::ph(indices(g)?.saturation_ph))
        }),
        (Figure::Chemistry(ChemistryFigure::DissolvedSolids), |g| {
            Ok(Value::concentration(solids(g)?))
        }),
        (Figure::Chemistry(ChemistryFigure::CyclesChange), |g| {
            let now = super::water::cycles(g)?;
            let set = Ratio::new::<ratio>(g.number(Ask::SetCycles)?);
            Ok(Value::number(change(now, set)?.factor))
        }),
    ],
    says,
    cautions: |_| vec![Say::Treatment],
    ..Sheet::PLAIN
};

fn solids(given: &Given) -> Result<MassConcentration, Fault> {
    let conductivity = given.conductivity(Ask::BasinConductivity)?;
    Ok(dissolved_solids(conductivity, USUAL_SOLIDS_FACTOR)?)
}

fn indices(given: &Given) -> Result<Indices, Fault> {
    given.need(&[
        Ask::Ph,
        Ask::SkinWater,
        Ask::BasinConductivity,
        Ask::Calcium,
        Ask::Alkalinity,
    ])?;
    let water = Water {
        ph: given.ph(Ask::Ph)?,
        temperature: given.temperature(Ask::SkinWater)?,
        dissolved_solids: solids(given)?,
        calcium: given.as_calcium(Ask::Calcium)?,
        alkalinity: given.as_calcium(Ask::Alkalinity)?,
    };
    Ok(water.indices()?)
}

fn index(given: &Given, get: fn(Indices) -> f64) -> Answered {
    Ok(Value::number(get(indices(given)?)))
}

fn says(given: &Given) -> Vec<Saying> {
    let mut all = Vec::new();
    let indices = indices(given).ok();
    if let Some(found) = indices {
        for which in [Index::Langelier, Index::Ryznar, Index::Puckorius] {
            all.push(Saying {
                tone: Tone::Plain,
                say: Say::Band(which, found.band(which)),
                value: Some(Value::number(found.of(which))),
            });
        }
    }
    let analysis = Analysis {
        ph: given.ph(Ask::Ph).ok(),
        indices,
        alkalinity: given.as_calcium(Ask::Alkalinity).ok(),
        calcium: given.as_calcium(Ask::Calcium).ok(),
        chloride: given.concentration(Ask::Chloride).ok(),
        conductivity: given.conductivity(Ask::BasinConductivity).ok(),
    };
    all.extend(analysis.findings().into_iter().map(|f| Saying {
        tone: Tone::Finding,
        say: Say::Limit(f.item, f.above),
        value: Some(Value {
            kind: f.item.kind(),
            si: f.limit,
        }),
    }));
    let set = given.number(Ask::SetCycles).map(Ratio::new::<ratio>);
    if let (Ok(now), Ok(set)) = (super::water::cycles(given), set)
        && let Ok(change) = change(now, set)
    {
        let causes = change.causes.iter();
        all.extend(causes.map(|cause| Saying::of(Tone::Finding, Say::Cycles(*cause))));
    }
    all
}
