//! The overflow: whether it holds back a fill that never stops, and what
//! water left running costs.

use super::given::{Fault, Given};
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, PipingFigure};
use crate::physics::overflow::{Holding, RunningWater, Standpipe, running_water};
use crate::quantity::{Unit, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "overflow",
    asks: &[
        Ask::OverflowBore,
        Ask::RunningFlow,
        Ask::RimRoom,
        Ask::WaterPrice,
    ],
    rows: &[
        (Figure::Piping(PipingFigure::OverflowHead), |g| {
            Ok(Value::level(holding(g)?.head))
        }),
        (Figure::OverflowCapacity, |g| {
            Ok(Value::flow(holding(g)?.capacity))
        }),
        (Figure::WaterPerDay, |g| {
            Ok(Value::volume(running(g)?.per_day))
        }),
        (Figure::Piping(PipingFigure::RunningWater), |g| {
            g.need(&[Ask::RunningFlow, Ask::WaterPrice])?;
            Ok(Value::number(running(g)?.cost_per_year))
        }),
    ],
    says: |g| {
        let holds = holding(g).map(|h| h.holds);
        let said = holds.map(|holds| match holds {
            true => Saying::of(Tone::Fits, Say::OverflowHolds),
            false => Saying::of(Tone::Finding, Say::OverflowFails),
        });
        said.into_iter().collect()
    },
    ..Sheet::PLAIN
};

fn holding(given: &Given) -> Result<Holding, Fault> {
    given.need(&[Ask::OverflowBore, Ask::RunningFlow])?;
    let pipe = Standpipe {
        bore: given.level(Ask::OverflowBore)?,
    };
    Ok(pipe.holding(given.flow(Ask::RunningFlow)?, given.level(Ask::RimRoom)?)?)
}

/// The price is asked for 1,000 US gallons.
fn running(given: &Given) -> Result<RunningWater, Fault> {
    let thousand = 1000.0 * Unit::Gallon.to_si(1.0);
    let price = given.si(Ask::WaterPrice).unwrap_or(0.0) / thousand;
    Ok(running_water(given.flow(Ask::RunningFlow)?, price)?)
}
