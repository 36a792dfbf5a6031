//! What can go wrong in a calculation, as data.

use crate::quantity::Kind;

/// The input an [`Error`] is about. The unit given is the one `value`, `low`
/// and `high` are in; it is always the SI base unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Altitude above sea level, m.
    Altitude,
    /// Local atmospheric pressure, Pa absolute.
    AtmosphericPressure,
    /// Dry-bulb temperature of the air, K.
    DryBulb,
    /// Wet-bulb temperature of the air, K.
    WetBulb,
    /// Temperature of saturated air, K.
    AirTemperature,
    /// Relative humidity, 0 to 1.
    RelativeHumidity,
    /// Water entering the tower (hot), K.
    EnteringWater,
    /// Water leaving the tower (cold), K.
    LeavingWater,
    /// Entering less leaving water temperature, K.
    Range,
    /// Water mass flow over dry-air mass flow.
    WaterAirRatio,
    /// Merkel number KaV/L.
    MerkelNumber,
    /// Exponent n of the tower characteristic.
    CharacteristicExponent,
    /// Flow as a fraction of the design flow.
    FlowFraction,
    /// Heat as a fraction of the design heat.
    LoadFraction,
    /// Standard uncertainty of a thermometer, K.
    ThermometerError,
    /// Water flow, m3/s.
    WaterFlow,
    /// Water mass flow, kg/s.
    WaterMassFlow,
    /// Density of the dry air in moist air, kg/m3.
    AirDensity,
    /// Air flow, m3/s.
    AirFlow,
    /// Drift as a fraction of the flow.
    DriftFraction,
    /// Cycles of concentration.
    Cycles,
    /// Electrical conductivity of the water, S/m.
    Conductivity,
    /// Rate of water loss, m3/s.
    LossRate,
    /// Depth of the basin, m.
    BasinDepth,
    /// Plan area of the basin, m2.
    BasinArea,
    /// Level below the overflow lip, m.
    Level,
    /// Heat flow, W.
    Heat,
    /// Volume of water in the loop, m3.
    WaterVolume,
    /// Temperature of the water in the loop, K.
    LoopTemperature,
    /// Elapsed time, s.
    Elapsed,
    /// Saturation temperature of the refrigerant, K.
    SaturationTemperature,
    /// Saturation pressure of the refrigerant, Pa absolute.
    SaturationPressure,
    /// Water leaving a condenser, K.
    CondenserLeavingWater,
    /// Condensing temperature less water leaving the condenser, K.
    CondenserApproach,
    /// pH of the water.
    Ph,
    /// Water at the hottest wall, K.
    SkinTemperature,
    /// Total dissolved solids, kg/m3.
    DissolvedSolids,
    /// Calcium as calcium carbonate, kg/m3.
    Calcium,
    /// Total alkalinity as calcium carbonate, kg/m3.
    Alkalinity,
    /// Dissolved solids over conductivity, (mg/L)/(uS/cm).
    SolidsFactor,
    /// Voltage of a supply, a coil or a live neighbour, V.
    Voltage,
    /// Frequency, Hz.
    Frequency,
    /// Electrical resistance, ohm.
    Resistance,
    /// Electrical capacitance, F.
    Capacitance,
    /// Electric current, A.
    Current,
    /// Volt-amperes of a coil, VA.
    ApparentPower,
    /// Power factor.
    PowerFactor,
    /// Inrush over holding current.
    InrushRatio,
    /// Number of contacts in series, or which of them.
    SeriesContacts,
    /// One-way length of a wire run, m.
    WireLength,
    /// Part of a whole that a fault leaves.
    PartLeft,
    /// Part by which a meter may be off.
    MeterAccuracy,
    /// What a meter shows, V, A or ohm.
    MeterReading,
    /// Number of nodes of a circuit.
    CircuitNodes,
    /// A length of the level sensor, m.
    ElectrodeSize,
    /// Part of a foam that is liquid.
    LiquidFraction,
    /// Safety margin as a factor.
    Margin,
    /// How much the basin's floor falls from end to end, m.
    FloorFall,
    /// Rows of a table.
    TableRows,
    /// Temperature of mains or basin water, K.
    WaterTemperature,
    /// Density of the water, kg/m3.
    WaterDensity,
    /// Dynamic viscosity of the water, Pa s.
    Viscosity,
    /// Vapour pressure of the water, Pa absolute.
    VapourPressure,
    /// Critical pressure of the liquid, Pa absolute.
    CriticalPressure,
    /// Water pressure before a valve, Pa absolute.
    InletPressure,
    /// Water pressure behind a valve, Pa absolute.
    OutletPressure,
    /// Pressure lost in a valve or fitting, Pa.
    PressureDrop,
    /// Pressure of the water mains, Pa gauge.
    MainsPressure,
    /// Flow coefficient Kv of a valve or strainer, m3/h at 1 bar.
    FlowCoefficient,
    /// Liquid pressure recovery factor FL of a valve.
    PressureRecovery,
    /// Inside bore of a pipe or hole, m.
    Bore,
    /// Length of a pipe, m.
    PipeLength,
    /// Roughness of a pipe's wall, m.
    Roughness,
    /// Reynolds number.
    Reynolds,
    /// Darcy friction factor.
    FrictionFactor,
    /// Sum of the loss coefficients of fittings.
    LossCoefficient,
    /// Discharge coefficient of a hole or weir.
    DischargeCoefficient,
    /// Height one end of a pipe stands above the other, m.
    Lift,
    /// Water level above the crest of an overflow, m.
    Head,
    /// Price of water, money per m3.
    WaterPrice,
    /// Part of a condenser's resistance to heat on its water side.
    WaterSideShare,
    /// Mass of water standing in a condenser, kg.
    WaterMass,
    /// Mass of metal, kg.
    MetalMass,
    /// Specific heat of metal, J/(kg K).
    MetalSpecificHeat,
    /// Tower effectiveness, range over range plus approach.
    Effectiveness,
    /// Water less wet bulb that a tower keeps, K.
    Approach,
    /// Difference from the final temperature, K.
    Band,
    /// Machines on the loop.
    Machines,
    /// How far below its trip temperature water is kept, K.
    TemperatureMargin,
}

impl Quantity {
    /// The kind to show it as; `None` for those without a unit of their own.
    pub fn kind(self) -> Option<Kind> {
        Some(match self {
            Quantity::Altitude | Quantity::PipeLength | Quantity::Lift => Kind::Length,
            Quantity::AtmosphericPressure
            | Quantity::SaturationPressure
            | Quantity::VapourPressure
            | Quantity::CriticalPressure
            | Quantity::InletPressure
            | Quantity::OutletPressure => Kind::AbsolutePressure,
            Quantity::PressureDrop => Kind::PressureDifference,
            Quantity::MainsPressure => Kind::GaugePressure,
            Quantity::DryBulb
            | Quantity::WetBulb
            | Quantity::AirTemperature
            | Quantity::EnteringWater
            | Quantity::LeavingWater
            | Quantity::LoopTemperature
            | Quantity::WaterTemperature
            | Quantity::SaturationTemperature
            | Quantity::CondenserLeavingWater
            | Quantity::SkinTemperature => Kind::Temperature,
            Quantity::Range
            | Quantity::ThermometerError
            | Quantity::CondenserApproach
            | Quantity::Approach
            | Quantity::Band
            | Quantity::TemperatureMargin => Kind::TemperatureDifference,
            Quantity::RelativeHumidity => Kind::Humidity,
            Quantity::WaterFlow | Quantity::LossRate | Quantity::AirFlow => Kind::Flow,
            Quantity::FlowFraction
            | Quantity::LoadFraction
            | Quantity::DriftFraction
            | Quantity::WaterSideShare
            | Quantity::Effectiveness => Kind::Ratio,
            Quantity::Conductivity => Kind::Conductivity,
            Quantity::BasinDepth
            | Quantity::Level
            | Quantity::FloorFall
            | Quantity::Head
            | Quantity::Bore => Kind::Level,
            Quantity::WaterDensity => Kind::Density,
            Quantity::Ph => Kind::Ph,
            Quantity::DissolvedSolids => Kind::Concentration,
            Quantity::Calcium | Quantity::Alkalinity => Kind::AsCalciumCarbonate,
            Quantity::BasinArea => Kind::Area,
            Quantity::Heat => Kind::Heat,
            Quantity::WaterVolume => Kind::Volume,
            Quantity::Elapsed => Kind::Duration,
            Quantity::Voltage => Kind::Voltage,
            Quantity::Resistance => Kind::Resistance,
            Quantity::Current => Kind::Current,
            Quantity::WireLength => Kind::Length,
            Quantity::ElectrodeSize => Kind::Level,
            Quantity::PartLeft | Quantity::MeterAccuracy | Quantity::LiquidFraction => Kind::Ratio,
            Quantity::WaterAirRatio
            | Quantity::MerkelNumber
            | Quantity::CharacteristicExponent
            | Quantity::WaterMassFlow
            | Quantity::AirDensity
            | Quantity::SolidsFactor
            | Quantity::Cycles
            | Quantity::Frequency
            | Quantity::Capacitance
            | Quantity::ApparentPower
            | Quantity::PowerFactor
            | Quantity::InrushRatio
            | Quantity::SeriesContacts
            | Quantity::MeterReading
            | Quantity::CircuitNodes
            | Quantity::Margin
            | Quantity::TableRows
            | Quantity::Viscosity
            | Quantity::FlowCoefficient
            | Quantity::PressureRecovery
            | Quantity::Roughness
            | Quantity::Reynolds
            | Quantity::FrictionFactor
            | Quantity::LossCoefficient
            | Quantity::DischargeCoefficient
            | Quantity::WaterPrice
            | Quantity::WaterMass
            | Quantity::MetalMass
            | Quantity::MetalSpecificHeat
            | Quantity::Machines => return None,
        })
    }
}

/// Why a duty inside every range still has no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoSolution {
    /// The air would become as warm as the water: no tower does this duty.
    Pinch,
    /// The tower cannot carry this range with water below the top of the range.
    BeyondTower,
    /// The leaving water would be at or below freezing.
    Freezing,
    /// Water boils at this temperature and pressure.
    Boiling,
    /// The air is too dry to have a dew point in range.
    TooDry,
    /// A part of a circuit is tied to nothing, or supplies to each other.
    Floating,
    /// The mains cannot lift water to the outlet of the fill line.
    NoPressure,
    /// The line passed more water than it can with no strainer at all.
    MoreThanTheLine,
    /// The level settles before it gets there, or moves the other way.
    NeverReached,
    /// The loop settles above the temperature asked for.
    StaysTooWarm,
}

/// Why a calculation gives no number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// An input is outside the range the method is good for. Bounds are
    /// inclusive; all three are in the SI base unit of the quantity.
    OutOfRange {
        /// Which input.
        quantity: Quantity,
        /// What was given.
        value: f64,
        /// Lowest value accepted.
        low: f64,
        /// Highest value accepted.
        high: f64,
    },
    /// Every input is in range, yet no state of the plant satisfies them.
    NoSolution(NoSolution),
}

impl std::fmt::Display for Error {
    /// For logs and developers; people read `Words`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Error::OutOfRange {
                quantity,
                value,
                low,
                high,
            } => {
                write!(f, "{quantity:?} {value} is outside {low} to {high} (SI)")
            }
            Error::NoSolution(why) => write!(f, "no solution: {why:?}"),
        }
    }
}

impl std::error::Error for Error {}

/// The value itself if it lies in `low..=high`; NaN and infinities do not.
///
/// # Errors
/// [`Error::OutOfRange`] otherwise.
pub(super) fn within(quantity: Quantity, value: f64, low: f64, high: f64) -> Result<f64, Error> {
    if (low..=high).contains(&value) {
        Ok(value)
    } else {
        Err(Error::OutOfRange {
            quantity,
            value,
            low,
            high,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_are_in_and_nan_is_out() {
        assert_eq!(within(Quantity::Cycles, 2.0, 2.0, 3.0), Ok(2.0));
        assert_eq!(within(Quantity::Cycles, 3.0, 2.0, 3.0), Ok(3.0));
        assert!(within(Quantity::Cycles, f64::NAN, 2.0, 3.0).is_err());
        let error = within(Quantity::Cycles, 3.5, 2.0, 3.0).unwrap_err();
        let Error::OutOfRange {
            quantity,
            value,
            low,
            high,
        } = error
        else {
            panic!("wrong kind: {error:?}")
        };
        assert_eq!(
            (quantity, value, low, high),
            (Quantity::Cycles, 3.5, 2.0, 3.0)
        );
    }
}
