//! How we know a figure of the control circuit, in English.

use crate::physics::basis::CircuitFigure;

pub(in crate::words) fn name(figure: CircuitFigure) -> &'static str {
    match figure {
        CircuitFigure::MeterReading => "The meter should read",
        CircuitFigure::CoilVoltage => "Volts at the coil",
        CircuitFigure::HoldingCurrent => "Holding current",
        CircuitFigure::Winding => "Ohms of the winding",
        CircuitFigure::WireLoop => "Ohms of the wire, out and back",
        CircuitFigure::GhostVoltage => "Ghost voltage",
        CircuitFigure::Fit => "How well it fits",
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
        CircuitFigure::WireLoop => {
            "R = 2 x length x ohms per length. Length: one way. Copper at 20\u{a0}C."
        }
        CircuitFigure::GhostVoltage => {
            "V = live x C1 / (C1 + C2) x Zm / (Zm + Zc). C1, C2: stray capacitance to the live wire \
             and to the return. Zm: meter. Zc: impedance of C1 + C2."
        }
        CircuitFigure::Fit => {
            "ln L = -z^2 / 2 - ln s, with a 2% chance of a wrong number. z: reading less expected, \
             over s. s: meter error and 5% for the circuit, combined."
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
        CircuitFigure::WireLoop => {
            "Source: AWG 18 from US wire tables; other sizes and IEC 60228 from memory. Good within \
             5%; copper gains 4% for every 10\u{a0}C."
        }
        CircuitFigure::GhostVoltage => {
            "Source: capacitive divider; meter makers report up to 85% of the live voltage. Good \
             for the order of size only: stray capacitance is a guess."
        }
        CircuitFigure::Fit => {
            "Source: normal error with judged widths. Good for ranking faults, not as a probability."
        }
    }
}
