//! The loop recovering, on a phone: water and head against what was to be expected,
//! and the time to the next start counting down, through a reload.

use coldsump_browser::{Clock, Light, Phone, Server};

/// Types a reading and notes it.
async fn note(phone: &Phone, field: &str, button: &str, text: &str, listed: usize) {
    phone.type_into(field, text).await;
    phone.tap(button).await;
    let rows = "document.querySelectorAll('[data-test=loop-readings] li').length";
    phone.holds(&format!("{rows} === {listed}")).await;
}

#[tokio::test]
async fn water_and_head_are_foreseen_and_the_next_start_is_timed() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    let mut clock = Clock::under(&phone).await;
    phone.start(&server).await;
    phone.tap("open-demo").await;
    phone.tap("to-refill").await;
    phone.tap("recovery").await;

    // Too hot for any machine: the time to the first start runs.
    note(&phone, "loop-entering", "note-entering", "112", 1).await;
    phone.reads("restart-timer", "Retarder 1\nin ").await;
    let before = phone.text("restart-timer").await;
    clock.pass(&phone, 60).await;
    phone
        .holds(&format!(
            "!document.querySelector('[data-test=restart-timer]').textContent.includes({before:?})"
        ))
        .await;
    clock.pass(&phone, 3600).await;
    phone.reads("restart-timer", "Retarder 1\nnow").await;
    phone.tap("machine-started").await;
    phone.reads("restart-timer", "Retarder 2").await;

    // An hour later the water is where it was to be, and the head is far above.
    note(&phone, "loop-entering", "note-entering", "79", 2).await;
    phone.reads("loop-readings", "79.0 °F").await;
    note(&phone, "loop-head", "note-head", "190", 3).await;
    phone.reads("loop-readings", "higher than the").await;
    phone.reads("head-foreseen", "Retarder 1").await;
    assert_eq!(phone.count("chart").await, 2);

    // As the water in the loop is known, it stands in the log.
    note(&phone, "loop-volume", "note-volume", "1200 gal", 4).await;
    phone.shot("recovery").await;
    phone.reload().await;
    phone.mounted().await;
    phone.tap("recovery").await;
    phone.reads("loop-readings", "1200 gal").await;
    phone.reads("loop-readings", "190 psig").await;
    assert_eq!(phone.count("chart").await, 2);
    let problems = phone.problems(&server.origin()).await;
    assert!(problems.is_empty(), "{problems:?}");
}
