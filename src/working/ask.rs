//! What a working asks for.

use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{Bounds, Kind, Unit};

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
    /// 0 rectangular, 1 round.
    BasinShape,
}

impl Choice {
    /// How many there are to choose from.
    pub fn len(self) -> usize {
        match self {
            Choice::Fluid => Refrigerant::ALL.len(),
            Choice::BasinShape => 2,
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
            Ask::DryBulb => number(Temperature, -4.0, 140.0, Fahrenheit),
            Ask::WetBulb | Ask::DesignWetBulb => number(Temperature, -4.0, 110.0, Fahrenheit),
            Ask::Humidity => number(Humidity, 1.0, 100.0, Percent),
            Ask::Altitude => number(Length, -1_000.0, 14_000.0, Foot),
            Ask::HotWater
            | Ask::ColdWater
            | Ask::DesignHot
            | Ask::DesignCold
            | Ask::CondenserLeaving
            | Ask::LoopNow
            | Ask::LoopThen => number(Temperature, 32.0, 140.0, Fahrenheit),
            Ask::Flow | Ask::DesignFlow => number(Flow, 0.5, 20_000.0, GallonPerMinute),
            Ask::WaterAirRatio => number(Number, 0.05, 20.0, One),
            Ask::AirPart => number(Ratio, 5.0, 200.0, Percent),
            Ask::BasinConductivity | Ask::MakeupConductivity => {
                number(Conductivity, 1.0, 20_000.0, MicrosiemensPerCentimetre)
            }
            Ask::DriftPart => number(Ratio, 0.0, 1.0, Percent),
            Ask::BasinLength | Ask::BasinWidth => number(Length, 0.5, 100.0, Foot),
            Ask::BasinDepth | Ask::LevelNow | Ask::LevelThen => number(Level, 0.0, 144.0, Inch),
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
            Ask::AirPart => 1.0,
            Ask::DriftPart => crate::physics::water::USUAL_DRIFT,
            Ask::BasinShape => 0.0,
            Ask::Fluid => 6.0,
            _ => return None,
        })
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
