//! How we know a figure, in English.

use super::{physics_chemistry, physics_circuit, physics_electrode, physics_head};
use crate::physics::basis::Figure;

pub(in crate::words) fn formula(figure: Figure) -> &'static str {
    match figure {
        Figure::Piping(figure) => super::physics_piping::formula(figure),
        Figure::LoopHeat(figure) => super::physics_loop_heat::formula(figure),
        Figure::AtmosphericPressure => {
            "p = 101.325\u{a0}kPa x (1 - 0.0000225577 z)^5.2559. z: altitude in meters."
        }
        Figure::WetBulb => {
            "The wet bulb t* for which W = ((2501 - 2.326 t*) Ws(t*) - 1.006 (t - t*)) / \
             (2501 + 1.86 t - 4.186 t*), in C; below 0\u{a0}C with ice on the wick. t: dry bulb. \
             W: humidity ratio from relative humidity and local pressure. Ws: the same, saturated."
        }
        Figure::RelativeHumidity => {
            "RH = vapor pressure / saturation pressure at the dry bulb. Vapor pressure comes from \
             dry bulb, wet bulb and local pressure. Below 32\u{a0}F, saturation is over ice."
        }
        Figure::Approach => "Approach = water leaving the tower - entering wet bulb.",
        Figure::Range => "Range = water entering the tower - water leaving the tower.",
        Figure::Effectiveness => "Effectiveness = range / (range + approach).",
        Figure::MerkelNumber => {
            "KaV/L = R/4 x sum of cp / (hs - ha), at 0.1, 0.4, 0.6 and 0.9 of the range above \
             leaving water. R: range. cp: specific heat of water. hs: enthalpy of air saturated at \
             the water temperature. ha: enthalpy of the air there, hs(wet bulb) + L/G cp (T - leaving)."
        }
        Figure::LeavingWater => {
            "The leaving water at which the duty needs KaV/L = C (L/G)^-n. L/G: water over dry air, \
             by mass. C: from the design point. n: 0.6 unless known."
        }
        Figure::HeatRejected => {
            "Q = flow x density x specific heat x range. In US units: Btu/h = 500 x gpm x F."
        }
        Figure::TowerTons => {
            "Tower tons = heat rejected / 15,000 Btu/h. Not the 12,000 Btu/h of a refrigeration ton."
        }
        Figure::Evaporation => {
            "E = flow x (W2 - W1) / (L/G). W1, W2: humidity ratio of the air entering and leaving. W2 \
             comes from mass and energy balances step by step up the fill, fog counted. L/G: water \
             over dry air, by mass."
        }
        Figure::EvaporationRule => "E = 0.001 x flow x range in F.",
        Figure::Drift => "D = flow x drift rate. 0.005% unless the eliminators say otherwise.",
        Figure::Blowdown => {
            "B = E / (COC - 1) - D, never below zero. E: evaporation. D: drift. COC: cycles of \
             concentration."
        }
        Figure::Makeup => {
            "M = E + B + D. E: evaporation. B: blowdown. D: drift. Leaks and overflow come on top."
        }
        Figure::Cycles => "COC = conductivity of basin water / conductivity of makeup.",
        Figure::MinutesToDry => {
            "t = water between the levels / loss. Loss: evaporation, drift and blowdown, with no \
             makeup coming in."
        }
        Figure::WarmUp => {
            "dT/dt = Q / (M cp). Q: heat into the loop. M: mass of water in it. cp: specific heat of \
             water."
        }
        Figure::CondensingTemperature => {
            "T = mean of bubble and dew temperature at gauge + local atmospheric pressure, each from \
             ln p = a polynomial of degree 4 in 1/T."
        }
        Figure::DewPoint => {
            "The dew point t for which ps(t) = RH ps(dry bulb). ps: saturation pressure."
        }
        Figure::HumidityRatio => {
            "W = 0.621945 f pv / (p - f pv). pv: RH x saturation pressure at the dry bulb. p: local \
             pressure. f: enhancement factor, about 1.005."
        }
        Figure::Enthalpy => {
            "h = 1.006 t + W (2501 + 1.86 t), in kJ/kg and C. t: dry bulb. W: humidity ratio. Zero is \
             dry air at 0\u{a0}C (32\u{a0}F)."
        }
        Figure::AirDensity => {
            "Density = p / (287.042 T (1 + 1.607858 W)). T: dry bulb in kelvins. W: humidity ratio. \
             Of the dry air alone."
        }
        Figure::EnteringWater => "Water onto the tower = water off it, expected + range.",
        Figure::OverExpected => {
            "Warmer by = water off the tower now - water off the tower expected in this air, at this \
             range."
        }
        Figure::BasinVolume => {
            "V = water from the floor up to the level. Flat floor: plan area x (depth - level below the \
             lip)."
        }
        Figure::BasinWhenFull => {
            "V = water from the floor up to the overflow lip. Flat floor: plan area x depth."
        }
        Figure::MinutesToLevel => {
            "t = water between level now and level that matters / water lost."
        }
        Figure::MinutesToReach => {
            "t = M cp (T2 - T1) / Q. M: mass of water in the loop. cp: specific heat. Q: heat into \
             the loop."
        }
        Figure::OverLeavingWater => {
            "Condenser approach = condensing temperature - water leaving the condenser."
        }
        Figure::BelowCutOut => "Room left = cut-out - head pressure, both gauge.",
        Figure::TripsAt => {
            "T = mean of bubble and dew temperature at the cut-out + local atmospheric pressure."
        }
        Figure::WarmerToTrip => "Room left = condensing temperature at the cut-out - that now.",
        Figure::BubblePoint => {
            "T = bubble temperature at head + local atmospheric pressure. Take subcooling from here."
        }
        Figure::PipeDrop => {
            "dp = (f L/D + K) rho v^2 / 2. f: friction factor. K: sum of fittings. v: velocity."
        }
        Figure::StrainerDrop => "dp = (flow / Cv)^2, in gpm and psi. Cv: of the strainer as given.",
        Figure::OverflowCapacity => {
            "Capacity = the smaller of weir and orifice flow of the standpipe, water at the rim."
        }
        Figure::WaterPerDay => "Volume = flow x 24\u{a0}h.",
        Figure::RestartWait => {
            "Wait = time until the loop, tower alone at work, is cool enough that the first machine \
             stays below its trip."
        }
        Figure::RestartHottest => {
            "T = highest entering water while the machines start one by one at this spacing."
        }
        Figure::DewPointOfRefrigerant => {
            "T = dew temperature at head + local atmospheric pressure. Take superheat from here."
        }
        Figure::Circuit(figure) => physics_circuit::formula(figure),
        Figure::Chemistry(figure) => physics_chemistry::formula(figure),
        Figure::Head(figure) => physics_head::formula(figure),
        Figure::Electrode(figure) => physics_electrode::formula(figure),
        Figure::Tower(figure) => super::physics_tower::formula(figure),
    }
}

pub(in crate::words) fn source(figure: Figure) -> &'static str {
    match figure {
        Figure::Piping(figure) => super::physics_piping::source(figure),
        Figure::LoopHeat(figure) => super::physics_loop_heat::source(figure),
        Figure::AtmosphericPressure => {
            "Source: standard atmosphere, ASHRAE Fundamentals 2017 ch. 1. Good from -1,600 to \
             16,000\u{a0}ft; weather moves the true pressure up to 3%."
        }
        Figure::WetBulb | Figure::RelativeHumidity => {
            "Source: ASHRAE Fundamentals 2017 ch. 1; Hyland and Wexler 1983; Buck 1981. Good from \
             -4 to 140\u{a0}F, 50 to 110\u{a0}kPa, within 0.1\u{a0}F of wet bulb. Your instruments are the larger \
             error."
        }
        Figure::Approach | Figure::Range => {
            "Source: definition. Good as long as the two thermometers agree; check them side by side."
        }
        Figure::Effectiveness => {
            "Source: US DOE building energy reference. Good for water up to 140\u{a0}F, as good as the \
             three temperatures."
        }
        Figure::MerkelNumber => {
            "Source: Merkel 1925, four-point Chebyshev rule as in acceptance testing. Good for \
             water at 32 to 140\u{a0}F; 0.5% from a published example. Compare only with numbers found \
             by the same method."
        }
        Figure::LeavingWater => {
            "Source: Merkel 1925 with a tower characteristic; n from common practice, no source. Good \
             to about 1\u{a0}F near the design point (our estimate), less far from it or with uneven water."
        }
        Figure::HeatRejected => {
            "Source: energy balance with water at 60\u{a0}F. Good within 1% from 40 to 110\u{a0}F; the flow \
             reading is the larger error."
        }
        Figure::TowerTons => {
            "Source: US DOE building energy reference, 3\u{a0}gpm and 10\u{a0}F range per ton. Good as a \
             rating only; at other wet bulbs the tower does more or less."
        }
        Figure::Evaporation => {
            "Source: Poppe and Rogener 1991, as restated by Kloppers and Kroger 2005. Good for water \
             at 32 to 140\u{a0}F; the equations are within 0.5% of the same over CoolProp 8.0.0. Flow and \
             L/G are the larger error."
        }
        Figure::EvaporationRule => {
            "Source: GEMI water planner. Good on a hot day. About 15% low in the desert, 15% high \
             on a humid day, up to 80% high in winter."
        }
        Figure::Drift => {
            "Source: US DOE building energy reference for the form; the rate is common practice, no \
             source. Good for the order of size only. Old eliminators lose 0.02 to 0.2%."
        }
        Figure::Blowdown => {
            "Source: US DOE building energy reference; GEMI water planner. Good as far as \
             evaporation and cycles are."
        }
        Figure::Makeup => {
            "Source: US DOE FEMP, Cooling Tower Management. Good as far as evaporation and cycles \
             are; it cannot see a leak."
        }
        Figure::Cycles => {
            "Source: UFC 3-240-13FN; GEMI water planner. Good while no salts drop out; water that \
             scales reads too few cycles."
        }
        Figure::MinutesToDry => {
            "Source: basin geometry, for the shape as entered. Good as far as the loss is. Water \
             draining back from the pipes when the pump stops is not counted."
        }
        Figure::WarmUp => {
            "Source: energy balance of a mixed loop, metal not counted. Good within 30%: compressors \
             draw more and cool less as head rises."
        }
        Figure::DewPoint | Figure::HumidityRatio | Figure::Enthalpy | Figure::AirDensity => {
            "Source: ASHRAE Fundamentals 2017 ch. 1, with the enhancement factor of Buck 1981. Good \
             from -4 to 140\u{a0}F, 50 to 110\u{a0}kPa, within 0.2% of an open library of real moist air."
        }
        Figure::OverExpected | Figure::EnteringWater => {
            "Source: Merkel 1925 with a tower characteristic. Good to about 1\u{a0}F (our estimate). The \
             thermometers add their own error: compare them side by side."
        }
        Figure::BasinVolume | Figure::BasinWhenFull | Figure::MinutesToLevel => {
            "Source: geometry, for the shape as entered. Good as far as the tape and the loss are."
        }
        Figure::PipeDrop | Figure::StrainerDrop => {
            "Source: Darcy and Colebrook; IEC 60534-2-1 for the strainer. Good within 10% when bore, \
             length and fittings are (our estimate)."
        }
        Figure::OverflowCapacity => {
            "Source: weir and orifice laws, coefficients from memory. Good within 20%: grates and \
             elbows take away."
        }
        Figure::WaterPerDay => "Source: arithmetic. Good as far as the flow is.",
        Figure::MinutesToReach | Figure::RestartWait | Figure::RestartHottest => {
            "Source: energy balance of a mixed loop, metal not counted. Good within 30%."
        }
        Figure::OverLeavingWater | Figure::BelowCutOut => {
            "Source: definition. Good as far as gauge, thermometer and nameplate are."
        }
        Figure::CondensingTemperature
        | Figure::TripsAt
        | Figure::WarmerToTrip
        | Figure::BubblePoint
        | Figure::DewPointOfRefrigerant => {
            "Source: fitted to CoolProp 8.0.0, an open library. Good from 32\u{a0}F to 154-158\u{a0}F by \
             refrigerant; the fit is within 0.1% of pressure. Blends other than R-410A are not \
             checked against a second library. The machine's nameplate governs."
        }
        Figure::Circuit(figure) => physics_circuit::source(figure),
        Figure::Chemistry(figure) => physics_chemistry::source(figure),
        Figure::Head(figure) => physics_head::source(figure),
        Figure::Electrode(figure) => physics_electrode::source(figure),
        Figure::Tower(figure) => super::physics_tower::source(figure),
    }
}
