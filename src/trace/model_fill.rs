//! The plant model's makeup side: the fill control's electrics, the makeup
//! line, and water going out. Chances are judgement: common practice, no
//! source; the film and damp of the probe holder follow from electrode
//! conductance, where a film of a millimeter across 40 mm reads some 10 kohm
//! and a clean dry holder above 1 Mohm.

use super::evidence::Check;
use super::mode::Mode;
use super::model::{SLIP, World, blend, three, two};

/// Checks along the fill control's electrics.
pub(crate) fn control_chances(check: Check, world: &World) -> [f64; 4] {
    let dead = world.has(Mode::ControlPowerLost);
    let false_full = world.has(Mode::SensorFalseFull);
    let contact = world.has(Mode::RelayContactOpen);
    match check {
        Check::LevelNow => match (world.low, world.draining()) {
            (true, true) => three(0.80, 0.13, 0.07),
            (true, false) => three(0.10, 0.60, 0.30),
            (false, _) => three(0.02, 0.03, 0.95),
        },
        Check::CallAsFound => {
            let over_low = if dead {
                three(SLIP, 0.04, 0.95)
            } else if false_full {
                three(0.03, 0.96, SLIP)
            } else {
                three(0.97, 0.02, SLIP)
            };
            let over_full = if dead {
                three(SLIP, 0.04, 0.95)
            } else {
                three(0.03, 0.96, SLIP)
            };
            blend(world.low_now(), over_low, over_full)
        }
        Check::ControlVoltage => {
            if dead {
                three(SLIP, 0.19, 0.80)
            } else {
                three(0.97, 0.02, SLIP)
            }
        }
        // Wiping takes the film off, so a dried probe calls whether or not it
        // lied before; a shorted cable or a stuck control does not.
        Check::ProbeDried => two(if dead {
            SLIP
        } else if false_full {
            0.88
        } else {
            0.97
        }),
        // Watched at the output contact.
        Check::Substitution => two(if dead {
            0.03
        } else if contact {
            0.15
        } else if false_full {
            0.93
        } else {
            0.97
        }),
        Check::CoilVoltage => {
            if dead {
                three(SLIP, 0.10, 0.89)
            } else if contact {
                three(0.03, 0.15, 0.82)
            } else if false_full {
                three(0.80, 0.03, 0.17)
            } else {
                three(0.95, 0.03, 0.02)
            }
        }
        // A blade held at the nut is hard to misread.
        Check::CoilPull => two(
            if dead || world.any(&[Mode::CoilOpen, Mode::RelayContactOpen]) {
                0.03
            } else if false_full {
                0.80
            } else {
                1.0 - SLIP / 2.0
            },
        ),
        Check::FlowOnCall => {
            let electrics = [
                Mode::ControlPowerLost,
                Mode::RelayContactOpen,
                Mode::CoilOpen,
            ];
            if world.any(&electrics) {
                three(SLIP, 0.04, 0.95)
            } else if let Some(flow) = line_flow(world) {
                flow
            } else if world.has(Mode::ValveStuck) {
                three(0.03, 0.22, 0.75)
            } else if false_full {
                three(0.78, 0.05, 0.17)
            } else {
                three(0.96, 0.03, SLIP)
            }
        }
        // A film stays on the holder, drier or wetter, when it lets go.
        Check::ProbeFilm => {
            let present = world.present & Mode::SensorFalseFull.bit() != 0;
            two(match (present, false_full) {
                (true, true) => 0.15,
                (true, false) => 0.45,
                (false, _) => 0.94,
            })
        }
        _ => {
            let present = world.present & Mode::SensorFalseFull.bit() != 0;
            two(match (present, false_full) {
                (true, true) => 0.60,
                (true, false) => 0.70,
                (false, _) => 0.90,
            })
        }
    }
}

/// Flow through an open fill valve when the makeup line itself is at fault;
/// `None` when it is not.
fn line_flow(world: &World) -> Option<[f64; 4]> {
    if world.has(Mode::HandValveShut) {
        Some(three(SLIP, 0.09, 0.90))
    } else if world.has(Mode::StrainerBlocked) {
        Some(three(0.03, 0.42, 0.55))
    } else if world.has(Mode::MainsLow) {
        Some(three(0.03, 0.60, 0.37))
    } else {
        None
    }
}

/// Checks on the water side of the fill, and on water going out.
pub(crate) fn water_chances(check: Check, world: &World) -> [f64; 4] {
    let shut = world.has(Mode::HandValveShut);
    let strainer = world.has(Mode::StrainerBlocked);
    let mains = world.has(Mode::MainsLow);
    match check {
        Check::ForceValve => {
            if let Some(flow) = line_flow(world) {
                flow
            } else if world.has(Mode::ValveStuck) {
                three(0.65, 0.15, 0.20)
            } else {
                three(0.96, 0.03, SLIP)
            }
        }
        Check::HandValves => two(if shut { 0.04 } else { 1.0 - SLIP }),
        Check::StrainerBlowOff => two(if strainer { 0.07 } else { 0.95 }),
        Check::MainsPressure => two(if mains { 0.06 } else { 0.97 }),
        Check::WaterLoss => two(if world.has(Mode::BleedOrLeak) {
            0.12
        } else {
            0.96
        }),
        _ => {
            if world.any(&[Mode::StrainerBlocked, Mode::MainsLow]) {
                three(0.05, 0.60, 0.35)
            } else if world.has(Mode::SensorFalseFull) {
                three(0.15, 0.10, 0.75)
            } else if world.has(Mode::BleedOrLeak) {
                three(0.30, 0.60, 0.10)
            } else if world.draining() {
                three(0.03, 0.12, 0.85)
            } else {
                three(0.95, 0.04, SLIP)
            }
        }
    }
}
