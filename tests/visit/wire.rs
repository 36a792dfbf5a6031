//! The stored forms, kept for good: entries of every kind in `tests/fixtures`,
//! and every name that stands in one. A new kind or name that is not in the
//! fixtures fails here; so does an old one that this build no longer reads.
//!
//! After adding a kind or a name: `COLDSUMP_WRITE=1 cargo test --test visit wire`.
//! It adds what is new and changes nothing that is there.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use coldsump::physics::basin::Plan;
use coldsump::physics::refrigerant::Refrigerant;
use coldsump::quantity::{Kind, Unit, Value};
use coldsump::record::paperwork::{Item, Shape, Shows};
use coldsump::record::{
    About, Body, Entry, LeavingItem, LeavingState, MachineState, Way, What, When,
};
use coldsump::refill::MarkKind;
use coldsump::trace::{
    Answer, Bleed, Check, Contact, FillValve, LevelControl, MachineKind, Manner, Mode, Plant, Stage,
};
use serde::de::DeserializeOwned;
use serde_json::{Value as Json, json};

use crate::story::Story;

fn fixture(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/fixtures")
        .join(name)
}

fn writing() -> bool {
    std::env::var_os("COLDSUMP_WRITE").is_some()
}

/// Every fixture of entries, oldest first.
const ENTRIES: [&str; 2] = ["entries-v1.json", "entries-v1-paper.json"];

fn read(name: &str) -> Json {
    let text = fs::read_to_string(fixture(name)).unwrap_or_else(|e| panic!("{name}: {e}"));
    serde_json::from_str(&text).unwrap_or_else(|e| panic!("{name}: {e}"))
}

/// The names that a type reads, as its own error lists them.
fn names<T: DeserializeOwned>() -> Vec<String> {
    let Err(error) = serde_json::from_value::<T>(json!("no such name")) else {
        panic!("it reads anything");
    };
    let said = error.to_string();
    let (_, list) = said.split_once("expected ").expect("a list of names");
    let quoted = list.split('`').skip(1).step_by(2);
    quoted.map(kebab).collect()
}

/// A plain choice lists its names as the program writes them.
fn kebab(name: &str) -> String {
    if name.contains('-') {
        return name.to_owned(); // so on the wire, such as R-134a
    }
    let mut kebab = String::new();
    for (n, c) in name.chars().enumerate() {
        if c.is_ascii_uppercase() && n > 0 {
            kebab.push('-');
        }
        kebab.push(c.to_ascii_lowercase());
    }
    kebab
}

/// Every list of names that stands in an entry.
fn all_names() -> BTreeMap<String, Vec<String>> {
    let mut all = BTreeMap::new();
    macro_rules! take {
        ($($kind:ident)*) => { $(all.insert(stringify!($kind).to_owned(), names::<$kind>());)* };
    }
    take!(About Answer Bleed Body Check Contact FillValve Item Kind LeavingItem LeavingState
        LevelControl MachineKind MachineState Manner MarkKind Mode Plan Refrigerant Shape Shows
        Stage Unit Way What When);
    all
}

#[test]
fn every_name_ever_written_reads_and_every_name_is_known() {
    const FILE: &str = "names-v1.json";
    let now = all_names();
    assert!(now["Body"].contains(&"visit-closed".to_owned()));
    assert!(now.values().all(|names| names.len() > 1));
    let mut kept: BTreeMap<String, Vec<String>> = match fixture(FILE).exists() {
        true => serde_json::from_value(read(FILE)).expect("lists of names"),
        false => BTreeMap::new(),
    };
    let mut new = Vec::new();
    for (kind, names) in &now {
        let known = kept.entry(kind.clone()).or_default();
        let unknown: Vec<String> = names
            .iter()
            .filter(|n| !known.contains(n))
            .cloned()
            .collect();
        new.extend(unknown.iter().map(|name| format!("{kind} {name}")));
        known.extend(unknown);
    }
    if writing() && !new.is_empty() {
        let text = serde_json::to_string_pretty(&kept).expect("JSON") + "\n";
        fs::write(fixture(FILE), text).expect("it is written");
    } else {
        assert_eq!(new, Vec::<String>::new(), "names that no fixture holds");
    }
    for (kind, names) in kept {
        let here = now
            .get(&kind)
            .unwrap_or_else(|| panic!("{kind} is no more"));
        for name in names {
            assert!(here.contains(&name), "{kind} {name} is no longer read");
        }
    }
}

#[test]
fn every_kind_of_entry_is_in_a_fixture_and_is_written_as_it_was() {
    if writing() && !fixture(ENTRIES[1]).exists() {
        let text = serde_json::to_string_pretty(&paper()).expect("JSON") + "\n";
        fs::write(fixture(ENTRIES[1]), text).expect("it is written");
    }
    let mut kinds = Vec::new();
    for name in ENTRIES {
        let stored = read(name);
        let entries: Vec<Entry> = serde_json::from_value(stored.clone()).expect(name);
        let again = serde_json::to_value(&entries).expect("JSON");
        for (again, stored) in again
            .as_array()
            .into_iter()
            .flatten()
            .zip(stored.as_array().expect("a list"))
        {
            assert_eq!(again, stored, "{name}");
            let body = &stored["body"];
            let kind = body.as_object().and_then(|o| o.keys().next().cloned());
            kinds.extend(kind.or_else(|| body.as_str().map(str::to_owned)));
        }
    }
    for kind in names::<Body>() {
        assert!(kinds.contains(&kind), "no fixture holds an entry {kind:?}");
    }
}

/// A visit with all that came after the first form: paperwork, a correction, a
/// moved mark, a recovery, a test resumed, a site whose plant is described.
fn paper() -> Vec<Entry> {
    let mut story = Story::whole();
    let mut site = story.site.clone();
    site.contacts = "Ida Halden, front desk".into();
    site.makeup = "Shut-off in the pump room, behind the softener".into();
    site.plant = Some(Plant::default());
    let about = About::Site(story.site_id);
    let described = Body::described(site);
    story.entries.push(
        story
            .pen
            .write(about, described, &story.clock, &story.clock),
    );
    let find = |wanted: fn(&Body) -> bool| story.entries.iter().find(|e| wanted(&e.body));
    let mark = find(|b| matches!(b, Body::Marked { .. }))
        .expect("a mark")
        .id;
    let last = story.clock.now.get();
    let (test, machine) = (story.test, story.machine(3).id);
    story.say(Body::MarkMoved {
        test,
        mark,
        by_s: -12.0,
    });
    story.say(Body::TestResumed {
        test,
        last,
        slept: true,
    });
    story.say(Body::Corrected {
        mode: Mode::SensorFalseFull,
    });
    story.say(Body::CheckAnswered {
        check: Check::ControlVoltage,
        answer: Answer::VoltageGood,
        stage: Stage::Testing,
        value: Some(Value {
            kind: Kind::Voltage,
            si: 24.1,
        }),
    });
    story.say(Body::Marked {
        test,
        mark: MarkKind::Interrupted,
        typed: Some("3 1/2".into()),
    });
    story.say(Body::LoopRead {
        what: What::HeadPressure,
        machine: Some(machine),
        value: Value {
            kind: Kind::GaugePressure,
            si: 1_500_000.0,
        },
        typed: "217.6".into(),
    });
    story.entries
}
