//! The fill latch: low, high and reference electrode, and what a film does to it.

use serde::{Deserialize, Serialize};

/// What the relay does with the fill.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fill {
    /// Calls for water.
    On,
    /// Stays as it was.
    Hold,
    /// Satisfied.
    Off,
}

/// Where the water stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// Under the low electrode; the reference still in water.
    BelowLow,
    /// Between low and high.
    Between,
    /// At the high electrode.
    AtHigh,
}

/// Two electrodes a film or foam joins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bridge {
    /// Low electrode to the reference, or to the basin that serves as one.
    LowToReference,
    /// High electrode to the reference.
    HighToReference,
    /// High electrode to the low one.
    HighToLow,
}

impl Bridge {
    /// Every bridge.
    pub const ALL: [Bridge; 3] = [
        Bridge::LowToReference,
        Bridge::HighToReference,
        Bridge::HighToLow,
    ];
}

/// Which electrodes the relay takes as wet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Seen {
    /// The low electrode.
    pub low: bool,
    /// The high electrode.
    pub high: bool,
}

/// The latch: neither wet calls, both wet is satisfied, the low one alone
/// holds. The high one alone, which water can't do, is satisfied too. A
/// reference that is not in contact shows neither: it calls, and overflows.
pub fn latch(low: bool, high: bool, reference: bool) -> Fill {
    match (low && reference, high && reference) {
        (_, true) => Fill::Off,
        (true, false) => Fill::Hold,
        (false, false) => Fill::On,
    }
}

/// What the relay sees at a level with these bridges.
pub fn seen(level: Level, bridges: &[Bridge]) -> Seen {
    let has = |b| bridges.contains(&b);
    let low = level >= Level::Between || has(Bridge::LowToReference);
    let high = level >= Level::AtHigh || has(Bridge::HighToReference);
    // Joined, each reaches the reference by way of the other.
    let joined = has(Bridge::HighToLow) && (low || high);
    Seen {
        low: low || joined,
        high: high || joined,
    }
}

/// The single bridges that turn the fill off at a level where the clean
/// sensor would not.
pub fn film_that_stops(level: Level) -> Vec<Bridge> {
    let fill = |bridges: &[Bridge]| {
        let seen = seen(level, bridges);
        latch(seen.low, seen.high, true)
    };
    let mut all = Bridge::ALL.to_vec();
    all.retain(|b| fill(&[*b]) == Fill::Off && fill(&[]) != Fill::Off);
    all
}
