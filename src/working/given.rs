//! What a person gave, and what comes of it.
//!
//! Everything here is `Copy` and every answer a plain function: a phone
//! downloads this once for each calculation.

use super::ask::Ask;
use super::plot::Picture;
use crate::physics::Error;
use crate::physics::basis::Figure;
use crate::quantity::{
    ElectricPotential, ElectricalConductivity, ElectricalResistance, GaugePressure, Length, Mass,
    MassConcentration, Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature,
    Value, Volume, VolumeRate,
};

/// The inputs a person gave, each in the SI form of its kind; NaN where none.
#[derive(Clone, Debug, PartialEq)]
pub struct Given([f64; Ask::ALL.len()]);

impl Default for Given {
    fn default() -> Self {
        Self([f64::NAN; Ask::ALL.len()])
    }
}

/// A set of inputs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Asks(u128);

impl Asks {
    /// The inputs, in the order of [`Ask::ALL`].
    pub fn iter(self) -> impl Iterator<Item = Ask> {
        Ask::ALL.into_iter().filter(move |a| self.0 & a.bit() != 0)
    }
}

/// Why an answer can't be given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// These are missing.
    Missing(Asks),
    /// What was given is outside what the calculation is good for.
    Physics(Error),
    /// The first must be above the second.
    Order(Ask, Ask),
    /// No setting of the relay is safe from being fooled.
    NoSafeSetting,
}

impl Fault {
    /// This one input is missing.
    pub fn missing(ask: Ask) -> Self {
        Fault::Missing(Asks(ask.bit()))
    }
}

impl From<Error> for Fault {
    fn from(error: Error) -> Self {
        Fault::Physics(error)
    }
}

/// A value, or why there is none.
pub type Answered = Result<Value, Fault>;

/// An answer a working gives: its figure (whose name, formula and source
/// stand beside it), and the calculation.
pub type Row = (Figure, fn(&Given) -> Answered);

/// A working's picture, when there is enough to draw it.
pub type Draw = fn(&Given) -> Option<Picture>;

macro_rules! typed {
    ($($get:ident $as:ident $quantity:ty, $what:literal;)+) => {
        impl Given {
            $(
                #[doc = concat!("The ", $what, " given for an input.")]
                ///
                /// # Errors
                /// [`Fault::Missing`] when it was not given, or the input is of
                /// another kind.
                pub fn $get(&self, ask: Ask) -> Result<$quantity, Fault> {
                    self.value(ask)?.$as().ok_or(Fault::missing(ask))
                }
            )+
        }
    };
}

typed! {
    temperature as_temperature ThermodynamicTemperature, "temperature";
    humidity as_humidity Ratio, "humidity";
    length as_length Length, "length";
    level as_level Length, "level";
    flow as_flow VolumeRate, "flow";
    part as_ratio Ratio, "part of a whole";
    number as_number f64, "plain number";
    conductivity as_conductivity ElectricalConductivity, "conductivity";
    gauge as_gauge_pressure GaugePressure, "gauge pressure";
    drop as_pressure_difference Pressure, "difference of two pressures";
    heat as_heat Power, "heat flow";
    volume as_volume Volume, "volume";
    difference as_temperature_difference TemperatureInterval, "temperature difference";
    ph as_ph f64, "pH";
    as_calcium as_calcium_carbonate MassConcentration, "concentration as CaCO3";
    concentration as_concentration MassConcentration, "concentration";
    mass as_mass Mass, "mass";
    voltage as_voltage ElectricPotential, "voltage";
    resistance as_resistance ElectricalResistance, "resistance";
}

impl Given {
    /// Takes an input in the SI form of its kind, in place of an earlier one.
    pub fn set(&mut self, ask: Ask, si: f64) {
        self.0[ask as usize] = si;
    }

    /// An input in its SI form, if it was given.
    pub fn si(&self, ask: Ask) -> Option<f64> {
        Some(self.0[ask as usize]).filter(|si| !si.is_nan())
    }

    /// Whether an input was given.
    pub fn has(&self, ask: Ask) -> bool {
        self.si(ask).is_some()
    }

    /// The place chosen in a choice; the first when none was.
    pub fn chosen(&self, ask: Ask) -> usize {
        self.si(ask).map_or(0, |si| si as usize)
    }

    /// Goes on only when all of these were given.
    ///
    /// # Errors
    /// [`Fault::Missing`] with every one that was not.
    pub fn need(&self, asks: &[Ask]) -> Result<(), Fault> {
        let missing = asks.iter().filter(|a| !self.has(**a));
        match missing.fold(0, |set, a| set | a.bit()) {
            0 => Ok(()),
            set => Err(Fault::Missing(Asks(set))),
        }
    }

    fn value(&self, ask: Ask) -> Result<Value, Fault> {
        self.need(&[ask])?;
        let kind = ask.kind().ok_or(Fault::missing(ask))?;
        Ok(Value {
            kind,
            si: self.0[ask as usize],
        })
    }
}
