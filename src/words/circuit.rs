//! Phrases of the control circuit.

use super::{Words, tongue};
use crate::physics::circuit::{Caution, Fault, Fed, Meaning, Meter, Point};
use crate::physics::electrode::{Bridge, Condition, Fill, Water};

impl Words {
    /// Short name of a circuit fault.
    pub fn circuit_fault(self, fault: Fault) -> &'static str {
        tongue!(self, circuit::fault(fault))
    }

    /// What a circuit fault does.
    pub fn circuit_fault_line(self, fault: Fault) -> &'static str {
        tongue!(self, circuit::fault_line(fault))
    }

    /// Name of a test point.
    pub fn circuit_point(self, point: Point) -> &'static str {
        tongue!(self, circuit::point(point))
    }

    /// Name of a kind of meter.
    pub fn circuit_meter(self, meter: Meter) -> &'static str {
        tongue!(self, circuit::meter(meter))
    }

    /// What to know about a kind of meter.
    pub fn circuit_meter_line(self, meter: Meter) -> &'static str {
        tongue!(self, circuit::meter_line(meter))
    }

    /// What a reading means, in one sentence.
    pub fn circuit_meaning(self, meaning: Meaning) -> &'static str {
        tongue!(self, circuit::meaning(meaning))
    }

    /// How well the coil is fed.
    pub fn circuit_fed(self, fed: Fed) -> &'static str {
        tongue!(self, circuit::fed(fed))
    }

    /// A caution, to be shown at the step it belongs to.
    pub fn circuit_caution(self, caution: Caution) -> &'static str {
        tongue!(self, circuit::caution(caution))
    }

    /// A condition of an electrode.
    pub fn electrode_condition(self, condition: Condition) -> &'static str {
        tongue!(self, electrode::condition(condition))
    }

    /// How the conductivity of the water is known.
    pub fn electrode_water(self, water: Water) -> &'static str {
        tongue!(self, electrode::water(water))
    }

    /// What the relay does with the fill.
    pub fn electrode_fill(self, fill: Fill) -> &'static str {
        tongue!(self, electrode::fill(fill))
    }

    /// Which electrodes a film joins.
    pub fn electrode_bridge(self, bridge: Bridge) -> &'static str {
        tongue!(self, electrode::bridge(bridge))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::circuit::{Circuit, Coil};
    use crate::quantity::{ElectricPotential, Power};
    use crate::words::Tongue;
    use std::collections::HashSet;
    use uom::si::electric_potential::volt;
    use uom::si::power::watt;

    fn all_differ(what: &str, texts: Vec<&'static str>) {
        let all: HashSet<_> = texts.iter().collect();
        assert_eq!(all.len(), texts.len(), "{what}: {texts:?}");
        assert!(texts.iter().all(|t| !t.is_empty()), "{what}");
    }

    #[test]
    fn no_two_things_are_called_the_same() {
        for tongue in Tongue::ALL {
            things_differ(Words(tongue));
        }
    }

    fn things_differ(words: Words) {
        let coil = Coil::nameplate(
            ElectricPotential::new::<volt>(24.0),
            Power::new::<watt>(10.0),
        );
        let mut circuit = Circuit::usual(coil, true);
        circuit.series_contacts = 3;
        let faults = circuit.faults();
        all_differ(
            "faults",
            faults.iter().map(|f| words.circuit_fault(*f)).collect(),
        );
        assert!(
            faults
                .iter()
                .all(|f| words.circuit_fault_line(*f).ends_with('.'))
        );
        all_differ(
            "points",
            Point::ALL.map(|p| words.circuit_point(p)).to_vec(),
        );
        all_differ(
            "meanings",
            Meaning::ALL.map(|m| words.circuit_meaning(m)).to_vec(),
        );
        all_differ(
            "conditions",
            Condition::ALL
                .map(|c| words.electrode_condition(c))
                .to_vec(),
        );
        all_differ(
            "bridges",
            Bridge::ALL.map(|b| words.electrode_bridge(b)).to_vec(),
        );
    }

    /// Every meter on live parts says so, and the ohmmeter asks for a dead circuit.
    #[test]
    fn every_meter_comes_with_its_caution() {
        for tongue in Tongue::ALL {
            meters_caution(Words(tongue));
        }
    }

    fn meters_caution(words: Words) {
        let [live_dead_live, qualified, code, lock_out] = match words.0 {
            Tongue::English => [
                "live-dead-live",
                "Qualified people",
                "local code",
                "lock out, prove dead",
            ],
            Tongue::Spanish => [
                "vivo-muerto-vivo",
                "personal calificado",
                "código local",
                "bloquee, etiquete, compruebe ausencia de voltaje",
            ],
        };
        for (meter, must) in [
            (Meter::high_impedance(), live_dead_live),
            (Meter::high_impedance(), qualified),
            (Meter::low_impedance(), live_dead_live),
            (Meter::low_impedance(), code),
            (Meter::Clamp, code),
            (Meter::Ohmmeter, lock_out),
        ] {
            let said: Vec<_> = meter
                .cautions()
                .iter()
                .map(|c| words.circuit_caution(*c))
                .collect();
            assert!(said.iter().any(|s| s.contains(must)), "{meter:?}: {said:?}");
        }
    }
}
