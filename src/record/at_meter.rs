//! What a meter reads at a check of the fill control: where the leads go, and
//! what the circuit model makes of the number.

use uom::si::electric_potential::volt;
use uom::si::power::watt;

use crate::physics::circuit::{
    Accuracy, Armature, Circuit, Coil, Leads, Meaning, Meter, Point, Reading, State, judge, meaning,
};
use crate::quantity::{Power, Value};
use crate::trace::{Check, Plant};

/// A fill coil's apparent power when nobody has read its nameplate, VA, and
/// the highest control voltage that is taken to come from a transformer.
/// Common practice, no source.
const COIL_VA: f64 = 10.0;
const TRANSFORMER_TO: f64 = 48.0;

/// Where the leads are and what reads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtMeter {
    /// The two points; a clamp goes round the conductor that leaves the first.
    pub leads: Leads,
    /// The meter.
    pub meter: Meter,
}

/// What a number read there means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MeterSays {
    /// In one sentence.
    pub meaning: Meaning,
    /// The same leads on a low-impedance range would tell more.
    pub load_it: bool,
}

/// Where the leads go at this check, for the checks of the fill circuit.
pub fn at_meter(check: Check) -> Option<AtMeter> {
    use Point as P;
    let (first, second, meter) = match check {
        Check::TransformerOutput => (P::SupplyHot, P::SupplyReturn, Meter::high_impedance()),
        Check::ControlVoltage => (P::RelayCommon, P::SupplyReturn, Meter::high_impedance()),
        Check::FuseCheck => (P::SupplyHot, P::FuseOut, Meter::high_impedance()),
        Check::ContactDrop => (P::RelayCommon, P::RelayOut, Meter::high_impedance()),
        Check::OutputVoltage => (P::RelayOut, P::SupplyReturn, Meter::high_impedance()),
        Check::CoilVoltage => (P::CoilFeed, P::CoilReturn, Meter::high_impedance()),
        Check::CoilCurrent => (P::RelayOut, P::CoilFeed, Meter::Clamp),
        Check::CoilResistance => (P::CoilFeed, P::CoilReturn, Meter::Ohmmeter),
        _ => return None,
    };
    let leads = Leads { first, second };
    Some(AtMeter { leads, meter })
}

/// What this number means at this check; `None` for a check that is not of the
/// fill circuit, a number of another kind, or one the model has no place for.
pub fn meter_says(plant: &Plant, check: Check, value: Value) -> Option<MeterSays> {
    let AtMeter { leads, meter } = at_meter(check)?;
    let reading = match meter {
        Meter::HighImpedance(_) | Meter::LowImpedance(_) => Reading::Volts(value.as_voltage()?),
        Meter::Clamp => Reading::Amperes(value.as_current()?),
        Meter::Ohmmeter => Reading::Ohms(value.as_resistance()?),
    };
    let nominal = plant.control_voltage;
    let coil = Coil::nameplate(nominal, Power::new::<watt>(COIL_VA));
    let circuit = Circuit::usual(coil, nominal.get::<volt>() <= TRANSFORMER_TO);
    let state = State {
        calling: true,
        armature: Armature::ByVoltage,
        coil_lifted: meter == Meter::Ohmmeter,
    };
    let meaning = meaning(&circuit, leads, meter, reading).ok()?;
    let judged = judge(&circuit, state, leads, meter, reading, Accuracy::default());
    Some(MeterSays {
        meaning,
        load_it: judged.is_ok_and(|j| j.low_impedance_tells_more),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Kind;

    fn says(check: Check, kind: Kind, si: f64) -> MeterSays {
        meter_says(&Plant::default(), check, Value { kind, si }).expect("a meaning")
    }

    #[test]
    fn a_number_means_what_it_means_where_the_leads_are() {
        let volts = Kind::Voltage;
        let at = |check, si| says(check, volts, si).meaning;
        assert_eq!(at(Check::CoilVoltage, 24.0), Meaning::CoilFed);
        assert_eq!(at(Check::CoilVoltage, 0.1), Meaning::CoilDead);
        assert_eq!(at(Check::ContactDrop, 24.0), Meaning::OpenBetween);
        assert_eq!(at(Check::ContactDrop, 0.1), Meaning::ClosedOrDead);
        assert_eq!(at(Check::ControlVoltage, 24.0), Meaning::LiveHere);
        assert_eq!(at(Check::OutputVoltage, 0.0), Meaning::DeadHere);
        let ohms = says(Check::CoilResistance, Kind::Resistance, 40e6);
        assert_eq!(ohms.meaning, Meaning::NoWayThrough);
        let amperes = says(Check::CoilCurrent, Kind::Current, 0.0);
        assert_eq!(amperes.meaning, Meaning::NoCurrent);
    }

    /// Half the volts at the coil may be a ghost: loaded, a ghost is gone.
    #[test]
    fn half_the_volts_are_worth_a_load() {
        assert!(says(Check::CoilVoltage, Kind::Voltage, 12.0).load_it);
        assert!(!says(Check::CoilVoltage, Kind::Voltage, 24.0).load_it);
    }

    #[test]
    fn another_kind_or_an_impossible_number_means_nothing() {
        let plant = Plant::default();
        let of = |check, kind, si| meter_says(&plant, check, Value { kind, si });
        assert_eq!(of(Check::CoilVoltage, Kind::Current, 1.0), None);
        assert_eq!(of(Check::CoilVoltage, Kind::Voltage, -1.0), None);
        assert_eq!(of(Check::CoilPull, Kind::Voltage, 24.0), None);
    }
}
