//! One walk past every screen and state of the app, the demo's main job first.
//! It stops at each and calls back; names and `data-test` marks alone steer it,
//! so it goes in any language.

use serde_json::json;

use crate::clock::Clock;
use crate::hands::fixture;
use crate::marks::{level, next_mark};
use crate::phone::{Light, Phone};
use crate::server::Server;
use crate::trace::{answer, choose};

/// Walks it all. `at` is called at each stop with the stop's name; it may
/// change the window's size and the light, and must leave the page as it was.
///
/// # Panics
/// When a screen does not come, or does not do what it should.
pub async fn walk(phone: &Phone, server: &mut Server, mut at: impl AsyncFnMut(&Phone, &str)) {
    let mut clock = Clock::under(phone).await;
    before_the_program(phone, server, &mut at).await;
    let visit = readings(phone, server, &mut at).await;
    search_for_the_cause(phone, &visit, &mut at).await;
    refill_test(phone, &mut clock, &mut at).await;
    leaving(phone, server, &visit, &mut at).await;
    sites(phone, &mut at).await;
    lists(phone, &visit, &mut at).await;
    workings(phone, &visit, &mut at).await;
    settings_and_banners(phone, &visit, &mut at).await;
}

/// Loading, a program that did not come, and the first screen.
async fn before_the_program(
    phone: &Phone,
    server: &Server,
    at: &mut impl AsyncFnMut(&Phone, &str),
) {
    let program = json!({ "patterns": [{ "urlPattern": "*.wasm" }] });
    phone.devtools("Fetch.enable", program).await;
    phone.goto(&server.url()).await;
    phone
        .holds("document.getElementById('boot')?.checkVisibility()")
        .await;
    at(phone, "loading").await;
    phone.devtools("Fetch.disable", json!({})).await;
    let block = |urls: &[&str]| json!({ "urls": urls });
    phone.devtools("Network.enable", json!({})).await;
    phone
        .devtools("Network.setBlockedURLs", block(&["*.wasm"]))
        .await;
    phone.goto(&server.url()).await;
    phone
        .holds("document.getElementById('boot-again')?.hidden === false")
        .await;
    at(phone, "did-not-arrive").await;
    phone.devtools("Network.setBlockedURLs", block(&[])).await;
    phone.start(server).await;
    phone.kept_offline().await;
    at(phone, "home-empty").await;
}

/// The demo's visit up to its figures; answers the visit's address.
async fn readings(
    phone: &Phone,
    server: &Server,
    at: &mut impl AsyncFnMut(&Phone, &str),
) -> String {
    let visit = phone.demo_visit().await;
    at(phone, "overview-new").await;
    phone.tap("next").await;
    phone.find("screen-found").await;
    at(phone, "found-empty").await;
    for n in [0, 1, 3] {
        phone.tap(&format!("machine-{n}-high-head")).await;
    }
    let typed = [
        ("head-0", "205"),
        ("entering-water", "97F"),
        ("leaving-water", "36.7 C"),
        ("dry-bulb", "88"),
        ("humidity", "550%"),
        ("control-voltage", "banana"),
        ("basin-level", "1' 2 1/2\""),
    ];
    for (field, text) in typed {
        phone.type_into(field, text).await;
    }
    phone.tap("machine-2-running").await;
    phone
        .holds("document.querySelectorAll('.field[data-state=refused]').length === 2")
        .await;
    at(phone, "found-refused").await;
    // Half-typed and wrong texts stand after a reload.
    phone.goto(&format!("{}{visit}/found", server.url())).await;
    phone.reload().await;
    phone.mounted().await;
    phone
        .holds("document.querySelector('[data-test=control-voltage]')?.value === 'banana'")
        .await;
    phone.type_into("humidity", "55%").await;
    phone.type_into("control-voltage", "24.3").await;
    phone.tap("machine-2-running").await;
    at(phone, "found").await;
    phone.tap("next").await;
    phone.find("screen-numbers").await;
    at(phone, "numbers").await;
    opened(phone).await;
    at(phone, "numbers-how").await;
    visit
}

/// Opens all that unfolds on the screen.
async fn opened(phone: &Phone) {
    phone
        .js("document.querySelectorAll('main details').forEach((d) => { d.open = true; })")
        .await;
}

async fn search_for_the_cause(phone: &Phone, visit: &str, at: &mut impl AsyncFnMut(&Phone, &str)) {
    to(phone, &format!("{visit}/trace"), "screen-trace").await;
    phone.find("check-title").await;
    at(phone, "trace").await;
    phone
        .js("document.querySelector('[data-test=check-why]')?.closest('details')?.setAttribute('open', '')")
        .await;
    at(phone, "trace-why-this").await;
    answer(phone, "CallAsFound", "Satisfied").await;
    answer(phone, "ProbeDried", "Calls").await;
    answer(phone, "CoilPull", "Pulls").await;
    answer(phone, "ForceValve", "FullFlow").await;
    choose(phone, "ProbeFilm").await;
    phone.type_into("reading", "24 psi").await;
    phone.tap("keep-reading").await;
    phone
        .holds("document.querySelector('#f-reading').ariaInvalid === 'true'")
        .await;
    at(phone, "trace-refused").await;
    phone.type_into("reading", "13.3 kohm").await;
    phone.tap("keep-reading").await;
    phone.find("take-back-ProbeFilm").await;
    answer(phone, "FoamLook", "NoFoam").await;
    at(phone, "trace-answered").await;
    phone.tap("why-ProbeFilm").await;
    phone.find("correct-ProbeFilm").await;
    opened(phone).await;
    at(phone, "trace-all-open").await;
    phone.tap("correct-ProbeFilm").await;
    phone.find("take-back-put-right-ProbeFilm").await;
    at(phone, "trace-put-right").await;
    answer(phone, "RefillTest", "Refilled").await;
    answer(phone, "Restart", "HeadsUsual").await;
    if phone.count("to-closing").await == 0 {
        phone.tap("show-closing").await;
    } else {
        phone.tap("to-closing").await;
    }
    phone.find("closing-says").await;
    at(phone, "trace-closing").await;
    phone.tap("name-cause").await;
    phone.find("cause-named").await;
    at(phone, "trace-named").await;
}

async fn refill_test(phone: &Phone, clock: &mut Clock, at: &mut impl AsyncFnMut(&Phone, &str)) {
    phone
        .js("location.hash = location.hash.replace('trace', 'refill')")
        .await;
    phone.find("begin-test").await;
    at(phone, "refill-plan").await;
    phone.tap("begin-test").await;
    next_mark(phone, "DrawdownBegan").await;
    clock.pass(phone, 60).await;
    level(phone, "level-down", 0).await;
    clock.pass(phone, 20).await;
    at(phone, "refill-drawing").await;
    next_mark(phone, "CallSeen").await;
    clock.pass(phone, 6).await;
    next_mark(phone, "WaterSeen").await;
    next_mark(phone, "DrawdownEnded").await;
    for _ in 0..4 {
        clock.pass(phone, 90).await;
        level(phone, "level-up", 6).await;
    }
    at(phone, "refill-running").await;
    opened(phone).await;
    phone.tap("scale-marks").await;
    phone.type_into("level-typed", "banana").await;
    phone
        .js("document.querySelector('[data-test=change-mark]').click()")
        .await;
    at(phone, "refill-all-open").await;
    phone.tap("scale-below").await;
    phone.type_into("level-typed", " ").await;
    for _ in 0..3 {
        clock.pass(phone, 90).await;
        level(phone, "level-up", 6).await;
    }
    clock.pass(phone, 30).await;
    next_mark(phone, "ShutOff").await;
    clock.pass(phone, 60).await;
    level(phone, "level-up", 2).await;
    next_mark(phone, "Stopped").await;
    phone.find("verdict").await;
    at(phone, "refill-verdict").await;
    opened(phone).await;
    for (minutes, water) in [(0, "97"), (6, "93"), (8, "90"), (10, "88")] {
        clock.pass(phone, minutes * 60).await;
        phone.type_into("loop-entering", water).await;
        phone.tap("note-entering").await;
        phone
            .holds("document.querySelector('[data-test=loop-entering]').value === ''")
            .await;
    }
    phone.find("restart-timer").await;
    at(phone, "refill-recovery").await;
}

async fn leaving(
    phone: &Phone,
    server: &mut Server,
    visit: &str,
    at: &mut impl AsyncFnMut(&Phone, &str),
) {
    phone.tap("next").await;
    phone.find("screen-left").await;
    phone.type_into("proof", "Dry on arrival, relay full").await;
    phone.type_into("work", "Probe and holder cleaned").await;
    at(phone, "left-begun").await;
    phone.tap("save-cause").await;
    for item in ["BypassShut", "HandValves", "DrainShut", "CoversOn"] {
        phone.tap(&format!("leaving-{item}-So")).await;
    }
    phone.tap("leaving-TreatmentTold-NotSo").await;
    phone.type_into("note", "Ask for a spare probe").await;
    phone.tap("keep-note").await;
    at(phone, "left").await;

    to(phone, &format!("{visit}/papers"), "screen-papers").await;
    at(phone, "papers-empty").await;
    phone.type_into("work-line", "Cleaned the holder").await;
    phone.tap("keep-work-line").await;
    phone.type_into("part-amount", "2").await;
    phone.tap("keep-part").await;
    phone
        .holds("document.querySelector('.field[data-state=refused]')")
        .await;
    at(phone, "papers-refused").await;
    phone.type_into("part", "Electrode rods").await;
    phone.tap("keep-part").await;
    phone.find("part-kept").await;
    phone.type_into("photo-caption", "Film on the holder").await;
    phone.choose_file("photo-file", &fixture("photo.jpg")).await;
    phone
        .holds("document.querySelector('[data-test=photo] img')?.naturalWidth === 64")
        .await;
    at(phone, "papers").await;

    // From here without signal.
    server.stop();
    to(phone, &format!("{visit}/report"), "screen-report").await;
    at(phone, "report").await;
    phone.type_into("signer", "Ida Halden").await;
    phone.tap("keep-signature").await;
    phone
        .holds("document.querySelector('.said.no')?.textContent.trim()")
        .await;
    at(phone, "signature-missing").await;
    let stroke = [(0.1, 0.7), (0.3, 0.2), (0.5, 0.8), (0.8, 0.3)];
    phone.draw("glass", &stroke).await;
    phone.tap("keep-signature").await;
    phone.find("signed").await;
    phone.tap("make-report").await;
    phone.find("report-kept").await;
    at(phone, "report-made").await;
    to(phone, "#/outbox", "outgoing").await;
    // The app asks again when it is looked at.
    phone.js("dispatchEvent(new Event('focus'))").await;
    phone
        .holds("document.querySelector('[data-test=mail]')?.disabled")
        .await;
    at(phone, "outbox-offline").await;
    to(phone, visit, "screen-overview").await;
    server.resume();
    phone.js("dispatchEvent(new Event('online'))").await;
    phone.find("signal-back").await;
    at(phone, "overview-signal-back").await;
    phone
        .js("document.querySelector('[data-test=signal-back] a').click()")
        .await;
    phone.find("outgoing").await;
    phone.tap("mail-file").await;
    phone.find("confirm-sent").await;
    at(phone, "outbox").await;
    phone.tap("confirm-sent").await;
    phone.gone("outgoing").await;
    at(phone, "outbox-empty").await;
}

async fn sites(phone: &Phone, at: &mut impl AsyncFnMut(&Phone, &str)) {
    to(phone, "#/", "screen-home").await;
    at(phone, "home").await;
    phone.tap("new-site").await;
    phone.find("screen-new-site").await;
    phone.tap("save-site").await;
    phone
        .holds("document.activeElement?.dataset.test === 'site-name'")
        .await;
    at(phone, "new-site-refused").await;
    phone.type_into("site-name", "Dray & Sons Cold Store").await;
    phone.tap("save-site").await;
    phone.find("screen-site").await;
    at(phone, "site-new").await;
    let site = phone.here().await;
    phone.tap("open-visit").await;
    phone.find("screen-overview").await;
    at(phone, "overview-bare-site").await;
    phone
        .js("location.hash = location.hash.replace(/\\/?$/, '/refill')")
        .await;
    phone.find("to-basin").await;
    at(phone, "refill-no-basin").await;
    phone.tap("to-basin").await;
    phone.find("screen-site-part").await;
    phone.type_into("length", "2,4 m").await;
    phone.type_into("depth", "400 mm").await;
    phone.type_into("stop", "3").await;
    phone.type_into("call", "2").await;
    phone.type_into("inlet", "12").await;
    phone.tap("save-part").await;
    phone.find("incomplete").await;
    at(phone, "site-basin-refused").await;
    phone.type_into("width", "6 ft 6 in").await;
    phone.type_into("call", "6").await;
    phone.find("basin-section").await;
    at(phone, "site-basin").await;
    phone.tap("volumes").await;
    phone.type_into("row-0-level", "0").await;
    phone.type_into("row-0-value", "500").await;
    phone.type_into("row-1-level", "8").await;
    phone.type_into("row-1-value", "200").await;
    at(phone, "site-basin-table").await;
    for part in ["who", "machines", "tower", "plant"] {
        to(phone, &format!("{site}/{part}"), "screen-site-part").await;
        at(phone, &format!("site-{part}")).await;
    }
}

async fn lists(phone: &Phone, visit: &str, at: &mut impl AsyncFnMut(&Phone, &str)) {
    to(phone, "#/", "screen-home").await;
    at(phone, "home-full").await;
    phone.type_into("search", "hladen chilers").await;
    phone
        .holds("document.querySelectorAll('[data-test=visit-row]').length < 4")
        .await;
    at(phone, "search").await;
    phone.type_into("search", "qqqq").await;
    phone
        .holds("document.querySelectorAll('[data-test=visit-row]').length === 0")
        .await;
    at(phone, "search-nothing").await;
    to(phone, "#/", "screen-home").await;
    to(phone, visit, "screen-overview").await;
    at(phone, "overview-done").await;
    phone
        .js("document.querySelector('[data-test=since-last] a').click()")
        .await;
    phone.find("screen-history").await;
    at(phone, "history").await;
    phone.tap("back").await;
    phone.find("screen-site").await;
    at(phone, "site").await;
    let nobody = "#/visit/01890a5d-ac96-774b-bcce-b302099a8057";
    to(phone, nobody, "screen-not-here").await;
    at(phone, "not-here").await;
}

async fn workings(phone: &Phone, visit: &str, at: &mut impl AsyncFnMut(&Phone, &str)) {
    to(phone, "#/workings", "screen-workings").await;
    at(phone, "workings").await;
    to(phone, "#/workings/air", "screen-working").await;
    at(phone, "working-empty").await;
    phone.type_into("DryBulb", "35 C").await;
    phone.type_into("Humidity", "damp").await;
    phone.js("document.activeElement.blur()").await;
    at(phone, "working-refused").await;
    to(phone, &format!("{visit}/workings"), "screen-workings").await;
    let slugs = phone
        .js(
            "return [...document.querySelectorAll('[data-test^=working-]')]
               .map((a) => a.getAttribute('href').split('/').pop())",
        )
        .await;
    for slug in slugs.as_array().expect("a list of workings") {
        let slug = slug.as_str().expect("a name");
        let there = format!("{visit}/workings/{slug}");
        to(phone, &there, "screen-working").await;
        at(phone, &format!("working-{slug}")).await;
    }
}

async fn settings_and_banners(phone: &Phone, visit: &str, at: &mut impl AsyncFnMut(&Phone, &str)) {
    to(phone, "#/settings", "screen-settings").await;
    phone.type_into("card-price", "twelve").await;
    phone.tap("save-backup").await;
    phone.downloaded(".json").await;
    at(phone, "settings").await;
    phone
        .js("document.documentElement.dataset.install = 'offered'")
        .await;
    at(phone, "settings-install").await;
    lock(phone, at).await;
    to(phone, visit, "screen-overview").await;
    phone
        .js("dispatchEvent(new Event('coldsump-update-waiting'))")
        .await;
    phone.find("update-waits").await;
    at(phone, "update-waits").await;

    // Room gets scarce, and then the phone refuses to keep more.
    phone
        .js(
            "navigator.storage.estimate = async () => ({ usage: 95e6, quota: 100e6 });
             document.dispatchEvent(new Event('visibilitychange'));",
        )
        .await;
    phone
        .holds("document.documentElement.dataset.room === 'low'")
        .await;
    to(phone, "#/", "room-low").await;
    at(phone, "room-low").await;
    to(phone, &format!("{visit}/found"), "screen-found").await;
    phone
        .js(
            "IDBObjectStore.prototype.add = IDBObjectStore.prototype.put = () => {
               throw new DOMException('full', 'QuotaExceededError');
             }",
        )
        .await;
    phone.tap("machine-2-stopped").await;
    phone.find("not-saved").await;
    at(phone, "not-saved").await;
}

/// The lock: off, refused, on, closed, opened by the wrong words, and off again.
async fn lock(phone: &Phone, at: &mut impl AsyncFnMut(&Phone, &str)) {
    to(phone, "#/lock", "lock-set").await;
    at(phone, "lock").await;
    phone.type_into("passphrase", "short").await;
    phone.tap("lock-set").await;
    phone.holds(REFUSED).await;
    at(phone, "lock-refused").await;
    for field in ["passphrase", "passphrase-again"] {
        phone.type_into(field, "five words of no sense").await;
    }
    phone.tap("lock-set").await;
    phone.find("lock-off").await;
    at(phone, "lock-on").await;
    phone.tap("lock-now").await;
    phone.find("screen-locked").await;
    phone.type_into("passphrase", "other words").await;
    phone.tap("unlock").await;
    phone.holds(REFUSED).await;
    at(phone, "locked").await;
    phone
        .type_into("passphrase", "five words of no sense")
        .await;
    phone.tap("unlock").await;
    phone.tap("lock-off").await;
    phone.find("lock-set").await;
}

const REFUSED: &str = "document.querySelector('[data-state=refused]')";

/// Goes to a screen by its address and waits until it stands.
async fn to(phone: &Phone, hash: &str, there: &str) {
    let go = format!("location.hash = '{hash}'; scrollTo(0, 0);");
    phone.js(&go).await;
    let want = hash.trim_end_matches('/');
    phone
        .holds(&format!(
            "location.hash.replace(/\\/$/, '') === '{want}'
             && document.querySelector('[data-test={there}]')"
        ))
        .await;
}

/// A walk's phone in a light, as [`walk`] wants it.
///
/// # Panics
/// When the browser does not start.
pub async fn walker(spanish: bool) -> Phone {
    let phone = Phone::open(Light::Day).await;
    if spanish {
        phone.asks_for_spanish().await;
    }
    phone
}
