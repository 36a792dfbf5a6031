//! Figures of the tower and the shapes its trouble takes, in Spanish.

use crate::physics::basis::TowerFigure;
use crate::physics::tower::{Settle, Shape};

pub(in crate::words) fn name(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => "Evaporación, aire saturado",
        TowerFigure::Delivered => "Parte de KaV/L entregada",
    }
}

pub(in crate::words) fn formula(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => {
            "E = caudal x (W2 - W1) / (L/G). W1: relación de humedad del aire que entra. W2: del aire \
             que sale, tomado saturado a h1 + L/G cp R. h1: entalpía del aire que entra. R: rango. \
             L/G: agua entre aire seco, en masa."
        }
        TowerFigure::Delivered => {
            "Parte entregada = KaV/L de las lecturas de hoy / C (L/G)^-n. C: del punto de diseño. n: \
             0.6 si no se conoce. L/G: agua entre aire seco, con el caudal de hoy y el aire de diseño."
        }
    }
}

pub(in crate::words) fn source(figure: TowerFigure) -> &'static str {
    match figure {
        TowerFigure::EvaporationBalance => {
            "Fuente: balance de masa y energía con aire de salida saturado (Merkel). Vale dentro de \
             cerca del 10%; hasta 25% alto en aire caliente y seco."
        }
        TowerFigure::Delivered => {
            "Fuente: Merkel 1925, capacidad como en las pruebas de aceptación. Vale dentro de cerca \
             del 15% con termómetros buenos a 1\u{a0}F (nuestra estimación); peor con aproximación menor \
             de 5\u{a0}F."
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
