//! Phrases of the trace.

use super::{Words, tongue};
use crate::trace::{
    Answer, Caution, Check, Group, Manner, Mode, Part, Place, Reading, Reason, Stage, Unproven,
};

impl Words {
    /// Short name of a fault mode.
    pub fn trace_mode(self, mode: Mode) -> &'static str {
        tongue!(self, trace_modes::name(mode))
    }

    /// Names of several causes, the first as the heading.
    pub fn trace_named(self, modes: &[Mode]) -> String {
        let names: Vec<&str> = modes.iter().map(|m| self.trace_mode(*m)).collect();
        names.join(" + ")
    }

    /// One line saying what is wrong in this mode.
    pub fn trace_mode_line(self, mode: Mode) -> &'static str {
        tongue!(self, trace_modes::line(mode))
    }

    /// Whether steady or intermittent.
    pub fn trace_manner(self, manner: Manner) -> &'static str {
        tongue!(self, trace_modes::manner(manner))
    }

    /// Name of a place on the site.
    pub fn trace_place(self, place: Place) -> &'static str {
        tongue!(self, trace_modes::place(place))
    }

    /// Name of a part of the plant.
    pub fn trace_group(self, group: Group) -> &'static str {
        tongue!(self, trace_modes::group(group))
    }

    /// What a closed trace leaves open, as a sentence.
    pub fn trace_unproven(self, unproven: &Unproven) -> String {
        tongue!(self, trace_reasons::unproven(unproven))
    }

    /// Title of a check.
    pub fn trace_check(self, check: Check) -> &'static str {
        tongue!(self, trace_checks::title(check))
    }

    /// What to do at a check.
    pub fn trace_check_how(self, check: Check) -> &'static str {
        tongue!(self, trace_checks::how(check))
    }

    /// What a healthy plant reads at a check.
    pub fn trace_check_healthy(self, check: Check) -> &'static str {
        tongue!(self, trace_checks::healthy(check))
    }

    /// Label of an answer.
    pub fn trace_answer(self, answer: Answer) -> &'static str {
        tongue!(self, trace_reasons::answer(answer))
    }

    /// The warning shown at a step.
    pub fn trace_caution(self, caution: Caution) -> &'static str {
        tongue!(self, trace_reasons::caution(caution))
    }

    /// When an answer was had.
    pub fn trace_stage(self, stage: Stage) -> &'static str {
        tongue!(self, trace_reasons::stage(stage))
    }

    /// Name of a reading.
    pub fn trace_reading(self, reading: Reading) -> &'static str {
        tongue!(self, trace_reasons::reading(reading))
    }

    /// Why a check is suggested, as a sentence.
    pub fn trace_reason(self, reason: Reason) -> String {
        tongue!(self, trace_reasons::reason(reason))
    }

    /// How to correct a mode.
    pub fn trace_cure(self, mode: Mode) -> &'static str {
        tongue!(self, trace_cures::cure(mode))
    }

    /// How to prove that a mode was the cause and is gone.
    pub fn trace_cure_proof(self, mode: Mode) -> &'static str {
        tongue!(self, trace_cures::proof(mode))
    }

    /// Name of a part.
    pub fn trace_part(self, part: Part) -> &'static str {
        tongue!(self, trace_cures::part(part))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trace::cure;
    use crate::words::Tongue;

    /// A label fits a button; a sentence ends like one.
    #[test]
    fn labels_are_short_and_unlike_sentences_end() {
        for tongue in Tongue::ALL {
            labels_and_sentences(Words(tongue));
        }
    }

    fn labels_and_sentences(words: Words) {
        let sentence = |s: &str| assert!(s.ends_with(['.', '?']) && s.len() > 3, "{s}");
        let label = |s: &str| {
            assert!(
                !s.ends_with('.') && (2..=42).contains(&s.chars().count()),
                "{s}"
            )
        };
        for mode in Mode::ALL.into_iter().chain(Mode::GENERAL) {
            label(words.trace_mode(mode));
            sentence(words.trace_mode_line(mode));
            sentence(words.trace_cure(mode));
            sentence(words.trace_cure_proof(mode));
            for part in cure(mode).parts {
                label(words.trace_part(*part));
            }
            for caution in cure(mode).cautions {
                sentence(words.trace_caution(*caution));
            }
            sentence(&words.trace_reason(Reason::ProvesIt { mode }));
        }
        for check in Check::ALL {
            label(words.trace_check(check));
            sentence(words.trace_check_how(check));
            sentence(words.trace_check_healthy(check));
            let labels: Vec<&str> = check
                .answers()
                .iter()
                .map(|a| words.trace_answer(*a))
                .collect();
            for (i, l) in labels.iter().enumerate() {
                label(l);
                assert!(!labels[..i].contains(l), "{check:?}: {l} twice");
            }
        }
    }

    #[test]
    fn names_of_modes_and_checks_are_all_different() {
        for tongue in Tongue::ALL {
            names_differ(Words(tongue));
        }
    }

    fn names_differ(words: Words) {
        let mut names: Vec<&str> = Mode::ALL
            .iter()
            .chain(&Mode::GENERAL)
            .map(|m| words.trace_mode(*m))
            .collect();
        names.extend(Check::ALL.iter().map(|c| words.trace_check(*c)));
        let all = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), all);
    }
}
