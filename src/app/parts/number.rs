//! A number: big figures, small unit, and how we know it one tap
//! below.

use crate::app::view::prelude::*;

use crate::app::prefs::prefs;
use crate::quantity::{Value, show};
use crate::words::Phrase as P;

/// Figures and unit.
#[component]
pub fn Amount(
    /// The value.
    value: Value,
) -> View {
    let shown = move || show(value, prefs().system.get());
    markup! {
        <span class="value">
            {move || shown().number}
            <span class="u">{move || shown().unit}</span>
        </span>
    }
}

/// A labelled number with its formula, source and working.
#[component]
pub fn Number(
    /// What it is.
    #[prop(into)]
    label: String,
    /// The value, or why there is none.
    value: Result<Value, String>,
    /// One line under the number.
    #[prop(optional_no_strip)]
    note: Option<String>,
    /// Formula and source.
    basis: (&'static str, &'static str),
    /// What went into it, as text.
    #[prop(optional)]
    from: Vec<(String, String)>,
    /// A name for tests.
    #[prop(into)]
    test: String,
) -> View {
    let words = prefs().words;
    let (formula, source) = basis;
    markup! {
        <div class="number" data-test=test>
            <span class="label">{label}</span>
            {match value {
                Ok(value) => markup! { <Amount value /> },
                Err(why) => markup! { <span class="value none">{why}</span> },
            }}
            {note.map(|note| markup! { <span class="small sub">{note}</span> })}
            <details>
                <summary>{words.phrase(P::HowWeKnow)}</summary>
                <dl class="basis">
                    <dt>{words.phrase(P::Formula)}</dt>
                    <dd>{formula}</dd>
                    {(!from.is_empty())
                        .then(|| {
                            markup! {
                                <dt>{words.phrase(P::FromThese)}</dt>
                                <dd>
                                    <ul>
                                        {from
                                            .iter()
                                            .map(|(name, value)| {
                                                markup! { <li>{format!("{name}: {value}")}</li> }
                                            })
                                            .collect_view()}
                                    </ul>
                                </dd>
                            }
                        })}
                    <dt>{words.phrase(P::Source)}</dt>
                    <dd>{source}</dd>
                </dl>
            </details>
        </div>
    }
}
