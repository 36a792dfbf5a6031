//! Any finite input to the circuit and the electrodes gives a finite answer or
//! a typed error.

use coldsump::physics::circuit::*;
use coldsump::physics::electrode::{
    self, Condition, Film, Foam, Leakage, Probe, Scale, Shape, Water,
};
use coldsump::quantity::{ElectricalConductivity, Power};
use proptest::prelude::*;
use uom::si::electrical_conductivity::siemens_per_meter;
use uom::si::power::watt;

use crate::circuit::{amperes, hz, ohms, pico, volts};
use crate::every_input::{number, sound};
use crate::{m, part};

fn mostly(usual: std::ops::Range<f64>) -> BoxedStrategy<f64> {
    prop_oneof![9 => usual, 1 => number()].boxed()
}

fn any_circuit() -> BoxedStrategy<Circuit> {
    let supply = (
        mostly(5.0..300.0),
        mostly(16.0..400.0),
        mostly(0.0..100.0),
        any::<bool>(),
    );
    let cable = (
        0..7usize,
        mostly(0.0..2000.0),
        mostly(0.0..2000.0),
        mostly(0.0..1e4),
        mostly(0.0..1e4),
        mostly(0.0..300.0),
    );
    let coil = (
        mostly(5.0..300.0),
        mostly(0.5..2000.0),
        mostly(0.01..1.0),
        mostly(1.0..20.0),
        mostly(0.01..1.0),
    );
    (
        supply,
        cable,
        coil,
        0..5u8,
        mostly(0.05..100.0),
        any::<bool>(),
    )
        .prop_map(|(s, c, k, series_contacts, fuse, no)| Circuit {
            supply: Supply {
                voltage: volts(s.0),
                frequency: hz(s.1),
                impedance: ohms(s.2),
                transformer: s.3,
            },
            fuse: amperes(fuse),
            series_contacts,
            throw: if no {
                Throw::NormallyOpen
            } else {
                Throw::NormallyClosed
            },
            cable: Cable {
                wire: Wire::ALL[c.0],
                to_relay: m(c.1),
                to_coil: m(c.2),
                stray_live: pico(c.3),
                stray_return: pico(c.4),
                neighbour: volts(c.5),
            },
            coil: Coil {
                rated: volts(k.0),
                apparent_power: Power::new::<watt>(k.1),
                power_factor: part(k.2),
                inrush: part(k.3),
                inrush_power_factor: part(k.4),
            },
        })
        .boxed()
}

fn si(reading: Reading) -> f64 {
    match reading {
        Reading::Volts(v) => v.value,
        Reading::Amperes(i) => i.value,
        Reading::Ohms(r) => r.value,
        Reading::OpenLine => 0.0,
    }
}

proptest! {
    #[test]
    fn circuits_are_sound(
        circuit in any_circuit(), fault in 0..16usize, size in mostly(0.0..1e3), at in 0..3u8,
        a in 0..12usize, b in 0..12usize, calling: bool, lifted: bool, meter in 0..4usize,
        r in mostly(1.0..1e9), c in mostly(0.0..1e3), shown in number(),
        accuracy in mostly(0.001..0.1),
    ) {
        let fault = [
            Fault::None, Fault::SupplyLost, Fault::FuseBlown, Fault::DisconnectOpen,
            Fault::SeriesOpen(at), Fault::ContactStuckOpen, Fault::ContactWelded,
            Fault::ContactResistance(ohms(size)), Fault::CoilOpen, Fault::CoilShorted(part(size)),
            Fault::FeedBroken, Fault::FeedFloating(part(size)), Fault::FeedLoose(ohms(size)),
            Fault::ReturnBroken, Fault::ReturnLoose(ohms(size)),
            Fault::OutputLeakage(amperes(size)),
        ][fault];
        let input = Input { resistance: ohms(r), capacitance: pico(c) };
        let meter = [
            Meter::HighImpedance(input), Meter::LowImpedance(input), Meter::Clamp, Meter::Ohmmeter,
        ][meter];
        let leads = Leads { first: Point::ALL[a], second: Point::ALL[b] };
        let state = State { calling, coil_lifted: lifted, ..State::default() };
        let reading = read(&circuit, state, &[fault], leads, meter);
        sound(reading.map(si))?;
        sound(coil_duty(&circuit, state, &[fault]).map(|d| d.winding_heat.value))?;
        sound(circuit.coil.holding_current().map(|i| i.value))?;
        sound(circuit.coil.winding().map(|i| i.value))?;
        sound(circuit.cable.wire.loop_resistance(circuit.cable.to_coil).map(|r| r.value))?;
        sound(circuit.check().map(|()| 0.0))?;
        let shown = Reading::Volts(volts(shown));
        sound(meaning(&circuit, leads, meter, shown).map(|_| 0.0))?;
        let accuracy = Accuracy { of_reading: part(accuracy), of_full: part(accuracy) };
        let judged = judge(&circuit, state, leads, meter, shown, accuracy);
        sound(judged.map(|j| j.fits.iter().map(|f| f.log_likelihood).sum()))?;
        let expected = expect(&circuit, state, leads, meter);
        sound(expected.map(|e| e.into_iter().map(|(_, r)| si(r)).sum()))?;
    }

    #[test]
    fn electrodes_are_sound(
        shape in 0..4usize, d in mostly(0.001..0.05), far in mostly(0.01..2.0),
        l in mostly(0.01..5.0), kappa in mostly(1e-4..20.0), coat in mostly(1e-9..1.0),
        t in mostly(1e-6..0.02), phi in mostly(1e-4..1.0), ins in mostly(100.0..1e12),
        c in mostly(0.0..1e6), f in mostly(10.0..1e4), margin in mostly(1.0..100.0),
    ) {
        let siemens = ElectricalConductivity::new::<siemens_per_meter>;
        let (diameter, other) = (m(d), m(far));
        let shape = [
            Shape::RodPair { diameter, spacing: other },
            Shape::RodPairDeep { diameter, spacing: other },
            Shape::RodInPipe { diameter, bore: other },
            Shape::RodToBasin { diameter },
        ][shape];
        sound(shape.resistance(m(l), siemens(kappa)).map(|r| r.value))?;
        sound(electrode::touching(diameter, siemens(kappa)).map(|r| r.value))?;
        let film = Film { thickness: m(t), path: other, width: m(d), conductivity: siemens(kappa) };
        let foam = Foam { liquid: part(phi), wetted: m(l) };
        let scale = Scale { thickness: m(t), conductivity: siemens(coat) };
        let leakage = Leakage { insulation: ohms(ins), capacitance: pico(c), frequency: hz(f) };
        sound(film.resistance().map(|r| r.value))?;
        sound(foam.relative_conductivity().map(|r| r.value))?;
        sound(scale.resistance(diameter, m(l)).map(|r| r.value))?;
        sound(leakage.beside(Some(ohms(far))).map(|r| r.value))?;
        let probe = Probe {
            shape, immersion: m(l), water: Water::Measured(siemens(kappa)), film: Some(film),
            foam: Some(foam), scale: Some(scale), leakage,
        };
        for condition in Condition::ALL {
            sound(probe.resistance(condition).map(|r| r.map_or(0.0, |r| r.value)))?;
        }
        sound(probe.sensed(ohms(ins)).map(|s| s.iter().map(|s| s.resistance.value).sum()))?;
        sound(probe.safe_settings(part(margin)).map(|s| s.map_or(0.0, |(a, b)| a.value + b.value)))?;
    }
}
