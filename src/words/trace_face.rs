//! What the trace's screens say beyond fixed phrases: evidence as a sentence,
//! weights in plain words, what would change the mind, and a closed trace.

use super::{Words, tongue};
use crate::physics::circuit::{Meter, Point};
use crate::quantity::{System, show};
use crate::record::AtMeter;
use crate::trace::{
    Closing, Evidence, Group, Mode, Source, Stage, Suspect, Turn, Unproven, Weight,
};

impl Words {
    /// What a stage means, as a sentence.
    pub fn trace_stage_line(self, stage: Stage) -> &'static str {
        tongue!(self, trace_face::stage_line(stage))
    }

    /// Which stage an answer counts for.
    pub fn trace_counts_as(self, stage: Stage) -> String {
        tongue!(self, trace_face::counts_as(self.trace_stage(stage)))
    }

    /// What was answered at a check, with its number where there is one.
    pub fn trace_answered(self, evidence: &Evidence, system: System) -> String {
        let answer = self.trace_answer(evidence.answer);
        match evidence.value {
            Some(value) => format!("{}: {answer}", show(value, system)),
            None => answer.to_owned(),
        }
    }

    /// A check with what was answered, and when where that is not as found.
    pub fn trace_said(self, evidence: &Evidence, system: System) -> String {
        let check = self.trace_check(evidence.check);
        let answer = self.trace_answered(evidence, system);
        match evidence.stage {
            Stage::AsFound => format!("{check}: {answer}"),
            stage => format!("{check}, {}: {answer}", self.trace_stage(stage)),
        }
    }

    /// Where a weight comes from.
    pub fn trace_source(self, source: Source, of: &[Evidence], system: System) -> String {
        match source {
            Source::Reading(reading) => self.trace_reading(reading).to_owned(),
            Source::Evidence(n) => of
                .get(n)
                .map_or(String::new(), |e| self.trace_said(e, system)),
        }
    }

    /// How much a weight changes the odds, in plain words.
    pub fn trace_weighs(self, weight: &Weight) -> String {
        tongue!(self, trace_face::weighs(weight.log10_odds))
    }

    /// The answer that would change the mind about a suspect.
    pub fn trace_turn(self, turn: &Turn) -> String {
        let (check, answer) = (self.trace_check(turn.check), self.trace_answer(turn.answer));
        let percent = self.percent(turn.probability);
        tongue!(self, trace_face::turn(check, answer, &percent))
    }

    /// An answer that hardly any cause left would give.
    pub fn trace_odd(self, evidence: &Evidence, system: System) -> String {
        let said = self.trace_said(evidence, system);
        tongue!(self, trace_face::odd(&said))
    }

    /// What a closed trace leaves open, with the evidence it speaks of.
    pub fn trace_open(self, open: &Unproven, of: &[Evidence], system: System) -> String {
        match open {
            Unproven::Contradicted(n) if *n < of.len() => {
                let said = self.trace_said(&of[*n], system);
                tongue!(self, trace_face::contradicted(&said))
            }
            _ => self.trace_unproven(open),
        }
    }

    /// The proof of a closed trace in one paragraph, and behind it what was
    /// not proven.
    pub fn trace_closed(self, closing: &Closing, of: &[Evidence], system: System) -> String {
        let mut text = String::new();
        for source in &closing.proof {
            text.push_str(&self.trace_source(*source, of, system));
            text.push_str(". ");
        }
        for open in &closing.unproven {
            text.push_str(&self.trace_open(open, of, system));
            text.push(' ');
        }
        text.trim_end().to_owned()
    }

    /// What may be the cause where nothing more is worth asking, likeliest first.
    pub fn trace_one_of(self, suspects: &[Suspect]) -> String {
        let each = |s: &Suspect| {
            let (name, percent) = (self.trace_mode(s.mode), self.percent(s.probability));
            format!("{name}, {percent}")
        };
        match suspects {
            [one] => {
                let (name, percent) = (self.trace_mode(one.mode), self.percent(one.probability));
                tongue!(self, trace_face::likeliest(name, &percent))
            }
            _ => {
                let names: Vec<String> = suspects.iter().map(each).collect();
                tongue!(self, trace_face::one_of(&names.join("; ")))
            }
        }
    }

    /// Causes that nothing at hand tells apart, as one answer.
    pub fn trace_either(self, modes: &[Mode]) -> String {
        let names: Vec<&str> = modes.iter().map(|m| self.trace_mode(*m)).collect();
        tongue!(self, trace_face::either(&names.join("; ")))
    }

    /// What was put right, as the work done.
    pub fn trace_work(self, modes: &[Mode]) -> String {
        let names: Vec<&str> = modes.iter().map(|m| self.trace_mode(*m)).collect();
        match names.is_empty() {
            true => String::new(),
            false => tongue!(self, trace_face::work(&names.join("; "))),
        }
    }

    /// What was put right, and what of the suspicion is left.
    pub fn trace_remains(self, corrected: &[Mode], left: Option<&Suspect>) -> String {
        let done = self.trace_work(corrected);
        let Some(left) = left else {
            return done;
        };
        let percent = self.percent(left.probability);
        match corrected.contains(&left.mode) {
            true => tongue!(self, trace_face::not_taken(&done, &percent)),
            false => tongue!(
                self,
                trace_face::remains(&done, self.trace_mode(left.mode), &percent)
            ),
        }
    }

    /// How long putting something right takes.
    pub fn trace_repair(self, minutes: f64, place: &str) -> String {
        match minutes > 0.0 {
            true => tongue!(self, trace_face::repair(place, minutes)),
            false => place.to_owned(),
        }
    }

    /// Where the leads of the meter go.
    pub fn trace_leads(self, at: AtMeter) -> String {
        let meter = self.circuit_meter(at.meter);
        let point = |p: Point| self.circuit_point(p);
        let (first, second) = (point(at.leads.first), point(at.leads.second));
        match at.meter {
            Meter::Clamp => tongue!(self, trace_face::clamp_at(meter, first)),
            _ => format!("{meter} · {first} → {second}"),
        }
    }

    /// How many checks of a place were answered.
    pub fn trace_place_count(self, place: &str, done: usize, all: usize) -> String {
        tongue!(self, trace_face::place_count(place, done, all))
    }

    /// The plant's drawing in words.
    pub fn trace_drawing(self, suspects: &[(Group, f64)], cleared: &[Group]) -> String {
        let suspects: Vec<String> = suspects
            .iter()
            .map(|(g, p)| format!("{} {}", self.trace_group(*g), self.percent(*p)))
            .collect();
        let cleared: Vec<&str> = cleared.iter().map(|g| self.trace_group(*g)).collect();
        let none = |text: String| {
            if text.is_empty() {
                self.phrase(super::Phrase::NoneYet).to_owned()
            } else {
                text
            }
        };
        let (suspects, cleared) = (none(suspects.join(", ")), none(cleared.join(", ")));
        tongue!(self, trace_face::drawing(&suspects, &cleared))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Kind, Value};
    use crate::trace::{Answer, Case, Check, Plant, Reading, Tracer};

    fn volts(si: f64) -> Evidence {
        let kind = Kind::Voltage;
        let value = Value { kind, si };
        let plant = Plant::default();
        Evidence::read(Check::CoilVoltage, value, Stage::Testing, &plant).expect("a field")
    }

    #[test]
    fn a_number_read_is_told_with_its_unit_and_stage() {
        let words = Words::default();
        let said = words.trace_said(&volts(23.8), System::Us);
        assert_eq!(
            said,
            "Voltage at the coil, while testing: 23.8\u{a0}V: Right"
        );
        let found = Evidence::said(Check::HandValves, Answer::AllOpen, Stage::AsFound);
        let source = words.trace_source(Source::Evidence(1), &[volts(24.0), found], System::Us);
        assert_eq!(source, "Hand valves: All open");
        let read = words.trace_source(Source::Reading(Reading::BasinLevel), &[], System::Si);
        assert_eq!(read, "Basin level");
        assert_eq!(words.trace_source(Source::Evidence(9), &[], System::Us), "");
    }

    #[test]
    fn weights_are_told_as_times_for_and_against() {
        let words = Words::default();
        let weighs = |log10_odds| {
            let source = Source::Evidence(0);
            words.trace_weighs(&Weight { source, log10_odds })
        };
        assert_eq!(weighs(0.4771), "3 times likelier");
        assert_eq!(weighs(-0.4771), "3 times less likely");
        assert_eq!(weighs(0.146), "1.4 times likelier");
        assert_eq!(weighs(5.0), "over 100 times likelier");
        assert_eq!(weighs(-1.3), "20 times less likely");
    }

    /// A closed trace names its proof and what it leaves open.
    #[test]
    fn a_closed_trace_tells_proof_and_what_is_open() {
        use Answer as A;
        let found = |check, answer| Evidence::said(check, answer, Stage::AsFound);
        let evidence = [
            found(Check::BasinOnArrival, A::BasinLow),
            found(Check::CallAsFound, A::Calls),
            volts(24.1),
            Evidence::said(Check::CoilPull, A::NoPull, Stage::Testing),
            Evidence::said(Check::CoilResistance, A::CoilReadsOpen, Stage::Testing),
        ];
        let tracer = Tracer::new(&Plant::default(), &Case::of(&evidence));
        let closing = tracer.closing(Mode::CoilOpen).expect("a coil");
        let text = Words::default().trace_closed(&closing, &evidence, System::Us);
        assert!(
            text.contains("Resistance of the coil, while testing: Open."),
            "{text}"
        );
        assert!(text.contains("not proven by a refill test"), "{text}");
        assert!(!text.contains("Not confirmed"), "{text}");
    }
}
