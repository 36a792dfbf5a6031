//! How we know a figure, in Spanish.

use super::{physics_chemistry, physics_circuit, physics_electrode, physics_head};
use crate::physics::basis::Figure;

pub(in crate::words) fn formula(figure: Figure) -> &'static str {
    match figure {
        Figure::Piping(figure) => super::physics_piping::formula(figure),
        Figure::LoopHeat(figure) => super::physics_loop_heat::formula(figure),
        Figure::AtmosphericPressure => {
            "p = 101.325\u{a0}kPa x (1 - 0.0000225577 z)^5.2559. z: altitud en metros."
        }
        Figure::WetBulb => {
            "El bulbo húmedo t* con que W = ((2501 - 2.326 t*) Ws(t*) - 1.006 (t - t*)) / \
             (2501 + 1.86 t - 4.186 t*), en C; bajo 0\u{a0}C con hielo en la mecha. t: bulbo seco. \
             W: relación de humedad, de la humedad relativa y la presión local. Ws: la misma, \
             saturada."
        }
        Figure::RelativeHumidity => {
            "HR = presión de vapor / presión de saturación al bulbo seco. La presión de vapor sale de \
             bulbo seco, bulbo húmedo y presión local. Bajo 32\u{a0}F, la saturación es sobre hielo."
        }
        Figure::Approach => "Aproximación = agua que sale de la torre - bulbo húmedo de entrada.",
        Figure::Range => "Rango = agua que entra a la torre - agua que sale de la torre.",
        Figure::Effectiveness => "Efectividad = rango / (rango + aproximación).",
        Figure::MerkelNumber => {
            "KaV/L = R/4 x suma de cp / (hs - ha), a 0.1, 0.4, 0.6 y 0.9 del rango sobre el agua que \
             sale. R: rango. cp: calor específico del agua. hs: entalpía del aire saturado a la \
             temperatura del agua. ha: entalpía del aire ahí, hs(bulbo húmedo) + L/G cp (T - salida)."
        }
        Figure::LeavingWater => {
            "El agua de salida con que el servicio pide KaV/L = C (L/G)^-n. L/G: agua entre aire seco, \
             en masa. C: del punto de diseño. n: 0.6 si no se conoce."
        }
        Figure::HeatRejected => {
            "Q = caudal x densidad x calor específico x rango. En unidades de EE. UU.: Btu/h = 500 x \
             gpm x F."
        }
        Figure::TowerTons => {
            "Toneladas de torre = calor rechazado / 15,000 Btu/h. No las 12,000 Btu/h de una tonelada \
             de refrigeración."
        }
        Figure::Evaporation => {
            "E = caudal x (W2 - W1) / (L/G). W1, W2: relación de humedad del aire que entra y que \
             sale. W2 sale de balances de masa y energía paso a paso por el relleno, con la niebla \
             contada. L/G: agua entre aire seco, en masa."
        }
        Figure::EvaporationRule => "E = 0.001 x caudal x rango en F.",
        Figure::Drift => {
            "D = caudal x tasa de arrastre. 0.005% si los eliminadores no dicen otra cosa."
        }
        Figure::Blowdown => {
            "B = E / (COC - 1) - D, nunca menos de cero. E: evaporación. D: arrastre. COC: ciclos de \
             concentración."
        }
        Figure::Makeup => {
            "M = E + B + D. E: evaporación. B: purga. D: arrastre. Fugas y rebose van aparte."
        }
        Figure::Cycles => {
            "COC = conductividad del agua de la pileta / conductividad de la reposición."
        }
        Figure::MinutesToDry => {
            "t = agua entre los niveles / pérdida. Pérdida: evaporación, arrastre y purga, sin que \
             entre reposición."
        }
        Figure::WarmUp => {
            "dT/dt = Q / (M cp). Q: calor al circuito. M: masa de agua en él. cp: calor específico \
             del agua."
        }
        Figure::CondensingTemperature => {
            "T = media de las temperaturas de burbuja y de rocío a la presión del manómetro + la \
             atmosférica local, cada una de ln p = un polinomio de grado 4 en 1/T."
        }
        Figure::DewPoint => {
            "El punto de rocío t con que ps(t) = HR ps(bulbo seco). ps: presión de saturación."
        }
        Figure::HumidityRatio => {
            "W = 0.621945 f pv / (p - f pv). pv: HR x presión de saturación al bulbo seco. p: presión \
             local. f: factor de realce, cerca de 1.005."
        }
        Figure::Enthalpy => {
            "h = 1.006 t + W (2501 + 1.86 t), en kJ/kg y C. t: bulbo seco. W: relación de humedad. El \
             cero es aire seco a 0\u{a0}C (32\u{a0}F)."
        }
        Figure::AirDensity => {
            "Densidad = p / (287.042 T (1 + 1.607858 W)). T: bulbo seco en kelvins. W: relación de \
             humedad. Solo del aire seco."
        }
        Figure::EnteringWater => {
            "Agua que entra a la torre = agua que sale de ella, esperada + rango."
        }
        Figure::OverExpected => {
            "Más caliente por = agua que sale de la torre ahora - agua que se espera de ella con este \
             aire y este rango."
        }
        Figure::BasinVolume => {
            "V = agua del fondo hasta el nivel. Fondo plano: área en planta x (profundidad - nivel bajo \
             el borde)."
        }
        Figure::BasinWhenFull => {
            "V = agua del fondo hasta el borde del rebosadero. Fondo plano: área en planta x profundidad."
        }
        Figure::MinutesToLevel => {
            "t = agua entre el nivel ahora y el nivel que importa / agua que se pierde."
        }
        Figure::MinutesToReach => {
            "t = M cp (T2 - T1) / Q. M: masa de agua en el circuito. cp: calor específico. Q: calor \
             al circuito."
        }
        Figure::OverLeavingWater => {
            "Aproximación del condensador = temperatura de condensación - agua que sale del \
             condensador."
        }
        Figure::BelowCutOut => "Lo que falta = corte - presión de alta, las dos manométricas.",
        Figure::TripsAt => {
            "T = media de las temperaturas de burbuja y de rocío en el corte + presión atmosférica \
             local."
        }
        Figure::WarmerToTrip => {
            "Lo que falta = temperatura de condensación en el corte - la de ahora."
        }
        Figure::BubblePoint => {
            "T = temperatura de burbuja a la alta + presión atmosférica local. De aquí se toma el \
             subenfriamiento."
        }
        Figure::PipeDrop => {
            "dp = (f L/D + K) rho v^2 / 2. f: factor de fricción. K: suma de conexiones. v: velocidad."
        }
        Figure::StrainerDrop => {
            "dp = (caudal / Cv)^2, en gpm y psi. Cv: el del colador como se dio."
        }
        Figure::OverflowCapacity => {
            "Capacidad = el menor entre caudal de vertedor y de orificio del tubo, con el agua en la \
             orilla."
        }
        Figure::WaterPerDay => "Volumen = caudal x 24\u{a0}h.",
        Figure::RestartWait => {
            "Espera = tiempo hasta que el circuito, solo con la torre, se enfría lo bastante para que \
             el primer equipo quede bajo su disparo."
        }
        Figure::RestartHottest => {
            "T = agua de entrada más alta mientras los equipos arrancan uno por uno con esta separación."
        }
        Figure::DewPointOfRefrigerant => {
            "T = temperatura de rocío a la alta + presión atmosférica local. De aquí se toma el \
             sobrecalentamiento."
        }
        Figure::Circuit(figure) => physics_circuit::formula(figure),
        Figure::Chemistry(figure) => physics_chemistry::formula(figure),
        Figure::Head(figure) => physics_head::formula(figure),
        Figure::Electrode(figure) => physics_electrode::formula(figure),
        Figure::Tower(figure) => super::physics_tower::formula(figure),
    }
}

pub(in crate::words) fn source(figure: Figure) -> &'static str {
    match figure {
        Figure::Piping(figure) => super::physics_piping::source(figure),
        Figure::LoopHeat(figure) => super::physics_loop_heat::source(figure),
        Figure::AtmosphericPressure => {
            "Fuente: atmósfera estándar, ASHRAE Fundamentals 2017 cap. 1. Vale de -1,600 a 16,000\u{a0}ft; \
             el clima mueve la presión real hasta 3%."
        }
        Figure::WetBulb | Figure::RelativeHumidity => {
            "Fuente: ASHRAE Fundamentals 2017 cap. 1; Hyland y Wexler 1983; Buck 1981. Vale de -4 a \
             140\u{a0}F, de 50 a 110\u{a0}kPa, dentro de 0.1\u{a0}F de bulbo húmedo. Sus instrumentos son el error \
             mayor."
        }
        Figure::Approach | Figure::Range => {
            "Fuente: definición. Vale mientras los dos termómetros coincidan; compárelos juntos."
        }
        Figure::Effectiveness => {
            "Fuente: referencia de energía en edificios del US DOE. Vale para agua hasta 140\u{a0}F, tanto \
             como las tres temperaturas."
        }
        Figure::MerkelNumber => {
            "Fuente: Merkel 1925, regla de Chebyshev de cuatro puntos como en las pruebas de \
             aceptación. Vale para agua de 32 a 140\u{a0}F; a 0.5% de un ejemplo publicado. Compare solo \
             con números hallados por el mismo método."
        }
        Figure::LeavingWater => {
            "Fuente: Merkel 1925 con una característica de torre; n de la práctica común, sin fuente. \
             Vale a cerca de 1\u{a0}F junto al punto de diseño (nuestra estimación), menos lejos de él o \
             con agua dispareja."
        }
        Figure::HeatRejected => {
            "Fuente: balance de energía con agua a 60\u{a0}F. Vale dentro del 1% de 40 a 110\u{a0}F; la lectura \
             de caudal es el error mayor."
        }
        Figure::TowerTons => {
            "Fuente: referencia de energía en edificios del US DOE, 3\u{a0}gpm y 10\u{a0}F de rango por \
             tonelada. Vale solo como clasificación; con otros bulbos húmedos la torre hace más o \
             menos."
        }
        Figure::Evaporation => {
            "Fuente: Poppe y Rogener 1991, como lo replantean Kloppers y Kroger 2005. Vale para agua \
             de 32 a 140\u{a0}F; las ecuaciones quedan dentro del 0.5% de las mismas sobre CoolProp 8.0.0. \
             Caudal y L/G son el error mayor."
        }
        Figure::EvaporationRule => {
            "Fuente: planificador de agua de GEMI. Vale en un día caluroso. Cerca de 15% baja en el \
             desierto, 15% alta en un día húmedo, hasta 80% alta en invierno."
        }
        Figure::Drift => {
            "Fuente: referencia de energía en edificios del US DOE para la forma; la tasa es práctica \
             común, sin fuente. Vale solo para el orden de magnitud. Los eliminadores viejos pierden \
             de 0.02 a 0.2%."
        }
        Figure::Blowdown => {
            "Fuente: referencia de energía en edificios del US DOE; planificador de agua de GEMI. Vale \
             tanto como la evaporación y los ciclos."
        }
        Figure::Makeup => {
            "Fuente: US DOE FEMP, Cooling Tower Management. Vale tanto como la evaporación y los \
             ciclos; no puede ver una fuga."
        }
        Figure::Cycles => {
            "Fuente: UFC 3-240-13FN; planificador de agua de GEMI. Vale mientras no se precipiten \
             sales; el agua que incrusta lee ciclos de menos."
        }
        Figure::MinutesToDry => {
            "Fuente: geometría de la pileta, con la forma dada. Vale tanto como la pérdida. No cuenta \
             el agua que regresa de los tubos al parar la bomba."
        }
        Figure::WarmUp => {
            "Fuente: balance de energía de un circuito mezclado, sin contar el metal. Vale dentro del \
             30%: al subir la alta los compresores consumen más y enfrían menos."
        }
        Figure::DewPoint | Figure::HumidityRatio | Figure::Enthalpy | Figure::AirDensity => {
            "Fuente: ASHRAE Fundamentals 2017 cap. 1, con el factor de realce de Buck 1981. Vale de -4 \
             a 140\u{a0}F, de 50 a 110\u{a0}kPa, dentro del 0.2% de una biblioteca abierta de aire húmedo real."
        }
        Figure::OverExpected | Figure::EnteringWater => {
            "Fuente: Merkel 1925 con una característica de torre. Vale a cerca de 1\u{a0}F (nuestra \
             estimación). Los termómetros suman su propio error: compárelos juntos."
        }
        Figure::BasinVolume | Figure::BasinWhenFull | Figure::MinutesToLevel => {
            "Fuente: geometría, para la forma anotada. Vale tanto como la cinta y la pérdida."
        }
        Figure::PipeDrop | Figure::StrainerDrop => {
            "Fuente: Darcy y Colebrook; IEC 60534-2-1 para el colador. Vale dentro del 10% si \
             diámetro, largo y conexiones lo están (nuestra estimación)."
        }
        Figure::OverflowCapacity => {
            "Fuente: leyes de vertedor y de orificio, coeficientes de memoria. Vale dentro del 20%: \
             rejillas y codos le quitan."
        }
        Figure::WaterPerDay => "Fuente: aritmética. Vale tanto como el caudal.",
        Figure::MinutesToReach | Figure::RestartWait | Figure::RestartHottest => {
            "Fuente: balance de energía de un circuito mezclado, sin contar el metal. Vale dentro del \
             30%."
        }
        Figure::OverLeavingWater | Figure::BelowCutOut => {
            "Fuente: definición. Vale tanto como manómetro, termómetro y placa."
        }
        Figure::CondensingTemperature
        | Figure::TripsAt
        | Figure::WarmerToTrip
        | Figure::BubblePoint
        | Figure::DewPointOfRefrigerant => {
            "Fuente: ajustado a CoolProp 8.0.0, una biblioteca abierta. Vale de 32\u{a0}F a 154-158\u{a0}F según \
             el refrigerante; el ajuste queda dentro del 0.1% de la presión. Las mezclas distintas de \
             R-410A no están comparadas con una segunda biblioteca. La placa del equipo manda."
        }
        Figure::Circuit(figure) => physics_circuit::source(figure),
        Figure::Chemistry(figure) => physics_chemistry::source(figure),
        Figure::Head(figure) => physics_head::source(figure),
        Figure::Electrode(figure) => physics_electrode::source(figure),
        Figure::Tower(figure) => super::physics_tower::source(figure),
    }
}
