//! kill -9 while marks are tapped: what the screen had confirmed must be on
//! disk, in order, and nothing twice.

use std::fmt;
use std::time::{Duration, Instant};

use serde_json::json;
use tempfile::TempDir;
use thirtyfour::prelude::*;

use crate::engine::{Driver, Engine};
use crate::phone::Light;
use crate::processes;
use crate::server::Server;
use crate::wait::{until, until_within};

/// What came of the kills.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tally {
    /// Browsers killed.
    pub kills: usize,
    /// Marks that the screen had listed before a kill, each counted once.
    pub confirmed: usize,
    /// Of these, those that were gone afterwards.
    pub lost: usize,
    /// Kills after which the confirmed ones were in another order.
    pub disordered: usize,
    /// Marks listed more than once.
    pub twice: usize,
    /// Marks that were on disk without the screen having listed them yet.
    pub ahead: usize,
}

impl Tally {
    /// Whether nothing confirmed was lost, moved or doubled.
    pub fn is_sound(&self) -> bool {
        self.lost == 0 && self.disordered == 0 && self.twice == 0
    }

    fn add(&mut self, seen: &[String], after: &[String], known: usize) {
        self.kills += 1;
        self.confirmed += seen.len().saturating_sub(known);
        self.lost += seen.iter().filter(|id| !after.contains(id)).count();
        let kept: Vec<&String> = after.iter().filter(|id| seen.contains(id)).collect();
        self.disordered += usize::from(!kept.iter().copied().eq(seen.iter()));
        let mut once: Vec<&String> = after.iter().collect();
        once.sort();
        once.dedup();
        self.twice += after.len() - once.len();
        self.ahead += after.len().saturating_sub(seen.len());
    }
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{} kills, {} marks confirmed by the screen: {} lost, {} out of order, {} twice; \
             {} more were on disk before the screen said so",
            self.kills, self.confirmed, self.lost, self.disordered, self.twice, self.ahead
        )
    }
}

/// A browser with a profile that outlives it.
struct Rig {
    engine: Engine,
    profile: TempDir,
    open: Option<(WebDriver, Driver)>,
}

impl Rig {
    fn new(engine: Engine) -> Self {
        let profile = TempDir::new().expect("a temporary folder");
        Self {
            engine,
            profile,
            open: None,
        }
    }

    async fn start(&mut self) {
        let program = Driver::start(self.engine);
        let url = program.url();
        let profile = self.profile.path();
        let wants = self.engine.wants(profile, profile, Light::Day);
        let driver = until("the browser opens", async || {
            WebDriver::new(&url, wants.clone()).await.ok()
        })
        .await;
        self.open = Some((driver, program));
    }

    async fn js(&self, script: &str) -> Option<serde_json::Value> {
        let (driver, ..) = self.open.as_ref()?;
        let answer = driver.execute(script, vec![]).await.ok()?;
        Some(answer.json().clone())
    }

    async fn goto(&self, url: &str) {
        let (driver, ..) = self.open.as_ref().expect("it is open");
        until("the page opens", async || driver.goto(url).await.ok()).await;
    }

    /// Clicks what has this `data-test` once it is there.
    async fn tap(&self, name: &str) {
        let script = format!(
            "const e = document.querySelector('[data-test=\"{name}\"]');
             if (!e || e.disabled) return false; e.click(); return true;"
        );
        until(name, async || {
            (self.js(&script).await == Some(json!(true))).then_some(())
        })
        .await;
    }

    async fn there(&self, name: &str) {
        let script = format!("return !!document.querySelector('[data-test=\"{name}\"]')");
        until_within(Duration::from_secs(60), name, async || {
            (self.js(&script).await == Some(json!(true))).then_some(())
        })
        .await;
    }

    /// The entries of the marks as listed, oldest first.
    async fn marks(&self) -> Option<Vec<String>> {
        let script = "return [...document.querySelectorAll('[data-test=mark]')]
            .map(e => e.dataset.entry).reverse()";
        let list = self.js(script).await?;
        let list = list.as_array()?;
        list.iter().map(|v| v.as_str().map(str::to_owned)).collect()
    }

    /// The first mark of a new test: only then can it be ended.
    async fn open_drain(&self) {
        self.there("mark-level").await;
        until("a test without marks", async || {
            self.marks().await.filter(Vec::is_empty)
        })
        .await;
        self.tap("next-mark").await;
        self.there("mark").await;
    }

    /// kill -9, browser first; then the driver, which has no more to do.
    fn kill(&mut self) {
        processes::kill_profile(self.profile.path());
        if let Some((driver, program)) = self.open.take() {
            drop(program);
            // Fails only when it has quit already.
            let _ = driver.leak();
        }
    }
}

impl Drop for Rig {
    fn drop(&mut self) {
        self.kill();
        processes::clear_profile(self.profile.path());
    }
}

/// Steps the level and marks it, some twenty times a second.
const TAPPING: &str = "
    const tap = n => document.querySelector(`[data-test='${n}']`)?.click();
    let up = false;
    setInterval(() => { up = !up; tap(up ? 'level-up' : 'level-down'); tap('mark-level'); }, 50);";

/// Marks per test are kept under a hundred, which is how many the screen lists: a
/// new test after so many kills.
const KILLS_A_TEST: usize = 2;

/// Kills a browser `times` while marks are tapped in a running refill test.
///
/// # Panics
/// When the browser does not start or the page does not come up.
pub async fn kills(engine: Engine, times: usize, server: &Server) -> Tally {
    let mut rig = Rig::new(engine);
    let mut tally = Tally::default();
    let mut chance = seed();
    rig.start().await;
    rig.goto(&server.url()).await;
    rig.tap("open-demo").await;
    rig.tap("to-refill").await;
    rig.tap("begin-test").await;
    rig.open_drain().await;
    let here = rig.js("return location.href").await.expect("an address");
    let here = here.as_str().expect("an address").to_owned();
    let mut known = 1;
    for kill in 0..times {
        rig.js(TAPPING).await.expect("the page answers");
        chance = next(chance);
        let end = Instant::now() + Duration::from_millis(150 + chance % 1500);
        let mut seen = Vec::new();
        // At least one mark, then until the moment comes.
        while Instant::now() < end || seen.len() <= known {
            if let Some(list) = rig.marks().await {
                seen = list;
            }
        }
        rig.kill();
        until("the killed browser is gone", async || {
            processes::of_profile(rig.profile.path())
                .is_empty()
                .then_some(())
        })
        .await;
        rig.start().await;
        rig.goto(&here).await;
        rig.there("mark").await;
        let after = until("the marks are listed", async || rig.marks().await).await;
        tally.add(&seen, &after, known);
        known = after.len();
        if (kill + 1) % KILLS_A_TEST == 0 && kill + 1 < times {
            rig.tap("mark-Stopped").await;
            rig.tap("begin-again").await;
            rig.open_drain().await;
            known = 1;
        }
    }
    tally
}

fn seed() -> u64 {
    let now = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
    now.map_or(1, |d| d.as_nanos() as u64 | 1)
}

/// xorshift (Marsaglia 2003).
fn next(mut x: u64) -> u64 {
    x ^= x << 13;
    x ^= x >> 7;
    x ^ (x << 17)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lost_a_moved_and_a_doubled_mark_are_counted() {
        let ids = |text: &str| text.chars().map(String::from).collect::<Vec<_>>();
        let of = |seen: &str, after: &str| {
            let mut tally = Tally::default();
            tally.add(&ids(seen), &ids(after), 1);
            tally
        };
        assert!(of("abc", "abcd").is_sound());
        assert_eq!(
            (of("abc", "abcd").ahead, of("abc", "abcd").confirmed),
            (1, 2)
        );
        assert_eq!(of("abc", "ac").lost, 1);
        assert_eq!(of("abc", "acb").disordered, 1);
        assert!(!of("abc", "abcc").is_sound());
    }
}
