//! What went wrong in a calculation, in English.

use crate::physics::{Error, NoSolution, Quantity};
use crate::quantity::{System, Value, show};

pub(in crate::words) fn quantity(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Altitude => "Altitude",
        Quantity::AtmosphericPressure => "Atmospheric pressure",
        Quantity::DryBulb => "Dry bulb",
        Quantity::WetBulb => "Wet bulb",
        Quantity::AirTemperature => "Air temperature",
        Quantity::RelativeHumidity => "Relative humidity",
        Quantity::EnteringWater => "Entering water",
        Quantity::LeavingWater => "Leaving water",
        Quantity::Range => "Range",
        Quantity::WaterAirRatio => "Water to air ratio",
        Quantity::MerkelNumber => "KaV/L",
        Quantity::CharacteristicExponent => "Exponent of the tower characteristic",
        Quantity::FlowFraction => "Part of design flow",
        Quantity::LoadFraction => "Part of design heat",
        Quantity::ThermometerError => "Uncertainty of the thermometers",
        Quantity::WaterFlow | Quantity::WaterMassFlow => "Water flow",
        Quantity::AirDensity => "Air density",
        Quantity::AirFlow => "Air flow",
        Quantity::DriftFraction => "Drift",
        Quantity::Cycles => "Cycles of concentration",
        Quantity::Conductivity => "Conductivity",
        Quantity::LossRate => "Rate of water loss",
        Quantity::BasinDepth => "Basin depth",
        Quantity::BasinArea => "Basin area",
        Quantity::Level => "Water level",
        Quantity::Heat => "Heat rejected",
        Quantity::WaterVolume => "Water in the loop",
        Quantity::LoopTemperature => "Loop water",
        Quantity::Elapsed => "Time",
        Quantity::SaturationTemperature => "Saturation temperature",
        Quantity::SaturationPressure => "Refrigerant pressure",
        Quantity::CondenserLeavingWater => "Water leaving the condenser",
        Quantity::CondenserApproach => "Condenser approach",
        Quantity::Ph => "pH",
        Quantity::SkinTemperature => "Water at the hottest wall",
        Quantity::DissolvedSolids => "Dissolved solids",
        Quantity::Calcium => "Calcium as CaCO3",
        Quantity::Alkalinity => "Alkalinity as CaCO3",
        Quantity::SolidsFactor => "Solids over conductivity",
        Quantity::Voltage => "Voltage",
        Quantity::Frequency => "Frequency in Hz",
        Quantity::Resistance => "Resistance",
        Quantity::Capacitance => "Capacitance in farads",
        Quantity::Current => "Current",
        Quantity::ApparentPower => "Coil VA",
        Quantity::PowerFactor => "Power factor",
        Quantity::InrushRatio => "Inrush over holding current",
        Quantity::SeriesContacts => "Number of series contacts",
        Quantity::WireLength => "Length of wire",
        Quantity::PartLeft => "Part left by the fault",
        Quantity::MeterAccuracy => "Meter accuracy",
        Quantity::MeterReading => "Meter reading",
        Quantity::CircuitNodes => "Number of terminals",
        Quantity::ElectrodeSize => "Size of the level sensor",
        Quantity::LiquidFraction => "Liquid in the foam",
        Quantity::Margin => "Safety margin",
        Quantity::FloorFall => "Fall of the basin floor",
        Quantity::TableRows => "Number of rows",
        Quantity::WaterTemperature => "Water temperature",
        Quantity::WaterDensity => "Water density",
        Quantity::Viscosity => "Water viscosity",
        Quantity::VapourPressure => "Vapor pressure of the water",
        Quantity::CriticalPressure => "Critical pressure",
        Quantity::InletPressure => "Pressure before the valve",
        Quantity::OutletPressure => "Pressure behind the valve",
        Quantity::PressureDrop => "Pressure drop",
        Quantity::MainsPressure => "Mains pressure",
        Quantity::FlowCoefficient => "Flow coefficient Kv",
        Quantity::PressureRecovery => "Pressure recovery factor FL",
        Quantity::Bore => "Bore",
        Quantity::PipeLength => "Pipe length",
        Quantity::Roughness => "Roughness in meters",
        Quantity::Reynolds => "Reynolds number",
        Quantity::FrictionFactor => "Friction factor",
        Quantity::LossCoefficient => "Loss coefficient K",
        Quantity::DischargeCoefficient => "Discharge coefficient",
        Quantity::Lift => "Lift",
        Quantity::Head => "Head over the crest",
        Quantity::WaterPrice => "Price of water",
        Quantity::WaterSideShare => "Water side's part of the resistance",
        Quantity::WaterMass => "Water in kilograms",
        Quantity::MetalMass => "Metal in kilograms",
        Quantity::MetalSpecificHeat => "Specific heat of the metal",
        Quantity::Effectiveness => "Tower effectiveness",
        Quantity::Approach => "Approach",
        Quantity::Band => "Difference from where it settles",
        Quantity::Machines => "Number of machines",
        Quantity::TemperatureMargin => "Margin below the trip",
    }
}

pub(in crate::words) fn no_solution(why: NoSolution) -> &'static str {
    match why {
        NoSolution::Pinch => {
            "No tower can do this: the air would be as warm as the water. Check leaving water, wet \
             bulb and air flow."
        }
        NoSolution::BeyondTower => {
            "This tower cannot carry that heat with water below 140\u{a0}F. Check range and air flow."
        }
        NoSolution::Freezing => {
            "Water would leave at freezing. In this weather the fan is off or on low speed."
        }
        NoSolution::Boiling => "Water boils at this temperature and pressure.",
        NoSolution::TooDry => "The air is too dry to have a dew point.",
        NoSolution::Floating => {
            "A part of the circuit is tied to nothing, or two supplies are tied together."
        }
        NoSolution::NoPressure => {
            "The mains cannot lift water that high through these losses. Check mains pressure and \
             lift."
        }
        NoSolution::MoreThanTheLine => {
            "The line fills faster than it could with no strainer at all. Check the measured rate, \
             the bore and the mains pressure."
        }
        NoSolution::NeverReached => {
            "The level never gets there: it settles first or moves the other way."
        }
        NoSolution::StaysTooWarm => {
            "The water stays too warm with that heat on this tower. Leave machines off or restore \
             the tower first."
        }
    }
}

pub(in crate::words) fn error(error: &Error, system: System) -> String {
    match error {
        Error::OutOfRange {
            quantity: what,
            value,
            low,
            high,
        } => {
            let said = |si: f64| match what.kind() {
                Some(kind) => show(Value { kind, si }, system).to_string(),
                None => format!("{si:.3}"),
            };
            let (side, limit) = if value < low {
                ("below", low)
            } else {
                ("above", high)
            };
            format!(
                "{} {} is {side} {}, the end of what this calculation is good for.",
                quantity(*what),
                said(*value),
                said(*limit)
            )
        }
        Error::NoSolution(why) => no_solution(*why).to_owned(),
    }
}
