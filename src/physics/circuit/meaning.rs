//! What a reading means at the place where it was taken.

use uom::si::electric_potential::volt;
use uom::si::ratio::ratio;

use super::coil::Fed;
use super::parts::Circuit;
use super::point::{Leads, Meter, OPEN_LINE, Point, Reading};
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::Ratio;

/// What a reading says by itself, before any fault is weighed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Meaning {
    /// Both leads on the same metal.
    SamePoint,
    /// Nothing between the leads on the way to the coil: closed, or no power
    /// to either side.
    ClosedOrDead,
    /// Full voltage across a part of the way: open there, the rest complete.
    OpenBetween,
    /// Some voltage across a part of the way: resistance there under load, or
    /// two opens.
    DropBetween,
    /// Full voltage to the return.
    LiveHere,
    /// Nothing to the return.
    DeadHere,
    /// Some voltage to the return: a drop ahead, or a ghost.
    WeakHere,
    /// The coil gets its voltage.
    CoilFed,
    /// The coil gets less than it pulls in on.
    CoilLow,
    /// The coil gets nothing.
    CoilDead,
    /// The coil gets more than it stands for long.
    CoilHigh,
    /// No current.
    NoCurrent,
    /// A current well below holding: leakage, or a drop in the circuit.
    SmallCurrent,
    /// About the holding current.
    HoldingCurrent,
    /// Well above holding: the armature is not seated, or turns are shorted.
    HighCurrent,
    /// The ohmmeter finds no way through.
    NoWayThrough,
    /// Next to no ohms.
    ShortedThrough,
    /// About the coil's winding.
    Winding,
    /// Some other resistance.
    SomeOhms,
}

/// What this reading means with these leads and this meter.
///
/// Bands: below 5 % is nothing, above 85 % of the supply is full, the coil as
/// in [`Fed`]; 70 to 150 % is the holding current, the winding within a factor
/// of two, below 1 ohm is none (all common practice, no source).
///
/// # Errors
/// [`Error::OutOfRange`] when the circuit is outside its stated ranges, or the
/// reading is negative or not finite.
pub fn meaning(
    circuit: &Circuit,
    leads: Leads,
    meter: Meter,
    reading: Reading,
) -> Result<Meaning, Error> {
    circuit.check()?;
    let number = within(Quantity::MeterReading, reading.number(), 0.0, 1e12)?;
    let (a, b) = (leads.first.min(leads.second), leads.first.max(leads.second));
    if !matches!(meter, Meter::Clamp)
        && super::wiring::node(circuit, a) == super::wiring::node(circuit, b)
    {
        return Ok(Meaning::SamePoint);
    }
    Ok(match meter {
        Meter::Clamp => {
            let holding = circuit.coil.holding_current()?.value;
            match number / holding {
                p if p < 0.03 => Meaning::NoCurrent,
                p if p < 0.7 => Meaning::SmallCurrent,
                p if p <= 1.5 => Meaning::HoldingCurrent,
                _ => Meaning::HighCurrent,
            }
        }
        Meter::Ohmmeter => {
            let winding = circuit.coil.winding()?.value;
            let coil = (a, b) == (Point::CoilFeed, Point::CoilReturn);
            match number {
                r if r >= OPEN_LINE => Meaning::NoWayThrough,
                r if r < winding.min(2.0) * 0.5 => Meaning::ShortedThrough,
                r if coil && (0.5 * winding..=2.0 * winding).contains(&r) => Meaning::Winding,
                _ => Meaning::SomeOhms,
            }
        }
        Meter::HighImpedance(_) | Meter::LowImpedance(_) => {
            let supply = number / circuit.supply.voltage.get::<volt>();
            let rated = number / circuit.coil.rated.get::<volt>();
            match (a, b) {
                (Point::CoilFeed, Point::CoilReturn) => match Fed::of(Ratio::new::<ratio>(rated)) {
                    Fed::Dead => Meaning::CoilDead,
                    Fed::TooLow => Meaning::CoilLow,
                    Fed::Low | Fed::Good => Meaning::CoilFed,
                    Fed::TooHigh => Meaning::CoilHigh,
                },
                (_, Point::SupplyReturn) if a != Point::CoilReturn => banded(
                    supply,
                    Meaning::DeadHere,
                    Meaning::WeakHere,
                    Meaning::LiveHere,
                ),
                _ => banded(
                    supply,
                    Meaning::ClosedOrDead,
                    Meaning::DropBetween,
                    Meaning::OpenBetween,
                ),
            }
        }
    })
}

fn banded(part: f64, none: Meaning, some: Meaning, full: Meaning) -> Meaning {
    match part {
        p if p < 0.05 => none,
        p if p < 0.85 => some,
        _ => full,
    }
}

impl Meaning {
    /// Every meaning.
    pub const ALL: [Meaning; 19] = [
        Meaning::SamePoint,
        Meaning::ClosedOrDead,
        Meaning::OpenBetween,
        Meaning::DropBetween,
        Meaning::LiveHere,
        Meaning::DeadHere,
        Meaning::WeakHere,
        Meaning::CoilFed,
        Meaning::CoilLow,
        Meaning::CoilDead,
        Meaning::CoilHigh,
        Meaning::NoCurrent,
        Meaning::SmallCurrent,
        Meaning::HoldingCurrent,
        Meaning::HighCurrent,
        Meaning::NoWayThrough,
        Meaning::ShortedThrough,
        Meaning::Winding,
        Meaning::SomeOhms,
    ];
}
