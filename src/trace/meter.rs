//! The seam between a meter and the model: what a number read at a check
//! comes to, as weights of the check's answers.
//!
//! Each number is compared with the figure it should be and cut into answers
//! by soft limits, so that a reading on a limit says both. For the electrical
//! checks the answer each fault gives is what `physics::circuit` predicts at
//! those terminals; a test here holds the two together.

use uom::si::electric_potential::volt;

use super::check::Check;
use super::plant::Plant;
use crate::quantity::{Kind, Value};

/// A number's limits: above `upper` the first answer, between the two the
/// second, below `lower` the third; in parts of the nominal figure when
/// `nominal`. `falling` turns the order of the answers around.
struct Limits {
    check: Check,
    kind: Kind,
    nominal: bool,
    upper: f64,
    lower: f64,
    falling: bool,
}

const fn limits(
    check: Check,
    kind: Kind,
    nominal: bool,
    upper: f64,
    lower: f64,
    falling: bool,
) -> Limits {
    Limits {
        check,
        kind,
        nominal,
        upper,
        lower,
        falling,
    }
}

/// Minus 15 % is the usual limit of a coil or control (common practice, no
/// source); a quarter may be a ghost voltage. A dry clean holder reads above
/// 1 Mohm, one with film below 100 kohm.
const LIMITS: [Limits; 9] = [
    limits(
        Check::ControlVoltage,
        Kind::Voltage,
        true,
        0.85,
        0.25,
        false,
    ),
    limits(
        Check::TransformerOutput,
        Kind::Voltage,
        true,
        0.85,
        0.25,
        false,
    ),
    limits(Check::CoilVoltage, Kind::Voltage, true, 0.85, 0.25, false),
    limits(Check::OutputVoltage, Kind::Voltage, true, 0.6, 0.6, false),
    limits(Check::ContactDrop, Kind::Voltage, true, 0.4, 0.4, true),
    limits(Check::ProbeFilm, Kind::Resistance, false, 3e5, 3e5, false),
    limits(
        Check::TerminalsDried,
        Kind::Resistance,
        false,
        3e5,
        3e5,
        false,
    ),
    limits(
        Check::MainsPressure,
        Kind::GaugePressure,
        false,
        140e3,
        140e3,
        false,
    ),
    limits(
        Check::PressureAtValve,
        Kind::GaugePressure,
        false,
        100e3,
        100e3,
        false,
    ),
];

impl Check {
    /// The kind of number this check has a field for, when it has one.
    pub fn field(self) -> Option<Kind> {
        LIMITS.iter().find(|l| l.check == self).map(|l| l.kind)
    }
}

/// 0 to 1 across a limit. Voltages and pressures are read to some 3 %, a
/// resistance across a film to no better than a factor of two.
fn over(x: f64, limit: f64, kind: Kind) -> f64 {
    let width = if kind == Kind::Resistance { 0.5 } else { 0.03 };
    let z = if x > 0.0 {
        (x / limit).ln() / width
    } else {
        -40.0
    };
    1.0 / (1.0 + (-z).exp())
}

/// Weight of each answer of `check` for this number; `None` when the check
/// has no field of its kind or the number is not finite.
pub(crate) fn weights(check: Check, value: Value, plant: &Plant) -> Option<[f64; 3]> {
    let limits = LIMITS
        .iter()
        .find(|l| l.check == check && l.kind == value.kind)?;
    let nominal = plant.control_voltage.get::<volt>();
    let x = if limits.nominal {
        value.si / nominal
    } else {
        value.si
    };
    if !x.is_finite() {
        return None;
    }
    let upper = over(x, limits.upper, limits.kind);
    let lower = over(x, limits.lower, limits.kind);
    let mut weights = if check.answers().len() == 2 {
        [upper, 1.0 - upper, 0.0]
    } else {
        [upper, (lower - upper).max(0.0), 1.0 - lower]
    };
    if limits.falling {
        weights.swap(0, 1);
    }
    Some(weights)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trace::{Answer, Evidence, Stage};

    fn read(check: Check, kind: Kind, si: f64) -> Answer {
        let value = Value { kind, si };
        Evidence::read(check, value, Stage::Testing, &Plant::default())
            .expect("a field")
            .answer
    }

    #[test]
    fn numbers_come_to_the_answers_a_mechanic_would_give() {
        use Answer as A;
        let volts = Kind::Voltage;
        assert_eq!(read(Check::CoilVoltage, volts, 24.4), A::VoltageGood);
        assert_eq!(read(Check::CoilVoltage, volts, 17.8), A::VoltageLow);
        assert_eq!(read(Check::CoilVoltage, volts, 0.3), A::NoVoltage);
        assert_eq!(read(Check::ContactDrop, volts, 0.05), A::ContactClosed);
        assert_eq!(read(Check::ContactDrop, volts, 24.0), A::ContactOpen);
        assert_eq!(
            read(Check::ProbeFilm, Kind::Resistance, 2e6),
            A::HolderClean
        );
        assert_eq!(
            read(Check::ProbeFilm, Kind::Resistance, 13.3e3),
            A::HolderFilmed
        );
        assert_eq!(
            read(Check::MainsPressure, Kind::GaugePressure, 350e3),
            A::MainsGood
        );
    }

    #[test]
    fn another_kind_or_a_broken_number_is_no_reading() {
        let plant = Plant::default();
        let of = |check, kind, si| weights(check, Value { kind, si }, &plant);
        assert_eq!(of(Check::CoilVoltage, Kind::Current, 1.0), None);
        assert_eq!(of(Check::CoilVoltage, Kind::Voltage, f64::NAN), None);
        assert_eq!(of(Check::CoilPull, Kind::Voltage, 24.0), None);
        let sum: f64 = of(Check::CoilVoltage, Kind::Voltage, 20.4)
            .unwrap()
            .iter()
            .sum();
        assert!((sum - 1.0).abs() < 1e-12);
    }

    /// The electrical sheets are what the circuit model predicts (itself held
    /// against ngspice): its reading, cut into answers here, is the answer that
    /// the sheet calls likeliest, for every fault the circuit knows.
    #[test]
    fn the_electrical_sheets_follow_from_the_circuit() {
        use crate::physics::circuit::{
            Circuit, Coil, Fault, Leads, Meter, Point, Reading, State, read,
        };
        use crate::quantity::{ElectricalResistance, Power};
        use crate::trace::Mode;
        use crate::trace::sheet;
        use uom::si::electrical_resistance::ohm;
        use uom::si::power::watt;
        let plant = Plant::default();
        let coil = Coil::nameplate(plant.control_voltage, Power::new::<watt>(10.0));
        let circuit = Circuit::usual(coil, true);
        let loose = ElectricalResistance::new::<ohm>(20.0);
        let faults = [
            (None, Fault::None),
            (Some(Mode::SupplyLost), Fault::SupplyLost),
            (Some(Mode::TransformerFailed), Fault::SupplyLost),
            (Some(Mode::FuseBlown), Fault::FuseBlown),
            (Some(Mode::DisconnectOff), Fault::DisconnectOpen),
            (Some(Mode::RelayContactOpen), Fault::ContactStuckOpen),
            (Some(Mode::WiringHighResistance), Fault::FeedLoose(loose)),
            (Some(Mode::WiringOpen), Fault::FeedBroken),
            (Some(Mode::CoilOpen), Fault::CoilOpen),
        ];
        let places = [
            (
                Check::ControlVoltage,
                Point::RelayCommon,
                Point::SupplyReturn,
            ),
            (Check::ContactDrop, Point::RelayCommon, Point::RelayOut),
            (Check::OutputVoltage, Point::RelayOut, Point::SupplyReturn),
            (Check::CoilVoltage, Point::CoilFeed, Point::CoilReturn),
        ];
        let calling = State {
            calling: true,
            ..State::default()
        };
        for (check, first, second) in places {
            let sheet = sheet::of(check).expect("a sheet");
            for (mode, fault) in faults {
                // A feed that is broken still shows ghosts to an unloaded
                // meter: the check says to load it.
                let meter = Meter::low_impedance();
                let leads = Leads { first, second };
                let got = read(&circuit, calling, &[fault], leads, meter).expect("a reading");
                let Reading::Volts(volts) = got else {
                    panic!("{got:?}")
                };
                let told = weights(check, Value::voltage(volts), &plant).expect("a field");
                let effect = mode.map_or(0, |m| usize::from(sheet.effect(m).0));
                let row = sheet.rows[effect].map(f64::from);
                let likeliest = |of: [f64; 3]| (0..3).max_by(|a, b| of[*a].total_cmp(&of[*b]));
                assert_eq!(
                    likeliest(told),
                    likeliest(row),
                    "{check:?} {mode:?} {volts:?}"
                );
            }
        }
    }
}
