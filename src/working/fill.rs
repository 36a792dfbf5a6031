//! The fill line: what it brings, and how far a strainer is blocked.

use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::given::{Answered, Fault, Given};
use super::say::{Say, Saying, Tone};
use super::{Ask, Sheet};
use crate::physics::basis::{Figure, PipingFigure};
use crate::physics::piping::valve::FlowCoefficient;
use crate::physics::piping::{FillLine, LineFlow, Liquid, servo_opening};
use crate::quantity::{Length, Ratio, ThermodynamicTemperature, Value};

pub(super) const SHEET: Sheet = Sheet {
    slug: "fill",
    asks: &[
        Ask::Mains,
        Ask::Lift,
        Ask::PipeBore,
        Ask::PipeLength,
        Ask::PipeFittings,
        Ask::Backflow,
        Ask::StrainerCv,
        Ask::SolenoidCv,
        Ask::FillMeasured,
    ],
    rows: &[
        (Figure::Piping(PipingFigure::FillFlow), |g| {
            Ok(Value::flow(line(g)?.flow()?.flow))
        }),
        (Figure::Piping(PipingFigure::ServoDrop), |g| {
            Ok(Value::pressure_difference(flow(g)?.drops.solenoid))
        }),
        (Figure::PipeDrop, |g| {
            let drops = flow(g)?.drops;
            Ok(Value::pressure_difference(drops.pipe + drops.fittings))
        }),
        (Figure::StrainerDrop, |g| {
            Ok(Value::pressure_difference(flow(g)?.drops.strainer))
        }),
        (Figure::Piping(PipingFigure::StrainerBlockage), blockage),
    ],
    says: |g| {
        let opening = flow(g).and_then(|f| Ok(servo_opening(f.drops.solenoid)?));
        let said = opening.map(|o| Saying::of(Tone::Finding, Say::Servo(o)));
        said.into_iter().collect()
    },
    ..Sheet::PLAIN
};

fn line(given: &Given) -> Result<FillLine, Fault> {
    given.need(&[Ask::Mains, Ask::PipeBore, Ask::PipeLength])?;
    let cold = ThermodynamicTemperature::new::<degree_celsius>(15.0);
    Ok(FillLine {
        mains: given.gauge(Ask::Mains)?,
        lift: given.length(Ask::Lift)?,
        bore: given.level(Ask::PipeBore)?,
        length: given.length(Ask::PipeLength)?,
        // Copper or plastic (common practice, no source).
        roughness: Length::new::<uom::si::length::micrometer>(1.5),
        fittings: Ratio::new::<ratio>(given.number(Ask::PipeFittings)?),
        fixed_loss: given.drop(Ask::Backflow)?,
        strainer: FlowCoefficient::from_cv(given.number(Ask::StrainerCv)?),
        solenoid: FlowCoefficient::from_cv(given.number(Ask::SolenoidCv)?),
        water: Liquid::water(cold)?,
    })
}

fn flow(given: &Given) -> Result<LineFlow, Fault> {
    Ok(line(given)?.flow()?)
}

/// Part of the clean strainer's Cv that is left, from a measured fill flow.
fn blockage(given: &Given) -> Answered {
    let line = line(given)?;
    let left = line.strainer_for(given.flow(Ask::FillMeasured)?)?;
    let part = Ratio::new::<ratio>(left.kv() / line.strainer.kv());
    Ok(Value::ratio(part))
}
