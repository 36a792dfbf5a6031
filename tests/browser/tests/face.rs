//! The face, measured on every screen and state of one walk: axe-core has
//! nothing to say by day; contrast is AA in the dark and AAA in glare; whatever
//! is touched is 48 px or more; nothing is cut off on a narrow phone, on its
//! side, at a desk, or with text at twice its size. Then each of these pages, as
//! it stood, is opened in Firefox, where axe-core has nothing to say either.

use std::collections::BTreeMap;

use coldsump_browser::faces::{FACES, put_on};
use coldsump_browser::looks::{Rules, as_it_stands, cut_off, small_targets, violations};
use coldsump_browser::walk::{walk, walker};
use coldsump_browser::{Build, Engine, Light, Phone, Server};

#[tokio::test]
async fn every_screen_and_state_can_be_read_reached_and_touched() {
    let mut server = Server::start();
    let phone = walker(false).await;
    let mut pages = Vec::new();
    // Each fault once, with the first places where it was seen.
    let mut faults: BTreeMap<String, Vec<String>> = BTreeMap::new();
    walk(&phone, &mut server, async |phone: &Phone, stop: &str| {
        for face in &FACES {
            // As high as the page, so that the bar at the bottom covers nothing.
            put_on(phone, face, face.name == "day").await;
            let driver = phone.driver();
            let mut found = match face.name {
                "day" => violations(driver, Rules::All).await,
                "dark" => violations(driver, Rules::Contrast).await,
                "glare" => violations(driver, Rules::HighContrast).await,
                _ => Vec::new(),
            };
            if matches!(face.name, "day" | "narrow" | "landscape" | "desktop") {
                found.extend(small_targets(driver).await);
            }
            if !matches!(face.name, "dark" | "glare" | "desktop-dark") {
                found.extend(cut_off(driver).await);
            }
            for fault in found {
                let place = format!("{stop} ({})", face.name);
                faults.entry(fault).or_default().push(place);
            }
        }
        put_on(phone, &FACES[0], false).await;
        pages.push((stop.to_owned(), as_it_stands(phone.driver()).await));
    })
    .await;
    assert!(pages.len() > 60, "only {} stops", pages.len());
    drop(phone);
    for (fault, stop) in in_firefox(&pages).await {
        let place = format!("{stop} (Firefox)");
        faults.entry(fault).or_default().push(place);
    }
    let said: Vec<String> = faults
        .iter()
        .map(|(fault, places)| {
            format!(
                "{fault}\n    at {}",
                places[..places.len().min(4)].join(", ")
            )
        })
        .collect();
    assert!(
        said.is_empty(),
        "{} faults:\n{}",
        said.len(),
        said.join("\n")
    );
}

/// What axe-core says of each page in Firefox, with the page's name.
async fn in_firefox(pages: &[(String, String)]) -> Vec<(String, String)> {
    let build = Build::copy();
    for (i, (_, page)) in pages.iter().enumerate() {
        build.write(&format!("stop-{i}.html"), page.as_bytes());
    }
    let server = Server::over(build.path());
    let phone = Phone::open_in(Engine::Firefox, Light::Day).await;
    let mut found = Vec::new();
    for (i, (stop, _)) in pages.iter().enumerate() {
        phone.goto(&format!("{}stop-{i}.html", server.url())).await;
        // A page of the build, in its style: not an error's.
        let styled = "document.styleSheets.length === 1 && document.title.includes('Coldsump')";
        phone.holds(styled).await;
        // The bar at the bottom covers what a finger would scroll from under it.
        let lay =
            "document.querySelectorAll('.act').forEach((bar) => { bar.style.position = 'static' })";
        phone.js(lay).await;
        let faults = violations(phone.driver(), Rules::All).await;
        found.extend(faults.into_iter().map(|fault| (fault, stop.clone())));
    }
    found
}
