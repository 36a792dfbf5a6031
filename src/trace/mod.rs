//! The trace: from readings to a proven cause.
//!
//! A model of the plant says what each check would read under each
//! hypothesis: a set of up to three fault [`Mode`]s, each steady or
//! intermittent. [`Tracer`] holds the exact posterior over those hypotheses
//! and answers from it: the [`Belief`], the check to do next, which evidence
//! speaks for and against a suspect, and what a closed trace has proven.
//!
//! Method: model-based diagnosis of multiple faults (de Kleer and Williams,
//! Artificial Intelligence 32, 1987) with the cost-aware choice of the next
//! test of decision-theoretic troubleshooting (Heckerman, Breese and
//! Rommelse, Communications of the ACM 38(3), 1995) and cost clusters
//! (Ottosen and Jensen, 2010). The probabilities inside the model are
//! judgement unless their table says otherwise: common practice, no source.

mod ahead;
mod answer;
mod belief;
mod check;
mod closing;
mod cure;
mod desk;
mod evidence;
mod flat;
mod heard;
mod hypothesis;
mod lattice;
mod mass;
mod meter;
mod mode;
mod next;
mod observed;
mod plant;
mod proof;
mod sensible;
mod sheet;
mod tracer;
mod weight;
mod world;

#[cfg(test)]
mod tests;

pub use answer::Answer;
pub use belief::{Belief, Suspect, infer, posterior};
pub use check::{Access, Caution, Check};
pub use closing::{Closing, Unproven};
pub use cure::{Cure, Part, cure};
pub use evidence::{Case, Correction, Evidence, Stage};
pub use flat::{Flat, FlatCheck, FlatMode};
pub use hypothesis::{Fault, Hypothesis, common_cause};
pub use mode::{Basis, Branch, Group, Lowers, Manner, Mode, Place};
pub use next::{Advice, Goal, Reason, Suggestion, advise};
pub use observed::{Observed, Reading};
pub use plant::{Bleed, Contact, FillValve, LevelControl, MachineKind, Plant};
pub use tracer::Tracer;
pub use weight::{Source, Strength, Turn, Weight, why};
