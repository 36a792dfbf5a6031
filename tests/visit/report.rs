//! The report of a visit: what it says, in text and on paper.

use std::process::Command;

use coldsump::quantity::System;
use coldsump::record::bytes::from_base64;
use coldsump::record::paperwork::Item;
use coldsump::record::{Body, FileId, MachineState, Summary, When};
use coldsump::report::doc::PageSize;
use coldsump::report::{DocDate, Fonts, compose, to_pdf, to_text};
use coldsump::words::{ReportPhrase, Tongue, Words};

use serde_json::Value as Json;

use crate::story::Story;

fn text(story: &Story) -> String {
    let doc = compose(
        &story.site,
        &story.visit(),
        System::Us,
        Words::default(),
        "",
    );
    let text = to_text(&doc, 78);
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn pdf(story: &Story, page: PageSize) -> Vec<u8> {
    on_paper(story, System::Us, page)
}

/// A photo as a phone keeps it: 64 by 48, baseline JPEG.
const PHOTO: &[u8] = include_bytes!("../fixtures/photo.jpg");

fn on_paper(story: &Story, system: System, page: PageSize) -> Vec<u8> {
    paper_in(story, system, page, Words::default())
}

fn paper_in(story: &Story, system: System, page: PageSize, words: Words) -> Vec<u8> {
    let mut doc = compose(&story.site, &story.visit(), system, words, "");
    doc.page = page;
    doc.pictures_mut().for_each(|p| p.jpeg = PHOTO.to_vec());
    let fonts = Fonts {
        regular: include_bytes!("../../public/fonts/report-regular.ttf"),
    };
    let date = DocDate {
        year: 2026,
        month: 11,
        day: 24,
        hour: 9,
        minute: 30,
        second: 0,
        offset_minutes: -300,
    };
    to_pdf(&doc, fonts, date).expect("the report can be written")
}

/// What a tool of poppler-utils says of a PDF.
fn said(tool: &str, name: &str, pdf: &[u8]) -> String {
    let path =
        std::env::temp_dir().join(format!("coldsump-visit-{}-{name}.pdf", std::process::id()));
    std::fs::write(&path, pdf).expect("write a temporary file");
    let mut command = Command::new(tool);
    command.arg(&path);
    if tool == "pdftotext" {
        command.arg("-");
    }
    let out = command.output().expect("install poppler-utils");
    std::fs::remove_file(&path).expect("remove the temporary file");
    assert!(out.status.success() && out.stderr.is_empty(), "{out:?}");
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The words of each page.
fn pages(pdf: &[u8]) -> Vec<String> {
    let path = std::env::temp_dir().join(format!("coldsump-pages-{}.pdf", std::process::id()));
    std::fs::write(&path, pdf).expect("write a temporary file");
    let out = Command::new("pdftotext").arg(&path).arg("-").output();
    let out = out.expect("install poppler-utils");
    std::fs::remove_file(&path).expect("remove the temporary file");
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    let pages = text.trim_end_matches('\u{c}').split('\u{c}');
    pages
        .map(|p| p.split_whitespace().collect::<Vec<_>>().join(" "))
        .collect()
}

/// Keeps a report for a person to look at, when asked to.
fn look(name: &str, pdf: &[u8]) {
    if let Ok(folder) = std::env::var("COLDSUMP_LOOK") {
        std::fs::write(format!("{folder}/{name}.pdf"), pdf).expect("write it");
    }
}

#[test]
fn a_whole_visit_reads_back_from_text_and_paper() {
    let story = Story::whole();
    let paper = said("pdftotext", "whole", &pdf(&story, PageSize::Letter));
    for want in [
        "Halden Street Bakery",
        "PROVEN",
        "Level sensor says full when it isn't",
        "Three blast chillers out, product warming",
        "16.9",
        "gpm",
        "film across the holder again",
        "Water treatment has been told of the drawdown",
        "Not so",
        "Foam on the basin since the new biocide, says the baker.",
        "ANSI/ASHRAE Standard 188",
        "NFPA 70E",
        "The fill stopped by itself",
    ] {
        assert!(paper.contains(want), "{want:?} not in\n{paper}");
        assert!(text(&story).contains(want), "{want:?} not in the text");
    }
    assert!(
        !paper.contains("NOT PROVEN") && !paper.contains("Wrong site"),
        "{paper}"
    );
    for (page, size) in [(PageSize::Letter, "letter"), (PageSize::A4, "a4")] {
        for (system, units) in [(System::Us, "us"), (System::Si, "si")] {
            let name = format!("{size}-{units}");
            let made = on_paper(&story, system, page);
            look(&name, &made);
            let info = said("pdfinfo", &name, &made);
            assert!(info.contains("Pages: 4"), "{info}");
        }
    }
}

/// Spanish from the first word to the last: nothing of the English report's
/// sentences is left in it, and the paper says its language.
#[test]
fn a_whole_visit_reads_back_in_spanish() {
    let story = Story::whole();
    let words = Words(Tongue::Spanish);
    let bytes = paper_in(&story, System::Us, PageSize::Letter, words);
    let all = objects(&bytes, "spanish");
    let mut all = all.as_object().expect("objects").values();
    assert!(all.any(|o| o["value"]["/Lang"] == "u:es"), "no language");
    let paper = said("pdftotext", "spanish", &bytes);
    let doc = compose(&story.site, &story.visit(), System::Us, words, "");
    let text = to_text(&doc, 78);
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for want in [
        "Informe de servicio",
        "COMPROBADO",
        "Sensor dice lleno sin estarlo",
        "Al llegar",
        "Bulbo húmedo",
        "El llenado paró solo",
        "Se avisó del vaciado a tratamiento de agua",
        "No está así",
        "ausencia de voltaje comprobada",
        "página 1 de",
        "16.9",
    ] {
        let footer = want.starts_with("página");
        assert!(paper.contains(want), "{want:?} not in\n{paper}");
        assert!(footer || text.contains(want), "{want:?} not in\n{text}");
    }
    for phrase in ReportPhrase::ALL {
        let english = Words::default().report_phrase(*phrase);
        let left = english.len() > 6 && text.contains(english);
        assert!(!left, "{english:?} in\n{text}");
    }
    let info = said("pdfinfo", "spanish", &bytes);
    assert!(
        ["2", "3", "4"]
            .iter()
            .any(|n| info.contains(&format!("Pages: {n}"))),
        "{info}"
    );
}

/// The objects of a PDF as qpdf reads them.
fn objects(pdf: &[u8], name: &str) -> Json {
    let path = std::env::temp_dir().join(format!("coldsump-ua-{}-{name}.pdf", std::process::id()));
    std::fs::write(&path, pdf).expect("write a temporary file");
    let checked = Command::new("qpdf").arg("--check").arg(&path).output();
    let checked = checked.expect("install qpdf");
    let said = Command::new("qpdf")
        .args(["--json=2", "--json-key=qpdf", "--json-stream-data=inline"])
        .arg(&path)
        .output()
        .expect("install qpdf");
    std::fs::remove_file(&path).expect("remove the temporary file");
    assert!(
        checked.status.success() && checked.stderr.is_empty(),
        "{checked:?}"
    );
    let said: Json = serde_json::from_slice(&said.stdout).expect("JSON");
    said["qpdf"][1].clone()
}

/// A value, or the value of the object that it names.
fn value_of<'a>(all: &'a serde_json::Map<String, Json>, name: &'a Json) -> &'a Json {
    match name.as_str() {
        Some(name) if name.ends_with(" R") => &all[&format!("obj:{name}")]["value"],
        _ => name,
    }
}

/// What a reader for PDF/UA-1 asks of the file (ISO 14289-1, clauses 5 to 7,
/// as far as a program can see it): no checker that runs all of the Matterhorn
/// Protocol is in a registry we can reach.
#[test]
fn the_structure_is_what_a_screen_reader_needs() {
    let made = on_paper(&Story::whole(), System::Us, PageSize::Letter);
    let all = objects(&made, "ua");
    let all = all.as_object().expect("objects");
    let value = |name| value_of(all, name);
    let kind = |what: &'static str| move |o: &&Json| o["value"]["/Type"] == what;
    let catalog = &all.values().find(kind("/Catalog")).expect("a catalog")["value"];
    assert_eq!(catalog["/Lang"], "u:en");
    assert_eq!(catalog["/MarkInfo"]["/Marked"], true);
    assert_eq!(catalog["/ViewerPreferences"]["/DisplayDocTitle"], true);
    let about = catalog["/Metadata"].as_str().expect("metadata");
    let about = &all[&format!("obj:{about}")]["stream"];
    assert_eq!(about["dict"]["/Type"], "/Metadata");
    let xmp = from_base64(about["data"].as_str().expect("data")).expect("base64");
    let xmp = String::from_utf8(xmp).expect("UTF-8");
    for want in ["pdfuaid:part=\"1\"", ">Halden Street Bakery</rdf:li>"] {
        assert!(xmp.contains(want), "{want} not in {xmp}");
    }
    for page in all.values().filter(kind("/Page")) {
        assert_eq!(page["value"]["/Tabs"], "/S");
        assert!(page["value"]["/StructParents"].is_number());
    }
    // The tree in reading order.
    let mut order: Vec<(&str, &Json)> = Vec::new();
    let mut waiting = vec![&value(&catalog["/StructTreeRoot"])["/K"]];
    while let Some(node) = waiting.pop() {
        match value(node) {
            Json::Array(kids) => waiting.extend(kids.iter().rev()),
            node => {
                if let Some(role) = node["/S"].as_str() {
                    order.push((role, node));
                    waiting.push(&node["/K"]);
                }
            }
        }
    }
    let mut depth = 0;
    for (role, node) in &order {
        let says = |key: &str| {
            let attributes = value(&node["/A"]);
            let list = attributes
                .as_array()
                .map_or(vec![attributes], |a| a.iter().collect());
            list.iter().any(|a| !value(a)[key].is_null())
        };
        match *role {
            "/Figure" => {
                let alt = node["/Alt"].as_str().unwrap_or_default();
                assert!(alt.len() > 2 && says("/BBox"), "{node}");
            }
            "/TH" => assert!(says("/Scope"), "{node}"),
            "/L" => assert!(says("/ListNumbering"), "{node}"),
            "/H1" | "/H2" | "/H3" | "/H4" => {
                let now = role[2..].parse::<u32>().expect("a depth");
                assert!(now <= depth + 1, "a heading of depth {now} after {depth}");
                depth = now;
            }
            _ => {}
        }
    }
    let roles: Vec<&str> = order.iter().map(|(role, _)| *role).collect();
    assert_eq!(roles.iter().filter(|r| **r == "/H1").count(), 1);
    // The basin beside the title, the chart, the photo, the signature.
    assert_eq!(roles.iter().filter(|r| **r == "/Figure").count(), 4);
    assert!(depth == 3 && roles.contains(&"/Table"));
    // The photo is in the file as it was taken.
    let photo = all
        .values()
        .find(|o| o["stream"]["dict"]["/Subtype"] == "/Image");
    let photo = &photo.expect("the photo")["stream"];
    assert_eq!(photo["dict"]["/Filter"], "/DCTDecode");
    let bytes = from_base64(photo["data"].as_str().expect("data"));
    assert_eq!(bytes.as_deref(), Some(PHOTO));
}

#[test]
fn the_customer_reads_one_page_and_the_rest_is_evidence() {
    let story = Story::whole();
    for (page, system) in [
        (PageSize::Letter, System::Us),
        (PageSize::A4, System::Us),
        (PageSize::Letter, System::Si),
        (PageSize::A4, System::Si),
    ] {
        let made = on_paper(&story, system, page);
        let pages = pages(&made);
        let first = &pages[0];
        for want in [
            "6 of 6",
            "What was wrong.",
            "How we know.",
            "What was done.",
            "Parts used. 2 × Electrode rods",
            "What we advise",
            "Now: Open on leaving, not so: Water treatment",
            "We come back 2026-12-01: to run",
            "What it costs to ignore",
            "If the makeup stops again",
            "$250 a day",
            "R. Tamm · Northfield Refrigeration",
        ] {
            assert!(first.contains(want), "{want:?} not in\n{first}");
        }
        assert!(pages[1].starts_with("Evidence"), "{}", pages[1]);
        let rest = pages[1..].join(" ");
        for want in ["Out, high head ·", "Running ·", "Approach", "Ida Halden"] {
            assert!(rest.contains(want), "{want:?} not in\n{rest}");
        }
        let unit = match system {
            System::Us => ["11 1/2 in", "°F", "gpm"],
            System::Si => ["292 mm", "°C", "L/s"],
        };
        assert!(unit.iter().all(|u| rest.contains(u)), "{unit:?}");
        // No table is cut: each head stands once.
        for head in ["Machine As found", "Reading As found", "Check Answer"] {
            assert_eq!(rest.matches(head).count(), 1, "{head}");
        }
    }
}

#[test]
fn advice_comes_by_urgency_and_money_only_with_a_price() {
    let mut story = Story::opened();
    story.as_found();
    story.passing_test();
    story.line(Item::AdvisePlan, "third", None, "");
    story.line(Item::AdviseSoon, "second", None, "2026-12-08");
    story.line(Item::AdviseNow, "first", None, "");
    let said = text(&story);
    let places: Vec<_> = ["first", "second", "third"]
        .iter()
        .map(|w| said.find(w).expect(w))
        .collect();
    assert!(places.is_sorted(), "{said}");
    assert!(said.contains("Soon, by 2026-12-08:"), "{said}");
    // 16.9 gpm less 2.4 is 14.5 gpm: 20,900 gal a day, to two digits 21,000.
    assert!(said.contains("21,000 gal a day."), "{said}");
    assert!(!said.contains("price of water"), "{said}");
}

#[test]
fn a_correction_is_a_new_issue_that_names_the_one_before() {
    let mut story = Story::opened();
    assert!(text(&story).contains("Issue 1"));
    story.send_report();
    let visit = story.visit();
    let doc = compose(
        &story.site,
        &visit,
        System::Us,
        Words::default(),
        "the fill flow",
    );
    let said = to_text(&doc, 300);
    assert!(
        said.contains(
            "2, takes the place of issue 1 of 2026-11-24 08:13. Corrected: the fill flow"
        ),
        "{said}"
    );
    // The outbox holds the newest issue that nobody has, and those handed over.
    let made = |story: &mut Story, file| {
        story.say(Body::ReportMade {
            file,
            name: "again.pdf".into(),
            bytes: 1,
            sha256: String::new(),
            corrects: "x".into(),
        });
    };
    let (a, b) = (
        story.photo,
        FileId::parse("019ab000-0000-7000-8000-0000000000c1"),
    );
    made(&mut story, a);
    made(&mut story, b.expect("a UUID"));
    let waiting = Summary::of(story.log().held()).outbox();
    assert_eq!(waiting.len(), 1, "{waiting:?}");
    assert_eq!(waiting[0].issue, 3);
}

#[test]
fn machines_that_do_not_run_as_left_are_named() {
    let mut story = Story::opened();
    for n in 0..6 {
        story.see(When::AsLeft, n, MachineState::Running);
    }
    assert!(!text(&story).contains("Machines as left"));
    story.see(When::AsLeft, 1, MachineState::Stopped);
    story.see(When::AsLeft, 4, MachineState::HighHead);
    let said = text(&story);
    let wanted = "Machines as left: Out, high head: Blast chiller 2; Off: Retarder 2";
    assert!(said.contains(wanted), "{said}");
}

#[test]
fn machines_looked_at_and_none_out_are_counted_and_not_called_unanswered() {
    let mut story = Story::opened();
    assert!(text(&story).contains("Out on arrival Not answered"));
    for n in 0..6 {
        story.see(When::AsFound, n, MachineState::Running);
    }
    let said = text(&story);
    assert!(said.contains("Out on arrival 0 of 6"), "{said}");
    story.see(When::AsFound, 3, MachineState::HighHead);
    let said = text(&story);
    assert!(said.contains("Out on arrival Blast chiller 1"), "{said}");
}

#[test]
fn without_a_refill_test_nothing_is_proven() {
    let mut story = Story::opened();
    story.name_cause();
    let said = text(&story);
    assert!(
        said.contains("NOT PROVEN YET") && said.contains("Not run on this visit."),
        "{said}"
    );
    assert!(!said.contains("drawn down and refilled"), "{said}");
}

#[test]
fn a_failed_refill_test_says_act_now_with_or_without_a_cause() {
    let mut story = Story::opened();
    story.failing_test();
    let said = text(&story);
    assert!(
        said.contains("ACT NOW") && said.contains("No cause has been named yet."),
        "{said}"
    );
    story.name_cause();
    assert!(text(&story).contains("ACT NOW"));
}

#[test]
fn hostile_text_breaks_nothing() {
    for nasty in [
        "<script>alert(1)</script> & \\(BT ET) %PDF".to_owned(),
        "مخبز \u{202e}txet desrever\u{202c} 🥐🔥".to_owned(),
        "x".repeat(10_000),
        "\0\u{7f}\n\n\t\r".to_owned(),
    ] {
        let mut story = Story::whole();
        story.site.name = nasty.clone();
        story.site.place = nasty.clone();
        story.site.machines[3].name = nasty.clone();
        story.note(&nasty);
        story.say(Body::CauseNamed {
            mode: coldsump::trace::Mode::MainsLow,
            manner: coldsump::trace::Manner::Steady,
            proof: nasty.clone(),
            work: nasty,
            also: vec![coldsump::trace::Mode::BeltOff],
        });
        assert!(text(&story).contains("PROVEN"));
        let paper = said("pdftotext", "nasty", &pdf(&story, PageSize::A4));
        assert!(paper.contains("Cautions"));
    }
}
