//! The trace: from readings to a proven cause.
//!
//! A model of the plant says what each check would read under each
//! hypothesis: a set of up to two fault [`Mode`]s, each steady or
//! intermittent. [`infer`] gives the exact posterior over those hypotheses,
//! [`advise`] the check that buys most information for its minutes, [`why`]
//! which evidence speaks for and against a suspect, [`cure`] what to do.
//!
//! Method: model-based diagnosis of multiple faults (de Kleer and Williams,
//! Artificial Intelligence 32, 1987) with the cost-aware choice of the next
//! test of decision-theoretic troubleshooting (Heckerman, Breese and
//! Rommelse, Communications of the ACM 38(3), 1995). The probabilities inside
//! the model are judgement: common practice, no source.

mod answer;
mod belief;
mod cure;
mod engine;
mod evidence;
mod hypothesis;
mod mode;
mod model;
mod model_fill;
mod next;
mod observed;
mod plant;
mod weight;

#[cfg(test)]
mod properties;
#[cfg(test)]
mod scenarios;
#[cfg(test)]
mod simulation;

pub use answer::Answer;
pub use belief::{Belief, Suspect, infer, posterior};
pub use cure::{Cure, Part, cure};
pub use evidence::{Caution, Check, Evidence, Stage};
pub use hypothesis::{Fault, Hypothesis, common_cause};
pub use mode::{Group, Manner, Mode, Place};
pub use next::{Advice, Reason, Suggestion, advise};
pub use observed::{Observed, Reading};
pub use plant::{LevelControl, Plant};
pub use weight::{Source, Strength, Weight, why};
