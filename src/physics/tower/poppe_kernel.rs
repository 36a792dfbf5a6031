//! Poppe's equations in plain f64: Celsius, pascals, kJ and kg per kg of dry air.
//!
//! The form is that of Kloppers & Kroger (2005, Int. J. Heat Mass Transfer
//! 48:765), with the water temperature as the variable. The enthalpy of the
//! air is not integrated: it follows from the heat the water has given up,
//! so the energy balance closes by itself. Callers check the ranges.

use crate::physics::air::kernel::{enthalpy, saturated_enthalpy, saturated_ratio};
use crate::physics::heat::SPECIFIC_HEAT;

/// Smallest driving enthalpy difference taken as one, kJ/kg.
const PINCHED: f64 = 0.01;

/// Lewis factor of still water and air after Bosnjakovic: 0.865 to the power 2/3.
const LEWIS: f64 = 0.907_842;

/// What goes into a tower, by Poppe's reckoning.
#[derive(Clone, Copy)]
pub(super) struct Tower {
    pub entering_water: f64,
    pub leaving_water: f64,
    pub dry_bulb: f64,
    pub humidity_ratio: f64,
    /// Entering water over dry air.
    pub water_air_ratio: f64,
    pub pressure: f64,
}

/// What comes out of it.
#[derive(Clone, Copy)]
pub(super) struct Exit {
    pub merkel: f64,
    /// Water of the leaving air, vapour and droplets.
    pub humidity_ratio: f64,
    pub enthalpy: f64,
}

/// Air at an enthalpy and a content of water.
#[derive(Clone, Copy)]
pub(super) struct Air {
    pub dry_bulb: f64,
    /// The part of its water that is vapour.
    pub vapour: f64,
    pub supersaturated: bool,
}

/// The state of air that holds `ratio` of water, droplets among it if need be.
pub(super) fn air(enthalpy_of: f64, ratio: f64, pressure: f64) -> Air {
    let mut dry_bulb = (enthalpy_of - 2501.0 * ratio) / (1.006 + 1.86 * ratio);
    // Colder than any mixture in range; also keeps the saturation line defined.
    dry_bulb = dry_bulb.max(-60.0);
    let mut vapour = saturated_ratio(dry_bulb, pressure);
    if vapour >= ratio {
        return Air {
            dry_bulb,
            vapour: ratio,
            supersaturated: false,
        };
    }
    // Newton, from the cold side of a convex line.
    for _ in 0..12 {
        let excess =
            enthalpy(dry_bulb, vapour) + (ratio - vapour) * SPECIFIC_HEAT * dry_bulb - enthalpy_of;
        let slope_of_vapour = (saturated_ratio(dry_bulb + 0.01, pressure) - vapour) / 0.01;
        let slope = 1.006
            + 1.86 * vapour
            + (ratio - vapour) * SPECIFIC_HEAT
            + slope_of_vapour * (2501.0 + (1.86 - SPECIFIC_HEAT) * dry_bulb);
        let step = excess / slope;
        dry_bulb -= step;
        vapour = saturated_ratio(dry_bulb, pressure);
        if step.abs() < 1e-10 {
            break;
        }
    }
    Air {
        dry_bulb,
        vapour,
        supersaturated: true,
    }
}

impl Tower {
    /// Heat of the air where its humidity is `ratio` and the water `celsius`,
    /// with `leaving` the water that leaves over dry air.
    fn heat(&self, celsius: f64, ratio: f64, leaving: f64) -> f64 {
        let flow = leaving + ratio - self.humidity_ratio;
        enthalpy(self.dry_bulb, self.humidity_ratio)
            + SPECIFIC_HEAT * (flow * celsius - leaving * self.leaving_water)
    }

    /// Change per kelvin of water of the humidity ratio and the Merkel number;
    /// `None` where nothing drives the exchange.
    fn slopes(&self, celsius: f64, ratio: f64, leaving: f64) -> Option<[f64; 2]> {
        let heat = self.heat(celsius, ratio, leaving);
        let air = air(heat, ratio, self.pressure);
        let at_water = saturated_ratio(celsius, self.pressure);
        let lack = at_water - air.vapour;
        let x = (at_water + 0.622) / (air.vapour + 0.622);
        let lewis = if (x - 1.0).abs() < 1e-7 {
            LEWIS
        } else {
            LEWIS * (x - 1.0) / x.ln()
        };
        let gap = saturated_enthalpy(celsius, self.pressure) - heat;
        let droplets = (ratio - air.vapour) * SPECIFIC_HEAT * celsius;
        let drive =
            gap + (lewis - 1.0) * (gap - lack * (2501.0 + 1.86 * celsius) + droplets) + droplets
                - lack * SPECIFIC_HEAT * celsius;
        if drive.is_nan() || drive < PINCHED {
            return None;
        }
        let merkel = SPECIFIC_HEAT / drive;
        let flow = leaving + ratio - self.humidity_ratio;
        Some([merkel * flow * lack, merkel])
    }

    /// Humidity ratio at the top and Merkel number, by Runge-Kutta of the
    /// fourth order in `steps` steps from the cold water up.
    fn climb(&self, leaving: f64, steps: u32) -> Option<[f64; 2]> {
        let h = (self.entering_water - self.leaving_water) / f64::from(steps);
        let (mut ratio, mut merkel) = (self.humidity_ratio, 0.0);
        for n in 0..steps {
            let t = self.leaving_water + h * f64::from(n);
            let a = self.slopes(t, ratio, leaving)?;
            let b = self.slopes(t + 0.5 * h, ratio + 0.5 * h * a[0], leaving)?;
            let c = self.slopes(t + 0.5 * h, ratio + 0.5 * h * b[0], leaving)?;
            let d = self.slopes(t + h, ratio + h * c[0], leaving)?;
            let mean = |i: usize| h / 6.0 * (a[i] + 2.0 * b[i] + 2.0 * c[i] + d[i]);
            merkel += mean(1);
            ratio += mean(0);
        }
        Some([ratio, merkel])
    }

    /// What leaves; `None` when the duty is pinched. The water that leaves is
    /// tried until what the air gained is what the water lost, and the steps
    /// are halved until neither answer moves by 1 part in 100,000.
    pub(super) fn exit(&self) -> Option<Exit> {
        let mut top = self.humidity_ratio;
        let mut last = f64::INFINITY;
        for steps in [8, 16, 32, 64, 128, 256] {
            let mut merkel = last;
            let before = top;
            for _ in 0..20 {
                let leaving = self.water_air_ratio - (top - self.humidity_ratio);
                let [ratio, m] = self.climb(leaving, steps)?;
                merkel = m;
                let moved = (ratio - top).abs();
                top = ratio;
                if moved < 1e-11 {
                    break;
                }
            }
            let still = (top - before).abs() < 1e-5 * (top - self.humidity_ratio).abs();
            let settled = still && (merkel - last).abs() < 1e-5 * merkel;
            last = merkel;
            if settled {
                break;
            }
        }
        let leaving = self.water_air_ratio - (top - self.humidity_ratio);
        Some(Exit {
            merkel: last,
            humidity_ratio: top,
            enthalpy: self.heat(self.entering_water, top, leaving),
        })
    }
}
