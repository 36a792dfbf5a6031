//! A browser held like a phone, with a profile that outlives a killed one.

use std::fs;
use std::path::PathBuf;

use serde_json::{Value, json};
use tempfile::TempDir;
use thirtyfour::prelude::*;

use crate::build::project;
use crate::engine::{Driver, Engine};
use crate::logs::{self, Problem};
use crate::processes;
use crate::wait::{LIMIT, until, within};

/// The light the phone is used in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Light {
    /// The phone is set to its light colours.
    Day,
    /// The phone is set to its dark colours.
    Dark,
}

impl Light {
    /// Its name in CSS.
    pub(crate) fn word(self) -> &'static str {
        match self {
            Self::Day => "light",
            Self::Dark => "dark",
        }
    }
}

/// A phone-sized browser with its own profile and download folder.
#[derive(Debug)]
pub struct Phone {
    engine: Engine,
    driver: Option<WebDriver>,
    program: Option<Driver>,
    profile: TempDir,
    downloads: TempDir,
    light: Light,
}

impl Phone {
    /// Opens Chromium with a new profile.
    ///
    /// # Panics
    /// When chromedriver or the browser does not start.
    pub async fn open(light: Light) -> Self {
        Self::open_in(Engine::Chromium, light).await
    }

    /// Opens a browser with a new profile.
    ///
    /// # Panics
    /// When its driver or the browser does not start.
    pub async fn open_in(engine: Engine, light: Light) -> Self {
        let mut phone = Self {
            engine,
            driver: None,
            program: None,
            profile: TempDir::new().expect("a temporary folder"),
            downloads: TempDir::new().expect("a temporary folder"),
            light,
        };
        phone.reopen().await;
        phone
    }

    /// The engine it holds.
    pub fn engine(&self) -> Engine {
        self.engine
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
        // A new program too: some hold only one session, and that one died.
        let program = self.program.insert(Driver::start(self.engine));
        let url = program.url();
        let wants = (self.engine).wants(self.profile.path(), self.downloads.path(), self.light);
        let driver = until("the browser opens", async || {
            WebDriver::new(&url, wants.clone()).await.ok()
        })
        .await;
        self.driver = Some(driver);
        match self.engine {
            Engine::Chromium => {
                let folder = self.downloads.path().display().to_string();
                let allow = json!({ "behavior": "allow", "downloadPath": folder });
                self.devtools("Browser.setDownloadBehavior", allow).await;
                self.set_light(self.light).await;
            }
            Engine::Firefox => self.fit().await,
            Engine::WebKit => {}
        }
    }

    /// Moves Firefox to a window of a phone's size. One with tool bars can't be
    /// so narrow, so it is one without.
    async fn fit(&self) {
        let driver = self.driver();
        let first = driver.window().await.expect("a window");
        self.js("open('about:blank', '', 'popup,width=390,height=844')")
            .await;
        let narrow = until("the narrow window opens", async || {
            let all = driver.windows().await.ok()?;
            all.into_iter().find(|one| *one != first)
        })
        .await;
        driver.close_window().await.expect("the first one closes");
        driver.switch_to_window(narrow).await.expect("the other");
        let frame = self
            .js("return [outerWidth - innerWidth, outerHeight - innerHeight]")
            .await;
        let side = |n: usize, page: i64| {
            let edge = frame[n].as_i64().expect("a width");
            u32::try_from(page + edge).expect("a size")
        };
        driver
            .set_window_rect(0, 0, side(0, 390), side(1, 844))
            .await
            .expect("the window's size");
    }

    /// Switches the phone to light or dark colours; only Chromium can while it
    /// is open.
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

    /// Sends one DevTools command, to Chromium.
    ///
    /// # Panics
    /// When the browser refuses it, as another engine does.
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
        if self.engine == Engine::Chromium {
            self.driver().refresh().await.expect("the page reloads");
            return;
        }
        // A driver's own refresh goes past the service worker in some engines.
        self.js("window.beforeReload = true; location.reload()")
            .await;
        self.holds("!window.beforeReload && document.readyState === 'complete'")
            .await;
    }

    /// Asks `check` until it answers; a failure tells where the phone was.
    async fn until<T>(&self, what: &str, check: impl AsyncFnMut() -> Option<T>) -> T {
        const SHOWS: &str = "return `${location.hash} ${document.body?.innerText}`";
        if let Some(answer) = within(LIMIT, check).await {
            return answer;
        }
        let shows = match self.driver().execute(SHOWS, Vec::new()).await {
            Ok(shows) => shows.json().to_string(),
            Err(error) => error.to_string(),
        };
        let shows: String = shows.chars().take(1200).collect();
        panic!(
            "not within {} s: {what}\nThe page: {shows}",
            LIMIT.as_secs()
        );
    }

    /// Waits until an element with this `data-test` is there, and answers it.
    ///
    /// # Panics
    /// When it does not come.
    pub async fn find(&self, name: &str) -> WebElement {
        let found = self
            .until(&format!("[data-test=\"{name}\"] is there"), async || {
                self.driver().find(selector(name)).await.ok()
            })
            .await;
        if name.starts_with("screen-") {
            self.painted().await;
        }
        found
    }

    /// How many elements with this `data-test` there are now.
    ///
    /// # Panics
    /// When the browser does not answer.
    pub async fn count(&self, name: &str) -> usize {
        self.painted().await;
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
        self.until(&format!("[data-test=\"{name}\"] is gone"), async || {
            (self.count(name).await == 0).then_some(())
        })
        .await;
    }

    /// Taps an element once it can be tapped.
    ///
    /// # Panics
    /// When it cannot be tapped in time: absent, covered or disabled.
    pub async fn tap(&self, name: &str) {
        self.until(
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
        self.until(&format!("[data-test=\"{name}\"] takes text"), async || {
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
        self.until(&format!("[data-test=\"{name}\"] has a text"), async || {
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
        self.until(
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
        self.until(expression, async || {
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

    /// Waits until what came with the last change is drawn: a screen's lower part
    /// comes a frame after its upper one. A page that is hidden has no frames, and
    /// one that is being replaced needs none.
    ///
    /// # Panics
    /// When the browser does not answer.
    pub async fn painted(&self) {
        const FRAMES: &str = "
            window.framesAhead = true;
            const done = () => { window.framesAhead = false; };
            setTimeout(done, 500);
            requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)));";
        if self.driver().execute(FRAMES, Vec::new()).await.is_ok() {
            self.holds("!window.framesAhead").await;
        }
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
    /// server's; a request to any other is a problem. Chromium says it by its
    /// logs; the others by the watch in the page (`Build::watched`).
    ///
    /// # Panics
    /// When the logs cannot be read, or nothing watches in the page.
    pub async fn problems(&self, origin: &str) -> Vec<Problem> {
        if self.engine != Engine::Chromium {
            let noted = self.js("return window.underTest.problems()").await;
            let asked = self.js("return window.underTest.asked()").await;
            return logs::of_watch(&noted, &asked, origin);
        }
        let console = self.driver().get_log("browser").await;
        let console = console.expect("the console log");
        let network = self.driver().get_log("performance").await;
        let network = network.expect("the network log");
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
            // Firefox holds the name with an empty file while it writes.
            let bytes = fs::read(&path).ok().filter(|bytes| !bytes.is_empty())?;
            let half = self.downloads.path().join(format!("{name}.part"));
            (!half.exists()).then_some((name, bytes))
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

    /// Saves what the screen shows to `shots/NAME-light.png` or `-dark.png`;
    /// other engines than Chromium put their name before it.
    ///
    /// # Panics
    /// When the picture cannot be taken or written.
    pub async fn shot(&self, name: &str) -> PathBuf {
        let folder = project().join("shots");
        fs::create_dir_all(&folder).expect("the shots folder");
        let engine = match self.engine {
            Engine::Chromium => "",
            Engine::Firefox => "firefox-",
            Engine::WebKit => "webkit-",
        };
        let path = folder.join(format!("{engine}{name}-{}.png", self.light.word()));
        self.driver().screenshot(&path).await.expect("a screenshot");
        path
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
        self.program = None;
        self.forget_session();
        processes::clear_profile(self.profile.path());
    }
}

fn selector(name: &str) -> By {
    By::Css(format!("[data-test=\"{name}\"]"))
}
