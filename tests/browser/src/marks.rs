//! Marks of a running refill test, made as a thumb makes them. A mark is on disk
//! once it is listed.

use crate::Phone;

/// Taps the big button once it offers this mark, and sees the mark listed.
///
/// # Panics
/// When it is not offered, or not kept.
pub async fn next_mark(phone: &Phone, mark: &str) {
    let offered =
        format!("document.querySelector('[data-test=next-mark]')?.dataset.mark === '{mark}'");
    phone.holds(&offered).await;
    let before = phone.count("mark").await;
    phone.tap("next-mark").await;
    if mark != "Stopped" {
        listed(phone, before + 1).await;
    }
}

/// Steps the level and marks it.
///
/// # Panics
/// When it is not kept.
pub async fn level(phone: &Phone, step: &str, times: usize) {
    for _ in 0..times {
        phone.tap(step).await;
    }
    let before = phone.count("mark").await;
    phone.tap("mark-level").await;
    listed(phone, before + 1).await;
}

/// Waits until so many marks are listed.
///
/// # Panics
/// When they never are.
pub async fn listed(phone: &Phone, marks: usize) {
    let count = format!("document.querySelectorAll('[data-test=mark]').length === {marks}");
    phone.holds(&count).await;
}
