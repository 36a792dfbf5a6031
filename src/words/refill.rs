//! Phrases of the refill test.

use std::cmp::Ordering;

use super::{Words, tongue};
use crate::quantity::{Length, System, Time, Value, VolumeRate, show};
use crate::record::{Gap, LoopPoint};
use crate::refill::{
    Caution, DrainBasis, DrawBasis, ExpectedMark, Finding, Limit, Missing, NextReading, Phase,
    ScaleKind, Span, Verdict,
};
use uom::si::time::minute;

/// How numbers are shown: the caller brings the person's units.
#[derive(Clone, Copy)]
pub struct Format<'a> {
    /// A flow with its unit, such as "12.4 gpm".
    pub flow: &'a dyn Fn(VolumeRate) -> String,
    /// A height with its unit, such as "9 1/4 in".
    pub level: &'a dyn Fn(Length) -> String,
    /// A time given in minutes, with its unit, such as "3.5 min".
    pub minutes: &'a dyn Fn(f64) -> String,
}

impl Words {
    /// A mark in a list or on a figure, in a word or two.
    pub fn refill_mark_short(self, mark: ExpectedMark) -> &'static str {
        tongue!(self, refill::mark_short(mark))
    }

    /// A finding with its numbers in the person's units.
    pub fn finding(self, finding: &Finding, system: System) -> String {
        let format = Format {
            flow: &|flow| show(Value::flow(flow), system).to_string(),
            level: &|level| show(Value::level(level), system).to_string(),
            minutes: &|minutes| show(Value::duration(minutes_as_time(minutes)), system).to_string(),
        };
        self.refill_finding(finding, &format)
    }

    /// A reading that the fit left out.
    pub fn left_out_reading(self) -> &'static str {
        tongue!(self, said::left_out_reading())
    }

    /// What the figure shows, for those who can't see it.
    pub fn chart_summary(self, verdict: Verdict, readings: usize) -> String {
        tongue!(self, said::chart_summary(verdict, readings))
    }

    /// Minutes and seconds of the test's clock.
    pub fn test_clock(self, seconds: f64) -> String {
        let sign = if seconds <= -0.5 { "−" } else { "" };
        let whole = seconds.abs().round();
        let (hours, minutes) = ((whole / 3600.0).floor(), (whole / 60.0).floor() % 60.0);
        let rest = whole % 60.0;
        match hours {
            0.0 => format!("{sign}{minutes}:{rest:02}"),
            _ => format!("{sign}{hours}:{minutes:02}:{rest:02}"),
        }
    }

    /// A time between two events, with what a thumb or a reading leaves open.
    pub fn span(self, span: &Span) -> String {
        let half = (span.high_s - span.value_s).ceil();
        format!(
            "{}\u{a0}±\u{a0}{half}\u{a0}s",
            self.test_clock(span.value_s)
        )
    }

    /// What goes on being lost while the basin fills.
    pub fn losses_while_testing(self, losses: &str) -> String {
        tongue!(self, said::losses_while_testing(losses))
    }

    /// How long the fill should take.
    pub fn fill_takes(self, least: f64, most: f64) -> String {
        let (least, most) = (minutes(least), minutes(most));
        tongue!(self, refill::fill_takes(&least, &most))
    }

    /// How long the drawdown should take.
    pub fn draw_takes(self, least: f64, most: f64, basis: DrainBasis) -> String {
        let (least, most) = (minutes(least), minutes(most));
        tongue!(self, refill::draw_takes(&least, &most, basis))
    }

    /// How long to watch the level after the shut-off.
    pub fn watch_after(self, share: f64) -> String {
        let share = format!("{share:.1}");
        tongue!(self, refill::watch_after(&share))
    }

    /// How long a fill may take that still passes.
    pub fn fill_at_most(self, most: f64) -> String {
        let most = minutes(most);
        tongue!(self, refill::fill_at_most(&most))
    }

    /// How long until the pump inlet is at risk when no water comes.
    pub fn minutes_to_limit(self, left: f64) -> String {
        let left = minutes(left);
        tongue!(self, refill::minutes_to_limit(&left))
    }

    /// How long the drawdown would take by the losses alone.
    pub fn minutes_if_drain_shut(self, minutes: f64) -> String {
        let time = self::minutes(minutes);
        tongue!(self, said::minutes_if_drain_shut(&time))
    }

    /// When the next machine may be started.
    pub fn start_in(self, seconds: f64) -> String {
        match seconds > 0.0 {
            true => {
                let time = self.test_clock(seconds);
                tongue!(self, refill::start_in(&time))
            }
            false => tongue!(self, refill::start_now()).to_owned(),
        }
    }

    /// The button that notes a start.
    pub fn machine_started(self, machine: &str) -> String {
        tongue!(self, refill::machine_started(machine))
    }

    /// Where the loop settles.
    pub fn settles_at(self, temperature: &str) -> String {
        tongue!(self, refill::settles_at(temperature))
    }

    /// The button for marks that are not listed yet.
    pub fn older_marks(self, count: usize) -> String {
        tongue!(self, refill::older_marks(count))
    }

    /// What the line through the head means.
    pub fn head_foreseen(self, machine: &str) -> String {
        tongue!(self, refill::head_foreseen(machine))
    }

    /// What a reading was expected to be between, and on which side of it it lies.
    pub fn foreseen(self, point: &LoopPoint, bounds: (Value, Value), system: System) -> String {
        let (low, high) = bounds;
        let side = match point.value.si {
            v if v < low.si => Ordering::Less,
            v if v > high.si => Ordering::Greater,
            _ => Ordering::Equal,
        };
        let (low, high) = (show(low, system), show(high, system).to_string());
        tongue!(self, refill::foreseen(&low.number, &high, side))
    }

    /// A mark was just taken back.
    pub fn taken_back(self, mark: &str) -> String {
        tongue!(self, refill::taken_back(mark))
    }

    /// A mark that was moved: when it was tapped, and by how much it moved.
    pub fn mark_moved(self, tapped_s: f64, by_s: f64) -> String {
        let (clock, step) = (self.test_clock(tapped_s), self.seconds_step(by_s));
        tongue!(self, refill::mark_moved(&clock, &step))
    }

    /// A step in time with its sign, such as "−10 s".
    pub fn seconds_step(self, by_s: f64) -> String {
        let sign = if by_s < 0.0 { "−" } else { "+" };
        format!("{sign}{}\u{a0}s", by_s.abs().round())
    }

    /// A level as it was typed.
    pub fn as_typed(self, typed: &str) -> String {
        tongue!(self, refill::typed(typed))
    }

    /// What the basin's own scale shows.
    pub fn on_scale(self, kind: ScaleKind, shows: f64) -> String {
        match kind {
            ScaleKind::WallMarks => tongue!(self, refill::wall_mark(shows)),
            _ => format!("{:.0} mm", 1000.0 * shows),
        }
    }

    /// A stretch in which the phone did not watch.
    pub fn refill_gap(self, gap: &Gap) -> String {
        let (from, to) = (self.test_clock(gap.from_s), self.test_clock(gap.to_s));
        tongue!(self, refill::gap(gap.why, &from, &to, self))
    }

    /// The phone's clock was moved during a test.
    pub fn clock_moved(self, seconds: f64) -> String {
        let moved = self.test_clock(seconds.abs());
        tongue!(self, said::clock_moved(&moved, seconds < 0.0))
    }

    /// What the button of a mark says.
    pub fn refill_mark(self, mark: ExpectedMark) -> &'static str {
        tongue!(self, refill::mark(mark))
    }

    /// What to do now. `drain_open` is
    /// [`drain_open`](crate::refill::drain_open()) of the same marks.
    pub fn refill_phase(self, phase: Phase, drain_open: bool) -> &'static str {
        tongue!(self, refill::phase(phase, drain_open))
    }

    /// The verdict in a word or two.
    pub fn refill_verdict(self, verdict: Verdict) -> &'static str {
        tongue!(self, refill::verdict(verdict))
    }

    /// A finding as a sentence, numbers in the person's units.
    pub fn refill_finding(self, finding: &Finding, format: &Format<'_>) -> String {
        tongue!(self, refill_findings::finding(finding, format))
    }

    /// Why a figure cannot be given.
    pub fn refill_missing(self, missing: Missing) -> &'static str {
        tongue!(self, refill::missing(missing))
    }

    /// What would help most next.
    pub fn refill_next(self, next: NextReading) -> &'static str {
        tongue!(self, refill::next(next))
    }

    /// A caution before the drain is opened.
    pub fn refill_caution(self, caution: Caution) -> &'static str {
        tongue!(self, refill::caution(caution))
    }

    /// The name of a level across the figure.
    pub fn refill_limit(self, limit: Limit) -> &'static str {
        tongue!(self, refill::limit(limit))
    }

    /// Why the plan draws down to the level it names.
    pub fn refill_basis(self, basis: DrawBasis) -> &'static str {
        tongue!(self, refill::basis(basis))
    }
}

fn minutes(minutes: f64) -> String {
    show(Value::duration(minutes_as_time(minutes)), System::Us).to_string()
}

fn minutes_as_time(minutes: f64) -> Time {
    Time::new::<minute>(minutes)
}
