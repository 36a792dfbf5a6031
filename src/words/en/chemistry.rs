//! Words of the water's chemistry, in English.

use crate::physics::chemistry::Band;
use crate::physics::chemistry::cycles::Cause;
use crate::physics::chemistry::guideline::Item;

pub(in crate::words) fn band(band: Band) -> &'static str {
    match band {
        Band::Scaling => "Tends to scale",
        Band::Balanced => "Balanced",
        Band::Corrosive => "Tends to corrode",
    }
}

pub(in crate::words) fn item(item: Item) -> &'static str {
    match item {
        Item::Ph => "pH",
        Item::Langelier => "Langelier index",
        Item::Alkalinity => "Alkalinity as CaCO3",
        Item::Calcium => "Calcium as CaCO3",
        Item::Chloride => "Chloride",
        Item::Conductivity => "Conductivity",
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
