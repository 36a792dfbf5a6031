//! Closed by design: nothing leaves the origin, nothing at all is asked for
//! after the first load, and the page's policy holds through the whole job.

use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;

use coldsump_browser::{Light, Phone, Server, answer, project};
use serde_json::{Value as Json, json};

/// Counts in the page itself, before any of its own code: what the policy
/// refuses, what a script opens to the network, and what is evaluated as code.
const WATCH: &str = "
  window.__refused = [];
  addEventListener('securitypolicyviolation',
    (event) => __refused.push(event.effectiveDirective + ' ' + event.blockedURI), true);
  window.__asked = [];
  const seen = (what, inner) => function (...args) {
    __asked.push(what + ' ' + String(args[1] ?? args[0]?.url ?? args[0]));
    return Reflect.apply(inner, this, args);
  };
  window.fetch = seen('fetch', window.fetch);
  XMLHttpRequest.prototype.open = seen('xhr', XMLHttpRequest.prototype.open);
  navigator.sendBeacon = seen('beacon', navigator.sendBeacon);
  for (const name of ['WebSocket', 'EventSource', 'RTCPeerConnection']) {
    const Inner = window[name];
    if (Inner) window[name] = class extends Inner {
      constructor(...args) { __asked.push(name + ' ' + args[0]); super(...args); }
    };
  }
";

/// The job from call to report; the refill test has tests of its own.
async fn the_job(phone: &Phone) {
    phone.tap("open-demo").await;
    phone.find("screen-overview").await;
    phone.tap("next").await;
    phone.find("screen-found").await;
    phone.tap("machine-0-high-head").await;
    phone.type_into("head-0", "205").await;
    phone.type_into("entering-water", "97F").await;
    phone.type_into("leaving-water", "36.7 C").await;
    phone.type_into("dry-bulb", "88").await;
    phone.type_into("humidity", "55%").await;
    phone.tap("next").await;
    phone.find("screen-numbers").await;
    phone.tap("next").await;
    phone.find("screen-trace").await;
    answer(phone, "CallAsFound", "Satisfied").await;
    answer(phone, "ProbeDried", "Calls").await;
    phone.tap("next").await;
    phone.tap("begin-test").await;
    phone.tap("next-mark").await;
    phone.find("mark").await;
    phone
        .js("location.hash = location.hash.replace(/[^/]*$/, 'left')")
        .await;
    phone.find("screen-left").await;
    phone.type_into("note", "Ask for a spare probe").await;
    phone.tap("keep-note").await;
    phone.tap("next").await;
    phone.find("screen-report").await;
    phone.tap("make-report").await;
    phone.find("report-kept").await;
    phone.go("#/settings").await;
    phone.find("screen-settings").await;
    phone.go("#/outbox").await;
    phone.find("outgoing").await;
}

#[tokio::test]
async fn the_whole_job_asks_the_network_for_nothing() {
    let mut server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.on_new_page(WATCH).await;
    phone.start(&server).await;
    phone.kept_offline().await;
    assert_eq!(phone.problems(&server.origin()).await, [], "while it loads");
    // From here on there is no server: whatever is asked for would be missed.
    server.stop();
    phone.reload().await;
    phone.mounted().await;
    the_job(&phone).await;

    let refused = phone.js("return __refused").await;
    assert_eq!(refused, json!([]), "the policy refused something");
    let asked = phone.js("return __asked").await;
    let asked: Vec<&str> = asked
        .as_array()
        .expect("a list")
        .iter()
        .filter_map(|one| one.as_str())
        // The question for signal, of the own server alone.
        .filter(|one| !one.ends_with("manifest.webmanifest"))
        .collect();
    let mine = |one: &&str| {
        let to = one.split(' ').next_back().unwrap_or_default();
        to.starts_with(&server.url()) || !to.contains("://")
    };
    assert!(asked.iter().all(mine), "{asked:?}");
    let mut problems = phone.problems(&server.origin()).await;
    problems.retain(|one| !one.is_lost_signal());
    assert_eq!(
        problems,
        [],
        "nothing left the origin, and nothing was missed"
    );
}

/// The watch sees what it must.
#[tokio::test]
async fn the_policy_refuses_what_it_must() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.on_new_page(WATCH).await;
    phone.start(&server).await;
    phone
        .js("const put = (name, more) => document.body.append(
               Object.assign(document.createElement(name), more));
             put('script', { textContent: 'window.__ran = 1' });
             put('style', { textContent: 'body { color: red }' });
             put('img', { src: 'https://192.0.2.1/pixel.png' });
             put('iframe', { src: '/' });
             put('object', { data: '/icon.svg' });
             const box = document.createElement('div');
             box.innerHTML = '<img src=x onerror=\"window.__ran = 2\"><p style=\"color: red\">';
             document.body.append(box);
             fetch('https://192.0.2.1/').catch(() => 0);
             try { new WebSocket('wss://192.0.2.1/') } catch {}
             new Worker(URL.createObjectURL(new Blob(['1'])));
             // Later: a script of the driver's own may use eval while it runs.
             setTimeout(() => { try { eval('window.__ran = 3') } catch { window.__held = true } });
             setTimeout('window.__ran = 4')")
        .await;
    for directive in [
        "script-src-elem",
        "script-src-attr",
        "style-src-elem",
        "style-src-attr",
        "img-src",
        "frame-src",
        "object-src",
        "connect-src",
        "worker-src",
        "script-src eval",
    ] {
        phone
            .holds(&format!(
                "__refused.some((one) => one.startsWith('{directive}'))"
            ))
            .await;
    }
    phone.holds("window.__held").await;
    assert_eq!(phone.js("return window.__ran ?? null").await, Json::Null);
}

/// The answer to a bare request: its status line, headers and body.
fn get(server: &Server, path: &str) -> (BTreeMap<String, String>, String) {
    let host = server.origin().replace("http://", "");
    let mut stream = TcpStream::connect(&host).expect("the server answers");
    write!(
        stream,
        "GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n"
    )
    .expect("the request is sent");
    let mut reader = BufReader::new(stream);
    let mut headers = BTreeMap::new();
    loop {
        let mut line = String::new();
        reader.read_line(&mut line).expect("a header");
        let Some((name, value)) = line.trim().split_once(": ") else {
            if line.trim().is_empty() {
                break;
            }
            continue;
        };
        headers.insert(name.to_lowercase(), value.to_owned());
    }
    let mut body = Vec::new();
    reader.read_to_end(&mut body).expect("a body");
    (headers, String::from_utf8_lossy(&body).into_owned())
}

/// The policy in the page: what each kind of thing may come from.
fn policy(page: &str) -> BTreeMap<String, Vec<String>> {
    let (_, rest) = page
        .split_once("http-equiv=\"Content-Security-Policy\"")
        .expect("a policy in the page");
    let (_, rest) = rest.split_once("content=\"").expect("its text");
    let (text, _) = rest.split_once('"').expect("its end");
    text.split(';')
        .map(|part| {
            let mut words = part.split_whitespace().map(str::to_owned);
            (words.next().expect("a directive"), words.collect())
        })
        .collect()
}

#[tokio::test]
async fn the_built_page_and_its_server_are_strict() {
    let server = Server::start();
    let (headers, page) = get(&server, "/");
    let policy = policy(&page);
    let only = |name: &str, allowed: &[&str]| {
        let said: Vec<&str> = policy[name].iter().map(String::as_str).collect();
        assert_eq!(said, allowed, "{name}");
    };
    only("default-src", &["'none'"]);
    only("script-src", &["'self'", "'wasm-unsafe-eval'"]);
    only("style-src", &["'self'"]);
    only("img-src", &["'self'", "blob:", "data:"]);
    only("font-src", &["'self'"]);
    only("connect-src", &["'self'"]);
    only("manifest-src", &["'self'"]);
    only("worker-src", &["'self'"]);
    only("base-uri", &["'none'"]);
    only("form-action", &["'none'"]);
    assert_eq!(
        policy.len(),
        10,
        "a directive that nobody checks: {policy:?}"
    );

    // What a meta tag can't say.
    let said = &headers["content-security-policy"];
    assert!(said.ends_with("; frame-ancestors 'none'"), "{said}");
    assert_eq!(headers["x-content-type-options"], "nosniff");
    assert_eq!(headers["referrer-policy"], "no-referrer");
    assert_eq!(headers["cross-origin-opener-policy"], "same-origin");
    assert_eq!(headers["cross-origin-resource-policy"], "same-origin");
    let permissions = &headers["permissions-policy"];
    for name in [
        "accelerometer",
        "camera",
        "display-capture",
        "geolocation",
        "gyroscope",
        "hid",
        "magnetometer",
        "microphone",
        "midi",
        "payment",
        "serial",
        "usb",
    ] {
        let none = format!("{name}=()");
        assert!(
            permissions.split(", ").any(|one| one == none),
            "{name}: {permissions}"
        );
    }

    // No code or style of its own in the page, and a sum for each file it names.
    assert!(page.contains("name=\"referrer\" content=\"no-referrer\""));
    for (at, _) in page.match_indices("<script") {
        let tag = page[at..].split('>').next().unwrap_or_default();
        let inner = page[at + tag.len() + 1..].split("</script>").next();
        assert!(tag.contains("src="), "{tag}");
        assert_eq!(inner.map(str::trim), Some(""), "{tag}");
    }
    assert!(!page.contains("<style") && !page.contains(" style=") && !page.contains("javascript:"));
    assert!(
        !page.contains("http://") && !page.contains("https://"),
        "{page}"
    );
    let handler = |word: &str| word.len() > 3 && word.starts_with("on") && word.contains("=\"");
    assert!(!page.split_whitespace().any(handler));
}

/// What the browser would run: no evaluated text in any script of the build,
/// and no address but our own.
#[test]
fn the_build_evaluates_no_text_and_names_no_other_origin() {
    let dist = project().join("dist");
    let mut scripts = 0;
    for file in fs::read_dir(&dist).expect("a build").flatten() {
        let path = file.path();
        if path.extension().is_none_or(|kind| kind != "js") {
            continue;
        }
        scripts += 1;
        let text = fs::read_to_string(&path).expect("a script");
        let evaluates = ["eval(", "new Function", "document.write", "importScripts("];
        for word in evaluates {
            assert!(!text.contains(word), "{}: {word}", path.display());
        }
        for (at, scheme) in text
            .match_indices("https://")
            .chain(text.match_indices("http://"))
        {
            let line = text[..at]
                .rsplit('\n')
                .next()
                .unwrap_or_default()
                .trim_start();
            assert!(
                line.starts_with("//") || line.starts_with('*'),
                "{}: {scheme} outside of a comment",
                path.display()
            );
        }
    }
    assert!(scripts >= 3, "{scripts} scripts");
    notices(&dist);
}

/// The licences of what is inside lie beside the program.
fn notices(dist: &Path) {
    let text = fs::read_to_string(dist.join("notices.txt")).expect("notices.txt");
    for said in [
        "leptos 0.8",
        "wasm-bindgen 0.2",
        "serde 1.",
        "uom 0.",
        "Inter, the letters of the report",
        "SIL OPEN FONT LICENSE",
        "Permission is hereby granted, free of charge",
        "UNICODE LICENSE V3",
        "Rust's standard library",
    ] {
        assert!(text.contains(said), "{said}");
    }
    let worker = fs::read_to_string(dist.join("sw.js")).expect("sw.js");
    assert!(
        !worker.contains("[\"notices.txt\""),
        "it is not for every phone to keep"
    );
}
