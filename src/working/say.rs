//! Answers in words: what a working finds beside its numbers.

use crate::physics::chemistry::cycles::Cause;
use crate::physics::chemistry::guideline::Item;
use crate::physics::chemistry::{Band, Index};
use crate::physics::circuit::{Caution, Fault as Wrong, Meaning};
use crate::physics::electrode::Condition;
use crate::physics::piping::ServoOpening;
use crate::physics::tower::{Settle, Shape};
use crate::quantity::Value;

/// One thing said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Saying {
    /// How it is meant.
    pub tone: Tone,
    /// What is said.
    pub say: Say,
    /// A value that goes with it.
    pub value: Option<Value>,
}

/// How a saying is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// Something is found.
    Finding,
    /// One of those that fit.
    Fits,
    /// For information.
    Plain,
}

/// What is said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Say {
    /// A caution of the control circuit.
    Caution(Caution),
    /// What a meter reading means.
    Meaning(Meaning),
    /// A fault of the control circuit, and what would be read.
    Wrong(Wrong),
    /// Read it again with a low-impedance meter.
    LoadIt,
    /// An electrode in this condition reads wet, and is fooled.
    Electrode(Condition, bool, bool),
    /// Lowest setting that nothing fools.
    SafeFrom,
    /// Highest setting that nothing fools.
    SafeTo,
    /// A shape of trouble on the tower, and its weight.
    Shape(Shape),
    /// The reading that would tell two shapes apart.
    Settle(Settle),
    /// The field rule misleads in this weather.
    RuleParts(f64),
    /// Refrigerant under pressure.
    Refrigerant,
    /// Roof edge, fan, mist.
    Roof,
    /// Drawing a basin down.
    Drawdown,
    /// Tell whoever treats the water.
    Treatment,
    /// What an index says of the water.
    Band(Index, Band),
    /// A limit that is broken: above it, or below.
    Limit(Item, bool),
    /// What may be behind a change of the cycles.
    Cycles(Cause),
    /// Whether a servo valve opens on its pressure drop.
    Servo(ServoOpening),
    /// The valve chokes: less pressure behind it brings no more.
    Choked,
    /// The pump inlet may draw air at this level.
    InletDrawsAir,
    /// Enough water stands over the pump inlet.
    InletHolds,
    /// The machine trips with this little water.
    TripsAtThatFlow,
    /// Starting machines and pumps again.
    Starting,
    /// The overflow carries the flow below the rim.
    OverflowHolds,
    /// It does not.
    OverflowFails,
}

impl Saying {
    /// Without a value.
    pub fn of(tone: Tone, say: Say) -> Self {
        Self {
            tone,
            say,
            value: None,
        }
    }
}
