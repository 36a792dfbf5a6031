//! Finding and ending the processes of one browser profile.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;
use std::thread;
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

/// The processes whose command line names `profile`: the browser and its
/// children, some of which write all their words as one.
pub fn of_profile(profile: &Path) -> Vec<Pid> {
    let wanted = profile.to_string_lossy();
    let Ok(entries) = fs::read_dir("/proc") else {
        return Vec::new();
    };
    entries
        .flatten()
        .filter_map(|entry| entry.file_name().to_str()?.parse::<i32>().ok())
        .filter(|pid| {
            // A process may end between the listing and the reading.
            let line = fs::read(format!("/proc/{pid}/cmdline")).unwrap_or_default();
            String::from_utf8_lossy(&line).contains(wanted.as_ref())
        })
        .filter_map(Pid::from_raw)
        .collect()
}

/// `kill -9` for every process of `profile`; how many there were.
pub fn kill_profile(profile: &Path) -> usize {
    let pids = of_profile(profile);
    for pid in &pids {
        // Fails only for one that has just ended.
        let _ = kill_process(*pid, Signal::KILL);
    }
    pids.len()
}

/// Removes the profile's folder once no process of it is left, also when one of
/// them writes a last file meanwhile. Gives up after two seconds.
pub fn clear_profile(profile: &Path) {
    let until = Instant::now() + Duration::from_secs(2);
    while Instant::now() < until {
        let idle = kill_profile(profile) == 0;
        let removed = match fs::remove_dir_all(profile) {
            Ok(()) => true,
            Err(error) => error.kind() == ErrorKind::NotFound,
        };
        if idle && removed {
            return;
        }
        // Lets the dying ones run; looking through /proc takes the time.
        thread::yield_now();
    }
}
