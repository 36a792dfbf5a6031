//! The face's sentences that carry numbers or names, in English.

use uom::si::ratio::ratio;

use super::app::phrase;
use super::{refill, trace_modes};
use crate::physics::water::{Evaporation, EvaporationMethod, EvaporationWarning};
use crate::quantity::{System, Value, show};
use crate::record::{ACCEPTED, Figures, Fouling, Way};
use crate::refill::Verdict;
use crate::trace::{Branch, Suspect};
use crate::words::Phrase;

pub(in crate::words) fn kept_at(clock: &str) -> String {
    format!("Kept {clock}")
}

pub(in crate::words) fn machines(n: usize) -> String {
    format!("{n} machine{}", if n == 1 { "" } else { "s" })
}

pub(in crate::words) fn last_time(days: i64) -> String {
    match days {
        0 => "Last time, today".to_owned(),
        1 => "Last time, yesterday".to_owned(),
        n => format!("Last time, {n} days ago"),
    }
}

pub(in crate::words) fn about_days(days: f64) -> String {
    match days {
        d if d < 21.0 => format!("about {d:.0} days"),
        d if d < 120.0 => format!("about {:.0} weeks", d / 7.0),
        d => format!("about {:.0} months", d / 30.44),
    }
}

pub(in crate::words) fn cleaning_interval(f: &Fouling) -> String {
    let (short, _, long) = f.clean_after_days;
    let (low, middle, high) = f.per_year;
    format!(
        "Clean the probe after this long and the chance that it fouls before is {:.0}%. {} foul{} \
         in {:.1} years watched: {middle:.1} a year, with 90% between {low:.1} and {high:.1}; the \
         interval then lies between {} and {}.",
        100.0 * ACCEPTED,
        f.fouls,
        if f.fouls == 1 { "" } else { "s" },
        f.years,
        about_days(short),
        about_days(long),
    )
}

pub(in crate::words) fn machine_numbered(n: usize) -> String {
    format!("Machine {n}")
}

pub(in crate::words) fn reports_can_go(n: usize) -> String {
    match n {
        1 => "There is signal. A report can go out.".to_owned(),
        n => format!("There is signal. {n} reports can go out."),
    }
}

pub(in crate::words) fn unreadable(n: usize) -> String {
    format!(
        "{n} entries on this phone were written by a newer version. They are kept, and show again \
         after an update."
    )
}

pub(in crate::words) fn quoted(text: &str) -> String {
    format!("“{text}”")
}

pub(in crate::words) fn continue_with(station: Phrase) -> String {
    format!("Go on: {}", phrase(station))
}

pub(in crate::words) fn found_summary(readings: usize, out: usize) -> String {
    if (readings, out) == (0, 0) {
        return "Readings before anything is touched".to_owned();
    }
    let s = if readings == 1 { "" } else { "s" };
    format!("{readings} reading{s}, {} out on high head", machines(out))
}

pub(in crate::words) fn numbers_summary(figures: &Figures, system: System) -> String {
    match (&figures.approach, &figures.range) {
        (Ok(approach), Ok(range)) => format!(
            "Approach {}, range {}",
            show(Value::temperature_difference(*approach), system),
            show(Value::temperature_difference(*range), system)
        ),
        _ => "What the readings come to".to_owned(),
    }
}

pub(in crate::words) fn suspect_summary(branch: Branch, part: f64, first: &Suspect) -> String {
    format!(
        "{}, {}. Likeliest in it: {}, {}. Not proven yet",
        trace_modes::branch(branch),
        percent(part),
        trace_modes::name(first.mode),
        percent(first.probability)
    )
}

pub(in crate::words) fn percent(p: f64) -> String {
    match p {
        p if p < 0.01 => "under\u{a0}1%".to_owned(),
        p if p > 0.99 => "over\u{a0}99%".to_owned(),
        p => format!("{:.0}%", 100.0 * p),
    }
}

pub(in crate::words) fn leaving_summary(done: usize, all: usize) -> String {
    format!("Leaving round {done} of {all}")
}

pub(in crate::words) fn report_made_at(clock: &str) -> String {
    format!("Made {clock}")
}

pub(in crate::words) fn report_waits(date: &str, clock: &str) -> String {
    format!("Made {date} {clock}. Waits to be sent.")
}

pub(in crate::words) fn handed_over(way: Way, clock: &str) -> String {
    match way {
        Way::Shared => format!("Handed to the share sheet {clock}. Has it arrived?"),
        Way::Mailed => format!("Mail draft opened {clock}. Was it sent?"),
        Way::MailFile => format!("Saved as a mail file {clock}. Was it sent from there?"),
        Way::Saved => format!("Saved on this phone {clock}. Not sent by this app."),
    }
}

pub(in crate::words) fn minutes_at(minutes: f64, walk: f64, place: &str) -> String {
    match walk >= 0.5 {
        true => format!("{place} · {minutes:.0}\u{a0}min, {walk:.0}\u{a0}min\u{a0}walk"),
        false => format!("{place} · {minutes:.0}\u{a0}min"),
    }
}

pub(in crate::words) fn expected_today(approach: &str) -> String {
    format!("This tower as at design would show {approach} today.")
}

pub(in crate::words) fn at_design_load(amount: &str) -> String {
    format!("At design load: {amount}.")
}

pub(in crate::words) fn evaporation_note(evaporation: &Evaporation, rule: &str) -> String {
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
            format!("{how} The field rule says {rule}, {percent:.0}% {side} today.")
        }
    }
}

pub(in crate::words) fn over_leaving_water(difference: &str) -> String {
    format!("{difference} over the water leaving.")
}

pub(in crate::words) fn from_cut_out(margin: &str, below: bool) -> String {
    match below {
        true => format!("{margin} below the cut-out on the nameplate."),
        false => format!("{margin} above the cut-out on the nameplate."),
    }
}

/// `share`: of what was seen, how much comes and goes.
pub(in crate::words) fn manner_split(share: f64) -> &'static str {
    match share {
        share if share > 0.75 => "Comes and goes, by what was seen",
        share if share < 0.25 => "Steady, by what was seen",
        _ => "Steady, or comes and goes: not told apart yet",
    }
}

pub(in crate::words) fn left_out_reading() -> &'static str {
    "left out of the fit"
}

pub(in crate::words) fn chart_summary(verdict: Verdict, readings: usize) -> String {
    let s = if readings == 1 { "" } else { "s" };
    format!(
        "{readings} level reading{s}, verdict: {}",
        refill::verdict(verdict)
    )
}

pub(in crate::words) fn losses_while_testing(losses: &str) -> String {
    format!("Taken as lost while it fills: {losses}, from the machines noted as running.")
}

pub(in crate::words) fn minutes_if_drain_shut(time: &str) -> String {
    format!("Without the drain, the losses alone take {time}.")
}

pub(in crate::words) fn clock_moved(moved: &str, back: bool) -> String {
    let way = if back { "back" } else { "on" };
    format!(
        "The phone's clock was set {way} by {moved} during this test. The test's own clock was not."
    )
}
