//! The trace's screen as a person uses it.

use serde_json::json;

use crate::phone::Phone;
use crate::wait::until;

/// Puts a check on the card, whatever the advice.
///
/// # Panics
/// When the list does not offer it.
pub async fn choose(phone: &Phone, check: &str) {
    let up = format!("document.querySelector('[data-check={check}]') !== null");
    // The list is drawn anew after each answer, so look again each time.
    let choose = format!(
        "if ({up}) return true;
         document.querySelectorAll('details[data-test^=checks-]').forEach((d) => d.open = true);
         document.querySelector('[data-test=choose-{check}]')?.click();
         return {up}"
    );
    until(check, async || {
        (phone.js(&choose).await == json!(true)).then_some(())
    })
    .await;
}

/// Chooses a check and answers it; on return it is on disk and listed.
///
/// # Panics
/// When the check does not have this answer.
pub async fn answer(phone: &Phone, check: &str, answer: &str) {
    choose(phone, check).await;
    phone.tap(&format!("answer-{answer}")).await;
    phone.find(&format!("take-back-{check}")).await;
}

/// The percentage that a suspect shows.
///
/// # Panics
/// When it shows none.
pub async fn odds(phone: &Phone, suspect: &str) -> u32 {
    let text = phone.text(suspect).await;
    // Engines differ in what stands between the name and the number.
    let before = text.split('%').next().unwrap_or_default().trim_end();
    let digits = before.rsplit(|c: char| !c.is_ascii_digit()).next();
    let percent = digits.filter(|digits| !digits.is_empty());
    percent
        .and_then(|n| n.parse().ok())
        .unwrap_or_else(|| panic!("no percentage in {text:?}"))
}
