//! The overflow: what it carries at a head, whether it holds back a fill valve
//! stuck open, and what the water costs that runs away.
//!
//! A standpipe, as a weir around its rim, Q = 0.6 (2/3) sqrt(2g) pi D h^1.5, and
//! drowned as an orifice, Q = 0.6 (pi D^2/4) sqrt(2 g h); the smaller governs.
//! Textbook forms, from memory; good for +/-20 %. A grille or leaves on the rim
//! take any part of it.

use uom::si::length::meter;
use uom::si::time::{day, second};
use uom::si::volume_rate::cubic_meter_per_second;

use super::error::{Error, Quantity, within};
use super::heat::flow_rate;
use super::piping::{GRAVITY, bore_of, circle};
use crate::quantity::{Length, Time, Volume, VolumeRate};

/// Discharge coefficient, as weir and as orifice.
const DISCHARGE: f64 = 0.6;
/// Highest head accepted, m.
const MOST_HEAD: f64 = 5.0;

/// An upright pipe with an open rim, emptying freely. The head is the water's
/// height above the rim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standpipe {
    /// Inside bore, 1 mm to 2 m.
    pub bore: Length,
}

/// What happens with a flow running to an overflow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Holding {
    /// Head over its rim at which it carries the flow.
    pub head: Length,
    /// What it carries with the water up to the rim of the basin.
    pub capacity: VolumeRate,
    /// Whether it holds: the head is no more than the room.
    pub holds: bool,
}

impl Standpipe {
    /// Both laws as c of Q = c h^1.5 and Q = c h^0.5, SI.
    fn laws(&self) -> Result<(f64, f64), Error> {
        let bore = bore_of(self.bore)?;
        let fall = DISCHARGE * (2.0 * GRAVITY).sqrt();
        let weir = fall * 2.0 / 3.0 * std::f64::consts::PI * bore;
        Ok((weir, fall * circle(bore)))
    }

    /// What it carries with the water this high above the rim.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the bore is outside the range it states or the
    /// head outside 0 to 5 m.
    pub fn flow(&self, head: Length) -> Result<VolumeRate, Error> {
        let head = within(Quantity::Head, head.get::<meter>(), 0.0, MOST_HEAD)?;
        let (weir, orifice) = self.laws()?;
        let root = head.sqrt();
        let flow = f64::min(weir * head * root, orifice * root);
        Ok(VolumeRate::new::<cubic_meter_per_second>(flow))
    }

    /// The head at which it carries a flow.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the bore is outside the range it states, the
    /// flow outside 0 to 10 m3/s, or the head above 5 m.
    pub fn head(&self, flow: VolumeRate) -> Result<Length, Error> {
        let (weir, orifice) = self.laws()?;
        let flow = flow_rate(flow)?;
        let head = f64::max((flow / weir).powf(2.0 / 3.0), (flow / orifice).powi(2));
        let head = within(Quantity::Head, head, 0.0, MOST_HEAD)?;
        Ok(Length::new::<meter>(head))
    }

    /// Whether it holds back a fill valve stuck open at `flow`, with `room`
    /// between the rim of the pipe and the lowest edge of the basin.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the bore is outside the range it states, the
    /// flow outside 0 to 10 m3/s, the room outside 0 to 5 m, or the head above
    /// 5 m.
    pub fn holding(&self, flow: VolumeRate, room: Length) -> Result<Holding, Error> {
        let capacity = self.flow(room)?;
        let head = self.head(flow)?;
        Ok(Holding {
            head,
            capacity,
            holds: head <= room,
        })
    }
}

/// Water that runs without stopping, and its cost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunningWater {
    /// Volume in a day of 24 hours.
    pub per_day: Volume,
    /// Volume in a year of 365 days.
    pub per_year: Volume,
    /// Cost in a year of 365 days, in the money the price is in.
    pub cost_per_year: f64,
}

/// What a flow left running uses and costs: an overflow, an open bypass, a fill
/// valve that passes. `price_per_m3` is the money, in any currency, that one
/// cubic metre costs, water and sewer together if both are charged (water that
/// evaporates may earn a sewer credit; water that overflows does not). A price
/// per 1000 US gallons divided by 3.785412 is one per cubic metre.
///
/// # Errors
/// [`Error::OutOfRange`] when the flow is outside 0 to 10 m3/s or the price
/// outside 0 to 1,000,000.
pub fn running_water(flow: VolumeRate, price_per_m3: f64) -> Result<RunningWater, Error> {
    let flow = flow_rate(flow)?;
    let price = within(Quantity::WaterPrice, price_per_m3, 0.0, 1e6)?;
    let seconds = Time::new::<day>(365.0).get::<second>();
    let rate = VolumeRate::new::<cubic_meter_per_second>(flow);
    Ok(RunningWater {
        per_day: rate * Time::new::<day>(1.0),
        per_year: rate * Time::new::<day>(365.0),
        cost_per_year: flow * seconds * price,
    })
}
