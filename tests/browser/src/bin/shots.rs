//! `./dev shots [STOP [FACE]]`: a picture of every screen and state in every light and
//! size, in English, and some in Spanish, in `shots/walk/`. With names, only
//! stops and faces whose name contains them.

use std::fs;

use coldsump_browser::faces::{FACES, Face, put_on};
use coldsump_browser::walk::{walk, walker};
use coldsump_browser::{Build, Phone, Server, project};

#[tokio::main(flavor = "current_thread")]
async fn main() {
    let part = std::env::args().nth(1).unwrap_or_default();
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
