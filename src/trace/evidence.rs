//! Checks: what a mechanic can look at or try, where, and how long it takes.

use serde::{Deserialize, Serialize};

use super::answer::Answer;
use super::mode::Place;

/// Something to look at, measure or try.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Check {
    /// How many machines are out on head pressure.
    MachinesOut,
    /// The basin's level as found.
    BasinOnArrival,
    /// What the control showed over the basin, before anyone touched it.
    CallAsFound,
    /// The basin's level at this moment.
    LevelNow,
    /// Temperature of the water to the machines against the usual.
    EnteringWater,
    /// Range against the usual.
    RangeWidth,
    /// Approach against what it should be today.
    ApproachToday,
    /// Fan running, air through the fill.
    FanAndAir,
    /// Pump gauges steady or not.
    PumpPressure,
    /// The tripped machine's own condenser, regulating valve and charge.
    MachineOwn,
    /// Weather and load against the design point.
    WeatherAndLoad,
    /// Supply voltage at the level control.
    ControlVoltage,
    /// Probe lifted, wiped and dried: does the control call.
    ProbeDried,
    /// A known resistor in place of the probe.
    Substitution,
    /// Voltage at the coil while the control calls.
    CoilVoltage,
    /// Coil pulling while the control calls.
    CoilPull,
    /// Flow into the basin while the control calls.
    FlowOnCall,
    /// Fill valve opened by hand, or the bypass.
    ForceValve,
    /// Positions of the hand valves in the makeup line.
    HandValves,
    /// Strainer blow-off.
    StrainerBlowOff,
    /// Supply pressure while flowing.
    MainsPressure,
    /// Resistance across the dry probe holder.
    ProbeFilm,
    /// Foam on the basin.
    FoamLook,
    /// Bleed, overflow, drain and leaks.
    WaterLoss,
    /// The timed refill test.
    RefillTest,
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
}

/// When an answer was had.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// As found: nobody had touched anything yet.
    AsFound,
    /// After hands were on it: a valve opened, a probe lifted, power cycled.
    Testing,
}

/// One answered check.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Evidence {
    /// What was checked.
    pub check: Check,
    /// What it said.
    pub answer: Answer,
    /// Whether as found or while testing.
    pub stage: Stage,
}

impl Check {
    /// Every check, in the order a plain list would ask them: from the
    /// machines through the tower to the street.
    pub const ALL: [Check; 25] = [
        Check::MachinesOut,
        Check::EnteringWater,
        Check::RangeWidth,
        Check::MachineOwn,
        Check::PumpPressure,
        Check::BasinOnArrival,
        Check::CallAsFound,
        Check::LevelNow,
        Check::ApproachToday,
        Check::FanAndAir,
        Check::WeatherAndLoad,
        Check::FoamLook,
        Check::WaterLoss,
        Check::ControlVoltage,
        Check::ProbeDried,
        Check::Substitution,
        Check::CoilVoltage,
        Check::CoilPull,
        Check::FlowOnCall,
        Check::ForceValve,
        Check::HandValves,
        Check::StrainerBlowOff,
        Check::MainsPressure,
        Check::ProbeFilm,
        Check::RefillTest,
    ];

    /// Where the check is done. Common practice, no source: level control and
    /// fill valve stand with the pumps, the probe at the tower.
    pub fn place(self) -> Place {
        match self {
            Check::MachinesOut | Check::EnteringWater | Check::RangeWidth | Check::MachineOwn => {
                Place::MachineRoom
            }
            Check::BasinOnArrival
            | Check::LevelNow
            | Check::ApproachToday
            | Check::FanAndAir
            | Check::WeatherAndLoad
            | Check::FoamLook
            | Check::WaterLoss
            | Check::ProbeDried
            | Check::ProbeFilm
            | Check::RefillTest => Place::Roof,
            Check::PumpPressure
            | Check::CallAsFound
            | Check::ControlVoltage
            | Check::Substitution
            | Check::CoilVoltage
            | Check::CoilPull
            | Check::FlowOnCall
            | Check::ForceValve
            | Check::HandValves
            | Check::StrainerBlowOff => Place::Basement,
            Check::MainsPressure => Place::Mains,
        }
    }

    /// Minutes the check takes once there. Common practice, no source.
    pub fn minutes(self) -> f64 {
        match self {
            Check::LevelNow | Check::FoamLook => 1.0,
            Check::MachinesOut
            | Check::BasinOnArrival
            | Check::CallAsFound
            | Check::EnteringWater
            | Check::CoilPull => 2.0,
            Check::PumpPressure
            | Check::ControlVoltage
            | Check::WeatherAndLoad
            | Check::FlowOnCall
            | Check::HandValves => 3.0,
            Check::RangeWidth | Check::FanAndAir | Check::CoilVoltage | Check::MainsPressure => 4.0,
            Check::WaterLoss | Check::ForceValve => 5.0,
            Check::ApproachToday | Check::StrainerBlowOff | Check::Substitution => 6.0,
            Check::ProbeDried | Check::ProbeFilm => 8.0,
            Check::MachineOwn => 12.0,
            Check::RefillTest => 25.0,
        }
    }

    /// What can hurt here.
    pub fn cautions(self) -> &'static [Caution] {
        match self {
            Check::MachinesOut | Check::EnteringWater | Check::RangeWidth | Check::PumpPressure => {
                &[]
            }
            Check::MachineOwn => &[Caution::Refrigerant, Caution::LiveVoltage],
            Check::BasinOnArrival
            | Check::LevelNow
            | Check::ApproachToday
            | Check::WeatherAndLoad
            | Check::FoamLook
            | Check::WaterLoss => &[Caution::Fall, Caution::Spray],
            Check::FanAndAir => &[Caution::MovingFan, Caution::Fall, Caution::Spray],
            Check::CallAsFound
            | Check::ControlVoltage
            | Check::Substitution
            | Check::CoilVoltage
            | Check::CoilPull => &[Caution::LiveVoltage],
            Check::ProbeDried | Check::ProbeFilm => &[
                Caution::LiveVoltage,
                Caution::Spray,
                Caution::Chemicals,
                Caution::Fall,
            ],
            Check::FlowOnCall
            | Check::ForceValve
            | Check::HandValves
            | Check::StrainerBlowOff
            | Check::MainsPressure => &[Caution::WaterPressure],
            Check::RefillTest => &[Caution::Fall, Caution::Spray, Caution::Chemicals],
        }
    }

    /// Whether doing it disturbs what was found.
    pub fn disturbs(self) -> bool {
        matches!(
            self,
            Check::ProbeDried
                | Check::Substitution
                | Check::ForceValve
                | Check::StrainerBlowOff
                | Check::ProbeFilm
                | Check::RefillTest
        )
    }

    /// The stage an answer belongs to if the check is done now, after
    /// `evidence`: testing once anything has been disturbed.
    pub fn stage_after(self, evidence: &[Evidence]) -> Stage {
        let touched = evidence
            .iter()
            .any(|e| e.stage == Stage::Testing || e.check.disturbs());
        if touched || self.disturbs() {
            Stage::Testing
        } else {
            Stage::AsFound
        }
    }

    /// The answers this check can have, [`Answer::CouldNot`] left out since
    /// it is always allowed. Two or three.
    pub fn answers(self) -> &'static [Answer] {
        use Answer as A;
        match self {
            Check::MachinesOut => &[A::OneMachine, A::TwoMachines, A::ThreeOrMore],
            Check::BasinOnArrival => &[A::BasinLow, A::BasinNormal],
            Check::CallAsFound => &[A::Calls, A::Satisfied, A::Dark],
            Check::LevelNow => &[A::BasinLow, A::BasinComingUp, A::BasinNormal],
            Check::EnteringWater => &[A::WaterHot, A::WaterUsual],
            Check::RangeWidth => &[A::RangeWide, A::RangeUsual],
            Check::ApproachToday => &[A::ApproachHigh, A::ApproachUsual, A::ApproachLow],
            Check::FanAndAir => &[A::AirGood, A::AirPoor],
            Check::PumpPressure => &[A::PressureSteady, A::PressureSurging, A::PressureLow],
            Check::MachineOwn => &[A::OwnFaultFound, A::MachineHealthy],
            Check::WeatherAndLoad => &[A::BeyondDesign, A::WithinDesign],
            Check::ControlVoltage => &[A::VoltageGood, A::VoltageLow, A::NoVoltage],
            Check::ProbeDried => &[A::Calls, A::NoCall],
            Check::Substitution => &[A::FollowsResistor, A::IgnoresResistor],
            Check::CoilVoltage => &[A::VoltageGood, A::VoltageLow, A::NoVoltage],
            Check::CoilPull => &[A::Pulls, A::NoPull],
            Check::FlowOnCall | Check::ForceValve => &[A::FullFlow, A::WeakFlow, A::NoFlow],
            Check::HandValves => &[A::AllOpen, A::FoundShut],
            Check::StrainerBlowOff => &[A::StrainerClean, A::StrainerBlocked],
            Check::MainsPressure => &[A::MainsGood, A::MainsLow],
            Check::ProbeFilm => &[A::HolderClean, A::HolderFilmed],
            Check::FoamLook => &[A::NoFoam, A::Foam],
            Check::WaterLoss => &[A::NoLoss, A::LosingWater],
            Check::RefillTest => &[A::Refilled, A::RefilledSlowly, A::DidNotRefill],
        }
    }

    /// Position of `answer` among [`Check::answers`]; `None` for
    /// [`Answer::CouldNot`] and for an answer this check cannot have, which
    /// tell nothing.
    pub(crate) fn column(self, answer: Answer) -> Option<usize> {
        self.answers().iter().position(|a| *a == answer)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_check_is_listed_once_and_offers_two_to_four_distinct_answers() {
        for (i, c) in Check::ALL.iter().enumerate() {
            assert!(!Check::ALL[..i].contains(c), "{c:?} twice");
            let answers = c.answers();
            assert!((2..=4).contains(&answers.len()), "{c:?}");
            for (j, a) in answers.iter().enumerate() {
                assert!(!answers[..j].contains(a));
                assert_ne!(*a, Answer::CouldNot);
            }
        }
    }

    #[test]
    fn once_disturbed_nothing_is_as_found_any_more() {
        let look = Evidence {
            check: Check::BasinOnArrival,
            answer: Answer::BasinLow,
            stage: Stage::AsFound,
        };
        let wiped = Evidence {
            check: Check::ProbeDried,
            answer: Answer::Calls,
            stage: Stage::Testing,
        };
        assert_eq!(Check::CallAsFound.stage_after(&[look]), Stage::AsFound);
        assert_eq!(
            Check::CallAsFound.stage_after(&[look, wiped]),
            Stage::Testing
        );
        assert_eq!(Check::ForceValve.stage_after(&[look]), Stage::Testing);
    }

    #[test]
    fn ids_are_kebab_case() {
        let text = serde_json::to_string(&Check::StrainerBlowOff).unwrap();
        assert_eq!(text, "\"strainer-blow-off\"");
    }
}
