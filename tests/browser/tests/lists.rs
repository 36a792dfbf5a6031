//! Lists, search and history: what a phone shows of the work before today.

use coldsump_browser::{Light, Phone, Server};

#[tokio::test]
async fn earlier_visits_are_found_and_drawn_over_time() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    phone.tap("open-demo").await;
    phone.find("screen-overview").await;

    // A new visit begins with what the last one left.
    phone.reads("since-last", "81 days ago").await;
    phone.reads("since-last", "Film on the probe").await;
    phone
        .reads("since-last", "Water treatment has been told")
        .await;

    // Over time: plots that a screen reader can name, and a table behind.
    phone
        .js("document.querySelector('[data-test=since-last] a').click()")
        .await;
    phone.find("screen-history").await;
    let named = "[...document.querySelectorAll('[data-test=plots] svg')]
        .map(s => s.getAttribute('aria-label')).join('|')";
    for said in [
        "Approach against wet bulb",
        "Fill flow",
        "1460",
        "Pump strainer",
    ] {
        phone.holds(&format!("({named}).includes('{said}')")).await;
    }
    let rows = "document.querySelectorAll('[data-test=plots] tbody tr').length";
    phone.holds(&format!("{rows} === 4")).await;
    phone.reads("cleaning", "weeks").await;
    phone.shot("history").await;

    // The list holds all four visits after a reload; a misspelt name is found.
    phone.goto(&server.url()).await;
    phone.reload().await;
    phone.mounted().await;
    let visits = "document.querySelectorAll('[data-test=visit-row]').length";
    phone.holds(&format!("{visits} === 4")).await;
    phone.type_into("search", "hladen strainr").await;
    phone.holds(&format!("{visits} === 0")).await;
    phone.type_into("search", "hladen chilers warm").await;
    phone.holds(&format!("{visits} === 1")).await;
    phone.shot("search").await;
    phone.tap("visit-row").await;
    phone.find("screen-overview").await;
    phone.reads("complaint-said", "Two chillers warm").await;
    phone.reads("to-trace", "Pump strainer").await;
    assert_eq!(phone.problems(&server.origin()).await, []);
}
