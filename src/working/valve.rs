//! One valve: what it passes, and the valve a flow needs.

use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::air::pressure;
use super::given::{Fault, Given};
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, PipingFigure};
use crate::physics::piping::Liquid;
use crate::physics::piping::valve::{FlowCoefficient, Service};
use crate::quantity::{Ratio, ThermodynamicTemperature, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "valve",
    asks: &[
        Ask::ValveBefore,
        Ask::ValveBehind,
        Ask::ValveCv,
        Ask::FlowWanted,
        Ask::ValveRecovery,
        Ask::Altitude,
    ],
    rows: &[
        (Figure::Piping(PipingFigure::ValveFlow), |g| {
            g.need(&[Ask::ValveBefore, Ask::ValveBehind, Ask::ValveCv])?;
            Ok(Value::flow(service(g)?.flow(valve(g)?)?.flow))
        }),
        (Figure::Piping(PipingFigure::CvNeeded), |g| {
            Ok(Value::number(needed(g)?.cv()))
        }),
        (Figure::Piping(PipingFigure::KvNeeded), |g| {
            Ok(Value::number(needed(g)?.kv()))
        }),
    ],
    says: |g| {
        let choked = match service(g).and_then(|s| Ok(s.flow(valve(g)?)?.choked)) {
            Ok(true) => Some(Saying::of(Tone::Finding, Say::Choked)),
            _ => None,
        };
        choked.into_iter().collect()
    },
    ..Sheet::PLAIN
};

fn service(given: &Given) -> Result<Service, Fault> {
    given.need(&[Ask::ValveBefore, Ask::ValveBehind])?;
    let (before, behind) = (
        given.gauge(Ask::ValveBefore)?,
        given.gauge(Ask::ValveBehind)?,
    );
    if before.pascals() < behind.pascals() {
        return Err(Fault::Order(Ask::ValveBefore, Ask::ValveBehind));
    }
    let air = pressure(given)?;
    Ok(Service {
        inlet: before.absolute(air),
        outlet: behind.absolute(air),
        recovery: Ratio::new::<ratio>(given.number(Ask::ValveRecovery)?),
        liquid: Liquid::water(ThermodynamicTemperature::new::<degree_celsius>(15.0))?,
    })
}

fn valve(given: &Given) -> Result<FlowCoefficient, Fault> {
    Ok(FlowCoefficient::from_cv(given.number(Ask::ValveCv)?))
}

fn needed(given: &Given) -> Result<FlowCoefficient, Fault> {
    given.need(&[Ask::ValveBefore, Ask::ValveBehind, Ask::FlowWanted])?;
    let flow = given.flow(Ask::FlowWanted)?;
    Ok(service(given)?.needed(flow)?.coefficient)
}
