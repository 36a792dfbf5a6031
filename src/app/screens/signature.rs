//! The signature: a name in letters, and a finger on the glass.

use crate::app::view::prelude::*;

use super::visit_frame::Job;
use crate::app::ledger::ledger;
use crate::app::parts::field::{TextField, lasting, settle_text};
use crate::app::parts::glass::{Glass, strokes};
use crate::app::parts::icon::{Draw, Icon};
use crate::app::prefs::prefs;
use crate::record::Body;
use crate::record::paperwork::Spot;
use crate::words::Phrase as P;

/// The most places of one signature; beyond it the finger leaves no trace.
const MOST: usize = 4_000;

/// The part of the report's screen.
#[component]
pub fn Signature(job: Job) -> View {
    let words = prefs().words;
    let key = lasting(format!("signer {}", job.id));
    let name = RwSignal::new(String::new());
    let drawn = RwSignal::new(Vec::<Vec<Spot>>::new());
    let lacking = RwSignal::new(false);
    let passed = move |(spot, down): (Spot, bool)| {
        drawn.update(|all| {
            if all.iter().map(Vec::len).sum::<usize>() >= MOST {
                return;
            }
            match all.last_mut() {
                Some(last) if !down => {
                    if last.last() != Some(&spot) {
                        last.push(spot);
                    }
                }
                _ => all.push(vec![spot]),
            }
        });
    };
    let keep = move |_| {
        let (said, strokes) = (
            name.get_untracked().trim().to_owned(),
            drawn.get_untracked(),
        );
        lacking.set(said.is_empty() || strokes.is_empty());
        if lacking.get_untracked() {
            return;
        }
        let body = Body::Signed {
            name: said,
            strokes,
        };
        ledger().write_then(job.about(), vec![body], move || {
            settle_text(key);
            drawn.set(Vec::new());
        });
    };
    let signed = move || job.visit.with(|v| v.as_ref()?.paper.signature.clone());
    let refusal = Signal::derive(move || {
        lacking
            .get()
            .then(|| words.phrase(P::SignatureNeeds).to_owned())
    });
    markup! {
        <section>
            <h2>{words.phrase(P::SignatureTitle)}</h2>
            <p class="sub small">{words.phrase(P::SignatureSub)}</p>
            {move || {
                signed()
                    .map(|signed| {
                        markup! {
                            <p class="said yes" data-test="signed">
                                <Draw icon=Icon::Kept />
                                <span>{words.signed_by(&signed.name, &signed.at.clock())}</span>
                            </p>
                        }
                    })
            }}
            <TextField
                key=key.to_owned()
                text=name
                label=words.phrase(P::SignatureName)
                refusal
                test="signer"
            />
            <div class="pane pen">
                <svg
                    viewBox="0 0 10000 10000"
                    preserveAspectRatio="none"
                    aria-hidden="true"
                    inner_html=move || {
                        let now = drawn.get();
                        match (now.is_empty(), signed()) {
                            (true, Some(kept)) => strokes(&kept.strokes),
                            _ => strokes(&now),
                        }
                    }
                ></svg>
                <Glass
                    label=words.phrase(P::SignatureField)
                    passed=Callback::new(passed)
                    lifted=Callback::new(|()| {})
                    test="glass"
                />
            </div>
            <div class="pair">
                <button type="button" on:click=tap(move |_| drawn.set(Vec::new()))>
                    {words.phrase(P::ClearSignature)}
                </button>
                <button type="button" data-test="keep-signature" on:click=tap(keep)>
                    {words.phrase(P::KeepSignature)}
                </button>
            </div>
        </section>
    }
}
