//! Finding and ending the processes of one browser profile.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;
use std::thread;
use std::time::Duration;

use rustix::process::{Pid, Signal, kill_process};

/// The processes whose command line names `profile` as their user data folder.
pub fn of_profile(profile: &Path) -> Vec<Pid> {
    let wanted = format!("--user-data-dir={}", profile.display());
    let Ok(entries) = fs::read_dir("/proc") else {
        return Vec::new();
    };
    entries
        .flatten()
        .filter_map(|entry| entry.file_name().to_str()?.parse::<i32>().ok())
        .filter(|pid| {
            // A process may end between the listing and the reading.
            let line = fs::read(format!("/proc/{pid}/cmdline")).unwrap_or_default();
            line.split(|byte| *byte == 0)
                .any(|word| word == wanted.as_bytes())
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

/// Removes the profile's folder. The killed browser's children write into it
/// until they notice, so this tries again for two seconds.
pub fn clear_profile(profile: &Path) {
    for _ in 0..100 {
        match fs::remove_dir_all(profile) {
            Ok(()) => return,
            Err(error) if error.kind() == ErrorKind::NotFound => return,
            Err(_) => thread::sleep(Duration::from_millis(20)),
        }
    }
}
