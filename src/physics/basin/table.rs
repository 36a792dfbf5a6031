//! Tables of a basin's surface or water against the level.

use serde::{Deserialize, Serialize};
use uom::si::area::square_meter;
use uom::si::length::meter;
use uom::si::volume::cubic_meter;

use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{Area, Length, Volume};

/// Most rows a table may have.
pub const MOST_ROWS: usize = 12;

/// Least difference of two levels in a volume table, m.
const LEAST_STEP: f64 = 1e-4;

/// Rows of level below the lip and a value there, from the lip down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Rows {
    count: u8,
    all: [(f64, f64); MOST_ROWS],
}

impl Rows {
    fn new(given: impl ExactSizeIterator<Item = (f64, f64)>) -> Result<Self, Error> {
        let count = given.len();
        within(Quantity::TableRows, count as f64, 2.0, MOST_ROWS as f64)?;
        let mut all = [(0.0, 0.0); MOST_ROWS];
        for (kept, row) in all.iter_mut().zip(given) {
            *kept = row;
        }
        Ok(Self {
            count: count as u8,
            all,
        })
    }

    /// From the lip down; at least two.
    pub(super) fn rows(&self) -> &[(f64, f64)] {
        &self.all[..usize::from(self.count)]
    }
}

/// The water surface at several levels: 2 to 12 rows from the lip down. Two
/// rows at one level make a step. Above the first row and below the last the
/// walls go on upright.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Vec<(f64, f64)>", into = "Vec<(f64, f64)>")]
pub struct AreaTable(pub(super) Rows);

impl AreaTable {
    /// A table of level below the lip and surface there, from the lip down.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] for fewer than 2 or more than 12 rows, a level
    /// above the one before it or outside -20 to 20 m, a surface outside 0 to
    /// 10,000 m2, or one below 1 mm2 over two rows that are not one level.
    pub fn new(rows: &[(Length, Area)]) -> Result<Self, Error> {
        let si = |r: &(Length, Area)| (r.0.get::<meter>(), r.1.get::<square_meter>());
        Self::checked(Rows::new(rows.iter().map(si))?)
    }

    /// Its rows, from the lip down.
    pub fn rows(&self) -> impl Iterator<Item = (Length, Area)> {
        let si = |r: &(f64, f64)| (Length::new::<meter>(r.0), Area::new::<square_meter>(r.1));
        self.0.rows().iter().map(si)
    }

    fn checked(rows: Rows) -> Result<Self, Error> {
        let mut before = (-20.0, f64::MAX);
        for &(level, area) in rows.rows() {
            within(Quantity::Level, level, before.0, 20.0)?;
            let flat = level > before.0 && before.1 < 1e-6;
            within(
                Quantity::BasinArea,
                area,
                if flat { 1e-6 } else { 0.0 },
                1e4,
            )?;
            before = (level, area);
        }
        Ok(Self(rows))
    }
}

/// The water held at several levels: 2 to 12 rows from the lip down. Only
/// differences of volume count, so the water may be metered from any start.
/// Above the first row and below the last the nearest surface goes on.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Vec<(f64, f64)>", into = "Vec<(f64, f64)>")]
pub struct VolumeTable(pub(super) Rows);

impl VolumeTable {
    /// A table of level below the lip and water held there, from the lip down.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] for fewer than 2 or more than 12 rows, a level
    /// less than 0.1 mm below the one before it or outside -20 to 20 m, a
    /// volume outside 0 to 100,000 m3, or a surface between two rows outside
    /// 1 mm2 to 10,000 m2 (the water must lessen from row to row).
    pub fn new(rows: &[(Length, Volume)]) -> Result<Self, Error> {
        let si = |r: &(Length, Volume)| (r.0.get::<meter>(), r.1.get::<cubic_meter>());
        Self::checked(Rows::new(rows.iter().map(si))?)
    }

    /// Its rows, from the lip down.
    pub fn rows(&self) -> impl Iterator<Item = (Length, Volume)> {
        let si = |r: &(f64, f64)| (Length::new::<meter>(r.0), Volume::new::<cubic_meter>(r.1));
        self.0.rows().iter().map(si)
    }

    fn checked(rows: Rows) -> Result<Self, Error> {
        let mut before: Option<(f64, f64)> = None;
        for &(level, volume) in rows.rows() {
            within(Quantity::WaterVolume, volume, 0.0, 1e5)?;
            match before {
                None => within(Quantity::Level, level, -20.0, 20.0)?,
                Some((above, more)) => {
                    within(Quantity::Level, level, above + LEAST_STEP, 20.0)?;
                    let surface = (more - volume) / (level - above);
                    within(Quantity::BasinArea, surface, 1e-6, 1e4)?
                }
            };
            before = Some((level, volume));
        }
        Ok(Self(rows))
    }
}

macro_rules! stored_as_rows {
    ($($table:ident)+) => {$(
        impl TryFrom<Vec<(f64, f64)>> for $table {
            type Error = Error;

            fn try_from(rows: Vec<(f64, f64)>) -> Result<Self, Error> {
                Self::checked(Rows::new(rows.into_iter())?)
            }
        }

        impl From<$table> for Vec<(f64, f64)> {
            fn from(table: $table) -> Self {
                table.0.rows().to_vec()
            }
        }
    )+};
}

stored_as_rows! { AreaTable VolumeTable }
