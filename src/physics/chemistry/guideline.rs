//! Limits circulating water is kept to, and which of them a water breaks.
//!
//! They come from one maker's sheet for the circulating water of galvanized
//! towers. The water treater's own limits for a plant govern.

use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::mass_concentration::kilogram_per_cubic_meter;

use super::{Indices, USUAL_SOLIDS_FACTOR};
use crate::quantity::{ElectricalConductivity, Kind, MassConcentration};

/// Something measured in the water.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Item {
    /// pH.
    Ph,
    /// Langelier index.
    Langelier,
    /// Total alkalinity as CaCO3.
    Alkalinity,
    /// Calcium as CaCO3.
    Calcium,
    /// Chloride as Cl.
    Chloride,
    /// Conductivity, by its dissolved solids at the usual factor.
    Conductivity,
}

impl Item {
    /// Every item.
    pub const ALL: [Item; 6] = [
        Item::Ph,
        Item::Langelier,
        Item::Alkalinity,
        Item::Calcium,
        Item::Chloride,
        Item::Conductivity,
    ];

    /// The kind to show it as.
    pub fn kind(self) -> Kind {
        match self {
            Item::Ph => Kind::Ph,
            Item::Langelier => Kind::Number,
            Item::Alkalinity | Item::Calcium => Kind::AsCalciumCarbonate,
            Item::Conductivity => Kind::Conductivity,
            Item::Chloride => Kind::Concentration,
        }
    }

    /// Least and most allowed, as printed.
    fn limits(self) -> (f64, f64) {
        match self {
            Item::Ph => (6.5, 8.0),
            Item::Langelier => (0.0, 1.0),
            Item::Alkalinity => (100.0, 500.0),
            Item::Calcium => (50.0, 500.0),
            Item::Chloride => (f64::NEG_INFINITY, 300.0),
            Item::Conductivity => (f64::NEG_INFINITY, 1500.0),
        }
    }

    /// A limit in the SI form of the item: printed in mg/L or as it stands.
    fn si(self, printed: f64) -> f64 {
        match self {
            Item::Ph | Item::Langelier => printed,
            Item::Alkalinity | Item::Calcium | Item::Chloride => printed / 1000.0,
            // Solids in mg/L over the usual factor are uS/cm.
            Item::Conductivity => printed / USUAL_SOLIDS_FACTOR * 1e-4,
        }
    }
}

/// What is known of the water; a field left out is not judged.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[allow(missing_docs, reason = "each field is the item of the same name")]
pub struct Analysis {
    pub ph: Option<f64>,
    pub indices: Option<Indices>,
    pub alkalinity: Option<MassConcentration>,
    pub calcium: Option<MassConcentration>,
    pub chloride: Option<MassConcentration>,
    pub conductivity: Option<ElectricalConductivity>,
}

/// A limit a water breaks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finding {
    /// What was measured.
    pub item: Item,
    /// The limit it breaks, in the SI form of [`Item::kind`].
    pub limit: f64,
    /// Whether the limit is the most allowed; else it is the least.
    pub above: bool,
}

impl Analysis {
    /// The value of an item in its SI form.
    fn value(&self, item: Item) -> Option<f64> {
        let mass = |c: Option<MassConcentration>| c.map(|c| c.get::<kilogram_per_cubic_meter>());
        match item {
            Item::Ph => self.ph,
            Item::Langelier => self.indices.map(|i| i.langelier),
            Item::Alkalinity => mass(self.alkalinity),
            Item::Calcium => mass(self.calcium),
            Item::Chloride => mass(self.chloride),
            Item::Conductivity => self.conductivity.map(|c| c.get::<siemens_per_meter>()),
        }
    }

    /// Every limit this water breaks, in the order of [`Item::ALL`]. A value
    /// that is not a finite number breaks none.
    pub fn findings(&self) -> Vec<Finding> {
        let mut found = Vec::new();
        for item in Item::ALL {
            let Some(value) = self.value(item).filter(|v| v.is_finite()) else {
                continue;
            };
            let (low, high) = item.limits();
            let (low, high) = (item.si(low), item.si(high));
            // The last digit typed must not break a limit by rounding.
            let hair = 1e-9 * high.abs();
            let above = value > high + hair;
            if above || value < low - hair {
                let limit = if above { high } else { low };
                found.push(Finding { item, limit, above });
            }
        }
        found
    }
}
