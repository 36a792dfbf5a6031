//! The program dies: the page says so, saves a backup that any phone takes in,
//! and the next start works. The deaths are real panics. The program has no door
//! for them: the test hands its database library an event that no browser sends.

use coldsump_browser::{Build, Engine, Light, Phone, Problem, Server, fixture};
use serde_json::Value;

/// Keeps the connection at hand, and on demand sends the library's upgrade
/// handler an event without a target while the program starts.
const DOOR: &str = "
    addEventListener('test-die', () => setTimeout(
      () => window.disk.onversionchange(new Event('versionchange'))));
    const { open } = IDBFactory.prototype;
    const { add } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.add = function (...row) {
      const request = add.apply(this, row);
      if (window.full) {
        // As an engine gives a transaction up when the phone is full.
        const value = new DOMException('full, says the test', 'QuotaExceededError');
        Object.defineProperty(this.transaction, 'error', { value });
        this.transaction.abort();
      }
      return request;
    };
    IDBFactory.prototype.open = function (...what) {
      const request = open.apply(this, what);
      request.addEventListener('success', () => { window.disk = request.result; });
      if (sessionStorage.getItem('die'))
        setTimeout(() => request.onupgradeneeded?.(new Event('upgradeneeded')));
      return request;
    };";

/// Not from within the driver's own call, which would catch what is thrown; and from
/// a script of the page, for Firefox tells the page of no fault in the driver's.
const DIE: &str = "dispatchEvent(new Event('test-die'))";

fn read(bytes: &[u8]) -> Value {
    let mut document: Value = serde_json::from_slice(bytes).expect("the backup is JSON");
    let made = document["made"].take();
    assert_eq!(made.as_str().map(str::len), Some(16), "a date and a time");
    // In the order of ids, as the store's own.
    assert!(
        document["entries"]
            .as_array()
            .is_some_and(|all| !all.is_empty())
    );
    document
}

async fn says_stopped(phone: &Phone, where_it_died: &str) {
    phone.reads("stopped-title", "Coldsump stopped").await;
    phone.reads("stopped-why", where_it_died).await;
    assert_eq!(
        phone.count("app").await,
        0,
        "nothing of the program is left"
    );
}

/// The build with the door in its page, served.
fn served() -> (Build, Server) {
    let build = Build::over(DOOR);
    let server = Server::over(build.path());
    (build, server)
}

#[tokio::test]
async fn a_panic_leaves_a_backup_and_the_next_start_works_in_chromium() {
    a_panic_leaves_a_backup(Engine::Chromium).await;
}

#[tokio::test]
async fn a_panic_leaves_a_backup_and_the_next_start_works_in_firefox() {
    a_panic_leaves_a_backup(Engine::Firefox).await;
}

#[tokio::test]
async fn a_panic_leaves_a_backup_and_the_next_start_works_in_webkit() {
    a_panic_leaves_a_backup(Engine::WebKit).await;
}

async fn a_panic_leaves_a_backup(engine: Engine) {
    let (_build, server) = served();
    let phone = Phone::open_in(engine, Light::Day).await;
    phone.start(&server).await;
    let papers = format!("{}/papers", phone.demo_visit().await);
    phone.go(&papers).await;
    phone
        .type_into("work-line", "Cleaned the probe holder")
        .await;
    phone.tap("keep-work-line").await;
    phone.find("work-line-kept").await;
    phone.choose_file("photo-file", &fixture("photo.jpg")).await;
    phone.find("photo").await;
    phone.type_into("work-line", "Half a li").await;

    phone.js(DIE).await;
    says_stopped(&phone, "EventTargetNotFound").await;
    phone.shot("stopped").await;
    phone.tap("rescue-backup").await;
    let (_, bytes) = phone.downloaded(".json").await;
    phone.reads("rescue-said", "Files: 1").await;
    let rescued = read(&bytes);

    // Started again: the same screen, and what was typed.
    phone.tap("restart").await;
    phone.mounted().await;
    phone.find("work-line-kept").await;
    phone
        .holds("document.querySelector('[data-test=work-line]').value === 'Half a li'")
        .await;

    // The program's own backup says the same.
    phone.go("#/settings").await;
    phone.forget_downloads();
    phone.tap("save-backup").await;
    let (_, bytes) = phone.downloaded(".json").await;
    assert_eq!(read(&bytes), rescued);

    // Dying while it starts, again and again: the backup is there each time.
    phone.js("sessionStorage.setItem('die', 'yes')").await;
    for _ in 0..3 {
        phone.reload().await;
        says_stopped(&phone, "EventTargetNotFound").await;
    }
    phone.forget_downloads();
    phone.tap("rescue-backup").await;
    let (_, bytes) = phone.downloaded(".json").await;
    assert_eq!(read(&bytes), rescued);
    phone.js("sessionStorage.removeItem('die')").await;
    phone.tap("restart").await;
    phone.mounted().await;
    if engine != Engine::Chromium {
        return; // the rest is the same in every engine
    }
    // Nothing but the panics themselves was reported.
    for problem in phone.problems(&server.origin()).await {
        assert!(
            matches!(&problem, Problem::Console(text) if text.contains("unreachable")),
            "{problem:?}"
        );
    }

    // Another phone takes it in, the photo too.
    let folder = tempfile::tempdir().expect("a temporary folder");
    let file = folder.path().join("rescued.json");
    std::fs::write(&file, &bytes).expect("it is written");
    let second = Phone::open(Light::Dark).await;
    second.goto(&format!("{}#/settings", server.url())).await;
    second.mounted().await;
    second.choose_file("backup-file", &file).await;
    let entries = rescued["entries"].as_array().expect("a list").len();
    let taken = format!("{entries} new entries and 1 files taken in; 0 were here");
    second.reads("backup-said", &taken).await;
    second.go(&papers).await;
    second
        .holds("document.querySelector('[data-test=photo] img')?.naturalWidth === 64")
        .await;
    assert_eq!(second.problems(&server.origin()).await, []);
}

#[tokio::test]
async fn a_screen_that_dies_twice_is_left_for_the_first() {
    let (_build, server) = served();
    let phone = Phone::open(Light::Dark).await;
    phone.start(&server).await;
    phone.go("#/settings").await;
    phone.find("screen-settings").await;
    for screen in ["screen-settings", "screen-home"] {
        phone.js(DIE).await;
        says_stopped(&phone, "EventTargetNotFound").await;
        phone.shot("stopped").await;
        phone.tap("restart").await;
        phone.mounted().await;
        phone.find(screen).await;
    }
}

/// The phone is full and then the program dies: what waited in its memory is in
/// the page's backup.
#[tokio::test]
async fn what_waited_when_it_died_is_in_the_backup() {
    let (_build, server) = served();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    let visit = phone.demo_visit().await;
    phone.go(&format!("{visit}/papers")).await;
    let write = async |line: &str| {
        phone.type_into("work-line", line).await;
        phone.tap("keep-work-line").await;
    };
    write("Kept before").await;
    phone.find("work-line-kept").await;
    phone.js("window.full = true").await;
    write("Only in memory").await;
    phone.reads("not-saved", "no room left").await;
    phone.choose_file("photo-file", &fixture("photo.jpg")).await;
    phone.holds("coldsumpWaiting.files.length === 1").await;
    phone.js(DIE).await;
    says_stopped(&phone, "EventTargetNotFound").await;
    phone.reads("stopped-waits", "Entries: 2").await;
    phone.shot("stopped-waits").await;
    phone.tap("rescue-backup").await;
    let (_, bytes) = phone.downloaded(".json").await;
    phone.reads("rescue-said", "Files: 1").await;
    let backup = read(&bytes);
    let entries = backup["entries"].to_string();
    assert!(entries.contains("Kept before") && entries.contains("Only in memory"));

    let folder = tempfile::tempdir().expect("a temporary folder");
    let file = folder.path().join("rescued.json");
    std::fs::write(&file, &bytes).expect("it is written");
    let second = Phone::open(Light::Day).await;
    second.goto(&format!("{}#/settings", server.url())).await;
    second.mounted().await;
    second.choose_file("backup-file", &file).await;
    let count = backup["entries"].as_array().expect("a list").len();
    let taken = format!("{count} new entries and 1 files taken in; 0 were here");
    second.reads("backup-said", &taken).await;

    // What was saved again is not handed over twice.
    phone.tap("restart").await;
    phone.mounted().await;
    phone.js("window.full = true").await;
    write("Saved again").await;
    phone.reads("not-saved", "no room left").await;
    phone.js("window.full = false").await;
    phone.tap("save-again").await;
    phone.gone("not-saved").await;
    phone.holds("coldsumpWaiting.entries.length === 0").await;
    phone.js(DIE).await;
    says_stopped(&phone, "EventTargetNotFound").await;
    assert_eq!(phone.count("stopped-waits").await, 0);
}
