//! How fast a loop without a tower warms.

use uom::si::time::minute;

use super::{Ask, Sheet};
use crate::physics::basis::Figure;
use crate::physics::heat;
use crate::quantity::{Time, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "warm-up",
    asks: &[Ask::Heat, Ask::LoopVolume, Ask::LoopNow, Ask::LoopThen],
    rows: &[
        (Figure::MinutesToReach, |g| {
            g.need(SHEET.asks)?;
            Ok(Value::duration(heat::time_to_reach(
                g.heat(Ask::Heat)?,
                g.volume(Ask::LoopVolume)?,
                g.temperature(Ask::LoopNow)?,
                g.temperature(Ask::LoopThen)?,
            )?))
        }),
        (Figure::WarmUp, |g| {
            g.need(&[Ask::Heat, Ask::LoopVolume])?;
            Ok(Value::temperature_difference(heat::temperature_rise(
                g.heat(Ask::Heat)?,
                g.volume(Ask::LoopVolume)?,
                Time::new::<minute>(1.0),
            )?))
        }),
    ],
    ..Sheet::PLAIN
};
