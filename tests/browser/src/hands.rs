//! What many tests do with a phone on the way to what they test.

use std::path::{Path, PathBuf};

use serde_json::{Value, json};

use crate::build::project;
use crate::phone::Phone;
use crate::server::Server;

/// A file of `tests/fixtures`.
pub fn fixture(name: &str) -> PathBuf {
    project().join("tests/fixtures").join(name)
}

impl Phone {
    /// Opens the app and waits until it runs.
    ///
    /// # Panics
    /// When it does not start.
    pub async fn start(&self, server: &Server) {
        self.goto(&server.url()).await;
        self.mounted().await;
    }

    /// Opens the demo's visit from the first screen; answers its address in the
    /// app, without a slash at its end.
    ///
    /// # Panics
    /// When it does not open.
    pub async fn demo_visit(&self) -> String {
        self.tap("open-demo").await;
        self.find("screen-overview").await;
        self.here().await
    }

    /// The address of the screen in the app, without a slash at its end.
    ///
    /// # Panics
    /// When the page does not answer.
    pub async fn here(&self) -> String {
        let hash = self.js("return location.hash").await;
        let hash = hash.as_str().expect("an address");
        hash.trim_end_matches('/').to_owned()
    }

    /// Goes to a screen of the app by its address; does not wait for it.
    ///
    /// # Panics
    /// When the page does not answer.
    pub async fn go(&self, hash: &str) {
        self.js(&format!("location.hash = '{hash}'")).await;
    }

    /// Lets the page go on by itself for so many milliseconds of its own clock: what is
    /// looked for then is that something did not happen.
    ///
    /// # Panics
    /// When the page does not answer.
    pub async fn rests(&self, ms: u32) {
        self.js(&format!(
            "window.rested = false; setTimeout(() => {{ window.rested = true }}, {ms})"
        ))
        .await;
        self.holds("window.rested").await;
    }

    /// Chooses a file in a hidden field, as a person does through its label.
    ///
    /// # Panics
    /// When the field does not take it.
    pub async fn choose_file(&self, field: &str, path: &Path) {
        let path = path.canonicalize().expect("the file is there");
        let input = self.find(field).await;
        input
            .send_keys(path.to_str().expect("UTF-8"))
            .await
            .expect("the file is chosen");
    }

    /// A finger along these points of a pane, in parts of its width and height.
    ///
    /// # Panics
    /// When there is no such pane.
    pub async fn draw(&self, pane: &str, points: &[(f64, f64)]) {
        let points: Vec<Value> = points.iter().map(|(x, y)| json!([x, y])).collect();
        self.js(&format!(
            "const pane = document.querySelector('[data-test={pane}]');
             pane.scrollIntoView({{ block: 'center' }});
             const box = pane.getBoundingClientRect();
             const at = (name, [x, y]) => pane.dispatchEvent(new PointerEvent(name, {{
               bubbles: true, cancelable: true, pointerId: 7,
               clientX: box.left + box.width * x, clientY: box.top + box.height * y }}));
             const points = {};
             at('pointerdown', points[0]);
             points.slice(1).forEach((point) => at('pointermove', point));
             at('pointerup', points.at(-1));",
            Value::from(points)
        ))
        .await;
    }

    /// Runs a script in every page that Chromium opens from now on, before the
    /// page's own.
    ///
    /// # Panics
    /// In another engine.
    pub async fn on_new_page(&self, script: &str) {
        let script = json!({ "source": script });
        self.devtools("Page.addScriptToEvaluateOnNewDocument", script)
            .await;
    }

    /// Lets Chromium ask for Spanish as spoken in Mexico.
    ///
    /// # Panics
    /// In another engine.
    pub async fn asks_for_spanish(&self) {
        let agent = self.js("return navigator.userAgent").await;
        let asks = json!({ "userAgent": agent, "acceptLanguage": "es-MX" });
        self.devtools("Emulation.setUserAgentOverride", asks).await;
    }
}
