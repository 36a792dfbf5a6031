//! The face's sentences that carry numbers or names.

use uom::si::ratio::ratio;

use super::{Phrase, ReportPhrase, Tongue, Words, en};
use crate::physics::water::{Evaporation, EvaporationMethod, EvaporationWarning};
use crate::quantity::{System, Value, show};
use crate::record::{
    ACCEPTED, Figures, Fouling, Lack, LeavingItem, LeavingState, Machine, Way, What,
};
use crate::trace::{Branch, Suspect};

impl Words {
    /// A fixed phrase.
    pub fn phrase(self, phrase: Phrase) -> &'static str {
        match self.0 {
            Tongue::English => en::app::phrase(phrase),
        }
    }

    /// A reading's name.
    pub fn reading_name(self, what: What) -> &'static str {
        match self.0 {
            Tongue::English => en::visit::reading_name(what),
        }
    }

    /// Where to take a reading, and what can hurt there.
    pub fn reading_hint(self, what: What) -> &'static str {
        match self.0 {
            Tongue::English => en::visit::reading_hint(what),
        }
    }

    /// Why a number can't be given.
    pub fn lack(self, lack: &Lack, system: System) -> String {
        match self.0 {
            Tongue::English => en::visit::lack(lack, system),
        }
    }

    /// A phrase of the report.
    pub fn report_phrase(self, phrase: ReportPhrase) -> &'static str {
        match self.0 {
            Tongue::English => en::report::phrase(phrase),
        }
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
        match self.0 {
            Tongue::English => en::visit::leaving_item(item),
        }
    }

    /// "Kept 09:41".
    pub fn kept_at(self, clock: &str) -> String {
        match self.0 {
            Tongue::English => format!("Kept {clock}"),
        }
    }

    /// How many machines.
    pub fn machines(self, n: usize) -> String {
        match self.0 {
            Tongue::English => format!("{n} machine{}", if n == 1 { "" } else { "s" }),
        }
    }

    /// "Since last time, 81 days ago".
    pub fn last_time(self, days: i64) -> String {
        match (self.0, days) {
            (Tongue::English, 0) => "Last time, today".to_owned(),
            (Tongue::English, 1) => "Last time, yesterday".to_owned(),
            (Tongue::English, n) => format!("Last time, {n} days ago"),
        }
    }

    /// A length of time in the words of a calendar.
    pub fn about_days(self, days: f64) -> String {
        match self.0 {
            Tongue::English if days < 21.0 => format!("about {days:.0} days"),
            Tongue::English if days < 120.0 => format!("about {:.0} weeks", days / 7.0),
            Tongue::English => format!("about {:.0} months", days / 30.44),
        }
    }

    /// What a cleaning interval stands on, and how far it may be off.
    pub fn cleaning_interval(self, f: &Fouling) -> String {
        let (short, _, long) = f.clean_after_days;
        let (low, middle, high) = f.per_year;
        match self.0 {
            Tongue::English => format!(
                "Clean the probe after this long and the chance that it fouls before is {:.0} %. \
                 {} foul{} in {:.1} years watched: {middle:.1} a year, with 90 % between {low:.1} \
                 and {high:.1}; the interval then lies between {} and {}.",
                100.0 * ACCEPTED,
                f.fouls,
                if f.fouls == 1 { "" } else { "s" },
                f.years,
                self.about_days(short),
                self.about_days(long),
            ),
        }
    }

    /// A machine with its refrigerant, where that is known.
    pub fn machine_line(self, machine: &Machine) -> String {
        match machine.refrigerant {
            Some(fluid) => format!("{} · {}", machine.name, fluid.designation()),
            None => machine.name.clone(),
        }
    }

    /// A machine without a name.
    pub fn machine_numbered(self, n: usize) -> String {
        match self.0 {
            Tongue::English => format!("Machine {n}"),
        }
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
        match (self.0, n) {
            (Tongue::English, 1) => "There is signal. A report can go out.".to_owned(),
            (Tongue::English, n) => format!("There is signal. {n} reports can go out."),
        }
    }

    /// Said when entries of a newer build are on the phone.
    pub fn unreadable(self, n: usize) -> String {
        match self.0 {
            Tongue::English => format!(
                "{n} entries on this phone were written by a newer version. They are kept, \
                 and show again after an update."
            ),
        }
    }

    /// The customer's words, quoted.
    pub fn quoted(self, text: &str) -> String {
        match self.0 {
            Tongue::English => format!("“{text}”"),
        }
    }

    /// The next thing to do.
    pub fn continue_with(self, station: Phrase) -> String {
        match self.0 {
            Tongue::English => format!("Go on: {}", self.phrase(station)),
        }
    }

    /// How the readings stand.
    pub fn found_summary(self, readings: usize, out: usize) -> String {
        match (self.0, readings, out) {
            (Tongue::English, 0, 0) => "Readings before anything is touched".to_owned(),
            (Tongue::English, _, _) => {
                let s = if readings == 1 { "" } else { "s" };
                format!(
                    "{readings} reading{s}, {} out on high head",
                    self.machines(out)
                )
            }
        }
    }

    /// The number that matters most, in one line.
    pub fn numbers_summary(self, figures: &Figures, system: System) -> String {
        let approach = figures.approach.as_ref().ok();
        let range = figures.range.as_ref().ok();
        match (self.0, approach, range) {
            (Tongue::English, Some(approach), Some(range)) => format!(
                "Approach {}, range {}",
                show(Value::temperature_difference(*approach), system),
                show(Value::temperature_difference(*range), system)
            ),
            (Tongue::English, ..) => "What the readings come to".to_owned(),
        }
    }

    /// The top suspect in one line.
    pub fn suspect_summary(self, branch: Branch, probability: f64, first: &Suspect) -> String {
        match self.0 {
            Tongue::English => format!(
                "{}, {}. Likeliest in it: {}, {}. Not proven yet",
                self.trace_branch(branch),
                self.percent(probability),
                self.trace_mode(first.mode),
                self.percent(first.probability)
            ),
        }
    }

    /// A probability, never rounded to certainty.
    pub fn percent(self, p: f64) -> String {
        match p {
            p if p < 0.01 => "under 1 %".to_owned(),
            p if p > 0.99 => "over 99 %".to_owned(),
            p => format!("{:.0} %", 100.0 * p),
        }
    }

    /// How far the leaving round has come.
    pub fn leaving_summary(self, done: usize, all: usize) -> String {
        match self.0 {
            Tongue::English => format!("Leaving round {done} of {all}"),
        }
    }

    /// When the report was made.
    pub fn report_made_at(self, clock: &str) -> String {
        match self.0 {
            Tongue::English => format!("Made {clock}"),
        }
    }

    /// A report that waits.
    pub fn report_waits(self, date: &str, clock: &str) -> String {
        match self.0 {
            Tongue::English => format!("Made {date} {clock}. Waits to be sent."),
        }
    }

    /// A report that was handed over; never says that it arrived.
    pub fn handed_over(self, way: Way, clock: &str) -> String {
        match (self.0, way) {
            (Tongue::English, Way::Shared) => {
                format!("Handed to the share sheet {clock}. Has it arrived?")
            }
            (Tongue::English, Way::Mailed) => {
                format!("Mail draft opened {clock}. Was it sent?")
            }
            (Tongue::English, Way::MailFile) => {
                format!("Saved as a mail file {clock}. Was it sent from there?")
            }
            (Tongue::English, Way::Saved) => {
                format!("Saved on this phone {clock}. Not sent by this app.")
            }
        }
    }

    /// Minutes and a place for a check.
    pub fn minutes_at(self, minutes: f64, walk: f64, place: &str) -> String {
        match self.0 {
            Tongue::English if walk >= 0.5 => {
                format!("{place} · {minutes:.0} min, {walk:.0} min walk")
            }
            Tongue::English => format!("{place} · {minutes:.0} min"),
        }
    }

    /// What the approach should be today.
    pub fn expected_today(self, approach: &str) -> String {
        match self.0 {
            Tongue::English => format!("This tower as at design would show {approach} today."),
        }
    }

    /// The same figure at design load.
    pub fn at_design_load(self, amount: &str) -> String {
        match self.0 {
            Tongue::English => format!("At design load: {amount}."),
        }
    }

    /// How an evaporation was found, what the field rule says beside it, and
    /// by how much that misleads.
    pub fn evaporation_note(self, evaporation: &Evaporation, rule: &str) -> String {
        let Tongue::English = self.0;
        let how = match evaporation.method() {
            EvaporationMethod::Poppe => "By heat and mass balance up the fill.",
            EvaporationMethod::Balance => "By mass balance.",
            EvaporationMethod::FieldRule => {
                return "By the field rule: the outdoor air was not read.".to_owned();
            }
        };
        match evaporation.warning() {
            None => format!("{how} The field rule says {rule}."),
            Some(EvaporationWarning::RuleParts(part)) => {
                let percent = 100.0 * part.get::<ratio>();
                let side = if percent > 0.0 {
                    "too much"
                } else {
                    "too little"
                };
                let percent = percent.abs();
                format!("{how} The field rule says {rule}, {percent:.0} % {side} today.")
            }
        }
    }

    /// Condensing temperature over the water.
    pub fn over_leaving_water(self, difference: &str) -> String {
        match self.0 {
            Tongue::English => format!("{difference} over the water leaving."),
        }
    }

    /// Distance to the cut-out.
    pub fn from_cut_out(self, margin: &str, below: bool) -> String {
        match (self.0, below) {
            (Tongue::English, true) => format!("{margin} below the cut-out on the nameplate."),
            (Tongue::English, false) => format!("{margin} above the cut-out on the nameplate."),
        }
    }

    /// Steady or coming and going, in words.
    pub fn manner_split(self, steady: f64, intermittent: f64, can: bool) -> String {
        let all = steady + intermittent;
        if !can || all <= 0.0 {
            return String::new();
        }
        let share = intermittent / all;
        match self.0 {
            Tongue::English if share > 0.75 => "Comes and goes, by what was seen".to_owned(),
            Tongue::English if share < 0.25 => "Steady, by what was seen".to_owned(),
            Tongue::English => "Steady, or comes and goes: not told apart yet".to_owned(),
        }
    }
}
