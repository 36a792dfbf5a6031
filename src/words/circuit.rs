//! Phrases of the control circuit.

use super::{Words, tongue};
use crate::physics::circuit::{Caution, Meaning, Meter, Point};

impl Words {
    /// Name of a test point.
    pub fn circuit_point(self, point: Point) -> &'static str {
        tongue!(self, circuit::point(point))
    }

    /// Name of a kind of meter.
    pub fn circuit_meter(self, meter: Meter) -> &'static str {
        tongue!(self, circuit::meter(meter))
    }

    /// What a reading means, in one sentence.
    pub fn circuit_meaning(self, meaning: Meaning) -> &'static str {
        tongue!(self, circuit::meaning(meaning))
    }

    /// A caution, to be shown at the step it belongs to.
    pub fn circuit_caution(self, caution: Caution) -> &'static str {
        tongue!(self, circuit::caution(caution))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::circuit::{Circuit, Coil};
    use crate::physics::electrode::Condition;
    use crate::quantity::{ElectricPotential, Power};
    use crate::words::Tongue;
    use crate::working::Say;
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
        let said: Vec<_> = faults.iter().map(|f| words.say(Say::Wrong(*f))).collect();
        all_differ("faults", said.iter().map(|s| s.0).collect());
        assert!(said.iter().all(|s| s.1.ends_with('.')));
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
                .map(|c| words.say(Say::Electrode(c, false, false)).0)
                .to_vec(),
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
