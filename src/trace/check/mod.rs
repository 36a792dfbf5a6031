//! Checks: what a mechanic can look at or try, where, and how long it takes.

mod access;
mod table;

use super::answer::Answer;
use super::evidence::{Evidence, Stage};
use super::mode::{Mode, Place};
use super::plant::{LevelControl, Plant};
use super::sheet;

pub use access::{Access, Caution};
pub use table::Check;
use table::TABLE;

impl Check {
    fn row(self) -> &'static table::Row {
        &TABLE[self as usize]
    }

    /// Where the check is done. Common practice, no source: level control and
    /// fill valve stand with the pumps, the probe at the tower.
    pub fn place(self) -> Place {
        self.row().place
    }

    /// Minutes the check takes once there and open. Common practice, no
    /// source.
    pub fn minutes(self) -> f64 {
        f64::from(self.row().minutes)
    }

    /// What must be opened first.
    pub fn access(self) -> Access {
        self.row().access
    }

    /// What can hurt here.
    pub fn cautions(self) -> &'static [Caution] {
        self.row().cautions
    }

    /// Whether doing it disturbs what was found.
    pub fn disturbs(self) -> bool {
        self.row().disturbs
    }

    /// The answers this check can have, [`Answer::CouldNot`] left out since
    /// it is always allowed. Two or three.
    pub fn answers(self) -> &'static [Answer] {
        self.row().answers
    }

    /// Position of `answer` among [`Check::answers`]; `None` for
    /// [`Answer::CouldNot`] and for an answer this check cannot have, which
    /// tell nothing.
    pub(crate) fn column(self, answer: Answer) -> Option<usize> {
        self.answers().iter().position(|a| *a == answer)
    }

    /// The stage an answer belongs to if the check is done now, after
    /// `evidence`: that of the last answer, testing once anything has been
    /// disturbed.
    pub fn stage_after(self, evidence: &[Evidence]) -> Stage {
        let latest = evidence.iter().map(|e| e.stage).max();
        let latest = latest.unwrap_or(Stage::AsFound);
        let touched = self.disturbs() || evidence.iter().any(|e| e.check.disturbs());
        if touched {
            latest.max(Stage::Testing)
        } else {
            latest
        }
    }

    /// Whether it makes sense only while the control calls for water.
    pub fn needs_call(self) -> bool {
        matches!(
            self,
            Check::ContactDrop
                | Check::OutputVoltage
                | Check::CoilVoltage
                | Check::CoilCurrent
                | Check::CoilPull
                | Check::FlowOnCall
        )
    }

    /// Whether doing it again may say something else: not a count, nor what
    /// was found on arrival, nor what takes days.
    pub(crate) fn may_differ(self) -> bool {
        !matches!(
            self,
            Check::MachinesOut
                | Check::BasinOnArrival
                | Check::TripHour
                | Check::MachineRecorder
                | Check::LevelRecorder
                | Check::LoopRecorder
                | Check::CoilInRecord
                | Check::PumpInRecord
                | Check::FanInRecord
                | Check::LoadInRecord
                | Check::RefillTest
                | Check::Restart
        )
    }

    /// The recorder whose record this reads.
    pub(crate) fn record(self) -> Option<Check> {
        match self {
            Check::CoilInRecord => Some(Check::LevelRecorder),
            Check::PumpInRecord | Check::FanInRecord => Some(Check::LoopRecorder),
            Check::LoadInRecord => Some(Check::MachineRecorder),
            _ => None,
        }
    }

    /// Whether it asks about the hour of the trip and not about now: once
    /// asked it stays so, and after a repair it tells nothing new.
    pub(crate) fn is_past(self) -> bool {
        matches!(
            self,
            Check::MachinesOut | Check::BasinOnArrival | Check::TripHour
        )
    }

    /// Whether it looks at something that disturbing anything would spoil.
    pub fn is_look(self) -> bool {
        matches!(self, Check::BasinOnArrival | Check::CallAsFound)
    }

    /// Whether this plant has what the check looks at. A check that no fault
    /// of this plant answers to is not offered either.
    pub fn exists(self, plant: &Plant) -> bool {
        use LevelControl as L;
        let control = plant.level_control;
        let here = match self {
            Check::MachinesOut => plant.machines > 1,
            Check::ProbeDried
            | Check::ProbeFilm
            | Check::HolderCap
            | Check::HolderWetted
            | Check::TerminalsDried
            | Check::FoamLook
            | Check::FoamJar => control == L::ElectrodeRelay,
            Check::WiresOffHolder => matches!(control, L::ElectrodeRelay | L::FloatSwitch),
            Check::Substitution => matches!(control, L::ElectrodeRelay | L::Transmitter),
            Check::FloatByHand | Check::FloatLook => {
                matches!(control, L::FloatValve | L::FloatSwitch)
            }
            Check::LevelSignal => control == L::Transmitter,
            Check::CallAsFound | Check::ControlVoltage | Check::CoilPull | Check::CoilInRecord => {
                plant.electric_fill()
            }
            _ if matches!(self.access(), Access::Panel | Access::ValveBox) => plant.electric_fill(),
            _ => true,
        };
        here && (self.is_look() || plant.modes().iter().any(|m| self.speaks_of(*m)))
    }

    /// Whether the mode changes what this check says.
    pub fn speaks_of(self, mode: Mode) -> bool {
        sheet::effect(self, mode) != (0, 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_check_offers_two_or_three_distinct_answers() {
        assert!(Check::ALL.len() >= 45);
        for (i, c) in Check::ALL.iter().enumerate() {
            assert_eq!(*c as usize, i);
            let answers = c.answers();
            assert!((2..=3).contains(&answers.len()), "{c:?}");
            for (j, a) in answers.iter().enumerate() {
                assert!(!answers[..j].contains(a));
                assert_ne!(*a, Answer::CouldNot);
            }
        }
    }

    #[test]
    fn once_disturbed_nothing_is_as_found_any_more() {
        let look = Evidence::said(Check::BasinOnArrival, Answer::BasinLow, Stage::AsFound);
        let wiped = Evidence::said(Check::ProbeDried, Answer::Calls, Stage::Testing);
        let let_in = Evidence::said(Check::LevelNow, Answer::BasinNormal, Stage::WaterLetIn);
        let after = |check: Check, all: &[Evidence]| check.stage_after(all);
        assert_eq!(after(Check::CallAsFound, &[look]), Stage::AsFound);
        assert_eq!(after(Check::CallAsFound, &[look, wiped]), Stage::Testing);
        assert_eq!(
            after(Check::CallAsFound, &[look, let_in]),
            Stage::WaterLetIn
        );
        assert_eq!(after(Check::ForceValve, &[look]), Stage::Testing);
    }

    /// Names stored by the first release still open.
    #[test]
    fn ids_are_kebab_case_and_stored_ones_open() {
        let text = serde_json::to_string(&Check::StrainerBlowOff).unwrap();
        assert_eq!(text, "\"strainer-blow-off\"");
        for name in [
            "machines-out",
            "basin-on-arrival",
            "call-as-found",
            "level-now",
            "entering-water",
            "range-width",
            "approach-today",
            "fan-and-air",
            "pump-pressure",
            "machine-own",
            "weather-and-load",
            "control-voltage",
            "probe-dried",
            "substitution",
            "coil-voltage",
            "coil-pull",
            "flow-on-call",
            "force-valve",
            "hand-valves",
            "strainer-blow-off",
            "mains-pressure",
            "probe-film",
            "foam-look",
            "water-loss",
            "refill-test",
        ] {
            let text = format!("\"{name}\"");
            let check: Check = serde_json::from_str(&text).expect(name);
            assert_eq!(serde_json::to_string(&check).unwrap(), text);
        }
    }
}
