//! The home screen opened beside the walk: with the records of the moment, by a new
//! start in a tab of its own.

use std::collections::BTreeSet;

use serde_json::json;

use crate::build::Build;
use crate::engine::Engine;
use crate::phone::{Light, Phone};
use crate::server::Server;
use crate::walk::{walk, walker};

/// The stops of the walk after which home shows something else.
const STATES: [&str; 16] = [
    "home-empty",
    "overview-new",
    "found",
    "trace-named",
    "refill-running",
    "refill-verdict",
    "left",
    "report-made",
    "outbox",
    "outbox-empty",
    "site-new",
    "home-full",
    "settings",
    "lock-on",
    "room-low",
    "not-saved",
];

/// Walks, and opens home by a new start in each of its states, and in glare, SI units
/// and Spanish; in the other engines with no record and with the demo's. `look` sees each
/// with its name. Meanwhile `localStorage.beside` is set.
///
/// # Panics
/// When a screen does not come.
pub async fn in_every_state(build: &Build, mut look: impl AsyncFnMut(&Phone, &str)) {
    let mut server = Server::over(build.path());
    let home = server.url();
    for engine in [Engine::Chromium, Engine::Firefox, Engine::WebKit] {
        let phone = Phone::open_in(engine, Light::Day).await;
        // The very first start makes the store.
        phone.goto(&format!("{home}icon.svg")).await;
        (phone.js("localStorage.beside = 'yes'")).await;
        start(&phone, &home).await;
        look(&phone, &format!("new in {engine:?}")).await;
        if engine == Engine::Chromium {
            for agent in ["iPhone", "Android"] {
                let is = json!({ "userAgent": agent });
                phone.devtools("Emulation.setUserAgentOverride", is).await;
                (phone.js("sessionStorage.clear()")).await;
                start(&phone, &home).await;
                look(&phone, agent).await;
            }
        }
        (phone.js("localStorage.removeItem('beside')")).await;
        phone.goto(&format!("{home}icon.svg")).await;
        phone.start(&server).await;
        phone.demo_visit().await;
        (phone.js("localStorage.beside = 'yes'; sessionStorage.clear()")).await;
        start(&phone, &home).await;
        look(&phone, &format!("demo in {engine:?}")).await;
    }
    let phone = walker(false).await;
    walk(&phone, &mut server, async |phone: &Phone, stop: &str| {
        if STATES.contains(&stop) {
            beside(phone, &home, async |phone| look(phone, stop).await).await;
        }
    })
    .await;
    // The walk ends on a page that can't save.
    phone.reload().await;
    for (name, choice, kept) in [
        ("glare", "light-glare", "[data-light=glare]"),
        ("si", "units-si", "[data-light=glare]"),
        ("spanish", "language-es", "[lang=es]"),
    ] {
        phone.go("#/settings").await;
        phone.tap(choice).await;
        phone
            .holds(&format!(
                "document.querySelector('[data-test={choice}]').ariaPressed === 'true'"
            ))
            .await;
        beside(&phone, &home, async |phone| {
            let kept = format!("document.documentElement.matches('{kept}')");
            phone.holds(&kept).await;
            look(phone, name).await;
        })
        .await;
    }
}

/// Opens home in a new tab, looks at it, and closes the tab.
async fn beside(phone: &Phone, home: &str, look: impl AsyncFnOnce(&Phone)) {
    let driver = phone.driver();
    let walks = driver.window().await.expect("the walk's tab");
    phone.js("localStorage.beside = 'yes'").await;
    let tab = driver.new_tab().await.expect("a tab");
    (driver.switch_to_window(tab).await).expect("the new tab");
    start(phone, home).await;
    look(phone).await;
    driver.close_window().await.expect("the tab closes");
    (driver.switch_to_window(walks).await).expect("the walk's tab");
    phone.js("localStorage.removeItem('beside')").await;
}

/// Starts at home and lets it rest.
async fn start(phone: &Phone, home: &str) {
    phone.goto(home).await;
    phone
        .holds("document.querySelector('[data-test=screen-home], [data-test=screen-locked]')")
        .await;
    // What a start does later by itself begins within 300 ms of its first frame.
    phone.rests(800).await;
}

/// Gives a watched program's page (`Build::over`) the question [`ran`] asks.
pub const ASK_RAN: &str = "
    const given = [];
    const { decode } = TextDecoder.prototype;
    TextDecoder.prototype.decode = function (...bytes) {
      const text = decode.apply(this, bytes);
      given.push(text);
      return text;
    };
    window.askRan = async () => {
      const { js } = document.querySelector('[name=coldsump-parts]').dataset;
      const glue = await import(new URL(js, document.baseURI).href);
      const up = Object.entries(await glue.default()).filter(([name, flag]) =>
        name.startsWith('of ') && flag.value === 1);
      const ran = up.map(([name]) => name.slice(3).replace(/#\\d+$/, ''));
      window.ran = [ran, [...new Set(given)]];
    };";

/// What a watched program (`tools/split`) ran so far on this page, by name, and what it
/// gave the page to show.
///
/// # Panics
/// When the page's program is not a watched one.
pub async fn ran(phone: &Phone) -> [BTreeSet<String>; 2] {
    phone.js("window.ran = undefined; window.askRan();").await;
    phone.holds("window.ran").await;
    let all = phone.js("return window.ran").await;
    [0, 1].map(|n| {
        let texts = all[n].as_array().expect("a list");
        assert!(!texts.is_empty(), "a program that runs has some");
        let text = |text: &serde_json::Value| text.as_str().expect("a text").to_owned();
        texts.iter().map(text).collect()
    })
}
