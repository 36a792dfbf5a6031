//! Figures of the tower and the shapes its trouble takes, in English.

use crate::physics::basis::TowerFigure;
use crate::physics::tower::{Settle, Shape};

pub(in crate::words) fn name(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => "Evaporation, saturated air",
        TowerFigure::Delivered => "Part of KaV/L delivered",
    }
}

pub(in crate::words) fn formula(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => {
            "E = flow x (W2 - W1) / (L/G). W1: humidity ratio of entering air. W2: of leaving air, \
             taken as saturated at h1 + L/G cp R. h1: enthalpy of entering air. R: range. L/G: water \
             over dry air, by mass."
        }
        TowerFigure::Delivered => {
            "Part delivered = KaV/L of today's readings / C (L/G)^-n. C: from the design point. n: \
             0.6 unless known. L/G: water over dry air, at today's flow and design air."
        }
    }
}

pub(in crate::words) fn source(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => {
            "Source: mass and energy balance with saturated leaving air (Merkel). Good within about \
             10%; up to 25% high in hot dry air."
        }
        TowerFigure::Delivered => {
            "Source: Merkel 1925, capability as in acceptance testing. Good within about 15% with \
             thermometers good to 1\u{a0}F (our estimate); worse at an approach below 5\u{a0}F."
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
