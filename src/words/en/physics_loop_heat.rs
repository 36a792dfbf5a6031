//! How we know the figures of a loop in trouble, in English.

use crate::physics::basis::LoopHeatFigure;

/// The name of a figure, as it stands over its number.
pub(in crate::words) fn name(figure: LoopHeatFigure) -> &'static str {
    match figure {
        LoopHeatFigure::TripWater => "Trips with water entering at",
        LoopHeatFigure::TimeToTrip => "Until it trips",
        LoopHeatFigure::NoFlow => "Without flow, until then",
        LoopHeatFigure::ReducedFlow => "Condenses at, with that flow",
        LoopHeatFigure::Recovery => "Entering water by then",
        LoopHeatFigure::FlowFromHeat => "Water flow from the heat",
        LoopHeatFigure::RestartSpacing => "Between restarts, at least",
    }
}

pub(in crate::words) fn formula(figure: LoopHeatFigure) -> &'static str {
    match figure {
        LoopHeatFigure::TripWater => {
            "Entering water at trip = saturation temperature at the cut-out - condenser approach - \
             range."
        }
        LoopHeatFigure::TimeToTrip => {
            "t = M cp (Ttrip - T) / Q. M: water in the loop. cp: its specific heat. T: entering \
             water now. Q: heat of every machine running."
        }
        LoopHeatFigure::NoFlow => {
            "t = (Mw cp + Mm cm) rise / Q. Mw: water standing in the condenser. Mm, cm: metal and its \
             specific heat. Q: heat."
        }
        LoopHeatFigure::ReducedFlow => {
            "Tc = T + R / (1 - exp(-NTU)). T: entering water. R: range at this flow. NTU: the \
             design's ln(1 + range / approach) / flow part / (half x flow part^-0.8 + half), when \
             half of the resistance lies on the water side."
        }
        LoopHeatFigure::Recovery => {
            "M dT/dt = flow x (tower leaving water - T). M: water in the loop. T: water entering \
             the machines."
        }
        LoopHeatFigure::FlowFromHeat => {
            "Flow = Q / (density x specific heat x range). In US units: gpm = Btu/h / (500 x F)."
        }
        LoopHeatFigure::RestartSpacing => {
            "M dT/dt = flow x (tower leaving water - T), each start adding its heat; the least time \
             between starts that keeps T below every trip less the margin."
        }
    }
}

pub(in crate::words) fn source(figure: LoopHeatFigure) -> &'static str {
    match figure {
        LoopHeatFigure::TripWater => {
            "Source: definitions; saturation fitted to CoolProp 8.0.0, an open library. Good to 4\u{a0}F; \
             the machine's label governs the cut-out."
        }
        LoopHeatFigure::TimeToTrip => {
            "Source: energy balance of a mixed loop, metal not counted. Good within 30%: compressors \
             draw more and cool less as head rises."
        }
        LoopHeatFigure::NoFlow => {
            "Source: energy balance of water and metal. Good within 30%. Seconds, not minutes: stop \
             the machine first."
        }
        LoopHeatFigure::ReducedFlow => {
            "Source: effectiveness and NTU; flow^0.8 after Dittus and Boelter; the even split is \
             common practice, no source. Good to 30% of the rise, worse under a third of the flow."
        }
        LoopHeatFigure::Recovery => {
            "Source: energy balance of a mixed loop. Good within 30% of the time; real loops travel \
             in slugs."
        }
        LoopHeatFigure::FlowFromHeat => {
            "Source: energy balance. Good to 5% per half degree over a range of 10\u{a0}F, if the heat \
             is known."
        }
        LoopHeatFigure::RestartSpacing => {
            "Source: energy balance of a mixed loop, tower effectiveness held. Good within 30%. \
             Machines pulling down warm rooms reject more than at rest: enter that heat. The \
             machine's own restart delay governs if longer."
        }
    }
}
