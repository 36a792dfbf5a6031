//! The report's sentences that carry numbers or names.

use super::{Phrase, ReportPhrase, Tongue, Words};
use crate::record::MachineState;
use crate::record::paperwork::Item;

impl Words {
    /// A machine's state.
    pub fn machine_state(self, state: MachineState) -> &'static str {
        self.phrase(match state {
            MachineState::Running => Phrase::MachineRunning,
            MachineState::HighHead => Phrase::MachineHighHead,
            MachineState::Stopped => Phrase::MachineStopped,
        })
    }

    /// What heads a line of the paperwork on the report.
    pub fn report_item(self, item: Item) -> &'static str {
        self.report_phrase(match item {
            Item::Work => ReportPhrase::WorkDone,
            Item::Part => ReportPhrase::Parts,
            Item::OnSite => ReportPhrase::OnSite,
            Item::Travel => ReportPhrase::Travel,
            Item::AdviseNow => ReportPhrase::Now,
            Item::AdviseSoon => ReportPhrase::Soon,
            Item::AdvisePlan => ReportPhrase::Planned,
            Item::ComeBack => ReportPhrase::ComeBack,
            Item::Mechanic | Item::Firm | Item::Licence | Item::Phone | Item::WaterPrice => {
                ReportPhrase::Mechanic
            }
        })
    }

    /// So many of so many.
    pub fn count_of(self, n: usize, all: usize) -> String {
        match self.0 {
            Tongue::English => format!("{n} of {all}"),
        }
    }

    /// An issue of the report, and which one it corrects.
    pub fn issue(self, n: usize, before: Option<(&str, &str)>) -> String {
        match (self.0, before) {
            (Tongue::English, None) => n.to_string(),
            (Tongue::English, Some((made, ""))) => {
                format!("{n}, takes the place of issue {} of {made}", n - 1)
            }
            (Tongue::English, Some((made, why))) => format!(
                "{n}, takes the place of issue {} of {made}. Corrected: {why}",
                n - 1
            ),
        }
    }

    /// How long the basin lasts when no water comes, at a makeup.
    pub fn cost_of_no_makeup(self, makeup: &str, inlet: &str, dry: &str, out: usize) -> String {
        let then = match (self.0, out) {
            (Tongue::English, 0) => "the machines stop on high head pressure".to_owned(),
            (Tongue::English, n) => format!(
                "the machines stop again on high head pressure: {} did this time",
                self.machines(n)
            ),
        };
        match self.0 {
            Tongue::English => format!(
                "If the makeup stops again, the basin falls from full to the pump inlet in \
                 {inlet} and is dry in {dry}, at {makeup}. Then {then}."
            ),
        }
    }

    /// Water that runs to the drain when the fill is left open.
    pub fn cost_of_open_fill(self, flow: &str, day: &str, money: &str) -> String {
        match self.0 {
            Tongue::English => format!(
                "A fill left open by hand, or one that sticks open, sends about {flow} over the \
                 overflow: {day} a day{money}."
            ),
        }
    }

    /// Water lost in a day by each unit of an unseen loss.
    pub fn cost_of_loss(self, flow: &str, day: &str, money: &str) -> String {
        match self.0 {
            Tongue::English => {
                format!("Each {flow} that runs away unseen is {day} a day{money}.")
            }
        }
    }

    /// Money beside an amount of water.
    pub fn cost_in_money(self, amount: &str) -> String {
        match self.0 {
            Tongue::English => format!(", {amount} a day at the price of water and sewer here"),
        }
    }

    /// What a signature in the report is.
    pub fn signature_of(self, name: &str) -> String {
        match self.0 {
            Tongue::English => format!("Signature of {name}, drawn on the glass"),
        }
    }

    /// How far the paperwork has come.
    pub fn papers_summary(self, lines: usize, photos: usize) -> String {
        match (self.0, lines, photos) {
            (_, 0, 0) => self.phrase(Phrase::PapersNotBegun).to_owned(),
            (Tongue::English, 1, 0) => "1 line".to_owned(),
            (Tongue::English, _, 0) => format!("{lines} lines"),
            (Tongue::English, _, 1) => format!("{lines} lines, 1 photo"),
            (Tongue::English, ..) => format!("{lines} lines, {photos} photos"),
        }
    }

    /// An issue of the report on the screen: when, how large, its digest.
    pub fn issue_line(self, n: usize, made: &str, kilobytes: u32, sha256: &str) -> String {
        let Tongue::English = self.0;
        let digest = match sha256.get(..16) {
            Some(first) => format!(", SHA-256 {first}…"),
            None => String::new(),
        };
        format!("Issue {n}, {made}, {kilobytes} kB{digest}")
    }

    /// Signed, on the screen.
    pub fn signed_by(self, name: &str, clock: &str) -> String {
        match self.0 {
            Tongue::English => format!("Signed by {name} {clock}"),
        }
    }

    /// When the last backup was saved.
    pub fn backup_saved(self, when: &str) -> String {
        match self.0 {
            Tongue::English => format!("Last saved {when}."),
        }
    }

    /// What taking in a backup brought: new entries, known ones, files,
    /// refused, of a newer build.
    pub fn backup_taken(self, [new, known, files, refused, newer]: [usize; 5]) -> String {
        let Tongue::English = self.0;
        let mut said = format!("{new} new entries and {files} files taken in; {known} were here.");
        if refused > 0 {
            said +=
                &format!(" {refused} do not agree with what is here or are damaged: not taken.");
        }
        if newer > 0 {
            said +=
                &format!(" {newer} are of a newer version: update the app and take it in again.");
        }
        said
    }
}
