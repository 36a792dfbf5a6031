//! The plant as the trace needs to know it, and what follows from it: which
//! faults it can have.

use crate::quantity::named::by_name;
use serde::{Deserialize, Serialize};
use uom::si::electric_potential::volt;

use super::mode::{Group, Lowers, Mode};
use crate::quantity::ElectricPotential;

/// How the basin's level is sensed and the fill valve switched.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LevelControl {
    /// Conductance electrodes, a relay, and an electric fill valve.
    #[default]
    ElectrodeRelay,
    /// A float valve: no electrics at all.
    FloatValve,
    /// A float switch and an electric fill valve.
    FloatSwitch,
    /// A level transmitter, a controller, and an electric fill valve.
    Transmitter,
}
by_name!(LevelControl: ElectrodeRelay FloatValve FloatSwitch Transmitter);

/// What kind of machines stand on the loop.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MachineKind {
    /// Self-contained packaged units.
    PackagedUnit,
    /// Water-source heat pumps.
    HeatPump,
    /// Chillers.
    Chiller,
    /// Condensing units.
    #[default]
    CondensingUnit,
}
by_name!(MachineKind: PackagedUnit HeatPump Chiller CondensingUnit);

/// How the electric fill valve rests without power.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FillValve {
    /// Shut without power: a lost supply empties the basin.
    #[default]
    NormallyClosed,
    /// Open without power: a lost supply floods it.
    NormallyOpen,
}
by_name!(FillValve: NormallyClosed NormallyOpen);

/// Which contact of the level relay feeds the fill valve.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Contact {
    /// It closes when the relay pulls in.
    #[default]
    NormallyOpen,
    /// It closes when the relay drops out.
    NormallyClosed,
}
by_name!(Contact: NormallyOpen NormallyClosed);

/// What opens the bleed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Bleed {
    /// There is none.
    None,
    /// A hand-set valve, always running.
    Manual,
    /// A timer.
    Timer,
    /// A conductivity controller.
    #[default]
    Conductivity,
}
by_name!(Bleed: None Manual Timer Conductivity);

/// What the trace must know of the plant before any reading.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", default)]
pub struct Plant {
    /// How the basin's level is controlled.
    pub level_control: LevelControl,
    /// Nominal voltage of the fill control, in volts AC; typically 24 to 240.
    pub control_voltage: ElectricPotential,
    /// Water-cooled machines on the loop, 1 or more; 0 is read as 1.
    pub machines: u8,
    /// What they are.
    pub machine_kind: MachineKind,
    /// Whether each machine has a water regulating valve of its own.
    pub regulating_valves: bool,
    /// Condenser pumps, 1 or more; 0 is read as 1.
    pub pumps: u8,
    /// Whether a strainer stands before the pumps.
    pub pump_strainer: bool,
    /// Tower cells, 1 or more; 0 is read as 1.
    pub cells: u8,
    /// Whether the water collects in a sump away from the tower.
    pub remote_sump: bool,
    /// Whether a bypass around the tower can send hot water to the basin.
    pub tower_bypass: bool,
    /// Whether the fill has a hand bypass.
    pub fill_bypass: bool,
    /// How the fill valve rests.
    pub fill_valve: FillValve,
    /// Which relay contact feeds it.
    pub contact: Contact,
    /// What opens the bleed.
    pub bleed: Bleed,
    /// Whether the basin has an overflow.
    pub overflow: bool,
}

impl Default for Plant {
    /// Three condensing units on one pump and one cell; electrode relay at
    /// 24 V.
    fn default() -> Self {
        Self {
            level_control: LevelControl::ElectrodeRelay,
            control_voltage: ElectricPotential::new::<volt>(24.0),
            machines: 3,
            machine_kind: MachineKind::CondensingUnit,
            regulating_valves: true,
            pumps: 1,
            pump_strainer: true,
            cells: 1,
            remote_sump: true,
            tower_bypass: false,
            fill_bypass: true,
            fill_valve: FillValve::NormallyClosed,
            contact: Contact::NormallyOpen,
            bleed: Bleed::Conductivity,
            overflow: true,
        }
    }
}

impl Plant {
    /// Whether an electric valve fills the basin.
    pub fn electric_fill(&self) -> bool {
        self.level_control != LevelControl::FloatValve
    }

    /// Whether this plant can have the fault.
    pub fn can_have(&self, mode: Mode) -> bool {
        use LevelControl as L;
        use Mode as M;
        let control = self.level_control;
        match mode {
            M::RegulatingValve => self.regulating_valves,
            M::PumpStrainer => self.pump_strainer,
            M::CellUneven => self.cells > 1,
            M::TowerBypass => self.tower_bypass,
            M::DrainsBack => self.remote_sump,
            M::ProbeFilm | M::ProbeFoam | M::HolderMoisture | M::ReferenceLost => {
                control == L::ElectrodeRelay
            }
            M::ProbeCableShort => matches!(control, L::ElectrodeRelay | L::FloatSwitch),
            M::ControllerStuckFull | M::ControllerDead => {
                matches!(control, L::ElectrodeRelay | L::Transmitter)
            }
            M::FloatJammedUp | M::FloatSunk => matches!(control, L::FloatValve | L::FloatSwitch),
            M::TransmitterHigh => control == L::Transmitter,
            M::LowDifferential | M::PilotBlocked | M::ValveBackwards => self.electric_fill(),
            M::BleedStuckOpen => self.bleed != Bleed::None,
            M::BleedOverset => matches!(self.bleed, Bleed::Timer | Bleed::Conductivity),
            M::OverflowLow => self.overflow,
            // On a valve that rests open a lost supply lets water in: it is
            // seen at the overflow and raises no head. Only a contact that
            // can't let go keeps such a valve shut.
            M::RelayContactWelded => self.electric_fill(),
            _ if mode.group() == Group::FillPower => self.electric_fill() && !self.rests_open(),
            _ => true,
        }
    }

    fn rests_open(&self) -> bool {
        self.fill_valve == FillValve::NormallyOpen
    }

    /// How surely the fault empties this plant's basin.
    pub fn lowers(&self, mode: Mode) -> Lowers {
        match mode {
            Mode::RelayContactWelded if self.rests_open() => Lowers::Surely,
            _ => mode.lowers(),
        }
    }

    /// The faults this plant can have, in the order of [`Mode::ALL`].
    pub fn modes(&self) -> Vec<Mode> {
        Mode::ALL
            .into_iter()
            .filter(|m| self.can_have(*m))
            .collect()
    }
}
