//! The tables make sense: every fault can be proven, every check separates
//! something, and words that were stored are still read.

use std::collections::HashSet;

use super::super::*;

#[test]
fn every_mode_is_spoken_of_by_a_check_and_every_check_speaks() {
    for mode in Mode::ALL {
        let checks = Check::ALL.into_iter().filter(|c| c.speaks_of(mode));
        assert!(checks.count() >= 2, "{mode:?} can hardly be found");
        assert!(mode.repair_minutes() > 0.0);
    }
    for check in Check::ALL {
        let least = if check == Check::BasinOnArrival { 0 } else { 1 };
        let modes = Mode::ALL.into_iter().filter(|m| check.speaks_of(*m));
        assert!(modes.count() >= least, "{check:?} separates nothing");
        assert!(check.answers().len() >= 2, "{check:?}");
        assert!(check.minutes() > 0.0);
    }
}

#[test]
fn names_are_stable_and_the_old_ones_are_still_read() {
    let names: HashSet<String> = Mode::ALL
        .iter()
        .chain(&Mode::GENERAL)
        .map(|m| serde_json::to_string(m).unwrap())
        .collect();
    assert_eq!(names.len(), Mode::ALL.len() + Mode::GENERAL.len());
    for old in [
        "sensor-false-full",
        "coil-open",
        "tower-air-side",
        "hand-valve-shut",
        "machine-fault",
        "water-flow-low",
        "bleed-or-leak",
    ] {
        let read: Result<Mode, _> = serde_json::from_str(&format!("\"{old}\""));
        assert!(read.is_ok(), "{old}");
    }
}
