//! A few kills of `./dev kills`, which does a hundred.

use coldsump_browser::{Engine, Server, kills};

#[tokio::test]
async fn marks_that_the_screen_confirmed_outlive_kill_9() {
    let server = Server::start();
    let tally = kills(Engine::Chromium, 3, &server).await;
    println!("{tally}");
    assert!(tally.is_sound() && tally.confirmed >= 3, "{tally}");
}
