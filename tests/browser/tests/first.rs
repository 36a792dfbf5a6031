//! The program's two parts: the first draws home by itself, what is done before the rest
//! is in waits for it, and what goes wrong between them is mended or said.

use coldsump_browser::home::in_every_state;
use coldsump_browser::{Build, Engine, Light, Phone, Server};
use serde_json::json;

/// Keeps the rest back where a tab was opened beside the walk, or the part that is asked
/// for, until it is let go.
const HOLD: &str = "
    window.starts = Number(sessionStorage.getItem('starts') ?? 0) + 1;
    sessionStorage.setItem('starts', window.starts);
    const ask = window.fetch;
    let let_go;
    const gate = new Promise((done) => { let_go = done; });
    window.letGo = let_go;
    window.fetch = async (what, ...how) => {
      const part = localStorage.getItem('beside') ? 'rest' : localStorage.getItem('hold');
      if (part && String(what.href ?? what).includes(`coldsump-${part}`)) {
        window.asked = true;
        await gate;
      }
      return ask(what, ...how);
    };";

#[tokio::test]
async fn the_first_part_draws_home_in_every_state() {
    let build = Build::over(HOLD);
    let mut lacking = Vec::new();
    in_every_state(&build, async |phone: &Phone, state: &str| {
        // One start, and it stands though the rest was asked for and did not come.
        let seen = phone
            .js("return [window.starts, window.asked ?? false,
                         document.documentElement.dataset.whole ?? 'no',
                         document.documentElement.dataset.stopped ?? 'runs']")
            .await;
        if seen != json!([1, true, "no", "runs"]) {
            lacking.push(format!("{state}: {seen}"));
        }
    })
    .await;
    assert!(lacking.is_empty(), "{lacking:#?}; run ./dev first");
}

#[tokio::test]
async fn an_early_tap_waits_for_the_rest_in_chromium() {
    an_early_tap_waits(Engine::Chromium).await;
}

#[tokio::test]
async fn an_early_tap_waits_for_the_rest_in_firefox() {
    an_early_tap_waits(Engine::Firefox).await;
}

#[tokio::test]
async fn an_early_tap_waits_for_the_rest_in_webkit() {
    an_early_tap_waits(Engine::WebKit).await;
}

async fn an_early_tap_waits(engine: Engine) {
    let build = Build::over(HOLD);
    let server = Server::over(build.path());
    let phone = Phone::open_in(engine, Light::Day).await;
    phone.start(&server).await;
    phone.kept_offline().await;
    let visit = phone.demo_visit().await;
    phone.go("#/").await;
    phone.js("localStorage.setItem('hold', 'rest')").await;
    phone.reload().await;
    phone.mounted().await;
    phone.holds("window.asked").await;
    phone.shot("first").await;

    // A search, and then a screen: both wait, and the page says that it is busy.
    phone.type_into("search", "zzz").await;
    phone.tap("to-settings").await;
    phone
        .holds(
            "document.documentElement.matches('[aria-busy=true]')
             && getComputedStyle(document.documentElement, '::before').visibility === 'visible'",
        )
        .await;
    phone.shot("first-waits").await;
    assert_eq!(phone.count("screen-home").await, 1);
    phone.js("window.letGo()").await;
    phone.find("screen-settings").await;
    phone
        .holds("document.documentElement.dataset.whole === 'yes'")
        .await;
    phone
        .holds("!document.documentElement.hasAttribute('aria-busy')")
        .await;

    // The same of an address, and of the way back.
    phone.go("#/").await;
    phone.reload().await;
    phone.holds("window.asked").await;
    phone.js(&format!("location.hash = '{visit}'")).await;
    phone.js("window.letGo()").await;
    phone.find("screen-overview").await;

    // Before the first part is in there is a line that says so, not at once.
    phone.js("localStorage.setItem('hold', 'first')").await;
    phone.go("#/").await;
    phone.reload().await;
    phone.holds("window.asked").await;
    phone
        .holds("document.getElementById('boot-say').checkVisibility()")
        .await;
    phone.shot("first-slow").await;
    phone.js("window.letGo()").await;
    phone.find("screen-home").await;
    assert_eq!(phone.js("return window.starts").await, 4);
}

#[tokio::test]
async fn another_screen_starts_with_both_parts() {
    let build = Build::over(HOLD);
    let server = Server::over(build.path());
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    let visit = phone.demo_visit().await;
    phone.go(&visit).await;
    phone.js("localStorage.setItem('hold', 'rest')").await;
    phone.reload().await;
    phone.holds("window.asked").await;
    assert_eq!(phone.count("app").await, 0, "nothing is drawn by half");
    phone.js("window.letGo()").await;
    phone.find("screen-overview").await;
}

#[tokio::test]
async fn what_the_first_part_lacks_brings_both_at_once() {
    let build = Build::over(HOLD);
    let server = Server::over(build.path());
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    phone.js("localStorage.setItem('hold', 'rest')").await;
    phone.reload().await;
    phone.holds("window.asked").await;
    // As the engine tells of a call into a slot that is empty yet.
    phone
        .js("localStorage.removeItem('hold');
             dispatchEvent(new ErrorEvent('error', { error: new WebAssembly.RuntimeError('no such') }))")
        .await;
    phone.holds("window.starts === 3").await;
    phone.mounted().await;
    phone.find("screen-home").await;
    phone
        .holds("document.documentElement.dataset.whole === 'yes'")
        .await;
    assert_eq!(phone.count("stopped-title").await, 0);
    // The next start is in two again.
    phone.js("localStorage.setItem('hold', 'rest')").await;
    phone.reload().await;
    phone.mounted().await;
    phone.holds("window.asked").await;
}

#[tokio::test]
async fn a_rest_that_does_not_come_is_said() {
    let build = Build::copy();
    let rest = build.beginning("coldsump-rest-");
    let bytes = build.read(&rest);
    build.remove(&rest);
    let server = Server::over(build.path());
    let phone = Phone::open(Light::Day).await;
    phone.goto(&server.url()).await;
    phone.find("screen-home").await;
    phone
        .holds("document.getElementById('boot-again')?.hidden === false")
        .await;
    let says = phone.js("return document.body.innerText").await.to_string();
    assert!(says.contains("did not arrive complete"), "{says}");
    build.write(&rest, &bytes);
    phone
        .js("document.getElementById('boot-again').click()")
        .await;
    phone
        .holds("document.documentElement.dataset.whole === 'yes'")
        .await;
    phone.find("screen-home").await;
}
