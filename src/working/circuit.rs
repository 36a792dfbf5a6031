//! The control circuit: what a meter should read, and which faults a reading
//! fits.

use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::ohm;
use uom::si::power::watt;

use super::given::{Fault, Given};
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{CircuitFigure, Figure};
use crate::physics::circuit::Fault as Wrong;
use crate::physics::circuit::{
    Accuracy, Armature, Caution, Circuit, Coil, CoilDuty, Leads, Meter, Point, Reading, State,
    coil_duty, expect, judge, meaning, read,
};
use crate::quantity::{ElectricCurrent, ElectricPotential, ElectricalResistance, Power, Value};

/// What a common meter's last digit shows (common practice, no source).
const LAST_DIGIT_V: f64 = 0.05;

pub(super) const SHEET: Sheet = Sheet {
    slug: "circuit",
    asks: &[
        Ask::Meter,
        Ask::FirstLead,
        Ask::SecondLead,
        Ask::ReadVolts,
        Ask::ReadAmperes,
        Ask::ReadOhms,
        Ask::Calling,
        Ask::ControlVoltage,
        Ask::CoilVa,
        Ask::Feed,
    ],
    rows: &[
        (Figure::Circuit(CircuitFigure::MeterReading), |g| {
            let (circuit, state) = circuit(g)?;
            let leads = leads(g);
            Ok(shown(read(
                &circuit,
                state,
                &[Wrong::None],
                leads,
                meter(g),
            )?))
        }),
        (Figure::Circuit(CircuitFigure::CoilVoltage), |g| {
            Ok(Value::voltage(duty(g)?.voltage))
        }),
        (Figure::Circuit(CircuitFigure::HoldingCurrent), |g| {
            Ok(Value::current(circuit(g)?.0.coil.holding_current()?))
        }),
        (Figure::Circuit(CircuitFigure::Winding), |g| {
            Ok(Value::resistance(circuit(g)?.0.coil.winding()?))
        }),
    ],
    shows: |g, ask| match ask {
        Ask::ReadVolts => matches!(meter(g), Meter::HighImpedance(_) | Meter::LowImpedance(_)),
        Ask::ReadAmperes => matches!(meter(g), Meter::Clamp),
        Ask::ReadOhms | Ask::SecondLead if matches!(meter(g), Meter::Clamp) => false,
        Ask::ReadOhms => matches!(meter(g), Meter::Ohmmeter),
        Ask::Calling => !matches!(meter(g), Meter::Ohmmeter),
        _ => true,
    },
    says: |g| sayings(g).unwrap_or_default(),
    cautions: |g| {
        let meter = meter(g);
        let all = meter.cautions().iter().chain([&Caution::CoilOffStem]);
        all.map(|c| Say::Caution(*c)).collect()
    },
    ..Sheet::PLAIN
};

fn circuit(given: &Given) -> Result<(Circuit, State), Fault> {
    given.need(&[Ask::ControlVoltage, Ask::CoilVa])?;
    let volts = given.voltage(Ask::ControlVoltage)?;
    let power = Power::new::<watt>(given.number(Ask::CoilVa)?);
    let transformer = given.chosen(Ask::Feed) == 0;
    let state = State {
        calling: given.chosen(Ask::Calling) == 0,
        armature: Armature::ByVoltage,
        coil_lifted: matches!(meter(given), Meter::Ohmmeter),
    };
    Ok((
        Circuit::usual(Coil::nameplate(volts, power), transformer),
        state,
    ))
}

fn duty(given: &Given) -> Result<CoilDuty, Fault> {
    let (circuit, state) = circuit(given)?;
    let state = State {
        coil_lifted: false,
        ..state
    };
    Ok(coil_duty(&circuit, state, &[Wrong::None])?)
}

/// The meters, in the order of the choice.
pub const METERS: [fn() -> Meter; 4] = [
    Meter::high_impedance,
    Meter::low_impedance,
    || Meter::Clamp,
    || Meter::Ohmmeter,
];

fn meter(given: &Given) -> Meter {
    METERS[given.chosen(Ask::Meter).min(3)]()
}

/// The points of a circuit without series contacts, in the order of the choice.
pub const POINTS: [Point; 9] = [
    Point::SupplyHot,
    Point::FuseOut,
    Point::DisconnectOut,
    Point::RelayCommon,
    Point::RelayOut,
    Point::RelayOther,
    Point::CoilFeed,
    Point::CoilReturn,
    Point::SupplyReturn,
];

fn leads(given: &Given) -> Leads {
    let at = |ask| POINTS[given.chosen(ask).min(POINTS.len() - 1)];
    Leads {
        first: at(Ask::FirstLead),
        second: at(Ask::SecondLead),
    }
}

fn reading(given: &Given) -> Option<Reading> {
    Some(match meter(given) {
        Meter::HighImpedance(_) | Meter::LowImpedance(_) => {
            Reading::Volts(ElectricPotential::new::<volt>(given.si(Ask::ReadVolts)?))
        }
        Meter::Clamp => {
            Reading::Amperes(ElectricCurrent::new::<ampere>(given.si(Ask::ReadAmperes)?))
        }
        Meter::Ohmmeter => {
            Reading::Ohms(ElectricalResistance::new::<ohm>(given.si(Ask::ReadOhms)?))
        }
    })
}

/// What a meter's display would show: under its last digit nothing.
fn shown(reading: Reading) -> Value {
    match reading {
        Reading::Volts(v) if v.get::<volt>().abs() < LAST_DIGIT_V => {
            Value::voltage(ElectricPotential::default())
        }
        Reading::Volts(v) => Value::voltage(v),
        Reading::Amperes(i) => Value::current(i),
        Reading::Ohms(r) => Value::resistance(r),
        Reading::OpenLine => Value::resistance(ElectricalResistance::new::<ohm>(f64::INFINITY)),
    }
}

/// With a reading its meaning and the faults it fits, without one what each
/// fault would read.
fn sayings(given: &Given) -> Result<Vec<Saying>, Fault> {
    let (circuit, state) = circuit(given)?;
    let (leads, meter) = (leads(given), meter(given));
    let mut all = Vec::new();
    let Some(reading) = reading(given) else {
        for (fault, reading) in expect(&circuit, state, leads, meter)? {
            all.push(Saying {
                tone: Tone::Plain,
                say: Say::Wrong(fault),
                value: Some(shown(reading)),
            });
        }
        return Ok(all);
    };
    let means = meaning(&circuit, leads, meter, reading)?;
    all.push(Saying::of(Tone::Finding, Say::Meaning(means)));
    let judged = judge(&circuit, state, leads, meter, reading, Accuracy::default())?;
    if judged.low_impedance_tells_more {
        all.push(Saying::of(Tone::Finding, Say::LoadIt));
    }
    for fit in judged.fits.iter().filter(|fit| fit.fits) {
        all.push(Saying {
            tone: Tone::Fits,
            say: Say::Wrong(fit.fault),
            value: Some(shown(fit.expected)),
        });
    }
    Ok(all)
}
