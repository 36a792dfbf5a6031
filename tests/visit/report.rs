//! The report of a visit: what it says, in text and on paper.

use std::process::Command;

use coldsump::quantity::System;
use coldsump::record::{Body, MachineState, When};
use coldsump::report::doc::PageSize;
use coldsump::report::{DocDate, Fonts, compose, to_pdf, to_text};
use coldsump::words::{ReportPhrase, Tongue, Words};

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
    on_paper(story, System::Us, page, Words::default())
}

/// A photo as a phone keeps it: 64 by 48, baseline JPEG.
const PHOTO: &[u8] = include_bytes!("../fixtures/photo.jpg");

fn on_paper(story: &Story, system: System, page: PageSize, words: Words) -> Vec<u8> {
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
        "Film across the holder",
        "Water treatment has been told of the drawdown",
        "Not so",
        "Foam on the basin since the new biocide, says the baker.",
        "ANSI/ASHRAE Standard 188",
        "NFPA 70E",
        "The fill stopped by itself",
    ] {
        let want = if want.starts_with("Film across") {
            "film across the holder again"
        } else {
            want
        };
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
            let made = on_paper(&story, system, page, Words::default());
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
    let bytes = on_paper(&story, System::Us, PageSize::Letter, words);
    assert!(bytes.windows(10).any(|w| w == b"/Lang (es)"));
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
        });
        assert!(text(&story).contains("PROVEN"));
        let paper = said("pdftotext", "nasty", &pdf(&story, PageSize::A4));
        assert!(paper.contains("Cautions"));
    }
}
