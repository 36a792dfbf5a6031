//! What went wrong behind the screen: console errors, policy violations,
//! requests to anywhere else.

use serde_json::Value;
use thirtyfour::BrowserLogEntry;

/// One thing the browser reported that a sound program never causes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Problem {
    /// The console shows an error.
    Console(String),
    /// The Content-Security-Policy stopped something.
    Policy(String),
    /// The page asked another origin for something.
    Elsewhere(String),
}

impl Problem {
    /// The program's own question for signal, refused because the test took
    /// the signal away.
    pub fn is_lost_signal(&self) -> bool {
        matches!(self, Problem::Console(text)
            if text.contains("manifest.webmanifest") && text.contains("ERR_CONNECTION_REFUSED"))
    }
}

/// The problems in the browser's console log.
pub fn of_console(entries: Vec<BrowserLogEntry>) -> Vec<Problem> {
    entries
        .into_iter()
        .filter_map(|entry| {
            if entry.message.contains("Content Security Policy") {
                Some(Problem::Policy(entry.message))
            } else if entry.level == "SEVERE" {
                Some(Problem::Console(entry.message))
            } else {
                None
            }
        })
        .collect()
}

/// The requests in the browser's network log that left `origin`.
pub fn of_network(entries: &[BrowserLogEntry], origin: &str) -> Vec<Problem> {
    requests(entries)
        .filter(|url| {
            let inside = ["data:", "blob:", "about:", "chrome"];
            !url.starts_with(&format!("{origin}/"))
                && !inside.iter().any(|scheme| url.starts_with(scheme))
        })
        .map(Problem::Elsewhere)
        .collect()
}

fn requests(entries: &[BrowserLogEntry]) -> impl Iterator<Item = String> {
    entries.iter().filter_map(|entry| {
        let event: Value = serde_json::from_str(&entry.message).ok()?;
        let message = &event["message"];
        (message["method"] == "Network.requestWillBeSent").then(|| {
            message["params"]["request"]["url"]
                .as_str()
                .map(str::to_owned)
        })?
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn entry(level: &str, message: &str) -> BrowserLogEntry {
        let value = serde_json::json!({ "level": level, "message": message, "timestamp": 0 });
        serde_json::from_value(value).expect("a log entry")
    }

    fn request(url: &str) -> BrowserLogEntry {
        let message = serde_json::json!({
            "message": {
                "method": "Network.requestWillBeSent",
                "params": { "request": { "url": url } }
            }
        });
        entry("INFO", &message.to_string())
    }

    #[test]
    fn console_errors_and_policy_are_told_apart() {
        let problems = of_console(vec![
            entry("INFO", "hello"),
            entry("SEVERE", "boom"),
            entry(
                "SEVERE",
                "violates the following Content Security Policy directive",
            ),
        ]);
        assert_eq!(problems.len(), 2);
        assert_eq!(problems[0], Problem::Console("boom".into()));
        assert!(matches!(problems[1], Problem::Policy(_)));
    }

    #[test]
    fn only_requests_that_leave_the_origin_count() {
        let log = [
            request("http://127.0.0.1:80/app.js"),
            request("blob:http://127.0.0.1:80/1"),
            request("http://127.0.0.1:801/app.js"),
            request("https://example.com/pixel"),
        ];
        assert_eq!(
            of_network(&log, "http://127.0.0.1:80"),
            vec![
                Problem::Elsewhere("http://127.0.0.1:801/app.js".into()),
                Problem::Elsewhere("https://example.com/pixel".into()),
            ]
        );
    }
}
