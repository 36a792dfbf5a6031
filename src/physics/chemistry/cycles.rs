//! What a rise or a fall of the cycles says about the plumbing.
//!
//! Cycles rise when solids stay in: no bleed, or no makeup while the basin
//! boils down. They fall when water goes out that the bleed did not let out:
//! an overflow, a leak, a bypass or a bleed left open (from memory of practice;
//! no source). Compare cycles, not conductivity: makeup that changed moves
//! both. Salts that drop out hide a rise (UFC 3-240-13FN). A large basin takes
//! hours to days to show a change.

use serde::{Deserialize, Serialize};
use uom::si::ratio::ratio;
use uom::si::volume_rate::cubic_meter_per_second;

use crate::physics::error::{Error, Quantity, within};
use crate::physics::heat::MOST_FLOW;
use crate::quantity::{Ratio, VolumeRate};

/// Smallest change worth a word: two conductivity readings of 5 % each
/// (common practice, no source).
const NOTICED: f64 = 0.10;

/// A change of this much and more is marked, of twice this large.
const MARKED: f64 = 0.25;

/// Cycles above which a tower is over-cycled: "3 to 5" is acceptable (US DOE
/// building energy reference), and little is gained beyond (UFC 3-240-13FN).
const ACCEPTABLE: f64 = 5.0;

/// What the cycles now are compared with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Against {
    /// The set point of the bleed.
    SetPoint,
    /// The last visit.
    LastVisit,
}

/// How large a change is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Size {
    /// Within what two meters disagree by: under 10 %.
    None,
    /// 10 to 25 %.
    Slight,
    /// 25 to 50 %.
    Marked,
    /// 50 % and more.
    Large,
}

/// What may be behind a change, the commonest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cause {
    /// The bleed is shut, blocked, or its controller does not call for it.
    BlockedBleed,
    /// Makeup does not come: the basin boils down.
    ShutMakeup,
    /// Over-cycled water foams, and foam on a level probe reads as full.
    FoamFromOverCycling,
    /// Water runs over the lip: the fill does not stop, or the level is set high.
    Overflow,
    /// Water leaks from basin, pipes or a coil.
    Leak,
    /// A fill bypass or hose was left open: the basin overflows.
    BypassLeftOpen,
    /// The bleed hangs open.
    BleedHangsOpen,
}

impl Cause {
    /// Every cause.
    pub const ALL: [Cause; 7] = [
        Cause::BlockedBleed,
        Cause::ShutMakeup,
        Cause::FoamFromOverCycling,
        Cause::Overflow,
        Cause::Leak,
        Cause::BypassLeftOpen,
        Cause::BleedHangsOpen,
    ];
}

/// How the cycles changed and what that suggests.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// What they were compared with.
    pub against: Against,
    /// Cycles now over cycles then.
    pub factor: f64,
    /// How large the change is.
    pub size: Size,
    /// What may be behind it; empty when it is within the meters' error.
    pub causes: &'static [Cause],
}

fn checked(cycles: Ratio) -> Result<f64, Error> {
    within(Quantity::Cycles, cycles.get::<ratio>(), 0.1, 100.0)
}

/// The change of the cycles against the set point or the last visit.
///
/// # Errors
/// [`Error::OutOfRange`] when either is outside 0.1 to 100 cycles.
pub fn change(now: Ratio, then: Ratio, against: Against) -> Result<Change, Error> {
    use Cause::*;
    let (now, then) = (checked(now)?, checked(then)?);
    let factor = now / then;
    // A doubling and a halving are the same size.
    let part = factor.max(1.0 / factor) - 1.0;
    let size = match part {
        p if p < NOTICED => Size::None,
        p if p < MARKED => Size::Slight,
        p if p < 2.0 * MARKED => Size::Marked,
        _ => Size::Large,
    };
    let causes: &'static [Cause] = match size {
        Size::None => &[],
        _ if factor < 1.0 => &[Overflow, Leak, BypassLeftOpen, BleedHangsOpen],
        _ if now > ACCEPTABLE => &[BlockedBleed, ShutMakeup, FoamFromOverCycling],
        _ => &[BlockedBleed, ShutMakeup],
    };
    Ok(Change {
        against,
        factor,
        size,
        causes,
    })
}

/// Water leaving beyond what holds the `expected` cycles, once the cycles have
/// settled at `now`: E/(now - 1) - E/(expected - 1), evaporation E. Negative
/// when too little leaves (a bleed that lets out less than it should).
///
/// # Errors
/// [`Error::OutOfRange`] when the evaporation is outside 0 to 10 m3/s or either
/// cycles outside 1.05 to 100.
pub fn beyond_bleed(
    evaporation: VolumeRate,
    now: Ratio,
    expected: Ratio,
) -> Result<VolumeRate, Error> {
    let evaporation = within(
        Quantity::LossRate,
        evaporation.get::<cubic_meter_per_second>(),
        0.0,
        MOST_FLOW,
    )?;
    let leaving = |cycles: Ratio| {
        let cycles = within(Quantity::Cycles, cycles.get::<ratio>(), 1.05, 100.0)?;
        Ok(evaporation / (cycles - 1.0))
    };
    Ok(VolumeRate::new::<cubic_meter_per_second>(
        leaving(now)? - leaving(expected)?,
    ))
}
