//! Names and notes with anything in them, and backups that mean harm: the
//! screen stays what it was.

use coldsump_browser::{Light, Phone, Server};
use serde_json::{Value as Json, json};

const MARKUP: &str = "<img src=x onerror=\"window.__ran=1\"><script>window.__ran=2</script>";
const TURNED: &str = "\u{202e}Bakery fdp.exe \u{2067}مرحبا 👩‍🔧 水塔";

/// Puts a text into a field as a paste does: `send_keys` knows no emoji.
async fn paste(phone: &Phone, field: &str, text: &str) {
    phone.find(field).await;
    let text = Json::from(text);
    phone
        .js(&format!(
            "const field = document.querySelector('[data-test={field}]');
             field.focus();
             field.value = {text};
             field.dispatchEvent(new InputEvent('input', {{ bubbles: true, inputType: 'insertFromPaste' }}));
             field.dispatchEvent(new Event('change', {{ bubbles: true }}));"
        ))
        .await;
}

/// Nothing was injected, nothing runs over the edge, all inline text is its own.
async fn sane(phone: &Phone, place: &str) {
    let found = phone
        .js("return {
               ran: window.__ran ?? null,
               images: document.querySelectorAll('img[src=x], body script').length,
               wide: document.documentElement.scrollWidth > innerWidth,
               over: [...document.querySelectorAll('main *')].filter((one) => {
                 const box = one.getBoundingClientRect();
                 const scrolls = one.closest('[class*=scroll], .rows-wide, svg');
                 return !scrolls && box.width > 0 && box.right > innerWidth + 1;
               }).map((one) => one.outerHTML.slice(0, 120)).slice(0, 3),
               bare: [...document.querySelectorAll('main span, main b, main a, main small')]
                 .filter((one) => getComputedStyle(one).display === 'inline'
                   && getComputedStyle(one).unicodeBidi === 'normal').length,
             }")
        .await;
    let want = json!({ "ran": null, "images": 0, "wide": false, "over": [], "bare": 0 });
    assert_eq!(found, want, "{place}");
}

#[tokio::test]
async fn names_and_notes_with_anything_in_them() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    // A note of 100,000 characters, with no place to break a line.
    phone.tap("open-demo").await;
    phone.find("screen-overview").await;
    phone
        .js("location.hash = location.hash.replace(/\\/?$/, '/left')")
        .await;
    phone.find("screen-left").await;
    let note = format!("{MARKUP} {TURNED} {}", "水A".repeat(50_000));
    paste(&phone, "note", &note).await;
    phone.tap("keep-note").await;
    phone
        .holds("document.querySelector('main').innerText.includes('水A水A')")
        .await;
    sane(&phone, "the note").await;
    phone.shot("hostile-note").await;
    phone.reload().await;
    phone.mounted().await;
    phone.find("screen-left").await;
    let kept = "document.querySelector('main').innerText.split('水A').length > 50000";
    phone.holds(kept).await;
    phone.tap("next").await;
    phone.find("screen-report").await;
    phone.tap("make-report").await;
    phone.find("report-kept").await;
    sane(&phone, "the report").await;

    phone.go("#/site/new").await;
    phone.find("screen-new-site").await;
    paste(&phone, "site-name", &format!("{TURNED} {MARKUP}")).await;
    sane(&phone, "typing a name").await;
    phone.tap("save-site").await;
    phone.find("screen-site").await;
    phone
        .reads("screen-site", "<script>window.__ran=2</script>")
        .await;
    sane(&phone, "the site").await;
    phone.shot("hostile-site").await;
    phone.go("#/").await;
    phone.find("app").await;
    phone
        .holds("document.body.innerText.includes('onerror')")
        .await;
    sane(&phone, "the list").await;
    phone.shot("hostile-list").await;

    assert_eq!(phone.problems(&server.origin()).await, []);
}

/// Chooses a file with these words in the field for a backup.
async fn take_in(phone: &Phone, words: &str, text: &str) {
    let text = Json::from(text);
    phone
        .js(&format!(
            "const field = document.querySelector('[data-test=backup-file]');
             const bag = new DataTransfer();
             bag.items.add(new File([{text}], 'backup.json', {{ type: 'application/json' }}));
             field.files = bag.files;
             field.dispatchEvent(new Event('change', {{ bubbles: true }}));"
        ))
        .await;
    phone.reads("backup-said", words).await;
}

#[tokio::test]
async fn backups_that_mean_harm() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    phone.go("#/settings").await;
    phone.find("screen-settings").await;

    take_in(&phone, "not a backup", "{").await;
    take_in(&phone, "not a backup", &"[".repeat(200_000)).await;
    // 1e999 comes out of the browser's JSON as an infinity; a name at the end of
    // time would leave none after it; the same name twice, with other words.
    let visit = |id: &str, complaint: &str, more: Json| {
        let mut entry = json!({
            "id": id,
            "device": "019ab000-0000-7000-8000-000000000001",
            "at": { "ms": 1_795_525_920_000_u64, "offset-min": -300, "run": 7, "run-ms": 0.0 },
            "about": { "visit": "019ab000-0000-7000-8000-000000000003" },
            "v": 1,
            "body": { "visit-opened": {
                "site": "019ab000-0000-7000-8000-000000000002", "complaint": complaint } },
        });
        for (key, value) in more.as_object().expect("an object") {
            entry[key] = value.clone();
        }
        entry
    };
    let first = "01a20daf-4500-7000-8000-000000000001";
    let note = json!({ "body": { "note-written": { "text": MARKUP } } });
    let reading = json!({ "body": { "reading-taken": {
        "what": "dry-bulb", "machine": null, "when": "as-found", "typed": "9",
        "value": { "kind": "temperature", "si": "TOO-LARGE" }, "unit": "fahrenheit" } } });
    let strange = json!({ "body": { "__proto__": { "polluted": true } } });
    let entries = json!([
        visit(first, MARKUP, json!({ "__proto__": { "polluted": true } })),
        visit(first, "other words", json!({})),
        visit("01a20daf-4500-7000-8000-000000000002", "", note),
        visit("01a20daf-4500-7000-8000-000000000003", "", reading),
        visit("01a20daf-4500-7000-8000-000000000004", "", strange),
        visit("ffffffff-ffff-7fff-bfff-ffffffffffff", "last", json!({})),
    ]);
    let file = json!({
        "id": "019ab000-0000-7000-8000-000000000005", "name": "../../x.html",
        "media-type": "text/html", "sha256": "0".repeat(64), "base64": "PHNjcmlwdD4=",
    });
    let backup = json!({
        "coldsump-backup": 1, "made": MARKUP, "entries": entries, "files": [file],
    });
    let text = backup.to_string().replace("\"TOO-LARGE\"", "1e999");
    take_in(&phone, "2 new", &text).await;
    phone.shot("hostile-backup").await;
    let said = phone.text("backup-said").await;
    let parts = [
        "2 new entries and 0 files taken in; 0 were here.",
        "2 do not agree with what is here or are damaged",
        "2 are of a newer version",
    ];
    for part in parts {
        assert!(said.contains(part), "{said}");
    }
    sane(&phone, "after a backup").await;
    assert!(phone.js("return ({}).polluted ?? null").await.is_null());

    // A second time it brings nothing, and what is written next sorts last.
    take_in(&phone, "0 new", &text).await;
    phone.go("#/").await;
    phone
        .holds("document.body.innerText.includes('onerror')")
        .await;
    sane(&phone, "the list").await;
    phone.reload().await;
    phone.mounted().await;
    sane(&phone, "the list after a reload").await;
    assert_eq!(phone.problems(&server.origin()).await, []);
}

/// A file larger than any backup is refused before a byte of it is read.
#[tokio::test]
async fn a_file_too_large_is_not_read() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    phone.go("#/settings").await;
    phone.find("screen-settings").await;
    phone
        .js(
            "const field = document.querySelector('[data-test=backup-file]');
             const part = new Uint8Array(1 << 24);
             const blob = new File(Array(33).fill(part), 'backup.json');
             Object.defineProperty(field, 'files', { value: [blob] });
             field.dispatchEvent(new Event('change', { bubbles: true }));",
        )
        .await;
    phone.reads("backup-said", "larger than any backup").await;
}
