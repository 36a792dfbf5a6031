//! Level electrodes: whether a film or foam fools the relay, and which
//! setting would not be fooled.

use uom::si::electrical_resistance::ohm;
use uom::si::length::millimeter;
use uom::si::ratio::ratio;

use super::given::{Fault, Given};
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{ElectrodeFigure, Figure};
use crate::physics::circuit::Caution;
use crate::physics::electrode::{Condition, Film, Foam, Leakage, Probe, Scale, Shape, Water};
use crate::quantity::{ElectricalConductivity, ElectricalResistance, Length, Ratio, Value};

/// How far a setting must keep from each condition, as a factor (judgement).
const MARGIN: f64 = 2.0;

pub(super) const SHEET: Sheet = Sheet {
    slug: "electrode",
    asks: &[
        Ask::Sensitivity,
        Ask::ProbeWater,
        Ask::FilmThickness,
        Ask::FoamLiquid,
        Ask::ScaleThickness,
        Ask::RodShape,
        Ask::RodDiameter,
        Ask::RodSpacing,
        Ask::RodImmersion,
    ],
    rows: &[
        (Figure::Electrode(ElectrodeFigure::WaterResistance), |g| {
            at(g, Condition::Water, Ask::RodImmersion)
        }),
        (Figure::Electrode(ElectrodeFigure::FilmResistance), |g| {
            at(g, Condition::Film, Ask::FilmThickness)
        }),
        (Figure::Electrode(ElectrodeFigure::FoamResistance), |g| {
            at(g, Condition::Foam, Ask::FoamLiquid)
        }),
        (Figure::Electrode(ElectrodeFigure::SafeSettings), |g| {
            match safe(g)? {
                // The middle of the span by ratio.
                Some((low, high)) => Ok(Value::resistance(ElectricalResistance::new::<ohm>(
                    (low * high).sqrt(),
                ))),
                None => Err(Fault::NoSafeSetting),
            }
        }),
    ],
    says: |g| sayings(g).unwrap_or_default(),
    cautions: |_| vec![Say::Caution(Caution::LiveParts)],
    shows: |g, ask| ask != Ask::RodSpacing || g.chosen(Ask::RodShape) != 2,
    ..Sheet::PLAIN
};

fn probe(given: &Given) -> Result<Probe, Fault> {
    let diameter = given.level(Ask::RodDiameter)?;
    let spacing = || given.level(Ask::RodSpacing);
    let mm = Length::new::<millimeter>;
    let immersion = given.level(Ask::RodImmersion)?;
    let conductivity: Option<ElectricalConductivity> = given.conductivity(Ask::ProbeWater).ok();
    let water = conductivity.map_or(Water::Cycled, Water::Measured);
    // A film 20 mm wide over the holder, as conductive as the water.
    let film = given.level(Ask::FilmThickness).ok().map(|thickness| Film {
        thickness,
        path: given.level(Ask::RodSpacing).unwrap_or(mm(40.0)),
        width: mm(20.0),
        conductivity: water.conductivity(),
    });
    let foam = given.part(Ask::FoamLiquid).ok().map(|liquid| Foam {
        liquid,
        wetted: immersion,
    });
    let scale = given
        .level(Ask::ScaleThickness)
        .ok()
        .map(|thickness| Scale {
            thickness,
            conductivity: ElectricalConductivity::new::<
                uom::si::electrical_conductivity::siemens_per_meter,
            >(1e-4),
        });
    Ok(Probe {
        shape: match given.chosen(Ask::RodShape) {
            0 => Shape::RodPair {
                diameter,
                spacing: spacing()?,
            },
            1 => Shape::RodInPipe {
                diameter,
                bore: spacing()?,
            },
            _ => Shape::RodToBasin { diameter },
        },
        immersion,
        water,
        film,
        foam,
        scale,
        leakage: Leakage::usual(),
    })
}

/// Resistance in a condition, which there is only when `ask` was given.
fn at(given: &Given, condition: Condition, ask: Ask) -> Result<Value, Fault> {
    let found = probe(given)?.resistance(condition)?;
    found.map(Value::resistance).ok_or(Fault::missing(ask))
}

/// The span of settings that nothing fools, ohm.
fn safe(given: &Given) -> Result<Option<(f64, f64)>, Fault> {
    let span = probe(given)?.safe_settings(Ratio::new::<ratio>(MARGIN))?;
    Ok(span.map(|(low, high)| (low.get::<ohm>(), high.get::<ohm>().min(1e6))))
}

fn sayings(given: &Given) -> Result<Vec<Saying>, Fault> {
    let sensed = probe(given)?.sensed(given.resistance(Ask::Sensitivity)?)?;
    let mut all = Vec::new();
    all.extend(sensed.into_iter().map(|one| Saying {
        tone: if one.fooled {
            Tone::Finding
        } else {
            Tone::Plain
        },
        say: Say::Electrode(one.condition, one.reads_wet, one.fooled),
        value: Some(Value::resistance(one.resistance)),
    }));
    if let Some((low, high)) = safe(given)? {
        for (end, ohms) in [(Say::SafeFrom, low), (Say::SafeTo, high)] {
            all.push(Saying {
                tone: Tone::Fits,
                say: end,
                value: Some(Value::resistance(ElectricalResistance::new::<ohm>(ohms))),
            });
        }
    }
    Ok(all)
}
