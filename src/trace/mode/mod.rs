//! Fault modes: the things that can be wrong, where, and how often.

mod group;
mod table;

use crate::quantity::named::by_name;

pub use group::{Branch, Group, Place};
pub use table::{Basis, Lowers, Mode, Row};

/// Whether a fault is there all the time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Manner {
    /// Always there until corrected.
    Steady,
    /// Comes and goes by itself; often gone while tested.
    Intermittent,
}
by_name!(Manner: Steady Intermittent);

impl Mode {
    /// Its row of the table; `None` for the causes of [`Mode::GENERAL`].
    pub fn row(self) -> Option<&'static Row> {
        table::TABLE.get(self as usize)
    }

    /// Which part of the plant this mode belongs to.
    pub fn group(self) -> Group {
        match self.row() {
            Some(row) => row.group,
            None => self.general().0,
        }
    }

    /// Where the part at fault is found.
    pub fn place(self) -> Place {
        match self.row() {
            Some(row) => row.place,
            None => self.general().1,
        }
    }

    fn general(self) -> (Group, Place) {
        table::GENERAL[self as usize - Mode::ALL.len()]
    }

    /// How surely it empties the basin.
    pub fn lowers(self) -> Lowers {
        match (self.row(), self.group()) {
            (Some(row), _) => row.lowers,
            (None, Group::Sensing | Group::FillPower) => Lowers::Surely,
            (None, Group::WaterLoss) => Lowers::Sometimes,
            (None, _) => Lowers::No,
        }
    }

    /// Whether this mode can empty the basin.
    pub fn lowers_basin(self) -> bool {
        self.lowers() != Lowers::No
    }

    /// Share of this mode's cases that come and go, 0 to 1; 0 when it cannot.
    /// A general cause may do either.
    pub fn intermittent_share(self) -> f64 {
        match self.row() {
            Some(row) => f64::from(row.comes_and_goes) / 100.0,
            None => 0.5,
        }
    }

    /// Whether this mode can come and go by itself.
    pub fn can_be_intermittent(self) -> bool {
        self.intermittent_share() > 0.0
    }

    /// Minutes to put it right with the parts on hand; 0 for a general cause.
    /// Common practice, no source.
    pub fn repair_minutes(self) -> f64 {
        self.row().map_or(0.0, |row| f64::from(row.minutes))
    }

    /// The more general cause of the same part of the plant, when there is
    /// one; itself for a general cause.
    pub fn generally(self) -> Option<Mode> {
        let same = |m: &Mode| m.group() == self.group();
        Mode::GENERAL.into_iter().find(same)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_whole() {
        assert!(Mode::ALL.len() >= 50, "{}", Mode::ALL.len());
        for (i, mode) in Mode::ALL.into_iter().enumerate() {
            assert_eq!(mode as usize, i);
            let row = mode.row().expect("a row");
            assert!(row.weight > 0.0 && row.comes_and_goes <= 80 && row.minutes >= 5);
        }
        let total: f32 = Mode::ALL
            .iter()
            .filter_map(|m| m.row())
            .map(|r| r.weight)
            .sum();
        assert!((1000.0..1400.0).contains(&total), "{total}");
    }

    /// Names stored by the first release still open.
    #[test]
    fn stored_names_open() {
        for name in [
            "machine-fault",
            "conditions-beyond-design",
            "tower-air-side",
            "water-flow-low",
            "control-power-lost",
            "sensor-false-full",
            "relay-contact-open",
            "coil-open",
            "valve-stuck",
            "hand-valve-shut",
            "strainer-blocked",
            "mains-low",
            "bleed-or-leak",
        ] {
            let text = format!("\"{name}\"");
            let mode: Mode = serde_json::from_str(&text).expect(name);
            assert_eq!(serde_json::to_string(&mode).unwrap(), text);
        }
    }

    #[test]
    fn general_causes_name_their_part() {
        assert_eq!(Mode::ProbeFilm.generally(), Some(Mode::SensorFalseFull));
        assert_eq!(Mode::SensorFalseFull.place(), Place::Roof);
        assert_eq!(Mode::BleedOrLeak.group(), Group::WaterLoss);
        assert_eq!(Mode::MainsLow.generally(), None);
    }
}
