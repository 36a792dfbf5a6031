//! When something happened, and the ports that say when it is now.

use serde::{Deserialize, Serialize};

/// Wall-clock time as the phone showed it, with the page's own steady clock
/// beside it so that a clock set back or forward can be seen.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Moment {
    /// Milliseconds since 1970-01-01T00:00Z by the phone's wall clock.
    pub ms: i64,
    /// Minutes the local time is ahead of UTC.
    pub offset_min: i16,
    /// A random number for this run of the page; the steady clock means
    /// something only within one run.
    pub run: u32,
    /// Milliseconds on the steady clock since that run began.
    pub run_ms: f64,
}

impl Moment {
    /// Seconds from `earlier` to this moment by the wall clock.
    pub fn seconds_since(&self, earlier: &Moment) -> f64 {
        (self.ms - earlier.ms) as f64 / 1000.0
    }

    /// How far the wall clock was moved between two moments of one run, in
    /// seconds; `None` when they are of different runs and can't be compared.
    pub fn clock_jump_since(&self, earlier: &Moment) -> Option<f64> {
        (self.run == earlier.run).then(|| {
            let steady = (self.run_ms - earlier.run_ms) / 1000.0;
            self.seconds_since(earlier) - steady
        })
    }

    /// Local date and time as (year, month, day, hour, minute, second).
    pub fn local(&self) -> (i32, u8, u8, u8, u8, u8) {
        let seconds = self.ms.div_euclid(1000) + i64::from(self.offset_min) * 60;
        let at = time::OffsetDateTime::from_unix_timestamp(seconds)
            .unwrap_or(time::OffsetDateTime::UNIX_EPOCH);
        (
            at.year(),
            at.month().into(),
            at.day(),
            at.hour(),
            at.minute(),
            at.second(),
        )
    }

    /// `2026-11-25`, local.
    pub fn date(&self) -> String {
        let (y, mo, d, ..) = self.local();
        format!("{y:04}-{mo:02}-{d:02}")
    }

    /// `09:41`, local.
    pub fn clock(&self) -> String {
        let (_, _, _, h, mi, _) = self.local();
        format!("{h:02}:{mi:02}")
    }

    /// `09:41:07`, local.
    pub fn clock_seconds(&self) -> String {
        let (.., h, mi, s) = self.local();
        format!("{h:02}:{mi:02}:{s:02}")
    }
}

/// The clock port: what time it is now.
pub trait Clock {
    /// The present moment.
    fn now(&self) -> Moment;
}

/// The randomness port.
pub trait Chance {
    /// Ten random bytes.
    fn ten_bytes(&self) -> [u8; 10];
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(ms: i64, run: u32, run_ms: f64) -> Moment {
        Moment {
            ms,
            offset_min: -300,
            run,
            run_ms,
        }
    }

    #[test]
    fn local_time_applies_the_offset() {
        // 2026-11-25T14:41:07Z is 09:41:07 five hours west.
        let m = at(1_795_617_667_000, 1, 0.0);
        assert_eq!(m.date(), "2026-11-25");
        assert_eq!(m.clock_seconds(), "09:41:07");
    }

    #[test]
    fn a_moved_clock_shows_within_one_run_only() {
        let first = at(1_000_000, 1, 500.0);
        let later = at(1_070_000, 1, 10_500.0);
        assert_eq!(later.clock_jump_since(&first), Some(60.0));
        assert_eq!(at(1_070_000, 2, 10_500.0).clock_jump_since(&first), None);
    }

    #[test]
    fn times_outside_the_calendar_do_not_panic() {
        assert_eq!(at(i64::MAX, 1, 0.0).date(), "1970-01-01");
    }
}
