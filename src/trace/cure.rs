//! Cures: per mode, what proves it, what proves the repair, which parts.

use serde::{Deserialize, Serialize};

use super::evidence::{Caution, Check};
use super::mode::Mode;

/// A part a repair may need.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Part {
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
}

/// What belongs to correcting a mode. The words are in the words room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cure {
    /// The mode.
    pub mode: Mode,
    /// Checks that confirm the mode, then those that prove the repair, in
    /// order.
    pub proof: &'static [Check],
    /// Parts that may be needed, likeliest first; may be empty.
    pub parts: &'static [Part],
    /// What can hurt while correcting it.
    pub cautions: &'static [Caution],
}

/// How to correct and prove `mode`. Common practice, no source.
pub fn cure(mode: Mode) -> Cure {
    use Caution as C;
    use Check as K;
    use Part as P;
    let (proof, parts, cautions): (&[Check], &[Part], &[Caution]) = match mode {
        Mode::MachineFault => (
            &[K::MachineOwn],
            &[P::RegulatingValve],
            &[C::Refrigerant, C::LiveVoltage],
        ),
        Mode::ConditionsBeyondDesign => (
            &[K::WeatherAndLoad, K::ApproachToday],
            &[],
            &[C::Fall, C::Spray],
        ),
        Mode::TowerAirSide => (
            &[K::FanAndAir, K::ApproachToday],
            &[P::FanBelt, P::FanMotor],
            &[C::MovingFan, C::LiveVoltage, C::Fall, C::Spray],
        ),
        Mode::WaterFlowLow => (
            &[K::PumpPressure, K::RangeWidth],
            &[P::PumpStrainerGasket, P::AirVent],
            &[C::WaterPressure, C::LiveVoltage],
        ),
        Mode::ControlPowerLost => (
            &[K::ControlVoltage, K::RefillTest],
            &[P::ControlFuse, P::ControlTransformer],
            &[C::LiveVoltage],
        ),
        Mode::SensorFalseFull => (
            &[K::ProbeFilm, K::RefillTest],
            &[P::ElectrodeHolder, P::Electrodes],
            &[C::LiveVoltage, C::Spray, C::Chemicals, C::Fall],
        ),
        Mode::RelayContactOpen => (
            &[K::Substitution, K::RefillTest],
            &[P::LevelRelay],
            &[C::LiveVoltage],
        ),
        Mode::CoilOpen => (
            &[K::CoilPull, K::RefillTest],
            &[P::ValveCoil],
            &[C::LiveVoltage],
        ),
        Mode::ValveStuck => (
            &[K::FlowOnCall, K::ForceValve, K::RefillTest],
            &[P::ValveKit, P::FillValve],
            &[C::WaterPressure, C::LiveVoltage],
        ),
        Mode::HandValveShut => (
            &[K::HandValves, K::RefillTest],
            &[P::HandValve],
            &[C::WaterPressure],
        ),
        Mode::StrainerBlocked => (
            &[K::StrainerBlowOff, K::RefillTest],
            &[P::StrainerScreen],
            &[C::WaterPressure],
        ),
        Mode::MainsLow => (
            &[K::MainsPressure, K::RefillTest],
            &[P::ReducingValve],
            &[C::WaterPressure],
        ),
        Mode::BleedOrLeak => (
            &[K::WaterLoss, K::RefillTest],
            &[P::BleedValve, P::PipeAndFittings],
            &[C::Spray, C::Chemicals, C::Fall],
        ),
    };
    Cure {
        mode,
        proof,
        parts,
        cautions,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_basin_fault_is_proved_by_a_refill_and_no_other() {
        for mode in Mode::ALL {
            let refill = cure(mode).proof.contains(&Check::RefillTest);
            assert_eq!(refill, mode.lowers_basin(), "{mode:?}");
            assert!(!cure(mode).cautions.is_empty());
        }
    }
}
