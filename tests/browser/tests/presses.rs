//! A thumb on its way down: what it aims at stays where it was first painted while
//! the screen finishes its thinking and its reading.

use coldsump_browser::{Light, Phone, Server, answer};
use serde_json::json;

/// Looks at every frame where each thing to touch stands, from the first that shows
/// the screen, and keeps what moved meanwhile.
const WATCH: &str = "
    window.moved = [];
    let places = new Map();
    const look = () => {
      for (const one of document.querySelectorAll('a, button, input, select, textarea, summary')) {
        const { left, top, width, height } = one.getBoundingClientRect();
        if (!width || !height) continue;
        const is = [left + scrollX, top + scrollY];
        const was = places.get(one) ?? is;
        places.set(one, is);
        if (Math.hypot(was[0] - is[0], was[1] - is[1]) > 1)
          window.moved.push(`${one.dataset.test ?? one.textContent} ${was} to ${is}`);
      }
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);";

/// Opens a screen anew and adds what moved on it.
async fn open(phone: &Phone, hash: &str, screen: &str, moved: &mut Vec<String>) {
    phone.go(hash).await;
    phone.reload().await;
    phone.find(&format!("screen-{screen}")).await;
    // Every thought that follows a screen begins within 240 ms, and is one task.
    phone.rests(600).await;
    let here = phone.js("return window.moved").await;
    let here = here.as_array().expect("a list");
    moved.extend(here.iter().map(|one| format!("{screen}: {one}")));
}

#[tokio::test]
async fn nothing_moves_under_the_thumb() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    let watch = json!({ "source": WATCH });
    (phone.devtools("Page.addScriptToEvaluateOnNewDocument", watch)).await;
    phone.start(&server).await;
    let mut moved = Vec::new();
    open(&phone, "#/", "home", &mut moved).await;
    let visit = phone.demo_visit().await;
    open(&phone, &visit, "overview", &mut moved).await;
    open(&phone, &format!("{visit}/refill"), "refill", &mut moved).await;

    phone.go(&format!("{visit}/found")).await;
    phone.tap("machine-0-high-head").await;
    phone.type_into("head-0", "205").await;
    phone.type_into("dry-bulb", "88").await;
    phone.go(&format!("{visit}/trace")).await;
    answer(&phone, "CallAsFound", "Satisfied").await;
    phone.go(&format!("{visit}/refill")).await;
    phone.tap("begin-test").await;
    phone.find("next-mark").await;
    phone.go("#/").await;
    let site = phone.find("site-row").await.prop("hash").await;
    let site = site.expect("the page answers").expect("an address");
    for (hash, screen) in [
        (visit.clone(), "overview"),
        (format!("{visit}/found"), "found"),
        (format!("{visit}/numbers"), "numbers"),
        (format!("{visit}/trace"), "trace"),
        (format!("{visit}/refill"), "refill"),
        (format!("{visit}/left"), "left"),
        (format!("{visit}/papers"), "papers"),
        (format!("{visit}/report"), "report"),
        (site.clone(), "site"),
        (format!("{site}/basin"), "site-part"),
        (format!("{site}/history"), "history"),
        ("#/site/new".to_owned(), "new-site"),
        ("#/outbox".to_owned(), "outbox"),
        ("#/workings".to_owned(), "workings"),
        ("#/workings/air".to_owned(), "working"),
        ("#/settings".to_owned(), "settings"),
        ("#/lock".to_owned(), "lock"),
        ("#/".to_owned(), "home"),
    ] {
        open(&phone, &hash, screen, &mut moved).await;
    }
    assert!(moved.is_empty(), "{moved:#?}");
}
