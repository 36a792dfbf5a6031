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
}
