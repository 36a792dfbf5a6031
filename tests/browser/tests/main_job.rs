//! The main job on a phone with no signal: demo visit, readings, trace,
//! refill test through a killed browser, report.

use coldsump_browser::{Light, Phone, Server};
use serde_json::json;

/// The page's clocks, set forward together by the test.
struct Clock {
    skew_ms: u64,
}

impl Clock {
    /// Gives every page opened from now on clocks that the test moves. Must
    /// be called again after the browser was opened again.
    async fn install(&self, phone: &Phone) {
        let source = format!(
            "{{
               const wall = Date.now.bind(Date), steady = performance.now.bind(performance);
               window.__skew = {skew};
               Date.now = () => wall() + window.__skew;
               performance.now = () => steady() + window.__skew - {skew};
             }}",
            skew = self.skew_ms
        );
        phone
            .devtools(
                "Page.addScriptToEvaluateOnNewDocument",
                json!({ "source": source }),
            )
            .await;
    }

    async fn pass(&mut self, phone: &Phone, seconds: u64) {
        self.skew_ms += seconds * 1000;
        phone
            .js(&format!("window.__skew = {}", self.skew_ms))
            .await;
    }
}

#[tokio::test]
async fn from_call_to_report_without_signal() {
    let mut server = Server::start();
    let mut phone = Phone::open(Light::Day).await;
    let mut clock = Clock { skew_ms: 0 };
    clock.install(&phone).await;
    phone.goto(&server.url()).await;
    phone.mounted().await;
    phone.kept_offline().await;
    phone.shot("home-empty").await;

    // No signal from here on.
    server.stop();
    phone.reload().await;
    phone.mounted().await;

    phone.tap("open-demo").await;
    phone.find("screen-overview").await;
    phone.shot("overview-new").await;
    phone.tap("next").await;
    phone.find("screen-found").await;
    for n in [0, 1, 3] {
        phone.tap(&format!("machine-{n}-high-head")).await;
    }
    phone.type_into("head-0", "205").await;
    phone.type_into("entering-water", "97F").await;
    phone.type_into("leaving-water", "36.7 C").await;
    phone.type_into("dry-bulb", "88").await;
    phone.type_into("humidity", "55%").await;
    phone.type_into("control-voltage", "banana").await;
    phone.type_into("basin-level", "1' 2 1/2\"").await;
    phone.shot("found-refused").await;
    phone.type_into("control-voltage", "24.3").await;
    phone.tap("machine-2-running").await;
    phone.shot("found").await;
    phone.tap("next").await;
    phone.find("screen-numbers").await;
    phone.shot("numbers").await;
    phone.tap("next").await;
    phone.find("screen-trace").await;
    phone.shot("trace").await;
}
