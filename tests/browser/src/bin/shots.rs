//! `./dev shots [STOP [FACE]]`: a picture of every screen and state in every light and
//! size, in English, and some in Spanish, in `shots/walk/`. With names, only
//! stops and faces whose name contains them. `./dev shots readme`: the README's
//! pictures, in `docs/pictures/`.

use std::fs;

use serde_json::json;

use coldsump_browser::faces::{FACES, Face, put_on};
use coldsump_browser::walk::{walk, walker};
use coldsump_browser::{Build, Phone, Server, project};

/// The README's pictures: name, stop, face, and what stands at the top.
const README: [(&str, &str, usize, &str); 5] = [
    ("found", "found-refused", 0, "#f-dry-bulb"),
    ("working", "working-head", 0, "figure, svg.fig"),
    ("trace", "trace-answered", 1, "body"),
    ("refill", "refill-running", 0, "body"),
    ("outbox", "overview-signal-back", 0, "body"),
];

async fn readme() {
    let folder = project().join("docs/pictures");
    let build = Build::copy();
    let mut server = Server::over(build.path());
    let phone = walker(false).await;
    walk(&phone, &mut server, async |phone: &Phone, stop: &str| {
        let Some((name, _, face, top)) = README.iter().find(|p| p.1 == stop) else {
            return;
        };
        put_on(phone, &FACES[*face], false).await;
        let small = json!({ "width": 390, "height": 844, "deviceScaleFactor": 1, "mobile": true });
        phone
            .devtools("Emulation.setDeviceMetricsOverride", small)
            .await;
        let scroll = format!(
            "const at = document.querySelector('{top}').getBoundingClientRect().top;
             scrollTo(0, scrollY + at - 96);"
        );
        phone.js(&scroll).await;
        let path = folder.join(format!("{name}.png"));
        phone.driver().screenshot(&path).await.expect("a picture");
        phone.js("scrollTo(0, 0)").await;
        back_to(phone, &FACES[0]).await;
    })
    .await;
    println!("{} pictures in {}", README.len(), folder.display());
}

#[tokio::main(flavor = "current_thread")]
async fn main() {
    let part = std::env::args().nth(1).unwrap_or_default();
    if part == "readme" {
        return readme().await;
    }
    let only = std::env::args().nth(2).unwrap_or_default();
    let folder = project().join("shots/walk");
    fs::create_dir_all(&folder).expect("the shots folder");
    let build = Build::copy();
    for (tongue, faces) in [
        ("en", &FACES[..]),
        ("es", &[FACES[0], FACES[3], FACES[7]][..]),
    ] {
        let mut server = Server::over(build.path());
        let phone = walker(tongue == "es").await;
        let mut taken = 0;
        walk(&phone, &mut server, async |phone: &Phone, stop: &str| {
            if !stop.contains(&part) {
                return;
            }
            for face in faces.iter().filter(|f| f.name.contains(&only)) {
                put_on(phone, face, true).await;
                let name = format!("{stop}.{tongue}-{}.png", face.name);
                let path = folder.join(name);
                phone.driver().screenshot(&path).await.expect("a picture");
                taken += 1;
            }
            back_to(phone, &FACES[0]).await;
        })
        .await;
        println!("{tongue}: {taken} pictures in {}", folder.display());
    }
}

async fn back_to(phone: &Phone, face: &Face) {
    put_on(phone, face, false).await;
}
