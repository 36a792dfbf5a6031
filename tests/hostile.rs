//! Input that means harm, or that came out of a broken phone. What must hold is
//! written in `fuzz/src`; here the corpus and some thousand changes of it run,
//! the same at every run, and cases with a name. `./dev fuzz` looks for more.

#[path = "../fuzz/src/lib.rs"]
mod oracle;

use std::fs;
use std::path::Path;

use coldsump::quantity::System;
use coldsump::record::{About, Body, DeviceId, Entry, Log, Moment, Pen, Visit};
use coldsump::report::mail::{Enclosed, short_text, to_eml};
use coldsump::report::{compose, to_csv, to_pdf, to_text};
use coldsump::store::backup::sift;
use coldsump::words::Words;
use proptest::prelude::*;
use serde_json::{Value as Json, json};

use oracle::mutate::{Dice, TEXTS};

const FIXTURE: &str = include_str!("fixtures/entries-v1.json");

/// The corpus of one target, in the order of its names.
fn corpus(target: &str) -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("fuzz/corpus")
        .join(target);
    let mut files: Vec<_> = fs::read_dir(folder)
        .expect("the corpus")
        .map(|file| file.expect("a file").path())
        .collect();
    files.sort();
    files
        .iter()
        .map(|file| fs::read(file).expect("a file"))
        .collect()
}

/// Bytes changed in one to four places.
fn bytes(data: &[u8], seed: u64) -> Vec<u8> {
    let mut dice = Dice(seed);
    let mut out = data.to_vec();
    for _ in 0..=dice.below(4) {
        let at = dice.below(out.len() + 1);
        match dice.below(5) {
            0 => out.insert(at, dice.below(256) as u8),
            1 => drop(out.splice(at..at, TEXTS[dice.below(TEXTS.len())].bytes())),
            2 => out.truncate(at),
            3 if at < out.len() => drop(out.remove(at)),
            _ if at < out.len() => out[at] = dice.below(256) as u8,
            _ => {}
        }
    }
    out
}

/// Every file of a corpus, then so many changes of each.
fn run(target: &str, changes: u64, holds: fn(&[u8])) {
    let corpus = corpus(target);
    assert!(corpus.len() >= 3, "{target} has no corpus");
    for data in corpus {
        holds(&data);
        for seed in 0..changes {
            holds(&bytes(&data, seed));
            if let Some(data) = oracle::mutate::json(&data, seed) {
                holds(&data);
            }
        }
    }
}

#[test]
fn typed_quantities() {
    run("typed", 400, oracle::typed::holds);
}

#[test]
fn entries_and_backups() {
    run("entries", 100, oracle::entries::holds);
}

#[test]
fn what_is_worked_out_from_entries() {
    run("story", 12, oracle::story::holds);
}

#[test]
fn mails_and_tables() {
    run("mail", 300, oracle::mail::holds);
}

#[test]
fn text_in_a_pdf() {
    run("pdf", 8, oracle::pdf::holds);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Anything at all, as each of them.
    #[test]
    fn any_bytes(data in prop::collection::vec(any::<u8>(), 0..200)) {
        oracle::typed::holds(&data);
        oracle::entries::holds(&data);
        oracle::mail::holds(&data);
    }

    /// Typed text as people mistype it.
    #[test]
    fn any_typed(how in any::<[u8; 2]>(), text in "\\PC{0,80}") {
        oracle::typed::holds(&[&how, text.as_bytes()].concat());
    }
}

fn fixture() -> Vec<Json> {
    serde_json::from_str(FIXTURE).expect("JSON")
}

fn read(document: &Json) -> Vec<Entry> {
    oracle::entries::entries(document.to_string().as_bytes())
}

/// The log of entries, and its first visit.
fn folded(entries: Vec<Entry>) -> (Log, Visit) {
    let mut log = Log::default();
    let about = entries.iter().find_map(|e| match e.about {
        About::Visit(id) => Some(id),
        About::Site(_) => None,
    });
    entries.into_iter().for_each(|entry| log.add(entry));
    let visit = log.visit(about.expect("a visit")).expect("it was opened");
    (log, visit)
}

/// The texts of a person in a document, replaced: all, or a visit's own where
/// they are long.
fn with_texts(document: &mut Json, said: &str) {
    const LONG: &[&str] = &["complaint", "proof", "work", "text", "caption", "corrects"];
    const SHORT: &[&str] = &[
        "name",
        "place",
        "access",
        "contacts",
        "makeup",
        "nameplate",
        "typed",
    ];
    match document {
        Json::Array(all) => all.iter_mut().for_each(|one| with_texts(one, said)),
        Json::Object(all) => {
            for (key, value) in all {
                let key = key.as_str();
                let own = LONG.contains(&key) || (said.len() < 1_000 && SHORT.contains(&key));
                match value {
                    Json::String(text) if own => *text = said.into(),
                    other => with_texts(other, said),
                }
            }
        }
        _ => {}
    }
}

/// Names and notes with anything in them, through every way out.
#[test]
fn texts_of_any_kind_come_out_everywhere() {
    let long = "drain valve ".repeat(8_334);
    let unbroken = "水".repeat(100_000);
    let dark = "\u{202e}".repeat(1_000) + "x";
    let all = TEXTS
        .iter()
        .copied()
        .chain([long.as_str(), &unbroken, &dark]);
    for said in all {
        let mut document = Json::Array(fixture());
        with_texts(&mut document, said);
        let (log, visit) = folded(read(&document));
        assert_eq!(visit.complaint, said);
        let site = log.site(visit.site).expect("a site");
        let doc = compose(&site, &visit, System::Us, Words::default(), "");
        let text = to_text(&doc, 72);
        assert!(
            text.chars().all(|c| c == '\n' || !c.is_control()),
            "{said:?}"
        );
        let table = to_csv(&site, &visit, System::Us, Words::default());
        for line in table
            .split("\r\n")
            .filter(|line| said.len() < 100 && !line.is_empty())
        {
            assert!(!line.starts_with(['=', '+', '@', '\t']), "{line}");
        }
        let name = format!("{said}.pdf");
        let file = Enclosed {
            name: &name,
            media_type: said,
            bytes: b"%PDF",
        };
        let mail = to_eml(said, &short_text(&doc, 72), &[file], &visit.opened);
        let mail = String::from_utf8(mail).expect("ASCII");
        assert!(
            mail.split("\r\n").all(|line| line.len() <= 998),
            "{:.60}",
            said
        );
        assert!(!mail.contains("\r\nBcc"), "{mail:.400}");
        if said.len() < 1_000 {
            continue; // the corpus sets short texts
        }
        let created = coldsump::report::DocDate {
            year: 2026,
            month: 11,
            day: 24,
            hour: 9,
            minute: 30,
            second: 0,
            offset_minutes: 0,
        };
        let pdf = to_pdf(&doc, oracle::pdf::FONT, created).expect("any text can be set");
        // Some twenty places hold the text; each letter takes some bytes.
        assert!(
            pdf.len() < 200_000 + 400 * said.len(),
            "{} bytes",
            pdf.len()
        );
        oracle::reader::text(&pdf);
    }
}

#[test]
fn what_another_says_under_the_same_name_stays_out() {
    let mine = read(&Json::Array(fixture()));
    let mut theirs = Json::Array(fixture());
    with_texts(&mut theirs, "other words");
    let (log, visit) = folded(mine.clone());
    let sifted = sift(&log, read(&theirs));
    assert!(sifted.new.is_empty() && sifted.other > 0);
    assert_eq!(sifted.known + sifted.other, mine.len());
    // Twice within one backup: the first counts.
    let twice: Vec<Entry> = mine.iter().cloned().chain(read(&theirs)).collect();
    let sifted = sift(&Log::default(), twice);
    assert_eq!(sifted.new, mine);
    assert_eq!(folded(sifted.new).1, visit);
}

/// A name at the end of time would leave none after it: what is written next
/// would sort first, and a correction would count for nothing.
#[test]
fn a_name_at_the_end_of_time_stays_out() {
    let mut entry = fixture()[1].clone();
    let last = "ffffffff-ffff-7fff-bfff-ffffffffffff";
    entry["id"] = last.into();
    let sifted = sift(&Log::default(), read(&entry));
    assert_eq!((sifted.new.len(), sifted.other), (0, 1));
    // The latest that may come in leaves room for all that is written after it.
    let edge = "e677d21f-dbff-7fff-bfff-ffffffffffff"; // 9999-12-31T23:59:59.999Z
    entry["id"] = edge.into();
    let new = sift(&Log::default(), read(&entry)).new;
    assert_eq!(new.len(), 1);
    struct None;
    impl coldsump::record::Chance for None {
        fn ten_bytes(&self) -> [u8; 10] {
            [0; 10]
        }
    }
    let device = DeviceId::parse(last).expect("a UUID");
    let mut pen = Pen::new(device, Some(new[0].id));
    let now = Moment {
        ms: 0,
        offset_min: 0,
        run: 1,
        run_ms: 0.0,
    };
    let mut before = new[0].id;
    for _ in 0..10_000 {
        let next = pen.id(now, &None);
        assert!(next > before);
        before = next;
    }
}

#[test]
fn kinds_nobody_knows_are_left_out_alone() {
    let mut all = fixture();
    let count = all.len();
    all[5]["body"] = json!({ "rocket-launched": { "thrust": 1e308 } });
    all[6]["body"] = json!("__proto__");
    all[7]["body"] = json!({ "note-written": { "text": "a" }, "visit-closed": null });
    all[8]["about"] = json!({ "constructor": "019ab000-0000-7000-8000-000000000003" });
    all[9]["__proto__"] = json!({ "polluted": true });
    all[9]["toString"] = json!(1);
    let read = read(&Json::Array(all));
    assert_eq!(
        read.len(),
        count - 4,
        "strange keys beside the known ones do no harm"
    );
}

#[test]
fn depth_is_refused_without_a_crash() {
    for (open, close) in [("[", "]"), ("{\"entries\":", "}")] {
        let deep = open.repeat(100_000) + "1" + &close.repeat(100_000);
        oracle::entries::holds(deep.as_bytes());
        assert!(oracle::entries::entries(deep.as_bytes()).is_empty());
    }
}

/// A backup may claim any size: only what is there is taken.
#[test]
fn claimed_sizes_take_no_room() {
    let backup = json!({
        "coldsump-backup": 1,
        "made": "9".repeat(10_000),
        "entries": [],
        "files": [{
            "id": "019ab000-0000-7000-8000-000000000005",
            "name": "a.pdf",
            "media-type": "text/html\r\nBcc: x",
            "sha256": "0".repeat(64),
            "base64": "AAAA".repeat(1_000),
        }],
    });
    oracle::entries::holds(backup.to_string().as_bytes());
    let mut all = fixture();
    for entry in &mut all {
        if let Some(made) = entry["body"].get_mut("report-made") {
            made["bytes"] = json!(u32::MAX);
        }
    }
    let (_, visit) = folded(read(&Json::Array(all.clone())));
    assert!(!visit.reports.is_empty());
    oracle::story::holds(Json::Array(all).to_string().as_bytes());
}

/// Every number of a visit at the ends of what a number can hold.
#[test]
fn numbers_at_their_ends_come_out_as_words() {
    fn with_numbers(part: &mut Json, number: &Json) {
        match part {
            Json::Number(_) => *part = number.clone(),
            Json::Array(all) => all.iter_mut().for_each(|one| with_numbers(one, number)),
            Json::Object(all) => {
                for (key, value) in all {
                    // What names and dates an entry stays, so that it reads.
                    if !["at", "v", "bytes", "size"].contains(&key.as_str()) {
                        with_numbers(value, number);
                    }
                }
            }
            _ => {}
        }
    }
    for number in [1e308, -1e308, 5e-324, -0.0, 0.0, 1e9, -1.0] {
        let mut document = Json::Array(fixture());
        with_numbers(&mut document, &json!(number));
        let read = read(&document);
        assert!(
            read.iter()
                .any(|e| matches!(e.body, Body::ReadingTaken { .. }))
        );
        oracle::story::holds(document.to_string().as_bytes());
    }
}
