//! The basin's own scale: levels as they are read off the wall or a staff.

use uom::si::length::{inch, meter, millimeter};

use crate::quantity::{Bounds, Kind, Length, Refusal, System, Unit, decimal, read};

/// How a level is read in this basin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScaleKind {
    /// A tape from the overflow lip down.
    BelowOverflow,
    /// A staff that stands in the water, zero at its foot.
    Staff,
    /// Marks on the wall, counted upward.
    WallMarks,
}

/// A scale: what it shows at the lip, and for marks, how far they are apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// How it is read.
    pub kind: ScaleKind,
    /// The staff at the lip, or the marks counted up to the lip.
    pub lip: f64,
    /// Height of one unit of it: one metre on a staff, one mark on a wall.
    pub each: Length,
}

impl Scale {
    /// The scale from what is typed of it: the reading at the lip, and the
    /// height from mark to mark. A bare length is in inches, or millimetres; a
    /// bare reading on a staff in millimetres.
    ///
    /// # Errors
    /// As [`read`] for the part that cannot be read; [`Refusal::Empty`] for one
    /// that is missing.
    pub fn typed(kind: ScaleKind, lip: &str, each: &str, system: System) -> Result<Self, Refusal> {
        let (lip, each) = match kind {
            ScaleKind::BelowOverflow => (0.0, Length::new::<meter>(1.0)),
            ScaleKind::Staff => (
                length(lip, Unit::Millimetre)?.get::<meter>(),
                Length::new::<meter>(1.0),
            ),
            ScaleKind::WallMarks => (number(lip)?, length(each, small(system))?),
        };
        Ok(Self { kind, lip, each })
    }

    /// A level below the lip from what is typed.
    ///
    /// # Errors
    /// As [`read`]; [`Refusal::OutOfRange`] outside 0.5 m above the lip to 6 m
    /// below it.
    pub fn level(&self, text: &str, system: System) -> Result<Length, Refusal> {
        let below = match self.kind {
            ScaleKind::BelowOverflow => length(text, small(system))?,
            ScaleKind::Staff => {
                let seen = length(text, Unit::Millimetre)?;
                Length::new::<meter>(self.lip) - seen
            }
            ScaleKind::WallMarks => self.each * (self.lip - number(text)?),
        };
        let si = below.get::<meter>();
        let bounds = Bounds {
            low: -0.5,
            high: 6.0,
        };
        match bounds.contains(si) {
            true => Ok(below),
            false => Err(Refusal::OutOfRange { si, bounds }),
        }
    }

    /// What the scale shows at a level below the lip: a length on a staff,
    /// marks on a wall, the level itself on a tape.
    pub fn shows(&self, below: Length) -> f64 {
        match self.kind {
            ScaleKind::BelowOverflow => below.get::<meter>(),
            ScaleKind::Staff => self.lip - below.get::<meter>(),
            ScaleKind::WallMarks => self.lip - (below / self.each).value,
        }
    }

    /// The step of the buttons: what an eye tells apart on this scale.
    pub fn step(&self, system: System) -> Length {
        match (self.kind, system) {
            (ScaleKind::WallMarks, _) => self.each / 4.0,
            (ScaleKind::BelowOverflow, System::Us) => Length::new::<inch>(0.25),
            _ => Length::new::<millimeter>(5.0),
        }
    }
}

fn small(system: System) -> Unit {
    match system {
        System::Us => Unit::Inch,
        System::Si => Unit::Millimetre,
    }
}

fn length(text: &str, bare: Unit) -> Result<Length, Refusal> {
    let typed = read(text, Kind::Level, bare, Bounds::ANY)?;
    typed.value.as_level().ok_or(Refusal::Empty)
}

fn number(text: &str) -> Result<f64, Refusal> {
    let text = text.trim();
    match decimal(text) {
        Some(n) => Ok(n),
        _ if text.is_empty() => Err(Refusal::Empty),
        _ => Err(Refusal::NotANumber {
            near: text.chars().take(12).collect(),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(level: Result<Length, Refusal>, inches: f64) {
        let level = level.unwrap().get::<inch>();
        assert!((level - inches).abs() < 1e-9, "{level} {inches}");
    }

    #[test]
    fn three_scales_say_the_same_level() {
        use ScaleKind::*;
        let us = System::Us;
        let tape = Scale::typed(BelowOverflow, "", "", us).unwrap();
        close(tape.level("6 1/4", us), 6.25);
        close(tape.level("1' 2\"", us), 14.0);
        let staff = Scale::typed(Staff, "400", "", us).unwrap();
        close(staff.level("146", us), 10.0);
        assert!((staff.shows(Length::new::<inch>(10.0)) - 0.146).abs() < 1e-12);
        let wall = Scale::typed(WallMarks, "8", "2", us).unwrap();
        close(wall.level("4,5", us), 7.0);
        assert!((wall.shows(Length::new::<inch>(7.0)) - 4.5).abs() < 1e-12);
        assert!((wall.step(us).get::<inch>() - 0.5).abs() < 1e-12);
    }

    #[test]
    fn what_cannot_be_read_is_refused() {
        use ScaleKind::*;
        let us = System::Us;
        assert_eq!(Scale::typed(Staff, "", "", us), Err(Refusal::Empty));
        assert!(Scale::typed(WallMarks, "8", "x", us).is_err());
        let tape = Scale::typed(BelowOverflow, "", "", us).unwrap();
        assert!(tape.level("banana", us).is_err());
        let far = tape.level("900", us);
        assert!(matches!(far, Err(Refusal::OutOfRange { .. })), "{far:?}");
        assert_eq!(tape.level(" ", us), Err(Refusal::Empty));
    }
}
