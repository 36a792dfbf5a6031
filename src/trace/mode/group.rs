//! Parts of the plant that a mode belongs to, and places on the site.

use serde::{Deserialize, Serialize};

/// Which part of the plant a mode belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Group {
    /// One machine.
    Machine,
    /// Weather and load.
    Conditions,
    /// The common condenser water loop: pump, strainer, valves.
    CondenserWater,
    /// The tower's air side.
    TowerAir,
    /// The tower's water side.
    TowerWater,
    /// Sensing of the basin's level.
    Sensing,
    /// Power and switching of the fill valve.
    FillPower,
    /// The fill valve itself.
    FillValve,
    /// The makeup line from the street to the fill valve.
    MakeupLine,
    /// Water leaving the basin unseen.
    WaterLoss,
}

/// Several groups under one name, for a heading.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Branch {
    /// One machine.
    Machine,
    /// Weather and load.
    Conditions,
    /// The condenser water loop.
    CondenserWater,
    /// The tower, air and water.
    Tower,
    /// The makeup chain from sensing to the street.
    MakeupChain,
    /// Water leaving unseen.
    WaterLoss,
}

impl Group {
    /// Every group, in a fixed order.
    pub const ALL: [Group; 10] = [
        Group::Machine,
        Group::Conditions,
        Group::CondenserWater,
        Group::TowerAir,
        Group::TowerWater,
        Group::Sensing,
        Group::FillPower,
        Group::FillValve,
        Group::MakeupLine,
        Group::WaterLoss,
    ];

    /// The branch of the plant it is on.
    pub fn branch(self) -> Branch {
        match self {
            Group::Machine => Branch::Machine,
            Group::Conditions => Branch::Conditions,
            Group::CondenserWater => Branch::CondenserWater,
            Group::TowerAir | Group::TowerWater => Branch::Tower,
            Group::Sensing | Group::FillPower | Group::FillValve | Group::MakeupLine => {
                Branch::MakeupChain
            }
            Group::WaterLoss => Branch::WaterLoss,
        }
    }
}

impl Branch {
    /// Every branch, in a fixed order.
    pub const ALL: [Branch; 6] = [
        Branch::Machine,
        Branch::Conditions,
        Branch::CondenserWater,
        Branch::Tower,
        Branch::MakeupChain,
        Branch::WaterLoss,
    ];
}

/// Where on the site a part is found or a check is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// At the tower.
    Roof,
    /// At the water-cooled machines.
    MachineRoom,
    /// At the pumps, the level control and the fill valve.
    Basement,
    /// At the building's water entry.
    Mains,
}

/// Minutes to walk between places, tools in hand, in the order of
/// [`Place::ALL`]. Common practice, no source.
const WALKS: [[u8; 4]; 4] = [[0, 4, 6, 7], [4, 0, 3, 4], [6, 3, 0, 2], [7, 4, 2, 0]];

impl Place {
    /// Every place, in a fixed order.
    pub const ALL: [Place; 4] = [
        Place::Roof,
        Place::MachineRoom,
        Place::Basement,
        Place::Mains,
    ];

    /// Minutes to walk from here to there, tools in hand; 0 on the spot.
    /// Common practice, no source.
    pub fn walk_minutes(self, to: Place) -> f64 {
        f64::from(WALKS[self as usize][to as usize])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn walks_are_the_same_both_ways_and_no_detour_is_shorter() {
        for a in Place::ALL {
            for b in Place::ALL {
                assert_eq!(a.walk_minutes(b), b.walk_minutes(a));
                assert_eq!(a == b, a.walk_minutes(b) == 0.0);
                for c in Place::ALL {
                    assert!(a.walk_minutes(c) <= a.walk_minutes(b) + b.walk_minutes(c));
                }
            }
        }
    }
}
