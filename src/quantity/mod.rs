//! The trade's quantities: units, reading what people type, showing it back.
//!
//! Typed faces use `uom`; the types every room needs are re-exported here so
//! that one place says which they are. `uom` separates a temperature from a
//! temperature difference, but not a gauge pressure from an absolute one:
//! [`GaugePressure`] does.

mod bounds;
mod gauge;
mod kind;
mod name;
pub(crate) mod named;
mod number;
mod read;
mod refusal;
mod show;
mod sort;
#[cfg(test)]
mod tests;
mod unit;
mod value;

pub use bounds::Bounds;
pub use gauge::GaugePressure;
pub use kind::{Kind, System};
pub use number::decimal;
pub use read::{Typed, read};
pub use refusal::Refusal;
pub use show::{Shown, as_typed, show, show_with};
pub use sort::sort_by;
pub use unit::Unit;
pub use uom::si::f64::{
    Area, AvailableEnergy, Capacitance, DynamicViscosity, ElectricCurrent, ElectricPotential,
    ElectricalConductivity, ElectricalResistance, Frequency, Length, Mass, MassConcentration,
    MassDensity, MassRate, Power, Pressure, Ratio, SpecificHeatCapacity, TemperatureInterval,
    ThermodynamicTemperature, Time, Velocity, Volume, VolumeRate,
};
pub use value::Value;
