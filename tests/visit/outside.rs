//! What other programs make of what we hand out: the mail by Python's `email`
//! module, the table by its `csv` module (pandas would be a hundred times the
//! download for the same answer), the backup by the JSON Schema in `docs/`.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::atomic::{AtomicU32, Ordering};

use coldsump::quantity::{Length, System};
use coldsump::record::Body;
use coldsump::record::bytes::sha256;
use coldsump::record::paperwork::files;
use coldsump::refill::MarkKind;
use coldsump::report::mail::{Enclosed, cut, short_text, to_eml};
use coldsump::report::{compose, to_csv};
use coldsump::store::KeptFile;
use coldsump::store::backup::{Backup, FORM, FileCopy};
use coldsump::words::Words;
use serde_json::{Value as Json, json};
use uom::si::length::inch;

use crate::story::{Fixed, START_MS, Story};

/// A temporary file that goes with its owner.
struct Kept(PathBuf);

impl Kept {
    fn new(bytes: &[u8]) -> Self {
        static NEXT: AtomicU32 = AtomicU32::new(0);
        let n = NEXT.fetch_add(1, Ordering::Relaxed);
        let path = std::env::temp_dir().join(format!("coldsump-out-{}-{n}", std::process::id()));
        std::fs::write(&path, bytes).expect("write a temporary file");
        Kept(path)
    }
}

impl Drop for Kept {
    fn drop(&mut self) {
        let _ = std::fs::remove_file(&self.0);
    }
}

/// Runs `outside.py`, in the Python that the reference figures use.
fn python(args: &[&Path]) -> Json {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let own = here.join(".tools/reference/bin/python");
    let python = std::env::var_os("COLDSUMP_PYTHON").map(PathBuf::from);
    let python = python.unwrap_or(if own.exists() { own } else { "python3".into() });
    let out = Command::new(python)
        .arg(here.join("tests/visit/outside.py"))
        .args(args)
        .output()
        .expect("install Python 3.11 or newer");
    let said = String::from_utf8_lossy(&out.stderr);
    assert!(
        out.status.success(),
        "{said}\nFor jsonschema: ./dev test native installs what tests/reference names"
    );
    serde_json::from_slice(&out.stdout).expect("JSON")
}

#[test]
fn the_mail_opens_with_its_pdf() {
    let story = Story::whole();
    let pdf: Vec<u8> = (0..100_003u32)
        .map(|n| (n.wrapping_mul(n) >> 7) as u8)
        .collect();
    let doc = compose(
        &story.site,
        &story.visit(),
        System::Us,
        Words::default(),
        "",
    );
    let text = short_text(&doc, 72);
    for (subject, name) in [
        (
            "Service report: Halden Street Bakery",
            "Halden-Street-Bakery.pdf",
        ),
        (
            "Informe: Panadería Ñandú, 3.ª planta, torre de enfriamiento y depósito de agua",
            "Panadería \"Ñandú\".pdf",
        ),
        (
            "=?not an encoded word?= \r\nBcc: x@example.com",
            "a\"b\\c.pdf",
        ),
    ] {
        let enclosed = Enclosed {
            name,
            media_type: "application/pdf",
            bytes: &pdf,
        };
        let now = Fixed::at(START_MS).now.get();
        let eml = to_eml(subject, &text, &[enclosed], &now);
        let kept = Kept::new(&eml);
        let read = python(&[Path::new("mail"), &kept.0]);
        assert_eq!(read["defects"], json!([]), "{read}");
        let plain: String = subject.chars().filter(|c| !c.is_control()).collect();
        assert_eq!(read["subject"], plain);
        assert_eq!(read["date"], "2026-11-24T08:12:00-05:00");
        assert_eq!(read["text"], text);
        assert_eq!(
            read["files"],
            json!([{ "name": name, "type": "application/pdf", "sha256": sha256(&pdf) }])
        );
        let lines = eml.split(|b| *b == b'\n');
        assert!(
            lines.clone().all(|l| l.len() <= 78),
            "RFC 5322, 2.1.1: lines of at most 78"
        );
    }
}

#[test]
fn a_mail_link_stays_short_and_ends_with_a_whole_line() {
    let text = "Basin dry, probe filmed over.\nFill passed.\nÑandú\n";
    assert_eq!(cut(text, 1_000), text);
    assert_eq!(cut(text, 45), "Basin dry, probe filmed over.\n");
    assert_eq!(cut("no line end at all", 5), "");
}

#[test]
fn the_table_holds_every_reading_and_mark() {
    let mut story = Story::whole();
    story.site.name = "Halden, \"the\" bakery".into();
    let visit = story.visit();
    let table = to_csv(&story.site, &visit, System::Us, Words::default());
    let kept = Kept::new(table.as_bytes());
    let rows = python(&[Path::new("csv"), &kept.0]);
    let rows = rows.as_array().expect("rows");
    let marks: usize = visit.tests.iter().map(|t| t.marks.len()).sum();
    assert_eq!(rows.len(), visit.readings.len() + marks);
    assert!(rows.iter().all(|r| r["site"] == "Halden, \"the\" bakery"));
    let level = rows
        .iter()
        .find(|r| r["when"] == "as-found" && r["unit"] == "in")
        .expect("the basin");
    assert_eq!(
        (&level["value"], &level["typed"]),
        (&json!("11.5"), &json!("11.5"))
    );
    // 11.5 in is 0.2921 m, by the definition of the inch.
    let si: f64 = level["si"].as_str().unwrap().parse().unwrap();
    assert!((si - 0.2921).abs() < 1e-12, "{si}");
    let call = rows.iter().filter(|r| r["when"] == "refill-test-1");
    assert_eq!(call.filter(|r| r["value"] != "").count(), 15);
}

#[test]
fn a_level_marked_by_typing_stands_in_the_table_as_typed() {
    let mut story = Story::opened();
    story.begin_test();
    let below_overflow = Length::new::<inch>(3.25);
    story.say(Body::Marked {
        test: story.test,
        mark: MarkKind::Level { below_overflow },
        typed: Some("3 1/4\"".into()),
    });
    let visit = story.visit();
    let table = to_csv(&story.site, &visit, System::Us, Words::default());
    let kept = Kept::new(table.as_bytes());
    let rows = python(&[Path::new("csv"), &kept.0]);
    let row = (&rows[0]["value"], &rows[0]["typed"]);
    assert_eq!(row, (&json!("3.25"), &json!("3 1/4\"")), "{rows}");
}

fn whole_backup() -> Backup {
    let story = Story::whole();
    let entries = story.entries.clone();
    let file = |id, bytes: &[u8]| KeptFile {
        id,
        name: "photo.jpg".into(),
        media_type: "image/jpeg".into(),
        bytes: bytes.to_vec(),
    };
    let spoken_of = files(entries.iter());
    assert_eq!(spoken_of.len(), 2, "the photo and the report");
    Backup {
        coldsump_backup: FORM,
        made: "2026-11-24 09:30".into(),
        files: spoken_of
            .iter()
            .map(|(id, _)| FileCopy::from(&file(*id, b"\xff\xd8 invented")))
            .collect(),
        entries,
    }
}

#[test]
fn the_backup_keeps_to_its_schema_and_comes_back_to_the_last_bit() {
    let backup = whole_backup();
    let schema = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs/backup.schema.json");
    let faults = |document: &Json| {
        let kept = Kept::new(document.to_string().as_bytes());
        let said = python(&[Path::new("backup"), &schema, &kept.0]);
        said.as_array().expect("a list").len()
    };
    let document = serde_json::to_value(&backup).expect("JSON");
    assert_eq!(faults(&document), 0);
    let again: Backup = serde_json::from_str(&document.to_string()).expect("it reads");
    assert_eq!(again, backup);
    let fixture: Json =
        serde_json::from_str(include_str!("../fixtures/entries-v1.json")).expect("JSON");
    let mut old = document.clone();
    old["entries"] = fixture;
    assert_eq!(faults(&old), 0, "entries of version 1 are in it too");
    // The schema can fail: each of these breaks it in one place.
    for (place, wrong) in [
        ("/coldsump-backup", json!(2)),
        ("/entries/0/id", json!("one")),
        ("/entries/1/about", json!({ "visit": 3 })),
        ("/entries/2/body", json!("visit-painted")),
        ("/entries/2/body", json!({ "visit-painted": {} })),
        ("/entries/2/at/ms", json!("soon")),
        ("/files/0/sha256", json!("00")),
    ] {
        let mut broken = document.clone();
        *broken.pointer_mut(place).expect(place) = wrong;
        assert_eq!(faults(&broken), 1, "{place}");
    }
}
