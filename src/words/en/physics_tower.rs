//! Figures of the tower and the shapes its trouble takes, in English.

use crate::physics::basis::TowerFigure;
use crate::physics::tower::{Settle, Shape};

pub(in crate::words) fn name(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => "Evaporation, saturated air",
        TowerFigure::PoppeMerkelNumber => "KaV/L by Poppe",
        TowerFigure::Prediction => "Leaving water at other heat, water and air",
        TowerFigure::Delivered => "Part of KaV/L delivered",
        TowerFigure::ShapeFit => "How well each fault fits",
    }
}

pub(in crate::words) fn formula(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => {
            "E = flow x (W2 - W1) / (L/G). W1: humidity ratio of entering air. W2: of leaving air, \
             taken as saturated at h1 + L/G cp R. h1: enthalpy of entering air. R: range. L/G: water \
             over dry air, by mass."
        }
        TowerFigure::PoppeMerkelNumber => {
            "KaV/L = sum of cp dT / D over the range. D = hs - h + (Le - 1) (hs - h - (Ws - W) hv) - \
             (Ws - W) cp T. hs, Ws: enthalpy and humidity ratio of air saturated at the water \
             temperature T. h, W: of the air there. hv: enthalpy of vapor. Le: Lewis factor, about \
             0.92."
        }
        TowerFigure::Prediction => {
            "Leaving water is where the duty needs KaV/L = C (L/G x water / air)^-n. Range = design \
             range x heat / water. Water, air, heat: parts of design. C: from the design point. n: \
             0.6 unless known."
        }
        TowerFigure::Delivered => {
            "Part delivered = KaV/L of today's readings / C (L/G)^-n. C: from the design point. n: \
             0.6 unless known. L/G: water over dry air, at today's flow and design air."
        }
        TowerFigure::ShapeFit => {
            "Weight = average of exp(-X/2), shared out over the shapes. X = sum of (reading - \
             predicted)^2 / uncertainty^2, least over the one unknown: water, air, wet bulb rise or \
             heat."
        }
    }
}

pub(in crate::words) fn source(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => {
            "Source: mass and energy balance with saturated leaving air (Merkel). Good within about \
             10%; up to 25% high in hot dry air."
        }
        TowerFigure::PoppeMerkelNumber => {
            "Source: Poppe and Rogener 1991, as restated by Kloppers and Kroger 2005. Good for water \
             at 32 to 140\u{a0}F, within 1% of the same equations over CoolProp 8.0.0. Compare only with \
             numbers found by the same method."
        }
        TowerFigure::Prediction => {
            "Source: Merkel 1925 with a tower characteristic; n from common practice, no source. Good \
             to about 1\u{a0}F near the design point (our estimate), less far from it or with uneven \
             water."
        }
        TowerFigure::Delivered => {
            "Source: Merkel 1925, capability as in acceptance testing. Good within about 15% with \
             thermometers good to 1\u{a0}F (our estimate); worse at an approach below 5\u{a0}F."
        }
        TowerFigure::ShapeFit => {
            "Source: least squares and Bayes' rule, our own reckoning; all shapes alike beforehand. \
             Good for one thing wrong at a time and even water. Two shapes close in weight are not \
             told apart."
        }
    }
}

pub(in crate::words) fn shape(shape: Shape) -> &'static str {
    match shape {
        Shape::Healthy => "Tower does as designed",
        Shape::LowWater => "Too little water over the tower",
        Shape::WeakAir => "Too little air, or fouled fill",
        Shape::Recirculation => "Tower breathes its own discharge",
        Shape::BeyondDesign => "More heat than the tower was picked for",
        Shape::Contradiction => "Readings don't fit together",
    }
}

pub(in crate::words) fn shape_line(shape: Shape) -> &'static str {
    match shape {
        Shape::Healthy => "Range and approach are what this wet bulb and heat call for.",
        Shape::LowWater => {
            "Wide range with leaving water normal or low. Look at basin level, pump, strainers and \
             trapped air."
        }
        Shape::WeakAir => {
            "Normal range with a high approach. Look at fan, belt, drive, louvers and fill. Lock out \
             the fan before you reach in."
        }
        Shape::Recirculation => {
            "Wet bulb at the air inlet is above that of the day. Look at walls, wind and other \
             discharges close by."
        }
        Shape::BeyondDesign => {
            "Wide range and high approach together, as a sound tower shows with more heat. Look at \
             what was added to the loop."
        }
        Shape::Contradiction => {
            "No single fault gives these readings. Check the thermometers side by side and read again."
        }
    }
}

pub(in crate::words) fn settle(settle: Settle) -> &'static str {
    match settle {
        Settle::WaterFlow => "Meter the water flow to tell these apart.",
        Settle::Heat => "Work out the heat from the running machines to tell these apart.",
        Settle::InletWetBulb => {
            "Read the wet bulb at the air inlet and again away from the tower to tell these apart."
        }
        Settle::Thermometers => "Check the thermometers side by side, then read again.",
    }
}
