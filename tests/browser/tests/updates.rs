//! A new version never comes in under a running test, and never by halves.

use coldsump_browser::marks::listed;
use coldsump_browser::{Build, Engine, Light, Phone, Server};

/// Looks for a new version as the browser does by itself now and then.
const LOOK: &str = "navigator.serviceWorker.getRegistration().then((one) => one.update())";

/// Notes in the page how the next install ends.
const WATCH: &str = "navigator.serviceWorker.getRegistration().then((registration) => {
    registration.addEventListener('updatefound', () => {
        const worker = registration.installing;
        worker.addEventListener('statechange', () => {
            document.documentElement.dataset.install = worker.state;
        });
    });
    document.documentElement.dataset.install = 'watched';
});";

#[tokio::test]
async fn a_new_version_waits_for_the_test_to_end_in_chromium() {
    changes_over(Engine::Chromium).await;
}

#[tokio::test]
async fn a_new_version_waits_for_the_test_to_end_in_firefox() {
    changes_over(Engine::Firefox).await;
}

#[tokio::test]
async fn a_new_version_waits_for_the_test_to_end_in_webkit() {
    changes_over(Engine::WebKit).await;
}

async fn changes_over(engine: Engine) {
    let build = Build::copy();
    build.mark_build("First");
    let mut server = Server::over(build.path());
    let phone = Phone::open_in(engine, Light::Day).await;
    phone.start(&server).await;
    phone.kept_offline().await;
    runs(&phone, "First").await;

    // A field half typed, a refill test under way.
    phone.tap("open-demo").await;
    phone.tap("next").await;
    phone.type_into("head-0", "20 and then").await;
    phone.tap("back").await;
    phone.tap("to-refill").await;
    phone.tap("begin-test").await;
    for marks in 1..=2 {
        phone.tap("next-mark").await;
        listed(&phone, marks).await;
    }

    // Half a file; a login page in place of a file; a file that is not there:
    // each install fails as a whole and the first version goes on.
    build.mark_build("Second");
    phone.js(WATCH).await;
    holds_root(&phone, "install", "'watched'").await;
    let wasm = build.beginning("coldsump-first-");
    for fault in ["half", "login", "absent"] {
        let file = if fault == "half" { "index.html" } else { &wasm };
        let whole = build.read(file);
        match fault {
            "half" => build.write(file, &whole[..whole.len() / 2]),
            "login" => build.write(file, b"<html>Guest network: accept the terms</html>"),
            _ => build.remove(file),
        }
        phone
            .js("delete document.documentElement.dataset.install")
            .await;
        phone.js(&format!("{LOOK}.catch(() => undefined)")).await;
        holds_root(&phone, "install", "'redundant'").await;
        assert_eq!(phone.count("update-waits").await, 0, "{fault}");
        build.write(file, &whole);
    }
    server.stop();
    phone.reload().await;
    phone.mounted().await;
    runs(&phone, "First").await;
    listed(&phone, 2).await;

    // The whole of it: it is kept and says that it waits for the test, and
    // does so over a reload.
    server.resume();
    phone.js(LOOK).await;
    for _ in 0..2 {
        holds_root(&phone, "update", "'waiting'").await;
        phone.reads("update-waits", "until the refill test").await;
        phone
            .holds("!document.querySelector('[data-test=update-waits] button')")
            .await;
        runs(&phone, "First").await;
        phone.reload().await;
        phone.mounted().await;
    }

    // Without signal the test ends; now the person may change over.
    server.stop();
    phone.tap("mark-Stopped").await;
    phone.find("verdict").await;
    phone.shot("update-waits").await;
    phone
        .holds("document.querySelector('[data-test=update-waits] button')")
        .await;
    phone
        .js("document.querySelector('[data-test=update-waits] button').click()")
        .await;
    runs(&phone, "Second").await;
    phone.mounted().await;
    holds_root(&phone, "update", "undefined").await;

    // The same screen, every mark, and what was half typed.
    phone.find("verdict").await;
    listed(&phone, 3).await;
    phone.tap("back").await;
    phone.tap("next").await;
    phone
        .holds("document.querySelector('[data-test=head-0]')?.value === '20 and then'")
        .await;

    // From now on it is the one kept, and the only one.
    phone.reload().await;
    phone.mounted().await;
    runs(&phone, "Second").await;
    phone
        .js("caches.keys().then((names) => document.documentElement.dataset.caches = names.length)")
        .await;
    holds_root(&phone, "caches", "'1'").await;
}

/// Waits until this version's page is up.
async fn runs(phone: &Phone, build: &str) {
    holds_root(phone, "build", &format!("'{build}'")).await;
}

async fn holds_root(phone: &Phone, name: &str, value: &str) {
    let is = format!("document.documentElement.dataset.{name} === {value}");
    phone.holds(&is).await;
}
