//! Evidence: what was answered or read, when, and what was corrected.

use crate::quantity::named::by_name;
use serde::{Deserialize, Serialize};

use super::answer::Answer;
use super::check::Check;
use super::meter;
use super::mode::Mode;
use super::observed::Observed;
use super::plant::Plant;
use crate::quantity::Value;

/// When an answer was had. What an intermittent fault does may differ from
/// one stage to the next, so evidence of different stages is kept apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// As found: nobody had touched anything yet.
    AsFound,
    /// After water was let in, by the bypass or a bucket, and nothing else
    /// was touched.
    WaterLetIn,
    /// After hands were on it: a probe lifted, a valve worked, power cycled.
    Testing,
    /// After something was corrected.
    Corrected,
}
by_name!(Stage: AsFound WaterLetIn Testing Corrected);

impl Stage {
    /// Every stage, in the order of a visit.
    pub const ALL: [Stage; 4] = [
        Stage::AsFound,
        Stage::WaterLetIn,
        Stage::Testing,
        Stage::Corrected,
    ];
}

/// One answered check.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Evidence {
    /// What was checked.
    pub check: Check,
    /// What it said.
    pub answer: Answer,
    /// When.
    pub stage: Stage,
    /// The number read, where the check has a field; it outranks the answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<Value>,
}

impl Evidence {
    /// An answer in words.
    pub fn said(check: Check, answer: Answer, stage: Stage) -> Self {
        Self {
            check,
            answer,
            stage,
            value: None,
        }
    }

    /// A number read at a check that has a field for it: the answer it comes
    /// to, and the number. `None` when the check has no field of this kind on
    /// this plant or the number is out of its range.
    pub fn read(check: Check, value: Value, stage: Stage, plant: &Plant) -> Option<Self> {
        let weights = meter::weights(check, value, plant)?;
        let best = (0..3).max_by(|a, b| weights[*a].total_cmp(&weights[*b]))?;
        Some(Self {
            check,
            answer: *check.answers().get(best)?,
            stage,
            value: Some(value),
        })
    }

    /// How much each answer of the check is said, 0 to 1; `None` when this
    /// tells nothing.
    pub(crate) fn weights(&self, plant: &Plant) -> Option<[f64; 3]> {
        if let Some(weights) = self
            .value
            .and_then(|v| meter::weights(self.check, v, plant))
        {
            return Some(weights);
        }
        let column = self.check.column(self.answer)?;
        let mut weights = [0.0; 3];
        weights[column] = 1.0;
        Some(weights)
    }
}

/// Something was put right: from then on the belief is about what remains.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Correction {
    /// Which fault was dealt with.
    pub mode: Mode,
    /// How many pieces of evidence came before it.
    pub after: usize,
}

/// All that is known of a call.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", default)]
pub struct Case {
    /// Readings as found.
    pub observed: Observed,
    /// Answers, in order of time.
    pub evidence: Vec<Evidence>,
    /// What was put right meanwhile.
    pub corrections: Vec<Correction>,
}

impl Case {
    /// A call of which only these answers are known.
    pub fn of(evidence: &[Evidence]) -> Self {
        Self {
            evidence: evidence.to_vec(),
            ..Self::default()
        }
    }
}
