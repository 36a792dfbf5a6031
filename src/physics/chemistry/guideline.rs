//! Limits circulating water is kept to, and which of them a water breaks.
//!
//! Most come from one maker's sheet for the circulating water of galvanized
//! towers; each limit says where it comes from. The water treater's own limits
//! for a plant govern.

use serde::{Deserialize, Serialize};
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::mass_concentration::kilogram_per_cubic_meter;
use uom::si::thermodynamic_temperature::kelvin;

use super::{Index, Indices, USUAL_SOLIDS_FACTOR};
use crate::quantity::{ElectricalConductivity, Kind, MassConcentration, ThermodynamicTemperature};

/// Something measured in the water.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Item {
    /// pH.
    Ph,
    /// Temperature of the water.
    Temperature,
    /// Langelier index.
    Langelier,
    /// Total alkalinity as CaCO3.
    Alkalinity,
    /// Calcium as CaCO3.
    Calcium,
    /// Silica as SiO2.
    Silica,
    /// Iron.
    Iron,
    /// Manganese.
    Manganese,
    /// Chloride as Cl.
    Chloride,
    /// Sulfate as SO4.
    Sulfate,
    /// Nitrate as NO3.
    Nitrate,
    /// Total dissolved solids.
    DissolvedSolids,
    /// Conductivity, by its dissolved solids at the usual factor.
    Conductivity,
    /// Free chlorine held all the time.
    FreeChlorine,
}

impl Item {
    /// Every item.
    pub const ALL: [Item; 14] = [
        Item::Ph,
        Item::Temperature,
        Item::Langelier,
        Item::Alkalinity,
        Item::Calcium,
        Item::Silica,
        Item::Iron,
        Item::Manganese,
        Item::Chloride,
        Item::Sulfate,
        Item::Nitrate,
        Item::DissolvedSolids,
        Item::Conductivity,
        Item::FreeChlorine,
    ];

    /// The kind to show it as.
    pub fn kind(self) -> Kind {
        match self {
            Item::Ph => Kind::Ph,
            Item::Temperature => Kind::Temperature,
            Item::Langelier => Kind::Number,
            Item::Alkalinity | Item::Calcium => Kind::AsCalciumCarbonate,
            Item::Conductivity => Kind::Conductivity,
            _ => Kind::Concentration,
        }
    }
}

/// What the tower and its basin are made of, where the water touches it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Metal {
    /// Galvanized steel in service; also taken when nobody knows.
    #[default]
    Galvanized,
    /// Galvanized steel in its first eight weeks, while the zinc passivates.
    NewGalvanized,
    /// Stainless steel 304.
    Stainless304,
    /// Stainless steel 316.
    Stainless316,
}

/// Where a limit comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Basis {
    /// A maker's circulating-water sheet for galvanized towers.
    MakersSheet,
    /// Advice of a galvanizing association on white rust.
    Galvanizers,
    /// From memory: not read anywhere.
    Memory,
}

/// What is known of the water; a field left out is not judged.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", default)]
#[allow(missing_docs, reason = "each field is the item of the same name")]
pub struct Analysis {
    pub ph: Option<f64>,
    pub temperature: Option<ThermodynamicTemperature>,
    pub indices: Option<Indices>,
    pub alkalinity: Option<MassConcentration>,
    pub calcium: Option<MassConcentration>,
    pub silica: Option<MassConcentration>,
    pub iron: Option<MassConcentration>,
    pub manganese: Option<MassConcentration>,
    pub chloride: Option<MassConcentration>,
    pub sulfate: Option<MassConcentration>,
    pub nitrate: Option<MassConcentration>,
    pub dissolved_solids: Option<MassConcentration>,
    pub conductivity: Option<ElectricalConductivity>,
    pub free_chlorine: Option<MassConcentration>,
    pub metal: Metal,
}

/// A limit a water breaks.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Finding {
    /// What was measured.
    pub item: Item,
    /// The value, in the SI form of [`Item::kind`].
    pub value: f64,
    /// The limit it breaks, in the same form.
    pub limit: f64,
    /// Whether the limit is the most allowed; else it is the least.
    pub above: bool,
    /// Where the limit comes from.
    pub basis: Basis,
}

impl Analysis {
    /// The value of an item in its SI form.
    fn value(&self, item: Item) -> Option<f64> {
        let mass = |c: Option<MassConcentration>| c.map(|c| c.get::<kilogram_per_cubic_meter>());
        match item {
            Item::Ph => self.ph,
            Item::Temperature => self.temperature.map(|t| t.get::<kelvin>()),
            Item::Langelier => self.indices.map(|i| i.of(Index::Langelier)),
            Item::Alkalinity => mass(self.alkalinity),
            Item::Calcium => mass(self.calcium),
            Item::Silica => mass(self.silica),
            Item::Iron => mass(self.iron),
            Item::Manganese => mass(self.manganese),
            Item::Chloride => mass(self.chloride),
            Item::Sulfate => mass(self.sulfate),
            Item::Nitrate => mass(self.nitrate),
            Item::DissolvedSolids => mass(self.dissolved_solids),
            // Measured solids are better than their estimate.
            Item::Conductivity if self.dissolved_solids.is_some() => None,
            Item::Conductivity => self.conductivity.map(|c| c.get::<siemens_per_meter>()),
            Item::FreeChlorine => mass(self.free_chlorine),
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
            let (low, high, basis) = limits(item, self.metal);
            let (low_si, high_si) = (si(item, low), si(item, high));
            // The last digit typed must not break a limit by rounding.
            let hair = 1e-9 * high_si.abs();
            if value > high_si + hair || value < low_si - hair {
                let above = value > high_si;
                let limit = if above { high_si } else { low_si };
                found.push(Finding {
                    item,
                    value,
                    limit,
                    above,
                    basis,
                });
            }
        }
        found
    }
}

/// A limit in the SI form of its item: printed in mg/L, F, or as it stands.
fn si(item: Item, printed: f64) -> f64 {
    match item.kind() {
        Kind::Temperature => (printed + 459.67) / 1.8,
        Kind::Concentration | Kind::AsCalciumCarbonate => printed / 1000.0,
        // Solids in mg/L over the usual factor are uS/cm.
        Kind::Conductivity => printed / USUAL_SOLIDS_FACTOR * 1e-4,
        _ => printed,
    }
}

/// Least and most allowed, as printed, and by whom.
fn limits(item: Item, metal: Metal) -> (f64, f64, Basis) {
    use Basis::{Galvanizers, MakersSheet, Memory};
    let sheet = |low: f64, high: f64| (low, high, MakersSheet);
    let most = |high: f64| (f64::NEG_INFINITY, high, MakersSheet);
    let new = metal == Metal::NewGalvanized;
    match item {
        // Held for a few months, against white rust.
        Item::Ph if new => (6.5, 7.8, Galvanizers),
        Item::Ph => sheet(6.5, 8.0),
        Item::Temperature => most(125.0),
        Item::Langelier => sheet(0.0, 1.0),
        Item::Alkalinity | Item::Calcium if new => sheet(100.0, 300.0),
        Item::Alkalinity => sheet(100.0, 500.0),
        Item::Calcium => sheet(50.0, 500.0),
        Item::Silica => most(150.0),
        Item::Iron => most(3.0),
        Item::Manganese => most(0.1),
        Item::Chloride => match metal {
            Metal::Galvanized | Metal::NewGalvanized => most(300.0),
            // The lower end of what is said of each; heat and crevices lower it.
            Metal::Stainless304 => (f64::NEG_INFINITY, 200.0, Memory),
            Metal::Stainless316 => (f64::NEG_INFINITY, 500.0, Memory),
        },
        Item::Sulfate => most(250.0),
        Item::Nitrate => most(300.0),
        Item::DissolvedSolids | Item::Conductivity => most(1500.0),
        Item::FreeChlorine => most(0.4),
    }
}
