//! The chemistry of cooling water: does it lay down scale or eat metal, is it
//! within the limits towers are kept to, and what its cycles say about the plumbing.
//!
//! Method: Langelier's saturation pH by the formula the trade prints,
//! pHs = 9.3 + A + B - C - D with A = (log10 TDS - 1)/10,
//! B = -13.12 log10(T/C + 273) + 34.55, C = log10(calcium as CaCO3) - 0.4 and
//! D = log10(alkalinity as CaCO3); from it the Langelier, Ryznar and Puckorius
//! indices (UFC 3-240-13FN, Industrial Water Treatment, US Department of
//! Defense 2005, appendix B). That print has 1.485 in the Puckorius equilibrium
//! pH where its own example needs 1.465, used here; its table of B lies 0.08 to
//! 0.11 below the formula, used here.
//!
//! Against the saturation index of calcite by PHREEQC (phreeqpython 1.6.2) over
//! 64 waters at 5 to 82 C the Langelier index is within 0.3: read no more from
//! it. The tests are in `tests/physics/chemistry.rs`.

pub mod cycles;
pub mod guideline;

use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::mass_concentration::kilogram_per_cubic_meter;

use super::air::celsius;
use super::error::{Error, Quantity, within};
use crate::quantity::{ElectricalConductivity, MassConcentration, ThermodynamicTemperature};

/// Dissolved solids over conductivity when nobody measured it, in mg/L for each
/// uS/cm: 0.7 (UFC 3-240-13FN: 0.7, up to 1.0 with tannin). It may be off from
/// 0.6 (from memory) to 0.8 (a water-treatment glossary, for cycled tower water),
/// which moves the indices by less than 0.015 each way.
pub const USUAL_SOLIDS_FACTOR: f64 = 0.7;

/// The difference an index is good for, against PHREEQC's calcite.
const DOUBT: f64 = 0.3;

/// What a test kit and a thermometer say of the water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water {
    /// pH, 5 to 11.
    pub ph: f64,
    /// Temperature of the hottest wall on the water's side, 0 to 95 C, not of the
    /// basin (UFC 3-240-13FN): the condensing temperature when known, else the
    /// water leaving the condenser, which is colder than the wall.
    pub temperature: ThermodynamicTemperature,
    /// Total dissolved solids, 10 to 20,000 mg/L.
    pub dissolved_solids: MassConcentration,
    /// Calcium as CaCO3, 1 to 5,000 mg/L. Calcium, not total hardness.
    pub calcium: MassConcentration,
    /// Total alkalinity as CaCO3, 1 to 5,000 mg/L.
    pub alkalinity: MassConcentration,
}

/// The indices of a water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Indices {
    /// pH at which this water would be saturated with calcite.
    pub saturation_ph: f64,
    /// pH less saturation pH.
    pub langelier: f64,
    /// Twice the saturation pH less the pH.
    pub ryznar: f64,
    /// Twice the saturation pH less the pH the alkalinity would keep.
    pub puckorius: f64,
}

/// Which index is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Index {
    /// Langelier saturation index.
    Langelier,
    /// Ryznar stability index.
    Ryznar,
    /// Puckorius scaling index: for tower water, whose pH wanders.
    Puckorius,
}

/// What an index says of the water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Band {
    /// It tends to lay down calcium carbonate.
    Scaling,
    /// Neither, as far as the index can tell.
    Balanced,
    /// It tends to dissolve calcium carbonate and to corrode.
    Corrosive,
}

impl Indices {
    /// The number of one index.
    pub fn of(&self, index: Index) -> f64 {
        match index {
            Index::Langelier => self.langelier,
            Index::Ryznar => self.ryznar,
            Index::Puckorius => self.puckorius,
        }
    }

    /// What one index says. UFC 3-240-13FN, appendix B: Langelier above 0
    /// scales, below 0 corrodes; Ryznar and Puckorius below 6 scale, above 7
    /// corrode. Within 0.3 of Langelier's 0 the formula cannot tell (our check
    /// against PHREEQC): balanced.
    pub fn band(&self, index: Index) -> Band {
        let (scaling, corrosive) = match index {
            Index::Langelier => (self.langelier > DOUBT, self.langelier < -DOUBT),
            _ => (self.of(index) < 6.0, self.of(index) > 7.0),
        };
        match (scaling, corrosive) {
            (true, _) => Band::Scaling,
            (_, true) => Band::Corrosive,
            _ => Band::Balanced,
        }
    }
}

/// Milligrams per litre, checked.
fn milligrams(
    quantity: Quantity,
    concentration: MassConcentration,
    low: f64,
    high: f64,
) -> Result<f64, Error> {
    let si = concentration.get::<kilogram_per_cubic_meter>();
    Ok(1000.0 * within(quantity, si, low / 1000.0, high / 1000.0)?)
}

fn ph(ph: f64) -> Result<f64, Error> {
    within(Quantity::Ph, ph, 5.0, 11.0)
}

impl Water {
    /// The indices of this water. Above pH 9 and below 6.5 they rest on an
    /// alkalinity that is no longer bicarbonate alone: read the direction only.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states.
    pub fn indices(&self) -> Result<Indices, Error> {
        let ph = ph(self.ph)?;
        let t = celsius(Quantity::SkinTemperature, self.temperature, 0.0, 95.0)?;
        let solids = milligrams(
            Quantity::DissolvedSolids,
            self.dissolved_solids,
            10.0,
            20_000.0,
        )?;
        let calcium = milligrams(Quantity::Calcium, self.calcium, 1.0, 5_000.0)?;
        let alkalinity = milligrams(Quantity::Alkalinity, self.alkalinity, 1.0, 5_000.0)?;
        let a = (solids.log10() - 1.0) / 10.0;
        let b = 34.55 - 13.12 * (t + 273.0).log10();
        let c = calcium.log10() - 0.4;
        let d = alkalinity.log10();
        let saturation_ph = 9.3 + a + b - c - d;
        Ok(Indices {
            saturation_ph,
            langelier: ph - saturation_ph,
            ryznar: 2.0 * saturation_ph - ph,
            puckorius: 2.0 * saturation_ph - (1.465 * d + 4.54),
        })
    }
}

/// Total dissolved solids from conductivity at 25 C. `factor` is mg/L for each
/// uS/cm: [`USUAL_SOLIDS_FACTOR`] unless the water treater gives one.
///
/// # Errors
/// [`Error::OutOfRange`] when the conductivity is outside 1 uS/cm to 100 mS/cm
/// or the factor outside 0.4 to 1.0.
pub fn dissolved_solids(
    conductivity: ElectricalConductivity,
    factor: f64,
) -> Result<MassConcentration, Error> {
    let siemens = within(
        Quantity::Conductivity,
        conductivity.get::<siemens_per_meter>(),
        1e-4,
        10.0,
    )?;
    let factor = within(Quantity::SolidsFactor, factor, 0.4, 1.0)?;
    // 1 mg/L is 1e-3 kg/m3 and 1 uS/cm is 1e-4 S/m.
    Ok(MassConcentration::new::<kilogram_per_cubic_meter>(
        10.0 * factor * siemens,
    ))
}
