//! The trade's quantities: units, reading what people type, showing it back.
//!
//! Typed faces use `uom`; the types every room needs are re-exported here so
//! that one place says which they are. Two things `uom` does not separate are
//! separated here: a temperature from a temperature difference (uom does that
//! one), and a gauge pressure from an absolute one ([`GaugePressure`]).

mod gauge;

pub use gauge::GaugePressure;
pub use uom::si::f64::{
    Area, AvailableEnergy, ElectricCurrent, ElectricPotential, ElectricalConductivity,
    ElectricalResistance, Length, MassDensity, MassRate, Power, Pressure, Ratio,
    TemperatureInterval, ThermodynamicTemperature, Time, Velocity, Volume, VolumeRate,
};
