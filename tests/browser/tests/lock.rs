//! The lock: on over the demo's records, through a killed browser, a wrong
//! passphrase, a kill in the middle of the sealing, the page after a panic, and
//! off again. What lies on the disk is read past the program.

use coldsump_browser::marks::listed;
use coldsump_browser::{Build, Engine, Light, Phone, Server, fixture};
use serde_json::Value;

const PASSPHRASE: &str = "tower fan pump valve";

/// Words of the demo and of what is typed below that must not lie on a locked disk.
const SECRETS: [&str; 5] = [
    "Halden",
    "bakery",
    "Half a li",
    "high-head",
    "Seen by nobody",
];

/// Keeps the connection at hand, for a panic.
const DOOR: &str = "
    const { open } = IDBFactory.prototype;
    IDBFactory.prototype.open = function (...what) {
      const request = open.apply(this, what);
      request.addEventListener('success', () => { window.disk ??= request.result; });
      return request;
    };";

/// Reads every row past the program: how many are sealed, how many are clear, and
/// all of them as one text.
const READ: &str = "
    window.seen = undefined;
    (async () => {
        const ask = (r) => new Promise((done, no) => { r.onsuccess = () => done(r.result); r.onerror = no; });
        // A frame's storage is the page's, past the page's scripts.
        const frame = document.documentElement.appendChild(document.createElement('iframe'));
        const db = await ask(frame.contentWindow.indexedDB.open('coldsump'));
        let [sealed, clear, text] = [0, 0, ''];
        for (const name of ['entries', 'files', 'lines', 'texts']) {
            for (const row of await ask(db.transaction(name).objectStore(name).getAll())) {
                if (row.sealed) sealed += 1; else clear += 1;
                text += row.sealed ? String.fromCharCode(...row.sealed) : JSON.stringify(row);
            }
        }
        db.close();
        frame.remove();
        window.seen = { sealed, clear, text };
    })();";

struct Disk {
    sealed: u64,
    clear: u64,
    text: String,
}

async fn disk(phone: &Phone) -> Disk {
    phone.js(READ).await;
    phone.holds("window.seen").await;
    let seen = phone.js("return window.seen").await;
    let count = |name: &str| seen[name].as_u64().expect("a count");
    Disk {
        sealed: count("sealed"),
        clear: count("clear"),
        text: seen["text"].as_str().expect("a text").to_owned(),
    }
}

async fn is_sealed(phone: &Phone) {
    let disk = disk(phone).await;
    for secret in SECRETS {
        assert!(!disk.text.contains(secret), "{secret:?} lies clear");
    }
    // The lock, the summary's form, the phone's name, settings.
    assert!(
        disk.clear <= 6 && disk.sealed > 100,
        "{} {}",
        disk.clear,
        disk.sealed
    );
}

/// The disk as a kill in the middle of the rewrite leaves it.
async fn half_sealed(phone: &Phone) -> Disk {
    let half = disk(phone).await;
    let many = half.sealed > 500 && half.clear > 500;
    assert!(many, "{} {}", half.sealed, half.clear);
    half
}

async fn lock_on(phone: &Phone) {
    phone.go("#/lock").await;
    phone.type_into("passphrase", PASSPHRASE).await;
    phone.type_into("passphrase-again", PASSPHRASE).await;
    phone.tap("lock-set").await;
}

async fn unlock(phone: &Phone) {
    phone.type_into("passphrase", PASSPHRASE).await;
    phone.tap("unlock").await;
    phone.find("app").await;
}

#[tokio::test]
async fn sealed_through_a_kill_and_open_again_in_chromium() {
    sealed_through_a_kill(Engine::Chromium).await;
}

#[tokio::test]
async fn sealed_through_a_kill_and_open_again_in_firefox() {
    sealed_through_a_kill(Engine::Firefox).await;
}

#[tokio::test]
async fn sealed_through_a_kill_and_open_again_in_webkit() {
    sealed_through_a_kill(Engine::WebKit).await;
}

async fn sealed_through_a_kill(engine: Engine) {
    let server = Server::start();
    let mut phone = Phone::open_in(engine, Light::Day).await;
    phone.start(&server).await;
    let visit = phone.demo_visit().await;
    phone.go(&format!("{visit}/papers")).await;
    phone.type_into("work-line", "Half a li").await;
    // A refill test that runs meanwhile.
    phone.go(&format!("{visit}/refill")).await;
    phone.tap("begin-test").await;
    phone.tap("next-mark").await;
    listed(&phone, 1).await;
    let before = disk(&phone).await;
    assert!(
        before.sealed == 0 && before.text.contains("Halden") && before.text.contains("Half a li")
    );

    // What can't be a passphrase is refused beside its field.
    phone.go("#/lock").await;
    phone.reads("lock-state", "Off.").await;
    phone.type_into("passphrase", "seven77").await;
    phone.tap("lock-set").await;
    phone.reads("screen-lock", "Too short").await;
    phone.type_into("passphrase", PASSPHRASE).await;
    phone
        .type_into("passphrase-again", "tower fan pump value")
        .await;
    phone.tap("lock-set").await;
    phone.reads("screen-lock", "Not the same as above").await;
    phone.shot("lock-refused").await;
    assert_eq!(disk(&phone).await.sealed, 0);
    phone.tap("show-passphrase").await;
    phone
        .holds("document.querySelector('#f-passphrase').type === 'text'")
        .await;
    phone.type_into("passphrase-again", PASSPHRASE).await;
    phone.tap("lock-set").await;
    phone.reads("lock-said", "Every record is sealed").await;
    phone.reads("lock-state", "On.").await;
    phone.shot("lock-on").await;
    is_sealed(&phone).await;
    // The app goes on as before; what is entered now is sealed too.
    phone.go(&format!("{visit}/papers")).await;
    phone.type_into("advice", "Seen by nobody").await;
    assert_eq!(phone.count("lock-now").await, 0, "it stays on its screen");
    // A mark that stands is written behind it.
    phone.go(&format!("{visit}/refill")).await;
    phone.tap("next-mark").await;
    listed(&phone, 2).await;

    phone.kill().await;
    phone.reopen().await;
    phone.goto(&format!("{}{visit}/refill", server.url())).await;
    phone.find("screen-locked").await;
    assert_eq!(phone.count("app").await, 0);
    is_sealed(&phone).await;
    phone.shot("locked").await;
    phone.type_into("passphrase", "tower fan pump value").await;
    phone.tap("unlock").await;
    phone
        .reads("screen-locked", "does not open the records")
        .await;
    phone.shot("locked-wrong").await;
    unlock(&phone).await;
    // The test goes on, with every mark.
    listed(&phone, 2).await;
    phone.tap("next-mark").await;
    listed(&phone, 3).await;
    phone.go(&format!("{visit}/papers")).await;
    for (field, text) in [("work-line", "Half a li"), ("advice", "Seen by nobody")] {
        phone
            .holds(&format!(
                "document.querySelector('[data-test={field}]')?.value === '{text}'"
            ))
            .await;
    }

    // Locked by a tap, from the first screen.
    phone.go("#/").await;
    phone.tap("lock-now").await;
    phone.find("screen-locked").await;
    unlock(&phone).await;
    phone.reads("screen-home", "Halden Street Bakery").await;

    phone.go("#/lock").await;
    phone.tap("lock-off").await;
    phone.reads("lock-said", "Every record is open").await;
    phone.shot("lock-off").await;
    let after = disk(&phone).await;
    assert_eq!(after.sealed, 0);
    for text in ["Halden", "Half a li", "Seen by nobody"] {
        assert!(after.text.contains(text), "{text}");
    }
    phone.reload().await;
    phone.mounted().await;
    assert_eq!(phone.count("screen-locked").await, 0);
}

/// Killed while the records are sealed, and while they are opened: nothing is
/// lost, and the next start ends what was begun.
#[tokio::test]
async fn killed_in_the_middle_of_the_rewrite() {
    let server = Server::start();
    let mut phone = Phone::open(Light::Dark).await;
    phone.start(&server).await;
    phone.demo_visit().await;
    // So many records that it takes a while: copies of one under ids of their own.
    phone
        .js("window.grown = false;
             indexedDB.open('coldsump').onsuccess = ({ target: { result: db } }) => {
                const tx = db.transaction('entries', 'readwrite');
                const store = tx.objectStore('entries');
                store.getAll().onsuccess = ({ target: { result: [row] } }) => {
                    for (let n = 0; n < 6000; n += 1) {
                        const id = `01b00000-0000-7000-8000-${String(n).padStart(12, '0')}`;
                        store.add({ ...row, id, entry: { ...row.entry, id } });
                    }
                };
                tx.oncomplete = () => { db.close(); window.grown = true; };
             };")
        .await;
    phone.holds("window.grown").await;
    let all = disk(&phone).await.clear;
    let in_the_middle = "Number.parseInt(document
        .querySelector('[data-test=lock-progress] .hero')?.textContent) > 800";

    lock_on(&phone).await;
    phone.holds(in_the_middle).await;
    phone.shot("lock-sealing").await;
    phone.kill().await;
    phone.reopen().await;
    phone.goto(&server.url()).await;
    phone.find("screen-locked").await;
    let half = half_sealed(&phone).await;
    assert_eq!(half.sealed + half.clear, all + 1, "and the lock");
    unlock(&phone).await;
    let done = disk(&phone).await;
    assert!(done.clear <= 6, "{}", done.clear);
    assert_eq!(done.sealed + done.clear, all + 1);
    assert!(!done.text.contains("Halden"));

    phone.go("#/lock").await;
    phone.tap("lock-off").await;
    phone.holds(in_the_middle).await;
    phone.kill().await;
    phone.reopen().await;
    phone.goto(&server.url()).await;
    phone.find("screen-locked").await;
    half_sealed(&phone).await;
    unlock(&phone).await;
    phone.reads("screen-home", "Halden Street Bakery").await;
    let open = disk(&phone).await;
    assert_eq!((open.sealed, open.clear), (0, all));
    phone.reload().await;
    phone.mounted().await;
}

/// The page after a panic can't open anything: its backup stays sealed, and the
/// passphrase opens it on another phone.
#[tokio::test]
async fn a_sealed_backup_from_the_stopped_page_opens_elsewhere() {
    let build = Build::over(DOOR);
    let server = Server::over(build.path());
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    let papers = format!("{}/papers", phone.demo_visit().await);
    phone.go(&papers).await;
    phone.choose_file("photo-file", &fixture("photo.jpg")).await;
    phone.find("photo").await;
    lock_on(&phone).await;
    phone.reads("lock-said", "Every record is sealed").await;
    phone.go(&papers).await;
    phone
        .holds("document.querySelector('[data-test=photo] img')?.naturalWidth === 64")
        .await;
    phone
        .js("setTimeout(() => window.disk.onversionchange(new Event('versionchange')))")
        .await;
    phone.find("stopped").await;
    phone.tap("rescue-backup").await;
    let (_, bytes) = phone.downloaded(".json").await;
    phone.reads("rescue-said", "The backup is sealed").await;
    let text = String::from_utf8(bytes.clone()).expect("UTF-8");
    for secret in SECRETS {
        assert!(
            !text.contains(secret),
            "{secret:?} lies clear in the backup"
        );
    }
    let sealed: Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(sealed["coldsump-backup"], 2);
    let entries = sealed["entries"].as_array().expect("a list").len();

    let folder = tempfile::tempdir().expect("a temporary folder");
    let file = folder.path().join("sealed.json");
    std::fs::write(&file, &bytes).expect("it is written");
    let second = Phone::open(Light::Dark).await;
    second.goto(&format!("{}#/settings", server.url())).await;
    second.mounted().await;
    second.choose_file("backup-file", &file).await;
    second
        .type_into("backup-passphrase", "another one altogether")
        .await;
    second.tap("open-backup").await;
    second
        .reads("screen-settings", "does not open the records")
        .await;
    second.shot("backup-sealed").await;
    second.type_into("backup-passphrase", PASSPHRASE).await;
    second.tap("open-backup").await;
    let taken = format!("{entries} new entries and 1 files taken in; 0 were here");
    second.reads("backup-said", &taken).await;
    assert_eq!(second.count("backup-passphrase").await, 0);
    second.go(&papers).await;
    second
        .holds("document.querySelector('[data-test=photo] img')?.naturalWidth === 64")
        .await;

    // A backup from the settings of the locked phone is clear, and says so.
    phone.tap("restart").await;
    phone.find("screen-locked").await;
    unlock(&phone).await;
    phone.go("#/settings").await;
    phone
        .reads("backup-clear", "does not cover this file")
        .await;
    phone.forget_downloads();
    phone.tap("save-backup").await;
    let (_, bytes) = phone.downloaded(".json").await;
    let clear: Value = serde_json::from_slice(&bytes).expect("JSON");
    assert_eq!(clear["coldsump-backup"], 1);
    assert_eq!(clear["entries"].as_array().map(Vec::len), Some(entries));
    assert!(clear["entries"].to_string().contains("Halden"));
    phone.shot("settings-locked").await;
}
