//! The main job by keys alone, and what a screen reader is told on the way.

use std::path::Path;

use coldsump_browser::marks::listed;
use coldsump_browser::{Build, Keys, Light, Phone, Server, spoken};

#[tokio::test]
async fn the_main_job_by_keys_alone() {
    let build = Build::watched();
    let server = Server::over(build.path());
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    let keys = Keys::of(&phone);

    keys.enter("open-demo").await;
    arrives(&phone, "screen-overview").await;
    keys.enter("next").await;
    arrives(&phone, "screen-found").await;
    for n in [0, 1, 3] {
        keys.space(&format!("machine-{n}-high-head")).await;
    }
    keys.space("machine-2-running").await;
    for (field, text) in [
        ("head-0", "205"),
        ("entering-water", "97"),
        ("leaving-water", "98"),
        ("dry-bulb", "88"),
        ("humidity", "55"),
        ("basin-level", "14 1/2"),
        ("control-voltage", "24.3"),
    ] {
        keys.write(field, text).await;
    }
    keys.enter("next").await;
    arrives(&phone, "screen-numbers").await;
    keys.enter("next").await;
    arrives(&phone, "screen-trace").await;

    // Two checks out of the list, by place; after each the card's heading.
    for (place, check, answer) in [
        ("Basement", "CallAsFound", "Satisfied"),
        ("Roof", "ProbeDried", "Calls"),
    ] {
        choose(&keys, &phone, place, check).await;
        keys.enter(&format!("answer-{answer}")).await;
        phone.find(&format!("take-back-{check}")).await;
        sound(&phone, check).await;
        phone.holds("document.activeElement.tagName === 'H2'").await;
    }
    keys.enter("next").await;
    arrives(&phone, "begin-test").await;

    // The focus goes from the button to the one that takes its place.
    let mut tree = format!("The plan\n\n{}", timeless(&spoken(&phone).await));
    keys.enter("begin-test").await;
    phone.find("next-mark").await;
    focus_is(&phone, "next-mark").await;
    sound(&phone, "the first mark").await;
    mark(&keys, &phone, "DrawdownBegan").await;
    focus_is(&phone, "next-mark").await;
    pass(&phone, 60).await;
    level(&keys, &phone, "14 1/2").await;
    // The chart follows what was tapped by a frame.
    let drawn = "document.querySelector('[role=img][aria-label*=\"1 level reading\"]')";
    phone.holds(drawn).await;
    tree += &format!(
        "\nThe test under way\n\n{}",
        timeless(&spoken(&phone).await)
    );
    pass(&phone, 20).await;
    mark(&keys, &phone, "CallSeen").await;
    pass(&phone, 6).await;
    mark(&keys, &phone, "WaterSeen").await;
    mark(&keys, &phone, "DrawdownEnded").await;
    for text in ["13", "11.5", "10", "8.5", "7", "5.5", "4"] {
        pass(&phone, 90).await;
        level(&keys, &phone, text).await;
    }
    pass(&phone, 30).await;
    mark(&keys, &phone, "ShutOff").await;
    pass(&phone, 60).await;
    level(&keys, &phone, "3.5").await;
    keys.to("next-mark").await;
    mark(&keys, &phone, "Stopped").await;
    phone.find("verdict").await;
    phone.reads("verdict", "Passed").await;
    sound(&phone, "the end of the verdict").await;
    tree += &format!("\nThe verdict\n\n{}", frame(&spoken(&phone).await));

    keys.enter("next").await;
    arrives(&phone, "screen-left").await;
    // Nothing is chosen for the person.
    keys.pick("cause", "Film").await;
    keys.write("proof", "Dry on arrival, called once wiped")
        .await;
    keys.write("work", "Probe cleaned").await;
    keys.enter("save-cause").await;
    phone.reads("cause-kept", "Kept").await;
    for item in ["BypassShut", "HandValves", "CoversOn"] {
        keys.space(&format!("leaving-{item}-So")).await;
    }
    keys.write("note", "Ask for a spare probe").await;
    keys.enter("keep-note").await;
    sound(&phone, "the way out of as left").await;
    keys.enter("next").await;
    arrives(&phone, "screen-report").await;
    keys.enter("make-report").await;
    phone.find("report-kept").await;
    sound(&phone, "the way to the outbox").await;
    keys.enter("to-outbox").await;
    arrives(&phone, "screen-outbox").await;
    keys.enter("save-pdf").await;
    let (_, pdf) = phone.downloaded(".pdf").await;
    assert!(pdf.starts_with(b"%PDF"));
    keys.enter("confirm-sent").await;
    phone.gone("outgoing").await;
    println!("{} keys", keys.pressed());
    assert_eq!(phone.problems(&server.origin()).await, []);

    is_as_kept("refill-tree.txt", &tree);
}

/// Waits for a screen, and that its title has the focus.
async fn arrives(phone: &Phone, screen: &str) {
    phone.find(screen).await;
    phone.holds("document.activeElement.tagName === 'H1'").await;
    sound(phone, screen).await;
}

/// Fails where something went wrong, not only at the end.
async fn sound(phone: &Phone, at: &str) {
    let noted = phone.js("return window.underTest.problems()").await;
    assert_eq!(noted, serde_json::json!([]), "before {at}");
}

async fn focus_is(phone: &Phone, name: &str) {
    phone
        .holds(&format!("document.activeElement.dataset.test === '{name}'"))
        .await;
}

/// Opens a place's list and takes a check from it, unless it is up already.
async fn choose(keys: &Keys<'_>, phone: &Phone, place: &str, check: &str) {
    let up = format!("return document.querySelector('[data-check={check}]') !== null");
    if phone.js(&up).await == true {
        return;
    }
    keys.enter(&format!("checks-{place}")).await;
    keys.enter(&format!("choose-{check}")).await;
    phone
        .holds(&format!(
            "document.querySelector('[data-check={check}]') !== null"
        ))
        .await;
}

/// Presses the big button once it offers this mark.
async fn mark(keys: &Keys<'_>, phone: &Phone, mark: &str) {
    let offered =
        format!("document.querySelector('[data-test=next-mark]')?.dataset.mark === '{mark}'");
    phone.holds(&offered).await;
    let before = phone.count("mark").await;
    keys.enter("next-mark").await;
    if mark != "Stopped" {
        listed(phone, before + 1).await;
    }
}

/// Types a level and keeps it.
async fn level(keys: &Keys<'_>, phone: &Phone, text: &str) {
    let before = phone.count("mark").await;
    keys.write("level-typed", text).await;
    keys.enter("mark-level").await;
    listed(phone, before + 1).await;
}

async fn pass(phone: &Phone, seconds: u32) {
    phone
        .js(&format!("window.underTest.pass({seconds} * 1000)"))
        .await;
}

/// Times of day and of the test differ from run to run.
fn timeless(tree: &str) -> String {
    let mut out = String::new();
    for line in tree.lines() {
        let number = |word: &str| word.chars().any(|c| c.is_ascii_digit());
        out += &if line.contains(':') && number(line) {
            numberless(line)
        } else {
            format!("{line}\n")
        };
    }
    out
}

/// What stands whatever was measured: a line that is like the one before it,
/// and mere text, are left out.
fn frame(tree: &str) -> String {
    let tree = numberless(tree);
    let mut lines: Vec<&str> = tree.lines().filter(|l| !l.contains("StaticText")).collect();
    lines.dedup();
    lines.join("\n") + "\n"
}

/// Every number as one sign.
fn numberless(tree: &str) -> String {
    let mut out = String::new();
    for line in tree.lines() {
        let mut before = ' ';
        for c in line.chars() {
            match c {
                '0'..='9' if before == '#' => {}
                '0'..='9' => out.push('#'),
                c => out.push(c),
            }
            before = if c.is_ascii_digit() { '#' } else { c };
        }
        out.push('\n');
    }
    out
}

/// Compares with a fixture; `COLDSUMP_WRITE=1` writes it anew.
fn is_as_kept(name: &str, text: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("fixtures")
        .join(name);
    if std::env::var_os("COLDSUMP_WRITE").is_some() {
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("the folder");
        std::fs::write(&path, text).expect("the fixture is written");
        return;
    }
    let kept = std::fs::read_to_string(&path).expect("the fixture");
    for (n, (is, was)) in text.lines().zip(kept.lines()).enumerate() {
        assert_eq!(
            is,
            was,
            "line {} of {name}; COLDSUMP_WRITE=1 writes it anew",
            n + 1
        );
    }
    assert_eq!(text.lines().count(), kept.lines().count(), "{name}");
}
