//! Drawing the basin down and filling it again: how long each takes.

use uom::si::ratio::ratio;

use super::basin::{basin, needs, shows};
use super::given::{Fault, Given};
use super::say::Say;
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, PipingFigure};
use crate::physics::drain::{Outlet, time_to_fill, time_to_level};
use crate::quantity::{Length, Ratio, Value, VolumeRate};

pub(super) const SHEET: Sheet = Sheet {
    slug: "drain",
    asks: &[
        Ask::BasinShape,
        Ask::BasinLength,
        Ask::BasinWidth,
        Ask::FloorFall,
        Ask::BasinDepth,
        Ask::LevelFrom,
        Ask::LevelTo,
        Ask::DrainBore,
        Ask::FillRunning,
        Ask::FillMeasured,
        Ask::Loss,
    ],
    rows: &[
        (Figure::Piping(PipingFigure::DrainTime), |g| {
            needs(g, &[Ask::LevelFrom, Ask::LevelTo, Ask::DrainBore])?;
            Ok(Value::duration(time_to_level(
                &basin(g)?,
                &outlet(g)?,
                g.flow(Ask::FillRunning).unwrap_or(VolumeRate::default()),
                g.level(Ask::LevelFrom)?,
                g.level(Ask::LevelTo)?,
            )?))
        }),
        (Figure::Piping(PipingFigure::FillTime), |g| {
            needs(g, &[Ask::LevelFrom, Ask::LevelTo, Ask::FillMeasured])?;
            // The way back up.
            Ok(Value::duration(time_to_fill(
                &basin(g)?,
                g.level(Ask::LevelTo)?,
                g.level(Ask::LevelFrom)?,
                g.flow(Ask::FillMeasured)?,
                g.flow(Ask::Loss).unwrap_or(VolumeRate::default()),
            )?))
        }),
        (Figure::Piping(PipingFigure::SteadyLevel), |g| {
            g.need(&[Ask::BasinDepth, Ask::DrainBore, Ask::FillRunning])?;
            let height = outlet(g)?.steady_height(g.flow(Ask::FillRunning)?)?;
            // Below the lip, as every level; at the lip it runs over.
            let below = g.level(Ask::BasinDepth)? - height;
            Ok(Value::level(if below.value > 0.0 {
                below
            } else {
                Length::default()
            }))
        }),
    ],
    shows,
    cautions: |_| vec![Say::Drawdown],
    ..Sheet::PLAIN
};

fn outlet(given: &Given) -> Result<Outlet, Fault> {
    Ok(Outlet::Hole {
        bore: given.level(Ask::DrainBore)?,
        coefficient: Ratio::new::<ratio>(0.62),
    })
}
