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
    mut check: impl AsyncFnMut() -> Option<T>,
) -> T {
    let begun = Instant::now();
    loop {
        if let Some(answer) = check().await {
            return answer;
        }
        assert!(
            begun.elapsed() < limit,
            "not within {} s: {what}",
            limit.as_secs()
        );
        tokio::time::sleep(EVERY).await;
    }
}
