//! Fault modes: the things that can be wrong, where, and how often.

use serde::{Deserialize, Serialize};

/// One way the plant can be at fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mode {
    /// One machine's own trouble: fouled condenser, regulating valve, charge.
    MachineFault,
    /// The day is hotter, wetter or busier than the tower was sized for.
    ConditionsBeyondDesign,
    /// The tower moves too little air or its fill is fouled.
    TowerAirSide,
    /// The common pump, its strainer or trapped air starves the loop.
    WaterFlowLow,
    /// The fill control has lost its supply.
    ControlPowerLost,
    /// The level sensor reports full over a low basin.
    SensorFalseFull,
    /// The fill relay's contact does not close.
    RelayContactOpen,
    /// The fill valve's coil is open.
    CoilOpen,
    /// The fill valve's body does not open.
    ValveStuck,
    /// A hand valve in the makeup line is shut.
    HandValveShut,
    /// The makeup strainer is blocked.
    StrainerBlocked,
    /// Supply pressure in the street or building is low.
    MainsLow,
    /// Water leaves the basin faster than makeup brings it.
    BleedOrLeak,
}

/// Which part of the plant a mode belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Group {
    /// One machine.
    Machine,
    /// Weather and load.
    Conditions,
    /// The tower's air side.
    Tower,
    /// The condenser water loop.
    Loop,
    /// The fill control's electrics.
    FillControl,
    /// The makeup line's water side.
    FillWater,
    /// Water going out of the basin.
    WaterLoss,
}

/// Where on the site a part is found or a check is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
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

/// Whether a fault is there all the time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Manner {
    /// Always there until corrected.
    Steady,
    /// Comes and goes by itself; often gone while tested.
    Intermittent,
}

/// Share of calls that come from one machine's own fault, before anything is
/// known. Set so that the number of machines out gives the odds of
/// [`common_cause`](super::common_cause): 0.004 against 0.002 a day.
const MACHINE: f64 = 0.4;
/// Share of calls with a cause common to the machines.
const COMMON: f64 = 0.6;
/// Share of the common causes that act through a low basin. Common practice,
/// no source.
const BASIN: f64 = 0.48;
/// Basin-low weights below add to this.
const BASIN_TOTAL: f64 = 1.10;

impl Mode {
    /// Every mode, in a fixed order.
    pub const ALL: [Mode; 13] = [
        Mode::MachineFault,
        Mode::ConditionsBeyondDesign,
        Mode::TowerAirSide,
        Mode::WaterFlowLow,
        Mode::ControlPowerLost,
        Mode::SensorFalseFull,
        Mode::RelayContactOpen,
        Mode::CoilOpen,
        Mode::ValveStuck,
        Mode::HandValveShut,
        Mode::StrainerBlocked,
        Mode::MainsLow,
        Mode::BleedOrLeak,
    ];

    /// Which part of the plant this mode belongs to.
    pub fn group(self) -> Group {
        match self {
            Mode::MachineFault => Group::Machine,
            Mode::ConditionsBeyondDesign => Group::Conditions,
            Mode::TowerAirSide => Group::Tower,
            Mode::WaterFlowLow => Group::Loop,
            Mode::ControlPowerLost
            | Mode::SensorFalseFull
            | Mode::RelayContactOpen
            | Mode::CoilOpen => Group::FillControl,
            Mode::ValveStuck | Mode::HandValveShut | Mode::StrainerBlocked | Mode::MainsLow => {
                Group::FillWater
            }
            Mode::BleedOrLeak => Group::WaterLoss,
        }
    }

    /// Where the part at fault is found.
    pub fn place(self) -> Place {
        match self {
            Mode::MachineFault => Place::MachineRoom,
            Mode::ConditionsBeyondDesign
            | Mode::TowerAirSide
            | Mode::SensorFalseFull
            | Mode::BleedOrLeak => Place::Roof,
            Mode::WaterFlowLow
            | Mode::ControlPowerLost
            | Mode::RelayContactOpen
            | Mode::CoilOpen
            | Mode::ValveStuck
            | Mode::HandValveShut
            | Mode::StrainerBlocked => Place::Basement,
            Mode::MainsLow => Place::Mains,
        }
    }

    /// Whether this mode empties the basin.
    pub fn lowers_basin(self) -> bool {
        matches!(
            self.group(),
            Group::FillControl | Group::FillWater | Group::WaterLoss
        )
    }

    /// Prior share of calls caused by this mode, before any reading; the
    /// shares of all modes add to one. Judgement: common practice, no source.
    pub fn prior(self) -> f64 {
        let basin = |weight: f64| COMMON * BASIN * weight / BASIN_TOTAL;
        match self {
            Mode::MachineFault => MACHINE,
            Mode::ConditionsBeyondDesign => COMMON * 0.10,
            Mode::TowerAirSide => COMMON * 0.22,
            Mode::WaterFlowLow => COMMON * 0.20,
            Mode::SensorFalseFull => basin(0.30),
            Mode::RelayContactOpen => basin(0.08),
            Mode::ControlPowerLost => basin(0.10),
            Mode::CoilOpen => basin(0.10),
            Mode::ValveStuck => basin(0.12),
            Mode::StrainerBlocked => basin(0.12),
            Mode::HandValveShut => basin(0.10),
            Mode::MainsLow => basin(0.08),
            Mode::BleedOrLeak => basin(0.10),
        }
    }

    /// Share of this mode's cases that come and go, 0 when it cannot.
    /// Judgement: common practice, no source.
    pub fn intermittent_share(self) -> f64 {
        match self {
            Mode::HandValveShut | Mode::StrainerBlocked => 0.0,
            Mode::CoilOpen => 0.15,
            Mode::WaterFlowLow => 0.2,
            Mode::MachineFault
            | Mode::TowerAirSide
            | Mode::ControlPowerLost
            | Mode::ValveStuck
            | Mode::BleedOrLeak => 0.3,
            Mode::RelayContactOpen => 0.35,
            Mode::MainsLow => 0.4,
            Mode::SensorFalseFull | Mode::ConditionsBeyondDesign => 0.6,
        }
    }

    /// Whether this mode can come and go by itself.
    pub fn can_be_intermittent(self) -> bool {
        self.intermittent_share() > 0.0
    }

    /// This mode's bit in a set of modes.
    pub(crate) fn bit(self) -> u64 {
        1 << self as u64
    }
}

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
        use Place::{Basement, MachineRoom, Mains, Roof};
        match (self, to) {
            (Roof, Roof) | (MachineRoom, MachineRoom) | (Basement, Basement) | (Mains, Mains) => {
                0.0
            }
            (Roof, MachineRoom) | (MachineRoom, Roof) => 4.0,
            (Roof, Basement) | (Basement, Roof) => 6.0,
            (Roof, Mains) | (Mains, Roof) => 7.0,
            (MachineRoom, Basement) | (Basement, MachineRoom) => 3.0,
            (MachineRoom, Mains) | (Mains, MachineRoom) => 4.0,
            (Basement, Mains) | (Mains, Basement) => 2.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn priors_are_shares_of_one_call() {
        let total: f64 = Mode::ALL.iter().map(|m| m.prior()).sum();
        assert!((total - 1.0).abs() < 1e-12, "{total}");
    }

    #[test]
    fn every_mode_is_listed_once_and_has_its_own_bit() {
        let all = Mode::ALL.iter().fold(0, |set, m| {
            assert_eq!(set & m.bit(), 0);
            set | m.bit()
        });
        assert_eq!(all.count_ones() as usize, Mode::ALL.len());
    }

    #[test]
    fn walks_are_the_same_both_ways_and_no_detour_is_shorter() {
        for a in Place::ALL {
            for b in Place::ALL {
                assert_eq!(a.walk_minutes(b), b.walk_minutes(a));
                for c in Place::ALL {
                    assert!(a.walk_minutes(c) <= a.walk_minutes(b) + b.walk_minutes(c));
                }
            }
        }
    }
}
