//! `./dev first`: writes to `tools/first.txt` what home runs by itself, in whatever state
//! the records are. The build keeps that in the program's first part.

use std::collections::BTreeSet;
use std::process::Command;

use coldsump_browser::home::{ASK_RAN, in_every_state, ran};
use coldsump_browser::{Build, Phone, project};

#[tokio::main(flavor = "current_thread")]
async fn main() {
    let watched = std::env::args().nth(1).expect("the watched program");
    let build = Build::over(ASK_RAN);
    let made = Command::new("node")
        .arg(project().join("tools/watched.mjs"))
        .arg(build.path())
        .arg(watched)
        .status();
    assert!(made.expect("node runs").success());
    build.list_files();

    let mut names = BTreeSet::new();
    in_every_state(&build, async |phone: &Phone, state: &str| {
        let before = names.len();
        names.extend(ran(phone).await);
        println!("{state}: {} more", names.len() - before);
    })
    .await;
    let list: Vec<String> = names.into_iter().collect();
    let path = project().join("tools/first.txt");
    std::fs::write(path, list.join("\n") + "\n").expect("the list is written");
    println!("tools/first.txt: {} names", list.len());
}
