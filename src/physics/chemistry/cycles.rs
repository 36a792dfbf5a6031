//! What a rise or a fall of the cycles says about the plumbing.
//!
//! Cycles rise when solids stay in: no bleed, or no makeup while the basin
//! boils down. They fall when water goes out that the bleed did not let out:
//! an overflow, a leak, a bypass or a bleed left open (from memory of practice;
//! no source). Compare cycles, not conductivity: makeup that changed moves
//! both. Salts that drop out hide a rise (UFC 3-240-13FN). A large basin takes
//! hours to days to show a change.

use uom::si::ratio::ratio;

use crate::physics::error::{Error, Quantity, within};
use crate::quantity::Ratio;

/// Smallest change worth a word: two conductivity readings of 5 % each
/// (common practice, no source).
const NOTICED: f64 = 0.10;

/// Cycles above which a tower is over-cycled: "3 to 5" is acceptable (US DOE
/// building energy reference), and little is gained beyond (UFC 3-240-13FN).
const ACCEPTABLE: f64 = 5.0;

/// What may be behind a change, the commonest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
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
    /// Cycles now over the cycles set.
    pub factor: f64,
    /// What may be behind it; empty when it is within the meters' error.
    pub causes: &'static [Cause],
}

fn checked(cycles: Ratio) -> Result<f64, Error> {
    within(Quantity::Cycles, cycles.get::<ratio>(), 0.1, 100.0)
}

/// The change of the cycles against those the bleed is set for.
///
/// # Errors
/// [`Error::OutOfRange`] when either is outside 0.1 to 100 cycles.
pub fn change(now: Ratio, set: Ratio) -> Result<Change, Error> {
    use Cause::*;
    let (now, set) = (checked(now)?, checked(set)?);
    let factor = now / set;
    // A doubling and a halving are the same size.
    let noticed = factor.max(1.0 / factor) - 1.0 >= NOTICED;
    let causes: &'static [Cause] = match noticed {
        false => &[],
        true if factor < 1.0 => &[Overflow, Leak, BypassLeftOpen, BleedHangsOpen],
        true if now > ACCEPTABLE => &[BlockedBleed, ShutMakeup, FoamFromOverCycling],
        true => &[BlockedBleed, ShutMakeup],
    };
    Ok(Change { factor, causes })
}
