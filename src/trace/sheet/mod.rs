//! The plant model: what each check reads in each state of the world.
//!
//! A check has an *effect* for every mode: 0 when the mode does not change
//! what it says, else the number of a row of chances. Of several faults that
//! act at once the highest number speaks: a dead supply says more about the
//! voltage at the coil than a bad joint behind it. A mode has a second,
//! *quiet* effect for when it comes and goes and is away just now: a film
//! stays on the holder, drier, when it lets go. Rows may differ over a low
//! basin, for what is read from the water or from the control that watches it.
//!
//! Directions of the loop's readings (low flow: wide range, normal or low
//! leaving water; air side: usual range, high approach) follow from the
//! tower's Merkel balance; of the electrics, from the series circuit supply -
//! contact - coil. The chances themselves, in thousandths, are judgement:
//! common practice, no source.

mod fill;
mod level;
mod loop_water;
mod loss;
mod machine;
mod power;
mod tower;

use std::sync::OnceLock;

use super::check::Check;
use super::mode::Mode;

/// Chances of the answers in thousandths; they add to 1000.
pub(crate) type Chances = [u16; 3];

/// Acting effect, quiet effect, and the modes that have them.
pub(crate) type Who = (u8, u8, &'static [Mode]);

/// What one check says.
pub(crate) struct Sheet {
    /// Which check.
    pub check: Check,
    /// Chances per effect.
    pub rows: &'static [Chances],
    /// The same over a low basin; empty when the level is nothing to it.
    pub low: &'static [Chances],
    /// Whether `low` means low on arrival, whatever happened since.
    pub arrival: bool,
    /// Who has which effect.
    pub who: &'static [Who],
}

impl Sheet {
    const fn new(check: Check, rows: &'static [Chances], who: &'static [Who]) -> Self {
        Self {
            check,
            rows,
            low: &[],
            arrival: false,
            who,
        }
    }

    const fn over_low(mut self, rows: &'static [Chances]) -> Self {
        self.low = rows;
        self
    }

    const fn on_arrival(mut self) -> Self {
        self.arrival = true;
        self
    }

    /// Chances per effect over a full basin and over a low one.
    pub fn rows_over(&self, low: bool) -> &'static [Chances] {
        if low && !self.low.is_empty() {
            self.low
        } else {
            self.rows
        }
    }

    /// Acting and quiet effect of a mode.
    pub fn effect(&self, mode: Mode) -> (u8, u8) {
        effect(self.check, mode)
    }
}

/// The sheets by topic.
const TOPICS: [&[Sheet]; 7] = [
    machine::SHEETS,
    loop_water::SHEETS,
    tower::SHEETS,
    level::SHEETS,
    power::SHEETS,
    fill::SHEETS,
    loss::SHEETS,
];

/// Every sheet by its check, and every effect by check and mode.
struct Index {
    sheets: [Option<&'static Sheet>; Check::ALL.len()],
    effects: [[(u8, u8); Mode::ALL.len()]; Check::ALL.len()],
}

fn index() -> &'static Index {
    static INDEX: OnceLock<Box<Index>> = OnceLock::new();
    INDEX.get_or_init(|| {
        let mut index = Box::new(Index {
            sheets: [None; Check::ALL.len()],
            effects: [[(0, 0); Mode::ALL.len()]; Check::ALL.len()],
        });
        for sheet in TOPICS.iter().flat_map(|t| t.iter()) {
            let at = sheet.check as usize;
            index.sheets[at] = Some(sheet);
            for (acting, quiet, modes) in sheet.who {
                for mode in *modes {
                    index.effects[at][*mode as usize] = (*acting, *quiet);
                }
            }
        }
        index
    })
}

/// The sheet of a check.
pub(crate) fn of(check: Check) -> Option<&'static Sheet> {
    index().sheets[check as usize]
}

/// Acting and quiet effect of a mode on a check; none for a general cause.
pub(crate) fn effect(check: Check, mode: Mode) -> (u8, u8) {
    let of = index().effects[check as usize].get(mode as usize);
    of.copied().unwrap_or((0, 0))
}

/// Two answers: this chance in thousandths for the first.
const fn two(first: u16) -> Chances {
    [first, 1000 - first, 0]
}

/// Three answers: the third has the rest.
const fn three(first: u16, second: u16) -> Chances {
    [first, second, 1000 - first - second]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_check_has_one_sheet_and_every_row_adds_up() {
        let count: usize = TOPICS.iter().map(|t| t.len()).sum();
        assert_eq!(count, Check::ALL.len());
        for check in Check::ALL {
            let sheet = of(check).unwrap_or_else(|| panic!("{check:?} has no sheet"));
            let n = check.answers().len();
            for row in sheet.rows.iter().chain(sheet.low) {
                assert_eq!(row.iter().sum::<u16>(), 1000, "{check:?} {row:?}");
                assert!(
                    row[..n].iter().all(|p| *p > 0),
                    "{check:?}: {row:?} says never"
                );
                assert!(row[n..].iter().all(|p| *p == 0), "{check:?} {row:?}");
            }
            assert!(
                sheet.low.is_empty() || sheet.low.len() == sheet.rows.len(),
                "{check:?}"
            );
            let top = sheet.rows.len() as u8;
            let mut listed = vec![false; usize::from(top)];
            listed[0] = true;
            for (acting, quiet, modes) in sheet.who {
                assert!(*acting < top && *quiet < top, "{check:?}");
                listed[usize::from(*acting)] = true;
                listed[usize::from(*quiet)] = true;
                for mode in *modes {
                    let times = sheet.who.iter().filter(|w| w.2.contains(mode)).count();
                    assert_eq!(times, 1, "{check:?} lists {mode:?} {times} times");
                }
            }
            assert!(listed.iter().all(|l| *l), "{check:?} has a row nobody has");
        }
    }

    /// A check whose rows are all alike separates nothing.
    #[test]
    fn every_check_separates_something() {
        for check in Check::ALL {
            let sheet = of(check).expect("a sheet");
            let all: Vec<&Chances> = sheet.rows.iter().chain(sheet.low).collect();
            let first = |r: &Chances| f64::from(r[0]);
            let spread = all.iter().map(|r| first(r)).fold(0.0, f64::max)
                - all.iter().map(|r| first(r)).fold(1000.0, f64::min);
            assert!(spread >= 300.0, "{check:?}: {spread}");
        }
    }
}
