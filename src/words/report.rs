//! The report's sentences that carry numbers or names.

use super::{Phrase, ReportPhrase, Words, tongue};
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
        tongue!(self, report_said::count_of(n, all))
    }

    /// An issue of the report, and which one it corrects.
    pub fn issue(self, n: usize, before: Option<(&str, &str)>) -> String {
        tongue!(self, report_said::issue(n, before))
    }

    /// How long the basin lasts when no water comes, at a makeup.
    pub fn cost_of_no_makeup(self, makeup: &str, inlet: &str, dry: &str, out: usize) -> String {
        tongue!(
            self,
            report_said::cost_of_no_makeup(makeup, inlet, dry, out)
        )
    }

    /// Water that runs to the drain when the fill is left open.
    pub fn cost_of_open_fill(self, flow: &str, day: &str, money: &str) -> String {
        tongue!(self, report_said::cost_of_open_fill(flow, day, money))
    }

    /// Water lost in a day by each unit of an unseen loss.
    pub fn cost_of_loss(self, flow: &str, day: &str, money: &str) -> String {
        tongue!(self, report_said::cost_of_loss(flow, day, money))
    }

    /// Money beside an amount of water.
    pub fn cost_in_money(self, amount: &str) -> String {
        tongue!(self, report_said::cost_in_money(amount))
    }

    /// What a signature in the report is.
    pub fn signature_of(self, name: &str) -> String {
        tongue!(self, report_said::signature_of(name))
    }

    /// How far the paperwork has come.
    pub fn papers_summary(self, lines: usize, photos: usize) -> String {
        tongue!(self, report_said::papers_summary(lines, photos))
    }

    /// An issue of the report on the screen: when, how large, its digest.
    pub fn issue_line(self, n: usize, made: &str, kilobytes: u32, sha256: &str) -> String {
        let digest = sha256.get(..16).unwrap_or_default();
        tongue!(self, report_said::issue_line(n, made, kilobytes, digest))
    }

    /// Signed, on the screen.
    pub fn signed_by(self, name: &str, clock: &str) -> String {
        tongue!(self, report_said::signed_by(name, clock))
    }

    /// When the last backup was saved.
    pub fn backup_saved(self, when: &str) -> String {
        tongue!(self, report_said::backup_saved(when))
    }

    /// What taking in a backup brought: new entries, known ones, files,
    /// refused, of a newer build.
    pub fn backup_taken(self, counts: [usize; 5]) -> String {
        tongue!(self, report_said::backup_taken(counts))
    }
}
