//! What a working asks for.

use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{Bounds, Kind, System, Unit, Value, as_typed};

macro_rules! asks {
    ($($(#[$doc:meta])* $ask:ident,)+) => {
        /// An input. Workings share them, so that the same thing has the same
        /// name everywhere.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Ask { $($(#[$doc])* $ask,)+ }

        impl Ask {
            /// Every input.
            pub const ALL: [Ask; [$(Ask::$ask),+].len()] = [$(Ask::$ask),+];
        }
    };
}

asks! {
    /// Outdoor dry bulb.
    DryBulb,
    /// Outdoor relative humidity.
    Humidity,
    /// Outdoor wet bulb, measured.
    WetBulb,
    /// Wet bulb at the tower's air inlet.
    InletWetBulb,
    /// Any wet bulb one wants to know about.
    AnyWetBulb,
    /// Heat as a part of design.
    HeatPart,
    /// Water flow as a part of design.
    WaterPart,
    /// Height above the sea.
    Altitude,
    /// Water onto the tower.
    HotWater,
    /// Water off the tower.
    ColdWater,
    /// Circulating flow.
    Flow,
    /// Design flow of the tower.
    DesignFlow,
    /// Water onto the tower at design.
    DesignHot,
    /// Water off the tower at design.
    DesignCold,
    /// Wet bulb at design.
    DesignWetBulb,
    /// Water over dry air by mass at design.
    WaterAirRatio,
    /// Air flow as a part of design.
    AirPart,
    /// Conductivity of the basin water.
    BasinConductivity,
    /// Conductivity of the makeup water.
    MakeupConductivity,
    /// Drift as a part of the flow.
    DriftPart,
    /// Basin shape in plan.
    BasinShape,
    /// Basin length, or diameter.
    BasinLength,
    /// Basin width.
    BasinWidth,
    /// How much the floor falls along its length.
    FloorFall,
    /// Basin depth from the lip.
    BasinDepth,
    /// Level below the lip now.
    LevelNow,
    /// Level below the lip that matters.
    LevelThen,
    /// Rate of loss.
    Loss,
    /// Refrigerant on the nameplate.
    Fluid,
    /// Head pressure, gauge.
    Head,
    /// High-pressure cut-out on the nameplate, gauge.
    CutOut,
    /// Water leaving the condenser.
    CondenserLeaving,
    /// Heat into the loop.
    Heat,
    /// Water in the loop.
    LoopVolume,
    /// Loop water temperature now.
    LoopNow,
    /// Loop water temperature that matters.
    LoopThen,
    /// Which meter.
    Meter,
    /// Where the first lead is.
    FirstLead,
    /// Where the second lead is.
    SecondLead,
    /// Volts read.
    ReadVolts,
    /// Amperes read.
    ReadAmperes,
    /// Ohms read.
    ReadOhms,
    /// Whether the level control calls.
    Calling,
    /// Nominal voltage of the control circuit.
    ControlVoltage,
    /// Volt-amperes on the coil's nameplate.
    CoilVa,
    /// Fed by a transformer or off the line.
    Feed,
    /// Resistance at which the relay takes the probe as wet.
    Sensitivity,
    /// Conductivity of the water at the probe.
    ProbeWater,
    /// Thickness of a film on the holder.
    FilmThickness,
    /// Liquid part of the foam.
    FoamLiquid,
    /// Thickness of scale on the rod.
    ScaleThickness,
    /// What the current goes back to.
    RodShape,
    /// Diameter of the rod.
    RodDiameter,
    /// Between the rods, or bore of the pipe.
    RodSpacing,
    /// Length in the water.
    RodImmersion,
    /// pH of the basin water.
    Ph,
    /// Hottest wall the water touches.
    SkinWater,
    /// Calcium as CaCO3.
    Calcium,
    /// Alkalinity as CaCO3.
    Alkalinity,
    /// Chloride.
    Chloride,
    /// Cycles the bleed is set for.
    SetCycles,
    /// Mains pressure while filling.
    Mains,
    /// Height of the open end above that gauge.
    Lift,
    /// Bore of the fill pipe.
    PipeBore,
    /// Length of the fill pipe.
    PipeLength,
    /// Sum of loss coefficients of fittings.
    PipeFittings,
    /// Loss of the backflow preventer.
    Backflow,
    /// Cv of the clean strainer.
    StrainerCv,
    /// Cv of the fill valve.
    SolenoidCv,
    /// Fill flow as measured.
    FillMeasured,
    /// Pressure before a valve, gauge.
    ValveBefore,
    /// Pressure behind a valve, gauge.
    ValveBehind,
    /// Cv of a valve.
    ValveCv,
    /// Liquid pressure recovery factor of a valve.
    ValveRecovery,
    /// Flow a valve is wanted for.
    FlowWanted,
    /// Bore of the pump inlet.
    InletBore,
    /// Top of the pump inlet below the lip.
    InletDepth,
    /// Water entering the condenser.
    CondenserEntering,
    /// Part of a condenser's resistance that lies on the water side.
    WaterSide,
    /// Level at which drawing down begins.
    LevelFrom,
    /// Level to draw down to.
    LevelTo,
    /// Bore of the drain.
    DrainBore,
    /// Fill running while draining.
    FillRunning,
    /// Bore of the overflow standpipe.
    OverflowBore,
    /// Flow that never stops.
    RunningFlow,
    /// From the overflow's crest to the rim.
    RimRoom,
    /// Price of 1,000 gallons.
    WaterPrice,
    /// Usual condensing temperature over leaving water.
    NormalApproach,
    /// Usual range of the condenser.
    NormalRange,
    /// Water in one condenser.
    CondenserWater,
    /// Metal of one condenser.
    CondenserMetal,
    /// Heat of one machine.
    MachineHeat,
    /// How many machines.
    Machines,
    /// Entering water at which one trips.
    TripWater,
    /// Effectiveness of the tower.
    TowerEffectiveness,
    /// How far to stay below the trip.
    KeepBelow,
}

/// How an input is answered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Answer {
    /// A quantity within these bounds.
    Number(Kind, Bounds),
    /// One of a few.
    Choice(Choice),
}

/// A choice of one. Its SI form in [`super::Given`] is its place in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    /// A refrigerant: places in [`Refrigerant::ALL`].
    Fluid,
    /// 0 rectangular, 1 round, 2 rectangular with a floor that falls.
    BasinShape,
    /// 0 volts, 1 volts at low impedance, 2 clamp, 3 ohms.
    Meter,
    /// Terminals along the circuit.
    Point,
    /// 0 yes, 1 no.
    YesNo,
    /// 0 transformer, 1 line.
    Feed,
    /// 0 two rods, 1 rod in a pipe, 2 rod to the basin.
    RodShape,
}

impl Choice {
    /// How many there are to choose from.
    pub fn len(self) -> usize {
        match self {
            Choice::Fluid => Refrigerant::ALL.len(),
            Choice::YesNo | Choice::Feed => 2,
            Choice::BasinShape | Choice::RodShape => 3,
            Choice::Meter => 4,
            Choice::Point => super::circuit::POINTS.len(),
        }
    }

    /// Never: a choice has at least two.
    pub fn is_empty(self) -> bool {
        self.len() == 0
    }
}

impl Ask {
    /// How it is answered.
    pub fn answer(self) -> Answer {
        let number = |kind, low, high, unit| Answer::Number(kind, Bounds::of(low, high, unit));
        use Kind::*;
        use Unit::*;
        match self {
            Ask::Fluid => Answer::Choice(Choice::Fluid),
            Ask::BasinShape => Answer::Choice(Choice::BasinShape),
            Ask::Ph => number(Kind::Ph, 5.0, 11.0, Unit::Ph),
            Ask::SkinWater | Ask::TripWater => number(Temperature, 32.0, 200.0, Fahrenheit),
            Ask::Calcium | Ask::Alkalinity => {
                number(AsCalciumCarbonate, 1.0, 5_000.0, MilligramPerLitre)
            }
            Ask::Chloride => number(Concentration, 0.0, 20_000.0, MilligramPerLitre),
            Ask::SetCycles => number(Number, 1.05, 20.0, One),
            Ask::Mains => number(GaugePressure, 0.0, 290.0, Psig),
            Ask::Backflow => number(PressureDifference, 0.0, 100.0, Psi),
            Ask::Lift => number(Length, -300.0, 300.0, Foot),
            Ask::PipeLength => number(Length, 0.0, 3_000.0, Foot),
            Ask::PipeBore | Ask::DrainBore | Ask::OverflowBore | Ask::InletBore => {
                number(Level, 0.1, 24.0, Inch)
            }
            Ask::PipeFittings => number(Number, 0.0, 1_000.0, One),
            Ask::ValveBefore | Ask::ValveBehind => number(GaugePressure, 0.0, 290.0, Psig),
            Ask::ValveRecovery => number(Number, 0.3, 1.0, One),
            Ask::WaterSide => number(Ratio, 0.0, 100.0, Percent),
            Ask::StrainerCv | Ask::SolenoidCv | Ask::ValveCv => number(Number, 0.01, 5_000.0, One),
            Ask::FillMeasured | Ask::RunningFlow | Ask::FlowWanted => {
                number(Flow, 0.001, 2_000.0, GallonPerMinute)
            }
            Ask::FillRunning => number(Flow, 0.0, 2_000.0, GallonPerMinute),
            Ask::LevelFrom | Ask::LevelTo => number(Level, 0.0, 144.0, Inch),
            Ask::RimRoom => number(Level, 0.1, 48.0, Inch),
            Ask::WaterPrice => number(Number, 0.0, 1_000.0, One),
            Ask::NormalApproach => number(TemperatureDifference, 0.0, 54.0, FahrenheitDifference),
            Ask::NormalRange => number(TemperatureDifference, 0.5, 60.0, FahrenheitDifference),
            Ask::KeepBelow => number(TemperatureDifference, 0.0, 50.0, FahrenheitDifference),
            Ask::CondenserWater | Ask::CondenserMetal => number(Mass, 0.0, 20_000.0, Pound),
            Ask::MachineHeat => number(Heat, 100.0, 1e8, BtuPerHour),
            Ask::Machines => number(Number, 1.0, 24.0, One),
            Ask::TowerEffectiveness => number(Ratio, 5.0, 100.0, Percent),
            Ask::Meter => Answer::Choice(Choice::Meter),
            Ask::FirstLead | Ask::SecondLead => Answer::Choice(Choice::Point),
            Ask::Calling => Answer::Choice(Choice::YesNo),
            Ask::Feed => Answer::Choice(Choice::Feed),
            Ask::RodShape => Answer::Choice(Choice::RodShape),
            Ask::ReadVolts => number(Voltage, 0.0, 480.0, Volt),
            Ask::ReadAmperes => number(Current, 0.0, 100.0, Ampere),
            Ask::ReadOhms => number(Resistance, 0.0, 1e9, Ohm),
            Ask::ControlVoltage => number(Voltage, 5.0, 300.0, Volt),
            Ask::CoilVa => number(Number, 0.5, 2_000.0, One),
            Ask::Sensitivity => number(Resistance, 1.0, 3e6, Ohm),
            Ask::FilmThickness | Ask::ScaleThickness => number(Level, 0.001, 20.0, Millimetre),
            Ask::FoamLiquid => number(Ratio, 0.1, 100.0, Percent),
            Ask::RodDiameter => number(Level, 1.0, 50.0, Millimetre),
            Ask::RodSpacing | Ask::RodImmersion => number(Level, 1.0, 2_000.0, Millimetre),
            Ask::DryBulb => number(Temperature, -4.0, 140.0, Fahrenheit),
            Ask::WetBulb | Ask::DesignWetBulb | Ask::InletWetBulb | Ask::AnyWetBulb => {
                number(Temperature, -4.0, 110.0, Fahrenheit)
            }
            Ask::Humidity => number(Humidity, 1.0, 100.0, Percent),
            Ask::Altitude => number(Length, -1_000.0, 14_000.0, Foot),
            Ask::HotWater
            | Ask::ColdWater
            | Ask::DesignHot
            | Ask::DesignCold
            | Ask::CondenserLeaving
            | Ask::CondenserEntering
            | Ask::LoopNow
            | Ask::LoopThen => number(Temperature, 32.0, 140.0, Fahrenheit),
            Ask::Flow | Ask::DesignFlow => number(Flow, 0.5, 20_000.0, GallonPerMinute),
            Ask::WaterAirRatio => number(Number, 0.05, 20.0, One),
            Ask::AirPart | Ask::WaterPart => number(Ratio, 5.0, 200.0, Percent),
            Ask::HeatPart => number(Ratio, 1.0, 300.0, Percent),
            Ask::BasinConductivity | Ask::MakeupConductivity | Ask::ProbeWater => {
                number(Conductivity, 1.0, 20_000.0, MicrosiemensPerCentimetre)
            }
            Ask::DriftPart => number(Ratio, 0.0, 1.0, Percent),
            Ask::BasinLength | Ask::BasinWidth => number(Length, 0.5, 100.0, Foot),
            Ask::BasinDepth | Ask::FloorFall | Ask::LevelNow | Ask::LevelThen | Ask::InletDepth => {
                number(Level, 0.0, 144.0, Inch)
            }
            Ask::Loss => number(Flow, 0.001, 1_000.0, GallonPerMinute),
            Ask::Head | Ask::CutOut => number(GaugePressure, -14.0, 800.0, Psig),
            Ask::Heat => number(Heat, 1.0, 1e8, BtuPerHour),
            Ask::LoopVolume => number(Volume, 1.0, 200_000.0, Gallon),
        }
    }

    /// What is taken until the person says otherwise, in the SI form of the
    /// kind; shown in the field as an assumption.
    pub fn preset(self) -> Option<f64> {
        Some(match self {
            Ask::Altitude => 0.0,
            // 95/85/78 F: the rated condition of an open tower (US DOE
            // building energy reference).
            Ask::DesignHot => Unit::Fahrenheit.to_si(95.0),
            Ask::DesignCold => Unit::Fahrenheit.to_si(85.0),
            Ask::DesignWetBulb => Unit::Fahrenheit.to_si(78.0),
            Ask::WaterAirRatio => 1.2,
            Ask::AirPart | Ask::WaterPart | Ask::HeatPart => 1.0,
            Ask::DriftPart => crate::physics::water::USUAL_DRIFT,
            Ask::BasinShape => 0.0,
            Ask::Fluid => 6.0,
            Ask::Meter | Ask::Calling | Ask::Feed | Ask::RodShape => 0.0,
            // The coil's two terminals.
            Ask::FirstLead => 6.0,
            Ask::SecondLead => 7.0,
            Ask::SetCycles => 4.0,
            // A one-inch line with a backflow preventer (common practice, no
            // source).
            Ask::Lift => 0.0,
            Ask::PipeBore => 0.0262,
            Ask::PipeFittings => 7.8,
            Ask::Backflow => 50e3,
            Ask::StrainerCv => 16.0,
            Ask::SolenoidCv => 11.0,
            // A globe-pattern valve; half of the resistance on the water side
            // (both common practice, no source).
            Ask::ValveRecovery => 0.85,
            Ask::WaterSide => 0.5,
            Ask::ValveBehind => 0.0,
            Ask::RimRoom => 0.05,
            Ask::WaterPrice => 12.0,
            // 10 F each: a packaged condenser at its usual flow (from memory).
            Ask::NormalApproach | Ask::NormalRange => 10.0 / 1.8,
            Ask::CondenserWater => 30.0,
            Ask::CondenserMetal => 60.0,
            Ask::TowerEffectiveness => 0.6,
            Ask::KeepBelow => 5.0 / 1.8,
            Ask::ControlVoltage => 24.0,
            Ask::CoilVa => 10.0,
            // A usual relay, and rods as makers draw them (common practice,
            // no source).
            Ask::Sensitivity => 20e3,
            Ask::RodDiameter => 0.006,
            Ask::RodSpacing => 0.040,
            Ask::RodImmersion => 0.050,
            _ => return None,
        })
    }

    /// The unit its field is labelled with: that of the system, save what is
    /// millimetres everywhere.
    pub fn unit(self, system: System, kind: Kind) -> Unit {
        match self {
            Ask::FilmThickness | Ask::ScaleThickness => Unit::Millimetre,
            _ => system.unit_for(kind),
        }
    }

    /// A known value as one would type it into the field, and the unit of a
    /// bare number there.
    pub fn typed(self, system: System, value: Value) -> (String, Unit) {
        let unit = self.unit(system, value.kind);
        (as_typed(value, unit, system), unit)
    }

    /// Its bit in a set of inputs.
    pub(super) fn bit(self) -> u128 {
        1 << self as u32
    }

    /// The kind, when it is a quantity.
    pub fn kind(self) -> Option<Kind> {
        match self.answer() {
            Answer::Number(kind, _) => Some(kind),
            Answer::Choice(_) => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::read;

    #[test]
    fn a_preset_in_its_field_reads_back_as_itself() {
        let mut checked = 0;
        for ask in Ask::ALL {
            let (Answer::Number(kind, bounds), Some(si)) = (ask.answer(), ask.preset()) else {
                continue;
            };
            for system in [System::Us, System::Si] {
                let (text, unit) = ask.typed(system, Value { kind, si });
                let back = read(&text, kind, unit, bounds)
                    .unwrap_or_else(|e| panic!("{ask:?} {text}: {e:?}"))
                    .value
                    .si;
                let near = (back - si).abs() <= 0.06 * si.abs() + 1e-9;
                assert!(near, "{ask:?}: {text} {unit:?} is {back}, not {si}");
                checked += 1;
            }
        }
        assert!(checked > 40, "{checked}");
    }
}
