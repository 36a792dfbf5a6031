//! How we know a figure of the control circuit, in Spanish.

use crate::physics::basis::CircuitFigure;

pub(in crate::words) fn name(figure: CircuitFigure) -> &'static str {
    match figure {
        CircuitFigure::MeterReading => "El medidor debe marcar",
        CircuitFigure::CoilVoltage => "Volts en la bobina",
        CircuitFigure::HoldingCurrent => "Corriente de sostén",
        CircuitFigure::Winding => "Ohms del devanado",
        CircuitFigure::WireLoop => "Ohms del cable, ida y vuelta",
        CircuitFigure::GhostVoltage => "Voltaje fantasma",
        CircuitFigure::Fit => "Qué tan bien cuadra",
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
        CircuitFigure::WireLoop => {
            "R = 2 x largo x ohms por largo. Largo: una ida. Cobre a 20\u{a0}C."
        }
        CircuitFigure::GhostVoltage => {
            "V = vivo x C1 / (C1 + C2) x Zm / (Zm + Zc). C1, C2: capacitancia parásita al cable vivo y \
             al retorno. Zm: medidor. Zc: impedancia de C1 + C2."
        }
        CircuitFigure::Fit => {
            "ln L = -z^2 / 2 - ln s, con 2% de probabilidad de un número equivocado. z: lectura menos \
             lo esperado, entre s. s: error del medidor y 5% del circuito, combinados."
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
        CircuitFigure::WireLoop => {
            "Fuente: AWG 18 de tablas de cable de EE. UU.; otros calibres e IEC 60228 de memoria. Vale \
             dentro del 5%; el cobre gana 4% por cada 10\u{a0}C."
        }
        CircuitFigure::GhostVoltage => {
            "Fuente: divisor capacitivo; los fabricantes de medidores reportan hasta 85% del voltaje \
             vivo. Vale solo para el orden de magnitud: la capacitancia parásita se adivina."
        }
        CircuitFigure::Fit => {
            "Fuente: error normal con anchos a juicio. Vale para ordenar fallas, no como probabilidad."
        }
    }
}
