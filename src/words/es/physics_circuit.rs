//! How we know a figure of the control circuit, in Spanish.

use crate::physics::basis::CircuitFigure;

pub(in crate::words) fn name(figure: CircuitFigure) -> &'static str {
    match figure {
        CircuitFigure::MeterReading => "El medidor debe marcar",
        CircuitFigure::CoilVoltage => "Volts en la bobina",
        CircuitFigure::HoldingCurrent => "Corriente de sostén",
        CircuitFigure::Winding => "Ohms del devanado",
    }
}

pub(in crate::words) fn formula(figure: CircuitFigure) -> &'static str {
    match figure {
        CircuitFigure::MeterReading => {
            "Lectura = tamaño de Va - Vb con el medidor puesto. Va, Vb: voltajes de las dos \
             terminales, de Y V = I en cada terminal. Y: admitancias de partes y medidor. I: corriente \
             de la alimentación."
        }
        CircuitFigure::CoilVoltage => {
            "V = alimentación x Z / (Z + Zs). Z: impedancia de la bobina, R + jX. Zs: todo lo que está \
             en serie con ella. Bajo con menos de 85% de la placa, alto con más de 110%."
        }
        CircuitFigure::HoldingCurrent => "I = VA / V. VA y V: de la placa de la bobina.",
        CircuitFigure::Winding => {
            "R = V^2 / VA / arranque x fp. Arranque: corriente de arranque entre la de sostén, 5 si no \
             se conoce. fp: factor de potencia del arranque, 0.8 si no se conoce."
        }
    }
}

pub(in crate::words) fn source(figure: CircuitFigure) -> &'static str {
    match figure {
        CircuitFigure::MeterReading => {
            "Fuente: análisis nodal, comparado con el simulador ngspice. Vale al 0.1% como \
             aritmética; las partes como se dieron son el error mayor, algunos por ciento."
        }
        CircuitFigure::CoilVoltage => {
            "Fuente: circuito en serie; -10% de una hoja de diseño de potencia fluida (1990), -15 y \
             +10% práctica común, sin fuente. Vale tanto como la placa, que manda."
        }
        CircuitFigure::HoldingCurrent => {
            "Fuente: definición de volt-ampere. Vale al voltaje nominal con la armadura asentada."
        }
        CircuitFigure::Winding => {
            "Fuente: arranque de cinco veces el sostén, hoja de diseño de potencia fluida (1990); \
             factor de potencia de memoria. Vale a un factor de dos. Los ohms del fabricante, si se \
             conocen, van primero."
        }
    }
}
