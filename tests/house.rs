//! The house rules that the compiler does not know: which room may name which,
//! who may touch the browser or the clock, and how long a file may get.

use std::fs;
use std::path::Path;

/// Rooms from the ground up, each with the rooms it may name.
const ROOMS: &[(&str, &[&str])] = &[
    ("quantity", &[]),
    ("physics", &["quantity"]),
    ("working", &["quantity", "physics"]),
    ("refill", &["quantity", "physics"]),
    ("trace", &["quantity", "physics"]),
    (
        "record",
        &["quantity", "physics", "working", "refill", "trace"],
    ),
    (
        "words",
        &[
            "quantity", "physics", "working", "refill", "trace", "record",
        ],
    ),
    (
        "report",
        &["quantity", "physics", "refill", "trace", "record", "words"],
    ),
    (
        "store",
        &["quantity", "physics", "refill", "trace", "record", "words"],
    ),
];

/// Crates that exist only in the browser.
const WEB: &[&str] = &[
    "web_sys",
    "js_sys",
    "wasm_bindgen",
    "leptos",
    "gloo",
    "rexie",
    "serde_wasm_bindgen",
];

/// Clocks and chance: ports hand them in, the domain never asks.
const CLOCKS: &[&str] = &[
    "SystemTime::now",
    "Instant::now",
    "Date::now",
    "OffsetDateTime::now",
    "Uuid::new_v4",
    "Uuid::now_v7",
];

/// No file of `src/` may have more lines.
const LINES: usize = 800;

/// What is wrong in the source file at `path` (relative to `src/`).
fn faults(path: &str, text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let lines = text.lines().count();
    if lines > LINES {
        faults.push(format!("{path}: {lines} lines, {LINES} allowed"));
    }
    let Some((room, allowed)) = ROOMS.iter().find(|(room, _)| is_in(path, room)) else {
        return faults; // `app`, `lib.rs` and `main.rs` may name everything
    };
    let code: String = text
        .lines()
        .map(without_comment)
        .collect::<Vec<_>>()
        .join("\n");
    for name in rooms_named(&code) {
        if name != *room && is_room(&name) && !allowed.contains(&name.as_str()) {
            faults.push(format!("{path}: {room} names {name}"));
        }
    }
    let browser_side = path.starts_with("store/indexed");
    for name in WEB.iter().filter(|_| !browser_side) {
        if words(&code).any(|word| word == *name || word.starts_with(&format!("{name}_"))) {
            faults.push(format!("{path}: {room} uses {name}"));
        }
    }
    for clock in CLOCKS.iter().filter(|clock| code.contains(**clock)) {
        faults.push(format!("{path}: {room} asks {clock}"));
    }
    faults
}

fn is_in(path: &str, room: &str) -> bool {
    path == format!("{room}.rs") || path.starts_with(&format!("{room}/"))
}

fn is_room(name: &str) -> bool {
    name == "app" || ROOMS.iter().any(|(room, _)| *room == name)
}

/// The line up to a comment that starts it or follows code.
fn without_comment(line: &str) -> &str {
    let trimmed = line.trim_start();
    if trimmed.starts_with("//") {
        ""
    } else {
        line.split(" // ").next().unwrap_or(line)
    }
}

fn words(code: &str) -> impl Iterator<Item = &str> {
    code.split(|c: char| !(c.is_alphanumeric() || c == '_'))
        .filter(|word| !word.is_empty())
}

/// What stands directly behind `crate::`, also inside one level of braces.
fn rooms_named(code: &str) -> Vec<String> {
    let mut names = Vec::new();
    for (at, mark) in code.match_indices("crate::") {
        let rest = &code[at + mark.len()..];
        if let Some(list) = rest.strip_prefix('{') {
            let mut depth = 0_i32;
            let mut head = true;
            let mut name = String::new();
            for c in list.chars() {
                match c {
                    '}' if depth == 0 => break,
                    '{' => depth += 1,
                    '}' => depth -= 1,
                    ',' if depth == 0 => {
                        names.push(std::mem::take(&mut name));
                        head = true;
                    }
                    ':' if depth == 0 => head = false,
                    _ if depth == 0 && head && !c.is_whitespace() => name.push(c),
                    _ => {}
                }
            }
            names.push(name);
        } else {
            names.extend(words(rest).next().map(str::to_owned));
        }
    }
    names.retain(|name| !name.is_empty());
    names
}

/// Every Rust file under `folder`, as a path relative to it, with its text.
fn sources(folder: &Path) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut open = vec![folder.to_owned()];
    while let Some(next) = open.pop() {
        for entry in fs::read_dir(&next).expect("a readable folder") {
            let path = entry.expect("a readable entry").path();
            if path.is_dir() {
                open.push(path);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                let name = path
                    .strip_prefix(folder)
                    .expect("it is inside")
                    .to_string_lossy();
                found.push((
                    name.into_owned(),
                    fs::read_to_string(&path).expect("UTF-8 text"),
                ));
            }
        }
    }
    found
}

#[test]
fn the_rooms_keep_the_order() {
    let sources = sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"));
    for (room, _) in ROOMS {
        assert!(
            sources.iter().any(|(path, _)| is_in(path, room)),
            "no room {room}"
        );
    }
    let found: Vec<String> = sources
        .iter()
        .flat_map(|(path, text)| faults(path, text))
        .collect();
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn the_check_sees_what_it_must() {
    let bad = [
        ("physics/air.rs", "use crate::trace::Plant;", "names trace"),
        (
            "quantity/mod.rs",
            "fn f() -> crate::physics::Basin {}",
            "names physics",
        ),
        ("refill/fit.rs", "use crate::trace;", "names trace"),
        (
            "trace/mod.rs",
            "use crate::{\n    quantity::Length,\n    words::{Words},\n};",
            "names words",
        ),
        (
            "record/mod.rs",
            "use crate::{quantity::{self, Length}, store};",
            "names store",
        ),
        ("report/mod.rs", "use crate::app;", "names app"),
        ("physics/air.rs", "use web_sys::Window;", "uses web_sys"),
        (
            "store/port.rs",
            "use gloo_timers::future::sleep;",
            "uses gloo",
        ),
        ("words/mod.rs", "use leptos::prelude::*;", "uses leptos"),
        (
            "record/id.rs",
            "let t = std::time::SystemTime::now();",
            "asks SystemTime::now",
        ),
        (
            "trace/mod.rs",
            "let t = Instant::now();",
            "asks Instant::now",
        ),
    ];
    for (path, text, part) in bad {
        let found = faults(path, text);
        assert!(
            found.len() == 1 && found[0].contains(part),
            "{path} {text:?}: {found:?}"
        );
    }
    let long = "\n".repeat(LINES + 1);
    assert_eq!(faults("app/mod.rs", &long).len(), 1);
}

#[test]
fn the_check_lets_pass_what_may() {
    let good = [
        (
            "physics/air.rs",
            "use crate::quantity::Length;\nuse crate::physics::water;",
        ),
        (
            "physics/air.rs",
            "//! Unlike crate::trace, this asks no leptos.\nlet a = 1; // crate::app",
        ),
        ("report/pdf.rs", "use crate::{record::Entry, words::Words};"),
        (
            "store/indexed.rs",
            "use rexie::Rexie;\nuse wasm_bindgen::JsValue;",
        ),
        ("store/indexed/open.rs", "use web_sys::Window;"),
        ("app/mod.rs", "use leptos::prelude::*;\nuse crate::store;"),
        ("lib.rs", "pub mod app;"),
    ];
    for (path, text) in good {
        assert_eq!(faults(path, text), Vec::<String>::new(), "{path}");
    }
    assert!(faults("quantity/mod.rs", &"\n".repeat(LINES)).is_empty());
}
