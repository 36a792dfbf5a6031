//! What workings find, in English: figures, sayings, what is missing.

use crate::physics::basis::Figure;
use crate::physics::chemistry::Index;
use crate::physics::piping::ServoOpening;
use crate::quantity::System;
use crate::working::{Fault, Say};

use super::working::ask;
use super::{physics_chemistry, physics_circuit, physics_electrode, physics_head};

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
        Say::Limit(item, true) => (
            super::chemistry::item(item),
            "Above this limit of a maker's sheet for galvanized towers. Your water treater's govern.",
        ),
        Say::Limit(item, false) => (
            super::chemistry::item(item),
            "Below this limit of a maker's sheet for galvanized towers. Your water treater's govern.",
        ),
        Say::Cycles(cause) => (super::chemistry::cause(cause), ""),
        Say::Servo(opening) => (
            match opening {
                ServoOpening::StaysShut => "Too little pressure for a servo valve: it stays shut.",
                ServoOpening::Doubtful => "A servo valve may not open fully on this pressure.",
                ServoOpening::Opens => "Enough pressure for a servo valve to open.",
            },
            "",
        ),
        Say::Choked => (
            "The valve chokes: less pressure behind it brings no more.",
            "It is loud, and wears the seat.",
        ),
        Say::InletDrawsAir => (
            "Too little water over the inlet: the pump may draw air.",
            "",
        ),
        Say::InletHolds => ("Enough water over the inlet at this flow.", ""),
        Say::TripsAtThatFlow => ("Past the cut-out: it trips with this little water.", ""),
        Say::Starting => (
            "Before a start: nobody at the fan, pump or machine, guards on, every lockout off by the \
             one who set it. Reset a cut-out once; if it trips again, look for the cause.",
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
        Figure::BelowCutOut => "Margin to the cut-out",
        Figure::TripsAt => "Trips when condensing at",
        Figure::WarmerToTrip => "Margin in temperature",
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
            format!("Needs: {}.", names.join("; "))
        }
        Fault::Physics(error) => super::physics_refused::error(error, system),
        Fault::NoSafeSetting => "No setting holds: clean the electrodes first.".to_owned(),
        Fault::Order(above, below) => {
            format!("{} must be more than {}.", ask(*above), ask(*below))
        }
    }
}
