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
        self.ms.saturating_sub(earlier.ms) as f64 / 1000.0
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
    /// Outside the years 1970 to 9999, which no phone shows, 1970-01-01.
    pub fn local(&self) -> (i32, u8, u8, u8, u8, u8) {
        const LAST: i64 = 253_402_300_799;
        let seconds = self.ms.div_euclid(1000) + i64::from(self.offset_min) * 60;
        let seconds = if (0..=LAST).contains(&seconds) {
            seconds
        } else {
            0
        };
        let (days, of_day) = (seconds / 86_400, seconds % 86_400);
        // Days to civil date: Howard Hinnant, "chrono-Compatible Low-Level Date
        // Algorithms", civil_from_days, for days on or after 1970-01-01.
        let shifted = days + 719_468;
        let (era, of_era) = (shifted / 146_097, shifted % 146_097);
        let year = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
        let of_year = of_era - (365 * year + year / 4 - year / 100);
        let month = (5 * of_year + 2) / 153;
        let day = of_year - (153 * month + 2) / 5 + 1;
        let month = if month < 10 { month + 3 } else { month - 9 };
        let year = year + era * 400 + i64::from(month <= 2);
        let part = |n: i64| n as u8;
        let (hour, minute) = (part(of_day / 3_600), part(of_day / 60 % 60));
        (
            year as i32,
            part(month),
            part(day),
            hour,
            minute,
            part(of_day % 60),
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

    /// Against the `time` crate, which phones need not download.
    #[test]
    fn dates_are_those_of_the_calendar() {
        for day in (0..2_932_896).step_by(13).chain([2_932_896]) {
            let seconds = day * 86_400 + day % 86_400;
            let m = Moment {
                ms: seconds * 1000,
                offset_min: 0,
                run: 1,
                run_ms: 0.0,
            };
            let t = time::OffsetDateTime::from_unix_timestamp(seconds).unwrap();
            let (y, mo, d) = t.to_calendar_date();
            let (h, mi, s) = t.to_hms();
            assert_eq!(m.local(), (y, mo.into(), d, h, mi, s), "{seconds}");
        }
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
