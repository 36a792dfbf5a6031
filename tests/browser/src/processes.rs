//! Finding and ending the processes of one browser profile.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;
use std::thread;
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

/// The processes whose command line names `profile`, and all that these
/// started: the browser and its children, some of which write all their words
/// as one or name no profile.
pub fn of_profile(profile: &Path) -> Vec<Pid> {
    let wanted = profile.to_string_lossy();
    let Ok(entries) = fs::read_dir("/proc") else {
        return Vec::new();
    };
    let all: Vec<i32> = entries
        .flatten()
        .filter_map(|entry| entry.file_name().to_str()?.parse().ok())
        .collect();
    // A process may end between the listing and the reading.
    let named = |pid: &i32| {
        let line = fs::read(format!("/proc/{pid}/cmdline")).unwrap_or_default();
        String::from_utf8_lossy(&line).contains(wanted.as_ref())
    };
    let mut found: Vec<i32> = all.iter().copied().filter(named).collect();
    let parents: Vec<(i32, i32)> = all
        .iter()
        .filter_map(|pid| Some((*pid, parent(*pid)?)))
        .collect();
    let mut at = 0;
    while at < found.len() {
        let children = parents.iter().filter(|(_, parent)| *parent == found[at]);
        let children: Vec<i32> = children.map(|(pid, _)| *pid).collect();
        found.extend(
            children
                .iter()
                .filter(|pid| !found.contains(pid))
                .collect::<Vec<_>>(),
        );
        at += 1;
    }
    found.into_iter().filter_map(Pid::from_raw).collect()
}

/// The process that started this one; its name in brackets may hold anything.
/// A dead one that waits to be looked at counts as gone.
fn parent(pid: i32) -> Option<i32> {
    let stat = fs::read_to_string(format!("/proc/{pid}/stat")).ok()?;
    let (_, after) = stat.rsplit_once(')')?;
    let mut words = after.split_whitespace();
    let state = words.next()?;
    let parent = words.next()?.parse().ok()?;
    (state != "Z").then_some(parent)
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
