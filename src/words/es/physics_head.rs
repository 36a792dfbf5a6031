//! How we know a figure of head pressure, in Spanish.

use crate::physics::basis::HeadFigure;

pub(in crate::words) fn name(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::Expected => "Alta que se espera",
        HeadFigure::AtFlow => "Alta, con ese caudal",
    }
}

pub(in crate::words) fn formula(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::Expected => {
            "Alta = presión con que la media de las temperaturas de burbuja y de rocío es T, menos la \
             atmósfera local. T = agua que sale del condensador + aproximación normal."
        }
        HeadFigure::AtFlow => {
            "Alta = presión con que la media de las temperaturas de burbuja y de rocío es Tc, menos la \
             atmósfera local. Tc: temperatura de condensación con ese caudal."
        }
    }
}

pub(in crate::words) fn source(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::Expected => {
            "Fuente: ajustado a CoolProp 8.0.0, una biblioteca abierta; la aproximación es suya, de un \
             día con el condensador limpio. Vale de 32\u{a0}F a 154-158\u{a0}F de condensación, dentro del 0.1% \
             de la presión; una aproximación equivocada en 1\u{a0}F la mueve de 1 a 2%."
        }
        HeadFigure::AtFlow => {
            "Fuente: ajustado a CoolProp 8.0.0, una biblioteca abierta, a la temperatura de condensación \
             que está al lado. Vale al 30% de la subida sobre la alta normal; peor bajo un tercio del \
             caudal."
        }
    }
}
