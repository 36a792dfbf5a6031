//! The report's sentences that carry numbers or names, in English.

use super::{app, said};
use crate::words::Phrase;

pub(in crate::words) fn count_of(n: usize, all: usize) -> String {
    format!("{n} of {all}")
}

pub(in crate::words) fn issue(n: usize, before: Option<(&str, &str)>) -> String {
    match before {
        None => n.to_string(),
        Some((made, "")) => format!("{n}, takes the place of issue {} of {made}", n - 1),
        Some((made, why)) => format!(
            "{n}, takes the place of issue {} of {made}. Corrected: {why}",
            n - 1
        ),
    }
}

pub(in crate::words) fn cost_of_no_makeup(
    makeup: &str,
    inlet: &str,
    dry: &str,
    out: usize,
) -> String {
    let then = match out {
        0 => "the machines stop on high head pressure".to_owned(),
        n => format!(
            "the machines stop again on high head pressure: {} did this time",
            said::machines(n)
        ),
    };
    format!(
        "If the makeup stops again, the basin falls from full to the pump inlet in {inlet} and is \
         dry in {dry}, at {makeup}. Then {then}."
    )
}

pub(in crate::words) fn cost_of_open_fill(flow: &str, day: &str, money: &str) -> String {
    format!(
        "A fill left open by hand, or one that sticks open, sends about {flow} over the overflow: \
         {day} a day{money}."
    )
}

pub(in crate::words) fn cost_of_loss(flow: &str, day: &str, money: &str) -> String {
    format!("Each {flow} that runs away unseen is {day} a day{money}.")
}

pub(in crate::words) fn cost_in_money(amount: &str) -> String {
    format!(", {amount} a day at the price of water and sewer here")
}

pub(in crate::words) fn signature_of(name: &str) -> String {
    format!("Signature of {name}, drawn on the glass")
}

pub(in crate::words) fn papers_summary(lines: usize, photos: usize) -> String {
    match (lines, photos) {
        (0, 0) => app::phrase(Phrase::PapersNotBegun).to_owned(),
        (1, 0) => "1 line".to_owned(),
        (_, 0) => format!("{lines} lines"),
        (_, 1) => format!("{lines} lines, 1 photo"),
        _ => format!("{lines} lines, {photos} photos"),
    }
}

pub(in crate::words) fn issue_line(n: usize, made: &str, kilobytes: u32, digest: &str) -> String {
    let digest = match digest {
        "" => String::new(),
        first => format!(", SHA-256 {first}…"),
    };
    format!("Issue {n}, {made}, {kilobytes} kB{digest}")
}

pub(in crate::words) fn signed_by(name: &str, clock: &str) -> String {
    format!("Signed by {name} {clock}")
}

pub(in crate::words) fn backup_saved(when: &str) -> String {
    format!("Last saved {when}.")
}

pub(in crate::words) fn backup_taken([new, known, files, refused, newer]: [usize; 5]) -> String {
    let mut said = format!("{new} new entries and {files} files taken in; {known} were here.");
    if refused > 0 {
        said += &format!(" {refused} do not agree with what is here or are damaged: not taken.");
    }
    if newer > 0 {
        said += &format!(" {newer} are of a newer version: update the app and take it in again.");
    }
    said
}
