//! Words of the water's chemistry, in English.

use crate::physics::chemistry::cycles::{Against, Cause, Size};
use crate::physics::chemistry::guideline::{Basis, Finding, Item};
use crate::physics::chemistry::{Band, SkinBasis};
use crate::quantity::{Kind, System, Value, show};

pub(in crate::words) fn band(band: Band) -> &'static str {
    match band {
        Band::Scaling => "Tends to scale",
        Band::Balanced => "Balanced",
        Band::Corrosive => "Tends to corrode",
    }
}

pub(in crate::words) fn skin(basis: SkinBasis) -> &'static str {
    match basis {
        SkinBasis::Condensing => {
            "Taken at the condensing temperature, about the hottest wall the water meets."
        }
        SkinBasis::LeavingWater => {
            "Taken at the water leaving the condenser. The wall is hotter: it scales sooner than \
             this says. Read the head pressure to do better."
        }
    }
}

pub(in crate::words) fn item(item: Item) -> &'static str {
    match item {
        Item::Ph => "pH",
        Item::Temperature => "Water temperature",
        Item::Langelier => "Langelier index",
        Item::Alkalinity => "Alkalinity as CaCO3",
        Item::Calcium => "Calcium as CaCO3",
        Item::Silica => "Silica",
        Item::Iron => "Iron",
        Item::Manganese => "Manganese",
        Item::Chloride => "Chloride",
        Item::Sulfate => "Sulfate",
        Item::Nitrate => "Nitrate",
        Item::DissolvedSolids => "Dissolved solids",
        Item::Conductivity => "Conductivity",
        Item::FreeChlorine => "Free chlorine",
    }
}

pub(in crate::words) fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::MakersSheet => "A maker's sheet for galvanized towers.",
        Basis::Galvanizers => "A galvanizing association, against white rust.",
        Basis::Memory => "From memory, no source.",
    }
}

pub(in crate::words) fn finding(finding: &Finding, system: System) -> String {
    let said = |si: f64| {
        let kind = finding.item.kind();
        let shown = show(Value { kind, si }, system);
        // "pH 8.6 pH" says it twice.
        match kind {
            Kind::Ph => shown.number,
            _ => shown.to_string(),
        }
    };
    let side = if finding.above { "above" } else { "below" };
    format!(
        "{} {} is {side} {}. {} Your water treater's limits govern.",
        item(finding.item),
        said(finding.value),
        said(finding.limit),
        basis(finding.basis)
    )
}

pub(in crate::words) fn against(against: Against) -> &'static str {
    match against {
        Against::SetPoint => "against the set point",
        Against::LastVisit => "against the last visit",
    }
}

pub(in crate::words) fn size(size: Size) -> &'static str {
    match size {
        Size::None => "No change beyond what two meters disagree by",
        Size::Slight => "A slight change",
        Size::Marked => "A marked change",
        Size::Large => "A large change",
    }
}

pub(in crate::words) fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::BlockedBleed => {
            "Bleed shut or blocked. Look at its strainer, solenoid and controller set point."
        }
        Cause::ShutMakeup => {
            "Makeup does not come, and the basin boils down. Look at the level and the fill valve."
        }
        Cause::FoamFromOverCycling => {
            "Over-cycled water foams, and foam on a level probe reads as full. Look for foam; ask the \
             water treater before you dose anything."
        }
        Cause::Overflow => {
            "Water runs over the lip. Look at the overflow and where the fill stops."
        }
        Cause::Leak => "A leak in basin, pipes or a coil. Look for wet ground and stains.",
        Cause::BypassLeftOpen => {
            "A fill bypass or hose left open. Trace every line into the basin."
        }
        Cause::BleedHangsOpen => {
            "The bleed hangs open. Listen at its valve with no call for bleed."
        }
    }
}
