//! How we know the figures of a loop in trouble, in Spanish.

use crate::physics::basis::LoopHeatFigure;

/// The name of a figure, as it stands over its number.
pub(in crate::words) fn name(figure: LoopHeatFigure) -> &'static str {
    match figure {
        LoopHeatFigure::TripWater => "Se dispara con agua entrando a",
        LoopHeatFigure::TimeToTrip => "Hasta que se dispare",
        LoopHeatFigure::NoFlow => "Sin caudal, hasta entonces",
        LoopHeatFigure::ReducedFlow => "Condensa a, con ese caudal",
        LoopHeatFigure::Recovery => "Agua de entrada para entonces",
        LoopHeatFigure::FlowFromHeat => "Caudal de agua según el calor",
        LoopHeatFigure::RestartSpacing => "Entre arranques, al menos",
    }
}

pub(in crate::words) fn formula(figure: LoopHeatFigure) -> &'static str {
    match figure {
        LoopHeatFigure::TripWater => {
            "Agua que entra al disparo = temperatura de saturación en el corte - aproximación del \
             condensador - rango."
        }
        LoopHeatFigure::TimeToTrip => {
            "t = M cp (Tdisparo - T) / Q. M: agua en el circuito. cp: su calor específico. T: agua de \
             entrada ahora. Q: calor de todos los equipos andando."
        }
        LoopHeatFigure::NoFlow => {
            "t = (Mw cp + Mm cm) subida / Q. Mw: agua quieta en el condensador. Mm, cm: metal y su \
             calor específico. Q: calor."
        }
        LoopHeatFigure::ReducedFlow => {
            "Tc = T + R / (1 - exp(-NTU)). T: agua de entrada. R: rango con este caudal. NTU: el de \
             diseño, ln(1 + rango / aproximación) / parte de caudal / (mitad x parte de caudal^-0.8 + \
             mitad), con la mitad de la resistencia del lado del agua."
        }
        LoopHeatFigure::Recovery => {
            "M dT/dt = caudal x (agua que sale de la torre - T). M: agua en el circuito. T: agua que \
             entra a los equipos."
        }
        LoopHeatFigure::FlowFromHeat => {
            "Caudal = Q / (densidad x calor específico x rango). En unidades de EE. UU.: gpm = Btu/h / \
             (500 x F)."
        }
        LoopHeatFigure::RestartSpacing => {
            "M dT/dt = caudal x (agua que sale de la torre - T), cada arranque suma su calor; el menor \
             tiempo entre arranques que deja T bajo todos los disparos menos el margen."
        }
    }
}

pub(in crate::words) fn source(figure: LoopHeatFigure) -> &'static str {
    match figure {
        LoopHeatFigure::TripWater => {
            "Fuente: definiciones; saturación ajustada a CoolProp 8.0.0, una biblioteca abierta. Vale a \
             4\u{a0}F; la etiqueta del equipo manda sobre el corte."
        }
        LoopHeatFigure::TimeToTrip => {
            "Fuente: balance de energía de un circuito mezclado, sin contar el metal. Vale dentro del \
             30%: al subir la alta los compresores consumen más y enfrían menos."
        }
        LoopHeatFigure::NoFlow => {
            "Fuente: balance de energía de agua y metal. Vale dentro del 30%. Segundos, no minutos: \
             primero pare el equipo."
        }
        LoopHeatFigure::ReducedFlow => {
            "Fuente: efectividad y NTU; caudal^0.8 según Dittus y Boelter; el reparto por mitad es \
             práctica común, sin fuente. Vale al 30% de la subida, peor bajo un tercio del caudal."
        }
        LoopHeatFigure::Recovery => {
            "Fuente: balance de energía de un circuito mezclado. Vale dentro del 30% del tiempo; en \
             los circuitos reales el agua viaja en tramos."
        }
        LoopHeatFigure::FlowFromHeat => {
            "Fuente: balance de energía. Vale al 5% por cada medio grado sobre un rango de 10\u{a0}F, si \
             se conoce el calor."
        }
        LoopHeatFigure::RestartSpacing => {
            "Fuente: balance de energía de un circuito mezclado, con la efectividad de la torre fija. \
             Vale dentro del 30%. Los equipos que bajan cuartos calientes rechazan más que en reposo: \
             ponga ese calor. El retardo propio del equipo manda si es mayor."
        }
    }
}
