//! The program opens, keeps itself, and opens again without signal.

use coldsump_browser::{Build, Engine, Light, Phone, Problem, Server};

#[tokio::test]
async fn opens_without_signal_and_after_being_killed() {
    let mut server = Server::start();
    let mut phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    phone.kept_offline().await;
    assert_eq!(
        phone
            .js("return [innerWidth, devicePixelRatio]")
            .await
            .to_string(),
        "[390,2]"
    );
    assert_eq!(phone.problems(&server.origin()).await, []);

    server.stop();
    phone.reload().await;
    phone.mounted().await;
    assert_eq!(but_signal(&phone, &server).await, []);

    phone.kill().await;
    phone.reopen().await;
    phone.start(&server).await;
    phone.shot("boot").await;
    assert_eq!(but_signal(&phone, &server).await, []);
}

/// What went wrong, but for the question for signal that no server answers.
async fn but_signal(phone: &Phone, server: &Server) -> Vec<Problem> {
    let mut problems = phone.problems(&server.origin()).await;
    problems.retain(|one| !one.is_lost_signal());
    problems
}

#[tokio::test]
async fn the_watch_on_problems_sees_them() {
    let server = Server::start();
    let phone = Phone::open(Light::Dark).await;
    phone.start(&server).await;
    phone
        .holds("matchMedia('(prefers-color-scheme: dark)').matches")
        .await;
    assert_eq!(phone.problems(&server.origin()).await, []);

    phone
        .js("const style = document.createElement('style');
             style.textContent = 'body { color: red }';
             document.head.append(style);
             console.error('on purpose');")
        .await;
    let problems = phone.problems(&server.origin()).await;
    assert!(
        problems.iter().any(|one| matches!(one, Problem::Policy(_))),
        "{problems:?}"
    );
    let console =
        |one: &Problem| matches!(one, Problem::Console(text) if text.contains("on purpose"));
    assert!(problems.iter().any(console), "{problems:?}");

    // A link is followed whatever the policy says; the network log must show it.
    let other = Server::start();
    phone.goto(&other.url()).await;
    let problems = phone.problems(&server.origin()).await;
    assert!(
        problems
            .iter()
            .any(|one| matches!(one, Problem::Elsewhere(_))),
        "{problems:?}"
    );
}

#[tokio::test]
async fn the_watch_in_the_page_sees_them_in_the_other_engines() {
    let build = Build::watched();
    let server = Server::over(build.path());
    for engine in [Engine::Firefox, Engine::WebKit] {
        let phone = Phone::open_in(engine, Light::Dark).await;
        phone.start(&server).await;
        phone
            .holds("matchMedia('(prefers-color-scheme: dark)').matches")
            .await;
        assert_eq!(phone.problems(&server.origin()).await, [], "{engine:?}");
        phone
            .js("const style = document.createElement('style');
                 style.textContent = 'body { color: red }';
                 document.head.append(style);
                 console.error('on purpose');
                 // What a driver's own script throws is no error of the page.
                 dispatchEvent(new ErrorEvent('error', { message: 'thrown' }));
                 dispatchEvent(new PromiseRejectionEvent('unhandledrejection',
                   { promise: Promise.resolve(), reason: 'rejected' }));")
            .await;
        phone
            .holds("localStorage.getItem('under-test-problems')?.includes('policy: ')")
            .await;
        let problems = format!("{:?}", phone.problems(&server.origin()).await);
        for said in ["Policy(", "on purpose", "thrown", "rejected"] {
            assert!(problems.contains(said), "{engine:?}: {said}: {problems}");
        }
    }
}

#[tokio::test]
async fn a_download_reaches_the_test() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.goto(&server.url()).await;
    phone
        .js("const link = document.createElement('a');
             link.href = URL.createObjectURL(new Blob(['water']));
             link.download = 'kept.txt';
             link.click();")
        .await;
    let (name, bytes) = phone.downloaded(".txt").await;
    assert_eq!(
        (name.as_str(), bytes.as_slice()),
        ("kept.txt", b"water".as_slice())
    );
}

#[tokio::test]
async fn a_program_that_arrives_broken_says_what_to_do() {
    let build = Build::copy();
    let wasm = build.beginning("coldsump-first-");
    let bytes = build.read(&wasm);
    build.write(&wasm, &bytes[..bytes.len() / 2]);

    let server = Server::over(build.path());
    let phone = Phone::open(Light::Day).await;
    phone.goto(&server.url()).await;
    phone
        .holds("document.getElementById('boot-say').textContent.includes('arrive complete')")
        .await;
    phone
        .holds("!document.getElementById('boot-again').hidden")
        .await;
    assert_eq!(phone.count("app").await, 0);
    phone
        .holds("navigator.serviceWorker.controller === null")
        .await;

    // The whole file has arrived: the button the page shows opens the program.
    build.write(&wasm, &bytes);
    phone
        .js("document.getElementById('boot-again').click()")
        .await;
    phone.mounted().await;
    phone.kept_offline().await;
}
