//! What is half typed on a screen stands after a reload, on every screen; the
//! back button goes back, and a link leads to its screen.

use coldsump_browser::{Light, Phone, Server, until};
use serde_json::json;

/// Types something into every field that shows, and answers what stands in
/// which. A search is no record, and a file is not typed.
const TYPE: &str = "
    document.querySelectorAll('main details').forEach((one) => { one.open = true; });
    const typed = {};
    let n = 0;
    for (const one of document.querySelectorAll('main input, main textarea')) {
        if (one.matches('[type=file], [type=search]') || !one.checkVisibility()) continue;
        const kind = one instanceof HTMLTextAreaElement ? HTMLTextAreaElement : HTMLInputElement;
        const text = one.type === 'date' ? '2027-01-0' + (1 + n % 9) : 'half ' + n + '.';
        Object.getOwnPropertyDescriptor(kind.prototype, 'value').set.call(one, text);
        one.dispatchEvent(new Event('input', { bubbles: true }));
        typed[one.id] = text;
        n += 1;
    }
    return typed;";

/// Which of the typed texts are not on disk yet. A person types one at a time;
/// here all come at once, so the last is waited for.
const NOT_KEPT: &str = "
    const [typed, done] = arguments;
    const asked = indexedDB.open('coldsump');
    asked.onsuccess = () => {
        const all = asked.result.transaction('texts').objectStore('texts').getAll();
        all.onsuccess = () => {
            const kept = all.result.map((row) => row.text);
            asked.result.close();
            done(Object.values(typed).filter((text) => !kept.some((one) => one.includes(text))));
        };
    };";

const STANDS: &str = "
    document.querySelectorAll('main details').forEach((one) => { one.open = true; });
    const typed = arguments[0];
    return Object.keys(typed).filter((id) => document.getElementById(id)?.value !== typed[id]);";

/// Types everywhere on a screen, reloads, and answers what was lost.
async fn lost(phone: &Phone, hash: &str, least: usize) -> Vec<String> {
    phone.go(hash).await;
    phone
        .holds("document.querySelector('main input, main textarea')")
        .await;
    phone.painted().await;
    let typed = phone.js(TYPE).await;
    let fields = typed.as_object().expect("fields").len();
    assert!(fields >= least, "{hash}: {fields} fields");
    until("all of it is on disk", async || {
        let waits = phone.driver().execute_async(NOT_KEPT, vec![typed.clone()]);
        let waits = waits.await.ok()?;
        (waits.json() == &json!([])).then_some(())
    })
    .await;
    phone.reload().await;
    phone.mounted().await;
    phone
        .holds("document.querySelector('main input, main textarea')")
        .await;
    phone.painted().await;
    let gone = phone.driver().execute(STANDS, vec![typed]).await;
    let gone = gone.expect("the page answers").json().clone();
    gone.as_array()
        .expect("a list")
        .iter()
        .map(|id| format!("{hash} {}", id.as_str().unwrap_or_default()))
        .collect()
}

#[tokio::test]
async fn half_typed_fields_stand_after_a_reload_on_every_screen() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    let visit = phone.demo_visit().await;
    phone
        .js("document.querySelector('[data-test=since-last] a').click()")
        .await;
    phone.find("screen-history").await;
    let site = phone.here().await.replace("/history", "");

    let mut all = Vec::new();
    let screens = [
        (format!("{visit}/found"), 15),
        (format!("{visit}/refill"), 2),
        (format!("{visit}/left"), 10),
        (format!("{visit}/papers"), 6),
        (format!("{visit}/report"), 1),
        (site.clone(), 1),
        (format!("{site}/who"), 3),
        (format!("{site}/machines"), 6),
        (format!("{site}/tower"), 3),
        (format!("{site}/basin"), 4),
        ("#/site/new".to_owned(), 2),
        ("#/workings/air".to_owned(), 2),
        (format!("{visit}/workings/head"), 1),
        ("#/settings".to_owned(), 5),
    ];
    for (hash, least) in screens {
        all.extend(lost(&phone, &hash, least).await);
    }
    assert_eq!(all, Vec::<String>::new());
}

#[tokio::test]
async fn the_back_button_goes_back_and_a_link_leads_to_its_screen() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    phone.tap("open-demo").await;
    phone.tap("to-found").await;
    phone.find("screen-found").await;
    phone.tap("next").await;
    phone.find("screen-numbers").await;
    let there = phone.js("return location.href").await;
    for back in ["screen-found", "screen-overview", "screen-home"] {
        phone.driver().back().await.expect("it goes back");
        phone.find(back).await;
    }
    phone.driver().forward().await.expect("it goes forward");
    phone.find("screen-overview").await;

    // A link, as pasted into the address bar of a new page.
    let there = there.as_str().expect("an address").to_owned();
    phone.goto("about:blank").await;
    phone.goto(&there).await;
    phone.mounted().await;
    phone.find("screen-numbers").await;
    // One that leads nowhere says so and offers the way home.
    phone
        .go("#/visit/01890a5d-ac96-774b-bcce-b302099a8057/left")
        .await;
    phone.find("screen-not-here").await;
    phone.tap("back").await;
    phone.find("screen-home").await;
}
