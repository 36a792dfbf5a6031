//! Workings in Spanish: titles, inputs, answers.

use crate::physics::refrigerant::Refrigerant;
use crate::working::{Ask, Choice, METERS, POINTS, Working};

/// Title, and the question it answers.
pub(in crate::words) fn working(working: Working) -> (&'static str, &'static str) {
    match working {
        Working::Head => (
            "Presión de alta",
            "A qué condensa, y qué tan lejos está el corte.",
        ),
        Working::Tower => (
            "La torre hoy",
            "Aproximación, y el agua que debe dar con este aire.",
        ),
        Working::Air => ("Aire exterior", "Bulbo húmedo, punto de rocío, entalpía."),
        Working::TowerIf => (
            "La torre, qué pasaría si",
            "Su agua con otro bulbo húmedo, calor, caudal o aire.",
        ),
        Working::Water => ("Balance de agua", "Evaporación, purga, reposición, ciclos."),
        Working::Basin => ("Pileta", "Cuánta agua tiene, y cuánto dura."),
        Working::Fill => (
            "Línea de llenado",
            "Cuánto trae, y qué tan tapado está el colador.",
        ),
        Working::Valve => ("Una válvula", "Cuánto pasa, y el Cv que pide un caudal."),
        Working::Inlet => ("Succión de la bomba", "Si hay bastante agua sobre ella."),
        Working::LowFlow => (
            "Condensador corto de agua",
            "A dónde va su alta con parte del caudal.",
        ),
        Working::Drain => ("Bajar y llenar", "Cuánto tarda cada cosa."),
        Working::Overflow => (
            "Rebosadero",
            "Si aguanta, y cuánto cuesta el agua que corre.",
        ),
        Working::Scale => (
            "Sarro y corrosión",
            "Langelier, Ryznar, Puckorius, límites, ciclos.",
        ),
        Working::Trip => ("Hasta que un equipo se dispare", "Sin torre, o sin caudal."),
        Working::Restart => ("Rearranque", "Cuánto esperar, y cada cuánto."),
        Working::Circuit => (
            "Circuito de control",
            "Qué debe marcar el medidor, y qué significa una lectura.",
        ),
        Working::Electrode => (
            "Electrodos de nivel",
            "Si película o espuma los engañan, y qué ajuste aguanta.",
        ),
        Working::WarmUp => (
            "Circuito sin torre",
            "Qué tan rápido se calienta, y cuánto tiempo queda.",
        ),
    }
}

pub(in crate::words) fn ask(ask: Ask) -> &'static str {
    match ask {
        Ask::DryBulb => "Bulbo seco exterior",
        Ask::Humidity => "Humedad exterior",
        Ask::WetBulb => "Bulbo húmedo, si se midió",
        Ask::InletWetBulb => "Bulbo húmedo en la entrada de aire",
        Ask::AnyWetBulb => "Con un bulbo húmedo de",
        Ask::HeatPart => "Calor, parte del diseño",
        Ask::WaterPart => "Caudal de agua, parte del diseño",
        Ask::Altitude => "Altitud",
        Ask::HotWater => "Agua que entra a la torre",
        Ask::ColdWater => "Agua que sale de la torre",
        Ask::Flow => "Caudal de agua",
        Ask::DesignFlow => "Caudal de diseño",
        Ask::DesignHot => "Diseño: agua que entra",
        Ask::DesignCold => "Diseño: agua que sale",
        Ask::DesignWetBulb => "Diseño: bulbo húmedo",
        Ask::WaterAirRatio => "Diseño: agua entre aire, en masa",
        Ask::AirPart => "Caudal de aire, parte del diseño",
        Ask::BasinConductivity => "Conductividad, pileta",
        Ask::MakeupConductivity => "Conductividad, reposición",
        Ask::DriftPart => "Arrastre, parte del caudal",
        Ask::BasinShape => "Forma de la pileta",
        Ask::BasinLength => "Largo, o diámetro",
        Ask::BasinWidth => "Ancho",
        Ask::FloorFall => "El fondo baja",
        Ask::BasinDepth => "Profundidad, del borde al fondo",
        Ask::LevelNow => "Nivel ahora, bajo el borde",
        Ask::LevelThen => "Nivel que importa, bajo el borde",
        Ask::Loss => "Agua que se pierde",
        Ask::Fluid => "Refrigerante",
        Ask::Head => "Presión de alta",
        Ask::CutOut => "Corte por alta en la placa",
        Ask::CondenserLeaving => "Agua que sale del condensador",
        Ask::Heat => "Calor al circuito de agua",
        Ask::LoopVolume => "Agua en el circuito",
        Ask::LoopNow => "Agua ahora",
        Ask::LoopThen => "Agua con que se dispara",
        Ask::Meter => "Medidor",
        Ask::FirstLead => "Primera punta en",
        Ask::SecondLead => "Segunda punta en",
        Ask::ReadVolts => "Volts leídos",
        Ask::ReadAmperes => "Amperes leídos",
        Ask::ReadOhms => "Ohms leídos",
        Ask::Calling => "Si el control pide",
        Ask::ControlVoltage => "Voltaje de control",
        Ask::CoilVa => "Bobina, VA",
        Ask::Feed => "Se alimenta de",
        Ask::Sensitivity => "El relevador toma por mojado hasta",
        Ask::ProbeWater => "Conductividad en la sonda",
        Ask::FilmThickness => "Película, espesor",
        Ask::FoamLiquid => "Espuma, parte líquida",
        Ask::ScaleThickness => "Sarro, espesor",
        Ask::RodShape => "Electrodos",
        Ask::RodDiameter => "Diámetro de la varilla",
        Ask::RodSpacing => "Entre varillas, o interior del tubo",
        Ask::RodImmersion => "Largo de varilla en el agua",
        Ask::Ph => "pH, pileta",
        Ask::SkinWater => "Pared más caliente que toca el agua",
        Ask::Calcium => "Calcio como CaCO3",
        Ask::Alkalinity => "Alcalinidad como CaCO3",
        Ask::Chloride => "Cloruro",
        Ask::SetCycles => "Ciclos a que está la purga",
        Ask::Mains => "Presión de la red al llenar",
        Ask::Lift => "Salida sobre ese manómetro",
        Ask::PipeBore => "Diámetro interior del tubo",
        Ask::PipeLength => "Largo del tubo",
        Ask::PipeFittings => "Conexiones, suma de K",
        Ask::Backflow => "Se pierde en el preventor de reflujo",
        Ask::StrainerCv => "Cv del colador, limpio",
        Ask::SolenoidCv => "Cv de la válvula solenoide",
        Ask::FillMeasured => "Caudal de llenado, medido",
        Ask::ValveBefore => "Presión antes de ella",
        Ask::ValveBehind => "Presión después de ella",
        Ask::ValveCv => "Cv de la válvula",
        Ask::ValveRecovery => "Factor de recuperación FL",
        Ask::FlowWanted => "Caudal deseado",
        Ask::InletBore => "Diámetro de la succión",
        Ask::InletDepth => "Tope de la succión, bajo el borde",
        Ask::CondenserEntering => "Agua que entra al condensador",
        Ask::WaterSide => "Resistencia del lado del agua",
        Ask::LevelFrom => "Bajar desde, bajo el borde",
        Ask::LevelTo => "Bajar hasta, bajo el borde",
        Ask::DrainBore => "Diámetro del drenaje",
        Ask::FillRunning => "Llenado que corre mientras",
        Ask::OverflowBore => "Diámetro del rebosadero",
        Ask::RunningFlow => "Caudal que nunca para",
        Ask::RimRoom => "Del rebosadero a la orilla",
        Ask::WaterPrice => "Precio de 1,000\u{a0}gal",
        Ask::NormalApproach => "Normal, condensación sobre agua que sale",
        Ask::NormalRange => "Rango normal del condensador",
        Ask::CondenserWater => "Agua en un condensador",
        Ask::CondenserMetal => "Metal de un condensador",
        Ask::MachineHeat => "Calor de un equipo",
        Ask::Machines => "Equipos por arrancar",
        Ask::TripWater => "Agua de entrada con que se dispara",
        Ask::TowerEffectiveness => "Efectividad de la torre",
        Ask::KeepBelow => "Quedar bajo el disparo por",
    }
}

/// Where to read it or what can hurt there; empty when the name says it all.
pub(in crate::words) fn ask_hint(ask: Ask) -> &'static str {
    match ask {
        Ask::DryBulb => "A la sombra, lejos de la descarga de la torre.",
        Ask::WetBulb => "Vale antes que la humedad cuando se dan las dos.",
        Ask::InletWetBulb => {
            "Junto a la torre, ventilador andando: no se acerque a él. Muestra la recirculación."
        }
        Ask::Flow => "Con medidor o con la curva de la bomba.",
        Ask::WaterAirRatio => {
            "1.2 si el fabricante no dice otra cosa (práctica común, sin fuente)."
        }
        Ask::AirPart => "100% con el ventilador completo y el relleno limpio.",
        Ask::DriftPart => "0.005% con eliminadores modernos (práctica común, sin fuente).",
        Ask::CutOut => "La placa manda.",
        Ask::FloorFall => "A lo largo, del lado alto al bajo.",
        Ask::BasinDepth => "En el lado hondo.",
        Ask::Loss => "Evaporación, arrastre y purga: vea el balance de agua.",
        Ask::LoopThen => "Agua de entrada con que se dispara el primer equipo.",
        Ask::Heat => "Todos los equipos andando: capacidad más potencia del compresor.",
        Ask::ReadVolts | Ask::ReadAmperes => "Partes energizadas: solo personal calificado.",
        Ask::ReadOhms => "Circuito sin energía y con ausencia de voltaje comprobada.",
        Ask::CoilVa => "De la placa.",
        Ask::Sensitivity => "Su ajuste, en ohms.",
        Ask::ProbeWater => "Se toman 1,500 µS/cm para agua de torre sin medir.",
        Ask::FilmThickness => "0.2\u{a0}mm es una lama mojada (a juicio). Vacío: sin película.",
        Ask::FoamLiquid => "Espuma seca 2%, espuma mojada 20%. Vacío: sin espuma.",
        Ask::SkinWater => {
            "Temperatura de condensación si se conoce; si no, el agua que sale del condensador."
        }
        Ask::Calcium => "Calcio, no dureza total.",
        Ask::PipeFittings => {
            "Codo 0.75, válvula de compuerta 0.2, entrada 0.5, salida 1 (práctica común)."
        }
        Ask::ValveRecovery => "Globo 0.8 a 0.9, bola 0.6 (práctica común, sin fuente).",
        Ask::WaterSide => "50% cuando nadie sabe (práctica común, sin fuente).",
        Ask::SolenoidCv | Ask::StrainerCv | Ask::ValveCv => "Del fabricante. Kv x 1.156 da Cv.",
        Ask::DrainBore => {
            "El drenaje como un orificio en el fondo. Pregunte antes de mandar agua tratada por un \
             drenaje."
        }
        Ask::WaterPrice => "Agua y drenaje juntos, en su moneda.",
        Ask::NormalApproach => {
            "10\u{a0}°F para un condensador de paquete (de memoria): mejor el del propio sitio."
        }
        Ask::MachineHeat => "Mientras baja un espacio caliente.",
        Ask::TowerEffectiveness => "Vea La torre hoy.",
        Ask::ScaleThickness => "Vacío: varillas limpias.",
        _ => "",
    }
}

pub(in crate::words) fn option(choice: Choice, place: usize) -> &'static str {
    match choice {
        Choice::Fluid => Refrigerant::ALL[place.min(Refrigerant::ALL.len() - 1)].designation(),
        Choice::BasinShape => ["Rectangular", "Redonda", "Fondo inclinado"][place.min(2)],
        Choice::Meter => super::circuit::meter(METERS[place.min(3)]()),
        Choice::Point => super::circuit::point(POINTS[place.min(POINTS.len() - 1)]),
        Choice::YesNo => ["Sí", "No"][place.min(1)],
        Choice::Feed => ["Transformador", "La línea"][place.min(1)],
        Choice::RodShape => ["Dos varillas", "Varilla en tubo", "Varilla, pileta"][place.min(2)],
    }
}
