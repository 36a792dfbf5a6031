//! `./dev first`: writes to `tools/first.txt` what home runs by itself, in whatever state
//! the records are, and beside it what home says. The build keeps both in the program's
//! first part.

use std::collections::BTreeSet;
use std::fs;
use std::process::Command;

use coldsump_browser::home::{ASK_RAN, in_every_state, ran};
use coldsump_browser::{Build, Phone, project};

#[tokio::main(flavor = "current_thread")]
async fn main() {
    let mut words = std::env::args().skip(1);
    let watched = words.next().expect("the watched program");
    let said = words.next().expect("where to write what is said");
    let build = Build::over(ASK_RAN);
    let made = Command::new("node")
        .arg(project().join("tools/watched.mjs"))
        .arg(build.path())
        .arg(watched)
        .status();
    assert!(made.expect("node runs").success());
    build.list_files();

    let (mut names, mut texts) = (BTreeSet::new(), BTreeSet::new());
    in_every_state(&build, async |phone: &Phone, state: &str| {
        let before = names.len();
        let [ran, said] = ran(phone).await;
        names.extend(ran);
        texts.extend(said);
        println!("{state}: {} more", names.len() - before);
    })
    .await;
    let list: Vec<String> = names.into_iter().collect();
    let path = project().join("tools/first.txt");
    fs::write(path, list.join("\n") + "\n").expect("the list is written");
    fs::write(said, serde_json::json!(texts).to_string()).expect("the texts are written");
    println!("tools/first.txt: {} names", list.len());
}
