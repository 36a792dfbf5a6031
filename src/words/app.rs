//! The face's sentences that carry numbers or names.

use super::{Phrase, ReportPhrase, Words, tongue};
use crate::physics::water::Evaporation;
use crate::quantity::System;
use crate::record::{Figures, Fouling, Lack, LeavingItem, LeavingState, Machine, Way, What};
use crate::trace::{Branch, Suspect};

impl Words {
    /// A fixed phrase.
    pub fn phrase(self, phrase: Phrase) -> &'static str {
        tongue!(self, app::phrase(phrase))
    }

    /// A reading's name.
    pub fn reading_name(self, what: What) -> &'static str {
        tongue!(self, visit::reading_name(what))
    }

    /// Where to take a reading, and what can hurt there.
    pub fn reading_hint(self, what: What) -> &'static str {
        tongue!(self, visit::reading_hint(what))
    }

    /// Why a number can't be given.
    pub fn lack(self, lack: &Lack, system: System) -> String {
        tongue!(self, visit::lack(lack, system))
    }

    /// A phrase of the report.
    pub fn report_phrase(self, phrase: ReportPhrase) -> &'static str {
        tongue!(self, report::phrase(phrase))
    }

    /// How an item of the leaving round stands.
    pub fn leaving_state(self, state: LeavingState) -> &'static str {
        self.phrase(match state {
            LeavingState::So => Phrase::LeavingSo,
            LeavingState::NotSo => Phrase::LeavingNotSo,
            LeavingState::NoneHere => Phrase::LeavingNoneHere,
        })
    }

    /// An item of the leaving round.
    pub fn leaving_item(self, item: LeavingItem) -> &'static str {
        tongue!(self, visit::leaving_item(item))
    }

    /// "Kept 09:41".
    pub fn kept_at(self, clock: &str) -> String {
        tongue!(self, said::kept_at(clock))
    }

    /// How many machines.
    pub fn machines(self, n: usize) -> String {
        tongue!(self, said::machines(n))
    }

    /// "Since last time, 81 days ago".
    pub fn last_time(self, days: i64) -> String {
        tongue!(self, said::last_time(days))
    }

    /// A length of time in the words of a calendar.
    pub fn about_days(self, days: f64) -> String {
        tongue!(self, said::about_days(days))
    }

    /// What a cleaning interval stands on, and how far it may be off.
    pub fn cleaning_interval(self, f: &Fouling) -> String {
        tongue!(self, said::cleaning_interval(f))
    }

    /// A machine with its refrigerant, where that is known.
    pub fn machine_line(self, machine: &Machine) -> String {
        match machine.refrigerant {
            // A hyphen that does not break.
            Some(fluid) => {
                let fluid = fluid.designation().replace('-', "\u{2011}");
                format!("{}\u{a0}· {fluid}", machine.name)
            }
            None => machine.name.clone(),
        }
    }

    /// A machine without a name.
    pub fn machine_numbered(self, n: usize) -> String {
        tongue!(self, said::machine_numbered(n))
    }

    /// The outbox with how many wait.
    pub fn outbox_with(self, n: usize) -> String {
        let name = self.phrase(Phrase::Outbox);
        if n == 0 {
            name.to_owned()
        } else {
            format!("{name} ({n})")
        }
    }

    /// Said when signal is back and reports wait.
    pub fn reports_can_go(self, n: usize) -> String {
        tongue!(self, said::reports_can_go(n))
    }

    /// Said when entries of a newer build are on the phone.
    pub fn unreadable(self, n: usize) -> String {
        tongue!(self, said::unreadable(n))
    }

    /// The customer's words, quoted.
    pub fn quoted(self, text: &str) -> String {
        tongue!(self, said::quoted(text))
    }

    /// The next thing to do.
    pub fn continue_with(self, station: Phrase) -> String {
        tongue!(self, said::continue_with(station))
    }

    /// How the readings stand.
    pub fn found_summary(self, readings: usize, out: usize) -> String {
        tongue!(self, said::found_summary(readings, out))
    }

    /// The number that matters most, in one line.
    pub fn numbers_summary(self, figures: &Figures, system: System) -> String {
        tongue!(self, said::numbers_summary(figures, system))
    }

    /// The top suspect in one line.
    pub fn suspect_summary(self, branch: Branch, probability: f64, first: &Suspect) -> String {
        tongue!(self, said::suspect_summary(branch, probability, first))
    }

    /// A probability, never rounded to certainty.
    pub fn percent(self, p: f64) -> String {
        tongue!(self, said::percent(p))
    }

    /// How far the leaving round has come.
    pub fn leaving_summary(self, done: usize, all: usize) -> String {
        tongue!(self, said::leaving_summary(done, all))
    }

    /// When the report was made.
    pub fn report_made_at(self, clock: &str) -> String {
        tongue!(self, said::report_made_at(clock))
    }

    /// A report that waits.
    pub fn report_waits(self, date: &str, clock: &str) -> String {
        tongue!(self, said::report_waits(date, clock))
    }

    /// A report that was handed over; never says that it arrived.
    pub fn handed_over(self, way: Way, clock: &str) -> String {
        tongue!(self, said::handed_over(way, clock))
    }

    /// Minutes and a place for a check.
    pub fn minutes_at(self, minutes: f64, walk: f64, place: &str) -> String {
        tongue!(self, said::minutes_at(minutes, walk, place))
    }

    /// What the approach should be today.
    pub fn expected_today(self, approach: &str) -> String {
        tongue!(self, said::expected_today(approach))
    }

    /// The same figure at design load.
    pub fn at_design_load(self, amount: &str) -> String {
        tongue!(self, said::at_design_load(amount))
    }

    /// How an evaporation was found, what the field rule says beside it, and
    /// by how much that misleads.
    pub fn evaporation_note(self, evaporation: &Evaporation, rule: &str) -> String {
        tongue!(self, said::evaporation_note(evaporation, rule))
    }

    /// Condensing temperature over the water.
    pub fn over_leaving_water(self, difference: &str) -> String {
        tongue!(self, said::over_leaving_water(difference))
    }

    /// Distance to the cut-out.
    pub fn from_cut_out(self, margin: &str, below: bool) -> String {
        tongue!(self, said::from_cut_out(margin, below))
    }

    /// Steady or coming and going, in words.
    pub fn manner_split(self, steady: f64, intermittent: f64, can: bool) -> String {
        let all = steady + intermittent;
        if !can || all <= 0.0 {
            return String::new();
        }
        let share = intermittent / all;
        tongue!(self, said::manner_split(share)).to_owned()
    }
}
