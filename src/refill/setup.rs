//! What is known before the test begins.

use serde::{Deserialize, Serialize};

use crate::physics::basin::Basin;
use crate::quantity::{Length, VolumeRate};

/// The basin under test and what it has to keep up with. Levels are depths
/// below the overflow lip, positive downward.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Setup {
    /// The basin's shape.
    pub basin: Basin,
    /// Makeup the plant needs today; above zero, else no verdict on the fill.
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
}
