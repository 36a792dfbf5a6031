//! How we know a figure of the level sensor, in English.

use crate::physics::basis::ElectrodeFigure;

pub(in crate::words) fn name(figure: ElectrodeFigure) -> &'static str {
    match figure {
        ElectrodeFigure::WaterResistance => "Ohms through the water",
        ElectrodeFigure::FilmResistance => "Ohms along the film",
        ElectrodeFigure::FoamResistance => "Ohms through the foam",
        ElectrodeFigure::SafeSettings => "Sensitivity that nothing fools",
    }
}

pub(in crate::words) fn formula(figure: ElectrodeFigure) -> &'static str {
    match figure {
        ElectrodeFigure::WaterResistance => {
            "Two rods: R = acosh(s/d) / (pi k L). Rod in a pipe: R = ln(D/d) / (2 pi k L). Rod to \
             basin: R = (ln(8L/d) - 1) / (2 pi k L). s: between rods. d: rod diameter. D: pipe bore. \
             k: conductivity. L: length in the water."
        }
        ElectrodeFigure::FilmResistance => {
            "R = path / (k x width x thickness). k: conductivity of the film."
        }
        ElectrodeFigure::FoamResistance => {
            "R = R of the water / sigma, sigma = 2 p (1 + 12 p) / (6 + 29 p - 9 p^2). p: part of the \
             foam that is liquid."
        }
        ElectrodeFigure::SafeSettings => {
            "From = margin x highest resistance in water. To = lowest resistance out of water / \
             margin."
        }
    }
}

pub(in crate::words) fn source(figure: ElectrodeFigure) -> &'static str {
    match figure {
        ElectrodeFigure::WaterResistance => {
            "Source: potential theory, from memory, checked by numerical solution. Good within 1% \
             for two rods when the water ends at the tips; in deep water short rods read up to 40% \
             less."
        }
        ElectrodeFigure::FilmResistance => {
            "Source: resistance of a strip. Good for the order of size only: nobody knows the film."
        }
        ElectrodeFigure::FoamResistance => {
            "Source: Feitosa et al. 2005, from memory. Good for the order of size only: foam drains \
             while you look."
        }
        ElectrodeFigure::SafeSettings => {
            "Source: the resistances above. Good as a first setting; prove it with the refill test, \
             foam and splash present."
        }
    }
}
