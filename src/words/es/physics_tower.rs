//! Figures of the tower and the shapes its trouble takes, in Spanish.

use crate::physics::basis::TowerFigure;
use crate::physics::tower::{Settle, Shape};

pub(in crate::words) fn name(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => "Evaporación, aire saturado",
        TowerFigure::PoppeMerkelNumber => "KaV/L según Poppe",
        TowerFigure::Prediction => "Agua de salida con otro calor, agua y aire",
        TowerFigure::Delivered => "Parte de KaV/L entregada",
        TowerFigure::ShapeFit => "Qué tan bien cuadra cada falla",
    }
}

pub(in crate::words) fn formula(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => {
            "E = caudal x (W2 - W1) / (L/G). W1: relación de humedad del aire que entra. W2: del aire \
             que sale, tomado saturado a h1 + L/G cp R. h1: entalpía del aire que entra. R: rango. \
             L/G: agua entre aire seco, en masa."
        }
        TowerFigure::PoppeMerkelNumber => {
            "KaV/L = suma de cp dT / D en el rango. D = hs - h + (Le - 1) (hs - h - (Ws - W) hv) - (Ws \
             - W) cp T. hs, Ws: entalpía y relación de humedad del aire saturado a la temperatura T \
             del agua. h, W: del aire ahí. hv: entalpía del vapor. Le: factor de Lewis, cerca de 0.92."
        }
        TowerFigure::Prediction => {
            "El agua de salida está donde el servicio pide KaV/L = C (L/G x agua / aire)^-n. Rango = \
             rango de diseño x calor / agua. Agua, aire, calor: partes del diseño. C: del punto de \
             diseño. n: 0.6 si no se conoce."
        }
        TowerFigure::Delivered => {
            "Parte entregada = KaV/L de las lecturas de hoy / C (L/G)^-n. C: del punto de diseño. n: \
             0.6 si no se conoce. L/G: agua entre aire seco, con el caudal de hoy y el aire de diseño."
        }
        TowerFigure::ShapeFit => {
            "Peso = media de exp(-X/2), repartida entre las formas. X = suma de (lectura - predicho)^2 \
             / incertidumbre^2, la menor sobre la única incógnita: agua, aire, alza del bulbo húmedo o \
             calor."
        }
    }
}

pub(in crate::words) fn source(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => {
            "Fuente: balance de masa y energía con aire de salida saturado (Merkel). Vale dentro de \
             cerca del 10%; hasta 25% alto en aire caliente y seco."
        }
        TowerFigure::PoppeMerkelNumber => {
            "Fuente: Poppe y Rogener 1991, como lo replantean Kloppers y Kroger 2005. Vale para agua \
             de 32 a 140\u{a0}F, dentro del 1% de las mismas ecuaciones sobre CoolProp 8.0.0. Compare solo \
             con números hallados por el mismo método."
        }
        TowerFigure::Prediction => {
            "Fuente: Merkel 1925 con una característica de torre; n de la práctica común, sin fuente. \
             Vale a cerca de 1\u{a0}F junto al punto de diseño (nuestra estimación), menos lejos de él o \
             con agua dispareja."
        }
        TowerFigure::Delivered => {
            "Fuente: Merkel 1925, capacidad como en las pruebas de aceptación. Vale dentro de cerca \
             del 15% con termómetros buenos a 1\u{a0}F (nuestra estimación); peor con aproximación menor \
             de 5\u{a0}F."
        }
        TowerFigure::ShapeFit => {
            "Fuente: mínimos cuadrados y regla de Bayes, cálculo propio; todas las formas iguales de \
             antemano. Vale para una sola cosa mal a la vez y agua pareja. Dos formas de peso cercano \
             no se distinguen."
        }
    }
}

pub(in crate::words) fn shape(shape: Shape) -> &'static str {
    match shape {
        Shape::Healthy => "La torre trabaja como se diseñó",
        Shape::LowWater => "Muy poca agua sobre la torre",
        Shape::WeakAir => "Muy poco aire, o relleno sucio",
        Shape::Recirculation => "La torre respira su propia descarga",
        Shape::BeyondDesign => "Más calor del que la torre puede",
        Shape::Contradiction => "Las lecturas no cuadran entre sí",
    }
}

pub(in crate::words) fn shape_line(shape: Shape) -> &'static str {
    match shape {
        Shape::Healthy => "Rango y aproximación son lo que piden este bulbo húmedo y este calor.",
        Shape::LowWater => {
            "Rango amplio con agua de salida normal o baja. Vea nivel de la pileta, bomba, coladores y \
             aire atrapado."
        }
        Shape::WeakAir => {
            "Rango normal con aproximación alta. Vea ventilador, banda, variador, persianas y relleno. \
             Bloquee y etiquete el ventilador antes de meter la mano."
        }
        Shape::Recirculation => {
            "El bulbo húmedo en la entrada de aire pasa del de hoy. Vea muros, viento y otras \
             descargas cercanas."
        }
        Shape::BeyondDesign => {
            "Rango amplio y aproximación alta juntos, como da una torre sana con más calor. Vea qué se \
             agregó al circuito."
        }
        Shape::Contradiction => {
            "Ninguna falla sola da estas lecturas. Compare los termómetros juntos y lea otra vez."
        }
    }
}

pub(in crate::words) fn settle(settle: Settle) -> &'static str {
    match settle {
        Settle::WaterFlow => "Mida el caudal de agua para distinguirlas.",
        Settle::Heat => "Calcule el calor de los equipos andando para distinguirlas.",
        Settle::InletWetBulb => {
            "Lea el bulbo húmedo en la entrada de aire y otra vez lejos de la torre para distinguirlas."
        }
        Settle::Thermometers => "Compare los termómetros juntos, luego lea otra vez.",
    }
}
