//! What is known before the test begins.

use serde::{Deserialize, Serialize};

use crate::physics::basin::Basin;
use crate::quantity::{GaugePressure, Length, VolumeRate};

/// A flow known to lie between two bounds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FlowRange {
    /// Lower bound.
    pub low: VolumeRate,
    /// Upper bound.
    pub high: VolumeRate,
}

/// The basin under test and what it has to keep up with. Levels are depths
/// below the overflow lip, positive downward.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Setup {
    /// The basin's shape.
    pub basin: Basin,
    /// Makeup the plant needs today; zero where nobody knows, and then the
    /// design day's stands for it.
    pub makeup_need: VolumeRate,
    /// Makeup it needs on the design day, if known.
    pub design_need: Option<VolumeRate>,
    /// Evaporation and bleed that go on while the basin fills; zero with the
    /// machines off.
    pub loss_while_testing: VolumeRate,
    /// Level at which the control should call for water, if known.
    pub call_level: Option<Length>,
    /// Level at which the control should be satisfied, if known.
    pub stop_level: Option<Length>,
    /// Lowest level the pump inlet allows, if known: do not draw below it.
    pub low_limit: Option<Length>,
    /// What the fill valve passes at this mains pressure, if worked out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub valve: Option<FlowRange>,
    /// What the fill gave in this site's last test that measured it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub earlier: Option<FlowRange>,
    /// The fill valve's flow coefficient Cv, if typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub valve_cv: Option<f64>,
    /// The mains pressure at the valve, if typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mains: Option<GaugePressure>,
    /// Bore of the drain, if typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drain: Option<Length>,
    /// What left the basin while it was drawn down in this site's last test
    /// that measured it, losses included.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub earlier_drain: Option<FlowRange>,
}
