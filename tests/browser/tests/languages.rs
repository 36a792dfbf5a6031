//! Spanish: taken from the browser at the first start, changed at any time
//! with nothing lost, the report apart, and no screen wider than the phone.

use coldsump_browser::{Light, Phone, Server};
use serde_json::json;

/// A phone whose browser asks for Spanish as spoken in Mexico.
async fn mexican(light: Light) -> Phone {
    let phone = Phone::open(light).await;
    phone.asks_for_spanish().await;
    phone
}

const LANG: &str = "document.documentElement.lang";

#[tokio::test]
async fn the_browsers_language_comes_first_and_a_choice_stays() {
    let server = Server::start();
    let phone = mexican(Light::Day).await;
    phone.start(&server).await;
    phone.holds(&format!("{LANG} === 'es'")).await;
    phone.reads("screen-home", "Cómo va una visita").await;

    phone.go("#/settings").await;
    phone.reads("screen-settings", "Idioma").await;
    phone.shot("settings-spanish").await;
    phone.tap("language-en").await;
    phone.reads("screen-settings", "Language").await;
    phone.holds(&format!("{LANG} === 'en'")).await;
    phone.reload().await;
    phone.mounted().await;
    phone.reads("screen-settings", "Language").await;
    phone.tap("language-es").await;
    phone.reads("screen-settings", "Idioma").await;
}

#[tokio::test]
async fn nothing_typed_is_lost_and_the_report_speaks_its_own_language() {
    let server = Server::start();
    let phone = mexican(Light::Day).await;
    phone.start(&server).await;
    phone.tap("open-demo").await;
    phone.tap("next").await;
    phone.find("screen-found").await;
    phone.type_into("head-0", "205").await;
    phone.type_into("dry-bulb", "calor").await;
    let there = phone.js("return location.hash").await;
    let there = there.as_str().expect("an address").to_owned();

    phone.go("#/settings").await;
    phone.tap("language-en").await;
    phone.go(&there).await;
    phone
        .reads("screen-found", "Before anything is touched")
        .await;
    for (field, typed) in [("head-0", "205"), ("dry-bulb", "calor")] {
        let value = format!("document.querySelector('[data-test={field}]')?.value === '{typed}'");
        phone.holds(&value).await;
    }

    let report = there.replace("found", "report");
    phone.go(&report).await;
    phone.reads("report-text", "Service report").await;
    phone.tap("report-es").await;
    phone.reads("report-text", "Informe de servicio").await;
    phone.reads("screen-report", "Make the PDF").await;
    phone
        .holds("document.querySelector('[data-test=report-text]').lang === 'es'")
        .await;
}

/// Spanish runs longer; still nothing is cut off or pushes the screen wide.
#[tokio::test]
async fn no_screen_is_wider_than_the_phone_in_spanish() {
    let server = Server::start();
    let phone = mexican(Light::Dark).await;
    phone.start(&server).await;
    phone.tap("open-demo").await;
    phone.tap("next").await;
    phone.find("screen-found").await;
    let there = phone.js("return location.hash").await;
    let visit = there.as_str().expect("an address").replace("/found", "");
    let mut places = vec![
        "#/".to_owned(),
        "#/settings".to_owned(),
        "#/outbox".to_owned(),
        "#/site/new".to_owned(),
        "#/workings".to_owned(),
        visit.clone(),
    ];
    for station in ["found", "numbers", "trace", "refill", "left", "report"] {
        places.push(format!("{visit}/{station}"));
    }
    for working in [
        "head",
        "tower",
        "air",
        "water",
        "scale",
        "circuit",
        "electrode",
    ] {
        places.push(format!("#/workings/{working}"));
    }
    for (n, place) in places.iter().enumerate() {
        phone.go(place).await;
        phone.holds("document.querySelector('.screen h1')").await;
        phone.painted().await;
        phone.shot(&format!("spanish-{n:02}")).await;
        let wide = phone
            .js("const wide = [...document.querySelectorAll('body *')]
                   .filter(e => e.getBoundingClientRect().right > innerWidth + 1
                       && !e.closest('svg, pre, .scrolls') && e.textContent.trim())
                   .map(e => `${e.tagName} ${e.textContent.trim().slice(0, 40)}`);
                 const cut = [...document.querySelectorAll('button, a.button')]
                   .filter(e => e.scrollWidth > e.clientWidth + 1)
                   .map(e => `cut ${e.textContent.trim()}`);
                 return [...wide, ...cut]")
            .await;
        assert_eq!(wide, json!([]), "{place}");
    }
}
