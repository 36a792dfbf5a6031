//! How we know a figure of the level sensor, in Spanish.

use crate::physics::basis::ElectrodeFigure;

pub(in crate::words) fn name(figure: ElectrodeFigure) -> &'static str {
    match figure {
        ElectrodeFigure::WaterResistance => "Ohms a través del agua",
        ElectrodeFigure::FilmResistance => "Ohms a lo largo de la película",
        ElectrodeFigure::FoamResistance => "Ohms a través de la espuma",
        ElectrodeFigure::SafeSettings => "Sensibilidad que nada engaña",
    }
}

pub(in crate::words) fn formula(figure: ElectrodeFigure) -> &'static str {
    match figure {
        ElectrodeFigure::WaterResistance => {
            "Dos varillas: R = acosh(s/d) / (pi k L). Varilla en tubo: R = ln(D/d) / (2 pi k L). \
             Varilla a pileta: R = (ln(8L/d) - 1) / (2 pi k L). s: entre varillas. d: diámetro de \
             varilla. D: interior del tubo. k: conductividad. L: largo en el agua."
        }
        ElectrodeFigure::FilmResistance => {
            "R = camino / (k x ancho x espesor). k: conductividad de la película."
        }
        ElectrodeFigure::FoamResistance => {
            "R = R del agua / sigma, sigma = 2 p (1 + 12 p) / (6 + 29 p - 9 p^2). p: parte de la \
             espuma que es líquido."
        }
        ElectrodeFigure::SafeSettings => {
            "Desde = margen x resistencia más alta en el agua. Hasta = resistencia más baja fuera del \
             agua / margen."
        }
    }
}

pub(in crate::words) fn source(figure: ElectrodeFigure) -> &'static str {
    match figure {
        ElectrodeFigure::WaterResistance => {
            "Fuente: teoría del potencial, de memoria, comparada con solución numérica. Vale dentro \
             del 1% para dos varillas cuando el agua termina en las puntas; en agua honda las \
             varillas cortas leen hasta 40% menos."
        }
        ElectrodeFigure::FilmResistance => {
            "Fuente: resistencia de una tira. Vale solo para el orden de magnitud: nadie conoce la \
             película."
        }
        ElectrodeFigure::FoamResistance => {
            "Fuente: Feitosa et al. 2005, de memoria. Vale solo para el orden de magnitud: la espuma \
             escurre mientras se mira."
        }
        ElectrodeFigure::SafeSettings => {
            "Fuente: las resistencias de arriba. Vale como primer ajuste; compruébelo con la prueba de \
             llenado, con espuma y salpicadura presentes."
        }
    }
}
