//! What must be opened to do a check, and what can hurt there.

use serde::{Deserialize, Serialize};

/// Something that is opened once for several checks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Access {
    /// Nothing to open.
    Open,
    /// The level control's panel, cover off and meter proved.
    Panel,
    /// The fill valve's terminal box.
    ValveBox,
    /// The probe or float, out of its holder.
    Holder,
    /// The fill valve's bonnet, isolated and drained.
    Bonnet,
    /// The fan, locked out and its guard off.
    Fan,
    /// A machine, panels off and gauges on.
    MachinePanel,
}

impl Access {
    /// Minutes to open it safely the first time. Common practice, no source.
    pub fn minutes(self) -> f64 {
        match self {
            Access::Open => 0.0,
            Access::ValveBox => 2.0,
            Access::Panel | Access::Holder => 3.0,
            Access::MachinePanel => 5.0,
            Access::Fan => 6.0,
            Access::Bonnet => 10.0,
        }
    }
}

/// What can hurt at a check.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Caution {
    /// Live parts: shock and arc.
    LiveVoltage,
    /// Fan and belts that can start by themselves.
    MovingFan,
    /// Roof edge, ladders, wet decks.
    Fall,
    /// Spray that may carry Legionella.
    Spray,
    /// Water under pressure.
    WaterPressure,
    /// Refrigerant and hot discharge lines.
    Refrigerant,
    /// Treatment chemicals.
    Chemicals,
    /// Sump or basin that may be a confined space.
    ConfinedSpace,
}

impl Caution {
    /// Minutes of easier work one would rather do than face this. A weight
    /// for the choice only; never shown as time. Judgement.
    pub(crate) fn reluctance(self) -> f64 {
        match self {
            Caution::WaterPressure | Caution::Chemicals | Caution::Fall => 0.3,
            Caution::Spray | Caution::Refrigerant => 0.5,
            Caution::LiveVoltage | Caution::MovingFan => 0.8,
            Caution::ConfinedSpace => 3.0,
        }
    }
}
