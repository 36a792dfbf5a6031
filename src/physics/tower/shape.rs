//! How well each shape of trouble explains a tower's readings.
//!
//! Method: every shape has one free parameter (part of the water, part of the
//! air, rise of the wet bulb, heat). The tower predicted with it
//! ([`super::DesignedTower`]) is held against the thermometers by least
//! squares. The thermometers count alike, and a shift common to all of them
//! counts nothing, which is least squares on range and approach with the
//! leaving water shared between them. A metered flow counts with 5 % of design,
//! a known heat with 10 % of itself (common practice, no source).
//!
//! A shape's weight is its likelihood averaged over the parameter (Bayes, all
//! shapes alike beforehand), so a shape that only fits at one sharp value gains
//! less than one that need not be tuned.

use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::{Carried, DesignedTower, Today};
use crate::physics::air::temperature;
use crate::quantity::{Pressure, Ratio, TemperatureInterval, sort_by};

/// A way a tower can stand against its design.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Shape {
    /// As at design, at the design heat or less.
    Healthy,
    /// Too little water over the fill: wide range, leaving water normal or low.
    LowWater,
    /// Too little air, or fill that passes too little heat: normal range, high
    /// approach.
    WeakAir,
    /// The tower breathes its own discharge: wet bulb at the inlet above that
    /// of the day.
    Recirculation,
    /// More heat than design on a sound tower: wide range and high approach.
    BeyondDesign,
    /// No shape fits: the readings contradict each other, or more than one
    /// thing is wrong.
    Contradiction,
}

impl Shape {
    /// Every shape.
    pub const ALL: [Shape; 6] = [
        Shape::Healthy,
        Shape::LowWater,
        Shape::WeakAir,
        Shape::Recirculation,
        Shape::BeyondDesign,
        Shape::Contradiction,
    ];

    /// The span its parameter is looked for in; equal ends when it has none.
    fn span(self) -> [f64; 2] {
        match self {
            Shape::LowWater | Shape::WeakAir => [0.2, 1.0],
            Shape::Recirculation => [0.0, 6.0],
            Shape::BeyondDesign => [1.0, 2.0],
            Shape::Healthy | Shape::Contradiction => [0.0, 0.0],
        }
    }
}

/// The value at which a shape fits best.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Parameter {
    /// Water flow as a part of design, 0.2 to 1.
    Water(Ratio),
    /// Air flow as a part of design, 0.2 to 1. Fouled or missing fill reads as
    /// less air.
    Air(Ratio),
    /// Wet bulb of the air drawn in over that of the day, 0 to 6 K.
    Rise(TemperatureInterval),
    /// Heat as a part of design; 1 to 2 for a load beyond design.
    Heat(Ratio),
}

/// A shape held against the readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// The shape.
    pub shape: Shape,
    /// Where it fits best; `None` for a contradiction.
    pub parameter: Option<Parameter>,
    /// How sure that is: one standard deviation, in the parameter's own unit
    /// (K for the rise). Zero where nothing was tuned.
    pub spread: f64,
    /// What is left unexplained there, in units of the uncertainty squared;
    /// infinite where the shape has no answer.
    pub chi_square: f64,
    /// Its part of all the weight, 0 to 1.
    pub weight: f64,
}

/// Left unexplained by readings that contradict, by convention: a shape that
/// leaves more is less likely than a slip (1 in 400 by chance).
const SLIP: f64 = 12.0;

/// Standard uncertainty of a metered flow, part of design.
const METER: f64 = 0.05;

/// Standard uncertainty of a known heat, part of itself.
const KNOWN_HEAT: f64 = 0.1;

/// Points the parameter is tried at.
const POINTS: u32 = 24;

/// The readings in plain numbers: Celsius, parts of design.
pub(super) struct Seen<'a> {
    pub tower: &'a DesignedTower,
    pub entering: f64,
    pub leaving: f64,
    /// Wet bulb of the day, or at the inlet when only that was read.
    pub wet_bulb: f64,
    /// Wet bulb at the inlet, when both were read.
    pub inlet: Option<f64>,
    /// Whether the one wet bulb was read at the inlet, so that no rise shows.
    pub only_inlet: bool,
    pub water: Option<f64>,
    pub heat: Option<f64>,
    pub pressure: Pressure,
    pub thermometer: f64,
}

impl Seen<'_> {
    /// Chi-square of a shape at `x`, and the heat it takes the tower to carry.
    fn misfit(&self, shape: Shape, x: f64) -> (f64, f64) {
        let sound_flow = self.water.unwrap_or(1.0).max(1.0);
        let (water, air, rise) = match shape {
            Shape::LowWater => (x, 1.0, 0.0),
            Shape::WeakAir => (sound_flow, x, 0.0),
            Shape::Recirculation => (sound_flow, 1.0, x),
            _ => (sound_flow, 1.0, 0.0),
        };
        let full = self.tower.design_range().get::<kelvin_interval>() / water;
        let seen = (self.entering - self.leaving) / full;
        let blind = self.water.is_none() && self.heat.is_none();
        let most = match shape {
            Shape::Healthy => 1.0,
            _ => self.heat.unwrap_or(1.0).max(1.0),
        };
        let heat = match (shape, self.heat) {
            (Shape::BeyondDesign, _) => x,
            // With neither flow nor heat known, low water is looked for at design heat.
            (Shape::LowWater, _) if blind => 1.0,
            (_, None) => seen,
            (_, Some(known)) => {
                let by_range = (full / self.thermometer).powi(2) / 2.0;
                let by_heat = (KNOWN_HEAT * known).powi(-2);
                (by_range * seen + by_heat * known) / (by_range + by_heat)
            }
        };
        let heat = if shape == Shape::BeyondDesign {
            heat
        } else {
            heat.clamp(0.02, most)
        };
        let range = heat * full;
        let today = Today {
            wet_bulb: temperature(self.wet_bulb + rise),
            carried: Carried::Range(TemperatureInterval::new::<kelvin_interval>(range)),
            water: Ratio::new::<ratio>(water),
            air: Ratio::new::<ratio>(air),
            pressure: self.pressure,
        };
        let Ok(does) = self.tower.predict(&today) else {
            return (f64::INFINITY, heat);
        };
        let cold = does.leaving.get::<degree_celsius>();
        let (hot_off, cold_off) = (self.entering - cold - range, self.leaving - cold);
        let inlet_off = self.inlet.map(|t| t - self.wet_bulb - rise);
        // The wet bulb itself is off by nothing: it is where the rest hangs from.
        let readings = 3.0 + f64::from(u8::from(inlet_off.is_some()));
        let inlet_off = inlet_off.unwrap_or(0.0);
        let sum = hot_off + cold_off + inlet_off;
        let squares = hot_off.powi(2) + cold_off.powi(2) + inlet_off.powi(2);
        let thermometers = (squares - sum * sum / readings) / self.thermometer.powi(2);
        let meter = self.water.map_or(0.0, |m| ((water - m) / METER).powi(2));
        let load = self
            .heat
            .map_or(0.0, |h| ((heat - h) / (KNOWN_HEAT * h)).powi(2));
        (thermometers + meter + load, heat)
    }

    /// One shape, its weight not yet shared out; `None` when the readings
    /// cannot show it.
    fn fit(&self, shape: Shape) -> Option<Fit> {
        let [low, high] = shape.span();
        let (best, chi_square, weight, spread) = match shape {
            Shape::Contradiction => (0.0, SLIP, (-0.5 * SLIP).exp(), 0.0),
            Shape::Recirculation if self.only_inlet => return None,
            Shape::Healthy => {
                let chi_square = self.misfit(shape, 0.0).0;
                (0.0, chi_square, (-0.5 * chi_square).exp(), 0.0)
            }
            _ => self.tuned(shape, low, high),
        };
        let part = Ratio::new::<ratio>(best);
        let parameter = match shape {
            Shape::Healthy => {
                let heat = self.misfit(shape, 0.0).1;
                Some(Parameter::Heat(Ratio::new::<ratio>(heat)))
            }
            Shape::LowWater => Some(Parameter::Water(part)),
            Shape::WeakAir => Some(Parameter::Air(part)),
            Shape::Recirculation => Some(Parameter::Rise(TemperatureInterval::new::<
                kelvin_interval,
            >(best))),
            Shape::BeyondDesign => Some(Parameter::Heat(part)),
            Shape::Contradiction => None,
        };
        Some(Fit {
            shape,
            parameter,
            spread,
            chi_square,
            weight,
        })
    }

    /// Best value, chi-square there, mean likelihood and spread of a shape
    /// tuned between `low` and `high`.
    fn tuned(&self, shape: Shape, low: f64, high: f64) -> (f64, f64, f64, f64) {
        let step = (high - low) / f64::from(POINTS);
        let at = |n: u32| low + step * (f64::from(n) + 0.5);
        let mut tried = [0.0; POINTS as usize];
        let mut best = (at(0), f64::INFINITY);
        for (n, chi_square) in (0..POINTS).zip(&mut tried) {
            *chi_square = self.misfit(shape, at(n)).0;
            if *chi_square < best.1 {
                best = (at(n), *chi_square);
            }
        }
        // Closer to the best point, by halving the step around it.
        let mut near = step;
        for _ in 0..10 {
            for x in [best.0 - near, best.0 + near] {
                let x = x.clamp(low, high);
                let chi_square = self.misfit(shape, x).0;
                if chi_square < best.1 {
                    best = (x, chi_square);
                }
            }
            near *= 0.5;
        }
        let (mut mass, mut square) = (0.0, 0.0);
        for (n, chi_square) in (0..POINTS).zip(tried) {
            // Against the best, so that a poor fit still has a spread.
            let likely = (-0.5 * (chi_square - best.1)).exp();
            if likely.is_finite() {
                mass += likely;
                square += likely * (at(n) - best.0).powi(2);
            }
        }
        let spread = if mass > 0.0 {
            (square / mass).sqrt()
        } else {
            0.0
        };
        let weight = (-0.5 * best.1).exp() * mass / f64::from(POINTS);
        (best.0, best.1, weight, spread)
    }

    /// Every shape the readings can show, the likeliest first.
    pub(super) fn fits(&self) -> Vec<Fit> {
        let mut fits: Vec<Fit> = Shape::ALL.iter().filter_map(|s| self.fit(*s)).collect();
        let all: f64 = fits.iter().map(|f| f.weight).sum();
        for fit in &mut fits {
            fit.weight /= all;
        }
        sort_by(&mut fits, |a, b| b.weight.total_cmp(&a.weight));
        fits
    }
}
