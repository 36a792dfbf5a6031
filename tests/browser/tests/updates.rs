//! A new version never comes in under a running test, and never by halves.

use coldsump_browser::{Build, Light, Phone, Server};

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
async fn a_new_version_waits_until_the_page_asks() {
    let build = Build::copy();
    build.mark_build("First");
    let mut server = Server::over(build.path());
    let phone = Phone::open(Light::Day).await;
    phone.goto(&server.url()).await;
    phone.mounted().await;
    phone.kept_offline().await;
    phone
        .holds("document.documentElement.dataset.build === 'First'")
        .await;

    // Half a file: the install fails as a whole and the first version stays.
    build.mark_build("Second");
    let whole = build.read("index.html");
    build.write("index.html", &whole[..whole.len() / 2]);
    phone.js(WATCH).await;
    phone
        .holds("document.documentElement.dataset.install === 'watched'")
        .await;
    phone.js(&format!("{LOOK}.catch(() => undefined)")).await;
    phone
        .holds("document.documentElement.dataset.install === 'redundant'")
        .await;
    server.stop();
    phone.reload().await;
    phone.mounted().await;
    phone
        .holds("document.documentElement.dataset.build === 'First'")
        .await;

    // The whole file: the second version is kept, and waits, also over a reload.
    server.resume();
    build.write("index.html", &whole);
    phone.js(LOOK).await;
    phone
        .holds("document.documentElement.dataset.update === 'waiting'")
        .await;
    phone.reload().await;
    phone.mounted().await;
    phone
        .holds("document.documentElement.dataset.update === 'waiting'")
        .await;
    phone
        .holds("document.documentElement.dataset.build === 'First'")
        .await;

    // The page asks for it; from then on it is the one kept, and the only one.
    phone
        .js("window.dispatchEvent(new Event('coldsump-take-over'))")
        .await;
    phone
        .holds("document.documentElement.dataset.build === 'Second'")
        .await;
    phone.mounted().await;
    phone
        .holds("document.documentElement.dataset.update === undefined")
        .await;
    server.stop();
    phone.reload().await;
    phone.mounted().await;
    phone
        .holds("document.documentElement.dataset.build === 'Second'")
        .await;
    phone
        .js("caches.keys().then((names) => document.documentElement.dataset.caches = names.length)")
        .await;
    phone
        .holds("document.documentElement.dataset.caches === '1'")
        .await;
}
