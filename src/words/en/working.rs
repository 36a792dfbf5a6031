//! Workings in English: titles, inputs, answers.

use crate::physics::refrigerant::Refrigerant;
use crate::working::{Ask, Choice, METERS, POINTS, Working};

/// Title, and the question it answers.
pub(in crate::words) fn working(working: Working) -> (&'static str, &'static str) {
    match working {
        Working::Head => (
            "Head pressure",
            "What it condenses at, and how far the cut-out is.",
        ),
        Working::Tower => (
            "Tower today",
            "Approach, and the water it should make in this air.",
        ),
        Working::Air => ("Outdoor air", "Wet bulb, dew point, enthalpy."),
        Working::TowerIf => (
            "Tower, what if",
            "Its water at another wet bulb, heat, flow or air.",
        ),
        Working::Water => ("Water balance", "Evaporation, blowdown, makeup, cycles."),
        Working::Basin => ("Basin", "What stands in it, and how long that lasts."),
        Working::Fill => (
            "Fill line",
            "What it brings, and how blocked the strainer is.",
        ),
        Working::Valve => ("One valve", "What it passes, and the Cv a flow needs."),
        Working::Inlet => ("Pump inlet", "Does enough water stand over it."),
        Working::LowFlow => (
            "Condenser short of water",
            "Where its head goes with part of the flow.",
        ),
        Working::Drain => ("Draw down and refill", "How long each takes."),
        Working::Overflow => (
            "Overflow",
            "Does it hold, and what does running water cost.",
        ),
        Working::Scale => (
            "Scale and corrosion",
            "Langelier, Ryznar, Puckorius, limits, cycles.",
        ),
        Working::Trip => ("Until a machine trips", "With no tower, or with no flow."),
        Working::Restart => ("Restart", "How long to wait, and how far apart."),
        Working::Circuit => (
            "Control circuit",
            "What the meter should read, and what a reading means.",
        ),
        Working::Electrode => (
            "Level electrodes",
            "Can film or foam fool them, and which setting holds.",
        ),
        Working::WarmUp => (
            "Loop without a tower",
            "How fast it warms, and how long you have.",
        ),
    }
}

pub(in crate::words) fn ask(ask: Ask) -> &'static str {
    match ask {
        Ask::DryBulb => "Outdoor dry bulb",
        Ask::Humidity => "Outdoor humidity",
        Ask::WetBulb => "Wet bulb, if measured",
        Ask::InletWetBulb => "Wet bulb at the air inlet",
        Ask::AnyWetBulb => "At a wet bulb of",
        Ask::HeatPart => "Heat, part of design",
        Ask::WaterPart => "Water flow, part of design",
        Ask::Altitude => "Altitude",
        Ask::HotWater => "Water onto the tower",
        Ask::ColdWater => "Water off the tower",
        Ask::Flow => "Water flow",
        Ask::DesignFlow => "Design flow",
        Ask::DesignHot => "Design: water on",
        Ask::DesignCold => "Design: water off",
        Ask::DesignWetBulb => "Design: wet bulb",
        Ask::WaterAirRatio => "Design: water to air, by mass",
        Ask::AirPart => "Air flow, part of design",
        Ask::BasinConductivity => "Conductivity, basin",
        Ask::MakeupConductivity => "Conductivity, makeup",
        Ask::DriftPart => "Drift, part of the flow",
        Ask::BasinShape => "Basin shape",
        Ask::BasinLength => "Length, or diameter",
        Ask::BasinWidth => "Width",
        Ask::FloorFall => "Floor falls by",
        Ask::BasinDepth => "Depth, lip to floor",
        Ask::LevelNow => "Level now, below the lip",
        Ask::LevelThen => "Level that matters, below the lip",
        Ask::Loss => "Water lost",
        Ask::Fluid => "Refrigerant",
        Ask::Head => "Head pressure",
        Ask::CutOut => "Cut-out on the nameplate",
        Ask::CondenserLeaving => "Water leaving the condenser",
        Ask::Heat => "Heat into the loop",
        Ask::LoopVolume => "Water in the loop",
        Ask::LoopNow => "Water now",
        Ask::LoopThen => "Water that trips",
        Ask::Meter => "Meter",
        Ask::FirstLead => "First lead on",
        Ask::SecondLead => "Second lead on",
        Ask::ReadVolts => "Volts read",
        Ask::ReadAmperes => "Amps read",
        Ask::ReadOhms => "Ohms read",
        Ask::Calling => "Does the control call",
        Ask::ControlVoltage => "Control voltage",
        Ask::CoilVa => "Coil, VA",
        Ask::Feed => "Fed from",
        Ask::Sensitivity => "Relay takes as wet up to",
        Ask::ProbeWater => "Conductivity at the probe",
        Ask::FilmThickness => "Film, thickness",
        Ask::FoamLiquid => "Foam, liquid part",
        Ask::ScaleThickness => "Scale, thickness",
        Ask::RodShape => "Electrodes",
        Ask::RodDiameter => "Rod diameter",
        Ask::RodSpacing => "Rod spacing, or pipe bore",
        Ask::RodImmersion => "Rod length in the water",
        Ask::Ph => "pH, basin",
        Ask::SkinWater => "Hottest wall the water touches",
        Ask::Calcium => "Calcium as CaCO3",
        Ask::Alkalinity => "Alkalinity as CaCO3",
        Ask::Chloride => "Chloride",
        Ask::SetCycles => "Cycles the bleed is set for",
        Ask::Mains => "Mains pressure while filling",
        Ask::Lift => "Outlet above that gauge",
        Ask::PipeBore => "Pipe bore",
        Ask::PipeLength => "Pipe length",
        Ask::PipeFittings => "Fittings, sum of K",
        Ask::Backflow => "Lost in the backflow preventer",
        Ask::StrainerCv => "Strainer Cv, clean",
        Ask::SolenoidCv => "Fill valve Cv",
        Ask::FillMeasured => "Fill flow, measured",
        Ask::ValveBefore => "Pressure before it",
        Ask::ValveBehind => "Pressure behind it",
        Ask::ValveCv => "Valve Cv",
        Ask::ValveRecovery => "Recovery factor FL",
        Ask::FlowWanted => "Flow wanted",
        Ask::InletBore => "Inlet bore",
        Ask::InletDepth => "Top of the inlet, below the lip",
        Ask::CondenserEntering => "Water entering the condenser",
        Ask::WaterSide => "Resistance on the water side",
        Ask::LevelFrom => "Draw down from, below the lip",
        Ask::LevelTo => "Draw down to, below the lip",
        Ask::DrainBore => "Drain bore",
        Ask::FillRunning => "Fill running meanwhile",
        Ask::OverflowBore => "Overflow bore",
        Ask::RunningFlow => "Flow that never stops",
        Ask::RimRoom => "Crest to rim",
        Ask::WaterPrice => "Price of 1,000\u{a0}gal",
        Ask::NormalApproach => "Usual, condensing over leaving",
        Ask::NormalRange => "Usual range of the condenser",
        Ask::CondenserWater => "Water in one condenser",
        Ask::CondenserMetal => "Metal of one condenser",
        Ask::MachineHeat => "Heat of one machine",
        Ask::Machines => "Machines to start",
        Ask::TripWater => "Entering water that trips",
        Ask::TowerEffectiveness => "Tower effectiveness",
        Ask::KeepBelow => "Stay below the trip by",
    }
}

/// Where to read it or what can hurt there; empty when the name says it all.
pub(in crate::words) fn ask_hint(ask: Ask) -> &'static str {
    match ask {
        Ask::DryBulb => "In the shade, out of the tower's discharge.",
        Ask::WetBulb => "Stands before humidity when both are given.",
        Ask::InletWetBulb => {
            "Beside the tower, fan running: stay clear of it. Shows recirculation."
        }
        Ask::Flow => "By a meter or the pump's curve.",
        Ask::WaterAirRatio => "1.2 unless the maker says otherwise (common practice, no source).",
        Ask::AirPart => "100% with the fan on high and a clean fill.",
        Ask::DriftPart => "0.005% with modern eliminators (common practice, no source).",
        Ask::CutOut => "The nameplate governs.",
        Ask::FloorFall => "Along the length, high end to low end.",
        Ask::BasinDepth => "At the deep end.",
        Ask::Loss => "Evaporation, drift and blowdown: see the water balance.",
        Ask::LoopThen => "Entering water at which the first machine trips.",
        Ask::Heat => "All running machines: capacity plus compressor power.",
        Ask::ReadVolts | Ask::ReadAmperes => "Live parts: qualified people only.",
        Ask::ReadOhms => "Circuit dead and proven dead.",
        Ask::CoilVa => "From the nameplate.",
        Ask::Sensitivity => "Its setting, in ohms.",
        Ask::ProbeWater => "1,500 µS/cm is taken for tower water not measured.",
        Ask::FilmThickness => "0.2\u{a0}mm is a wet slime (judgement). Empty: no film.",
        Ask::FoamLiquid => "Dry foam 2%, wet foam 20%. Empty: no foam.",
        Ask::SkinWater => {
            "Condensing temperature when known, else the water leaving the condenser."
        }
        Ask::Calcium => "Calcium, not total hardness.",
        Ask::PipeFittings => "Elbow 0.75, gate valve 0.2, entry 0.5, exit 1 (common practice).",
        Ask::ValveRecovery => "Globe 0.8 to 0.9, ball 0.6 (common practice, no source).",
        Ask::WaterSide => "50% when nobody knows (common practice, no source).",
        Ask::SolenoidCv | Ask::StrainerCv | Ask::ValveCv => "From the maker. Kv x 1.156 gives Cv.",
        Ask::DrainBore => {
            "The drain as a hole in the floor. Ask before treated water goes down a drain."
        }
        Ask::WaterPrice => "Water and sewer together, in your money.",
        Ask::NormalApproach => {
            "10\u{a0}°F for a packaged condenser (from memory): better the site's own."
        }
        Ask::MachineHeat => "While it pulls down a warm space.",
        Ask::TowerEffectiveness => "See Tower today.",
        Ask::ScaleThickness => "Empty: clean rods.",
        _ => "",
    }
}

pub(in crate::words) fn option(choice: Choice, place: usize) -> &'static str {
    match choice {
        Choice::Fluid => Refrigerant::ALL[place.min(Refrigerant::ALL.len() - 1)].designation(),
        Choice::BasinShape => ["Rectangular", "Round", "Sloped floor"][place.min(2)],
        Choice::Meter => super::circuit::meter(METERS[place.min(3)]()),
        Choice::Point => super::circuit::point(POINTS[place.min(POINTS.len() - 1)]),
        Choice::YesNo => ["Yes", "No"][place.min(1)],
        Choice::Feed => ["Transformer", "The line"][place.min(1)],
        Choice::RodShape => ["Two rods", "Rod in pipe", "Rod, basin"][place.min(2)],
    }
}
