//! How we know a figure of the water's chemistry, in Spanish.

use crate::physics::basis::ChemistryFigure;

pub(in crate::words) fn name(figure: ChemistryFigure) -> &'static str {
    match figure {
        ChemistryFigure::SaturationPh => "pH de saturación",
        ChemistryFigure::Langelier => "Índice de Langelier",
        ChemistryFigure::Ryznar => "Índice de Ryznar",
        ChemistryFigure::Puckorius => "Índice de Puckorius",
        ChemistryFigure::DissolvedSolids => "Sólidos disueltos",
        ChemistryFigure::CyclesChange => "Ciclos entre los ajustados",
    }
}

pub(in crate::words) fn formula(figure: ChemistryFigure) -> &'static str {
    match figure {
        ChemistryFigure::SaturationPh => {
            "pHs = 9.3 + A + B - C - D. A = (log TDS - 1)/10. B = 34.55 - 13.12 log (T + 273), T en C \
             en la pared más caliente. C = log calcio - 0.4. D = log alcalinidad, los dos como CaCO3, \
             mg/L."
        }
        ChemistryFigure::Langelier => {
            "LSI = pH - pHs. pHs: pH de saturación. Sobre 0 el agua tiende a incrustar, bajo 0 a \
             corroer."
        }
        ChemistryFigure::Ryznar => {
            "RSI = 2 pHs - pH. pHs: pH de saturación. Bajo 6 el agua tiende a incrustar, sobre 7 a \
             corroer."
        }
        ChemistryFigure::Puckorius => {
            "PSI = 2 pHs - pHeq, pHeq = 1.465 log alcalinidad + 4.54. pHs: pH de saturación. Bajo 6 el \
             agua tiende a incrustar, sobre 7 a corroer."
        }
        ChemistryFigure::DissolvedSolids => {
            "TDS en mg/L = factor x conductividad en uS/cm. Factor: 0.7 si su tratador de agua no da \
             otro."
        }
        ChemistryFigure::CyclesChange => "Cambio = ciclos ahora / ciclos a los que está la purga.",
    }
}

pub(in crate::words) fn source(figure: ChemistryFigure) -> &'static str {
    match figure {
        ChemistryFigure::SaturationPh | ChemistryFigure::Langelier => {
            "Fuente: UFC 3-240-13FN (US DoD 2005), ap. B. Vale a 0.3 contra PHREEQC de 41 a 180\u{a0}F, pH 7 \
             a 8.6. Use la pared más caliente, no la pileta."
        }
        ChemistryFigure::Ryznar => {
            "Fuente: UFC 3-240-13FN (US DoD 2005), ap. B. Vale solo como tendencia: sus límites son \
             experiencia, no química."
        }
        ChemistryFigure::Puckorius => {
            "Fuente: UFC 3-240-13FN (US DoD 2005), ap. B, con 1.465 como pide su propio ejemplo, no el \
             1.485 que imprime. Vale solo como tendencia."
        }
        ChemistryFigure::DissolvedSolids => {
            "Fuente: UFC 3-240-13FN para 0.7. Vale dentro del 15%: se usan factores de 0.6 a 0.8, 1.0 \
             con tanino. Los índices se mueven menos de 0.02."
        }
        ChemistryFigure::CyclesChange => {
            "Fuente: definición; lo que sugiere es de memoria de la práctica. Vale sobre el 10%, lo \
             que pueden diferir dos medidores. Una pileta grande tarda días en mostrar un cambio."
        }
    }
}
