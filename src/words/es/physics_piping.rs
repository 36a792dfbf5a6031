//! How we know the figures of fill line, drain and overflow, in Spanish.

use crate::physics::basis::PipingFigure;

/// The name of a figure, as it stands over its number.
pub(in crate::words) fn name(figure: PipingFigure) -> &'static str {
    match figure {
        PipingFigure::ValveFlow => "Por la válvula",
        PipingFigure::CvNeeded => "Cv necesario",
        PipingFigure::KvNeeded => "El mismo como Kv",
        PipingFigure::FillFlow => "La línea trae",
        PipingFigure::StrainerBlockage => "Colador libre, parte del limpio",
        PipingFigure::ServoDrop => "Presión a través de la válvula",
        PipingFigure::Submergence => "Agua necesaria sobre la succión",
        PipingFigure::AirFrom => "Toma aire desde, bajo el borde",
        PipingFigure::OverInlet => "Agua sobre la succión ahora",
        PipingFigure::DrainTime => "Hasta drenar a ese nivel",
        PipingFigure::FillTime => "Hasta llenar a ese nivel",
        PipingFigure::SteadyLevel => "El nivel se asienta, bajo el borde",
        PipingFigure::OverflowHead => "Carga sobre el rebosadero",
        PipingFigure::RunningWater => "Cuesta en un año",
    }
}

pub(in crate::words) fn formula(figure: PipingFigure) -> &'static str {
    match figure {
        PipingFigure::ValveFlow => {
            "Q = Cv x raíz cuadrada de (dp / SG), gpm y psi; en métrico Kv, m3/h y bar. Kv = 0.865 Cv. \
             No pasa más en cuanto dp llega a FL^2 (p1 - FF pv). SG: densidad entre la del agua. p1: \
             presión antes de la válvula, absoluta. pv: presión de vapor. FF: 0.96 - 0.28 x raíz \
             cuadrada de (pv / presión crítica)."
        }
        PipingFigure::CvNeeded => {
            "Cv = caudal / raíz cuadrada de (dp / SG), gpm y psi. dp: presión a través de la válvula. SG: densidad entre la del agua."
        }
        PipingFigure::KvNeeded => "Kv = 0.865 Cv, en m3/h y bar.",
        PipingFigure::FillFlow => {
            "El caudal con que presión de la red = altura + pérdida fija + (f L/D + K) rho V^2/2 + \
             colador + válvula. f: factor de fricción. L/D: largo entre diámetro. K: conexiones. rho: \
             densidad. V: velocidad. Colador y válvula: (Q/Kv)^2."
        }
        PipingFigure::StrainerBlockage => {
            "Kv = Q / raíz cuadrada de (presión que queda). Presión que queda: red - altura - pérdida \
             fija - tubo, conexiones y válvula con el caudal Q medido. Parte del limpio: este Kv entre \
             el del limpio."
        }
        PipingFigure::ServoDrop => {
            "Abre del todo con dp = 5 a 10\u{a0}psi o más. dp: presión a través de la válvula."
        }
        PipingFigure::Submergence => {
            "S = D (1 + 2.3 V / raíz cuadrada de (g D)). S: agua sobre la boca de succión. D: su \
             diámetro. V: velocidad en ella. g: gravedad."
        }
        PipingFigure::AirFrom => {
            "Toma aire desde = tope de la succión bajo el borde - agua necesaria sobre la succión. El \
             borde mismo donde eso es menos que nada."
        }
        PipingFigure::OverInlet => {
            "Sobre ella = tope de la succión bajo el borde - nivel bajo el borde."
        }
        PipingFigure::DrainTime => {
            "t = suma de A dh / (C a raíz cuadrada de (2 g h) - q). A: superficie. h: agua sobre el \
             fondo. a: área del drenaje. q: agua que entra. C: 0.62."
        }
        PipingFigure::FillTime => {
            "t = volumen entre los niveles / (entrada - pérdida). Pérdida: evaporación, purga y fugas."
        }
        PipingFigure::SteadyLevel => {
            "h = (q / (C a))^2 / 2g. q: agua que entra. C: 0.62. a: área del drenaje. g: gravedad. Bajo \
             el borde: profundidad - h."
        }
        PipingFigure::OverflowHead => {
            "La carga h con que el tubo rebosadero lleva el caudal: Q = 0.6 x 2/3 x raíz cuadrada de \
             (2g) x pi D h^1.5, o ahogado Q = 0.6 x área x raíz cuadrada de (2 g h), el menor. En \
             metros y segundos."
        }
        PipingFigure::RunningWater => {
            "Costo = caudal x 365 días x precio de un volumen de agua. 1\u{a0}gpm = 1440\u{a0}gal al día."
        }
    }
}

pub(in crate::words) fn source(figure: PipingFigure) -> &'static str {
    match figure {
        PipingFigure::ValveFlow | PipingFigure::CvNeeded | PipingFigure::KvNeeded => {
            "Fuente: IEC 60534-2-1. Vale dentro del 0.1% de sus ejemplos resueltos; una válvula real \
             queda dentro del 10% de su etiqueta."
        }
        PipingFigure::FillFlow => {
            "Fuente: Darcy-Weisbach con fricción de Colebrook, comparado con la biblioteca abierta \
             fluids 1.3.1. Vale a cerca del 10% si se conocen tubo y conexiones; un tubo viejo pasa \
             menos."
        }
        PipingFigure::StrainerBlockage => {
            "Fuente: el balance de la línea de llenado, resuelto al revés. Vale si se conoce el resto \
             de la línea; una válvula manual a medio cerrar se ve igual."
        }
        PipingFigure::ServoDrop => {
            "Fuente: práctica común, de memoria. Vale como aviso; la etiqueta de la válvula manda. Las \
             de acción directa no la necesitan."
        }
        PipingFigure::OverInlet => "Fuente: definición. Vale tanto como sus dos niveles.",
        PipingFigure::Submergence | PipingFigure::AirFrom => {
            "Fuente: la forma de ANSI/HI 9.8, de memoria. Vale solo como aviso; una pileta con placa \
             antivórtice trabaja con menos."
        }
        PipingFigure::DrainTime | PipingFigure::SteadyLevel => {
            "Fuente: Torricelli con un coeficiente de descarga; práctica común, sin fuente para 0.62. \
             Vale al 10%; la última pulgada sale más despacio porque el drenaje toma aire."
        }
        PipingFigure::FillTime => {
            "Fuente: balance de masa. Vale mientras entrada y pérdida se conozcan y sean constantes."
        }
        PipingFigure::OverflowHead => {
            "Fuente: vertedores de libro de texto, de memoria. Vale al 20%. Hojas o una rejilla en el \
             borde piden más."
        }
        PipingFigure::RunningWater => {
            "Fuente: aritmética. Vale tanto como el caudal y su precio. Pregunte si cobran drenaje: el \
             agua que rebosa no se descuenta."
        }
    }
}
