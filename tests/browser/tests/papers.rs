//! Paperwork on a phone: lines, a photo with an arrow, a signature, issues of
//! the report, the mail file; then a backup carried to a second phone and back.

use std::process::Command;

use coldsump_browser::{Light, Phone, Server, fixture, until};

/// What a program says of some files; fails when it objects.
fn said(program: &str, args: &[&str], files: &[(&str, &[u8])]) -> String {
    let folder = tempfile::tempdir().expect("a temporary folder");
    for (name, bytes) in files {
        std::fs::write(folder.path().join(name), bytes).expect("the file is written");
    }
    let out = Command::new(program)
        .args(args)
        .current_dir(folder.path())
        .output()
        .unwrap_or_else(|e| panic!("install {program}: {e}"));
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[tokio::test]
async fn paper_photo_signature_mail_and_a_backup_to_another_phone() {
    let server = Server::start();
    let mut phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    let visit = phone.demo_visit().await;

    phone.go("#/settings").await;
    phone.type_into("card-name", "R. Tamm").await;
    phone.type_into("card-price", "twelve").await;
    phone.reads("screen-settings", "A sign and a number").await;

    phone.go(&format!("{visit}/papers")).await;
    phone.type_into("work-line", "Cleaned the holder").await;
    phone.tap("keep-work-line").await;
    phone.find("work-line-kept").await;
    // A part without a name is refused beside the field; its count stays.
    phone.type_into("part-amount", "2").await;
    phone.tap("keep-part").await;
    phone.reads("screen-papers", "Type what it is").await;
    phone.type_into("part", "Electrode rods").await;
    phone.tap("keep-part").await;
    phone.reads("part-kept", "2 × Electrode rods").await;
    phone.tap("advice-AdviseNow").await;
    phone.type_into("advice", "Watch the basin").await;
    phone.tap("keep-advice").await;
    phone.find("advice-kept").await;

    phone
        .type_into("photo-caption", "Film across the holder")
        .await;
    phone.choose_file("photo-file", &fixture("photo.jpg")).await;
    phone
        .holds("document.querySelector('[data-test=photo] img')?.naturalWidth === 64")
        .await;
    phone.tap("draw-Arrow").await;
    phone.draw("photo-glass", &[(0.1, 0.9), (0.4, 0.5)]).await;
    phone
        .holds("document.querySelectorAll('.photo svg g:not(.halo) path').length === 1")
        .await;
    phone.tap("draw-Circle").await;
    phone.draw("photo-glass", &[(0.3, 0.2), (0.8, 0.7)]).await;
    phone
        .holds("document.querySelectorAll('.photo svg g:not(.halo) ellipse').length === 1")
        .await;
    phone.tap("undo-drawing").await;
    phone
        .holds("document.querySelectorAll('.photo svg ellipse').length === 0")
        .await;
    phone.shot("papers").await;

    phone.go(&format!("{visit}/report")).await;
    phone.type_into("signer", "Ida Halden").await;
    phone.tap("keep-signature").await;
    phone.reads("screen-report", "A name and a signature").await;
    phone.draw("glass", &[(0.1, 0.7), (0.6, 0.3)]).await;
    phone.tap("keep-signature").await;
    phone.reads("signed", "Ida Halden").await;
    phone.shot("signature").await;
    phone.tap("make-report").await;
    phone.find("issue").await;

    // Nothing of it is lost with the browser.
    phone.kill().await;
    phone.reopen().await;
    phone.goto(&format!("{}{visit}/report", server.url())).await;
    phone.mounted().await;
    phone.reads("signed", "Ida Halden").await;
    phone.type_into("corrects", "The name of the part").await;
    phone.tap("make-report").await;
    phone
        .holds("document.querySelectorAll('[data-test=issue]').length === 2")
        .await;

    // One issue goes out, the newest.
    phone.go("#/outbox").await;
    phone.find("outgoing").await;
    assert_eq!(phone.count("outgoing").await, 1);
    phone.tap("save-pdf").await;
    let (_, pdf) = phone.downloaded(".pdf").await;
    phone.tap("mail-file").await;
    let (_, eml) = phone.downloaded(".eml").await;
    phone.reads("outgoing", "Was it sent from there?").await;
    phone.tap("save-csv").await;
    let (_, csv) = phone.downloaded(".csv").await;
    assert!(csv.starts_with(b"site,when,date,time,what"));
    let text = said("pdftotext", &["r.pdf", "-"], &[("r.pdf", &pdf)]);
    for want in [
        "Corrected: The name of the part",
        "What was done. Cleaned the holder",
        "Parts used. 2 × Electrode rods",
        "Now: Watch the basin",
        "Film across the holder",
        "Signed by Ida Halden",
        "R. Tamm",
    ] {
        assert!(text.contains(want), "{want:?} not in\n{text}");
    }
    let images = said("pdfimages", &["-list", "r.pdf"], &[("r.pdf", &pdf)]);
    assert!(
        images.contains("64 48 rgb") && images.contains("jpeg"),
        "{images}"
    );
    let same = "import email, email.policy as p\n\
                m = email.message_from_binary_file(open('m.eml', 'rb'), policy=p.default)\n\
                [a] = m.iter_attachments()\n\
                print(a.get_content() == open('r.pdf', 'rb').read())";
    let files: [(&str, &[u8]); 2] = [("m.eml", &eml), ("r.pdf", &pdf)];
    assert_eq!(said("python3", &["-c", same], &files), "True");

    // To a second phone by backup, and back with a note written there.
    phone.go("#/settings").await;
    phone.tap("save-backup").await;
    let (_, backup) = phone.downloaded(".json").await;
    let folder = tempfile::tempdir().expect("a temporary folder");
    let carried = |name: &str, bytes: &[u8]| {
        let path = folder.path().join(name);
        std::fs::write(&path, bytes).expect("the backup is written");
        path
    };
    let second = Phone::open(Light::Dark).await;
    second.goto(&format!("{}#/settings", server.url())).await;
    second.mounted().await;
    second
        .choose_file("backup-file", &fixture("photo.jpg"))
        .await;
    second.reads("backup-said", "not a backup").await;
    second
        .choose_file("backup-file", &carried("one.json", &backup))
        .await;
    second
        .reads("backup-said", "3 files taken in; 0 were here")
        .await;
    second.shot("backup").await;
    second.go(&format!("{visit}/papers")).await;
    second
        .holds("document.querySelector('[data-test=photo] img')?.naturalWidth === 64")
        .await;
    second.type_into("work-line", "Second pair of hands").await;
    second.tap("keep-work-line").await;
    until("both lines", async || {
        (second.count("work-line-kept").await == 2).then_some(())
    })
    .await;
    second.go("#/settings").await;
    second.tap("save-backup").await;
    let (_, back) = second.downloaded(".json").await;
    phone
        .choose_file("backup-file", &carried("two.json", &back))
        .await;
    phone
        .reads("backup-said", "1 new entries and 0 files")
        .await;
    phone.go(&format!("{visit}/papers")).await;
    until("the other phone's line", async || {
        (phone.count("work-line-kept").await == 2).then_some(())
    })
    .await;

    for (phone, name) in [(&phone, "first"), (&second, "second")] {
        let problems = phone.problems(&server.origin()).await;
        assert_eq!(problems, [], "{name}");
    }
}
