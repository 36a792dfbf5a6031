//! `./dev kills [CHROMIUM [FIREFOX [WEBKIT]]]`: kill -9 at random moments while marks
//! are tapped, and what was on disk afterwards. Fails when a mark that the
//! screen had confirmed is gone, out of order or there twice.

use coldsump_browser::{Build, Engine, Server, kills};

#[tokio::main(flavor = "current_thread")]
async fn main() {
    let mut wanted = std::env::args().skip(1);
    let mut count = |usual| {
        wanted
            .next()
            .map_or(usual, |n| n.parse().expect("a number"))
    };
    // A copy, so that a build meanwhile changes nothing.
    let build = Build::copy();
    let server = Server::over(build.path());
    let mut sound = true;
    let counts = [count(100), count(30), count(30)];
    for (engine, times) in Engine::ALL.into_iter().zip(counts) {
        if times == 0 {
            continue;
        }
        let tally = kills(engine, times, &server).await;
        println!("{engine:?}: {tally}");
        sound &= tally.is_sound();
    }
    if !sound {
        std::process::exit(1);
    }
}
