//! A small drawing of the plant, seen from the side: the makeup line from the
//! street to the basin, the control over it, tower, pump and machines. Parts
//! under suspicion and parts cleared differ by shape, number and word; a list
//! under the drawing says the same.

use std::fmt::Write;

use crate::app::view::prelude::*;
use crate::trace::{Belief, Group, Mode, Plant};
use crate::words::{Phrase as P, Words};

/// How a part of the plant stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Mark {
    Suspect,
    Open,
    Cleared,
    PutRight,
}

/// From here on a part is under suspicion, and below here it is cleared.
const SUSPECT: f64 = 0.1;
const CLEARED: f64 = 0.02;

/// A part, how it stands, and the probability of a fault left in it.
type Part = (usize, Group, Mark, f64);

/// The parts in the order of their numbers, with the place of each number and
/// what is drawn of it: from the street on, then around the loop.
#[rustfmt::skip]
const PLACES: [(Group, i32, i32, &str); 10] = [
    (Group::MakeupLine, 49, 168,
        "M8 192H100V156M26 185l14 14V185l-14 14ZM56 185h16v14H56Zm0 14 16-14"),
    (Group::FillValve, 128, 141, "M92 156h16l-16-28h16ZM92 142H78v-9h0M100 128V82H158V98"),
    (Group::FillPower, 51, 107, "M28 92H74V122H28ZM74 114h4v19"),
    (Group::Sensing, 130, 70, "M51 92V70H174V84M169 84h10v7H169ZM172 91v16M176 91v24"),
    (Group::WaterLoss, 188, 146, "M164 126v10M164 139c3 5 5 6 5 9a5 5 0 0 1-10 0c0-3 2-4 5-9Z"),
    (Group::TowerAir, 292, 22, "M214 34l8-16H268l8 16ZM228 26h34"),
    (Group::TowerWater, 245, 68,
        "M190 34H300V92H190ZM200 46H328M210 46v7M228 46v7M246 46v7M264 46v7M282 46v7"),
    (Group::CondenserWater, 260, 150,
        "M232 126V140M242 150a10 10 0 1 1-20 0a10 10 0 1 1 20 0ZM232 160V167H292M212 167H292M212 201H328V46"),
    (Group::Machine, 252, 184,
        "M200 174h24v20h-24ZM240 174h24v20h-24ZM280 174h24v20h-24ZM212 167v7M252 167v7M292 167v7M212 194v7M252 194v7M292 194v7"),
    (Group::Conditions, 56, 28,
        "M33 28a9 9 0 1 1-18 0a9 9 0 1 1 18 0ZM24 12v4M24 40v4M8 28h4M36 28h4M13 17l3 3M35 17l-3 3M13 39l3-3M35 39l-3-3"),
];

/// The basin: its top and its floor in the drawing.
const LIP: f64 = 92.0;
const FLOOR: f64 = 126.0;

fn parts(belief: &Belief, plant: &Plant, corrected: &[Mode]) -> Vec<Part> {
    let modes = plant.modes();
    let has = |group: Group| modes.iter().any(|m| m.group() == group);
    let mut parts = Vec::new();
    for (n, (group, ..)) in PLACES.iter().enumerate() {
        if !has(*group) {
            continue;
        }
        let was = belief.groups.iter().find(|(g, _)| g == group);
        let put_right = corrected.iter().any(|m| m.group() == *group);
        // What was corrected counts with what remains of it.
        let left = belief.suspects.iter().filter(|s| s.mode.group() == *group);
        let p = match put_right {
            true => left.map(|s| s.probability).fold(0.0, f64::max),
            false => was.map_or(0.0, |(_, p)| *p),
        };
        let mark = match p {
            p if put_right && p < 0.25 => Mark::PutRight,
            p if p >= SUSPECT => Mark::Suspect,
            p if p < CLEARED => Mark::Cleared,
            _ => Mark::Open,
        };
        parts.push((n, *group, mark, p));
    }
    parts
}

/// A number in the shape of how its part stands.
fn mark(out: &mut String, n: usize, how: Mark, x: i32, y: i32) {
    let shape = match how {
        Mark::Suspect => "M0-16 16 11H-16Z",
        Mark::Open => "M10 0A10 10 0 1 1-10 0A10 10 0 1 1 10 0Z",
        Mark::Cleared => "M10 0A10 10 0 1 1-10 0A10 10 0 1 1 10 0ZM-11 11 11-11",
        Mark::PutRight => "M-10-10H10V10H-10Z",
    };
    let class = class(how);
    let drop = if how == Mark::Suspect { 8 } else { 5 };
    let _ = write!(
        out,
        "<g class=\"mark {class}\" transform=\"translate({x} {y})\"><path d=\"{shape}\"/>\
         <text y=\"{drop}\" text-anchor=\"middle\">{}</text></g>",
        n + 1
    );
}

fn class(how: Mark) -> &'static str {
    match how {
        Mark::Suspect => "doubted",
        Mark::Open => "open",
        Mark::Cleared => "cleared",
        Mark::PutRight => "put-right",
    }
}

/// The drawing with its list. `level` is the water's depth as a part of the
/// basin's, when it is known.
pub fn plant_view(
    belief: &Belief,
    plant: &Plant,
    corrected: &[Mode],
    level: Option<f64>,
    words: Words,
) -> View {
    let parts = parts(belief, plant, corrected);
    let mut inner = String::new();
    if let Some(level) = level {
        let top = FLOOR - level.clamp(0.0, 1.0) * (FLOOR - LIP);
        let _ = write!(
            inner,
            "<path class=\"pool\" d=\"M151 {top:.1}H317V{FLOOR}H151Z\"/>\
             <path class=\"line\" d=\"M151 {top:.1}H317\"/>"
        );
    }
    inner.push_str(
        "<path class=\"axis\" d=\"M150 92V126H318V92\"/><path class=\"faint\" \
         d=\"M196 62l10 22M210 62l10 22M224 62l10 22M266 62l10 22M280 62l10 22\"/>",
    );
    for (n, _, how, _) in &parts {
        let _ = write!(
            inner,
            "<path class=\"part {}\" d=\"{}\"/>",
            class(*how),
            PLACES[*n].3
        );
    }
    for (n, _, how, _) in &parts {
        mark(&mut inner, *n, *how, PLACES[*n].1, PLACES[*n].2);
    }
    let suspects: Vec<(Group, f64)> = parts
        .iter()
        .filter(|p| p.2 == Mark::Suspect)
        .map(|p| (p.1, p.3))
        .collect();
    let cleared: Vec<Group> = parts
        .iter()
        .filter(|p| p.2 == Mark::Cleared)
        .map(|p| p.1)
        .collect();
    let said = words.trace_drawing(&suspects, &cleared);
    let rows = parts
        .into_iter()
        .map(|(n, group, how, p)| {
            let mut badge = String::new();
            mark(&mut badge, n, how, 0, 0);
            let word = match how {
                Mark::Suspect => P::MarkSuspect,
                Mark::Open => P::MarkOpen,
                Mark::Cleared => P::MarkCleared,
                Mark::PutRight => P::MarkCorrected,
            };
            let state = match how {
                Mark::Suspect | Mark::Open => {
                    format!("{}, {}", words.phrase(word), words.percent(p))
                }
                Mark::Cleared | Mark::PutRight => words.phrase(word).to_owned(),
            };
            markup! {
                <li class=class(how) data-test=format!("part-{group:?}")>
                    <svg class="fig" viewBox="-17 -17 34 34" aria-hidden="true" inner_html=badge></svg>
                    <span>{words.trace_group(group)}</span>
                    <span class="sub small">{state}</span>
                </li>
            }
        })
        .collect_view();
    markup! {
        <svg class="fig plan" viewBox="0 0 340 212" role="img" aria-label=said data-test="plant"
            inner_html=inner></svg>
        <ul class="keys">{rows}</ul>
    }
}
