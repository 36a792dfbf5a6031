//! How we know a figure of the control circuit, in English.

use crate::physics::basis::CircuitFigure;

pub(in crate::words) fn name(figure: CircuitFigure) -> &'static str {
    match figure {
        CircuitFigure::MeterReading => "The meter should read",
        CircuitFigure::CoilVoltage => "Volts at the coil",
        CircuitFigure::HoldingCurrent => "Holding current",
        CircuitFigure::Winding => "Ohms of the winding",
    }
}

pub(in crate::words) fn formula(figure: CircuitFigure) -> &'static str {
    match figure {
        CircuitFigure::MeterReading => {
            "Reading = size of Va - Vb with the meter connected. Va, Vb: voltages of the two \
             terminals, from Y V = I at every terminal. Y: admittances of parts and meter. I: \
             current of the supply."
        }
        CircuitFigure::CoilVoltage => {
            "V = supply x Z / (Z + Zs). Z: impedance of the coil, R + jX. Zs: everything in series \
             with it. Low under 85% of the nameplate, high over 110%."
        }
        CircuitFigure::HoldingCurrent => "I = VA / V. VA and V: from the coil's nameplate.",
        CircuitFigure::Winding => {
            "R = V^2 / VA / inrush x pf. Inrush: inrush over holding current, 5 unless known. pf: \
             power factor of the inrush, 0.8 unless known."
        }
    }
}

pub(in crate::words) fn source(figure: CircuitFigure) -> &'static str {
    match figure {
        CircuitFigure::MeterReading => {
            "Source: nodal analysis, checked against the ngspice simulator. Good to 0.1% as \
             arithmetic; the parts as entered are the larger error, some percent."
        }
        CircuitFigure::CoilVoltage => {
            "Source: series circuit; -10% from a fluid-power design data sheet (1990), -15 and +10% \
             common practice, no source. Good as far as the nameplate, which governs."
        }
        CircuitFigure::HoldingCurrent => {
            "Source: definition of volt-amperes. Good at rated voltage with the armature seated."
        }
        CircuitFigure::Winding => {
            "Source: inrush five times holding, fluid-power design data sheet (1990); power factor \
             from memory. Good to a factor of two. The maker's ohms, if known, come first."
        }
    }
}
