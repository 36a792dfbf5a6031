//! How we know the figures of fill line, drain and overflow, in English.

use crate::physics::basis::PipingFigure;

/// The name of a figure, as it stands over its number.
pub(in crate::words) fn name(figure: PipingFigure) -> &'static str {
    match figure {
        PipingFigure::ValveFlow => "Through the valve",
        PipingFigure::CvNeeded => "Cv needed",
        PipingFigure::KvNeeded => "The same as Kv",
        PipingFigure::FillFlow => "The line brings",
        PipingFigure::StrainerBlockage => "Strainer open, part of clean",
        PipingFigure::ServoDrop => "Pressure across the valve",
        PipingFigure::Submergence => "Water needed over the suction",
        PipingFigure::AirFrom => "Draws air from, below the lip",
        PipingFigure::OverInlet => "Water over the inlet now",
        PipingFigure::DrainTime => "Until drained to that level",
        PipingFigure::FillTime => "Until filled to that level",
        PipingFigure::SteadyLevel => "Level settles, below the lip",
        PipingFigure::OverflowHead => "Head over the overflow",
        PipingFigure::RunningWater => "Costs in a year",
    }
}

pub(in crate::words) fn formula(figure: PipingFigure) -> &'static str {
    match figure {
        PipingFigure::ValveFlow => {
            "Q = Cv x square root of (dp / SG), gpm and psi; in metric Kv, m3/h and bar. Kv = \
             0.865 Cv. No more flow once dp reaches FL^2 (p1 - FF pv). SG: density over water's. \
             p1: pressure before the valve, absolute. pv: vapor pressure. FF: 0.96 - 0.28 x square \
             root of (pv / critical pressure)."
        }
        PipingFigure::CvNeeded => {
            "Cv = flow / square root of (dp / SG), gpm and psi. dp: pressure over the valve. SG: density over water's."
        }
        PipingFigure::KvNeeded => "Kv = 0.865 Cv, in m3/h and bar.",
        PipingFigure::FillFlow => {
            "The flow at which mains pressure = lift + fixed loss + (f L/D + K) rho V^2/2 + strainer \
             + valve. f: friction factor. L/D: length over bore. K: fittings. rho: density. V: \
             velocity. Strainer and valve: (Q/Kv)^2."
        }
        PipingFigure::StrainerBlockage => {
            "Kv = Q / square root of (pressure left). Pressure left: mains - lift - fixed loss - \
             pipe, fittings and valve at the measured flow Q. Part of clean: this Kv over the clean one's."
        }
        PipingFigure::ServoDrop => {
            "Opens fully when dp = 5 to 10\u{a0}psi or more. dp: pressure across the valve."
        }
        PipingFigure::Submergence => {
            "S = D (1 + 2.3 V / square root of (g D)). S: water over the suction opening. D: its \
             bore. V: velocity in it. g: gravity."
        }
        PipingFigure::AirFrom => {
            "Draws air from = top of the inlet below the lip - water needed over the suction. The lip \
             itself where that is less than nothing."
        }
        PipingFigure::OverInlet => {
            "Over it = top of the inlet below the lip - level below the lip."
        }
        PipingFigure::DrainTime => {
            "t = sum of A dh / (C a square root of (2 g h) - q). A: surface. h: water over the floor. a: \
             bore area. q: water coming in. C: 0.62."
        }
        PipingFigure::FillTime => {
            "t = volume between the levels / (inflow - loss). Loss: evaporation, bleed and leaks."
        }
        PipingFigure::SteadyLevel => {
            "h = (q / (C a))^2 / 2g. q: water coming in. C: 0.62. a: bore area. g: gravity. Below the \
             lip: depth - h."
        }
        PipingFigure::OverflowHead => {
            "The head h at which the standpipe carries the flow: Q = 0.6 x 2/3 x square root of (2g) x \
             pi D h^1.5, or drowned Q = 0.6 x area x square root of (2 g h), the smaller. In meters \
             and seconds."
        }
        PipingFigure::RunningWater => {
            "Cost = flow x 365 days x price of a volume of water. 1\u{a0}gpm = 1440\u{a0}gal a day."
        }
    }
}

pub(in crate::words) fn source(figure: PipingFigure) -> &'static str {
    match figure {
        PipingFigure::ValveFlow | PipingFigure::CvNeeded | PipingFigure::KvNeeded => {
            "Source: IEC 60534-2-1. Good within 0.1% of its worked examples; a real valve is within \
             10% of its label."
        }
        PipingFigure::FillFlow => {
            "Source: Darcy-Weisbach with Colebrook friction, checked with the open library fluids \
             1.3.1. Good to about 10% when pipe and fittings are known; old pipe passes less."
        }
        PipingFigure::StrainerBlockage => {
            "Source: the fill line's balance, solved backwards. Good when the rest of the line is \
             known; a half-shut hand valve looks the same."
        }
        PipingFigure::ServoDrop => {
            "Source: common practice, from memory. Good as a warning; the valve's label governs. \
             Direct-acting valves need none."
        }
        PipingFigure::OverInlet => "Source: definition. Good as your two levels are.",
        PipingFigure::Submergence | PipingFigure::AirFrom => {
            "Source: the form of ANSI/HI 9.8, from memory. Good as a warning only; a basin with an \
             anti-vortex plate runs with less."
        }
        PipingFigure::DrainTime | PipingFigure::SteadyLevel => {
            "Source: Torricelli with a discharge coefficient; common practice, no source for 0.62. \
             Good to 10%; the last inch drains slower because the drain draws air."
        }
        PipingFigure::FillTime => {
            "Source: mass balance. Good as far as inflow and loss are known and steady."
        }
        PipingFigure::OverflowHead => {
            "Source: textbook weirs, from memory. Good to 20%. Leaves or a grille on the rim take more."
        }
        PipingFigure::RunningWater => {
            "Source: arithmetic. Good as the flow and your price are. Ask whether sewer is charged: \
             water that overflows earns no credit."
        }
    }
}
