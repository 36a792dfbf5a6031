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

/// The problems that the watch in the page noted, and what it `asked` for
/// outside `origin`.
///
/// # Panics
/// When the watch did not answer with two lists.
pub fn of_watch(noted: &Value, asked: &Value, origin: &str) -> Vec<Problem> {
    let texts = |list: &Value| -> Vec<String> {
        let list = list.as_array().expect("the watch answers");
        list.iter()
            .filter_map(|one| one.as_str().map(str::to_owned))
            .collect()
    };
    let problem = |text: String| match text.strip_prefix("policy: ") {
        Some(text) => Problem::Policy(text.to_owned()),
        None => Problem::Console(text),
    };
    let inside = format!("{origin}/");
    let elsewhere = texts(asked).into_iter().filter(|url| {
        !url.starts_with(&inside) && !url.starts_with("blob:") && !url.starts_with("data:")
    });
    let noted = texts(noted).into_iter().map(problem);
    noted.chain(elsewhere.map(Problem::Elsewhere)).collect()
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
    fn the_watch_in_the_page_tells_the_same_kinds() {
        let noted = serde_json::json!(["boom", "policy: style-src"]);
        let asked = serde_json::json!(["http://here/a", "blob:http://here/1", "http://there/"]);
        assert_eq!(
            of_watch(&noted, &asked, "http://here"),
            vec![
                Problem::Console("boom".into()),
                Problem::Policy("style-src".into()),
                Problem::Elsewhere("http://there/".into()),
            ]
        );
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
