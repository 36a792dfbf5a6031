//! Workings in English: titles, inputs, answers.

use super::{physics_chemistry, physics_circuit, physics_electrode, physics_head};
use crate::physics::basis::Figure;
use crate::physics::chemistry::Index;
use crate::physics::piping::ServoOpening;
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::System;
use crate::working::{Ask, Choice, Fault, METERS, POINTS, Say, Working};

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
        Ask::LevelFrom => "Draw down from, below the lip",
        Ask::LevelTo => "Draw down to, below the lip",
        Ask::DrainBore => "Drain bore",
        Ask::FillRunning => "Fill running meanwhile",
        Ask::OverflowBore => "Overflow bore",
        Ask::RunningFlow => "Flow that never stops",
        Ask::RimRoom => "Crest to rim",
        Ask::WaterPrice => "Price of 1,000 gal",
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
        Ask::Loss => "Evaporation, drift and blowdown: see the water balance.",
        Ask::LoopThen => "Entering water at which the first machine trips.",
        Ask::Heat => "All running machines: capacity plus compressor power.",
        Ask::ReadVolts | Ask::ReadAmperes => "Live parts: qualified people only.",
        Ask::ReadOhms => "Circuit dead and proven dead.",
        Ask::CoilVa => "From the nameplate.",
        Ask::Sensitivity => "Its setting, in ohms.",
        Ask::BasinConductivity => "1,500 µS/cm is taken for tower water not measured.",
        Ask::FilmThickness => "0.2 mm is a wet slime (judgement). Empty: no film.",
        Ask::FoamLiquid => "Dry foam 2%, wet foam 20%. Empty: no foam.",
        Ask::SkinWater => {
            "Condensing temperature when known, else the water leaving the condenser."
        }
        Ask::Calcium => "Calcium, not total hardness.",
        Ask::PipeFittings => "Elbow 0.75, gate valve 0.2, entry 0.5, exit 1 (common practice).",
        Ask::SolenoidCv | Ask::StrainerCv => "From the maker. Kv x 1.156 gives Cv.",
        Ask::DrainBore => {
            "The drain as a hole in the floor. Ask before treated water goes down a drain."
        }
        Ask::WaterPrice => "Water and sewer together, in your money.",
        Ask::NormalApproach => {
            "10 °F for a packaged condenser (from memory): better the site's own."
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
        Choice::BasinShape if place == 0 => "Rectangular",
        Choice::BasinShape => "Round",
        Choice::Meter => super::circuit::meter(METERS[place.min(3)]()),
        Choice::Point => super::circuit::point(POINTS[place.min(POINTS.len() - 1)]),
        Choice::YesNo => ["Yes", "No"][place.min(1)],
        Choice::Feed => ["Transformer", "The line"][place.min(1)],
        Choice::RodShape => ["Two rods", "Rod in pipe", "Rod, basin"][place.min(2)],
    }
}

/// What is said, and a line more about it.
pub(in crate::words) fn say(say: Say) -> (&'static str, &'static str) {
    use super::circuit;
    match say {
        Say::Caution(caution) => (circuit::caution(caution), ""),
        Say::Meaning(meaning) => (circuit::meaning(meaning), ""),
        Say::Wrong(fault) => (circuit::fault(fault), circuit::fault_line(fault)),
        Say::LoadIt => (
            "Read it again at low impedance, same leads: that parts what is left.",
            "",
        ),
        Say::Electrode(condition, wet, fooled) => (
            super::electrode::condition(condition),
            match (wet, fooled) {
                (true, true) => "Reads wet: the relay is fooled, and does not fill.",
                (false, true) => "Reads dry: the relay is fooled, and overfills.",
                (true, false) => "Reads wet, as it should.",
                (false, false) => "Reads dry, as it should.",
            },
        ),
        Say::Shape(shape) => (
            super::physics_tower::shape(shape),
            super::physics_tower::shape_line(shape),
        ),
        Say::Settle(settle) => (super::physics_tower::settle(settle), ""),
        Say::RuleParts(part) if part > 0.0 => ("The field rule reads high in this air, by", ""),
        Say::RuleParts(_) => ("The field rule reads low in this air, by", ""),
        Say::Treatment => (
            "Chemicals and biocides are the water treater's: goggles and gloves, and tell them \
             before anything is dosed or drained.",
            "",
        ),
        Say::Band(index, band) => (
            super::chemistry::band(band),
            match index {
                Index::Langelier => "By the Langelier index.",
                Index::Ryznar => "By the Ryznar index.",
                Index::Puckorius => "By the Puckorius index.",
            },
        ),
        Say::Refrigerant => (
            "Eyes and gloves: liquid refrigerant burns, discharge lines are hot. Certified people \
             only, by local law.",
            "",
        ),
        Say::Roof => (
            "Roof edge and wet deck: fall protection as the site requires. Fan locked out before \
             anyone reaches in; stay out of the mist, it can carry Legionella.",
            "",
        ),
        Say::Drawdown => (
            "Lock out fan and pump first. A basin may be a confined space. Treated water may not go \
             down every drain: get permission, and tell the water treater.",
            "",
        ),
        Say::Limit(item, true) => (super::chemistry::item(item), "Above this limit."),
        Say::Limit(item, false) => (super::chemistry::item(item), "Below this limit."),
        Say::Cycles(cause) => (super::chemistry::cause(cause), ""),
        Say::Servo(opening) => (
            match opening {
                ServoOpening::StaysShut => "Too little pressure for a servo valve: it stays shut.",
                ServoOpening::Doubtful => "A servo valve may not open fully on this pressure.",
                ServoOpening::Opens => "Enough pressure for a servo valve to open.",
            },
            "",
        ),
        Say::OverflowHolds => ("The overflow holds this flow below the rim.", ""),
        Say::OverflowFails => (
            "The overflow can't carry this flow: the basin runs over.",
            "",
        ),
        Say::SafeFrom => ("A setting that holds: from", ""),
        Say::SafeTo => ("to", ""),
    }
}

/// The name of a figure, as it stands over its number.
pub(in crate::words) fn figure(figure: Figure) -> &'static str {
    match figure {
        Figure::AtmosphericPressure => "Atmospheric pressure",
        Figure::WetBulb => "Wet bulb",
        Figure::RelativeHumidity => "Relative humidity",
        Figure::Approach => "Approach",
        Figure::Range => "Range",
        Figure::Effectiveness => "Effectiveness",
        Figure::MerkelNumber => "KaV/L",
        Figure::LeavingWater => "Water off the tower, expected",
        Figure::HeatRejected => "Heat rejected",
        Figure::TowerTons => "Tower tons",
        Figure::Evaporation => "Evaporation",
        Figure::EvaporationRule => "Evaporation by the field rule",
        Figure::Drift => "Drift",
        Figure::Blowdown => "Blowdown",
        Figure::Makeup => "Makeup needed",
        Figure::Cycles => "Cycles of concentration",
        Figure::MinutesToDry => "Until the basin is dry",
        Figure::WarmUp => "Warms each minute by",
        Figure::CondensingTemperature => "Condensing temperature",
        Figure::DewPoint => "Dew point",
        Figure::HumidityRatio => "Humidity ratio",
        Figure::Enthalpy => "Enthalpy",
        Figure::AirDensity => "Density of the dry air",
        Figure::EnteringWater => "Water onto the tower, expected",
        Figure::OverExpected => "Warmer than expected by",
        Figure::BasinVolume => "Water standing now",
        Figure::BasinWhenFull => "Full to the overflow",
        Figure::MinutesToLevel => "Until that level",
        Figure::MinutesToReach => "Until that temperature",
        Figure::OverLeavingWater => "Over the leaving water",
        Figure::BelowCutOut => "Below the cut-out by",
        Figure::TripsAt => "Trips when condensing at",
        Figure::WarmerToTrip => "That is warmer by",
        Figure::BubblePoint => "Bubble point",
        Figure::PipeDrop => "Lost in pipe and fittings",
        Figure::StrainerDrop => "Lost in the strainer",
        Figure::OverflowCapacity => "Carries with the water at the rim",
        Figure::WaterPerDay => "Water in a day",
        Figure::RestartWait => "Wait before the first",
        Figure::RestartHottest => "Hottest entering water",
        Figure::DewPointOfRefrigerant => "Dew point of the refrigerant",
        Figure::Circuit(figure) => physics_circuit::name(figure),
        Figure::Chemistry(figure) => physics_chemistry::name(figure),
        Figure::Head(figure) => physics_head::name(figure),
        Figure::Electrode(figure) => physics_electrode::name(figure),
        Figure::Tower(figure) => super::physics_tower::name(figure),
        Figure::Piping(figure) => super::physics_piping::name(figure),
        Figure::LoopHeat(figure) => super::physics_loop_heat::name(figure),
    }
}

pub(in crate::words) fn fault(fault: &Fault, system: System) -> String {
    match fault {
        Fault::Missing(asks) => {
            let names: Vec<_> = asks.iter().map(ask).collect();
            format!("Needs: {}.", names.join("; ").to_lowercase())
        }
        Fault::Physics(error) => super::physics::error(error, system),
        Fault::NoSafeSetting => "No setting holds: clean the electrodes first.".to_owned(),
        Fault::Order(above, below) => {
            format!(
                "{} must be more than {}.",
                ask(*above),
                ask(*below).to_lowercase()
            )
        }
    }
}
