//! How much stands in the basin, how long it lasts, and how fast a loop
//! without a tower warms.

use uom::si::length::meter;
use uom::si::time::minute;

use super::Ask;
use super::given::{Fault, Given, Lines, both};
use super::plot::Picture;
use crate::physics::basin::{Basin, Plan};
use crate::physics::basis::Figure;
use crate::physics::{heat, water};
use crate::quantity::{Length, Time, Value};

pub(super) const ASKS: &[Ask] = &[
    Ask::BasinShape,
    Ask::BasinLength,
    Ask::BasinWidth,
    Ask::BasinDepth,
    Ask::LevelNow,
    Ask::LevelThen,
    Ask::Loss,
];

pub(super) const WARM_UP_ASKS: &[Ask] = &[Ask::Heat, Ask::LoopVolume, Ask::LoopNow, Ask::LoopThen];

fn basin(given: &Given) -> Result<Basin, Fault> {
    let length = given.length(Ask::BasinLength);
    let plan = match given.chosen(Ask::BasinShape) {
        1 => Plan::Round { diameter: length? },
        _ => {
            let (length, width) = both(length, given.length(Ask::BasinWidth))?;
            Plan::Rectangular { length, width }
        }
    };
    Ok(Basin {
        plan,
        depth: given.level(Ask::BasinDepth)?,
    })
}

pub(super) fn solve(given: &Given, out: &mut Lines) {
    let basin = basin(given);
    let now = both(basin.clone(), given.level(Ask::LevelNow)).and_then(|(basin, now)| {
        match now <= basin.depth {
            true => Ok((basin, now)),
            false => Err(Fault::Order(Ask::LevelNow, Ask::BasinDepth)),
        }
    });
    let losing = both(now.clone(), given.flow(Ask::Loss));
    out.say(
        Figure::MinutesToDry,
        losing.clone().and_then(|((basin, now), loss)| {
            Ok(Value::duration(water::time_to_dry(&basin, now, loss)?))
        }),
    );
    out.say(
        Figure::MinutesToLevel,
        both(losing, given.level(Ask::LevelThen)).and_then(|(((basin, now), loss), then)| {
            Ok(Value::duration(water::time_to_level(
                &basin, now, then, loss,
            )?))
        }),
    );
    out.say(
        Figure::BasinVolume,
        now.clone()
            .map(|(basin, now)| Value::volume(basin.volume(now))),
    );
    out.say(
        Figure::BasinWhenFull,
        basin
            .clone()
            .map(|b| Value::volume(b.volume(Length::new::<meter>(0.0)))),
    );
    out.picture = now.ok().map(|(basin, now)| Picture::Basin {
        depth: basin.depth.get::<meter>(),
        now: now.get::<meter>(),
        then: given.level(Ask::LevelThen).ok().map(|l| l.get::<meter>()),
    });
}

pub(super) fn warm_up(given: &Given, out: &mut Lines) {
    let load = both(given.heat(Ask::Heat), given.volume(Ask::LoopVolume));
    out.say(
        Figure::MinutesToReach,
        both(
            load.clone(),
            both(
                given.temperature(Ask::LoopNow),
                given.temperature(Ask::LoopThen),
            ),
        )
        .and_then(|((heat_in, water), (from, to))| {
            Ok(Value::duration(heat::time_to_reach(
                heat_in, water, from, to,
            )?))
        }),
    );
    out.say(
        Figure::WarmUp,
        load.and_then(|(heat_in, water)| {
            let rise = heat::temperature_rise(heat_in, water, Time::new::<minute>(1.0))?;
            Ok(Value::temperature_difference(rise))
        }),
    );
}
