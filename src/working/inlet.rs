//! The pump inlet: how much water must stand over it, and how much does.

use super::given::{Fault, Given};
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, PipingFigure};
use crate::physics::piping::{Suction, suction};
use crate::quantity::{Length, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "inlet",
    asks: &[Ask::Flow, Ask::InletBore, Ask::InletDepth, Ask::LevelNow],
    rows: &[
        (Figure::Piping(PipingFigure::Submergence), |g| {
            g.need(&[Ask::Flow, Ask::InletBore])?;
            Ok(Value::level(inlet(g)?.submergence))
        }),
        (Figure::Piping(PipingFigure::AirFrom), |g| {
            g.need(&[Ask::Flow, Ask::InletBore, Ask::InletDepth])?;
            Ok(Value::level(air_from(g)?))
        }),
        (Figure::Piping(PipingFigure::OverInlet), |g| {
            g.need(&[Ask::InletDepth, Ask::LevelNow])?;
            let (inlet, now) = (g.level(Ask::InletDepth)?, g.level(Ask::LevelNow)?);
            if now > inlet {
                return Err(Fault::Order(Ask::InletDepth, Ask::LevelNow));
            }
            Ok(Value::level(inlet - now))
        }),
    ],
    says: |g| {
        let draws = air_from(g).and_then(|from| Ok(g.level(Ask::LevelNow)? > from));
        let said = draws.map(|draws| match draws {
            true => Saying::of(Tone::Finding, Say::InletDrawsAir),
            false => Saying::of(Tone::Plain, Say::InletHolds),
        });
        said.into_iter().collect()
    },
    cautions: |_| vec![Say::Drawdown],
    ..Sheet::PLAIN
};

fn inlet(given: &Given) -> Result<Suction, Fault> {
    Ok(suction(
        given.flow(Ask::Flow)?,
        given.level(Ask::InletBore)?,
    )?)
}

/// The level below the lip from which air is drawn; the lip itself where the
/// inlet lies too shallow for its flow.
fn air_from(given: &Given) -> Result<Length, Fault> {
    let from = given.level(Ask::InletDepth)? - inlet(given)?.submergence;
    Ok(if from.value > 0.0 {
        from
    } else {
        Length::default()
    })
}
