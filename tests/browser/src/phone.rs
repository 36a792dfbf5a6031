//! Chromium held like a phone, with a profile that outlives a killed browser.

use std::fs;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};

use serde_json::{Value, json};
use tempfile::TempDir;
use thirtyfour::common::capabilities::chromium::ChromiumLikeCapabilities;
use thirtyfour::prelude::*;
use thirtyfour::{Capabilities, ChromeCapabilities, LoggingPrefsLogLevel};

use crate::build::project;
use crate::logs::{self, Problem};
use crate::processes;
use crate::wait::until;

/// The light the phone is used in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Light {
    /// The phone is set to its light colours.
    Day,
    /// The phone is set to its dark colours.
    Dark,
}

impl Light {
    fn word(self) -> &'static str {
        match self {
            Self::Day => "light",
            Self::Dark => "dark",
        }
    }
}

/// A phone-sized browser with its own profile and download folder.
#[derive(Debug)]
pub struct Phone {
    driver: Option<WebDriver>,
    chromedriver: Child,
    _chromedriver_says: BufReader<ChildStdout>,
    port: u16,
    profile: TempDir,
    downloads: TempDir,
    light: Light,
}

impl Phone {
    /// Opens a browser with a new profile.
    ///
    /// # Panics
    /// When chromedriver or the browser does not start.
    pub async fn open(light: Light) -> Self {
        let mut chromedriver = Command::new("chromedriver")
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .expect("chromedriver runs");
        let mut says = BufReader::new(chromedriver.stdout.take().expect("stdout is piped"));
        let port = chromedriver_port(&mut says);
        let mut phone = Self {
            driver: None,
            chromedriver,
            _chromedriver_says: says,
            port: port.expect("chromedriver names its port"),
            profile: TempDir::new().expect("a temporary folder"),
            downloads: TempDir::new().expect("a temporary folder"),
            light,
        };
        phone.reopen().await;
        phone
    }

    /// The WebDriver session, for what this type has no word for.
    ///
    /// # Panics
    /// When the browser was killed and not opened again.
    pub fn driver(&self) -> &WebDriver {
        self.driver.as_ref().expect("the browser is open")
    }

    /// `kill -9`: no page event runs, nothing is flushed.
    ///
    /// # Panics
    /// When there is no browser to kill, or it does not die.
    pub async fn kill(&mut self) {
        assert!(
            processes::kill_profile(self.profile.path()) > 0,
            "no browser to kill"
        );
        self.forget_session();
        until("the killed browser is gone", async || {
            processes::of_profile(self.profile.path())
                .is_empty()
                .then_some(())
        })
        .await;
    }

    /// Opens the browser again with the same profile.
    ///
    /// # Panics
    /// When it is open already or does not start.
    pub async fn reopen(&mut self) {
        assert!(self.driver.is_none(), "the browser is open already");
        let server = format!("http://127.0.0.1:{}", self.port);
        let driver = WebDriver::new(&server, self.capabilities())
            .await
            .expect("the browser opens");
        self.driver = Some(driver);
        let folder = self.downloads.path().display().to_string();
        let allow = json!({ "behavior": "allow", "downloadPath": folder });
        self.devtools("Browser.setDownloadBehavior", allow).await;
        self.set_light(self.light).await;
    }

    /// Switches the phone to light or dark colours.
    ///
    /// # Panics
    /// When the browser does not answer.
    pub async fn set_light(&mut self, light: Light) {
        self.light = light;
        let features = json!([{ "name": "prefers-color-scheme", "value": light.word() }]);
        self.devtools(
            "Emulation.setEmulatedMedia",
            json!({ "features": features }),
        )
        .await;
    }

    /// Sends one DevTools command.
    ///
    /// # Panics
    /// When the browser refuses it.
    pub async fn devtools(&self, method: &str, parameters: Value) -> Value {
        let answer = self.driver().cdp().send_raw(method, parameters).await;
        answer.unwrap_or_else(|error| panic!("{method}: {error}"))
    }

    /// Goes to an address.
    ///
    /// # Panics
    /// When the page does not load.
    pub async fn goto(&self, url: &str) {
        self.driver()
            .goto(url)
            .await
            .unwrap_or_else(|error| panic!("{url}: {error}"));
    }

    /// Loads the page again, through the service worker as a person's reload does.
    ///
    /// # Panics
    /// When the page does not load.
    pub async fn reload(&self) {
        self.driver().refresh().await.expect("the page reloads");
    }

    /// Waits until an element with this `data-test` is there, and answers it.
    ///
    /// # Panics
    /// When it does not come.
    pub async fn find(&self, name: &str) -> WebElement {
        until(&format!("[data-test=\"{name}\"] is there"), async || {
            self.driver().find(selector(name)).await.ok()
        })
        .await
    }

    /// How many elements with this `data-test` there are now.
    ///
    /// # Panics
    /// When the browser does not answer.
    pub async fn count(&self, name: &str) -> usize {
        self.driver()
            .find_all(selector(name))
            .await
            .expect("the page answers")
            .len()
    }

    /// Waits until no element with this `data-test` is there.
    ///
    /// # Panics
    /// When one stays.
    pub async fn gone(&self, name: &str) {
        until(&format!("[data-test=\"{name}\"] is gone"), async || {
            (self.count(name).await == 0).then_some(())
        })
        .await;
    }

    /// Taps an element once it can be tapped.
    ///
    /// # Panics
    /// When it cannot be tapped in time: absent, covered or disabled.
    pub async fn tap(&self, name: &str) {
        until(
            &format!("[data-test=\"{name}\"] can be tapped"),
            async || {
                let element = self.driver().find(selector(name)).await.ok()?;
                if !element.is_enabled().await.ok()? {
                    return None;
                }
                self.to_the_middle(&element).await?;
                element.click().await.ok()
            },
        )
        .await;
    }

    /// Scrolls as a thumb would, so that the action bar covers nothing.
    async fn to_the_middle(&self, element: &WebElement) -> Option<()> {
        let script = "arguments[0].scrollIntoView({ block: 'center' })";
        let element = element.to_json().ok()?;
        self.driver().execute(script, vec![element]).await.ok()?;
        Some(())
    }

    /// Empties a field and types into it.
    ///
    /// # Panics
    /// When the field is absent or does not take the text.
    pub async fn type_into(&self, name: &str, text: &str) {
        until(&format!("[data-test=\"{name}\"] takes text"), async || {
            let element = self.driver().find(selector(name)).await.ok()?;
            self.to_the_middle(&element).await?;
            element.clear().await.ok()?;
            element.send_keys(text).await.ok()
        })
        .await;
    }

    /// The visible text of an element.
    ///
    /// # Panics
    /// When it is absent.
    pub async fn text(&self, name: &str) -> String {
        until(&format!("[data-test=\"{name}\"] has a text"), async || {
            self.driver()
                .find(selector(name))
                .await
                .ok()?
                .text()
                .await
                .ok()
        })
        .await
    }

    /// Waits until the visible text of an element contains `part`.
    ///
    /// # Panics
    /// When it does not.
    pub async fn reads(&self, name: &str, part: &str) {
        until(
            &format!("[data-test=\"{name}\"] reads {part:?}"),
            async || {
                let element = self.driver().find(selector(name)).await.ok()?;
                element.text().await.ok()?.contains(part).then_some(())
            },
        )
        .await;
    }

    /// Runs a script in the page and answers what it returns.
    ///
    /// # Panics
    /// When the script throws.
    pub async fn js(&self, script: &str) -> Value {
        let answer = self.driver().execute(script, Vec::new()).await;
        answer
            .unwrap_or_else(|error| panic!("{script}: {error}"))
            .json()
            .clone()
    }

    /// Waits until a script's expression is true in the page.
    ///
    /// # Panics
    /// When it stays false.
    pub async fn holds(&self, expression: &str) {
        until(expression, async || {
            // A page that is being replaced answers with an error: ask again.
            let script = format!("return Boolean({expression});");
            let answer = self.driver().execute(script, Vec::new()).await.ok()?;
            (answer.json() == &Value::Bool(true)).then_some(())
        })
        .await;
    }

    /// Waits until the program runs.
    ///
    /// # Panics
    /// When it does not start.
    pub async fn mounted(&self) {
        self.find("app").await;
        self.holds("!document.getElementById('boot')").await;
    }

    /// Waits until the whole program is kept on the phone.
    ///
    /// # Panics
    /// When it is not.
    pub async fn kept_offline(&self) {
        self.holds("document.documentElement.dataset.offline === 'ready'")
            .await;
        self.holds("navigator.serviceWorker.controller?.state === 'activated'")
            .await;
    }

    /// Takes what the browser reported since the last call. `origin` is the
    /// server's; a request to any other is a problem.
    ///
    /// # Panics
    /// When the logs cannot be read.
    pub async fn problems(&self, origin: &str) -> Vec<Problem> {
        let console = self
            .driver()
            .get_log("browser")
            .await
            .expect("the console log");
        let network = self
            .driver()
            .get_log("performance")
            .await
            .expect("the network log");
        let mut problems = logs::of_console(console);
        problems.extend(logs::of_network(&network, origin));
        problems
    }

    /// Waits for a downloaded file whose name ends with `ending`, and answers
    /// its name and bytes.
    ///
    /// # Panics
    /// When none arrives.
    pub async fn downloaded(&self, ending: &str) -> (String, Vec<u8>) {
        until(&format!("a file *{ending} is downloaded"), async || {
            let entries = fs::read_dir(self.downloads.path()).ok()?;
            let path = entries
                .flatten()
                .map(|entry| entry.path())
                .find(|path| path.to_string_lossy().ends_with(ending))?;
            let name = path.file_name()?.to_string_lossy().into_owned();
            Some((name, fs::read(&path).ok()?))
        })
        .await
    }

    /// Throws away what was downloaded, so that the next file is told from it.
    ///
    /// # Panics
    /// When a file can't be removed.
    pub fn forget_downloads(&self) {
        let entries = fs::read_dir(self.downloads.path()).expect("the folder");
        for entry in entries.flatten() {
            fs::remove_file(entry.path()).expect("it is removed");
        }
    }

    /// Saves what the screen shows to `shots/NAME-light.png` or `-dark.png`.
    ///
    /// # Panics
    /// When the picture cannot be taken or written.
    pub async fn shot(&self, name: &str) -> PathBuf {
        let folder = project().join("shots");
        fs::create_dir_all(&folder).expect("the shots folder");
        let path = folder.join(format!("{name}-{}.png", self.light.word()));
        self.driver().screenshot(&path).await.expect("a screenshot");
        path
    }

    fn capabilities(&self) -> Capabilities {
        let mut chrome = ChromeCapabilities::new();
        for flag in flags(self.profile.path()) {
            chrome.add_arg(&flag).expect("a browser flag");
        }
        let screen = json!({ "width": 390, "height": 844, "pixelRatio": 2.0, "touch": true });
        chrome
            .add_experimental_option("mobileEmulation", json!({ "deviceMetrics": screen }))
            .expect("the phone's screen");
        for log in ["browser", "performance"] {
            chrome
                .set_logging_prefs(log, LoggingPrefsLogLevel::All)
                .expect("the logs");
        }
        chrome.into()
    }

    /// Lets go of a session whose browser is dead, without asking it to quit.
    fn forget_session(&mut self) {
        if let Some(driver) = self.driver.take() {
            // Fails only when it has quit already.
            let _ = driver.leak();
        }
    }
}

impl Drop for Phone {
    fn drop(&mut self) {
        processes::kill_profile(self.profile.path());
        // Both fail only when it has ended already.
        let _ = self.chromedriver.kill();
        let _ = self.chromedriver.wait();
        self.forget_session();
        processes::clear_profile(self.profile.path());
    }
}

fn selector(name: &str) -> By {
    By::Css(format!("[data-test=\"{name}\"]"))
}

fn flags(profile: &Path) -> Vec<String> {
    let fixed = [
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
    let mut flags: Vec<String> = fixed.map(str::to_owned).to_vec();
    flags.push(format!("--user-data-dir={}", profile.display()));
    flags
}

fn chromedriver_port(says: &mut impl BufRead) -> Option<u16> {
    says.lines().map_while(Result::ok).find_map(|line| {
        let (_, port) = line.split_once("started successfully on port ")?;
        port.trim().trim_end_matches('.').parse().ok()
    })
}
