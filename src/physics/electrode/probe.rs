//! Whether a relay of a given sensitivity is fooled, and which setting is not.

use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::electrical_resistance::ohm;
use uom::si::ratio::ratio;

use super::cover::{Film, Foam, Leakage, Scale};
use super::shape::{Shape, touching};
use crate::physics::error::{Error, Quantity, within};
use crate::quantity::{ElectricalConductivity, ElectricalResistance, Length, Ratio};

/// The water, and how its conductivity is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Water {
    /// Measured today.
    Measured(ElectricalConductivity),
    /// Not measured, tower water after some cycles: taken as 1,500 uS/cm
    /// (common practice, no source).
    Cycled,
    /// Not measured, fresh from the mains: taken as 300 uS/cm (common
    /// practice, no source).
    Mains,
}

impl Water {
    /// The conductivity reckoned with.
    pub fn conductivity(self) -> ElectricalConductivity {
        match self {
            Water::Measured(measured) => measured,
            Water::Cycled => ElectricalConductivity::new::<siemens_per_meter>(0.15),
            Water::Mains => ElectricalConductivity::new::<siemens_per_meter>(0.03),
        }
    }
}

/// One electrode against its reference, with what may be on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Probe {
    /// Rods, or rod and pipe or basin.
    pub shape: Shape,
    /// Length in the water when it counts as wet, one diameter to 5 m.
    pub immersion: Length,
    /// The water.
    pub water: Water,
    /// A film that bridges it when the water is away, if there may be one.
    pub film: Option<Film>,
    /// Foam that stands round it when the water is away, if there may be some.
    pub foam: Option<Foam>,
    /// A coat on the rod, if there may be one.
    pub scale: Option<Scale>,
    /// What leaks all the time.
    pub leakage: Leakage,
}

/// A condition the electrode can be in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Condition {
    /// Out of the water, clean and dry.
    Dry,
    /// Out of the water, bridged by the film.
    Film,
    /// Out of the water, standing in foam.
    Foam,
    /// Its tip just touches.
    Touching,
    /// In the water, clean.
    Water,
    /// In the water, coated.
    Scaled,
}

impl Condition {
    /// Every condition.
    pub const ALL: [Condition; 6] = [
        Condition::Dry,
        Condition::Film,
        Condition::Foam,
        Condition::Touching,
        Condition::Water,
        Condition::Scaled,
    ];

    /// Whether water is there; a tip that just touches is right either way.
    pub fn wet(self) -> Option<bool> {
        match self {
            Condition::Dry | Condition::Film | Condition::Foam => Some(false),
            Condition::Touching => None,
            Condition::Water | Condition::Scaled => Some(true),
        }
    }
}

/// What the relay makes of one condition.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sensed {
    /// The condition.
    pub condition: Condition,
    /// Resistance at the relay's terminals.
    pub resistance: ElectricalResistance,
    /// The relay takes it as wet.
    pub reads_wet: bool,
    /// And is wrong in that.
    pub fooled: bool,
}

impl Probe {
    /// Resistance at the relay's terminals in a condition; `None` when there is
    /// no film, foam or coat to be in.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a part is outside its stated range.
    pub fn resistance(&self, condition: Condition) -> Result<Option<ElectricalResistance>, Error> {
        let kappa = self.water.conductivity();
        let d = self.shape.diameter();
        let tip = || touching(d, kappa);
        // The tip alone carries more than a short rod between flat walls would.
        let through = |length| Ok::<_, Error>(self.shape.resistance(length, kappa)?.min(tip()?));
        let path = match condition {
            Condition::Dry => None,
            Condition::Touching => Some(tip()?),
            Condition::Water => Some(through(self.immersion)?),
            Condition::Film => match self.film {
                Some(film) => Some(film.resistance()?),
                None => return Ok(None),
            },
            Condition::Foam => match self.foam {
                Some(foam) => {
                    let sigma = foam.relative_conductivity()?;
                    Some(self.shape.resistance(foam.wetted, kappa)? / sigma)
                }
                None => return Ok(None),
            },
            Condition::Scaled => match self.scale {
                Some(scale) => {
                    Some(through(self.immersion)? + scale.resistance(d, self.immersion)?)
                }
                None => return Ok(None),
            },
        };
        self.leakage.beside(path).map(Some)
    }

    /// What a relay that takes `sensitivity` and less as wet makes of every
    /// condition this probe can be in.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a part is outside its stated range or the
    /// sensitivity outside 1 ohm to 100 Mohm.
    pub fn sensed(&self, sensitivity: ElectricalResistance) -> Result<Vec<Sensed>, Error> {
        within(Quantity::Resistance, sensitivity.get::<ohm>(), 1.0, 1e8)?;
        let mut all = Vec::new();
        for condition in Condition::ALL {
            if let Some(resistance) = self.resistance(condition)? {
                let reads_wet = resistance <= sensitivity;
                all.push(Sensed {
                    condition,
                    resistance,
                    reads_wet,
                    fooled: condition.wet().is_some_and(|wet| wet != reads_wet),
                });
            }
        }
        Ok(all)
    }

    /// The range of sensitivities that no condition fools, `margin` away from
    /// each: from margin times the highest wet resistance to the lowest dry one
    /// over margin. `None` when no setting does.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a part is outside its stated range or the
    /// margin outside 1 to 100.
    pub fn safe_settings(
        &self,
        margin: Ratio,
    ) -> Result<Option<(ElectricalResistance, ElectricalResistance)>, Error> {
        let margin = within(Quantity::Margin, margin.get::<ratio>(), 1.0, 100.0)?;
        let mut low = ElectricalResistance::new::<ohm>(0.0);
        let mut high = ElectricalResistance::new::<ohm>(f64::MAX);
        for condition in Condition::ALL {
            match (condition.wet(), self.resistance(condition)?) {
                (Some(true), Some(r)) => low = low.max(r * margin),
                (Some(false), Some(r)) => high = high.min(r / margin),
                _ => {}
            }
        }
        Ok((low <= high).then_some((low, high)))
    }
}
