//! How we know a figure of the water's chemistry, in English.

use crate::physics::basis::ChemistryFigure;

pub(in crate::words) fn name(figure: ChemistryFigure) -> &'static str {
    match figure {
        ChemistryFigure::SaturationPh => "Saturation pH",
        ChemistryFigure::Langelier => "Langelier index",
        ChemistryFigure::Ryznar => "Ryznar index",
        ChemistryFigure::Puckorius => "Puckorius index",
        ChemistryFigure::DissolvedSolids => "Dissolved solids",
        ChemistryFigure::CyclesChange => "Cycles over those set",
    }
}

pub(in crate::words) fn formula(figure: ChemistryFigure) -> &'static str {
    match figure {
        ChemistryFigure::SaturationPh => {
            "pHs = 9.3 + A + B - C - D. A = (log TDS - 1)/10. B = 34.55 - 13.12 log (T + 273), T in \
             C at the hottest wall. C = log calcium - 0.4. D = log alkalinity, both as CaCO3, mg/L."
        }
        ChemistryFigure::Langelier => {
            "LSI = pH - pHs. pHs: saturation pH. Above 0 the water tends to scale, below 0 to corrode."
        }
        ChemistryFigure::Ryznar => {
            "RSI = 2 pHs - pH. pHs: saturation pH. Below 6 the water tends to scale, above 7 to \
             corrode."
        }
        ChemistryFigure::Puckorius => {
            "PSI = 2 pHs - pHeq, pHeq = 1.465 log alkalinity + 4.54. pHs: saturation pH. Below 6 the \
             water tends to scale, above 7 to corrode."
        }
        ChemistryFigure::DissolvedSolids => {
            "TDS in mg/L = factor x conductivity in uS/cm. Factor: 0.7 unless your water treater \
             gives one."
        }
        ChemistryFigure::CyclesChange => "Change = cycles now / cycles the bleed is set for.",
    }
}

pub(in crate::words) fn source(figure: ChemistryFigure) -> &'static str {
    match figure {
        ChemistryFigure::SaturationPh | ChemistryFigure::Langelier => {
            "Source: UFC 3-240-13FN (US DoD 2005), app. B. Good to 0.3 against PHREEQC from 41 to \
             180\u{a0}F, pH 7 to 8.6. Use the hottest wall, not the basin."
        }
        ChemistryFigure::Ryznar => {
            "Source: UFC 3-240-13FN (US DoD 2005), app. B. Good as a tendency only: its limits are \
             experience, not chemistry."
        }
        ChemistryFigure::Puckorius => {
            "Source: UFC 3-240-13FN (US DoD 2005), app. B, with 1.465 as its own example needs, not \
             the 1.485 it prints. Good as a tendency only."
        }
        ChemistryFigure::DissolvedSolids => {
            "Source: UFC 3-240-13FN for 0.7. Good within 15%: factors from 0.6 to 0.8 are in use, 1.0 \
             with tannin. The indices move by less than 0.02."
        }
        ChemistryFigure::CyclesChange => {
            "Source: definition; what it suggests is from memory of practice. Good above 10%, what \
             two meters may disagree by. A big basin takes days to show a change."
        }
    }
}
