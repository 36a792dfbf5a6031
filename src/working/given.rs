//! What a person gave, and what comes of it.

use super::ask::Ask;
use super::plot::Picture;
use crate::physics::Error;
use crate::physics::basis::Figure;
use crate::quantity::{
    ElectricalConductivity, GaugePressure, Length, Power, Ratio, TemperatureInterval,
    ThermodynamicTemperature, Value, Volume, VolumeRate,
};

/// The inputs a person gave, each in the SI form of its kind.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Given(Vec<(Ask, f64)>);

/// Why an answer can't be given.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// These are missing.
    Missing(Vec<Ask>),
    /// What was given is outside what the calculation is good for.
    Physics(Error),
    /// The first must be above the second.
    Order(Ask, Ask),
}

impl From<Error> for Fault {
    fn from(error: Error) -> Self {
        Fault::Physics(error)
    }
}

/// One answer: its name, formula and source are the figure's.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Which figure.
    pub figure: Figure,
    /// The value, or why there is none.
    pub value: Result<Value, Fault>,
}

/// The answers of a working, and its picture.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lines {
    /// The answers, the one asked for most often first.
    pub lines: Vec<Line>,
    /// A picture, where one says more and there is enough to draw it.
    pub picture: Option<Picture>,
}

impl Lines {
    /// Adds an answer.
    pub fn say(&mut self, figure: Figure, value: Result<Value, Fault>) {
        self.lines.push(Line { figure, value });
    }
}

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
                    let kind = ask.kind();
                    kind.zip(self.si(ask))
                        .and_then(|(kind, si)| Value { kind, si }.$as())
                        .ok_or(Fault::Missing(vec![ask]))
                }
            )+
        }
    };
}

typed! {
    temperature as_temperature ThermodynamicTemperature, "temperature";
    difference as_temperature_difference TemperatureInterval, "temperature difference";
    humidity as_humidity Ratio, "humidity";
    length as_length Length, "length";
    level as_level Length, "level";
    flow as_flow VolumeRate, "flow";
    part as_ratio Ratio, "part of a whole";
    number as_number f64, "plain number";
    conductivity as_conductivity ElectricalConductivity, "conductivity";
    gauge as_gauge_pressure GaugePressure, "gauge pressure";
    heat as_heat Power, "heat flow";
    volume as_volume Volume, "volume";
}

impl Given {
    /// Takes an input in the SI form of its kind, in place of an earlier one.
    pub fn set(&mut self, ask: Ask, si: f64) {
        self.0.retain(|(known, _)| *known != ask);
        self.0.push((ask, si));
    }

    /// An input in its SI form, if it was given.
    pub fn si(&self, ask: Ask) -> Option<f64> {
        self.0.iter().find(|(a, _)| *a == ask).map(|(_, si)| *si)
    }

    /// The place chosen in a choice; the first when none was.
    pub fn chosen(&self, ask: Ask) -> usize {
        self.si(ask).map_or(0, |si| si as usize)
    }
}

/// Both, or everything that is missing for either.
pub fn both<A, B>(a: Result<A, Fault>, b: Result<B, Fault>) -> Result<(A, B), Fault> {
    match (a, b) {
        (Ok(a), Ok(b)) => Ok((a, b)),
        (Err(Fault::Missing(mut some)), Err(Fault::Missing(more))) => {
            some.extend(
                more.into_iter()
                    .filter(|ask| !some.contains(ask))
                    .collect::<Vec<_>>(),
            );
            Err(Fault::Missing(some))
        }
        (Err(fault), _) | (_, Err(fault)) => Err(fault),
    }
}
