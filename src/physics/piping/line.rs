//! The fill line from the mains to the basin.

use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::velocity::meter_per_second;
use uom::si::volume_rate::cubic_meter_per_second;

use super::friction::darcy;
use super::valve::FlowCoefficient;
use super::{GRAVITY, Liquid, bore_of, circle};
use crate::physics::error::{Error, NoSolution, Quantity, within};
use crate::physics::heat::MOST_FLOW;
use crate::physics::root::bisect;
use crate::quantity::{GaugePressure, Length, Pressure, Ratio, Velocity, VolumeRate};

/// A makeup line: mains, pipe, backflow preventer, strainer, solenoid valve,
/// open end over the basin. No choking is looked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FillLine {
    /// Mains pressure while the line runs, 0 to 2 MPa above the atmosphere.
    pub mains: GaugePressure,
    /// Height of the open end above the mains gauge, -100 to 100 m.
    pub lift: Length,
    /// Inside bore, 1 mm to 2 m.
    pub bore: Length,
    /// Length of pipe, 0 to 10 km.
    pub length: Length,
    /// Roughness of the wall, 0 to a tenth of the bore: 1.5 um for copper or
    /// plastic, 45 um for new steel, ten times that when rusted (common
    /// practice, no source).
    pub roughness: Length,
    /// Sum of the loss coefficients of fittings, entry and exit, 0 to 1000.
    pub fittings: Ratio,
    /// Loss that hardly changes with flow (backflow preventer), 0 to 1 MPa.
    pub fixed_loss: Pressure,
    /// The strainer, as it is.
    pub strainer: FlowCoefficient,
    /// The solenoid valve, open.
    pub solenoid: FlowCoefficient,
    /// The water.
    pub water: Liquid,
}

/// What each part of the line takes of the mains pressure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drops {
    /// The lift; negative when the line runs downhill.
    pub lift: Pressure,
    /// The fixed loss.
    pub fixed: Pressure,
    /// Pipe friction.
    pub pipe: Pressure,
    /// Fittings, entry and exit.
    pub fittings: Pressure,
    /// The strainer.
    pub strainer: Pressure,
    /// The solenoid valve.
    pub solenoid: Pressure,
}

impl Drops {
    /// All of them together.
    pub fn total(&self) -> Pressure {
        self.lift + self.fixed + self.pipe + self.fittings + self.strainer + self.solenoid
    }
}

/// A flow in the line and what goes with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineFlow {
    /// The flow.
    pub flow: VolumeRate,
    /// Mean velocity in the pipe.
    pub velocity: Velocity,
    /// Reynolds number in the pipe.
    pub reynolds: Ratio,
    /// Darcy friction factor; zero without flow.
    pub friction_factor: Ratio,
    /// Where the pressure goes.
    pub drops: Drops,
}

/// A line in SI numbers.
struct Checked {
    /// What is left for flow when lift and fixed loss are taken off, Pa.
    left: f64,
    lift: f64,
    fixed: f64,
    area: f64,
    bore: f64,
    slender: f64,
    rough: f64,
    fittings: f64,
    density: f64,
    viscosity: f64,
}

/// Pipe state at a flow: velocity, Re, f, pipe loss, fittings loss.
struct Pipe {
    velocity: f64,
    reynolds: f64,
    factor: f64,
    friction: f64,
    fittings: f64,
}

impl Checked {
    fn pipe(&self, flow: f64) -> Pipe {
        let velocity = flow / self.area;
        let head = 0.5 * self.density * velocity * velocity;
        let reynolds = self.density * velocity * self.bore / self.viscosity;
        let factor = if reynolds > 0.0 {
            darcy(reynolds, self.rough)
        } else {
            0.0
        };
        Pipe {
            velocity,
            reynolds,
            factor,
            friction: factor * self.slender * head,
            fittings: self.fittings * head,
        }
    }
}

impl FillLine {
    fn checked(&self) -> Result<Checked, Error> {
        let mains = within(Quantity::MainsPressure, self.mains.pascals(), 0.0, 2e6)?;
        let lift = within(Quantity::Lift, self.lift.get::<meter>(), -100.0, 100.0)?;
        let bore = bore_of(self.bore)?;
        let length = within(Quantity::PipeLength, self.length.get::<meter>(), 0.0, 1e4)?;
        let rough = self.roughness.get::<meter>();
        let rough = within(Quantity::Roughness, rough, 0.0, 0.1 * bore)?;
        let fittings = self.fittings.get::<ratio>();
        let fittings = within(Quantity::LossCoefficient, fittings, 0.0, 1e3)?;
        let fixed = self.fixed_loss.get::<pascal>();
        let fixed = within(Quantity::PressureDrop, fixed, 0.0, 1e6)?;
        let density = self.water.density_si()?;
        let lift = density * GRAVITY * lift;
        Ok(Checked {
            left: mains - lift - fixed,
            lift,
            fixed,
            area: circle(bore),
            bore,
            slender: length / bore,
            rough: rough / bore,
            fittings,
            density,
            viscosity: self.water.viscosity_si()?,
        })
    }

    /// The flow the line brings.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states or Kv
    /// outside 0.0001 to 10,000 m3/h; [`NoSolution::NoPressure`] when lift and
    /// fixed loss take the whole mains pressure.
    pub fn flow(&self) -> Result<LineFlow, Error> {
        let line = self.checked()?;
        let (strainer, solenoid) = (self.strainer.checked()?, self.solenoid.checked()?);
        if line.left <= 0.0 {
            return Err(Error::NoSolution(NoSolution::NoPressure));
        }
        let taken = |flow: f64| {
            let pipe = line.pipe(flow);
            let valves =
                strainer.drop_si(flow, line.density) + solenoid.drop_si(flow, line.density);
            pipe.friction + pipe.fittings + valves - line.left
        };
        let most = solenoid.flow_si(line.left, line.density);
        let flow = bisect(0.0, most, taken);
        self.at(VolumeRate::new::<cubic_meter_per_second>(flow))
    }

    /// What each part takes at a given flow, whatever the mains pressure.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, Kv
    /// outside 0.0001 to 10,000 m3/h, or the flow outside 0 to 10 m3/s.
    pub fn at(&self, flow: VolumeRate) -> Result<LineFlow, Error> {
        let line = self.checked()?;
        let si = flow.get::<cubic_meter_per_second>();
        let si = within(Quantity::WaterFlow, si, 0.0, MOST_FLOW)?;
        let pipe = line.pipe(si);
        let lost = |valve: FlowCoefficient| -> Result<Pressure, Error> {
            Ok(pressure(valve.checked()?.drop_si(si, line.density)))
        };
        Ok(LineFlow {
            flow,
            velocity: Velocity::new::<meter_per_second>(pipe.velocity),
            reynolds: Ratio::new::<ratio>(pipe.reynolds),
            friction_factor: Ratio::new::<ratio>(pipe.factor),
            drops: Drops {
                lift: pressure(line.lift),
                fixed: pressure(line.fixed),
                pipe: pressure(pipe.friction),
                fittings: pressure(pipe.fittings),
                strainer: lost(self.strainer)?,
                solenoid: lost(self.solenoid)?,
            },
        })
    }

    /// The strainer that explains a measured fill rate, all else as described:
    /// set it against the clean strainer's Kv to see how far it is blocked. The
    /// field `strainer` is not used.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a field is outside the range it states, the
    /// flow outside 1 mL/s to 10 m3/s, or the Kv found outside 0.0001 to
    /// 10,000 m3/h (a strainer that takes next to nothing);
    /// [`NoSolution::NoPressure`] when lift and fixed loss take the whole mains
    /// pressure; [`NoSolution::MoreThanTheLine`] when the rest of the line
    /// would not pass that flow even with no strainer.
    pub fn strainer_for(&self, measured: VolumeRate) -> Result<FlowCoefficient, Error> {
        let line = self.checked()?;
        let solenoid = self.solenoid.checked()?;
        let flow = measured.get::<cubic_meter_per_second>();
        let flow = within(Quantity::WaterFlow, flow, 1e-6, MOST_FLOW)?;
        if line.left <= 0.0 {
            return Err(Error::NoSolution(NoSolution::NoPressure));
        }
        let pipe = line.pipe(flow);
        let others = pipe.friction + pipe.fittings + solenoid.drop_si(flow, line.density);
        if others >= line.left {
            return Err(Error::NoSolution(NoSolution::MoreThanTheLine));
        }
        FlowCoefficient::for_si(flow, line.left - others, line.density).checked()
    }
}

fn pressure(pa: f64) -> Pressure {
    Pressure::new::<pascal>(pa)
}

/// Whether a pilot-operated (servo) solenoid valve opens fully.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ServoOpening {
    /// Under 30 kPa: expect it to hum, energised, and stay shut or half open.
    StaysShut,
    /// 30 to 70 kPa: some valves open, some do not; the valve's label governs.
    Doubtful,
    /// Above 70 kPa.
    Opens,
}

/// What a pressure drop across a pilot-operated solenoid valve does. Such
/// valves need 0.3 to 0.7 bar to open fully (from memory; the label governs);
/// direct-acting valves need none.
///
/// # Errors
/// [`Error::OutOfRange`] when the drop is outside 0 to 2 MPa.
pub fn servo_opening(drop: Pressure) -> Result<ServoOpening, Error> {
    let pa = within(Quantity::PressureDrop, drop.get::<pascal>(), 0.0, 2e6)?;
    Ok(match pa {
        pa if pa < 30e3 => ServoOpening::StaysShut,
        pa if pa <= 70e3 => ServoOpening::Doubtful,
        _ => ServoOpening::Opens,
    })
}
