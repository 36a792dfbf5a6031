//! The three browser engines: how each is started on a profile that outlives
//! it, and what is asked of it.

use std::env;
use std::io::{BufRead, BufReader, Read};
use std::net::TcpListener;
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};

use serde_json::{Value, json};
use thirtyfour::Capabilities;

use crate::build::project;
use crate::phone::Light;

/// Which browser the phone holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    /// Chromium through chromedriver.
    Chromium,
    /// Firefox through geckodriver.
    Firefox,
    /// WebKitGTK through WebKitWebDriver, in a window of our own that keeps
    /// its data (`webkit_phone.py`), on a screen that is only in memory.
    WebKit,
}

impl Engine {
    /// All of them.
    pub const ALL: [Engine; 3] = [Engine::Chromium, Engine::Firefox, Engine::WebKit];

    /// What a session is asked for.
    pub(crate) fn wants(self, profile: &Path, downloads: &Path, light: Light) -> Capabilities {
        let (name, options) = match self {
            Engine::Chromium => ("goog:chromeOptions", chromium(profile)),
            Engine::Firefox => ("moz:firefoxOptions", firefox(profile, downloads, light)),
            Engine::WebKit => {
                let program = project().join("tests/browser/webkit_phone.py");
                let args = [profile, downloads, Path::new(light.word())];
                (
                    "webkitgtk:browserOptions",
                    json!({ "binary": program, "args": args }),
                )
            }
        };
        let mut wants = Capabilities::new();
        wants.set(name, options).expect("options are JSON");
        if self == Engine::Chromium {
            let logs = json!({ "browser": "ALL", "performance": "ALL" });
            wants.set("goog:loggingPrefs", logs).expect("JSON");
        }
        wants
    }
}

fn chromium(profile: &Path) -> Value {
    let flags = [
        "--headless=new",
        // Containers and root have no sandbox; the pages are our own.
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
        "--no-default-browser-check",
        "--hide-scrollbars",
        "--lang=en-US",
    ];
    let mut flags: Vec<String> = flags.map(str::to_owned).to_vec();
    flags.push(format!("--user-data-dir={}", profile.display()));
    let screen = json!({ "width": 390, "height": 844, "pixelRatio": 2.0, "touch": true });
    json!({ "args": flags, "mobileEmulation": { "deviceMetrics": screen } })
}

fn firefox(profile: &Path, downloads: &Path, light: Light) -> Value {
    json!({
        "args": ["-headless", "-profile", profile, "--width", "780", "--height", "1800"],
        "prefs": {
            "layout.css.devPixelsPerPx": "2.0",
            "layout.css.prefers-color-scheme.content-override": i32::from(light == Light::Day),
            "dom.disable_open_during_load": false,
            "intl.accept_languages": "en-US",
            "browser.download.folderList": 2,
            "browser.download.dir": downloads,
            "browser.download.useDownloadDir": true,
            "browser.helperApps.neverAsk.saveToDisk": "application/pdf,application/json,text/plain",
            "pdfjs.disabled": true,
            "browser.safebrowsing.downloads.enabled": false,
            "datareporting.policy.dataSubmissionEnabled": false,
            "network.captive-portal-service.enabled": false,
            "network.connectivity-service.enabled": false,
            "app.update.disabledForTesting": true,
        },
    })
}

/// A running WebDriver program; it ends with the value.
#[derive(Debug)]
pub(crate) struct Driver {
    child: Child,
    port: u16,
    // Held open: a program whose words nobody reads ends.
    _says: Option<BufReader<ChildStdout>>,
    screen: Option<Child>,
}

impl Driver {
    /// Starts the engine's driver on a free port.
    ///
    /// # Panics
    /// When it does not start.
    pub fn start(engine: Engine) -> Self {
        match engine {
            Engine::Chromium => Self::that_says(
                Command::new("chromedriver").arg("--port=0"),
                "started successfully on port ",
            ),
            Engine::Firefox => Self::that_says(
                Command::new("geckodriver").args(["--port=0", "--websocket-port=0"]),
                "Listening on 127.0.0.1:",
            ),
            Engine::WebKit => Self::webkit(),
        }
    }

    /// A driver that says its port on a line of its own. One that finds the port it was
    /// given taken meanwhile ends without a word of it, and is started again.
    fn that_says(command: &mut Command, before_port: &str) -> Self {
        command.stderr(Stdio::null());
        for _ in 0..3 {
            let (mut child, mut says) = started(command);
            let port = says
                .by_ref()
                .lines()
                .map_while(Result::ok)
                .find_map(|line| {
                    let (_, port) = line.split_once(before_port)?;
                    port.trim().trim_end_matches('.').parse().ok()
                });
            if let Some(port) = port {
                return Self {
                    child,
                    port,
                    _says: Some(says),
                    screen: None,
                };
            }
            // It has ended: its words have.
            let _ = child.wait();
        }
        panic!("the driver names its port");
    }

    fn webkit() -> Self {
        // The server chooses a free number and writes it as its one line.
        let mut xvfb = Command::new("Xvfb");
        let (screen, mut says) = started(
            xvfb.args(["-displayfd", "1", "-screen", "0", "1024x1024x24"])
                .args(["-nolisten", "tcp"])
                .stderr(Stdio::null()),
        );
        let mut display = String::new();
        says.read_line(&mut display).expect("the screen's number");
        // It names no port of its own choice: one that is free now.
        let free = TcpListener::bind("127.0.0.1:0").expect("a free port");
        let port = free.local_addr().expect("its number").port();
        drop(free);
        let child = Command::new("WebKitWebDriver")
            .arg(format!("--port={port}"))
            .env("DISPLAY", format!(":{}", display.trim()))
            .env("GDK_BACKEND", "x11")
            .env("NO_AT_BRIDGE", "1")
            .env("LANGUAGE", "en_US")
            // Containers and root have no sandbox; the pages are our own.
            .env("WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS", "1")
            // The window's Python must be the system's, which has its bindings.
            .env(
                "PATH",
                format!("/usr/bin:/bin:{}", env::var("PATH").unwrap_or_default()),
            )
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("WebKitWebDriver runs");
        Self {
            child,
            port,
            _says: Some(says),
            screen: Some(screen),
        }
    }

    /// Where it listens.
    pub fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // These fail only when they have ended already.
        let _ = self.child.kill();
        let _ = self.child.wait();
        if let Some(mut screen) = self.screen.take() {
            let _ = screen.kill();
            let _ = screen.wait();
        }
    }
}

fn started(command: &mut Command) -> (Child, BufReader<ChildStdout>) {
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap_or_else(|error| panic!("{:?}: {error}", command.get_program()));
    let says = BufReader::new(child.stdout.take().expect("stdout is piped"));
    (child, says)
}
