//! Grids of reference figures, and the worst error found over one.
//!
//! The grids stand in `tests/reference`; the script of the same name makes
//! them, and `./dev reference` makes them again and compares.

/// A grid read from its CSV.
pub struct Grid {
    header: Vec<&'static str>,
    rows: Vec<Vec<&'static str>>,
}

/// One row of a grid.
pub struct Row<'a> {
    grid: &'a Grid,
    cells: &'a [&'static str],
}

impl Grid {
    /// Reads `text` as it was committed; a ragged grid fails.
    pub fn read(text: &'static str) -> Self {
        let mut lines = text.lines().map(|l| l.split(',').collect::<Vec<_>>());
        let header = lines.next().expect("a header");
        let rows: Vec<_> = lines.collect();
        assert!(!rows.is_empty(), "the grid {header:?} has no rows");
        for row in &rows {
            assert_eq!(row.len(), header.len(), "ragged row {row:?}");
        }
        Self { header, rows }
    }

    /// Every row.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.rows.iter().map(|cells| Row { grid: self, cells })
    }
}

impl Row<'_> {
    /// The word in a column.
    pub fn word(&self, column: &str) -> &'static str {
        let at = self.grid.header.iter().position(|h| *h == column);
        self.cells[at.unwrap_or_else(|| panic!("no column {column}"))]
    }

    /// The number in a column; `None` where the reference gave none.
    pub fn maybe(&self, column: &str) -> Option<f64> {
        let word = self.word(column);
        (!word.is_empty()).then(|| word.parse().unwrap_or_else(|_| panic!("{column}: {word}")))
    }

    /// The number in a column.
    pub fn number(&self, column: &str) -> f64 {
        self.maybe(column)
            .unwrap_or_else(|| panic!("{column} is empty in {:?}", self.cells))
    }

    /// The whole row, for a message.
    pub fn said(&self) -> String {
        self.cells.join(",")
    }
}

/// How far a quantity is from its reference at worst, and how far it may be.
pub struct Accuracy {
    /// What was checked, as the docs' table says it.
    pub quantity: &'static str,
    /// Against what.
    pub reference: &'static str,
    /// Unit of the error and the tolerance: `%` for a part of the value.
    pub unit: &'static str,
    /// Largest error allowed.
    pub tolerance: f64,
    points: usize,
    worst: f64,
    at: String,
}

impl Accuracy {
    /// Nothing checked yet.
    pub fn of(
        quantity: &'static str,
        reference: &'static str,
        tolerance: f64,
        unit: &'static str,
    ) -> Self {
        Self {
            quantity,
            reference,
            unit,
            tolerance,
            points: 0,
            worst: 0.0,
            at: String::new(),
        }
    }

    /// One more point; `%` compares as a part of `want`, else as a difference.
    pub fn point(&mut self, got: f64, want: f64, at: impl FnOnce() -> String) {
        let error = match self.unit {
            "%" => 100.0 * ((got - want) / want).abs(),
            _ => (got - want).abs(),
        };
        self.points += 1;
        assert!(!error.is_nan(), "{}: {got} at {}", self.quantity, at());
        if error > self.worst {
            self.worst = error;
            self.at = at();
        }
    }

    /// Fails when a point was too far off or none was checked.
    pub fn held(self) -> Self {
        assert!(self.points > 0, "{}: no point was checked", self.quantity);
        assert!(
            self.worst <= self.tolerance,
            "{}: off by {} {} at {}, {} allowed",
            self.quantity,
            self.worst,
            self.unit,
            self.at,
            self.tolerance
        );
        self
    }

    /// The line of the docs' table.
    pub fn line(&self) -> String {
        format!(
            "| {} | {} | {} | {} {} | {} {} |",
            self.quantity,
            self.reference,
            self.points,
            digits(self.worst),
            self.unit,
            self.tolerance,
            self.unit
        )
    }
}

/// Two significant digits, rounded up, so that the table never understates.
fn digits(worst: f64) -> String {
    if worst < 1e-9 {
        return "0".to_owned();
    }
    let place = 10f64.powi(1 - worst.log10().floor() as i32);
    let up = (worst * place).ceil() / place;
    let places = (1 - worst.log10().floor() as i32).max(0) as usize;
    format!("{up:.places$}")
}
