//! Cures: per mode, what proves it, what proves the repair, which parts.

use serde::{Deserialize, Serialize};

use super::check::{Caution, Check};
use super::mode::{Group, Mode};

macro_rules! parts {
    ($($(#[$doc:meta])* $name:ident,)*) => {
        /// A part a repair may need.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(rename_all = "kebab-case")]
        pub enum Part {
            $($(#[$doc])* $name,)*
        }
    };
}

parts! {
    /// Condenser water regulating valve.
    RegulatingValve,
    /// Fan belt.
    FanBelt,
    /// Fan motor.
    FanMotor,
    /// Pump strainer basket or gasket.
    PumpStrainerGasket,
    /// Air vent.
    AirVent,
    /// Control fuse.
    ControlFuse,
    /// Control transformer.
    ControlTransformer,
    /// Electrode rods.
    Electrodes,
    /// Electrode holder.
    ElectrodeHolder,
    /// Level relay.
    LevelRelay,
    /// Valve coil.
    ValveCoil,
    /// Diaphragm and seat kit.
    ValveKit,
    /// Whole fill valve.
    FillValve,
    /// Hand valve.
    HandValve,
    /// Strainer screen.
    StrainerScreen,
    /// Pressure reducing valve.
    ReducingValve,
    /// Bleed valve.
    BleedValve,
    /// Hose, pipe and fittings.
    PipeAndFittings,
    /// High-pressure control.
    PressureControl,
    /// Condenser gaskets.
    CondenserGaskets,
    /// Pump seal or coupling.
    PumpParts,
    /// Contactor, overload or drive.
    MotorControl,
    /// Spray nozzles.
    SprayNozzles,
    /// Fill or louvers.
    FillOrLouvers,
    /// Level controller.
    LevelController,
    /// Cable and terminals.
    CableAndTerminals,
    /// Float or its arm.
    Float,
    /// Level transmitter.
    Transmitter,
    /// Holder cap and seal.
    HolderCap,
    /// Antifoam, from the water treater.
    Antifoam,
    /// Backflow preventer kit.
    BackflowKit,
    /// Heat tape and insulation.
    HeatTape,
    /// Check valve.
    CheckValve,
}

/// What belongs to correcting a mode. The words are in the words room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cure {
    /// The mode.
    pub mode: Mode,
    /// Checks that confirm the mode, best first.
    pub confirm: &'static [Check],
    /// Whether a refill test proves the repair.
    pub refill: bool,
    /// Parts that may be needed, likeliest first; may be empty.
    pub parts: &'static [Part],
    /// What can hurt while correcting it.
    pub cautions: &'static [Caution],
}

impl Cure {
    /// Checks that confirm the mode, then the one that proves the repair.
    pub fn proof(&self) -> impl Iterator<Item = Check> + use<> {
        let refill = self.refill.then_some(Check::RefillTest);
        self.confirm.iter().copied().chain(refill)
    }
}

type Row = (Mode, &'static [Check], &'static [Part]);

/// Common practice, no source.
const CURES: [Row; Mode::ALL.len()] = {
    use Check as K;
    use Mode as M;
    use Part as P;
    [
        (
            M::CondenserFouled,
            &[K::CondenserOverWater, K::TubesLook],
            &[P::CondenserGaskets],
        ),
        (
            M::RegulatingValve,
            &[K::RegulatingTravel, K::RegulatingByHand],
            &[P::RegulatingValve],
        ),
        (M::NonCondensables, &[K::StandingPressure], &[]),
        (M::Overcharge, &[K::ChargeLook], &[]),
        (M::PressureControl, &[K::CutOutTest], &[P::PressureControl]),
        (
            M::BranchStrainer,
            &[K::BranchStrainer],
            &[P::StrainerScreen],
        ),
        (M::BranchValve, &[K::BranchValves], &[]),
        (M::MachineOverload, &[K::MachineLoad, K::TripHour], &[]),
        (
            M::ConditionsBeyondDesign,
            &[K::WeatherAndLoad, K::TripHour],
            &[],
        ),
        (
            M::PumpStopped,
            &[K::PumpCurrent, K::TripMemory],
            &[P::MotorControl, P::PumpParts],
        ),
        (M::PumpBackwards, &[K::PumpRotation], &[]),
        (
            M::PumpWorn,
            &[K::ShutOffHead, K::PumpCurrent],
            &[P::PumpParts],
        ),
        (
            M::PumpStrainer,
            &[K::PumpStrainerDrop],
            &[P::PumpStrainerGasket],
        ),
        (M::AirBound, &[K::VentAir], &[P::AirVent]),
        (M::LoopValve, &[K::LoopValves], &[]),
        (M::SuctionScreen, &[K::SuctionLook], &[]),
        (
            M::FanStopped,
            &[K::FanRuns, K::TripMemory],
            &[P::MotorControl, P::FanMotor],
        ),
        (M::FanBackwards, &[K::FanRotation], &[]),
        (M::BeltOff, &[K::BeltLook], &[P::FanBelt]),
        (M::FanControl, &[K::FanCommand], &[P::MotorControl]),
        (M::FillFouled, &[K::FillLook], &[P::FillOrLouvers]),
        (M::AirInlet, &[K::InletLook], &[P::FillOrLouvers]),
        (M::Recirculation, &[K::InletAir], &[]),
        (M::NozzlesBlocked, &[K::SprayLook], &[P::SprayNozzles]),
        (M::CellUneven, &[K::CellLook], &[]),
        (M::TowerBypass, &[K::TowerBypassLook], &[P::MotorControl]),
        (
            M::ProbeFilm,
            &[K::TerminalsDried, K::ProbeFilm, K::HolderWetted],
            &[P::Electrodes, P::ElectrodeHolder],
        ),
        (M::ProbeFoam, &[K::FoamLook, K::FoamJar], &[P::Antifoam]),
        (
            M::ProbeCableShort,
            &[K::WiresOffHolder],
            &[P::CableAndTerminals],
        ),
        (M::HolderMoisture, &[K::HolderCap], &[P::HolderCap]),
        (
            M::ControllerStuckFull,
            &[K::Substitution],
            &[P::LevelController],
        ),
        (M::StillWell, &[K::StillWellLook], &[]),
        (
            M::FloatJammedUp,
            &[K::FloatByHand, K::FloatLook],
            &[P::Float],
        ),
        (M::TransmitterHigh, &[K::LevelSignal], &[P::Transmitter]),
        (M::CallSetLow, &[K::CallMark], &[]),
        (
            M::ReferenceLost,
            &[K::CallAsFound, K::FillStops],
            &[P::Electrodes, P::CableAndTerminals],
        ),
        (M::FloatSunk, &[K::FloatLook], &[P::Float]),
        (M::SupplyLost, &[K::PanelSupply], &[]),
        (M::FuseBlown, &[K::FuseCheck], &[P::ControlFuse]),
        (
            M::TransformerFailed,
            &[K::TransformerOutput],
            &[P::ControlTransformer],
        ),
        (M::DisconnectOff, &[K::DisconnectLook], &[]),
        (
            M::ControllerDead,
            &[K::Substitution, K::CallAsFound],
            &[P::LevelController],
        ),
        (
            M::RelayContactOpen,
            &[K::ContactDrop, K::RelayTap],
            &[P::LevelRelay],
        ),
        (
            M::RelayContactWelded,
            &[K::Substitution, K::FillStops],
            &[P::LevelRelay],
        ),
        (
            M::WiringHighResistance,
            &[K::CoilVoltage, K::Joints],
            &[P::CableAndTerminals],
        ),
        (
            M::WiringOpen,
            &[K::CoilVoltage, K::OutputVoltage],
            &[P::CableAndTerminals],
        ),
        (M::CoilOpen, &[K::CoilResistance], &[P::ValveCoil]),
        (
            M::CoilWeak,
            &[K::CoilResistance, K::CoilCurrent],
            &[P::ValveCoil],
        ),
        (
            M::ValveStuck,
            &[K::ValveStrip],
            &[P::ValveKit, P::FillValve],
        ),
        (M::PilotBlocked, &[K::ValveStrip], &[P::ValveKit]),
        (M::DiaphragmTorn, &[K::DiaphragmLook], &[P::ValveKit]),
        (M::ValveBackwards, &[K::ValveArrow], &[]),
        (M::LowDifferential, &[K::Differential], &[P::FillValve]),
        (
            M::ValvePassing,
            &[K::FillStops, K::ToldToShut],
            &[P::ValveKit],
        ),
        (M::HandValveShut, &[K::HandValves], &[P::HandValve]),
        (
            M::StrainerBlocked,
            &[K::StrainerBlowOff],
            &[P::StrainerScreen],
        ),
        (M::BackflowStuck, &[K::BackflowLook], &[P::BackflowKit]),
        (
            M::ReducingValve,
            &[K::PressureAfterReducer],
            &[P::ReducingValve],
        ),
        (M::MainsLow, &[K::MainsPressure], &[]),
        (M::LineFrozen, &[K::LineCold], &[P::HeatTape]),
        (M::BleedStuckOpen, &[K::BleedLook], &[P::BleedValve]),
        (M::BleedOverset, &[K::BleedSettings], &[]),
        (
            M::BasinLeak,
            &[K::LevelHold, K::WaterLoss],
            &[P::PipeAndFittings],
        ),
        (M::OverflowLow, &[K::OverflowLook], &[P::PipeAndFittings]),
        (M::DrainAjar, &[K::DrainLook], &[]),
        (M::DrainsBack, &[K::PumpStopRise], &[P::CheckValve]),
    ]
};

/// How to correct and prove `mode`. Common practice, no source. A general
/// cause has nothing that confirms it, but a refill where the basin ran low.
pub fn cure(mode: Mode) -> Cure {
    let (_, confirm, parts) = CURES
        .get(mode as usize)
        .copied()
        .unwrap_or((mode, &[], &[]));
    Cure {
        mode,
        confirm,
        refill: mode.lowers_basin(),
        parts,
        cautions: cautions(mode.group()),
    }
}

fn cautions(group: Group) -> &'static [Caution] {
    use Caution as C;
    match group {
        Group::Machine => &[C::Refrigerant, C::LiveVoltage],
        Group::Conditions => &[C::Fall, C::Spray],
        Group::CondenserWater => &[C::WaterPressure, C::LiveVoltage],
        Group::TowerAir | Group::TowerWater => &[C::MovingFan, C::LiveVoltage, C::Fall, C::Spray],
        Group::Sensing => &[C::LiveVoltage, C::Spray, C::Chemicals, C::Fall],
        Group::FillPower => &[C::LiveVoltage],
        Group::FillValve => &[C::WaterPressure, C::LiveVoltage],
        Group::MakeupLine => &[C::WaterPressure],
        Group::WaterLoss => &[C::Spray, C::Chemicals, C::Fall],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trace::sheet;

    #[test]
    fn every_basin_fault_is_proved_by_a_refill_and_no_other() {
        for (i, mode) in Mode::ALL.into_iter().enumerate() {
            assert_eq!(CURES[i].0, mode);
            let refill = cure(mode).proof().any(|c| c == Check::RefillTest);
            assert_eq!(refill, mode.lowers_basin(), "{mode:?}");
            assert!(!cure(mode).cautions.is_empty());
        }
        for mode in Mode::GENERAL {
            assert_eq!(cure(mode).confirm, &[]);
        }
    }

    /// Every fault can be proven: one of its confirming checks gives some
    /// answer at least seven times likelier while it acts than without it,
    /// over the same level.
    #[test]
    fn every_fault_can_be_proven() {
        for mode in Mode::ALL {
            let ratio = |check: &Check| {
                let sheet = sheet::of(*check).expect("a sheet");
                let effect = usize::from(sheet.effect(mode).0);
                let rows = |low| sheet.rows_over(low);
                [false, true]
                    .into_iter()
                    .flat_map(|low| (0..check.answers().len()).map(move |a| (low, a)))
                    .map(|(low, a)| f64::from(rows(low)[effect][a]) / f64::from(rows(low)[0][a]))
                    .fold(0.0, f64::max)
            };
            let best = cure(mode).confirm.iter().map(ratio).fold(0.0, f64::max);
            assert!(best >= 7.0, "{mode:?}: {best}");
        }
    }
}
