//! How much stands in the basin, and how long it lasts.

use uom::si::length::meter;

use super::given::{Fault, Given};
use super::plot::Picture;
use super::say::Say;
use super::{Ask, Sheet};
use crate::physics::basin::{Basin, Plan};
use crate::physics::basis::Figure;
use crate::physics::water;
use crate::quantity::{Length, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "basin",
    asks: &[
        Ask::BasinShape,
        Ask::BasinLength,
        Ask::BasinWidth,
        Ask::FloorFall,
        Ask::BasinDepth,
        Ask::LevelNow,
        Ask::LevelThen,
        Ask::Loss,
    ],
    rows: &[
        (Figure::MinutesToDry, |g| {
            needs(g, &[Ask::LevelNow, Ask::Loss])?;
            let ((basin, now), loss) = (standing(g)?, g.flow(Ask::Loss)?);
            Ok(Value::duration(water::time_to_dry(&basin, now, loss)?))
        }),
        (Figure::MinutesToLevel, |g| {
            needs(g, &[Ask::LevelNow, Ask::LevelThen, Ask::Loss])?;
            let ((basin, now), then) = (standing(g)?, g.level(Ask::LevelThen)?);
            let loss = g.flow(Ask::Loss)?;
            let time = water::time_to_level(&basin, now, then, loss)?;
            Ok(Value::duration(time))
        }),
        (Figure::BasinVolume, |g| {
            needs(g, &[Ask::LevelNow])?;
            let (basin, now) = standing(g)?;
            Ok(Value::volume(basin.volume(now)))
        }),
        (Figure::BasinWhenFull, |g| {
            needs(g, &[])?;
            let lip = Length::new::<meter>(0.0);
            Ok(Value::volume(basin(g)?.volume(lip)))
        }),
    ],
    draw: |g| {
        let (basin, now) = standing(g).ok()?;
        Some(Picture::Basin {
            depth: basin.depth.get::<meter>(),
            now: now.get::<meter>(),
            then: g.si(Ask::LevelThen),
            outline: basin.outline(),
        })
    },
    shows,
    cautions: |_| vec![Say::Roof],
    ..Sheet::PLAIN
};

/// A side only where the shape has it.
pub(super) fn shows(given: &Given, ask: Ask) -> bool {
    match ask {
        Ask::BasinWidth => given.chosen(Ask::BasinShape) != 1,
        Ask::FloorFall => given.chosen(Ask::BasinShape) == 2,
        _ => true,
    }
}

/// The basin's own inputs and these.
pub(super) fn needs(given: &Given, more: &[Ask]) -> Result<(), Fault> {
    let sides: &[Ask] = match given.chosen(Ask::BasinShape) {
        1 => &[Ask::BasinLength, Ask::BasinDepth],
        2 => &[
            Ask::BasinLength,
            Ask::BasinWidth,
            Ask::FloorFall,
            Ask::BasinDepth,
        ],
        _ => &[Ask::BasinLength, Ask::BasinWidth, Ask::BasinDepth],
    };
    given.need(&[sides, more].concat())
}

pub(super) fn basin(given: &Given) -> Result<Basin, Fault> {
    let length = given.length(Ask::BasinLength)?;
    let depth = given.level(Ask::BasinDepth)?;
    Ok(Basin {
        plan: match given.chosen(Ask::BasinShape) {
            1 => Plan::Round { diameter: length },
            2 => {
                let fall = given.level(Ask::FloorFall)?;
                if fall > depth {
                    return Err(Fault::Order(Ask::BasinDepth, Ask::FloorFall));
                }
                Plan::SlopedFloor {
                    length,
                    width: given.length(Ask::BasinWidth)?,
                    fall,
                }
            }
            _ => Plan::Rectangular {
                length,
                width: given.length(Ask::BasinWidth)?,
            },
        },
        depth,
    })
}

/// The basin and the level in it.
fn standing(given: &Given) -> Result<(Basin, Length), Fault> {
    let (basin, now) = (basin(given)?, given.level(Ask::LevelNow)?);
    if now <= basin.depth {
        Ok((basin, now))
    } else {
        Err(Fault::Order(Ask::BasinDepth, Ask::LevelNow))
    }
}
