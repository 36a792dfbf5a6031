//! The face, measured on every screen and state of one walk: axe-core has
//! nothing to say by day; contrast is AA in the dark and AAA in glare; whatever
//! is touched is 48 px or more; nothing is cut off on a narrow phone, on its
//! side, at a desk, or with text at twice its size.

use std::collections::BTreeMap;

use coldsump_browser::looks::{Rules, cut_off, small_targets, violations};
use coldsump_browser::walk::{FACES, put_on, walk, walker};
use coldsump_browser::{Phone, Server};

#[tokio::test]
async fn every_screen_and_state_can_be_read_reached_and_touched() {
    let mut server = Server::start();
    let phone = walker(false).await;
    let mut stops = 0;
    // Each fault once, with the first places where it was seen.
    let mut faults: BTreeMap<String, Vec<String>> = BTreeMap::new();
    walk(&phone, &mut server, async |phone: &Phone, stop: &str| {
        stops += 1;
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
    })
    .await;
    assert!(stops > 60, "only {stops} stops");
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
