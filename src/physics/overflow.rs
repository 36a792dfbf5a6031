//! The overflow: what it carries at a head, whether it holds back a fill valve
//! stuck open, and what the water costs that runs away.
//!
//! Standpipe: as a weir around its rim, Q = 0.6 (2/3) sqrt(2g) pi D h^1.5, and
//! drowned as an orifice, Q = 0.6 (pi D^2/4) sqrt(2 g h); the smaller governs.
//! Rectangular weir without end contractions: Q = 1.84 L h^1.5 (SI). V-notch:
//! Q = (8/15) Cd sqrt(2g) tan(angle/2) h^2.5, Cd 0.585. Textbook forms,
//! from memory; sharp-edged and free-falling. Good for +/-10 %, and for a
//! standpipe +/-20 %: another published form of the rectangular weir gives 4 %
//! more. A grille or leaves on the rim take any part of it.

use serde::{Deserialize, Serialize};
use uom::si::angle::radian;
use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::time::{day, second};
use uom::si::volume_rate::cubic_meter_per_second;

use super::error::{Error, Quantity, within};
use super::heat::flow_rate;
use super::piping::{GRAVITY, bore_of, circle};
use crate::quantity::{Angle, Length, Ratio, Time, Volume, VolumeRate};

/// Discharge coefficient of a standpipe, as weir and as orifice.
const STANDPIPE: f64 = 0.6;
/// Coefficient of the rectangular weir, m^0.5/s.
const WEIR: f64 = 1.84;
/// Discharge coefficient of a V-notch.
const NOTCH: f64 = 0.585;
/// Highest head accepted, m.
const MOST_HEAD: f64 = 5.0;

/// How the basin overflows. The head is the water's height above the rim or
/// crest.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Overflow {
    /// An upright pipe with an open rim, emptying freely.
    Standpipe {
        /// Inside bore, 1 mm to 2 m.
        bore: Length,
    },
    /// An upright pipe with an open rim, then a drain line running full.
    Piped {
        /// Inside bore, 1 mm to 2 m.
        bore: Length,
        /// How far the line falls from the rim to its open end, 0 to 100 m.
        fall: Length,
        /// K + f L/D of the line: entry, fittings and friction, without the
        /// velocity the water leaves with; 0 to 1000.
        losses: Ratio,
    },
    /// A level crest, a slot or a cut in the wall.
    Weir {
        /// Length of the crest, 1 mm to 100 m.
        crest: Length,
    },
    /// A notch cut to a point.
    Notch {
        /// Opening angle, 10 to 150 degrees.
        angle: Angle,
    },
}

/// An overflow in SI numbers: the least of up to three laws Q = c (h + z)^n.
struct Laws([(f64, f64, f64); 3]);

impl Laws {
    fn flow(&self, head: f64) -> f64 {
        let each = self.0.iter().map(|&(c, z, n)| c * (head + z).powf(n));
        if head > 0.0 {
            each.fold(f64::INFINITY, f64::min)
        } else {
            0.0
        }
    }

    fn head(&self, flow: f64) -> f64 {
        let each = self.0.iter().map(|&(c, z, n)| (flow / c).powf(1.0 / n) - z);
        each.fold(0.0, f64::max)
    }
}

/// What happens with a flow running to an overflow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Holding {
    /// Head over the crest at which it carries the flow.
    pub head: Length,
    /// What it carries with the water up to the rim of the basin.
    pub capacity: VolumeRate,
    /// Whether it holds: the head is no more than the room.
    pub holds: bool,
}

impl Overflow {
    fn laws(&self) -> Result<Laws, Error> {
        let fall = (2.0 * GRAVITY).sqrt();
        Ok(match *self {
            Overflow::Standpipe { bore } => {
                let [weir, orifice] = standpipe(bore)?;
                Laws([weir, orifice, orifice])
            }
            Overflow::Piped {
                bore,
                fall: below,
                losses,
            } => {
                let [weir, orifice] = standpipe(bore)?;
                let k = within(Quantity::LossCoefficient, losses.get::<ratio>(), 0.0, 1e3)?;
                let z = within(Quantity::Lift, below.get::<meter>(), 0.0, 100.0)?;
                let c = circle(bore_of(bore)?) * fall / (1.0 + k).sqrt();
                Laws([weir, orifice, (c, z, 0.5)])
            }
            Overflow::Weir { crest } => {
                let crest = within(Quantity::CrestLength, crest.get::<meter>(), 1e-3, 100.0)?;
                Laws([(WEIR * crest, 0.0, 1.5); 3])
            }
            Overflow::Notch { angle } => {
                let (low, high) = (10f64.to_radians(), 150f64.to_radians());
                let angle = within(Quantity::NotchAngle, angle.get::<radian>(), low, high)?;
                let c = 8.0 / 15.0 * NOTCH * fall * tangent(0.5 * angle);
                Laws([(c, 0.0, 2.5); 3])
            }
        })
    }

    /// What it carries with the water this high above the crest.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states or the
    /// head outside 0 to 5 m.
    pub fn flow(&self, head: Length) -> Result<VolumeRate, Error> {
        let head = within(Quantity::Head, head.get::<meter>(), 0.0, MOST_HEAD)?;
        let flow = self.laws()?.flow(head);
        Ok(VolumeRate::new::<cubic_meter_per_second>(flow))
    }

    /// The head at which it carries a flow.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, the
    /// flow outside 0 to 10 m3/s, or the head above 5 m.
    pub fn head(&self, flow: VolumeRate) -> Result<Length, Error> {
        let head = self.laws()?.head(flow_rate(flow)?);
        let head = within(Quantity::Head, head, 0.0, MOST_HEAD)?;
        Ok(Length::new::<meter>(head))
    }

    /// Whether it holds back a fill valve stuck open at `flow`, with `room`
    /// between the crest and the lowest edge of the basin.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, the
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

/// The two regimes of a standpipe.
fn standpipe(bore: Length) -> Result<[(f64, f64, f64); 2], Error> {
    let bore = bore_of(bore)?;
    let fall = (2.0 * GRAVITY).sqrt();
    let rim = std::f64::consts::PI * bore;
    Ok([
        (STANDPIPE * 2.0 / 3.0 * fall * rim, 0.0, 1.5),
        (STANDPIPE * circle(bore) * fall, 0.0, 0.5),
    ])
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

/// The tangent of an angle in radians, 0 to 1.5, by Lambert's continued fraction
/// (DLMF 4.25): within 4e-15 of itself. The library's reaches
/// every angle and fills 4 kB of the program.
fn tangent(angle: f64) -> f64 {
    let square = angle * angle;
    let below = |sum: f64, k: u8| f64::from(2 * k + 1) - square / sum;
    angle / (0..12).rev().fold(25.0, below)
}

#[cfg(test)]
mod tests {
    use super::tangent;

    #[test]
    fn the_tangent_is_the_librarys() {
        for i in 1..=1500 {
            let angle = f64::from(i) * 1e-3;
            let off = tangent(angle) / angle.tan() - 1.0;
            assert!(off.abs() < 4e-15, "{angle}: {off:e}");
        }
    }
}
