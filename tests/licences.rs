//! What is inside, and under which licence: counted, and nothing that is not on
//! the list. Asked of cargo itself, so there is no tool to install.

use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

use serde_json::Value as Json;

/// SPDX ids that the program, its build and its tests may be under.
const ALLOWED: &[&str] = &[
    "MIT",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// The most crates that may be compiled into what a phone runs: most leave no
/// code there, but each can. Raise it only with a reason. Twelve are the lock's
/// cipher, which its authors keep in small parts: a cipher is not written here.
const MOST_INSIDE: usize = 152;

/// Where a crate may come from.
const SOURCE: &str = "registry+https://github.com/rust-lang/crates.io-index";

struct Crates {
    packages: BTreeMap<String, Json>,
    nodes: BTreeMap<String, Json>,
    root: String,
}

impl Crates {
    /// All that cargo knows for one target.
    fn of(target: &str) -> Self {
        let out = Command::new(env!("CARGO"))
            .args(["metadata", "--locked", "--format-version", "1"])
            .args(["--filter-platform", target])
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .output()
            .expect("cargo runs");
        assert!(
            out.status.success(),
            "{}",
            String::from_utf8_lossy(&out.stderr)
        );
        let said: Json = serde_json::from_slice(&out.stdout).expect("JSON");
        let by_id = |list: &Json| {
            let all = list.as_array().expect("a list").iter();
            all.map(|one| (one["id"].as_str().expect("an id").to_owned(), one.clone()))
                .collect()
        };
        Self {
            packages: by_id(&said["packages"]),
            nodes: by_id(&said["resolve"]["nodes"]),
            root: said["resolve"]["root"].as_str().expect("a root").to_owned(),
        }
    }

    fn is_macro(&self, id: &str) -> bool {
        let targets = self.packages[id]["targets"].as_array().expect("targets");
        let kinds = targets
            .iter()
            .flat_map(|t| t["kind"].as_array().into_iter().flatten());
        kinds.into_iter().any(|kind| kind == "proc-macro")
    }

    /// What cargo links into the program: all it depends on but macros.
    fn inside(&self) -> BTreeSet<String> {
        let mut inside = BTreeSet::new();
        let mut open = vec![self.root.clone()];
        while let Some(next) = open.pop() {
            for dep in self.nodes[&next]["deps"].as_array().expect("dependencies") {
                let kinds = dep["dep_kinds"].as_array().expect("kinds");
                let id = dep["pkg"].as_str().expect("an id");
                let linked = kinds.iter().any(|kind| kind["kind"].is_null());
                if linked && !self.is_macro(id) && inside.insert(id.to_owned()) {
                    open.push(id.to_owned());
                }
            }
        }
        inside
    }
}

/// Whether a licence can be met with what is allowed: one of each choice, all
/// of what is joined by "AND".
fn is_met(expression: &str) -> bool {
    let plain = expression.replace(['(', ')'], "").replace('/', " OR ");
    let choice = |part: &str| part.split(" OR ").any(|id| ALLOWED.contains(&id.trim()));
    plain.split(" AND ").all(choice)
}

#[test]
fn expressions_are_read() {
    assert!(is_met("MIT OR GPL-3.0"));
    assert!(is_met("Unlicense/MIT"));
    assert!(is_met("(MIT OR Apache-2.0) AND Unicode-3.0"));
    assert!(!is_met("MIT AND GPL-3.0"));
    assert!(!is_met("AGPL-3.0-only"));
    assert!(!is_met(""));
}

/// The program, its build and its tests, on the phone and here.
#[test]
fn every_licence_is_on_the_list_and_every_source_is_known() {
    for target in ["wasm32-unknown-unknown", "x86_64-unknown-linux-gnu"] {
        let crates = Crates::of(target);
        assert!(
            crates.packages.len() > 100,
            "cargo named {}",
            crates.packages.len()
        );
        for one in crates.packages.values() {
            let name = format!("{} {}", one["name"], one["version"]);
            let licence = one["license"].as_str().unwrap_or_default();
            assert!(is_met(licence), "{name}: {licence:?}");
            let own = one["source"].is_null();
            assert!(
                own || one["source"] == SOURCE,
                "{name} is from {}",
                one["source"]
            );
        }
    }
}

#[test]
fn what_a_phone_runs_is_counted() {
    let crates = Crates::of("wasm32-unknown-unknown");
    let inside = crates.inside();
    assert!(inside.len() > 20, "{} crates", inside.len());
    assert!(
        inside.len() <= MOST_INSIDE,
        "{} crates inside, {MOST_INSIDE} allowed",
        inside.len()
    );
    println!(
        "{} inside, {} with build and tests",
        inside.len(),
        crates.packages.len()
    );
    // Two versions of one crate are twice the bytes.
    let names: Vec<&Json> = inside
        .iter()
        .map(|id| &crates.packages[id]["name"])
        .collect();
    let mut doubled: Vec<String> = Vec::new();
    for (n, name) in names.iter().enumerate() {
        if names[..n].contains(name) {
            doubled.push(name.to_string());
        }
    }
    assert_eq!(doubled, ["\"thiserror\""], "known: leptos wants both");
}
