//! Waiting for a condition, never for a length of time.

use std::time::{Duration, Instant};

/// How long a condition may take before the test fails.
pub const LIMIT: Duration = Duration::from_secs(20);

/// How often a condition is asked.
const EVERY: Duration = Duration::from_millis(25);

/// Asks `check` until it answers, at most [`LIMIT`].
///
/// # Panics
/// When the limit is reached; the message names `what`.
pub async fn until<T>(what: &str, check: impl AsyncFnMut() -> Option<T>) -> T {
    until_within(LIMIT, what, check).await
}

/// Asks `check` until it answers, at most `limit`.
///
/// # Panics
/// When the limit is reached; the message names `what`.
pub async fn until_within<T>(
    limit: Duration,
    what: &str,
    check: impl AsyncFnMut() -> Option<T>,
) -> T {
    let answer = within(limit, check).await;
    answer.unwrap_or_else(|| panic!("not within {} s: {what}", limit.as_secs()))
}

/// Asks `check` until it answers; none when the limit is reached.
pub async fn within<T>(limit: Duration, mut check: impl AsyncFnMut() -> Option<T>) -> Option<T> {
    let begun = Instant::now();
    loop {
        if let Some(answer) = check().await {
            return Some(answer);
        }
        if begun.elapsed() >= limit {
            return None;
        }
        tokio::time::sleep(EVERY).await;
    }
}
