//! What was answered, read and put right, in order; what fits nothing else;
//! and the last thing kept, with its way back.

use crate::app::parts::icon::{Draw, Icon};
use crate::app::view::prelude::*;

use super::trace::{noted, take_back};
use super::trace_mind::{Known, Mind};
use crate::app::prefs::prefs;
use crate::record::Answered;
use crate::trace::{Reading, Stage};
use crate::words::Phrase as P;

/// Answers that hardly any cause left would give: look again there.
pub fn odd_ones(mind: Mind, known: &Known) -> Option<View> {
    let words = prefs().words;
    let odd = &known.belief.contradictions;
    // A check that is up already needs no pointing at.
    let up = mind.chosen.get();
    let rows: Vec<View> = odd
        .iter()
        .filter_map(|n| known.visit.answers.get(*n))
        .filter(|a| up != Some(a.evidence.check))
        .map(|a| {
            let check = a.evidence.check;
            markup! {
                <p>{words.trace_odd(&a.evidence, prefs().system.get())}</p>
                <div class="pair">
                    <button
                        type="button"
                        data-test=format!("again-{check:?}")
                        on:click=tap(move |_| mind.choose(check))
                    >
                        {words.phrase(P::TakeAgain)}
                    </button>
                    {take_back(mind, a.entry, format!("odd-{check:?}"))}
                </div>
            }
        })
        .collect();
    (!rows.is_empty()).then(|| {
        markup! {
            <div class="notice caution" data-test="contradiction">
                <Draw icon=Icon::Warning />
                <div>{rows}</div>
            </div>
        }
    })
}

/// The last thing kept, with its way back.
pub fn last_kept(mind: Mind, known: &Known) -> Option<View> {
    let words = prefs().words;
    let visit = &known.visit;
    let answer = visit.answers.iter().max_by_key(|a| a.entry);
    let corrected = visit.corrected.iter().zip(&visit.corrections);
    let corrected = corrected.max_by_key(|(at, _)| at.0);
    let (entry, text) = match (answer, corrected) {
        (answer, Some(((entry, at), c))) if answer.is_none_or(|a| a.entry < *entry) => {
            let kept = words.kept_at(&at.clock());
            let (name, kind) = (words.trace_mode(c.mode), words.phrase(P::WasPutRight));
            (*entry, format!("{kept}. {kind}: {name}"))
        }
        (Some(a), _) => {
            let check = words.trace_check(a.evidence.check);
            let said = words.trace_answered(&a.evidence, prefs().system.get());
            let kept = words.kept_at(&a.at.clock());
            (a.entry, format!("{kept}. {check}: {said}"))
        }
        _ => return None,
    };
    Some(markup! {
        <div class="kept" data-test="last-kept">
            {noted(Icon::Kept, text)}
            {take_back(mind, entry, "undo-last".to_owned())}
        </div>
    })
}

/// Everything so far, in order of time, by stage.
pub fn so_far(mind: Mind, seen: &Known) -> View {
    let words = prefs().words;
    let odd = &seen.belief.contradictions;
    let visit = &seen.visit;
    let mut rows = Vec::new();
    let mut stage = None;
    let mut corrections = visit.corrections.iter().zip(&visit.corrected).peekable();
    for n in 0..=visit.answers.len() {
        while let Some((c, (entry, at))) = corrections.next_if(|(c, _)| c.after <= n) {
            let test = format!("take-back-put-right-{:?}", c.mode);
            let name = words.trace_mode(c.mode).to_owned();
            let kind = words.phrase(P::WasPutRight).to_owned();
            let back = take_back(mind, *entry, test);
            rows.push(row(
                Icon::Kept,
                format!("{kind} {}", at.clock()),
                name,
                None,
                back,
            ));
        }
        let Some(a) = visit.answers.get(n) else { break };
        if stage != Some(a.evidence.stage) {
            stage = Some(a.evidence.stage);
            rows.push(heading(a.evidence.stage));
        }
        rows.push(answered(mind, a, odd.contains(&n)));
    }
    markup! {
        {read(seen)}
        <ul class="rows">{rows}</ul>
    }
}

fn heading(stage: Stage) -> View {
    let name = prefs().words.trace_stage(stage);
    markup! { <li class="stage-name sub small">{name}</li> }
}

fn answered(mind: Mind, a: &Answered, odd: bool) -> View {
    let words = prefs().words;
    let check = a.evidence.check;
    let icon = if odd { Icon::Warning } else { Icon::Full };
    let said = words.trace_answered(&a.evidence, prefs().system.get());
    let note = odd.then(|| words.phrase(P::Contradiction));
    let back = take_back(mind, a.entry, format!("take-back-{check:?}"));
    row(icon, words.trace_check(check).to_owned(), said, note, back)
}

fn row(icon: Icon, small: String, name: String, note: Option<&'static str>, back: View) -> View {
    markup! {
        <li>
            <div class="row">
                <Draw icon />
                <span>
                    <span class="small sub">{small}</span>
                    <br />
                    <span class="name">{name}</span>
                    {note
                        .map(|note| {
                            markup! {
                                <br />
                                <span class="state unproven">{note}</span>
                            }
                        })}
                </span>
                {back}
            </div>
        </li>
    }
}

/// The readings as found that the trace has heard.
fn read(known: &Known) -> Option<View> {
    let words = prefs().words;
    let tracer = &known.tracer;
    let heard: Vec<&str> = Reading::ALL
        .into_iter()
        .filter(|r| tracer.case.observed.soft(*r, &tracer.plant).is_some())
        .map(|r| words.trace_reading(r))
        .collect();
    (!heard.is_empty()).then(|| {
        let text = format!("{}: {}", words.phrase(P::StationFound), heard.join(", "));
        markup! { <p class="sub small">{text}</p> }
    })
}
