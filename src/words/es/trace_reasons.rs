//! Spanish: answers, cautions, readings, reasons and weights.

use super::trace_modes::{name, place};
use crate::trace::{Answer, Caution, Reading, Reason, Stage, Unproven};

pub(crate) fn answer(answer: Answer) -> &'static str {
    match answer {
        Answer::CouldNot => "No se pudo revisar",
        Answer::OneMachine => "Uno",
        Answer::TwoMachines => "Dos",
        Answer::ThreeOrMore => "Tres o más",
        Answer::BasinLow => "Baja o seca",
        Answer::BasinComingUp => "Subiendo",
        Answer::BasinNormal => "En su nivel",
        Answer::WaterHot => "Más caliente que lo normal",
        Answer::WaterUsual => "Como siempre",
        Answer::RangeWide => "Más amplio que lo normal",
        Answer::RangeUsual => "Normal o menos",
        Answer::ApproachHigh => "Muy alta para hoy",
        Answer::ApproachUsual => "Correcta para hoy",
        Answer::ApproachLow => "Más baja de lo debido",
        Answer::AirGood => "Andando, buen aire",
        Answer::AirPoor => "Parado, lento o sucio",
        Answer::PressureSteady => "Quietos",
        Answer::PressureSurging => "Oscilando",
        Answer::PressureLow => "Quietos pero bajos",
        Answer::VoltageGood => "Correcto",
        Answer::VoltageLow => "Muy bajo",
        Answer::NoVoltage => "No hay",
        Answer::Calls => "Pide agua",
        Answer::NoCall => "No pide",
        Answer::Satisfied => "Satisfecho",
        Answer::Dark => "Apagado",
        Answer::Pulls => "Jala",
        Answer::NoPull => "No jala",
        Answer::FullFlow => "Caudal completo",
        Answer::WeakFlow => "Caudal débil",
        Answer::NoFlow => "Sin caudal",
        Answer::AllOpen => "Todas abiertas",
        Answer::FoundShut => "Una cerrada o a medias",
        Answer::StrainerClean => "Salió limpio",
        Answer::StrainerBlocked => "Tapado",
        Answer::MainsGood => "Correcta",
        Answer::MainsLow => "Baja",
        Answer::HolderClean => "Alta: limpio",
        Answer::HolderFilmed => "Baja: película o humedad",
        Answer::NoFoam => "Sin espuma",
        Answer::Foam => "Espuma",
        Answer::NoLoss => "Nada corre",
        Answer::LosingWater => "Se va agua",
        Answer::FollowsResistor => "Sigue a la resistencia",
        Answer::IgnoresResistor => "No le hace caso",
        Answer::Refilled => "Llenó a tiempo",
        Answer::RefilledSlowly => "Muy lento",
        Answer::DidNotRefill => "No llenó",
        Answer::OwnFaultFound => "La falla está aquí",
        Answer::MachineHealthy => "Aquí nada está mal",
        Answer::BeyondDesign => "Pasa de la placa",
        Answer::WithinDesign => "Dentro de ella",
        Answer::HeadRose => "La alta subió hasta el disparo",
        Answer::TrippedEarly => "Se disparó con alta normal",
        Answer::RangeWidened => "Primero se amplió su rango",
        Answer::LevelKept => "Nivel sostenido al dispararse",
        Answer::SaidFull => "Bajó el nivel y decía lleno",
        Answer::CalledInVain => "Bajó el nivel mientras pedía",
        Answer::LoopAsUsual => "Circuito normal al dispararse",
        Answer::FlowFell => "Primero cayó el caudal",
        Answer::WaterRose => "Primero subió el agua de la torre",
        Answer::NoTrips => "Nada se disparó",
        Answer::RanOn => "Anduvo como se mandó",
        Answer::StoppedUntold => "Mandado a andar, paró o bajó",
        Answer::ToldToStop => "Mandado a parar o bajar",
        Answer::FanTripped => "El del ventilador",
        Answer::PumpTripped => "El de la bomba",
        Answer::HeadsUsual => "Todas las altas normales",
        Answer::HeadsHigh => "Una alta sigue alta",
        Answer::Sound => "Como debe estar",
        Answer::NotRight => "Algo está mal",
        Answer::OverUsual => "Como siempre",
        Answer::OverHigh => "Muy alta",
        Answer::HeadStays => "La alta no se mueve",
        Answer::HeadFalls => "La alta baja",
        Answer::CurrentRight => "Correcta",
        Answer::CurrentLow => "Muy baja",
        Answer::NoCurrent => "No hay",
        Answer::FanFull => "Completo",
        Answer::FanSlow => "Lento",
        Answer::FanStill => "Quieto",
        Answer::CyclesUsual => "Como siempre",
        Answer::CyclesHigh => "Más alta",
        Answer::CyclesLow => "Más baja",
        Answer::SwitchedOn => "Conectado",
        Answer::SwitchedOff => "Desconectado",
        Answer::FuseGood => "Bueno",
        Answer::FuseBlown => "Fundido",
        Answer::CapDry => "Seca",
        Answer::CapWet => "Mojada",
        Answer::FloatFree => "Libre y ligero",
        Answer::FloatCaught => "Atorado o con lama",
        Answer::FloatHeavy => "Pesado, con agua",
        Answer::SignalAgrees => "Coinciden",
        Answer::SignalHigh => "La señal lee más",
        Answer::ContactClosed => "Casi nada",
        Answer::ContactOpen => "Voltaje completo",
        Answer::CoilSound => "Correcta",
        Answer::CoilReadsOpen => "Abierta",
        Answer::CoilReadsLow => "Muy baja",
        Answer::FillShuts => "Para",
        Answer::RunsOn => "Sigue corriendo",
        Answer::ValveSound => "Sana",
        Answer::PilotDirty => "Orificio piloto sucio",
        Answer::ValveWorn => "Gastada, rota o trabada",
    }
}

pub(crate) fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::LiveVoltage => {
            "Partes energizadas: bloquee, etiquete y compruebe ausencia de voltaje. Solo personal \
             calificado; mida con energía solo si hace falta."
        }
        Caution::MovingFan => {
            "El ventilador arranca solo: bloquéelo y etiquételo. Solo entonces meta la mano."
        }
        Caution::Fall => {
            "Orilla, escalera, piso mojado. Use la protección contra caídas que el sitio pide."
        }
        Caution::Spray => {
            "Legionella en la brisa: ventilador parado, fuera de ella. Use respirador."
        }
        Caution::WaterPressure => "Línea con presión. Abra despacio, hágase a un lado.",
        Caution::Refrigerant => {
            "Refrigerante, líneas calientes: guantes y lentes. Solo técnico certificado."
        }
        Caution::ConfinedSpace => {
            "No se meta: puede ser espacio confinado. Eso pide permiso y gente capacitada."
        }
        Caution::Chemicals => {
            "Agua tratada: guantes y lentes. Pregunte primero al tratador de agua."
        }
    }
}

pub(crate) fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::AsFound => "al llegar",
        Stage::WaterLetIn => "ya con agua metida",
        Stage::Testing => "durante las pruebas",
        Stage::Corrected => "después de corregir",
    }
}

pub(crate) fn reading(reading: Reading) -> &'static str {
    match reading {
        Reading::MachinesOut => "Equipos fuera",
        Reading::Entering => "Agua de entrada",
        Reading::Range => "Rango",
        Reading::Approach => "Aproximación",
        Reading::BasinLevel => "Nivel de la pileta",
        Reading::PumpInlet => "Presión en la succión de la bomba",
        Reading::ControlVoltage => "Voltaje de control",
    }
}

pub(crate) fn reason(reason: Reason) -> String {
    match reason {
        Reason::SplitsTop2 { a, b } => {
            format!(
                "Distingue las dos más probables: {} o {}.",
                lower_first(name(a)),
                lower_first(name(b))
            )
        }
        Reason::ConfirmsTop { mode } => {
            format!(
                "Confirma o descarta la más probable: {}.",
                lower_first(name(mode))
            )
        }
        Reason::ProvesIt { mode } => format!("Compruébelo: {}.", lower_first(name(mode))),
        Reason::BeforeTouching => "Mire ahora: en cuanto se toque algo, esto se pierde.".into(),
        Reason::TakeAgain => "Mucho depende de esta sola lectura: tómela otra vez.".into(),
        Reason::CheapHere => "Usted está aquí y esto dice algo.".into(),
        Reason::WorthTheWalk { to } => format!("Vale la caminata: {}.", lower_first(place(to))),
    }
}

/// What a closed trace leaves open.
pub(crate) fn unproven(open: &Unproven) -> String {
    match open {
        Unproven::NotConfirmed(check) => {
            format!(
                "Sin confirmar con: {}.",
                lower_first(super::trace_checks::title(*check))
            )
        }
        Unproven::NoRefill => "La reparación no se comprobó con una prueba de llenado.".into(),
        Unproven::NotRestarted => {
            "No se vio a los equipos con su alta de siempre desde la última reparación.".into()
        }
        Unproven::ComesAndGoes => "Va y viene; no se le vio actuar desde entonces.".into(),
        Unproven::Alike(mode, p) => {
            format!(
                "Ninguna revisión a mano la distingue de: {}, {:.0}%. Lo que lo haría no está en el teléfono.",
                lower_first(name(*mode)),
                100.0 * p
            )
        }
        Unproven::Rival(mode, p) => {
            format!(
                "Sin descartar: {}, {:.0}%.",
                lower_first(name(*mode)),
                100.0 * p
            )
        }
        Unproven::Contradicted(_) => {
            "Una respuesta no cuadra con esta causa: tómela otra vez.".into()
        }
    }
}

/// The first letter small; none of these phrases begins with an accent.
fn lower_first(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    text
}
